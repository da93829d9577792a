//! The trial against NIST's certified values, mpmath, scipy and R.

use std::collections::BTreeMap;
use std::path::PathBuf;
use std::process::Command;
use std::sync::LazyLock;

use emberloam_engine::quantity::Band;
use emberloam_engine::soil::Property;
use emberloam_engine::trial::{
    Comparison, Design, Dunnett, Evaluation, Interval, Role, RoleOf, StudentizedRange, Test, Trial,
    TrialResult, Verdict, calibrate, evaluate, f_tail, holm, noncentral_t_below, one_way, power,
    rank_sum, replicates, shapiro_wilk, signed_rank, smallest_shift, t_both_tails, t_critical,
    usual_spread,
};
use serde_json::Value;

fn judged(text: &str) -> Evaluation {
    judged_as(&Trial { text: text.into(), ..Trial::default() })
}

fn judged_as(trial: &Trial) -> Evaluation {
    evaluate(trial).unwrap_or_else(|refused| panic!("{refused}"))
}

fn result<'e>(found: &'e Evaluation, head: &str) -> &'e TrialResult {
    found.results.iter().find(|result| result.head == head).unwrap_or_else(|| panic!("no {head}"))
}

fn against<'e>(found: &'e Evaluation, head: &str, treatment: &str) -> &'e Comparison {
    let named = |c: &&Comparison| found.treatments[c.treatment].name == treatment;
    result(found, head).comparisons.iter().find(named).unwrap_or_else(|| panic!("no {treatment}"))
}

/// Right digits: the logarithm of the relative error.
fn digits(found: f64, right: f64) -> f64 {
    if found == right { 16.0 } else { -((found - right) / right).abs().log10() }
}

#[track_caller]
fn close(what: &str, found: f64, right: f64, least: f64) {
    let right_digits = digits(found, right);
    assert!(right_digits >= least, "{what}: {found} is {right} to {right_digits:.1} digits only");
}

fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("outside/trial")
}

fn output(mut command: Command, how: &str) -> String {
    let done = command.output().unwrap_or_else(|why| panic!("{how} ({why})"));
    let trouble = String::from_utf8_lossy(&done.stderr);
    assert!(done.status.success(), "{how} {trouble}");
    String::from_utf8(done.stdout).expect("text")
}

/// What scipy and mpmath say.
static REFERENCE: LazyLock<Value> = LazyLock::new(|| {
    let own = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../target/python/bin/python");
    let mut command = Command::new(if own.exists() { own } else { PathBuf::from("python3") });
    command.arg(folder().join("reference.py"));
    let how = "Python with scipy and mpmath is needed for this check. Run tests/run, which \
               installs them, or: python3 -m venv target/python && target/python/bin/pip install \
               scipy mpmath.";
    serde_json::from_str(&output(command, how)).expect("JSON")
});

/// What R says: tables by name, numbers by name.
static CLASSIC: LazyLock<(BTreeMap<String, String>, BTreeMap<String, f64>)> = LazyLock::new(|| {
    let mut command = Command::new("Rscript");
    command.arg(folder().join("classic.R"));
    let how = "R is needed for this check. Run tests/run, which installs it, or: apt-get install \
               r-base-core r-cran-mass r-cran-boot r-cran-multcomp.";
    let (mut tables, mut numbers) = (BTreeMap::new(), BTreeMap::new());
    let mut open: Option<(String, String)> = None;
    for line in output(command, how).lines() {
        if let Some(name) = line.strip_prefix("#data ") {
            open = Some((name.trim().into(), String::new()));
        } else if line.starts_with("#end") {
            tables.extend(open.take());
        } else if let Some((_, text)) = &mut open {
            text.push_str(line);
            text.push('\n');
        } else if let Some(all) = line.strip_prefix("holm ") {
            for (at, number) in all.split_whitespace().enumerate() {
                numbers.insert(format!("holm.{at}"), number.parse().expect("a number"));
            }
        } else if let Some((name, number)) = line.trim().rsplit_once(' ') {
            numbers.insert(name.into(), number.parse().expect("a number"));
        }
    }
    (tables, numbers)
});

fn r_table(name: &str) -> &'static str {
    CLASSIC.0.get(name).unwrap_or_else(|| panic!("R gave no table {name}"))
}

