//! The cure window: what every setting of a dryer does to one stack.
//!
//! A grid of set temperatures and belt speeds, each cell a history; belt speeds march side by side as lanes. The
//! window is computed for the run as planned and for the two corners of the dryer's drift, so that a set point can
//! be asked to hold in all of them. Between cells: local cubics, on the logit of the fused share and the logarithm
//! of the dye, because those are what bends least.

use super::Rules;
use crate::cure::{fuse, scorch};
use crate::dryer::HistoryError;
use crate::dryer::{Case, Dryer, Stack, TOLERANCE, World, history};
use crate::ink::CureKinetics;
use crate::migration::{DyedCloth, release};
use crate::numerics::{Lanes, grid};

/// Belt speeds that march side by side.
const SIDE_BY_SIDE: usize = 8;
/// Rows and columns. Against single marches at random cells: `tests/window_agrees.rs`.
const ROWS: usize = 12;
const COLUMNS: usize = 16;
/// Dwell that the window covers, s. Shorter is no cure, longer no business: common practice, no source.
const DWELL: [f64; 2] = [10.0, 150.0];

/// What one setting does to the stack.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Outcome {
    /// Fused share at the film's bottom, for each of the window's kinetics.
    pub fused: [f64; 2],
    /// Film peak, K.
    pub film_peak: f64,
    /// Cloth peak, K.
    pub cloth_peak: f64,
    /// Scorch index.
    pub scorch: f64,
    /// Dye that arrives at the film, kg/m²; 0 where the cloth has none.
    pub dye: f64,
}

/// Values over the grid, row after row from the coolest.
#[derive(Clone, Debug)]
struct Fields([Vec<f64>; 6]);

/// The window of one stack in one dryer.
#[derive(Clone, Debug)]
pub struct Window {
    /// Set temperatures of the rows, K, rising.
    pub set: Vec<f64>,
    /// Belt speeds of the columns, m/s, rising.
    pub belt: Vec<f64>,
    log_belt: Vec<f64>,
    worlds: [Fields; 3],
}

/// Which run a value is asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Run {
    /// As planned.
    Nominal,
    /// The cold corner of the drift.
    Cold,
    /// The hot corner of the drift.
    Hot,
}

/// What the window is computed for.
#[derive(Clone, Copy, Debug)]
pub struct Question<'a> {
    /// The stack.
    pub stack: &'a Stack,
    /// The dryer.
    pub dryer: &'a Dryer,
    /// Times through it.
    pub passes: u32,
    /// The two kinetics that are followed: ordinary and low-cure.
    pub kinetics: [CureKinetics; 2],
    /// Dye of the cloth.
    pub dyed: Option<&'a DyedCloth>,
    /// Set temperature that cannot be changed, K.
    pub fixed: Option<f64>,
}

impl Window {
    /// Computes the window.
    ///
    /// # Errors
    /// [`HistoryError`] where a stack or dryer lies outside the equations.
    pub fn compute(question: &Question<'_>) -> Result<Self, HistoryError> {
        let Question { dryer, fixed, .. } = *question;
        let set = match fixed {
            // A little to each side, so that drift can still be read off.
            Some(set) => spread(set - 12.0, set + 12.0, 4),
            None => spread(dryer.set_low, dryer.set_high, ROWS),
        };
        let length = dryer.heated_length();
        let slowest = (length / DWELL[1]).max(dryer.belt.slowest);
        let fastest = (length / DWELL[0]).min(dryer.belt.fastest).max(slowest * 1.05);
        let log_belt = spread(slowest.ln(), fastest.ln(), COLUMNS);
        let belt: Vec<f64> = log_belt.iter().map(|speed| speed.exp()).collect();
        let drift = &dryer.drift;
        let fields = |world: World| compute_fields(question, &set, &belt, world);
        let worlds = [fields(World::NOMINAL)?, fields(World::cold(drift))?, fields(World::hot(drift))?];
        Ok(Self { set, belt, log_belt, worlds })
    }

    fn fields(&self, run: Run) -> &Fields {
        match run {
            Run::Nominal => &self.worlds[0],
            Run::Cold => &self.worlds[1],
            Run::Hot => &self.worlds[2],
        }
    }

    /// The outcome at a setting (K, m/s), held inside the grid.
    #[must_use]
    pub fn at(&self, run: Run, set: f64, belt: f64) -> Outcome {
        let Fields(fields) = self.fields(run);
        let columns = self.belt.len();
        let (row, row_weights) = grid::cubic(&self.set, set);
        let (column, column_weights) = grid::cubic(&self.log_belt, belt.ln());
        let read = |field: &Vec<f64>| {
            let mut sum = 0.0;
            for (r, row_weight) in row_weights.iter().enumerate() {
                let from = (row + r) * columns + column;
                let cells = field.get(from..).unwrap_or_default();
                sum += row_weight
                    * cells.iter().zip(column_weights).map(|(cell, weight)| cell * weight).sum::<f64>();
            }
            sum
        };
        let [fused, fused_low, film, cloth, scorch, dye] = fields;
        Outcome {
            fused: [unlogit(read(fused)), unlogit(read(fused_low))],
            film_peak: read(film),
            cloth_peak: read(cloth),
            scorch: read(scorch).exp(),
            dye: read(dye).exp() - NO_DYE,
        }
    }

