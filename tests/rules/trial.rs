//! What a trial says, whatever stands in its table: drawn trials, and the two to try.

use emberloam_engine::quantity::{Measures, Unit};
use emberloam_engine::soil::Property;
use emberloam_engine::trial::{
    Comparison, Design, Evaluation, Foretold, Interval, MOST_PROPERTIES, MOST_TREATMENTS, Only,
    Place, Role, RoleOf, Test, Trial, TrialResult, Verdict, Wish, evaluate, layout_csv, next_trial,
    sheet_csv, t_both_tails,
};
use emberloam_engine::{Case, export, judged_readings, report};
use emberloam_tests::project;
use proptest::prelude::*;

fn trial(text: impl Into<String>) -> Trial {
    Trial { text: text.into(), ..Trial::default() }
}

fn judged(text: impl Into<String>) -> Evaluation {
    evaluate(&trial(text)).unwrap_or_else(|refused| panic!("{refused}"))
}

/// Numbers that fall as if by chance, the same in every run.
struct Draw(u64);

impl Draw {
    /// From 0 up to 1.
    ///
    /// Source: Steele, Lea and Flood 2014, SplitMix64 (from memory).
    fn even(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        ((z ^ (z >> 31)) >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// A normal one.
    ///
    /// Source: Box and Muller 1958 (from memory).
    fn normal(&mut self) -> f64 {
        let (a, b) = (1.0 - self.even(), self.even());
        (-2.0 * a.ln()).sqrt() * (std::f64::consts::TAU * b).cos()
    }
}

/// A table of plots with a block, a treatment and one result each.
fn table(rows: &[(usize, &str, f64)]) -> String {
    let mut text = String::from("Block,Treatment,Result\n");
    rows.iter().for_each(|(block, treatment, y)| text += &format!("{block},{treatment},{y}\n"));
    text
}

fn only(found: &Evaluation) -> &Comparison {
    &found.results[0].comparisons[0]
}

fn same(a: f64, b: f64, scale: f64) -> bool {
    (a - b).abs() <= 1e-7 * scale.abs().max(1e-300)
}

/// The coverage of an interval over `runs` drawn trials is within three Monte-Carlo errors of 95 %.
fn covers(name: &str, runs: usize, mut holds: impl FnMut(&mut Draw) -> bool) {
    let mut draw = Draw(name.len() as u64 * 7919 + 16);
    let held = (0..runs).filter(|_| holds(&mut draw)).count() as f64 / runs as f64;
    let error = (0.95 * 0.05 / runs as f64).sqrt();
    println!("{name}: {:.1} % of {runs}", 100.0 * held);
    assert!((held - 0.95).abs() < 3.0 * error, "{name}: {held} of {runs} trials");
}

fn around(interval: Option<Interval>, truth: f64) -> bool {
    interval.is_some_and(|of| of.low <= truth && truth <= of.high)
}

#[test]
fn intervals_hold_the_truth_in_95_of_100_trials() {
    // Unequal scatter and numbers: Welch. Its own error is a little off at so few plots.
    covers("welch", 150, |draw| {
        let mut rows = Vec::new();
        (0..6).for_each(|_| rows.push((1, "none", 20.0 + draw.normal())));
        (0..8).for_each(|_| rows.push((1, "char", 23.0 + 2.5 * draw.normal())));
        around(only(&judged(table(&rows))).interval, 3.0)
    });
    covers("pairs", 150, |draw| {
        let mut rows = Vec::new();
        for block in 0..5 {
            let bed = 5.0 * draw.normal();
            rows.push((block, "none", 20.0 + bed + draw.normal()));
            rows.push((block, "char", 23.0 + bed + draw.normal()));
        }
        around(only(&judged(table(&rows))).interval, 3.0)
    });
    // All three comparisons at once, and of the ratio one alone.
    let mut ratios = 0;
    covers("dunnett", 120, |draw| {
        let truth = [("none", 20.0), ("ash", 20.0), ("char", 24.0), ("lime", 21.0)];
        let mut rows = Vec::new();
        for block in 0..4 {
            let bed = 3.0 * draw.normal();
            truth
                .iter()
                .for_each(|(name, mean)| rows.push((block, *name, mean + bed + draw.normal())));
        }
        let found = judged(table(&rows));
        let all = &found.results[0].comparisons;
        assert_eq!(all[0].test, Some(Test::Dunnett));
        ratios += usize::from(all[1].ratio.is_some());
        all.iter().zip([0.0, 4.0, 1.0]).all(|(of, truth)| around(of.interval, truth))
    });
    assert_eq!(ratios, 120);
    covers("ratio", 150, |draw| {
        let mut rows = Vec::new();
        (0..6).for_each(|_| rows.push((1, "none", 20.0 + draw.normal())));
        (0..6).for_each(|_| rows.push((1, "char", 25.0 + draw.normal())));
        around(only(&judged(table(&rows))).ratio, 1.25)
    });
    covers("changes beside a control", 60, |draw| {
        let mut text = String::from("Plot,Treatment,When,Result\n");
        for plot in 0..12 {
            let name = if plot % 2 == 0 { "none" } else { "char" };
            let bed = 4.0 * draw.normal();
            let more = if plot % 2 == 0 { 1.0 } else { 3.0 };
            text += &format!("{plot},{name},before,{}\n", 20.0 + bed + draw.normal());
            text += &format!("{plot},{name},after,{}\n", 20.0 + bed + more + draw.normal());
        }
        let found = judged(text);
        assert_eq!(found.design, Design::BeforeAfterWithControl);
        around(only(&found).interval, 2.0)
    });
}

/// Nothing was done: an arrow over all of four properties comes in about 5 of 100 trials, and
/// never in more than its Monte-Carlo error allows.
#[test]
fn no_more_than_five_in_a_hundred_trials_without_effect_get_an_arrow() {
    let mut draw = Draw(99);
    let runs = 200;
    let wrong = (0..runs)
        .filter(|_| {
            let mut text = String::from("Treatment,a1,a2,a3,a4\n");
            for plot in 0..12 {
                text += if plot % 2 == 0 { "none" } else { "char" };
                (0..4).for_each(|_| text += &format!(",{}", 20.0 + draw.normal()));
                text.push('\n');
            }
            let found = judged(text);
            let all = found.results.iter().flat_map(|r| &r.comparisons);
            all.map(|c| c.verdict).any(|v| v != Verdict::CantTell)
        })
        .count() as f64;
    let error = (0.05 * 0.95 * f64::from(runs)).sqrt();
    println!("{wrong} of {runs}");
    assert!(wrong <= 0.05 * f64::from(runs) + 3.0 * error, "{wrong} of {runs}");
    assert!(wrong >= 0.02 * f64::from(runs), "so careful that it says nothing: {wrong}");
}

/// The smallest difference is seen in about 80 of 100 trials that have it.
#[test]
fn the_smallest_difference_is_seen_in_80_of_100_trials() {
    let mut draw = Draw(5);
    let error = (2.0_f64 / 6.0).sqrt();
    let critical = emberloam_engine::trial::t_critical(0.05, 10.0);
    let truth = emberloam_engine::trial::smallest_shift(10.0, critical) * error;
    let runs = 200;
    let seen = (0..runs)
        .filter(|_| {
            let mut rows = Vec::new();
            (0..6).for_each(|_| rows.push((1, "none", 20.0 + draw.normal())));
            (0..6).for_each(|_| rows.push((1, "char", 20.0 + truth + draw.normal())));
            only(&judged(table(&rows))).verdict == Verdict::Rose
        })
        .count() as f64
        / f64::from(runs);
    // Welch gives away a little of the equal scatter.
    println!("{seen}");
    assert!((0.70..=0.87).contains(&seen), "{seen}");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(32))]

