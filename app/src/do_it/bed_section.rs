//! The bed cut open, to scale: how thick the biochar lies, and how deep it is mixed in.

use emberloam_engine::quantity::{Unit, in_readers, readers_symbol, significant};
use leptos::prelude::*;

use crate::deferred::soon_of;
use crate::in_place::{Look, flag, text};
use crate::state::Page;
use crate::words;

/// The picture's box: so many to a millimetre of soil, and the sky above it.
const PER_MM: f64 = 0.4;
const SKY: f64 = 22.0;
const WIDE: f64 = 300.0;

/// Thickness of the biochar, mm, and depth it is mixed in, cm.
type Cut = Option<(f64, f64)>;

/// The picture with its words.
pub fn bed_section(page: Page) -> impl IntoView {
    let cut = soon_of(move || {
        page.of_plan(|plan| {
            let lies = plan.dose.thickness_mm();
            Cut::from((plan.uses_biochar() && lies > 0.0).then_some((lies, plan.dose.depth)))
        })
    });
    let of = move || cut.get().unwrap_or_default();
    let said = move || {
        let (lies, depth) = of();
        let measures = page.measures();
        let told = |cm: f64| {
            let number = significant(in_readers(cm, Unit::Cm, measures), 2);
            format!("{number}\u{a0}{}", readers_symbol(Unit::Cm, measures))
        };
        words::lies_and_mixed(&told(lies / 10.0), &told(depth))
    };
    let high = move || of().1 * 10.0 * PER_MM;
    view! {
        <figure class="bed-section" hidden=flag(move || cut.look(Option::is_none))>
            <svg
                viewBox=text(move || format!("0 0 {WIDE} {:.0}", SKY + high() + 14.0))
                aria-hidden="true"
            >
                <rect class="cut-below" x="0" y=SKY width=WIDE height="400" />
                <rect
                    class="cut-mixed"
                    x="0"
                    y=SKY
                    width=WIDE
                    height=text(move || format!("{:.1}", high()))
                />
                <rect
                    class="cut-biochar"
                    x="0"
                    y=text(move || format!("{:.1}", SKY - of().0 * PER_MM))
                    width=WIDE
                    height=text(move || format!("{:.1}", (of().0 * PER_MM).max(1.0)))
                />
                <path
                    class="cut-depth"
                    d=text(move || format!("M286 {SKY}V{0:.1}M280 {1:.1}L286 {0:.1}L292 {1:.1}", SKY + high(), SKY + high() - 7.0))
                />
            </svg>
            <figcaption>{text(said)}</figcaption>
        </figure>
    }
}
