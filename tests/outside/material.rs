//! What biochar is made of, what to buy, how it goes in year by year, and how
//! long it lasts, against published and worked figures.

use emberloam_engine::bag::Material;
use emberloam_engine::case::{
    Bag, BagState, BedKind, CertificateFigure, CertificateItem, Feedstock,
};
use emberloam_engine::details::permanence::{permanence, share_left};
use emberloam_engine::details::work_in::{WorkIn, holes_on_a_square_metre, work_in};
use emberloam_engine::details::{Column, Purchase, Repeats, as_it_comes, purchase, repeats};
use emberloam_engine::quantity::{Band, Figure, Measures};
use emberloam_engine::soil::Texture;
use emberloam_engine::{Case, interpret, report};

use crate::{close, viewed};

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

fn figure<'a>(figures: &'a [Figure], name: &str) -> &'a Figure {
    figures.iter().find(|f| f.name == name).unwrap_or_else(|| panic!("no {name}"))
}

/// A number at the head of an amount in every measure.
fn same(purchase: &Purchase, what: &str) -> f64 {
    let (_, said) = purchase.same.iter().find(|(name, _)| *name == what).expect("a measure");
    said.split(['\u{a0}', ' ']).next().and_then(|n| n.parse().ok()).expect("a number")
}

/// The worked conversions: depth, share and bulk density to L/m², t/ha, lb/1000
/// ft², yd³/1000 ft² and % by mass, soil at 1.3 g/cm³.
///
/// Source: arithmetic from legal definitions (derived).
#[test]
fn the_same_biochar_in_every_measure() {
    let rows = [
        (10.0, 5.0, 200.0, 5.0, 10.0, 204.8, 0.608, 0.769),
        (10.0, 5.0, 250.0, 5.0, 12.5, 256.0, 0.608, 0.962),
        (15.0, 5.0, 200.0, 7.5, 15.0, 307.2, 0.911, 1.0 / 1.3),
        (15.24, 5.0, 200.0, 7.62, 15.24, 312.1, 0.926, 1.0 / 1.3),
        (15.24, 5.0, 250.0, 7.62, 19.05, 390.2, 0.926, 1.25 / 1.3),
    ];
    for (depth, share, density, litres, tonnes, pounds, yards, percent) in rows {
        let mut case = garden(6.4);
        case.bed.depth_cm = Some(depth);
        case.biochar.share_percent = Some(share);
        case.biochar.bulk_density = Some(density);
        case.measures = Measures::Us;
        let bought = bought(&case);
        let area = 10.0;
        close(same(&bought, "litres"), litres * area, 0.06);
        close(same(&bought, "tonnes on a hectare, dry"), tonnes, 0.06);
        close(same(&bought, "pounds on 1000 square feet, dry"), pounds, 0.6);
        // 10 m² are 107.64 sq ft.
        close(same(&bought, "cubic yards"), yards * 0.107_639, 0.0006);
        close(same(&bought, "cubic feet"), yards * 27.0 * 0.107_639, 0.02);
        close(same(&bought, "of the worked soil, by mass"), percent, 0.006);
    }
    case_of_metric_has_no_cubic_yards();
}

fn case_of_metric_has_no_cubic_yards() {
    assert!(bought(&garden(6.4)).same.iter().all(|(name, _)| *name != "cubic yards"));
}

/// 10 m², 10 cm deep, 5 % by volume: 50 L, five 10-L bags, about 10 kg dry. With
/// a quarter of its weight water it weighs 13.3 kg.
///
/// Source: arithmetic (derived).
#[test]
fn bags_price_and_water() {
    let mut case = garden(6.4);
    case.biochar.bag_litres = Some(10.0);
    case.biochar.price = Some(8.5);
    case.biochar.moisture_percent = Some(25.0);
    let first = bought(&case);
    let likely = |name: &str| figure(&first.figures, name).band.likely;
    assert_eq!((likely("bags"), likely("left-over")), (5.0, 0.0));
    close(likely("price"), 42.5, 1e-9);
    close(likely("one-bag-covers"), 2.0, 1e-9);
    close(likely("mass-as-it-comes"), 10.0 / 0.75, 1e-9);
    close(likely("water-carried"), 10.0 / 3.0, 1e-9);
    close(likely("one-bag-weighs"), 2.0 / 0.75, 1e-9);
    case.biochar.bag_litres = Some(40.0);
    let second = bought(&case);
    assert_eq!(figure(&second.figures, "bags").band.likely, 2.0);
    close(figure(&second.figures, "left-over").band.likely, 30.0, 1e-9);
    case.biochar.moisture_percent = None;
    let unknown = figure(&bought(&case).figures, "mass-as-it-comes").clone();
    assert!(unknown.band.high / unknown.band.low > 1.4, "{:?}", unknown.band);
    assert!(!unknown.grounds.assumed.is_empty());
}

