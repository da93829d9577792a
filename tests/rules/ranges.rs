//! The tables as a whole: each is used, cited and whole, and one judges.

use std::collections::BTreeSet;

use emberloam_engine::quantity::Unit;
use emberloam_engine::ranges::{
    Finding, Level, NO_CHANCE, Placed, Setting, beside_the_laboratory, judge, place, schemes,
    texture_decides,
};
use emberloam_engine::region::Region;
use emberloam_engine::soil::{Amount, Measure, Method, PlantGroup, Property, Soil, SoilGroup};
use emberloam_engine::sources::all_sources;

use Level::{Excess, High, Low, Sufficient, VeryLow};

use crate::close;

fn measure(property: Property, value: f64, method: Option<Method>) -> Measure {
    Measure { property, amount: Amount::Exactly(value), unit: property.unit(), method }
}

fn by_volume(property: Property, value: f64, method: Method) -> Measure {
    Measure { unit: Unit::MgPerL, ..measure(property, value, Some(method)) }
}

fn for_plants(plants: PlantGroup) -> Setting {
    Setting { plants: Some(plants), texture: None, ..Setting::default() }
}

fn judged(measure: &Measure, plants: PlantGroup) -> Finding {
    judge(measure, &Soil::default(), &for_plants(plants))
}

fn word(finding: &Finding) -> &'static str {
    finding.range.as_ref().expect("a range").word
}

fn opinion<'a>(finding: &'a Finding, source: &str) -> &'a emberloam_engine::ranges::Opinion {
    finding
        .second_opinions
        .iter()
        .find(|o| o.source.title().contains(source))
        .unwrap_or_else(|| panic!("no opinion of {source} in {:?}", finding.second_opinions))
}

#[test]
fn organic_matter_of_an_unknown_texture_is_judged_only_where_all_agree() {
    let at = |v| measure(Property::OrganicMatter, v, None);
    let found = |v| judge(&at(v), &Soil::default(), &Setting::default());
    assert_eq!((found(0.4).level, texture_decides(&at(0.4))), (Some(VeryLow), false));
    assert_eq!((found(6.0).level, texture_decides(&at(6.0))), (Some(High), false));
    assert!(found(2.2).not_judged.unwrap().contains("texture"));
    assert!(texture_decides(&at(2.2)));
    assert!(found(12.0).grounds.assumed.iter().any(|a| a.contains("10 %")));
}

/// Every printed end of every table, on both sides: no gaps, no overlaps.
#[test]
fn every_step_of_every_table_holds_up_to_its_end_and_no_further() {
    let mut ids = BTreeSet::new();
    for scheme in schemes() {
        let steps = scheme.steps();
        assert!(ids.insert(scheme.id()), "{} stands twice", scheme.id());
        let at = |v| match place(&steps, Amount::Exactly(v)) {
            Placed::On(step) => step.word,
            other => panic!("{}: {v} is {other:?}", scheme.id()),
        };
        assert_eq!(at(0.0), steps[0].word, "{}", scheme.id());
        for (step, next) in steps.iter().zip(&steps[1..]) {
            let end =
                step.up_to.unwrap_or_else(|| panic!("{}: only the last is open", scheme.id()));
            let (own, after) = (end * (1.0 - 1e-9), end * (1.0 + 1e-9));
            assert_eq!(at(own), step.word, "{}: just under {end}", scheme.id());
            assert_eq!(at(after), next.word, "{}: just over {end}", scheme.id());
            let holder = if step.inclusive { step } else { next };
            assert_eq!(at(end), holder.word, "{}: at {end}", scheme.id());
            assert!(step.level <= next.level, "{}: levels rise", scheme.id());
            if let Some(next_end) = next.up_to {
                assert!(end < next_end, "{}: ends rise", scheme.id());
            }
        }
        let last = steps.last().unwrap();
        assert!(last.up_to.is_none(), "{}: the last step is open", scheme.id());
        assert!(steps.iter().any(|s| s.level == Sufficient), "{}", scheme.id());
    }
}

#[test]
fn every_table_is_cited_and_used_for_some_plants() {
    let registered: BTreeSet<_> = all_sources().map(|s| s.id()).collect();
    for scheme in schemes() {
        assert!(!scheme.citations.is_empty(), "{} names no publication", scheme.id());
        for citation in scheme.citations {
            assert!(registered.contains(citation.source.id()), "{}", citation.source.id());
        }
        assert!(!scheme.plants.is_empty(), "{}", scheme.id());
        assert!(scheme.judges.iter().all(|p| !scheme.second.contains(p)), "{}", scheme.id());
    }
}

