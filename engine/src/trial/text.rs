//! What is said of a trial, in sentences.

use super::design::{Laid, MOST_AT_LIMIT};
use super::evaluation::{Column, ExactTest, Interval, Test, TrialResult, Verdict};
use super::{Design, power::POWER};
use crate::quantity::{Band, Unit, significant};

/// Why an arrow was held back.
#[derive(Clone, Copy)]
pub(super) enum HeldBack {
    /// Many readings are alike.
    Ties,
    /// It hangs on what lies below or above a limit.
    Limits,
}

pub(super) const UNEQUAL: &str = "The treatments scatter very unequally, and one scatter was taken for all. Look at the plots before you trust it.";
pub(super) const NO_PLOT_LEFT: &str = "No plot has a result that can be used.";
pub(super) const NOTHING_BESIDE: &str =
    "The treatments that are left have nothing to be compared with here.";

/// Decimals that tell something where the ends lie `reach` from the middle: two digits of it
/// where the first is small, else one.
fn decimals(reach: f64) -> i32 {
    let place = reach.log10().floor();
    let first = reach / 10f64.powf(place);
    (i32::from(first < 3.95) - place as i32).clamp(-9, 9)
}

/// A number to so many decimals; below nought they are noughts before the point.
fn number(value: f64, decimals: i32) -> String {
    let step = 10f64.powi(-decimals);
    let rounded = (value / step).round() * step;
    let text = format!("{rounded:.*}", decimals.max(0) as usize);
    if text.trim_start_matches('-').chars().all(|c| matches!(c, '0' | '.')) {
        return "0".into();
    }
    text.replace('-', "−")
}

/// Two digits of a size, with its unit.
fn size(value: f64, unit: Option<Unit>) -> String {
    let value = value.abs();
    let text = if (1e-9..1e12).contains(&value) {
        number(value, 1 - value.log10().floor() as i32)
    } else {
        significant(value, 2)
    };
    with_unit(text, unit)
}

fn with_unit(number: String, unit: Option<Unit>) -> String {
    match unit.map(Unit::symbol).unwrap_or_default() {
        "" => number,
        symbol => format!("{number}\u{a0}{symbol}"),
    }
}

/// `0.4 (0.1 to 0.7) mg/kg`. An end that is not nought is not told as nought where that would
/// hide that the interval excludes it.
fn with_ends(of: &Interval, unit: Option<Unit>) -> String {
    let reach = 0.5 * (of.high - of.low);
    let ends = [of.value, of.low, of.high];
    let text = if (1e-9..1e12).contains(&reach) {
        let excludes = of.low > 0.0 || of.high < 0.0;
        let hides = |digits: i32| ends.iter().any(|end| number(*end, digits) == "0");
        let first = decimals(reach);
        let digits = (first..first + 4).find(|digits| !(excludes && hides(*digits)));
        ends.map(|end| number(end, digits.unwrap_or(first)))
    } else {
        ends.map(|end| significant(end, 3).replace('-', "−"))
    };
    let [value, low, high] = text;
    with_unit(format!("{value} ({low} to {high})"), unit)
}

/// What each property is called: its name, or its head in quotes where two columns share it.
pub(super) fn labels(laid: &Laid, columns: &[Column]) -> Vec<String> {
    let of = |at: usize| columns[at].property;
    let results = &laid.plots.results;
    results
        .iter()
        .map(|at| {
            let same = results.iter().filter(|other| of(**other) == of(*at)).count();
            match of(*at) {
                Some(property) if same == 1 => property.label().to_string(),
                _ => format!("“{}”", columns[*at].head),
            }
        })
        .collect()
}

/// At the head of a sentence.
fn capital(label: &str) -> String {
    if label.starts_with("pH") {
        return label.to_string();
    }
    let mut letters = label.chars();
    letters.next().map(|first| first.to_uppercase().chain(letters).collect()).unwrap_or_default()
}

/// What the sentences on one property share.
pub(super) struct Said<'a> {
    pub laid: &'a Laid,
    pub label: &'a str,
    pub unit: Option<Unit>,
}

/// What a verdict rests on.
pub(super) struct Facts {
    pub raw: (usize, usize),
    pub interval: Option<Interval>,
    pub smallest: Option<f64>,
    /// Plots of each treatment that would show such a difference, where there is one plot.
    pub plots_needed: Option<usize>,
}

