//! Small additions year after year: what each finds in the soil, what it may
//! add, and what stops it.

use crate::bag::Material;
use crate::bag::certificate::given;
use crate::case::{CertificateItem, Feedstock};
use crate::plan::ledger::Substance;
use crate::plan::{
    Before, Cap, Plan, available, caps, kg_per_m2, litres_per_m2, percent, rise_in_the_end,
    tonnes_per_ha, wanted,
};
use crate::quantity::product;
use crate::quantity::{Band, Figure, Grounds, Measures, Unit, shown, significant};
use crate::sources::{
    ANGST_SOHI_2013, ARITHMETIC, CHENG_2008, GUO_2020, IPPOLITO_2020, OUR_CHOICE,
};
use crate::survey::Survey;
use crate::survey::buffering as liming;
use crate::survey::capacity::NewSites;

/// The most of all years together, t/ha dry. Source: our choice.
const MOST_TONNES_IN_ALL: f64 = 30.0;

/// Sand more acid than this has no such limit. Source: our choice.
const ACID_SAND_PH: f64 = 5.5;

/// A year's addition below this is not worth the work, % by volume.
/// Source: our choice.
const LEAST: f64 = 0.05;

/// How exchange capacity grows with age: a tenth a year, to twice at most.
/// Source: that it grows, Cheng et al. 2008; how fast is our choice.
const GROWS_A_YEAR: f64 = 0.1;
/// Source: our choice.
const GROWS_TO: f64 = 2.0;

/// Share of the nitrogen that plants can have in a year, %. Source: our choice within Angst &
/// Sohi 2013.
const NITROGEN_AVAILABLE: Band = Band { low: 0.0, likely: 1.0, high: 3.0 };

/// Total nitrogen, %, by feedstock; wood where nobody said.
/// Source: review literature, from memory.
fn usual_nitrogen(feedstock: Option<Feedstock>) -> f64 {
    match feedstock {
        Some(Feedstock::Softwood) => 0.5,
        Some(Feedstock::Hardwood | Feedstock::Nutshell | Feedstock::RiceHusk) => 0.7,
        Some(Feedstock::GrassOrStraw | Feedstock::Bamboo | Feedstock::Blend) => 1.0,
        Some(Feedstock::Bone) => 1.5,
        Some(Feedstock::Manure) => 2.2,
        None => 0.6,
    }
}

/// One column of the schedule: what it gives for each year.
#[derive(Clone, Debug, PartialEq)]
pub struct Column {
    /// A kebab-case name.
    pub name: &'static str,
    /// What it is called.
    pub label: &'static str,
    /// Its unit.
    pub unit: Unit,
    /// One for each year.
    pub years: Vec<Band>,
    /// What it rests on.
    pub grounds: Grounds,
}

impl Column {
    /// The figure of a year, counted from 0.
    pub fn of(&self, year: usize) -> Option<Figure> {
        Some(Figure::new(
            self.name,
            self.label,
            *self.years.get(year)?,
            self.unit,
            self.grounds.clone(),
        ))
    }
}

/// The additions of several years.
#[derive(Clone, Debug, PartialEq)]
pub struct Repeats {
    /// What it comes to, in words.
    pub text: String,
    /// What held a year's addition down: the year, from 1, and why.
    pub stops: Vec<(u32, String)>,
    /// The schedule, column by column; all are of the same length.
    pub columns: Vec<Column>,
    /// What the whole rests on.
    pub grounds: Grounds,
}

/// The schedule of a share that is spread over years; `None` for one year, or
/// when the plan uses no biochar.
pub fn repeats(survey: &Survey<'_>, plan: &Plan) -> Option<Repeats> {
    let (in_all, years) = wanted(survey);
    if years < 2 || !plan.uses_biochar() {
        return None;
    }
    Some(Schedule::of(survey).run(in_all, years))
}

/// What each year's state is worked out from.
struct Schedule<'a> {
    survey: &'a Survey<'a>,
    material: &'a Material,
    buffering: liming::Buffering,
    ph: Option<f64>,
}

/// What is in the soil at a time.
#[derive(Clone)]
struct State {
    /// Each year's addition, % by volume.
    shares: Vec<f64>,
}

impl State {
    fn all(&self) -> f64 {
        self.shares.iter().sum()
    }

