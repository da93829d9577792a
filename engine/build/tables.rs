//! The tables beside ranges and regions, a file of code for each.

mod analyses;
mod crops;
mod effects;
mod feedstocks;
mod lime_buffers;
mod limits;
mod metals;
mod pot_feeds;
mod salt_lines;
mod saturation_water;
mod trace_elements;
mod usual_spreads;

use std::collections::BTreeSet;

use crate::facts::Wrong;

/// Every file to be written, with its code; `known` are the publications, `places` the regions.
pub fn all(
    known: &BTreeSet<&str>,
    places: &BTreeSet<&str>,
) -> Result<Vec<(&'static str, String)>, Vec<Wrong>> {
    Ok(vec![
        ("analyses.rs", analyses::statics(known)?),
        ("crops.rs", crops::statics(known)?),
        ("effects.rs", effects::statics(known)?),
        ("feedstocks.rs", feedstocks::statics(known)?),
        ("lime_buffers.rs", lime_buffers::statics(known)?),
        ("limits.rs", limits::statics(known)?),
        ("lead_levels.rs", metals::lead(known)?),
        ("metals.rs", metals::statics(known, places)?),
        ("pot_feeds.rs", pot_feeds::statics(known)?),
        ("salt_lines.rs", salt_lines::statics(known)?),
        ("saturation_water.rs", saturation_water::statics(known)?),
        ("trace_elements.rs", trace_elements::statics(known)?),
        ("usual_spreads.rs", usual_spreads::statics(known)?),
    ])
}
