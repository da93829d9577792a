//! Each property of a trial, judged: the interval, its test, and what can be said.

use super::blocks::{Fit, Point, fit};
use super::design::{Laid, MOST_AT_LIMIT, Seen, laid_out};
use super::distributions::{f_tail, t_both_tails, t_critical};
use super::evaluation::{
    Column, Comparison, Evaluation, Exact, ExactTest, Foreseen, Group, Interval, Level, Normality,
    Outlier, Overall, Reading, Refusal, Test, TrialResult, Verdict,
};
use super::exact::{choices, permutation, signed_permutation};
use super::holm::{ALPHA, holm, shares};
use super::means::{Mean, welch};
use super::normality::shapiro_wilk;
use super::plots::plots_of;
use super::power::{POWER, replicates, smallest_shift};
use super::rank::{rank_sum, signed_rank};
use super::residuals::far_off;
use super::several::{Dunnett, StudentizedRange};
use super::table::table_of;
use super::usual_spread::usual_spread;
use super::{Design, Foretold, Trial, text};
use crate::quantity::Unit;
use crate::soil::Property;
use crate::sources::{
    COCHRAN_COX_1957, DUNNETT_1955, FIELLER_1954, HOLM_1979, OUR_CHOICE, ROYSTON_1995,
    TUKEY_KRAMER, WELCH_1947,
};

/// With so few plots of a treatment an exact test is given beside the other. Our choice.
const FEW: usize = 5;

/// With fewer plots, pairs or changes nobody can tell whether the scatter is normal. Our choice.
const ENOUGH: usize = 12;

/// Dunnett's test is worked out where a tail takes no more normal probabilities, and ranks are
/// counted where that takes no more steps for all comparisons of a property. Our choice: some
/// tenths of a second.
const MOST_PROBABILITIES: usize = 150_000;
const MOST_STEPS: f64 = 2e8;

/// Scatter below this share of the readings' own spread is none: it comes of rounding.
/// Our choice.
const NO_SCATTER: f64 = 1e-9;

/// How the comparisons of one property are read together.
enum Family {
    One(f64),
    Dunnett(Dunnett),
    Pairs(StudentizedRange),
    /// How many, and their degrees of freedom.
    ///
    /// Source: Šidák 1967 (from memory): the product of the single chances is safe.
    Bound(usize, f64),
}

impl Family {
    fn p(&self, t: f64) -> f64 {
        match self {
            Family::One(df) => t_both_tails(t, *df),
            Family::Dunnett(all) => all.tail(t),
            Family::Pairs(all) => all.tail(t.abs() * std::f64::consts::SQRT_2),
            Family::Bound(many, df) => {
                -libm::expm1(*many as f64 * libm::log1p(-t_both_tails(t, *df)))
            }
        }
    }

    fn critical(&self, p: f64) -> f64 {
        match self {
            Family::One(df) => t_critical(p, *df),
            Family::Dunnett(all) => all.critical(p),
            Family::Pairs(all) => all.critical(p) / std::f64::consts::SQRT_2,
            Family::Bound(many, df) => {
                t_critical(-libm::expm1(libm::log1p(-p) / *many as f64), *df)
            }
        }
    }
}

/// A difference with what its interval is made of.
struct Raw {
    treatment: usize,
    control: usize,
    difference: f64,
    /// Its standard error and degrees of freedom; none without replicates or any scatter.
    error: Option<(f64, f64)>,
    /// Means of treatment and control, their variances and their covariance.
    means: [f64; 2],
    variances: [f64; 3],
    t: f64,
    p: f64,
}

/// One property before all are looked at together.
struct Worked {
    at: usize,
    seen: Vec<Seen>,
    raws: Vec<Raw>,
    family: Option<Family>,
    test: Option<Test>,
    fit: Option<Fit>,
    adjusted: Vec<Option<f64>>,
    share_at_limit: f64,
    /// Why no interval is given, beside a lack of replicates.
    bar: Option<Verdict>,
}

impl Worked {
    fn values(&self, treatment: usize) -> Vec<f64> {
        self.seen.iter().filter(|s| s.treatment == treatment).map(|s| s.value).collect()
    }

    fn largest_p(&self) -> f64 {
        self.raws.iter().map(|raw| raw.p).fold(0.0, f64::max)
    }
}

