//! A name as it stands in a report, understood: `Bray P-1 ppm P`,
//! `K_mg.kg`, `Phosphorus (Mehlich-3)`.

use super::fold::words;
use super::names::{Form, Meaning, Word, meaning_at};
use super::short_names::{beside_percent, danish, norm_at, respelled, strength_at};
use super::units::{Printed, unit_at, unit_round_form};
use crate::quantity::Unit;
use crate::soil::{Method, MethodKind, Property};

/// No name is longer; longer text is a sentence.
const LONGEST: usize = 120;

/// The parts of a name.
#[derive(Clone, Debug, Default)]
pub(super) struct Label {
    /// Properties and their form, in order.
    pub properties: Vec<(Property, Form)>,
    /// Methods, in order.
    pub methods: Vec<Method>,
    /// The first unit.
    pub unit: Option<Printed>,
    /// Words that are neither.
    pub words: Vec<Word>,
    /// Words nobody knows, as printed.
    pub unknown: Vec<String>,
    /// Whether every property was named by a chemical symbol.
    pub only_symbols: bool,
    /// Whether the last word is a method that lacks its number.
    pub ends_half: bool,
    /// `HCO3`: an extract, or the ion itself in a paste.
    is_ion: bool,
    /// `P mg/l (Index)`: the index stands behind the amount, as its class.
    index_behind: bool,
}

/// What a name stands for.
#[derive(Clone, Debug)]
pub(super) struct Quantity {
    pub property: Property,
    pub form: Form,
    pub method: Option<Method>,
    pub unit: Option<Printed>,
    /// The number is ten times a buffer pH.
    pub lime_index: bool,
    /// A share of the exchange only if its unit is %.
    pub share_if_percent: bool,
    pub notes: Vec<String>,
}

impl Label {
    /// Takes a name apart.
    pub fn of(text: &str) -> Label {
        let mut label = Label { only_symbols: true, ..Label::default() };
        // "N/A" was not analysed, and is no sodium.
        if text.len() > LONGEST || text.eq_ignore_ascii_case("n/a") {
            label.unknown.push(text.chars().take(20).collect());
            return label;
        }
        if let Some((_, property)) = beside_percent(text) {
            label.properties.push((property, Form::Element));
            label.only_symbols = false;
            let percent = Printed { unit: Unit::Percent, scale: 1.0 };
            label.unit = text.contains('%').then_some(percent);
            return label;
        }
        if let Some((property, method)) = danish(text) {
            label.properties.push((property, Form::Element));
            label.methods.push(method);
            let per_100_g = Printed { unit: Unit::MgPer100g, scale: 1.0 };
            label.unit = property.is_extracted().then_some(per_100_g);
            return label;
        }
        // "P (1)": see the first note.
        if let Some((name, note)) = text.strip_suffix(')').and_then(|t| t.rsplit_once(" ("))
            && matches!(note.as_bytes(), [b'1'..=b'9'])
        {
            let label = Label::of(name);
            if !label.properties.is_empty() && !label.ends_half {
                return label;
            }
        }
        let respelled = respelled(text);
        let text = respelled.as_deref().unwrap_or(text);
        let words = words(text);
        let mut i = 0;
        while i < words.len() {
            if let Some(length) = norm_at(&words[i..]).or_else(|| strength_at(&words[i..])) {
                i += length;
                continue;
            }
            let meaning = meaning_at(&words, i);
            let unit = unit_at(&words, i);
            // "Mg_M3" is no weight of a cubic metre.
            let by_mehlich = i == 0 && text.starts_with("Mg_M3");
            let unit = unit.filter(|_| !by_mehlich);
            let (length_m, length_u) = (meaning.map_or(0, |m| m.1), unit.map_or(0, |u| u.1));
            label.ends_half = false;
            // "mg P2O5/100 g": a unit with the form within it.
            if let Some((printed, length)) = unit_round_form(&words[i..])
                && let Some((meaning, 1)) = meaning_at(&words, i + 1)
            {
                label.unit.get_or_insert(printed);
                label.take(meaning, words[i + 1].text.len());
                i += length;
                continue;
            }
            if let Some((printed, length)) = unit.filter(|_| length_u > length_m) {
                label.unit.get_or_insert(printed);
                i += length;
            } else if let Some((meaning, length)) = meaning {
                let size: usize = words[i..i + length].iter().map(|w| w.text.len()).sum();
                label.take(meaning, size);
                i += length;
            } else {
                let word = &words[i];
                label.unknown.push(text[word.start..word.end].to_string());
                i += 1;
            }
        }
        label
    }

