//! What can't be bought, the end of additions, and the ways to work a bed.

use emberloam_engine::case::{Bag, BagState, BedKind, Feedstock};
use emberloam_engine::details::work_in::{WorkIn, work_in};
use emberloam_engine::details::{Column, Purchase, Repeats, purchase, repeats};
use emberloam_engine::soil::Texture;
use emberloam_engine::{Case, report};

use crate::viewed;

/// A rich loam, empty until spring, and a fresh bag: 10 m², 10 cm deep.
fn garden(ph: f64) -> Case {
    bed(ph, "NO3-N 48 ppm\nP 160 ppm\nK 320 ppm\nCa 2200 ppm\nMg 260 ppm")
}

/// The same, but poor, so that charged biochar is called for in any bed.
fn poor(kind: Option<BedKind>) -> Case {
    let mut case = bed(6.4, "NO3-N 3 ppm\nP 8 ppm\nK 30 ppm\nCa 900 ppm\nMg 90 ppm");
    case.bed.kind = kind;
    case
}

fn bed(ph: f64, nutrients: &str) -> Case {
    let text = format!(
        "Method: Mehlich-3\nBulk density 1.3 g/cm3\npH {ph}\n{nutrients}\nCEC 14 meq/100 g"
    );
    let report =
        report::open(text.as_bytes()).and_then(|grid| report::read(&grid)).expect("it reads");
    let mut case = Case { report, ..Case::default() };
    case.biochar = Bag {
        state: Some(BagState::Uncharged),
        feedstock: Some(Feedstock::Softwood),
        share_percent: Some(5.0),
        bulk_density: Some(200.0),
        ..Bag::default()
    };
    let day = |text: &str| emberloam_engine::season::day::parse(text);
    case.season.today = day("2026-10-05");
    case.season.harvest = day("2026-10-10");
    case.season.first_frost = day("2026-11-05");
    case.season.planting = day("2027-04-20");
    case.bed.area_m2 = Some(10.0);
    case.bed.depth_cm = Some(10.0);
    case.bed.texture = Some(Texture::Loam);
    case
}

fn bought(case: &Case) -> Purchase {
    viewed(case, purchase).expect("the plan uses biochar")
}

#[test]
fn what_cannot_be_bought_is_said_and_the_rest_stands() {
    let mut case = garden(6.4);
    case.biochar.bag_litres = Some(0.0);
    case.biochar.price = Some(f64::INFINITY);
    case.biochar.moisture_percent = Some(120.0);
    let bought = bought(&case);
    assert_eq!(bought.doubts.len(), 3, "{:?}", bought.doubts);
    assert!(bought.figures.iter().all(|f| f.band.high.is_finite()));
}

fn schedule(case: &Case) -> Repeats {
    viewed(case, repeats).expect("a schedule")
}

fn column<'a>(repeats: &'a Repeats, name: &str) -> &'a Column {
    repeats.columns.iter().find(|c| c.name == name).unwrap_or_else(|| panic!("no {name}"))
}

/// Additions stop at 30 t/ha of all years together, and the reason is said.
///
/// Source: our choice.
#[test]
fn thirty_tonnes_in_all_is_the_end() {
    let mut case = garden(6.0);
    case.biochar.share_percent = Some(20.0);
    case.biochar.years = Some(4);
    case.biochar.liming_percent = Some(0.0);
    let schedule = schedule(&case);
    let tonnes = column(&schedule, "tonnes-in-all");
    // 5 % of 10 cm is 10 t/ha, or 1000 g/m².
    let likely: Vec<f64> = tonnes.years.iter().map(|b| b.likely.round()).collect();
    assert_eq!(likely, [1000.0, 2000.0, 3000.0]);
    assert_eq!(schedule.stops.len(), 1);
    let (year, why) = &schedule.stops[0];
    assert!(*year == 4 && why.contains("30 t/ha"), "{year}: {why}");
    assert!(schedule.text.contains("15 % of the 20 %"), "{}", schedule.text);
    // Acid sand has no such limit.
    let mut sand = garden(5.0);
    sand.bed.texture = Some(Texture::Sand);
    sand.biochar = case.biochar.clone();
    let sand = self::schedule(&sand);
    assert_eq!(column(&sand, "tonnes-in-all").years.len(), 4);
}

fn worked(case: &Case) -> WorkIn {
    viewed(case, work_in).expect("the plan uses biochar")
}

/// Every way of working a bed has steps that name their source, the dust, and
/// amounts that never pass the dose.
///
/// Source: common practice, no source.
#[test]
fn every_kind_of_bed_has_its_steps() {
    let mut seen = Vec::new();
    for kind in [None].into_iter().chain(BedKind::ALL.map(Some)) {
        let done = worked(&poor(kind));
        assert!(done.steps.len() >= 3, "{kind:?}");
        assert!(done.cautions.iter().any(|c| c.text.contains("mask")), "{kind:?}");
        for step in done.steps.iter().chain(&done.cautions) {
            assert!(!step.grounds.sources.is_empty(), "{kind:?}: {}", step.text);
        }
        let text: Vec<String> = done.steps.iter().map(|s| s.text.clone()).collect();
        if kind.is_some_and(|k| k != BedKind::Dug) {
            assert!(!seen.contains(&text), "{kind:?} has the steps of another");
        }
        seen.push(text);
    }
}