/// A trial that is being judged, a property at a time: first each is worked out, then each is told
/// in the light of all.
pub struct Judging {
    trial: Trial,
    laid: Laid,
    columns: Vec<Column>,
    labels: Vec<String>,
    worked: Vec<Worked>,
    /// The share of the 5 % and Holm's probability of each property, once all are worked out.
    together: Vec<(f64, f64)>,
    results: Vec<TrialResult>,
}

impl Judging {
    /// Begins with the table read.
    ///
    /// # Errors
    /// What can't be read, with what to do, and the columns as far as they are known.
    pub fn of(trial: &Trial) -> Result<Judging, Refusal> {
        let table = table_of(trial)?;
        let plots = plots_of(trial, &table)?;
        let laid = laid_out(trial, plots, &table)?;
        let columns = table.columns;
        let labels = text::labels(&laid, &columns);
        let (worked, together, results) = (Vec::new(), Vec::new(), Vec::new());
        Ok(Judging { trial: trial.clone(), laid, columns, labels, worked, together, results })
    }

    /// The steps done, and all of them.
    pub fn done(&self) -> (usize, usize) {
        (self.worked.len() + self.results.len(), 2 * self.laid.plots.results.len())
    }

    /// Does a step; whether there are more.
    pub fn step(&mut self) -> bool {
        let many = self.laid.plots.results.len();
        let (at, told) = (self.worked.len(), self.results.len());
        if at < many {
            self.worked.push(work(&self.laid, at, 0.5));
        } else if told < many {
            if self.together.is_empty() {
                self.together = together(&self.worked);
            }
            let (column, label) = (self.laid.plots.results[told], &self.labels[told]);
            let column = &self.columns[column];
            let shares = self.together[told];
            self.results.push(told_of(
                &self.trial,
                &self.laid,
                &self.worked[told],
                column,
                label,
                shares,
            ));
        }
        let (done, of) = self.done();
        done < of
    }

    /// What is told of it, with the steps that are left.
    pub fn told(mut self) -> Evaluation {
        while self.step() {}
        let Judging { laid, columns, worked, results, .. } = self;
        let open = worked.iter().filter(|worked| worked.family.is_some()).count();
        whole(laid, columns, results, open)
    }
}

/// The share of the 5 % that Holm leaves each property, and its probability beside all others.
fn together(worked: &[Worked]) -> Vec<(f64, f64)> {
    // Only what has an interval shares the 5 %.
    let open: Vec<usize> = (0..worked.len()).filter(|at| worked[*at].family.is_some()).collect();
    let largest: Vec<f64> = open.iter().map(|at| worked[*at].largest_p()).collect();
    let (shared, by_holm) = (shares(&largest), holm(&largest));
    let of = |at: usize| {
        let place = open.iter().position(|known| *known == at);
        place.map_or((1.0, 1.0), |at| (shared[at], by_holm[at]))
    };
    (0..worked.len()).map(of).collect()
}

/// The whole of what is told.
fn whole(laid: Laid, columns: Vec<Column>, results: Vec<TrialResult>, open: usize) -> Evaluation {
    let treatments = laid.plots.treatments.iter().zip(&laid.plots_of);
    let treatments: Vec<Level> =
        treatments.map(|(name, plots)| Level { name: name.clone(), plots: *plots }).collect();
    let mut sources = vec![WELCH_1947.from_memory(), HOLM_1979.from_memory()];
    if treatments.len() > 2 {
        sources.push(DUNNETT_1955.from_memory());
        sources.push(TUKEY_KRAMER.from_memory());
    }
    if laid.in_blocks {
        sources.push(COCHRAN_COX_1957.from_memory());
    }
    sources.push(FIELLER_1954.from_memory());
    if results.iter().any(|result| result.normality.is_some()) {
        sources.push(ROYSTON_1995.from_memory());
    }
    sources.push(OUR_CHOICE.unsourced());
    Evaluation {
        headline: text::headline(&laid, &results),
        guard: text::guard(open, treatments.len()),
        plots: treatments.iter().map(|level| level.plots).sum(),
        blocks: laid.plots.blocks.len(),
        columns,
        treatments,
        control: laid.control,
        design: laid.design,
        stated: laid.stated,
        could_be: laid.could_be,
        notes: laid.plots.notes,
        results,
        sources,
    }
}