fn r(name: &str) -> f64 {
    *CLASSIC.1.get(name).unwrap_or_else(|| panic!("R gave no {name}"))
}

fn numbers(of: &Value) -> Vec<f64> {
    of.as_array().expect("a list").iter().map(|v| v.as_f64().expect("a number")).collect()
}

fn text_of(groups: &[(&str, Vec<f64>)]) -> String {
    let mut text = String::from("Treatment,Result\n");
    for (name, values) in groups {
        values.iter().for_each(|v| text += &format!("{name},{v}\n"));
    }
    text
}

/// Source: NIST Statistical Reference Datasets, one-way analysis of variance (opened, in the
/// files that scipy carries). Digits of F: 13 at the lower level of difficulty, 10 at the
/// average one, and 4 at the higher one, where the data themselves don't fit a double.
/// SmLs03, 06 and 09 hold 18,009 rows, more than a table may have: they go to the analysis itself.
#[test]
fn certified_analyses_of_variance() {
    let mut seen = 0;
    for set in REFERENCE["nist"].as_array().expect("sets") {
        let name = set["name"].as_str().expect("a name");
        let rows = set["rows"].as_array().expect("rows");
        let mut text = String::from("Treatment,Result\n");
        for row in rows {
            let [group, value] = [&row[0], &row[1]].map(|cell| cell.as_str().expect("a cell"));
            text += &format!("group {group},{value}\n");
        }
        let trial = Trial { text, every_pair: true, ..Trial::default() };
        let least = match name {
            "SmLs01" | "SmLs02" | "SmLs03" | "SiRstv" => 13.0,
            "SmLs07" | "SmLs08" | "SmLs09" => 4.0,
            _ => 10.0,
        };
        if rows.len() > emberloam_engine::trial::MOST_PLOTS {
            let mut groups: BTreeMap<&str, Vec<f64>> = BTreeMap::new();
            for row in rows {
                let value = row[1].as_str().expect("a cell").parse().expect("a number");
                groups.entry(row[0].as_str().expect("a cell")).or_default().push(value);
            }
            let found = one_way(&groups.into_values().collect::<Vec<_>>()).expect("an analysis");
            println!("{name}: {:.1} digits", digits(found.f, set["f"].as_f64().unwrap()));
            close(name, found.f, set["f"].as_f64().unwrap(), least);
            close(name, found.error, set["error"].as_f64().unwrap(), least);
            assert_eq!(found.df, set["df"].as_f64().unwrap());
            assert_eq!(found.error_df, set["error_df"].as_f64().unwrap());
            seen += 1;
            continue;
        }
        let found = judged_as(&trial);
        let of = &found.results[0];
        seen += 1;
        let Some(overall) = of.overall else {
            // Two groups: t² of the equal scatter is F; Welch's has the same difference.
            let (a, b) = (&of.groups[0], &of.groups[1]);
            let pooled = (a.sd.unwrap().powi(2) + b.sd.unwrap().powi(2)) / 2.0;
            let f = (a.mean - b.mean).powi(2) / (pooled * 2.0 / a.n as f64);
            close(name, f, set["f"].as_f64().unwrap(), least);
            close(name, pooled, set["error"].as_f64().unwrap(), least);
            continue;
        };
        println!("{name}: {:.1} digits", digits(overall.f, set["f"].as_f64().unwrap()));
        close(name, overall.f, set["f"].as_f64().unwrap(), least);
        close(name, overall.error, set["error"].as_f64().unwrap(), least);
        assert_eq!(overall.df, set["df"].as_f64().unwrap());
        assert_eq!(overall.error_df, set["error_df"].as_f64().unwrap());
    }
    assert_eq!(seen, 11);
}

