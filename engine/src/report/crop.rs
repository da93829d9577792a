//! The crop that a report says it is for.

use super::Cell;
use super::fold::fold;
use crate::facts::small;
use crate::region::CropNames;

/// What stands before the name of a crop, folded.
const LABELS: [&str; 36] = [
    "crop",
    "crop to be grown",
    "crop to grow",
    "crop grown",
    "crop name",
    "intended crop",
    "next crop",
    "planned crop",
    "proposed crop",
    "current crop",
    "crop type",
    "plant",
    "plants",
    "plant grown",
    "plants grown",
    "grown here",
    "cultivo",
    "cultivo a sembrar",
    "cultivo previsto",
    "kultur",
    "kulturart",
    "geplante kultur",
    "fruchtart",
    "culture",
    "culture prevue",
    "culture envisagee",
    "cultura",
    "cultura a implantar",
    "coltura",
    "gewas",
    "afgrode",
    "groda",
    "uprawa",
    "plodina",
    "культура",
    "作物",
];

/// The one crop that the rows name behind such a label; none where they name several.
pub(super) fn crop_of(rows: &[Vec<Cell>]) -> Option<&'static str> {
    let mut found: Option<&'static str> = None;
    for row in rows {
        let beside =
            row.iter().zip(row.iter().skip(1)).map(|(l, c)| (l.text.as_str(), c.text.as_str()));
        let within = row.iter().filter_map(|cell| cell.text.split_once([':', '=']));
        for (label, said) in beside.chain(within) {
            let label = fold(label.trim_end_matches([':', ' ']));
            if !LABELS.contains(&label.trim()) {
                continue;
            }
            let Some(crop) = named(said) else { continue };
            if found.is_some_and(|other| other != crop) {
                return None;
            }
            found = Some(crop);
        }
    }
    found
}

/// The crop of a name, one or several of it.
fn named(said: &str) -> Option<&'static str> {
    let said = small(said.trim_matches([' ', ':', '.', ';', '"']));
    let one = |name: &str| CropNames::of(name).map(|crop| crop.id);
    one(&said).or_else(|| one(said.strip_suffix("es")?)).or_else(|| one(said.strip_suffix('s')?))
}

#[cfg(test)]
mod tests {
    use crate::report::{open, read};

    fn crop(text: &str) -> Option<&'static str> {
        read(&open(text.as_bytes()).unwrap()).unwrap().crop
    }

    #[test]
    fn a_crop_is_read_where_the_report_names_it() {
        for (line, wanted) in [
            ("Crop: Tomatoes", Some("tomato")),
            ("Crop to be grown\tPotato", Some("potato")),
            ("Intended crop:\tBlueberries", Some("blueberry-highbush")),
            ("Kultur: Kartoffeln", None),
            ("Kultur: Kartoffel", Some("potato")),
            ("Cultivo: zanahoria", Some("carrot")),
            ("Culture : fraise", Some("strawberry")),
            ("Crop: Zoubium", None),
            ("Previous crop: Tomatoes", None),
            ("Tomatoes need potassium.", None),
        ] {
            let text = format!("Soil test\n{line}\npH 6.4\nPhosphorus (Olsen) 18 mg/kg\n");
            assert_eq!(crop(&text), wanted, "{line}");
        }
    }

    #[test]
    fn of_two_crops_none_is_taken() {
        assert_eq!(
            crop("Crop 1: Tomatoes\nCrop: Tomatoes\nCrop: Lettuce\npH 6.4\nP 18 ppm\n"),
            None
        );
    }
}
