//! Everything the engine says about trials: tables of every design, with what can be wrong.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;

use emberloam_engine::quantity::{Band, Unit};
use emberloam_engine::soil::Property;
use emberloam_engine::trial::{
    Design, Evaluation, ExactTest, Foretold, Only, Place, Role, RoleOf, Test, Trial, Wish,
    calibrate, evaluate, next_trial,
};
use emberloam_tests::project;

/// A table of plots: each treatment so often, in blocks or not, sampled so many times, with
/// results from `of`.
fn table(
    treatments: &[&str],
    plots: usize,
    blocks: bool,
    times: usize,
    of: fn(usize) -> String,
) -> String {
    let mut text = String::from("Plot,Block,When,Treatment,pH,K (mg/kg),Yield\n");
    let mut at = 0;
    for time in 1..=times {
        for block in 1..=plots {
            for (place, treatment) in treatments.iter().enumerate() {
                let plot = block * 10 + place;
                let block = if blocks { block.to_string() } else { "a".into() };
                let (ph, k, y) = (of(at), of(at * 7 + 3), of(at * 5 + 1));
                text += &format!("{plot},{block},week {time},{treatment},{ph},{k},{y}\n");
                at += 1;
            }
        }
    }
    text
}

/// Results that scatter, those that are alike, and those with limits and slips.
const RESULTS: [fn(usize) -> String; 6] = [
    |at| format!("{:.2}", 6.0 + 0.37 * ((at * at * 31 % 17) as f64 / 17.0) + (at % 2) as f64),
    |at| format!("{:.2}", 6.0 + 3.0 * ((at * at * 29 % 19) as f64 / 19.0)),
    |at| format!("{}", 6 + at % 2),
    |_| "6.5".into(),
    |at| match at % 19 {
        3 => "<4".into(),
        7 => "lost it".into(),
        8 => ">60".into(),
        _ => format!("{:.1}", 5.0 + (at * 13 % 11) as f64 - 4.0 * (at % 2) as f64),
    },
    |at| if at % 3 == 0 { "<4".into() } else { format!("{}", 5 + at % 7) },
];

