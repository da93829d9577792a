//! The published amount of lime for one named buffer, or why there is none.

use crate::chemistry::{MEHLICH_PER_PH, MEHLICH_START};
use crate::facts::LimeTable;
use crate::plan::needs::lime_rate::{
    T_PER_HA_IN_LB_PER_1000_SQ_FT, T_PER_HA_IN_TON_PER_ACRE, adams_evans, at_neutralising_value,
    exchangeable_acidity_psu, little_buffered_br_sul, mehlich_nc, sikora_oregon, smp_br_sul,
    smp_tri_state, turf_psu,
};
use crate::plan::needs::lime_tables::Table;
use crate::quantity::{Band, Grounds, Unit, significant};
use crate::soil::{Measure, Method, MethodKind, Property};
use crate::sources::{
    ADAMS_EVANS_1962, BR_SUL_CQFS_2016_MANUAL, COMMON_PRACTICE, Citation, HULUKA_2005,
    MISSOURI_ENM, NCDA_BUFFER, NCDA_LIME, OREGON_SIKORA, OUR_CHOICE, PSU_LIME, PSU_TURF_LIME,
    SMP_DOMAIN, TRI_STATE_LIME,
};
use crate::survey::{Reaction, Survey};

/// North Carolina counts less than this (ton/acre) as none.
const LEAST_NC: f64 = 0.3;
/// The columns of the table of the south of Brazil, its first row, and the index above which it
/// goes by organic matter and aluminium. Source: CQFS-RS/SC, 2016 (from memory).
const BR_SUL_TARGETS: (f64, f64) = (5.5, 6.5);
const BR_SUL_FIRST: f64 = 4.4;
const BR_SUL_LITTLE: f64 = 6.3;
/// cm in an inch.
const INCH: f64 = 2.54;
/// Exchangeable acidity that even peat stays below, meq/100 g.
/// Source: common practice, no source.
const MOST_ACIDITY: f64 = 50.0;

/// What one publication gives: pure lime in t/ha for its own depth.
pub(super) struct Published {
    pub rate: Band,
    pub depth_cm: f64,
    pub grounds: Grounds,
    /// The table is made for turf.
    pub for_turf: bool,
    /// Another publication's amount for the same reading.
    pub other: Option<Other>,
}

/// Another publication's amount: pure lime in t/ha for its own depth.
pub(super) struct Other {
    pub name: &'static str,
    pub rate: f64,
    pub depth_cm: f64,
}

/// An answer without an amount.
pub(super) struct Said {
    pub answer: String,
    pub rule: &'static str,
    pub sources: Vec<Citation>,
}

/// The lime buffer's name, with the readings that go with it.
pub(super) struct Buffer<'a> {
    method: Method,
    reading: Option<&'a Measure>,
    acidity: Option<&'a Measure>,
    survey: &'a Survey<'a>,
}

