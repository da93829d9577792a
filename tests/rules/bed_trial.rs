//! A trial of the bed stands beside what the plan foretells, and changes nothing else.

use emberloam_engine::case::{BedTrial, TrialFinding};
use emberloam_engine::plan::Effect;
use emberloam_engine::quantity::Measures;
use emberloam_engine::soil::Property;
use emberloam_engine::summary::{Block, plan};
use emberloam_engine::trial::{Trial, calibrate, evaluate};
use emberloam_engine::{Case, Outcome, interpret};

use crate::close;
use crate::course::trial as bed;

fn effect(outcome: &Outcome, property: Property) -> Effect {
    let found = outcome.plan.effects.iter().find(|effect| effect.property == property);
    found.expect("it was measured").clone()
}

/// The bed with a trial in which potassium rose by 4 to 12 %, foretold as its plan foretells it.
fn tried() -> Case {
    let mut case = bed();
    let band = effect(&interpret(&case), Property::Potassium).change.band;
    let found = TrialFinding {
        property: Property::Potassium,
        foretold: [band.low, band.likely, band.high],
        found: [4.0, 8.0, 12.0],
    };
    case.trial = Some(BedTrial { name: "By the fence".into(), off: false, found: vec![found] });
    case
}

/// The outcome without what a trial adds.
fn without(mut outcome: Outcome) -> Outcome {
    outcome.plan.effects.iter_mut().for_each(|effect| effect.with_trial = None);
    let own = outcome.samples.iter_mut().flat_map(|sample| &mut sample.plan.effects);
    own.for_each(|effect| effect.with_trial = None);
    outcome
}

#[test]
fn the_plan_says_both_and_rests_on_its_own() {
    let (alone, with) = (interpret(&bed()), interpret(&tried()));
    let potassium = effect(&with, Property::Potassium);
    let own = potassium.change.band;
    let both = calibrate(own, emberloam_engine::quantity::Band::new(4.0, 8.0, 12.0)).unwrap();
    let said = potassium.with_trial.clone().expect("the trial is said").band;
    close(said.low, both.with_trial.low, 1e-9);
    close(said.likely, both.with_trial.likely, 1e-9);
    close(said.high, both.with_trial.high, 1e-9);
    assert!(said.high - said.low < own.high - own.low, "two know more than one");
    // What was not tried has no second word, and nothing else of the answer is another.
    assert_eq!(effect(&with, Property::Phosphorus).with_trial, None);
    assert_eq!(without(with), without(alone));
}

#[test]
fn paper_and_text_say_which_number_is_of_the_trial() {
    let lines = |case: &Case| {
        let blocks = plan(&interpret(case), Measures::Metric);
        let at = blocks.iter().position(|b| *b == Block::Heading("With your trial".into()))?;
        match &blocks[at + 1] {
            Block::List(lines) => Some(lines.clone()),
            _ => None,
        }
    };
    let said = lines(&tried()).expect("a part of its own");
    assert_eq!(said.len(), 1);
    assert_eq!(said[0].head, "potassium");
    assert!(said[0].text.contains("; without your trial "), "{}", said[0].text);
    assert_eq!(lines(&bed()), None);
}

#[test]
fn switched_off_it_is_kept_and_not_said() {
    let mut case = tried();
    case.trial.as_mut().unwrap().off = true;
    assert_eq!(interpret(&case), interpret(&bed()));
    let json = serde_json::to_string(&case).unwrap();
    let back: Case = serde_json::from_str(&json).unwrap();
    assert_eq!(back.trial, case.trial);
}