/// Source: NIST Statistical Reference Datasets, univariate summary statistics, NumAcc1 to 4
/// (second-hand: how they are made, with their exact means and standard deviations).
#[test]
fn certified_means_and_standard_deviations() {
    let alternating = |base: &str, a: &str, b: &str| {
        let mut all = vec![base.to_string()];
        all.extend((0..500).flat_map(|_| [a.to_string(), b.to_string()]));
        all
    };
    let sets: [(Vec<String>, f64, f64, f64); 4] = [
        (["10000001", "10000003", "10000002"].map(String::from).to_vec(), 10_000_002.0, 1.0, 15.0),
        (alternating("1.2", "1.1", "1.3"), 1.2, 0.1, 14.0),
        (alternating("1000000.2", "1000000.1", "1000000.3"), 1_000_000.2, 0.1, 9.4),
        (alternating("10000000.2", "10000000.1", "10000000.3"), 10_000_000.2, 0.1, 8.2),
    ];
    for (values, mean, sd, least) in sets {
        let mut text = String::from("Treatment,Result\nother,1\nother,2\n");
        values.iter().for_each(|value| text += &format!("set,{value}\n"));
        let found = judged(&text);
        let group = &found.results[0].groups[1];
        close("mean", group.mean, mean, 15.0);
        close("sd", group.sd.unwrap(), sd, least);
    }
}

/// Source: NIST Statistical Reference Datasets, univariate summary statistics: the certified means
/// and standard deviations of Lew and Michelso (second-hand). Lew's readings are in
/// `open-data/nist_univariate` (second-hand); Michelso's are Michelson's of 1879, which R has as
/// `morley` less 299 (opened at test time).
#[test]
fn certified_readings_of_a_beam_and_of_light() {
    let lew = std::fs::read_to_string(
        emberloam_tests::project().join("tests/open-data/nist_univariate/Lew.txt"),
    );
    let lew: Vec<String> = lew.expect("the readings").lines().map(String::from).collect();
    let michelson: Vec<String> = r_table("michelso").lines().skip(1).map(String::from).collect();
    for (values, many, mean, sd, least) in [
        (lew, 200, -177.435, 277.332168044316, 15.0),
        (michelson, 100, 299.8524, 0.0790105478190518, 13.0),
    ] {
        assert_eq!(values.len(), many);
        let mut text = String::from("Treatment,Result\nother,1\nother,2\n");
        values.iter().for_each(|value| text += &format!("set,{value}\n"));
        let group = &judged(&text).results[0].groups[1];
        println!("{many}: {:.1} digits", digits(group.sd.unwrap(), sd));
        close("mean", group.mean, mean, 15.0);
        close("sd", group.sd.unwrap(), sd, least);
    }
}

/// Source: scipy 1.17 `shapiro` (opened as code), whose normal quantile holds 7 digits; and R's
/// `shapiro.test` (opened as code) of its classic data, one of them by way of a whole trial.
#[test]
fn normality_by_scipy_and_r() {
    let mut seen = 0;
    for row in REFERENCE["normal"].as_array().expect("rows") {
        let [w, p, values @ ..] = &numbers(row)[..] else { panic!("two numbers and more") };
        let (found, chance) = shapiro_wilk(values).expect("enough that differ");
        close("W", found, *w, 6.5);
        if *p > 1e-8 {
            close("p of W", chance, *p, 4.5);
        }
        seen += 1;
    }
    assert!(seen >= 30, "{seen}");
    let readings = |name: &str, at: usize| -> Vec<f64> {
        let rows = r_table(name).lines().skip(1);
        rows.map(|row| row.split(',').nth(at).unwrap().parse().unwrap()).collect()
    };
    for (name, values) in [("morley", readings("michelso", 0)), ("sleep", readings("sleep", 2))] {
        let (w, p) = shapiro_wilk(&values).unwrap();
        close(name, w, r(&format!("shapiro.{name}.w")), 9.0);
        close(name, p, r(&format!("shapiro.{name}.p")), 8.0);
    }
    let found = judged(r_table("PlantGrowth"));
    let look = found.results[0].normality.clone().expect("30 plots are enough");
    close("residuals", look.w, r("shapiro.PlantGrowth.w"), 9.0);
    close("residuals", look.p, r("shapiro.PlantGrowth.p"), 8.0);
    // Ten pairs are too few to tell.
    assert_eq!(judged(r_table("sleep")).results[0].normality, None);
    assert_eq!(shapiro_wilk(&[1.0, 1.0, 1.0, 1.0]), None);
}

/// Source: mpmath, incomplete beta function to 40 digits (opened as code).
#[test]
fn t_and_f_by_mpmath() {
    for row in REFERENCE["t"].as_array().expect("rows") {
        let [t, df, right] = numbers(row)[..] else { panic!("three numbers") };
        close("t", t_both_tails(t, df), right, 11.5);
        if right < 0.99 {
            close("critical t", t_critical(right, df), t, 11.0);
        }
    }
    for row in REFERENCE["f"].as_array().expect("rows") {
        let [f, of, within, right] = numbers(row)[..] else { panic!("four numbers") };
        if right > 1e-300 {
            close("F", f_tail(f, of, within), right, 11.0);
        }
    }
}