    /// The last year's addition.
    fn last(&self) -> f64 {
        self.shares.last().copied().unwrap_or(0.0)
    }
}

impl<'a> Schedule<'a> {
    fn of(survey: &'a Survey<'a>) -> Schedule<'a> {
        Schedule {
            survey,
            material: &survey.material,
            buffering: liming::buffering(survey),
            ph: survey.water_ph(),
        }
    }

    fn percent(&self, share: f64) -> Band {
        percent(self.survey, share)
    }

    fn tonnes(&self, share: f64) -> Band {
        kg_per_m2(self.survey, share).map(tonnes_per_ha)
    }

    /// pH once the additions have limed: the last one as far as it does in its
    /// first year when it is `fresh`, the others, and it too when it isn't, in full.
    fn ph_after(&self, state: &State, fresh: bool) -> Option<Band> {
        let start = self.ph?;
        let last = if fresh { state.last() } else { 0.0 };
        let there = self.percent(state.all() - last);
        let full = rise_in_the_end(there, self.material, &self.buffering);
        let new = liming::rise(None, self.percent(last), self.material, &self.buffering);
        // No higher than the biochar itself, or free lime, would bring it.
        let held = liming::rise(Some(start), Band::exactly(1e9), self.material, &self.buffering);
        let rise = full.plus(new);
        Some(Band::new(
            start + rise.low.min(held.low),
            start + rise.likely.min(held.likely),
            start + rise.high.min(held.high),
        ))
    }

    /// Exchange capacity of the soil with all that is in it at the end of the
    /// last year, meq/100 g.
    fn cec(&self, state: &State) -> Option<Band> {
        let soil = self.survey.chemistry.cec?;
        let mixed = |soil: f64, char: f64, percent: &dyn Fn(f64) -> f64| {
            let count = state.shares.len();
            let (mut held, mut all) = (0.0, 0.0);
            for (at, share) in state.shares.iter().enumerate() {
                let age = (count - 1 - at) as f64;
                let mass = percent(*share);
                held += mass * char * (1.0 + GROWS_A_YEAR * age).min(GROWS_TO);
                all += mass;
            }
            (100.0 * soil + held) / (100.0 + all)
        };
        let char = self.material.cec;
        let mixed = Band::new(
            mixed(soil.low, char.low, &|share| self.percent(share).low),
            mixed(soil.likely, char.likely, &|share| self.percent(share).likely),
            mixed(soil.high, char.high, &|share| self.percent(share).high),
        );
        let all = self.percent(state.all());
        let sites = NewSites::of(soil.likely, self.ph, all, self.material, &self.buffering);
        Some(mixed.plus(sites.freed))
    }

    /// What plants can have in a year from the additions, kg/ha: of the last
    /// one, or with `goes_on` of all of them.
    fn credit(&self, state: &State, total: Band, available: Band, goes_on: bool) -> Band {
        let from = if goes_on { state.all() } else { state.last() };
        // t/ha × % × % ÷ 10 = kg/ha.
        product(&[self.tonnes(from), total, available]).map(|kg| kg / 10.0)
    }

    /// What holds the year's addition down most, with what is there already.
    fn bound(&self, state: &State) -> Option<Cap> {
        let before = Before {
            ph: self.ph_after(state, false).map(|ph| ph.likely),
            percent: self.percent(state.all()).likely,
        };
        let mut caps = caps(self.survey, before);
        let acid_sand = self.survey.texture.is_some_and(|t| t.is_sandy())
            && self.ph.is_some_and(|ph| ph < ACID_SAND_PH);
        let pots = self.survey.bed.is_potted();
        if !acid_sand && !pots {
            let there = self.tonnes(state.all()).likely;
            caps.push(Cap {
                share: (MOST_TONNES_IN_ALL - there).max(0.0) / self.tonnes(1.0).likely,
                why: "30 t/ha (3 kg on 1 m²) is the most of all years together.".to_string(),
                source: OUR_CHOICE.unsourced(),
            });
        }
        caps.into_iter().min_by(|a, b| a.share.total_cmp(&b.share))
    }

    fn run(&self, in_all: f64, years: u32) -> Repeats {
        let wanted = in_all / f64::from(years);
        let mut state = State { shares: Vec::new() };
        let mut stops = Vec::new();
        let mut rows: Vec<State> = Vec::new();
        let mut sources = vec![OUR_CHOICE.unsourced(), GUO_2020.opened(), ARITHMETIC.derived()];
        for year in 1..=years {
            let bound = self.bound(&state);
            let limit = bound.as_ref().map_or(wanted, |cap| cap.share);
            let share = if limit.min(wanted) < LEAST { 0.0 } else { limit.min(wanted) };
            if let Some(cap) = bound.filter(|_| share < wanted - 1e-9) {
                // The same reason each year is said once.
                if stops.last().is_none_or(|(_, why)| *why != cap.why) {
                    stops.push((year, cap.why));
                }
                if !sources.contains(&cap.source) {
                    sources.push(cap.source);
                }
            }
            if share == 0.0 {
                break;
            }
            state.shares.push(share);
            rows.push(state.clone());
        }
        let grounds = Grounds::new(
            "Each year begins with what the years before left: biochar, pH and exchange capacity. \
             The least of all limits then holds that year's part.",
            &sources,
        )
        .input("wanted in all, by volume", format!("{} %", significant(in_all, 2)))
        .input("years", years.to_string())
        .assume("Biochar doesn't decay in these years, and rain and feeding don't move the pH.")
        .assume("Test the soil again every third year, and begin anew with what it says.");
        let text = in_words(in_all, years, state.all(), rows.len());
        Repeats { text, stops, columns: self.columns(&rows), grounds }
    }

    fn columns(&self, rows: &[State]) -> Vec<Column> {
        let of_soil = [self.ph_at_end(rows), self.cec_at_end(rows)];
        let all = self.added(rows).into_iter().chain(of_soil).chain(self.credits(rows));
        all.flatten().map(|column| self.told(column)).collect()
    }

    /// The column in the measure of the thing.
    fn told(&self, mut column: Column) -> Column {
        let unit = column.unit;
        for year in &mut column.years {
            (*year, column.unit) = self.survey.per_area(*year, unit);
        }
        column
    }

    /// What is added each year, and what is there in all.
    fn added(&self, rows: &[State]) -> [Option<Column>; 4] {
        let exactly = |value| Some(Band::exactly(value));
        let plain = |rule: &str| Grounds::new(rule, &[ARITHMETIC.derived()]);
        let by_weight = |rule: &str| {
            let density = ("bulk density, dry, kg/m³", self.material.bulk_density, Unit::None);
            self.material.explain(plain(rule), &[density])
        };
        let shared = Grounds::new(
            "share wanted ÷ years, held down by the least limit",
            &[OUR_CHOICE.unsourced()],
        );
        let in_litres = plain("10 × depth (cm) × share ÷ 100 × area");
        let in_tonnes = by_weight("10 × kg on 1 m², all years together");
        let in_percent = by_weight("all years' biochar ÷ (depth × density of dry soil)");
        let bed = &self.survey.bed;
        let (litre, tonne) = (Unit::Litre, Unit::TonnePerHa);
        [
            column(rows, "year-share", "added, by volume", Unit::Percent, shared, &|state| {
                exactly(state.last())
            }),
            column(rows, "year-volume", "biochar for the bed", litre, in_litres, &|state| {
                exactly(litres_per_m2(bed.depth.value, state.last()) * bed.area.value)
            }),
            column(rows, "tonnes-in-all", "in all so far, dry", tonne, in_tonnes, &|state| {
                Some(self.tonnes(state.all()))
            }),
            column(
                rows,
                "percent-in-all",
                "in the soil, by mass",
                Unit::Percent,
                in_percent,
                &|state| Some(self.percent(state.all())),
            ),
        ]
    }

    fn ph_at_end(&self, rows: &[State]) -> Option<Column> {
        let mut limed = Grounds::new(
            "pH + liming value over buffering: about 0.7 of it in an addition's first year, all \
             of it from the second; no higher than the biochar's own pH or 8.3",
            &liming::sources(&self.buffering),
        );
        limed.sources.push(OUR_CHOICE.unsourced());
        let limed = self.material.explain(
            limed.input(
                format!("buffering ({}), mmol(c)/kg per pH", self.buffering.from),
                shown(&self.buffering.band, Unit::None, Measures::Metric),
            ),
            &[("liming value", self.material.liming, Unit::Percent)],
        );
        column(rows, "ph-at-end", "pH at the year's end", Unit::None, limed, &|state| {
            self.ph_after(state, true)
        })
    }

    fn cec_at_end(&self, rows: &[State]) -> Option<Column> {
        let grounds = self.material.explain(
            Grounds::new(
                "soil and each year's biochar by their mass; biochar's own capacity grows by \
                 a tenth a year, to twice at most",
                &[CHENG_2008.second_hand(), OUR_CHOICE.unsourced()],
            ),
            &[("exchange capacity of fresh biochar", self.material.cec, Unit::MeqPer100g)],
        );
        let label = "exchange capacity at the year's end";
        column(rows, "cec-at-end", label, Unit::MeqPer100g, grounds, &|state| self.cec(state))
    }

    /// Total nitrogen of the biochar, %.
    fn nitrogen(&self) -> Band {
        match given(&self.survey.case.biochar, CertificateItem::Nitrogen) {
            Ok(Some(percent)) => Band::new(0.9 * percent, percent, 1.1 * percent),
            _ => {
                let usual = usual_nitrogen(self.material.feedstock);
                Band::new(usual / 2.5, usual, usual * 2.5)
            }
        }
    }

    /// What plants can have of the biochar each year, nutrient by nutrient.
    fn credits(&self, rows: &[State]) -> Vec<Option<Column>> {
        let material = self.material;
        let share = |of| available(of, material, self.ph);
        let contents = [
            (
                "nitrogen-credit",
                "nitrogen plants can have of it",
                self.nitrogen(),
                NITROGEN_AVAILABLE,
            ),
            (
                "phosphorus-credit",
                "phosphorus (P) plants can have of it",
                material.phosphorus,
                share(Substance::Phosphorus),
            ),
            (
                "potassium-credit",
                "potassium (K) plants can have of it",
                material.potassium,
                share(Substance::Potassium),
            ),
            (
                "calcium-credit",
                "calcium plants can have of it",
                material.calcium,
                share(Substance::Calcium),
            ),
            (
                "magnesium-credit",
                "magnesium plants can have of it",
                material.magnesium,
                share(Substance::Magnesium),
            ),
            (
                "sulfur-credit",
                "sulfur plants can have of it",
                material.sulfur,
                share(Substance::Sulfur),
            ),
        ];
        let credit = |(name, label, total, available): (_, _, _, Band)| {
            let goes_on = name == "phosphorus-credit";
            let rule = if goes_on {
                "all biochar so far × its content × the share that plants can have in a year"
            } else {
                "the year's biochar × its content × the share that plants can have in its first year"
            };
            let sources =
                [ANGST_SOHI_2013.opened(), OUR_CHOICE.unsourced(), IPPOLITO_2020.from_memory()];
            let part = shown(&available, Unit::Percent, Measures::Metric);
            let grounds = material.explain(
                Grounds::new(rule, &sources).input("plants can have, in a year", part),
                &[("content", total, Unit::Percent)],
            );
            column(rows, name, label, Unit::KgPerHa, grounds, &|state| {
                Some(self.credit(state, total, available, goes_on))
            })
        };
        contents.into_iter().map(credit).collect()
    }
}

/// A column; `None` where a year can't be worked out: then none is.
fn column(
    rows: &[State],
    name: &'static str,
    label: &'static str,
    unit: Unit,
    grounds: Grounds,
    of: &dyn Fn(&State) -> Option<Band>,
) -> Option<Column> {
    let years: Vec<Band> = rows.iter().map(of).collect::<Option<_>>()?;
    (!years.is_empty()).then_some(Column { name, label, unit, years, grounds })
}

/// What the schedule comes to: `added` of the shares wanted, % by volume.
fn in_words(in_all: f64, years: u32, added: f64, rows: usize) -> String {
    let number = |share: f64| significant(share, 2);
    if rows == 0 {
        "Nothing can go in: see what stops it.".to_string()
    } else if added >= in_all - 1e-6 {
        let wanted = number(in_all / f64::from(years));
        format!("{wanted} % a year for {years} years brings {} % in all.", number(added))
    } else {
        format!(
            "{} % of the {} % wanted can go in; then it stops. Years: {rows}.",
            number(added),
            number(in_all)
        )
    }
}
