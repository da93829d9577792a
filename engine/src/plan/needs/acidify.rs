//! Lowering the pH with sulfur, where the plants want it and the soil lets it.

use crate::chemistry::base_unsaturation;
use crate::plan::hazards::{lead_unsettled, over_lead_level};
use crate::plan::ledger::{Bringer, Brings, Ceiling, Ledger, Substance};
use crate::plan::needs::lime::due;
use crate::plan::needs::lime_rate::{
    T_PER_HA_IN_LB_PER_1000_SQ_FT, T_PER_HA_IN_TON_PER_ACRE, doses,
};
use crate::plan::needs::{Need, NeedKind, Verdict, limits};
use crate::quantity::{Band, Figure, Grounds, Unit, between, inverse, significant};
use crate::question::{Question, QuestionId};
use crate::soil::{Amount, PlantGroup, Property, Texture};
use crate::sources::{
    ADAMS_EVANS_1962, ARITHMETIC, BLUEBERRY_SULFUR, CLEMSON_EC707, COMMON_PRACTICE, Citation,
    HAMEL_2003, MSU_SULFUR, OSU_LEAD, OUR_CHOICE, RHS_ACIDIFYING, UC_LEAD,
};
use crate::survey::buffering::{PER_GRAM_OF_SULFUR, buffering};
use crate::survey::{Ground, Reaction, Survey};

/// What the sulfur table knows a soil as.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SulfurSoil {
    /// Sand.
    Sand,
    /// Sandy loam.
    SandyLoam,
    /// Loam.
    Loam,
    /// Clay loam.
    ClayLoam,
    /// Organic soil: peat, muck.
    Organic,
}

/// Tenths of a pound of sulfur per 100 sq ft for the top 7 in, by soil: from
/// pH 7 to 6, 6 to 5, and 5 to 4.
/// Source: Michigan State University Extension 00001631, 1998 (opened).
static MICHIGAN: [[u8; 3]; 5] =
    [[7, 18, 18], [12, 28, 28], [16, 32, 32], [25, 32, 41], [39, 63, 103]];
/// The depth of that table, cm.
const MICHIGAN_CM: f64 = 7.0 * 2.54;

/// Pounds of sulfur per acre to reach pH 4.5 for blueberry, in sand, loam and clay, from pH 5.0, 5.5, 6.0, 6.5 and 7.0.
/// Source: attributed to Michigan State University (second-hand).
static BLUEBERRY: [[u16; 5]; 3] =
    [[175, 350, 530, 660, 840], [530, 1030, 1540, 2020, 2560], [800, 1600, 2300, 3030, 3830]];

/// The pH at which that table begins.
const TABLE_TOP: f64 = 7.0;
/// From above it the table is drawn out to a pH no lower than this. Our choice.
const LEAST_DRAWN_OUT: f64 = 6.0;

/// Sulfur in g/m² from pH 7.0–7.5 to 6.0–6.5 for the top 15 cm: sand to clay.
/// Source: Royal Horticultural Society (opened).
const RHS_SULFUR: (f64, f64) = (135.0, 270.0);

/// From this pH free lime is nearly certain.
const FREE_LIME_FROM_PH: f64 = 7.5;
/// kg of sulfur whose acid dissolves a kg of calcium carbonate: 32.06 ÷ 100.09.
/// Source: arithmetic from atomic masses (derived).
const SULFUR_PER_LIME: f64 = 32.06 / 100.087;
/// kg of salt that makes as much acid as a kg of sulfur. Low and high are the
/// published ratio and the one by formula.
/// Source: aluminium sulfate with 14 to 18 waters; iron sulfate with 7 waters
/// (derived), and the ratio of the Royal Horticultural Society (opened).
const ALUMINIUM_SULFATE: Band = Band { low: 6.18, likely: 6.93, high: 6.93 };
const IRON_SULFATE: Band = Band { low: 8.0, likely: 8.67, high: 8.67 };

/// Pounds of sulfur per 100 sq ft for the top 7 in, to lower the pH; each step
/// of one unit is spread evenly over it. `None` outside pH 4 to 7.
///
/// Source: Michigan State University Extension 00001631, 1998 (opened).
pub fn sulfur_michigan(soil: SulfurSoil, from_ph: f64, to_ph: f64) -> Option<f64> {
    let [first, second, third] = MICHIGAN[soil as usize].map(|tenths| f64::from(tenths) / 10.0);
    let down_to = [third + second + first, second + first, first, 0.0];
    let at = |ph| between(&[4.0, 5.0, 6.0, 7.0], &down_to, ph);
    Some((at(to_ph)? - at(from_ph)?).max(0.0))
}