    /// The order of lines, another unit and another nought change nothing that is said.
    #[test]
    fn order_unit_and_shift_do_not_matter(
        values in prop::collection::vec(0u32..4000, 8..16),
        blocks in 2usize..5,
        turn in 1usize..7,
        factor in prop::sample::select(vec![0.001, 0.5, 3.0, 1000.0]),
        shift in prop::sample::select(vec![0.0, 50.0, 7000.0]),
    ) {
        let rows: Vec<(usize, &str, f64)> = values
            .iter()
            .enumerate()
            .map(|(at, v)| (at / 2 % blocks, if at % 2 == 0 { "none" } else { "char" }, 10.0 + f64::from(*v) / 100.0))
            .collect();
        let plain = judged(table(&rows));
        let mut turned = rows.clone();
        turned.rotate_left(turn);
        turned.reverse();
        let mut other: Vec<(usize, &str, f64)> = turned.clone();
        other.iter_mut().for_each(|row| row.2 = row.2 * factor + shift * factor);
        // The control is named, since the first in the table would be taken.
        let with = |rows: &[(usize, &str, f64)]| judged(table(rows));
        for (found, factor) in [(with(&turned), 1.0), (with(&other), factor)] {
            let [a, b] = [only(&plain), only(&found)];
            prop_assert_eq!(a.verdict, b.verdict);
            prop_assert_eq!(plain.design, found.design);
            prop_assert!(same(a.difference * factor, b.difference, 50.0 * factor));
            if let (Some(one), Some(two)) = (a.interval, b.interval) {
                let scale = 50.0 * factor;
                prop_assert!(same(one.low * factor, two.low, scale) && same(one.high * factor, two.high, scale));
                prop_assert!((a.p.unwrap() - b.p.unwrap()).abs() < 1e-6);
            }
        }
    }

