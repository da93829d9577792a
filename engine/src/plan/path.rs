//! The path: a table of rules. Every rule says when it holds, what it speaks
//! for, why, and on whose word.

use crate::plan::facts::Facts;
use crate::plan::hazards::leaded;
use crate::plan::rate::MOST_PH;
use serde::Serialize;

use crate::named::named;
use crate::quantity::{Grounds, Input};
use crate::soil::{Property, listed};
use crate::sources::{
    BEKCHANOVA_2024, BORCHARD_2019, COLORADO_SODIC, COMMON_PRACTICE, Citation, DRYLANDS_2025,
    EPA_LEAD, GUO_2020, JEFFERY_2011, JEFFERY_2017, KAMMANN_2015, LEAD_UMD, LIU_2017, NGUYEN_2017,
    NRCS_SALINITY, OUR_CHOICE, PHREEQC_EXCHANGE, SALT_REVIEW, YE_2020,
};
use crate::survey::Survey;

named! { "path":
    /// The biochar path.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub enum Path {
        /// Uncharged biochar after harvest, to hold a surplus over winter.
        UnchargedAfterHarvest = "uncharged-after-harvest";
        /// Charged biochar.
        Charged = "charged";
        /// Charge the uncharged biochar on hand first.
        ChargeFirst = "charge-first";
        /// No biochar now.
        None = "none";
    }
}

/// One rule that fired.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Reason {
    /// The reason in one sentence.
    pub text: String,
    /// Whether it speaks for the chosen path.
    #[serde(rename = "for")]
    pub speaks_for: bool,
    /// The rule's name.
    pub rule: RuleName,
    /// What it rests on.
    pub grounds: Grounds,
}

/// What a rule speaks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Speaks {
    /// No biochar, whatever else holds.
    Forbids,
    /// The biochar must be charged.
    ForCharged,
    /// The bag on hand must be charged first.
    ForChargeFirst,
    /// There is something for uncharged biochar to hold.
    ForUncharged,
    /// Uncharged biochar would do no good here.
    RulesOutUncharged,
    /// Weighs for no biochar, but doesn't decide.
    ForNone,
    /// Weighs against uncharged biochar, but doesn't decide.
    AgainstUncharged,
    /// Weighs against any biochar, but doesn't decide.
    AgainstAny,
    /// Weighs for biochar, but doesn't decide.
    ForAny,
}

impl Speaks {
    /// Whether this speaks for the path taken.
    fn for_path(self, path: Path) -> bool {
        let uses = path != Path::None;
        let charged = matches!(path, Path::Charged | Path::ChargeFirst);
        match self {
            Speaks::Forbids | Speaks::ForNone | Speaks::AgainstAny => !uses,
            Speaks::ForCharged => charged,
            Speaks::ForChargeFirst => path == Path::ChargeFirst,
            Speaks::ForUncharged => path == Path::UnchargedAfterHarvest,
            Speaks::RulesOutUncharged | Speaks::AgainstUncharged => {
                path != Path::UnchargedAfterHarvest
            }
            Speaks::ForAny => uses,
        }
    }
}

named! { "rule":
    /// The rules by name.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    #[allow(missing_docs, reason = "each rule says when it holds")]
    pub enum RuleName {
        PhPastLimit = "ph-past-limit";
        Leaded = "leaded";
        Saline = "saline";
        SaltyOneToOne = "salty-1-1";
        Sodic = "sodic";
        SaltyBiochar = "salty-biochar";
        PhosphorusPastLimit = "phosphorus-past-limit";
        NothingJudged = "nothing-judged";
        NitrogenShort = "nitrogen-short";
        PhosphorusShort = "phosphorus-short";
        PotassiumShort = "potassium-short";
        Sandy = "sandy";
        LowExchangeCapacity = "low-exchange-capacity";
        PlantingSoon = "planting-soon";
        GrowingNow = "growing-now";
        UnchargedOnHand = "uncharged-on-hand";
        ChargeWithoutPhosphorus = "charge-without-phosphorus";
        RootsAllYear = "roots-all-year";
        NitrateSurplus = "nitrate-surplus";
        HoldThenFeed = "hold-then-feed";
        OtherSurplus = "other-surplus";
        GeneralSurplus = "general-surplus";
        TimeEnough = "time-enough";
        TimeIsShort = "time-is-short";
        ChargedBagOnSurplus = "charged-bag-on-surplus";
        PhAboveRange = "ph-above-range";
        RatherSaline = "rather-saline";
        OrganicSoil = "organic-soil";
        AcidSoil = "acid-soil";
        NothingShort = "nothing-short";
        NoGainExpected = "no-gain-expected";
        JudgedFromMemory = "judged-from-memory";
    }
}

