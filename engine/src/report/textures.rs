//! The words for a soil's texture, in the languages of its laboratories, and the clay that some
//! of them stand for.

use super::fold::{fold, is_letter};
use crate::soil::Texture;

/// Other English and French spellings of texture classes. The sandy silt loam of the British
/// triangle lies for the most part in silt loam. The French ones are those of Canada, where the
/// classes are the same, and the clays of France.
const SPELLINGS: [(&str, Texture); 24] = [
    ("silty loam", Texture::SiltLoam),
    ("sandy silt loam", Texture::SiltLoam),
    ("silt clay loam", Texture::SiltyClayLoam),
    ("silt clay", Texture::SiltyClay),
    ("clayey loam", Texture::ClayLoam),
    ("heavy clay", Texture::Clay),
    ("medium clay", Texture::Clay),
    ("light clay", Texture::Clay),
    ("sableux", Texture::Sand),
    ("sable loameux", Texture::LoamySand),
    ("loam sableux", Texture::SandyLoam),
    ("loam limoneux", Texture::SiltLoam),
    ("loam argileux", Texture::ClayLoam),
    ("loam sablo argileux", Texture::SandyClayLoam),
    ("loam limono argileux", Texture::SiltyClayLoam),
    ("limon argileux", Texture::SiltyClayLoam),
    ("limono argileux", Texture::SiltyClayLoam),
    ("argile sableuse", Texture::SandyClay),
    ("argilo sableux", Texture::SandyClay),
    ("argile limoneuse", Texture::SiltyClay),
    ("argilo limoneux", Texture::SiltyClay),
    ("argile lourde", Texture::Clay),
    ("argileux", Texture::Clay),
    ("argileuse", Texture::Clay),
];

/// Words before a class that say how coarse its sand is, or that it holds stones.
const BEFORE: [&str; 9] =
    ["fine", "very", "coarse", "gravelly", "stony", "cobbly", "channery", "shaly", "rocky"];

/// A German or Dutch name of a soil: its short form and its long ones, the class it lies in for
/// the most part, and the per cent of clay it stands for.
struct Named {
    short: &'static str,
    long: &'static [&'static str],
    texture: Texture,
    clay: Option<(f64, f64)>,
}

const fn named(
    short: &'static str,
    long: &'static [&'static str],
    texture: Texture,
    clay: Option<(f64, f64)>,
) -> Named {
    Named { short, long, texture, clay }
}

/// Source: the soil groups of VDLUFA and of the garden tables of North Rhine-Westphalia for the
/// clay (from memory); the classes by the clay and the usual silt (derived). A lehmiger Sand has
/// 5 to 12 % of clay in the one and 12 to 17 in the other, so it stands for no clay here. Dutch
/// sand has less than 8 % of lutum (from memory).
const NAMED: &[Named] = &[
    named("S", &["sand", "sandboden"], Texture::Sand, Some((0.0, 5.0))),
    named("l'S", &["schwach lehmiger sand"], Texture::LoamySand, Some((5.0, 12.0))),
    named("lS", &["lehmiger sand"], Texture::SandyLoam, None),
    named("ssL", &["stark sandiger lehm"], Texture::SandyLoam, Some((12.0, 17.0))),
    named("", &["stark lehmiger sand"], Texture::SandyLoam, Some((12.0, 17.0))),
    named("sL", &["sandiger lehm"], Texture::Loam, Some((17.0, 25.0))),
    named("uL", &["schluffiger lehm"], Texture::SiltLoam, Some((17.0, 25.0))),
    named("L", &["lehm", "lehmboden"], Texture::Loam, Some((17.0, 25.0))),
    named("tL", &["toniger lehm"], Texture::ClayLoam, Some((25.0, 45.0))),
    named("utL", &["schluffig toniger lehm"], Texture::SiltyClayLoam, Some((25.0, 45.0))),
    named("lT", &["lehmiger ton"], Texture::Clay, Some((45.0, 65.0))),
    named("uT", &["schluffiger ton"], Texture::SiltyClay, Some((30.0, 65.0))),
    named("T", &["ton", "tonboden"], Texture::Clay, Some((45.0, 65.0))),
    named("sU", &["sandiger schluff"], Texture::SiltLoam, Some((5.0, 12.0))),
    named("lU", &["lehmiger schluff"], Texture::SiltLoam, Some((12.0, 17.0))),
    named("U", &["schluff"], Texture::Silt, None),
    named("", &["zand", "zandgrond", "dekzand"], Texture::Sand, Some((0.0, 8.0))),
];

