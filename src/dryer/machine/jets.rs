//! Heat transfer from air jets that impinge on the print.
//!
//! Martin's correlations for impinging jets (Martin 1977; Incropera 6e, eqs 7.71 to 7.77, from memory). With
//! the nozzle's width `D`, its distance `H`, the open share `f` of the nozzle plate and the speed at the
//! nozzle:
//!
//! ```text
//! round, array    Nu / Pr^0.42 = 0.5 K G Re^(2/3)      K = [1 + (H/D sqrt(f) / 0.6)^6]^-0.05
//! round, single   Nu / Pr^0.42 = G 2 Re^(1/2) (1 + 0.005 Re^0.55)^(1/2)
//!                 G = 2 sqrt(f) (1 - 2.2 sqrt(f)) / [1 + 0.2 (H/D - 6) sqrt(f)]
//! slots           Nu / Pr^0.42 = 2/3 f0^(3/4) [2 Re / (f/f0 + f0/f)]^(2/3)     f0 = [60 + 4 (H/2W - 2)^2]^(-1/2)
//! ```
//!
//! Nusselt and Reynolds numbers use the diameter, for slots twice the width; air properties are those at the
//! mean of air and print temperature. Outside the range of its correlation the transfer has to be measured:
//! an error.

use super::air;
use crate::quantity::{Bound, FieldError, Problem};
use serde::{Deserialize, Serialize};

/// How the nozzles are laid out.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Nozzles {
    /// A plate of round holes.
    RoundArray,
    /// One round nozzle over the print.
    Round,
    /// A row of slots across the belt.
    Slots,
}

/// Nozzles and their air, SI.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Jets {
    /// How they are laid out.
    pub nozzles: Nozzles,
    /// Diameter of a hole or width of a slot, m.
    pub width: f64,
    /// Distance from nozzle to print, m.
    pub distance: f64,
    /// Open share of the nozzle plate; for a single nozzle `D² / 4 r²` with `r` the radius that it serves. 0
    /// to 1.
    pub open_share: f64,
    /// Speed of the air at the nozzle, m/s.
    pub speed: f64,
}

/// Temperature of a print while it takes up most of its heat, K: between gelation and cure.
const PRINT: f64 = 383.15;

impl Jets {
    /// Heat transfer, W/(m² K), from air at `air` (K).
    ///
    /// # Errors
    /// [`FieldError`] for a field outside the range of the correlation.
    pub fn transfer(&self, air: f64) -> Result<f64, FieldError> {
        Bound { field: "width", min: 1e-4, max: 2.0, unit: "m" }.check(self.width)?;
        let film = 0.5 * (air + PRINT);
        let length = if self.nozzles == Nozzles::Slots { 2.0 * self.width } else { self.width };
        let per_speed = length / air::kinematic_viscosity(film);
        let nusselt = self.nusselt(self.speed * per_speed, air::prandtl(film)).map_err(|error| {
            // A shop knows the speed of its air and not the Reynolds number.
            if error.field == "reynolds" { self.speed_error(per_speed) } else { error }
        })?;
        Ok(nusselt * air::conductivity(film) / length)
    }

    /// Nusselt number at a Reynolds number and a Prandtl number.
    ///
    /// # Errors
    /// [`FieldError`] for a field outside the range of the correlation, or for the Reynolds number, as `reynolds`.
    pub fn nusselt(&self, reynolds: f64, prandtl: f64) -> Result<f64, FieldError> {
        let reach = self.distance / self.width;
        let [at_least, at_most] = self.reynolds_range();
        Bound { field: "reynolds", min: at_least, max: at_most, unit: "1" }.check(reynolds)?;
        let prandtl = prandtl.powf(0.42);
        let share = self.open_share;
        if self.nozzles == Nozzles::Slots {
            Bound { field: "distance", min: 2.0 * self.width, max: 80.0 * self.width, unit: "m" }
                .check(self.distance)?;
            let best = (60.0 + 4.0 * (0.5 * reach - 2.0).powi(2)).powf(-0.5);
            Bound { field: "open_share", min: 0.008, max: 2.5 * best, unit: "1" }.check(share)?;
            let crowding = share / best + best / share;
            return Ok(prandtl * 2.0 / 3.0 * best.powf(0.75) * (2.0 * reynolds / crowding).powf(2.0 / 3.0));
        }
        Bound { field: "distance", min: 2.0 * self.width, max: 12.0 * self.width, unit: "m" }
            .check(self.distance)?;
        Bound { field: "open_share", min: 0.004, max: 0.04, unit: "1" }.check(share)?;
        let root = share.sqrt();
        let spread = 2.0 * root * (1.0 - 2.2 * root) / (1.0 + 0.2 * (reach - 6.0) * root);
        Ok(prandtl
            * if self.nozzles == Nozzles::Round {
                spread * 2.0 * reynolds.sqrt() * (1.0 + 0.005 * reynolds.powf(0.55)).sqrt()
            } else {
                let far = (1.0 + (reach * root / 0.6).powi(6)).powf(-0.05);
                0.5 * far * spread * reynolds.powf(2.0 / 3.0)
            })
    }

    fn reynolds_range(&self) -> [f64; 2] {
        match self.nozzles {
            Nozzles::RoundArray => [2e3, 1e5],
            Nozzles::Round => [2e3, 4e5],
            Nozzles::Slots => [1.5e3, 4e4],
        }
    }

    /// The error of a Reynolds number outside the range, in terms of the speed.
    fn speed_error(&self, per_speed: f64) -> FieldError {
        let [min, max] = self.reynolds_range().map(|reynolds| reynolds / per_speed);
        let problem = if self.speed.is_finite() {
            Problem::OutOfRange { min, max, unit: "m/s".into() }
        } else {
            Problem::NotANumber
        };
        FieldError::new("speed", self.speed.to_string(), problem)
    }
}
