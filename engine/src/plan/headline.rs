//! The answer in one or two sentences: hazard before lime before shortage before biochar.

use crate::case::Winter;
use crate::plan::hazards::Hazard;
use crate::plan::needs::{Need, NeedKind, Verdict};
use crate::plan::path::{Decision, Path, RuleName};
use crate::soil::{Property, listed};
use crate::survey::{Reaction, Standing, Survey};

/// The headline of a plan.
pub(crate) fn headline(
    survey: &Survey<'_>,
    decision: &Decision<'_>,
    hazards: &[Hazard],
    needs: &[Need],
    late: bool,
) -> String {
    if let Some(hazard) = hazards.first() {
        return of_hazard(*hazard).into();
    }
    let biochar = of_biochar(survey, decision, late);
    if decision.fired(RuleName::NothingJudged) {
        return match lime_first(survey, needs) {
            Some(lime) => format!("{lime} {biochar}"),
            None => biochar.into(),
        };
    }
    if let Some(lime) = lime_first(survey, needs) {
        return format!("{lime} {}", after_lime(decision.path));
    }
    let short = shortages(decision);
    if decision.path == Path::None && !short.is_empty() {
        let first = listed(&short);
        let biochar = if unfit(decision) { biochar } else { "No biochar now." };
        return format!("Feed what is short first: {first}. {biochar}");
    }
    biochar.into()
}

fn of_hazard(hazard: Hazard) -> &'static str {
    match hazard {
        Hazard::Lead => {
            "Lead first: grow food in clean raised beds and leave this soil undug. No biochar now."
        }
        Hazard::Sodium => "Cure the sodium first: drainage, gypsum, clean water. No biochar now.",
        Hazard::Salts => "Wash the salts out first. No biochar now.",
    }
}

/// That lime comes first, where the pH is below what the plants bear.
pub(crate) fn lime_first(survey: &Survey<'_>, needs: &[Need]) -> Option<String> {
    let reaction = Reaction::of(survey)?;
    let lime = needs.iter().find(|need| need.kind == NeedKind::Lime)?;
    if reaction.ph >= reaction.from {
        return None;
    }
    match (lime.verdict, lime.given()) {
        (Verdict::Give, Some(grams)) => {
            let all = survey.on_bed(survey.weighed(grams.likely));
            let each = survey.weighed(grams.likely / f64::from(lime.doses.max(1)));
            Some(if lime.doses > 1 {
                format!("Lime first: {each} now, {all} in all.")
            } else {
                format!("Lime first: {all}.")
            })
        }
        (Verdict::Unknown, _) if !survey.bed.is_potted() => {
            Some("Lime first: the lab's buffer test says how much.".into())
        }
        _ => None,
    }
}

fn after_lime(path: Path) -> &'static str {
    match path {
        Path::UnchargedAfterHarvest => "Then hold the surplus with uncharged biochar.",
        Path::Charged => "Then charged biochar.",
        Path::ChargeFirst => "Then the biochar you have, once it is charged.",
        Path::None => "No biochar now.",
    }
}

fn shortages(decision: &Decision<'_>) -> Vec<Property> {
    [Property::NitrateN, Property::Phosphorus, Property::Potassium]
        .into_iter()
        .filter(|p| decision.facts.short(*p))
        .collect()
}

/// Whether the report has no reading at all of what a plan is made from.
fn nothing_measured(survey: &Survey<'_>) -> bool {
    let main = [Property::NitrateN, Property::Phosphorus, Property::Potassium];
    !survey.readings.iter().any(|judged| main.contains(&judged.reading.property))
}

/// Whether it is the bag on hand that speaks against biochar.
fn unfit(decision: &Decision<'_>) -> bool {
    decision.fired(RuleName::SaltyBiochar) || decision.fired(RuleName::PhosphorusPastLimit)
}

/// What is said of the biochar itself; `late` where it is ready only after planting.
fn of_biochar(survey: &Survey<'_>, decision: &Decision<'_>, late: bool) -> &'static str {
    let timing = &survey.timing;
    let fired = |name| decision.fired(name);
    // A crop stands until a known day, and no other was told of.
    let waits = matches!(survey.bed.standing, Standing::Until(_)) && timing.planting.is_none();
    match decision.path {
        Path::UnchargedAfterHarvest if fired(RuleName::HoldThenFeed) => {
            "Hold the nitrate now with uncharged biochar, and feed what is short in spring."
        }
        Path::UnchargedAfterHarvest if timing.winter == Some(Winter::None) => {
            "Hold this surplus: work in uncharged biochar after harvest, before the main rains."
        }
        Path::UnchargedAfterHarvest if timing.winter_is_ahead() => {
            "Hold this surplus: work in uncharged biochar after harvest, before winter."
        }
        Path::UnchargedAfterHarvest => {
            "Hold this surplus: work uncharged biochar into the clear bed, well before planting."
        }
        Path::Charged if survey.bed.standing == Standing::Open => {
            "Use charged biochar: beside the plants now, or before the next planting."
        }
        Path::Charged if survey.bed.standing == Standing::Lasting => {
            "Use charged biochar, without digging: the roots stay."
        }
        Path::Charged if late => "Feed now; charged biochar comes beside the plants later.",
        Path::Charged if waits => "Use charged biochar once the crop is off the bed.",
        Path::Charged => "Use charged biochar, mixed in before you plant.",
        Path::ChargeFirst if survey.bed.standing == Standing::Lasting => {
            "Charge the biochar you have first, then bring it in without digging."
        }
        Path::ChargeFirst if survey.bed.standing == Standing::Open => {
            "Charge the biochar you have first, then spread it beside the plants."
        }
        Path::ChargeFirst if late => {
            "Feed now; the biochar comes beside the plants later, once it is charged."
        }
        Path::ChargeFirst if waits => {
            "Charge the biochar you have first; it goes in once the crop is off the bed."
        }
        Path::ChargeFirst => "Charge the biochar you have first, then mix it in before you plant.",
        Path::None if fired(RuleName::NothingJudged) && nothing_measured(survey) => {
            "No plan yet: the report says nothing of nitrogen, phosphorus or potassium. Have them \
             tested first."
        }
        Path::None if fired(RuleName::NothingJudged) => {
            "No plan yet: answer what the report leaves open about nitrogen, phosphorus and \
             potassium first."
        }
        Path::None if unfit(decision) => "Don't use this biochar here; another might do.",
        Path::None if fired(RuleName::PhPastLimit) && decision.facts.acid_lovers() => {
            "No biochar now: it would lift the pH past what acid-loving plants bear."
        }
        Path::None if fired(RuleName::PhPastLimit) => "No biochar now: the pH is too high for it.",
        Path::None if fired(RuleName::RootsAllYear) => {
            "No biochar needed: the plants hold this surplus themselves."
        }
        Path::None => "No biochar needed: nothing here calls for it.",
    }
}
