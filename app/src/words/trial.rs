//! What the page says about a trial.

use emberloam_engine::trial::Verdict;

pub const TRIAL: &str = "Did it work?";
pub const INTRO: &str = "Plots with and without biochar show what it did in your own soil. Paste the results, a line a plot: what was done to it, its block if there are any, and what the soil test says.";
pub const TABLE: &str = "Paste your table of plots";
pub const OPEN_A_FILE: &str = "Or open its file, or a trial that you saved";
pub const CLEAR: &str = "A clear trial";
pub const UNCLEAR: &str = "A trial that can't tell";
pub const NO_TRIAL: &str =
    "No trial yet? Look at one of these made-up ones, or plan your own below.";
pub const LATER: &str = "The same plots, sampled later";
pub const LATER_INTRO: &str =
    "Two reports or tables with the same names of plots are taken as before and after.";
pub const JUDGED: &str = "How it is judged";
pub const AS_FOUND: &str = "as found";
pub const DESIGN: &str = "How the plots were laid out";
pub const COMPARED_WITH: &str = "Compared with";
pub const EVERY_PAIR: &str = "Compare every pair of treatments";
pub const FORETOLD: &str = "Compare with what the plan of this page foretells for your bed";
pub const ALL: &str = "All properties on one sheet";
pub const ALL_MEANS: &str = "Each line is the difference, counted in the usual scatter of plots treated alike, with the span that holds for all properties together. An arrow stands only where the span leaves out nought.";
pub const SAY_IT: &str = "Say beside it what your trial found";
pub const WITH_TRIAL: &str = "With your trial:";
pub const STILL_DEFAULT: &str = "Amounts and jobs still rest on the default.";
pub const NOT_SAID: &str = "Not said in the plan";
pub const FOUND: &str = "Properties your trial tells of";
pub const IN_PLAN: &str = "In your plan";
pub const IN_PLAN_MEANS: &str = "What a treatment did can stand beside what the plan foretells for your bed. It is saved with the answers for the bed.";
pub const PUT_IN_PLAN: &str = "Put into the plan:";
pub const OUT_OF_PLAN: &str = "Take the trial out of the plan";
pub const NOTHING_FORETOLD: &str = "Nothing to put in: no property with an interval here is one that the plan foretells for this bed.";
pub const PLAN_HAS_OTHER: &str = "The plan holds other numbers than this trial shows now.";
pub const PLAN_HAS_IT: &str =
    "The plan says it beside its own, under “What biochar does in the first month”.";
pub const PLOTS: &str = "Plots";
pub const TREATMENT: &str = "Treatment";
pub const MEAN: &str = "Mean";
pub const SCATTER: &str = "Standard deviation";
pub const EACH_PLOT: &str = "A dot for each plot, a line for the mean";
pub const SAVE_TRIAL: &str = "Save the trial as a file";
pub const SAVE_SVG: &str = "Save the sheet as a picture (SVG)";
pub const SAVE_PNG: &str = "Save the sheet for a slide (PNG)";
pub const PRINT_TRIAL: &str = "Print the trial";
pub const COPY_LINK: &str = "Copy a link to this trial";
pub const JUDGING: &str = "Judging the plots";
pub const STOPPED: &str =
    "Stopped before the end. Change anything in the trial, and it is judged anew.";
pub const ANOTHER: &str =
    "This trial came from a link or from the saved reports. Your own is safe.";
pub const DAMAGED: &str =
    "This saved trial can't be read here. It stays as it is among the saved reports.";
pub const NAME: &str = "Name of the trial";
pub const SAVE_HERE: &str = "Save it among the saved reports";
pub const TWO_REPORTS: &str = "Or take two saved reports as before and after";
pub const TWO_NEEDED: &str =
    "This needs two saved reports of the same bed or beds. Save each under “Saved reports” first.";
pub const BEFORE: &str = "Before";
pub const AFTER: &str = "After";
pub const TWO_MEAN: &str = "Their readings are taken as you put them right. Beds are matched by their names; two reports with one bed each are of the same bed.";
pub const TAKE_TWO: &str = "Compare these two";
pub const CHOOSE_TWO: &str = "Choose two different saved reports that can be read.";
pub const BACK_TO_MINE: &str = "Back to my own trial";
pub const KEEP_THIS: &str = "Keep this one in its place";
pub const REMOVE: &str = "Remove the trial";
pub const NOT_HERE: &str = "This part could not be loaded. Go online once and open it again; then it is kept on this device.";
pub const NOT_KEPT: &str = "This browser does not keep the trial. Save it as a file.";
pub const SOURCES: &str = "What the methods rest on";
pub const NEXT: &str = "Plan the next trial";
pub const DECIDES: &str = "Which property decides";
pub const DIFFERENCE: &str = "Difference to see, % of the mean";
pub const OWN_SCATTER: &str = "Scatter of plots treated alike, % of the mean, if you know it";
pub const TREATMENTS: &str = "Treatments, one a line";
pub const IN_BLOCKS: &str = "In blocks: each treatment once in every part of the bed";
pub const REPLICATES: &str = "Plots of each treatment, if you have room for so many only";
pub const SEED: &str = "Number that the lots are drawn from";
pub const PLOT_AREA: &str = "Area of a plot";
pub const PLOT_DEPTH: &str = "Depth that biochar is mixed in";
pub const POT: &str = "Soil in a pot or tray, if you use those";
pub const SHARE: &str = "Biochar, % of the volume";
pub const SCOOP: &str = "Your scoop holds";
pub const START: &str = "Day the biochar goes in";
pub const LOTS: &str = "Which plot gets what";
pub const BLOCK: &str = "Block";
pub const WHEN: &str = "When to sample";
pub const SAVE_LAYOUT: &str = "Save the plots as a table (CSV)";
pub const SAVE_SHEET: &str = "Save the sampling sheet (CSV)";

/// The verdict in a word or three.
pub fn verdict(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Rose => "went up",
        Verdict::Fell => "went down",
        Verdict::CantTell => "can't tell",
        Verdict::NoReplicates => "no replicates",
        Verdict::TooManyAtLimit => "too many at a limit",
        Verdict::NotJudged => "not judged",
    }
}

/// What a column is chosen to be.
pub fn column(head: &str) -> String {
    format!("Column “{head}”")
}

/// The model's word before and after the trial.
pub fn with_trial(model: &str, both: &str) -> String {
    format!("Foretold: {model}. With your trial: {both}.")
}

/// The trial that stands beside the default.
pub fn your_trial(name: &str) -> String {
    format!("With your trial “{name}”")
}

/// A change after a month by the trial, and without it.
pub fn month_with_trial(with: &str, own: &str) -> String {
    format!("With your trial, after a month: {with}. Without it: {own}.")
}

/// What a treated plot gets.
pub fn each_gets(one: &str, scoops: &str, all: &str) -> String {
    format!(
        "Each treated plot gets {one} of biochar, about {scoops} scoops. All of them take {all}."
    )
}

/// What is taken out of a pot first.
pub fn take_out(soil: &str) -> String {
    format!("Take {soil} of soil out of each pot first.")
}
