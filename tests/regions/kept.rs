//! Whether the engine's answer keeps what is told.

use emberloam_engine::outcome::SampleOutcome;
use emberloam_engine::plan::needs::{NeedKind, Verdict};
use emberloam_engine::soil::{Level, Property};

use crate::told::{Amount, Line, Must, Standing};

/// How far an amount may lie from the told one, as a factor. Our choice: guides differ by more.
const WITHIN: f64 = 1.5;

/// What came of a told line.
#[derive(Debug, PartialEq)]
pub enum Kept {
    /// It holds.
    Held,
    /// It is asked for.
    Asked,
    /// It doesn't hold; what the engine says instead.
    Not(String),
}

/// Judges a told line by the answer for its sample.
pub fn kept(line: &Line, answer: &SampleOutcome) -> Kept {
    match line.must {
        Must::Stand(property, standing) => stands(property, standing, answer),
        Must::Bring(kind, amount) => brings(kind, amount, answer),
        Must::Ask(kind) => match said_of(kind, answer) {
            (Verdict::Unknown, _) => Kept::Held,
            said => Kept::Not(in_words(said)),
        },
        Must::Beware(hazard) if answer.plan.hazards.contains(&hazard) => Kept::Held,
        Must::Beware(_) => Kept::Not(match answer.plan.hazards.as_slice() {
            [] => "no hazard".into(),
            others => format!("{others:?}").to_lowercase(),
        }),
    }
}

/// Whether the answer has a question about a property.
fn asks(property: Property, answer: &SampleOutcome) -> bool {
    answer.questions.iter().any(|question| question.about.contains(&property))
}

fn stands(property: Property, told: Standing, answer: &SampleOutcome) -> Kept {
    let readings = || answer.readings.iter().filter(|reading| reading.property == property);
    let Some(level) = readings().find_map(|reading| reading.finding.level) else {
        return if readings().next().is_none() {
            Kept::Not("not read".into())
        } else if told == Standing::Asked {
            Kept::Held
        } else if asks(property, answer) {
            Kept::Asked
        } else {
            Kept::Not("nothing".into())
        };
    };
    let harms = matches!(
        property,
        Property::Ph
            | Property::SaltPh
            | Property::Ec
            | Property::Sar
            | Property::SodiumSaturation
            | Property::AciditySaturation
    );
    let held = match told {
        Standing::Asked => false,
        Standing::Short => level.is_short(),
        Standing::Enough => !level.is_short(),
        // A table may end with what is enough; only where too much harms must it be said.
        Standing::Surplus => level.is_surplus() || !harms && level == Level::Sufficient,
        Standing::At(told) if harms => told.side() == level.side(),
        Standing::At(told) => {
            let apart = |a: Level, b: Level| a == Level::Sufficient && b == Level::Excess;
            told.is_short() == level.is_short() && !apart(told, level) && !apart(level, told)
        }
    };
    if held { Kept::Held } else { Kept::Not(level.label().into()) }
}

/// What the plan says of a need, and how much it brings, kg/ha. The beds are 10 m², so a
/// gram for the bed is a kilogram for the hectare.
fn said_of(kind: NeedKind, answer: &SampleOutcome) -> (Verdict, f64) {
    match answer.plan.needs.iter().find(|need| need.kind == kind) {
        Some(need) => (need.verdict, need.given().map_or(0.0, |grams| grams.likely)),
        None => (Verdict::Unknown, 0.0),
    }
}

fn in_words((verdict, kg_per_ha): (Verdict, f64)) -> String {
    match verdict {
        Verdict::Unknown => "nothing".into(),
        Verdict::Give if kg_per_ha >= 1000.0 => format!("{:.1} t/ha", kg_per_ha / 1000.0),
        Verdict::Give => format!("{kg_per_ha:.0} kg/ha"),
        Verdict::Enough | Verdict::Stop => "none".into(),
    }
}

fn brings(kind: NeedKind, told: Option<Amount>, answer: &SampleOutcome) -> Kept {
    let (verdict, said) = said_of(kind, answer);
    // A need that isn't spoken of at all is not brought either.
    let silent = !answer.plan.needs.iter().any(|need| need.kind == kind);
    let held = match told {
        None => silent || verdict != Verdict::Unknown && said == 0.0,
        Some(told) => (told.low / WITHIN..=told.high * WITHIN).contains(&said),
    };
    let about = match kind {
        NeedKind::Phosphate => Property::Phosphorus,
        NeedKind::Potash => Property::Potassium,
        NeedKind::Nitrogen => Property::NitrateN,
        NeedKind::Sulfur => Property::Sulfur,
        NeedKind::Boron => Property::Boron,
        NeedKind::Zinc => Property::Zinc,
        NeedKind::Manganese => Property::Manganese,
        NeedKind::Copper => Property::Copper,
        _ => Property::BufferPh,
    };
    if held {
        Kept::Held
    } else if verdict == Verdict::Unknown && asks(about, answer) {
        Kept::Asked
    } else {
        Kept::Not(in_words((verdict, said)))
    }
}
