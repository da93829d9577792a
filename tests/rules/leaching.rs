//! Nitrate over a wet season.

use emberloam_engine::case::{Bag, BagState, WetSeason};
use emberloam_engine::details::{burns, scotter, winter_loss};
use emberloam_engine::soil::{PlantGroup, Texture};
use emberloam_engine::{Case, report};

use crate::{close, viewed};

fn garden(text: &str) -> Case {
    let report =
        report::open(text.as_bytes()).and_then(|grid| report::read(&grid)).expect("it reads");
    let mut case = Case { report, ..Case::default() };
    case.biochar =
        Bag { state: Some(BagState::Uncharged), share_percent: Some(10.0), ..Bag::default() };
    case.bed.depth_cm = Some(15.0);
    case.bed.area_m2 = Some(10.0);
    case.bed.texture = Some(Texture::Loam);
    case
}

const RICH: &str =
    "pH 6.5\nBulk density 1.3 g/cm3\nNO3-N 50 ppm\nP (Mehlich-3) 150 ppm\nK (Mehlich-3) 300 ppm\n";

#[test]
fn a_rich_bed_loses_much_and_biochar_keeps_some() {
    let mut case = garden(RICH);
    case.season.wet_season = Some(WetSeason::Wet);
    let loss = viewed(&case, winter_loss).expect("nitrate was measured");
    let find = |name: &str| {
        loss.figures.iter().find(|f| f.name == name).unwrap_or_else(|| panic!("{name}")).band
    };
    // 50 mg/kg in 15 cm at 1.3 g/cm³ are 97.5 kg/ha.
    close(find("nitrate-held").likely, 9.75, 1e-9);
    let (held, lost) = (find("nitrate-held"), find("nitrate-lost"));
    assert!(lost.likely > 0.6 * held.likely && lost.high < held.high);
    let (with, kept) = (find("nitrate-lost-with"), find("nitrate-kept"));
    close(with.likely + kept.likely, lost.likely, 1e-9);
    assert!(kept.likely > 0.0 && kept.likely < 0.4 * lost.likely);
    assert!(loss.text.contains("green manure"));
    // A dry season takes less; sand may lose even more with biochar; grass gains nothing.
    case.season.wet_season = Some(WetSeason::Dry);
    let dry = viewed(&case, winter_loss).expect("nitrate was measured");
    assert!(dry.figures[1].band.likely < lost.likely);
    case.bed.texture = Some(Texture::Sand);
    let sand = viewed(&case, winter_loss).expect("nitrate was measured");
    assert!(sand.figures[3].band.low < 0.0, "{:?}", sand.figures[3]);
    case.plants = Some(PlantGroup::Lawn);
    let lawn = viewed(&case, winter_loss).expect("nitrate was measured");
    if let Some(kept) = lawn.figures.get(3) {
        close(kept.band.likely, 0.0, 1e-9);
    }
}

#[test]
fn no_nitrate_no_number() {
    assert_eq!(viewed(&garden("pH 6.5\nK (Mehlich-3) 100 ppm\n"), winter_loss), None);
}

/// Month by month the same equations stand on the drainage so far; at the end the figures.
#[test]
fn nitrate_is_lost_month_by_month_by_both_equations() {
    let mut case = garden(RICH);
    case.season.wet_season = Some(WetSeason::Wet);
    case.season.latitude = Some(50.0);
    let loss = viewed(&case, winter_loss).expect("nitrate was measured");
    assert_eq!(
        loss.months.iter().filter_map(|m| m.month).collect::<Vec<_>>(),
        [10, 11, 12, 1, 2, 3]
    );
    let find = |name: &str| loss.figures.iter().find(|f| f.name == name).expect(name).band;
    let (held, lost) = (find("nitrate-held"), find("nitrate-lost"));
    // A loam with 2.5 % organic matter holds 27.96 % (Saxton and Rawls).
    let capacity = 27.96;
    let mut drained = 0.0;
    for month in &loss.months {
        drained += month.drains.likely / 10.0;
        close(month.burns.likely, held.likely * burns(drained, capacity, 30.0), 0.05);
        close(month.scotter.likely, held.likely * scotter(drained, capacity, 30.0), 0.05);
        let with = month.with.expect("biochar is advised");
        assert!(with.low <= with.likely && with.likely <= with.high);
        assert!(with.likely < month.burns.likely.max(month.scotter.likely));
    }
    for pair in loss.months.windows(2) {
        assert!(pair[0].burns.likely < pair[1].burns.likely);
        assert!(pair[0].with.unwrap().likely < pair[1].with.unwrap().likely);
    }
    let last = loss.months.last().unwrap();
    close((last.burns.likely + last.scotter.likely) / 2.0, lost.likely, 1e-9);
    close(last.with.unwrap().likely, find("nitrate-lost-with").likely, 1e-9);
    close(find("drainage").likely, 320.0, 1e-9);
}