/// Works one property out, with results below a limit counted as `share` of it.
fn work(laid: &Laid, at: usize, share: f64) -> Worked {
    let seen = laid.seen(at, share);
    let at_limit = seen.iter().filter(|s| s.at_limit).count() as f64;
    let mut worked = Worked {
        at,
        share_at_limit: if seen.is_empty() { 0.0 } else { at_limit / seen.len() as f64 },
        adjusted: vec![None; laid.plots.treatments.len()],
        seen,
        raws: Vec::new(),
        family: None,
        test: None,
        fit: None,
        bar: None,
    };
    let there: Vec<usize> = (0..laid.plots.treatments.len())
        .filter(|t| worked.seen.iter().any(|s| s.treatment == *t))
        .collect();
    if laid.first.is_some() && laid.plots.treatments.len() < 2 {
        before_after(&mut worked, &there);
    } else {
        compare(laid, &mut worked, &there);
    }
    if !laid.design.is_judged() {
        worked.family = None;
        let none = laid.design == Design::NoReplicates;
        worked.bar = Some(if none { Verdict::NoReplicates } else { Verdict::NotJudged });
    } else if worked.share_at_limit > MOST_AT_LIMIT {
        worked.family = None;
        worked.bar = Some(Verdict::TooManyAtLimit);
    }
    worked
}

/// Changes of plots that were all treated: one mean against nought.
fn before_after(worked: &mut Worked, there: &[usize]) {
    let Some(&only) = there.first() else { return };
    let values: Vec<f64> = worked.seen.iter().map(|s| s.value).collect();
    let mean = Mean::of(&values);
    let error = mean
        .variance
        .filter(|v| scatters(*v, &values))
        .map(|variance| ((variance / values.len() as f64).sqrt(), values.len() as f64 - 1.0));
    let t = error.map_or(0.0, |(se, _)| mean.mean / se);
    worked.adjusted[only] = Some(mean.mean);
    worked.family = error.map(|(_, df)| Family::One(df));
    worked.test = Some(Test::Paired);
    worked.raws.push(Raw {
        treatment: only,
        control: only,
        difference: mean.mean,
        error,
        means: [mean.mean, 0.0],
        variances: [0.0; 3],
        t,
        p: error.map_or(1.0, |(_, df)| t_both_tails(t, df)),
    });
}

/// Whether a variance is more than rounding leaves.
fn scatters(variance: f64, values: &[f64]) -> bool {
    let first = values.first().copied().unwrap_or(0.0);
    let reach = values.iter().map(|v| (v - first).abs()).fold(0.0, f64::max);
    // The last digits of large numbers are no scatter either.
    let grain = values.iter().map(|v| v.abs()).fold(0.0, f64::max) * 4.0 * f64::EPSILON;
    variance.sqrt() > NO_SCATTER * reach && variance.sqrt() > grain
}

