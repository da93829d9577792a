//! Text files, in whichever encoding they were written.

use crate::{Kind, Opened, Refusal};

pub(crate) fn open(bytes: &[u8], kind: Kind) -> Result<Opened, Refusal> {
    let text = String::from_utf8_lossy(bytes).into_owned();
    Ok(Opened { kind, text, notes: Vec::new() })
}
