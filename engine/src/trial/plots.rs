//! The plots of a table: what was done to each, where and when, and its results.

use super::heads::before_or_after;
use super::table::{Table, is_missing, result_in};
use super::{MOST_TREATMENTS, Refusal, Role, Trial};
use crate::day;
use crate::soil::Amount;

/// All that the table says, in places of lists.
#[derive(Clone, Debug, Default)]
pub(super) struct Plots {
    pub treatments: Vec<String>,
    pub blocks: Vec<String>,
    /// In order of time.
    pub whens: Vec<String>,
    /// Another column that was varied.
    pub factor: Option<String>,
    /// The columns of results.
    pub results: Vec<usize>,
    pub rows: Vec<PlotRow>,
    pub notes: Vec<String>,
}

/// One line: one plot at one time.
#[derive(Clone, Debug)]
pub(super) struct PlotRow {
    pub treatment: usize,
    pub block: Option<usize>,
    pub when: Option<usize>,
    pub plot: String,
    /// A result for each of [`Plots::results`].
    pub results: Vec<Option<Amount>>,
}

/// Takes the plots from a table.
pub(super) fn plots_of(trial: &Trial, table: &Table) -> Result<Plots, Refusal> {
    let treatments: Vec<usize> = table.of(Role::Treatment).collect();
    let [block, when] = [Role::Block, Role::When].map(|role| table.of(role).next());
    let ids: Vec<usize> = table.of(Role::Plot).collect();
    let results: Vec<usize> = table.of(Role::Reading).collect();
    if treatments.is_empty() && when.is_none() {
        return Err(table.refuse(
            "No column says what was done to each plot. Choose the column with the treatments, or give the names of the samples a treatment and a number, such as “Control 1” and “Biochar 1”.",
        ));
    }
    if results.is_empty() {
        return Err(table.refuse(
            "No column holds results. Choose at least one column with the numbers of the soil test.",
        ));
    }
    let mut plots = Plots { results, notes: table.notes.clone(), ..Plots::default() };
    let varies = |at: &usize| table.rows.iter().any(|(_, row)| row[*at] != table.rows[0].1[*at]);
    let factor = table.of(Role::Factor).find(varies);
    plots.factor = factor.map(|at| table.columns[at].head.clone());
    let mut strange: Vec<(u32, String)> = Vec::new();
    let mut without = Vec::new();
    for (line, cells) in &table.rows {
        let said = |at: usize| Some(cells[at].clone()).filter(|text| !is_missing(text));
        let done: Option<Vec<String>> = treatments.iter().map(|at| said(*at)).collect();
        let (Some(done), Some(block), Some(when)) = (
            done,
            block.map_or(Some(None), |at| said(at).map(Some)),
            when.map_or(Some(None), |at| said(at).map(Some)),
        ) else {
            without.push(*line);
            continue;
        };
        let treatment = place(&mut plots.treatments, &done.join(" + "));
        let block = block.map(|block| place(&mut plots.blocks, &block));
        let when = when.map(|when| place(&mut plots.whens, &when));
        let plot: Vec<&str> = ids.iter().map(|at| cells[*at].as_str()).collect();
        let results = plots
            .results
            .iter()
            .map(|at| {
                let found = result_in(&cells[*at]);
                if found.is_none() && !is_missing(&cells[*at]) {
                    strange.push((*line, cells[*at].clone()));
                }
                found
            })
            .collect();
        plots.rows.push(PlotRow { treatment, block, when, plot: plot.join(" "), results });
    }
    if let [only] = without[..] {
        plots.notes.push(format!(
            "Line {only} does not say what was done, where or when, and was left out."
        ));
    } else if without.len() > 1 {
        plots.notes.push(format!(
            "{} lines do not say what was done, where or when, and were left out.",
            without.len()
        ));
    }
    for (line, text) in strange.iter().take(5) {
        plots.notes.push(format!(
            "“{text}” in line {line} is no number and counts as missing. Below a limit is written as <0.5."
        ));
    }
    if strange.len() > 5 {
        let more = strange.len() - 5;
        plots.notes.push(format!("{more} more results are no numbers and count as missing."));
    }
    let many = plots.treatments.len();
    if many > MOST_TREATMENTS {
        return Err(table.refuse(format!(
            "There are {many} treatments, and at most {MOST_TREATMENTS} are compared at once. Choose some of them, or another column for the treatment."
        )));
    }
    if plots.rows.len() < 2 {
        return Err(table.refuse(
            "Fewer than two plots are left. Give each plot a line with its treatment and its results.",
        ));
    }
    // One block for all is none, and tells no plot from another.
    if plots.blocks.len() == 1 {
        plots.blocks.clear();
        plots.rows.iter_mut().for_each(|row| row.block = None);
    }
    in_order_of_time(&mut plots);
    let known = |name: &String| plots.treatments.contains(name);
    if let Some(lost) = trial.control.as_ref().filter(|name| !known(name)) {
        plots
            .notes
            .push(format!("No plot is called “{lost}” any more, so the control was chosen anew."));
    }
    Ok(plots)
}

/// The place of a text in a list, put at its end where it is new.
fn place(list: &mut Vec<String>, text: &str) -> usize {
    let text = text.trim();
    list.iter().position(|known| known == text).unwrap_or_else(|| {
        list.push(text.to_string());
        list.len() - 1
    })
}

/// Puts the times in order: by date, by before and after, by their numbers, else as they come.
fn in_order_of_time(plots: &mut Plots) {
    let number = |text: &String| -> Option<f64> {
        let digits: String = text.chars().filter(|c| c.is_ascii_digit() || *c == '.').collect();
        digits.parse().ok()
    };
    let date = |text: &String| day::parse(text).map(|date| f64::from(date.to_julian_day()));
    let side = |text: &String| before_or_after(text).map(|after| f64::from(u8::from(after)));
    let by = |key: &dyn Fn(&String) -> Option<f64>| -> Option<Vec<f64>> {
        plots.whens.iter().map(key).collect()
    };
    let Some(keys) = by(&date).or_else(|| by(&side)).or_else(|| by(&number)) else { return };
    let mut order: Vec<usize> = (0..keys.len()).collect();
    order.sort_by(|a, b| keys[*a].total_cmp(&keys[*b]));
    let whens = order.iter().map(|at| plots.whens[*at].clone()).collect();
    plots.whens = whens;
    for row in &mut plots.rows {
        row.when = row.when.and_then(|when| order.iter().position(|at| *at == when));
    }
}
