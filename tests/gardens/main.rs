//! The eight rules that every answer keeps, over drawn gardens.
//!
//! A garden is drawn, surveyed and planned, and all that is shown of it is held to each rule.
//! What breaks is made smaller until nothing can be left out, and told in a sentence; it then
//! stays in `found.rs` as a case of its own.
//!
//! `EMBERLOAM_GARDENS=1000000 cargo test --release -p emberloam-tests --test gardens` draws a
//! million, `EMBERLOAM_GARDENS_SEED=7` others.
#![allow(missing_docs, reason = "each test's name says what it checks")]

mod drawing;
mod found;
mod hunt;
mod rules;
mod steps;
mod told;
mod whole;

use drawing::Kind;
use emberloam_engine::Case;
use hunt::{Fault, hunt};

/// Holds gardens to some rules and fails with all that was found.
fn hold(kind: Kind, seed: u64, share: f64, broken: fn(&Case) -> Vec<Fault>) {
    let found = hunt(kind, seed, share, broken);
    assert!(found.is_empty(), "{} kinds of fault:\n{}", found.len(), found.join("\n"));
}

#[test]
fn every_rule_holds_in_ordinary_gardens() {
    hold(Kind::Ordinary, 1, 0.34, rules::broken);
}

#[test]
fn every_rule_holds_in_other_ordinary_gardens() {
    hold(Kind::Ordinary, 2, 0.34, rules::broken);
}

#[test]
fn anything_typed_keeps_every_rule() {
    hold(Kind::Wild, 3, 0.24, rules::broken);
}

#[test]
fn all_that_is_written_is_sound() {
    hold(Kind::Wild, 5, 0.03, rules::broken_in_writing);
}

#[test]
fn a_hundredth_more_of_one_reading_moves_no_amount_by_a_tenth() {
    let found = hunt(Kind::Ordinary, 4, 0.05, rules::broken_by_a_hundredth);
    println!("Lines that were crossed:\n{}", rules::cliffs::lines());
    assert!(found.is_empty(), "{} kinds of fault:\n{}", found.len(), found.join("\n"));
}
