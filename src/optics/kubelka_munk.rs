//! Kubelka and Munk: a film that scatters (S) and absorbs (K) diffuse light, of thickness X, over a
//! backing Rg.
//!
//! ```text
//! dR/dX = S − 2 (K + S) R + S R²,   R(0) = Rg
//! κ = √(K (K + 2S)),  t = e^(−κX)
//! R0 = S (1 − t²)/((S + K)(1 − t²) + κ (1 + t²))      over black
//! T  = 2 κ t / ((S + K)(1 − t²) + κ (1 + t²))         through the film
//! R  = R0 + T² Rg/(1 − R0 Rg)                         over Rg; Rg may itself be a film (two layers)
//! K/S = (1 − R∞)²/(2 R∞)                              endless film
//! ```
//!
//! This is the hyperbolic solution (Kubelka 1948, JOSA 38:448) written with decaying exponentials only,
//! so that neither S → 0, K → 0 nor a very thick film needs a second formula; two layers after Kubelka
//! (1954), JOSA 44:330. No surface (Saunderson) correction: S and K are effective values of the print as
//! seen. Holds for diffuse light and an even film; poor for strong absorption with little scatter.
use crate::quantity::{Bound, FieldError};

/// The optical effect of a film at one wavelength.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OpticalLayer {
    /// Reflectance over black, 0 to 1.
    pub reflectance: f64,
    /// Share of the light that passes through, 0 to 1.
    pub transmittance: f64,
}

impl OpticalLayer {
    /// A film of scattering S (1/m, 0 and up), absorption K (1/m, 0 and up) and thickness (m, 0 and up).
    #[must_use]
    pub fn new(scattering: f64, absorption: f64, thickness: f64) -> Self {
        let decay = (absorption * (absorption + 2.0 * scattering)).sqrt();
        if decay == 0.0 {
            let through = 1.0 / (1.0 + scattering * thickness);
            return Self { reflectance: scattering * thickness * through, transmittance: through };
        }
        // lost = 1 − t, exact also where the film is thin and t is nearly 1.
        let lost = -(-decay * thickness).exp_m1();
        let kept = 1.0 - lost;
        let opened = lost * (1.0 + kept);
        let whole = 1.0 / ((scattering + absorption) * opened + decay * (1.0 + kept * kept));
        Self { reflectance: scattering * opened * whole, transmittance: 2.0 * decay * kept * whole }
    }

    /// Reflectance of the film over a backing of reflectance 0 to 1.
    #[must_use]
    pub fn over(self, backing: f64) -> f64 {
        self.reflectance
            + self.transmittance * self.transmittance * backing / (1.0 - self.reflectance * backing)
    }

    /// This film on top of another; both are alike from either side. The result is for light that falls
    /// on this one.
    #[must_use]
    pub fn on(self, lower: Self) -> Self {
        Self {
            reflectance: self.over(lower.reflectance),
            transmittance: self.transmittance * lower.transmittance
                / (1.0 - self.reflectance * lower.reflectance),
        }
    }
}

/// K/S of a film too thick to see through, from its reflectance (above 0, up to 1).
#[must_use]
pub fn absorption_ratio(endless_reflectance: f64) -> f64 {
    (1.0 - endless_reflectance).powi(2) / (2.0 * endless_reflectance)
}

/// R∞, the reflectance of a film too thick to see through, from K/S (0 and up): 1 + K/S − √((K/S)² + 2 K/S).
#[must_use]
pub fn endless_reflectance(absorption_ratio: f64) -> f64 {
    // The conjugate of the textbook form: no loss of digits where K/S is large.
    1.0 / (1.0 + absorption_ratio + (absorption_ratio * (absorption_ratio + 2.0)).sqrt())
}

/// Contrast ratio of a film: over black divided by over a white card of reflectance `white_card`; 1 hides
/// completely. ISO 6504 calls a film hiding from 0.98 on with a card of 0.80.
#[must_use]
pub fn contrast_ratio(film: OpticalLayer, white_card: f64) -> f64 {
    film.reflectance / film.over(white_card)
}

/// Scattering and absorption of an ink, from one draw-down over a black and a white card.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DrawDown {
    /// Scattering, 1/m.
    pub scattering: f64,
    /// Absorption, 1/m.
    pub absorption: f64,
    /// Reflectance of an endless film, 0 to 1.
    pub endless_reflectance: f64,
}

