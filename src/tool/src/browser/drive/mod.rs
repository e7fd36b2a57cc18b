//! Driving a browser: the programs that run for it, and the commands that it takes.
//!
//! In: what to open on what kind of tablet. Out: a running page, its console and its requests. It must not know what is on
//! the page.

pub mod built_page;
pub mod chromedriver;
mod console;
pub mod listener;
pub mod marionette;
pub mod other_browsers;
pub mod patience;
pub mod session;