/// Wet mass × (1 − water) is the dry mass.
///
/// Source: definition of moisture on a wet basis (derived).
#[test]
fn mass_as_it_comes() {
    let wet = as_it_comes(Band::exactly(10.0), Band::new(0.15, 0.25, 0.40));
    close(wet.low * 0.85, 10.0, 1e-9);
    close(wet.likely * 0.75, 10.0, 1e-9);
    close(wet.high * 0.60, 10.0, 1e-9);
}

/// The share of the carbon that is left after 100 years, by H:C and soil
/// temperature, at the fit's own temperatures: intercept − slope × H:C.
///
/// Source: Woolf et al. 2021, the authors' data refitted (derived).
#[test]
fn what_lasts_a_hundred_years() {
    for (soil, a, b) in [
        (5.0, 1.126, 0.461),
        (8.0, 1.114, 0.550),
        (10.0, 1.095, 0.588),
        (10.9, 1.086, 0.601),
        (15.0, 1.044, 0.636),
        (20.0, 1.006, 0.651),
        (25.0, 0.981, 0.656),
    ] {
        for ratio in [0.2, 0.4, 0.6] {
            close(share_left(ratio, soil), f64::min(a - b * ratio, 1.0), 1e-12);
        }
    }
    close(share_left(0.4, 10.0), 0.86, 0.005);
    // Warmer soil, or a char less charred, never keeps more.
    for step in 0..40 {
        let soil = f64::from(step) * 0.75;
        assert!(share_left(0.5, soil) >= share_left(0.5, soil + 0.75));
        assert!(share_left(0.3, soil) >= share_left(0.35, soil));
    }
}

/// Published tiers of what lasts: 0.65 for chars made at 350 to 450 °C, 0.80 at
/// 450 to 600, 0.89 above; ours, with the H:C usual for the heat and soil at
/// 10.9 °C, lies within its own bounds of them.
///
/// Source: IPCC 2019 refinement (from memory).
#[test]
fn what_lasts_beside_the_published_tiers() {
    for (heat, tier) in [(400.0, 65.0), (525.0, 80.0), (650.0, 89.0)] {
        let mut case = Case::default();
        let (what, value) = (CertificateItem::MadeAt, heat);
        case.biochar.certificate = vec![CertificateFigure { what, value }];
        (case.season.lowest_c, case.season.highest_c) = (Some([5.9; 12]), Some([15.9; 12]));
        let band = permanence(&case).band;
        assert!((band.low..=band.high).contains(&tier), "{heat} °C: {band:?}");
    }
}

/// Measured biochars lie inside the usual bounds of their feedstock, or are
/// named here with the reason.
///
/// Source: opened: hardwood thinnings at about 400 °C (pH 9.25, 240 kg/m³, CEC
/// 145); hardwood of south-west Nigeria (pH 8.32, 320 kg/m³); Leucaena wood above
/// 700 °C (CEC 22.3); corn straw at 400 °C (CEC 38.3); branch wood at 300–500 °C
/// (takes up 3.42–4.03 g/g of water).
#[test]
fn measured_biochars_lie_inside_the_usual_bounds() {
    let of = |feedstock, heat: Option<f64>| {
        let figure = |value| CertificateFigure { what: CertificateItem::MadeAt, value };
        let certificate = heat.map(figure).into_iter().collect();
        Material::of(&Bag { feedstock: Some(feedstock), certificate, ..Bag::default() })
    };
    let inside = |band: Band, value: f64| (band.low..=band.high).contains(&value);
    let thinnings = of(Feedstock::Hardwood, Some(400.0));
    assert!(inside(thinnings.ph, 9.25) && inside(thinnings.bulk_density, 240.0));
    // Named: a CEC of 145 for hardwood is beyond any bound we keep; its method is not told.
    assert!(!inside(thinnings.cec, 145.0));
    let nigeria = of(Feedstock::Hardwood, None);
    assert!(inside(nigeria.ph, 8.32) && inside(nigeria.bulk_density, 320.0));
    let leucaena = of(Feedstock::Hardwood, Some(720.0));
    assert!(inside(leucaena.cec, 22.3), "{:?}", leucaena.cec);
    assert!(inside(of(Feedstock::GrassOrStraw, Some(400.0)).cec, 38.3));
    // Branch wood of unnamed trees: inside what wood takes up.
    let wood = Material::of(&Bag::default());
    assert!(inside(wood.water, 3.42) && inside(wood.water, 4.03), "{:?}", wood.water);
}