/// Source: mpmath, the double integrals to 20 digits by `trial/truth.py` (derived).
#[test]
fn studentized_range_dunnett_and_shifted_t_by_mpmath() {
    for (groups, df, q, right) in [
        (3, 2.0, 8.330_782_551_189_83, 0.050_000_001_076_676_18),
        (8, 24.0, 4.683_752_013_057_66, 0.050_000_007_941_615_26),
        (3, 20.0, 3.5, 0.055_891_849_081_748_99),
        (20, 38.0, 5.0, 0.094_168_534_328_518_12),
        (5, 1.0, 20.0, 0.092_491_629_098_726_49),
    ] {
        close("range", StudentizedRange::new(groups, df).tail(q), right, 12.0);
        close("critical range", StudentizedRange::new(groups, df).critical(right), q, 12.0);
    }
    let of = Dunnett::new(4, &[4, 6, 3], 13.0);
    close("Dunnett", of.tail(2.3), 0.094_040_400_441_684, 12.0);
    close("critical Dunnett", of.critical(0.094_040_400_441_684), 2.3, 12.0);
    let of = Dunnett::new(2, &[8, 8, 8, 3], 17.0);
    close("Dunnett", of.tail(2.7), 0.038_945_236_317_589_7, 12.0);
    close("shifted t", noncentral_t_below(2.0, 3.0, 4.0), 0.047_551_027_780_921_63, 11.5);
    close("shifted t", noncentral_t_below(12.0, 1.0, 9.0), 0.454_816_522_068_538_5, 12.0);
}

/// Source: Student's t itself (derived): two groups and one treatment are the same thing, for any
/// degrees of freedom.
#[test]
fn a_range_of_two_and_a_dunnett_of_one_are_students_t() {
    for df in [1.0, 2.0, 3.7, 9.0, 40.0, 900.0] {
        for t in [0.3, 1.0, 2.5, 6.0] {
            let right = t_both_tails(t, df);
            let range = StudentizedRange::new(2, df).tail(t * 2f64.sqrt());
            close("range of two", range, right, if right > 1e-6 { 9.0 } else { 6.0 });
            let one = Dunnett::new(5, &[7], df).tail(t);
            close("Dunnett of one", one, right, if right > 1e-6 { 9.0 } else { 6.0 });
        }
    }
}

/// Source: scipy 1.17, `studentized_range` and `nct` (opened as code).
#[test]
fn ranges_and_shifted_t_by_scipy() {
    for row in REFERENCE["range"].as_array().expect("rows") {
        let [q, k, df, right] = numbers(row)[..] else { panic!("four numbers") };
        close("range", StudentizedRange::new(k as usize, df).tail(q), right, 9.0);
    }
    for row in REFERENCE["shifted"].as_array().expect("rows") {
        let [t, df, shift, right] = numbers(row)[..] else { panic!("four numbers") };
        let found = noncentral_t_below(t, df, shift);
        assert!((found - right).abs() < 1e-11, "{t} {df} {shift}: {found} {right}");
    }
}

/// Source: scipy 1.17 on drawn data (opened as code): `ttest_ind` of Welch, `mannwhitneyu`,
/// `permutation_test`.
#[test]
fn two_treatments_by_scipy() {
    for case in REFERENCE["two"].as_array().expect("cases") {
        let [a, b] = [numbers(&case["a"]), numbers(&case["b"])];
        let found = judged(&text_of(&[("none", a.clone()), ("char", b.clone())]));
        let of = &found.results[0].comparisons[0];
        assert_eq!((of.test, found.design), (Some(Test::Welch), Design::Unpaired));
        let right = |name: &str| case[name].as_f64().expect("a number");
        close("t", of.t.unwrap(), right("t"), 10.0);
        close("df", of.df.unwrap(), right("df"), 10.0);
        close("p", of.p.unwrap(), right("p"), 10.0);
        let Interval { low, high, .. } = of.interval.unwrap();
        close("low", low, right("low"), 9.0);
        close("high", high, right("high"), 9.0);
        close("ranks", rank_sum(&b, &a), right("rank"), 11.0);
        let lots = emberloam_engine::trial::permutation(&b, &a);
        lots.into_iter().for_each(|p| close("lots", p, right("lots"), 11.0));
    }
}