/// The bare halves of a contrast card, reflectances 0 to 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cards {
    /// The black half; ASTM D2805 asks for 0.01 or less.
    pub black: f64,
    /// The white half; ASTM D2805 asks for 0.78 or more.
    pub white: f64,
}

/// Reflectance of the black card alone.
const BLACK_CARD: Bound = Bound { field: "black_card", min: 0.0, max: 0.2, unit: "" };
/// Reflectance of the film over the black card.
const OVER_BLACK: Bound = Bound { field: "over_black", min: 0.01, max: 0.97, unit: "" };
/// Reflectance of the white card alone.
const WHITE_CARD: Bound = Bound { field: "white_card", min: 0.3, max: 1.0, unit: "" };
/// Thickness of the draw-down, µm.
const FILM: Bound = Bound { field: "film_um", min: 1.0, max: 2000.0, unit: "µm" };
/// Least difference of reflectance between the film over black and over white, and between the bare black
/// card and the film over it: the last digit of a reflectance read in hundredths of a percent. Chosen.
const LEAST_STEP: f64 = 1e-4;

impl DrawDown {
    /// Reads S and K from reflectances (0 to 1) of one film over the black and the white half of a card,
    /// and the film in m.
    ///
    /// ```text
    /// c = b coth(b S X) is the same over both backings g:  c = (1 + R g − a (R + g))/(R − g)
    /// a = ((1 + R1 g1)(R2 − g2) − (1 + R2 g2)(R1 − g1)) / ((R1 + g1)(R2 − g2) − (R2 + g2)(R1 − g1))
    /// b = √(a² − 1),  S X = arcoth(c/b)/b,  K = S (a − 1)
    /// ```
    ///
    /// Source: the hyperbolic film of Kubelka (1948), JOSA 38:448, solved for two backings; over a
    /// perfect black, g1 = 0, it is his a = ½ (Rw + (R0 − Rw + Rg)/(R0 Rg)).
    ///
    /// # Errors
    /// A [`FieldError`] on a reflectance or a thickness out of range; on `over_black` if the film over
    /// black is not lighter than the black; on `over_white` if the film is not lighter than over black by
    /// at least 0.0001 (a film that hides completely does not reveal its scattering and must be drawn
    /// thinner), or lighter than a film without absorption that reads the same over black.
    pub fn read(over_black: f64, over_white: f64, cards: Cards, film: f64) -> Result<Self, FieldError> {
        let g1 = BLACK_CARD.check(cards.black)?;
        let g2 = WHITE_CARD.check(cards.white)?;
        let r1 = Bound { min: OVER_BLACK.min.max(g1 + LEAST_STEP), ..OVER_BLACK }.check(over_black)?;
        FILM.check(film * 1e6)?;
        // Without absorption S X = (R − g)/((1 − R)(1 − g)).
        let clear = (r1 - g1) / ((1.0 - r1) * (1.0 - g1));
        let lightest = (g2 + (1.0 - g2) * clear) / (1.0 + (1.0 - g2) * clear);
        let r2 =
            Bound { field: "over_white", min: r1 + LEAST_STEP, max: lightest, unit: "" }.check(over_white)?;

        let (step1, step2) = (r1 - g1, r2 - g2);
        let a = ((1.0 + r1 * g1) * step2 - (1.0 + r2 * g2) * step1) / ((r1 + g1) * step2 - (r2 + g2) * step1);
        let a = a.max(1.0);
        let b = (a * a - 1.0).sqrt();
        let c = (1.0 + r1 * g1 - a * (r1 + g1)) / step1;
        // arcoth(c/b) = artanh(b/c).
        let optical_thickness = if b > 0.0 { (b / c).atanh() / b } else { clear };
        let scattering = optical_thickness / film;
        let absorption = scattering * (a - 1.0);
        Ok(Self { scattering, absorption, endless_reflectance: 1.0 / (a + b) })
    }

    /// The white film of this ink, if the readings were taken at 550 nm or are the luminance Y.
    ///
    /// # Errors
    /// A [`FieldError`] on `scattering` or `reflectance` outside the bounds of
    /// [`WhiteFilm`](super::WhiteFilm).
    pub fn white_film(&self) -> Result<super::WhiteFilm, FieldError> {
        super::WhiteFilm::new(self.scattering, self.endless_reflectance)
    }
}
