//! Windows for every film on one cloth, interpolated from a few that are simulated.
//!
//! A film affects the heat through its mass: it must be warmed, and it hinders drying. Over the films that a
//! shop prints (20 to 250 µm) peaks, fused shares (as logits), scorch and dye (as logarithms) are so smooth
//! in that mass that a parabola through three simulated windows gives all others. A blocker under the white
//! counts as additional film. The cloth beside the print does not depend on the film and is simulated once.
//! The error of the parabola: `tests/answers/window_agrees.rs`.
//!
//! **Decision:** three films are simulated; every other window is a parabola over the film's mass. The drift
//! is simulated for all three.
//! **Because:** a film affects the heat through its mass alone; where cloth dries out, the drift moves each
//! film differently.
//! **Measured:** drift for the middle film only, the others moved by the same amount, saves a quarter of the
//! work and was 3 K and 0.4 of fused share off where cloth dries out (2026-11-28, machine not recorded).
//! **Reconsider when:** `tests/answers/window_agrees.rs` shows an error near a limit, or films outside 20 to
//! 250 µm are printed.

use super::cell::PRINTED;
use super::fields::{BareClothCells, PrintCells};
use super::grid::Window;
use super::question::{Axes, Question, runs};
use crate::dryer::{Film, HistoryError, Stack};
use crate::numerics::rosenbrock::Effort;

/// Films that are simulated, as shares of the range from the lightest to the heaviest: closer together where
/// films are light, because there a window changes most. Chosen; `tests/answers/window_agrees.rs` measures
/// the error.
const ANCHORS: [f64; 3] = [0.0, 0.4, 1.0];
/// Films whose masses differ by less than this share use one window. Chosen: 3 % of a film is less than a
/// shop can hold.
const SAME: f64 = 0.03;

/// The windows of one cloth in one dryer, for any mass of film on it.
#[derive(Clone, Debug)]
pub struct Family {
    axes: Axes,
    /// Masses of the simulated films, kg/m², with the cells of each.
    anchors: Vec<(f64, PrintCells)>,
    beside: BareClothCells,
}

impl Family {
    /// Simulates the family for films from `least` to `most` (kg/m²); the film of the question's own stack is
    /// not used.
    ///
    /// # Errors
    /// [`HistoryError`] if a temperature history cannot be integrated.
    pub fn compute(question: &Question<'_>, [least, most]: [f64; 2]) -> Result<Self, HistoryError> {
        let (axes, runs) = (Axes::of(question), runs(question.dryer));
        let alike = most <= least * (1.0 + SAME);
        let films = if alike { &ANCHORS[..1] } else { &ANCHORS };
        let mut anchors = Vec::with_capacity(films.len());
        for share in films {
            let mass = least + share * (most - least);
            let film = Film { thickness: mass / Film::DENSITY, density: Film::DENSITY };
            let stack = Stack { film, blocker: None, ..question.stack.clone() };
            anchors
                .push((mass, PrintCells::compute(&Question { stack: &stack, ..*question }, &axes, &runs)?));
        }
        let beside = BareClothCells::compute(question, &axes, &runs)?;
        Ok(Self { axes, anchors, beside })
    }

    /// The window of a film of this mass, kg/m².
    #[must_use]
    pub fn window(&self, mass: f64) -> Window {
        let masses = || self.anchors.iter().map(|(mass, _)| *mass);
        let mut sum = PrintCells {
            cells: self.beside.cells.iter().map(|cells| vec![[0.0; PRINTED]; cells.len()]).collect(),
            effort: Effort::default(),
        };
        for (at, print) in &self.anchors {
            // Weight in Lagrange's interpolation.
            let others = masses().filter(|other| (other - at).abs() > 0.0);
            let weight: f64 = others.map(|other| (mass - other) / (at - other)).product();
            let cells = print.cells.iter().flatten();
            for (sum, cell) in sum.cells.iter_mut().flatten().zip(cells) {
                for (sum, value) in sum.iter_mut().zip(cell) {
                    *sum += weight * value;
                }
            }
            sum.effort.accepted += print.effort.accepted;
            sum.effort.rejected += print.effort.rejected;
        }
        Window::of(&self.axes, &sum, &self.beside)
    }
}
