//! What a biochar is made of: the bag's own figures where it prints them,
//! otherwise what is usual for its feedstock.

use crate::bag::certificate::given;
use crate::case::{Bag, CertificateItem, Feedstock};
use crate::quantity::{Band, Grounds, Input, Measures, Note, Unit, shown};
use crate::sources::*;

/// A biochar, on a dry basis.
#[derive(Clone, Debug, PartialEq)]
pub struct Material {
    /// Its feedstock; `None` when nobody said and wood is assumed.
    pub feedstock: Option<Feedstock>,
    /// Bulk density, kg/m³.
    pub bulk_density: Band,
    /// pH.
    pub ph: Band,
    /// Liming value, % CaCO3.
    pub liming: Band,
    /// Exchange capacity, cmol(c)/kg.
    pub cec: Band,
    /// Water it takes up, g per g.
    pub water: Band,
    /// Total phosphorus, %.
    pub phosphorus: Band,
    /// Total potassium, %.
    pub potassium: Band,
    /// Total calcium, %.
    pub calcium: Band,
    /// Total magnesium, %.
    pub magnesium: Band,
    /// Total sulfur, %.
    pub sulfur: Band,
    /// Total sodium, %.
    pub sodium: Band,
    /// Electrical conductivity, dS/m, when the bag gives it.
    pub ec: Option<f64>,
    /// What was assumed, in a reader's words.
    pub assumed: Vec<Note>,
}

/// Usual properties of a biochar.
struct Usual {
    bulk_density: Band,
    ph: Band,
    liming: Band,
    cec: Band,
    water: Band,
    /// P, K, Ca, Mg, S, Na, % in all.
    totals: [f64; 6],
}

// From `engine/facts/feedstocks.csv`, in the order of the feedstocks.
include!(concat!(env!("OUT_DIR"), "/feedstocks.rs"));

fn usual(feedstock: Feedstock) -> &'static Usual {
    &USUAL[feedstock as usize]
}

/// What a biochar made of wood of any kind spans: both ends, and the middle
/// between the two usual values.
fn wood() -> Usual {
    let (soft, hard) = (usual(Feedstock::Softwood), usual(Feedstock::Hardwood));
    let span = |a: Band, b: Band| {
        Band::new(a.low.min(b.low), f64::midpoint(a.likely, b.likely), a.high.max(b.high))
    };
    Usual {
        bulk_density: span(soft.bulk_density, hard.bulk_density),
        ph: span(soft.ph, hard.ph),
        liming: span(soft.liming, hard.liming),
        cec: span(soft.cec, hard.cec),
        water: span(soft.water, hard.water),
        totals: std::array::from_fn(|i| f64::midpoint(soft.totals[i], hard.totals[i])),
    }
}

/// The contents that a certificate gives, in the order of [`Usual::totals`].
const CONTENTS: [CertificateItem; 6] = [
    CertificateItem::Phosphorus,
    CertificateItem::Potassium,
    CertificateItem::Calcium,
    CertificateItem::Magnesium,
    CertificateItem::Sulfur,
    CertificateItem::Sodium,
];

/// Usual contents lie within this factor of the likely one, either way.
/// Source: our choice.
const CONTENT_WITHIN: f64 = 2.5;

/// Exchange capacity by the temperature the biochar was made at, °C, as a
/// factor on what is usual.
/// Source: our choice, by the direction of the reviews: hotter holds less.
const CEC_BY_HEAT: [(f64, f64); 4] = [(400.0, 1.3), (500.0, 1.0), (600.0, 0.7), (700.0, 0.5)];

/// pH for each degree above the 500 °C that the usual figures stand for, from
/// 350 to 600 °C. Source: our choice (0.5 for 100 °C).
const PH_PER_DEGREE: f64 = 0.005;