/// kg of sulfur per hectare that free lime uses up before the pH moves, for
/// 2,000,000 lb of soil per acre with this much lime (%).
///
/// Source: arithmetic: 1 % is 20,000 lb per acre; 1 kg sulfur to 3.12 kg lime.
pub fn sulfur_for_free_lime(percent: f64) -> f64 {
    percent / 100.0 * 1000.0 * T_PER_HA_IN_TON_PER_ACRE * 1000.0 * SULFUR_PER_LIME
}

/// Acid for this bed; `None` when the pH is not above what the plants want.
pub(super) fn need(
    survey: &Survey<'_>,
    ledger: &mut Ledger,
    questions: &mut Vec<Question>,
) -> Option<Need> {
    let reaction = Reaction::of(survey)?;
    let asked = survey.plants() == PlantGroup::AcidLovers || survey.case.feeds.target_ph.is_some();
    let due = due(reaction.ph - reaction.target);
    let within = reaction.ph <= reaction.to;
    if within && !(asked && due > 0.0) {
        return None;
    }
    let high = if within {
        format!(
            "The pH, {:.1}, is above the {} that is wanted, though these plants bear it",
            reaction.ph,
            significant(reaction.target, 3)
        )
    } else {
        format!(
            "The pH, {:.1}, is above the {:.1} to {:.1} these plants like",
            reaction.ph, reaction.from, reaction.to
        )
    };
    if let Some(none) = no_sulfur(survey, &reaction, &high) {
        return Some(none);
    }
    let organic = survey.bed.ground == Ground::Organic;
    if survey.texture.is_none() && !organic {
        questions.push(Question {
            id: QuestionId::Texture,
            text: "What is the soil's texture?".into(),
            changes: "How much sulfur it takes: clay needs up to four times as much as sand."
                .into(),
            about: vec![Property::Ph],
            suggestion: None,
        });
        return Some(said(
            &reaction,
            format!("{high}. Sulfur can lower it; how much depends on the texture: say which."),
            "Sulfur goes by texture.",
            &[MSU_SULFUR.opened()],
        ));
    }
    let soil = if organic { SulfurSoil::Organic } else { column(survey.texture) };
    Some(match sulfur(survey, &reaction, soil) {
        Some(amount) => amounts(survey, ledger, (&reaction, due), &high, amount),
        None => said(
            &reaction,
            format!(
                "{high}, and too far for any sulfur table at hand: none leads so far down from above pH {TABLE_TOP:.1}. Grow acid-loving plants in a pot \
                 or a raised bed of acid mix, or ask your local extension office."
            ),
            "No amount is given beyond what a publication prints.",
            &[MSU_SULFUR.opened(), RHS_ACIDIFYING.opened()],
        ),
    })
}

fn said(reaction: &Reaction, answer: String, rule: &str, sources: &[Citation]) -> Need {
    let grounds = reaction.add_to(Grounds::new(rule, sources));
    Need::said(NeedKind::Acid, Verdict::Unknown, answer, grounds)
}

