//! Gardens told in sentences, each with the plan that the published logic
//! leads to. Every answer was written down before the engine was asked.
#![allow(missing_docs, reason = "each test's name says what it checks")]

mod expecting;
mod telling;

use std::collections::BTreeSet;
use std::fs;
use std::path::PathBuf;

use emberloam_engine::case::{BagState, Case, Feedstock};
use emberloam_engine::details::sensitivity;
use emberloam_engine::interpret;
use emberloam_engine::plan::{Path, RULES, RuleName};
use emberloam_engine::soil::{Amount, Property};
use emberloam_engine::summary::{self, Block};
use telling::Told;
use time::Duration;

/// Every case of every file in this folder.
fn all() -> Vec<Told> {
    let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("cases");
    let mut files: Vec<PathBuf> = fs::read_dir(folder)
        .expect("the folder of cases")
        .map(|entry| entry.expect("an entry").path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "txt"))
        .collect();
    files.sort();
    let (mut all, mut wrong) = (Vec::new(), String::new());
    for file in files {
        match Told::all(&fs::read_to_string(&file).expect("a text")) {
            Ok(told) => all.extend(told),
            Err(why) => wrong += &format!("{}:\n{why}\n", file.display()),
        }
    }
    assert!(wrong.is_empty(), "{wrong}");
    all
}

/// Source: over each case in the files stands its own.
///
/// With words of a name in `EMBERLOAM_GARDEN` the whole plans of those gardens are printed.
#[test]
fn each_garden_gets_the_plan_that_was_told() {
    let mut wrong = Vec::new();
    let asked = std::env::var("EMBERLOAM_GARDEN").ok();
    for told in all() {
        if asked.as_ref().is_some_and(|words| told.name.contains(words.as_str())) {
            println!("{}\n{}", told.name, expecting::all_said(&interpret(&told.case)));
        }
        wrong.extend(told.faults().into_iter().map(|what| format!("{}: {what}", told.name)));
    }
    assert!(wrong.is_empty(), "{} wrong:\n{}", wrong.len(), wrong.join("\n"));
}

/// What a person would try by hand to see whether the answer holds.
fn turned_by_hand(case: &Case) -> Vec<(String, Case)> {
    let mut all = Vec::new();
    let mut with = |what: &str, change: &dyn Fn(&mut Case)| {
        let mut other = case.clone();
        change(&mut other);
        all.push((what.to_string(), other));
    };
    let measured = |case: &mut Case, property, change: &dyn Fn(f64) -> f64| {
        let readings = case.report.samples.iter_mut().flat_map(|sample| &mut sample.readings);
        for reading in readings.filter(|reading| reading.property == property) {
            if let Some(Amount::Exactly(value)) = reading.amount {
                reading.amount = Some(Amount::Exactly(change(value)));
            }
        }
    };
    let varied = [
        Property::NitrateN,
        Property::Phosphorus,
        Property::Potassium,
        Property::Cec,
        Property::Ec,
        Property::Sodium,
    ];
    for property in varied {
        with(&format!("more {property:?}"), &|c| measured(c, property, &|v| v * 1.2));
        with(&format!("less {property:?}"), &|c| measured(c, property, &|v| v / 1.2));
    }
    with("a higher pH", &|c| measured(c, Property::Ph, &|v| v + 0.25));
    with("a lower pH", &|c| measured(c, Property::Ph, &|v| v - 0.25));
    if case.season.planting.is_some() {
        for days in [-28, 28] {
            with(&format!("planting moved by {days} days"), &|c| {
                c.season.planting = c.season.planting.map(|date| date + Duration::days(days));
            });
        }
    }
    if case.biochar.state.is_none() {
        for state in [BagState::Charged, BagState::Uncharged] {
            with(&format!("a {state:?} bag"), &|c| c.biochar.state = Some(state));
        }
    }
    if case.biochar.feedstock.is_none() {
        for feedstock in [Feedstock::Softwood, Feedstock::GrassOrStraw, Feedstock::Manure] {
            with(&format!("{feedstock:?}"), &|c| c.biochar.feedstock = Some(feedstock));
        }
    }
    all
}

