//! Holds no code: the tests are the targets beside this folder.
