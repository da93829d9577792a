//! Boron, zinc, manganese, copper and iron where the soil is short of one: a few grams of a salt,
//! once, and no more before the next test.

use crate::facts::{Dressed, Way};
use crate::plan::needs::crop_rates::{Dressing, dressing_by, named};
use crate::plan::needs::nutrients::{GRAMS_PER_M2_IN_KG_PER_HA, level_of};
use crate::plan::needs::salts::TraceElement;
use crate::plan::needs::{Need, NeedKind, Verdict, limits};
use crate::quantity::{Band, Figure, Measures, Unit};
use crate::ranges::{Finding, Level};
use crate::soil::{PlantGroup, Property};
use crate::sources::*;
use crate::survey::{Ground, Survey};

/// From this pH on peat and muck lock manganese and iron up.
/// Source: Michigan State University, manganese, 5.8 (opened); that iron goes with it is our choice.
const MOST_PH_OF_PEAT: f64 = 5.8;

/// The need, the soil property and the names of the figures of each.
const EACH: [(Dressed, NeedKind, Property, [&str; 2]); 5] = [
    (Dressed::B, NeedKind::Boron, Property::Boron, ["boron-rate", "borax-for-bed"]),
    (Dressed::Zn, NeedKind::Zinc, Property::Zinc, ["zinc-rate", "zinc-sulfate-for-bed"]),
    (
        Dressed::Mn,
        NeedKind::Manganese,
        Property::Manganese,
        ["manganese-rate", "manganese-sulfate-for-bed"],
    ),
    (Dressed::Cu, NeedKind::Copper, Property::Copper, ["copper-rate", "copper-sulfate-for-bed"]),
    (Dressed::Fe, NeedKind::Iron, Property::Iron, ["iron-rate", "iron-sulfate-for-leaves"]),
];

/// What is to be done about each that was measured and is short, or far too much.
pub(super) fn needs(survey: &Survey<'_>) -> Vec<Need> {
    EACH.iter().filter_map(|each| need(survey, each)).collect()
}

