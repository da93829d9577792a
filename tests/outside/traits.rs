//! The `traits` room against the outside.

use emberloam_engine::chemistry::Derived;
use emberloam_engine::chemistry::saturation_water::{from_water, saturation_water};
use emberloam_engine::chemistry::sodium::{Class, adsorption_ratio, esp_from_sar, sar_from_esp};
use emberloam_engine::details::{Traits, carbon, metals, nitrate, phosphorus, traits};
use emberloam_engine::quantity::{Band, Measures, Unit};
use emberloam_engine::question::QuestionId;
use emberloam_engine::ranges::lead_level;
use emberloam_engine::report::{Known, Origin, Pairing, Place, Reading, Report, SampleReport};
use emberloam_engine::soil::salt_tolerance;
use emberloam_engine::soil::water::{OutOfRange, held, middle};
use emberloam_engine::soil::{Amount, Method, PlantGroup, Property, Texture};
use emberloam_engine::{Case, interpret};
use time::Month;

use crate::{close, surveyed};

/// A case with one sample of these readings; each in the engine's unit unless changed.
struct Sampled(Case);

fn sampled() -> Sampled {
    let sample = SampleReport { name: "bed".into(), ..SampleReport::default() };
    Sampled(Case {
        report: Report { samples: vec![sample], ..Report::default() },
        ..Case::default()
    })
}

impl Sampled {
    fn read(mut self, property: Property, amount: Amount, unit: Unit, by: Option<Method>) -> Self {
        let sample = &mut self.0.report.samples[0];
        let line = sample.readings.len() as u32 + 1;
        sample.readings.push(Reading {
            property,
            amount: Some(amount),
            unit: Some(unit),
            method: by.map(|value| Known { value, from: Origin::Stated }),
            rating: None,
            name: property.label().into(),
            original: amount.number().to_string(),
            depth_cm: None,
            pairing: Pairing::Together,
            place: Place { line, start: 0, end: 1 },
            notes: Vec::new(),
        });
        self
    }
    fn is(self, property: Property, value: f64) -> Self {
        self.read(property, Amount::Exactly(value), property.unit(), None)
    }
    fn by(self, property: Property, value: f64, method: Method) -> Self {
        self.read(property, Amount::Exactly(value), property.unit(), Some(method))
    }
    fn layer(mut self, top: f64, bottom: f64) -> Self {
        self.0.report.samples[0].readings.last_mut().unwrap().depth_cm = Some((top, bottom));
        self
    }
    fn deep(mut self, top: f64, bottom: f64) -> Self {
        self.0.report.samples[0].depth_cm = Some((top, bottom));
        self
    }
    fn with(mut self, change: impl FnOnce(&mut Case)) -> Self {
        change(&mut self.0);
        self
    }
    fn texture(self, texture: Texture) -> Self {
        self.with(|c| c.bed.texture = Some(texture))
    }
    /// Salts of the saturated paste, dS/m.
    fn ece(&self) -> Band {
        let derived = interpret(&self.0).derived;
        derived.iter().find(|f| f.name == Derived::Ece.name()).expect("salts").band
    }

    fn traits(&self) -> Traits {
        traits(&surveyed(&self.0))
    }
}

#[track_caller]
fn band(traits: &Traits, name: &str) -> Band {
    traits.get(name).unwrap_or_else(|| panic!("no {name} in {:?}", traits.figures)).band
}

fn said(traits: &Traits, name: &str) -> String {
    let about: Vec<&str> =
        traits.sayings.iter().filter(|s| s.name == name).map(|s| s.text.as_str()).collect();
    about.join(" / ")
}

fn asks(traits: &Traits, id: QuestionId) -> bool {
    traits.questions.iter().any(|q| q.id == id)
}

const CLASSES: [(Texture, [f64; 5]); 12] = [
    (Texture::Sand, [5.02, 10.28, 46.17, 108.2, 1.43]),
    (Texture::LoamySand, [5.10, 12.02, 46.02, 96.7, 1.43]),
    (Texture::SandyLoam, [8.08, 17.92, 44.99, 50.3, 1.46]),
    (Texture::Loam, [13.70, 27.96, 45.95, 15.5, 1.43]),
    (Texture::SiltLoam, [10.99, 30.52, 47.87, 16.1, 1.38]),
    (Texture::Silt, [5.74, 30.45, 47.90, 22.0, 1.38]),
    (Texture::SandyClayLoam, [16.57, 26.70, 43.41, 11.3, 1.50]),
    (Texture::ClayLoam, [21.80, 35.79, 47.72, 4.3, 1.39]),
    (Texture::SiltyClayLoam, [21.52, 38.18, 51.12, 5.7, 1.30]),
    (Texture::SiltyClay, [26.78, 40.91, 52.35, 3.7, 1.26]),
    (Texture::SandyClay, [24.86, 36.11, 44.38, 1.4, 1.47]),
    (Texture::Clay, [29.79, 42.06, 49.84, 1.1, 1.33]),
];

/// Source: Saxton and Rawls 2006, equations from two independent public programs, worked out
/// once more at 2.5 % organic matter (derived).
#[test]
fn water_of_all_twelve_classes() {
    for (texture, [wilting, field, full, through, density]) in CLASSES {
        let (sand, clay) = middle(texture);
        let water = held(sand, clay, 2.5).unwrap();
        close(100.0 * water.wilting_point, wilting, 0.006);
        close(100.0 * water.field_capacity, field, 0.006);
        close(100.0 * water.saturation, full, 0.006);
        close(water.conductivity, through, 0.06);
        close(water.bulk_density, density, 0.006);
        assert_eq!(Texture::from_separates(sand, 100.0 - sand - clay, clay), Some(texture));
    }
}