/// Source: scipy 1.17 on drawn data (opened as code): `ttest_rel`, `wilcoxon`.
#[test]
fn pairs_by_scipy() {
    for case in REFERENCE["pairs"].as_array().expect("cases") {
        let [a, b] = [numbers(&case["a"]), numbers(&case["b"])];
        let mut text = String::from("Pair,Treatment,Result\n");
        for (at, (a, b)) in a.iter().zip(&b).enumerate() {
            text += &format!("{at},none,{a}\n{at},char,{b}\n");
        }
        let found = judged(&text);
        let of = &found.results[0].comparisons[0];
        assert_eq!((of.test, found.design), (Some(Test::Paired), Design::Paired));
        let right = |name: &str| case[name].as_f64().expect("a number");
        close("t", of.t.unwrap(), right("t"), 10.0);
        close("p", of.p.unwrap(), right("p"), 10.0);
        let Interval { low, high, .. } = of.interval.unwrap();
        close("low", low, right("low"), 9.0);
        close("high", high, right("high"), 9.0);
        let differences: Vec<f64> = a.iter().zip(&b).map(|(a, b)| b - a).collect();
        close("ranks", signed_rank(&differences), right("rank"), 11.0);
    }
}

/// Source: scipy 1.17 on drawn data (opened as code): `f_oneway`, `tukey_hsd`, and `dunnett`,
/// whose integration is by chance and good to three or four digits.
#[test]
fn several_treatments_by_scipy() {
    for case in REFERENCE["several"].as_array().expect("cases") {
        let groups: Vec<Vec<f64>> =
            case["groups"].as_array().expect("groups").iter().map(numbers).collect();
        let names = ["none", "a", "b", "c"];
        let named: Vec<(&str, Vec<f64>)> = names.iter().copied().zip(groups).collect();
        let text = text_of(&named);
        let found = judged(&text);
        let overall = found.results[0].overall.unwrap();
        close("F", overall.f, case["f"].as_f64().unwrap(), 10.0);
        close("p of F", overall.p, case["p"].as_f64().unwrap(), 10.0);
        let dunnett = numbers(&case["dunnett"]);
        for (of, right) in found.results[0].comparisons.iter().zip(dunnett) {
            assert_eq!(of.test, Some(Test::Dunnett));
            assert!((of.p.unwrap() - right).abs() < 5e-4, "{:?} {right}", of.p);
        }
        let every = judged_as(&Trial { text, every_pair: true, ..Trial::default() });
        for of in &every.results[0].comparisons {
            assert_eq!(of.test, Some(Test::TukeyKramer));
            let right = case["tukey"][of.treatment][of.control].as_f64().unwrap();
            assert!((of.p.unwrap() - right).abs() < 1e-9, "{:?} {right}", of.p);
        }
    }
}

/// Source: R, PlantGrowth (Dobson 1983): `t.test`, `aov`, `TukeyHSD`, multcomp's Dunnett, whose
/// integration is by chance, and `wilcox.test` (opened as code).
#[test]
fn plant_growth_by_r() {
    let text = r_table("PlantGrowth");
    let two: String =
        text.lines().filter(|line| !line.starts_with("trt1")).map(|l| format!("{l}\n")).collect();
    let found = judged(&two);
    let of = &found.results[0].comparisons[0];
    close("t", of.t.unwrap(), r("welch.t"), 12.0);
    close("df", of.df.unwrap(), r("welch.df"), 12.0);
    close("p", of.p.unwrap(), r("welch.p"), 12.0);
    close("low", of.interval.unwrap().low, r("welch.low"), 11.0);
    close("high", of.interval.unwrap().high, r("welch.high"), 12.0);
    let [ctrl, trt2] = [0, 1].map(|at| {
        let readings = &found.results[0].groups[at].readings;
        readings.iter().map(|r| r.value).collect::<Vec<f64>>()
    });
    close("ranks", rank_sum(&trt2, &ctrl), r("ranks"), 12.0);

    let all = judged(text);
    let overall = all.results[0].overall.unwrap();
    close("F", overall.f, r("anova.f"), 12.0);
    close("p", overall.p, r("anova.p"), 12.0);
    close("error", overall.error, r("anova.error"), 12.0);
    for treatment in ["trt1", "trt2"] {
        let of = against(&all, "weight", treatment);
        close("Dunnett", of.p.unwrap(), r(&format!("dunnett.{treatment}")), 4.0);
    }
    let every = judged_as(&Trial { text: text.into(), every_pair: true, ..Trial::default() });
    for of in &every.results[0].comparisons {
        let [a, b] = [of.treatment, of.control].map(|at| every.treatments[at].name.as_str());
        let of_r = |what: &str| r(&format!("tukey.{a}-{b}.{what}"));
        // R's own range is good to about eight digits.
        close("Tukey", of.p.unwrap(), of_r("p adj"), 8.0);
        close("low", of.interval.unwrap().low, of_r("lwr"), 7.0);
        close("high", of.interval.unwrap().high, of_r("upr"), 7.0);
    }
}

