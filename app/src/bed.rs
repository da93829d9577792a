//! What a person answers: the control of each question, and all of them in one
//! quiet place: the report, the bed, the season, the bag.

use emberloam_engine::Case;
use emberloam_engine::case::{BagState, BedKind, ChargeSource, Feedstock, Winter};
use emberloam_engine::quantity::Unit;
use emberloam_engine::question::QuestionId;
use emberloam_engine::region::{Region, usual_extractants};
use emberloam_engine::soil::{Method, MethodKind, PlantGroup, Property, Texture};
use leptos::prelude::*;

use crate::control::{choice, date, number, several};
use crate::grounds::opens;
use crate::in_place::{Look, flag};
use crate::report::own_tables::{own_tables, tables_of};
use crate::report::pairs;
use crate::sheet::correct::unit_of;
use crate::state::Page;
use crate::words;

/// Methods of one kind, by name.
fn methods(kind: MethodKind) -> Vec<(Method, &'static str)> {
    let of_kind = Method::ALL.into_iter().filter(|method| method.kind() == kind);
    of_kind.map(|method| (method, method.label())).collect()
}

/// The units a report prints nutrients in.
pub fn report_units() -> Vec<(Unit, &'static str)> {
    let units = [
        Unit::MgPerKg,
        Unit::MgPerL,
        Unit::MgPer100g,
        Unit::LbPerAcre,
        Unit::KgPerHa,
        Unit::MeqPer100g,
        Unit::MmolcPerKg,
        Unit::MeqPer100cm3,
        Unit::Percent,
        Unit::GPerKg,
    ];
    units.into_iter().map(|unit| (unit, words::unit_choice(unit))).collect()
}

/// The regions that can be chosen, those of the person's own file first.
fn regions(case: &Case) -> impl Iterator<Item = &'static Region> {
    let own: &'static [Region] = tables_of(case).map_or(&[], |own| own.regions);
    own.iter().chain(Region::all())
}

fn region(page: Page) -> AnyView {
    let of_file = Memo::new(move |_| page.answers.look(|case| case.own_file.clone()));
    let select = move || {
        of_file.get();
        let all = page
            .answers
            .with_untracked(|case| regions(case).map(|region| (region.id, region.name)).collect());
        choice(
            page,
            words::REGION,
            all,
            |case| {
                let id = case.reading.region.as_deref()?;
                regions(case).find(|region| region.id == id).map(|region| region.id)
            },
            |case, value| case.reading.region = value.map(str::to_owned),
        )
    };
    view! { {select} }.into_any()
}

/// How many of the usual extracts stand before the others.
const USUAL: usize = 3;

/// The extracts that are usual where the soil lies, then any other.
fn extractant(page: Page) -> AnyView {
    let region = untrack(|| {
        let named = page.said(|case| {
            let id = case.reading.region.clone()?;
            regions(case).find(|region| region.id == id)
        });
        let read = || page.report.look(|r| r.as_ref().ok()?.regions.first().copied());
        named.or_else(read)
    });
    let mut usual = usual_extractants(region, Property::Phosphorus);
    for method in usual_extractants(region, Property::Potassium) {
        if !usual.contains(&method) {
            usual.push(method);
        }
    }
    usual.truncate(USUAL);
    let place = |method: &Method| usual.iter().position(|other| other == method);
    let (mut first, rest): (Vec<_>, Vec<_>) =
        methods(MethodKind::Extractant).into_iter().partition(|(m, _)| place(m).is_some());
    first.sort_by_key(|(method, _)| place(method));
    let ticks = |label, options| {
        several(
            page,
            label,
            options,
            |case| &mut case.reading.extractants,
            |case, method| case.reading.extractants.contains(&method),
        )
    };
    view! {
        {ticks(words::EXTRACTANT, first)}
        <details class="fold">
            <summary>{words::ANOTHER_EXTRACT}</summary>
            {ticks(words::OTHER_EXTRACTS, rest)}
        </details>
    }
    .into_any()
}

