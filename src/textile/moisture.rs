//! Water in cloth.