/// Source: R, sleep (Student 1908), darwin (Darwin 1876): `t.test`, `wilcox.test` (opened as code).
#[test]
fn pairs_by_r() {
    let trial = Trial {
        text: r_table("sleep").into(),
        roles: vec![
            RoleOf { head: "treatment".into(), role: Role::Treatment },
            RoleOf { head: "pair".into(), role: Role::Block },
        ],
        control: Some("1".into()),
        ..Trial::default()
    };
    let found = judged_as(&trial);
    let of = &found.results[0].comparisons[0];
    assert_eq!(found.design, Design::Paired);
    close("t", of.t.unwrap(), r("sleep.t"), 12.0);
    close("p", of.p.unwrap(), r("sleep.p"), 12.0);
    close("low", of.interval.unwrap().low, r("sleep.low"), 12.0);
    close("high", of.interval.unwrap().high, r("sleep.high"), 12.0);
    let differences: Vec<f64> =
        r_table("darwin").lines().skip(1).map(|line| line.parse().expect("a number")).collect();
    close("signed ranks", signed_rank(&differences), r("signed"), 12.0);
}

/// Source: R, npk (Yates 1935) by nitrogen alone, immer (Immer, Hayes and Powers 1934), whole and
/// with three plots lost: `aov` and `lm` (opened as code).
#[test]
fn blocks_by_r() {
    for (name, design) in [("npk", Design::IncompleteBlocks), ("immer", Design::Blocks)] {
        let role = RoleOf { head: "treatment".into(), role: Role::Treatment };
        let text = r_table(name).to_string();
        let found = judged_as(&Trial { text, roles: vec![role], ..Trial::default() });
        let overall = result(&found, "yield").overall.unwrap();
        assert!(found.design == design || name == "npk", "{:?}", found.design);
        close(name, overall.f, r(&format!("{name}.f")), 11.0);
        close(name, overall.p, r(&format!("{name}.p")), 10.0);
        close(name, overall.error, r(&format!("{name}.error")), 12.0);
    }
    let control = Some("M".to_string());
    let found = judged_as(&Trial { text: r_table("lost").into(), control, ..Trial::default() });
    assert_eq!(found.design, Design::IncompleteBlocks);
    let of = result(&found, "yield");
    close("F", of.overall.unwrap().f, r("lost.f"), 11.0);
    close("error", of.overall.unwrap().error, r("lost.error"), 12.0);
    for treatment in ["P", "S", "T", "V"] {
        let of = against(&found, "yield", treatment);
        close("difference", of.difference, r(&format!("lost.treatment{treatment}")), 10.0);
        close(
            "error",
            of.standard_error.unwrap(),
            r(&format!("lost.se.treatment{treatment}")),
            12.0,
        );
        assert_eq!(of.test, Some(Test::Sidak));
    }
}

/// Source: R, oats (Yates 1935): a split plot (opened as code).
#[test]
fn a_split_plot_is_known_and_refused() {
    let found = judged(r_table("oats"));
    assert_eq!(found.design, Design::SplitPlot);
    assert!(found.stated.contains("“variety”"), "{}", found.stated);
    assert!(found.results[0].comparisons.iter().all(|c| c.verdict == Verdict::NotJudged));
    assert!(found.results[0].comparisons.iter().all(|c| c.interval.is_none()));
}

