//! A drawing on a canvas, sharp on any screen, in the page's own colours.
//! Every chart stands beside a table with the same numbers.

use gloo::events::EventListener;
use leptos::html::Canvas;
use leptos::prelude::*;
use plotters::coord::Shift;
use plotters::element::PathElement;
use plotters::prelude::{Color, DrawingArea, IntoDrawingArea, RGBColor, Text};
use plotters::style::text_anchor::{HPos, Pos, VPos};
use plotters::style::{FontDesc, FontFamily, FontStyle, RGBAColor, ShapeStyle, TextStyle};
use plotters_canvas::CanvasBackend;

use crate::language::say;

/// What a chart is drawn on.
pub type Sheet = DrawingArea<CanvasBackend, Shift>;

/// The colours and the size of things, read from the page.
#[derive(Clone, Copy)]
pub struct Pen {
    /// Text and axes.
    pub ink: RGBColor,
    /// Lines that only guide the eye.
    pub faint: RGBColor,
    /// What is likely.
    pub likely: RGBColor,
    /// What is possible.
    pub possible: RGBColor,
    /// Device pixels in one pixel of the page.
    pub scale: f64,
}

impl Pen {
    fn from_page() -> Option<Pen> {
        let window = web_sys::window()?;
        let root = window.document()?.document_element()?;
        let style = window.get_computed_style(&root).ok()??;
        let colour = |token: &str| parse(&style.get_property_value(token).ok()?);
        Some(Pen {
            ink: colour("--ink")?,
            faint: colour("--line")?,
            likely: colour("--ember")?,
            possible: colour("--possible")?,
            scale: window.device_pixel_ratio().max(1.0),
        })
    }

    /// The page's type at a size in the page's pixels. The family is named as
    /// a value: by its name it would bring every script's table of capitals.
    fn font(&self, size: f64) -> FontDesc<'static> {
        FontDesc::new(FontFamily::SansSerif, f64::from(self.px(size)), FontStyle::Normal)
    }

    /// Writes a text in the language of the page, set at a point by its anchor.
    pub fn write(&self, sheet: &Sheet, text: &str, at: (i32, i32), anchor: HPos) {
        let style =
            TextStyle::from(self.font(13.0)).color(&self.ink).pos(Pos::new(anchor, VPos::Center));
        // Ignored here as throughout the charts: a canvas that can't be drawn on stays blank; the
        // table has the same numbers.
        let _ = sheet.draw(&Text::new(say(text), at, style));
    }

    /// The style of a line, its width in the page's pixels.
    pub fn line(&self, colour: RGBAColor, width: f64) -> ShapeStyle {
        ShapeStyle { color: colour, filled: false, stroke_width: self.px(width).max(1) as u32 }
    }

    /// A length of the page in device pixels.
    pub fn px(&self, length: f64) -> i32 {
        (length * self.scale).round() as i32
    }
}

/// A level line across the chart with its number at the left; the strong one is the axis.
pub fn level_line(
    sheet: &Sheet,
    pen: &Pen,
    (left, right): (i32, i32),
    at: i32,
    is_axis: bool,
    number: &str,
) {
    let strength = if is_axis { 1.0 } else { 0.35 };
    let line = pen.line(pen.faint.mix(strength), 1.0);
    let _ = sheet.draw(&PathElement::new([(left, at), (right, at)], line));
    pen.write(sheet, number, (left - pen.px(8.0), at), HPos::Right);
}

/// Reads `#rrggbb`.
fn parse(hex: &str) -> Option<RGBColor> {
    let hex = hex.trim().strip_prefix('#')?;
    let part = |at: usize| u8::from_str_radix(hex.get(at..at + 2)?, 16).ok();
    (hex.len() == 6).then_some(RGBColor(part(0)?, part(2)?, part(4)?))
}

/// Counts the times the page's size or colours changed; charts follow it.
#[derive(Clone, Copy)]
pub struct Repaint {
    count: RwSignal<u32>,
    /// The pen of a count: the page is asked for its colours once, not by every chart.
    pen: StoredValue<Option<(u32, Pen)>>,
}

impl Repaint {
    /// Follows the window for as long as the page lives.
    pub fn follow() -> Repaint {
        let count = RwSignal::new(0);
        let again = move |_: &web_sys::Event| count.update(|n| *n += 1);
        if let Some(window) = web_sys::window() {
            EventListener::new(&window, "resize", again).forget();
            for query in ["(prefers-color-scheme: dark)", "(prefers-contrast: more)"] {
                if let Ok(Some(list)) = window.match_media(query) {
                    EventListener::new(&list, "change", again).forget();
                }
            }
        }
        Repaint { count, pen: StoredValue::new(None) }
    }

    /// Follows the changes, for what is drawn without a pen.
    pub fn track(self) {
        self.count.track();
    }

    /// The pen for the page as it is now.
    fn pen(self) -> Option<Pen> {
        let count = self.count.get();
        if let Some((of, pen)) = self.pen.get_value()
            && of == count
        {
            return Some(pen);
        }
        let pen = Pen::from_page()?;
        self.pen.set_value(Some((count, pen)));
        Some(pen)
    }
}

/// A canvas of `height` page pixels, drawn again when its data or the page change.
pub fn chart(
    repaint: Repaint,
    label: impl Fn() -> String + Send + Sync + 'static,
    height: impl Fn() -> f64 + Copy + Send + Sync + 'static,
    draw: impl Fn(&Sheet, &Pen) + 'static,
) -> impl IntoView {
    let canvas = NodeRef::<Canvas>::new();
    Effect::new(move |_| {
        let height = height();
        let (Some(canvas), Some(pen)) = (canvas.get(), repaint.pen()) else { return };
        let width = canvas.get_bounding_client_rect().width();
        if width < 1.0 || height < 1.0 {
            return;
        }
        canvas.set_width(pen.px(width) as u32);
        canvas.set_height(pen.px(height) as u32);
        if let Some(backend) = CanvasBackend::with_canvas_object(canvas) {
            draw(&backend.into_drawing_area(), &pen);
        }
    });
    view! {
        <canvas
            class="chart"
            node_ref=canvas
            role="img"
            aria-label=label
            style=("--height", move || format!("{}px", height()))
        ></canvas>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_colour_token_is_read_as_six_hex_digits() {
        assert_eq!(parse(" #2a2119"), Some(RGBColor(0x2a, 0x21, 0x19)));
        for text in ["", "#fff", "2a2119", "#2a211", "#gg2119"] {
            assert_eq!(parse(text), None, "{text}");
        }
    }
}