#[test]
fn what_is_said_to_hold_holds() {
    let (mut holds, mut turns) = (0, 0);
    for told in all() {
        let path = interpret(&told.case).plan.path;
        let Some(found) = sensitivity(&told.case) else {
            assert!(told.case.report.samples.is_empty(), "{}", told.name);
            continue;
        };
        assert_eq!(found.path, path, "{}", told.name);
        assert_eq!(found.holds + found.turns.len(), found.of, "{}", told.name);
        assert!(found.turns.iter().all(|turn| turn.path != path), "{}", told.name);
        assert_eq!(found.text.contains("holds in all"), found.of > 0 && found.turns.is_empty());
        if found.turns.is_empty() {
            holds += 1;
            for (what, other) in turned_by_hand(&told.case) {
                assert_eq!(interpret(&other).plan.path, path, "{}: {what}", told.name);
            }
        } else {
            turns += 1;
        }
    }
    // Both kinds are among the gardens.
    assert!(holds >= 15 && turns >= 15, "{holds} hold, {turns} turn");
}

#[test]
fn there_are_sixty_gardens_of_every_path_and_rule() {
    let all = all();
    assert!(all.len() >= 60, "{}", all.len());
    let names: BTreeSet<&str> = all.iter().map(|told| told.name.as_str()).collect();
    assert_eq!(names.len(), all.len(), "two cases have one name");
    for path in [Path::UnchargedAfterHarvest, Path::Charged, Path::ChargeFirst, Path::None] {
        assert!(
            all.iter().filter(|told| told.expected.path == Some(path)).count() >= 5,
            "{path:?}"
        );
    }
    let reached: Vec<RuleName> = all
        .iter()
        .flat_map(|told| interpret(&told.case).plan.reasons)
        .map(|reason| reason.rule)
        .collect();
    let never: Vec<RuleName> =
        RULES.iter().map(|rule| rule.name).filter(|name| !reached.contains(name)).collect();
    assert!(never.is_empty(), "no garden reaches {never:?}");
}

#[test]
fn an_unknown_word_is_an_error() {
    let good = "A garden\nA loam bed of berries. The report gives pH 6.5; nitrate-N 15 ppm. \
                The bed is 6 m2. The person corrects pH to 6.2. Answer: charged (settled). \
                For it: sandy. Brought: lime 2 to 6 kg. Jobs: feed from 2027-05-01. No job: dig. \
                Source: common practice.";
    assert!(Told::all(good).is_ok());
    for (word, other) in [
        ("loam", "loom"),
        ("bed", "bedd"),
        ("berries", "cactuses"),
        ("nitrate-N", "nitrogin"),
        ("15", "many"),
        ("gives", "holds"),
        ("charged", "loaded"),
        ("settled", "sure"),
        ("sandy", "sandier"),
        ("For it", "For"),
        ("6 m2", "6 sqm"),
        ("corrects pH", "corrects boron"),
        ("lime 2", "chalk 2"),
        ("kg", "kilos"),
        ("feed", "water"),
        ("2027-05-01", "2027-05-32"),
        ("dig", "delve"),
        ("Source", "Sauce"),
    ] {
        let bad = good.replacen(word, other, 1);
        assert!(Told::all(&bad).is_err(), "{bad}");
    }
}

/// The handout is one page, and says all that is to be carried and done.
///
/// Source: our choice of a page, 350 words.
#[test]
fn each_garden_gets_a_handout_of_one_page() {
    let mut wrong = Vec::new();
    for told in all() {
        let outcome = interpret(&told.case);
        let blocks = summary::handout(&outcome, &told.case);
        let text = summary::text(&blocks);
        let words = text.split_whitespace().filter(|word| word.contains(char::is_alphanumeric));
        let mut fault = |what: String| wrong.push(format!("{}: {what}\n{text}", told.name));
        let count = words.count();
        if count > 350 {
            fault(format!("{count} words"));
        }
        if blocks.iter().any(|block| matches!(block, Block::Sources(_))) {
            fault("sources".into());
        }
        let plan = &outcome.plan;
        let ticks = text.matches("[ ] ").count();
        if ticks != plan.jobs.len() || plan.jobs.iter().any(|job| !text.contains(&job.task)) {
            fault(format!("{ticks} boxes for {} jobs", plan.jobs.len()));
        }
        let carried = summary::carry(&outcome, &told.case);
        if plan.charge.is_some() && !text.contains("How to charge it\n-") {
            fault("no recipe".into());
        }
        if carried.iter().any(|one| !text.contains(&format!("- {}: {}", one.amount, one.what))) {
            fault(format!("it lacks some of {carried:?}"));
        }
        if plan.uses_biochar() && !text.contains("harms the lungs") {
            fault("nothing is said of dust".into());
        }
        if !text.contains(&plan.headline)
            || !text.contains("Local rules and the advice of licensed")
        {
            fault("no headline, or no word of local rules".into());
        }
    }
    let all = wrong.len();
    wrong.truncate(4);
    assert!(wrong.is_empty(), "{all} wrong:\n{}", wrong.join("\n"));
}
