//! How to get biochar into a bed, step by step, by the way the bed is worked.

use crate::case::{BedKind, CertificateItem};
use crate::details::purchase::moisture;
use crate::plan::charge::ChargePlan;
use crate::plan::{Dose, JobKind, Path, Plan};
use crate::quantity::{
    Band, Figure, Grounds, Measures, Note, Unit, measured_out, shown, significant,
};
use crate::sources::{ARITHMETIC, COMMON_PRACTICE, Citation, DEL_CAMPO_2021, GUO_2020, OUR_CHOICE};
use crate::survey::Survey;

/// Water that keeps biochar from dusting, % of its weight.
/// Source: 20–30 % is enough to spread it, Guo 2020; 20–50 % keeps it from
/// smouldering, del Campo 2021.
const DAMP: f64 = 30.0;

/// Cores of a lawn corer, cm wide: half an inch and three quarters.
/// Source: common practice, no source.
const CORES: [f64; 2] = [1.27, 1.9];
/// How deep cores are taken, cm. Source: common practice, no source.
const CORE_DEPTH: (f64, f64) = (5.0, 10.0);
/// The most cores that turf takes in one go, on 1 m²: 5 cm apart.
/// Source: common practice, no source.
const MOST_CORES: f64 = 400.0;

/// Holes round a tree: width and depth, cm, and the share of biochar in what
/// fills them; the rest is compost. Source: common practice, no source.
const TREE_HOLE: f64 = 5.0;
const TREE_HOLE_DEPTH: (f64, f64) = (20.0, 30.0);
const TREE_FILL: f64 = 0.5;
/// The most holes round a tree on 1 m²: 30 cm apart. Source: our choice.
const MOST_TREE_HOLES: f64 = 11.0;

/// Biochar this fine dusts, and coarser than this won't go down a core hole:
/// nine tenths pass, mm. Source: our choice.
const FINE: f64 = 1.0;
const COARSE: f64 = 6.0;

/// One thing to do, and what it rests on.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// What to do.
    pub text: String,
    /// What it rests on.
    pub grounds: Grounds,
}

/// US measures: a square foot in m², a quart and five gallons in litres.
/// Source: legal definitions (derived).
const SQUARE_FOOT: f64 = 0.092_903_04;
/// Source: legal definition (derived).
const QUART: f64 = 0.946_352_946;
/// Source: legal definition (derived).
const FIVE_GALLONS: f64 = 18.927_058_92;

/// How to work biochar in.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct WorkIn {
    /// What to do, in order.
    pub steps: Vec<Step>,
    /// Holes and amounts.
    pub figures: Vec<Figure>,
    /// What to mind.
    pub cautions: Vec<Step>,
}

/// Holes on 1 m² that hold so many litres, when each is so wide and so deep, cm.
pub fn holes_on_a_square_metre(litres: f64, width: f64, depth: f64) -> f64 {
    litres * 1000.0 / (std::f64::consts::PI / 4.0 * width * width * depth)
}

/// How far apart so many holes on 1 m² stand, cm.
fn apart(holes: f64) -> f64 {
    100.0 / holes.sqrt()
}

/// How to work in the biochar of the plan; `None` when it uses none.
pub fn work_in(survey: &Survey<'_>, plan: &Plan) -> Option<WorkIn> {
    let dose = &plan.dose;
    if !plan.uses_biochar() || dose.litres <= 0.0 {
        return None;
    }
    let charged = plan.path != Path::UnchargedAfterHarvest;
    let spread = dose.litres + plan.charge.as_ref().map_or(0.0, ChargePlan::mixed_in);
    let mut work = Work { survey, dose, charged, spread, done: WorkIn::default() };
    work.damp();
    let digs = plan.jobs.iter().any(|job| job.kind == JobKind::SpreadBiochar && job.digs);
    match survey.case.bed.kind {
        None | Some(BedKind::Dug) if !digs => work.on_top(),
        Some(BedKind::Lawn) => work.lawn(),
        Some(BedKind::NoDig) => work.no_dig(),
        Some(BedKind::Container) => work.container(),
        Some(BedKind::TreePit) => work.tree(),
        Some(BedKind::Dug) => work.dug(),
        None => {
            work.dug();
            if let Some(first) = work.done.steps.get_mut(1) {
                first.grounds.assumed.push("The bed is dug; nobody said.".into());
            }
        }
    }
    work.step("Water the bed, and clean the tools and your hands.", &PRACTICE);
    work.mind();
    Some(work.done)
}

