//! Two balances worked out by hand from the published figures that stand in the
//! remarks; likely values, in grams for the whole bed.

use emberloam_engine::case::{BagState, BedKind, ChargeSource, Feedstock, SourceFigures};
use emberloam_engine::plan::ledger::{Bringer, NITROGEN, Substance};
use emberloam_engine::plan::needs::{NeedKind, Verdict};
use emberloam_engine::plan::{Path, Plan};
use emberloam_engine::soil::{PlantGroup, Texture};
use emberloam_engine::{Case, interpret, report};

use crate::{close, day};

fn planned(text: &str, answer: impl FnOnce(&mut Case)) -> Plan {
    let report = report::open(text.as_bytes()).and_then(|grid| report::read(&grid));
    let mut case = Case { report: report.expect("a report"), ..Case::default() };
    case.plants = Some(PlantGroup::MixedVegetables);
    case.bed.kind = Some(BedKind::Dug);
    case.bed.texture = Some(Texture::Loam);
    case.bed.area_m2 = Some(10.0);
    case.bed.depth_cm = Some(20.0);
    case.biochar.state = Some(BagState::Uncharged);
    case.biochar.feedstock = Some(Feedstock::Hardwood);
    case.biochar.bulk_density = Some(200.0);
    case.biochar.liming_percent = Some(5.0);
    case.biochar.share_percent = Some(2.0);
    answer(&mut case);
    interpret(&case).plan
}

fn total(plan: &Plan, substance: Substance, by: Bringer) -> f64 {
    plan.ledger.of(substance).by(by).likely
}

/// A poor, acid loam, 20 cm of it at 1.25 g/cm³: 10 m² × 0.2 m × 1250 kg/m³ = 2500 kg.
/// Biochar: 2 % of 2000 L = 40 L at 200 kg/m³ = 8 kg, 0.32 % of the soil. It is charged with
/// the 20 L of compost there are.
#[test]
fn the_balance_of_a_poor_acid_bed_comes_out_as_by_hand() {
    let plan = planned(
        "Extraction: Mehlich-3\nSample depth: 0-20 cm\npH 5.5\nNitrate-N 10 ppm\n\
         Phosphorus 15 ppm\nPotassium 60 ppm\nBulk density 1.25 g/cm3\n",
        |case| {
            case.season.today = day(2027, 2, 1);
            case.season.planting = day(2027, 5, 1);
            case.charge_with = vec![ChargeSource::Compost];
            case.charge.sources = vec![SourceFigures {
                source: ChargeSource::Compost,
                litres: Some(20.0),
                n_p2o5_k2o: None,
            }];
        },
    );
    assert_eq!(plan.path, Path::ChargeFirst);
    close(plan.dose.mass.likely, 8.0, 0.01);

    // In store: mg/kg × 2500 kg ÷ 1000.
    let store = |s| plan.ledger.of(s).in_store.expect("it was measured").likely;
    close(store(Substance::NitrateN), 25.0, 0.01);
    close(store(Substance::Phosphorus), 37.5, 0.01);
    close(store(Substance::Potassium), 150.0, 0.01);

    // Held: nitrogen 80 × (1 − e^(−0.104 × 0.32)) = 2.618 % of 25 g; phosphorus 5 % × 0.64 of
    // 37.5 g, potassium 5 % × 0.64 of 150 g (0.32 % biochar counts 0.64 of the full hold).
    close(plan.ledger.of(Substance::NitrateN).held.likely, 0.6546, 0.001);
    close(plan.ledger.of(Substance::Phosphorus).held.likely, 1.2, 0.001);
    close(plan.ledger.of(Substance::Potassium).held.likely, 4.8, 0.001);

    // Hardwood: 8 kg × 0.12 % P, 0.8 % K; 5 % of it is lime.
    close(total(&plan, Substance::Phosphorus, Bringer::Biochar), 9.6, 0.01);
    close(total(&plan, Substance::Potassium, Bringer::Biochar), 64.0, 0.01);
    close(total(&plan, Substance::Alkalinity, Bringer::Biochar), 400.0, 0.1);

    // Compost: 20 L × 0.56 kg/L, 1 % each of N, P2O5 and K2O; 0.25 g/L of the N is mineral.
    let compost = Bringer::Charge(ChargeSource::Compost);
    let nitrogen: f64 = NITROGEN.iter().map(|s| total(&plan, *s, compost)).sum();
    close(nitrogen, 112.0, 0.1);
    close(total(&plan, Substance::Phosphorus, compost), 112.0 * 0.4364, 0.1);
    close(total(&plan, Substance::Potassium, compost), 112.0 * 0.8302, 0.1);
    // Nothing else is used to charge with.
    assert_eq!(plan.charge.as_ref().map(|c| c.used.len()), Some(1));

    // Nitrogen: 122.1 kg/ha less 10 mg/kg × 20 cm × 1.25 × 0.1 = 25 kg/ha, so 97.1 g; the
    // charge brings 5 g at once and 7.5 % of the other 107 g in the year.
    let missing = plan.ledger.missing(&NITROGEN).likely;
    let fed = total(&plan, Substance::NitrateN, Bringer::Feed);
    close(fed, 97.1 + 0.6546 - 5.0 - 8.025, 0.1);
    close(missing, 0.0, 0.01);

    // Potash 112.1 kg/ha on a soil very low in it is 93.1 g of K: with 4.8 g held it is more
    // than covered by 0.45 × 64 g of the biochar and 93 g of the compost.
    let need = |kind| plan.needs.iter().find(|n| n.kind == kind).expect("it was looked into");
    assert_eq!(
        need(NeedKind::Potash).verdict,
        Verdict::Enough,
        "{}",
        need(NeedKind::Potash).answer
    );

    // Phosphate: 89.7 kg/ha is 39.15 g of P. 1.2 g are held; the biochar gives 0.96 g (a
    // tenth), the compost 0.4 × 48.9 g.
    let phosphate = need(NeedKind::Phosphate).given().expect("phosphate is given").likely;
    close(phosphate, (39.15 + 1.2 - 0.96 - 19.55) / 0.4364, 0.5);

    // Lime: from pH 5.5 to 6.5 a loam takes 25 mmol(c)/kg: 2500 kg × 25 × 0.05004 g = 3127 g.
    close(plan.ledger.of(Substance::Alkalinity).wanted.likely, 3127.5, 1.0);
}

