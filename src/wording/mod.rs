//! Words for people.
