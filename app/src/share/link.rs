//! A report with its answers as the fragment of a link: what stands after the
//! `#`, which a browser never sends to a server.
//!
//! The fragment is `soil=`, the version, a dot, and the base64url (RFC 4648,
//! section 5) of the zlib stream (RFC 1950) of a JSON. The stream ends with a
//! checksum of what it holds, so that a link that was cut or changed on its
//! way is known as such.

use base64::Engine as _;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use emberloam_engine::Case;
use emberloam_engine::case::CASE_VERSION;
use miniz_oxide::deflate::compress_to_vec_zlib;
use miniz_oxide::inflate::decompress_to_vec_zlib_with_limit;
use serde::{Deserialize, Serialize};
use serde_json::Value;

use crate::share::answers;
use crate::words;

/// What a fragment of ours begins with.
const MARK: &str = "soil=";
/// The version of this shape.
const VERSION: u32 = 1;
/// The strongest packing.
const LEVEL: u8 = 9;
/// What a link may unpack to, bytes: a text of this size is no soil report,
/// and a small link must not fill the memory.
const MOST: usize = 4_000_000;
/// The longest note, characters.
pub const LONGEST_NOTE: usize = 500;

/// What a link carries.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Letter {
    /// The pasted text; empty when the reader is to bring a report.
    pub text: String,
    /// The answers.
    pub answers: Case,
    /// The names of the answers that are fixed for whoever opens it.
    pub fixed: Vec<String>,
    /// A note of who made it.
    pub note: String,
}

/// The shape in the JSON.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Written {
    #[serde(default, skip_serializing_if = "String::is_empty")]
    text: String,
    #[serde(default, skip_serializing_if = "Value::is_null")]
    answers: Value,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    fixed: Vec<String>,
    #[serde(default, skip_serializing_if = "String::is_empty")]
    note: String,
}

/// Why a link can't be opened.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Unopened {
    /// It was made by a newer program.
    Newer,
    /// It was cut short or changed.
    Damaged,
    /// An answer in it is one that no garden has: what, in words.
    Beyond(String),
}

impl Unopened {
    /// What to tell the reader.
    pub fn words(&self) -> String {
        match self {
            Unopened::Newer => words::keeping::LINK_NEWER.into(),
            Unopened::Damaged => words::keeping::LINK_DAMAGED.into(),
            Unopened::Beyond(what) => what.clone(),
        }
    }
}

impl Letter {
    /// Whether it is for viewers: with a note, or with answers that are fixed.
    pub fn is_for_viewers(&self) -> bool {
        !self.note.is_empty() || !self.fixed.is_empty()
    }

    /// As the fragment of a link, without the `#`.
    pub fn to_fragment(&self) -> String {
        let written = Written {
            text: self.text.clone(),
            answers: answers::sparse(&self.answers),
            fixed: self.fixed.clone(),
            note: self.note.chars().take(LONGEST_NOTE).collect(),
        };
        // A struct of texts and JSON always has a JSON.
        let json = serde_json::to_string(&written).unwrap_or_default();
        MARK.to_string() + &packed(&json)
    }

    /// Reads the fragment of a link, with or without its `#`; `None` when it
    /// is none of ours.
    ///
    /// # Errors
    /// When it is ours and can't be opened.
    pub fn from_fragment(fragment: &str) -> Option<Result<Letter, Unopened>> {
        let rest = fragment.strip_prefix('#').unwrap_or(fragment).strip_prefix(MARK)?;
        Some(open(rest))
    }
}

/// A JSON behind its version, as a link carries it.
pub fn packed(json: &str) -> String {
    let packed = compress_to_vec_zlib(json.as_bytes(), LEVEL);
    format!("{VERSION}.{}", URL_SAFE_NO_PAD.encode(packed))
}

