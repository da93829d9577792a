//! To be written.

use crate::{Opened, Refusal};

pub(crate) fn open(_bytes: &[u8]) -> Result<Opened, Refusal> {
    Err(Refusal::Damaged { what: "file" })
}
