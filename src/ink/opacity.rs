//! How well a film of white hides the garment.
//!
//! Three readings of one film: the contrast ratio of the paint trade, the colour that the print will have on this
//! garment, and how far that colour lies from a film of the same white too thick to see through. The last one is
//! what a printer calls "the shirt still shows".
use super::{Mesh, White, deposit};
use crate::optics::{Lab, Spectrum, WhiteFilm, ciede2000};
use crate::quantity::FieldError;

/// Reflectance of the white part of a contrast card. Source: ISO 6504-1 tables use 0.80.
const WHITE_CARD: f64 = 0.80;

/// A film of white on one garment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Opacity {
    /// Luminance over black by luminance over a white card of 0.80, 0 to 1; a coating "hides" from 0.98 on.
    pub contrast_ratio: f64,
    /// Colour of the print, D65/10°.
    pub colour: Lab,
    /// How much of the garment still shows: ΔE00 to an endless film of the same white, 0 and up.
    pub garment_shows: f64,
}

impl White {
    /// This white as the light sees it.
    ///
    /// # Errors
    /// Scattering or reflectance outside [`WhiteFilm::SCATTERING`] and [`WhiteFilm::REFLECTANCE`].
    pub fn optics(&self) -> Result<WhiteFilm, FieldError> {
        WhiteFilm::new(self.scattering, self.reflectance)
    }
}

/// Contrast ratio of `film` metres (above 0), 0 to 1. Source: ISO 6504-3 and ASTM D2805, by luminance Y.
/// No film hides nothing: 0.
#[must_use]
pub fn contrast_ratio(film: f64, white: &WhiteFilm) -> f64 {
    let luminance = |card: f64| white.over(film, &Spectrum::flat(card)).xyz().y;
    luminance(0.0) / luminance(WHITE_CARD)
}

/// The three readings of `film` metres (0 and up) of a white over a garment.
#[must_use]
pub fn opacity(film: f64, white: &WhiteFilm, garment: &Spectrum) -> Opacity {
    let colour = white.over(film, garment).lab();
    Opacity {
        contrast_ratio: contrast_ratio(film, white),
        colour,
        garment_shows: ciede2000(white.endless(), colour),
    }
}

/// Fewest strokes through this mesh, 1 to `most`, with which the garment shows no more than `shows_at_most` (ΔE00).
/// `None` if not even `most` strokes do it. `transfer` as in [`deposit`].
#[must_use]
pub fn strokes_needed(
    mesh: &Mesh,
    transfer: f64,
    white: &WhiteFilm,
    garment: &Spectrum,
    shows_at_most: f64,
    most: u32,
) -> Option<u32> {
    let endless = white.endless();
    (1..=most).find(|&strokes| {
        let colour = white.over(deposit(mesh, transfer, strokes), garment).lab();
        ciede2000(endless, colour) <= shows_at_most
    })
}