/// Source: R: `p.adjust`, `ptukey`, `qtukey`, `pt` with a shift, `power.t.test` (opened as
/// code). R's range is good to some eight digits; `studentized_range_dunnett_and_shifted_t_by_mpmath`
/// has the same to twelve.
#[test]
fn functions_by_r() {
    let adjusted = holm(&[0.01, 0.02, 0.03, 0.04, 0.05, 0.004, 0.2, 0.011]);
    for (at, p) in adjusted.iter().enumerate() {
        close("Holm", *p, r(&format!("holm.{at}")), 14.0);
    }
    close("range", StudentizedRange::new(3, 20.0).tail(3.5), r("range.3.20"), 11.0);
    close("range", StudentizedRange::new(4, 12.0).tail(4.2), r("range.4.12"), 11.0);
    close("range", StudentizedRange::new(8, 24.0).critical(0.05), r("critical.8.24"), 7.0);
    close("range", StudentizedRange::new(3, 12.0).critical(0.05), r("critical.3.12"), 8.0);
    close("shifted", noncentral_t_below(1.5, 6.0, 2.0), r("shifted.6"), 11.5);
    close("shifted", noncentral_t_below(-1.0, 10.0, 0.5), r("shifted.10"), 11.5);
    let error = (2.0_f64 / 4.0).sqrt();
    close("power", power(1.5 / error, 6.0, t_critical(0.05, 6.0)), r("power"), 11.5);
    assert_eq!(replicates(1.0, 0.8, 2, false), Some(r("replicates").ceil() as usize));
    let shift = smallest_shift(6.0, t_critical(0.05, 6.0));
    close("power of the smallest", power(shift, 6.0, t_critical(0.05, 6.0)), 0.8, 13.0);
}

fn biochar(name: &str) -> String {
    let path = format!("{}/open-data/biochar_trials_MIT/{name}", env!("CARGO_MANIFEST_DIR"));
    std::fs::read_to_string(&path).unwrap_or_else(|why| panic!("{path}: {why}"))
}

/// Source: Dannhauser 2023, pots and a field with biochar and ash (open data, MIT); F, p and mean
/// square by R 4.2.2, `aov(y ~ Block + Treatment)` (derived). The field has lost plots.
#[test]
fn open_biochar_trials() {
    let pots = [
        ("Biomass", 7.477_002_148_255_76, 0.000_146_624_504_770_16, 1.385_329_315_476_19, 21.0),
        ("Grain", 4.358_200_909_639_12, 0.004_004_154_827_669_52, 0.376_817_410_714_286, 21.0),
        ("pH", 0.163_796_073_027_898, 0.989_867_888_323_537, 0.027_647_619_047_619_1, 21.0),
        ("EC", 0.947_820_507_563_276, 0.492_290_436_032_835, 2_467.672_619_047_62, 21.0),
        ("OC", 4.867_079_813_514_21, 0.002_177_818_427_270_42, 0.047_016_220_238_095_2, 21.0),
        ("TotalP", 1.051_752_029_475_42, 0.426_824_182_217_426, 3_294.372_691_220_24, 21.0),
    ];
    let field = [
        ("FGrain", 1.328_188_285_254_5, 0.308_497_293_266_056, 37_770.686_063_492, 14.0),
        ("Yield", 0.913_342_879_172_663, 0.500_209_259_889_558, 406_348.795_904_762, 14.0),
        ("pH_10", 1.279_008_083_696_24, 0.330_602_723_394_144, 0.032_433_119_658_119_5, 13.0),
        ("OC_10", 8.807_696_160_476_12, 0.000_780_035_206_910_091, 0.010_515_298_763_736_3, 13.0),
    ];
    for (name, rows) in [("Pots2.csv", &pots[..]), ("Field.csv", &field[..])] {
        let found = judged(&biochar(name));
        assert_eq!((found.design, found.blocks), (Design::Blocks, 4), "{name}");
        for (head, f, p, error, df) in rows {
            let of = result(&found, head).overall.unwrap();
            close(head, of.f, *f, 11.0);
            close(head, of.p, *p, 11.0);
            close(head, of.error, *error, 12.0);
            assert_eq!(of.error_df, *df, "{head}");
        }
    }
    // Without blocks the pots' F is another: which of the two was laid out must be seen.
    let loose =
        Trial { text: biochar("Pots2.csv"), design: Some(Design::Unpaired), ..Trial::default() };
    let of = result(&judged_as(&loose), "Biomass").overall.unwrap();
    close("Biomass, blocks left aside", of.f, 6.289_272_181_415_55, 12.0);
    close("Biomass, blocks left aside", of.p, 0.000_292_929_067_245_28, 3.0);
}

