//! A layer of the profile: a full-width band under an uneven edge.

use leptos::prelude::*;

/// Which layer of the soil a band is drawn as.
#[derive(Clone, Copy)]
pub enum Stratum {
    /// The dark topsoil: what to do.
    Humus,
    /// The jobs.
    Loam,
    /// What the soil holds.
    Ochre,
    /// Why.
    Clay,
    /// The rock everything stands on: what specialists look for.
    Rock,
}

impl Stratum {
    fn class(self) -> &'static str {
        match self {
            Stratum::Humus => "layer humus",
            Stratum::Loam => "layer loam",
            Stratum::Ochre => "layer ochre",
            Stratum::Clay => "layer clay",
            Stratum::Rock => "layer rock",
        }
    }

    /// Its upper edge, drawn by hand in a box of 1200 by 32.
    fn edge(self) -> &'static str {
        match self {
            Stratum::Humus => {
                "M0 20C60 14 110 19 170 17S300 9 360 13 470 22 540 18 660 10 740 14 850 21 920 16 1060 10 1120 15 1180 18 1200 15V33H0Z"
            }
            Stratum::Loam => {
                "M0 12C50 15 80 25 140 24S240 12 300 11 390 20 450 23 560 27 620 19 720 6 800 9 900 22 970 23 1080 14 1130 12 1180 16 1200 18V33H0Z"
            }
            Stratum::Ochre => {
                "M0 22C70 26 120 16 200 14S310 22 380 24 480 15 560 12 650 15 720 20 830 27 900 22 1000 10 1070 11 1160 20 1200 21V33H0Z"
            }
            Stratum::Clay => {
                "M0 15C40 12 100 10 160 15S270 26 340 24 440 11 510 10 620 20 700 23 800 18 860 13 970 12 1040 18 1150 25 1200 22V33H0Z"
            }
            Stratum::Rock => {
                "M0 14L70 18 130 10 210 15 260 24 350 20 420 12 510 16 560 25 650 22 700 13 790 11 860 20 930 24 1010 15 1080 17 1140 9 1200 14V33H0Z"
            }
        }
    }

    /// What lies in it: how far from the left, in per cent, and a shape in a
    /// box of 40 by 40.
    fn grains(self) -> &'static [(&'static str, &'static str)] {
        match self {
            Stratum::Humus => &[
                ("7%", "M20 0C18 10 24 16 20 28M20 12C14 16 12 20 6 22"),
                ("31%", "M20 0C24 8 16 14 19 22M20 10C26 12 30 18 35 17"),
                ("58%", "M20 0C17 12 25 18 21 34M20 16C13 18 11 25 5 27M21 22C28 24 29 28 35 30"),
                ("83%", "M20 0C22 7 17 13 20 20M19 12C13 14 12 17 8 18"),
            ],
            Stratum::Loam => &[
                ("12%", "M8 18C10 14 15 15 15 19S9 23 8 18ZM26 9C28 7 31 8 31 11S26 12 26 9Z"),
                ("47%", "M18 22C20 18 26 19 26 23S19 27 18 22Z"),
                ("71%", "M6 10C8 8 11 9 11 12S6 13 6 10ZM24 20C26 17 31 18 31 21S25 25 24 20Z"),
                ("92%", "M14 16C16 12 21 13 21 17S15 21 14 16Z"),
            ],
            Stratum::Ochre => &[
                ("18%", "M10 14H13M20 20H24M29 12H31"),
                ("52%", "M8 20H12M22 12H24M30 22H33"),
                ("86%", "M12 12H15M21 22H25M31 15H33"),
            ],
            Stratum::Clay => &[
                ("9%", "M4 14C14 10 24 18 36 13M10 22C18 19 24 25 32 21"),
                ("40%", "M6 18C14 14 24 21 34 16"),
                ("76%", "M4 13C14 17 24 10 36 15M12 23C18 20 26 25 33 22"),
            ],
            Stratum::Rock => &[
                ("11%", "M2 30L8 14 24 10 36 20 32 32ZM14 12L18 24 32 30"),
                ("43%", "M4 28L12 12 28 13 34 26 22 33ZM12 12L19 25 22 33"),
                ("74%", "M2 26L14 10 30 14 37 28 18 34ZM14 10L17 24 37 28"),
            ],
        }
    }
}

/// A band with its heading; `id` is its place in the page.
pub fn layer(
    stratum: Stratum,
    id: &'static str,
    title: &'static str,
    inside: impl IntoView,
) -> impl IntoView {
    let heading = format!("{id}-title");
    let labelled_by = heading.clone();
    view! {
        <section id=id class=stratum.class() aria-labelledby=labelled_by>
            {edge(stratum)}
            <div class="layer-inside">
                <h2 id=heading>{title}</h2>
                {inside}
            </div>
        </section>
    }
}

/// The uneven upper edge and what lies just under it; decoration only.
pub fn edge(stratum: Stratum) -> impl IntoView {
    view! {
        <svg class="edge" viewBox="0 0 1200 32" preserveAspectRatio="none" aria-hidden="true">
            <path d=stratum.edge() />
        </svg>
        <svg class="grains" aria-hidden="true">
            {stratum
                .grains()
                .iter()
                .map(|(from_left, shape)| {
                    view! {
                        <svg x=*from_left width="40" height="40" overflow="visible">
                            <path d=*shape />
                        </svg>
                    }
                })
                .collect_view()}
        </svg>
    }
}

/// The grass on top of the profile; decoration only.
pub fn turf() -> impl IntoView {
    const TUFTS: [&str; 12] =
        ["2%", "9%", "17%", "22%", "34%", "41%", "55%", "61%", "70%", "79%", "88%", "96%"];
    const BLADES: [&str; 3] = [
        "M8 24C8 16 5 10 1 6M9 24C9 14 10 8 12 2M10 24C11 17 14 13 18 11",
        "M8 24C7 18 4 14 0 13M9 24C8 14 8 10 7 5M10 24C12 16 14 11 17 8",
        "M9 24C9 18 7 14 4 11M10 24C11 15 13 9 17 5",
    ];
    view! {
        <svg class="turf" aria-hidden="true">
            {TUFTS
                .iter()
                .enumerate()
                .map(|(i, from_left)| {
                    view! {
                        <svg x=*from_left width="20" height="24" overflow="visible">
                            <path d=BLADES[i % BLADES.len()] />
                        </svg>
                    }
                })
                .collect_view()}
        </svg>
    }
}