/// A rich loam in autumn: nitrate 60 mg/kg in the same 2500 kg of soil is 150 g. Uncharged
/// biochar holds 2.618 % of it in its first month; nothing is fed and nothing is charged.
#[test]
fn the_balance_of_a_rich_bed_in_autumn_comes_out_as_by_hand() {
    let plan = planned(
        "Extraction: Mehlich-3\nSample depth: 0-20 cm\npH 6.5\nNitrate-N 60 ppm\n\
         Phosphorus 130 ppm\nPotassium 300 ppm\nBulk density 1.25 g/cm3\n",
        |case| {
            case.season.today = day(2026, 10, 1);
            case.season.first_frost = day(2026, 11, 5);
            case.season.planting = day(2027, 5, 1);
        },
    );
    assert_eq!(plan.path, Path::UnchargedAfterHarvest);
    close(plan.dose.mass.likely, 8.0, 0.01);
    let nitrate = plan.ledger.of(Substance::NitrateN);
    close(nitrate.in_store.expect("measured").likely, 150.0, 0.1);
    close(nitrate.held.likely, 3.928, 0.005);
    assert!(nitrate.brought.is_empty(), "{:?}", nitrate.brought);

    // Phosphorus in excess: no more than half of what crops take out, 1.47 g/m² ÷ 2 × 10 m².
    // Of the hardwood's 9.6 g a tenth counts.
    let phosphorus = plan.ledger.of(Substance::Phosphorus);
    close(phosphorus.ceiling.as_ref().expect("a ceiling").most, 7.35, 0.01);
    close(phosphorus.counts(), 0.96, 0.001);
    // Potassium in surplus: 12.1 g/m² × 10 m², and the biochar's 64 g all count.
    let potassium = plan.ledger.of(Substance::Potassium);
    close(potassium.ceiling.as_ref().expect("a ceiling").most, 121.0, 0.1);
    close(potassium.counts(), 64.0, 0.01);
    assert!(plan.needs.iter().all(|need| need.given().is_none()));
    assert!(plan.charge.is_none());
}
