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
mod desk_screen;
mod diagnosis;
mod element;
mod forecast;
mod job;
mod job_sheet;
mod library;
mod notice;
mod page_script;
pub mod parts;
mod print_room;
mod settings;
mod start;
mod trade_off;
mod window;
mod write_everywhere;

pub use desk::DeskPage;
pub use desk_screen::DeskScreen;
pub use diagnosis::DiagnosisPage;
pub use element::Element;
pub use forecast::ForecastPage;
pub use job::JobPage;
pub use job_sheet::JobSheetPage;
pub use library::{LibraryPage, RecordForm};
pub use notice::StoreNotice;
pub use print_room::PrintRoomPage;
pub use settings::SettingsPage;
pub use start::StartPage;
pub use trade_off::TradeOffFigure;
pub use window::WindowPage;
pub use write_everywhere::{Scope, Written};