/// Source: Dannhauser 2023 and `carData_Soils.csv` (Horton, Russell and Moore 1968), worked out
/// here (derived): every row of usual scatter that rests on them holds what they show.
#[test]
fn the_usual_scatter_holds_that_of_open_trials() {
    let soils = std::fs::read_to_string(format!(
        "{}/open-data/r_packages_GPL/carData_Soils.csv",
        env!("CARGO_MANIFEST_DIR")
    ))
    .expect("the soils");
    let group = |head: &str, role| RoleOf { head: head.into(), role };
    let soils = Trial {
        text: soils,
        roles: vec![
            group("Gp", Role::Treatment),
            group("Group", Role::LeaveOut),
            group("Contour", Role::LeaveOut),
            group("Depth", Role::LeaveOut),
        ],
        ..Trial::default()
    };
    let open = |name: &str| Trial { text: biochar(name), ..Trial::default() };
    let sets: [(Trial, &[(&str, Property)]); 4] = [
        (
            soils,
            &[
                ("pH", Property::Ph),
                ("N", Property::TotalN),
                ("Dens", Property::BulkDensity),
                ("K", Property::Potassium),
                ("Mg", Property::Magnesium),
                ("Ca", Property::Calcium),
                ("Na", Property::Sodium),
            ],
        ),
        (
            open("Pots2.csv"),
            &[
                ("pH", Property::Ph),
                ("EC", Property::Ec),
                ("OC", Property::OrganicCarbon),
                ("SNO3", Property::NitrateN),
                ("SNH4", Property::AmmoniumN),
                ("SPO4", Property::Phosphorus),
            ],
        ),
        (
            open("Rows.csv"),
            &[
                ("pH", Property::Ph),
                ("EC", Property::Ec),
                ("NO3", Property::NitrateN),
                ("PO4", Property::Phosphorus),
            ],
        ),
        (
            open("Field.csv"),
            &[
                ("pH_10", Property::Ph),
                ("OC_10", Property::OrganicCarbon),
                ("NO3_10", Property::NitrateN),
                ("PO4_10", Property::Phosphorus),
                ("BDdry", Property::BulkDensity),
            ],
        ),
    ];
    let mut seen = 0;
    for (trial, rows) in sets {
        let found = judged_as(&trial);
        for (head, property) in rows {
            let of = result(&found, head);
            let cv = 100.0 * of.residual_sd.unwrap() / of.mean;
            let Band { low, high, .. } = usual_spread(*property).unwrap().cv;
            let near = (0.97 * low..=1.03 * high).contains(&cv);
            assert!(near, "{head}: {cv} is not within {low} to {high}");
            seen += 1;
        }
    }
    assert_eq!(seen, 22);
}

/// Source: the normal mean with a normal prior, as any text on Bayesian statistics has it (from
/// memory), by numerical integration here: the mean and the spread of prior times likelihood.
#[test]
fn what_a_trial_teaches_is_the_product_of_both() {
    let (model, found) = (Band::new(2.0, 8.0, 14.0), Band::new(9.0, 13.0, 17.0));
    let both = calibrate(model, found).unwrap();
    let (prior, trial) = (6.0 / 1.644_853_626_951, 4.0 / 1.959_963_984_540);
    let weight =
        |x: f64| (-0.5 * ((x - 8.0) / prior).powi(2) - 0.5 * ((x - 13.0) / trial).powi(2)).exp();
    let points: Vec<f64> = (-4000..8000).map(|i| f64::from(i) / 100.0).collect();
    let all: f64 = points.iter().map(|x| weight(*x)).sum();
    let mean = points.iter().map(|x| x * weight(*x)).sum::<f64>() / all;
    let square = points.iter().map(|x| (x - mean).powi(2) * weight(*x)).sum::<f64>() / all;
    close("likely", both.with_trial.likely, mean, 9.0);
    close("high", both.with_trial.high - mean, 1.644_853_626_951 * square.sqrt(), 9.0);
}