/// Source: Saxton and Rawls 2006, Table 3: wilting point, field capacity and saturation in whole
/// per cent, at 2.5 % organic matter (from memory).
#[test]
fn water_rounds_to_the_papers_table() {
    let table = [
        [5, 10, 46],
        [5, 12, 46],
        [8, 18, 45],
        [14, 28, 46],
        [11, 31, 48],
        [6, 30, 48],
        [17, 27, 43],
        [22, 36, 48],
        [22, 38, 51],
        [27, 41, 52],
        [25, 36, 44],
        [30, 42, 50],
    ];
    for ((texture, _), row) in CLASSES.into_iter().zip(table) {
        let (sand, clay) = middle(texture);
        let water = held(sand, clay, 2.5).unwrap();
        let found = [water.wilting_point, water.field_capacity, water.saturation];
        assert_eq!(found.map(|v| (100.0 * v).round() as i32), row, "{texture:?}");
    }
}

/// Source: Saxton and Rawls 2006: organic matter below 8 %, clay below 60 % (from memory); the
/// rest follows from the equations (derived).
#[test]
fn water_is_refused_outside_its_soils() {
    assert!(held(40.0, 20.0, 7.99).is_ok());
    assert_eq!(held(40.0, 20.0, 8.0), Err(OutOfRange::OrganicMatter));
    assert!(held(20.0, 59.9, 2.5).is_ok());
    assert_eq!(held(20.0, 60.0, 2.5), Err(OutOfRange::Clay));
    assert_eq!(held(100.0, 0.0, 0.0), Err(OutOfRange::NoWater));
    for (om, clay, word) in [(8.0, 20.0, "8 %"), (2.0, 65.0, "60 %"), (0.3, 0.0, "pure a sand")] {
        let sand = if word == "pure a sand" { 100.0 } else { 10.0 };
        let case = sampled()
            .is(Property::OrganicMatter, om)
            .is(Property::Sand, sand)
            .is(Property::Silt, 100.0 - sand - clay)
            .is(Property::Clay, clay);
        let traits = case.traits();
        assert!(traits.get("available-water").is_none());
        assert!(said(&traits, "water").contains(word), "{}", said(&traits, "water"));
    }
}

/// Source: more organic matter holds more water for plants in a sand and a silt loam: Saxton and
/// Rawls 2006, equations 1 and 2 (derived).
#[test]
fn water_follows_organic_matter_and_the_depth_of_the_bed() {
    for texture in [Texture::Sand, Texture::SiltLoam] {
        let (sand, clay) = middle(texture);
        let lean = held(sand, clay, 1.0).unwrap();
        let rich = held(sand, clay, 5.0).unwrap();
        assert!(
            rich.field_capacity - rich.wilting_point > lean.field_capacity - lean.wilting_point
        );
    }
    let loam = sampled()
        .is(Property::OrganicMatter, 2.5)
        .is(Property::Sand, 40.0)
        .is(Property::Silt, 40.0)
        .is(Property::Clay, 20.0)
        .with(|c| c.bed.depth_cm = Some(30.0));
    let traits = loam.traits();
    close(band(&traits, "field-capacity").likely, 27.96, 0.01);
    close(band(&traits, "water-held").likely, 300.0 * (0.2796 - 0.1370), 0.05);
    let by_class = sampled().is(Property::OrganicMatter, 2.5).texture(Texture::Loam).traits();
    close(band(&by_class, "field-capacity").likely, 27.96, 0.01);
    assert!(band(&by_class, "wilting-point").low < band(&traits, "wilting-point").low);
    assert!(band(&by_class, "wilting-point").high > band(&traits, "wilting-point").high);
    assert!(asks(&by_class, QuestionId::WorkedDepth) && !asks(&traits, QuestionId::WorkedDepth));
    assert!(asks(&sampled().is(Property::Ph, 6.5).traits(), QuestionId::Texture));
}

/// Every soil of a class lies within the bounds that the class gets.
///
/// Source: the USDA triangle in steps of half a per cent, with the equations of Saxton and Rawls 2006 (derived).
#[test]
fn the_bounds_of_a_class_hold_all_its_soils() {
    for (texture, _) in CLASSES {
        let traits = sampled().is(Property::OrganicMatter, 2.5).texture(texture).traits();
        let field = band(&traits, "field-capacity");
        let through = band(&traits, "saturated-conductivity");
        for sand in 0..=200 {
            for clay in 0..=200 - sand {
                let (s, c) = (f64::from(sand) / 2.0, f64::from(clay) / 2.0);
                if Texture::from_separates(s, 100.0 - s - c, c) != Some(texture) {
                    continue;
                }
                let Ok(water) = held(s, c, 2.5) else { continue };
                let at = 100.0 * water.field_capacity;
                // The 5 points by which the equations themselves may miss, less half a point between steps.
                assert!(
                    field.low + 4.5 <= at && at <= field.high - 4.5,
                    "{texture:?} {s}-{c}: {at} not in {field:?}"
                );
                let k = water.conductivity;
                assert!(
                    through.low <= k && k <= through.high,
                    "{texture:?} {s}-{c}: {k} not in {through:?}"
                );
            }
        }
    }
}

/// Source: USDA Handbook 60, as Oklahoma Administrative Code 165:10 quotes it (second-hand): ESP
/// at SAR 5, 10, 13 and 18 (derived); 15 % and 13 are its limits (opened in Colorado State 0.504).
#[test]
fn exchangeable_sodium_from_the_adsorption_ratio() {
    for (sar, esp) in [(5.0, 5.8), (10.0, 11.9), (13.0, 15.2), (18.0, 20.2)] {
        close(esp_from_sar(sar), esp, 0.05);
        close(sar_from_esp(esp_from_sar(sar)), sar, 1e-9);
    }
    assert_eq!(esp_from_sar(0.0), 0.0);
    assert_eq!(esp_from_sar(0.85), 0.0);
    assert!(esp_from_sar(0.86) > 0.0);
    assert!(esp_from_sar(12.8) < 15.0 && esp_from_sar(12.9) > 15.0);
    let traits = sampled().is(Property::Sar, 13.0).traits();
    close(band(&traits, "esp-from-sar").likely, 15.2, 0.05);
    assert!(said(&traits, "sodicity").contains("this soil is sodic"));
}

