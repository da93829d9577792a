//! Help where it is needed: how to take a sample, how to read a level, and a
//! short list of the trade's words. A word also opens in place, in what lies
//! behind a reading.

use emberloam_engine::soil::Property;
use emberloam_engine::sources::UMN_SAMPLING;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::JsFuture;
use web_sys::Response;

use crate::grounds::citation;
use crate::in_place::{text, unfolds};
use crate::report::files::tell;
use crate::words;

/// A trade word, the reading it is about, and what it means.
struct Word {
    name: &'static str,
    about: &'static [Property],
    means: &'static str,
}

/// In the order of the alphabet.
static WORDS: [Word; 24] = [
    Word {
        name: "base saturation",
        about: &[
            Property::BaseSaturation,
            Property::CalciumSaturation,
            Property::MagnesiumSaturation,
            Property::PotassiumSaturation,
        ],
        means: "How much of the soil's holding places calcium, magnesium, potassium and sodium fill. The rest is acid.",
    },
    Word {
        name: "biochar",
        about: &[],
        means: "Charcoal made for soil, from wood, straw or manure heated with little air. It lasts for a long time.",
    },
    Word {
        name: "boron, zinc, manganese, copper, iron",
        about: &[
            Property::Boron,
            Property::Zinc,
            Property::Manganese,
            Property::Copper,
            Property::Iron,
            Property::Molybdenum,
        ],
        means: "Plants need a trace of each. A little too much boron, zinc or copper harms, so don't add any without a test.",
    },
    Word {
        name: "buffer pH",
        about: &[Property::BufferPh, Property::ExchangeableAcidity, Property::AciditySaturation],
        means: "How far the soil pulls down the pH of a test liquid. The lab reads from it how much lime is needed.",
    },
    Word {
        name: "bulk density",
        about: &[Property::BulkDensity],
        means: "The weight of dry soil in a given space. It turns a share by volume into one by weight.",
    },
    Word {
        name: "calcium and magnesium",
        about: &[Property::Calcium, Property::Magnesium],
        means: "Two foods of plants that also keep the soil crumbly. Lime brings them; gypsum brings calcium alone.",
    },
    Word {
        name: "charged and uncharged",
        about: &[],
        means: "Charged biochar has taken up nutrients before it goes in. Uncharged biochar is fresh and takes them from the soil at first.",
    },
    Word {
        name: "EC, salts",
        about: &[Property::Ec, Property::Chloride],
        means: "How well the soil's water carries a current: the more salt, the more. Much salt keeps roots from drinking.",
    },
    Word {
        name: "exchange capacity (CEC)",
        about: &[Property::Cec],
        means: "How many nutrients with a plus charge the soil can hold on to. Sand has little, clay and humus have much.",
    },
    Word {
        name: "extractant",
        about: &[],
        means: "The liquid the lab shakes the soil with, such as Mehlich-3, Olsen or Bray. Each one gives its own numbers, so ranges fit only their own.",
    },
    Word {
        name: "field capacity",
        about: &[],
        means: "The water a soil still holds a day or two after a soaking rain.",
    },
    Word {
        name: "free lime",
        about: &[Property::FreeLime],
        means: "Bits of chalk in the soil. They keep the pH high, whatever is added.",
    },
    Word {
        name: "gypsum",
        about: &[],
        means: "A rock that brings calcium and sulfur without lifting the pH. It cures soils with too much sodium.",
    },
    Word {
        name: "lead, arsenic, cadmium",
        about: &[Property::Lead, Property::Arsenic, Property::Cadmium],
        means: "Metals that harm people. Ask your health office before you grow food where they are high, and keep dust off hands and food.",
    },
    Word {
        name: "nitrate and ammonium",
        about: &[Property::NitrateN, Property::AmmoniumN],
        means: "The nitrogen that plants can use now. Rain washes nitrate away, so a test is old after a few weeks.",
    },
    Word {
        name: "nitrogen to come",
        about: &[Property::NitrogenRelease, Property::TotalN],
        means: "Most nitrogen is bound in humus. A small part of it is set free each year.",
    },
    Word {
        name: "organic matter",
        about: &[Property::OrganicMatter, Property::OrganicCarbon],
        means: "What is left of plants, animals and dung. It holds water, feeds life and sets nutrients free. A bit more than half of it is carbon.",
    },
    Word {
        name: "pH",
        about: &[Property::Ph, Property::SaltPh],
        means: "How acid a soil is: 7 is neutral, less is acid, more is alkaline. One step is ten times as much. In a salt solution it reads about half a step lower.",
    },
    Word {
        name: "phosphorus",
        about: &[Property::Phosphorus],
        means: "Food for roots, flowers and seed. It moves little in soil; too much of it runs off into streams and ponds.",
    },
    Word {
        name: "potassium",
        about: &[Property::Potassium],
        means: "Food that helps plants through drought and cold. Potash on a bag is potassium with oxygen: 1.2 parts hold 1 part.",
    },
    Word {
        name: "ppm, mg/kg",
        about: &[],
        means: "Parts in a million. A ppm of soil by weight is a milligram in a kilogram.",
    },
    Word {
        name: "sodium, SAR, sodic",
        about: &[Property::Sodium, Property::SodiumSaturation, Property::Sar],
        means: "Too much sodium makes a soil seal and turn hard. SAR sets it against calcium and magnesium. A soil with too much is called sodic.",
    },
    Word {
        name: "sulfur",
        about: &[Property::Sulfur],
        means: "A food of plants, much of it from rain and humus. Pure sulfur makes a soil more acid; gypsum does not.",
    },
    Word {
        name: "texture: sand, silt, clay",
        about: &[Property::Sand, Property::Silt, Property::Clay],
        means: "The sizes of a soil's grains. Sand feels gritty, silt like flour, and wet clay rolls into a thread. A loam has some of each.",
    },
];

