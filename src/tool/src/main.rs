//! `cargo xtask`: everything a contributor does, in one tool.
fn main() {}
