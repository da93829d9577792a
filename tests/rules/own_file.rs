//! A region's own file: its rows judge like those that are built in, and a wrong one is named.

use std::borrow::Cow;

use emberloam_engine::own::{OwnFacts, read};
use emberloam_engine::ranges::Level;
use emberloam_engine::soil::Property;
use emberloam_engine::{Case, interpret, report, survey};

/// Invented: a county with a table, a lime column and a dressing of its own.
const COUNTY: &str = "\
sources
id,title,place,about,read
brook-county-2026,\"Brook County garden guide, 2026\",,Ranges of the county.,page opened 2026-11-30

regions
id,name,within,near,phosphorus,cations,ph,clues,sources
brook-county,Brook County,,uk,olsen,ammonium-nitrate,water,Brook County,brook-county-2026:opened
,,,,,,,,
ranges
id,region,property,method,unit,printed_to,soils,steps,plants,judges,second,sources,meaning,note
brook-p,brook-county,phosphorus,olsen,mg/L,1,,little = low to 29 | right = sufficient to 60 | plenty = high,all,,,brook-county-2026:opened,,
brook-ph,brook-county,ph,,,0.1,,sour = low below 6.0 | right = sufficient to 7.0 | limy = high,all,,,brook-county-2026:opened,,
lime
id,region,use,soils,by,target,points,unit,of,depth_cm,sources,note
brook-lime,brook-county,tilled,,water,6.5,5.0 = 9 | 6.0 = 3 | 6.5 = 0,t/ha,CaCO3,20,brook-county-2026:opened,
rates
id,region,crop,nutrient,rates,unit,when,sources,note
brook-p2o5,brook-county,any,P2O5,low = 70 | sufficient = 0,kg/ha,in spring,brook-county-2026:opened,
";

fn kept(text: &str) -> &'static OwnFacts {
    Box::leak(Box::new(read("county.csv", text).expect("a sound file")))
}

fn case(own: Option<&'static OwnFacts>) -> Case {
    let text = "pH 5.5\nPhosphorus (Olsen) 25 mg/L\nPotassium (ammonium nitrate) 150 mg/L\n";
    let grid = report::open(text.as_bytes()).expect("a text");
    let mut case = Case { report: report::read(&grid).expect("a report"), own, ..Case::default() };
    case.reading.region = Some("brook-county".into());
    case.bed.area_m2 = Some(10.0);
    case
}

#[test]
fn a_regions_own_table_judges_and_is_its_own_source() {
    let found = |case: &Case| {
        let outcome = interpret(case);
        let p = outcome.samples[0].readings.iter().find(|r| r.property == Property::Phosphorus);
        let finding = &p.expect("phosphorus").finding;
        (finding.level, finding.source.map_or("", |source| source.title()).to_string())
    };
    let (level, source) = found(&case(Some(kept(COUNTY))));
    assert_eq!(level, Some(Level::Low));
    assert_eq!(source, "Brook County garden guide, 2026");
    // Without it the county is unknown, and another table judges.
    let (_, source) = found(&case(None));
    assert!(!source.contains("Brook County"), "{source}");
}

/// By hand: pH 5.5 is half way from 9 to 3 t/ha, so 6 t/ha, or 600 g/m², of pure lime for 20 cm.
#[test]
fn a_regions_own_lime_and_dressing_are_used() {
    let outcome = interpret(&case(Some(kept(COUNTY))));
    let figure = |name: &str| {
        let figures = outcome.plan.needs.iter().flat_map(|need| &need.figures);
        figures.clone().find(|f| f.name == name).unwrap_or_else(|| panic!("no {name}")).band.likely
    };
    let depth = survey(Cow::Owned(case(Some(kept(COUNTY))))).bed.depth.value;
    assert!((figure("lime-rate") - 600.0 * depth / 20.0).abs() < 10.0, "{}", figure("lime-rate"));
    assert!((figure("phosphate-rate") - 7.0).abs() < 1e-6);
}

#[test]
fn a_wrong_row_is_named_with_its_line_and_nothing_is_taken() {
    let wrong = |from: &str, to: &str| {
        let why = read("county.csv", &COUNTY.replace(from, to)).expect_err("a wrong file");
        why.iter().map(ToString::to_string).collect::<Vec<_>>().join("\n")
    };
    let unit = wrong("olsen,mg/L", "olsen,mg/pint");
    assert!(unit.starts_with("county.csv, line 11: “mg/pint” is no unit"), "{unit}");
    let grade = wrong("all,,,brook-county-2026:opened", "all,,,brook-county-2026");
    assert!(grade.contains("has no grade"), "{grade}");
    let source = wrong("sour = low below 6.0", "sour = low below 7.5");
    assert!(source.contains("don't rise"), "{source}");
    let unknown = wrong("tilled,,water", "tilled,,moonlight");
    assert!(unknown.contains("line 15") && unknown.contains("moonlight"), "{unknown}");
    let nowhere = wrong("brook-lime,brook-county", "brook-lime,elsewhere");
    assert!(nowhere.contains("“elsewhere” stands neither in this file"), "{nowhere}");
    assert!(read("x.csv", "P 20 ppm").expect_err("no table")[0].what.contains("sources, regions"));
}

#[test]
fn the_sample_of_a_regions_own_file_is_sound() {
    let text = include_str!("../../public/samples/region-tables.csv");
    let own = read("region-tables.csv", text).unwrap_or_else(|why| panic!("{}", why[0]));
    assert_eq!((own.regions.len(), own.ranges.len()), (1, 2));
    assert_eq!((own.lime.len(), own.rates.len()), (1, 1));
}

/// What the README says of each region is what `--example regions` prints of the facts.
#[test]
fn the_readme_says_what_each_region_rests_on() {
    let readme = include_str!("../../README.md");
    for region in emberloam_engine::region::Region::all() {
        let ranges = emberloam_engine::ranges::schemes().filter(|s| s.region == region.id);
        let remembered = |s: &&emberloam_engine::ranges::Scheme| {
            s.citations[0].grade >= emberloam_engine::sources::Grade::FromMemory
        };
        let (memory, read): (Vec<_>, Vec<_>) = ranges.partition(remembered);
        let line = readme.lines().find(|line| line.starts_with(&format!("| {} |", region.name)));
        let line = line.unwrap_or_else(|| panic!("{} is missing in README.md", region.name));
        for (count, word) in [(read.len(), "read"), (memory.len(), "from memory")] {
            let cell = line.split('|').nth(2).unwrap_or_default();
            assert_eq!(cell.contains(&format!("{count} {word}")), count > 0, "{line}");
        }
    }
}
