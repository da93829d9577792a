//! Draws the PNG icons from `public/icons/mark.svg`, after the mark has changed.

use std::fs;
use std::io::Cursor;

use color_quant::NeuQuant;
use emberloam_tests::driver::Browser;
use emberloam_tests::project;
use png::{BitDepth, ColorType, Compression, Encoder, Filter, Transformations};
use serde_json::json;

fn main() {
    let icons = project().join("public/icons");
    let mark = fs::read_to_string(icons.join("mark.svg")).expect("the mark can be read");
    // A system that masks an icon cuts its own edge: there the mark fills the whole square.
    let full = mark.replace(
        r#"<rect x="16" y="16" width="480" height="480" rx="96" />"#,
        r#"<rect width="512" height="512" />"#,
    );
    assert_ne!(mark, full, "the mark's edge is not where this program looks for it");
    let browser = Browser::start("icons");
    for (name, drawing, size) in [
        ("mark-192.png", &mark, 192),
        ("mark-512.png", &mark, 512),
        ("mark-maskable-512.png", &full, 512),
    ] {
        browser.goto("about:blank");
        browser.resize(size, size);
        browser.run_with(
            "document.body.style.margin = 0;
            document.body.innerHTML = arguments[0];
            const drawn = document.body.firstElementChild;
            drawn.style.display = 'block';
            drawn.style.width = drawn.style.height = `${arguments[1]}px`;",
            &[json!(drawing), json!(size)],
        );
        let drawn = with_palette(&browser.picture_of(size, size));
        fs::write(icons.join(name), drawn).expect("icons can be written");
        println!("{}", icons.join(name).display());
    }
}

/// The colours of a palette. The mark has seven, and the rest are its soft edges.
const COLOURS: usize = 32;

/// The picture with a palette: about a third of the size, to the eye the same.
fn with_palette(picture: &[u8]) -> Vec<u8> {
    let mut decoder = png::Decoder::new(Cursor::new(picture));
    decoder.set_transformations(Transformations::ALPHA | Transformations::STRIP_16);
    let mut reader = decoder.read_info().expect("Chromium draws a PNG");
    let mut dots = vec![0; reader.output_buffer_size().expect("a picture of usual size")];
    let frame = reader.next_frame(&mut dots).expect("the picture is whole");
    dots.truncate(frame.buffer_size());

    let palette = NeuQuant::new(1, COLOURS, &dots);
    let indices: Vec<u8> = dots.chunks_exact(4).map(|dot| palette.index_of(dot) as u8).collect();
    let colours = palette.color_map_rgba();
    let colour = |at: usize| colours.chunks_exact(4).map(move |dot| dot[at]);

    let mut out = Vec::new();
    let mut encoder = Encoder::new(&mut out, frame.width, frame.height);
    encoder.set_color(ColorType::Indexed);
    encoder.set_depth(BitDepth::Eight);
    encoder.set_palette(
        colours.chunks_exact(4).flat_map(|dot| dot[..3].to_vec()).collect::<Vec<u8>>(),
    );
    encoder.set_trns(colour(3).collect::<Vec<u8>>());
    encoder.set_compression(Compression::High);
    encoder.set_filter(Filter::NoFilter);
    let mut writer = encoder.write_header().expect("it is written to memory");
    writer.write_image_data(&indices).expect("as many dots as it has");
    writer.finish().expect("it is written to memory");
    out
}
