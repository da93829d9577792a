//! A link as a QR code: dark squares in a light field, drawn as one path.

use std::fmt::Write as _;

use qrcodegen::{QrCode, QrCodeEcc, QrSegment, Version};

/// The largest code, as its version. Printed 7 cm wide its squares are still
/// half a millimetre. Our choice; no source.
const LARGEST: u8 = 28;
/// Light squares around the code.
/// Source: ISO/IEC 18004 asks for four (from memory).
const QUIET: i32 = 4;

/// A code to be drawn.
#[derive(Clone, Debug, PartialEq)]
pub struct Code {
    /// Squares along a side, with the quiet zone.
    pub side: i32,
    /// The dark squares, as the path of an SVG.
    pub path: String,
}

/// The code of a text; `None` when it is too long for one that a phone can read.
pub fn code(text: &str) -> Option<Code> {
    let segment = QrSegment::make_bytes(text.as_bytes());
    // The screen and the paper are flat and clean: the lowest correction gives the largest squares.
    let code = QrCode::encode_segments_advanced(
        &[segment],
        QrCodeEcc::Low,
        Version::MIN,
        Version::new(LARGEST),
        None,
        true,
    )
    .ok()?;
    let mut path = String::new();
    for y in 0..code.size() {
        let mut x = 0;
        while x < code.size() {
            let from = x;
            while code.get_module(x, y) {
                x += 1;
            }
            if x > from {
                let long = x - from;
                // Ignored: a string takes all that is written to it.
                let _ = write!(path, "M{} {}h{long}v1h-{long}z", from + QUIET, y + QUIET);
            }
            x += 1;
        }
    }
    Some(Code { side: code.size() + 2 * QUIET, path })
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    /// Paints the path as a browser would and has it read by another program's decoder.
    fn read(code: &Code) -> String {
        const SCALE: usize = 4;
        let side = code.side as usize * SCALE;
        let mut dark = vec![false; side * side];
        for bar in code.path.split('M').skip(1) {
            let numbers: Vec<usize> = bar
                .split(|c: char| !c.is_ascii_digit())
                .filter_map(|number| number.parse().ok())
                .collect();
            let [x, y, long, ..] = numbers[..] else { panic!("no bar: {bar}") };
            for row in y * SCALE..(y + 1) * SCALE {
                for column in x * SCALE..(x + long) * SCALE {
                    dark[row * side + column] = true;
                }
            }
        }
        let mut picture = rqrr::PreparedImage::prepare_from_greyscale(side, side, |x, y| {
            if dark[y * side + x] { 0 } else { 255 }
        });
        let grids = picture.detect_grids();
        assert_eq!(grids.len(), 1, "codes found");
        grids[0].decode().expect("a code that can be read").1
    }

    /// Source: the rqrr decoder, a program of its own (opened).
    #[test]
    fn what_is_drawn_is_read_by_another_decoder() {
        let long = format!("http://localhost:8080/#soil=1.{}", "aZ_-9".repeat(200));
        for text in ["http://localhost:8080/#soil=1.x", long.as_str()] {
            assert_eq!(read(&code(text).unwrap()), text);
        }
    }

    #[test]
    fn a_text_too_long_has_no_code() {
        assert!(code(&"a".repeat(1400)).is_some());
        assert_eq!(code(&"a".repeat(1600)), None);
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(16))]
        #[test]
        fn any_link_is_read_back(tail in "[A-Za-z0-9_-]{1,600}") {
            let text = format!("https://example.org/#soil=1.{tail}");
            prop_assert_eq!(read(&code(&text).unwrap()), text);
        }
    }
}