/// Source: NRCS, SAR = Na ÷ √((Ca + Mg) ÷ 2) (opened); a course problem with Ca 6, Mg 2, Na 36
/// meq/L (opened) gives 18.0 and ESP 20.2 % (derived).
#[test]
fn the_adsorption_ratio_from_the_paste() {
    close(adsorption_ratio(36.0, 6.0, 2.0), 18.0, 1e-12);
    let mg = |property: Property, meq: f64| meq * property.mg_per_mmolc().unwrap();
    let mut case = sampled();
    for (property, meq) in
        [(Property::Sodium, 36.0), (Property::Calcium, 6.0), (Property::Magnesium, 2.0)]
    {
        let amount = Amount::Exactly(mg(property, meq));
        case = case.read(property, amount, Unit::MgPerL, Some(Method::SaturatedPaste));
    }
    close(band(&case.traits(), "esp-from-sar").likely, 20.2, 0.05);
}

/// Double entry: USDA Handbook 60, the four classes at their borders (from memory; the limits 4 dS/m and
/// 15 % are opened in NRCS and Colorado State).
#[test]
fn the_four_classes_at_their_borders() {
    assert_eq!(Class::of(3.99, 14.9), Class::Normal);
    assert_eq!(Class::of(4.0, 14.9), Class::Saline);
    assert_eq!(Class::of(3.99, 15.0), Class::Sodic);
    assert_eq!(Class::of(4.0, 15.0), Class::SalineSodic);
    let soil = |ec: f64, sar: f64| {
        let case = sampled().is(Property::Sar, sar).by(Property::Ec, ec, Method::SaturatedPaste);
        said(&case.traits(), "sodicity")
    };
    assert!(soil(3.9, 12.0).contains("this soil is neither saline nor sodic"));
    assert!(soil(4.0, 12.0).contains("this soil is saline."));
    assert!(soil(3.9, 13.0).contains("this soil is sodic."));
    assert!(soil(4.0, 13.0).contains("this soil is saline and sodic."));
}

/// Source: Na 3.6 meq of a capacity of 18 meq/100 g is ESP 20 % (derived); in a saline soil the
/// extract counts soluble sodium too, University of Minnesota (opened).
#[test]
fn exchangeable_sodium_by_extract_is_doubted_in_a_salty_soil() {
    let soil = |ec: f64| {
        sampled()
            .is(Property::Cec, 18.0)
            .by(Property::Sodium, 3.6 * 229.9, Method::AmmoniumAcetate)
            .by(Property::Calcium, 2400.0, Method::AmmoniumAcetate)
            .by(Property::Magnesium, 240.0, Method::AmmoniumAcetate)
            .by(Property::Potassium, 100.0, Method::AmmoniumAcetate)
            .is(Property::Ph, 6.8)
            .by(Property::Ec, ec, Method::SaturatedPaste)
            .traits()
    };
    let fresh = soil(1.0);
    close(band(&fresh, "sar-from-esp").likely, sar_from_esp(20.0), 1.5);
    assert!(said(&fresh, "sodicity").contains("this soil is sodic"));
    assert!(!said(&fresh, "sodicity").contains("dissolved sodium"));
    assert!(said(&soil(6.0), "sodicity").contains("dissolved sodium"));
}

/// Source: a pH above 8.5 is a sign of sodium, Colorado State University 0.504 (opened).
#[test]
fn a_high_ph_is_a_sign_of_sodium() {
    let alone = |ph| said(&sampled().is(Property::Ph, ph).traits(), "sodicity");
    assert_eq!(alone(8.5), "");
    assert!(alone(8.6).contains("Ask the lab for sodium"));
    let low = sampled().is(Property::Ph, 8.6).is(Property::Sar, 3.0).traits();
    assert!(said(&low, "sodicity").contains("Yet a pH above 8.5"));
}

/// Salts of a mix whose bounds cross 4 dS/m leave the class open, and say so.
///
/// Source: salts by mix as a band, PLoS ONE 2018 Table 2 and FAO 2006 (derived).
#[test]
fn a_band_over_a_border_leaves_the_class_open() {
    let traits = sampled()
        .is(Property::Sar, 3.0)
        .is(Property::OrganicMatter, 3.0)
        .by(Property::Ec, 0.5, Method::Water1To5)
        .texture(Texture::Loam)
        .traits();
    let text = said(&traits, "sodicity");
    assert!(text.contains("most likely") && text.contains("but may be saline"), "{text}");
    // The saline one it may be instead, or the other way round.
    assert!(text.contains("neither saline nor sodic"), "{text}");
}

/// Double entry: FAO 2006 table of water at saturation as it stands in public code (second-hand).
#[test]
fn water_at_saturation_by_texture_clay_and_organic_matter() {
    for (texture, clay, matter, low, high) in [
        (Texture::Loam, None, 3.0, 34.0, 34.0),
        (Texture::Loam, None, 0.49, 25.0, 25.0),
        (Texture::Loam, None, 0.5, 26.0, 26.0),
        (Texture::Loam, None, 8.0, 58.0, 58.0),
        (Texture::Sand, None, 1.5, 8.0, 13.0),
        (Texture::SandyLoam, Some(9.9), 3.0, 22.0, 22.0),
        (Texture::SandyLoam, Some(10.0), 3.0, 31.0, 31.0),
        (Texture::SandyLoam, None, 3.0, 22.0, 31.0),
        (Texture::SiltLoam, Some(8.0), 5.0, 34.0, 34.0),
        (Texture::SiltLoam, Some(20.0), 5.0, 46.0, 46.0),
        (Texture::Clay, Some(55.0), 3.0, 73.0, 73.0),
        (Texture::Clay, Some(60.0), 3.0, 116.0, 116.0),
    ] {
        let found = saturation_water(texture, clay, matter);
        assert_eq!((found.low, found.high), (low, high), "{texture:?} {clay:?} {matter}");
    }
}

