//! How well a film of white hides the garment.
//!
//! Three measures of one film: the contrast ratio of the paint trade, the colour of the print on this
//! garment, and the difference of that colour from a film of the same white too thick to see through. The
//! last one is what a printer calls "the shirt still shows". A film is thin over the crowns of the yarns
//! and thick between them ([`DepositedFilm`]); the eye averages their light, so all three are computed
//! from the mean reflectance.
use super::{DepositedFilm, White};
use crate::optics::{Lab, Spectrum, WhiteFilm, ciede2000};
use crate::quantity::FieldError;

/// Reflectance of the white half of a contrast card. Source: the tables of ISO 6504-1 use 0.80.
const WHITE_CARD: f64 = 0.80;

/// A film of white on one garment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FilmOpacity {
    /// Luminance over black divided by luminance over a white card of 0.80, 0 to 1; a coating hides from
    /// 0.98 on.
    pub contrast_ratio: f64,
    /// Colour of the print, D65/10°.
    pub colour: Lab,
    /// Colour of a film of the same white too thick to see through.
    pub endless: Lab,
    /// How much of the garment still shows: ΔE00 between `colour` and `endless`, 0 and up.
    pub garment_shows: f64,
}

impl FilmOpacity {
    /// How much bluer the print is than the full white, b*; 0 or less if it is not. A thin white over a
    /// dark cloth looks bluish because short waves scatter most.
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
    /// The optical properties of this white.
    ///
    /// # Errors
    /// A [`FieldError`] if its scattering or reflectance lies outside [`WhiteFilm::SCATTERING`] or
    /// [`WhiteFilm::REFLECTANCE`].
    pub fn optics(&self) -> Result<WhiteFilm, FieldError> {
        WhiteFilm::new(self.scattering, self.reflectance)
    }
}

/// Mean reflectance of a film over a backing.
fn mean_reflectance(film: &DepositedFilm, white: &WhiteFilm, backing: &Spectrum) -> Spectrum {
    let share = 1.0 / film.parts().len() as f64;
    // Without nap all parts are alike.
    let alike = film.parts().chunk_by(|a, b| a.total_cmp(b).is_eq());
    alike.fold(Spectrum::flat(0.0), |sum, parts| {
        let (film, share) = (parts.first().copied().unwrap_or(0.0), share * parts.len() as f64);
        sum.with(&white.over(film, backing), |total, reflectance| total + share * reflectance)
    })
}

/// Contrast ratio of a film, 0 (no film) to 1, by luminance Y. Source: ISO 6504-3 and ASTM D2805.
#[must_use]
pub fn contrast_ratio(film: &DepositedFilm, white: &WhiteFilm) -> f64 {
    let luminance = |card: f64| mean_reflectance(film, white, &Spectrum::flat(card)).xyz().y;
    luminance(0.0) / luminance(WHITE_CARD)
}

/// Colour of a film of this white over a garment or a blocker, D65/10°.
#[must_use]
pub fn colour(film: &DepositedFilm, white: &WhiteFilm, backing: &Spectrum) -> Lab {
    mean_reflectance(film, white, backing).lab()
}

/// The opacity of a film of this white over a garment or a blocker.
#[must_use]
pub fn opacity(film: &DepositedFilm, white: &WhiteFilm, backing: &Spectrum) -> FilmOpacity {
    let (colour, endless) = (colour(film, white, backing), white.endless());
    let garment_shows = ciede2000(endless, colour);
    FilmOpacity { contrast_ratio: contrast_ratio(film, white), colour, endless, garment_shows }
}
