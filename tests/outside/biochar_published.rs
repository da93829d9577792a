//! What the engine foretells beside what published trials found. The trials
//! are not fitted: where one lies outside the band, the table says so, and the
//! tests hold the misfit to what it is today.
//!
//! The table stands in `DEVELOPERS.md`. After a change that is meant to alter
//! it, run this with `EMBERLOAM_ACCEPT=1` and read the difference.

use std::fs;
use std::path::PathBuf;

use emberloam_engine::case::{BagState, BedKind, Feedstock};
use emberloam_engine::details::exchange::Pool;
use emberloam_engine::details::{WEEKS, courses, ph_buffering, ph_with};
use emberloam_engine::plan::Plan;
use emberloam_engine::plan::ledger::Bringer;
use emberloam_engine::quantity::Band;
use emberloam_engine::soil::{PlantGroup, Property, Texture};
use emberloam_engine::{Case, report};

use crate::{close, surveyed, viewed};

/// One treatment of one trial.
struct Row {
    trial: &'static str,
    treatment: String,
    found: f64,
    foretold: Band,
    /// Digits after the point.
    digits: usize,
}

impl Row {
    fn holds(&self) -> bool {
        let slack = 0.5 * 10f64.powi(-(self.digits as i32));
        (self.foretold.low - slack..=self.foretold.high + slack).contains(&self.found)
    }

    /// What was found less what was likely.
    fn misfit(&self) -> f64 {
        self.found - self.foretold.likely
    }

    fn line(&self) -> String {
        let Row { trial, treatment, found, foretold: Band { low, likely, high }, digits: d } = self;
        let minus = |v: f64| {
            // No minus zero.
            let v = if v.abs() < 0.5 * 10f64.powi(-(*d as i32)) { 0.0 } else { v };
            format!("{v:.d$}", d = *d).replace('-', "−")
        };
        format!(
            "| {trial} | {treatment} | {} | {} ({} to {}) | {} | {} |",
            minus(*found),
            minus(*likely),
            minus(*low),
            minus(*high),
            minus(self.misfit()),
            if self.holds() { "yes" } else { "no" }
        )
    }
}

fn case(lines: &str) -> Case {
    let report =
        report::open(lines.as_bytes()).and_then(|grid| report::read(&grid)).expect("it reads");
    Case { report, ..Case::default() }
}

/// Biochar in the soil, % by mass, of so many t/ha in the top 20 cm.
fn percent(tonnes: f64, density: f64) -> f64 {
    100.0 * tonnes / (20.0 * density * 100.0)
}

fn ph_rise(case: &Case, ph: f64, percent: f64) -> Band {
    let after = ph_with(&surveyed(case), Band::exactly(percent)).expect("a pH");
    after.map(|after| after - ph)
}

/// Source: PeerJ 10311 (PMC7668215), Table 2, season 1, low N (opened): pots of
/// paddy soil, pH 5.71 at 1.39 g/cm³; 5.80, 5.88 and 6.47 with 20, 40 and 60
/// t/ha, taken as mixed 20 cm deep (our choice). That the biochar is of straw
/// is from memory. The texture isn't known.
fn ph_in_rice_pots() -> Vec<Row> {
    let mut case = case("pH: 5.71");
    case.biochar.feedstock = Some(Feedstock::GrassOrStraw);
    let row = |(tonnes, ph): (f64, f64)| Row {
        trial: "rice pots, pH",
        treatment: format!("{tonnes} t/ha"),
        found: ph - 5.71,
        foretold: ph_rise(&case, 5.71, percent(tonnes, 1.39)),
        digits: 2,
    };
    [(20.0, 5.80), (40.0, 5.88), (60.0, 6.47)].map(row).into()
}

/// Source: PMC10791736, Table 3, no lime, 2020 (opened): pH 5.30, organic carbon
/// 1.11 %; 5.30, 5.90, 6.10 and 6.20 with 2.5, 5, 7.5 and 10 t/ha. Depth,
/// density and feedstock are not known to us: 20 cm, 1.3 g/cm³, straw (our
/// choice, the one that favours the model).
fn ph_in_an_acid_field() -> Vec<Row> {
    let case = acid_field();
    let row = |(tonnes, ph): (f64, f64)| Row {
        trial: "acid field, pH",
        treatment: format!("{tonnes} t/ha"),
        found: ph - 5.30,
        foretold: ph_rise(&case, 5.30, percent(tonnes, 1.3)),
        digits: 2,
    };
    [(2.5, 5.30), (5.0, 5.90), (7.5, 6.10), (10.0, 6.20)].map(row).into()
}