/// Source: FAO 2006, ECe = EC × 100 × parts ÷ water at saturation (second-hand): a loam with 3 %
/// organic matter and 0.30 dS/m in 1:5 has 4.4 dS/m (derived), while the equations for 1:5 give
/// 1.6 (Australian), 1.95 and 2.3 (derived).
#[test]
fn salts_by_water_content_widen_the_band() {
    close(from_water(0.30, 5.0, 34.0), 4.4, 0.05);
    close(from_water(1.0, 1.0, 34.0), 2.94, 0.005);
    close(from_water(1.0, 2.5, 50.0), 5.0, 1e-12);
    let soil = sampled()
        .is(Property::OrganicMatter, 3.0)
        .by(Property::Ec, 0.30, Method::Water1To5)
        .texture(Texture::Loam)
        .with(|c| c.plants = Some(PlantGroup::RootCrops));
    let traits = soil.traits();
    let ece = soil.ece();
    close(ece.high, 4.41, 0.01);
    // Carrot: nothing lost up to 1.0, then 14 % for each dS/m: at 4.41, 52 % is left.
    let carrot = traits.figures.iter().find(|f| f.label == "carrot").unwrap();
    close(carrot.band.low, 100.0 - 14.0 * (4.41 - 1.0), 0.1);
    // The lowest of the equations is 6.08 EC − 0.937, below a threshold of 1.0.
    close(carrot.band.high, 100.0, 1e-9);
}

/// Source: Maas 1990, US Salinity Laboratory (opened): each crop at its threshold, 1 dS/m above and
/// below, where half is lost, and where nothing is left (derived).
#[test]
fn salt_tolerance_of_each_crop_at_its_edges() {
    for crop in &salt_tolerance::CROPS {
        let at = |ece: f64| salt_tolerance::relative_yield(ece, crop.threshold, crop.slope);
        assert_eq!(at(crop.threshold), 100.0, "{}", crop.name);
        assert_eq!(at(crop.threshold - 1.0), 100.0, "{}", crop.name);
        assert_eq!(at(0.0), 100.0);
        close(at(crop.threshold + 1.0), 100.0 - crop.slope, 1e-9);
        close(at(crop.threshold + 50.0 / crop.slope), 50.0, 1e-9);
        close(at(crop.threshold + 100.0 / crop.slope), 0.0, 1e-9);
        assert_eq!(at(crop.threshold + 100.0 / crop.slope + 1.0), 0.0);
    }
}

/// Double entry: Maas 1990, US Salinity Laboratory, Table 42C (opened).
#[test]
fn salt_tolerance_rows_as_printed() {
    let printed = [
        ("asparagus", 4.1, 2.0),
        ("bean", 1.0, 19.0),
        ("mung bean", 1.8, 20.7),
        ("red beet", 4.0, 9.0),
        ("broccoli", 2.8, 9.2),
        ("cabbage", 1.8, 9.7),
        ("carrot", 1.0, 14.0),
        ("celery", 1.8, 6.2),
        ("sweet corn", 1.7, 12.0),
        ("cucumber", 2.5, 13.0),
        ("eggplant", 1.1, 6.9),
        ("lettuce", 1.3, 13.0),
        ("onion", 1.2, 16.0),
        ("pepper", 1.5, 14.0),
        ("potato", 1.7, 12.0),
        ("radish", 1.2, 13.0),
        ("spinach", 2.0, 7.6),
        ("scallop squash", 3.2, 16.0),
        ("zucchini", 4.7, 9.4),
        ("strawberry", 1.0, 33.0),
        ("sweet potato", 1.5, 11.0),
        ("tomato", 2.5, 9.9),
        ("cherry tomato", 1.7, 9.1),
        ("turnip", 0.9, 9.0),
    ];
    let held = salt_tolerance::CROPS.map(|c| (c.name, c.threshold, c.slope));
    assert_eq!(held, printed);
}

/// Source: Maas 1990 (opened), FAO 61 Annex 1 (opened): at 3.0 dS/m strawberry keeps 34 %, bean
/// 62 %, carrot 72 %, tomato 95 %, red beet all (derived).
#[test]
fn crops_of_the_bed_the_most_sensitive_first() {
    let soil = |plants| {
        sampled()
            .by(Property::Ec, 3.0, Method::SaturatedPaste)
            .with(|c| c.plants = Some(plants))
            .traits()
    };
    let left = |traits: &Traits| -> Vec<(&'static str, f64)> {
        let yields = traits.figures.iter().filter(|f| f.name == "yield-in-salts");
        yields.map(|f| (f.label, f.band.likely)).collect()
    };
    let berries = soil(PlantGroup::Berries);
    assert_eq!(left(&berries), [("strawberry", 34.0)]);
    assert!(said(&berries, "salts-and-crops").contains("gypsum"));
    let roots = left(&soil(PlantGroup::RootCrops));
    assert_eq!(roots[..2], [("onion", 100.0 - 16.0 * 1.8), ("carrot", 72.0)]);
    assert!(roots.iter().all(|(crop, _)| *crop != "red beet"));
    assert!(roots.windows(2).all(|pair| pair[0].1 <= pair[1].1), "{roots:?}");
    let mixed = left(&soil(PlantGroup::MixedVegetables));
    assert_eq!(mixed[0], ("bean", 62.0));
    close(mixed.iter().find(|(c, _)| *c == "tomato").unwrap().1, 95.05, 1e-9);
    let lawn = soil(PlantGroup::Lawn);
    assert!(left(&lawn).is_empty() && said(&lawn, "salts-and-crops").contains("lawn"));
    let sweet = sampled().by(Property::Ec, 0.8, Method::SaturatedPaste).traits();
    assert!(left(&sweet).is_empty());
    assert!(said(&sweet, "salts-and-crops").contains("no crop of this bed"));
}

/// Source: 2.0 % carbon is 3.4 % organic matter by the old factor 1.724 (NRCS, opened), 4.0 % by
/// 2.0 (Pribyl 2010, opened); the other way round here (derived).
#[test]
fn carbon_of_organic_matter() {
    close(carbon::from_organic_matter(3.448).high, 2.0, 1e-9);
    close(carbon::from_organic_matter(4.0).low, 2.0, 1e-9);
    let traits = sampled().is(Property::OrganicMatter, 4.0).traits();
    let found = band(&traits, "organic-carbon");
    close(found.low, 2.0, 1e-9);
    close(found.high, 4.0 / 1.724, 1e-9);
    assert!(asks(&traits, QuestionId::SamplingDepth));
    assert!(traits.get("carbon-stock").is_none());
}