impl<'a> Buffer<'a> {
    /// The buffer that the report or the person names; `None` when nobody does.
    pub fn of(survey: &'a Survey<'a>) -> Option<Buffer<'a>> {
        let reading = survey.soil.get(Property::BufferPh);
        let acidity = survey.soil.get(Property::ExchangeableAcidity);
        let named = |m: Option<&Measure>| m?.method.filter(|m| m.kind() == MethodKind::Buffer);
        let method = named(reading).or(named(acidity)).or(survey.case.reading.buffer)?;
        Some(Buffer { method, reading, acidity, survey })
    }

    /// The amount by the publication for this buffer. `lawn` takes the table
    /// for turf where there is one.
    ///
    /// # Errors
    /// The sentence to say when no publication gives an amount.
    pub fn lime(&self, reaction: &Reaction, lawn: bool) -> Result<Published, Said> {
        match self.method {
            Method::SikoraBuffer => self.by_sikora(reaction),
            Method::SmpBuffer if self.is_in(LimeTable::BrSulSmp) => self.by_br_sul(reaction),
            Method::SmpBuffer => self.by_smp(reaction),
            Method::MehlichBuffer => self.by_mehlich(reaction),
            Method::ModifiedMehlichBuffer => self.by_acidity(reaction, lawn),
            Method::AdamsEvansBuffer => self.by_adams_evans(reaction),
            Method::WoodruffBuffer => Err(Said {
                answer: "The lab that uses Woodruff buffer prints the lime as pounds of ENM per \
                         acre. Divide that by the ENM of the lime on sale, in pounds per ton: \
                         the result is tons per acre."
                    .into(),
                rule: "Tons per acre = ENM asked for ÷ ENM guaranteed. No table leads from this \
                       buffer's pH to ENM.",
                sources: vec![MISSOURI_ENM.opened()],
            }),
            other => {
                Err(outside(&format!("No published lime table for {} is at hand.", other.label())))
            }
        }
    }

    /// The buffer pH, if the buffer can give it: from `from` to `to`.
    fn ph(&self, from: f64, to: f64) -> Result<f64, Said> {
        let name = self.method.label();
        let refuse = |answer: String| Said {
            answer,
            rule: "A reading must be one that the buffer can give.",
            sources: vec![COMMON_PRACTICE.unsourced()],
        };
        let value = self.reading.and_then(|m| m.amount.exact()).ok_or_else(|| {
            refuse(format!("The amount by {name} needs its buffer pH as a number."))
        })?;
        if (from..=to).contains(&value) {
            return Ok(value);
        }
        Err(refuse(format!(
            "A buffer pH of {} can't come from {name}, which reads from {from:.1} to {to:.1}. \
             Check the reading and the name of the buffer.",
            significant(value, 3)
        )))
    }

    fn acidity_in(&self, unit: Unit) -> Option<f64> {
        self.acidity.filter(|m| m.unit == unit)?.amount.exact()
    }

    fn by_sikora(&self, reaction: &Reaction) -> Result<Published, Said> {
        let value = self.ph(4.0, 7.7)?;
        let mut grounds = Grounds::new(
            "The Oregon table for Sikora buffer: row by buffer pH, column by the pH to reach, \
             straight lines between.",
            &[OREGON_SIKORA.opened()],
        )
        .input("buffer pH (Sikora)", significant(value, 3));
        let rate = if value > 6.9 {
            grounds = above_the_table(grounds);
            oregon(6.9, reaction.target).map(up_to)
        } else {
            oregon(value, reaction.target).map(Band::exactly)
        };
        let rate = rate.ok_or_else(|| {
            if value < 4.8 { below_the_table(4.8) } else { no_column(reaction.target) }
        })?;
        let other = tri_state(value, reaction.target).map(|rate| Other {
            name: "Equations of three Midwestern states for SMP buffer, which Sikora is made to \
                   match (from memory)",
            rate,
            depth_cm: 8.0 * INCH,
        });
        Ok(Published { rate, depth_cm: 6.0 * INCH, grounds, for_turf: false, other })
    }

    /// Whether the soil lies where a table was made.
    fn is_in(&self, table: LimeTable) -> bool {
        self.survey.region.is_some_and(|region| region.id == Table::of(table).region)
    }

    fn by_br_sul(&self, reaction: &Reaction) -> Result<Published, Said> {
        let value = self.ph(4.0, 7.7)?;
        let target = reaction.target.clamp(BR_SUL_TARGETS.0, BR_SUL_TARGETS.1);
        let soil = &self.survey.soil;
        let aluminium = soil.get(Property::Aluminum).filter(|m| m.unit == Unit::MgPerL);
        // mg/L ÷ mg of a mmol(c) is mmol(c)/L, ten of which are a cmol(c)/dm³.
        let aluminium = aluminium
            .and_then(|m| m.amount.exact())
            .zip(Property::Aluminum.mg_per_mmolc())
            .map(|(mg, charge)| mg / charge / 10.0);
        let matter = soil.value(Property::OrganicMatter);
        let cited = BR_SUL_CQFS_2016_MANUAL.from_memory();
        let (rate, grounds) = match matter.zip(aluminium) {
            Some((matter, aluminium)) if value > BR_SUL_LITTLE => (
                little_buffered_br_sul(matter, aluminium, target),
                Grounds::new(
                    "The equations of the south of Brazil for soils of little buffering, with an SMP index above 6.3: by organic matter and aluminium.",
                    &[cited],
                )
                .input("organic matter, %", significant(matter, 3))
                .input("aluminium, cmol(c)/dm³", significant(aluminium, 3)),
            ),
            _ => (
                smp_br_sul(value.max(BR_SUL_FIRST), target),
                Grounds::new(
                    "The table of the south of Brazil for the SMP index: row by the index, column by the pH to reach, straight lines between.",
                    &[cited],
                ),
            ),
        };
        let grounds = grounds.input("SMP index", significant(value, 3));
        let rate = rate.ok_or_else(|| no_column(target))?;
        let rate = Band::exactly(rate);
        Ok(Published { rate, depth_cm: 20.0, grounds, for_turf: false, other: None })
    }

    fn by_smp(&self, reaction: &Reaction) -> Result<Published, Said> {
        let value = self.ph(4.0, 7.7)?;
        let rate = tri_state(value, reaction.target).ok_or_else(|| {
            if value < 6.0 { below_the_table(6.0) } else { no_column(reaction.target) }
        })?;
        let mut grounds = Grounds::new(
            "The Tri-State equations for SMP buffer: 71.4 − 1.03 × index (pH 6.8), 60.4 − 0.87 × \
             index (6.5), 49.3 − 0.71 × index (6.0); tons per acre of 90 % lime.",
            &[TRI_STATE_LIME.from_memory()],
        )
        .input("lime test index (10 × buffer pH)", significant(10.0 * value, 3));
        let depth_cm = 8.0 * INCH;
        // What is remembered doesn't stand alone.
        let oregon = oregon(value, reaction.target);
        let mut band = Band::exactly(rate);
        if let Some(oregon) = oregon {
            let there = oregon * depth_cm / (6.0 * INCH);
            band = Band::new(rate.min(there), rate, rate.max(there));
            grounds = grounds.assume(
                "The equations are from memory, so the band reaches to the Oregon table for \
                 Sikora buffer, which is made to read as SMP does.",
            );
            grounds.sources.push(OREGON_SIKORA.opened());
        }
        if rate < 2.0 * T_PER_HA_IN_TON_PER_ACRE {
            grounds = grounds.assume(
                "SMP buffer is made for soils that need much lime; on sandy soils it can ask for \
                 too much.",
            );
            grounds.sources.push(SMP_DOMAIN.opened());
        }
        let other = oregon.map(|rate| Other {
            name: "The Oregon table for Sikora buffer",
            rate,
            depth_cm: 6.0 * INCH,
        });
        Ok(Published { rate: band, depth_cm, grounds, for_turf: false, other })
    }

    fn by_mehlich(&self, reaction: &Reaction) -> Result<Published, Said> {
        let ph = reaction.in_water("The formula for Mehlich buffer")?;
        let acidity = match self.acidity_in(Unit::MeqPer100cm3) {
            Some(acidity) => acidity,
            None => MEHLICH_PER_PH * (MEHLICH_START - self.ph(4.0, 6.9)?).max(0.0),
        };
        let tons =
            mehlich_nc(acidity, ph, reaction.target).ok_or_else(|| no_column(reaction.target))?;
        if tons < LEAST_NC {
            return Err(Said {
                answer: "No lime now: the amount is so small that the publisher counts it as none."
                    .into(),
                rule: "Less than 0.3 ton per acre is reported as none.",
                sources: vec![NCDA_LIME.opened()],
            });
        }
        let grounds = Grounds::new(
            "Tons per acre = acidity × (pH to reach − pH) ÷ (6.6 − pH).",
            &[NCDA_LIME.opened(), NCDA_BUFFER.opened(), NCDA_LIME.from_memory()],
        )
        .input("acidity", format!("{} meq/100 cm³", significant(acidity, 3)))
        .assume("The amount is for the top 8 inches (20 cm); that depth is from memory.")
        .assume(
            "No lime was spread in the last year. If some was, take off what is left: 8 % of it \
             is used up each month.",
        );
        let rate = Band::exactly(tons * T_PER_HA_IN_TON_PER_ACRE);
        Ok(Published { rate, depth_cm: 8.0 * INCH, grounds, for_turf: false, other: None })
    }

    fn by_acidity(&self, reaction: &Reaction, lawn: bool) -> Result<Published, Said> {
        let target = reaction.target;
        let acidity = self.acidity_in(Unit::MeqPer100g).ok_or_else(|| {
            outside(
                "With this buffer the amount goes by the exchangeable acidity in meq/100 g. Type \
                 it in from the report.",
            )
        })?;
        let shown = format!("{} meq/100 g", significant(acidity, 3));
        if acidity > MOST_ACIDITY {
            return Err(outside(&format!("An exchangeable acidity of {shown} can't be.")));
        }
        let depth_cm = 7.0 * INCH;
        let turf = |acidity| {
            turf_psu(acidity, target).map(|pounds| pounds * T_PER_HA_IN_LB_PER_1000_SQ_FT)
        };
        if !lawn && target >= 6.5 {
            let pounds = exchangeable_acidity_psu(acidity, reaction.ph, target)
                .ok_or_else(|| no_column(target))?;
            let grounds = Grounds::new(
                "Pounds per acre: acidity × 1000 to reach pH 7.0; × 840 to reach 6.5, or 2000 \
                 where acidity is 4 or less.",
                &[PSU_LIME.opened()],
            )
            .input("exchangeable acidity", shown);
            let other = turf(acidity).map(|rate| Other {
                name: "The same university's table for turf",
                rate,
                depth_cm,
            });
            return Ok(Published {
                rate: pounds_per_acre(pounds),
                depth_cm,
                grounds,
                for_turf: false,
                other,
            });
        }
        let mut grounds = Grounds::new(
            "The Penn State table for turf: row by exchangeable acidity, column by the pH to \
             reach, straight lines between.",
            &[PSU_TURF_LIME.opened()],
        )
        .input("exchangeable acidity", shown);
        if !lawn {
            grounds = grounds.assume("The table is made for turf; other plants need the same.");
            grounds.sources.push(OUR_CHOICE.unsourced());
        }
        let rate = if acidity < 2.0 {
            grounds = above_the_table(grounds);
            turf(2.0).map(up_to)
        } else {
            turf(acidity).map(Band::exactly)
        };
        let rate = rate.ok_or_else(|| no_column(target))?;
        Ok(Published { rate, depth_cm, grounds, for_turf: lawn, other: None })
    }

    fn by_adams_evans(&self, reaction: &Reaction) -> Result<Published, Said> {
        let ph = reaction.in_water("The formula for Adams–Evans buffer")?;
        let value = self.ph(5.0, 8.3)?;
        let grounds = Grounds::new(
            "Pounds per acre = 8000 × (8.00 − buffer pH) ÷ h1 × (h1 − h2) × 1.5; h is the share \
             of the exchange that acidity holds, by pH = 7.79 − 5.55 h + 2.27 h².",
            &[HULUKA_2005.opened(), ADAMS_EVANS_1962.from_memory()],
        )
        .input("buffer pH (Adams–Evans)", significant(value, 3))
        .assume("The buffer is made for sandy soils that need less than 5 tons per acre.");
        let rate = pounds_per_acre(adams_evans(ph, value, reaction.target));
        Ok(Published { rate, depth_cm: 20.0 / 3.0 * INCH, grounds, for_turf: false, other: None })
    }
}

