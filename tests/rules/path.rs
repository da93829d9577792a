//! The path of a bed, and what is said for and against it, by gardens that a
//! gardener would put in one sentence.

use std::collections::BTreeSet;

use emberloam_engine::case::{BagState, BedKind, ChargeSource, Feedstock, Winter};
use emberloam_engine::outcome::JudgedReading;
use emberloam_engine::plan::cautions::Caution;
use emberloam_engine::plan::{Path, Plan, RULES, RuleName, Speaks};
use emberloam_engine::quantity::{Band, Unit};
use emberloam_engine::question::QuestionId;
use emberloam_engine::ranges::Level;
use emberloam_engine::soil::{Amount, Method, PlantGroup, Property, Texture};
use emberloam_engine::sources::Grade;

use crate::bed::Bed;
use crate::{close, day};

use Level::{Excess, High, Low};
use Property::{
    AmmoniumN, Calcium, Cec, Ec, Lead, Magnesium, NitrateN, OrganicMatter, Ph, Phosphorus,
    Potassium, SaltPh, Sar, Sodium, Sulfur,
};

/// One sentence, one bed, one path, and the rule that must be among the reasons.
type Situated = (&'static str, Bed, Path, RuleName);

fn cases() -> Vec<Situated> {
    use Path::{ChargeFirst, Charged, None as NoBiochar, UnchargedAfterHarvest as Uncharged};
    let content = Bed::content;
    let surplus = Bed::surplus;
    vec![
        ("a surplus before winter", surplus().autumn(), Uncharged, RuleName::NitrateSurplus),
        ("the same, with time to spare", surplus().autumn(), Uncharged, RuleName::TimeEnough),
        ("a surplus and no dates", surplus(), Uncharged, RuleName::NitrateSurplus),
        (
            "a surplus, planting in three weeks",
            surplus().planting_in(21),
            Charged,
            RuleName::PlantingSoon,
        ),
        (
            "a surplus, planting in 27 days",
            surplus().planting_in(27),
            Charged,
            RuleName::PlantingSoon,
        ),
        (
            "a surplus, planting in 28 days",
            surplus().planting_in(28),
            Uncharged,
            RuleName::TimeIsShort,
        ),
        (
            "a surplus, planting in 55 days",
            surplus().planting_in(55),
            Uncharged,
            RuleName::TimeIsShort,
        ),
        (
            "a surplus, planting in 56 days",
            surplus().planting_in(56),
            Uncharged,
            RuleName::TimeEnough,
        ),
        (
            "a surplus under a growing crop with no end in sight",
            surplus().with(|c| {
                c.season.today = day(2026, 6, 10);
                c.season.planting = day(2026, 5, 1);
            }),
            Charged,
            RuleName::GrowingNow,
        ),
        (
            "a surplus under a crop that is off in autumn",
            surplus().with(|c| {
                c.season.today = day(2026, 6, 10);
                c.season.planting = day(2026, 5, 1);
                c.season.harvest = day(2026, 9, 15);
            }),
            Uncharged,
            RuleName::NitrateSurplus,
        ),
        (
            "rich in P, K and Ca, nitrate never tested",
            content()
                .without(NitrateN)
                .level(Phosphorus, Excess)
                .level(Potassium, High)
                .level(Calcium, High)
                .autumn(),
            Uncharged,
            RuleName::GeneralSurplus,
        ),
        (
            "rich in potassium only, nitrate never tested",
            content().without(NitrateN).level(Potassium, High),
            NoBiochar,
            RuleName::NothingShort,
        ),
        (
            "rich in Ca and Mg only, nitrate never tested",
            content().without(NitrateN).level(Calcium, High).level(Magnesium, High),
            NoBiochar,
            RuleName::NothingShort,
        ),
        (
            "a surplus, but the only bag is charged",
            surplus().autumn().state(BagState::Charged),
            Uncharged,
            RuleName::ChargedBagOnSurplus,
        ),
        (
            "a surplus on sand",
            surplus().autumn().texture(Some(Texture::Sand)),
            Charged,
            RuleName::Sandy,
        ),
        (
            "a surplus of nitrate before winter, short of potassium",
            surplus().autumn().level(Potassium, Low),
            Uncharged,
            RuleName::HoldThenFeed,
        ),
        (
            "a lawn with a surplus",
            surplus().autumn().with(|c| {
                c.bed.kind = Some(BedKind::Lawn);
                c.season.planting = None;
            }),
            NoBiochar,
            RuleName::RootsAllYear,
        ),
        (
            "a lawn short of potassium",
            content().level(Potassium, Low).with(|c| c.bed.kind = Some(BedKind::Lawn)),
            Charged,
            RuleName::PotassiumShort,
        ),
        (
            "pots of sandy mix",
            content()
                .texture(Some(Texture::LoamySand))
                .with(|c| c.bed.kind = Some(BedKind::Container)),
            Charged,
            RuleName::Sandy,
        ),
        ("poor in nitrogen", content().level(NitrateN, Low), Charged, RuleName::NitrogenShort),
        (
            "poor in phosphorus",
            content().level(Phosphorus, Low),
            Charged,
            RuleName::PhosphorusShort,
        ),
        (
            "poor, and the only bag is uncharged",
            content().level(Potassium, Low).state(BagState::Uncharged),
            ChargeFirst,
            RuleName::UnchargedOnHand,
        ),
        (
            "poor, and the bag is charged",
            content().level(Potassium, Low).state(BagState::Charged),
            Charged,
            RuleName::PotassiumShort,
        ),
        (
            "P in excess and N short",
            content().level(Phosphorus, Excess).level(NitrateN, Low),
            Charged,
            RuleName::ChargeWithoutPhosphorus,
        ),
        (
            "an exchange capacity of 4.9",
            content().texture(None).cec(4.9),
            Charged,
            RuleName::LowExchangeCapacity,
        ),
        (
            "an exchange capacity of 5",
            content().texture(None).cec(5.0),
            NoBiochar,
            RuleName::NothingShort,
        ),
        ("everything sufficient", content(), NoBiochar, RuleName::NoGainExpected),
        (
            "everything sufficient, planting in three weeks",
            content().planting_in(21),
            NoBiochar,
            RuleName::NothingShort,
        ),
        (
            "everything sufficient, acid",
            content().measure(Ph, 5.4, Unit::None, None),
            NoBiochar,
            RuleName::AcidSoil,
        ),
        ("nothing known", Bed::default(), NoBiochar, RuleName::NothingJudged),
        (
            "peat short of nitrogen",
            content().texture(None).level(NitrateN, Low).measure(
                OrganicMatter,
                20.0,
                Unit::Percent,
                None,
            ),
            Charged,
            RuleName::OrganicSoil,
        ),
        (
            "only sand known",
            Bed::default().texture(Some(Texture::Sand)),
            NoBiochar,
            RuleName::NothingJudged,
        ),
        (
            "a blueberry bed short of nitrogen",
            content().level(NitrateN, Low).with(|c| c.plants = Some(PlantGroup::AcidLovers)),
            NoBiochar,
            RuleName::PhPastLimit,
        ),
        (
            "a sodic bed short of nitrogen",
            content().level(NitrateN, Low).esp(15.0),
            NoBiochar,
            RuleName::Sodic,
        ),
        (
            "a bed with sodium just below the limit",
            content().level(NitrateN, Low).esp(14.9),
            Charged,
            RuleName::NitrogenShort,
        ),
        (
            "a saline bed short of nitrogen",
            content().level(NitrateN, Low).ece(4.0),
            NoBiochar,
            RuleName::Saline,
        ),
        (
            "a slightly saline bed short of nitrogen",
            content().level(NitrateN, Low).ece(3.9),
            Charged,
            RuleName::RatherSaline,
        ),
        (
            "salty by the 1:1 reading",
            content().level(NitrateN, Low).measure(Ec, 2.8, Unit::DsPerM, Some(Method::Water1To1)),
            NoBiochar,
            RuleName::SaltyOneToOne,
        ),
        (
            "at the limit of the 1:1 reading, which is salty as paste",
            content().level(NitrateN, Low).measure(Ec, 2.7, Unit::DsPerM, Some(Method::Water1To1)),
            NoBiochar,
            RuleName::Saline,
        ),
        (
            "leaded soil under vegetables",
            content().measure(Lead, 250.0, Unit::MgPerKg, Some(Method::TotalAcid)),
            NoBiochar,
            RuleName::Leaded,
        ),
        (
            "a sodium adsorption ratio of 13",
            content().level(NitrateN, Low).measure(Sar, 13.0, Unit::None, None),
            NoBiochar,
            RuleName::Sodic,
        ),
        (
            "a sodium adsorption ratio of 12.9",
            content().level(NitrateN, Low).measure(Sar, 12.9, Unit::None, None),
            Charged,
            RuleName::NitrogenShort,
        ),
        (
            "manure biochar on high phosphorus, short of nitrogen",
            content().level(NitrateN, Low).level(Phosphorus, High).feedstock(Feedstock::Manure),
            NoBiochar,
            RuleName::PhosphorusPastLimit,
        ),
        (
            "an acid biochar for acid-loving plants short of nitrogen",
            content().level(NitrateN, Low).measure(Ph, 4.8, Unit::None, None).with(|c| {
                c.plants = Some(PlantGroup::AcidLovers);
                c.biochar.ph = Some(5.0);
                c.biochar.liming_percent = Some(0.0);
            }),
            Charged,
            RuleName::NitrogenShort,
        ),
        (
            "only a salt pH of 7.1",
            content().level(NitrateN, Low).without(Ph).measure(SaltPh, 7.1, Unit::None, None),
            NoBiochar,
            RuleName::PhPastLimit,
        ),
        (
            "a biochar as salty as poultry litter",
            content()
                .level(NitrateN, Low)
                .feedstock(Feedstock::Manure)
                .with(|c| c.biochar.ec = Some(100.0)),
            NoBiochar,
            RuleName::SaltyBiochar,
        ),
        (
            "manure biochar on too much phosphorus",
            content().level(NitrateN, Low).level(Phosphorus, Excess).feedstock(Feedstock::Manure),
            NoBiochar,
            RuleName::PhosphorusPastLimit,
        ),
        (
            "pH 7.5 and short of nitrogen",
            content().level(NitrateN, Low).measure(Ph, 7.5, Unit::None, None),
            NoBiochar,
            RuleName::PhPastLimit,
        ),
        (
            "pH 7.4, softwood, short of nitrogen",
            content()
                .level(NitrateN, Low)
                .measure(Ph, 7.4, Unit::None, None)
                .feedstock(Feedstock::Softwood),
            Charged,
            RuleName::NitrogenShort,
        ),
        (
            "pH 7.8 and ash-rich straw biochar",
            surplus()
                .autumn()
                .measure(Ph, 7.8, Unit::None, None)
                .feedstock(Feedstock::GrassOrStraw),
            NoBiochar,
            RuleName::PhPastLimit,
        ),
        (
            "softwood biochar where the pH is above the plants' range",
            content()
                .level(NitrateN, Low)
                .measure(Ph, 7.2, Unit::None, None)
                .feedstock(Feedstock::Softwood),
            Charged,
            RuleName::PhAboveRange,
        ),
        (
            "judged by remembered ranges only",
            content().level_by(Potassium, Low, Some(Method::Mehlich1)),
            Charged,
            RuleName::JudgedFromMemory,
        ),
        (
            "a southern garden in autumn",
            surplus().with(|c| {
                c.season.today = day(2027, 3, 25);
                c.season.harvest = day(2027, 4, 10);
                c.season.first_frost = day(2027, 5, 20);
                c.season.planting = day(2027, 10, 1);
            }),
            Uncharged,
            RuleName::TimeEnough,
        ),
        (
            "a surplus in the tropics",
            surplus().autumn().with(|c| c.season.winter = Some(Winter::None)),
            Uncharged,
            RuleName::NitrateSurplus,
        ),
    ]
}

/// Source: the published logic of matching biochar to soil (Guo 2020, Dai
/// 2020, Jeffery 2011 and 2017; opened), put together by our own choice.
#[test]
fn each_garden_gets_its_path_and_its_reason() {
    for (sentence, bed, path, rule) in cases() {
        let plan = bed.plan();
        assert_eq!(plan.path, path, "{sentence}: {:?}", bed.fired());
        assert!(plan.reasons.iter().any(|r| r.rule == rule), "{sentence}: no {rule:?}");
        assert!(plan.headline.ends_with('.') && plan.headline.len() > 20, "{sentence}");
        assert!(plan.reasons.iter().any(|r| r.speaks_for), "{sentence}: nothing speaks for it");
    }
}

#[test]
fn every_rule_is_reached_by_some_garden_and_missed_by_another() {
    let fired: Vec<BTreeSet<_>> = cases()
        .iter()
        .map(|(_, bed, ..)| bed.fired().into_iter().map(RuleName::name).collect())
        .collect();
    for rule in RULES {
        assert!(
            fired.iter().any(|f| f.contains(rule.name.name())),
            "{} is never reached",
            rule.name.name()
        );
        assert!(
            fired.iter().any(|f| !f.contains(rule.name.name())),
            "{} always holds",
            rule.name.name()
        );
        assert!(!rule.sources.is_empty(), "{} names no source", rule.name.name());
    }
    let names: BTreeSet<_> = RULES.iter().map(|r| r.name.name()).collect();
    assert_eq!(names.len(), RULES.len(), "two rules share a name");
}

#[test]
fn no_forbidding_rule_rests_on_memory_alone() {
    for rule in RULES.iter().filter(|r| r.speaks == Speaks::Forbids) {
        assert!(rule.sources.iter().any(|c| c.grade != Grade::FromMemory), "{}", rule.name.name());
    }
}

#[test]
fn reasons_come_both_ways() {
    let bed = Bed::surplus().planting_in(21);
    let plan = bed.plan();
    let against: Vec<_> = plan.reasons.iter().filter(|r| !r.speaks_for).map(|r| r.rule).collect();
    assert_eq!(
        against,
        [RuleName::NitrateSurplus, RuleName::OtherSurplus, RuleName::NoGainExpected]
    );
    let soon = plan.reasons.iter().find(|r| r.rule == RuleName::PlantingSoon).unwrap();
    assert!(soon.speaks_for && soon.grounds.inputs.iter().any(|i| i.value == "21"));
}

#[test]
fn what_would_change_the_plan_is_really_tried() {
    let said = |bed: &Bed, part: &str| bed.plan().would_change.iter().any(|s| s.contains(part));
    let bed = Bed::surplus().autumn();
    assert!(said(&bed, "within three weeks of clearing the bed: charged biochar"));
    assert!(said(&bed, "acid-loving plants: no biochar now"));
    assert!(!said(&bed, "sandy"), "the texture is known");
    let unknown = bed.clone().texture(None).without(Calcium);
    assert!(said(&unknown, "the soil is sandy: charged biochar"));
    assert!(unknown.plan().provisional);
    assert!(unknown.asked().contains(&QuestionId::Texture));
    let settled = bed.with(|c| {
        c.plants = Some(PlantGroup::RootCrops);
        c.biochar.state = Some(BagState::Uncharged);
    });
    assert!(!settled.plan().provisional, "{:?}", settled.plan().would_change);
    let alkaline = Bed::content()
        .level(NitrateN, Low)
        .measure(Ph, 7.47, Unit::None, None)
        .feedstock(Feedstock::Hardwood)
        .with(|c| c.biochar.liming_percent = Some(12.0));
    assert!(said(&alkaline, "softwood"));
    let untested = Bed::content().without(NitrateN);
    assert!(said(&untested, "nitrate test comes out high: uncharged biochar after harvest"));
    assert!(said(&untested, "nitrate test comes out low: charged biochar"));
}

#[test]
fn an_exchange_capacity_near_the_limit_is_tried_on_both_sides() {
    let changes = |cec| Bed::content().texture(None).cec(cec).plan().lines.join(" ");
    for near in [4.95, 5.05] {
        let said = changes(near);
        assert!(said.contains("exchange capacity") && said.contains("published line"), "{said}");
    }
    assert!(!changes(9.0).contains("capacity"));
}

#[test]
fn a_reason_names_the_range_it_was_judged_by() {
    let bed = Bed::content().level(Potassium, Low);
    let outcome = bed.outcome();
    let of_potassium = |r: &&JudgedReading| r.property == Potassium;
    let judged = outcome.samples[0].readings.iter().find(of_potassium).unwrap();
    let source = judged.finding.source.expect("a range that says whose it is");
    let plan = outcome.plan;
    let reason = plan.reasons.iter().find(|r| r.rule == RuleName::PotassiumShort).unwrap();
    assert_eq!(
        (reason.grounds.inputs[0].value.as_str(), reason.grounds.inputs[0].by),
        ("low", Some(source))
    );
}

#[test]
fn only_questions_that_matter_are_asked() {
    use QuestionId::{
        Area, ChargeWith, Planting, Plants, Texture as T, Today, Winter, WorkedDepth,
    };
    // Nitrogen has a rate without a test, so the size of the bed is asked for it.
    assert_eq!(Bed::default().asked(), [Area, WorkedDepth]);
    let asked = Bed::surplus().asked();
    for id in [Plants, Planting, Winter, Today, Area, WorkedDepth] {
        assert!(asked.contains(&id), "{id:?}");
    }
    assert!(!asked.contains(&T) && !asked.contains(&ChargeWith));
    let poor = Bed::content().level(Potassium, Low);
    assert!(poor.asked().contains(&QuestionId::BagState));
    assert!(poor.asked().contains(&ChargeWith));
    let full = Bed::surplus().autumn().with(|c| {
        c.plants = Some(PlantGroup::MixedVegetables);
        c.bed.area_m2 = Some(10.0);
        c.bed.depth_cm = Some(15.0);
        c.biochar.state = Some(BagState::Uncharged);
    });
    assert_eq!(full.asked(), []);
}

#[test]
fn a_low_nitrate_test_in_autumn_is_a_weak_reason() {
    let bed = Bed::content().level(NitrateN, Low).autumn().with(|c| {
        c.plants = Some(PlantGroup::MixedVegetables);
        c.biochar.state = Some(BagState::NoneYet);
    });
    let plan = bed.plan();
    assert!(plan.provisional);
    let reason = plan.reasons.iter().find(|r| r.rule == RuleName::NitrogenShort).unwrap();
    assert!(reason.text.contains("test again nearer the day"));
}

fn amount(plan: &Plan, name: &str) -> Band {
    plan.amounts.iter().find(|f| f.name == name).unwrap_or_else(|| panic!("no {name}")).band
}

#[test]
fn absurd_answers_give_finite_numbers_and_say_what_was_assumed() {
    let odd = [0.0, -3.0, 1e9, f64::NAN, f64::INFINITY, 1e-300];
    for value in odd {
        for bed in [Bed::surplus().autumn(), Bed::content().level(Potassium, Low)] {
            let bed = bed.ppm(Potassium, 100.0).ppm(Sodium, 0.0).with(|c| {
                c.bed.area_m2 = Some(value);
                c.bed.depth_cm = Some(value);
                c.biochar.share_percent = Some(value);
                c.biochar.bag_litres = Some(value);
                c.biochar.bulk_density = Some(value);
                c.biochar.ph = Some(value);
                c.biochar.liming_percent = Some(value);
                c.biochar.ec = Some(value);
            });
            let plan = bed.plan();
            let charging = plan.charge.iter().flat_map(|c| &c.figures);
            let effects = plan.effects.iter().map(|e| &e.change);
            for figure in plan.amounts.iter().chain(charging).chain(effects) {
                let Band { low, likely, high } = figure.band;
                assert!(
                    low.is_finite() && high.is_finite() && low <= likely && likely <= high,
                    "{value}: {} {low} {likely} {high}",
                    figure.name
                );
            }
        }
    }
    let none = Bed::surplus().autumn().with(|c| c.bed.area_m2 = Some(0.0));
    let plan = none.plan();
    let volume = plan.amounts.iter().find(|f| f.name == "biochar-volume").unwrap();
    assert!(volume.grounds.assumed.iter().any(|a| a.ends_with("the area of the bed isn't known.")));
    close(volume.band.likely, 7.5, 1e-9);
    assert!(none.asked().contains(&QuestionId::Area));
}

/// Ten litres of biochar of 200 kg/m³: 1 m², 10 cm, 10 %.
fn ten_litres(sources: &[ChargeSource]) -> Bed {
    Bed::content().level(Potassium, Low).feedstock(Feedstock::Hardwood).with(|c| {
        c.bed.area_m2 = Some(2.0);
        c.bed.depth_cm = Some(10.0);
        c.biochar.state = Some(BagState::Uncharged);
        c.biochar.bulk_density = Some(200.0);
        c.charge_with = sources.to_vec();
    })
}

#[test]
fn phosphorus_in_excess_keeps_compost_out_of_the_recipe() {
    let on_hand =
        [ChargeSource::Compost, ChargeSource::Vermicompost, ChargeSource::CompleteFertiliser];
    let bed = ten_litres(&on_hand).level(Phosphorus, Excess).level(NitrateN, Low);
    let charge = bed.plan().charge.unwrap();
    let names: Vec<_> = charge.used.iter().map(|used| used.source.name()).collect();
    assert!(names.contains(&"nitrogen-fertiliser"), "{names:?}");
    for excluded in ["compost", "vermicompost", "complete-fertiliser"] {
        assert!(!names.contains(&excluded), "{names:?}");
    }
    let left_out = |c: &&Caution| c.text.starts_with("Leave the");
    assert_eq!(charge.cautions.iter().filter(left_out).count(), 3);
}

#[test]
fn what_is_charged_already_is_not_charged_again() {
    let bag = |state| Bed::content().level(Potassium, Low).state(state).plan();
    assert!(bag(BagState::Charged).charge.is_none());
    assert!(bag(BagState::NoneYet).charge.is_some());
    assert!(bag(BagState::Uncharged).charge.is_some());
    assert!(Bed::surplus().autumn().plan().charge.is_none());
}

#[test]
fn what_the_bag_prints_replaces_what_is_usual_within_a_tenth() {
    let bed = Bed::surplus().autumn().with(|c| {
        c.bed.area_m2 = Some(10.0);
        c.bed.depth_cm = Some(10.0);
        c.biochar.bulk_density = Some(300.0);
    });
    let mass = amount(&bed.plan(), "biochar-dry-mass");
    close(mass.low, 13.5, 1e-9);
    close(mass.likely, 15.0, 1e-9);
    close(mass.high, 16.5, 1e-9);
}

#[test]
fn nitrogen_to_spare_lowers_the_charging_target() {
    let target = |bed: Bed| bed.plan().charge.expect("it is charged").shares[0].wanted.likely;
    let soon = || ten_litres(&[]).planting_in(21);
    let enough = target(soon());
    let short = target(soon().level(NitrateN, Low));
    let spare = target(soon().level(NitrateN, High));
    assert!(short > enough && enough > spare && spare > 0.0, "{short} {enough} {spare}");
}

/// A surplus with everything measured, in a garden's usual numbers.
fn measured() -> Bed {
    Bed::surplus()
        .ppm(NitrateN, 40.0)
        .ppm(AmmoniumN, 6.0)
        .ppm(Phosphorus, 60.0)
        .ppm(Potassium, 180.0)
        .ppm(Calcium, 1400.0)
        .ppm(Magnesium, 160.0)
        .ppm(Sulfur, 15.0)
        .ppm(Sodium, 40.0)
        .cec(10.0)
}

#[test]
fn charged_biochar_takes_less_than_uncharged() {
    let of = |plan: &Plan, property| {
        plan.effects.iter().find(|e| e.property == property).unwrap().change.band.likely
    };
    let fresh = measured().autumn().feedstock(Feedstock::Softwood).plan();
    let charged = measured()
        .planting_in(21)
        .feedstock(Feedstock::Softwood)
        .with(|c| c.charge_with = vec![ChargeSource::Urine])
        .plan();
    assert_eq!(charged.path, Path::Charged);
    for property in [NitrateN, AmmoniumN] {
        assert!(of(&charged, property) > of(&fresh, property), "{property:?}");
    }
}

#[test]
fn every_number_and_reason_can_be_opened() {
    for (sentence, bed, ..) in cases() {
        let plan = bed.plan();
        let figures = plan.amounts.iter().chain(plan.charge.iter().flat_map(|c| &c.figures));
        for grounds in figures
            .map(|f| &f.grounds)
            .chain(plan.effects.iter().map(|e| &e.change.grounds))
            .chain(plan.reasons.iter().map(|r| &r.grounds))
            .chain(plan.jobs.iter().map(|t| &t.grounds))
            .chain(plan.cautions.iter().map(|c| &c.grounds))
        {
            assert!(!grounds.rule.is_empty() && !grounds.sources.is_empty(), "{sentence}");
        }
    }
}

/// Common practice, no source: fresh low-ash softwood biochar takes
/// nutrients out of reach at first and lets some sodium go; pH unsure.
#[test]
fn fresh_softwood_draws_nutrients_down_in_its_first_weeks() {
    let bed = measured().autumn().feedstock(Feedstock::Softwood).with(|c| {
        c.biochar.state = Some(BagState::Uncharged);
        c.bed.depth_cm = Some(10.0);
    });
    for scale in [1.0, 1.5, 3.0] {
        let mut bed = bed.clone();
        let readings = &mut bed.case.report.samples[0].readings;
        for reading in readings.iter_mut().filter(|r| r.property != Ph) {
            reading.amount = reading.amount.map(|a| Amount::Exactly(a.number() * scale));
        }
        let plan = bed.plan();
        assert_eq!(plan.path, Path::UnchargedAfterHarvest);
        assert_eq!(plan.effects.len(), 10);
        for effect in &plan.effects {
            let expected: &[&str] = match effect.property {
                Sodium => &["up", "up or unsure"],
                Ph => &["unsure"],
                // Sites are no nutrient: little softwood leaves them about as they were.
                Cec => &["up or unsure", "unsure", "down or unsure"],
                // Their own comes at once or with the lime, and about makes up for what is held
                // (Angst & Sohi 2013; charges balance).
                Potassium | Calcium | Magnesium => &["down", "down or unsure", "unsure"],
                _ => &["down", "down or unsure"],
            };
            assert!(
                expected.contains(&effect.direction),
                "× {scale}: {:?} is {} {:?}",
                effect.property,
                effect.direction,
                effect.change.band
            );
        }
    }
}