const PRACTICE: [Citation; 1] = [COMMON_PRACTICE.unsourced()];

struct Work<'a> {
    survey: &'a Survey<'a>,
    dose: &'a Dose,
    charged: bool,
    /// What is spread, litres: the biochar with what was mixed into it.
    spread: f64,
    done: WorkIn,
}

impl Work<'_> {
    fn measures(&self) -> Measures {
        self.survey.case.measures
    }

    fn amount(&self, litres: f64) -> String {
        measured_out(litres, self.measures())
    }

    fn length(&self, cm: f64) -> String {
        shown(&Band::exactly(cm), Unit::Cm, self.measures())
    }

    /// Litres of biochar on 1 m².
    fn on_a_square_metre(&self) -> f64 {
        self.dose.litres / self.dose.area
    }

    fn step(&mut self, text: impl Into<String>, sources: &[Citation]) {
        let grounds = Grounds::new("", sources)
            .input("biochar for the bed", format!("{} L", significant(self.dose.litres, 3)))
            .input("area", format!("{} m²", significant(self.dose.area, 3)));
        self.done.steps.push(Step { text: text.into(), grounds });
    }

    fn caution(&mut self, text: &str, sources: &[Citation]) {
        let grounds = Grounds::new("", sources);
        self.done.cautions.push(Step { text: text.into(), grounds });
    }

    /// Damp it first, with as much water as is lacking.
    fn damp(&mut self) {
        let (there, doubt) = moisture(&self.survey.case.biochar);
        let dry = self.dose.mass;
        let aim = DAMP / (100.0 - DAMP);
        let lacking = |dry: f64, water: f64| (dry * (aim - water / (1.0 - water))).max(0.0);
        // The wettest needs least.
        let band = Band::new(
            lacking(dry.low, there.high),
            lacking(dry.likely, there.likely),
            lacking(dry.high, there.low),
        );
        let sources = [GUO_2020.opened(), DEL_CAMPO_2021.opened()];
        if band.high <= 0.0 {
            self.step("It is damp enough as it comes: it must not dust.", &sources);
            return;
        }
        let text = if self.charged {
            "Spread the charged biochar damp, as it is after charging. Where it dusts, sprinkle \
             it."
            .to_string()
        } else if band.likely <= 0.0 {
            "It should be damp enough as it comes. Where it dusts, sprinkle it.".to_string()
        } else {
            let water = self.amount(band.likely);
            format!("Damp the biochar in its bag with about {water} of water, until nothing dusts.")
        };
        self.step(text, &sources);
        if !self.charged {
            let mut grounds = Grounds::new(
                "water to bring it to 30 % of its weight, less what is in it",
                &[GUO_2020.opened(), ARITHMETIC.derived()],
            )
            .input("biochar, dry", shown(&dry, Unit::Kg, Measures::Metric));
            if !there.is_exact() {
                grounds = grounds.assume("15 to 40 % of its weight is water as it comes.");
            }
            grounds.assumed.extend(doubt.map(Note::from));
            self.done.figures.push(Figure::new(
                "water-to-damp",
                "water to damp it",
                band,
                Unit::Litre,
                grounds,
            ));
        }
    }

    fn dug(&mut self) {
        let (half, depth) = (self.amount(self.spread / 2.0), self.length(self.dose.depth));
        self.step(
            format!("Spread {half} evenly over the bed, and the other half crosswise."),
            &PRACTICE,
        );
        self.step(
            format!("Dig or fork it in {depth} deep, until no black seam is left."),
            &[GUO_2020.opened(), COMMON_PRACTICE.unsourced()],
        );
    }

    /// Where a crop stands.
    fn on_top(&mut self) {
        let all = self.amount(self.spread);
        self.step(
            format!("Spread {all} evenly between the plants, off the stems. Don't dig it in."),
            &PRACTICE,
        );
        self.step("Cover it with mulch the same day.", &PRACTICE);
    }

    fn no_dig(&mut self) {
        let all = self.amount(self.dose.litres);
        if self.spread > self.dose.litres {
            let mix = self.amount(self.spread);
            self.step(
                format!("Spread {mix} of the charged mix over the bed, and cover it with mulch the same day."),
                &PRACTICE,
            );
        } else {
            self.step(
                format!(
                    "Mix {all} of biochar with at least as much compost or mulch ({all}) on a sheet."
                ),
                &PRACTICE,
            );
            let text = "Spread the mix over the bed, and cover it with mulch the same day.";
            self.step(text, &PRACTICE);
        }
        self.step(
            "Leave it to worms and rain. They take it down slowly, so the soil changes less in \
             the first year than worked out here.",
            &PRACTICE,
        );
    }

    fn lawn(&mut self) {
        let depth = self.dose.depth.clamp(CORE_DEPTH.0, CORE_DEPTH.1);
        self.cores(depth);
        let holes = holes_on_a_square_metre(self.on_a_square_metre(), CORES[1], depth);
        let deep = self.length(depth);
        self.step(
            format!(
                "Mow short. Take out cores {deep} deep with a hollow corer, and rake the cores \
                 off. The number of holes stands below."
            ),
            &PRACTICE,
        );
        if holes > MOST_CORES {
            let goes = (holes / MOST_CORES).ceil();
            let now = self.amount(self.dose.litres * MOST_CORES / holes);
            self.step(
                format!(
                    "So many holes would ruin the turf. Make them {} apart, which takes {now}, \
                     and spread the work over {goes} years.",
                    self.length(apart(MOST_CORES))
                ),
                &PRACTICE,
            );
        }
        let all = self.amount(self.dose.litres.min(self.dose.litres * MOST_CORES / holes));
        self.step(
            format!("Brush {all} of biochar into the holes, none on the grass, and fill up with sand or compost."),
            &PRACTICE,
        );
    }

    /// How many cores of each width the biochar fills, and how far apart they are.
    fn cores(&mut self, depth: f64) {
        let wanted = self.on_a_square_metre();
        let us = self.measures() == Measures::Us;
        // On 1 sq ft in US measures.
        let patch = if us { SQUARE_FOOT } else { 1.0 };
        let labels = if us {
            ["holes on 1 sq ft, cores ½ in wide", "holes on 1 sq ft, cores ¾ in wide"]
        } else {
            ["holes on 1 m², cores 1.3 cm wide", "holes on 1 m², cores 1.9 cm wide"]
        };
        for (width, label) in CORES.into_iter().zip(labels) {
            let holes = holes_on_a_square_metre(wanted, width, depth);
            let on_patch = Band::exactly((holes * patch).ceil());
            let size = format!("{width} cm, {} cm", significant(depth, 3));
            let grounds = Grounds::new(
                "litres on 1 m² × 1000 ÷ (π ÷ 4 × width² × depth), in cm",
                &[ARITHMETIC.derived(), COMMON_PRACTICE.unsourced()],
            )
            .input("biochar on 1 m²", format!("{} L", significant(wanted, 3)))
            .input("width and depth of a hole", size);
            let spacing = Grounds::new("100 ÷ √(holes on 1 m²), in cm", &[ARITHMETIC.derived()]);
            let apart = Band::exactly(apart(holes));
            self.done.figures.extend([
                Figure::new("core-holes", label, on_patch, Unit::None, grounds),
                Figure::new("core-spacing", "so far apart", apart, Unit::Cm, spacing),
            ]);
        }
    }

    fn tree(&mut self) {
        let depth = self.dose.depth.clamp(TREE_HOLE_DEPTH.0, TREE_HOLE_DEPTH.1);
        let wanted = self.on_a_square_metre();
        let holes = holes_on_a_square_metre(wanted / TREE_FILL, TREE_HOLE, depth);
        let fits = holes.min(MOST_TREE_HOLES);
        let in_all = (fits * self.dose.area - 1e-9).ceil();
        let grounds = Grounds::new(
            "litres on 1 m² ÷ share of biochar in the filling × 1000 ÷ (π ÷ 4 × width² × depth), \
             in cm; no more than 11 on 1 m²",
            &[ARITHMETIC.derived(), COMMON_PRACTICE.unsourced(), OUR_CHOICE.unsourced()],
        )
        .input("biochar on 1 m²", format!("{} L", significant(wanted, 3)))
        .input(
            "width and depth of a hole",
            format!("{TREE_HOLE} cm, {} cm", significant(depth, 3)),
        );
        self.done.figures.push(Figure::new(
            "tree-holes",
            "holes round the tree",
            Band::exactly(in_all),
            Unit::None,
            grounds,
        ));
        let (wide, deep) = (self.length(TREE_HOLE), self.length(depth));
        let all = self.amount(self.dose.litres * fits / holes);
        self.step(
            "Stay well away from the trunk: three times its width. Where you meet a root thicker \
             than a finger, move the hole.",
            &PRACTICE,
        );
        self.step(
            format!(
                "Bore holes {wide} wide and {deep} deep in rings under the crown, or in lines \
                 like the spokes of a wheel, out to the edge of the crown."
            ),
            &PRACTICE,
        );
        self.step(
            format!("Mix {all} of biochar with as much compost, fill the holes, and mulch."),
            &PRACTICE,
        );
        if fits < holes {
            let rest = self.amount(self.dose.litres * (1.0 - fits / holes));
            self.step(
                format!(
                    "The other {rest} won't go down holes this far apart. Keep it for next year, \
                     or spread it under the mulch."
                ),
                &PRACTICE,
            );
        }
    }

    fn container(&mut self) {
        let in_ten = match self.measures() {
            Measures::Metric => (10.0, "10 L"),
            Measures::Us => (FIVE_GALLONS, "5 gal"),
        };
        let of_char = in_ten.0 * self.dose.share / 100.0;
        let (char, rest) = (self.small(of_char), self.small(in_ten.0 - of_char));
        self.step(
            format!(
                "For each {} of finished mix take {char} of biochar and {rest} of potting mix.",
                in_ten.1
            ),
            &[ARITHMETIC.derived()],
        );
        self.step(
            "Mix them damp in a tub, fill the pots, and leave the top 2 cm (1 in) free of \
             biochar: bits float off when you water.",
            &PRACTICE,
        );
    }

    /// A small volume: in millilitres or cups where buckets are too coarse.
    fn small(&self, litres: f64) -> String {
        match self.measures() {
            Measures::Metric => format!("{}\u{a0}L", significant(litres, 2)),
            Measures::Us => format!("{}\u{a0}qt", significant(litres / QUART, 2)),
        }
    }

    /// What can hurt.
    fn mind(&mut self) {
        self.caution(
            "Wear a P2 or N95 mask, and choose a calm day. The dust harms the lungs.",
            &[GUO_2020.opened(), COMMON_PRACTICE.unsourced()],
        );
        let bag = &self.survey.case.biochar;
        let size = crate::bag::certificate::given(bag, CertificateItem::ParticleSize);
        let Ok(Some(size)) = size else { return };
        if size <= FINE {
            self.caution(
                "This biochar is as fine as dust. Wet it well before you open the bag wide.",
                &[OUR_CHOICE.unsourced()],
            );
        }
        if size > COARSE && self.survey.case.bed.kind == Some(BedKind::Lawn) {
            self.caution(
                "This biochar is too coarse for core holes. Sieve or crush it, damp, to 5 mm \
                 (a fifth of an inch) first.",
                &[OUR_CHOICE.unsourced()],
            );
        }
    }
}