/// Why no sulfur is given, where none is.
fn no_sulfur(survey: &Survey<'_>, reaction: &Reaction, high: &str) -> Option<Need> {
    // "Not yet" waits for a test; the rest is no.
    let mut verdict = Verdict::Enough;
    let (answer, rule, sources): (String, &str, &[Citation]) = if reaction.target >= reaction.ph {
        (
            format!("{high}, but you ask for a higher one still: nothing is lowered."),
            "No sulfur where the pH wished for is not below the soil's.",
            &[ARITHMETIC.derived()],
        )
    } else if over_lead_level(survey) {
        (
            format!(
                "{high}, but no sulfur: acid sets lead free. Keep the pH of leaded soil at 6.5 to 7.5."
            ),
            "Leaded soil is kept at pH 6.5 to 7.5.",
            &[UC_LEAD.second_hand(), OSU_LEAD.opened()],
        )
    } else if lead_unsettled(survey) {
        verdict = Verdict::Unknown;
        (
            format!(
                "{high}, but no sulfur yet: lead was found by a soil-test extract, and acid sets lead free. Have total lead measured first."
            ),
            "No sulfur where total lead may be over the level for homes and nobody measured it.",
            &[UC_LEAD.second_hand(), HAMEL_2003.opened()],
        )
    } else if reaction.ph >= FREE_LIME_FROM_PH || survey.bed.limy {
        return Some(on_free_lime(survey, reaction, high));
    } else if survey.bed.is_potted() {
        (
            format!("{high}. In a pot, change to an acid potting mix: it is quicker than sulfur."),
            "Sulfur tables are made for field soil.",
            &[COMMON_PRACTICE.unsourced()],
        )
    } else if survey.plants() != PlantGroup::AcidLovers && survey.case.feeds.target_ph.is_none() {
        (
            format!(
                "{high}, but most plants bear it: no sulfur is needed. If you want it lower, say to \
                 which pH, and the amount follows."
            ),
            "Sulfur only for plants that want an acid soil, or where a lower pH is asked for.",
            &[COMMON_PRACTICE.unsourced()],
        )
    } else {
        return None;
    };
    Some(Need { verdict, ..said(reaction, answer, rule, sources) })
}

fn on_free_lime(survey: &Survey<'_>, reaction: &Reaction, high: &str) -> Need {
    let instead = if survey.plants() == PlantGroup::AcidLovers {
        "Grow acid-loving plants in a pot or a raised bed of acid mix instead."
    } else {
        "Choose plants that bear it, and feed iron and manganese as the leaves ask for it."
    };
    let answer = if survey.bed.limy {
        format!("{high}, but no sulfur: free lime eats up the acid as fast as it forms. {instead}")
    } else {
        format!(
            "{high}, but no sulfur: with so high a pH there is nearly always free lime, which \
             eats up the acid as fast as it forms. {instead}"
        )
    };
    let rule = "No sulfur where free lime was found, or from pH 7.5, where it is nearly certain.";
    let sources = [RHS_ACIDIFYING.opened(), COMMON_PRACTICE.unsourced()];
    let mut need = Need { verdict: Verdict::Enough, ..said(reaction, answer, rule, &sources) };
    need.steps
        .push("To make sure, drop vinegar on dry soil: if it fizzes, there is free lime.".into());
    let lime = survey.soil.get(Property::FreeLime).map(|m| m.amount);
    if let Some(Amount::Exactly(percent)) = lime.filter(|_| survey.bed.limy) {
        let rule = "Free lime in 2,000,000 lb of soil per acre × 32.06 ÷ 100.09.";
        need.figures.push(
            survey.told(Figure {
                name: "sulfur-lost-to-lime",
                label: "sulfur that the lime would use up",
                band: Band::exactly(sulfur_for_free_lime(percent)),
                unit: Unit::KgPerHa,
                grounds: Grounds::new(rule, &[ARITHMETIC.derived()])
                    .input("free lime", format!("{} %", significant(percent, 3))),
            }),
        );
    }
    need
}

/// The column of the table for a texture.
fn column(texture: Option<Texture>) -> SulfurSoil {
    match texture {
        Some(Texture::Sand | Texture::LoamySand) => SulfurSoil::Sand,
        Some(Texture::SandyLoam) => SulfurSoil::SandyLoam,
        Some(Texture::Loam | Texture::SiltLoam | Texture::Silt) => SulfurSoil::Loam,
        _ => SulfurSoil::ClayLoam,
    }
}

/// Sulfur in kg/ha for its own depth.
struct Sulfur {
    rate: Band,
    depth_cm: f64,
    grounds: Grounds,
    others: Vec<String>,
}