/// Treatments beside each other.
fn compare(laid: &Laid, worked: &mut Worked, there: &[usize]) {
    let local = |t: usize| there.iter().position(|known| *known == t);
    let mut blocks: Vec<usize> = worked.seen.iter().filter_map(|s| s.block).collect();
    blocks.sort_unstable();
    blocks.dedup();
    let in_blocks = laid.in_blocks && blocks.len() > 1;
    let points: Vec<Point> = worked
        .seen
        .iter()
        .map(|s| Point {
            treatment: local(s.treatment).unwrap_or(0),
            block: match s.block {
                Some(block) if in_blocks => blocks.binary_search(&block).unwrap_or(0),
                _ => 0,
            },
            y: s.value,
        })
        .collect();
    let many_blocks = if in_blocks { blocks.len() } else { 1 };
    if there.len() < 2 {
        return;
    }
    let found = fit(&points, there.len(), many_blocks);
    let values: Vec<f64> = worked.seen.iter().map(|s| s.value).collect();
    let groups: Vec<Mean> = there.iter().map(|t| Mean::of(&worked.values(*t))).collect();
    for (at, treatment) in there.iter().enumerate() {
        let adjusted = found.as_ref().map_or(groups[at].mean, |fit| fit.means[at]);
        worked.adjusted[*treatment] = Some(adjusted);
    }
    let pairs: Vec<(usize, usize)> = match laid.control {
        Some(control) => {
            let Some(control) = local(control) else { return };
            (0..there.len()).filter(|t| *t != control).map(|t| (t, control)).collect()
        }
        None => (0..there.len()).flat_map(|a| (a + 1..there.len()).map(move |b| (b, a))).collect(),
    };
    let is_welch = !in_blocks && there.len() == 2;
    let n = |t: usize| groups[t].n;
    for (treatment, control) in pairs.iter().copied() {
        let mut raw = Raw {
            treatment: there[treatment],
            control: there[control],
            difference: groups[treatment].mean - groups[control].mean,
            error: None,
            means: [groups[treatment].mean, groups[control].mean],
            variances: [0.0; 3],
            t: 0.0,
            p: 1.0,
        };
        if is_welch {
            let of = |t: usize| groups[t].variance.unwrap_or(0.0) / groups[t].n as f64;
            raw.variances = [of(treatment), of(control), 0.0];
            let pooled = groups[treatment].variance.zip(groups[control].variance);
            let some = pooled.is_some_and(|(a, b)| scatters(a.max(b), &values));
            raw.error = welch(groups[treatment], groups[control]).filter(|_| some);
        } else if let Some(fit) = &found {
            let part = |a: usize, b: usize| fit.error * fit.covariance[a][b];
            raw.means = [fit.means[treatment], fit.means[control]];
            raw.difference = raw.means[0] - raw.means[1];
            raw.variances =
                [part(treatment, treatment), part(control, control), part(treatment, control)];
            let square = raw.variances[0] + raw.variances[1] - 2.0 * raw.variances[2];
            raw.error = Some((square.max(0.0).sqrt(), fit.df))
                .filter(|(se, _)| *se > 0.0 && scatters(fit.error, &values));
        }
        raw.t = raw.error.map_or(0.0, |(se, _)| raw.difference / se);
        worked.raws.push(raw);
    }
    let all_have = worked.raws.iter().all(|raw| raw.error.is_some());
    let df = worked.raws.first().and_then(|raw| raw.error).map(|(_, df)| df).filter(|_| all_have);
    let balanced = many_blocks == 1
        || points.len() == there.len() * many_blocks && laid.design != Design::IncompleteBlocks;
    worked.test = Some(match (pairs.len(), laid.control) {
        (1, _) if is_welch => Test::Welch,
        (1, _) if laid.design == Design::Paired => Test::Paired,
        (1, _) => Test::Blocks,
        (_, Some(_)) if balanced => Test::Dunnett,
        (_, None) if balanced => Test::TukeyKramer,
        _ => Test::Sidak,
    });
    let mut bound = false;
    worked.family = df.map(|df| match worked.test {
        Some(Test::Dunnett) => {
            let others: Vec<usize> = pairs.iter().map(|(t, _)| n(*t)).collect();
            let all = Dunnett::new(n(pairs[0].1), &others, df);
            if all.work() <= MOST_PROBABILITIES {
                return Family::Dunnett(all);
            }
            bound = true;
            Family::Bound(pairs.len(), df)
        }
        Some(Test::TukeyKramer) => Family::Pairs(StudentizedRange::new(there.len(), df)),
        Some(Test::Sidak) => Family::Bound(pairs.len(), df),
        _ => Family::One(df),
    });
    if bound {
        worked.test = Some(Test::Sidak);
    }
    if let Some(family) = &worked.family {
        worked.raws.iter_mut().for_each(|raw| raw.p = family.p(raw.t));
    }
    worked.fit = found;
}

/// The verdict of a comparison by its interval.
fn direction(guarded: Option<Interval>) -> Verdict {
    match guarded {
        Some(Interval { low, .. }) if low > 0.0 => Verdict::Rose,
        Some(Interval { high, .. }) if high < 0.0 => Verdict::Fell,
        _ => Verdict::CantTell,
    }
}

fn around(raw: &Raw, critical: f64) -> Option<Interval> {
    let (se, _) = raw.error?;
    let value = raw.difference;
    Some(Interval { low: value - critical * se, value, high: value + critical * se })
}