/// Source: Soils Connect question 97: bulk density 1.5, 10 cm, 1.3 % carbon hold 19.5 t/ha (opened).
#[test]
fn carbon_in_a_slice() {
    close(carbon::stock(1.3, 1.5, 10.0), 19.5, 1e-9);
    let soil = |density: Option<f64>| {
        let mut case = sampled().is(Property::OrganicCarbon, 1.3).deep(0.0, 10.0);
        if let Some(density) = density {
            case = case.is(Property::BulkDensity, density);
        }
        band(&case.traits(), "carbon-stock")
    };
    let known = soil(Some(1.5));
    assert!(known.is_exact());
    close(known.likely, 19.5, 1e-9);
    let unknown = soil(None);
    assert!(unknown.low < 19.5 && 19.5 < unknown.high, "{unknown:?}");
    let peat = sampled().is(Property::OrganicMatter, 60.0).deep(0.0, 10.0).traits();
    // Organic soils weigh 0.1 to 0.6 g/cm³; of 60 % organic matter, by its density, 0.37.
    let stock = band(&peat, "carbon-stock");
    assert!(stock.low > 60.0 / 2.0 * 0.1 * 10.0, "{stock:?}");
    assert!(stock.high < 60.0 / 1.724 * 0.6 * 10.0, "{stock:?}");
    assert!(stock.low < 300.0 * 0.37 && 300.0 * 0.37 < stock.high, "{stock:?}");
}

/// Double entry: Rutgers, in University of Delaware Weekly Crop Update: nitrogen for sweet corn by
/// nitrate-N, with manure 160, 120, 80, 40, 0 and without 160, 120, 80, 40, 0 lb/acre (opened).
#[test]
fn the_nitrate_test_at_every_border() {
    for (nitrate, manured, unmanured) in [
        (0.0, 160.0, 160.0),
        (10.0, 160.0, 160.0),
        (10.4, 160.0, 160.0),
        (11.0, 120.0, 160.0),
        (15.0, 120.0, 160.0),
        (16.0, 80.0, 120.0),
        (18.0, 80.0, 120.0),
        (20.0, 80.0, 120.0),
        (21.0, 40.0, 80.0),
        (25.0, 40.0, 80.0),
        (26.0, 0.0, 40.0),
        (30.0, 0.0, 40.0),
        (31.0, 0.0, 0.0),
        (500.0, 0.0, 0.0),
    ] {
        assert_eq!(nitrate::sidedress(nitrate, true), manured, "{nitrate} manured");
        assert_eq!(nitrate::sidedress(nitrate, false), unmanured, "{nitrate}");
    }
}

/// Source: Ohio State University 2022: off the usual rate of field corn 0, 30, 45, 90 lb/acre, none
/// needed above 25 ppm; at 19 ppm a rate of 156 becomes 111 (opened).
#[test]
fn the_nitrate_test_takes_off_the_usual_rate() {
    for (nitrate, off) in [
        (0.0, Some(0.0)),
        (10.0, Some(0.0)),
        (11.0, Some(30.0)),
        (15.0, Some(30.0)),
        (16.0, Some(45.0)),
        (20.0, Some(45.0)),
        (21.0, Some(90.0)),
        (25.0, Some(90.0)),
        (26.0, None),
    ] {
        assert_eq!(nitrate::off_the_rate(nitrate), off, "{nitrate}");
    }
    close(156.0 - nitrate::off_the_rate(19.0).unwrap(), 111.0, 1e-9);
}

/// Source: the test is for a sample 12 in deep in the growing season, University of Delaware and
/// Ohio State (opened); 80 and 120 lb/acre are 89.7 and 134.5 kg/ha (derived).
#[test]
fn the_nitrate_test_is_used_for_its_own_samples_only() {
    let nitrate = |top, bottom| sampled().is(Property::NitrateN, 18.0).deep(top, bottom);
    let fit = nitrate(0.0, 30.0).traits();
    // 1 kg/ha is 0.1 g/m², 1 lb/acre 0.0023 lb/100 sq ft.
    close(band(&fit, "psnt-manured").likely, 8.97, 0.005);
    close(band(&fit, "psnt-unmanured").likely, 13.45, 0.005);
    assert!(said(&fit, "nitrate").starts_with("If this sample was taken while the crop grew"));
    let us = nitrate(0.0, 30.0).with(|c| c.measures = Measures::Us).traits();
    let text = said(&us, "nitrate");
    // 80, 120 and 45 lb/acre on 100 of the 43,560 sq ft of an acre.
    for lb in ["0.18", "0.28", "0.1"] {
        assert!(text.contains(&format!("{lb}\u{a0}lb/100 sq ft")), "{text}");
    }
    for (top, bottom, used) in [
        (0.0, 25.0, true),
        (0.0, 35.0, true),
        (0.0, 24.9, false),
        (0.0, 35.1, false),
        (0.0, 15.0, false),
        (15.0, 30.0, false),
    ] {
        let traits = nitrate(top, bottom).traits();
        assert_eq!(traits.get("psnt-manured").is_some(), used, "{top} to {bottom}");
        assert_eq!(said(&traits, "nitrate").contains("No nitrogen rate"), !used);
    }
    let lawn = nitrate(0.0, 30.0).with(|c| c.plants = Some(PlantGroup::Lawn)).traits();
    assert!(lawn.get("psnt-manured").is_none());
    let empty = nitrate(0.0, 30.0).with(|c| {
        c.season.today = time::Date::from_calendar_date(2027, Month::March, 1).ok();
        c.season.planting = time::Date::from_calendar_date(2027, Month::May, 1).ok();
    });
    assert!(said(&empty.traits(), "nitrate").contains("Nothing grows"));
    let season = |month, day| {
        nitrate(0.0, 30.0).with(|c| {
            c.season.today = time::Date::from_calendar_date(2027, month, day).ok();
            c.season.harvest = time::Date::from_calendar_date(2027, Month::September, 20).ok();
        })
    };
    assert!(season(Month::June, 15).traits().get("psnt-manured").is_some());
    assert!(said(&season(Month::October, 14).traits(), "nitrate").contains("Nothing grows"));
    let unknown = sampled().is(Property::NitrateN, 18.0).traits();
    assert!(asks(&unknown, QuestionId::SamplingDepth));
    let limit = |amount| {
        let case = sampled().read(Property::NitrateN, amount, Unit::MgPerKg, None);
        case.deep(0.0, 30.0).traits().get("psnt-manured").map(|f| (f.band.likely * 10.0).round())
    };
    assert_eq!(limit(Amount::Below(5.0)), Some(179.0));
    assert_eq!(limit(Amount::Below(15.0)), None);
    assert_eq!(limit(Amount::Above(40.0)), Some(0.0));
    assert_eq!(limit(Amount::Above(20.0)), None);
}

