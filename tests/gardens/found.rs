//! Gardens in which a rule was broken once, each as small as it went. They are held to all
//! rules again, and to what was mended.

use emberloam_engine::case::{
    Bag, BagState, BedKind, ChargeSource, Crop, Feedstock, ReadingAnswers, Season,
};
use emberloam_engine::day;
use emberloam_engine::plan::ledger::Substance;
use emberloam_engine::plan::needs::{Need, NeedKind, Verdict};
use emberloam_engine::plan::{Hazard, JobKind};
use emberloam_engine::report::{self, Reading};
use emberloam_engine::soil::{Amount, PlantGroup, Property, Texture};
use emberloam_engine::{Case, Outcome, export, interpret};
use time::Date;

use crate::hunt::without_panic;
use crate::rules;

/// A garden with a report, in which today is the first of January 2026.
fn garden(lines: &str) -> Case {
    let grid = report::open(lines.as_bytes()).expect("a text");
    let report = report::read(&grid).expect("a report");
    let season = Season { today: on("2026-01-01"), ..Season::default() };
    Case { report, season, ..Case::default() }
}

fn on(text: &str) -> Option<Date> {
    let date = day::parse(text);
    assert!(date.is_some(), "{text}");
    date
}

/// The outcome of a garden that breaks no rule.
fn sound(case: &Case) -> Outcome {
    for broken in [rules::broken, rules::broken_in_writing] {
        let faults = without_panic(case, broken);
        assert!(faults.is_empty(), "{faults:?}");
    }
    interpret(case)
}

fn need(outcome: &Outcome, kind: NeedKind) -> &Need {
    outcome.plan.needs.iter().find(|need| need.kind == kind).expect("the need is answered")
}

/// Another result of the first reading, as no report prints it.
fn with_result(mut case: Case, property: Property, value: f64) -> Case {
    let reading: &mut Reading = &mut case.report.samples[0].readings[0];
    assert_eq!(reading.property, property);
    reading.amount = Some(Amount::Exactly(value));
    case
}

/// A carbon stock was less than nothing.
#[test]
fn a_result_below_nothing_is_refused() {
    let mut case = garden("Organic carbon 2 %");
    case.reading = ReadingAnswers { depth_cm: Some(5.0), ..ReadingAnswers::default() };
    let outcome = sound(&with_result(case, Property::OrganicCarbon, -1.0));
    let reading = &outcome.samples[0].readings[0];
    assert!(reading.finding.not_judged.is_some(), "{reading:?}");
}

/// The store of sodium had no end.
#[test]
fn a_result_without_end_is_refused() {
    let case = garden("Mehlich-3\nSodium 40 ppm");
    sound(&with_result(case.clone(), Property::Sodium, f64::INFINITY));
    sound(&with_result(case, Property::Sodium, f64::NAN));
}

/// The export held a dash where JSON wants a number.
#[test]
fn a_result_beyond_counting_is_exported_in_words() {
    let case = with_result(garden("Mehlich-3\nZinc 2 ppm"), Property::Zinc, 1e15);
    let outcome = sound(&case);
    let modus = export::modus(&case.report, &outcome, "code", "2026-11-25");
    let read: Result<serde_json::Value, _> = serde_json::from_str(&modus);
    assert!(read.is_ok(), "{modus}");
}

/// Sample depths without end did the same, and gave a stock of nitrate without end.
#[test]
fn a_sample_that_begins_or_ends_nowhere_tells_no_depth() {
    for layer in [(f64::NEG_INFINITY, 0.0), (0.0, 1e15), (0.0, f64::NAN), (30.0, 30.0)] {
        let mut case = garden("Nitrate-N 5 ppm\nOrganic matter 28 %");
        case.report.samples[0].depth_cm = Some(layer);
        sound(&case);
    }
}

/// A date before the year 0 was written and could not be read; it is told where it is read.
#[test]
fn a_day_before_all_years_does_no_harm() {
    for date in [Date::MIN, Date::MAX] {
        let mut case = garden("Mehlich-3\nPotassium 10 ppm");
        case.season.today = Some(date);
        case.season.planting = Some(date);
        case.season.last_frost = Some(date);
        sound(&case);
    }
}

