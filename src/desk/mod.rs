//! The page's state, its messages and its one update function.
//!
//! [`State`] is plain data: the draft as typed, the last order that could be read with its answer, the window.
//! [`update`] takes a state and a [`Msg`] and gives the next state and the [`Effect`]s that the browser has to
//! run; it knows no browser, no clock and no store. Bad input never takes an answer away: the error stands beside
//! its field, the last answer stays and says whose it is. Undo keeps drafts, so every change can be taken back.
//!
//! [`picture`] works out the geometry of the charts, [`job_sheet`] what is printed for the press, [`print_room`] what
//! is on the shop's shelf and to be printed. Words come from [`wording`](crate::wording).
//!
//! **Decision:** Leptos views over this pure module: views only show its state. Language, units and theme
//! belong to the reader, not to the order.
//! **Because:** undo, autosave and their tests then need no browser. A tab opens as the device's newest draft
//! was read, and a file that is brought in changes none of the three.
//! **Measured:** nothing to measure; decided 2026-11-25, the reader's settings 2026-11-28.
//! **Reconsider when:** a part of the state can only be known by the browser.

mod action;
mod form;
pub mod job_sheet;
mod msg;
pub mod picture;
pub mod print_room;
pub mod records;
mod requests;
mod screen;
mod state;
mod update;

pub use action::{Action, Nudge};
pub use form::{
    ColourConflict, Draft, Field, FieldText, GarmentDraft, Suggestion, Texts, Theme, colour_conflict,
    draft_file, suggestions,
};
pub use msg::{Answer, Choice, Effect, Msg};
pub use screen::Screen;
pub use state::{Keeping, State, Touch, is_key_of, key};
pub use update::{language_of, update};
