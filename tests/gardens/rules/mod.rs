//! The rules of the design, each with its checks.

mod carried;
pub mod cliffs;
mod doses;
mod for_now;
mod jobs;
mod ledger;
mod nothing_against;
mod one_number;
mod opens;
mod shown;
mod sound;

use emberloam_engine::Case;
use emberloam_engine::day::YEARS;

use crate::hunt::Fault;
use crate::whole::Whole;

/// What of the rules a garden breaks.
pub fn broken(case: &Case) -> Vec<Fault> {
    let whole = Whole::of(case);
    let mut faults = Faults::default();
    sound::numbers(&whole, &mut faults);
    sound::round_trip(case, &mut faults);
    sound::days(&whole, &mut faults);
    one_number::one_number(&whole, &mut faults);
    nothing_against::nothing_against(&whole, &mut faults);
    carried::reads_as_the_jobs(&whole, &mut faults);
    ledger::closes(&whole, &mut faults);
    doses::are_safe(&whole, &mut faults);
    jobs::can_be_done(&whole, &mut faults);
    shown::everywhere(&whole, &mut faults);
    for_now::for_now(&whole, &mut faults);
    opens::opens(&whole, &mut faults);
    faults.0
}

/// What is broken in all that is written, which takes longer to go through.
pub fn broken_in_writing(case: &Case) -> Vec<Fault> {
    let mut faults = Faults::default();
    let whole = Whole::of(case);
    sound::all_that_is_written(&whole, &mut faults);
    one_number::planned_twice(&whole, &mut faults);
    faults.0
}

/// What a hundredth more of one reading breaks.
pub fn broken_by_a_hundredth(case: &Case) -> Vec<Fault> {
    let mut faults = Faults::default();
    cliffs::none(case, &mut faults);
    faults.0
}

/// Whether every day given is in the years of gardens. Any other is a slip of the pen, which
/// is told where it is typed; it may do no harm, but no job can be dated by it.
fn days_can_be(case: &Case) -> bool {
    let season = &case.season;
    let days =
        [season.today, season.planting, season.harvest, season.first_frost, season.last_frost];
    let crops = season.crops.iter().flat_map(|crop| [crop.planting, crop.harvest]);
    days.into_iter().chain(crops).flatten().all(|date| YEARS.contains(&date.year()))
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
