//! Charging: what may go together, and what the person knows of a source.

use emberloam_engine::case::{BagState, ChargeSource, Feedstock, SourceFigures};
use emberloam_engine::plan::charge::recipe::batches;
use emberloam_engine::plan::charge::sources::Nutrient;
use emberloam_engine::plan::charge::{ChargePlan, MOST_SOLID, Share, Used};
use emberloam_engine::quantity::Measures;
use emberloam_engine::season::day;
use emberloam_engine::{Case, charge_alone, interpret};

use crate::{case_of, close};

/// A loam short of nutrients.
const SHORT: &str = "Method: Mehlich-3\nTexture: loam\npH 6.2\nOrganic matter 3 %\nP 12 ppm\nK 50 ppm\nCa 900 ppm\nMg 90 ppm\nNO3-N 5 ppm\nCEC 8 meq/100 g";

/// A soil that calls for charged biochar, though its nutrients are enough.
const LITTLE_KNOWN: &str = "pH 6.5\nK (Mehlich-3) 60 ppm\nCEC 3 meq/100 g";

/// The same with far too much phosphorus.
const RICH_IN_P: &str = "Method: Mehlich-3\nTexture: loam\npH 6.2\nOrganic matter 3 %\nP 400 ppm\nK 50 ppm\nCa 900 ppm\nMg 90 ppm\nNO3-N 5 ppm\nCEC 8 meq/100 g";

/// Ten litres of hardwood biochar of 200 kg/m³, on 2 m².
fn ten_litres(text: &str, with: &[ChargeSource]) -> Case {
    let mut case = case_of(text);
    case.bed.area_m2 = Some(2.0);
    case.bed.depth_cm = Some(10.0);
    case.biochar.state = Some(BagState::Uncharged);
    case.biochar.feedstock = Some(Feedstock::Hardwood);
    case.biochar.bulk_density = Some(200.0);
    case.charge_with = with.to_vec();
    case.season.today = day::parse("2027-04-01");
    case.season.planting = day::parse("2027-05-20");
    case
}

#[track_caller]
fn plan(case: &Case) -> ChargePlan {
    interpret(case).plan.charge.expect("it is charged")
}

#[track_caller]
fn used(list: &[Used], source: ChargeSource) -> &Used {
    list.iter().find(|u| u.source == source).unwrap_or_else(|| panic!("no {source:?} in {list:?}"))
}

fn share(plan: &ChargePlan, nutrient: Nutrient) -> &Share {
    plan.shares.iter().find(|s| s.nutrient == nutrient).expect("every nutrient")
}

fn cautions(plan: &ChargePlan) -> String {
    plan.cautions.iter().map(|c| c.text.as_str()).collect::<Vec<_>>().join("\n")
}

#[test]
fn urine_brings_some_phosphorus_and_keeps_to_the_limit() {
    let found = plan(&ten_litres(RICH_IN_P, &[ChargeSource::Urine]));
    let phosphorus = share(&found, Nutrient::Phosphorus);
    assert!(phosphorus.brought.likely > 0.0);
    assert!(phosphorus.brought.likely <= phosphorus.at_most.unwrap() + 1e-9);
}

/// A label knows best whether phosphorus is in it.
#[test]
fn a_label_decides_whether_a_fertiliser_brings_phosphorus() {
    use ChargeSource::{CompleteFertiliser, NitrogenFertiliser};
    let label = |source, n_p2o5_k2o| {
        let mut case = ten_litres(RICH_IN_P, &[source]);
        let own = SourceFigures { source, litres: None, n_p2o5_k2o: Some(n_p2o5_k2o) };
        case.charge.sources = vec![own];
        plan(&case)
    };
    let without = label(CompleteFertiliser, [12.0, 0.0, 8.0]);
    assert_eq!(without.used[0].source, CompleteFertiliser);
    // 12 % nitrogen: 120 g in a kilogram.
    let wanted = share(&without, Nutrient::Nitrogen).wanted.likely;
    close(without.used[0].amount, wanted / 120.0, 1e-9);
    let with = label(NitrogenFertiliser, [20.0, 5.0, 0.0]);
    assert!(cautions(&with).contains("Leave the nitrogen fertiliser out"), "{}", cautions(&with));
}

#[test]
fn ash_is_never_mixed_with_what_holds_ammonium() {
    use ChargeSource::{AgedManure, AmmoniumSulfate, Compost, FishHydrolysate, Urine, WoodAsh};
    for other in [Urine, AgedManure, AmmoniumSulfate, FishHydrolysate] {
        let found = plan(&ten_litres(SHORT, &[WoodAsh, other]));
        assert!(!found.used.iter().any(|u| u.source == WoodAsh), "{other:?}");
        let said = cautions(&found);
        assert!(said.contains("Leave the wood ash out") && said.contains("ammonia"), "{said}");
    }
    // Beside compost it may fill what is missing of potassium, but not where it would lime too far.
    let alkaline = SHORT.replace("pH 6.2", "pH 7.0");
    let found = plan(&ten_litres(&alkaline, &[WoodAsh, Compost]));
    assert!(!found.used.iter().any(|u| u.source == WoodAsh));
}