/// One table judges, never two: for every property, method, unit and plants
/// that any table knows.
#[test]
fn at_most_one_table_judges_a_measure_and_every_plant_has_one() {
    for scheme in schemes().filter(|s| s.property != Property::OrganicMatter) {
        if scheme.judges.is_empty() {
            continue;
        }
        for plants in PlantGroup::ALL {
            let rivals: Vec<_> = schemes()
                .filter(|s| s.property == scheme.property && s.judges.contains(&plants))
                .filter(|s| s.methods == scheme.methods && s.soils == scheme.soils)
                .filter(|s| (s.unit == Unit::MgPerL) == (scheme.unit == Unit::MgPerL))
                .map(|s| s.id())
                .collect();
            assert_eq!(rivals.len(), 1, "{plants:?}: {rivals:?}");
        }
    }
}

/// What a remembered table judges is known to rest on memory, so that no
/// advice leans on it alone.
#[test]
fn a_level_from_a_remembered_table_says_so() {
    for scheme in schemes().filter(|s| s.is_from_memory() && !s.judges.is_empty()) {
        let unit = match scheme.unit {
            Unit::MgPerL => Unit::MgPerL,
            _ => scheme.property.unit(),
        };
        let number =
            Measure { unit, ..measure(scheme.property, 40.0, scheme.methods.first().copied()) };
        let found = judged(&number, PlantGroup::MixedVegetables);
        assert!(found.rests_on_memory(), "{}: {found:?}", scheme.id());
        assert!(
            !schemes().any(|read| {
                !read.is_from_memory()
                    && read.property == scheme.property
                    && !read.judges.is_empty()
                    && read.methods.iter().any(|m| scheme.methods.contains(m))
                    && (read.unit == Unit::MgPerL) == (scheme.unit == Unit::MgPerL)
            }),
            "{}: a table that was read must judge instead",
            scheme.id()
        );
        assert!(found.grounds.assumed.iter().any(|a| a.contains("from memory")), "{}", scheme.id());
    }
}

/// What the steps of each table mean, or that its publication doesn't say,
/// stands behind the level.
#[test]
fn every_table_says_what_its_steps_mean() {
    for scheme in schemes() {
        assert!(!scheme.meaning.is_empty(), "{}", scheme.id());
        assert!(scheme.meaning.ends_with('.'), "{}", scheme.id());
    }
    let rule = |property, method| {
        judged(&measure(property, 50.0, Some(method)), PlantGroup::Lawn).grounds.rule
    };
    assert!(rule(Property::Phosphorus, Method::Mehlich3).contains("likely fertiliser is to pay"));
    assert!(rule(Property::Phosphorus, Method::ModifiedMorgan).contains(NO_CHANCE));
    let lawn =
        judged(&measure(Property::Phosphorus, 50.0, Some(Method::Mehlich3)), PlantGroup::Lawn);
    assert!(opinion(&lawn, "Carrow").grounds.rule.contains("80–100 %"));
}

/// Where the usual extractants part there is no verdict, and each is told; where all of them
/// agree on the side of enough, that is said at once.
#[test]
fn without_an_extractant_only_what_all_usual_ones_say_is_said() {
    let found =
        |value| judged(&measure(Property::Phosphorus, value, None), PlantGroup::MixedVegetables);
    let parted = found(38.0);
    assert!(parted.level.is_none() && parted.range.is_none());
    let why = parted.not_judged.unwrap();
    assert!(why.contains("low by Mehlich-3") && why.contains("by Olsen"), "{why}");
    let plenty = found(2000.0);
    assert_eq!(plenty.level, Some(Sufficient), "{plenty:?}");
    assert!(plenty.grounds.assumed[0].contains("extractant is not known"));
    for property in Property::ALL.into_iter().filter(|p| p.is_extracted()) {
        let found = judged(&measure(property, 50.0, None), PlantGroup::MixedVegetables);
        let said = found.grounds.assumed.first().is_some_and(|a| a.contains("is not known"));
        assert!(found.not_judged.is_some() || said, "{property:?}");
    }
}

#[test]
fn weight_and_volume_are_never_compared() {
    let volume = judged(
        &by_volume(Property::Phosphorus, 60.0, Method::Mehlich3),
        PlantGroup::MixedVegetables,
    );
    assert!(volume.not_judged.unwrap().contains("mg/kg"));
    let weight = judged(
        &measure(Property::Potassium, 60.0, Some(Method::AmmoniumNitrate)),
        PlantGroup::MixedVegetables,
    );
    assert!(weight.not_judged.unwrap().contains("mg/L"));
    for unit in [Unit::LbPerAcre, Unit::KgPerHa, Unit::MeqPer100g, Unit::Percent] {
        let wrong = Measure { unit, ..measure(Property::Potassium, 2.0, Some(Method::Mehlich3)) };
        let why = judged(&wrong, PlantGroup::Lawn).not_judged.unwrap();
        assert!(why.contains("unit"), "{unit:?}: {why}");
    }
}

