//! Dye that leaves the cloth.
