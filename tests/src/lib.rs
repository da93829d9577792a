//! What the tests and the picture makers share: a real browser, the built page
//! served on this machine, the page as a person uses it, and the texts in a
//! source.

#[cfg(feature = "browser")]
pub mod driver;
#[cfg(feature = "browser")]
pub mod page;
#[cfg(feature = "browser")]
pub mod person;
pub mod prose;
#[cfg(feature = "browser")]
pub mod site;

use std::path::{Path, PathBuf};

/// The project's top folder.
pub fn project() -> PathBuf {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    here.parent().unwrap_or(here).to_owned()
}
