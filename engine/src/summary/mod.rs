//! The printable plan as neutral blocks, to text.