/// Source: kg/ha = mg/kg × depth (cm) × density × 0.1; a furrow slice doubles ppm to lb/acre, ×
/// 1.12085 (derived).
#[test]
fn nitrate_in_the_sampled_layers() {
    let two = sampled()
        .is(Property::BulkDensity, 1.3)
        .is(Property::NitrateN, 20.0)
        .layer(0.0, 15.0)
        .is(Property::NitrateN, 8.0)
        .layer(15.0, 60.0)
        .is(Property::NitrateN, 99.0)
        .layer(0.0, 30.0);
    // 1 g/m² is 10 kg/ha.
    let stock = |traits: &Traits| band(traits, "nitrate-stock").map(|grams| 10.0 * grams);
    // The third reading overlaps the first two and is left out.
    close(stock(&two.traits()).likely, 20.0 * 15.0 * 0.13 + 8.0 * 45.0 * 0.13, 1e-9);
    let printed = sampled()
        .read(Property::NitrateN, Amount::Exactly(40.0), Unit::LbPerAcre, None)
        .deep(0.0, 17.0);
    close(stock(&printed.traits()).likely, 44.83, 0.005);
    let volume = sampled()
        .read(Property::NitrateN, Amount::Exactly(30.0), Unit::MgPerL, None)
        .deep(0.0, 20.0);
    let stock = stock(&volume.traits());
    assert!(stock.is_exact());
    close(stock.likely, 60.0, 1e-9);
}

/// Source: Sims and others 2002: water at risk above 150 mg/kg of Mehlich-3 phosphorus and a
/// saturation ratio above 0.15 (opened); P 100, Al 800, Fe 200 give 0.097 (derived).
#[test]
fn the_delaware_lines_for_water() {
    let soil = |p: f64, al: f64| {
        let case = sampled()
            .by(Property::Phosphorus, p, Method::Mehlich3)
            .by(Property::Aluminum, al, Method::Mehlich3)
            .by(Property::Iron, 200.0, Method::Mehlich3);
        said(&case.traits(), "phosphorus-and-water")
    };
    assert!(soil(150.0, 800.0).contains("not over 150"));
    assert!(soil(150.1, 800.0).contains("Above 150 Delaware"));
    assert!(soil(100.0, 800.0).contains("not over 0.15"));
    // 100 mg/kg with little aluminium is over the ratio and under the line.
    assert!(soil(100.0, 400.0).contains("is over 0.15"));
    let colour = sampled().by(Property::Phosphorus, 200.0, Method::Mehlich3Colorimetric);
    assert_eq!(said(&colour.traits(), "phosphorus-and-water"), "");
    assert_eq!(phosphorus::DELAWARE_LINE, 150.0);
}

/// Double entry: University of Minnesota Extension: 25 ppm is very high for gardens, add none (opened; its
/// extractant from memory); index 4 from 46 mg/L, Northern Ireland SR 2019/81 (opened).
#[test]
fn the_garden_and_the_index_lines_for_phosphorus() {
    let soil = |p: f64, unit, method| {
        let case = sampled().read(Property::Phosphorus, Amount::Exactly(p), unit, Some(method));
        said(&case.traits(), "phosphorus-and-water")
    };
    assert_eq!(soil(24.9, Unit::MgPerKg, Method::BrayP1), "");
    assert!(soil(25.0, Unit::MgPerKg, Method::BrayP1).contains("Minnesota"));
    assert!(soil(25.0, Unit::MgPerKg, Method::Olsen).contains("Minnesota"));
    assert_eq!(soil(90.0, Unit::MgPerKg, Method::ModifiedMorgan), "");
    assert_eq!(soil(45.0, Unit::MgPerL, Method::Olsen), "");
    assert!(soil(46.0, Unit::MgPerL, Method::Olsen).contains("index 4"));
}

/// Double entry: US EPA: 400 mg/kg from 1994; 200, or 100 near other lead, from 17 January 2024; 200
/// everywhere with 600 for removal from 16 October 2025 (opened in reports of it).
#[test]
fn lead_levels_by_date() {
    let on = |year, month, day| {
        lead_level(Some(time::Date::from_calendar_date(year, month, day).unwrap()))
            .map(|l| (l.screening, l.with_other_sources, l.removal))
    };
    assert_eq!(on(1993, Month::December, 31), None);
    assert_eq!(on(2024, Month::January, 16), Some((400.0, 400.0, None)));
    assert_eq!(on(2024, Month::January, 17), Some((200.0, 100.0, Some(200.0))));
    assert_eq!(on(2025, Month::October, 15), Some((200.0, 100.0, Some(200.0))));
    assert_eq!(on(2025, Month::October, 16), Some((200.0, 200.0, Some(600.0))));
    assert_eq!(lead_level(None).unwrap().screening, 200.0);
    let soil = |year| {
        let case = sampled().by(Property::Lead, 250.0, Method::TotalAcid).with(|c| {
            c.season.today = time::Date::from_calendar_date(year, Month::June, 1).ok();
        });
        said(&case.traits(), "metals")
    };
    assert!(soil(2023).contains("not over the US EPA screening level for homes (400 mg/kg"));
    assert!(soil(2026).contains("over the US EPA screening level for homes (200 mg/kg"));
    assert!(soil(2026).contains("not over its level for taking soil away (600 mg/kg"));
    assert!(soil(2026).contains("raised beds") && soil(2026).contains("health or environment"));
}

