//! Reads the files of colour meters: CGATS.17 text, or a table with commas, semicolons or tabs.
//!
//! Every row is a sample: a name, and either its L*, a*, b* or its reflectance at wavelengths from 400 nm
//! or below to 700 nm or above. Columns are identified by their headings (`LAB_L`, `L*`,
//! `SPECTRAL_NM380`, `SPEC_380`, `nm380`, `380 nm`, …); all others are ignored.
//!
//! A spectrum is converted into a Lab for D65 and the 10° observer. If a file states Lab values for that
//! pair, or has no spectrum, its own Lab is used. A Lab for another light or observer is passed on with a
//! note, because it cannot be converted without the spectrum. Every assumption is reported: see
//! [`MeterNote`] and [`MeterError`].
//!
//! Source of the format: ANSI CGATS.17 / ISO 28178 as public implementations read and write it; the standards
//! themselves were not read.
mod cgats;
mod column;
mod delimited;
mod error;
mod file;
mod reader;
mod reflectance;
mod table;
mod tokens;
mod weights;

pub use error::{MeterError, MeterProblem};
pub use file::{MeterFile, MeterNote, MeterSample, StatedViewing};
pub use reader::LONGEST;
