//! What biochar should do to each property over a year, week by week, and the
//! parts that this is made of.

use crate::plan::{A_MONTH, Laid, Part, Plan, laid_out, laid_out_with};
use crate::quantity::{Band, Grounds, Unit};
use crate::soil::Property;
use crate::survey::Survey;

/// The weeks that are worked out.
/// Our choice: close together at first, where most happens.
pub const WEEKS: [f64; 11] = [0.0, 1.0, 2.0, 4.0, 8.0, 12.0, 16.0, 20.0, 26.0, 39.0, 52.0];

/// A part of a change: what it is, and what it comes to at each of [`WEEKS`].
#[derive(Clone, Debug, PartialEq)]
pub struct Grown {
    /// What it is: `dilution`, `held by the biochar`, …
    pub name: &'static str,
    /// % of the measured amount, or pH units.
    pub change: Vec<Band>,
}

/// The change of one property over a year.
#[derive(Clone, Debug, PartialEq)]
pub struct Course {
    /// The property.
    pub property: Property,
    /// What it is called.
    pub label: &'static str,
    /// % of what was measured, or no unit for pH.
    pub unit: Unit,
    /// The change at each of [`WEEKS`].
    pub change: Vec<Band>,
    /// The parts it is the sum of.
    pub parts: Vec<Grown>,
    /// The direction after a week, a month and a year, in words.
    pub directions: [&'static str; 3],
    /// What it rests on.
    pub grounds: Grounds,
}

/// The year of every measured property; empty when the plan uses no biochar.
///
/// Plants are left out: what they take, and what rain takes, comes on top.
pub fn courses(survey: &Survey<'_>, plan: &Plan) -> Vec<Course> {
    if !plan.uses_biochar() {
        return Vec::new();
    }
    laid_out(survey, plan.path, &plan.dose, &plan.ledger)
        .into_iter()
        .map(|laid| {
            let over = |at: &dyn Fn(f64) -> Band| WEEKS.iter().map(|week| at(*week)).collect();
            let grown =
                |part: &Part| Grown { name: part.name, change: over(&|week| part.at(week)) };
            let said = |week: f64| laid.direction(&laid.at(week));
            let directions = [said(1.0), said(A_MONTH), said(52.0)];
            let change = over(&|week| laid.at(week));
            let parts = laid.parts.iter().map(grown).collect();
            let Laid { property, label, unit, grounds, .. } = laid;
            Course { property, label, unit, change, parts, directions, grounds }
        })
        .collect()
}

/// The change of every measured property that so much uncharged biochar, % by mass, makes in so
/// many weeks, whatever the plan would spread: % of what was measured, or pH units.
pub fn changes_with(survey: &Survey<'_>, percent: Band, week: f64) -> Vec<(Property, Band)> {
    let laid = laid_out_with(survey, percent);
    laid.iter().map(|laid| (laid.property, laid.at(week))).collect()
}
