//! The one list of jobs: dated, in order, none before today, none that digs
//! where something stands.

use time::{Date, Duration, Month};

use crate::case::{BedKind, Winter};
use crate::facts::Way;
use crate::plan::charge::ChargePlan;
use crate::plan::hazards::Hazard;
use crate::plan::job::{Job, JobKind};
use crate::plan::load::Load;
use crate::plan::needs::{MOST_FEEDS, Need, NeedKind, Verdict};
use crate::plan::path::Path;
use crate::plan::rate::Dose;
use crate::plan::washing;
use crate::quantity::{Band, Grounds, Powder, Unit, measured_out};
use crate::ranges::Level;
use crate::season::{Timing, Window};
use crate::soil::{PlantGroup, Property};
use crate::sources::{
    BORCHARD_2019, COMMON_PRACTICE, Citation, GUO_2020, LEAD_UMD, NGUYEN_2017, NOURI_2022,
    NRCS_SALINITY, OUR_CHOICE, TRI_STATE_LIME, UMASS_FALL, UMASS_RATES,
};
use crate::survey::{Standing, Survey};

/// Days before planting at which charged biochar is best spread: first and last.
/// Source: our choice.
const CHARGED_BEFORE_PLANTING: (i64, i64) = (28, 14);

/// Days before planting for the next soil test: first and last.
const RETEST_BEFORE_PLANTING: (i64, i64) = (28, 14);

/// Days before planting for the first feed: first and last. Source: our choice.
const FEED_BEFORE_PLANTING: (i64, i64) = (14, 0);

/// Days after planting for the second nitrogen: first and last.
/// Source: our choice; UMass: when the plants grow fast.
const SECOND_FEED: (i64, i64) = (28, 56);

/// Days between two doses of lime. Source: common practice, half a year.
const BETWEEN_DOSES: i64 = 180;
/// More doses than these stand in no one-year list. Our choice.
const MOST_DOSES: u32 = 3;

/// Days between lime and what holds ammonium, and between two feeds that were put off.
/// Source: common practice, some weeks.
const APART: i64 = 14;

/// Days before harvest in which nothing is fed any more. Our choice: too late to be taken up.
const FED_BEFORE_HARVEST: i64 = 28;

/// Days from the first frost until what stands grows again. Our choice.
const WINTER_RESTS: i64 = 150;

/// Days in which lime is spread that is to be done with before a feed. Our choice.
const A_WEEK: i64 = 7;

/// Days for one job that needs no season, so that it gets an end. Our choice.
const A_MONTH: i64 = 30;

/// What the jobs are made from.
pub(crate) struct Work<'a> {
    pub survey: &'a Survey<'a>,
    pub path: Path,
    pub hazards: &'a [Hazard],
    pub dose: &'a Dose,
    pub charge: Option<&'a ChargePlan>,
    pub needs: &'a [Need],
}

/// Some days after a date.
pub(crate) fn later(date: Option<Date>, days: i64) -> Option<Date> {
    Some(date?.saturating_add(Duration::days(days)))
}

/// The first and the last day of a month, the next that is not over on `day`; the first is none
/// before it.
fn month_from(month: Month, day: Option<Date>) -> (Option<Date>, Option<Date>) {
    let Some(day) = day else { return (None, None) };
    let of = |year: i32| {
        let first = Date::from_calendar_date(year, month, 1).ok()?;
        let last = Date::from_calendar_date(year, month, month.length(year)).ok()?;
        (last >= day).then_some((first.max(day), last))
    };
    let found = of(day.year()).or_else(|| of(day.year() + 1));
    (found.map(|(first, _)| first), found.map(|(_, last)| last))
}

/// The jobs in the order of the season.
pub(crate) fn jobs(work: &Work<'_>) -> Vec<Job> {
    let mut list = Vec::new();
    let mut feeds = work.feeds();
    list.extend(work.hazard());
    list.extend(work.limes(&mut feeds));
    list.extend(work.of_need(NeedKind::Acid, JobKind::Sulfur));
    list.extend(work.of_need(NeedKind::Gypsum, JobKind::Gypsum));
    list.extend(work.washes());
    if work.path != Path::None {
        list.extend(work.charges());
        list.push(work.spreads());
    }
    list.extend(work.covers());
    list.extend(work.retests_first());
    list.extend(feeds);
    list.extend(work.plants());
    list.push(work.retests());
    if list.iter().any(|job| job.digs)
        && let Standing::Until(off) = work.survey.bed.standing
    {
        list.insert(0, work.clears(off));
    }
    in_order(list)
}

