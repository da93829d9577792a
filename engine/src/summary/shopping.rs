//! What to buy for all beds together: summed first, then rounded.

use crate::case::{Case, ChargeSource};

use crate::outcome::{SampleOutcome, interpret};
use crate::plan::Plan;
use crate::plan::charge::sources;
use crate::plan::needs::NeedKind;
use crate::quantity::{Band, Grounds, Portion, Powder, Unit, Vessel, shown, significant};
use crate::sources::ARITHMETIC;
use crate::summary::carry::{bag_size, charges_at_home, compost_to_spread, kind_of_biochar};
use crate::summary::verdict::is_unplanned;

/// What to buy for all beds of a report.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Shopping {
    /// What to buy, the biochar first.
    pub lines: Vec<ToBuy>,
    /// Beds that are not counted, and why, in a sentence each.
    pub not_counted: Vec<String>,
}

/// One thing to buy.
#[derive(Clone, Debug, PartialEq)]
pub struct ToBuy {
    /// What it is.
    pub what: String,
    /// How much in all, in words: `5 bags`, `120 L`.
    pub amount: String,
    /// How many of the vessel; `None` for what is measured or weighed.
    pub count: Option<f64>,
    /// What it is bought in.
    pub vessel: Vessel,
    /// Which beds it is for.
    pub beds: Vec<ForBed>,
    /// What it rests on.
    pub grounds: Grounds,
}

/// A bed's part of it.
#[derive(Clone, Debug, PartialEq)]
pub struct ForBed {
    /// The bed, by the name of its sample.
    pub name: String,
    /// How much of it is for this bed.
    pub amount: String,
}

/// How something is summed.
#[derive(Clone, Copy, Debug, PartialEq)]
enum By {
    /// Biochar: litres, bought in bags where their size is known.
    Biochar,
    /// Litres.
    Volume,
    /// Grams of what is sold in bags.
    Powder,
    /// Grams.
    Weight,
}

/// What one bed asks for.
struct Wanted {
    what: String,
    by: By,
    amount: f64,
}

/// What to buy for every bed of the report whose size is known and that has a plan, each by what
/// was said of it. Compost and other things that are on hand count too: the list says how much
/// of each there must be.
pub fn shopping(case: &Case) -> Shopping {
    let mut all = Shopping::default();
    let mut sums: Vec<(Wanted, Vec<(String, f64)>)> = Vec::new();
    for SampleOutcome { name, plan, .. } in &interpret(case).samples {
        let wanted = of_bed(plan, case);
        // Lime and feeds of such a bed count all the same.
        let unplanned = is_unplanned(plan);
        if unplanned {
            all.not_counted.push(format!("“{name}” has no answer about biochar yet."));
        }
        if !wanted.is_empty() && !plan.dose.area_known {
            if !unplanned {
                all.not_counted.push(format!("The size of “{name}” is not known."));
            }
            continue;
        }
        for one in wanted {
            let part = (name.clone(), one.amount);
            match sums.iter_mut().find(|(sum, _)| sum.what == one.what && sum.by == one.by) {
                Some((sum, parts)) => {
                    sum.amount += one.amount;
                    parts.push(part);
                }
                None => sums.push((one, vec![part])),
            }
        }
    }
    // Biochar, what charges it, what changes the soil, feeds.
    sums.sort_by_key(|(sum, _)| sum.by as u8);
    all.lines = sums.into_iter().map(|(sum, parts)| to_buy(sum, &parts, case)).collect();
    all
}

/// What a bed asks for, each thing once.
fn of_bed(plan: &Plan, case: &Case) -> Vec<Wanted> {
    let mut all = Vec::new();
    let mut add = |what: &str, by: By, amount: f64| {
        if amount > 0.0 {
            all.push(Wanted { what: what.into(), by, amount });
        }
    };
    if plan.uses_biochar() {
        add(kind_of_biochar(plan, case), By::Biochar, plan.dose.litres);
    }
    let mut compost = compost_to_spread(plan).map_or(0.0, |figure| figure.band.likely);
    if charges_at_home(plan, case) {
        for used in plan.charge.iter().flat_map(|charge| &charge.used) {
            if used.source == ChargeSource::Compost {
                compost += used.amount;
            } else if used.weighed {
                add(used.label, By::Weight, 1000.0 * used.amount);
            } else {
                add(used.label, By::Volume, used.amount);
            }
        }
    }
    add(sources::label(ChargeSource::Compost), By::Volume, compost);
    use NeedKind::{Fertiliser, Nitrogen, Phosphate, Potash};
    let bag = plan.needs.iter().find(|n| n.kind == Fertiliser && n.given().is_some());
    // All that the year's jobs carry; of one thing in several doses all of them.
    let mut carried: Vec<(&str, Option<Powder>, f64)> = Vec::new();
    for load in plan.jobs.iter().flat_map(|job| &job.carries) {
        if bag.is_some() && matches!(load.kind, Nitrogen | Phosphate | Potash) {
            continue;
        }
        match carried.iter_mut().find(|(what, ..)| *what == load.what) {
            Some((.., grams)) => *grams += load.grams,
            None => carried.push((load.what, load.powder, load.grams)),
        }
    }
    for (what, powder, grams) in carried {
        add(what, if powder.is_some() { By::Powder } else { By::Weight }, grams);
    }
    if let (Some(need), Some(percent)) = (bag, case.feeds.fertiliser) {
        let label = percent.map(|p| significant(p, 3)).join("-");
        add(&format!("fertiliser {label}"), By::Weight, need.given().map_or(0.0, |g| g.likely));
        for (name, what) in [
            ("nitrogen-left", "nitrogen (N)"),
            ("phosphate-left", "phosphate (P₂O₅)"),
            ("potash-left", "potash (K₂O)"),
        ] {
            let left = need.figures.iter().find(|figure| figure.name == name);
            add(what, By::Weight, left.map_or(0.0, |figure| figure.band.likely));
        }
    }
    all
}

fn to_buy(sum: Wanted, parts: &[(String, f64)], case: &Case) -> ToBuy {
    let measures = case.measures;
    let plain = |amount: f64| match sum.by {
        By::Biochar | By::Volume => Portion::volume(amount, measures),
        By::Powder | By::Weight => Portion::weighed(amount, measures),
    };
    let mut grounds = Grounds::new("the beds together, then rounded", &[ARITHMETIC.derived()]);
    for (name, amount) in parts {
        grounds = grounds.input(format!("“{name}”"), plain(*amount).amount);
    }
    let Portion { count, vessel, amount } = match (sum.by, bag_size(&case.biochar)) {
        (By::Biochar, Some(size)) => {
            let told = shown(&Band::exactly(size), Unit::Litre, measures);
            grounds = grounds.input("bag", told);
            // A volume that is a whole number of bags must not ask for one more.
            Portion::bags((sum.amount / size - 1e-9).ceil().max(1.0))
        }
        (By::Powder, _) => Portion::bought(sum.amount, measures),
        _ => plain(sum.amount),
    };
    let beds =
        parts.iter().map(|(name, part)| ForBed { name: name.clone(), amount: plain(*part).amount });
    ToBuy { beds: beds.collect(), what: sum.what, amount, count, vessel, grounds }
}