/// One rule.
pub struct Rule {
    /// Its name.
    pub name: RuleName,
    /// When it holds, in words.
    pub when: &'static str,
    /// When it holds.
    pub holds: fn(&Facts<'_>) -> bool,
    /// What it speaks for.
    pub speaks: Speaks,
    /// Why, in one sentence or two.
    pub says: fn(&Facts<'_>) -> String,
    /// What it was decided from.
    pub inputs: fn(&Facts<'_>) -> Vec<Input>,
    /// On whose word.
    pub sources: &'static [Citation],
}

/// Every rule, those that forbid first.
pub static RULES: &[Rule] = &[
    Rule {
        name: RuleName::PhPastLimit,
        when: "pH after 1 % biochar by volume is likely above 7.5, for acid-loving plants above their range",
        holds: |f| f.ph_past_limit(),
        speaks: Speaks::Forbids,
        says: |f| {
            if f.acid_lovers() {
                "Even a little of this biochar would take the pH past what acid-loving plants bear."
            } else if f.ph().is_some_and(|ph| ph > MOST_PH) {
                "The pH is past 7.5 already: plants run short of iron, zinc and manganese there, \
                 and biochar won't bring it down."
            } else {
                "Even a little biochar would take the pH past 7.5, where plants run short of \
                 iron, zinc and manganese."
            }
            .into()
        },
        inputs: |f| f.shown_ph(),
        sources: &[GUO_2020.opened()],
    },
    Rule {
        name: RuleName::Leaded,
        when: "total lead is at or over the screening level for homes, where food is grown",
        holds: |f| leaded(f.survey),
        speaks: Speaks::Forbids,
        says: |_| {
            "There is too much lead for food crops. Digging biochar in would raise dust, and \
             biochar is no cure."
                .into()
        },
        inputs: |f| f.shown_lead(),
        sources: &[EPA_LEAD.second_hand(), LEAD_UMD.opened()],
    },
    Rule {
        name: RuleName::Saline,
        when: "salts in the saturated paste are likely 4 dS/m or more, or beyond the range of a potting mix",
        holds: |f| f.saline(),
        speaks: Speaks::Forbids,
        says: |_| "The soil is salty. Biochar can add salts, so wash the salts out first.".into(),
        inputs: |f| f.shown_salts(),
        sources: &[NRCS_SALINITY.opened(), DRYLANDS_2025.opened(), SALT_REVIEW.opened()],
    },
    Rule {
        name: RuleName::SaltyOneToOne,
        when: "salts in a 1:1 suspension are over 2.7 dS/m",
        holds: |f| f.salty(),
        speaks: Speaks::Forbids,
        says: |_| "Salts are over 2.7 dS/m (1:1), the limit for treated soil.".into(),
        inputs: |f| f.shown_salts(),
        sources: &[GUO_2020.opened()],
    },
    Rule {
        name: RuleName::Sodic,
        when: "exchangeable sodium is at what makes a soil sodic there or more (15 % where the region has no line of its own), or the adsorption ratio 13 or more",
        holds: |f| f.sodic(),
        speaks: Speaks::Forbids,
        says: |_| {
            "The soil holds too much sodium. Gypsum and drainage come first: at garden rates \
             biochar moves sodium by less than half a point."
                .into()
        },
        inputs: |f| f.shown_salts(),
        sources: &[COLORADO_SODIC.opened(), PHREEQC_EXCHANGE.derived()],
    },
    Rule {
        name: RuleName::SaltyBiochar,
        when: "the biochar's own salts bring the soil to 2.7 dS/m at less than 1 % by volume",
        holds: |f| f.salty_char(),
        speaks: Speaks::Forbids,
        says: |_| "This biochar is so salty that no useful amount fits.".into(),
        inputs: |f| f.shown_salts(),
        sources: &[GUO_2020.opened(), OUR_CHOICE.unsourced()],
    },
    Rule {
        name: RuleName::PhosphorusPastLimit,
        when: "1 % biochar by volume brings more phosphorus than may come in",
        holds: |f| f.phosphorus_past_limit(),
        speaks: Speaks::Forbids,
        says: |_| {
            "Even a little of this biochar brings more phosphorus than this soil should get.".into()
        },
        inputs: |f| f.shown(&[Property::Phosphorus]),
        sources: &[GUO_2020.opened()],
    },
    Rule {
        name: RuleName::NothingJudged,
        when: "none of nitrate-N, phosphorus and potassium could be judged",
        holds: |f| !f.judged(),
        speaks: Speaks::Forbids,
        says: |_| {
            "Nitrogen, phosphorus and potassium couldn't be judged yet, so there is nothing to go by.".into()
        },
        inputs: |_| Vec::new(),
        sources: &[OUR_CHOICE.unsourced()],
    },
    Rule {
        name: RuleName::NitrogenShort,
        when: "nitrate-N is below sufficient",
        holds: |f| f.short(Property::NitrateN),
        speaks: Speaks::ForCharged,
        says: |f| {
            let mut text =
                "Nitrogen is short, and uncharged biochar ties up more in its first months."
                    .to_string();
            if f.nitrate_is_stale() {
                text.push_str(
                    " A nitrate test this long before planting tells little: test again nearer the day.",
                );
            }
            text
        },
        inputs: |f| f.shown(&[Property::NitrateN]),
        sources: &[NGUYEN_2017.second_hand(), YE_2020.opened()],
    },
    Rule {
        name: RuleName::PhosphorusShort,
        when: "phosphorus is below sufficient, and no nitrate is to be held over winter first",
        holds: |f| f.short(Property::Phosphorus) && !f.holds_first(),
        speaks: Speaks::ForCharged,
        says: |_| {
            "Phosphorus is short: plain biochar brought no more crop in field trials, biochar \
             with fertiliser did."
                .into()
        },
        inputs: |f| f.shown(&[Property::Phosphorus]),
        sources: &[YE_2020.opened()],
    },
    Rule {
        name: RuleName::PotassiumShort,
        when: "potassium is below sufficient, and no nitrate is to be held over winter first",
        holds: |f| f.short(Property::Potassium) && !f.holds_first(),
        speaks: Speaks::ForCharged,
        says: |_| {
            "Potassium is short: plain biochar brought no more crop in field trials, biochar \
             with fertiliser did."
                .into()
        },
        inputs: |f| f.shown(&[Property::Potassium]),
        sources: &[YE_2020.opened()],
    },
    Rule {
        name: RuleName::Sandy,
        when: "the texture is sand or loamy sand",
        holds: |f| f.sandy(),
        speaks: Speaks::ForCharged,
        says: |_| {
            "Sandy soil has little to share: on poor sand, plants grew 40 % less with uncharged \
             biochar and far more with charged."
                .into()
        },
        inputs: |f| f.shown_holding(),
        sources: &[KAMMANN_2015.opened(), LIU_2017.opened(), BEKCHANOVA_2024.opened()],
    },
    Rule {
        name: RuleName::LowExchangeCapacity,
        when: "exchange capacity is likely below 5 meq/100 g",
        holds: |f| f.low_cec(),
        speaks: Speaks::ForCharged,
        says: |_| "The soil can hold few nutrients, so biochar must bring its own.".into(),
        inputs: |f| f.shown_holding(),
        sources: &[KAMMANN_2015.opened(), OUR_CHOICE.unsourced()],
    },
    Rule {
        name: RuleName::PlantingSoon,
        when: "there is a surplus, and fewer than 28 days from the clear bed to planting",
        holds: |f| f.has_surplus() && !f.rooted() && f.survey.timing.planting_is_soon(),
        speaks: Speaks::ForCharged,
        says: |_| {
            "Planting is less than four weeks off: uncharged biochar would rob the young plants \
             in its first month."
                .into()
        },
        inputs: |f| f.shown_dates(),
        sources: &[NGUYEN_2017.second_hand()],
    },
    Rule {
        name: RuleName::GrowingNow,
        when: "there is a surplus, a crop grows now, and no harvest date is given",
        holds: |f| f.has_surplus() && !f.rooted() && f.growing_on(),
        speaks: Speaks::ForCharged,
        says: |_| "A crop is growing now: only charged biochar goes beside growing plants.".into(),
        inputs: |f| f.shown_dates(),
        sources: &[NGUYEN_2017.second_hand(), OUR_CHOICE.unsourced()],
    },
    Rule {
        name: RuleName::UnchargedOnHand,
        when: "charged biochar is called for, and the bag on hand is uncharged",
        holds: |f| f.wants_charged() && f.has_uncharged(),
        speaks: Speaks::ForChargeFirst,
        says: |_| "The bag on hand is uncharged. Charge it before it goes in.".into(),
        inputs: |_| Vec::new(),
        sources: &[KAMMANN_2015.opened()],
    },
    Rule {
        name: RuleName::ChargeWithoutPhosphorus,
        when: "phosphorus is above sufficient and nitrate-N is short",
        holds: |f| f.charge_without_phosphorus(),
        speaks: Speaks::ForCharged,
        says: |_| {
            "There is plenty of phosphorus and too little nitrogen: charge with nitrogen that \
             brings no phosphorus, not with compost."
                .into()
        },
        inputs: |f| f.shown(&[Property::Phosphorus, Property::NitrateN]),
        sources: &[COMMON_PRACTICE.unsourced()],
    },
    Rule {
        name: RuleName::RootsAllYear,
        when: "a lawn, a tree or berries, and a surplus",
        holds: |f| f.has_surplus() && f.rooted(),
        speaks: Speaks::RulesOutUncharged,
        says: |_| {
            "Roots are in this ground all year and hold the surplus themselves: under grass and \
             other lasting plants biochar kept back no more nitrate."
                .into()
        },
        inputs: |f| f.shown(&f.surpluses()),
        sources: &[BORCHARD_2019.opened()],
    },
    Rule {
        name: RuleName::NitrateSurplus,
        when: "nitrate-N is above sufficient",
        holds: |f| f.surplus(Property::NitrateN),
        speaks: Speaks::ForUncharged,
        says: |_| {
            "There is nitrate left over that rain can wash away: biochar cut the loss by 13 % on \
             average, and by more than 26 % in trials longer than a month."
                .into()
        },
        inputs: |f| f.shown(&f.surpluses()),
        sources: &[BORCHARD_2019.opened()],
    },
    Rule {
        name: RuleName::HoldThenFeed,
        when: "nitrate is to be held over winter, and phosphorus or potassium is short",
        holds: |f| {
            f.holds_first() && (f.short(Property::Phosphorus) || f.short(Property::Potassium))
        },
        speaks: Speaks::ForUncharged,
        says: |_| {
            "Hold the nitrate now, and feed what is short in spring: before winter it would only \
             lie there."
                .into()
        },
        inputs: |f| f.shown(&[Property::NitrateN, Property::Phosphorus, Property::Potassium]),
        sources: &[BORCHARD_2019.opened(), YE_2020.opened(), OUR_CHOICE.unsourced()],
    },
    Rule {
        name: RuleName::OtherSurplus,
        when: "nitrate-N and another nutrient are above sufficient",
        holds: |f| f.surplus(Property::NitrateN) && f.surpluses().len() >= 2,
        speaks: Speaks::ForUncharged,
        says: |f| {
            let others: Vec<Property> =
                f.surpluses().into_iter().filter(|p| *p != Property::NitrateN).collect();
            format!(
                "There is more than enough {} too, so the plants lose nothing.",
                listed(&others)
            )
        },
        inputs: |f| f.shown(&f.surpluses()),
        sources: &[OUR_CHOICE.unsourced()],
    },
    Rule {
        name: RuleName::GeneralSurplus,
        when: "nitrate-N isn't judged; two nutrients or more are above sufficient, phosphorus or \
               potassium among them",
        holds: |f| f.general_surplus(),
        speaks: Speaks::ForUncharged,
        says: |f| {
            format!(
                "There is more than enough {}; a bed fed so well mostly has nitrate to lose too.",
                listed(&f.surpluses())
            )
        },
        inputs: |f| f.shown(&f.surpluses()),
        sources: &[OUR_CHOICE.unsourced(), BORCHARD_2019.opened()],
    },
    Rule {
        name: RuleName::TimeEnough,
        when: "there is a surplus, and 56 days or more from the clear bed to planting",
        holds: |f| f.has_surplus() && f.days().is_some_and(|d| d >= crate::season::BETTER_DAYS),
        speaks: Speaks::ForUncharged,
        says: |f| {
            format!(
                "There are {} weeks from the clear bed to planting: time for biochar to take up \
                 its fill and settle.",
                f.days().unwrap_or_default() / 7
            )
        },
        inputs: |f| f.shown_dates(),
        sources: &[NGUYEN_2017.second_hand(), OUR_CHOICE.unsourced()],
    },
    Rule {
        name: RuleName::TimeIsShort,
        when: "there is a surplus, and 28 to 55 days from the clear bed to planting",
        holds: |f| {
            f.has_surplus()
                && f.days().is_some_and(|d| {
                    (crate::season::LEAST_DAYS..crate::season::BETTER_DAYS).contains(&d)
                })
        },
        speaks: Speaks::AgainstUncharged,
        says: |f| {
            format!(
                "There are only {} weeks from the clear bed to planting; eight would be better.",
                f.days().unwrap_or_default() / 7
            )
        },
        inputs: |f| f.shown_dates(),
        sources: &[NGUYEN_2017.second_hand(), OUR_CHOICE.unsourced()],
    },
    Rule {
        name: RuleName::ChargedBagOnSurplus,
        when: "there is a surplus, and the bag on hand is charged",
        holds: |f| f.has_surplus() && f.has_charged(),
        speaks: Speaks::AgainstUncharged,
        says: |_| {
            "The bag on hand is charged: it brings nutrients and has little room left for these. Keep it dry until spring."
                .into()
        },
        inputs: |f| f.shown(&f.surpluses()),
        sources: &[OUR_CHOICE.unsourced()],
    },
    Rule {
        name: RuleName::PhAboveRange,
        when: "pH after 1 % biochar is likely above the plants' range",
        holds: |f| f.ph_above_range(),
        speaks: Speaks::AgainstAny,
        says: |f| {
            let stands = if f.ph_is_above_range() { "above" } else { "at the top of" };
            format!(
                "The pH is {stands} what these plants like. Where biochar is used at all, take a \
                 softwood one low in ash, and little of it."
            )
        },
        inputs: |f| f.shown_ph(),
        sources: &[GUO_2020.opened(), OUR_CHOICE.unsourced()],
    },
    Rule {
        name: RuleName::RatherSaline,
        when: "salts in the saturated paste are likely 2 to 4 dS/m",
        holds: |f| f.rather_saline(),
        speaks: Speaks::AgainstAny,
        says: |_| "There are some salts in the soil; take a biochar that is low in salts.".into(),
        inputs: |f| f.shown_salts(),
        sources: &[NRCS_SALINITY.opened(), DRYLANDS_2025.opened()],
    },
    Rule {
        name: RuleName::OrganicSoil,
        when: "organic matter is 20 % or more",
        holds: |f| f.organic(),
        speaks: Speaks::AgainstAny,
        says: |_| {
            "This soil is mostly peat or compost. It holds water and nutrients by itself, so \
             biochar adds little."
                .into()
        },
        inputs: |f| f.shown_organic_matter(),
        sources: &[GUO_2020.opened(), OUR_CHOICE.unsourced()],
    },
    Rule {
        name: RuleName::AcidSoil,
        when: "pH is below 6",
        holds: |f| f.acid(),
        speaks: Speaks::ForAny,
        says: |_| {
            "The soil is acid, where biochar has helped most (14 % more crop on average). Lime \
             does that part better and cheaper."
                .into()
        },
        inputs: |f| f.shown_ph(),
        sources: &[JEFFERY_2011.opened(), COMMON_PRACTICE.unsourced()],
    },
    Rule {
        name: RuleName::NothingShort,
        when: "nothing of N, P and K is short, there is no surplus and no sand",
        holds: |f| f.content(),
        speaks: Speaks::ForNone,
        says: |f| {
            let untested = f.not_judged();
            let mut text =
                "No shortage was found, and no surplus to hold: biochar has no job here."
                    .to_string();
            if !untested.is_empty() {
                text.push_str(&format!(" Not judged: {}.", listed(&untested)));
            }
            text
        },
        inputs: |f| f.shown(&[Property::NitrateN, Property::Phosphorus, Property::Potassium]),
        sources: &[OUR_CHOICE.unsourced()],
    },
    Rule {
        name: RuleName::NoGainExpected,
        when: "nothing is short, no sand, pH 6 to 7.5, not in the tropics",
        holds: |f| f.no_gain_expected(),
        speaks: Speaks::ForNone,
        says: |_| {
            "Outside the tropics biochar brought no bigger crop on average. Expect no bigger one here."
                .into()
        },
        inputs: |f| f.shown_ph(),
        sources: &[JEFFERY_2017.opened()],
    },
    Rule {
        name: RuleName::JudgedFromMemory,
        when: "a nutrient was judged only by figures written from memory",
        holds: |f| !f.from_memory.is_empty(),
        speaks: Speaks::AgainstAny,
        says: |f| {
            format!(
                "The ranges for {} are from memory and were not checked: take the plan as a first \
                 guess.",
                listed(&f.from_memory)
            )
        },
        inputs: |f| f.shown(&f.from_memory),
        sources: &[OUR_CHOICE.unsourced()],
    },
];

/// The rules that hold, and the path they lead to.
pub struct Decision<'s> {
    /// The path.
    pub path: Path,
    /// The rules that hold.
    pub fired: Vec<&'static Rule>,
    /// The facts.
    pub facts: Facts<'s>,
}

/// Decides the path.
///
/// What forbids wins. A need for charged biochar comes before a surplus to
/// hold; a surplus comes before doing nothing.
pub fn decide<'s>(survey: &'s Survey<'s>) -> Decision<'s> {
    let facts = Facts::of(survey);
    let fired: Vec<&Rule> = RULES.iter().filter(|rule| (rule.holds)(&facts)).collect();
    let any = |speaks: Speaks| fired.iter().any(|rule| rule.speaks == speaks);
    let path = if any(Speaks::Forbids) {
        Path::None
    } else if any(Speaks::ForCharged) {
        if any(Speaks::ForChargeFirst) { Path::ChargeFirst } else { Path::Charged }
    } else if any(Speaks::ForUncharged) && !any(Speaks::RulesOutUncharged) {
        Path::UnchargedAfterHarvest
    } else {
        Path::None
    };
    Decision { path, fired, facts }
}

impl Decision<'_> {
    /// Every rule that holds, as a reason for or against the path; those for
    /// it first.
    pub fn reasons(&self) -> Vec<Reason> {
        let (speak_for, against): (Vec<&Rule>, Vec<&Rule>) =
            self.fired.iter().partition(|rule| rule.speaks.for_path(self.path));
        speak_for
            .into_iter()
            .chain(against)
            .map(|rule| {
                let mut grounds = Grounds::new(rule.when, rule.sources);
                grounds.inputs = (rule.inputs)(&self.facts);
                Reason {
                    text: (rule.says)(&self.facts),
                    speaks_for: rule.speaks.for_path(self.path),
                    rule: rule.name,
                    grounds,
                }
            })
            .collect()
    }

    /// Whether a rule holds.
    pub fn fired(&self, name: RuleName) -> bool {
        self.fired.iter().any(|rule| rule.name == name)
    }
}
