//! The page's state, its messages and its one update function.
//!
//! [`State`] is plain data: the draft as typed, the last order that could be read with its answer, the window.
//! [`update`] takes a state and a [`Msg`] and gives the next state and the [`Effect`]s that the browser has to
//! run; it knows no browser, no clock and no store. Bad input never takes an answer away: the error stands beside
//! its field, the last answer stays and says whose it is. Undo keeps drafts, so every change can be taken back.
//!
//! [`picture`] works out the geometry of the charts, [`sheet`] what is printed for the press, [`room`] whose print room it is. Words come from [`wording`](crate::wording).

mod clash;
mod draft;
mod edit;
mod field;
pub mod keep;
mod mend;
mod msg;
pub mod picture;
pub mod room;
pub mod sheet;
pub mod shop;
mod state;
mod update;

pub use clash::{Clash, clash};
pub use draft::{Draft, Entry, GarmentDraft, Texts, Theme};
pub use field::Field;
pub use mend::{Mend, mends};
pub use msg::{Answer, Choice, Effect, Msg};
pub use state::{Keeping, Screen, State, Touch, key};
pub use update::{language_of, update};
