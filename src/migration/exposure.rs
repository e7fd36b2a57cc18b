//! What the print's heat events do to the dye in the film, cut into a few steps.
//!
//! **Decision:** the film's loss to the air counts by the share of their dye that the upper yarns still hold.
//! **Because:** the yarns below replace what the upper ones have given, and that is not computed. Without it the equations
//! bake a print clean at 220 °C, which does not happen on a press (common practice, no source). Counted so, dye in
//! the film never falls with more heat.
//! **Measured:** red polyester at 216 °C for 66 s keeps 15 instead of 0.24 kg/m³ in its top layer, refused either way;
//! in 52 orders no chance at a set point that is recommended moves by more than 0.02 points (2026-11-30).
//! **Reconsider when:** the yarns below are computed too, or a print that was overheated is measured.

use super::{AdjacentCloth, DyeProfile, DyeStep, DyedCloth, FilmDiffusion, Release};
use crate::cure::Cure;
use crate::dryer::{History, HistorySample, for_each_substep};
use crate::ink::CureKinetics;
use crate::numerics::Lanes;
use crate::quantity::Share;

/// Most of the film's diffusion path, and most of its loss to the air, that one step carries, as a share of the whole. A
/// step with two thirds of both took more dye out of a hot film than the film held; tenths agree with a method of lines
/// (`src/plan/bleed/ageing/tests/peer.rs`).
pub const MOST_IN_A_STEP: f64 = 0.1;
/// Weight of the dye that arrives beside those two: a step of the dryer or after it carries a fifth of it at most. Chosen.
const ARRIVAL_WEIGHT: f64 = 0.5;

/// A stretch of heat.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ExposureStep {
    /// `integral of D dt` in the film, m².
    pub path: f64,
    /// Share of all the dye that heat drives into the film, 0 to 1.
    pub share: f64,
    /// Vapour that the film's surface could give to the air at full activity, kg/m², counted by the share of their dye
    /// that the upper yarns still hold.
    pub lost: f64,
}

impl ExposureStep {
    const NONE: Self = Self { path: 0.0, share: 0.0, lost: 0.0 };

    fn scaled(self, by: f64) -> Self {
        Self { path: self.path * by, share: self.share * by, lost: self.lost * by }
    }

    fn and(self, other: Self) -> Self {
        Self { path: self.path + other.path, share: self.share + other.share, lost: self.lost + other.lost }
    }
}

/// All heat of a print's life.
#[derive(Clone, Debug, PartialEq)]
pub struct HeatExposure {
    /// In the order of time. Their shares make 1, and none carries more than [`MOST_IN_A_STEP`].
    pub steps: Vec<ExposureStep>,
    /// Fused share of the film when all is over.
    pub fused: Share,
}

/// What is needed beside a temperature history: the cloth, the ink, and the heat before and after it.
#[derive(Clone, Copy, Debug)]
pub struct ExposureInputs<'a> {
    /// The cloth.
    pub dyed: &'a DyedCloth,
    /// How dye spreads in the white when fused.
    pub diffusion: FilmDiffusion,
    /// How the white fuses.
    pub kinetics: &'a CureKinetics,
    /// Dye released before the dryer: flashes.
    pub before: Release<1>,
    /// Heat after it: temperature (K) and seconds of each event.
    pub after: &'a [[f64; 2]],
}

