//! Water, exchange sites and days of a charge, as figures.

use super::Bench;
use crate::plan::charge::supplies::{COLD, UPTAKE_PER_HOUR, taken_up};
use crate::plan::charge::targets;
use crate::quantity::{Band, Figure, Grounds, Measures, Unit, shown};
use crate::sources::{ARITHMETIC, HYDROCHAR_KINETICS, OUR_CHOICE, SUANSA_2021};

impl Bench<'_> {
    pub(super) fn figures(&self, slow: bool, days: Band) -> Vec<Figure> {
        let (dose, cec) = (self.dose, self.survey.material.cec);
        let of_days = self.grounds_of_days(slow);
        let figure = |name, label, band, unit, grounds| Figure { name, label, band, unit, grounds };
        let sites = Band::new(
            targets::sites(dose.mass.low, cec.low),
            targets::sites(dose.mass.likely, cec.likely),
            targets::sites(dose.mass.high, cec.high),
        );
        let (water, of_sites) = (self.grounds_of_water(), self.grounds_of_sites());
        let mut figures = vec![
            figure("charge-water", "water to wet it", self.water, Unit::Litre, water),
            figure("exchange-sites", "exchange sites, mol(c)", sites, Unit::None, of_sites),
            figure("charge-days", "days to charge", days, Unit::Days, of_days.clone()),
        ];
        if slow {
            return figures;
        }
        let per_hour =
            if self.is_cold() { UPTAKE_PER_HOUR.map(|k| k / 2.0) } else { UPTAKE_PER_HOUR };
        for (name, label, hours) in [
            ("taken-up-day-1", "taken up after a day", 24.0),
            ("taken-up-day-3", "taken up after three days", 72.0),
            ("taken-up-day-7", "taken up after seven days", 168.0),
        ] {
            let share = per_hour.map(|k| 100.0 * taken_up(hours, k));
            figures.push(figure(name, label, share, Unit::Percent, of_days.clone()));
        }
        figures
    }

    fn is_cold(&self) -> bool {
        self.survey.case.charge.temperature_c.is_some_and(|t| t < COLD)
    }

    fn weighed(&self, rule: &str) -> Grounds {
        let mass = shown(&self.dose.mass, Unit::Kg, Measures::Metric);
        Grounds::new(rule, &[]).input("biochar, dry", mass)
    }

    fn grounds_of_water(&self) -> Grounds {
        let material = &self.survey.material;
        let mut water = material.explain(
            self.weighed("dry mass × water it takes up, less the water in the bag"),
            &[("water, g per g", material.water, Unit::None)],
        );
        water.sources.push(SUANSA_2021.opened());
        match self.survey.case.biochar.moisture_percent {
            Some(percent) => water.input("water in the bag", format!("{percent} %")),
            None => water.assume("The biochar is dry when you start."),
        }
    }

    fn grounds_of_sites(&self) -> Grounds {
        let material = &self.survey.material;
        let capacity = [("exchange capacity of the biochar", material.cec, Unit::MeqPer100g)];
        let mut sites = material.explain(self.weighed("dry mass × exchange capacity"), &capacity);
        sites.sources.push(ARITHMETIC.derived());
        sites
    }

    fn grounds_of_days(&self, slow: bool) -> Grounds {
        let of_days = Grounds::new(
            if slow {
                "contact with moist compost: 28 (14–42) days"
            } else {
                "share taken up = 1 − e^(−k × hours), k = 0.024 (0.02–1) an hour"
            },
            &[OUR_CHOICE.unsourced(), HYDROCHAR_KINETICS.opened()],
        );
        match self.survey.case.charge.temperature_c {
            Some(t) if self.is_cold() => of_days
                .input("temperature", format!("{t} °C"))
                .assume("Below 10 °C (50 °F) everything takes twice as long."),
            Some(t) => of_days.input("temperature", format!("{t} °C")),
            None => of_days.assume("Warmer than 10 °C (50 °F); in the cold allow twice as long."),
        }
    }
}
