//! Gelation, fusion, scorch and shrinkage read off a history.