/// The JSON that a link carries.
pub fn unpacked(carried: &str) -> Result<String, Unopened> {
    let (version, packed) = carried.split_once('.').ok_or(Unopened::Damaged)?;
    match version.parse::<u32>() {
        Ok(VERSION) => {}
        Ok(newer) if newer > VERSION => return Err(Unopened::Newer),
        _ => return Err(Unopened::Damaged),
    }
    // Mail programs put blanks and full stops at the end of what they take for a link.
    let packed =
        packed.trim_end_matches(|c: char| !c.is_ascii_alphanumeric() && c != '-' && c != '_');
    let packed = URL_SAFE_NO_PAD.decode(packed).map_err(|_| Unopened::Damaged)?;
    let json = decompress_to_vec_zlib_with_limit(&packed, MOST).map_err(|_| Unopened::Damaged)?;
    String::from_utf8(json).map_err(|_| Unopened::Damaged)
}

fn open(carried: &str) -> Result<Letter, Unopened> {
    let json = unpacked(carried)?;
    let written: Written = serde_json::from_str(&json).map_err(|_| Unopened::Damaged)?;
    let newer = written.answers.get("version").and_then(Value::as_u64);
    if newer.is_some_and(|version| version > u64::from(CASE_VERSION)) {
        return Err(Unopened::Newer);
    }
    let answers = match written.answers {
        Value::Null => Case::default(),
        given => answers::case(&given)
            .ok_or_else(|| answers::beyond(&given).map_or(Unopened::Damaged, Unopened::Beyond))?,
    };
    Ok(Letter {
        text: written.text,
        answers,
        fixed: written.fixed,
        note: written.note.chars().take(LONGEST_NOTE).collect(),
    })
}

#[cfg(test)]
mod tests {
    use emberloam_engine::case::{BagState, ChargeSource};
    use emberloam_engine::soil::PlantGroup;
    use proptest::prelude::*;

    use super::*;

    const SURPLUS: &str = include_str!("../../../public/samples/surplus.txt");

    fn back(fragment: &str) -> Result<Letter, Unopened> {
        Letter::from_fragment(fragment).expect("a fragment of ours")
    }

    fn a_letter() -> Letter {
        let mut answers = Case { plants: Some(PlantGroup::ALL[0]), ..Case::default() };
        answers.bed.area_m2 = Some(8.0);
        answers.biochar.state = Some(BagState::Uncharged);
        Letter { text: SURPLUS.into(), answers, ..Letter::default() }
    }

    #[test]
    fn a_letter_is_read_back_and_a_sample_makes_a_short_link() {
        let letter = a_letter();
        let fragment = letter.to_fragment();
        assert_eq!(back(&fragment), Ok(letter.clone()));
        assert_eq!(back(&format!("#{fragment}")), Ok(letter.clone()));
        assert_eq!(back(&format!("{fragment}. ")), Ok(letter));
        assert!(fragment.len() < 900, "{}", fragment.len());
    }

    #[test]
    fn other_fragments_are_none_of_ours() {
        for fragment in ["", "#", "#answer", "#soil", "soi=1.x"] {
            assert_eq!(Letter::from_fragment(fragment), None, "{fragment}");
        }
    }