#[test]
fn every_property_is_judged_or_says_why_not() {
    for property in Property::ALL {
        for method in Method::ALL.into_iter().map(Some).chain([None]) {
            let found = judged(&measure(property, 5.0, method), PlantGroup::MixedVegetables);
            assert_eq!(
                found.level.is_none(),
                found.not_judged.is_some(),
                "{property:?} by {method:?}"
            );
            if found.level.is_some() {
                assert!(found.source.is_some() && !found.grounds.sources.is_empty());
            }
        }
    }
}

#[test]
fn a_limit_is_judged_only_as_far_as_it_tells() {
    let p = |amount| {
        judged(
            &Measure { amount, ..measure(Property::Phosphorus, 0.0, Some(Method::Mehlich3)) },
            PlantGroup::MixedVegetables,
        )
    };
    assert_eq!(p(Amount::Below(2.0)).level, Some(Low));
    assert_eq!(p(Amount::Below(50.0)).level, Some(Low));
    let coarse = p(Amount::Below(60.0));
    assert!(coarse.level.is_none() && coarse.not_judged.unwrap().contains("limit"));
    assert_eq!(p(Amount::Above(100.0)).level, Some(Excess));
    assert_eq!(p(Amount::Above(99.0)).level, None);
    let irish = |amount| {
        judged(
            &Measure { amount, ..by_volume(Property::Potassium, 0.0, Method::Morgan) },
            PlantGroup::Lawn,
        )
    };
    let below = irish(Amount::Below(80.0));
    assert_eq!(below.level, Some(Low), "index 1 or 2: at the least low");
    assert!(below.grounds.assumed.iter().any(|a| a.contains("limit")));
}

fn soil_with(property: Property, value: f64) -> Soil {
    Soil { measures: vec![measure(property, value, None)] }
}

/// A table for some soils and its counterparts leave no soil out and never
/// both hold.
#[test]
fn tables_for_some_soils_meet_without_a_gap() {
    for ids in [
        &["cerrado-p-15", "cerrado-p-35", "cerrado-p-60", "cerrado-p-100"][..],
        &["tri-state-k-light", "tri-state-k"],
    ] {
        let mut last = None;
        for id in ids {
            let scheme = schemes().find(|s| s.id() == *id).unwrap();
            let [(property, from, to)] = *scheme.soils.within else { panic!("{id}") };
            assert!(from < to, "{id}");
            assert!(last.is_none_or(|l| l == (property, from)), "{id}");
            last = Some((property, to));
        }
    }
}

/// mg/kg = mg/L ÷ density, arithmetic (derived): Mehlich-3 phosphorus of 60
/// mg/L in soil of 1.20 g/cm³ is 50 mg/kg, where Delaware's medium ends.
#[test]
fn the_density_on_the_report_brings_volume_and_weight_together() {
    let dense = soil_with(Property::BulkDensity, 1.2);
    let plants = for_plants(PlantGroup::MixedVegetables);
    let at = |v| judge(&by_volume(Property::Phosphorus, v, Method::Mehlich3), &dense, &plants);
    assert_eq!((word(&at(60.0)), word(&at(60.1))), ("medium", "optimum"));
    let found = at(60.0);
    let range = found.range.as_ref().unwrap();
    assert_eq!(range.unit, Unit::MgPerL, "the range is shown in the unit of the result");
    assert_eq!(range.text, "61.2–120 mg/L (printed as 51–100 mg/kg)");
    assert!(found.grounds.assumed.iter().any(|a| a.contains("1.2 g/cm³")));
    // The other way round: 60 mg/kg of Morgan potassium is 72 mg/L.
    let weight = measure(Property::Potassium, 60.0, Some(Method::Morgan));
    let found = judge(&weight, &dense, &plants);
    assert_eq!(word(&found), "index 2");
    close(found.range.unwrap().sufficient_from.unwrap(), 100.0 / 1.2, 1e-9);
    // A table in the result's own unit needs no density, and says nothing of it.
    let index = judge(&by_volume(Property::Phosphorus, 26.0, Method::Olsen), &dense, &plants);
    assert_eq!(word(&index), "index 3");
    assert!(index.grounds.assumed.iter().all(|a| !a.contains("g/cm³")));
    // A density that no soil has is no density.
    for nonsense in [0.0, -1.0, 0.19, 2.1, 1200.0, f64::NAN] {
        let soil = soil_with(Property::BulkDensity, nonsense);
        let found = judge(&by_volume(Property::Phosphorus, 60.0, Method::Mehlich3), &soil, &plants);
        assert!(found.level.is_none() && found.not_judged.unwrap().contains("density"));
    }
}