fn nutrient_unit(page: Page) -> AnyView {
    choice(
        page,
        words::NUTRIENT_UNIT,
        report_units(),
        |case| case.reading.nutrient_unit,
        |case, value| case.reading.nutrient_unit = value,
    )
}

fn buffer(page: Page) -> AnyView {
    choice(
        page,
        words::BUFFER,
        methods(MethodKind::Buffer),
        |case| case.reading.buffer,
        |case, value| case.reading.buffer = value,
    )
}

fn ec_method(page: Page) -> AnyView {
    let wet = methods(MethodKind::Suspension)
        .into_iter()
        .filter(|(method, _)| *method != Method::CaCl2)
        .collect();
    choice(
        page,
        words::EC_METHOD,
        wet,
        |case| case.reading.ec_method,
        |case, value| case.reading.ec_method = value,
    )
}

/// Whether names and numbers that stand apart belong together.
fn counted_off(page: Page) -> AnyView {
    view! {
        <div hidden=flag(move || pairs::all(page).is_empty())>
            {pairs::pairs(page)}
            {choice(
                page,
                words::COUNTED_OFF,
                vec![(true, words::BELONG_TOGETHER), (false, words::DONT_BELONG)],
                |case| case.reading.counted_off,
                |case, answer| case.reading.counted_off = answer,
            )}
        </div>
    }
    .into_any()
}

fn sampling_depth(page: Page) -> AnyView {
    number(
        page,
        words::SAMPLING_DEPTH,
        Unit::Cm,
        |case| case.reading.depth_cm,
        |case, value| case.reading.depth_cm = value,
    )
}

fn plants(page: Page) -> AnyView {
    let groups = PlantGroup::ALL.into_iter().map(|group| (group, group.label())).collect();
    choice(page, words::PLANTS, groups, |case| case.plants, |case, value| case.plants = value)
}

fn texture(page: Page) -> AnyView {
    let classes = Texture::ALL.into_iter().map(|class| (class, class.label())).collect();
    choice(
        page,
        words::TEXTURE,
        classes,
        |case| case.bed.texture,
        |case, value| case.bed.texture = value,
    )
}

fn area(page: Page) -> AnyView {
    number(
        page,
        words::AREA,
        Unit::SquareMetre,
        |case| case.bed.area_m2,
        |case, value| case.bed.area_m2 = value,
    )
}

fn worked_depth(page: Page) -> AnyView {
    number(
        page,
        words::WORKED_DEPTH,
        Unit::Cm,
        |case| case.bed.depth_cm,
        |case, value| case.bed.depth_cm = value,
    )
}

fn kind(page: Page) -> AnyView {
    choice(
        page,
        words::BED_KIND,
        BedKind::ALL.map(|kind| (kind, words::bed_kind(kind))).into(),
        |case| case.bed.kind,
        |case, value| case.bed.kind = value,
    )
}

fn planting(page: Page) -> AnyView {
    date(
        page,
        words::PLANTING,
        |case| case.season.planting,
        |case, value| case.season.planting = value,
    )
}

fn winter(page: Page) -> AnyView {
    let kinds = Winter::ALL.map(|kind| (kind, words::winter(kind))).into();
    view! {
        {choice(
            page,
            words::WINTER,
            kinds,
            |case| case.season.winter,
            |case, value| case.season.winter = value,
        )}
        {date(
            page,
            words::HARVEST,
            |case| case.season.harvest,
            |case, value| case.season.harvest = value,
        )}
        {date(
            page,
            words::FIRST_FROST,
            |case| case.season.first_frost,
            |case, value| case.season.first_frost = value,
        )}
    }
    .into_any()
}

fn last_frost(page: Page) -> AnyView {
    date(
        page,
        words::LAST_FROST,
        |case| case.season.last_frost,
        |case, value| case.season.last_frost = value,
    )
}

fn bag_state(page: Page) -> AnyView {
    choice(
        page,
        words::BAG_STATE,
        BagState::ALL.map(|state| (state, words::bag_state(state))).into(),
        |case| case.biochar.state,
        |case, value| case.biochar.state = value,
    )
}