    /// Whatever numbers stand in the table, none that comes out is no number, and an arrow
    /// stands just where the guarded interval excludes nought, but where it was held back.
    #[test]
    fn whatever_is_in_the_table_no_number_is_lost(
        cells in prop::collection::vec(prop::sample::select(vec![
            "0", "-0", "1", "1.5", "6.2", "1e9", "99999999999999", "-3", "1e300", "1e-300", "<2", ">9",
            "<0", "", "NA", "x", "0.1", "0.2", "0.30000000000000004", "1e15", "9e14", "-9e14", "NaN", "inf",
        ]), 4..40),
        treatments in 1usize..5,
        blocks in 1usize..5,
        times in 1usize..4,
    ) {
        let mut text = String::from("Plot,Block,When,Treatment,Result,Other\n");
        for (at, two) in cells.chunks(2).enumerate() {
            let other = two.get(1).unwrap_or(&"");
            text += &format!("{},{},{},t{},{},{other}\n", at % 6, at % blocks, at % times, at % treatments, two[0]);
        }
        let foretold = Foretold { property: Property::Ph, low: -1.0, likely: 0.0, high: f64::MAX, unit: Unit::Percent };
        let asked = Trial { foretold: vec![foretold], ..trial(text.replace("Other", "pH")) };
        if let Ok(found) = evaluate(&asked) {
            sound(&found)?;
        }
    }

    /// No text makes it stop, and what is refused says what to do.
    #[test]
    fn any_text_is_judged_or_refused(text in "[a-z0-9,;\t\n .<>-]{0,300}") {
        match evaluate(&trial(text)) {
            Ok(found) => sound(&found)?,
            Err(refused) => prop_assert!(refused.message.len() > 20 && refused.message.ends_with('.')),
        }
    }
}

fn sound(found: &Evaluation) -> Result<(), TestCaseError> {
    let json = serde_json::to_string(found).expect("JSON");
    // JSON writes what is no number as null, as it does what is not there.
    // The columns list what was typed, which may be the word NaN.
    let printed = format!("{:?}", found.results);
    prop_assert!(
        !printed.contains("NaN") && !printed.contains("inf,") && !printed.contains("inf)"),
        "{}",
        printed
    );
    prop_assert!(json.len() > 10);
    for of in found.results.iter().flat_map(|r: &TrialResult| &r.comparisons) {
        let excludes = of.guarded.is_some_and(|g| g.low > 0.0 || g.high < 0.0);
        let arrow = matches!(of.verdict, Verdict::Rose | Verdict::Fell);
        prop_assert!(!arrow || excludes, "{:?}", of);
        prop_assert!(of.interval.is_none_or(|i| i.low <= i.value && i.value <= i.high));
        prop_assert!(of.text.ends_with('.'), "{}", of.text);
        prop_assert!(of.p.is_none_or(|p| (0.0..=1.0).contains(&p)));
        if let (Some(narrow), Some(wide)) = (of.interval, of.guarded) {
            prop_assert!(wide.low <= narrow.low + 1e-9 && narrow.high <= wide.high + 1e-9);
        }
    }
    Ok(())
}

fn sample(name: &str) -> Evaluation {
    let path = project().join("public/samples/trials").join(name);
    judged(std::fs::read_to_string(path).expect("the sample"))
}

