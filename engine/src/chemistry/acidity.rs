//! The acidity that sits on the exchange: reported, from a named buffer, or
//! only bounded by pH.

use crate::quantity::{Band, Grounds, Unit, significant};
use crate::question::{Question, QuestionId};
use crate::soil::{Measure, Method, MethodKind, Property, Soil};
use crate::sources::{
    ADAMS_EVANS_1962, CLEMSON_CEC, COMMON_PRACTICE, Citation, NCDA_BUFFER, OUR_CHOICE, SMP_ACIDITY,
    UGA_ADAMS_EVANS, WOODRUFF_ACIDITY,
};

/// Exchangeable acidity, meq/100 g, and what it rests on.
pub(super) struct Acidity {
    pub band: Band,
    pub grounds: Grounds,
}

/// Acidity by the Mehlich buffer is this many meq/100 cm³ for each unit the
/// buffer pH lies below its start.
pub(crate) const MEHLICH_PER_PH: f64 = 4.0;
/// pH of the Mehlich buffer before soil is added.
pub(crate) const MEHLICH_START: f64 = 6.6;

/// From this pH no acidity is counted.
const NONE_FROM_PH: f64 = 7.0;
/// Base unsaturation is not taken beyond this, however acid the soil.
const MOST_UNSATURATION: f64 = 0.9;
/// Of what the curve says beyond its value at pH 7, this share is likely there.
/// Source: our choice, the middle between two open sets of samples: where the
/// capacity was measured the acidity is next to none, where it was summed with
/// a buffer it is about what the curve says.
const LIKELY_OF_CURVE: f64 = 0.75;
/// Laboratories whose buffer works up to pH 7 find this much more of the
/// exchange held by acidity than the curve says.
const BEYOND_THE_CURVE: f64 = 0.1;

/// The acidity beside this many bases (meq/100 g); `None` when neither
/// acidity, a named buffer nor a pH is reported. Asks for the buffer's name
/// when that is all that is missing.
pub(super) fn acidity(soil: &Soil, bases: f64, questions: &mut Vec<Question>) -> Option<Acidity> {
    if let Some(reported) = soil.value(Property::ExchangeableAcidity) {
        return Some(as_printed(reported));
    }
    let ph = soil.value(Property::Ph);
    if let Some(ph) = ph.filter(|v| *v >= NONE_FROM_PH) {
        let grounds =
            Grounds::new("No acidity is counted from pH 7.", &[COMMON_PRACTICE.unsourced()])
                .input("pH", significant(ph, 3));
        return Some(Acidity { band: Band::exactly(0.0), grounds });
    }
    let buffer = soil.get(Property::BufferPh);
    if let Some((reading, method)) = buffer.and_then(|m| Some((m.amount.exact()?, m.method))) {
        match method {
            Some(method) => {
                if let Some(found) = from_buffer(method, reading) {
                    return Some(found);
                }
            }
            None => questions.push(which_buffer()),
        }
    }
    bounded_by_ph(ph?, bases)
}

fn which_buffer() -> Question {
    Question::new(
        QuestionId::Buffer,
        "Which lime buffer did the lab use for the buffer pH?",
        "How much acidity the soil holds, and so its exchange capacity and its shares of calcium, magnesium and potassium.",
        &[Property::BufferPh],
    )
    .suggesting("SMP, Sikora, Mehlich, Adams–Evans and Woodruff are the usual ones.")
}

/// Acidity from a reading in a named buffer; `None` for a buffer without a
/// formula of its own.
fn from_buffer(method: Method, reading: f64) -> Option<Acidity> {
    let by = |factor: f64, start: f64, sources: &[Citation]| {
        let band = Band::exactly((factor * (start - reading)).max(0.0));
        let grounds = Grounds::new(
            format!("{}: acidity = {factor} × ({start:.1} − buffer pH).", method.label()),
            sources,
        )
        .input("buffer pH", significant(reading, 3));
        Acidity { band, grounds }
    };
    Some(match method {
        Method::AdamsEvansBuffer => by(8.0, 8.0, &[CLEMSON_CEC.opened(), UGA_ADAMS_EVANS.opened()]),
        Method::SmpBuffer | Method::SikoraBuffer => by(12.0, 7.0, &[SMP_ACIDITY.from_memory()]),
        Method::WoodruffBuffer => by(10.0, 7.0, &[WOODRUFF_ACIDITY.from_memory()]),
        Method::MehlichBuffer => {
            let per_volume =
                by(MEHLICH_PER_PH, MEHLICH_START, &[NCDA_BUFFER.opened(), OUR_CHOICE.unsourced()]);
            let ac = per_volume.band.likely;
            Acidity {
                band: Band::new(ac / 1.3, ac, ac / 0.8),
                grounds: per_volume.grounds.assume(
                    "This buffer gives acidity by volume. The scooped soil is taken to weigh 1.0 (0.8–1.3) g/cm³.",
                ),
            }
        }
        // Modified Mehlich laboratories print the acidity itself.
        _ => return None,
    })
}