/// The ratio of two means with its 95 % interval; none where the control may be nought.
///
/// Source: Fieller 1954 (from memory).
fn ratio(raw: &Raw) -> Option<Interval> {
    let (_, df) = raw.error?;
    let t2 = t_critical(ALPHA, df).powi(2);
    let ([m, m0], [v, v0, both]) = (raw.means, raw.variances);
    let (a, b, c) = (m0 * m0 - t2 * v0, m * m0 - t2 * both, m * m - t2 * v);
    let root = (b * b - a * c).sqrt();
    let usable = a > 1e-12 * m0 * m0 && root.is_finite();
    usable.then(|| Interval { low: (b - root) / a, value: m / m0, high: (b + root) / a })
}

/// Readings so alike that only an exact test can be trusted beside the interval.
fn is_coarse(worked: &Worked, raw: &Raw) -> bool {
    let mut groups = vec![worked.values(raw.treatment)];
    if raw.control != raw.treatment {
        groups.push(worked.values(raw.control));
    }
    let mut all: Vec<f64> = groups.iter().flatten().copied().collect();
    let n = all.len();
    all.sort_by(f64::total_cmp);
    let reach = all.last().zip(all.first()).map_or(0.0, |(last, first)| last - first);
    // Differences of readings are never quite alike.
    let same = |a: f64, b: f64| (a - b).abs() <= NO_SCATTER * reach;
    let alike = |all: &Vec<f64>| all.len() > 1 && all.iter().all(|v| same(*v, all[0]));
    let one_alike = groups.iter().any(alike);
    all.dedup_by(|a, b| same(*a, *b));
    one_alike || 2 * all.len() <= n
}

/// The differences within blocks that hold both once, or the changes of before and after.
fn differences(worked: &Worked, raw: &Raw) -> Vec<f64> {
    if raw.treatment == raw.control {
        return worked.values(raw.treatment);
    }
    let of = |treatment: usize, block: Option<usize>| {
        let mut all = worked.seen.iter().filter(|s| s.treatment == treatment && s.block == block);
        let first = all.next();
        first.filter(|_| all.next().is_none()).map(|s| s.value)
    };
    let own = worked.seen.iter().filter(|s| s.treatment == raw.treatment);
    own.filter_map(|s| Some(of(raw.treatment, s.block)? - of(raw.control, s.block)?)).collect()
}

/// Whether ranks can be counted for so many comparisons.
fn counts_in_time(one: usize, other: usize, comparisons: usize) -> bool {
    let (all, few) = ((one + other) as f64, one.min(other) as f64);
    all <= 24.0 || all <= 100.0 && few * all.powi(3) * comparisons as f64 <= MOST_STEPS
}

/// An exact test, where plots are few or values tied.
fn exact(worked: &Worked, raw: &Raw, in_pairs: bool) -> Option<Exact> {
    let [one, other] = [worked.values(raw.treatment), worked.values(raw.control)];
    let coarse = is_coarse(worked, raw);
    let few = one.len().min(other.len()) <= FEW;
    if !(few || coarse) || one.is_empty() || other.is_empty() {
        return None;
    }
    let (test, p, least) = if in_pairs || raw.treatment == raw.control {
        let pairs = differences(worked, raw);
        if pairs.is_empty() {
            return None;
        }
        let least = 2.0 / 2f64.powi(pairs.len().min(60) as i32);
        match signed_permutation(&pairs) {
            Some(p) => (ExactTest::SignFlip, p, least),
            None if pairs.len() <= 200 => (ExactTest::SignedRank, signed_rank(&pairs), least),
            None => return None,
        }
    } else {
        let ways = choices((one.len() + other.len()).min(200), one.len().min(100));
        let both_ends = if one.len() == other.len() { 2.0 } else { 1.0 };
        let least = both_ends / ways;
        match permutation(&one, &other) {
            Some(p) => (ExactTest::Permutation, p, least),
            None if counts_in_time(one.len(), other.len(), worked.raws.len()) => {
                (ExactTest::RankSum, rank_sum(&one, &other), least)
            }
            None => return None,
        }
    };
    Some(Exact { test, p, least, text: text::exact(test, p, least, coarse) })
}

