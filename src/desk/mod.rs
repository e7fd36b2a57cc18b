//! The page's state.
