//! Feeds in the water of pots.

use std::collections::BTreeSet;

use crate::facts::{PotFeedRow, Wrong};
use crate::shared::{band, citations, rows};

pub fn statics(known: &BTreeSet<&str>) -> Result<String, Vec<Wrong>> {
    let rows: Vec<PotFeedRow> = rows("pot_feeds.csv", known)?;
    let mut code = String::from("static FEEDS: &[PotFeed] = &[\n");
    for PotFeedRow { plants, nitrogen, cited, note } in &rows {
        let plants: Vec<String> =
            plants.iter().map(|plants| format!("PlantGroup::{plants:?}")).collect();
        code += &format!(
            "PotFeed {{ plants: &[{}], nitrogen: {}, citations: {}, note: {note:?} }},\n",
            plants.join(", "),
            band(*nitrogen),
            citations(cited)
        );
    }
    Ok(code + "];\n")
}