impl Reaction {
    /// The pH, if it was measured in water, which `what` needs.
    fn in_water(&self, what: &str) -> Result<f64, Said> {
        if self.in_water {
            Ok(self.ph)
        } else {
            Err(outside(&format!("{what} needs the pH in water; the report has a salt pH only.")))
        }
    }
}

fn pounds_per_acre(pounds: f64) -> Band {
    Band::exactly(pounds / 2000.0 * T_PER_HA_IN_TON_PER_ACRE)
}

fn oregon(buffer_ph: f64, target: f64) -> Option<f64> {
    Some(sikora_oregon(buffer_ph, target)? * T_PER_HA_IN_TON_PER_ACRE)
}

fn tri_state(buffer_ph: f64, target: f64) -> Option<f64> {
    let tons = at_neutralising_value(smp_tri_state(buffer_ph, target)?, 100.0);
    Some(tons * T_PER_HA_IN_TON_PER_ACRE)
}

/// Anything from nothing to the amount of the first row.
fn up_to(first_row: f64) -> Band {
    Band::new(0.0, first_row / 2.0, first_row)
}

fn above_the_table(mut grounds: Grounds) -> Grounds {
    grounds.sources.push(OUR_CHOICE.unsourced());
    grounds.assume(
        "The soil is less acid than the first row of the table. It needs anything from nothing \
         to that row's amount; half is taken.",
    )
}

fn below_the_table(end: f64) -> Said {
    outside(&format!("The lime table for this buffer ends at buffer pH {end:.1}."))
}

fn no_column(target: f64) -> Said {
    outside(&format!(
        "The lime tables for this buffer don't lead from this soil to pH {}.",
        significant(target, 3)
    ))
}

/// What is said where a publication ends.
fn outside(what: &str) -> Said {
    Said {
        answer: format!("{what} Ask the lab for its own lime advice."),
        rule: "No amount is given beyond what a publication prints.",
        sources: vec![OUR_CHOICE.unsourced()],
    }
}
