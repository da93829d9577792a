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
    /// As its class and its shapes in `public/index.html` are called.
    fn name(self) -> &'static str {
        match self {
            Stratum::Humus => "humus",
            Stratum::Loam => "loam",
            Stratum::Ochre => "ochre",
            Stratum::Clay => "clay",
            Stratum::Rock => "rock",
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
        <section id=id class=format!("layer {}", stratum.name()) aria-labelledby=labelled_by>
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
    let name = stratum.name();
    view! {
        <svg class="edge" aria-hidden="true">
            <use href=format!("#edge-{name}") />
        </svg>
        <svg class="grains" aria-hidden="true">
            <use href=format!("#grains-{name}") />
        </svg>
    }
}

/// The grass on top of the profile; decoration only.
pub fn turf() -> impl IntoView {
    view! {
        <svg class="turf" aria-hidden="true">
            <use href="#turf" />
        </svg>
    }
}