fn acid_field() -> Case {
    let mut case = case("pH: 5.30\nOrganic carbon: 1.11 %");
    case.biochar.feedstock = Some(Feedstock::GrassOrStraw);
    case
}

/// Source: Jien & Wang 2013, abstract (opened in a repost): an Ultisol of pH 3.9
/// comes to 5.1 with 5 % by mass of Leucaena wood biochar after 105 days. Its
/// texture isn't known to us.
fn ph_in_an_ultisol() -> Vec<Row> {
    let mut case = case("pH: 3.9");
    case.biochar.feedstock = Some(Feedstock::Hardwood);
    vec![Row {
        trial: "Ultisol in jars, pH",
        treatment: "5 % by mass".into(),
        found: 5.1 - 3.9,
        foretold: ph_rise(&case, 3.9, 5.0),
        digits: 2,
    }]
}

/// Source: Hailegnaw et al. 2019, abstract (opened): ten soils, 8 % by mass of a
/// biochar made at 700 °C: pH up by 1.17 at the most. The soils are taken as
/// loams of pH 6 and the biochar as wood (our choice).
fn ph_in_ten_soils() -> Vec<Row> {
    let mut case = case("pH: 6.0");
    case.bed.texture = Some(Texture::Loam);
    vec![Row {
        trial: "ten soils in jars, pH",
        treatment: "8 % by mass, the most found".into(),
        found: 1.17,
        foretold: ph_rise(&case, 6.0, 8.0),
        digits: 2,
    }]
}

/// Source: Dannhauser 2023, replicate data (opened): willow biochar, 10 t/ha, on
/// two alkaline prairie soils in pots, of pH 7.83 and near 8: +0.2075 and −0.3125.
fn ph_in_alkaline_pots() -> Vec<Row> {
    let row = |(soil, ph, found): (&str, f64, f64)| {
        let mut case = case(&format!("pH: {ph}"));
        case.biochar.feedstock = Some(Feedstock::Hardwood);
        Row {
            trial: "alkaline pots, pH",
            treatment: format!("10 t/ha, {soil}"),
            found,
            foretold: ph_rise(&case, ph, percent(10.0, 1.3)),
            digits: 2,
        }
    };
    [("Haverhill", 7.83, 0.2075), ("Oxbow", 8.0, -0.3125)].map(row).into()
}

/// A pot of soil with nitrate to spare and uncharged biochar at `percent` by
/// mass: no cap of a field holds there.
fn pot(lines: &str, feedstock: Feedstock, percent: f64, density: f64) -> Case {
    let mut case = case(&format!("NO3-N: 45 ppm\nBulk density: {density} g/cm3\n{lines}"));
    case.plants = Some(PlantGroup::FruitingVegetables);
    case.bed.kind = Some(BedKind::Container);
    case.bed.texture = Some(Texture::Loam);
    case.bed.depth_cm = Some(20.0);
    case.biochar.state = Some(BagState::Uncharged);
    case.biochar.feedstock = Some(feedstock);
    // Ten parts of a hundred by volume, or as much less as this mass takes.
    case.biochar.bulk_density = Some(if percent > 1.2 { 300.0 } else { 150.0 });
    let share = percent * 1000.0 * density / case.biochar.bulk_density.unwrap();
    case.biochar.share_percent = Some(share);
    case
}

/// The plan with all of the biochar that the trial gave: what holds a gardener's share
/// down, such as the potassium that straw brings, did not hold the trial's.
fn as_in_the_trial(plan: &Plan, case: &Case) -> Plan {
    let mut plan = plan.clone();
    let times = case.biochar.share_percent.expect("a share") / plan.dose.share;
    plan.dose.percent = plan.dose.percent.map(|p| p * times);
    plan.dose.mass = plan.dose.mass.map(|kg| kg * times);
    for account in &mut plan.ledger.accounts {
        for entry in account.brought.iter_mut().filter(|entry| entry.by == Bringer::Biochar) {
            entry.amount = entry.amount.map(|g| g * times);
            entry.works = entry.works.map(|g| g * times);
        }
    }
    plan
}

/// The change of a property, %, after so many weeks.
fn change(case: &Case, property: Property, week: f64) -> Band {
    let at = WEEKS.iter().position(|w| *w == week).expect("a week of the course");
    let all = viewed(case, |survey, plan| courses(survey, &as_in_the_trial(plan, case)));
    let course = all.iter().find(|c| c.property == property);
    course.unwrap_or_else(|| panic!("no {property:?}")).change[at]
}

