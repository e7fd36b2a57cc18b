//! The split circle: the white on the customer's own cloth, fresh at the left, predicted at the right.

use crate::optics::{DyeAbsorption, FreshPrint, Lab, Spectrum, WhiteFilm};

/// Scattering of the white drawn here, 1/m. Middle of what is usual for a garment white; invented for the picture.
const SCATTERING: f64 = 0.17e6;
/// Reflectance of an infinitely thick film of the white drawn here. Middle of what is usual for a garment white.
const REFLECTANCE: f64 = 0.90;
/// Most dye tried when looking for a colour difference, kg/m³.
const MOST_DYE: f64 = 3.0;

/// Colours of one picture as swatches, `#rrggbb`.
#[derive(Clone, Debug, PartialEq)]
pub struct Swatches {
    /// The cloth.
    pub cloth: String,
    /// Its knit lines, darker.
    pub shade: String,
    /// Its knit lines, lighter.
    pub light: String,
    /// The white as it leaves the press.
    pub fresh: String,
    /// The white at each predicted colour difference, in the order asked for.
    pub turned: Vec<String>,
}

/// The colours of a white film (µm) on a cloth, fresh and at these colour differences, in true size.
///
/// The dye has the hue of the cloth; its amount is found by bisection so that the difference from the fresh print
/// is the one asked for. Returns `None` for a film that is negative or no finite number.
#[must_use]
pub fn swatches(cloth: Lab, film_um: f64, differences: &[f64]) -> Option<Swatches> {
    if !film_um.is_finite() || film_um < 0.0 {
        return None;
    }
    let white = WhiteFilm::new(SCATTERING, REFLECTANCE).ok()?;
    let print = FreshPrint::new(film_um * 1e-6, &white, &Spectrum::of_cloth(cloth));
    let dye = DyeAbsorption::of_hue(cloth.hue());
    let turned = differences
        .iter()
        .map(|&difference| print.stained(&dye, amount(&print, &dye, difference)).swatch())
        .collect();
    Some(Swatches { turned, ..Swatches::of(cloth, print.lab(), &[]) })
}

impl Swatches {
    /// The swatches of colours that are known.
    #[must_use]
    pub fn of(cloth: Lab, fresh: Lab, turned: &[Lab]) -> Self {
        let step = |by: f64| Lab { lightness: (cloth.lightness + by).clamp(0.0, 100.0), ..cloth }.swatch();
        Self {
            cloth: cloth.swatch(),
            shade: step(-6.0),
            light: step(6.0),
            fresh: fresh.swatch(),
            turned: turned.iter().map(|lab| lab.swatch()).collect(),
        }
    }
}

/// Dye in the film, kg/m³, that makes this colour difference: forty bisections.
fn amount(print: &FreshPrint, dye: &DyeAbsorption, difference: f64) -> f64 {
    let (mut low, mut high) = (0.0, MOST_DYE);
    for _ in 0..40 {
        let middle = 0.5 * (low + high);
        if print.bleed_difference(dye, middle) < difference {
            low = middle;
        } else {
            high = middle;
        }
    }
    0.5 * (low + high)
}