    fn take(&mut self, meaning: Meaning, size: usize) {
        let mut names = |property: Property, form| {
            let spelled_out = size > 3 || !property_has_symbol(property);
            self.only_symbols &= !spelled_out;
            self.properties.push((property, form));
        };
        match meaning {
            Meaning::Is(property, form) => names(property, form),
            Meaning::IsBy(property, method) => {
                names(property, Form::Element);
                self.methods.push(method);
            }
            Meaning::By(method) => {
                self.is_ion |= method == Method::Olsen && size == 4;
                self.methods.push(method);
            }
            Meaning::Word(word) => {
                self.ends_half = word == Word::HalfMethod;
                self.index_behind |= word == Word::Index && self.unit.is_some();
                self.words.push(word);
            }
        }
    }

    /// Whether a word of this sort stands in the name.
    pub fn has(&self, word: Word) -> bool {
        self.words.contains(&word)
    }

    /// `Bray P1` or `Olsen` alone: these take nothing but phosphorus.
    fn phosphorus_by_method(&self) -> bool {
        let only_p =
            |m: &Method| m.extracts(Property::Phosphorus) && !m.extracts(Property::Potassium);
        !self.is_ion
            && self.properties.is_empty()
            && !self.methods.is_empty()
            && self.methods.iter().all(only_p)
    }

    /// `Loss on ignition` alone: the organic matter that it finds.
    fn matter_by_method(&self) -> bool {
        self.properties.is_empty()
            && self.unknown.is_empty()
            && self.methods.first() == Some(&Method::LossOnIgnition)
            && !self.has(Word::MethodColumn)
            && self.unit.is_none_or(|u| matches!(u.unit, Unit::Percent | Unit::GPerKg))
    }

    /// Whether there is a soil property, or a buffer, in the name.
    pub fn is_soil(&self) -> bool {
        !self.properties.is_empty()
            || self.has(Word::LimeIndex)
            || self.has(Word::Humic)
            || self.methods.iter().any(|m| m.kind() == MethodKind::Buffer)
    }

    /// Nothing but a unit.
    pub fn only_unit(&self) -> Option<Printed> {
        let bare = self.properties.is_empty() && self.methods.is_empty();
        self.unit.filter(|_| bare && self.words.is_empty() && self.unknown.is_empty())
    }

    /// Nothing but methods.
    pub fn only_method(&self) -> Option<Method> {
        let bare = self.properties.is_empty() && self.unknown.is_empty() && !self.has(Word::Advice);
        self.methods.first().copied().filter(|_| bare)
    }

