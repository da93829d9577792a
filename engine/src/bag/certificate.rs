//! What a biochar's certificate may say: the unit of each figure, and what it
//! can be at all. A figure that can't be is refused with a sentence, never
//! mended.

use crate::case::CertificateItem::{self, *};
use crate::case::{Bag, CertificateFigure};
use crate::quantity::Unit;

/// One thing that a certificate gives.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Item {
    /// What it is called in a sentence.
    pub label: &'static str,
    /// Its unit, on a dry basis.
    pub unit: Unit,
    /// The least it can be.
    pub least: f64,
    /// The most it can be.
    pub most: f64,
}

/// What each thing is called, its unit, and the least and most it can be.
/// Source: our choice: wider than anything published for charcoal and biochar.
const ITEMS: [(CertificateItem, &str, Unit, f64, f64); 24] = [
    (MadeAt, "temperature it was made at", Unit::Celsius, 250.0, 1200.0),
    (Ash, "ash", Unit::Percent, 0.0, 95.0),
    (OrganicCarbon, "organic carbon", Unit::Percent, 1.0, 99.0),
    (HydrogenToCarbon, "ratio of H to organic C (molar)", Unit::None, 0.0, 2.0),
    (OxygenToCarbon, "ratio of O to organic C (molar)", Unit::None, 0.0, 1.5),
    (Cec, "exchange capacity of the biochar", Unit::MeqPer100g, 0.0, 500.0),
    (Water, "water it takes up (times its weight)", Unit::None, 0.1, 15.0),
    (ParticleSize, "size that nine tenths of it pass", Unit::Mm, 0.01, 200.0),
    (Nitrogen, "total nitrogen", Unit::Percent, 0.0, 15.0),
    (Phosphorus, "total phosphorus (P)", Unit::Percent, 0.0, 20.0),
    (Potassium, "total potassium (K)", Unit::Percent, 0.0, 30.0),
    (Calcium, "total calcium (Ca)", Unit::Percent, 0.0, 40.0),
    (Magnesium, "total magnesium (Mg)", Unit::Percent, 0.0, 20.0),
    (Sulfur, "total sulfur (S)", Unit::Percent, 0.0, 10.0),
    (Sodium, "total sodium (Na)", Unit::Percent, 0.0, 15.0),
    (Arsenic, "arsenic", Unit::MgPerKg, 0.0, 10_000.0),
    (Cadmium, "cadmium", Unit::MgPerKg, 0.0, 1_000.0),
    (Chromium, "chromium", Unit::MgPerKg, 0.0, 50_000.0),
    (Copper, "copper", Unit::MgPerKg, 0.0, 50_000.0),
    (Lead, "lead", Unit::MgPerKg, 0.0, 50_000.0),
    (Mercury, "mercury", Unit::MgPerKg, 0.0, 1_000.0),
    (Nickel, "nickel", Unit::MgPerKg, 0.0, 50_000.0),
    (Zinc, "zinc", Unit::MgPerKg, 0.0, 50_000.0),
    (Pah16, "sum of 16 PAH", Unit::MgPerKg, 0.0, 50_000.0),
];

/// Shares of one whole, which can't add up to more than it.
/// Source: arithmetic.
const WHOLES: [&[CertificateItem]; 2] = [
    &[Ash, OrganicCarbon, Nitrogen],
    &[OrganicCarbon, Nitrogen, Phosphorus, Potassium, Calcium, Magnesium, Sulfur, Sodium],
];
/// What they may add up to, %. Source: arithmetic, with 1 % for rounding.
const WHOLE: f64 = 101.0;

/// The name, unit and bounds of a thing.
pub fn item(what: CertificateItem) -> Item {
    let found = ITEMS.iter().find(|row| row.0 == what);
    // Every thing has a row; a test walks them.
    let (label, unit, least, most) = found
        .map_or(("", Unit::None, 0.0, 0.0), |&(_, label, unit, least, most)| {
            (label, unit, least, most)
        });
    Item { label, unit, least, most }
}

/// The figure that counts when one is given twice: the last.
fn last(bag: &Bag, what: CertificateItem) -> Option<&CertificateFigure> {
    bag.certificate.iter().rev().find(|figure| figure.what == what)
}