/// Double entry: Germany, soil protection ordinance of 2021, Annex 1 Table 1 (opened): arsenic 10/20/20,
/// lead 40/70/100, cadmium 0.4/1/1.5 mg/kg for sand, loam or silt, clay.
#[test]
fn precautionary_values_by_texture() {
    let held = |metal| {
        let mut of_metal = metals::Level::of(metal, None);
        of_metal.find(|level| level.whose.contains("precautionary")).expect("Germany's")
    };
    let at = |metal, texture| held(metal).at(Some(texture)).0;
    for (metal, values) in [
        (Property::Arsenic, [10.0, 20.0, 20.0]),
        (Property::Lead, [40.0, 70.0, 100.0]),
        (Property::Cadmium, [0.4, 1.0, 1.5]),
    ] {
        let found =
            [Texture::Sand, Texture::SiltLoam, Texture::Clay].map(|texture| at(metal, texture));
        assert_eq!(found, values, "{metal:?}");
        assert_eq!(held(metal).at(None), (values[0], values[2]));
    }
    let soil = |value| {
        let case = sampled().by(Property::Cadmium, value, Method::TotalAcid);
        said(&case.texture(Texture::Loam).traits(), "metals")
    };
    assert!(soil(1.0).contains("not over Germany"));
    assert!(soil(1.1).contains(" over Germany") && !soil(1.1).contains("not over Germany"));
}

/// Source: University of Vermont: a weak-acid test screens and is no total (opened); the German
/// ordinance of 1999 has 0.1 mg/kg for lead and cadmium in ammonium nitrate (opened).
#[test]
fn an_extract_is_never_held_against_a_total() {
    let soil = |metal, method: Option<Method>, unit| {
        let case = sampled().read(metal, Amount::Exactly(500.0), unit, method);
        said(&case.traits(), "metals")
    };
    for metal in [Property::Lead, Property::Arsenic, Property::Cadmium] {
        for method in [None, Some(Method::Mehlich3), Some(Method::ModifiedMorgan)] {
            let text = soil(metal, method, Unit::MgPerKg);
            assert!(text.starts_with("No level is held against"), "{text}");
            assert!(!text.contains("EPA") && !text.contains("Germany"), "{text}");
            assert!(text.contains("health or environment office"));
        }
        let by_volume = soil(metal, Some(Method::TotalAcid), Unit::MgPerL);
        assert!(by_volume.starts_with("No level is held against"), "{by_volume}");
    }
    let own = soil(Property::Lead, Some(Method::AmmoniumNitrate), Unit::MgPerKg);
    assert!(own.contains("over Germany's value for vegetable gardens") && !own.contains("EPA"));
    let arsenic = soil(Property::Arsenic, Some(Method::AmmoniumNitrate), Unit::MgPerKg);
    assert!(arsenic.starts_with("No level is held against"));
}

/// Source: soil without added lead holds 10–50 mg/kg, Oregon State EC 1616-E (opened); a sample for
/// lead is the top ¾ inch, University of Minnesota (opened).
#[test]
fn lead_below_nature_needs_no_action_and_a_deep_sample_may_hide_it() {
    let soil = |lead: f64, bottom: f64| {
        let case = sampled().by(Property::Lead, lead, Method::TotalAcid).deep(0.0, bottom);
        said(&case.traits(), "metals")
    };
    assert!(!soil(50.0, 15.0).contains("Against lead"));
    assert!(soil(51.0, 15.0).contains("Against lead") && soil(51.0, 15.0).contains("1.9"));
    assert!(!soil(51.0, 2.0).contains("1.9"));
    let below =
        sampled().read(Property::Lead, Amount::Below(20.0), Unit::MgPerKg, Some(Method::TotalAcid));
    assert!(said(&below.traits(), "metals").contains("not over the US EPA"));
}

/// Source: the twelve classes of the SSSA glossary, each as its own rule (opened); every half per
/// cent of the triangle falls in one class and no other (derived).
#[test]
fn the_whole_triangle_by_the_printed_rules() {
    // In halves of a per cent.
    for s in 0..=200 {
        for c in 0..=200 - s {
            let z = 200 - s - c;
            let (fine, finer) = (2 * z + 3 * c, z + 2 * c);
            let is = |class: Texture| match class {
                Texture::Sand => fine < 60,
                Texture::LoamySand => fine >= 60 && finer < 60,
                Texture::SandyLoam => {
                    finer >= 60 && ((14..40).contains(&c) && s > 104 || c < 14 && z < 100)
                }
                Texture::Loam => (14..54).contains(&c) && (56..100).contains(&z) && s <= 104,
                Texture::SiltLoam => {
                    z >= 100 && (24..54).contains(&c) || (100..160).contains(&z) && c < 24
                }
                Texture::Silt => z >= 160 && c < 24,
                Texture::SandyClayLoam => (40..70).contains(&c) && z < 56 && s > 90,
                Texture::ClayLoam => (54..80).contains(&c) && (41..=90).contains(&s),
                Texture::SiltyClayLoam => (54..80).contains(&c) && s <= 40,
                Texture::SandyClay => c >= 70 && s > 90,
                Texture::SiltyClay => c >= 80 && z >= 80,
                Texture::Clay => c >= 80 && s <= 90 && z < 80,
            };
            let classes: Vec<Texture> = Texture::ALL.into_iter().filter(|t| is(*t)).collect();
            let half = |part: i32| f64::from(part) / 2.0;
            let found = Texture::from_separates(half(s), half(z), half(c));
            assert_eq!(found.as_slice(), classes, "{}-{}-{}", half(s), half(z), half(c));
        }
    }
}

