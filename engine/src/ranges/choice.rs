//! Which table judges a measure, and which stand beside it as second opinions.

use crate::quantity::Unit;
use crate::ranges::{Finding, Level, Scheme, Setting, tables};
use crate::soil::{Measure, PlantGroup, Property, Soil, listed};

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

/// A table with what it would say.
struct Candidate {
    scheme: &'static Scheme,
    finding: Finding,
    /// The smaller, the nearer.
    rank: usize,
    /// Its place in the list.
    at: usize,
    /// Whether this soil is known to be one that it was made for.
    sure: bool,
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
    let mut all = candidates(measure, soil, setting, density);
    let best = all.iter().map(|found| found.rank).min()?;
    if best == STRANGERS && !agree(all.iter().filter(|found| found.sure)) {
        return None;
    }
    let nearest = || all.iter().enumerate().filter(|(_, found)| found.rank == best);
    // What was read comes before what is remembered; then the last, the narrowest.
    let weight = |found: &Candidate| !found.scheme.is_from_memory();
    let exact = nearest().filter(|(_, f)| f.sure).max_by_key(|(at, f)| (weight(f), *at));
    let Some((at, _)) = exact else {
        let some: Vec<&Candidate> = nearest().map(|(_, found)| found).collect();
        return Some(of_every_soil(&some, &measure, setting));
    };
    let Candidate { scheme, finding, .. } = all.remove(at);
    all.retain(|found| found.rank < STRANGERS && found.sure);
    all.sort_unstable_by_key(|found| (found.rank, found.at));
    let most = if setting.region.is_some() { MOST_OPINIONS } else { usize::MAX };
    let others = all.into_iter().map(|found| found.finding).take(most).collect();
    Some(Choice::Said(Said { scheme, finding, others }))
}

/// Every table that may hold for this soil, in the order of the list.
fn candidates(
    measure: Measure,
    soil: &Soil,
    setting: &Setting,
    density: Option<f64>,
) -> Vec<Candidate> {
    let plants = setting.plants.unwrap_or_default();
    let known = known(&measure, setting);
    // Where a table is set to judge other soils than this one, no stranger steps in.
    let has_judge =
        known.iter().any(|s| s.judges.contains(&plants) && s.judge(&measure, density).is_some());
    let rank = |scheme: &Scheme| {
        let second = usize::from(!scheme.judges.contains(&plants));
        let near = setting.region.map(|region| region.nearness(scheme.region));
        match near {
            Some(Some(far)) => Some(2 * far + second),
            _ if scheme.judges.contains(&plants) || scheme.second.contains(&plants) => {
                Some(LISTED + second)
            }
            Some(None) => None,
            None => (!has_judge).then_some(STRANGERS),
        }
    };
    (0..)
        .zip(known)
        .filter_map(|(at, scheme)| {
            let fits = scheme.soils.fit(soil, setting.texture);
            let rank = rank(scheme).filter(|_| fits != Some(false))?;
            let finding = scheme.judge(&measure, density)?;
            Some(Candidate { scheme, finding, rank, at, sure: fits == Some(true) })
        })
        .collect()
}

fn agree<'a>(found: impl Iterator<Item = &'a Candidate>) -> bool {
    let mut sides = found.filter_map(|found| found.finding.level).map(Level::side);
    let first = sides.next();
    sides.all(|side| Some(side) == first)
}

/// Tables for soils that nobody knows this one to be: what they share, else what is wanted.
fn of_every_soil(some: &[&Candidate], measure: &Measure, setting: &Setting) -> Choice {
    let mut wanted: Vec<Property> = Vec::new();
    for (property, ..) in some.iter().flat_map(|found| found.scheme.soils.within) {
        if !wanted.contains(property) {
            wanted.push(*property);
        }
    }
    let by_texture = some.iter().any(|found| !found.scheme.soils.textures.is_empty());
    let what = match (by_texture, wanted.is_empty()) {
        (true, true) => "texture".to_string(),
        (true, false) => format!("texture, {}", listed(&wanted)),
        (false, _) => listed(&wanted),
    };
    let from_enough = |found: &&&Candidate| {
        found.finding.level.map_or(u8::MAX, |level| (level as u8).abs_diff(Level::Sufficient as u8))
    };
    if agree(some.iter().copied())
        && let Some(mildest) = some.iter().min_by_key(from_enough)
        && mildest.finding.level.is_some()
    {
        let mut finding = mildest.finding.clone();
        finding.grounds.assumed.push(format!(
            "The soil's {what} is not known; the tables for every soil come to this side of enough."
        ));
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