/// Source: Agronomy 2020, 10:444 (opened): wood biochar of 750 °C with manure
/// compost in three soils: inorganic N −6, −9 and −19 % at 0.5, 1 and 2 % by
/// mass. The engine is asked for a month after mixing; the trial ran for a year.
fn nitrogen_in_jars() -> Vec<Row> {
    let row = |(percent, found): (f64, f64)| Row {
        trial: "three soils in jars, mineral N, %",
        treatment: format!("{percent} % by mass"),
        found,
        foretold: change(
            &pot("pH: 6.5", Feedstock::Softwood, percent, 1.3),
            Property::NitrateN,
            4.0,
        ),
        digits: 0,
    };
    [(0.5, -6.0), (1.0, -9.0), (2.0, -19.0)].map(row).into()
}

/// Source: PeerJ 10311, Table 2 (opened): available P 21.5 mg/kg becomes 22.91,
/// 24.83 and 27.55, available K 225.5 becomes 228.2, 228.8 and 232.1. Rice took
/// its share; the engine counts no plants. The extract is not known to us: it
/// plays no part in the change.
fn nutrients_in_rice_pots() -> Vec<Row> {
    let lines = "pH: 5.71\nP (Olsen): 21.5 ppm\nK (ammonium acetate): 225.5 ppm";
    let mut rows = Vec::new();
    for (tonnes, phosphorus, potassium) in
        [(20.0, 22.91, 228.2), (40.0, 24.83, 228.8), (60.0, 27.55, 232.1)]
    {
        let case = pot(lines, Feedstock::GrassOrStraw, percent(tonnes, 1.39), 1.39);
        let mut add = |trial, property, found: f64, before: f64| {
            rows.push(Row {
                trial,
                treatment: format!("{tonnes} t/ha"),
                found: 100.0 * (found / before - 1.0),
                foretold: change(&case, property, 16.0),
                digits: 0,
            });
        };
        add("rice pots, P, %", Property::Phosphorus, phosphorus, 21.5);
        add("rice pots, K, %", Property::Potassium, potassium, 225.5);
    }
    rows.sort_by_key(|row| row.trial);
    rows
}

/// Source: PMC10791736, Table 3, no lime, 2020 (opened): P 9.0 mg/kg becomes
/// 9.5, 10.3, 10.8 and 11.4 with 2.5 to 10 t/ha. Read as an extract in which 9
/// is enough, so that the plan is of uncharged biochar, as the trial's was.
fn phosphorus_in_an_acid_field() -> Vec<Row> {
    let row = |(tonnes, found): (f64, f64)| {
        let lines = "pH: 5.3\nOrganic carbon: 1.11 %\nP (Modified Morgan): 9.0 ppm";
        let case = pot(lines, Feedstock::GrassOrStraw, percent(tonnes, 1.3), 1.3);
        Row {
            trial: "acid field, P, %",
            treatment: format!("{tonnes} t/ha"),
            found: 100.0 * (found / 9.0 - 1.0),
            foretold: change(&case, Property::Phosphorus, 26.0),
            digits: 0,
        }
    };
    [(2.5, 9.5), (5.0, 10.3), (7.5, 10.8), (10.0, 11.4)].map(row).into()
}

/// The capacity of a mixture, meq/100 g, by what was known of both.
fn mixed(soil: f64, char: Band, percent: f64) -> Band {
    let pool = |capacity: f64| Pool::of(capacity, 0.3, &[1.0, 0.0, 0.0, 0.0, 0.0, 0.0], &[0.0; 6]);
    char.map(|char| pool(soil).mixed(&pool(char), percent / 100.0).capacity)
}

/// Source: Jien & Wang 2013 (opened in a repost): a soil of 7.41 meq/100 g and a
/// biochar of 22.3 give 9.26 at 2.5 % and 10.8 at 5 % by mass after 105 days.
/// Mixing gives 7.78 and 8.15 (derived).
fn capacity_in_an_ultisol() -> Vec<Row> {
    let row = |(percent, found): (f64, f64)| Row {
        trial: "Ultisol in jars, CEC, meq/100 g",
        treatment: format!("{percent} % by mass"),
        found,
        foretold: mixed(7.41, Band::exactly(22.3), percent),
        digits: 2,
    };
    [(2.5, 9.26), (5.0, 10.8)].map(row).into()
}

