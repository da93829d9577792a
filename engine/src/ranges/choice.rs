//! Which table judges a measure, and which stand beside it as second opinions.

use crate::quantity::Unit;
use crate::ranges::{Finding, Level, Scheme, Setting, tables};
use crate::soil::{Fit, Measure, PlantGroup, Property, Soil, listed};

/// What tables say of a measure: the one that judges, and the second opinions.
pub(super) struct Said {
    pub scheme: &'static Scheme,
    pub finding: Finding,
    pub others: Vec<Finding>,
}

/// What comes of looking for a table.
pub(super) enum Choice {
    /// A table judges.
    Said(Said),
    /// The tables part by something of the soil that is not known; the finding says what.
    Wants(Finding),
}

/// A table that may hold for the soil.
#[derive(Clone, Copy)]
struct Candidate {
    scheme: &'static Scheme,
    /// The smaller, the nearer.
    rank: usize,
    /// Its place in the list.
    at: usize,
    /// Whether this soil is known to be one that it was made for.
    fit: Fit,
}

impl Candidate {
    /// Whether it holds for this soil, as far as anybody knows.
    fn is_sure(&self) -> bool {
        self.fit >= Fit::IfMineral
    }
}

/// Behind every near region: the tables that judge where no region is known. Our choice.
const LISTED: usize = 100;
/// Behind them: tables of regions that nobody chose. Our choice.
const STRANGERS: usize = 200;
/// How many second opinions stand beside a region's own table. Our choice.
const MOST_OPINIONS: usize = 3;

/// The tables made for the measure's property and method, and for these plants.
pub(super) fn known(measure: &Measure, setting: &Setting) -> Vec<&'static Scheme> {
    let plants = setting.plants.unwrap_or_default();
    let index = measure.unit == Unit::Index;
    tables::all()
        .chain(setting.own)
        .filter(|s| s.property == measure.property && (s.unit == Unit::Index) == index)
        .filter(|s| index && measure.method.is_none() || s.is_for(measure.method))
        .filter(|s| s.plants.contains(&plants) && !leaves_out(s, plants))
        .collect()
}

/// A pH that is right for all plants is not right for those that want acid soil.
fn leaves_out(scheme: &Scheme, plants: PlantGroup) -> bool {
    matches!(scheme.property, Property::Ph | Property::SaltPh)
        && plants == PlantGroup::AcidLovers
        && scheme.plants.len() == PlantGroup::ALL.len()
}

/// Whether the region itself judges this property.
pub(crate) fn has_table(measure: &Measure, setting: &Setting) -> bool {
    let Some(region) = setting.region else { return false };
    known(measure, setting).iter().any(|s| region.nearness(s.region) == Some(0))
}

/// The table that judges, with the second opinions; `None` where no table can be compared.
///
/// Where the region is known its own tables come first, then those of its neighbours, then those
/// that are set to judge; where it is not, those that are set to judge, and for want of them any
/// that is made for the measure, if all such regions agree.
pub(super) fn choose(
    measure: Measure,
    soil: &Soil,
    setting: &Setting,
    density: Option<f64>,
) -> Option<Choice> {
    let mut all = candidates(&measure, soil, setting, density);
    let judge = |found: &Candidate| found.scheme.judge(&measure, density);
    let best = all.iter().map(|found| found.rank).min()?;
    if best == STRANGERS && !agree(all.iter().filter(|found| found.is_sure()).filter_map(judge)) {
        return None;
    }
    let nearest = || all.iter().filter(|found| found.rank == best);
    // What was read comes before what is remembered; then the last, the narrowest.
    let weight = |found: &&Candidate| (!found.scheme.is_from_memory(), found.at);
    let Some(&exact) = nearest().filter(|found| found.is_sure()).max_by_key(weight) else {
        let some: Vec<(&Candidate, Finding)> =
            nearest().filter_map(|found| Some((found, judge(found)?))).collect();
        return Some(of_every_soil(&some, &measure, setting));
    };
    let mut finding = judge(&exact)?;
    if exact.fit == Fit::IfMineral {
        finding.grounds.assumed.push(
            "Taken as mineral soil: the report says nothing of peat, for which another table holds."
                .into(),
        );
    }
    let scheme = exact.scheme;
    finding.of_elsewhere =
        setting.region.is_some_and(|region| region.nearness(scheme.region) != Some(0));
    all.retain(|found| found.at != exact.at && found.rank < STRANGERS && found.is_sure());
    all.sort_unstable_by_key(|found| (found.rank, found.at));
    let most = if setting.region.is_some() { MOST_OPINIONS } else { usize::MAX };
    let others = all.iter().take(most).filter_map(judge).collect();
    Some(Choice::Said(Said { scheme, finding, others }))
}