/// The German or Dutch soil a text names, which may end with its other name in brackets.
fn german(text: &str) -> Option<&'static Named> {
    let name = text.split(['(', ',', ';', ':']).next().unwrap_or(text).trim();
    let name = name.replace('’', "'");
    let folded = fold(&name).replace('-', " ");
    NAMED
        .iter()
        .find(|n| !n.short.is_empty() && n.short == name || n.long.contains(&folded.as_str()))
}

/// The per cent of clay, from and to, that the name of a soil stands for, where it is that of a
/// `Bodenart` or a `grondsoort`: an English sand or loam is another one.
pub(super) fn clay_of(label: &str, name: &str) -> Option<(f64, f64)> {
    let label = fold(label);
    let own = label.contains("bodenart") || label.contains("grondsoort");
    german(name).filter(|_| own).and_then(|n| n.clay)
}

/// The texture class a text names.
pub(super) fn texture(text: &str) -> Option<Texture> {
    let plain: String = fold(text).chars().map(|c| if is_letter(c) { c } else { ' ' }).collect();
    let mut words: Vec<&str> = plain.split_whitespace().collect();
    let before = words.iter().take_while(|w| BEFORE.contains(w)).count();
    if before < words.len() {
        words.drain(..before);
    }
    let words = words.join(" ");
    Texture::ALL
        .into_iter()
        .map(|t| (t.label(), t))
        .chain(SPELLINGS)
        .filter(|(name, _)| {
            words.strip_prefix(name).is_some_and(|r| r.is_empty() || r.starts_with(' '))
        })
        .max_by_key(|(name, _)| name.len())
        .map(|(_, texture)| texture)
        .or_else(|| german(text).map(|n| n.texture))
        .or_else(|| southern(text))
}

/// A part of a southern name.
#[derive(Clone, Copy, PartialEq)]
enum Part {
    Sand,
    Silt,
    Clay,
    Loam,
}

