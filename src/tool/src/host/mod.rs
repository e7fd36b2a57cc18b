//! The computer that the tool runs on: the project's folders, the commands that are run in them, and the programs that are
//! installed.
//!
//! In: names of files, commands and programs. Out: paths, what a command printed, or an error that says the next thing to
//! try. It must not know what is built, checked or measured with them.

pub mod chromium;
pub mod command;
pub mod firefox;
pub mod fonts;
pub mod programs;
pub mod progress;
pub mod webkit;
pub mod workspace;
