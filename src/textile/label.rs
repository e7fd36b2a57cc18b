//! What a garment label says.