/// Liming values of 19 chars ran from 0.275 to 12.8 % CaCO3: all inside what our
/// feedstocks span together.
///
/// Source: Adewumi et al. 2025 (opened).
#[test]
fn liming_values_lie_inside_the_usual_bounds() {
    let spans: Vec<Band> = Feedstock::ALL
        .iter()
        .map(|f| Material::of(&Bag { feedstock: Some(*f), ..Bag::default() }).liming)
        .collect();
    let least = spans.iter().map(|b| b.low).fold(f64::INFINITY, f64::min);
    let most = spans.iter().map(|b| b.high).fold(0.0, f64::max);
    close(least, 0.275, 0.03);
    assert!(most >= 12.8);
}

fn schedule(case: &Case) -> Repeats {
    viewed(case, repeats).expect("a schedule")
}

fn column<'a>(repeats: &'a Repeats, name: &str) -> &'a Column {
    repeats.columns.iter().find(|c| c.name == name).unwrap_or_else(|| panic!("no {name}"))
}

/// Three years of a third each: what is in the soil adds up, and the first year
/// is what the plan says.
///
/// Source: arithmetic (derived).
#[test]
fn a_share_spread_over_years_adds_up() {
    let mut case = garden(6.0);
    case.biochar.share_percent = Some(6.0);
    case.biochar.years = Some(3);
    // A char that hardly limes, so that nothing holds it down.
    case.biochar.liming_percent = Some(0.3);
    let schedule = schedule(&case);
    assert!(schedule.stops.is_empty(), "{:?}", schedule.stops);
    let shares = column(&schedule, "year-share");
    assert_eq!(shares.years.len(), 3);
    for year in &shares.years {
        close(year.likely, 2.0, 1e-9);
    }
    // 2 % of 10 cm is 2 L/m², at 200 kg/m³ 400 g/m².
    let tonnes = column(&schedule, "tonnes-in-all");
    for (year, expected) in tonnes.years.iter().zip([400.0, 800.0, 1200.0]) {
        close(year.likely, expected, 1e-9);
    }
    let plan = interpret(&case).plan;
    close(figure(&plan.amounts, "biochar-volume").band.likely, 20.0, 1e-9);
    close(column(&schedule, "year-volume").years[0].likely, 20.0, 1e-9);
}

/// Potassium is credited to the year it comes in, phosphorus goes on: 4 t/ha of
/// char with 1.0 % K, 45 % of it available, brings 18 kg/ha or 1.8 g/m² each year; with 0.1 %
/// P and 10 % a year 0.04, then 0.08, then 0.12.
///
/// Source: arithmetic (derived); the available shares are our choice within
/// Angst & Sohi 2013 (opened).
#[test]
fn nutrients_are_credited_by_how_they_come() {
    let mut case = garden(6.0);
    case.biochar.share_percent = Some(6.0);
    case.biochar.years = Some(3);
    case.biochar.liming_percent = Some(0.3);
    case.biochar.certificate = vec![
        CertificateFigure { what: CertificateItem::Potassium, value: 1.0 },
        CertificateFigure { what: CertificateItem::Phosphorus, value: 0.1 },
    ];
    let schedule = schedule(&case);
    for (year, phosphorus) in [0.04, 0.08, 0.12].into_iter().enumerate() {
        close(column(&schedule, "potassium-credit").years[year].likely, 1.8, 1e-9);
        close(column(&schedule, "phosphorus-credit").years[year].likely, phosphorus, 1e-9);
    }
}

