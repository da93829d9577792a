//! Lab exchange files of the Modus standard, to one long table: a line a result.
//!
//! Read are results in XML and JSON of the first generation, and the flat
//! ("slim") JSON, in all the ways that files write them. Advice on what to
//! apply is left out. So is all that says whose soil it is.

mod codes;
mod tree;

use std::collections::HashMap;

use crate::{Kind, Opened, Refusal, text};
use tree::Node;

const HEAD: &str = "Sample\tDepth\tProperty\tResult\tUnit\tMethod\tRating\tTexture";

/// One line of the table.
#[derive(Default)]
struct Line {
    property: String,
    result: String,
    unit: String,
    method: String,
    rating: String,
}

/// The results of one sample at one depth.
struct Layer {
    name: String,
    depth: String,
    texture: String,
    lines: Vec<Line>,
}

/// What a JSON text is.
///
/// # Errors
/// When it is broken or nothing we read.
pub(crate) fn json_kind(text: &str) -> Result<Kind, Refusal> {
    let top = tree::json(text)?;
    match top.said(&["emberloam"]) {
        "" => {}
        "1" => return Ok(Kind::Saved),
        version => {
            let newer = version.bytes().all(|b| b.is_ascii_digit()) && version != "0";
            return Err(if newer { Refusal::SavedByNewer } else { Refusal::OtherJson });
        }
    }
    if !top.said(&["emberloam-shelf"]).is_empty() {
        return Err(Refusal::AllSaved);
    }
    let any = |holds: fn(&Node) -> bool| roots(&top).into_iter().any(holds);
    if any(|r| is_slim(r) || r.get(&["Events", "Event"]).is_some() || r.name.starts_with("Modus")) {
        Ok(Kind::Modus)
    } else {
        Err(Refusal::OtherJson)
    }
}

pub(crate) fn open(bytes: &[u8]) -> Result<Opened, Refusal> {
    let text = text::decode(bytes)?;
    let top =
        if text.trim_start().starts_with('<') { tree::xml(&text)? } else { tree::json(&text)? };
    let roots = roots(&top);
    let mut layers = Vec::new();
    let (mut order, mut advice) = (false, false);
    for root in roots {
        order |= root.name == "ModusSubmit" || root.said(&["_type"]).contains("submit");
        if is_slim(root) {
            slim(root, &mut layers);
        }
        for event in root.entries("Events", "Event") {
            order |= event.get(&["SubmissionAttributes"]).is_some();
            advice |= first_generation(event, &mut layers);
        }
    }
    layers.retain(|layer| !layer.lines.is_empty() || !layer.texture.is_empty());
    if layers.is_empty() {
        return Err(if order { Refusal::OrderForm } else { Refusal::NoSoilResults });
    }
    tell_apart(&mut layers);
    let mut notes = Vec::new();
    if advice {
        notes.push(
            "The file also holds the laboratory's advice on what to apply. It was left out: only \
             results are read."
                .to_string(),
        );
    }
    Ok(Opened { kind: Kind::Modus, text: table(&layers), notes })
}

/// The file itself, or what it wraps: `{"ModusResult": {…}}`, a list of files.
fn roots(top: &Node) -> Vec<&Node> {
    let wrapped: Vec<&Node> =
        top.children.iter().filter(|c| c.name.starts_with("Modus") || c.name.is_empty()).collect();
    if wrapped.is_empty() { vec![top] } else { wrapped }
}

fn is_slim(root: &Node) -> bool {
    root.said(&["_type"]).contains("modus.slim")
        || root
            .get(&["samples"])
            .is_some_and(|s| s.children.iter().any(|c| c.get(&["results"]).is_some()))
}