/// A table that only draws a critical level says nothing against a surplus,
/// and a surplus in another table nothing against it.
#[test]
fn a_table_without_an_upper_end_does_not_disagree_with_a_surplus() {
    let at =
        |v, method| judged(&measure(Property::Phosphorus, v, Some(method)), PlantGroup::RootCrops);
    let rich = at(150.0, Method::Mehlich3);
    assert_eq!(rich.level, Some(Excess));
    assert_eq!(opinion(&rich, "Tri-State").level, Sufficient);
    assert!(!opinion(&rich, "Tri-State").disagrees);
    assert_eq!(opinion(&rich, "Rutgers").level, Excess);
    let olsen = at(40.0, Method::Olsen);
    assert_eq!(olsen.level, Some(Sufficient));
    assert_eq!(opinion(&olsen, "Ontario").level, High);
    assert!(!opinion(&olsen, "Ontario").disagrees);
    // Short against enough is a disagreement, on either side.
    let short = at(22.0, Method::Mehlich3);
    assert!(short.level == Some(Low) && opinion(&short, "Tri-State").disagrees);
    let between = at(20.0, Method::Olsen);
    assert!(between.level == Some(Low) && opinion(&between, "Ontario").disagrees);
}

/// What one of a region's tables says of a measure there.
fn there(region: &str, measure: &Measure, soil: &Soil, group: Option<SoilGroup>) -> Finding {
    let region = Region::of(region);
    let setting = Setting { plants: Some(PlantGroup::Lawn), region, group, ..Setting::default() };
    judge(measure, soil, &setting)
}

/// Source: University of Georgia crop sheet 792 (opened): of 180 lb/acre of potassium the Coastal
/// Plain has enough and the Piedmont has not.
#[test]
fn a_group_of_soils_chooses_the_table() {
    let k = measure(Property::Potassium, 90.0, Some(Method::Mehlich1));
    let of = |group| there("us-georgia", &k, &Soil::default(), Some(group)).level;
    assert_eq!(of(SoilGroup::CoastalPlain), Some(Sufficient));
    assert_eq!(of(SoilGroup::Piedmont), Some(Low));
}

/// Source: O'Connor and others 2001 (opened): peat wants 35 to 45 of Olsen P, other soil 20.
#[test]
fn peat_is_judged_as_peat_and_the_rest_as_mineral_soil() {
    let p = by_volume(Property::Phosphorus, 32.0, Method::Olsen);
    let of = |soil: &Soil, group| there("new-zealand", &p, soil, group).level;
    let carbon = |percent| soil_with(Property::OrganicCarbon, percent);
    assert_eq!(of(&carbon(28.0), None), Some(Low));
    assert_eq!(of(&Soil::default(), Some(SoilGroup::Peat)), Some(Low));
    assert_eq!(of(&carbon(4.0), None), Some(High));
    assert_eq!(of(&Soil::default(), None), Some(High));
    // Where the guide parts the two, it is said which of them was taken.
    let ph = measure(Property::Ph, 5.7, None);
    let irish = there("ireland", &ph, &Soil::default(), None);
    assert_eq!(irish.level, Some(Low), "Teagasc, 6.3 for grass (opened)");
    assert!(irish.grounds.assumed.iter().any(|a| a.contains("mineral soil")));
    let peaty = there("ireland", &ph, &Soil::default(), Some(SoilGroup::Peat));
    assert_eq!(peaty.level, Some(Sufficient), "peat: 5.5 to 5.8 (opened)");
}

/// Source: our choice: a laboratory knows its own soils, a table of elsewhere does not.
#[test]
fn the_laboratorys_word_stands_before_a_neighbours_table_only() {
    let region = Region::of("us-virginia");
    let beside = |measure: &Measure, word| {
        let setting = Setting { region, ..Setting::default() };
        let mut finding = judge(measure, &Soil::default(), &setting);
        let own = finding.level;
        beside_the_laboratory(&mut finding, word, Some(1.9), region);
        (own, finding)
    };
    let zinc = measure(Property::Zinc, 1.9, Some(Method::Mehlich1));
    let (own, finding) = beside(&zinc, "SUFF");
    assert_eq!((own, finding.level), (Some(Low), Some(Sufficient)));
    assert!(finding.second_opinions.iter().any(|o| o.level == Low && o.disagrees));
    let potassium = measure(Property::Potassium, 30.0, Some(Method::Mehlich1));
    let (own, finding) = beside(&potassium, "SUFF");
    assert!(own.is_some_and(|level| level.is_short()) && finding.level == own);
}
