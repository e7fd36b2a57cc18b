//! Every word for people, in English and Spanish.
//!
//! In: codes, values and records, and the [`Voice`] (language and units) of the reader. Out: sentences, names of things
//! and numbers as a shop writes them. [`fill`] writes the text of every reason of a report.
//!
//! Must not know how an answer is found or how a page looks: codes and values come from `plan`, the markup is `web`'s.
//!
//! A language is one folder, `en` or `es`, with a file for each screen; what the languages share (which phrases there
//! are, how a number is rounded) stands beside the folders. Each language is one `match` over every code, so that the
//! compiler refuses a missing sentence. The tone: say the thing, then the number, then what to do. Short, shop words, no
//! blame. Chance as "7 in 10". The first sentence of a reason is its lead and may be set in bold ([`lead`]).

mod date;
mod diagnosis;
mod en;
mod es;
mod facts;
mod forecast;
mod forecast_tables;
mod job_sheet;
mod label;
mod language;
mod library;
mod meter;
mod name;
pub mod number;
mod phrase;
mod print_room;
mod problem;
mod reason;
mod records;
mod trade_off;
mod voice;

pub use date::{civil, on};
pub use diagnosis::DiagnosisPhrase;
pub use facts::Facts;
pub use forecast::{DyePath, ForecastPhrase};
pub use forecast_tables::ForecastTable;
pub use job_sheet::JobSheetPhrase;
pub use label::Label;
pub use language::{Language, Sentence};
pub use library::{LibraryLabel, LibraryPhrase};
pub use number::{Numeral, Quantity, Units};
pub use phrase::Phrase;
pub use print_room::PrintRoomPhrase;
pub use reason::{fill, lead};
pub use trade_off::{ScaleChange, TradeOffPhrase};
pub use voice::Voice;

use trade_off::ScaleDifference;