impl Material {
    /// The biochar of a bag. Figures of the bag or its certificate replace the
    /// usual ones, within 10 % either way (pH within 0.3). The temperature it
    /// was made at moves the usual exchange capacity and pH; its ash bounds the
    /// lime there is in it.
    pub fn of(bag: &Bag) -> Material {
        let of_wood = wood();
        let usual = match bag.feedstock {
            Some(feedstock) => usual(feedstock),
            None => &of_wood,
        };
        let mut said = Said { bag, assumed: Vec::new() };
        if bag.feedstock.is_none() {
            said.assumed.push("The biochar is made of wood, soft or hard; nobody said.".into());
        }
        let heat = said.certified(CertificateItem::MadeAt);
        let bulk_density = said
            .printed(bag.bulk_density, (20.0, 1500.0), "bulk density")
            .map_or(usual.bulk_density, within);
        let liming = said.liming(usual.liming);
        let ph = said.ph(usual.ph, heat);
        let cec = said.cec(usual.cec, heat);
        if heat.is_some() {
            said.assumed.push(
                "The temperature it was made at moves the usual pH and exchange capacity.".into(),
            );
        }
        let water = said.certified(CertificateItem::Water).map_or(usual.water, within);
        let [phosphorus, potassium, calcium, magnesium, sulfur, sodium] =
            std::array::from_fn(|i| match said.certified(CONTENTS[i]) {
                Some(content) => within(content),
                None => {
                    let likely = usual.totals[i];
                    Band::new(likely / CONTENT_WITHIN, likely, likely * CONTENT_WITHIN)
                }
            });
        let ec = said.printed(bag.ec, (0.0, 100.0), "salts (EC) of the biochar");
        Material {
            feedstock: bag.feedstock,
            bulk_density,
            ph,
            liming,
            cec,
            water,
            phosphorus,
            potassium,
            calcium,
            magnesium,
            sulfur,
            sodium,
            ec,
            assumed: said.assumed,
        }
    }

    /// Whether it limes: more than 3 % CaCO3.
    /// Source: our choice, from published liming values of 0.3 to 12.8 %.
    pub fn limes(&self) -> bool {
        self.liming.likely > 3.0
    }

    /// Adds to the grounds of a number what the material is taken to be.
    pub fn explain(&self, mut grounds: Grounds, what: &[(&str, Band, Unit)]) -> Grounds {
        for (name, band, unit) in what {
            let value = shown(band, *unit, Measures::Metric);
            grounds.inputs.push(Input::new(*name, value));
        }
        grounds.assumed.extend(self.assumed.iter().cloned());
        let woods = [Feedstock::Softwood, Feedstock::Hardwood];
        for feedstock in self.feedstock.as_ref().map_or(&woods[..], std::slice::from_ref) {
            grounds.cite(USUAL_CITED[*feedstock as usize]);
        }
        grounds
    }
}

/// What a bag says, and what must be said of it.
struct Said<'a> {
    bag: &'a Bag,
    assumed: Vec<Note>,
}

impl Said<'_> {
    /// What is printed on the bag, unless it can't be.
    fn printed(
        &mut self,
        printed: Option<f64>,
        (least, most): (f64, f64),
        what: &str,
    ) -> Option<f64> {
        let value = printed?;
        if (least..=most).contains(&value) {
            return Some(value);
        }
        self.assumed.push(format!(
            "The {what} given ({value}) can't be right: it must be {least} to {most}. The usual \
             one is taken instead."
        ).into());
        None
    }

    fn liming(&mut self, usual: Band) -> Band {
        if let Some(liming) = self.printed(self.bag.liming_percent, (0.0, 100.0), "liming value") {
            return within(liming);
        }
        // Lime is a part of the ash.
        let ash = self.certified(CertificateItem::Ash).unwrap_or(f64::INFINITY);
        usual.map(|liming| liming.min(ash))
    }

    fn ph(&mut self, usual: Band, heat: Option<f64>) -> Band {
        if let Some(ph) = self.printed(self.bag.ph, (2.0, 13.0), "pH of the biochar") {
            return Band::new(ph - 0.3, ph, ph + 0.3);
        }
        let hotter = heat.map_or(0.0, |c| c.clamp(350.0, 600.0) - 500.0);
        usual.map(|ph| ph + PH_PER_DEGREE * hotter)
    }

    fn cec(&mut self, usual: Band, heat: Option<f64>) -> Band {
        if let Some(cec) = self.certified(CertificateItem::Cec) {
            return within(cec);
        }
        let factor = heat.map_or(1.0, |c| between(&CEC_BY_HEAT, c));
        usual.map(|cec| cec * factor)
    }

    /// What the certificate says, unless it can't be.
    fn certified(&mut self, what: CertificateItem) -> Option<f64> {
        match given(self.bag, what) {
            Ok(value) => value,
            Err(why) => {
                self.assumed.push(why.into());
                None
            }
        }
    }
}