    #[test]
    fn what_no_garden_has_is_refused_with_its_reason() {
        let crops = vec![r#"{"name":"kale"}"#; 200].join(",");
        let link = |json: &str| {
            format!("#soil=1.{}", URL_SAFE_NO_PAD.encode(compress_to_vec_zlib(json.as_bytes(), 9)))
        };
        let said = "There are 200 crops on one bed; at most 40 are taken.";
        let full = link(&format!(r#"{{"answers":{{"season":{{"crops":[{crops}]}}}}}}"#));
        assert_eq!(back(&full), Err(Unopened::Beyond(said.into())));
        let said = "The area in m² can be 0 to 100000; here it is far beyond that.";
        let wide = link(r#"{"answers":{"bed":{"area-m2":1e300}}}"#);
        assert_eq!(back(&wide), Err(Unopened::Beyond(said.into())));
    }

    #[test]
    fn a_newer_version_is_told_from_a_damaged_link() {
        assert_eq!(back("#soil=2.anything"), Err(Unopened::Newer));
        let newer = compress_to_vec_zlib(br#"{"answers":{"version":9}}"#, 9);
        let newer = format!("soil=1.{}", URL_SAFE_NO_PAD.encode(newer));
        assert_eq!(back(&newer), Err(Unopened::Newer));
        for damaged in ["#soil=", "#soil=1", "#soil=1.", "#soil=x.abc", "#soil=0.abc", "#soil=1.a"]
        {
            assert_eq!(back(damaged), Err(Unopened::Damaged), "{damaged}");
        }
    }

    #[test]
    fn a_link_cut_anywhere_is_known_as_damaged() {
        let fragment = a_letter().to_fragment();
        for end in "soil=1.".len()..fragment.len() {
            assert_eq!(back(&fragment[..end]), Err(Unopened::Damaged), "cut at {end}");
        }
    }

    #[test]
    fn one_wrong_character_is_never_read_as_another_report() {
        let letter = a_letter();
        let fragment = letter.to_fragment();
        for at in "soil=1.".len()..fragment.len() {
            for other in ["A", "z", "-", "_", "0"] {
                let mut wrong = fragment.clone();
                wrong.replace_range(at..=at, other);
                match back(&wrong) {
                    Ok(read) => assert_eq!(read, letter, "at {at}, {other}"),
                    Err(why) => assert_eq!(why, Unopened::Damaged),
                }
            }
        }
    }

    #[test]
    fn a_small_link_that_unpacks_to_much_is_refused() {
        let bomb = compress_to_vec_zlib(&vec![b' '; MOST + 1], 9);
        assert!(bomb.len() < 10_000);
        let fragment = format!("soil=1.{}", URL_SAFE_NO_PAD.encode(bomb));
        assert_eq!(back(&fragment), Err(Unopened::Damaged));
    }

    #[test]
    fn a_note_is_cut_at_its_longest() {
        let letter = Letter { note: "ü".repeat(LONGEST_NOTE + 9), ..Letter::default() };
        let read = back(&letter.to_fragment()).unwrap();
        assert_eq!(read.note.chars().count(), LONGEST_NOTE);
    }

    /// What packs and checks a link is checked by the file format of its own
    /// standard: the first two bytes of a zlib stream are a multiple of 31.
    /// Source: RFC 1950, section 2.2 (from memory).
    #[test]
    fn a_link_holds_a_zlib_stream() {
        let fragment = a_letter().to_fragment();
        let packed = URL_SAFE_NO_PAD.decode(fragment.strip_prefix("soil=1.").unwrap()).unwrap();
        assert_eq!(packed[0] & 15, 8);
        assert_eq!((u32::from(packed[0]) * 256 + u32::from(packed[1])) % 31, 0);
    }

    fn any_case() -> impl Strategy<Value = Case> {
        (
            proptest::option::of(0.0..1e5_f64),
            proptest::option::of(-50.0..50.0_f64),
            proptest::collection::vec(0..ChargeSource::ALL.len(), 0..4),
            0_usize..9999,
            ".{0,40}",
        )
            .prop_map(|(area, latitude, sources, sample, crop)| {
                let mut case = Case { sample, ..Case::default() };
                case.bed.area_m2 = area;
                case.season.latitude = latitude;
                case.charge_with = sources.into_iter().map(|at| ChargeSource::ALL[at]).collect();
                case.season.crops = vec![emberloam_engine::case::Crop {
                    name: crop,
                    planting: None,
                    harvest: None,
                }];
                case
            })
    }

    proptest! {
        #[test]
        fn any_letter_is_read_back(
            text in "(?s).{0,400}",
            answers in any_case(),
            fixed in proptest::collection::vec("[a-z.-]{1,20}", 0..5),
            note in "(?s).{0,500}",
        ) {
            let letter = Letter { text, answers, fixed, note };
            prop_assert_eq!(back(&letter.to_fragment()), Ok(letter));
        }

        #[test]
        fn any_text_is_read_without_a_panic(text in "(?s).{0,300}") {
            let _ = Letter::from_fragment(&text);
            let _ = Letter::from_fragment(&format!("#soil=1.{text}"));
        }

        #[test]
        fn any_bytes_are_read_without_a_panic(
            bytes in proptest::collection::vec(any::<u8>(), 0..400),
        ) {
            let _ = back(&format!("soil=1.{}", URL_SAFE_NO_PAD.encode(&bytes)));
            // Behind a right checksum.
            let packed = compress_to_vec_zlib(&bytes, 1);
            let _ = back(&format!("soil=1.{}", URL_SAFE_NO_PAD.encode(packed)));
        }
    }
}
