//! What the browser tests and the picture makers share: a real browser, the
//! built page served on this machine, and the page as a person uses it.

#![cfg(feature = "browser")]

pub mod driver;
pub mod page;
pub mod site;

use std::path::{Path, PathBuf};

/// The project's top folder.
pub fn project() -> PathBuf {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    here.parent().unwrap_or(here).to_owned()
}