impl ExposureInputs<'_> {
    /// A history, cut into steps.
    #[must_use]
    pub fn exposure(&self, history: &History<1>) -> HeatExposure {
        let mut cure = Cure::NONE;
        let mut release = self.before;
        let mut arrived = self.arrived(release);
        let before = ExposureStep { share: arrived, ..ExposureStep::NONE };
        let mut parts: Vec<ExposureStep> = Vec::with_capacity(3 * history.samples.len() + self.after.len());
        for pair in history.samples.windows(2) {
            let [from, to] = pair else { continue };
            let first = parts.len();
            for_each_substep(from, to, bottom, |seconds, temperature| {
                cure.advance(seconds, temperature, self.kinetics);
                parts.push(self.spreads(seconds[0], temperature, Share(cure.fused[0])));
            });
            // The same parts at the cloth's face.
            let mut here = parts.iter_mut().skip(first);
            for_each_substep(from, to, face, |seconds, temperature| {
                let had = self.dyed.left(&release);
                release.heat(self.dyed, seconds, temperature);
                let now = self.arrived(release);
                if let Some(part) = here.next() {
                    part.share = now - arrived;
                    // Simpson's rule; what is left falls as an exponential.
                    let left = self.dyed.left(&release);
                    part.lost *= ((had + left + (had * left).sqrt() * 4.0) * (1.0 / 6.0))[0];
                }
                arrived = now;
            });
        }
        let fused = Share(cure.fused[0]);
        for &[temperature, seconds] in self.after {
            let temperature = Lanes::<1>::splat(temperature);
            release.press(self.dyed, Lanes::splat(seconds), temperature);
            let now = self.arrived(release);
            // What presses lies on the print: nothing escapes.
            let spreads = self.spreads(seconds, temperature, fused);
            parts.push(ExposureStep { share: now - arrived, lost: 0.0, ..spreads });
            arrived = now;
        }
        let mut steps = cut(&parts);
        if before.share > 0.0 {
            steps.insert(0, before);
        }
        for step in &mut steps {
            step.share /= arrived.max(1e-30);
        }
        HeatExposure { steps, fused }
    }

    /// What `seconds` at `temperature` (K) do in and over a film that has fused to this share; no dye arrives yet.
    fn spreads(&self, seconds: f64, temperature: Lanes<1>, fused: Share) -> ExposureStep {
        ExposureStep {
            path: self.diffusion.at(temperature)[0] * FilmDiffusion::unfused_factor(fused) * seconds,
            share: 0.0,
            lost: self.dyed.dye.vapour_flux(temperature)[0] * seconds,
        }
    }

    fn arrived(&self, release: Release<1>) -> f64 {
        self.dyed.arrives(&release)[0]
    }
}

/// Puts parts together and cuts them into as few steps of equal weight as keep to [`MOST_IN_A_STEP`]. Rates are constant
/// within a part, so it may be cut anywhere.
fn cut(parts: &[ExposureStep]) -> Vec<ExposureStep> {
    let whole = parts.iter().copied().fold(ExposureStep::NONE, ExposureStep::and);
    let of = |part: f64, whole: f64| if whole > 0.0 { part / whole } else { 0.0 };
    let weight = |part: &ExposureStep| {
        let moves = of(part.path, whole.path).max(of(part.lost, whole.lost));
        moves.max(ARRIVAL_WEIGHT * of(part.share, whole.share))
    };
    let sum: f64 = parts.iter().map(weight).sum();
    let count = (sum / MOST_IN_A_STEP).ceil().max(1.0);
    let each = sum / count;
    let mut steps = Vec::with_capacity(count as usize);
    let (mut step, mut room) = (ExposureStep::NONE, each);
    for part in parts {
        let (mut rest, mut weighs) = (*part, weight(part));
        // The last step takes what rounding leaves over.
        while weighs > room && steps.len() + 1 < count as usize {
            let share = room / weighs;
            steps.push(step.and(rest.scaled(share)));
            rest = rest.scaled(1.0 - share);
            weighs -= room;
            (step, room) = (ExposureStep::NONE, each);
        }
        step = step.and(rest);
        room -= weighs;
    }
    steps.push(step);
    steps
}

fn bottom(sample: &HistorySample<1>) -> [Lanes<1>; 2] {
    sample.film_bottom
}

fn face(sample: &HistorySample<1>) -> [Lanes<1>; 2] {
    sample.cloth_face
}

impl HeatExposure {
    /// Drives `arrives` kg/m² of dye into the film over all of its heat; `film` is how much faster than planned each
    /// lane's film lets it spread. Its surface gives dye to the air meanwhile.
    pub fn drive<const L: usize>(&self, profile: &mut DyeProfile<L>, arrives: Lanes<L>, film: Lanes<L>) {
        profile.facing = AdjacentCloth::AIR;
        for step in &self.steps {
            profile.step(&DyeStep {
                path: film * step.path,
                arrives: arrives * step.share,
                own: Lanes::ZERO,
                facing: Lanes::splat(step.lost),
            });
        }
    }
}
