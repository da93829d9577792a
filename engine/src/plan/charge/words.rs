//! What is said of a charge: what it reaches, and what can hurt.

use super::{Bench, Share, Used};
use crate::case::ChargeSource;
use crate::plan::cautions::Caution;
use crate::plan::charge::label::own_label;
use crate::plan::charge::salts::Salts;
use crate::plan::charge::sources::{holds_ammonium, label};
use crate::quantity::{Grounds, significant};
use crate::sources::{COMMON_PRACTICE, IPPOLITO_2020};

impl Bench<'_> {
    /// The charge in a few sentences: harm first, then what it reaches.
    pub(super) fn text(&self, used: &[Used], shares: &[Share], notes: &[String]) -> String {
        let mut text = String::new();
        if self.spare_phosphorus && !notes.is_empty() {
            text.push_str("Phosphorus is in surplus, so what brings much of it stays out. ");
        }
        let Some(nitrogen) = shares[0].reached else { return text };
        text.push_str(&format!(
            "It brings about {} % of the nitrogen wanted.",
            significant(nitrogen.likely, if nitrogen.likely < 10.0 { 1 } else { 2 })
        ));
        let teas = used.iter().all(|u| u.source == ChargeSource::CompostTea);
        if teas && nitrogen.likely < 25.0 {
            text.push_str(" Compost tea brings life to biochar; it does not charge it.");
        }
        let short: Vec<&str> = shares[1..]
            .iter()
            .filter(|share| share.reached.is_some_and(|r| r.likely < 90.0))
            .map(|share| share.nutrient.label())
            .collect();
        if !short.is_empty() {
            text.push_str(&format!(" Short of what is wanted: {}.", short.join(", ")));
            // Without a soil test there is no bed to speak of.
            if !self.survey.readings.is_empty() {
                text.push_str(" What the bed itself needs stands further down.");
            }
        }
        text
    }

    pub(super) fn cautions(
        &self,
        sources: &[ChargeSource],
        salts: &Salts,
        notes: &[String],
    ) -> Vec<Caution> {
        let of_salts = salts.figures.last().map(|f| f.grounds.clone()).unwrap_or_default();
        let of_notes = &self.targets[1].grounds;
        let mut list: Vec<Caution> =
            salts.sayings.iter().map(|text| caution(text, of_salts.clone())).collect();
        list.extend(notes.iter().map(|text| caution(text, of_notes.clone())));
        list.extend(self.about_ammonia(sources));
        if sources.iter().any(|s| matches!(s, ChargeSource::Urine | ChargeSource::AgedManure)) {
            list.push(danger(
                "Wear gloves, wash your hands, and keep the tub away from food, children and pets.",
                practice("germs in urine and manure"),
            ));
        }
        list.extend(self.about_what_cannot_be());
        list.push(caution(
            "Local rules on urine, manure and runoff come before this recipe.",
            practice("always"),
        ));
        list
    }

    fn about_ammonia(&self, sources: &[ChargeSource]) -> Vec<Caution> {
        let mut list = Vec::new();
        if !sources.iter().any(|source| holds_ammonium(*source)) {
            return list;
        }
        list.push(danger(
            "Never mix wood ash, lime or ash-rich biochar into it while it is wet: they drive off \
             ammonia. It bites lungs and eyes, and the nitrogen is lost.",
            practice("ammonium and an alkaline powder give off ammonia"),
        ));
        if self.survey.material.ph.likely >= 9.0 {
            list.push(danger(
                "This biochar is itself alkaline (pH 9 or more): some ammonia will come off. Keep \
                 your face away, and keep it covered.",
                Grounds::new("pH of the biochar", &[IPPOLITO_2020.from_memory()]),
            ));
        }
        list
    }

    /// Labels and temperatures that can't be.
    fn about_what_cannot_be(&self) -> Vec<Caution> {
        let charge = &self.survey.case.charge;
        let wrong = charge
            .sources
            .iter()
            .filter(|own| own.n_p2o5_k2o.is_some() && own_label(charge, own.source).is_none());
        let mut list: Vec<Caution> = wrong
            .map(|own| {
                let text = format!(
                    "The label given for {} can't be one: three shares of 0 to 100 %, together no \
                     more than 100 %. The usual analysis is taken; look at the label again.",
                    label(own.source)
                );
                caution(&text, Grounds::default())
            })
            .collect();
        if charge.temperature_c.is_some_and(|t| !(-40.0..=60.0).contains(&t)) {
            list.push(caution(
                "The temperature given can't be right for charging: it should be between 0 and 40 °C \
                 (32 and 104 °F).",
                Grounds::default(),
            ));
        }
        list
    }
}

fn caution(text: &str, grounds: Grounds) -> Caution {
    Caution { text: text.into(), people: false, grounds }
}

/// What can hurt people.
fn danger(text: &str, grounds: Grounds) -> Caution {
    Caution { people: true, ..caution(text, grounds) }
}

fn practice(rule: &str) -> Grounds {
    Grounds::new(rule, &[COMMON_PRACTICE.unsourced()])
}
