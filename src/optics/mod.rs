//! Colours, their differences, and how a white film over a cloth looks.
//!
//! Comes in: Lab values, spectra, files of a colour [`meter`], films in metres. Goes out: [`Lab`] with
//! its swatch and its limits, [`ciede2000`], the grey-scale [`Grade`]s and [`Whiteness`] in one
//! [`Comparison`], [`gloss_units`], [`Spectrum`], the Kubelka-Munk [`OpticalLayer`], and the white print
//! itself: [`WhiteFilm`] over a cloth, with or without [`DyeInFilm`]. Everything is for the CIE 1964 10°
//! observer under D65, the pair that textile work uses. It must not know heat, limits, or what a customer
//! accepts.

mod cloth_spectrum;
mod comparison;
mod difference;
mod dye;
mod gamut;
mod gloss;
mod grades;
mod kubelka_munk;
mod lab;
pub mod meter;
mod observer;
mod spectrum;
mod typed;
mod white_film;
mod whiteness;

pub use comparison::Comparison;
pub use difference::{cie76, ciede2000, cmc};
pub use dye::{DyeAbsorption, DyeInFilm};
pub use gloss::{PVC_INDEX, REFERENCE_INDEX, WHITE_SCATTERS, facets_in_window, gloss_units, mirrored};
pub use grades::{Grade, GreyStep, change_grade, staining_grade};
pub use kubelka_munk::{
    Cards, DrawDown, OpticalLayer, absorption_ratio, contrast_ratio, endless_reflectance,
};
pub use lab::{Lab, WHITE_POINT, Xyz};
pub use spectrum::{Spectrum, WAVELENGTHS};
pub use white_film::{FreshPrint, WhiteFilm, appearance};
pub use whiteness::{Validity, Viewing, Whiteness, whiteness, yellowness};