/// Reads an event of the first generation; says whether it also gives advice.
fn first_generation(event: &Node, layers: &mut Vec<Layer>) -> bool {
    let Some(soil) = event.at(&["EventSamples", "Soil"]) else { return false };
    let depths = soil.entries("DepthRefs", "DepthRef");
    let field = event
        .get(&["FMISMetaData", "FMISMetadata"])
        .and_then(|f| f.at(&["FMISProfile", "Field"]))
        .map_or("", |f| if f.text.trim().is_empty() { f.said(&["ID"]) } else { f.text.trim() });
    let mut advice = false;
    for sample in soil.entries("SoilSamples", "SoilSample") {
        advice |= sample.get(&["NutrientRecommendations"]).is_some_and(|r| !r.children.is_empty());
        let about = sample.get(&["SampleMetaData", "SampleMetadata"]).unwrap_or(sample);
        let name = ["FMISSampleID", "SampleNumber", "SampleContainerID"]
            .into_iter()
            .map(|key| about.said(&[key]))
            .find(|name| is_name(name))
            .unwrap_or(field);
        for layer in sample.entries("Depths", "Depth") {
            let id = layer.said(&["DepthID"]);
            let reference = depths.iter().find(|d| d.said(&["DepthID"]) == id && !id.is_empty());
            let only = depths.first().filter(|_| depths.len() == 1 && id.is_empty());
            let depth = reference.or(only).map_or(String::new(), |d| {
                depth(d, ["StartingDepth", "EndingDepth", "DepthUnit", "Name"])
            });
            let mut lines: Vec<Line> = layer
                .entries("NutrientResults", "NutrientResult")
                .into_iter()
                .filter_map(|r| {
                    result(r, ["Element", "Value", "ValueUnit", "ModusTestID", "ValueDesc"])
                })
                .collect();
            let mut class = String::new();
            for found in layer.entries("TextureResults", "TextureResult") {
                class = plain(found.said(&["SoilClassification"]));
                let shares =
                    [("Sand", "PercentSand"), ("Silt", "PercentSilt"), ("Clay", "PercentClay")];
                for (property, key) in shares {
                    lines.extend(share(property, found.said(&[key]), "%"));
                }
                if let Some(density) = found.get(&["Density"]) {
                    lines.extend(share(
                        "Bulk density",
                        density.said(&["Value"]),
                        density.said(&["Unit"]),
                    ));
                }
            }
            layers.push(Layer { name: plain(name), depth, texture: class, lines });
        }
    }
    advice
}

/// Reads the flat JSON: what stands above the samples holds for each that says nothing else.
fn slim(root: &Node, layers: &mut Vec<Layer>) {
    if !matches!(root.said(&["type"]), "" | "soil") {
        return;
    }
    let samples = root.get(&["samples"]).map_or(&[][..], |s| &s.children);
    for sample in samples {
        let id = |whose: &str| sample.at(&[whose, "sampleid"]).map_or("", |id| id.text.trim());
        let name = [id("source"), id("lab"), &sample.name].into_iter().find(|n| is_name(n));
        let depth = match (sample.get(&["depth"]), root.get(&["depth"])) {
            (own, above) if own.or(above).is_some() => {
                // A sample may change one bound and keep the unit.
                let mut merged = own.cloned().unwrap_or_default();
                let given = above.map_or(&[][..], |d| &d.children);
                merged.children.extend(given.iter().cloned());
                self::depth(&merged, ["top", "bottom", "units", "name"])
            }
            _ => String::new(),
        };
        let results = sample.get(&["results"]).map_or(&[][..], |r| &r.children);
        let keys = ["analyte", "value", "units", "modusTestID", "valueDesc"];
        layers.push(Layer {
            name: plain(name.unwrap_or("")),
            depth,
            texture: String::new(),
            lines: results.iter().filter_map(|r| result(r, keys)).collect(),
        });
    }
}

/// A name that a person gave, or at least could find again.
fn is_name(name: &str) -> bool {
    let uuid = name.len() == 36 && name.bytes().filter(|b| *b == b'-').count() == 4;
    !name.is_empty() && !uuid && name != "REDACTED"
}