impl Said<'_> {
    fn name(&self, treatment: usize) -> &str {
        &self.laid.plots.treatments[treatment]
    }

    /// The verdict in a sentence or more.
    pub fn verdict(
        &self,
        verdict: Verdict,
        held_back: Option<HeldBack>,
        difference: f64,
        facts: &Facts,
        at_limit: f64,
    ) -> String {
        let what = capital(self.label);
        let (treatment, control) = (self.name(facts.raw.0), self.name(facts.raw.1));
        let change = facts.raw.0 == facts.raw.1;
        match verdict {
            Verdict::Rose | Verdict::Fell => {
                let Some(of) = &facts.interval else { return String::new() };
                let fell = verdict == Verdict::Fell;
                let of = if fell {
                    Interval { low: -of.high, value: -of.value, high: -of.low }
                } else {
                    *of
                };
                let by = with_ends(&of, self.unit);
                match (fell, change) {
                    (false, false) => {
                        format!("{what} rose by {by} with “{treatment}” beside “{control}”.")
                    }
                    (true, false) => {
                        format!("{what} fell by {by} with “{treatment}” beside “{control}”.")
                    }
                    (false, true) => format!(
                        "{what} rose by {by} from before to after. Without untreated plots nobody knows what did it: the season changes soil too."
                    ),
                    (true, true) => format!(
                        "{what} fell by {by} from before to after. Without untreated plots nobody knows what did it: the season changes soil too."
                    ),
                }
            }
            Verdict::CantTell => self.cant_tell(held_back, difference, facts),
            Verdict::NoReplicates => self.no_replicates(difference, facts),
            Verdict::TooManyAtLimit => format!(
                "{what}: no verdict, because {} % of the results lie below or above a limit, and at most {} % may.",
                significant(100.0 * at_limit, 2),
                significant(100.0 * MOST_AT_LIMIT, 2)
            ),
            Verdict::NotJudged => format!("{what} was not judged."),
        }
    }

    fn no_replicates(&self, difference: f64, facts: &Facts) -> String {
        let what = capital(self.label);
        let (treatment, control) = (self.name(facts.raw.0), self.name(facts.raw.1));
        let by = size(difference, self.unit);
        if facts.raw.0 == facts.raw.1 {
            return match difference {
                0.0 => format!("{what} is the same before and after. One plot shows nothing."),
                rise if rise > 0.0 => format!(
                    "{what} is {by} higher after than before. One plot shows nothing, and the season changes soil too."
                ),
                _ => format!(
                    "{what} is {by} lower after than before. One plot shows nothing, and the season changes soil too."
                ),
            };
        }
        let mut text = if difference == 0.0 {
            format!(
                "{what} is the same with “{treatment}” and “{control}”. One plot of a treatment shows nothing."
            )
        } else if difference > 0.0 {
            format!(
                "{what} is {by} higher with “{treatment}” than with “{control}”. One plot of a treatment shows nothing."
            )
        } else {
            format!(
                "{what} is {by} lower with “{treatment}” than with “{control}”. One plot of a treatment shows nothing."
            )
        };
        if let Some(plots) = facts.plots_needed {
            text += &format!(
                " With the usual scatter {plots} plots of each would show such a difference."
            );
        }
        text
    }

    fn cant_tell(&self, held_back: Option<HeldBack>, difference: f64, facts: &Facts) -> String {
        let what = capital(self.label);
        let Some(of) = &facts.interval else {
            return if difference == 0.0 {
                format!("{what}: can't tell with these plots. They all read the same.")
            } else {
                format!(
                    "{what}: can't tell with these plots. Their scatter is not known: take more plots, or have it measured finer."
                )
            };
        };
        let found = with_ends(of, self.unit);
        let mut text = match held_back {
            Some(HeldBack::Ties) => format!(
                "{what}: can't tell with these plots. The difference is {found}, but so many readings are alike that chance could do the same. Have it measured finer, or take more plots."
            ),
            Some(HeldBack::Limits) => format!(
                "{what}: can't tell with these plots. The difference is {found}, but it hangs on what the results below or above a limit really were."
            ),
            None if of.low > 0.0 || of.high < 0.0 => format!(
                "{what}: can't tell with these plots. The difference is {found}. For this property alone that would count, but among so many properties one comes out so by chance."
            ),
            None => format!(
                "{what}: can't tell with these plots. The difference is {found}, which can be chance."
            ),
        };
        if let (Some(smallest), None) = (facts.smallest, held_back) {
            let least = size(smallest, self.unit);
            let of_100 = significant(100.0 * POWER, 2);
            text += &format!(
                " A true difference of {least} would have shown in {of_100} of 100 such trials."
            );
        }
        text
    }

    /// A reading far from the others.
    pub fn outlier(&self, treatment: usize, plot: &str, value: f64) -> String {
        let (name, value) =
            (self.name(treatment), with_unit(significant(value, 4).replace('-', "−"), self.unit));
        let what = capital(self.label);
        if plot.is_empty() {
            format!(
                "{what}: {value} with “{name}” lies far from the others. It was used all the same: look whether it is a slip."
            )
        } else {
            format!(
                "{what}: {value} with “{name}” in “{plot}” lies far from the others. It was used all the same: look whether it is a slip."
            )
        }
    }

    /// The model's word beside the trial's.
    pub fn foreseen(
        &self,
        agrees: Option<bool>,
        band: &Band,
        found: &Interval,
        unit: Unit,
    ) -> String {
        let foretold = Interval { low: band.low, value: band.likely, high: band.high };
        let unit = if unit == Unit::None { self.unit } else { Some(unit) };
        let [foretold, found] = [foretold, *found].map(|of| with_ends(&of, unit));
        match agrees {
            Some(true) => format!("The model foretold {foretold}, and the trial agrees: {found}."),
            Some(false) => {
                format!("The model foretold {foretold}, and the trial does not agree: {found}.")
            }
            None => format!("The model foretold {foretold}. The trial can't tell: {found}."),
        }
    }
}