/// The likeliest story in a trial that was made so: pH and potassium rise, nitrate falls, and
/// organic matter is left open. Intervals by R 4.2.2, `t.test(paired = TRUE)` (derived).
#[test]
fn the_clear_trial_is_clear() {
    let found = sample("clear.csv");
    assert_eq!((found.design, found.blocks, found.plots), (Design::Paired, 6, 12));
    assert_eq!(found.headline, "2 rose, 1 fell, and 1 can't be told with these plots.");
    let said: Vec<(Verdict, &str)> =
        found.results.iter().map(|r| (r.comparisons[0].verdict, r.label.as_str())).collect();
    assert_eq!(
        said,
        [
            (Verdict::Rose, "pH"),
            (Verdict::Rose, "potassium"),
            (Verdict::Fell, "nitrate-N"),
            (Verdict::CantTell, "organic matter")
        ]
    );
    let text = &found.results[0].comparisons[0].text;
    assert_eq!(
        text,
        "pH rose by 0.388 (0.349 to 0.428) with “charged biochar” beside “untreated”."
    );
    let of = found.results[0].comparisons[0].interval.unwrap();
    assert!(
        (of.low - 0.348_834_010_809).abs() < 1e-10 && (of.high - 0.427_832_655_858).abs() < 1e-10
    );
    let of = found.results[3].comparisons[0].interval.unwrap();
    assert!((of.low + 0.192_867_096_406).abs() < 1e-10 && (of.high - 0.406_200_429_7).abs() < 1e-9);
}

#[test]
fn where_nothing_can_be_told_that_is_said_with_what_could_have_been_seen() {
    let found = sample("nothing-to-tell.csv");
    assert_eq!(found.design, Design::Unpaired);
    assert_eq!(found.headline, "Nothing can be told with these plots.");
    for result in &found.results {
        let of = &result.comparisons[0];
        assert_eq!(of.verdict, Verdict::CantTell);
        assert!(of.text.contains("can't tell with these plots"), "{}", of.text);
        assert!(of.text.contains("would have shown in 80 of 100 such trials"), "{}", of.text);
        assert!(of.smallest.unwrap() > of.difference.abs());
        assert!((of.exact.as_ref().unwrap().least - 0.1).abs() < 1e-12);
    }
    // Decimal commas were read.
    assert!((found.results[0].groups[0].readings[0].value - 6.3).abs() < 1e-12);
}

#[test]
fn one_plot_of_a_treatment_shows_nothing() {
    let found = judged("Sample,pH,Potassium ppm\nUntreated,6.0,100\nBiochar,6.3,140\n");
    assert_eq!(found.design, Design::NoReplicates);
    assert!(found.stated.contains("Take at least four plots"), "{}", found.stated);
    let of = only(&found);
    assert_eq!((of.verdict, of.interval), (Verdict::NoReplicates, None));
    assert!(of.text.contains("One plot of a treatment shows nothing."), "{}", of.text);
}

#[test]
fn readings_all_alike_are_no_proof() {
    let found = judged("Treatment,pH\nnone,6\nnone,6\nnone,6\nchar,6\nchar,6\nchar,6\n");
    assert!(only(&found).text.ends_with("They all read the same."), "{}", only(&found).text);
    let found = judged("Treatment,pH\nnone,6\nnone,6\nnone,6\nchar,7\nchar,7\nchar,7\n");
    let of = only(&found);
    assert_eq!((of.verdict, of.interval), (Verdict::CantTell, None));
    assert!(of.text.contains("Their scatter is not known"), "{}", of.text);
    // Three of one, alike: the interval excludes nought, lots could do it in one trial of ten.
    let found = judged("Treatment,pH\nnone,6\nnone,6\nnone,6\nchar,7.2\nchar,7.1\nchar,7.0\n");
    let of = only(&found);
    assert!(of.interval.unwrap().low > 0.0 && of.verdict == Verdict::CantTell, "{}", of.text);
}

#[test]
fn results_below_a_limit_count_as_half_and_too_many_bar_a_verdict() {
    let rows = |few: &str| {
        let mut text = String::from("Treatment,Nitrate-N (mg/kg)\n");
        for at in 0..8 {
            let none = if at == 0 { few.to_string() } else { format!("{}", 20 + at % 3) };
            text += &format!("none,{none}\nchar,{}\n", 40 + at % 4);
        }
        text
    };
    let found = judged(rows("<19"));
    let result = &found.results[0];
    assert!((result.groups[0].readings[0].value - 9.5).abs() < 1e-12);
    assert!((result.limits_share - 1.0 / 16.0).abs() < 1e-12);
    assert!(
        result.notes[0].starts_with("6.2 % of the results lie below or above a limit. Below, half")
    );
    assert_eq!(only(&found).verdict, Verdict::Rose);
    let many = rows("<19").replace("none,21", "none,<19");
    let found = judged(many);
    assert_eq!(only(&found).verdict, Verdict::TooManyAtLimit);
    assert!(only(&found).text.contains("at most 15 % may"), "{}", only(&found).text);
}

