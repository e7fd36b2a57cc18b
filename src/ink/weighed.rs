//! The transfer of a shop's own press, from prints weighed before and after.
//!
//! ```text
//! transfer = (m / (ρ A strokes) − g) / V            g what the stencil's edges add (`stencil_gain`)
//! u² = (∂τ/∂m)² u_m² + (∂τ/∂ρ)² u_ρ² + (∂τ/∂A)² u_A² + (∂τ/∂g)² u_g²
//! u_m² = s²/n + 2 a²/3 n                            scatter of n prints; two readings of ± a each
//! ```
//!
//! A range ± a is taken as a uniform distribution with the standard uncertainty a/√3. Source: JCGM
//! 100:2008 (GUM), 4.2, 4.3.7 and 5.1.2 (from memory).
//!
//! V is taken from the mesh record. Its error cancels: the transfer found with a mesh gives the right
//! film for this mesh, whatever its true volume. Prints are weighed off the press without a flash:
//! plastisol loses no mass in heat, but damp cloth does.
use super::Mesh;
use super::deposit::{TRANSFER, stencil_gain};
use crate::quantity::{Band, Bound, FieldError, Problem};
use serde::{Deserialize, Serialize};

/// A measured value with its uncertainty.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MeasuredValue {
    /// The value.
    pub value: f64,
    /// Half the width of the range in which the true value lies, in the same unit, 0 and up.
    pub plus_minus: f64,
}

/// Solid blocks printed and weighed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Weighing {
    /// Weight of each piece before and after the print, g.
    pub weights_g: Vec<[f64; 2]>,
    /// Error of one reading of the balance, ± g.
    pub balance_g: f64,
    /// Printed area, cm².
    pub area_cm2: MeasuredValue,
    /// Narrow side of the block, mm; the wider it is, the less the stencil's edges matter.
    pub width_mm: f64,
    /// Density of the ink, kg/m³.
    pub density: MeasuredValue,
    /// Strokes on each piece.
    pub strokes: u32,
}

/// The transfer of a press.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct InkTransfer {
    /// Share of the theoretical volume.
    pub value: f64,
    /// Its standard uncertainty.
    pub standard_uncertainty: f64,
}

impl InkTransfer {
    /// The band that holds the true value in eight cases of ten.
    #[must_use]
    pub fn band(self) -> Band {
        // 10 % of a normal distribution lie beyond 1.2816 standard deviations on either side.
        let reach = 1.2816 * self.standard_uncertainty;
        Band { low: (self.value - reach).max(0.0), likely: self.value, high: self.value + reach }
    }
}

/// Relative error of what the edges add (0.3 to 0.7). Assumed.
const GAIN_ERROR: f64 = 0.5;

impl Weighing {
    /// Accepted weight of a piece.
    pub const WEIGHT: Bound = Bound { field: "weights_g", min: 0.01, max: 5000.0, unit: "g" };
    /// Accepted reading error of the balance.
    pub const BALANCE: Bound = Bound { field: "balance_g", min: 1e-5, max: 5.0, unit: "g" };
    /// Accepted printed area.
    pub const AREA: Bound = Bound { field: "area_cm2", min: 1.0, max: 20_000.0, unit: "cm²" };
    /// Accepted narrow side of the block.
    pub const WIDTH: Bound = Bound { field: "width_mm", min: 5.0, max: 1500.0, unit: "mm" };
    /// Accepted density of a plastisol.
    pub const DENSITY: Bound = Bound { field: "density", min: 900.0, max: 2500.0, unit: "kg/m³" };
    /// Accepted strokes.
    pub const STROKES: Bound = Bound { field: "strokes", min: 1.0, max: 20.0, unit: "" };

    /// The transfer of these prints through this mesh.
    ///
    /// # Errors
    /// A [`FieldError`] if there is no print, if a value is out of range, if a piece is not heavier after
    /// the print (`weights_g[i]`), or if an uncertainty exceeds half of its value; on `transfer` if the
    /// result lies outside [`TRANSFER`], which means that weights, area and mesh do not belong together.
    pub fn transfer(&self, mesh: &Mesh) -> Result<InkTransfer, FieldError> {
        if self.weights_g.is_empty() {
            return Err(FieldError::new("weights_g", "", Problem::Empty));
        }
        let mut gains = Vec::with_capacity(self.weights_g.len());
        for (i, &[before, after]) in self.weights_g.iter().enumerate() {
            let here = |mut error: FieldError| {
                error.field = format!("weights_g[{i}]");
                error
            };
            Self::WEIGHT.check(before).map_err(here)?;
            let heavier = Bound { min: before + self.balance_g, ..Self::WEIGHT };
            gains.push((heavier.check(after).map_err(here)? - before) * 1e-3);
        }
        Self::BALANCE.check(self.balance_g)?;
        Self::WIDTH.check(self.width_mm)?;
        Self::STROKES.check(f64::from(self.strokes))?;
        let (area, area_error) = checked(&Self::AREA, self.area_cm2, 1e-4)?;
        let (density, density_error) = checked(&Self::DENSITY, self.density, 1.0)?;

        let count = gains.len() as f64;
        let mass = gains.iter().sum::<f64>() / count;
        let scatter = gains.iter().map(|gain| (gain - mass).powi(2)).sum::<f64>();
        let scatter = if gains.len() > 1 { scatter / (count - 1.0) / count } else { 0.0 };
        let mass_variance = scatter + 2.0 * rectangular(self.balance_g * 1e-3).powi(2) / count;

        let strokes = f64::from(self.strokes);
        let volume = mesh.volume();
        let gain = stencil_gain(mesh.over_mesh, self.width_mm * 1e-3);
        let by_mass = 1.0 / (density * area * strokes * volume);
        let whole = mass * by_mass;
        let value = whole - gain / volume;
        let variance = by_mass.powi(2) * mass_variance
            + (whole / density * rectangular(density_error)).powi(2)
            + (whole / area * rectangular(area_error)).powi(2)
            + (rectangular(GAIN_ERROR * gain) / volume).powi(2);
        Ok(InkTransfer { value: TRANSFER.check(value)?, standard_uncertainty: variance.sqrt() })
    }
}

/// Standard uncertainty of a range of ± `half`.
fn rectangular(half: f64) -> f64 {
    half / 3.0_f64.sqrt()
}

/// A value and its uncertainty in SI, if both lie within their bounds.
fn checked(bound: &Bound, reading: MeasuredValue, si: f64) -> Result<(f64, f64), FieldError> {
    let value = bound.check(reading.value)?;
    let error = Bound { min: 0.0, max: 0.5 * value, ..*bound }.check(reading.plus_minus)?;
    Ok((value * si, error * si))
}
