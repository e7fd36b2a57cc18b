//! What a colour meter wrote into a file: CGATS.17 text, or a table with commas, semicolons or tabs.
//!
//! Every row is a sample: a name, and either its L*, a*, b* or its reflectance at wavelengths that reach from 400 nm or
//! below to 700 nm or above. Which column is which is told by its heading (`LAB_L`, `L*`, `SPECTRAL_NM380`, `SPEC_380`,
//! `nm380`, `380 nm`, …); all other columns are passed over.
//!
//! A spectrum becomes a Lab for D65 and the 10° observer. Where a file states Lab for that pair, or has no spectrum,
//! its own Lab is taken; a Lab for another light or observer is handed on with a note, because it cannot be turned
//! into ours without the spectrum. Nothing is guessed silently: see [`MeterNote`] and [`MeterError`].
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