#[test]
fn a_verdict_that_hangs_on_the_limit_is_held_back() {
    let text = "Treatment,Nitrate-N (mg/kg)\nnone,30\nnone,31\nnone,29\nnone,30.5\nnone,<31\nchar,33\nchar,33.5\nchar,32\nchar,33.2\nchar,32.6\nchar,33.1\n";
    let found = judged(text);
    let of = only(&found);
    assert_eq!(of.verdict, Verdict::CantTell);
}

#[test]
fn a_slip_is_named_and_used() {
    let text = "Plot,Treatment,pH\nP1,none,6.1\nP2,none,6.2\nP3,char,6.3\nP4,char,6.25\nP5,char,9.9\nP6,none,6.15\nP7,none,6.12\nP8,char,6.21\nP9,char,6.33\nP10,none,6.24\n";
    let found = judged(text);
    let result = &found.results[0];
    assert_eq!(result.outliers.len(), 1);
    assert!(
        result.outliers[0].text.contains("“P5”")
            && result.outliers[0].text.contains("used all the same")
    );
    assert_eq!(result.groups.iter().map(|g| g.n).sum::<usize>(), 10);
}

#[test]
fn two_reports_of_the_same_plots_are_before_and_after() {
    let before = "Sample,pH,K ppm\nControl 1,6.0,100\nControl 2,6.1,104\nControl 3,6.05,98\nChar 1,6.0,97\nChar 2,5.9,101\nChar 3,6.1,103\n";
    let after = "Sample,pH,K mg/kg\nChar 1,6.4,150\nChar 2,6.42,149\nChar 3,6.55,156\nControl 1,6.02,99\nControl 2,6.07,106\nControl 3,6.1,97\n";
    let asked = Trial { later: Some(after.into()), ..trial(before) };
    let found = evaluate(&asked).unwrap();
    assert_eq!(found.design, Design::BeforeAfterWithControl);
    let potassium = found.results.iter().find(|r| r.property == Some(Property::Potassium)).unwrap();
    // By hand: changes of 53, 48, 53 and −1, 2, −1.
    assert!((potassium.comparisons[0].difference - (154.0 / 3.0)).abs() < 1e-9);
    assert_eq!(potassium.groups[1].readings[0].before, Some(97.0));
}

/// What Dunnett's test would take too long for is judged by a bound, which is said; and never
/// more is shown by it.
#[test]
fn many_treatments_of_very_unequal_numbers_are_judged_by_a_bound() {
    let of = |plots: fn(usize) -> usize| {
        let mut draw = Draw(3);
        let mut rows = String::from("Treatment,Yield\n");
        for treatment in 0..20 {
            let name =
                if treatment == 0 { "untreated".into() } else { format!("char {treatment}") };
            for _ in 0..plots(treatment) {
                rows += &format!("{name},{:.3}\n", 20.0 + draw.normal());
            }
        }
        judged(rows).results.remove(0)
    };
    let (unequal, equal) = (of(|treatment| 3 + 4 * treatment), of(|_| 20));
    assert_eq!(equal.comparisons[0].test, Some(Test::Dunnett));
    assert!(unequal.comparisons.iter().all(|c| c.test == Some(Test::Sidak)));
    assert!(unequal.comparisons[0].why.contains("unequal numbers"));
    // Šidák's probability of a single comparison is no smaller than that of 19 independent ones.
    for of in &unequal.comparisons {
        let alone = t_both_tails(of.t.unwrap(), of.df.unwrap());
        let bound = 1.0 - (1.0 - alone).powi(19);
        assert!((of.p.unwrap() - bound).abs() < 1e-9);
    }
}

