//! What a biochar's figures are beside the limits of two quality standards.
//! A comparison, never a certificate.

use crate::bag::certificate::{given, item};
use crate::case::Bag;
use crate::case::CertificateItem;
use crate::facts::Limit;
use crate::named::named;
use crate::quantity::{Grounds, Unit, significant};
use crate::sources::*;

named! { "verdict on a figure":
    /// How a figure lies to its limit.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum Verdict {
        /// Within it.
        Within = "within";
        /// Between the strictest and the loosest national limit.
        Between = "between";
        /// Beyond it.
        Over = "over";
        /// Not given, or given as something that can't be.
        NotGiven = "not-given";
    }
}

impl Limit {
    fn judge(self, value: f64) -> Verdict {
        let kept = |within| if within { Verdict::Within } else { Verdict::Over };
        match self {
            Limit::AtLeast(least) => kept(value >= least),
            Limit::AtMost(most) => kept(value <= most),
            Limit::Below(end) => kept(value < end),
            Limit::National(strictest, loosest) if value > strictest => {
                if value <= loosest {
                    Verdict::Between
                } else {
                    Verdict::Over
                }
            }
            Limit::National(..) => Verdict::Within,
        }
    }

    /// The limit in words, with its unit.
    fn words(self, unit: Unit) -> String {
        let symbol = unit.symbol();
        let words = match self {
            Limit::AtLeast(least) => format!("at least {least} {symbol}"),
            Limit::AtMost(most) => format!("at most {most} {symbol}"),
            Limit::Below(end) => format!("below {end} {symbol}"),
            Limit::National(low, high) => format!("at most {low} to {high} {symbol}, by country"),
        };
        words.replace(" ,", ",").trim_end().into()
    }
}

/// One figure beside its limit.
#[derive(Clone, Debug, PartialEq)]
pub struct Check {
    /// What it is about.
    pub what: CertificateItem,
    /// The figure given with its unit; empty when none is.
    pub given: String,
    /// The limit in words.
    pub limit: String,
    /// How the figure lies to it.
    pub verdict: Verdict,
}

/// One standard, or one class of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Standard {
    /// Its name.
    pub name: &'static str,
    /// What the checks come to, in words.
    pub text: String,
    /// Each limit that a figure of a certificate can be held to.
    pub checks: Vec<Check>,
    /// What it rests on.
    pub grounds: Grounds,
}

struct Table {
    name: &'static str,
    citations: &'static [Citation],
    limits: &'static [(CertificateItem, Limit)],
}

// From `engine/facts/limits.csv`: mg/kg and % of dry matter. That the IBI's limits for metals are
// ranges of national rules, of which the loosest holds where a country has none, was read in an
// earlier edition.
include!(concat!(env!("OUT_DIR"), "/limits.rs"));

/// The figures of a bag beside each standard; empty while none is given.
pub fn standards(bag: &Bag) -> Vec<Standard> {
    if bag.certificate.is_empty() {
        return Vec::new();
    }
    TABLES.iter().map(|table| beside(table, bag)).collect()
}

fn beside(table: &Table, bag: &Bag) -> Standard {
    let check = |&(what, limit): &(CertificateItem, Limit)| {
        let unit = item(what).unit;
        let value = given(bag, what).ok().flatten();
        Check {
            what,
            given: value.map_or_else(String::new, |value| {
                format!("{} {}", significant(value, 4), unit.symbol()).trim_end().into()
            }),
            limit: limit.words(unit),
            verdict: value.map_or(Verdict::NotGiven, |value| limit.judge(value)),
        }
    };
    let checks: Vec<Check> = table.limits.iter().map(check).collect();
    let named = |verdict: Verdict| {
        let labels = checks.iter().filter(|c| c.verdict == verdict).map(|c| item(c.what).label);
        labels.collect::<Vec<_>>()
    };
    let (over, between) = (named(Verdict::Over), named(Verdict::Between));
    let missing = named(Verdict::NotGiven).len();
    let mut text = match over.as_slice() {
        [] if missing == checks.len() => "No figure given has a limit here.".to_string(),
        [] => "No figure given is outside its limit.".to_string(),
        over => format!("Outside its limit: {}. Ask the maker before you use it.", over.join(", ")),
    };
    if !between.is_empty() {
        text.push_str(&format!(
            " Within the loosest limit but not the strictest: {}. Your country's own holds.",
            between.join(", ")
        ));
    }
    if missing > 0 && missing < checks.len() {
        text.push_str(&format!(" Not given: {missing} of {}.", checks.len()));
    }
    let grounds = Grounds::new(
        "Each figure beside its limit, on a dry basis. The limits are from memory, not checked \
         against the standard's text; this is no certificate.",
        table.citations,
    )
    .assume(
        "The standards ask for more than this: allowed raw materials, sampling, other poisons. \
         Only the maker's certificate says that all of it was met.",
    );
    Standard { name: table.name, text, checks, grounds }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::case::CertificateFigure;
    use crate::case::CertificateItem::*;

    fn bag(figures: &[(CertificateItem, f64)]) -> Bag {
        let figure = |&(what, value)| CertificateFigure { what, value };
        Bag { certificate: figures.iter().map(figure).collect(), ..Bag::default() }
    }

    fn verdict(standard: &Standard, what: CertificateItem) -> Verdict {
        standard.checks.iter().find(|c| c.what == what).expect("it has a limit").verdict
    }

    #[test]
    fn a_figure_at_its_limit_is_within_and_one_past_it_is_over() {
        for (cadmium, expected) in [
            (0.7, [Verdict::Within, Verdict::Within, Verdict::Within]),
            (1.4, [Verdict::Within, Verdict::Over, Verdict::Within]),
            (1.6, [Verdict::Between, Verdict::Over, Verdict::Over]),
            (40.0, [Verdict::Over, Verdict::Over, Verdict::Over]),
        ] {
            let found = standards(&bag(&[(Cadmium, cadmium)]));
            let found: Vec<_> = found.iter().map(|s| verdict(s, Cadmium)).collect();
            assert_eq!(found, expected, "{cadmium} mg/kg");
        }
        let ratio = standards(&bag(&[(HydrogenToCarbon, 0.7)]));
        let ratio: Vec<_> = ratio.iter().map(|s| verdict(s, HydrogenToCarbon)).collect();
        assert_eq!(ratio, [Verdict::Within, Verdict::Over, Verdict::Over]);
    }

    #[test]
    fn what_is_missing_or_cannot_be_is_never_within() {
        let found = standards(&bag(&[(Lead, 90_000.0), (OrganicCarbon, 70.0)]));
        for standard in &found {
            assert_eq!(verdict(standard, Lead), Verdict::NotGiven);
            assert!(!standard.text.contains("certified"), "{}", standard.text);
        }
        assert!(found[0].text.contains("Not given: 10 of 11"), "{}", found[0].text);
        assert!(found[1].text.contains("No figure given has a limit"), "{}", found[1].text);
        assert!(standards(&Bag::default()).is_empty());
    }
}
