//! One reading as a line: its number, its level on the ruler that all share, our
//! word and the laboratory's; behind it its own ruler, where it stands in the
//! report, how it was judged, and a way to put it right.

use std::sync::Arc;

use emberloam_engine::outcome::{Bound, JudgedReading};
use emberloam_engine::ranges::Opinion;
use emberloam_engine::report::Origin;
use emberloam_engine::summary::amount;
use leptos::prelude::*;

use crate::grounds::{grounds, once_opened, opened_grounds, opens};
use crate::help::meaning;
use crate::in_place::{Look, flag, lines, text};
use crate::later::{Titles, titles};
use crate::report::source::source_line;
use crate::sheet::correct::correct;
use crate::sheet::ruler::{Mark, common_ruler, mark_of, ruler};
use crate::state::Page;
use crate::words;

fn number_or_limit(reading: &JudgedReading) -> Option<f64> {
    reading.value.or(match reading.bound {
        Some(Bound::Below(limit) | Bound::Above(limit)) => Some(limit),
        None => None,
    })
}

/// Where a reading stands in its range.
fn mark(reading: &JudgedReading) -> Option<Mark> {
    let finding = &reading.finding;
    let (range, level) = (finding.range.clone()?, finding.level?);
    Some(Mark { range, value: number_or_limit(reading)?, level })
}

/// One line of the sheet; what lies behind it is made when it is first opened.
pub fn line(page: Page, item: Memo<JudgedReading>) -> impl IntoView {
    let opened = RwSignal::new(false);
    let level = move || item.look(|r| r.finding.level);
    let mark = move || item.look(mark);
    let agrees = move || item.look(|r| r.finding.laboratory_agrees);
    let lab = move || item.look(|r| r.lab_rating.clone()).unwrap_or_default();
    view! {
        <li
            class="reading"
            data-property=text(move || item.look(|r| r.property.name()))
            data-level=move || level().map(|level| level.name())
        >
            <details on:toggle=opens(opened)>
                <summary>
                    <span class="reading-name">
                        {text(move || item.look(|r| words::title(r.property.label())))}
                    </span>
                    " "
                    <span class="reading-value">{text(move || item.look(amount))}</span>
                    " "
                    {common_ruler(mark)}
                    <strong class="level" data-level=move || level().map(|level| level.name())>
                        {mark_of(level)}
                        {text(move || level().map_or(words::NOT_JUDGED, |level| level.label()))}
                    </strong>
                    " "
                    <span class="lab-word" hidden=flag(move || lab().is_empty())>
                        <span aria-hidden="true">{text(move || words::agreement(agrees()))}</span>
                        {text(move || words::lab_word(&lab()))}
                    </span>
                </summary>
                {once_opened(opened, Arc::new(move |parts| (parts.behind)(page, item)))}
            </details>
        </li>
    }
}

/// The range, with its source once the titles are here, or why there is no judgement, in one line.
fn range_in_words(reading: &JudgedReading, titles: Option<Titles>) -> String {
    let finding = &reading.finding;
    if let Some(why) = &finding.not_judged {
        return why.clone();
    }
    match (&finding.range, finding.source.zip(titles)) {
        (Some(range), Some((source, title))) => words::range_from(&range.text, title(source)),
        (Some(range), None) => words::range(&range.text),
        _ => String::new(),
    }
}

/// Where a reading stands in the report, how it was judged, and what puts it right.
pub fn behind(page: Page, item: Memo<JudgedReading>) -> AnyView {
    let rating = move || item.look(|r| r.lab_rating.clone());
    let source_word = move || {
        item.look(|r| r.finding.range.as_ref().map(|range| range.word))
            .filter(|word| !word.is_empty())
    };
    let titles = titles();
    let mark = move || item.look(mark);
    view! {
        <div class="reading-range">
            {ruler(mark)}
            <p>{text(move || item.look(|reading| range_in_words(reading, titles())))}</p>
            {opinions(item, true)}
        </div>
        <dl class="facts">
            {move || {
                item.look(|r| meaning(r.property))
                    .map(|means| {
                        view! {
                            <div>
                                <dt>{words::MEANS}</dt>
                                <dd>{means}</dd>
                            </div>
                        }
                    })
            }}
            <div>
                <dt>{words::IN_YOUR_REPORT}</dt>
                <dd>{source_line(page, move || item.look(|r| r.place))}</dd>
            </div>
            <div>
                <dt>{words::READ_AS}</dt>
                <dd>{text(move || item.look(read_as))}</dd>
            </div>
            {move || {
                rating()
                    .map(|text| {
                        view! {
                            <div>
                                <dt>{words::LAB_SAYS}</dt>
                                <dd>{text}</dd>
                            </div>
                        }
                    })
            }}
            {move || {
                source_word()
                    .map(|word| {
                        view! {
                            <div>
                                <dt>{words::SOURCE_WORD}</dt>
                                <dd>{word}</dd>
                            </div>
                        }
                    })
            }}
        </dl>
        <ul class="notes">
            {lines(move || item.look(|r| r.notes.clone()))}
        </ul>
        {move || grounds(item.look(|r| r.finding.grounds.clone()))}
        {opinions(item, false)}
        {correct(page, item)}
    }
    .into_any()
}

/// Name, method and how the method is known.
fn read_as(reading: &JudgedReading) -> String {
    let method = match (reading.method, &reading.method_from) {
        (Some(method), Some(Origin::Inferred(from))) => {
            words::method_inferred(method.label(), from)
        }
        (Some(method), Some(Origin::Answered)) => words::method_answered(method.label()),
        (Some(method), _) => method.label().into(),
        (None, _) if reading.property.is_extracted() => words::METHOD_UNKNOWN.into(),
        (None, _) => String::new(),
    };
    words::read_as(reading.property.label(), &method)
}

/// The sources that disagree, which always show, or those that agree.
fn opinions(item: Memo<JudgedReading>, disagree: bool) -> impl IntoView {
    let titles = titles();
    move || {
        let mut opinions = item.look(|r| r.finding.second_opinions.clone());
        opinions.retain(|opinion| opinion.disagrees == disagree);
        let title = titles();
        opinions.into_iter().map(|opinion| second_opinion(opinion, title)).collect_view()
    }
}

fn second_opinion(opinion: Opinion, titles: Option<Titles>) -> impl IntoView {
    let source = titles.map_or(words::ANOTHER_TABLE, |title| title(opinion.source));
    let named = source.to_string();
    let verdict = if opinion.disagrees { words::DISAGREES } else { words::AGREES };
    let basis = opinion.grounds;
    view! {
        <div class="second-opinion" class:disagrees=opinion.disagrees>
            <p>
                <span class="verdict">{verdict}</span>
                " "
                {words::opinion(source, opinion.level.label(), &opinion.range.text)}
            </p>
            {opened_grounds(&named, basis)}
        </div>
    }
}
