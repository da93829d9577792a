//! What to carry to the bed, each with one number: the biochar, what it is charged with, lime and
//! feeds, as the jobs say them.

use crate::case::{Bag, Case};
use crate::outcome::Outcome;
use crate::plan::charge::{Measuring, Used};
use crate::plan::needs::{Need, NeedKind};
use crate::plan::{Job, Path, Plan};
use crate::quantity::{
    Band, Figure, Grounds, Measures, Portion, Unit, Vessel, in_fractions, shown, significant,
    weighed,
};

/// One thing to carry to the bed.
#[derive(Clone, Debug, PartialEq)]
pub struct Carried {
    /// A trade name: `biochar`, a source's name such as `compost`, or a need's such as `lime`.
    pub name: &'static str,
    /// How many of the vessel, in halves (spoons in quarters); `None` for what is read off a
    /// mark or weighed.
    pub count: Option<f64>,
    /// What it is carried in.
    pub vessel: Vessel,
    /// Both in words, with one number: `4½ buckets`, `1 kg`.
    pub amount: String,
    /// What it is.
    pub what: String,
    /// What it weighs, as the headline and the jobs say it, where it is measured otherwise; else
    /// empty.
    pub weighs: String,
    /// What else would be as good, or how many doses there are, in a sentence; empty where the
    /// amount is as exact as it looks.
    pub fine: String,
    /// How much of a bed it is for.
    pub of_bed: String,
    /// What it rests on.
    pub grounds: Grounds,
}

/// What to carry to the bed of the chosen sample, in the reader's measures; nothing where the
/// plan uses nothing. Of what is given in several doses it is the first.
pub fn carry(outcome: &Outcome, case: &Case) -> Vec<Carried> {
    let plan = &outcome.plan;
    let hand = Hand {
        measures: case.measures,
        measuring: Measuring::new(case.measures, case.charge.bucket_litres),
        of_bed: of_bed(plan, case.measures),
    };
    let mut all: Vec<Carried> = hand.biochar(plan, case).into_iter().collect();
    if charges_at_home(plan, case) {
        all.extend(plan.charge.iter().flat_map(|c| &c.used).map(|used| hand.charge(used)));
    }
    all.extend(hand.for_the_soil(plan, case));
    all
}

/// Whether the biochar is charged by the gardener: with what is on hand, or because it is there
/// and fresh. Where neither holds it may as well be bought charged.
pub(super) fn charges_at_home(plan: &Plan, case: &Case) -> bool {
    plan.path == Path::ChargeFirst || plan.charge.is_some() && !case.charge_with.is_empty()
}

/// What the biochar of a plan is called before anything is done to it.
pub(super) fn kind_of_biochar(plan: &Plan, case: &Case) -> &'static str {
    if plan.path == Path::UnchargedAfterHarvest || charges_at_home(plan, case) {
        "uncharged biochar"
    } else {
        "charged biochar"
    }
}

fn of_bed(plan: &Plan, measures: Measures) -> String {
    let area = shown(&Band::exactly(plan.dose.area), Unit::SquareMetre, measures);
    match measures {
        _ if plan.dose.area_known => format!("for {area}"),
        Measures::Us => format!("for each {area}"),
        Measures::Metric => "for each square metre".into(),
    }
}

/// The size of a bag, litres, where one was given that can be.
pub(super) fn bag_size(bag: &Bag) -> Option<f64> {
    bag.bag_litres.filter(|size| (0.1..=100_000.0).contains(size))
}

/// A figure of the plan's amounts.
fn amount<'p>(plan: &'p Plan, name: &str) -> Option<&'p Figure> {
    plan.amounts.iter().find(|figure| figure.name == name)
}

/// How the reader measures.
struct Hand {
    measures: Measures,
    measuring: Measuring,
    of_bed: String,
}

impl Hand {
    fn carried(
        &self,
        name: &'static str,
        portion: Portion,
        what: impl Into<String>,
        grounds: &Grounds,
    ) -> Carried {
        let Portion { count, vessel, amount } = portion;
        Carried {
            name,
            count,
            vessel,
            amount,
            what: what.into(),
            weighs: String::new(),
            fine: String::new(),
            of_bed: self.of_bed.clone(),
            grounds: grounds.clone(),
        }
    }