/// The published amount; `None` when no table reaches from here to there.
fn sulfur(survey: &Survey<'_>, reaction: &Reaction, soil: SulfurSoil) -> Option<Sulfur> {
    let (ph, target) = (reaction.ph, reaction.target);
    let named = match soil {
        SulfurSoil::Organic => "organic soil",
        _ => survey.texture.map_or("", Texture::label),
    };
    let kg_per_ha = |lb_per_100| 10_000.0 * T_PER_HA_IN_LB_PER_1000_SQ_FT * lb_per_100;
    // Far below pH 7 the table is not drawn out.
    if ph > TABLE_TOP && !(LEAST_DRAWN_OUT..ph).contains(&target) {
        return None;
    }
    let step = sulfur_michigan(soil, TABLE_TOP, TABLE_TOP - 1.0)?;
    let lb = sulfur_michigan(soil, ph.min(TABLE_TOP), target.min(TABLE_TOP))?
        + step * (ph.max(TABLE_TOP) - target.max(TABLE_TOP));
    let mut grounds = Grounds::new(
        "The Michigan State table of sulfur by texture for each unit of pH, spread evenly within the unit.",
        &[MSU_SULFUR.opened()],
    )
    .input("texture", named);
    if matches!(survey.texture, Some(Texture::Clay | Texture::SiltyClay | Texture::SandyClay)) {
        grounds = grounds
            .assume("The table ends at clay loam. Clay may need more; test before adding it.");
    }
    let mut others = Vec::new();
    if ph > TABLE_TOP {
        grounds = grounds.assume(
            "The table begins at pH 7.0. Above it the soil is taken to need as much for each tenth as just below.",
        );
        grounds.sources.extend([RHS_ACIDIFYING.opened(), OUR_CHOICE.unsourced()]);
        let all = Band::new(RHS_SULFUR.0, RHS_SULFUR.0, RHS_SULFUR.1).map(|grams| grams * 10.0);
        others.push(format!(
            "Another publication gives far more from pH 7.0–7.5 to 6.0–6.5, sand to clay: {} for 15 cm. \
             That can be more acid than a sand can hold, so the lesser is used.",
            survey.shown(&all, Unit::KgPerHa)
        ));
    }
    if survey.case.plants == Some(PlantGroup::AcidLovers) && soil != SulfurSoil::Organic {
        let row = BLUEBERRY[match soil {
            SulfurSoil::Sand => 0,
            SulfurSoil::SandyLoam | SulfurSoil::Loam => 1,
            _ => 2,
        }]
        .map(f64::from);
        if let Some(lb) = between(&[5.0, 5.5, 6.0, 6.5, 7.0], &row, ph) {
            let band = Band::exactly(lb / 2.0 * T_PER_HA_IN_TON_PER_ACRE);
            others.push(format!(
                "A table for blueberry, read where it is quoted, gives {} to go down to pH 4.5.",
                survey.shown(&band, Unit::KgPerHa)
            ));
            grounds.sources.push(BLUEBERRY_SULFUR.second_hand());
        }
    }
    Some(Sulfur { rate: Band::exactly(kg_per_ha(lb)), depth_cm: MICHIGAN_CM, grounds, others })
}

fn amounts(
    survey: &Survey<'_>,
    ledger: &mut Ledger,
    (reaction, due): (&Reaction, f64),
    high: &str,
    sulfur: Sulfur,
) -> Need {
    let depth = limits::reached(survey);
    let mut grounds = reaction.add_to(sulfur.grounds);
    if limits::stays_on_top(survey) {
        let undug = survey.shown(&Band::exactly(depth), Unit::Cm);
        grounds = grounds.assume(format!("Undug, sulfur reaches the top {undug}."));
    } else {
        grounds = survey.bed.depth.add_to(grounds);
    }
    if due < 1.0 {
        grounds = grounds
            .assume("The pH is only a little above the one wanted: a part of the amount is due.");
    }
    grounds.rule.push_str(" Scaled by depth in proportion.");
    grounds.sources.extend([
        ARITHMETIC.derived(),
        CLEMSON_EC707.second_hand(),
        COMMON_PRACTICE.unsourced(),
    ]);
    let lawn = survey.is_lawn();
    if !lawn {
        grounds = grounds.assume(
            "The limit for one dose is published for lawns. Its upper end is used for beds.",
        );
        grounds.sources.push(OUR_CHOICE.unsourced());
    }
    let table = sulfur.rate.map(|kg| due * kg * depth / sulfur.depth_cm);
    let mut in_all = most_sulfur(survey, reaction, depth);
    let per_ha = in_all.most * 10.0 / survey.bed.area.value;
    in_all.binds = table.likely > per_ha * (1.0 + 1e-9);
    let rate = table.map(|kg| kg.min(per_ha));
    // 1 kg/ha is 0.1 g/m²; what acid a kilogram makes takes away 3.12 kg of lime.
    let grams = rate.map(|kg| kg * 0.1 * survey.bed.area.value);
    let acid = Brings::nothing()
        .with_all(Substance::Sulfur, grams)
        .with_all(Substance::Alkalinity, grams.map(|g| -g / SULFUR_PER_LIME));
    ledger.enter(Bringer::Sulfur, &acid);
    let answer = format!(
        "{high}. Sulfur: {}, to bring it to {}.",
        told(survey, rate),
        significant(reaction.target, 3)
    );
    let mut need = Need::said(NeedKind::Acid, Verdict::Give, answer, grounds);
    need.for_bed = Some(grams);
    need.figures = figures(survey, rate, grams, &need.grounds);
    need.figures.push(ph_foretold(survey, reaction, depth, rate.likely * 0.1));
    need.others = sulfur.others;
    need.others.extend(line_ahead(reaction));
    if in_all.binds {
        need.others.push(format!(
            "The table alone gives {}. Test the pH before you add the rest of it.",
            told(survey, table)
        ));
    }
    let at_once = most_at_once(survey);
    need.steps =
        steps(survey, rate, doses(rate.likely * 0.1 * survey.bed.area.value, at_once.most));
    need.hold(in_all, at_once);
    need.cautions = CAUTIONS.map(String::from).to_vec();
    need
}