    /// The outcomes of the whole grid, row after row.
    #[must_use]
    pub fn outcomes(&self, run: Run) -> Vec<Outcome> {
        let Fields([fused, fused_low, film, cloth, scorch, dye]) = self.fields(run);
        (0..fused.len())
            .map(|cell| Outcome {
                fused: [unlogit(fused[cell]), unlogit(fused_low[cell])],
                film_peak: film[cell],
                cloth_peak: cloth[cell],
                scorch: scorch[cell].exp(),
                dye: dye[cell].exp() - NO_DYE,
            })
            .collect()
    }
}

/// Added to the dye so that a cloth without any has a logarithm, kg/m²: a thousandth of what can be seen.
const NO_DYE: f64 = 1e-9;

/// Logit of a share, held far out where it can no longer matter: a kink nearer in would ring between the cells.
fn logit(share: f64) -> f64 {
    let share = share.clamp(1e-9, 1.0 - 1e-9);
    (share / (1.0 - share)).ln()
}

fn unlogit(value: f64) -> f64 {
    1.0 / (1.0 + (-value).exp())
}

fn spread(low: f64, high: f64, count: usize) -> Vec<f64> {
    (0..count).map(|i| low + (high - low) * i as f64 / (count - 1) as f64).collect()
}

fn compute_fields(
    question: &Question<'_>,
    set: &[f64],
    belt: &[f64],
    world: World,
) -> Result<Fields, HistoryError> {
    let mut fields: [Vec<f64>; 6] = std::array::from_fn(|_| Vec::with_capacity(set.len() * belt.len()));
    for &set in set {
        for speeds in belt.chunks(SIDE_BY_SIDE) {
            let last = speeds.last().copied().unwrap_or(1.0);
            let cases: [Case; SIDE_BY_SIDE] = std::array::from_fn(|lane| Case {
                set,
                belt: speeds.get(lane).copied().unwrap_or(last),
                world,
            });
            let history = history(question.stack, question.dryer, &cases, question.passes, TOLERANCE)?;
            let [ordinary, low] = question
                .kinetics
                .map(|kinetics| fuse(&history, |sample| sample.film_bottom, &kinetics).fused);
            let dye = question.dyed.map_or(Lanes::ZERO, |cloth| cloth.arrives(&release(&history, cloth)));
            let scorched = scorch(&history, |sample| sample.film_top);
            let (film, cloth) = (history.film_peak(), history.cloth_peak());
            for lane in 0..speeds.len() {
                let values = [
                    logit(ordinary[lane]),
                    logit(low[lane]),
                    film[lane],
                    cloth[lane],
                    scorched[lane].max(1e-12).ln(),
                    (dye[lane] + NO_DYE).ln(),
                ];
                for (field, value) in fields.iter_mut().zip(values) {
                    field.push(value);
                }
            }
        }
    }
    Ok(Fields(fields))
}

/// What a set point must keep, for one white on one cloth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Demands {
    /// Which of the window's kinetics must fuse: ordinary, low-cure.
    pub must_fuse: [bool; 2],
    /// Fused share needed.
    pub fused: f64,
    /// Most scorch that passes; infinite for cloth that does not yellow.
    pub scorch: f64,
    /// Most film heat, K.
    pub film: f64,
    /// Most cloth heat, K; infinite where the cloth stands any cure.
    pub cloth: f64,
    /// Whether dye rides on the setting.
    pub bleeds: bool,
    /// How much pace counts, 0 to 1.
    pub pace: f64,
}

impl Demands {
    /// Fused share that counts: the least of the inks that must fuse.
    #[must_use]
    pub fn fused_of(&self, outcome: &Outcome) -> f64 {
        let needed = outcome.fused.iter().zip(self.must_fuse).filter(|(_, must)| *must);
        needed.map(|(fused, _)| *fused).fold(1.0, f64::min)
    }

    fn holds_cold(&self, outcome: &Outcome) -> bool {
        self.fused_of(outcome) >= self.fused
    }

    fn holds_hot(&self, outcome: &Outcome) -> bool {
        outcome.scorch <= self.scorch && outcome.film_peak <= self.film && outcome.cloth_peak <= self.cloth
    }

    /// How near the corners of the drift, and a belt stop, come to their limits.
    fn crowding(&self, cold: &Outcome, hot: &[Outcome; 2]) -> f64 {
        let most = |of: fn(&Outcome) -> f64| hot.iter().map(of).fold(f64::NEG_INFINITY, f64::max);
        let fusion = (logit(self.fused) - logit(self.fused_of(cold))).exp();
        let film = ((most(|at| at.film_peak) - self.film) / 15.0).exp();
        let cloth = ((most(|at| at.cloth_peak) - self.cloth) / 15.0).exp();
        let scorch = most(|at| at.scorch);
        let scorch = if self.scorch.is_finite() { (3.0 * (scorch / self.scorch - 1.0)).exp() } else { 0.0 };
        fusion + film + cloth + scorch
    }

