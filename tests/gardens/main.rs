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
mod told;
mod whole;

use drawing::Kind;
use hunt::hunt;

#[test]
fn every_rule_holds_in_ordinary_gardens() {
    hunt(Kind::Ordinary, 1, 0.35, rules::broken);
}

#[test]
fn every_rule_holds_in_other_ordinary_gardens() {
    hunt(Kind::Ordinary, 2, 0.35, rules::broken);
}

#[test]
fn every_rule_holds_whatever_is_typed() {
    hunt(Kind::Wild, 3, 0.25, rules::broken);
}

#[test]
fn all_that_is_written_is_sound() {
    hunt(Kind::Wild, 5, 0.05, rules::broken_in_writing);
}

#[test]
fn a_hundredth_more_of_one_reading_moves_no_amount_by_a_tenth() {
    hunt(Kind::Ordinary, 4, 0.05, rules::broken_by_a_hundredth);
}

#[test]
#[ignore]
fn timing() {
    use proptest::strategy::{Strategy, ValueTree};
    let s = drawing::garden(Kind::Ordinary);
    let t = std::time::Instant::now();
    let mut cases = Vec::new();
    for n in 0..100 {
        cases.push(s.new_tree(&mut hunt::runner(9, n)).unwrap().current());
    }
    println!("draw {:?}", t.elapsed());
    let t = std::time::Instant::now();
    for c in &cases {
        emberloam_engine::interpret(&c.0);
    }
    println!("interpret {:?}", t.elapsed());
    let t = std::time::Instant::now();
    let _w: Vec<_> = cases.iter().map(|c| whole::Whole::of(&c.0)).collect();
    println!("whole {:?}", t.elapsed());
    let t = std::time::Instant::now();
    for c in &cases {
        rules::broken(&c.0);
    }
    println!("all {:?}", t.elapsed());
}
