//! No amount rests on memory.

use emberloam_engine::plan::needs::{Need, NeedKind};
use emberloam_engine::{Case, Outcome, interpret};

use crate::case_of;

fn case(text: &str) -> Case {
    let mut case = case_of(text);
    case.bed.area_m2 = Some(10.0);
    case
}

#[track_caller]
fn need(found: &Outcome, kind: NeedKind) -> &Need {
    let names: Vec<_> = found.plan.needs.iter().map(|n| n.kind).collect();
    found
        .plan
        .needs
        .iter()
        .find(|n| n.kind == kind)
        .unwrap_or_else(|| panic!("{kind:?} in {names:?}"))
}

/// A range from memory gives no amount. Common practice of this program.
#[test]
fn no_amount_rests_on_memory_alone() {
    let found = interpret(&case("P (Mehlich-1) 8 lb/acre\nK (Mehlich-1) 40 lb/acre"));
    for name in [NeedKind::Phosphate, NeedKind::Potash] {
        let need = need(&found, name);
        let memory = need
            .grounds
            .sources
            .first()
            .is_some_and(|c| c.grade >= emberloam_engine::sources::Grade::FromMemory);
        assert!(!memory || need.figures.is_empty(), "{need:?}");
    }
}