    /// True if the run as planned keeps every demand.
    #[must_use]
    pub fn holds(&self, outcome: &Outcome) -> bool {
        self.holds_cold(outcome) && self.holds_hot(outcome)
    }
}

/// A setting, SI.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SetPoint {
    /// Set temperature, K.
    pub set: f64,
    /// Belt speed, m/s.
    pub belt: f64,
    /// True if the whole drift box and a belt stop hold; false where only the run as planned does.
    pub robust: bool,
}

/// The setting whose whole drift box holds: the cold corner fused, the hot corner and a belt stop unharmed; and among
/// those the one that costs least in dye, heat and time. Where no box holds, the best setting that holds as planned;
/// `None` where the window is closed.
///
/// Never the just-cured point: there the least drift leaves the film under-fused. What a setting costs is
///
/// ```text
/// mean over drift of ln(dye) (where dye rides on it) + pace ln(dwell / 30 s) + crowding at both corners
/// ```
///
/// Crowding is 1 where a corner touches its limit and falls off e-fold over a shop's own uncertainty: one unit of the
/// logit of the fused share, 15 K of film or cloth, a third of the scorch index. Weights chosen, no source.
#[must_use]
pub fn robust(window: &Window, dryer: &Dryer, demands: &Demands, fixed: Option<f64>) -> Option<SetPoint> {
    let length = dryer.heated_length();
    let sets: Vec<f64> = match fixed {
        Some(set) => vec![set],
        None => {
            let steps = ((dryer.set_high - dryer.set_low) / dryer.step.max(0.5)).floor().min(240.0) as usize;
            let skip = (steps / 50).max(1);
            (0..=steps).step_by(skip).map(|i| dryer.set_low + i as f64 * dryer.step.max(0.5)).collect()
        }
    };
    // A shop sets its belt in steps that can be read off the dial: 2 % is about 0.05 m/min.
    let (Some(&slowest), Some(&fastest)) = (window.belt.first(), window.belt.last()) else { return None };
    let speeds = ((fastest / slowest).ln() / 0.025).ceil().max(1.0) as usize;
    let mut best: Option<(bool, f64, SetPoint)> = None;
    for &set in &sets {
        for i in 0..=speeds {
            let belt = (slowest.ln() + (fastest / slowest).ln() * i as f64 / speeds as f64).exp();
            let nominal = window.at(Run::Nominal, set, belt);
            if !demands.holds(&nominal) {
                continue;
            }
            let (cold, hot) = (window.at(Run::Cold, set, belt), window.at(Run::Hot, set, belt));
            let dwell = length / belt;
            let stopped = window.at(Run::Nominal, set, length / (dwell + dryer.drift.stop));
            let robust = demands.holds_cold(&cold) && demands.holds_hot(&hot) && demands.holds_hot(&stopped);
            let dye = |outcome: &Outcome| (outcome.dye.max(0.0) + NO_DYE).ln();
            let mut cost = demands.pace * (dwell / 30.0).ln() + demands.crowding(&cold, &[hot, stopped]);
            if demands.bleeds {
                cost += (dye(&nominal) + dye(&cold) + dye(&hot) + dye(&stopped)) / 4.0;
            }
            let point = SetPoint { set, belt, robust };
            let better = match &best {
                None => true,
                Some((had, least, _)) => (robust && !had) || (robust == *had && cost < *least),
            };
            if better {
                best = Some((robust, cost, point));
            }
        }
    }
    best.map(|(_, _, point)| point)
}

/// Room from a setting to the nearest wall on one axis: how far `step` can be taken before a demand breaks.
#[must_use]
pub fn room(holds: impl Fn(f64) -> bool, most: f64) -> Option<f64> {
    if holds(most) {
        return None;
    }
    let (mut inside, mut outside) = (0.0, most);
    for _ in 0..24 {
        let middle = 0.5 * (inside + outside);
        if holds(middle) { inside = middle } else { outside = middle }
    }
    Some(inside)
}

impl Demands {
    /// The demands of a white on a cloth.
    #[must_use]
    pub fn of(rules: &Rules, cloth: &super::Cloth, must_fuse: [bool; 2], pace: f64) -> Self {
        let shrink = cloth.shrinks_above.map(|limit| limit + rules.shrink_allowed / rules.shrink_slope);
        let soften = cloth.softens.map(|(_, limit)| limit);
        Self {
            must_fuse,
            fused: rules.fused,
            scorch: if cloth.scorches { rules.scorch } else { f64::INFINITY },
            film: rules.film_heat,
            cloth: shrink.into_iter().chain(soften).fold(f64::INFINITY, f64::min),
            bleeds: cloth.dyed.is_some(),
            pace,
        }
    }
}