/// Five litres brought 14 g of potassium to a square metre that may get 12, and sodium to a
/// soil with too much of it.
#[test]
fn compost_keeps_to_what_may_come_in() {
    for (lines, substance) in [
        ("Mehlich-3\nPotassium 386 ppm", Substance::Potassium),
        ("Sodium adsorption ratio 33.6", Substance::Sodium),
        ("CEC 1 meq/100g", Substance::Sodium),
    ] {
        let mut case = garden(lines);
        case.bed.depth_cm = Some(4.0);
        case.feeds.compost_litres = Some(5.0);
        let outcome = sound(&case);
        let account = outcome.plan.ledger.of(substance);
        assert!(account.ceiling.as_ref().is_some_and(|c| c.binds || c.most == 0.0), "{account:?}");
        let answer = &need(&outcome, NeedKind::Compost).answer;
        assert!(answer.contains("only so much") || answer.contains("rest here"), "{answer}");
    }
}

/// The bag brought more phosphorus than the highest published dressing, to fill the nitrogen.
#[test]
fn a_bag_of_fertiliser_keeps_to_what_may_come_in() {
    for lines in
        ["pH 6.5", "Mehlich-3\nPhosphorus 1 ppm", "Mehlich-3\nPhosphorus 1 ppm\nPotassium 200 ppm"]
    {
        for bag in [[5.0, 10.0, 10.0], [10.0, 5.0, 5.0]] {
            let mut case = garden(lines);
            case.biochar = Bag { state: Some(BagState::Charged), ..Bag::default() };
            case.feeds.fertiliser = Some(bag);
            let outcome = sound(&case);
            let bag = need(&outcome, NeedKind::Fertiliser);
            assert_eq!(bag.verdict, Verdict::Give, "{}", bag.answer);
        }
    }
}

/// Urine soaks in for a week, but beside compost it lies for four.
#[test]
fn manure_is_counted_from_the_day_all_of_the_charge_is_ready() {
    let mut case = garden("Mehlich-3\nPotassium 10 ppm\nCEC 1 meq/100g");
    case.season.harvest = on("2026-05-08");
    case.bed.kind = Some(BedKind::Lawn);
    case.charge_with = ChargeSource::ALL.to_vec();
    sound(&case);
}

/// Frost put the spreading off to June, a day before the beans were picked; and a crop that is
/// planted in July got manure in June.
#[test]
fn manure_is_counted_from_the_day_of_spreading() {
    let mut case = garden("Mehlich-3\nNitrate-N 1 ppm\nPhosphorus 1 ppm");
    case.bed.kind = Some(BedKind::Lawn);
    case.season.first_frost = on("2026-01-14");
    case.charge_with = vec![ChargeSource::AgedManure];
    let beans = |planting, harvest| Crop { name: "beans".into(), planting, harvest };
    case.season.crops = vec![beans(None, on("2026-06-14"))];
    sound(&case);
    case.bed.kind = None;
    case.season.first_frost = None;
    case.season.crops = vec![beans(on("2026-07-26"), on("2026-09-10"))];
    sound(&case);
}

/// Spreading was told for the day on which charging began.
#[test]
fn biochar_is_spread_once_it_is_charged() {
    let mut case = garden("Mehlich-3\nPotassium 10 ppm");
    case.season.planting = on("2026-01-22");
    sound(&case);
}

/// The second dose of lime fell on the days on which the manure is spread.
#[test]
fn a_second_dose_of_lime_keeps_away_from_ammonium() {
    let mut case = garden("Mehlich-3\npH 4.2\nPotassium 10 ppm");
    case.bed.texture = Some(Texture::ClayLoam);
    case.season.planting = on("2026-07-28");
    case.charge_with = vec![ChargeSource::AgedManure];
    let outcome = sound(&case);
    let limes = outcome.plan.jobs.iter().filter(|job| job.kind == JobKind::Lime);
    assert!(limes.count() > 1);
}

/// Who wished for a pH of 7.2 got lime, and was told not to lime as well. From 6.9 it is no more
/// than a hair now: no dose goes past 7.0, where the range of these plants ends.
#[test]
fn lime_is_not_warned_against_where_it_is_given() {
    let mut case = garden("Mehlich-3\npH 6.6\nBuffer pH (Adams-Evans) 7.2\nPhosphorus 1 ppm");
    case.feeds.target_ph = Some(7.2);
    let outcome = sound(&case);
    assert!(need(&outcome, NeedKind::Lime).given().is_some());
}

/// One name stood for the capacity of the soil, of the biochar, and for a sum of bases.
#[test]
fn the_exchange_capacity_is_that_of_the_soil() {
    let mut case = garden(
        "Mehlich-3\npH 4.2\nPotassium 10 ppm\nCalcium 40 ppm\nMagnesium 215 ppm\nCEC 1 meq/100g",
    );
    case.charge_with = vec![ChargeSource::Compost];
    sound(&case);
}

