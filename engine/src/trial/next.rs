//! The next trial: how many plots it takes, which plot gets what and how much, when to sample,
//! and the sheet for it.

use serde::{Deserialize, Serialize};
use time::{Date, Duration};

use super::amounts::{Amounts, Place, amounts};
use super::layout::{PlotOf, layout, quoted};
use super::power::{MOST_REPLICATES, POWER, replicates};
use super::usual_spread::usual_spread;
use crate::day;
use crate::quantity::{Band, Grounds, Unit, significant};
use crate::soil::Property;
use crate::sources::{COMMON_PRACTICE, OUR_CHOICE};

/// What the next trial is to show, and what there is for it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields, rename_all = "kebab-case")]
pub struct Wish {
    /// The property that decides how many plots it takes.
    pub property: Option<Property>,
    /// The difference to be shown, % of the mean.
    pub difference_percent: f64,
    /// The scatter of plots treated alike, % of the mean: of an own trial. Without it the
    /// usual one of the property is taken.
    pub own_cv: Option<f64>,
    /// The chance to show the difference, 0.5 to 0.99.
    pub power: f64,
    /// What is compared.
    pub treatments: Vec<String>,
    /// In blocks, or by lot over the whole bed.
    pub in_blocks: bool,
    /// Plots of each treatment, where there is room for so many only.
    pub replicates: Option<usize>,
    /// The seed of the lots.
    pub seed: u64,
    /// Where the char goes.
    pub place: Option<Place>,
    /// Char, % of the volume.
    pub share_percent: f64,
    /// The scoop, litres.
    pub scoop_litres: f64,
    /// When the char goes in.
    #[serde(with = "crate::day")]
    pub start: Option<Date>,
    /// The properties that are tested.
    pub tested: Vec<String>,
}

impl Default for Wish {
    fn default() -> Wish {
        Wish {
            property: None,
            difference_percent: 20.0,
            own_cv: None,
            power: POWER,
            treatments: vec!["untreated".into(), "biochar".into()],
            in_blocks: true,
            replicates: None,
            seed: 1,
            place: None,
            share_percent: 5.0,
            scoop_litres: 1.0,
            start: None,
            tested: Vec::new(),
        }
    }
}

/// A trial to be laid out.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct NextTrial {
    /// The scatter it is planned for, % of the mean.
    pub cv: Band,
    /// What the scatter rests on.
    pub grounds: Grounds,
    /// Plots of each treatment for the likely scatter; none where even the most are too few.
    pub replicates: Option<usize>,
    /// The same for the low and the high scatter.
    pub replicates_low_high: [Option<usize>; 2],
    /// How many it takes, in a sentence.
    pub text: String,
    /// Plots of each treatment that are laid out.
    pub laid_out: usize,
    /// Which plot gets what.
    pub plots: Vec<PlotOf>,
    /// What a treated plot gets.
    pub amounts: Option<Amounts>,
    /// When to sample: what for, and the day.
    #[serde(skip)]
    pub dates: Vec<(&'static str, Option<Date>)>,
    /// The sheet to sample by.
    pub sheet: Vec<SheetRow>,
}

/// A line of the sampling sheet.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct SheetRow {
    /// The plot.
    pub plot: usize,
    /// Its block.
    pub block: usize,
    /// What it holds.
    pub treatment: String,
    /// When to sample it, as in [`NextTrial::dates`].
    pub when: &'static str,
    /// The day, as `2027-04-20`; empty where none was given.
    pub day: String,
}

/// When to sample. After a week, for what the char takes up at once; after a season, and after
/// a year at the same time of the year. Our choice.
const WHEN: [(&str, i64); 4] = [
    ("before the char goes in", 0),
    ("after a week", 7),
    ("after a season", 91),
    ("after a year", 364),
];

/// The most plots that are laid out. Our choice.
const MOST_LAID_OUT: usize = 500;

