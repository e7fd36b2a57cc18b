//! The page as a person sees it: page objects, one for each screen.
//!
//! In: a browser session. Out: what a screen shows, and what can be done there, in a person's words. It must not know what a
//! story expects. Selectors are in [`parts`] and scripts' helpers in `page.js`, and nowhere else.

/// Methods that find one part of the page each: `name => PART;`.
macro_rules! elements {
    ($($(#[$doc:meta])* $name:ident => $part:ident;)*) => {
        $($(#[$doc])*
        #[must_use]
        pub fn $name(self) -> super::Element<'a> {
            self.0.element(super::parts::$part)
        })*
    };
}

pub mod accessibility;
mod desk;
mod diagnosis;
mod element;
mod forecast;
mod job;
mod job_sheet;
mod library;
mod notice;
pub mod parts;
mod print_room;
mod settings;
mod start;
mod trade_off;
mod window;
mod write_everywhere;

pub use desk::{Desk, Screen};
pub use diagnosis::Diagnosis;
pub use element::Element;
pub use forecast::Forecast;
pub use job::Job;
pub use job_sheet::JobSheet;
pub use library::{Library, RecordForm};
pub use notice::Notice;
pub use print_room::PrintRoom;
pub use settings::Settings;
pub use start::Start;
pub use trade_off::TradeOff;
pub use window::Window;
pub use write_everywhere::{Scope, Written};
