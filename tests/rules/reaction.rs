//! What the new pH means, and that it is one.

use emberloam_engine::case::{BagState, Feedstock};
use emberloam_engine::details::{PhToCome, reaction};
use emberloam_engine::quantity::{Band, Figure};
use emberloam_engine::soil::{PlantGroup, Property, Texture};
use emberloam_engine::{Case, interpret, report};

use crate::viewed;

/// A poor loam with a charged bag, with these lines on its report.
fn poor(lines: &str) -> Case {
    let text = format!("Extraction: Mehlich-3\nK: 60 ppm\nP: 70 ppm\n{lines}");
    let report = report::open(text.as_bytes()).and_then(|grid| report::read(&grid)).unwrap();
    let mut case = Case { report, ..Case::default() };
    case.bed.texture = Some(Texture::Loam);
    case.bed.depth_cm = Some(10.0);
    case.plants = Some(PlantGroup::MixedVegetables);
    case.biochar.state = Some(BagState::Charged);
    case.biochar.feedstock = Some(Feedstock::Hardwood);
    case.biochar.share_percent = Some(5.0);
    case
}

fn found(case: &Case) -> PhToCome {
    viewed(case, reaction).expect("biochar is used, and pH known")
}

fn figure<'a>(figures: &'a [Figure], name: &str) -> &'a Figure {
    figures.iter().find(|f| f.name == name).unwrap_or_else(|| panic!("no {name}"))
}

fn buffering(case: &Case) -> (Band, String) {
    let figure = figure(&found(case).figures, "ph-buffering").clone();
    (figure.band, figure.grounds.assumed.iter().map(ToString::to_string).collect())
}

/// Source: the order of trust of the reference (our choice): the laboratory's
/// lime buffer, then organic matter and clay, then texture.
#[test]
fn the_best_that_the_report_allows_is_taken_and_the_rest_is_shown() {
    let texture = poor("pH: 5.6");
    let (band, from) = buffering(&texture);
    assert_eq!((band.likely, from.as_str()), (25.0, "Taken as usual for a loam."));
    assert!(found(&texture).others.is_empty());

    let matter = poor("pH: 5.6\nOrganic matter: 3.0 %");
    assert_eq!(buffering(&matter).1, "Taken by organic matter and clay.");

    let buffer = poor("pH: 5.6\nOrganic matter: 3.0 %\nBuffer pH (SMP): 6.5");
    assert_eq!(buffering(&buffer).1, "Taken by the lime buffer.");
    let others = found(&buffer).others;
    let names: Vec<&str> = others.iter().map(|f| f.name).collect();
    assert_eq!(
        names,
        ["ph-buffering-by-lime", "ph-buffering-by-organic-matter", "ph-buffering-by-texture"]
    );
    // The region's lime table says more than a texture, and less than what was measured.
    let mut region = poor("pH: 5.6");
    region.reading.region = Some("uk".into());
    assert_eq!(buffering(&region).1, "Taken by the region's lime table.");
    let names: Vec<&str> = found(&region).others.iter().map(|f| f.name).collect();
    assert_eq!(names, ["ph-buffering-by-texture"]);

    // A buffer that nobody named says nothing.
    let unnamed = poor("pH: 5.6\nBuffer pH: 6.5");
    assert_eq!(buffering(&unnamed).1, "Taken as usual for a loam.");
}

#[test]
fn no_biochar_or_no_ph_is_no_reaction() {
    assert_eq!(viewed(&poor("NO3-N: 15 ppm"), reaction), None);
    let mut content = poor("pH: 6.5");
    content.plants = Some(PlantGroup::AcidLovers);
    assert_eq!(viewed(&content, reaction), None);
    assert_eq!(viewed(&Case::default(), reaction), None);
}

/// The page shows one pH in two places: with the effects, and here.
#[test]
fn the_rise_is_the_same_as_among_the_effects() {
    let case = poor("pH: 5.6\nOrganic matter: 3.0 %");
    let after = figure(&found(&case).figures, "ph-after").band.likely;
    let effects = interpret(&case).plan.effects;
    let ph = effects.iter().find(|e| e.property == Property::Ph).unwrap();
    assert!(after - 5.6 >= ph.change.band.likely - 1e-9, "{after}: {:?}", ph.change.band);
}