#[test]
fn what_is_on_hand_and_its_label_replace_the_usual() {
    use ChargeSource::{Compost, Urine};
    let mut case = ten_litres(SHORT, &[Compost, Urine]);
    let own = |source, litres, n_p2o5_k2o| SourceFigures { source, litres, n_p2o5_k2o };
    case.charge.sources =
        vec![own(Compost, Some(60.0), Some([2.0, 0.3, 1.0])), own(Urine, Some(0.1), None)];
    let found = plan(&case);
    // Twice the usual 1 % N: 0.5 g mineral nitrogen in a litre.
    close(used(&found.used, Compost).brings[0].likely, 5.0, 1e-9);
    close(used(&found.used, Urine).amount, 0.1, 1e-9);
    let left = found.leftovers.iter().map(|l| l.text.as_str()).collect::<Vec<_>>().join("\n");
    assert!(left.contains("50\u{a0}L (5 buckets) of compost is left over"), "{left}");
    case.charge.sources = vec![own(Compost, None, Some([80.0, 30.0, 10.0]))];
    let odd = plan(&case);
    assert!(cautions(&odd).contains("can't be one"), "{}", cautions(&odd));
    let compost = used(&odd.used, Compost);
    close(compost.brings[1].likely, compost.amount * 0.56 * 10.0 * 0.4364, 1e-6);
}

/// In every mixture of up to three sources: no gram appears or is lost, and no bound is passed.
#[test]
fn every_mixture_balances() {
    let all = ChargeSource::ALL;
    let mut mixtures: Vec<Vec<ChargeSource>> = vec![Vec::new()];
    for a in 0..all.len() {
        mixtures.push(vec![all[a]]);
        for b in a + 1..all.len() {
            mixtures.push(vec![all[a], all[b]]);
            for c in b + 1..all.len() {
                mixtures.push(vec![all[a], all[b], all[c]]);
            }
        }
    }
    for text in [SHORT, RICH_IN_P] {
        for with in &mixtures {
            let case = ten_litres(text, with);
            let found = plan(&case);
            for (at, share) in found.shares.iter().enumerate() {
                let sum: f64 = found.used.iter().map(|u| u.brings[at].likely).sum();
                if share.nutrient != Nutrient::Phosphorus || text == RICH_IN_P {
                    let near = 1e-9 * (1.0 + sum);
                    close(share.brought.likely, sum, near);
                }
                if let (Nutrient::Phosphorus, Some(most)) = (share.nutrient, share.at_most) {
                    assert!(share.brought.likely <= most + 0.1, "{with:?} {share:?}");
                }
            }
            let litres = |solid: bool| -> f64 {
                let is_solid = |s: ChargeSource| {
                    matches!(
                        s,
                        ChargeSource::Compost
                            | ChargeSource::Vermicompost
                            | ChargeSource::AgedManure
                    )
                };
                let list = found.used.iter().filter(|u| !u.weighed && is_solid(u.source) == solid);
                list.map(|u| u.amount).sum()
            };
            assert!(litres(true) <= MOST_SOLID * 10.0 + 1e-9, "{with:?}");
            assert!(litres(false) <= 4.0 + 1e-9, "{with:?}");
        }
    }
}

#[test]
fn a_recipe_is_followed_in_ones_own_bucket_and_in_batches() {
    assert_eq!((batches(10.0), batches(100.0), batches(101.0), batches(500.0)), (1, 1, 2, 5));
    let mut case = ten_litres(SHORT, &[ChargeSource::Compost]);
    case.charge.bucket_litres = Some(5.0);
    // So little phosphorus that the bed may take all that the biochar takes.
    let (source, n_p2o5_k2o) = (ChargeSource::Compost, Some([1.0, 0.3, 0.5]));
    case.charge.sources = vec![SourceFigures { source, litres: None, n_p2o5_k2o }];
    let steps = plan(&case).steps.join("\n");
    assert!(steps.contains("10\u{a0}L (2 buckets) of compost"), "{steps}");
    case.bed.area_m2 = Some(100.0);
    let steps = plan(&case).steps.join("\n");
    assert!(steps.contains("Make 5 batches"), "{steps}");
    assert!(steps.contains("Mix in 100\u{a0}L (20 buckets) of compost"), "{steps}");
    case.measures = Measures::Us;
    case.charge.bucket_litres = None;
    let steps = plan(&case).steps.join("\n");
    assert!(steps.contains("gal") && !steps.contains("\u{a0}L"), "{steps}");
}

#[test]
fn nothing_is_said_where_nothing_is_charged() {
    let mut case = ten_litres(SHORT, &[]);
    case.biochar.state = Some(BagState::Charged);
    assert!(interpret(&case).plan.charge.is_none());
    assert!(interpret(&Case::default()).plan.charge.is_none());
}

/// A bed whose nitrogen, phosphorus and potassium nobody knows, but whose soil is a poor holder,
/// is the nearest to no soil test at all.
#[test]
fn a_heap_is_charged_as_a_bed_of_which_little_is_known() {
    for with in [&[][..], &[ChargeSource::Compost], &[ChargeSource::Urine, ChargeSource::Compost]] {
        let mut case = case_of(LITTLE_KNOWN);
        case.biochar.state = Some(BagState::Uncharged);
        case.charge_with = with.to_vec();
        // 5 % of 15 cm are 7.5 L on 1 m².
        case.bed.area_m2 = Some(10.0 / 7.5);
        let planned = plan(&case);
        let alone = charge_alone(10.0, with, &case.charge, case.measures).expect("a recipe");
        let amounts = |plan: &ChargePlan| -> Vec<_> {
            plan.used.iter().map(|u| (u.source, (u.amount * 1e6).round())).collect()
        };
        assert_eq!(amounts(&alone), amounts(&planned), "{with:?}");
        assert_eq!(alone.steps, planned.steps);
        assert_eq!(alone.days, planned.days);
        let texts = |plan: &ChargePlan| -> Vec<String> {
            plan.intervals.iter().map(|wait| wait.text.clone()).collect()
        };
        assert_eq!(texts(&alone), texts(&planned));
    }
}
