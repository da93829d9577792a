//! All that the program shows of one garden.

use std::borrow::Cow;

use emberloam_engine::details::standards::{Standard, standards};
use emberloam_engine::details::work_in::{WorkIn, work_in};
use emberloam_engine::details::{
    self, Course, PhToCome, Purchase, Repeats, Shift, Traits, Windows, WinterLoss,
};
use emberloam_engine::quantity::{Band, Figure};
use emberloam_engine::season::{Place, place};
use emberloam_engine::summary::{self, Block};
use emberloam_engine::{Case, Outcome, Survey, interpret, interpret_survey, survey};

/// The views of a plan.
#[derive(Debug)]
pub struct Details {
    pub courses: Vec<Course>,
    pub purchase: Option<Purchase>,
    pub repeats: Option<Repeats>,
    pub work_in: Option<WorkIn>,
    pub reaction: Option<PhToCome>,
    pub shift: Option<Shift>,
    pub winter_loss: Option<WinterLoss>,
    pub windows: Windows,
    pub traits: Traits,
    pub permanence: Figure,
    pub standards: Vec<Standard>,
    pub place: Option<Place>,
}

/// Everything shown of a garden.
pub struct Whole<'a> {
    pub case: &'a Case,
    pub survey: Survey<'a>,
    pub outcome: Outcome,
    pub details: Details,
    pub blocks: Vec<Block>,
    pub calendar: String,
}

impl Whole<'_> {
    pub fn of(case: &Case) -> Whole<'_> {
        let survey = survey(Cow::Borrowed(case));
        let outcome = match case.report.samples.len() {
            1 => interpret_survey(&survey),
            _ => interpret(case),
        };
        let plan = &outcome.plan;
        let details = Details {
            courses: details::courses(&survey, plan),
            purchase: details::purchase(&survey, plan),
            repeats: details::repeats(&survey, plan),
            work_in: work_in(&survey, plan),
            reaction: details::reaction(&survey, plan),
            shift: details::exchange_shift(&survey, plan),
            winter_loss: details::winter_loss(&survey, plan),
            windows: details::windows(&survey),
            traits: details::traits(&survey),
            permanence: details::permanence(case),
            standards: standards(&case.biochar),
            place: place(&case.season, case.measures),
        };
        let blocks = summary::plan(&outcome, case.measures);
        let calendar = summary::calendar(&plan.jobs, "Bed", "20261125T120000Z", "code");
        Whole { case, survey, outcome, details, blocks, calendar }
    }

    /// Every number with its bounds that is shown, with the place it is shown at.
    pub fn figures(&self) -> Vec<(&'static str, &Figure)> {
        let (plan, details) = (&self.outcome.plan, &self.details);
        let mut all: Vec<(&str, &Figure)> = Vec::new();
        all.extend(self.outcome.derived.iter().map(|f| ("derived", f)));
        all.extend(plan.amounts.iter().map(|f| ("amounts", f)));
        all.extend(plan.charge.iter().flat_map(|c| &c.figures).map(|f| ("charge", f)));
        all.extend(plan.needs.iter().flat_map(|n| &n.figures).map(|f| ("needs", f)));
        all.extend(plan.effects.iter().map(|e| ("effects", &e.change)));
        all.extend(details.purchase.iter().flat_map(|p| &p.figures).map(|f| ("purchase", f)));
        all.extend(details.work_in.iter().flat_map(|w| &w.figures).map(|f| ("working in", f)));
        let reaction = details.reaction.iter().flat_map(|r| r.figures.iter().chain(&r.others));
        all.extend(reaction.map(|f| ("reaction", f)));
        all.extend(details.shift.iter().flat_map(|s| &s.figures).map(|f| ("shift", f)));
        all.extend(details.winter_loss.iter().flat_map(|w| &w.figures).map(|f| ("winter", f)));
        all.extend(details.traits.figures.iter().map(|f| ("traits", f)));
        all.push(("permanence", &details.permanence));
        all
    }

    /// Every other band that is shown.
    pub fn bands(&self) -> Vec<(&'static str, Band)> {
        let (plan, details) = (&self.outcome.plan, &self.details);
        let mut all = Vec::new();
        for account in &plan.ledger.accounts {
            all.extend([("wanted", account.wanted), ("held", account.held)]);
            all.extend(account.in_store.map(|band| ("in store", band)));
            all.extend(account.lost.map(|band| ("lost", band)));
            for entry in &account.brought {
                all.extend([("brought", entry.amount), ("works", entry.works)]);
            }
        }
        all.extend(plan.needs.iter().filter_map(|n| Some(("for the bed", n.for_bed?))));
        if let Some(charge) = &plan.charge {
            all.push(("days of the charge", charge.days));
            for used in charge.used.iter().chain(&charge.alone) {
                all.extend(used.brings.map(|band| ("the charge brings", band)));
                all.push(("nitrogen reached", used.nitrogen_reached));
            }
            for share in &charge.shares {
                all.extend([("charge wants", share.wanted), ("charge brings", share.brought)]);
                all.extend(share.reached.map(|band| ("charge reaches", band)));
            }
        }
        for course in &details.courses {
            let parts = course.parts.iter().flat_map(|part| &part.change);
            all.extend(course.change.iter().chain(parts).map(|band| ("over a year", *band)));
        }
        for month in details.winter_loss.iter().flat_map(|w| &w.months) {
            all.extend([
                ("drains", month.drains),
                ("burns", month.burns),
                ("scotter", month.scotter),
            ]);
            all.extend(month.with.map(|band| ("lost with biochar", band)));
        }
        if let Some(repeats) = &details.repeats {
            all.extend(
                repeats.columns.iter().flat_map(|c| &c.years).map(|b| ("year after year", *b)),
            );
        }
        let dose = &plan.dose;
        all.extend([("dose, kg", dose.mass), ("dose, %", dose.percent)]);
        let single = [
            ("dose, litres", dose.litres),
            ("dose, area", dose.area),
            ("dose, depth", dose.depth),
            ("dose, share", dose.share),
        ];
        all.extend(single.map(|(name, value)| (name, Band::exactly(value))));
        all
    }
}