/// `franco-arcillo-arenosa`, `areia franca`, `sabbioso franco`: the classes in Spanish,
/// Portuguese and Italian, whose parts and order are the same.
fn southern(text: &str) -> Option<Texture> {
    const STEMS: [(&str, Part); 14] = [
        ("franc", Part::Loam),
        ("arenos", Part::Sand),
        ("areno", Part::Sand),
        ("areia", Part::Sand),
        ("arena", Part::Sand),
        ("sabbi", Part::Sand),
        ("limos", Part::Silt),
        ("limo", Part::Silt),
        ("siltos", Part::Silt),
        ("silte", Part::Silt),
        ("arcill", Part::Clay),
        ("argill", Part::Clay),
        ("argilos", Part::Clay),
        ("argilo", Part::Clay),
    ];
    let name = text.split(['(', ',', ';', ':', '.']).next().unwrap_or(text);
    let folded = fold(name);
    let mut words: Vec<&str> = folded.split(|c| !is_letter(c)).filter(|w| !w.is_empty()).collect();
    if let ["muy" | "muito" | "molto", rest @ ..] = words.as_slice()
        && rest.len() == 1
    {
        words.remove(0);
    }
    let part = |word: &&str| {
        let stem = |(stem, _): &&(&str, Part)| {
            // "franco", "francosa", and not "francês": an ending of a few letters at most.
            word.strip_prefix(stem).is_some_and(|end| {
                matches!(end, "" | "o" | "a" | "os" | "as" | "oso" | "osa" | "so" | "sa")
            })
        };
        STEMS.iter().find(stem).map(|s| s.1)
    };
    let parts: Vec<Part> = words.iter().map(part).collect::<Option<_>>()?;
    Some(match parts[..] {
        [Part::Sand] => Texture::Sand,
        [Part::Sand, Part::Loam] => Texture::LoamySand,
        [Part::Loam, Part::Sand] => Texture::SandyLoam,
        [Part::Loam] => Texture::Loam,
        [Part::Loam, Part::Silt] => Texture::SiltLoam,
        [Part::Silt] => Texture::Silt,
        [Part::Loam, Part::Clay, Part::Sand] | [Part::Loam, Part::Sand, Part::Clay] => {
            Texture::SandyClayLoam
        }
        [Part::Loam, Part::Clay] => Texture::ClayLoam,
        [Part::Loam, Part::Clay, Part::Silt] | [Part::Loam, Part::Silt, Part::Clay] => {
            Texture::SiltyClayLoam
        }
        [Part::Clay, Part::Sand] => Texture::SandyClay,
        [Part::Clay, Part::Silt] => Texture::SiltyClay,
        [Part::Clay] => Texture::Clay,
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: the classes as the soil services of each country translate them (from memory).
    #[test]
    fn textures_by_name_in_each_language() {
        use Texture::*;
        let cases: &[(Texture, &str)] = &[
            (SiltLoam, "Silt Loam|Silty Loam|sandy silt loam|uL|schluffiger Lehm|franco-limosa"),
            (Loam, "LOAM |sL|L|Lehm|sandiger Lehm|franca|Franco|franco (arena 41 %)"),
            (
                SandyLoam,
                "sandy-loam (by feel)|fine sandy loam|gravelly sandy loam|lS|lehmiger Sand",
            ),
            (SandyLoam, "franco-arenosa|franco arenoso|franco sabbioso|loam sableux"),
            (
                LoamySand,
                "loamy sand|areia franca|sabbioso franco|areno-francosa|schwach lehmiger Sand",
            ),
            (Sand, "Sand|S|S (Sand)|arenosa|areia|sabbioso|dekzand|sableux|fine sand"),
            (
                ClayLoam,
                "clayey loam|tL (toniger Lehm)|franco argilloso|franco-argilosa|franco-arcillosa",
            ),
            (
                SandyClayLoam,
                "franco-arcillo-arenosa|franco argilo-arenosa|franco sabbioso argilloso",
            ),
            (
                SiltyClayLoam,
                "Silty-clay loam|silt clay loam|franco limoso argilloso|limon argileux",
            ),
            (SiltyClay, "Silt clay|arcillo-limosa|argilo-siltosa|argilloso limoso|argilo-limoneux"),
            (SandyClay, "arcillo-arenosa|argilloso sabbioso|argile sableuse"),
            (Clay, "Heavy clay, grey|T|Ton|argilosa.|muito argilosa|arcillosa|argillosa|argileux"),
            (Silt, "silt|limosa|siltosa|Schluff"),
        ];
        for (class, names) in cases {
            for name in names.split('|') {
                assert_eq!(texture(name), Some(*class), "{name}");
            }
        }
    }

    #[test]
    fn a_word_that_is_no_class_is_left() {
        for name in [
            "silty",
            "mittel",
            "mittel (Ton 20 %)",
            "grosseira",
            "média",
            "fina",
            "medium",
            "light",
            "zeeklei",
            "sable limono-argileux",
            "limon",
            "francês",
            "schwer",
            "volcanic",
            "",
        ] {
            assert_eq!(texture(name), None, "{name}");
        }
    }

    #[test]
    fn a_german_name_stands_for_its_clay() {
        for (label, name, clay) in [
            ("Bodenart", "S (Sand)", Some((0.0, 5.0))),
            ("Bodenart", "sL", Some((17.0, 25.0))),
            ("Bodenart", "tL (toniger Lehm)", Some((25.0, 45.0))),
            ("Grondsoort", "dekzand", Some((0.0, 8.0))),
            ("Bodenart", "lS", None),
            ("Texture", "Sand", None),
            ("Texture", "L", None),
            ("Bodenart", "clay loam", None),
        ] {
            assert_eq!(clay_of(label, name), clay, "{label} {name}");
        }
    }
}