/// Whether the verdict stands whatever the results below a limit really were.
fn holds_at_all_limits(laid: &Laid, worked: &Worked, at: usize, share: f64, is: Verdict) -> bool {
    [0.0, 1.0].into_iter().all(|of_limit| {
        let other = work(laid, worked.at, of_limit);
        let critical = other.family.as_ref().map(|family| family.critical(ALPHA / share));
        let interval = other.raws.get(at).zip(critical).and_then(|(raw, c)| around(raw, c));
        direction(interval) == is
    })
}

/// One property in words and numbers.
fn told_of(
    trial: &Trial,
    laid: &Laid,
    worked: &Worked,
    column: &Column,
    label: &str,
    (share, by_holm): (f64, f64),
) -> TrialResult {
    let said = text::Said { laid, label, unit: column.unit };
    let alone = worked.family.as_ref().map(|family| family.critical(ALPHA));
    let guarded_at = worked.family.as_ref().map(|family| family.critical(ALPHA / share));
    // The same for all comparisons: they share their degrees of freedom.
    let shift = guarded_at
        .zip(worked.raws.first().and_then(|raw| raw.error))
        .map(|(critical, (_, df))| smallest_shift(df, critical));
    let many = worked.raws.len();
    let comparisons: Vec<Comparison> = worked
        .raws
        .iter()
        .enumerate()
        .map(|(at, raw)| {
            let judged = worked.family.is_some();
            let interval = alone.and_then(|c| around(raw, c));
            let guarded = guarded_at.and_then(|c| around(raw, c));
            let in_pairs = laid.in_blocks;
            let exact = if judged { exact(worked, raw, in_pairs) } else { None };
            let mut verdict = worked.bar.unwrap_or(direction(guarded));
            let mut held_back = None;
            let arrow = matches!(verdict, Verdict::Rose | Verdict::Fell);
            let by_count = exact.as_ref().is_none_or(|exact| exact.p * share < ALPHA);
            if arrow && is_coarse(worked, raw) && !by_count {
                (verdict, held_back) = (Verdict::CantTell, Some(text::HeldBack::Ties));
            } else if arrow
                && worked.share_at_limit > 0.0
                && !holds_at_all_limits(laid, worked, at, share, verdict)
            {
                (verdict, held_back) = (Verdict::CantTell, Some(text::HeldBack::Limits));
            }
            let smallest = shift.zip(raw.error).map(|(shift, (se, _))| shift * se);
            let ratio = has_ratio(laid, worked, column.property).then(|| ratio(raw)).flatten();
            let ratio = if judged { ratio } else { None };
            let plots_needed = column.property.and_then(|property| needed(laid, raw, property));
            let facts =
                text::Facts { raw: (raw.treatment, raw.control), interval, smallest, plots_needed };
            let foretold = trial.foretold.iter().find(|f| Some(f.property) == column.property);
            let foretold =
                foretold.filter(|_| judged).and_then(|f| foreseen(laid, worked, raw, f, &said));
            Comparison {
                treatment: raw.treatment,
                control: raw.control,
                verdict,
                text: said.verdict(
                    verdict,
                    held_back,
                    raw.difference,
                    &facts,
                    worked.share_at_limit,
                ),
                difference: raw.difference,
                interval,
                guarded,
                ratio,
                standard_error: raw.error.map(|(se, _)| se).filter(|_| judged),
                df: raw.error.map(|(_, df)| df).filter(|_| judged),
                test: worked.test.filter(|_| judged),
                why: worked.test.filter(|_| judged).map_or(String::new(), |t| text::why(t).into()),
                t: judged.then_some(raw.t),
                p: judged.then_some(raw.p),
                p_holm: judged.then(|| if many == 1 { by_holm } else { (raw.p * share).min(1.0) }),
                exact,
                smallest,
                foretold,
            }
        })
        .collect();
    let (outliers, residual_sd) = outliers(laid, worked, &said);
    let normality = normality(laid, worked);
    let values: Vec<f64> = worked.seen.iter().map(|s| s.value).collect();
    let mut notes = Vec::new();
    if worked.share_at_limit > 0.0 && worked.bar != Some(Verdict::TooManyAtLimit) {
        notes.push(text::at_limit(worked.share_at_limit));
    }
    if unequal(worked) {
        notes.push(text::UNEQUAL.into());
    }
    if values.is_empty() {
        notes.push(text::NO_PLOT_LEFT.into());
    } else if comparisons.is_empty() {
        notes.push(text::NOTHING_BESIDE.into());
    }
    TrialResult {
        head: column.head.clone(),
        label: label.to_string(),
        property: column.property,
        unit: column.unit,
        groups: groups(laid, worked),
        comparisons,
        overall: overall(laid, worked),
        outliers,
        normality,
        limits_share: worked.share_at_limit,
        residual_sd,
        mean: if values.is_empty() { 0.0 } else { Mean::of(&values).mean },
        notes,
    }
}

