//! Rule 3: the ledger closes.

use emberloam_engine::plan::ledger::{Account, Bringer, Substance};
use emberloam_engine::plan::needs::NeedKind;
use emberloam_engine::quantity::{Band, Unit};

use crate::rules::Faults;
use crate::whole::Whole;

/// Grams that sums of numbers may be off by rounding, as a share.
const ROUNDING: f64 = 1e-6;

/// Phosphorus in phosphate, potassium in potash, magnesium in Epsom salts: atomic masses.
/// Source: IUPAC atomic masses (derived), apart from the program's own table.
const OF_THE_ELEMENT: [(NeedKind, &[Substance], f64); 4] = [
    (NeedKind::Nitrogen, &[Substance::NitrateN, Substance::AmmoniumN, Substance::OrganicN], 1.0),
    (NeedKind::Phosphate, &[Substance::Phosphorus], 2.0 * 30.974 / 141.943),
    (NeedKind::Potash, &[Substance::Potassium], 2.0 * 39.098 / 94.195),
    (NeedKind::Magnesium, &[Substance::Magnesium], 24.305 / 246.466),
];

/// DESIGN §1, rule 3: what is brought is the sum of its sources, needs are what is still
/// missing after them, and no ceiling is passed.
pub fn closes(whole: &Whole<'_>, faults: &mut Faults) {
    for account in &whole.outcome.plan.ledger.accounts {
        sums(account, faults);
        ceiling(account, faults);
    }
    charge(whole, faults);
    lime(whole, faults);
    needs(whole, faults);
}

fn sums(account: &Account, faults: &mut Faults) {
    let (mut amount, mut works) = (0.0, 0.0);
    for entry in &account.brought {
        amount += entry.amount.likely;
        works += entry.works.likely;
    }
    let near = |a: f64, b: f64| (a - b).abs() <= ROUNDING * a.abs().max(b.abs()).max(1.0);
    let holds = near(account.total().likely, amount) && near(account.works().likely, works);
    faults.unless(
        holds,
        || "what is brought is the sum of its sources".into(),
        || format!("{account:?}"),
    );
    let least = account
        .brought
        .iter()
        .all(|e| e.works.likely.abs() <= e.amount.likely.abs() * (1.0 + ROUNDING) + ROUNDING);
    faults.unless(least, || "no more works than is brought".into(), || format!("{account:?}"));
}

fn ceiling(account: &Account, faults: &mut Faults) {
    let Some(ceiling) = &account.ceiling else { return };
    let name = account.of.name();
    let all = account.counts();
    faults.unless(
        all <= ceiling.most * (1.0 + ROUNDING) + ROUNDING,
        || format!("no ceiling is passed: {name}"),
        || {
            let entries: Vec<String> =
                account.brought.iter().map(|e| format!("{:?} {:.3}", e.by, e.counts)).collect();
            format!("{all} g of at most {} g: {}", ceiling.most, entries.join(", "))
        },
    );
}

/// What the recipe says of each source is what stands in the ledger, where it is counted on.
fn charge(whole: &Whole<'_>, faults: &mut Faults) {
    let plan = &whole.outcome.plan;
    let used = plan.charge.iter().flat_map(|c| &c.used);
    for used in used {
        // In the order of the recipe's nutrients: nitrogen, phosphorus, potassium.
        for (at, substance) in [(1, Substance::Phosphorus), (2, Substance::Potassium)] {
            let entered = plan.ledger.of(substance).by(Bringer::Charge(used.source));
            let counted = plan.ledger.accounts.iter().any(|account| {
                account.brought.iter().any(|e| e.by == Bringer::Charge(used.source))
            });
            let said = used.brings[at].likely;
            faults.unless(
                !counted || (entered.likely - said).abs() <= 1e-3 * said.max(0.01),
                || format!("the recipe is what is entered: {}", substance.name()),
                || format!("{}: {said} g said, {} g entered", used.label, entered.likely),
            );
        }
    }
    let entered = plan.ledger.accounts.iter().flat_map(|a| &a.brought);
    for entry in entered {
        if let Bringer::Charge(source) = entry.by {
            let known = plan.charge.iter().flat_map(|c| &c.used).any(|u| u.source == source);
            faults.unless(
                known,
                || "what is entered is in the recipe".into(),
                || format!("{source:?}"),
            );
        }
    }
}

/// The lime of the needs is the alkalinity of the ledger.
fn lime(whole: &Whole<'_>, faults: &mut Faults) {
    let plan = &whole.outcome.plan;
    let need = plan.needs.iter().find(|n| n.kind == NeedKind::Lime);
    let pure = need.filter(|n| n.given().is_some()).map_or(0.0, |need| {
        let rate = need.figures.iter().find(|f| f.name == "lime-rate");
        // A field's is in t/ha: 1 t/ha is 100 g on 1 m².
        let grams = rate.map_or(0.0, |f| match f.unit {
            Unit::TonnePerHa => 100.0 * f.band.likely,
            _ => f.band.likely,
        });
        grams * plan.dose.area
    });
    let entered = plan.ledger.of(Substance::Alkalinity).by(Bringer::Lime).likely;
    faults.unless(
        (entered - pure).abs() <= ROUNDING * pure.max(1.0),
        || "the lime given is what is entered".into(),
        || format!("{pure} g said, {entered} g entered"),
    );
}

/// After all that is fed nothing is missing, unless a ceiling holds it down; and what is
/// enough is nearly all that is wanted.
fn needs(whole: &Whole<'_>, faults: &mut Faults) {
    let plan = &whole.outcome.plan;
    for (kind, accounts, element) in OF_THE_ELEMENT {
        let Some(need) = plan.needs.iter().find(|n| n.kind == kind) else { continue };
        let missing: Band = plan.ledger.missing(accounts);
        let wanted: f64 = accounts.iter().map(|s| plan.ledger.of(*s).wanted.likely).sum();
        // What the biochar holds back where nothing is wanted is none that is missing.
        if wanted <= 0.0 {
            continue;
        }
        // Less than a tenth of the dressing isn't worth feeding, nor is room for no more.
        let binds = accounts.iter().any(|substance| {
            let account = plan.ledger.of(*substance);
            let room = account.ceiling.as_ref().map(|c| c.most - account.counts());
            room.is_some_and(|room| room < 0.1 * wanted)
        });
        // What is missing comes in by degrees from a tenth to a fifth of the dressing.
        let left = 0.1 * wanted * (1.0 + ROUNDING);
        let binds = binds || need.in_all.as_ref().is_some_and(|ceiling| ceiling.binds);
        faults.unless(
            binds || missing.likely <= left + ROUNDING,
            || format!("nothing is missing after all that is fed: {}", kind.name()),
            || {
                format!(
                    "{} g wanted, {} g missing, {:?}: {}",
                    wanted, missing.likely, need.verdict, need.answer
                )
            },
        );
        let fed: f64 = accounts.iter().map(|s| plan.ledger.of(*s).by(Bringer::Feed).likely).sum();
        let bag: f64 =
            accounts.iter().map(|s| plan.ledger.of(*s).by(Bringer::Fertiliser).likely).sum();
        let given = need.given().map_or(0.0, |g| g.likely * element);
        faults.unless(
            fed + bag + 1e-3 * given + ROUNDING >= given && fed <= given * 1.002 + ROUNDING,
            || format!("what is to be fed is what is entered: {}", kind.name()),
            || format!("{given} g to be fed, {fed} g entered, {bag} g by the bag"),
        );
    }
}
