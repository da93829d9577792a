//! The answer as a picture for a slide or a video, 16 by 9: the verdict, what to
//! carry, and the months with their jobs.

use std::fmt::Write as _;

use emberloam_engine::summary::{self, Carried};
use leptos::prelude::untrack;

use crate::language::{own_or_said, say};
use crate::markup::escaped;
use crate::state::Page;
use crate::this_season::months::{named, shape, the_months};
use crate::this_season::picture::outline;
use crate::words;

/// Its width and height.
const WIDE: usize = 1600;
const HIGH: usize = 900;
/// The letters of the verdict in a line.
const LETTERS: usize = 42;
/// The things to carry that find room.
const CARRIED: usize = 4;

/// The picture as SVG; `None` without a report.
pub fn slide(page: Page) -> Option<String> {
    untrack(|| {
        let headline = page.of_plan(|plan| plan.headline.clone());
        let carried = page.of_outcome(summary::carry);
        (page.has_report()).then(|| drawn(page, &say(&headline), &carried))
    })
}

fn drawn(page: Page, headline: &str, carried: &[Carried]) -> String {
    let mut svg = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{WIDE}\" height=\"{HIGH}\" viewBox=\"0 0 {WIDE} {HIGH}\">\
         <rect width=\"{WIDE}\" height=\"{HIGH}\" fill=\"#f3ebdd\"/>\
         <path d=\"M0 96C200 76 380 104 620 88S1050 70 1240 92 1500 84 1600 78V{HIGH}H0Z\" fill=\"#362819\"/>"
    );
    let bed = own_or_said(&page.bed_name());
    let mut down = 180;
    write_at(&mut svg, 90, down, 34, "#dccdb2", "sans-serif", &bed);
    for line in lines(headline, LETTERS) {
        down += 78;
        write_at(&mut svg, 90, down, 66, "#f8efdd", "Georgia, serif", &line);
    }
    if let Some(first) = carried.first() {
        down += 66;
        write_at(&mut svg, 90, down, 30, "#dccdb2", "sans-serif", &say(&first.of_bed));
    }
    for one in carried.iter().take(CARRIED) {
        down += 64;
        // Ignored, here and below: writing into a text can't fail.
        let _ = write!(
            svg,
            "<path transform=\"translate(90 {}) scale(2)\" d=\"{}\" fill=\"none\" stroke=\"#f0a36d\" stroke-width=\"1.75\"/>",
            down - 40,
            outline(one.vessel)
        );
        let text = format!("{} {}", say(&one.amount), say(&words::of_what(&one.what)));
        write_at(&mut svg, 160, down, 42, "#f8efdd", "sans-serif", &text);
    }
    for (place, (month, jobs)) in the_months(page).iter().enumerate() {
        let left = 90 + place * 119;
        let busy = if jobs.is_empty() { "0.45" } else { "1" };
        let _ = write!(
            svg,
            "<g transform=\"translate({left} 712)\" text-anchor=\"middle\"><rect width=\"109\" height=\"130\" rx=\"10\" fill=\"none\" stroke=\"#a48c6d\" opacity=\"{busy}\"/>"
        );
        write_at(&mut svg, 54, 34, 26, "#f8efdd", "sans-serif", &named(*month, 3));
        for (row, (kind, begins)) in jobs.iter().take(3).enumerate() {
            let fill = if *begins { "#f0a36d" } else { "none" };
            let _ = write!(
                svg,
                "<path transform=\"translate(22 {}) scale(3)\" d=\"{}\" fill=\"{fill}\" stroke=\"#f0a36d\"/>",
                46 + row * 28,
                shape(*kind)
            );
        }
        svg.push_str("</g>");
    }
    write_at(&mut svg, 90, 878, 24, "#dccdb2", "sans-serif", words::NAME);
    svg.push_str("</svg>");
    svg
}

/// A line of text at a place.
fn write_at(svg: &mut String, x: usize, y: usize, size: usize, ink: &str, font: &str, text: &str) {
    let plain = escaped(text);
    let _ = write!(
        svg,
        "<text x=\"{x}\" y=\"{y}\" font-size=\"{size}\" fill=\"{ink}\" font-family=\"{font}\">{plain}</text>"
    );
}

/// A text in lines of so many letters, parted between words.
fn lines(text: &str, letters: usize) -> Vec<String> {
    let mut all: Vec<String> = Vec::new();
    for word in text.split_whitespace() {
        match all.last_mut() {
            Some(line) if line.chars().count() + 1 + word.chars().count() <= letters => {
                line.push(' ');
                line.push_str(word);
            }
            _ => all.push(word.into()),
        }
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_verdict_is_parted_between_words_and_loses_none() {
        let text = "Hold this surplus: work in uncharged biochar after harvest, before winter.";
        let parted = lines(text, 42);
        assert!(parted.iter().all(|line| line.chars().count() <= 42), "{parted:?}");
        assert_eq!(parted.join(" "), text);
        assert_eq!(lines("", 42).len(), 0);
    }

    #[test]
    fn what_a_person_typed_can_draw_nothing() {
        let mut svg = String::new();
        write_at(&mut svg, 0, 0, 10, "#000000", "serif", "<script>&");
        assert!(svg.contains("&lt;script&gt;&amp;"), "{svg}");
    }
}
