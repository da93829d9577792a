//! What can hurt, and whom to ask.

use serde::Serialize;

use crate::biochar::Situation;
use crate::quantity::Grounds;

/// Something that can hurt.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Caution {
    /// What to mind, in one or two sentences.
    pub text: String,
    /// What it rests on.
    pub grounds: Grounds,
}

/// The cautions that this soil, this path and these materials call for.
pub fn cautions(situation: &Situation<'_>, path: crate::biochar::Path) -> Vec<Caution> {
    let _ = (situation, path);
    Vec::new()
}
