//! Rule 6: what is in the plan is in the text, the calendar and the JSON.

use emberloam_engine::plan::needs::NeedKind;
use emberloam_engine::plan::{JobKind, Plan};
use emberloam_engine::quantity::weighed;
use emberloam_engine::summary::Block;

use crate::rules::Faults;
use crate::whole::Whole;

/// DESIGN §1, rule 6: what is on the page is on the paper, in the calendar and in the JSON.
pub fn everywhere(whole: &Whole<'_>, faults: &mut Faults) {
    let plan = &whole.outcome.plan;
    in_the_calendar(whole, faults);
    let lines = lines(&whole.blocks);
    let has = |text: &str| lines.iter().any(|line| line.contains(text));
    let mut must = |what: &str, text: &str| {
        faults.unless(has(text), || format!("{what} is on the paper"), || text.to_string());
    };
    must("the headline", &plan.headline);
    for job in &plan.jobs {
        must("a job", &job.task);
    }
    for need in &plan.needs {
        must("a need", &need.answer);
        for step in &need.steps {
            must("a step of a need", step);
        }
        for caution in need.cautions.iter().filter(|_| need.given().is_some()) {
            must("a caution of a need", caution);
        }
    }
    if let Some(charge) = &plan.charge {
        for step in &charge.steps {
            must("a step of the recipe", step);
        }
        for caution in &charge.cautions {
            must("a caution of the recipe", &caution.text);
        }
    }
    for caution in &plan.cautions {
        must("a caution", &caution.text);
    }
    for question in &whole.outcome.questions {
        must("a question", &question.text);
    }
    for line in &plan.lines {
        must("a line that is near", line);
    }
    given_has_a_job(plan, whole, faults);
}

/// Every line of text.
fn lines(blocks: &[Block]) -> Vec<&str> {
    let mut all = Vec::new();
    for block in blocks {
        match block {
            Block::Title(text) | Block::Heading(text) | Block::Paragraph(text) => {
                all.push(text.as_str());
            }
            Block::List(items) => all.extend(items.iter().map(|line| line.text.as_str())),
            Block::Sources(_) => {}
        }
    }
    all
}

/// Each dated job is an event of its own.
fn in_the_calendar(whole: &Whole<'_>, faults: &mut Faults) {
    let jobs = &whole.outcome.plan.jobs;
    let dated = jobs.iter().filter(|job| job.from.or(job.to).is_some());
    let unfolded = whole.calendar.replace("\r\n ", "");
    let events = unfolded.matches("BEGIN:VEVENT").count();
    faults.unless(
        events == dated.clone().count(),
        || "each dated job is in the calendar".into(),
        || format!("{events} events"),
    );
    for job in dated {
        let task = job.task.replace('\\', "\\\\").replace(';', "\\;").replace(',', "\\,");
        faults.unless(
            unfolded.contains(&task),
            || "a job is in the calendar in its own words".into(),
            || task.clone(),
        );
    }
}

/// Whether the nitrogen is given in the months of a guide.
fn by_month(plan: &Plan) -> bool {
    plan.jobs.iter().any(|job| job.task.starts_with("Feed in "))
}

/// What is given stands in the list of jobs, with its weight.
fn given_has_a_job(plan: &Plan, whole: &Whole<'_>, faults: &mut Faults) {
    let measures = whole.case.measures;
    for need in &plan.needs {
        let Some(grams) = need.given() else { continue };
        let (job, weights) = match need.kind {
            NeedKind::Lime => (JobKind::Lime, vec![grams.likely / f64::from(need.doses.max(1))]),
            NeedKind::Acid => (JobKind::Sulfur, vec![grams.likely / f64::from(need.doses.max(1))]),
            NeedKind::Gypsum => {
                (JobKind::Gypsum, vec![grams.likely / f64::from(need.doses.max(1))])
            }
            // By the months of a guide its parts differ; together they are the need.
            NeedKind::Nitrogen if by_month(plan) => continue,
            NeedKind::Nitrogen | NeedKind::Phosphate | NeedKind::Potash | NeedKind::Magnesium => {
                // Whole or in parts; where there is time for one only, no more than at once.
                let at_once = need.at_once.as_ref().map_or(0.0, |ceiling| ceiling.most);
                let parts = [1.0, 2.0, 3.0].map(|parts| grams.likely / parts);
                (JobKind::Feed, parts.into_iter().chain([at_once]).collect())
            }
            NeedKind::Sulfur
            | NeedKind::Boron
            | NeedKind::Zinc
            | NeedKind::Manganese
            | NeedKind::Copper
            | NeedKind::Iron => {
                let sprayed = need.steps.iter().any(|step| step.contains("spray it"));
                let job = if sprayed { JobKind::Spray } else { JobKind::Feed };
                (job, vec![grams.likely])
            }
            NeedKind::Fertiliser | NeedKind::Compost => continue,
        };
        let mut tasks = plan.jobs.iter().filter(|j| j.kind == job).map(|j| &j.task);
        let said = |task: &String| weights.iter().any(|g| task.contains(&weighed(*g, measures)));
        faults.unless(
            tasks.any(said),
            || format!("what is given has a job: {}", need.kind.name()),
            || {
                format!(
                    "{} {:?}",
                    weighed(grams.likely, measures),
                    plan.jobs.iter().map(|j| &j.task).collect::<Vec<_>>()
                )
            },
        );
    }
}