/// Plots that are skewed on purpose, and too few to tell.
#[test]
fn a_scatter_that_is_not_normal_is_told_where_there_are_plots_enough() {
    let of = |plots: usize, skew: fn(f64) -> f64| {
        let mut draw = Draw(7);
        let mut rows = String::from("Treatment,Yield\n");
        for at in 0..plots {
            rows += &format!("{},{:.4}\n", ["none", "char"][at % 2], skew(draw.normal()));
        }
        let found = judged(rows);
        found.results[0].normality.clone().map(|look| look.text)
    };
    let even = of(40, |z| 20.0 + z).unwrap();
    assert!(even.starts_with("Nothing speaks against a normal scatter"), "{even}");
    let skewed = of(40, |z| (2.0 * z).exp()).unwrap();
    assert!(skewed.starts_with("The scatter does not look normal"), "{skewed}");
    assert_eq!(of(10, |z| (2.0 * z).exp()), None);
}

#[test]
fn two_reports_of_one_bed_show_its_change_and_conclude_nothing() {
    let before =
        "Soil test, back bed\nMethod: Mehlich-3\npH 6.0\nPhosphorus 40 ppm\nPotassium 100 ppm\n";
    let after = "Soil test, the bed at the back\nMethod: Mehlich-3\npH 6.4\nPhosphorus 40 ppm\nPotassium 150 mg/kg\n";
    let of = |after: &str| evaluate(&Trial { later: Some(after.into()), ..trial(before) }).unwrap();
    let found = of(after);
    assert_eq!(found.design, Design::NoReplicates);
    let text = |property| {
        let result = found.results.iter().find(|r| r.property == Some(property)).unwrap();
        result.comparisons[0].text.clone()
    };
    assert!(
        text(Property::Potassium)
            .starts_with("Potassium is 50\u{a0}mg/kg higher after than before.")
    );
    assert!(text(Property::Ph).starts_with("pH is 0.40 higher"), "{}", text(Property::Ph));
    assert!(text(Property::Phosphorus).starts_with("Phosphorus is the same before and after."));
    assert!(found.results.iter().all(|r| r.comparisons[0].verdict == Verdict::NoReplicates));
    // What was extracted in another way is not subtracted.
    let found = of(&after.replace("Mehlich-3", "Olsen"));
    let phosphorus =
        found.results.iter().find(|r| r.property == Some(Property::Phosphorus)).unwrap();
    assert!(phosphorus.comparisons.is_empty(), "{:?}", phosphorus.comparisons);
    assert!(
        found.notes.iter().any(|note| note.contains("measured in two ways")),
        "{:?}",
        found.notes
    );
}

/// What the saved reports hold is written as a table and read again as plots.
#[test]
fn readings_written_as_a_table_are_read_as_the_same() {
    let of = |text: &str| {
        let report = report::open(text.as_bytes()).and_then(|grid| report::read(&grid)).unwrap();
        let case = Case { report, ..Case::default() };
        let sample = |at: usize| (case.report.samples[at].name.clone(), judged_readings(&case, at));
        export::table(&(0..case.report.samples.len()).map(sample).collect::<Vec<_>>())
    };
    let text = "Sample,pH,Mehlich-3 P (ppm),Olsen P (ppm),K ppm,Organic matter %\nNorth,6.1,40,<2,120,3.2\nSouth,6.5,44,18,,3.4\n";
    let table = of(text);
    assert_eq!(of(&table), table);
    assert_eq!(table.lines().count(), 3, "{table}");
    let later = table.replace("40", "60").replace("44", "61");
    let found = evaluate(&Trial { later: Some(later), ..trial(table) }).unwrap();
    assert_eq!(found.design, Design::BeforeAfter);
    let heads: Vec<_> = found.results.iter().map(|r| (r.property, r.comparisons.len())).collect();
    assert_eq!(heads.len(), 5, "{heads:?}");
    let risen = found.results.iter().find(|r| r.head.contains("Mehlich")).unwrap();
    assert!((risen.comparisons[0].difference - 18.5).abs() < 1e-9);
}