/// Source: Technology in Agronomy 2023-0016, abstract (opened): CEC up by 16 % on
/// sandy loam and 4 % on clay loam with 5 to 15 t/ha, here 10. The soils are
/// taken as 6 and 18 meq/100 g, the biochar as wood of 16 (4–45) (our choice).
fn capacity_in_oklahoma() -> Vec<Row> {
    let row = |(soil, cec, found): (&str, f64, f64)| {
        let after = mixed(cec, Band::new(4.0, 16.0, 45.0), percent(10.0, 1.3));
        Row {
            trial: "field, CEC, %",
            treatment: format!("10 t/ha, {soil}"),
            found,
            foretold: after.map(|after| 100.0 * (after / cec - 1.0)),
            digits: 1,
        }
    };
    [("sandy loam", 6.0, 16.0), ("clay loam", 18.0, 4.0)].map(row).into()
}

fn all() -> Vec<Row> {
    [
        ph_in_rice_pots(),
        ph_in_an_acid_field(),
        ph_in_an_ultisol(),
        ph_in_ten_soils(),
        ph_in_alkaline_pots(),
        nitrogen_in_jars(),
        nutrients_in_rice_pots(),
        phosphorus_in_an_acid_field(),
        capacity_in_an_ultisol(),
        capacity_in_oklahoma(),
    ]
    .into_iter()
    .flatten()
    .collect()
}

const HEADING: &str = "## How far the model is from published trials\n";

/// The table of `DEVELOPERS.md` is the one worked out here.
/// Source: the trials named over each of the functions above (opened).
#[test]
fn the_misfit_is_as_the_documentation_shows_it() {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../DEVELOPERS.md");
    let text = fs::read_to_string(&path).expect("DEVELOPERS.md");
    let (before, rest) = text.split_once(HEADING).expect("the section");
    let (section, after) = rest.split_once("\n## ").expect("a next section");
    let is_row = |line: &&str| line.starts_with("| ") && !line.starts_with("| Trial");
    let lines: Vec<String> = all().iter().map(Row::line).collect();
    let shown: Vec<&str> = section.lines().filter(is_row).collect();
    if std::env::var_os("EMBERLOAM_ACCEPT").is_some() {
        let (words, rest) = section.split_once("|---").expect("a table");
        let (rule, rest) = rest.split_once('\n').expect("a rule");
        let tail: Vec<&str> = rest.lines().filter(|line| !is_row(line)).collect();
        let table = lines.join("\n");
        let section = format!("{words}|---{rule}\n{table}\n{}\n", tail.join("\n"));
        fs::write(&path, format!("{before}{HEADING}{section}\n## {after}")).expect("written");
        return;
    }
    assert_eq!(lines, shown, "run with EMBERLOAM_ACCEPT=1 and read the difference");
}

/// Of these 28 treatments, how many lie in the band, and how far the likely
/// value is off at the most, by kind.
/// Source: the trials named over each of the functions above (opened).
#[test]
fn the_misfit_stays_within_what_is_stated() {
    let of = |rows: Vec<Row>| {
        let within = rows.iter().filter(|row| row.holds()).count();
        let worst = rows.iter().map(|row| row.misfit().abs()).fold(0.0, f64::max);
        (within, rows.len(), worst)
    };
    let check = |rows: Vec<Row>, within: usize, most: f64| {
        let name = rows[0].trial;
        let (found, all, worst) = of(rows);
        assert!(found >= within, "{name}: {found} of {all} within");
        assert!(worst <= most, "{name}: off by {worst}");
    };
    check(ph_in_rice_pots(), 3, 0.35);
    // Not explained: see below.
    check(ph_in_an_acid_field(), 0, 0.80);
    check(ph_in_an_ultisol(), 1, 0.25);
    check(ph_in_ten_soils(), 1, 0.55);
    // One fell, which the model never foretells; one rose a hair too much.
    check(ph_in_alkaline_pots(), 0, 0.45);
    check(nitrogen_in_jars(), 3, 3.0);
    check(nutrients_in_rice_pots(), 4, 55.0);
    check(phosphorus_in_an_acid_field(), 4, 25.0);
    // Mixing is a floor: see below.
    check(capacity_in_an_ultisol(), 0, 2.7);
    check(capacity_in_oklahoma(), 0, 16.0);
}