/// No year's addition brings the likely pH past 7.5 in the end, whatever the
/// soil, the char and the years; the bounds rise from year to year.
///
/// Source: treated soil below pH 7.5, Guo 2020 (opened).
#[test]
fn no_schedule_passes_the_ph_limit() {
    let mut stopped = 0;
    for ph in [5.0, 5.8, 6.4, 6.9, 7.2, 7.4] {
        for liming in [1.0, 4.0, 9.0, 15.0] {
            for (share, years) in [(5.0, 2), (10.0, 5), (20.0, 10)] {
                let mut case = garden(ph);
                case.biochar.share_percent = Some(share);
                case.biochar.years = Some(years);
                case.biochar.liming_percent = Some(liming);
                case.biochar.ph = Some(9.5);
                let Some(schedule) = viewed(&case, repeats) else { continue };
                let Some(column) = schedule.columns.iter().find(|c| c.name == "ph-at-end") else {
                    assert!(!schedule.stops.is_empty());
                    continue;
                };
                let what = format!("pH {ph}, liming {liming}, {share} % over {years}");
                for band in &column.years {
                    assert!(band.likely <= 7.5 + 1e-9, "{what}: {band:?}");
                    assert!(band.low <= band.likely && band.likely <= band.high, "{what}");
                }
                for two in column.years.windows(2) {
                    assert!(two[0].likely <= two[1].likely + 1e-9, "{what}: {two:?}");
                }
                stopped +=
                    usize::from(schedule.stops.iter().any(|(_, why)| why.contains("past 7.5")));
            }
        }
    }
    assert!(stopped >= 10, "the limit was reached only {stopped} times");
}

/// A soil's pH in a year is that of the year before plus what still comes of
/// earlier lime: by hand for a loam at 25 mmol(c)/kg per pH, 1 % by mass a year
/// of a char with 5 % CaCO3, which holds 100 mmol(c)/kg itself: 10 g/kg × 0.05 × 20
/// ÷ 26 = 0.385 in full, 0.269 in the first year.
///
/// Source: definition of lime buffer capacity (opened); 0.7 in the first year is
/// our choice; the char's own buffering by Silber et al. 2010 (second-hand).
#[test]
fn the_ph_is_carried_from_year_to_year() {
    let mut case = garden(5.5);
    // 1 % by mass of 10 cm of soil at 1.3 g/cm³ is 1.3 kg/m²: 6.5 % at 200 kg/m³.
    case.biochar.share_percent = Some(13.0);
    case.biochar.years = Some(2);
    case.biochar.liming_percent = Some(5.0);
    case.biochar.ph = Some(9.5);
    let schedule = schedule(&case);
    let ph = &column(&schedule, "ph-at-end").years;
    close(ph[0].likely, 5.5 + 7.0 / 26.0, 1e-6);
    close(ph[1].likely, 5.5 + 10.0 / 26.0 + 7.0 / 26.0, 1e-6);
}

fn worked(case: &Case) -> WorkIn {
    viewed(case, work_in).expect("the plan uses biochar")
}

/// Core holes: 5 L on 1 m² in holes 1.9 cm wide and 10 cm deep are 176 holes,
/// 7.5 cm apart.
///
/// Source: geometry of a cylinder (derived).
#[test]
fn core_holes_hold_the_biochar() {
    let volume = std::f64::consts::PI * 0.95 * 0.95 * 10.0 / 1000.0;
    close(holes_on_a_square_metre(5.0, 1.9, 10.0) * volume, 5.0, 1e-9);
    let mut case = poor(Some(BedKind::Lawn));
    let lawn = worked(&case);
    let holes: Vec<f64> =
        lawn.figures.iter().filter(|f| f.name == "core-holes").map(|f| f.band.likely).collect();
    assert_eq!(holes, [395.0, 177.0]);
    // Twice as much is more than turf takes at once, and the step says so.
    case.biochar.share_percent = Some(10.0);
    case.bed.depth_cm = Some(20.0);
    case.biochar.bulk_density = Some(90.0);
    let much = worked(&case);
    assert!(much.steps.iter().any(|s| s.text.contains("ruin the turf")), "{much:?}");
}
