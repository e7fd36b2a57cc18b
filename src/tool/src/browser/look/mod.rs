//! How the page looks: pictures of its screens, and those that were approved.
//!
//! In: a driven page. Out: pictures in `dist/shots`, and how far the page differs from `tests/approved`. It must not know
//! the stories.

pub mod approved;
pub mod picture;
pub mod shots;