fn texts() -> Vec<String> {
    let mut all = Vec::new();
    let sets: [&[&str]; 4] =
        [&["none", "char"], &["none", "char", "ash"], &["char"], &["char", "ash", "lime", "chaff"]];
    for treatments in sets {
        for of in RESULTS {
            for (plots, times) in [(1, 1), (3, 1), (7, 1), (3, 2), (2, 3)] {
                for blocks in [true, false] {
                    all.push(table(treatments, plots, blocks, times, of));
                }
            }
        }
    }
    let folder = project().join("public/samples/trials");
    for entry in fs::read_dir(folder).expect("the trials") {
        all.push(fs::read_to_string(entry.expect("a trial").path()).expect("a text"));
    }
    let odd = [
        "",
        "hello",
        "pH,K\n6,1\n7,2\n",
        "Treatment,Name\na,b\nb,c\n",
        "Treatment,Soil,pH\na,s1,6\na,s2,6.3\nb,s1,6.1\nb,s2,6.6\na,s1,6.2\nb,s2,6.9\n",
        "Treatment,Block,pH\nnone,1,6\nnone,1,6.2\nchar,1,6.5\nchar,1,6.6\nnone,2,6\nchar,2,6.4\n,2,6.4\n",
        "Treatment,Block,pH\nnone,1,6\nnone,2,6.2\nchar,3,6.5\nchar,4,6.6\nx,y,z\n",
        "Treatment,Rate,Site,Block,pH,Empty,Same\nnone,0,N,1,6,,a\nchar,10,N,1,6.2,,a\nnone,0,S,2,6.5,,a\nchar,10,S,2,6.6,,a\n",
        "Treatment,Block,pH\nnone,1,6\nnone,2,6.2\nash,1,6.5\nash,2,6.3\nchar,1,6.6\n,,6\n,,7\n",
        "Treatment,Date,pH\nnone,1,6\nnone,2,6.2\nchar,1,6.5\nchar,2,6.6\n",
        "Plot,Treatment,Date,pH\n1,none,1,6\n2,none,2,6.2\n3,char,1,6.5\n4,char,2,6.6\n",
        "Sample,pH,K ppm\nControl 1,6.1,101\nControl 2,6.0,99\nBiochar 1,6.5,140\nBiochar 2,6.6,151\n",
        "Treatment,pH\nnone,6.1\nnone,6.2\nchar,6.3\nchar,6.25\nchar,9.9\nnone,6.15\nnone,6.1\nchar,6.2\nchar,6.3\nnone,6.2\n",
        "Plot,Treatment,pH\nP1,none,6.1\nP2,none,6.2\nP3,char,6.3\nP4,char,6.25\nP5,char,9.9\nP6,none,6.15\nP7,none,6.1\nP8,char,6.2\nP9,char,6.3\nP10,none,6.2\n",
        "Treatment,pH\nnone,6.1\nchar,6.1\n",
        "Treatment,pH\nnone,6.4\nchar,6.1\n",
        "Treatment,pH\nnone,a\nnone,b\nchar,c\nchar,d\nash,e\nash,f\nnone,g1\nash,6\n",
    ];
    all.extend(odd.map(String::from));
    all.extend([
        "Back bed\nMethod: Mehlich-3\npH 6.1\nPhosphorus 40 ppm\nK (mg/kg) 33\n".into(),
        "Sample,pH,Olsen P (mg/kg),K (mg/kg)\nNorth,6.1,12,90\nSouth,6.4,16,95\n".into(),
    ]);
    let many = |rows: usize, treatments: usize, columns: usize| {
        let mut text = format!(
            "Treatment,{}\n",
            (0..columns).map(|c| format!("r{c}")).collect::<Vec<_>>().join(",")
        );
        for row in 0..rows {
            let cells: Vec<String> =
                (0..columns).map(|c| format!("{}", 5 + (row * c) % 7)).collect();
            text += &format!("t{},{}\n", row % treatments, cells.join(","));
        }
        text
    };
    all.extend([many(2100, 2, 1), many(60, 25, 2), many(8, 2, 61), "a".repeat(1_000_001)]);
    all
}

fn trials() -> Vec<Trial> {
    let foretold =
        |property, low, likely, high, unit| Foretold { property, low, likely, high, unit };
    let base = Trial {
        foretold: vec![
            foretold(Property::Ph, 0.2, 0.5, 0.9, Unit::None),
            foretold(Property::Potassium, 2.0, 10.0, 16.0, Unit::Percent),
        ],
        ..Trial::default()
    };
    let mut all = Vec::new();
    for text in texts() {
        let plain = Trial { text, ..base.clone() };
        for design in Design::ALL {
            all.push(Trial { design: Some(design), ..plain.clone() });
        }
        all.push(Trial { every_pair: true, control: Some("gone".into()), ..plain.clone() });
        all.push(Trial { later: Some(plain.text.replace("(mg/kg)", "(mg/L)")), ..plain.clone() });
        let role = |head: &str, role| vec![RoleOf { head: head.into(), role }];
        all.push(Trial { roles: role("gone", Role::Block), ..plain.clone() });
        all.push(Trial { roles: role("pH", Role::LeaveOut), ..plain.clone() });
        let only =
            |head: &str, value: &str| vec![Only { head: head.into(), values: vec![value.into()] }];
        all.push(Trial { only: only("gone", ""), ..plain.clone() });
        all.push(Trial { only: only("Treatment", "gone"), ..plain.clone() });
        if plain.text.contains("pH") && plain.text.len() < 400 {
            let other = plain.text.replace("Mehlich-3", "Olsen").replace("Olsen P", "Bray P");
            let other = other.replace("6.1", "6.6").replace("33", "12");
            all.push(Trial { later: Some(other), ..plain.clone() });
        }
        all.push(plain);
    }
    all
}