/// The line above which none is given, where the pH lies near it.
fn line_ahead(reaction: &Reaction) -> Option<String> {
    let near = |line: f64| reaction.ph < line + 1e-9 && reaction.ph > line - NEAR;
    if near(FREE_LIME_FROM_PH) {
        return Some(format!(
            "From pH {FREE_LIME_FROM_PH:.1} none is given: there free lime is nearly certain."
        ));
    }
    (near(TABLE_TOP) && reaction.target < LEAST_DRAWN_OUT)
        .then(|| format!("Above pH {TABLE_TOP:.1} no table leads so far down, and none is given."))
}

/// The most sulfur: no more acid than this soil takes up on the way to the pH wanted, by its
/// own buffering, nor than its exchange takes up on that way.
fn most_sulfur(survey: &Survey<'_>, reaction: &Reaction, depth: f64) -> Ceiling {
    let way = (reaction.ph - reaction.target).max(0.0);
    let takes_up = way * survey.takes_up(depth).likely;
    let by_buffering = (takes_up, "sulfur by what the soil takes up for each unit of pH.");
    let cec = survey.chemistry.cec.filter(|_| survey.bed.ground == Ground::Mineral);
    let by_exchange = cec.filter(|cec| cec.likely > 0.0).map(|cec| {
        let share = base_unsaturation(reaction.target) - base_unsaturation(reaction.ph);
        // meq/100 g × 10 = mmol(c)/kg; 1 cm of 1 m² is 10 L.
        let soil = 10.0 * depth * survey.bed.density.value.likely;
        let room = 10.0 * cec.likely * share.max(0.0) * soil;
        (room, "sulfur by the share of the exchange that acid takes on the way.")
    });
    let least = by_exchange.filter(|(room, _)| *room < takes_up);
    let (most, rule) = least.unwrap_or(by_buffering);
    let mut sources = buffering(survey).sources;
    sources.push(ARITHMETIC.derived());
    if least.is_some() {
        sources.push(ADAMS_EVANS_1962.from_memory());
    }
    limits::at_most(
        survey,
        most / PER_GRAM_OF_SULFUR * 10.0,
        format!(
            "More sulfur may take the pH of this soil below {}: it takes up no more acid on the way there.",
            significant(reaction.target, 3)
        ),
        rule,
        &sources,
    )
}

/// The most sulfur in one dose: 5 lb/1000 sq ft on grass, 10 elsewhere.
fn most_at_once(survey: &Survey<'_>) -> Ceiling {
    let pounds = if survey.is_lawn() { 5.0 } else { 10.0 };
    limits::at_most(
        survey,
        pounds * 1000.0 * T_PER_HA_IN_LB_PER_1000_SQ_FT,
        "More sulfur at one time burns roots.",
        "sulfur in one dose: 5 lb/1000 sq ft on grass, 10 elsewhere.",
        &[CLEMSON_EC707.second_hand()],
    )
}