    /// Why what is named is no result, whatever the property.
    fn no_result(&self) -> Option<&'static str> {
        if self.has(Word::Advice) {
            return Some("a recommendation, not a result");
        }
        let other = self.words.iter().find_map(|word| match word {
            Word::Other(reason) => Some(*reason),
            Word::Humic => Some("humic matter is not organic matter; the two differ"),
            _ => None,
        });
        let of_sample = self.words.iter().any(|w| matches!(w, Word::Sample(_)));
        let bare = self.only_symbols && self.unit.is_none();
        let by_method = self.phosphorus_by_method() || self.matter_by_method();
        let soil = self.is_soil() || self.has(Word::Buffer) || by_method;
        let reasons = [
            (self.has(Word::Ratio), "a ratio of two results, not a result"),
            (of_sample && bare, "no soil property: it names a sample"),
            (!soil, "no soil property in this name"),
            (self.has(Word::RangeColumn), "a target or a range, not a result"),
            (
                self.has(Word::AvailabilityIndex),
                "an availability index depends on pH; it is not an amount",
            ),
        ];
        other.or_else(|| reasons.iter().find(|reason| reason.0).map(|reason| reason.1))
    }

    /// What the name stands for.
    ///
    /// # Errors
    /// Why it isn't one soil property, for the reader.
    pub fn quantity(&self) -> Result<Quantity, String> {
        if let Some(why) = self.no_result() {
            return Err(why.into());
        }
        let (property, form) = self.named()?;
        self.refuse_other_pools(property)?;
        let mut notes = Vec::new();
        if !self.unknown.is_empty() {
            let all = self.unknown.iter().map(|word| format!("“{word}”"));
            let all = all.collect::<Vec<_>>().join(", ");
            let label = property.label();
            // "K (AAE10) mg/kg" is potassium by something that nobody knows here.
            let with_unit = self.unit.is_some() && self.unknown.len() < 3;
            if self.only_symbols && with_unit {
                notes.push(format!("asked, because {all} beside {label} is not known here"));
            } else if self.only_symbols || self.unknown.len() > 2 {
                return Err(format!(
                    "{all} beside {label} is not known here, so it was not read as {label}"
                ));
            } else {
                notes.push(format!("passed over {all} in the name"));
            }
        }
        let half = self.has(Word::HalfMethod) && self.methods.is_empty();
        if half && property != Property::BufferPh {
            notes.push("the method lacks its number, as in Bray P1 or Mehlich-3".into());
        }
        match form {
            Form::Unsure => notes.push(format!(
                "taken as {}, as most laboratories print it; if yours means the whole ion, correct it",
                property.label()
            )),
            Form::Phosphate => {
                return Err("phosphate can mean P2O5 or PO4: name one of them".into());
            }
            _ => {}
        }
        let mut unit = self.unit;
        if self.has(Word::Index) && !self.index_behind && property != Property::BufferPh {
            unit = Some(Printed { unit: Unit::Index, scale: 1.0 });
        }
        Ok(Quantity {
            property,
            form,
            method: self.method_for(property),
            unit,
            lime_index: self.has(Word::LimeIndex),
            share_if_percent: self.has(Word::Sat) && property.is_share(),
            notes,
        })
    }

    /// The one property named, and its form.
    fn named(&self) -> Result<(Property, Form), String> {
        let mut found = self.properties.clone();
        // "as" is a word before it is arsenic.
        if found.iter().any(|&(p, _)| p != Property::Arsenic) {
            found.retain(|&(p, _)| p != Property::Arsenic);
        }
        let buffer = self.has(Word::Buffer)
            || self.has(Word::LimeIndex)
            || self.methods.iter().any(|m| m.kind() == MethodKind::Buffer);
        if self.phosphorus_by_method() && !buffer {
            return Ok((Property::Phosphorus, Form::Element));
        }
        if self.matter_by_method() {
            return Ok((Property::OrganicMatter, Form::Element));
        }
        if found.is_empty() {
            return Ok((Property::BufferPh, Form::Element));
        }
        let percent = self.unit.is_some_and(|u| u.unit == Unit::Percent);
        let saturation = self.is_saturation()
            || percent && found.len() == 1 && saturation_of(found[0].0).is_some();
        let total = self.has(Word::Total);
        let mut merged: Vec<(Property, Form)> = Vec::new();
        for (property, form) in found {
            let property = match property {
                Property::Ph | Property::SaltPh if buffer => Property::BufferPh,
                Property::Ph if self.is_salt() => Property::SaltPh,
                Property::Molybdenum
                    if self.unit.is_some_and(|u| {
                        matches!(u.unit, Unit::Percent | Unit::GPerKg | Unit::GPerL)
                    }) =>
                {
                    Property::OrganicMatter
                }
                other if saturation && !total => saturation_of(other).unwrap_or(other),
                other => other,
            };
            match merged.iter_mut().find(|(p, _)| *p == property) {
                Some(known) => known.1 = one_form(known.1, form),
                None => merged.push((property, form)),
            }
        }
        if merged.len() > 1 {
            let has = |of: Property| merged.iter().any(|(p, _)| *p == of);
            // "Materia orgánica (MO)" and "Soil acidity pH".
            let (matter, reaction) = (has(Property::OrganicMatter), has(Property::Ph));
            let bare = self.unit.is_none();
            merged.retain(|&(p, _)| {
                !(matter && p == Property::Molybdenum
                    || reaction && bare && p == Property::ExchangeableAcidity)
            });
            // "Sodium - ESP (%)" names the cation and its share.
            let shares: Vec<Property> =
                merged.iter().filter(|(p, _)| p.is_share()).map(|m| m.0).collect();
            merged.retain(|&(p, _)| !saturation_of(p).is_some_and(|share| shares.contains(&share)));
            merged.retain(|&(p, _)| p != Property::BaseSaturation);
        }
        let &[(property, form)] = merged.as_slice() else {
            return Err("names more than one property".into());
        };
        let as_nitrogen = self.has(Word::Nitrogen)
            && matches!(property, Property::NitrateN | Property::AmmoniumN | Property::TotalN);
        Ok((property, if as_nitrogen { Form::Element } else { form }))
    }

    /// A share of the exchange is named.
    pub fn is_saturation(&self) -> bool {
        let base = |p: &(Property, _)| p.0 == Property::BaseSaturation;
        self.has(Word::Saturation) || self.has(Word::Sat) || self.properties.iter().any(base)
    }

    /// It stands over several results and is none: a unit, a method, the shares of the exchange.
    pub fn is_group(&self) -> bool {
        self.is_saturation()
            || self.properties.is_empty() && (self.unit.is_some() || !self.methods.is_empty())
    }

    fn is_salt(&self) -> bool {
        self.has(Word::Salt)
            || self.methods.iter().any(|m| matches!(m, Method::CaCl2 | Method::Kcl))
    }

    /// Totals, pastes and water extracts measure another pool than soil-test ranges do.
    fn refuse_other_pools(&self, property: Property) -> Result<(), String> {
        use Property::{Arsenic, Cadmium, Ec, Lead, Ph, Sar, TotalN};
        let salts = matches!(property, Ph | Ec | Sar);
        let whole = matches!(property, TotalN | Lead | Arsenic | Cadmium)
            || !property.is_extracted() && property != Property::NitrateN;
        if self.has(Word::Total) && !whole {
            return Err(format!("total {} is not what plants can reach", property.label()));
        }
        if (self.has(Word::Paste) || self.methods.contains(&Method::SaturatedPaste)) && !salts {
            return Err("what is dissolved in a saturated paste is not the soil's store".into());
        }
        if self.is_saturation() && property.is_extracted() {
            return Err(format!("{} has no saturation", property.label()));
        }
        use Method::{Water1To1, Water1To2, Water1To2p5, Water1To5};
        let in_water = |m: &Method| matches!(m, Water1To1 | Water1To2 | Water1To2p5 | Water1To5);
        let in_water = property.is_extracted() && self.methods.iter().any(in_water);
        if (self.has(Word::WaterExtract) || in_water) && !salts {
            return Err("a water extract, for which there is no range here".into());
        }
        Ok(())
    }

    fn method_for(&self, property: Property) -> Option<Method> {
        if self.has(Word::Paste) && matches!(property, Property::Ph | Property::Ec | Property::Sar)
        {
            return Some(Method::SaturatedPaste);
        }
        if self.has(Word::Total)
            && matches!(property, Property::Lead | Property::Arsenic | Property::Cadmium)
        {
            return Some(Method::TotalAcid);
        }
        let fits = |m: &&Method| match property {
            Property::SaltPh => matches!(m, Method::CaCl2 | Method::Kcl),
            Property::Ph | Property::Ec | Property::Sar => m.kind() == MethodKind::Suspension,
            Property::BufferPh => m.kind() == MethodKind::Buffer,
            Property::OrganicMatter | Property::OrganicCarbon => {
                m.kind() == MethodKind::OrganicMatter
            }
            _ if **m == Method::Cal => m.extracts(property),
            _ => m.kind() == MethodKind::Extractant || **m == Method::CaCl2,
        };
        match self.methods.iter().find(fits).copied() {
            // Of Bray and Mehlich, only Mehlich made a buffer.
            None if property == Property::BufferPh && self.has(Word::HalfMethod) => {
                Some(Method::MehlichBuffer)
            }
            Some(Method::Mehlich3)
                if property == Property::Phosphorus && self.has(Word::ByColour) =>
            {
                Some(Method::Mehlich3Colorimetric)
            }
            method => method,
        }
    }
}

