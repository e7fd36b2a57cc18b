//! The cure window: what every setting of a dryer does to one stack.
//!
//! A grid of set temperatures and belt speeds, each cell a temperature history of the print and one of the
//! bare cloth beside it. The window is computed for the run as planned and for the two corners of the dryer's
//! drift, so that a set point can be required to hold in all of them. Between cells: local cubics, on the
//! logit of the fused share and the logarithm of dye and scorch, because those are smoothest. Local, because
//! a drying-out kink crosses every window of damp cloth: a polynomial through the whole row would ring.
//!
//! **Decision:** local cubics between the cells, on the logit of the fused share.
//! **Because:** a polynomial through a whole row rings at the kink where the cloth dries out.
//! **Measured:** the error is measured by `tests/answers/window_agrees.rs` at each run; decided by
//! 2026-11-25.
//! **Reconsider when:** that test comes near its bound, or the grid becomes fine enough for straight lines.

use super::belt_steps::BeltStep;
use super::cell::Cell;
use super::fields::{BareClothCells, PrintCells};
use super::outcome::Outcome;
use super::question::{Axes, DriftRun, Question, RUNS, runs};
use super::set_point::SetPoint;
use crate::dryer::HistoryError;
use crate::numerics::interpolation;
use crate::numerics::rosenbrock::Effort;
use std::sync::Arc;

/// The window of one stack in one dryer.
#[derive(Clone, Debug)]
pub struct Window {
    /// Set temperatures of the rows, K, rising.
    pub set: Vec<f64>,
    /// Belt speeds of the columns, m/s, rising.
    pub belt: Vec<f64>,
    /// Effort of the integration: time steps, times the cases that each step served.
    pub effort: Effort,
    log_belt: Vec<f64>,
    pub(super) belt_steps: Arc<[BeltStep]>,
    cells_by_run: [Cells; RUNS],
}

/// Values over the grid, row after row from the coolest, as they are interpolated.
type Cells = Vec<Cell>;

impl Window {
    /// The middle of the grid: where a candidate is assessed whose window is closed.
    #[must_use]
    pub fn middle(&self) -> SetPoint {
        let middle = |values: &[f64]| values.get(values.len() / 2).copied().unwrap_or(1.0);
        SetPoint { set: middle(&self.set), belt: middle(&self.belt), robust: false }
    }

    /// Computes the window.
    ///
    /// # Errors
    /// [`HistoryError`] if a temperature history cannot be integrated.
    pub fn compute(question: &Question<'_>) -> Result<Self, HistoryError> {
        let (axes, runs) = (Axes::of(question), runs(question.dryer));
        let beside = BareClothCells::compute(question, &axes, &runs)?;
        Ok(Self::of(&axes, &PrintCells::compute(question, &axes, &runs)?, &beside))
    }

    /// A window from the cells of a print and of the cloth beside it.
    pub fn of(axes: &Axes, print: &PrintCells, beside: &BareClothCells) -> Self {
        let mut cells_by_run: [Cells; RUNS] = Default::default();
        for (cells, (print, beside)) in cells_by_run.iter_mut().zip(print.cells.iter().zip(&beside.cells)) {
            cells.extend(print.iter().zip(beside).map(|(print, beside)| Cell::of(print, beside)));
        }
        let effort = Effort {
            accepted: print.effort.accepted + beside.effort.accepted,
            rejected: print.effort.rejected + beside.effort.rejected,
        };
        let Axes { set, belt, log_belt, belt_steps } = axes.clone();
        Self { set, belt, effort, log_belt, belt_steps, cells_by_run }
    }

    /// The cells of a run, row after row from the coolest.
    pub(super) fn cells(&self, run: DriftRun) -> &Cells {
        let [nominal, cold, hot] = &self.cells_by_run;
        match run {
            DriftRun::Nominal => nominal,
            DriftRun::Cold => cold,
            DriftRun::Hot => hot,
        }
    }

    /// The cells along one set temperature, one a column: interpolated between the rows from `row` on by
    /// their weights.
    pub fn row(&self, run: DriftRun, (row, weights): (usize, [f64; 4])) -> Cells {
        let columns = self.belt.len();
        let mut along = vec![Cell::ZERO; columns];
        for (cells, weight) in self.cells(run).chunks(columns).skip(row).zip(weights) {
            for (sum, cell) in along.iter_mut().zip(cells) {
                sum.add(weight, cell);
            }
        }
        along
    }

    /// The outcome at a setting (K, m/s), clamped to the grid.
    #[must_use]
    pub fn at(&self, run: DriftRun, set: f64, belt: f64) -> Outcome {
        let (row, row_weights) = interpolation::cubic(&self.set, set);
        let (column, column_weights) = interpolation::cubic(&self.log_belt, belt.ln());
        let cells = self.cells(run);
        let mut sum = Cell::ZERO;
        for (r, row_weight) in row_weights.iter().enumerate() {
            let from = (row + r) * self.belt.len() + column;
            for (cell, weight) in cells.get(from..).unwrap_or_default().iter().zip(column_weights) {
                sum.add(row_weight * weight, cell);
            }
        }
        sum.outcome()
    }
}