fn of_trial(found: &Evaluation, said: &mut BTreeSet<String>) {
    let mut take = |text: &str| {
        if !text.is_empty() {
            said.insert(text.to_string());
        }
    };
    [&found.stated, &found.headline, &found.guard]
        .into_iter()
        .chain(&found.notes)
        .for_each(|t| take(t));
    found.columns.iter().for_each(|column| take(&column.why));
    for result in &found.results {
        take(&result.label);
        result.normality.iter().for_each(|look| take(&look.text));
        result.notes.iter().chain(result.outliers.iter().map(|o| &o.text)).for_each(|t| take(t));
        for of in &result.comparisons {
            [&of.text, &of.why].into_iter().for_each(|t| take(t));
            of.exact.iter().for_each(|exact| take(&exact.text));
            of.foretold.iter().for_each(|foretold| take(&foretold.text));
        }
    }
}

fn wishes() -> Vec<Wish> {
    let mut all = Vec::new();
    for property in Property::ALL.map(Some).into_iter().chain([None]) {
        for difference_percent in [0.3, 5.0, 20.0, 60.0, 2000.0] {
            all.push(Wish { property, difference_percent, ..Wish::default() });
        }
    }
    let base = Wish { own_cv: Some(9.0), ..Wish::default() };
    let pot = |litres| Some(Place::Pot { litres });
    all.extend([
        Wish { power: 2.0, ..base.clone() },
        Wish { own_cv: Some(-1.0), ..base.clone() },
        Wish { treatments: vec!["one".into()], ..base.clone() },
        Wish { replicates: Some(1), ..base.clone() },
        Wish { place: pot(-4.0), ..base.clone() },
        Wish { place: pot(4.0), ..base },
    ]);
    all
}

/// All that the engine says of trials.
pub fn everything() -> BTreeSet<String> {
    let mut said = BTreeSet::new();
    for trial in trials() {
        match evaluate(&trial) {
            Ok(found) => of_trial(&found, &mut said),
            Err(refused) => {
                said.insert(refused.message);
                refused.columns.iter().filter(|c| !c.why.is_empty()).for_each(|c| {
                    said.insert(c.why.clone());
                });
            }
        }
    }
    for wish in wishes() {
        match next_trial(&wish) {
            Ok(next) => {
                said.insert(next.text);
                said.extend(next.dates.iter().map(|(when, _)| (*when).to_string()));
                said.extend(next.grounds.inputs.iter().map(|input| input.name.clone()));
                said.insert(next.grounds.rule);
            }
            Err(why) => {
                said.insert(why);
            }
        }
    }
    let found = Band::new(1.0, 2.0, 3.0);
    let both = calibrate(Band::new(0.0, 1.0, 4.0), found).expect("both are sure of something");
    said.insert(both.grounds.rule);
    said.extend(both.grounds.assumed.iter().map(ToString::to_string));
    said.extend(Design::ALL.map(|kind| kind.label().to_string()));
    said.extend(Role::ALL.map(|kind| kind.label().to_string()));
    said.extend(Test::ALL.map(|kind| kind.label().to_string()));
    said.extend(ExactTest::ALL.map(|kind| kind.label().to_string()));
    // One of each that differ in their numbers alone.
    let mut of_kind: BTreeMap<String, String> = BTreeMap::new();
    for text in said {
        of_kind.entry(with_one_digit(&text)).or_insert(text);
    }
    of_kind.into_values().collect()
}

/// The text with each number cut to one digit before the point and one behind it.
fn with_one_digit(text: &str) -> String {
    let mut out = String::new();
    for sign in text.chars() {
        match sign.is_ascii_digit() {
            true if out.ends_with('7') => {}
            true => out.push('7'),
            false => out.push(sign),
        }
    }
    out
}