/// Whether the short spellings of this property are chemical symbols, which
/// also stand for other things.
fn property_has_symbol(property: Property) -> bool {
    use Property::{Arsenic, Cadmium, Chloride, ExchangeableAcidity, Lead, Molybdenum};
    property.is_extracted()
        || matches!(
            property,
            Arsenic | Cadmium | Chloride | ExchangeableAcidity | Lead | Molybdenum
        )
}

/// The saturation that belongs to a cation.
pub(super) fn saturation_of(property: Property) -> Option<Property> {
    Some(match property {
        Property::Calcium => Property::CalciumSaturation,
        Property::Magnesium => Property::MagnesiumSaturation,
        Property::Potassium => Property::PotassiumSaturation,
        Property::Sodium => Property::SodiumSaturation,
        Property::ExchangeableAcidity | Property::Aluminum => Property::AciditySaturation,
        _ => return None,
    })
}

/// One form from two words for the same thing: `Phosphorus (P2O5)` is P2O5,
/// `Nitrate-N (NO3)` is nitrogen.
pub(super) fn one_form(a: Form, b: Form) -> Form {
    let element_wins = |f| matches!(f, Form::No3 | Form::Nh4 | Form::So4);
    match (a, b) {
        (Form::Unsure | Form::Phosphate, other) | (other, Form::Unsure | Form::Phosphate) => other,
        (Form::Element, other) | (other, Form::Element) if element_wins(other) => Form::Element,
        (Form::Element, other) => other,
        (other, _) => other,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn found(text: &str) -> String {
        match Label::of(text).quantity() {
            Ok(q) => format!(
                "{} {:?} {} {}",
                q.property.name(),
                q.form,
                q.method.map_or("-", Method::label),
                q.unit.map_or("-", |u| u.unit.symbol())
            ),
            Err(why) => why,
        }
    }

    #[test]
    fn headings_of_real_exports_are_understood() {
        let cases = [
            ("1:1 Soil pH", "ph Element 1:1 water -"),
            ("pH (CaCl2)", "salt-ph Element calcium chloride -"),
            ("pHs", "salt-ph Element - -"),
            ("WDRF Buffer pH", "buffer-ph Element Woodruff buffer -"),
            ("Buffer pH (Sikora)", "buffer-ph Element Sikora buffer -"),
            ("BUFFER_PH", "buffer-ph Element - -"),
            ("1:1 S Salts mmho/cm", "ec Element 1:1 water dS/m"),
            ("Bray P-1 ppm P", "phosphorus Element Bray P1 mg/kg"),
            ("Mehlich P-III ppm P", "phosphorus Element Mehlich-3 mg/kg"),
            ("Olsen P ppm P", "phosphorus Element Olsen mg/kg"),
            ("HCO3_P", "phosphorus Element Olsen -"),
            ("P1", "phosphorus Element Bray P1 -"),
            ("Bray P1", "phosphorus Element Bray P1 -"),
            ("Olsen, ppm", "phosphorus Element Olsen mg/kg"),
            ("M3-P", "phosphorus Element Mehlich-3 -"),
            ("Mehlich-3 P (colorimetric)", "phosphorus Element Mehlich-3, colorimetric -"),
            ("Ca²⁺", "calcium Element - -"),
            ("olsenP_mg.kg", "phosphorus Element Olsen mg/kg"),
            ("P₂O₅ mg/100g", "phosphorus P2O5 - mg/100 g"),
            ("Phosphorus (P2O5)", "phosphorus P2O5 - -"),
            ("K2O", "potassium K2O - -"),
            ("K %", "potassium-saturation Element - %"),
            ("%K Sat", "potassium-saturation Element - %"),
            ("CA_PCT", "calcium-saturation Element - %"),
            ("% base saturation Mg", "magnesium-saturation Element - %"),
            ("Potassium M3 ICAP ppm K", "potassium Element Mehlich-3 mg/kg"),
            ("Mg_cmolc.kg", "magnesium Element - meq/100 g"),
            ("CEC/Sum of Cations me/100g", "cec Element - meq/100 g"),
            ("Organic Matter LOI %", "organic-matter Element loss on ignition %"),
            ("MO %", "organic-matter Element - %"),
            ("Mo ppm", "molybdenum Element - mg/kg"),
            ("2N KCl NO3-N ppm N", "nitrate-n Element potassium chloride mg/kg"),
            ("NO3", "nitrate-n No3 - -"),
            ("NO3 as N", "nitrate-n Element - -"),
            ("SO4_S", "sulfur Element - -"),
            ("SO4", "sulfur So4 - -"),
            ("Sulfate-S ppm S", "sulfur Element - mg/kg"),
            ("Hot H2O-B", "boron Element hot water -"),
            ("Zinc (DTPA)", "zinc Element DTPA -"),
            ("Mod. Morgan P", "phosphorus Element Modified Morgan -"),
            ("Modified Morgan K", "potassium Element Modified Morgan -"),
            ("Morgan P", "phosphorus Element Morgan -"),
            ("N.A. meq/100g", "exchangeable-acidity Element - meq/100 g"),
            ("H+Al cmolc/dm3", "exchangeable-acidity Element - meq/100 cm³"),
            ("P-I", "phosphorus Element - index"),
            ("Total N ppm", "total-n Element - mg/kg"),
            ("Total Pb ppm Pb", "lead Element total (acid digestion) mg/kg"),
            ("Mehlich P-II ppm P", "phosphorus Element Mehlich-2 mg/kg"),
            ("HCO3-P", "phosphorus Element Olsen -"),
            ("Lime index", "buffer-ph Element - -"),
            ("K QT", "potassium Element quick test -"),
            ("QTMg", "magnesium Element quick test -"),
        ];
        for (text, expected) in cases {
            assert_eq!(found(text), expected, "{text}");
        }
    }

    #[test]
    fn headings_that_only_look_like_results_are_refused() {
        for text in [
            "P2O5 Rec",
            "Target pH",
            "Optimum P ppm",
            "N REC",
            "lbs N/A",
            "HM%",
            "Total P ppm",
            "Paste Ca ppm",
            "H2O P soluble",
            "Mn-AI",
            "Ca:Mg ratio",
            "Past Crop",
            "B Depth",
            "Kind Of Sample",
            "K fertilizer",
            "Phosphate",
            "pmN_mg.kg",
            "96hrminC_mgC.kg.day",
            "Water Soluble K",
            "HCO3",
            "Lime ton/A",
            "Zn DL",
            "Zinc MDL",
            "Phosphorus goal",
            "Previous potassium",
            "Zinc SD",
            "lbs P2O5/A",
            "kg K2O/ha",
            "MCP",
        ] {
            let label = Label::of(text);
            assert!(label.quantity().is_err() || label.has(Word::Depth), "{text}: {}", found(text));
        }
    }
}