/// The pH once so much sulfur (g/m²) has turned to acid.
fn ph_foretold(survey: &Survey<'_>, reaction: &Reaction, depth: f64, grams: f64) -> Figure {
    let held = buffering(survey);
    let fall = inverse(survey.takes_up(depth)).map(|one| one * grams * PER_GRAM_OF_SULFUR);
    let mut grounds = Grounds::new(
        "pH − acid from all of the sulfur ÷ what the soil takes up for each unit of pH; no lower than 3.",
        &held.sources,
    )
    .input("pH", format!("{:.1}", reaction.ph))
    .input("buffering", survey.shown(&held.band, Unit::MmolcPerKg));
    grounds.inputs.extend(held.inputs);
    Figure {
        name: "ph-after-sulfur",
        label: "pH foretold once the sulfur has worked",
        band: fall.map(|fall| (reaction.ph - fall).max(LEAST_PH.min(reaction.ph))),
        unit: Unit::None,
        grounds,
    }
}

/// A pH so near a line is told what lies beyond it. Our choice: no test of a bed is truer.
const NEAR: f64 = 0.1;
/// No pH is foretold below this. Our choice.
const LEAST_PH: f64 = 3.0;

/// For the bed where its area is known, otherwise per area.
fn of_bed(survey: &Survey<'_>) -> (Unit, f64) {
    let area = &survey.bed.area;
    if area.known { (Unit::Kg, area.value / 10_000.0) } else { (Unit::KgPerHa, 1.0) }
}

fn told(survey: &Survey<'_>, rate: Band) -> String {
    let (unit, factor) = of_bed(survey);
    survey.shown(&rate.map(|kg| kg * factor), unit)
}

fn figures(survey: &Survey<'_>, rate: Band, grams: Band, grounds: &Grounds) -> Vec<Figure> {
    let figure =
        |name, label, band, unit, grounds| survey.told(Figure { name, label, band, unit, grounds });
    let (unit, factor) = of_bed(survey);
    let bed = survey.bed.area.add_to(grounds.clone());
    let kg = grams.map(|g| g / 1000.0);
    let mut figures = vec![
        figure("sulfur-rate", "sulfur", rate, Unit::KgPerHa, grounds.clone()),
        figure("sulfur-for-bed", "sulfur for the bed", kg, Unit::Kg, bed),
    ];
    for (name, label, ratio, rule, sources) in [
        (
            "iron-sulfate",
            "or iron sulfate",
            IRON_SULFATE,
            "Sulfur × 8.67 by the acid it makes (FeSO4·7H2O); another publication uses 8.0.",
            &[ARITHMETIC.derived(), RHS_ACIDIFYING.opened()][..],
        ),
        (
            "aluminum-sulfate",
            "or aluminium sulfate",
            ALUMINIUM_SULFATE,
            "Sulfur × 6.93 by the acid it makes (Al2(SO4)3·18H2O), 6.18 with 14 waters.",
            &[ARITHMETIC.derived()][..],
        ),
    ] {
        let grounds = Grounds::new(rule, sources).input("sulfur", told(survey, rate));
        let band = rate.map(|kg| kg * factor).times(ratio);
        figures.push(figure(name, label, band, unit, grounds));
    }
    figures
}

fn steps(survey: &Survey<'_>, rate: Band, count: u32) -> Vec<String> {
    let each = told(survey, Band::exactly(rate.likely / f64::from(count)));
    vec![
        if count == 1 {
            format!("Spread it evenly in one dose: {each}.")
        } else {
            format!("Spread it in {count} doses of {each}, three months apart or more.")
        },
        if survey.is_lawn() {
            "Water it in at once, and only while it is cooler than 24 °C (75 °F).".into()
        } else if !limits::lies_on_top(survey) {
            let depth = survey.shown(&Band::exactly(survey.bed.depth.value), Unit::Cm);
            format!("Mix it into the top {depth} and water it in.")
        } else {
            "Leave it on top and water it in.".into()
        },
        "Sulfur works by bacteria in warm, moist soil: allow some months, and test the pH before \
         each new dose."
            .into(),
    ]
}

/// Source: common practice, no source.
const CAUTIONS: [&str; 3] = [
    "Sulfur dust burns, and irritates eyes and lungs: keep flames away, wear goggles and a \
     mask, and choose a calm day.",
    "Aluminium from aluminium sulfate harms roots in very acid soil. Sulfur is the safer choice.",
    "Never give more than the doses above at once: it burns roots. Your local extension \
     office's advice comes first.",
];
