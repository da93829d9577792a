//! The rules of the design, each with its checks.

mod jobs;
mod sound;

use emberloam_engine::Case;

use crate::hunt::Fault;
use crate::whole::Whole;

/// What of the rules a garden breaks.
pub fn broken(case: &Case) -> Vec<Fault> {
    let whole = Whole::of(case);
    let mut faults = Faults::default();
    sound::numbers(&whole, &mut faults);
    sound::round_trip(case, &mut faults);
    sound::days(&whole, &mut faults);
    jobs::can_be_done(&whole, &mut faults);
    faults.0
}

/// What is broken in all that is written, which takes longer to go through.
pub fn broken_in_writing(case: &Case) -> Vec<Fault> {
    let mut faults = Faults::default();
    sound::all_that_is_written(&Whole::of(case), &mut faults);
    faults.0
}

/// What a hundredth more of one reading breaks.
pub fn broken_by_a_hundredth(_case: &Case) -> Vec<Fault> {
    Vec::new()
}

/// What was found so far.
#[derive(Default)]
pub struct Faults(Vec<Fault>);

impl Faults {
    /// A fault, each kind once.
    pub fn fault(&mut self, kind: impl Into<String>, what: impl Into<String>) {
        let fault = Fault { kind: kind.into(), what: what.into() };
        if self.0.iter().all(|f| f.kind != fault.kind) {
            self.0.push(fault);
        }
    }

    /// A fault, unless something holds.
    pub fn unless(
        &mut self,
        holds: bool,
        kind: impl FnOnce() -> String,
        what: impl FnOnce() -> String,
    ) {
        if !holds {
            self.fault(kind(), what());
        }
    }
}
