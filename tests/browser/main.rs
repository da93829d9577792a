//! The built page in a real browser. `tests/run` builds the page and installs
//! what is needed; each test has a browser and a server of its own.

mod access;
mod bad_input;
mod files;
mod keeping;
mod keyboard;
mod looks;
mod offline;
mod paste;
mod privacy;
mod samples;
mod share;
mod shelf;
