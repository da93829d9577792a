//! A year's dressings of crops.

use std::collections::BTreeSet;

use crate::facts::{CropRow, RateRow, TraceElementRow, Wrong};
use crate::notes::Notes;
use crate::shared::{self, Shared, band, citation, rows_of_regions};

pub fn statics(
    known: &BTreeSet<&str>,
    places: &BTreeSet<&str>,
    notes: &Notes,
) -> Result<String, Vec<Wrong>> {
    let rows: Vec<RateRow> = rows_of_regions("rates.csv", known, places)?;
    let mut shared = Shared::default();
    let mut code = String::from("static ALL: &[CropRate] = &[\n");
    for row in &rows {
        let rates: Vec<String> = row
            .rates
            .iter()
            .map(|(level, rate)| {
                let level = level.map_or("None".into(), |level| format!("Some(Level::{level:?})"));
                format!("({level}, {})", band(*rate))
            })
            .collect();
        let rates = shared.list("(Option<Level>, Band)", &rates.join(", "));
        let all: Vec<String> = row.cited.iter().map(citation).collect();
        let citations = shared.list("Citation", &all.join(", "));
        let crops: Vec<String> = row.crops.iter().map(|crop| format!("{crop:?}")).collect();
        let crops = shared.list("&str", &crops.join(", "));
        let months: Vec<String> =
            row.months.iter().map(|(month, rate)| format!("({month}, {})", band(*rate))).collect();
        let months = shared.list("(u8, Band)", &months.join(", "));
        let note = notes.place(&row.note);
        let RateRow { region, nutrient, way, when, .. } = row;
        code += &format!(
            "CropRate {{ region: {region:?}, crops: {crops}, nutrient: Dressed::{nutrient:?}, \
             rates: {rates}, way: Way::{way:?}, when: {when:?}, months: {months}, citations: {citations}, note: {note} }},\n"
        );
    }
    code += "];\n";
    Ok(shared.code + &code + &names(&rows, known)?)
}

/// The names of the crops that have rates, or are hurt by a trace element.
fn names(rates: &[RateRow], known: &BTreeSet<&str>) -> Result<String, Vec<Wrong>> {
    let crops: Vec<CropRow> = shared::rows("crops.csv", known)?;
    let elements: Vec<TraceElementRow> = shared::rows("trace_elements.csv", known)?;
    let mut code = String::from("static NAMES: &[CropNames] = &[\n");
    let dressed = |crop: &CropRow| rates.iter().any(|rate| rate.crops.contains(&crop.id));
    let hurt = |crop: &CropRow| elements.iter().any(|element| element.hurts.contains(&crop.id));
    for crop in crops.iter().filter(|crop| dressed(crop) || hurt(crop)) {
        let names: Vec<String> =
            crop.names.iter().chain([&crop.name]).map(|name| name.to_lowercase()).collect();
        let group = crop.group.map(|group| format!("PlantGroup::{group:?}"));
        let group = group.map_or("None".into(), |group| format!("Some({group})"));
        code += &format!(
            "CropNames {{ id: {:?}, name: {:?}, group: {group}, names: &{names:?} }},\n",
            crop.id, crop.name
        );
    }
    Ok(code + "];\n")
}