fn need(
    survey: &Survey<'_>,
    (element, kind, property, figures): &(Dressed, NeedKind, Property, [&'static str; 2]),
) -> Option<Need> {
    let (level, finding) = match level_of(survey, *property, *kind)? {
        Ok(found) => found,
        // What can't be judged is asked about where the reading stands.
        Err(need) if need.grounds.sources.is_empty() => return None,
        Err(need) => return Some(need),
    };
    let row = TraceElement::of(*element)?;
    let short = Short { survey, row, kind: *kind, property: *property, finding, level };
    if level == Level::Excess {
        return Some(short.said(
            Verdict::Stop,
            format!(
                "Far more {} than plants need: bring no more of it, in feed, spray or compost.",
                property.label()
            ),
        ));
    }
    level.is_short().then(|| short.need(*figures))
}

/// An element that the soil is short of.
struct Short<'a, 'b> {
    survey: &'a Survey<'b>,
    row: &'static TraceElement,
    kind: NeedKind,
    property: Property,
    finding: &'a Finding,
    level: Level,
}

impl Short<'_, '_> {
    fn said(&self, verdict: Verdict, answer: String) -> Need {
        let mut grounds = self.finding.grounds.clone();
        grounds.sources.extend(self.row.citations);
        Need::said(self.kind, verdict, answer, grounds)
    }

    fn need(&self, figures: [&'static str; 2]) -> Need {
        let name = self.property.label();
        let hurt = named(self.survey).into_iter().any(|crop| self.row.hurts.contains(&crop));
        if hurt || self.row.element == Dressed::B && self.survey.plants() == PlantGroup::Berries {
            return self.said(Verdict::Enough, format!(
                "The soil is {} in {name}, but what grows here is easily hurt by it: give none this year.",
                self.level.label()
            ));
        }
        if self.survey.water_ph().is_some_and(|ph| ph < self.row.ph.0) {
            return self.said(Verdict::Unknown, format!(
                "The soil is {} in {name}, but in soil this acid {name} turns into a poison: lime first, then test again.",
                self.level.label()
            ));
        }
        let organic = self.survey.bed.ground == Ground::Organic;
        let most_ph = if organic { self.row.ph.1.min(MOST_PH_OF_PEAT) } else { self.row.ph.1 };
        let locked = self.survey.water_ph().filter(|ph| *ph >= most_ph && self.row.ph.1 < 10.0);
        let found = match locked {
            None => {
                self.by(Way::Soil).or_else(|| self.by(Way::Row)).or_else(|| self.by(Way::Leaves))
            }
            Some(_) => self.by(Way::Leaves),
        };
        let Some((way, dressing)) = found.filter(|_| !self.survey.is_lawn() || self.own()) else {
            return self.said(Verdict::Unknown, format!(
                "The soil is {} in {name}. We hold no rate for these plants, which seldom lack it: ask your extension office.",
                self.level.label()
            ));
        };
        let mut need = self.given(figures, way, &dressing);
        if locked.is_some() {
            need.others.push(format!(
                "Where the pH is {} or more, {name} spread on the soil is locked up: so it goes on the leaves.",
                most_ph
            ));
            if self.kind == NeedKind::Iron {
                need.steps.push("Through the roots only an iron chelate made for limy soil (EDDHA) helps there.".into());
            }
        }
        need
    }

    fn by(&self, way: Way) -> Option<(Way, Dressing)> {
        let what = (self.row.element, way, Some(self.level));
        dressing_by(self.survey, what).map(|dressing| (way, dressing))
    }

    /// Whether the very plants of the bed have a rate.
    fn own(&self) -> bool {
        [Way::Soil, Way::Leaves].into_iter().any(|way| self.by(way).is_some_and(|(_, d)| d.own))
    }

    /// The amount for the bed, how to give it, and what it rests on.
    fn given(&self, figures: [&'static str; 2], way: Way, dressing: &Dressing) -> Need {
        let (survey, row, name) = (self.survey, self.row, self.property.label());
        let area = &survey.bed.area;
        let salt = dressing.rate.map(|kg| kg * 100.0 / row.percent);
        let most = row.most_salt(dressing.own);
        let grams = salt.map(|kg| kg.min(most) * GRAMS_PER_M2_IN_KG_PER_HA * area.value);
        let mut grounds = dressing.grounds.clone();
        grounds.rule.push_str(" The salt is that ÷ its share of the element; × area.");
        grounds = grounds.input(name, format!("{} in the test", self.level.label())).input(
            "share of the element in the salt",
            survey.shown(&Band::exactly(row.percent), Unit::Percent),
        );
        grounds.sources.extend(self.finding.grounds.sources.iter().copied());
        grounds.sources.push(ARITHMETIC.derived());
        let amount = survey.on_bed(format!("{} of {}", survey.weighed(grams.likely), row.salt));
        let answer = if way == Way::Leaves {
            format!("The soil is {} in {name}. Spray the leaves: {amount}.", self.level.label())
        } else {
            format!("The soil is {} in {name}. Give {amount}, once.", self.level.label())
        };
        let mut need = Need::said(self.kind, Verdict::Give, answer, grounds.clone());
        need.for_bed = Some(grams);
        need.figures = vec![
            survey.told(Figure::new(
                figures[0],
                name,
                dressing.rate,
                Unit::KgPerHa,
                grounds.clone(),
            )),
            Figure::new(figures[1], row.salt, grams, Unit::Gram, area.add_to(grounds)),
        ];
        need.doses = 1;
        need.salt = Some((row.salt, way));
        let ceiling = limits::at_most(
            survey,
            most,
            format!("More {name} in a year is more than any guide gives, and may be poison."),
            "trace elements in a year, the most that a guide gives.",
            row.citations,
        );
        need.hold(ceiling.clone(), ceiling);
        need.steps.push(self.how(way));
        need.steps.extend(dressing.when.map(|when| format!("The guide gives it so: {when}.")));
        need.steps.push(if way == Way::Leaves {
            "It helps these leaves only: look again next year.".into()
        } else {
            "Once is enough for some years: give no more before the next test.".into()
        });
        need.cautions = self.cautions();
        need
    }

    /// A litre on 10 m² wets the leaves.
    /// Source: Northeast Organic Farming Association, 100 gal/acre (derived).
    fn how(&self, way: Way) -> String {
        match way {
            Way::Leaves => match self.survey.case.measures {
                Measures::Metric => {
                    "Dissolve it in a litre of water for each 10 m², and spray it in the cool of the day; again after two weeks if new leaves stay pale.".into()
                }
                Measures::Us => {
                    "Dissolve it in a quart of water for each 100 sq ft, and spray it in the cool of the day; again after two weeks if new leaves stay pale.".into()
                }
            },
            Way::Row => "Draw a furrow a hand from the row, sprinkle it in evenly and cover it.".into(),
            Way::Soil => {
                "Weigh it. Stir it into a bucket of dry sand, or dissolve it in the watering can, and spread it evenly: much in one spot is poison.".into()
            }
        }
    }

    fn cautions(&self) -> Vec<String> {
        let own = match self.kind {
            NeedKind::Boron => {
                "A little too much boron is poison to plants, and it can't be taken back. Give none where beans, peas or strawberries come next."
            }
            NeedKind::Copper => {
                "Copper stays in the soil for good. Count what is sprayed against blight and mildew too."
            }
            _ => "What is too much of it stays in the soil for years.",
        };
        vec![
            own.into(),
            "These salts harm eyes, and copper and zinc harm fish: wear gloves and goggles, and keep them from drains and ponds.".into(),
        ]
    }
}