/// Plots of each treatment that would show the difference found, by the usual scatter; four at
/// the least.
fn needed(laid: &Laid, raw: &Raw, property: Property) -> Option<usize> {
    let cv = usual_spread(property)?.cv.likely;
    let percent = 100.0 * (raw.difference / raw.means[1]).abs();
    let treatments = laid.plots.treatments.len();
    let wanted = laid.design == Design::NoReplicates && percent.is_finite() && percent > 0.1;
    wanted.then(|| replicates(percent / cv, POWER, treatments, false)).flatten().map(|n| n.max(4))
}

/// pH is a logarithm, and a change may be nought: neither has a ratio.
fn has_ratio(laid: &Laid, worked: &Worked, property: Option<Property>) -> bool {
    let is_ph = matches!(property, Some(Property::Ph | Property::SaltPh | Property::BufferPh));
    !is_ph && laid.first.is_none() && worked.seen.iter().all(|s| s.value > 0.0)
}

/// Whether the scatter of treatments differs more than chance makes it, where one is taken for
/// all.
fn unequal(worked: &Worked) -> bool {
    let pooled =
        matches!(worked.test, Some(Test::Dunnett | Test::TukeyKramer | Test::Blocks | Test::Sidak));
    let treatments = 0..worked.adjusted.len();
    let scatters: Vec<(f64, f64)> = treatments
        .map(|t| worked.values(t))
        .filter(|all| all.len() > 2)
        .filter_map(|all| Some((Mean::of(&all).variance?, all.len() as f64 - 1.0)))
        .collect();
    let by_size = |a: &&(f64, f64), b: &&(f64, f64)| a.0.total_cmp(&b.0);
    let ends = scatters.iter().max_by(by_size).zip(scatters.iter().min_by(by_size));
    let many = scatters.len() as f64;
    // The F of the two ends, over all the pairs that could have been the ends.
    let by_chance = |((most, of), (least, within)): (&(f64, f64), &(f64, f64))| {
        many * (many - 1.0) * f_tail(most / least, *of, *within)
    };
    pooled && worked.family.is_some() && ends.is_some_and(|ends| by_chance(ends) < ALPHA)
}

fn groups(laid: &Laid, worked: &Worked) -> Vec<Group> {
    let plots = &laid.plots;
    (0..plots.treatments.len())
        .map(|treatment| {
            let own = worked.seen.iter().filter(|s| s.treatment == treatment);
            let readings: Vec<Reading> = own
                .map(|s| Reading {
                    plot: s.plot.clone(),
                    block: s.block.map_or(String::new(), |b| plots.blocks[b].clone()),
                    value: s.value,
                    before: s.before,
                    at_limit: s.at_limit,
                })
                .collect();
            let values: Vec<f64> = readings.iter().map(|r| r.value).collect();
            let mean = Mean::of(&values);
            Group {
                treatment,
                n: values.len(),
                missing: laid.plots_of[treatment].saturating_sub(values.len()),
                mean: if values.is_empty() { 0.0 } else { mean.mean },
                sd: mean.variance.filter(|_| values.len() > 1).map(f64::sqrt),
                adjusted: worked.adjusted[treatment].unwrap_or(0.0),
                readings,
            }
        })
        .collect()
}

fn overall(laid: &Laid, worked: &Worked) -> Option<Overall> {
    let fit = worked.fit.as_ref().filter(|_| worked.family.is_some())?;
    if fit.means.len() < 3 && !laid.in_blocks {
        return None;
    }
    Some(Overall::of(fit)).filter(|overall| overall.f.is_finite())
}