#[test]
fn a_saved_trial_comes_back_and_a_newer_one_is_named() {
    let asked = Trial {
        text: "Treatment,pH\na,1\nb,2\n".into(),
        later: Some("x".into()),
        roles: vec![RoleOf { head: "pH".into(), role: Role::Reading }],
        only: vec![Only { head: "pH".into(), values: vec!["1".into()] }],
        control: Some("a".into()),
        every_pair: true,
        design: Some(Design::Unpaired),
        foretold: vec![Foretold {
            property: Property::Ph,
            low: 0.1,
            likely: 0.2,
            high: 0.3,
            unit: Unit::None,
        }],
        measures: Measures::Us,
        ..Trial::default()
    };
    let json = serde_json::to_string(&asked).unwrap();
    assert_eq!(serde_json::from_str::<Trial>(&json).unwrap(), asked);
    assert!(serde_json::from_str::<Trial>(r#"{"texts":""}"#).is_err());
    let newer = serde_json::from_str::<Trial>(r#"{"version":9}"#).unwrap_err().to_string();
    assert!(newer.contains("newer than this program"), "{newer}");
}

#[test]
fn a_wrong_guess_is_put_right() {
    let text = "Soil,Feed,pH\nsand,none,6\nsand,char,6.4\nsand,none,6.1\nsand,char,6.3\nclay,none,6.2\nclay,char,6.9\nclay,none,6.3\nclay,char,6.8\n";
    let mut asked = trial(text);
    assert_eq!(evaluate(&asked).unwrap().design, Design::SplitPlot);
    let role = |head: &str, role| RoleOf { head: head.into(), role };
    asked.roles = vec![role("Feed", Role::Treatment), role("Soil", Role::Block)];
    assert_eq!(evaluate(&asked).unwrap().design, Design::Paired);
    asked.roles = vec![role("Feed", Role::Treatment), role("Soil", Role::Treatment)];
    let both = evaluate(&asked).unwrap();
    assert_eq!(both.treatments.len(), 4);
    asked.roles = vec![role("Feed", Role::Treatment)];
    asked.only = vec![Only { head: "Soil".into(), values: vec!["clay".into()] }];
    let clay = evaluate(&asked).unwrap();
    assert_eq!((clay.plots, clay.design), (4, Design::Unpaired));
    asked.roles = vec![role("gone", Role::Block)];
    assert!(evaluate(&asked).unwrap_err().message.contains("“gone”"));
}

#[test]
fn more_than_can_be_judged_is_said() {
    let heads: String = (0..=MOST_PROPERTIES).map(|at| format!(",r{at}")).collect();
    let row = ",1".repeat(MOST_PROPERTIES + 1);
    let wide = evaluate(&trial(format!("Treatment{heads}\na{row}\nb{row}\n"))).unwrap_err();
    assert!(wide.message.contains("61 columns of results, and at most 60"), "{wide}");
    let many: String = (0..=MOST_TREATMENTS).map(|at| format!("t{at},1\nt{at},2\n")).collect();
    let many = evaluate(&trial(format!("Treatment,pH\n{many}"))).unwrap_err();
    assert!(many.message.contains("21 treatments, and at most 20"), "{many}");
    assert!(!many.columns.is_empty());
}

#[test]
fn the_next_trial_is_laid_out_whole() {
    let wish = Wish {
        property: Some(Property::Potassium),
        difference_percent: 40.0,
        replicates: Some(4),
        place: Some(Place::Pot { litres: 5.0 }),
        share_percent: 10.0,
        scoop_litres: 0.25,
        start: emberloam_engine::day::parse("2027-04-20"),
        tested: vec!["pH".into(), "K, mg/kg".into()],
        ..Wish::default()
    };
    let next = next_trial(&wish).unwrap();
    assert_eq!((next.plots.len(), next.sheet.len()), (8, 32));
    assert_eq!(next.amounts.unwrap().scoops, 2.0);
    assert_eq!(next.sheet[8].day, "2027-04-27");
    assert!(layout_csv(&next.plots).starts_with("Plot,Block,Treatment\n1,1,"));
    let sheet = sheet_csv(&next.sheet, &wish.tested);
    assert!(sheet.starts_with("Plot,Block,Treatment,When,Day,pH,\"K, mg/kg\"\n"), "{sheet}");
    assert_eq!(sheet.lines().count(), 33);
    // More scatter takes more plots, and a larger difference fewer.
    let [low, high] = next.replicates_low_high;
    assert!(
        low.unwrap() <= next.replicates.unwrap() && next.replicates.unwrap() <= high.unwrap_or(999)
    );
    let larger = next_trial(&Wish { difference_percent: 80.0, ..wish.clone() }).unwrap();
    assert!(larger.replicates < next.replicates);
    // A sheet that was filled in is read as a trial.
    let laid_out = layout_csv(&next.plots);
    let filled = laid_out.lines().enumerate().map(|(at, line)| {
        if at == 0 {
            format!("{line},pH\n")
        } else {
            format!("{line},{}\n", 6.0 + at as f64 / 10.0)
        }
    });
    let found = judged(filled.collect::<String>());
    assert_eq!((found.design, found.plots), (Design::Paired, 8));
}