/// What the certificate of a bag says of one thing; nothing when it says
/// nothing.
///
/// # Errors
/// A sentence for the reader, when what it says can't be.
pub fn given(bag: &Bag, what: CertificateItem) -> Result<Option<f64>, String> {
    let Some(figure) = last(bag, what) else { return Ok(None) };
    let Item { label, unit, least, most } = item(what);
    let value = figure.value;
    let shown = format!("{value} {}", unit.symbol());
    let shown = shown.trim_end();
    if !(least..=most).contains(&value) {
        return Err(format!(
            "The {label} given ({shown}) can't be right: it must be {least} to {most}. \
             Look at the certificate again; until then the usual figure is taken."
        ));
    }
    for whole in WHOLES.iter().filter(|whole| whole.contains(&what)) {
        let sum: f64 = whole.iter().filter_map(|part| last(bag, *part)).map(|f| f.value).sum();
        if sum > WHOLE {
            return Err(format!(
                "The {label} given ({shown}) can't be right: with the other parts of the \
                 biochar it makes {sum:.0} %. Look at the certificate again; until then the \
                 usual figure is taken."
            ));
        }
    }
    Ok(Some(value))
}

/// What a certificate says that can't be, and what is doubtful in it, for the
/// reader.
pub fn doubts(bag: &Bag) -> Vec<String> {
    let mut doubts: Vec<String> = Vec::new();
    for what in CertificateItem::ALL {
        let (figures, label) = (bag.certificate.iter(), item(what).label);
        if figures.filter(|figure| figure.what == what).count() > 1 {
            doubts.push(format!("The {label} is given twice; the last one counts."));
        }
        doubts.extend(given(bag, what).err());
    }
    let sound = |what| given(bag, what).ok().flatten();
    if let Some(ash) = sound(Ash) {
        let minerals: f64 =
            [Phosphorus, Potassium, Calcium, Magnesium, Sodium].into_iter().filter_map(sound).sum();
        if minerals > ash + 1.0 {
            doubts.push(format!(
                "Phosphorus, potassium, calcium, magnesium and sodium make {minerals:.1} %, more \
                 than the ash they are part of ({ash} %). One of these figures is wrong, or one \
                 is printed as an oxide (P2O5, K2O)."
            ));
        }
    }
    doubts
}

#[cfg(test)]
mod tests {
    use super::*;

    fn bag(figures: &[(CertificateItem, f64)]) -> Bag {
        let figure = |&(what, value)| CertificateFigure { what, value };
        Bag { certificate: figures.iter().map(figure).collect(), ..Bag::default() }
    }

    #[test]
    fn every_thing_has_a_row_with_a_name_and_a_stretch() {
        for what in CertificateItem::ALL {
            let Item { label, least, most, .. } = item(what);
            assert!(!label.is_empty() && least < most, "{what:?}");
        }
    }

    #[test]
    fn what_cannot_be_is_refused_with_a_sentence() {
        for (what, value) in [(Ash, 130.0), (OrganicCarbon, -2.0), (MadeAt, 40.0), (Lead, f64::NAN)]
        {
            let why = given(&bag(&[(what, value)]), what).expect_err("it can't be");
            assert!(why.contains("can't be right"), "{why}");
        }
        assert_eq!(given(&bag(&[(Ash, 4.0)]), Ash), Ok(Some(4.0)));
        assert_eq!(given(&bag(&[(Ash, 4.0)]), Cec), Ok(None));
    }

    #[test]
    fn parts_of_more_than_the_whole_are_all_refused() {
        let bag = bag(&[(Ash, 45.0), (OrganicCarbon, 78.0), (Cec, 20.0)]);
        assert!(given(&bag, Ash).is_err_and(|why| why.contains("123 %")));
        assert!(given(&bag, OrganicCarbon).is_err());
        assert_eq!(given(&bag, Cec), Ok(Some(20.0)));
        assert_eq!(doubts(&bag).len(), 2);
    }

    #[test]
    fn a_figure_given_twice_and_minerals_beyond_the_ash_are_doubted() {
        let twice = bag(&[(Ash, 4.0), (Ash, 6.0)]);
        assert_eq!(given(&twice, Ash), Ok(Some(6.0)));
        assert!(doubts(&twice)[0].contains("twice"));
        let minerals = bag(&[(Ash, 4.0), (Potassium, 4.0), (Calcium, 3.0)]);
        assert!(doubts(&minerals)[0].contains("7.0 %"), "{:?}", doubts(&minerals));
    }
}
