//! English: a file for each screen, with the same names as in the other languages.

pub(super) mod date;
pub(super) mod diagnosis;
pub(super) mod forecast;
pub(super) mod job_sheet;
pub(super) mod label;
pub(super) mod library;
pub(super) mod meter;
pub(super) mod name;
pub(super) mod number;
pub(super) mod phrase;
pub(super) mod print_room;
pub(super) mod problem;
pub(super) mod reason;
pub(super) mod records;
pub(super) mod trade_off;