/// Every table that may hold for this soil, in the order of the list.
fn candidates(
    measure: &Measure,
    soil: &Soil,
    setting: &Setting,
    density: Option<f64>,
) -> Vec<Candidate> {
    let plants = setting.plants.unwrap_or_default();
    let mut known = known(measure, setting);
    known.retain(|scheme| scheme.compares(measure.unit, density));
    // Where a table is set to judge other soils than this one, no stranger steps in.
    let has_judge = known.iter().any(|s| s.judges.contains(&plants));
    let rank = |scheme: &Scheme| {
        let near = setting.region.map(|region| region.nearness(scheme.region));
        match near {
            // What was made as a second opinion stands behind the region's own.
            Some(Some(far)) => Some(2 * far + usize::from(scheme.second.contains(&plants))),
            _ if scheme.judges.contains(&plants) || scheme.second.contains(&plants) => {
                Some(LISTED + usize::from(!scheme.judges.contains(&plants)))
            }
            Some(None) => None,
            None => (!has_judge).then_some(STRANGERS),
        }
    };
    (0..)
        .zip(known)
        .filter_map(|(at, scheme)| {
            let fit = scheme.soils.fit(soil, setting.texture, setting.group);
            let rank = rank(scheme).filter(|_| fit != Fit::No)?;
            Some(Candidate { scheme, rank, at, fit })
        })
        .collect()
}

fn agree(found: impl Iterator<Item = Finding>) -> bool {
    let mut sides = found.filter_map(|finding| finding.level).map(Level::side);
    let first = sides.next();
    sides.all(|side| Some(side) == first)
}

/// Tables for soils that nobody knows this one to be: what they share, else what is wanted.
fn of_every_soil(some: &[(&Candidate, Finding)], measure: &Measure, setting: &Setting) -> Choice {
    let mut wanted: Vec<Property> = Vec::new();
    for (property, ..) in some.iter().flat_map(|(found, _)| found.scheme.soils.within) {
        if !wanted.contains(property) {
            wanted.push(*property);
        }
    }
    let by_texture = some.iter().any(|(found, _)| !found.scheme.soils.textures.is_empty());
    let what = match (by_texture, wanted.is_empty()) {
        (true, true) => "texture".to_string(),
        (true, false) => format!("texture, {}", listed(&wanted)),
        (false, _) => listed(&wanted),
    };
    let from_enough = |(_, finding): &&(&Candidate, Finding)| {
        finding.level.map_or(u8::MAX, |level| (level as u8).abs_diff(Level::Sufficient as u8))
    };
    if agree(some.iter().map(|(_, finding)| finding.clone()))
        && let Some((mildest, finding)) = some.iter().min_by_key(from_enough)
        && finding.level.is_some()
    {
        let mut finding = finding.clone();
        finding.grounds.assumed.push(format!(
            "The soil's {what} is not known; the tables for every soil come to this side of enough."
        ).into());
        return Choice::Said(Said { scheme: mildest.scheme, finding, others: Vec::new() });
    }
    let by = measure.method.map_or(String::new(), |m| format!(" by {}", m.label()));
    let mut finding = Finding::not_judged(format!(
        "How much {}{by} is enough depends on the {what}. Add it.",
        measure.property.label()
    ));
    finding.wants_texture = by_texture && setting.texture.is_none();
    Choice::Wants(finding)
}