/// Source: standard errors of the equations 2, 5 and 4 points of water, Saxton and Rawls 2006
/// (from memory); conductivity to three times either way (common practice, no source).
#[test]
fn water_says_how_far_its_equations_may_miss() {
    let loam = |om: Option<f64>| {
        let case =
            sampled().is(Property::Sand, 40.0).is(Property::Silt, 40.0).is(Property::Clay, 20.0);
        om.into_iter().fold(case, |case, om| case.is(Property::OrganicMatter, om)).traits()
    };
    let known = loam(Some(2.5));
    for (name, error) in [
        ("wilting-point", 2.0),
        ("field-capacity", 5.0),
        ("saturation", 4.0),
        ("available-water", 5.0),
    ] {
        let found = band(&known, name);
        close(found.likely - found.low, error, 1e-9);
        close(found.high - found.likely, error, 1e-9);
    }
    let through = band(&known, "saturated-conductivity");
    close(through.likely, 15.5, 0.05);
    close(through.low, through.likely / 3.0, 1e-9);
    close(through.high, through.likely * 3.0, 1e-9);
    // Without organic matter, from 1 to 5 %.
    let unknown = band(&loam(None), "saturation");
    close(unknown.low, 100.0 * held(40.0, 20.0, 1.0).unwrap().saturation - 4.0, 1e-9);
    close(unknown.high, 100.0 * held(40.0, 20.0, 5.0).unwrap().saturation + 4.0, 1e-9);
}

/// Source: the equation of Handbook 60 was fitted below SAR 65 and ESP 50 (opened); sodium can harm
/// structure below SAR 13, Colorado State 0.504 (opened).
#[test]
fn sodium_near_and_beyond_the_limits() {
    let soil = |sar: f64| sampled().is(Property::Sar, sar).traits();
    let beyond = |sar: f64| {
        let traits = soil(sar);
        let grounds = &traits.get("esp-from-sar").unwrap().grounds;
        grounds.assumed.iter().any(|a| a.contains("beyond"))
    };
    assert!(beyond(65.0) && beyond(70.0) && !beyond(64.9));
    let near = |esp: f64| {
        let traits = sampled().is(Property::SodiumSaturation, esp).traits();
        said(&traits, "sodicity").contains("below 15 % too")
    };
    assert!(near(5.0) && near(14.9) && !near(4.9) && !near(15.0));
}

/// Source: FAO 2006 (second-hand): a loam with 3 % organic matter and 1.0 dS/m in 1:2.5 has 7.35
/// dS/m (derived); a paste is never weaker than a wetter mix (common practice, no source).
#[test]
fn salts_by_water_content_of_other_mixes() {
    let by_water = |texture, clay, om, method| {
        let case = sampled()
            .is(Property::OrganicMatter, om)
            .is(Property::Clay, clay)
            .by(Property::Ec, 1.0, method)
            .texture(texture);
        case.ece()
    };
    // It widens what the equations give; those for 1:2.5 are the ones for 1:2, thinned by a
    // quarter. A garden with 0.28 dS/m in 1:2.5 was once called saline by the water alone.
    for (texture, clay, om, method, found) in [
        (Texture::Loam, 20.0, 3.0, Method::Water1To2p5, 7.35),
        (Texture::Loam, 20.0, 3.0, Method::Water1To2, 5.88),
        (Texture::Loam, 20.0, 3.0, Method::Water1To1, 2.94),
        (Texture::Clay, 65.0, 9.0, Method::Water1To1, 1.0),
    ] {
        let band = by_water(texture, clay, om, method);
        assert!(band.low <= found && found - 0.005 <= band.high, "{method:?}: {band:?}");
    }
    let paste = sampled()
        .is(Property::OrganicMatter, 3.0)
        .by(Property::Ec, 1.0, Method::SaturatedPaste)
        .texture(Texture::Loam);
    assert!(paste.ece().is_exact());
}

/// Source: the lines of Sims and others 2002 and of US EPA (opened) with results that are only a
/// limit (derived).
#[test]
fn results_that_are_only_a_limit() {
    let phosphorus = |amount| {
        let method = Some(Method::Mehlich3);
        let case = sampled().read(Property::Phosphorus, amount, Unit::MgPerKg, method);
        said(&case.traits(), "phosphorus-and-water")
    };
    assert!(phosphorus(Amount::Below(100.0)).contains("not over 150"));
    assert_eq!(phosphorus(Amount::Below(200.0)), "");
    assert!(phosphorus(Amount::Above(200.0)).contains("Above 150 Delaware"));
    assert_eq!(phosphorus(Amount::Above(100.0)), "");
    let lead = |amount| {
        let method = Some(Method::TotalAcid);
        let case = sampled().read(Property::Lead, amount, Unit::MgPerKg, method);
        said(&case.traits(), "metals")
    };
    assert!(lead(Amount::Above(300.0)).contains(": over the US EPA screening"));
    assert!(lead(Amount::Above(100.0)).contains("perhaps over the US EPA screening"));
    assert!(lead(Amount::Below(300.0)).contains("perhaps over the US EPA screening"));
    assert!(lead(Amount::Exactly(200.0)).contains("not over the US EPA screening"));
    let nitrate_extract = |metal| {
        let case = sampled().by(metal, 0.05, Method::AmmoniumNitrate);
        said(&case.traits(), "metals")
    };
    assert!(nitrate_extract(Property::Cadmium).contains("0.04"));
    assert!(!nitrate_extract(Property::Lead).contains("0.04"));
    assert!(nitrate_extract(Property::Lead).contains("not over Germany's value"));
}

/// Source: stock = carbon (%) × density (g/cm³) × thickness (cm), Soils Connect question 97 (opened),
/// for a layer that doesn't begin at the surface (derived).
#[test]
fn carbon_of_a_deeper_layer() {
    let case =
        sampled().is(Property::BulkDensity, 1.5).is(Property::OrganicCarbon, 1.3).layer(10.0, 30.0);
    close(band(&case.traits(), "carbon-stock").likely, 39.0, 1e-9);
}
