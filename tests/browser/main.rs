//! The built page in a real browser. `tests/run` builds the page and installs
//! what is needed; each test has a browser and a server of its own.

mod access;
mod bad_input;
mod bag;
mod charging;
mod files;
mod keeping;
mod keyboard;
mod kill;
mod language;
mod looks;
mod offline;
mod one_file;
mod own_tables;
mod paste;
mod people;
mod place;
mod privacy;
mod samples;
mod share;
mod shelf;
mod start;
mod trial;
mod undo;
