//! Draws gardens one after the other, gathers what breaks, and makes each fault as small as
//! it goes.

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::Once;

use emberloam_engine::Case;
use proptest::prelude::Rng;
use proptest::strategy::{Strategy, ValueTree};
use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};

use crate::drawing::{Garden, Kind, garden};

/// How many gardens all tests together draw when nobody says.
const GARDENS: f64 = 20_000.0;

/// The most steps in which one fault is made smaller.
const STEPS: usize = 1000;

/// Something that breaks a rule.
#[derive(Clone, Debug, PartialEq)]
pub struct Fault {
    /// What kind of fault it is: two gardens that break the same show one of them.
    pub kind: String,
    /// What was found.
    pub what: String,
}

fn from_environment(name: &str) -> Option<f64> {
    std::env::var(name).ok()?.parse().ok()
}

/// Holds a share of all gardens to some rules, and gives every kind of fault with how often it
/// was found. The smallest garden of each is told.
pub fn hunt(kind: Kind, seed: u64, share: f64, broken: fn(&Case) -> Vec<Fault>) -> Vec<String> {
    let all = from_environment("EMBERLOAM_GARDENS").unwrap_or(GARDENS);
    let seed = seed + 1000 * from_environment("EMBERLOAM_GARDENS_SEED").unwrap_or(0.0) as u64;
    let strategy = garden(kind);
    let mut found: BTreeMap<String, usize> = BTreeMap::new();
    for number in 0..(all * share).ceil() as u64 {
        let drawn = || strategy.new_tree(&mut runner(seed, number)).expect("a garden");
        let Garden(case) = drawn().current();
        for fault in without_panic(&case, broken) {
            if let Some(known) = found.get_mut(&fault.kind) {
                *known += 1;
                continue;
            }
            let (fault, told) = smallest(drawn(), &fault, broken);
            println!("{}: {}\n  {told}\n", fault.kind, fault.what);
            found.insert(fault.kind, 1);
        }
    }
    found.iter().map(|(kind, times)| format!("{times} times: {kind}")).collect()
}

/// The same garden for the same numbers, whatever else was drawn.
fn runner(seed: u64, number: u64) -> TestRunner {
    let mut bytes = [0; 16];
    bytes[..8].copy_from_slice(&(seed + 1).to_le_bytes());
    bytes[8..].copy_from_slice(&number.to_le_bytes());
    let mut rng = TestRng::from_seed(RngAlgorithm::XorShift, &bytes);
    // Seeds that lie near begin with numbers that lie near.
    for _ in 0..8 {
        rng.next_u64();
    }
    TestRunner::new_with_rng(Config::default(), rng)
}

/// Makes a garden smaller as long as the same kind of fault is in it.
fn smallest(
    mut tree: impl ValueTree<Value = Garden>,
    fault: &Fault,
    broken: fn(&Case) -> Vec<Fault>,
) -> (Fault, String) {
    let mut best = (fault.clone(), tree.current());
    let mut goes_on = tree.simplify();
    for _ in 0..STEPS {
        if !goes_on {
            break;
        }
        let garden = tree.current();
        let same = without_panic(&garden.0, broken).into_iter().find(|f| f.kind == fault.kind);
        goes_on = match same {
            Some(same) => {
                best = (same, garden);
                tree.simplify()
            }
            None => tree.complicate(),
        };
    }
    (best.0, format!("{:?}", best.1))
}

thread_local! {
    /// Where the last panic of this thread was, while one is waited for.
    static PANICKED: RefCell<Option<String>> = const { RefCell::new(None) };
    static WAITING: RefCell<bool> = const { RefCell::new(false) };
}

/// What breaks; a panic is a fault like others.
pub fn without_panic(case: &Case, broken: fn(&Case) -> Vec<Fault>) -> Vec<Fault> {
    static HOOK: Once = Once::new();
    HOOK.call_once(|| {
        let usual = std::panic::take_hook();
        std::panic::set_hook(Box::new(move |info| {
            if WAITING.with_borrow(|waiting| *waiting) {
                let at =
                    info.location().map_or(String::new(), |l| format!("{}:{}", l.file(), l.line()));
                let text = info.payload();
                let why = text
                    .downcast_ref::<String>()
                    .cloned()
                    .or_else(|| text.downcast_ref::<&str>().map(|why| (*why).to_string()))
                    .unwrap_or_default();
                PANICKED.set(Some(format!("{at}: {why}")));
            } else {
                usual(info);
            }
        }));
    });
    WAITING.set(true);
    let result = catch_unwind(AssertUnwindSafe(|| broken(case)));
    WAITING.set(false);
    result.unwrap_or_else(|_| {
        let what = PANICKED.take().unwrap_or_default();
        let place: String = what.split(" | ").next().unwrap_or_default().into();
        vec![Fault { kind: format!("no call panics, {place}"), what }]
    })
}