/// `0-8 in`, or the name of the depth when it has no bounds.
fn depth(of: &Node, [top, bottom, unit, name]: [&str; 4]) -> String {
    let (top, bottom) = (of.said(&[top]), of.said(&[bottom]));
    if bottom.is_empty() {
        return plain(of.said(&[name]));
    }
    let top = if top.is_empty() { "0" } else { top };
    plain(&format!("{top}-{bottom} {}", codes::unit(of.said(&[unit]))))
}

/// One result; the names of its parts differ between the generations.
fn result(of: &Node, [element, value, unit, code, rating]: [&str; 5]) -> Option<Line> {
    let code = of.said(&[code]);
    // `"NutrientResults": {"P": {"Value": 18}}`
    let key =
        if of.name == "NutrientResult" || of.name == "NutrientResults" { "" } else { &of.name };
    let said = of.said(&[element]);
    let element = if said.is_empty() && element == "Element" { key } else { said };
    let rating = plain(of.said(&[rating]));
    let result = match of.said(&[value]) {
        "" | "null" => rating.clone(),
        value => plain(value),
    };
    let property = plain(&codes::property(element, code));
    (!result.is_empty() && !property.is_empty()).then(|| Line {
        property,
        rating: if result == rating { String::new() } else { rating },
        result,
        unit: plain(codes::unit(of.said(&[unit]))),
        method: plain(&codes::method(code)),
    })
}

fn share(property: &str, value: &str, unit: &str) -> Option<Line> {
    (!value.is_empty()).then(|| Line {
        property: property.into(),
        result: plain(value),
        unit: plain(codes::unit(unit)),
        ..Line::default()
    })
}

/// Two depths of a sample, and two samples of one name, are samples of their own.
fn tell_apart(layers: &mut [Layer]) {
    let mut counts: HashMap<String, usize> = HashMap::new();
    for layer in layers.iter() {
        *counts.entry(layer.name.clone()).or_default() += 1;
    }
    let mut told: HashMap<String, usize> = HashMap::new();
    for (i, layer) in layers.iter_mut().enumerate() {
        if layer.name.is_empty() {
            layer.name = format!("Sample {}", i + 1);
        } else if counts[&layer.name] > 1 && !layer.depth.is_empty() {
            layer.name = format!("{}, {}", layer.name, layer.depth);
        }
        let times = told.entry(layer.name.clone()).or_default();
        *times += 1;
        if *times > 1 {
            layer.name = format!("{} ({times})", layer.name);
        }
    }
}

fn table(layers: &[Layer]) -> String {
    let mut rows: Vec<[&str; 8]> = Vec::new();
    for layer in layers {
        let (name, depth, texture) = (&layer.name, &layer.depth, &layer.texture);
        for l in &layer.lines {
            rows.push([
                name,
                depth,
                &l.property,
                &l.result,
                &l.unit,
                &l.method,
                &l.rating,
                texture,
            ]);
        }
        if layer.lines.is_empty() {
            rows.push([name, depth, "Texture", texture, "", "", "", texture]);
        }
    }
    // A table is known by a number in its first line.
    let number = |row: &[&str; 8]| row[3].starts_with(|c: char| c.is_ascii_digit());
    if let Some(first) = rows.iter().position(number) {
        rows[..=first].rotate_right(1);
    }
    let textured = layers.iter().any(|l| !l.texture.is_empty());
    let width = if textured { 8 } else { 7 };
    let mut text = HEAD.split('\t').take(width).collect::<Vec<_>>().join("\t");
    for row in rows {
        text.push('\n');
        text.push_str(&row[..width].join("\t"));
    }
    text.push('\n');
    text
}

/// Without anything that would part cells or lines.
fn plain(text: &str) -> String {
    text.split(|c: char| c.is_whitespace() || c.is_control())
        .filter(|w| !w.is_empty())
        .collect::<Vec<_>>()
        .join(" ")
}
