//! The sources: every publication, what rests on it, and how well it was read.

use emberloam_engine::biochar::{
    courses, permanence, purchase, reaction, repeats, standards, work_in,
};
use emberloam_engine::quantity::Grounds;
use emberloam_engine::season::{self, windows, winter_loss};
use emberloam_engine::sources::{
    BIOCHAR, CHEMISTRY, Citation, MATERIAL, NEEDS, RANGES, SEASON, Source, TRAITS, all_sources,
};
use emberloam_engine::{Case, needs, ranges, situated, traits};
use leptos::prelude::*;

use crate::grounds::{citation, publication};
use crate::later::later;
use crate::layer::{Stratum, layer};
use crate::living::Look;
use crate::soon::soon;
use crate::state::Page;
use crate::words;

/// The layer.
pub fn references(page: Page) -> impl IntoView {
    layer(
        Stratum::Rock,
        "sources",
        words::SOURCES,
        view! {
            <p>{words::SOURCES_INTRO}</p>
            {later(move |parts| (parts.references)(page))}
        },
    )
}

/// The list of what this answer leans on, and the register of all there is.
pub fn list(page: Page) -> AnyView {
    let used = soon(page, move |case| cited(page, case));
    let rows = move || {
        let used = used.look(Clone::clone);
        used.into_iter().map(|(source, rests)| row(source, &rests)).collect_view()
    };
    view! {
        <ul class="citations">{rows}</ul>
        <details class="fold" id="register">
            <summary>{words::REGISTER}</summary>
            <p class="soft">{words::REGISTER_INTRO}</p>
            <ul class="citations">{register()}</ul>
        </details>
    }
    .into_any()
}

/// A publication with what rests on it.
fn row(source: Citation, rests: &[String]) -> AnyView {
    let rests = words::rests_on(rests);
    view! { <li>{citation(source)} <span class="soft rests">{rests}</span></li> }.into_any()
}

/// Every source of this answer once, by title, with the weakest grade that was used, so that
/// nothing looks better read than it is, and what rests on it.
fn cited(page: Page, case: &Case) -> Vec<(Citation, Vec<String>)> {
    let mut found: Vec<(Citation, Vec<String>)> = Vec::new();
    let mut add = |grounds: &Grounds, what: &str| {
        for citation in &grounds.sources {
            let title = citation.source.title;
            let at = found.partition_point(|(kept, _)| kept.source.title < title);
            match found.get_mut(at).filter(|(kept, _)| kept.source.title == title) {
                Some((kept, rests)) => {
                    kept.grade = kept.grade.max(citation.grade);
                    if !rests.iter().any(|known| known == what) {
                        rests.push(what.into());
                    }
                }
                None => found.insert(at, (*citation, vec![what.into()])),
            }
        }
    };
    page.outcome.look(|outcome| {
        let Some(outcome) = outcome else { return };
        for reading in outcome.samples.first().into_iter().flat_map(|s| &s.readings) {
            add(&reading.finding.grounds, reading.property.label());
            for other in &reading.finding.second_opinions {
                add(&other.grounds, reading.property.label());
            }
        }
        let plan = &outcome.advice;
        let charging = plan.charging.iter().flat_map(|c| &c.figures);
        for figure in outcome.derived.iter().chain(&plan.amounts).chain(charging) {
            add(&figure.grounds, figure.label);
        }
        for effect in &plan.effects {
            add(&effect.change.grounds, words::EFFECTS);
        }
        plan.reasons.iter().for_each(|reason| add(&reason.grounds, words::THE_PATH));
        plan.season.iter().for_each(|task| add(&task.grounds, words::ROOM_SEASON));
        plan.cautions.iter().for_each(|caution| add(&caution.grounds, words::CAUTIONS));
    });
    for need in needs::needs(case).list {
        add(&need.grounds, words::need(need.name));
        need.figures.iter().for_each(|figure| add(&figure.grounds, words::need(need.name)));
    }
    let of_soil = traits::traits(case);
    of_soil.figures.iter().for_each(|figure| add(&figure.grounds, figure.label));
    of_soil.sayings.iter().for_each(|saying| add(&saying.grounds, words::TRAITS));
    // The sample is judged once for all that looks at it.
    let looked = situated(case, |soil| {
        for course in courses(soil) {
            add(&course.grounds, words::COURSE);
        }
        let reaction = reaction(soil).unwrap_or_default();
        for figure in reaction.figures.iter().chain(&reaction.others) {
            add(&figure.grounds, words::REACTION);
        }
        if let Some(bought) = purchase::purchase(soil) {
            add(&bought.grounds, words::PURCHASE);
            bought.figures.iter().for_each(|figure| add(&figure.grounds, words::PURCHASE));
        }
        if let Some(years) = repeats::repeats(soil) {
            add(&years.grounds, words::SCHEDULE);
            years.columns.iter().for_each(|column| add(&column.grounds, words::SCHEDULE));
        }
        if let Some(done) = work_in::work_in(soil) {
            done.figures.iter().for_each(|figure| add(&figure.grounds, words::WORK_IN));
            for step in done.steps.iter().chain(&done.cautions) {
                add(&step.grounds, words::WORK_IN);
            }
        }
        (windows(soil), winter_loss(soil))
    });
    add(&permanence::permanence(case).grounds, words::CERTIFICATE);
    for standard in standards::standards(&case.biochar) {
        add(&standard.grounds, words::STANDARDS);
    }
    if let Some(place) = season::place(&case.season, case.measures) {
        add(&place.grounds, words::PLACE);
    }
    let (free, loss) = looked.unwrap_or_default();
    for task in free.rests.iter().chain(&free.conflicts) {
        add(&task.grounds, words::RESTS);
    }
    for figure in loss.iter().flat_map(|loss| &loss.figures) {
        add(&figure.grounds, words::WINTER_LOSS);
    }
    found
}

/// Every publication there is, with what rests on it in any answer.
fn register() -> impl IntoView {
    let rooms: [(&[&Source], &str); 7] = [
        (RANGES, words::ROOM_LEVELS),
        (CHEMISTRY, words::ROOM_CHEMISTRY),
        (BIOCHAR, words::ROOM_BIOCHAR),
        (MATERIAL, words::ROOM_BIOCHAR),
        (SEASON, words::ROOM_SEASON),
        (NEEDS, words::ROOM_NEEDS),
        (TRAITS, words::ROOM_TRAITS),
    ];
    let mut all: Vec<&'static Source> = all_sources().collect();
    all.sort_unstable_by_key(|source| source.title);
    all.into_iter()
        .map(|source| {
            let mut rests: Vec<String> = Vec::new();
            let mut weakest: Option<Citation> = None;
            for scheme in ranges::schemes() {
                for citation in scheme.citations.iter().filter(|c| c.source.id == source.id) {
                    let label = scheme.property.label().to_string();
                    if !rests.contains(&label) {
                        rests.push(label);
                    }
                    let worse = weakest.is_none_or(|known| citation.grade > known.grade);
                    weakest = if worse { Some(*citation) } else { weakest };
                }
            }
            if rests.is_empty() {
                let in_room =
                    rooms.iter().filter(|(room, _)| room.iter().any(|s| s.id == source.id));
                rests.extend(in_room.map(|(_, name)| (*name).to_string()));
            }
            let title = match weakest {
                Some(cited) => citation(cited),
                None => publication(source),
            };
            view! { <li>{title} <span class="soft rests">{words::rests_on(&rests)}</span></li> }
        })
        .collect_view()
}