fn outliers(laid: &Laid, worked: &Worked, said: &text::Said<'_>) -> (Vec<Outlier>, Option<f64>) {
    let (residuals, error, df) = match &worked.fit {
        Some(fit) => (fit.residuals.clone(), fit.error, fit.df),
        None if laid.design == Design::BeforeAfter => {
            let values: Vec<f64> = worked.seen.iter().map(|s| s.value).collect();
            let mean = Mean::of(&values);
            let draws = 1.0 / values.len().max(1) as f64;
            let off = values.iter().map(|v| (v - mean.mean, draws)).collect();
            (off, mean.variance.unwrap_or(0.0), values.len() as f64 - 1.0)
        }
        None => return (Vec::new(), None),
    };
    let values: Vec<f64> = worked.seen.iter().map(|s| s.value).collect();
    if !scatters(error, &values) {
        return (Vec::new(), None);
    }
    if worked.family.is_none() {
        return (Vec::new(), Some(error.sqrt()));
    }
    let named = far_off(&residuals, error, df).into_iter().map(|at| {
        let seen = &worked.seen[at];
        let block = seen.block.map(|b| laid.plots.blocks[b].clone());
        let plot = if seen.plot.is_empty() { block.unwrap_or_default() } else { seen.plot.clone() };
        let text = said.outlier(seen.treatment, &plot, seen.value);
        Outlier { treatment: seen.treatment, plot, value: seen.value, text }
    });
    (named.collect(), Some(error.sqrt()))
}

/// A look at what is taken for normal: the differences of pairs, the changes, else what treatments
/// and blocks leave over, in shares of each treatment's own scatter where that is not taken for
/// equal.
fn normality(laid: &Laid, worked: &Worked) -> Option<Normality> {
    worked.family.as_ref()?;
    let of_pairs = worked.raws.first().filter(|_| worked.test == Some(Test::Paired));
    let values: Vec<f64> = match (of_pairs, &worked.fit) {
        (Some(raw), _) => differences(worked, raw),
        (None, Some(_)) if worked.test == Some(Test::Welch) => {
            let treatments = 0..laid.plots.treatments.len();
            let in_shares = |t| {
                let values = worked.values(t);
                let mean = Mean::of(&values);
                let sd = mean.variance.unwrap_or(0.0).sqrt();
                values.into_iter().map(move |v| (v - mean.mean) / sd)
            };
            treatments.flat_map(in_shares).collect()
        }
        (None, Some(fit)) => fit.residuals.iter().map(|(off, _)| *off).collect(),
        (None, None) => return None,
    };
    if values.len() < ENOUGH {
        return None;
    }
    let (w, p) = shapiro_wilk(&values)?;
    Some(Normality { w, p, text: text::normality(p) })
}

/// The model's word beside what was found.
fn foreseen(
    laid: &Laid,
    worked: &Worked,
    raw: &Raw,
    foretold: &Foretold,
    said: &text::Said<'_>,
) -> Option<Foreseen> {
    let (_, df) = raw.error?;
    let own = around(raw, t_critical(ALPHA, df))?;
    let found = if foretold.unit != Unit::Percent {
        own
    } else if laid.first.is_none() {
        let ratio =
            if worked.seen.iter().all(|s| s.value > 0.0) { ratio(raw)? } else { return None };
        let percent = |r: f64| 100.0 * (r - 1.0);
        Interval { low: percent(ratio.low), value: percent(ratio.value), high: percent(ratio.high) }
    } else {
        let before: Vec<f64> = worked.seen.iter().filter_map(|s| s.before).collect();
        let base = Mean::of(&before).mean;
        let percent = |d: f64| 100.0 * d / base;
        if base <= 0.0 {
            return None;
        }
        Interval { low: percent(own.low), value: percent(own.value), high: percent(own.high) }
    };
    let band = foretold.band();
    let apart = found.low > band.high || found.high < band.low;
    let shown = found.low > 0.0 || found.high < 0.0;
    let inside = (band.low..=band.high).contains(&found.value);
    let within = found.low >= band.low && found.high <= band.high;
    let agrees = match (apart, shown && inside || within) {
        (true, _) => Some(false),
        (false, true) => Some(true),
        (false, false) => None,
    };
    let text = said.foreseen(agrees, &band, &found, foretold.unit);
    Some(Foreseen { foretold: band, found, unit: foretold.unit, agrees, text })
}