/// A measured figure with what a laboratory can be off: 10 %.
/// Source: our choice.
fn within(value: f64) -> Band {
    Band::new(value * 0.9, value, value * 1.1)
}

/// The value at `x` on straight lines between points; the end values beyond.
pub(crate) fn between(points: &[(f64, f64)], x: f64) -> f64 {
    let mut before: Option<(f64, f64)> = None;
    for &(at, value) in points {
        if x <= at {
            return before
                .map_or(value, |(from, start)| start + (value - start) * (x - from) / (at - from));
        }
        before = Some((at, value));
    }
    before.map_or(0.0, |(_, value)| value)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::case::CertificateFigure;

    fn bag(figures: &[(CertificateItem, f64)]) -> Bag {
        let figure = |&(what, value)| CertificateFigure { what, value };
        let certificate = figures.iter().map(figure).collect();
        Bag { feedstock: Some(Feedstock::Hardwood), certificate, ..Bag::default() }
    }

    #[test]
    fn a_certificate_narrows_the_bounds_and_a_bare_bag_keeps_them_wide() {
        let bare = Material::of(&bag(&[]));
        let tested = Material::of(&bag(&[
            (CertificateItem::Cec, 22.0),
            (CertificateItem::Potassium, 1.4),
            (CertificateItem::Water, 3.0),
        ]));
        let width = |b: Band| b.high / b.low;
        for (wide, narrow, value) in [
            (bare.cec, tested.cec, 22.0),
            (bare.potassium, tested.potassium, 1.4),
            (bare.water, tested.water, 3.0),
        ] {
            assert_eq!(narrow.likely, value);
            assert!(width(narrow) < 1.25 && width(wide) > 3.0, "{wide:?} {narrow:?}");
        }
        assert_eq!(bare.calcium, tested.calcium);
    }

    #[test]
    fn heat_lowers_exchange_and_lifts_ph_unless_they_are_measured() {
        let at = |c| Material::of(&bag(&[(CertificateItem::MadeAt, c)]));
        assert_eq!(at(500.0).cec, Material::of(&bag(&[])).cec);
        assert!((at(400.0).cec.likely - 26.0).abs() < 1e-9);
        assert!((at(550.0).cec.likely - 17.0).abs() < 1e-9);
        assert!((at(900.0).cec.likely - 10.0).abs() < 1e-9);
        assert!((at(600.0).ph.likely - 9.3).abs() < 1e-9);
        assert_eq!(at(800.0).ph, at(600.0).ph);
        let figures = [(CertificateItem::MadeAt, 700.0), (CertificateItem::Cec, 30.0)];
        let measured = Bag { ph: Some(7.4), ..bag(&figures) };
        let measured = Material::of(&measured);
        assert_eq!((measured.cec.likely, measured.ph.likely), (30.0, 7.4));
    }

    #[test]
    fn there_is_no_more_lime_than_ash() {
        let little = Material::of(&bag(&[(CertificateItem::Ash, 1.5)]));
        assert!(little.liming.high <= 1.5 && !little.limes(), "{:?}", little.liming);
        let much = Material::of(&bag(&[(CertificateItem::Ash, 30.0)]));
        assert_eq!(much.liming, Material::of(&bag(&[])).liming);
        let measured = Bag { liming_percent: Some(8.0), ..bag(&[(CertificateItem::Ash, 1.5)]) };
        assert_eq!(Material::of(&measured).liming.likely, 8.0);
    }

    #[test]
    fn what_cannot_be_leaves_the_usual_figure_and_is_said() {
        let usual = Material::of(&bag(&[]));
        let wrong = Material::of(&Bag {
            ph: Some(20.0),
            ec: Some(-1.0),
            ..bag(&[(CertificateItem::Ash, 130.0), (CertificateItem::Cec, 9000.0)])
        });
        assert_eq!((wrong.ph, wrong.cec, wrong.liming), (usual.ph, usual.cec, usual.liming));
        assert_eq!(wrong.ec, None);
        let said = wrong.assumed.iter().filter(|text| text.contains("can't be right")).count();
        assert_eq!(said, 4, "{:?}", wrong.assumed);
    }
}