/// Plans the next trial.
///
/// # Errors
/// In words for the reader, what can't be and what to give.
pub fn next_trial(wish: &Wish) -> Result<NextTrial, String> {
    let treatments = wish.treatments.len();
    if !(2..=super::MOST_TREATMENTS).contains(&treatments) {
        return Err(format!(
            "A trial compares 2 to {} treatments. Name at least the untreated plots and the treated ones.",
            super::MOST_TREATMENTS
        ));
    }
    if !(0.5..=0.99).contains(&wish.power) {
        return Err("The chance to show a difference lies between 50 and 99 %.".into());
    }
    if !(0.1..=1000.0).contains(&wish.difference_percent) {
        return Err(
            "Give the difference that you want to see in % of the mean, from 0.1 to 1000.".into()
        );
    }
    let (cv, grounds) = scatter(wish)?;
    let needed =
        |cv: f64| replicates(wish.difference_percent / cv, wish.power, treatments, wish.in_blocks);
    let [low, likely, high] = [cv.low, cv.likely, cv.high].map(needed);
    let laid_out = wish.replicates.or(likely).unwrap_or(MOST_REPLICATES);
    if laid_out < 2 {
        return Err(
            "One plot of a treatment shows nothing. Lay out at least two, better four.".into()
        );
    }
    let laid_out = laid_out.min(MOST_LAID_OUT / treatments);
    let plots = layout(&wish.treatments, laid_out, wish.in_blocks, wish.seed);
    let treated = laid_out * (treatments - 1);
    let amounts = match wish.place {
        Some(place) => Some(
            amounts(place, wish.share_percent, wish.scoop_litres, treated).ok_or(
                "A measure of the plot, the share or the scoop can't be. Give an area and a depth, or what a pot holds, a share from 0.01 to 50 %, and what the scoop holds.",
            )?,
        ),
        None => None,
    };
    let dates: Vec<(&'static str, Option<Date>)> = WHEN
        .iter()
        .map(|(when, days)| {
            (*when, wish.start.and_then(|start| start.checked_add(Duration::days(*days))))
        })
        .collect();
    let sheet = dates
        .iter()
        .flat_map(|(when, date)| {
            plots.iter().map(|plot| SheetRow {
                plot: plot.plot,
                block: plot.block,
                treatment: plot.treatment.clone(),
                when,
                day: date.map_or(String::new(), day::iso),
            })
        })
        .collect();
    let text = said(wish, [low, likely, high]);
    Ok(NextTrial {
        cv,
        grounds,
        replicates: likely,
        replicates_low_high: [low, high],
        text,
        laid_out,
        plots,
        amounts,
        dates,
        sheet,
    })
}

/// The scatter that is planned for, and what it rests on.
fn scatter(wish: &Wish) -> Result<(Band, Grounds), String> {
    let rule = "Plots of each treatment are counted up until the non-central t gives the chance that is wanted; several treatments share the 5 % equally.";
    if let Some(cv) = wish.own_cv {
        if !(0.01..=300.0).contains(&cv) {
            return Err(
                "The scatter of plots treated alike lies between 0.01 and 300 % of the mean."
                    .into(),
            );
        }
        let grounds = Grounds::new(rule, &[COMMON_PRACTICE.unsourced()])
            .input("scatter of an own trial", format!("{} %", significant(cv, 2)));
        return Ok((Band::exactly(cv), grounds));
    }
    let usual = wish.property.and_then(usual_spread);
    let Some(usual) = usual else {
        return Err("The usual scatter of this property is not known here. Give that of an own trial, in % of the mean.".into());
    };
    let mut grounds = Grounds::new(rule, usual.citations).input(
        "usual scatter",
        crate::quantity::shown(&usual.cv, Unit::Percent, Default::default()),
    );
    grounds.cite(&[OUR_CHOICE.unsourced()]);
    Ok((usual.cv, grounds))
}

/// How many plots it takes.
fn said(wish: &Wish, [low, likely, high]: [Option<usize>; 3]) -> String {
    let difference = significant(wish.difference_percent, 2);
    let chance = significant(100.0 * wish.power, 2);
    match (likely, low, high) {
        (Some(n), Some(low), Some(high)) if low == high => format!(
            "To see a difference of {difference} % in {chance} of 100 trials takes {n} plots of each treatment."
        ),
        (Some(n), Some(low), Some(high)) => format!(
            "To see a difference of {difference} % in {chance} of 100 trials takes about {n} plots of each treatment: {low} where plots are alike, {high} where they differ much."
        ),
        (Some(n), _, _) => format!(
            "To see a difference of {difference} % in {chance} of 100 trials takes about {n} plots of each treatment, and far more where plots differ much."
        ),
        (None, _, _) => format!(
            "To see a difference of {difference} % takes more than {MOST_REPLICATES} plots of each treatment. Look for a larger difference, or for a property that scatters less."
        ),
    }
}

/// The sampling sheet as a table with commas, with a column for each property.
pub fn sheet_csv(sheet: &[SheetRow], tested: &[String]) -> String {
    let heads: Vec<String> = tested.iter().map(|name| quoted(name)).collect();
    let more = |cells: &[String]| cells.iter().map(|c| format!(",{c}")).collect::<String>();
    let mut text = format!("Plot,Block,Treatment,When,Day{}\n", more(&heads));
    let blank = ",".repeat(tested.len());
    for SheetRow { plot, block, treatment, when, day } in sheet {
        text += &format!("{plot},{block},{},{when},{day}{blank}\n", quoted(treatment));
    }
    text
}