/// A plan asked for answers that no question asks for.
#[test]
fn an_empty_report_is_told_to_be_tested() {
    let outcome = sound(&garden("pH 6.5"));
    assert!(outcome.plan.headline.contains("Have them tested"), "{}", outcome.plan.headline);
    let outcome = sound(&garden("Phosphorus 20 ppm"));
    assert!(outcome.plan.headline.contains("answer what the report leaves open"));
}

/// The view of working in dug half of the biochar alone, and dug where the job did not.
#[test]
fn what_is_worked_in_is_what_is_spread() {
    let mut case = garden("Mehlich-3\nPotassium 10 ppm");
    case.biochar = Bag { feedstock: Some(Feedstock::Hardwood), ..Bag::default() };
    case.charge_with = vec![ChargeSource::Compost];
    case.season.planting = on("2026-06-01");
    sound(&case);
    case.season.planting = on("2025-10-01");
    sound(&case);
}

/// A lawn got half of its year's nitrogen at once, which is more than the most at one time.
#[test]
fn a_lawn_is_fed_in_parts_that_do_not_burn_it() {
    let mut case = garden("pH 6.5");
    case.plants = Some(PlantGroup::Lawn);
    let outcome = sound(&case);
    assert_eq!(need(&outcome, NeedKind::Nitrogen).doses, 3);
    assert_eq!(outcome.plan.jobs.iter().filter(|job| job.kind == JobKind::Feed).count(), 3);
}

/// Twice the gypsum of one dose was told for one day, and a pot of sodic soil got some too.
#[test]
fn gypsum_is_spread_in_doses_and_not_in_pots() {
    let mut case = garden("SAR 25\nCEC 25 meq/100g\nECe 2 dS/m");
    case.bed.depth_cm = Some(30.0);
    let outcome = sound(&case);
    assert!(need(&outcome, NeedKind::Gypsum).doses > 1);
    case.bed.kind = Some(BedKind::Container);
    assert!(need(&sound(&case), NeedKind::Gypsum).given().is_none());
}

/// Three dressings of Epsom salts told less than the need, whose rest nobody mentioned.
#[test]
fn what_three_dressings_cannot_bring_waits_for_the_next_test() {
    let mut case = garden("Mehlich-3\npH 6.8\nMagnesium 20 ppm\nCalcium 3000 ppm\nCEC 20 meq/100g");
    case.bed.depth_cm = Some(60.0);
    let magnesium = sound(&case).plan.needs;
    let magnesium = magnesium.iter().find(|n| n.kind == NeedKind::Magnesium).expect("a need");
    assert_eq!(magnesium.doses, 3, "{magnesium:?}");
    assert!(magnesium.steps.iter().any(|step| step.contains("give the rest then")));
}

/// Lime and the nitrogen fed before planting stood in the same week.
#[test]
fn lime_and_nitrogen_keep_apart() {
    let mut case = garden("pH 4.8");
    case.bed.texture = Some(Texture::Clay);
    for planting in ["2026-01-10", "2026-01-20", "2026-02-10", "2026-04-01", "2026-07-20"] {
        case.season.planting = on(planting);
        let outcome = sound(&case);
        assert!(need(&outcome, NeedKind::Lime).doses > 1);
    }
}

/// Who wished for a pH of 4 got sulfur down to it, whatever grows there.
#[test]
fn no_wish_takes_the_ph_out_of_the_plants_range() {
    for (ph, wished) in [(6.9, 4.0), (6.5, 4.5), (7.2, 5.0), (5.5, 7.5), (6.3, 7.5)] {
        let mut case = garden(&format!("pH {ph}"));
        case.bed.texture = Some(Texture::Loam);
        case.feeds.target_ph = Some(wished);
        let outcome = sound(&case);
        assert!(outcome.plan.needs.iter().any(|n| n.given().is_some() && n.in_all.is_some()));
    }
}

/// A salty bed was fed, because nobody said how the salts were measured.
#[test]
fn what_is_saline_by_every_method_is_saline() {
    let outcome = sound(&garden("EC 5 dS/m\npH 6.5"));
    assert_eq!(outcome.plan.hazards, [Hazard::Salts]);
    assert!(sound(&garden("EC 1.2 dS/m\npH 6.5")).plan.hazards.is_empty());
}

/// A region's pH for all plants judged acid lovers too, and sulfur for them went below it.
#[test]
fn a_regions_ph_for_all_plants_is_not_that_of_acid_lovers() {
    for lines in ["pH 6.55\nP-rem 1", "Salt pH 5.85\nPBI 10"] {
        let mut case = garden(lines);
        case.plants = Some(PlantGroup::AcidLovers);
        case.bed.texture = Some(Texture::Sand);
        assert!(!case.report.regions.is_empty(), "{lines}: its words speak for a region");
        sound(&case);
    }
}
