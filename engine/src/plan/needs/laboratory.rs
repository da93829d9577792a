//! What the laboratory itself advises for the sample: beside our own figure, and in its place
//! where we have none that was read. It is held to the same ceilings as ours.

use crate::plan::needs::lime_rate::USUAL_LIME;
use crate::plan::needs::{Need, NeedKind};
use crate::quantity::{Band, Grounds, significant};
use crate::report::{Advice, Advised, Land, LimeAs};
use crate::sources::{ARITHMETIC, LABORATORY, OUR_CHOICE};
use crate::survey::Survey;

/// Calcium carbonate in one of calcium oxide. Source: atomic masses, 100.09 ÷ 56.08 (derived).
const CARBONATE_IN_OXIDE: f64 = 1.784_8;

/// Two figures that differ by a larger share of the laboratory's are apart. Our choice.
const APART: f64 = 1.0 / 3.0;

/// What the laboratory asks for.
pub(super) struct Theirs {
    /// As the report prints it, with its unit.
    pub printed: String,
    /// g on 1 m²: of N, P2O5 or K2O, or of pure lime.
    pub per_m2: Band,
    counted: &'static str,
}

/// The figure for what grows here; `None` where the report has none, or several that differ.
pub(super) fn of(survey: &Survey<'_>, kind: NeedKind) -> Option<Theirs> {
    let here = if survey.is_lawn() { Land::Grass } else { Land::Tilled };
    let of_kind = || survey.advice.iter().filter(|one| kind_of(one.what) == kind);
    let own = of_kind().filter(|one| one.land == Some(here)).collect::<Vec<_>>();
    let own = if own.is_empty() { of_kind().filter(|a| a.land.is_none()).collect() } else { own };
    let first = *own.first()?;
    let per_m2 = per_m2(first);
    own.iter().all(|other| self::per_m2(other) == per_m2).then(|| Theirs {
        printed: printed(first),
        per_m2,
        counted: counted(first.what),
    })
}

/// The laboratory's figure and ours, g for the bed of what is measured out.
pub(super) struct Both {
    pub theirs: f64,
    /// 0 where we give none.
    pub ours: f64,
    /// The most that may be given.
    pub most: f64,
}

fn kind_of(what: Advised) -> NeedKind {
    match what {
        Advised::Lime(_) => NeedKind::Lime,
        Advised::Nitrogen => NeedKind::Nitrogen,
        Advised::Phosphate => NeedKind::Phosphate,
        Advised::Potash => NeedKind::Potash,
    }
}

/// g on 1 m²; of lime, as pure calcium carbonate.
fn per_m2(advice: &Advice) -> Band {
    let grams = Band::exactly(advice.amount * advice.unit.grams_per_m2());
    match advice.what {
        Advised::Lime(LimeAs::CaO) => grams.map(|g| g * CARBONATE_IN_OXIDE),
        Advised::Lime(LimeAs::Limestone) => grams.times(USUAL_LIME.map(|percent| percent / 100.0)),
        _ => grams,
    }
}

/// `12 dt/ha CaO`
fn printed(advice: &Advice) -> String {
    let amount = significant(advice.amount, 4);
    let unit = advice.unit.symbol();
    match advice.what {
        Advised::Lime(LimeAs::CaCO3) => format!("{amount}\u{a0}{unit} CaCO₃"),
        Advised::Lime(LimeAs::CaO) => format!("{amount}\u{a0}{unit} CaO"),
        _ => format!("{amount}\u{a0}{unit}"),
    }
}

/// What is assumed of the figure.
fn counted(what: Advised) -> &'static str {
    match what {
        Advised::Lime(LimeAs::Limestone) => {
            "The laboratory's lime is taken as ground limestone of 90 % (80–100 %): it doesn't say."
        }
        Advised::Lime(LimeAs::CaO) => "1 kg of CaO limes as much as 1.785 kg of CaCO₃.",
        _ => "",
    }
}

impl Theirs {
    /// Whether it asks for any.
    pub fn asks(&self) -> bool {
        self.per_m2.likely > 0.0
    }

    /// What its figure rests on where it is the answer.
    pub fn grounds(&self) -> Grounds {
        let mut grounds = Grounds::new(
            "What the laboratory advises, as its report prints it. We hold no figure that was read to put in its place.",
            &[LABORATORY.opened(), ARITHMETIC.derived(), OUR_CHOICE.unsourced()],
        )
        .input("the laboratory's figure", self.printed.clone());
        if !self.counted.is_empty() {
            grounds = grounds.assume(self.counted);
        }
        grounds
    }

    /// Puts the figure beside ours.
    pub fn beside(&self, survey: &Survey<'_>, need: &mut Need, both: &Both) {
        let Theirs { printed, .. } = self;
        let &Both { theirs, ours, most } = both;
        let told = |grams: f64| survey.on_bed(survey.weighed(grams));
        let text = match (self.asks(), ours > 0.0) {
            (false, false) => "Your laboratory asks for none either.".into(),
            (false, true) => format!(
                "Your laboratory asks for none; ours is {}. Its table is made for its own soils: follow the laboratory.",
                told(ours)
            ),
            (true, false) => format!(
                "Your laboratory asks for {printed}, which comes to {}; by our tables none is wanted. Ask it which plants it had in mind before you give any.",
                told(theirs)
            ),
            _ if theirs > most * (1.0 + 1e-9) => format!(
                "Your laboratory asks for {printed}, which comes to {}; ours is {}, and more than {} is not given here. Ask the laboratory before you give more.",
                told(theirs),
                told(ours),
                told(most)
            ),
            _ if (ours - theirs).abs() > APART * theirs => format!(
                "Your laboratory asks for {printed}, which comes to {}; ours is {}. Its table is made for its own soils: follow the laboratory.",
                told(theirs),
                told(ours)
            ),
            _ => format!(
                "Your laboratory asks for {printed}, which comes to {}; ours is {}. Either will do.",
                told(theirs),
                told(ours)
            ),
        };
        need.steps.insert(0, text);
        need.grounds.sources.push(LABORATORY.opened());
    }
}