    fn biochar(&self, plan: &Plan, case: &Case) -> Option<Carried> {
        let (volume, share) = (amount(plan, "biochar-volume")?, amount(plan, "share-by-volume")?);
        let litres = plan.dose.litres;
        if share.band.likely <= 0.0 || litres <= 0.0 {
            return None;
        }
        // What is reasonable, and not above what held the amount down.
        let span = share.band.map(|of| of / share.band.likely * litres);
        let in_bags = bag_size(&case.biochar)
            .and_then(|size| Some((size, bags(span, size)?)))
            .map(|(size, count)| (size, Portion::bags(count)));
        let (size, portion) =
            in_bags.unwrap_or_else(|| (self.measuring.bucket, self.measuring.carried(litres)));
        let fine = self.fine(span, size, &portion);
        let grounds = volume.grounds.clone().with(&share.grounds);
        Some(Carried {
            fine,
            ..self.carried("biochar", portion, kind_of_biochar(plan, case), &grounds)
        })
    }

    /// What else would be as good, from the low to the high end of what is reasonable.
    fn fine(&self, span: Band, size: f64, portion: &Portion) -> String {
        // Whole bags and half buckets that lie within it.
        let within = |step: f64| {
            let low = (span.low / size / step - 1e-9).ceil().max(1.0) * step;
            let high = (span.high / size / step + 1e-9).floor() * step;
            let count = portion.count.unwrap_or(low);
            (low.min(count), high.max(count))
        };
        let spoken = |(low, high): (f64, f64)| (in_fractions(low), in_fractions(high));
        let (low, high) = match portion.vessel {
            Vessel::Bag => spoken(within(1.0)),
            Vessel::Bucket => spoken(within(if span.high < 10.0 * size { 0.5 } else { 1.0 })),
            _ => (significant(span.low, 2), significant(span.high, 2)),
        };
        let in_litres = self.measures == Measures::Metric && span.likely >= 0.5;
        match portion.vessel {
            _ if low == high => String::new(),
            Vessel::Bag => format!("{low} to {high} bags are all fine."),
            Vessel::Bucket => format!("{low} to {high} buckets are all fine."),
            _ if in_litres => format!("{low} to {high} L are all fine."),
            _ => String::new(),
        }
    }

    fn charge(&self, used: &Used) -> Carried {
        let portion = if used.weighed {
            Portion::weighed(1000.0 * used.amount, self.measures)
        } else {
            self.measuring.carried(used.amount)
        };
        let what = format!("{}, to charge the biochar with", used.label);
        self.carried(used.source.name(), portion, what, &used.grounds)
    }

    /// Lime and the like, then feeds, the first dose of each, as the jobs say it.
    fn for_the_soil(&self, plan: &Plan, case: &Case) -> Vec<Carried> {
        let bag = plan.needs.iter().find(|n| n.kind == NeedKind::Fertiliser);
        let bag = bag.filter(|need| need.given().is_some());
        let mut all: Vec<(NeedKind, Carried)> = Vec::new();
        for load in plan.jobs.iter().flat_map(|job| &job.carries) {
            use NeedKind::{Nitrogen, Phosphate, Potash};
            let by_bag = bag.is_some() && matches!(load.kind, Nitrogen | Phosphate | Potash);
            let Some(need) = plan.needs.iter().find(|need| need.kind == load.kind) else {
                continue;
            };
            if by_bag || all.iter().any(|(kind, _)| *kind == load.kind) {
                continue;
            }
            let portion = load.portion(self.measures);
            let mut carried = self.carried(load.kind.name(), portion, load.what, &need.grounds);
            if carried.vessel != Vessel::Weight {
                carried.weighs = weighed(load.grams, self.measures);
            }
            let doses = doses(plan, need);
            if doses > 1 {
                carried.fine = format!("This is the first of {doses} doses.");
            }
            all.push((load.kind, carried));
        }
        // What changes the soil's pH or its sodium goes before what feeds; dates order the rest.
        all.sort_by_key(|(kind, _)| !is_for_the_ph(*kind));
        let mut all: Vec<Carried> = all.into_iter().map(|(_, carried)| carried).collect();
        all.extend(bag.into_iter().flat_map(|need| self.fertiliser(need, case)));
        all.extend(self.compost(plan));
        all
    }