/// How to take a sample, step by step.
/// Source: University of Minnesota Soil Testing Laboratory (opened).
const SAMPLE: [&str; 7] = [
    "Take one sample for each bed or part of the garden that looks or is treated differently.",
    "Use a clean spade and a clean plastic bucket. A zinc bucket would spoil the test for zinc.",
    "In a bed, dig from the top down to 15 cm (6 in), or as deep as you till. In a lawn take 7 cm (3 in). Round trees take 30 cm (12 in).",
    "Dig at five spots at least, better ten or more. Take the same depth at each, and leave out mulch and thatch.",
    "For lead, scrape off only the top 2 cm (¾ in), where dust settles and children play.",
    "Mix all of it in the bucket, let it dry in the air, and send about half a litre (a pint) to a lab.",
    "Test at the same time each year, and not just after lime or fertiliser. Every two to three years is enough for most beds.",
];

/// How to read the levels.
const LEVELS: [(&str, &str); 5] = [
    ("Very low", "Plants will most likely be hungry for it. Feeding it pays."),
    ("Low", "Plants may be hungry for it in some years. A little helps."),
    ("Sufficient", "Enough. More brings no more crop."),
    ("High", "More than plants need. Add none."),
    ("Excess", "Far more than plants need. Add none; it can harm plants, or wash into water."),
];

/// The help, folded away until somebody wants it.
pub fn help() -> AnyView {
    let steps = SAMPLE.map(|step| view! { <li>{step}</li> });
    let levels = LEVELS.map(|(name, means)| {
        view! {
            <div>
                <dt>{name}</dt>
                <dd>{means}</dd>
            </div>
        }
    });
    let words: Vec<_> = WORDS
        .iter()
        .map(|word| {
            view! {
                <div>
                    <dt>{word.name}</dt>
                    <dd>{word.means}</dd>
                </div>
            }
        })
        .collect();
    view! {
        <details id="help" class="keep">
            <summary>
                <h2 class="report-title">{words::HELP}</h2>
            </summary>
            <h3>{words::HELP_SAMPLE}</h3>
            <ol>{steps}</ol>
            <p class="soft">{words::GROUNDS_SOURCES} ": " {citation(UMN_SAMPLING.opened())}</p>
            <h3>{words::HELP_LEVELS}</h3>
            <p>{words::HELP_LEVELS_INTRO}</p>
            <dl class="facts">{levels}</dl>
            <h3>{words::HELP_WORDS}</h3>
            <dl class="facts">{words}</dl>
            {licences()}
        </details>
    }
    .into_any()
}

/// The licences of all that is compiled in, fetched when they are opened.
fn licences() -> impl IntoView {
    let told = RwSignal::new(String::new());
    let fetched = move |open: bool| {
        if !open || !told.with_untracked(String::is_empty) {
            return;
        }
        leptos::task::spawn_local(async move {
            told.set(fetched().await.unwrap_or_else(|| words::LICENCES_MISSING.into()));
        });
    };
    view! {
        <details id="licences" class="fold" on:toggle=unfolds(fetched)>
            <summary>{words::LICENCES}</summary>
            <pre class="letter-report" tabindex="0" translate="no">{text(move || told.get())}</pre>
        </details>
    }
}

/// What the bundler wrote beside the page; who has opened it keeps it.
const FILE: &str = "licences.txt";

async fn fetched() -> Option<String> {
    let answer = JsFuture::from(window().fetch_with_str(FILE)).await.ok()?;
    let answer = answer.dyn_into::<Response>().ok().filter(Response::ok)?;
    tell("emberloam:keep", FILE);
    JsFuture::from(answer.text().ok()?).await.ok()?.as_string()
}

/// What the word for a property means.
pub fn meaning(property: Property) -> Option<&'static str> {
    WORDS.iter().find(|word| word.about.contains(&property)).map(|word| word.means)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_words_stand_in_order_and_each_property_has_one_word_at_most() {
        let names: Vec<String> = WORDS.iter().map(|word| word.name.to_lowercase()).collect();
        assert!(names.is_sorted(), "{names:?}");
        for property in Property::ALL {
            let words = WORDS.iter().filter(|word| word.about.contains(&property)).count();
            assert!(words <= 1, "{property:?} is explained {words} times");
        }
    }

    #[test]
    fn what_a_gardener_meets_in_a_report_is_explained() {
        for property in [Property::Ph, Property::Phosphorus, Property::Cec, Property::NitrateN] {
            assert!(meaning(property).is_some(), "{property:?}");
        }
    }
}