/// By their first days; a job without one stays behind the one it follows.
fn in_order(list: Vec<Job>) -> Vec<Job> {
    let mut last: Option<Date> = None;
    let mut dated: Vec<(Option<Date>, Job)> = Vec::with_capacity(list.len());
    for job in list {
        let from = job.from.or(job.to);
        last = from.or(last);
        dated.push((last, job));
    }
    dated.sort_by_key(|(from, _)| *from);
    dated.into_iter().map(|(_, job)| job).collect()
}

impl Work<'_> {
    fn timing(&self) -> &Timing {
        &self.survey.timing
    }

    fn today(&self) -> Option<Date> {
        self.timing().today
    }

    /// Not before today; what digs not before the bed is clear, and over before it is
    /// planted. The last day never comes before the first.
    fn job(
        &self,
        kind: JobKind,
        digs: bool,
        task: impl Into<String>,
        (from, to): (Option<Date>, Option<Date>),
        reason: impl Into<String>,
        sources: &[Citation],
    ) -> Job {
        let clear = if digs { self.clear_from() } else { None };
        let floor = self.today().max(clear);
        let from = from.max(floor.filter(|_| from.is_some() || clear.is_some()));
        let before_planting = later(self.timing().planting.filter(|_| digs), -1);
        let to = match (to, before_planting) {
            (Some(to), Some(last)) => Some(to.min(last)),
            (None, last) => last.filter(|_| from.is_some()),
            (to, None) => to,
        };
        let to = to.map(|to| from.map_or(to, |from| to.max(from)).max(floor.unwrap_or(to)));
        let reason = reason.into();
        let mut grounds = Grounds::new(reason.clone(), sources);
        let t = self.timing();
        for (name, date) in [
            ("today", t.today),
            ("harvest", t.harvest),
            ("first frost", t.first_frost),
            ("planting", t.planting),
        ] {
            if let Some(date) = date {
                grounds = grounds.input(name, date.to_string());
            }
        }
        Job { kind, digs, task: task.into(), from, to, reason, carries: Vec::new(), grounds }
    }

    /// Whether anything may be dug in: not where roots last or nobody digs, not while a
    /// crop stands that nobody gave an end, and never in leaded soil.
    fn may_dig(&self) -> bool {
        self.survey.bed.is_dug()
            && !self.survey.bed.is_potted()
            && self.survey.bed.standing != Standing::Open
            && !self.hazards.contains(&Hazard::Lead)
    }

    /// The first day the bed is clear, where something stands until then.
    fn clear_from(&self) -> Option<Date> {
        match self.survey.bed.standing {
            Standing::Until(off) => Some(off),
            _ => None,
        }
    }

    fn need(&self, kind: NeedKind) -> Option<(&Need, Band)> {
        let need = self.needs.iter().find(|need| need.kind == kind)?;
        Some((need, need.given()?))
    }

    fn hazard(&self) -> Option<Job> {
        self.hazards.contains(&Hazard::Lead).then(|| {
            self.job(
                JobKind::Hazard,
                false,
                "Cover bare soil with mulch, keep children off it, and grow food in raised beds of clean soil. Ask the local health office.",
                (self.today(), None),
                "Total lead is at or above the level for homes. Digging raises dust and brings more of it up.",
                &[LEAD_UMD.opened()],
            )
        })
    }

    fn washes(&self) -> Option<Job> {
        let sodium = self.hazards.contains(&Hazard::Sodium);
        let salts = self.hazards.contains(&Hazard::Salts);
        let water = salts.then(|| washing::depth_of_water(self.survey)).flatten();
        let (task, sources) = match (sodium, water) {
            (true, _) => (
                "Once the gypsum is in and water drains away below, wash the sodium down with clean water."
                    .to_string(),
                Vec::new(),
            ),
            (_, Some(water)) => (washing::task(self.survey, water), washing::SOURCES.to_vec()),
            _ if salts => (
                "Wash the salts down with clean water, where the soil drains.".to_string(),
                Vec::new(),
            ),
            _ => return None,
        };
        let mut reason = "This comes before any biochar, lime or feed.".to_string();
        reason.extend(washing::bears(self.survey).filter(|_| salts));
        let all = [vec![NRCS_SALINITY.opened(), COMMON_PRACTICE.unsourced()], sources].concat();
        let window = (self.today(), None);
        Some(self.job(JobKind::WashSalts, false, task, window, reason, &all))
    }

    fn clears(&self, off: Date) -> Job {
        self.job(
            JobKind::Clear,
            false,
            "Clear the bed after harvest. Pull no more roots than you must.",
            (Some(off), Some(off)),
            "What is dug in goes into a clear bed.",
            &[COMMON_PRACTICE.unsourced()],
        )
    }

    /// A dose of lime from a day on, kept some weeks from what is fed, since nitrogen may come
    /// as ammonium or manure: it ends before the feed, or the feed waits for it where it can
    /// (`hurry`), or it waits for the feed. Its first and last day.
    fn away_from_feeds(
        &self,
        mut from: Option<Date>,
        feeds: &mut [Job],
        hurry: bool,
    ) -> (Option<Date>, Option<Date>) {
        let ends = |from| later(from, A_MONTH);
        if self.need(NeedKind::Nitrogen).is_none() {
            return (from, ends(from));
        }
        for feed in feeds {
            let (Some(day), Some(begins), Some(over)) = (from, feed.from, feed.to.or(feed.from))
            else {
                continue;
            };
            let (before, last) = (later(Some(begins), -APART), later(Some(over), -APART));
            // A dose that is not urgent wants some days before the feed.
            let enough = if hurry { from } else { later(from, A_WEEK) };
            if enough <= before {
                return (from, ends(from).min(before));
            }
            if hurry && from <= last {
                let end = later(from, A_WEEK).min(last);
                feed.from = later(end, APART);
                return (from, end);
            }
            from = later(Some(over), APART).max(Some(day));
        }
        (from, ends(from))
    }

    /// Lime in its doses, half a year apart.
    fn limes(&self, feeds: &mut [Job]) -> Vec<Job> {
        let Some((need, grams)) = self.need(NeedKind::Lime) else { return Vec::new() };
        let count = need.doses.max(1);
        let each = Load {
            kind: NeedKind::Lime,
            grams: grams.likely / f64::from(count),
            powder: Some(Powder::Limestone),
            what: "ground limestone",
        };
        let reason = if self.survey.bed.standing == Standing::Open {
            "Lime takes months to work. On top it works down slowly; mix in the rest when the bed is clear."
        } else {
            "Lime takes months to work: the sooner it is in, the better. Autumn is best."
        };
        (0..count.min(MOST_DOSES))
            .map(|dose| {
                let due =
                    later(self.clear_from().max(self.today()), BETWEEN_DOSES * i64::from(dose));
                let (mut from, mut end) = self.away_from_feeds(due, feeds, dose == 0);
                let spread = self.spread_after_lime();
                let apart = later(spread, -APART).filter(|apart| from <= Some(*apart));
                if apart.is_none() && spread.is_some() && from.is_some() {
                    let after = from.max(later(spread, 2 * APART));
                    (from, end) = self.away_from_feeds(after, feeds, false);
                }
                // Once the bed is planted nobody knows how long the crop stands.
                let planted =
                    self.timing().planting.zip(from).is_some_and(|(plant, from)| from >= plant);
                let digs = self.may_dig() && !planted;
                let window = (from, [apart, end].into_iter().flatten().min());
                let sources = [TRI_STATE_LIME.opened(), COMMON_PRACTICE.unsourced()];
                let task = self.evenly(&self.told(&each), digs);
                self.job(JobKind::Lime, digs, task, window, reason, &sources)
                    .carrying(vec![each.clone()])
            })
            .collect()
    }

    /// What is carried to the bed, with the cups or bags that hold it.
    fn told(&self, load: &Load) -> String {
        let amount = load.told(self.survey.case.measures);
        self.survey.on_bed(format!("{amount} of {}", load.what))
    }

    /// What several loads come to in a sentence.
    fn all_told(&self, loads: &[Load]) -> String {
        loads.iter().map(|load| self.told(load)).collect::<Vec<_>>().join(", ")
    }

    fn evenly(&self, amount: &str, digs: bool) -> String {
        if digs {
            format!("Spread {amount} evenly and mix it in {} deep.", self.depth())
        } else {
            format!("Spread {amount} evenly on top and water it in.")
        }
    }

    /// What is spread: the biochar, or the mix it became with what it was charged with.
    fn amount(&self) -> String {
        let measures = self.survey.case.measures;
        let biochar = measured_out(self.dose.litres, measures);
        let mixed_in = self.charge.map_or(0.0, ChargePlan::mixed_in);
        let all = measured_out(self.dose.litres + mixed_in, measures);
        if all == biochar {
            return self.survey.on_bed(format!("{biochar} of damp biochar"));
        }
        self.survey.on_bed(format!("{all} of the charged mix ({biochar} of it biochar)"))
    }

    fn depth(&self) -> String {
        self.survey.shown(&Band::exactly(self.survey.bed.depth.value), Unit::Cm)
    }

    /// Sulfur or gypsum, the first dose of it.
    fn of_need(&self, kind: NeedKind, job: JobKind) -> Option<Job> {
        let (need, grams) = self.need(kind)?;
        let count = need.doses.max(1);
        let (powder, what) = if kind == NeedKind::Acid {
            (Powder::Sulfur, "sulfur")
        } else {
            (Powder::Gypsum, "gypsum")
        };
        let grams = grams.likely / f64::from(count);
        let each = Load { kind, grams, powder: Some(powder), what };
        let digs = self.may_dig();
        let task = self.evenly(&self.told(&each), digs);
        let reason = if kind == NeedKind::Acid {
            "Bacteria turn sulfur to acid while the soil is warm. Test the pH before any further dose."
        } else {
            "Gypsum puts calcium in the place of sodium; clean water then takes the sodium down."
        };
        let reason = if count > 1 && kind == NeedKind::Gypsum {
            format!("{reason} The next dose comes half a year later, after a test.")
        } else {
            reason.to_string()
        };
        let from = self.clear_from().max(self.today());
        let sources = [COMMON_PRACTICE.unsourced()];
        Some(self.job(job, digs, task, (from, None), reason, &sources).carrying(vec![each]))
    }

    /// How biochar gets into this bed, and whether that digs.
    fn how(&self) -> (String, bool) {
        let (amount, depth) = (self.amount(), self.depth());
        let bed = &self.survey.bed;
        match (bed.kind, bed.standing) {
            (Some(BedKind::Container), Standing::Clear) => {
                (format!("Mix {amount} evenly into the potting mix."), false)
            }
            (Some(BedKind::TreePit), Standing::Clear) => {
                (format!("Mix {amount} evenly into the soil that goes back into the pit."), false)
            }
            (_, Standing::Lasting) if self.survey.is_lawn() => (
                format!(
                    "Take cores out of the lawn, then brush {amount} into the holes, a thin layer at a time."
                ),
                false,
            ),
            (Some(BedKind::TreePit), Standing::Lasting) => (
                format!(
                    "Bore narrow holes under the outer branches, {depth} deep, and fill them with {amount} and compost. Don't cut roots."
                ),
                false,
            ),
            (_, Standing::Open) => (self.between_rows(), false),
            _ if !self.may_dig() => {
                (format!("Spread {amount} on top and cover it with compost or mulch."), false)
            }
            _ => (format!("Spread {amount} and mix it in {depth} deep."), true),
        }
    }

    fn between_rows(&self) -> String {
        let amount = self.amount();
        format!("Spread {amount} between the rows, off the stems, and cover it with mulch.")
    }

    /// When charging should begin.
    fn charges(&self) -> Option<Job> {
        let charge = self.charge?;
        let t = self.timing();
        let days = charge.days.likely as i64;
        let last = t.before_planting(days + CHARGED_BEFORE_PLANTING.1);
        let late = last.zip(self.today()).is_some_and(|(last, today)| last < today);
        let first = t.before_planting(days + 2 * CHARGED_BEFORE_PLANTING.0);
        let mut why = format!("Charging takes about {days} days.");
        if late {
            why.push_str(" There is no longer time for all of it before planting: start now, and use it when it is ready.");
        }
        let task = match self.path {
            Path::Charged => "Start charging the biochar, unless you buy it charged.",
            _ => "Start charging the biochar.",
        };
        let window = if t.planting.is_some() { (first, last) } else { (self.today(), None) };
        Some(self.job(JobKind::Charge, false, task, window, why, &[OUR_CHOICE.unsourced()]))
    }

    /// The first day of spreading.
    pub fn spread_from(&self) -> Option<Date> {
        (self.path != Path::None).then(|| self.spreads().from).flatten()
    }

    /// Whether the biochar comes into the ground only when the plants are in.
    pub fn comes_after_planting(&self) -> bool {
        let planting = self.timing().planting;
        self.spread_from().zip(planting).is_some_and(|(spread, plant)| spread >= plant)
    }

    fn spreads(&self) -> Job {
        match self.path {
            Path::UnchargedAfterHarvest => self.spreads_uncharged(),
            _ => self.spreads_charged(),
        }
    }

    fn spreads_uncharged(&self) -> Job {
        let t = self.timing();
        let mut reason = match t.winter {
            Some(Winter::None) => {
                "In place before the main rains, it can hold what they would wash away."
            }
            _ if t.winter_is_ahead() => {
                "In place before winter, it can hold what rain would wash away."
            }
            _ => "The sooner it is in, the more of the surplus it can hold before planting.",
        }
        .to_string();
        let window = match &t.window {
            Window::Open { from, to, notes } => {
                for note in notes {
                    reason.push(' ');
                    reason.push_str(note);
                }
                if to.is_none() {
                    reason.push_str(
                        " Give the first frost and the planting date to see the last good day.",
                    );
                }
                (*from, *to)
            }
            Window::Unknown(missing) => {
                reason.push_str(&format!(" No dates yet: say {missing}."));
                (None, None)
            }
            Window::Closed => (None, None),
        };
        let sources = [
            BORCHARD_2019.opened(),
            NGUYEN_2017.second_hand(),
            UMASS_FALL.opened(),
            GUO_2020.opened(),
        ];
        let (task, digs) = self.how();
        self.job(JobKind::SpreadBiochar, digs, task, window, reason, &sources)
    }

    fn spreads_charged(&self) -> Job {
        let t = self.timing();
        let (mut task, mut digs) = self.how();
        let days = self.charge.map(|charge| charge.days.likely as i64);
        let ready = later(self.today(), days.unwrap_or(0)).max(self.after_lime());
        let late =
            ready.zip(t.before_planting(CHARGED_BEFORE_PLANTING.1)).is_some_and(|(r, b)| r > b);
        let (window, reason) = if late {
            let planted = ready.zip(t.planting).is_some_and(|(ready, plant)| ready >= plant);
            if planted && digs {
                (task, digs) = (self.between_rows(), false);
            }
            let reason = if planted {
                "As soon as it is ready; the plants are in by then, so nothing is dug."
            } else {
                "As soon as it is ready."
            };
            ((ready, later(ready, CHARGED_BEFORE_PLANTING.1)), reason)
        } else if t.planting.is_some() {
            let first = t.before_planting(CHARGED_BEFORE_PLANTING.0).max(ready);
            let window = (first, t.before_planting(CHARGED_BEFORE_PLANTING.1));
            (window, "Two to four weeks let it settle before roots reach it.")
        } else if digs {
            let reason = "Two to four weeks before planting is best. Give the planting date for a dated plan.";
            ((ready.filter(|_| days.is_some()), None), reason)
        } else {
            let reason = "Charged biochar may go on at any time of growth. Keep it off the stems.";
            ((self.out_of_the_cold(ready), None), reason)
        };
        let sources = [OUR_CHOICE.unsourced(), GUO_2020.opened()];
        self.job(JobKind::SpreadBiochar, digs, task, window, reason, &sources)
    }

    /// Lime and what holds ammonium stay two weeks apart.
    fn after_lime(&self) -> Option<Date> {
        self.need(NeedKind::Lime)?;
        let ammonium = self.charge.is_some_and(ChargePlan::holds_ammonium);
        later(self.clear_from().max(self.today()), APART).filter(|_| ammonium)
    }

    /// The first day of spreading, where it has to stay away from the lime.
    fn spread_after_lime(&self) -> Option<Date> {
        self.after_lime()?;
        self.spreads().from
    }

    /// A cover crop wherever nitrate is left and the wet or cold season is ahead.
    fn covers(&self) -> Option<Job> {
        let t = self.timing();
        let left = self
            .survey
            .findings
            .level(Property::NitrateN)
            .is_some_and(|level| level >= Level::Sufficient);
        let holds = self.path == Path::UnchargedAfterHarvest;
        let bare = !matches!(self.survey.bed.standing, Standing::Lasting | Standing::Open)
            && !self.survey.bed.is_potted();
        if !(bare && t.winter_is_ahead() && (left && t.rests_over_winter() || holds)) {
            return None;
        }
        let from = self.clear_from().max(self.today());
        let to = match &t.window {
            Window::Open { to: Some(to), .. } => Some(*to),
            _ => later(from, A_MONTH),
        };
        // What is sown after the first frost covers nothing that winter.
        let frost = t.first_frost.filter(|frost| from.is_none_or(|from| *frost >= from));
        let to = to.map(|to| frost.map_or(to, |frost| to.min(frost)));
        Some(self.job(
            JobKind::CoverCrop,
            false,
            "Cover the soil: sow a cover crop if there is time, or mulch.",
            (from, to),
            "Bare soil loses nutrients; a cover crop holds nitrate too.",
            &[NOURI_2022.opened(), COMMON_PRACTICE.unsourced()],
        ))
    }

    /// What is still missing of the year's nutrients, before planting and in growth.
    fn feeds(&self) -> Vec<Job> {
        if self.survey.bed.is_potted() {
            return self.feeds_pots().into_iter().collect();
        }
        // In more than one part where the second comes in time before the harvest.
        let again = later(self.today(), SECOND_FEED.1);
        let twice = self.last_feed().zip(again).is_none_or(|(last, again)| again <= last);
        let mut rounds: Vec<Vec<Load>> = Vec::new();
        let by_month = self.is_fed_by_month();
        let names = [
            (NeedKind::Nitrogen, None, "nitrogen (N)"),
            (NeedKind::Phosphate, None, "phosphate (P₂O₅)"),
            (NeedKind::Potash, None, "potash (K₂O)"),
            (NeedKind::Magnesium, Some(Powder::EpsomSalts), "Epsom salts"),
            (NeedKind::Sulfur, Some(Powder::Gypsum), "gypsum"),
        ];
        let salts = self.needs.iter().filter_map(|need| {
            let powder = (need.kind == NeedKind::Boron).then_some(Powder::Borax);
            let (salt, _) = need.salt.filter(|(_, way)| *way != Way::Leaves)?;
            Some((need.kind, powder, salt))
        });
        for (kind, powder, name) in names.into_iter().chain(salts) {
            let Some((need, grams)) = self.need(kind) else { continue };
            if kind == NeedKind::Nitrogen && by_month {
                continue;
            }
            let halves = if kind == NeedKind::Nitrogen { 2 } else { 1 };
            let parts = if twice { need.doses.clamp(halves, MOST_FEEDS) } else { 1 };
            let most = need.at_once.as_ref().map_or(f64::INFINITY, |ceiling| ceiling.most);
            let grams = (grams.likely / f64::from(parts)).min(most);
            let part = Load { kind, grams, powder, what: name };
            for at in 0..parts as usize {
                if rounds.len() <= at {
                    rounds.push(Vec::new());
                }
                rounds[at].push(part.clone());
            }
        }
        let mut rounds = rounds.into_iter();
        let mut jobs: Vec<Job> = if by_month {
            self.feeds_by_month(&mut rounds)
        } else {
            rounds.next().map(|first| self.feeds_first(first)).into_iter().collect()
        };
        for (what, at) in rounds.zip(1..) {
            let before = jobs.iter().filter_map(|job| job.to.or(job.from)).max();
            jobs.push(self.feeds_again(what, at, before));
        }
        jobs.extend(self.sprays());
        jobs
    }

    /// The feed in the water of pots, while the plants grow.
    fn feeds_pots(&self) -> Option<Job> {
        self.needs.iter().find(|need| need.verdict == Verdict::Give && need.for_bed.is_none())?;
        let from = later(self.timing().planting, A_WEEK).or(self.out_of_the_cold(self.today()));
        let to = later(self.timing().first_frost, -A_MONTH).filter(|to| from <= Some(*to));
        Some(self.job(
            JobKind::Feed,
            false,
            "Feed the pots in the water while the plants grow, as strong as the plan says.",
            (from, to),
            "A pot holds little, and every watering washes it.",
            &[COMMON_PRACTICE.unsourced()],
        ))
    }

    /// Whether nitrogen is given in the months of the region's guide: to what stands for years.
    fn is_fed_by_month(&self) -> bool {
        let stands = self.survey.bed.standing != Standing::Clear || self.survey.is_lawn();
        stands && self.need(NeedKind::Nitrogen).is_some_and(|(need, _)| !need.months.is_empty())
    }

    /// Nitrogen in the months of the region's guide; with it goes what else is fed, round by round.
    fn feeds_by_month(&self, beside: &mut dyn Iterator<Item = Vec<Load>>) -> Vec<Job> {
        let Some((need, grams)) = self.need(NeedKind::Nitrogen) else { return Vec::new() };
        let year: f64 = need.months.iter().map(|(_, rate)| rate.likely).sum();
        let most = need.at_once.as_ref().map_or(f64::INFINITY, |ceiling| ceiling.most);
        let begins = self.timing().planting.max(self.today());
        let given = need.months.iter().filter(|(_, rate)| rate.likely > 0.0);
        let month = |(month, rate): &(u8, Band)| {
            let month = Month::try_from(*month).ok()?;
            Some((month_from(month, begins), month, rate.likely))
        };
        let mut months: Vec<_> = given.filter_map(month).collect();
        months.sort_by_key(|((from, _), ..)| *from);
        months
            .into_iter()
            .map(|(window, month, rate)| {
                let mut loads = vec![Load {
                    kind: NeedKind::Nitrogen,
                    grams: (grams.likely * rate / year).min(most),
                    powder: None,
                    what: "nitrogen (N)",
                }];
                loads.extend(beside.next().into_iter().flatten());
                let task = format!("Feed in {month}: {}.", self.all_told(&loads));
                let reason = "The region's guide gives it in this month.";
                self.job(JobKind::Feed, false, task, window, reason, &[]).carrying(loads)
            })
            .collect()
    }

    /// What is sprayed on the leaves, once they are large enough.
    fn sprays(&self) -> Vec<Job> {
        let salts =
            self.needs.iter().filter_map(|need| Some((need.kind, need.given()?, need.salt?)));
        salts
            .filter(|(_, _, (_, way))| *way == Way::Leaves)
            .map(|(kind, grams, (what, _))| {
                let load = Load { kind, grams: grams.likely, powder: None, what };
                let what = self.told(&load);
                let task =
                    format!("Spray the leaves in the cool of the day: {what}, dissolved in water.");
                let start = later(
                    self.timing().planting.or(self.out_of_the_cold(self.today())),
                    SECOND_FEED.0,
                );
                let window = (start, later(start, A_MONTH));
                let reason = "Spread on the soil it is locked up, or works less.";
                self.job(
                    JobKind::Spray,
                    false,
                    task,
                    window,
                    reason,
                    &[COMMON_PRACTICE.unsourced()],
                )
                .carrying(vec![load])
            })
            .collect()
    }

    /// The last day to feed the crop that stands now, where its harvest is known and no
    /// other crop was told of.
    fn last_feed(&self) -> Option<Date> {
        later(self.clear_from().filter(|_| self.timing().planting.is_none()), -FED_BEFORE_HARVEST)
    }

    /// A day for what feeds what stands: not within a month of the first frost, nor in the cold
    /// after it. Where nobody gave the frost, the day is left open in the dead of winter.
    fn out_of_the_cold(&self, day: Option<Date>) -> Option<Date> {
        let frost = self.timing().first_frost;
        if frost.is_none() && day.is_some_and(|day| self.survey.is_dead_of_winter(day)) {
            return None;
        }
        let grows_again = later(frost, WINTER_RESTS);
        let cold = day > later(frost, -A_MONTH) && day < grows_again && self.last_feed().is_none();
        if frost.is_some() && cold { grows_again } else { day }
    }

    /// Whether wood stands here.
    fn is_woody(&self) -> bool {
        use PlantGroup::{AcidLovers, Berries, OrnamentalsAndTrees};
        matches!(self.survey.plants(), AcidLovers | Berries | OrnamentalsAndTrees)
    }

    /// When the buds open next, where it is known which half of the year is cold: March and April
    /// in the north. Source: common practice, no source.
    fn next_spring(&self) -> (Option<Date>, Option<Date>) {
        let Some(southern) = self.survey.is_southern() else { return (None, None) };
        let (first, last) = if southern {
            (Month::September, Month::October)
        } else {
            (Month::March, Month::April)
        };
        let from = month_from(first, self.today()).0;
        (from, month_from(last, from).1)
    }

    fn feeds_first(&self, loads: Vec<Load>) -> Job {
        let (t, what) = (self.timing(), self.all_told(&loads));
        let stands = self.survey.bed.standing != Standing::Clear && t.planting.is_none();
        let ripens = self.today().is_some_and(|today| self.survey.is_wood_ripening(today));
        let (task, window, reason) = if stands && self.is_woody() && ripens {
            (
                format!("Feed in spring, when the buds open, beside the plants: {what}."),
                self.next_spring(),
                "What is still missing after all else. Fed late, the wood doesn't ripen before winter.",
            )
        } else if stands {
            let from = self.out_of_the_cold(self.today());
            let soon = later(from, SECOND_FEED.0);
            (
                format!("Feed on top, beside the plants, and water it in: {what}."),
                (from, self.last_feed().min(soon).or(soon)),
                "What is still missing after all else. Feed while the plants grow, never before winter.",
            )
        } else {
            let first = later(t.planting, -FEED_BEFORE_PLANTING.0);
            (
                format!("Feed before planting: {what}."),
                (first, later(t.planting, -FEED_BEFORE_PLANTING.1)),
                "What is still missing after all else. Never before winter: rain washes it out.",
            )
        };
        let sources = [UMASS_RATES.opened(), COMMON_PRACTICE.unsourced()];
        self.job(JobKind::Feed, false, task, window, reason, &sources).carrying(loads)
    }

    /// The second feed and those after it, none before the one before it is over.
    fn feeds_again(&self, loads: Vec<Load>, at: i64, before: Option<Date>) -> Job {
        let (t, what) = (self.timing(), self.all_told(&loads));
        let grows = later(t.planting, at * SECOND_FEED.0);
        let apart = if self.survey.is_lawn() { 60 } else { SECOND_FEED.0 };
        let start = grows.or(later(self.today(), at * apart));
        let start =
            start.filter(|_| t.planting.is_some() || self.survey.bed.standing != Standing::Clear);
        let start = if t.planting.is_some() { start } else { self.out_of_the_cold(start) };
        // Both may have been put off to the end of the winter.
        let start = if start < before { start.and(later(before, APART)) } else { start };
        self.job(
            JobKind::Feed,
            false,
            format!("Feed again while the plants grow fast, beside them: {what}."),
            (start, later(start, SECOND_FEED.1 - SECOND_FEED.0)),
            "A part waits for the plants, so that rain takes less of it.",
            &[UMASS_RATES.opened()],
        )
        .carrying(loads)
    }

    /// A test before planting, where a surplus was held over winter.
    fn retests_first(&self) -> Option<Job> {
        if self.path != Path::UnchargedAfterHarvest {
            return None;
        }
        let t = self.timing();
        let mut reason =
            "Nitrate in biochar shows only in part in a soil test, so read the result as the least \
             there is."
                .to_string();
        if t.planting.is_none() {
            reason.push_str(" Do it two to four weeks before planting.");
        }
        let window = (
            t.before_planting(RETEST_BEFORE_PLANTING.0),
            t.before_planting(RETEST_BEFORE_PLANTING.1),
        );
        Some(self.job(
            JobKind::Retest,
            false,
            "Test the soil again before planting, and feed only what is short.",
            window,
            reason,
            &[COMMON_PRACTICE.unsourced()],
        ))
    }

    fn retests(&self) -> Job {
        self.job(
            JobKind::Retest,
            false,
            "Test the soil again, at the same time of year and by the same laboratory.",
            (later(self.today(), 335), later(self.today(), 395)),
            "A year on, two tests can be compared.",
            &[COMMON_PRACTICE.unsourced()],
        )
    }

    fn plants(&self) -> Option<Job> {
        let leaded = self.hazards.contains(&Hazard::Lead);
        let date = self.timing().planting.filter(|_| !leaded)?;
        let reason = if self.timing().planting_assumed {
            "The last spring frost, until you give the planting date."
        } else {
            "The date you gave."
        };
        Some(self.job(
            JobKind::Plant,
            false,
            "Plant.",
            (Some(date), Some(date)),
            reason,
            &[COMMON_PRACTICE.unsourced()],
        ))
    }
}
