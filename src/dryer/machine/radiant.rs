//! Exchange factor of an emitter over a belt, computed from its geometry for a dryer without a probe run.
//!
//! Emitter and print face each other; the walls between them re-radiate all that they receive. As a
//! network of resistances (Incropera 6e, section 13.3.4), per area of the print:
//!
//! ```text
//! 1/F = (1 - e_e) / (e_e a) + 1 / [F_pe + 1 / (1/F_pr + 1/(a F_er))] + (1 - e_p) / e_p
//! ```
//!
//! `a` is the emitter's area over the print's, `e` the emissivities, `F_pe = a F_ep` the view from print to
//! emitter, `F_pr = 1 - F_pe` and `F_er = 1 - F_ep` what each sees of the walls.

use crate::dryer::stack::Film;
use crate::quantity::{Bound, FieldError};

/// An emitter over the belt, SI.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Emission {
    /// Emitter's emissivity, 0 to 1.
    pub emissivity: f64,
    /// Emitter's area over the area of belt under it.
    pub area_share: f64,
    /// Share of the print's view that the emitter fills, 0 to 1.
    pub view: f64,
}

impl Emission {
    /// Exchange factor to a print of emissivity [`Film::EMISSIVITY`]: heat flux is `F sigma (T_e^4 - T_p^4)`.
    ///
    /// # Errors
    /// [`FieldError`] if a field is outside its range.
    pub fn exchange(&self) -> Result<f64, FieldError> {
        self.exchange_with(Film::EMISSIVITY)
    }

    /// Exchange factor to a surface of another emissivity.
    ///
    /// # Errors
    /// [`FieldError`] if a field or `emissivity` (as `print_emissivity`) is outside its range.
    pub fn exchange_with(&self, emissivity: f64) -> Result<f64, FieldError> {
        let share = |field| Bound { field, min: 0.01, max: 1.0, unit: "1" };
        let emitter = share("emissivity").check(self.emissivity)?;
        let area = Bound { field: "area_share", min: 0.01, max: 2.0, unit: "1" }.check(self.area_share)?;
        // By reciprocity the view factor of neither surface exceeds 1.
        Bound { field: "view", min: 0.01, max: area.min(1.0), unit: "1" }.check(self.view)?;
        let print = share("print_emissivity").check(emissivity)?;
        let (walls_of_print, walls_of_emitter) = (1.0 - self.view, area - self.view);
        let by_walls = if walls_of_print > 0.0 && walls_of_emitter > 0.0 {
            1.0 / (1.0 / walls_of_print + 1.0 / walls_of_emitter)
        } else {
            0.0
        };
        Ok(1.0 / ((1.0 - emitter) / (emitter * area) + 1.0 / (self.view + by_walls) + (1.0 - print) / print))
    }

    /// Temperature of the re-radiating walls, K, between emitter and print (both in K).
    ///
    /// # Errors
    /// [`FieldError`] if a field or `emissivity` (as `print_emissivity`) is outside its range.
    pub fn walls(&self, emitter: f64, print: f64, emissivity: f64) -> Result<f64, FieldError> {
        let flux = self.exchange_with(emissivity)? * (emitter.powi(4) - print.powi(4));
        let leaves_emitter =
            emitter.powi(4) - flux * (1.0 - self.emissivity) / (self.emissivity * self.area_share);
        let leaves_print = print.powi(4) + flux * (1.0 - emissivity) / emissivity;
        let (of_print, of_emitter) = (1.0 - self.view, self.area_share - self.view);
        if of_print + of_emitter <= 0.0 {
            return Ok(emitter);
        }
        Ok(((of_emitter * leaves_emitter + of_print * leaves_print) / (of_emitter + of_print)).powf(0.25))
    }
}