/// By hand: with half the dose the band of potassium is another; the soil keeps its place in it.
#[test]
fn another_dose_keeps_the_place_of_the_soil_in_the_band() {
    let mut case = tried();
    let whole = effect(&interpret(&case), Property::Potassium);
    case.biochar.share_percent = Some(2.0);
    let less = effect(&interpret(&case), Property::Potassium);
    let place = |effect: &Effect| {
        let (own, with) = (effect.change.band, effect.with_trial.as_ref().unwrap().band);
        (
            (with.likely - own.likely) / (own.high - own.low),
            (with.high - with.low) / (own.high - own.low),
        )
    };
    assert_ne!(whole.change.band, less.change.band);
    let ((at, wide), (at_less, wide_less)) = (place(&whole), place(&less));
    close(at, at_less, 1e-9);
    close(wide, wide_less, 1e-9);
    let assumed = &less.with_trial.unwrap().grounds.assumed;
    assert!(assumed.iter().any(|text| text.contains("another dose")), "{assumed:?}");
    assert!(whole.with_trial.unwrap().grounds.assumed.len() < assumed.len());
}

#[test]
fn it_holds_for_its_own_bed_and_older_cases_have_none() {
    let mut case = tried();
    let trial = case.trial.take();
    let sample = case.report.samples[0].clone();
    case.report.samples.push(sample);
    case.answer(1, false, |case| case.trial = trial);
    let all = interpret(&case);
    let with = |at: usize| all.samples[at].plan.effects.iter().any(|e| e.with_trial.is_some());
    assert!(!with(0) && with(1));
    let json = serde_json::to_string(&bed()).unwrap();
    assert!(!json.contains("trial"), "{json}");
    let older: Case = serde_json::from_str(r#"{"beds":[{"sample":1}],"plants":null}"#).unwrap();
    assert_eq!((older.trial, older.beds[0].trial.clone()), (None, None));
}

#[test]
fn whatever_stands_in_a_trial_of_a_link_the_plan_is_sound() {
    let mut case = tried();
    let odd = [f64::NAN, f64::INFINITY, -1e6, 0.0, 1e6];
    for (at, low) in odd.into_iter().enumerate() {
        let found = &mut case.trial.as_mut().unwrap().found[0];
        (found.found, found.foretold) =
            ([low, 1.0, odd[(at + 2) % 5]], [odd[(at + 3) % 5], low, 2.0]);
        if let Some(with) = effect(&interpret(&case), Property::Potassium).with_trial {
            let band = with.band;
            assert!(band.low >= -100.0 && band.low <= band.likely && band.likely <= band.high);
            assert!(band.high.is_finite(), "{band:?}");
        }
    }
    case.trial.as_mut().unwrap().found[0].found[0] = f64::INFINITY;
    assert!(case.within_bounds().is_err());
}

#[test]
fn a_trial_teaches_what_its_plots_did_beside_the_control() {
    let foretold = interpret(&bed()).plan.effects.into_iter().map(|effect| {
        let (band, unit) = (effect.change.band, effect.change.unit);
        let (low, likely, high) = (band.low, band.likely, band.high);
        emberloam_engine::trial::Foretold { property: effect.property, low, likely, high, unit }
    });
    let foretold: Vec<_> = foretold.collect();
    let of = |text: &str| {
        evaluate(&Trial { text: text.into(), foretold: foretold.clone(), ..Trial::default() })
            .unwrap()
    };
    let found = of(
        "Treatment,K mg/kg,Yield\nuntreated,100,3\nuntreated,110,4\nuntreated,102,5\nbiochar,120,4\nbiochar,125,3\nbiochar,118,3\n",
    );
    let control = found.control.unwrap();
    let taught = found.findings(1 - control);
    // Of the yield nothing is foretold.
    assert_eq!(taught.iter().map(|t| t.property).collect::<Vec<_>>(), [Property::Potassium]);
    close(taught[0].found[1], 100.0 * (121.0 / 104.0 - 1.0), 1e-9);
    assert_eq!(found.findings(control), []);
    // Plots that were all treated have changed with the season as well.
    let season = of(
        "Plot,When,Treatment,K mg/kg\n1,before,biochar,100\n2,before,biochar,110\n3,before,biochar,105\n1,after,biochar,120\n2,after,biochar,131\n3,after,biochar,128\n",
    );
    assert_eq!(season.findings(0), []);
    assert!(season.results[0].comparisons[0].foretold.is_some());
}
