//! How well a film of white hides the garment.
//!
//! Three readings of one film: the contrast ratio of the paint trade, the colour that the print will have on this
//! garment, and how far that colour lies from a film of the same white too thick to see through. The last one is
//! what a printer calls "the shirt still shows". A film lies thin over the crowns of the yarns and thick between them
//! ([`DepositedFilm`]); the eye adds their light, so the readings are those of the mean reflectance.
use super::{DepositedFilm, White};
use crate::optics::{Lab, Spectrum, WhiteFilm, ciede2000};
use crate::quantity::FieldError;

/// Reflectance of the white part of a contrast card. Source: ISO 6504-1 tables use 0.80.
const WHITE_CARD: f64 = 0.80;

/// A film of white on one garment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FilmOpacity {
    /// Luminance over black by luminance over a white card of 0.80, 0 to 1; a coating "hides" from 0.98 on.
    pub contrast_ratio: f64,
    /// Colour of the print, D65/10°.
    pub colour: Lab,
    /// Colour of an endless film of the same white.
    pub endless: Lab,
    /// How much of the garment still shows: ΔE00 to an endless film of the same white, 0 and up.
    pub garment_shows: f64,
}

impl FilmOpacity {
    /// How much bluer the print is than the full white, b*: a thin white over a dark cloth looks bluish, because short
    /// waves scatter most. 0 or less where it is not.
    #[must_use]
    pub fn bluish(&self) -> f64 {
        self.endless.b - self.colour.b
    }

    /// How much darker the print is than the full white, L*: a grey blocker or a dark cloth dulls it.
    #[must_use]
    pub fn dull(&self) -> f64 {
        self.endless.lightness - self.colour.lightness
    }
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

/// Mean reflectance of a film over a backing.
fn seen(lay: &DepositedFilm, white: &WhiteFilm, backing: &Spectrum) -> Spectrum {
    let share = 1.0 / lay.parts().len() as f64;
    // Without nap all parts are alike.
    let alike = lay.parts().chunk_by(|a, b| a.total_cmp(b).is_eq());
    alike.fold(Spectrum::flat(0.0), |sum, parts| {
        let (film, share) = (parts.first().copied().unwrap_or(0.0), share * parts.len() as f64);
        sum.with(&white.over(film, backing), |total, reflectance| total + share * reflectance)
    })
}

/// Contrast ratio of a film, 0 to 1. Source: ISO 6504-3 and ASTM D2805, by luminance Y. No film hides nothing: 0.
#[must_use]
pub fn contrast_ratio(lay: &DepositedFilm, white: &WhiteFilm) -> f64 {
    let luminance = |card: f64| seen(lay, white, &Spectrum::flat(card)).xyz().y;
    luminance(0.0) / luminance(WHITE_CARD)
}

/// Colour of a film of this white over a garment or a blocker, D65/10°.
#[must_use]
pub fn colour(lay: &DepositedFilm, white: &WhiteFilm, backing: &Spectrum) -> Lab {
    seen(lay, white, backing).lab()
}

/// The readings of a film of this white over a garment or a blocker.
#[must_use]
pub fn opacity(lay: &DepositedFilm, white: &WhiteFilm, backing: &Spectrum) -> FilmOpacity {
    let (colour, endless) = (colour(lay, white, backing), white.endless());
    let garment_shows = ciede2000(endless, colour);
    FilmOpacity { contrast_ratio: contrast_ratio(lay, white), colour, endless, garment_shows }
}