/// The acidity that a named lime buffer finds, meq/100 g, and the pH up to
/// which it finds it: printed beside the buffer's name, or from its pH.
pub(crate) fn found_by_buffer(soil: &Soil) -> Option<(Band, f64, Grounds)> {
    let reading = soil.get(Property::BufferPh);
    let printed = soil.get(Property::ExchangeableAcidity);
    let named = |m: Option<&Measure>| m?.method.filter(|m| m.kind() == MethodKind::Buffer);
    let method = named(printed).or(named(reading))?;
    let up_to = match method {
        Method::MehlichBuffer | Method::ModifiedMehlichBuffer => MEHLICH_START,
        Method::SmpBuffer | Method::SikoraBuffer | Method::WoodruffBuffer => 7.0,
        Method::AdamsEvansBuffer => 8.0,
        _ => return None,
    };
    let Acidity { band, grounds } = match printed.filter(|m| m.unit == Unit::MeqPer100g) {
        Some(acidity) => as_printed(acidity.amount.exact()?),
        None => from_buffer(method, reading?.amount.exact()?)?,
    };
    Some((band, up_to, grounds))
}

fn as_printed(acidity: f64) -> Acidity {
    let grounds = Grounds::new("Acidity as the lab gives it.", &[])
        .input("exchangeable acidity", format!("{} meq/100 g", significant(acidity, 3)));
    Acidity { band: Band::exactly(acidity), grounds }
}

/// What a pH allows: from no acidity to a little more than the curve of base
/// unsaturation gives.
fn bounded_by_ph(ph: f64, bases: f64) -> Option<Acidity> {
    let share = base_unsaturation(ph);
    let beside = |share: f64| {
        let share = share.clamp(0.0, MOST_UNSATURATION);
        bases * share / (1.0 - share)
    };
    let grounds = Grounds::new(
        "No acidity is reported, so pH only bounds it, by pH = 7.79 − 5.55 h + 2.27 h², with h the share of the exchange that acidity holds. Likely is 0.75 of what h rises above its value at pH 7.",
        &[ADAMS_EVANS_1962.from_memory(), OUR_CHOICE.unsourced()],
    )
    .input("pH", significant(ph, 3))
    .assume("Acidity may be none, as labs find that measure the exchange capacity; or hold a tenth of the exchange more than the curve says, as labs find that add it up with a buffer.");
    let likely = (share - base_unsaturation(NONE_FROM_PH)) * LIKELY_OF_CURVE;
    let band = Band::new(0.0, beside(likely), beside(share + BEYOND_THE_CURVE));
    Some(Acidity { band, grounds })
}

/// The share of the exchange held by acidity at a pH in water, 0 to 1.
pub(crate) fn base_unsaturation(ph: f64) -> f64 {
    let under_the_root = 5.55 * 5.55 - 4.0 * 2.27 * (7.79 - ph);
    let share = (5.55 - under_the_root.max(0.0).sqrt()) / (2.0 * 2.27);
    share.clamp(0.0, 1.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn base_unsaturation_gives_back_its_ph_and_rises_with_acidity() {
        for ph in [5.0, 5.5, 6.0, 6.5, 7.0] {
            let h = base_unsaturation(ph);
            assert!((7.79 - 5.55 * h + 2.27 * h * h - ph).abs() < 1e-9, "pH {ph}");
        }
        assert_eq!(base_unsaturation(3.0), 1.0);
        assert_eq!(base_unsaturation(8.5), 0.0);
    }
}
