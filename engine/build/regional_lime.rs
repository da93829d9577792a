//! Lime by region: tables by pH and soil, and the base saturation that is wanted.

use std::collections::BTreeSet;

use crate::facts::{BaseSaturationRow, LimeRow, Wrong};
use crate::notes::Notes;
use crate::shared::{Shared, citation, citations, rows_of_regions, soils};

pub fn statics(
    known: &BTreeSet<&str>,
    places: &BTreeSet<&str>,
    notes: &Notes,
) -> Result<String, Vec<Wrong>> {
    let tables = tables(&rows_of_regions("lime.csv", known, places)?, notes);
    Ok(tables + &wanted(&rows_of_regions("base_saturation.csv", known, places)?, notes))
}

fn tables(rows: &[LimeRow], notes: &Notes) -> String {
    let mut shared = Shared::default();
    let mut code = String::from("static ALL: &[RegionalLime] = &[\n");
    for row in rows {
        let uses = shared.kinds("GroundUse", &row.uses);
        let soils = soils(&row.soils, &mut shared);
        let points: Vec<String> =
            row.points.iter().map(|(ph, rate)| format!("({ph:?}, {rate:?})")).collect();
        let all: Vec<String> = row.cited.iter().map(citation).collect();
        let citations = shared.list("Citation", &all.join(", "));
        let note = notes.place(&row.note);
        let LimeRow { region, by, target, depth_cm, .. } = row;
        code += &format!(
            "RegionalLime {{ region: {region:?}, uses: {uses}, soils: {soils}, by: Reckoned::{by:?}, \
             target: {target:?}, points: &[{}], depth_cm: {depth_cm:?}, citations: {citations}, \
             note: {note} }},\n",
            points.join(", ")
        );
    }
    code += "];\n";
    shared.code + &code
}

fn wanted(rows: &[BaseSaturationRow], notes: &Notes) -> String {
    let mut code = String::from("static WANTED: &[WantedSaturation] = &[\n");
    for row in rows {
        let BaseSaturationRow { region, plants, wanted, cited, note, .. } = row;
        let note = notes.place(note);
        let plants: Vec<String> = plants.iter().map(|p| format!("PlantGroup::{p:?}")).collect();
        code += &format!(
            "WantedSaturation {{ region: {region:?}, plants: &[{}], wanted: {wanted:?}, \
             citations: {}, note: {note} }},\n",
            plants.join(", "),
            citations(cited)
        );
    }
    code + "];\n"
}