/// Source: PMC10791736, Table 3, lime without biochar, 2020 (opened): pH 5.50,
/// 6.30, 6.50 and 7.20 with 2.5, 5, 7.5 and 10 t/ha of lime, from 5.30. At 0.7
/// of its worth and 20 cm of 1.3 g/cm³ the soil takes 27 to 34 mmol(c)/kg for
/// each pH, but for the smallest dose. So its buffering is as foretold, and
/// what is not explained is the biochar: 10 t/ha did as much as half its weight
/// of lime, where no biochar measured had more than 12.8 % (Adewumi et al.
/// 2025, opened).
#[test]
fn the_acid_field_holds_its_ph_as_foretold_but_its_biochar_limes_beyond_measure() {
    let foretold = ph_buffering(&surveyed(&acid_field()));
    for (tonnes, ph) in [(5.0, 6.30), (7.5, 6.50), (10.0, 7.20)] {
        let taken = 20.0 * 10.0 * percent(tonnes, 1.3) * 0.7 / (ph - 5.30);
        assert!((foretold.low..=foretold.high).contains(&taken), "{tonnes} t/ha: {taken}");
    }
    let alike = (6.20 - 5.30) * foretold.likely / (20.0 * 10.0 * percent(10.0, 1.3) * 0.7);
    assert!(alike > 0.128, "{alike}");
}

/// Source: Xu et al. 2012, abstract (opened): titrated, 18 acid soils of tropical
/// and subtropical China take 9.1 to 32.1 mmol/kg for each pH. Iticha et al.
/// 2024 (SOIL 10:33), abstract (opened): a sandy loam of pH 4.84 takes 1657 mg
/// CaCO3/kg, 33.1 mmol(c)/kg, at equilibrium.
#[test]
fn measured_buffering_lies_in_the_bands() {
    let of = |lines: &str, texture| {
        let mut case = case(lines);
        case.bed.texture = texture;
        ph_buffering(&surveyed(&case))
    };
    let unknown = of("pH: 5.0", None);
    assert!(unknown.low <= 9.1 && unknown.high >= 32.1, "{unknown:?}");
    assert!((9.1..=32.1).contains(&unknown.likely));
    let loam = of("pH: 4.84", Some(Texture::SandyLoam));
    assert!((loam.low..=loam.high).contains(&33.1), "{loam:?}");
}

/// Source: Agronomy 2020, 10:444 (opened): −6, −9 and −19 % at 0.5, 1 and 2 %.
/// A least-squares line through the origin has a slope of 9.52 points for each
/// %; 1 − e^(−kw) fits best at k = 0.104 (derived; found here anew by halving).
#[test]
fn dose_and_response_of_nitrogen() {
    let points = [(0.5, 6.0), (1.0, 9.0), (2.0, 19.0)];
    let slope = points.iter().map(|(w, y)| w * y).sum::<f64>()
        / points.iter().map(|(w, _)| w * w).sum::<f64>();
    close(slope, 9.52, 0.005);
    // The slope of the squared error, which is nought at the best k.
    let uphill = |k: f64| {
        points.iter().fold(0.0, |sum, (w, y)| {
            let left = (-k * w).exp();
            sum + (100.0 * (1.0 - left) - y) * 100.0 * w * left
        })
    };
    let (mut low, mut high) = (0.01, 1.0);
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if uphill(middle) < 0.0 { low = middle } else { high = middle }
    }
    close(low, 0.104, 0.001);
    // The engine takes 0.8 of it for wood, by another review: the likely value
    // lies below what this trial found with wood, and the band holds it.
    for row in nitrogen_in_jars() {
        assert!(row.holds() && row.misfit() < 0.0, "{}", row.line());
    }
}

/// Source: Hailegnaw et al. 2019, abstract (opened): at 8 % by mass CEC went from
/// −7.9 to +35.4 % over ten soils, and fell where the soil held more calcium
/// than the biochar. Mixing alone, with wood biochar of 4 to 45 meq/100 g in
/// soils of 5 to 40, gives −7.2 to +64 %: the fall and the rise both lie within.
#[test]
fn mixing_can_lower_as_well_as_raise_the_capacity() {
    let share =
        |soil: f64, char: f64| 100.0 * (mixed(soil, Band::exactly(char), 8.0).likely / soil - 1.0);
    let (lowest, highest) = (share(40.0, 4.0), share(5.0, 45.0));
    assert!(lowest < -7.0 && highest > 35.4, "{lowest} to {highest}");
}

/// Source: the same trials of exchange capacity (opened): mixing is a floor. No
/// treatment found less than the likely mixture, and the rise was 1 to 16 times
/// as large; charge that comes with the higher pH is not counted.
#[test]
fn mixing_is_a_floor_for_the_exchange_capacity() {
    for row in capacity_in_an_ultisol().iter().chain(&capacity_in_oklahoma()) {
        assert!(row.misfit() > 0.0, "{}", row.line());
    }
}