    /// The bag of fertiliser on hand, and what it leaves to be fed.
    fn fertiliser(&self, need: &Need, case: &Case) -> Vec<Carried> {
        const LEFT: [(&str, NeedKind, &str); 3] = [
            ("nitrogen-left", NeedKind::Nitrogen, "nitrogen (N), beside the bag"),
            ("phosphate-left", NeedKind::Phosphate, "phosphate (P₂O₅), beside the bag"),
            ("potash-left", NeedKind::Potash, "potash (K₂O), beside the bag"),
        ];
        let weight = |grams: f64| Portion::weighed(grams, self.measures);
        let mut all = Vec::new();
        if let (Some(grams), Some(percent)) = (need.given(), case.feeds.fertiliser) {
            let label = percent.map(|p| significant(p, 3)).join("-");
            let what = format!("fertiliser {label}, for the whole season");
            all.push(self.carried(need.kind.name(), weight(grams.likely), what, &need.grounds));
        }
        for (name, kind, what) in LEFT {
            let left = need.figures.iter().find(|figure| figure.name == name);
            all.extend(left.map(|left| {
                self.carried(kind.name(), weight(left.band.likely), what, &left.grounds)
            }));
        }
        all
    }

    /// The compost on hand.
    fn compost(&self, plan: &Plan) -> Option<Carried> {
        let spread = compost_to_spread(plan)?;
        let portion = self.measuring.carried(spread.band.likely);
        let (name, what) = (NeedKind::Compost.name(), "compost, to spread on the bed");
        Some(self.carried(name, portion, what, &spread.grounds))
    }
}

/// The compost on hand that is spread, litres.
pub(super) fn compost_to_spread(plan: &Plan) -> Option<&Figure> {
    plan.needs.iter().flat_map(|need| &need.figures).find(|f| f.name == "compost-litres")
}

/// Whether a need changes the soil rather than feeds.
pub(super) fn is_for_the_ph(kind: NeedKind) -> bool {
    matches!(kind, NeedKind::Lime | NeedKind::Acid | NeedKind::Gypsum)
}

/// In how many doses a need is given: of lime and the like as planned, of feeds as dated.
fn doses(plan: &Plan, need: &Need) -> usize {
    if is_for_the_ph(need.kind) {
        return need.doses as usize;
    }
    let carries = |job: &&Job| job.carries.iter().any(|load| load.kind == need.kind);
    plan.jobs.iter().filter(carries).count()
}

/// Whole bags of a size, litres: rounded up where that is fine, else the nearest that is;
/// `None` where no whole bag comes near.
fn bags(span: Band, size: f64) -> Option<f64> {
    let exact = span.likely / size;
    // A volume that is a whole number of bags must not ask for one more.
    let up = (exact - 1e-9).ceil();
    [up, exact.round(), exact.floor()].into_iter().find(|count| {
        let litres = count * size;
        *count >= 1.0
            && litres >= span.low.min(MOST_SHORT * span.likely)
            && litres <= span.high.max(MOST_OVER * span.likely)
    })
}

/// How much less and how much more than the amount is carried where nothing says what else is
/// fine, as a share of it. Our choice, as for buckets.
const MOST_SHORT: f64 = 0.75;
/// As above.
const MOST_OVER: f64 = 1.05;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bags_are_rounded_up_only_where_that_is_fine() {
        let span = |low, likely, high| Band::new(low, likely, high);
        assert_eq!(bags(span(20.0, 42.0, 90.0), 30.0), Some(2.0));
        assert_eq!(bags(span(30.0, 42.0, 42.0), 30.0), Some(1.0));
        assert_eq!(bags(span(42.0, 42.0, 42.0), 21.0), Some(2.0));
        assert_eq!(bags(span(42.0, 42.0, 42.0), 30.0), None);
        assert_eq!(bags(span(5.0, 12.0, 24.0), 50.0), None);
    }
}
