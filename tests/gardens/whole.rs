//! All that the program shows of one garden.

use std::borrow::Cow;

use emberloam_engine::details::standards::{Standard, standards};
use emberloam_engine::details::work_in::{WorkIn, work_in};
use emberloam_engine::details::{
    self, Course, PhToCome, Purchase, Repeats, Sensitivity, Shift, Traits, Windows, WinterLoss,
};
use emberloam_engine::quantity::Figure;
use emberloam_engine::season::{Place, place};
use emberloam_engine::{Case, Outcome, Survey, export, interpret, summary, survey};
use serde_json::Value;

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
    pub json: Value,
    pub text: String,
    pub calendar: String,
    pub csv: String,
}

impl Whole<'_> {
    pub fn of(case: &Case) -> Whole<'_> {
        let outcome = interpret(case);
        let survey = survey(Cow::Borrowed(case));
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
        let text = summary::text(&summary::plan(&outcome, case.measures));
        let calendar = summary::calendar(&plan.jobs, "Bed", "20261125T120000Z", "code");
        let csv = export::csv(&case.report, &outcome, "");
        let modus = export::modus(&case.report, &outcome, "code", "2026-11-25");
        assert!(serde_json::from_str::<Value>(&modus).is_ok(), "the export is no JSON");
        let json = serde_json::to_value(&outcome).expect("an outcome can be written");
        Whole { case, survey, outcome, details, json, text, calendar, csv }
    }
}

/// The variations of a plan, which take as long as dozens of them.
pub fn sensitivity(case: &Case) -> Option<Sensitivity> {
    details::sensitivity(case)
}