/// What an exact test says.
pub(super) fn exact(test: ExactTest, p: f64, least: f64, coarse: bool) -> String {
    let (name, p, least) = (test.label(), significant(p, 2), significant(least, 2));
    if coarse {
        format!(
            "Many readings are alike, so a {name} counts as well: p = {p}, and no less than {least} with so many plots."
        )
    } else {
        format!(
            "There are few plots, so here is a {name} as well: p = {p}, and no less than {least} with so many plots."
        )
    }
}

/// Rarer than this, and what is left over does not look normal. Our choice: it is asked of every
/// property.
const RARE: f64 = 0.01;

/// Whether the scatter looks normal.
pub(super) fn normality(p: f64) -> String {
    let told = significant(p, 2);
    if p < RARE {
        format!(
            "The scatter does not look normal (Shapiro–Wilk, p = {told}): trust the interval only as far as the dots agree with it."
        )
    } else {
        format!("Nothing speaks against a normal scatter (Shapiro–Wilk, p = {told}).")
    }
}

/// Why a test was taken.
pub(super) fn why(test: Test) -> &'static str {
    match test {
        Test::Welch => {
            "Two treatments, plots by lot: Welch's t test, which does not take their scatter for equal."
        }
        Test::Paired => {
            "Each pair is its own comparison: paired t test, by least squares where a plot is missing."
        }
        Test::Blocks => {
            "What differs between blocks is taken out first: analysis of variance, by least squares."
        }
        Test::Dunnett => {
            "Several treatments beside one control: Dunnett's test keeps chance to 5 % for all of them together."
        }
        Test::TukeyKramer => {
            "Every treatment beside every other: the Tukey–Kramer test keeps chance to 5 % for all pairs together."
        }
        Test::Sidak => {
            "Blocks lack plots, or many treatments hold unequal numbers of them: least squares, and Šidák's bound keeps chance to 5 % for all comparisons together."
        }
    }
}

/// The share of results at a limit.
pub(super) fn at_limit(share: f64) -> String {
    format!(
        "{} % of the results lie below or above a limit. Below, half the limit was counted, above, the limit. The verdict was tried with nought and with the whole limit too.",
        significant(100.0 * share, 2)
    )
}

/// How chance is kept to 5 % over all properties.
pub(super) fn guard(properties: usize, treatments: usize) -> String {
    match (properties, treatments) {
        (0, _) => String::new(),
        (1, _) => "An arrow stands where the 95 % interval excludes nought.".into(),
        (n, 2) | (n, 1) => format!(
            "With {n} properties one in twenty would get an arrow by chance. So an arrow stands only where an interval excludes nought that is widened after Holm, for all of them together."
        ),
        (n, _) => format!(
            "With {n} properties and several treatments some would get an arrow by chance. So an arrow stands only where an interval excludes nought that is widened after Holm, for all of them together."
        ),
    }
}

/// The whole in a line.
pub(super) fn headline(laid: &Laid, results: &[TrialResult]) -> String {
    match laid.design {
        Design::NoReplicates => return "One plot of a treatment: nothing can be concluded.".into(),
        design if !design.is_judged() => return "This design is not judged here.".into(),
        _ => {}
    }
    let all = || results.iter().flat_map(|result| &result.comparisons);
    let count = |verdict| all().filter(|c| c.verdict == verdict).count();
    let (rose, fell) = (count(Verdict::Rose), count(Verdict::Fell));
    let open = all().count() - rose - fell;
    match (rose + fell, open) {
        (0, 0) => "There is nothing to compare.".into(),
        (0, _) => "Nothing can be told with these plots.".into(),
        (_, 0) => format!("{rose} rose and {fell} fell."),
        _ => format!("{rose} rose, {fell} fell, and {open} can't be told with these plots."),
    }
}