fn feedstock(page: Page) -> AnyView {
    choice(
        page,
        words::FEEDSTOCK,
        Feedstock::ALL.map(|stock| (stock, words::feedstock(stock))).into(),
        |case| case.biochar.feedstock,
        |case, value| case.biochar.feedstock = value,
    )
}

/// The size of a bag.
pub fn bag_litres(page: Page) -> AnyView {
    number(
        page,
        words::BAG_LITRES,
        Unit::Litre,
        |case| case.biochar.bag_litres,
        |case, value| case.biochar.bag_litres = value,
    )
}

fn bag_numbers(page: Page) -> AnyView {
    view! {
        {bag_litres(page)}
        {number(
            page,
            words::SHARE,
            Unit::Percent,
            |case| case.biochar.share_percent,
            |case, value| case.biochar.share_percent = value,
        )}
        {number(
            page,
            words::BAG_PH,
            Unit::None,
            |case| case.biochar.ph,
            |case, value| case.biochar.ph = value,
        )}
        {number(
            page,
            words::BAG_LIMING,
            Unit::Percent,
            |case| case.biochar.liming_percent,
            |case, value| case.biochar.liming_percent = value,
        )}
        {number(
            page,
            words::BAG_EC,
            Unit::DsPerM,
            |case| case.biochar.ec,
            |case, value| case.biochar.ec = value,
        )}
    }
    .into_any()
}

fn charge_with(page: Page) -> AnyView {
    several(
        page,
        words::CHARGE_WITH,
        ChargeSource::ALL.map(|source| (source, words::charge_source(source))).into(),
        |case| &mut case.charge_with,
        |case, source| case.charge_with.contains(&source),
    )
}

/// What a question is answered with; `about` are the properties it names.
pub fn controls(page: Page, question: QuestionId, about: &[Property]) -> AnyView {
    match question {
        QuestionId::Region => region(page),
        QuestionId::Extractant => extractant(page),
        QuestionId::NutrientUnit => nutrient_unit(page),
        QuestionId::ReadingUnit => {
            about.iter().map(|&property| unit_of(page, property)).collect_view().into_any()
        }
        QuestionId::CountedOff => counted_off(page),
        QuestionId::SamplingDepth => sampling_depth(page),
        QuestionId::Buffer => buffer(page),
        QuestionId::EcMethod => ec_method(page),
        QuestionId::Texture => texture(page),
        QuestionId::Plants => plants(page),
        QuestionId::BagState => bag_state(page),
        QuestionId::Planting => planting(page),
        QuestionId::Winter => winter(page),
        // The page always knows the day from the device's clock.
        QuestionId::Today => ().into_any(),
        QuestionId::Area => area(page),
        QuestionId::WorkedDepth => worked_depth(page),
        QuestionId::ChargeWith => charge_with(page),
    }
}

/// Every answer, folded away and made when somebody wants to change one.
pub fn bed(page: Page) -> AnyView {
    let opened = RwSignal::new(false);
    view! {
        <details id="bed" class="fold" on:toggle=opens(opened)>
            <summary>{words::YOUR_ANSWERS}</summary>
            {move || opened.get().then(|| untrack(|| all(page)))}
        </details>
    }
    .into_any()
}

fn all(page: Page) -> AnyView {
    view! {
            <fieldset>
                <legend>{words::LEGEND_BED}</legend>
                {plants(page)}
                {area(page)}
                {worked_depth(page)}
                {texture(page)}
                {kind(page)}
            </fieldset>
            <fieldset>
                <legend>{words::LEGEND_SEASON}</legend>
                {planting(page)}
                {winter(page)}
                {last_frost(page)}
            </fieldset>
            <fieldset>
                <legend>{words::LEGEND_BAG}</legend>
                {bag_state(page)}
                {feedstock(page)}
                {bag_numbers(page)}
                {charge_with(page)}
            </fieldset>
            <fieldset>
                <legend>{words::LEGEND_REPORT}</legend>
                {region(page)}
                {own_tables(page)}
                {extractant(page)}
                {nutrient_unit(page)}
                {counted_off(page)}
                {buffer(page)}
                {ec_method(page)}
                {sampling_depth(page)}
            </fieldset>
    }
    .into_any()
}
