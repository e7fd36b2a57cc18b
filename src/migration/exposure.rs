//! What the print's heat events do to the dye in the film, cut into a few steps.

use super::{AdjacentCloth, DyeProfile, DyeStep, DyedCloth, FilmDiffusion, Release};
use crate::cure::Cure;
use crate::dryer::{History, HistorySample, for_each_substep};
use crate::ink::CureKinetics;
use crate::numerics::Lanes;
use crate::quantity::Share;

/// Steps that a ride through the dryer is cut into: one for what came before, five of equal weight, one for what comes
/// after. Ten instead of five moved the dye that a film can take by a thousandth, measured when they
/// were chosen.
pub const EXPOSURE_STEPS: usize = 7;

/// A stretch of heat.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ExposureStep {
    /// `integral of D dt` in the film, m².
    pub path: f64,
    /// Share of all the dye that heat drives into the film, 0 to 1.
    pub share: f64,
    /// Vapour that the film's surface could give to the air at full activity, kg/m².
    pub lost: f64,
}

impl ExposureStep {
    const NONE: Self = Self { path: 0.0, share: 0.0, lost: 0.0 };

    fn weight(&self) -> f64 {
        self.path + self.share
    }
}

/// All heat of a print's life.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeatExposure {
    /// In the order of time. Their shares make 1.
    pub steps: [ExposureStep; EXPOSURE_STEPS],
    /// Fused share of the film when all is over.
    pub fused: Share,
}

/// A ride with what it does not show.
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
        let mut release = Release::NONE;
        let before = self.arrived(self.before);
        let mut parts: Vec<ExposureStep> = Vec::with_capacity(history.samples.len());
        let mut arrived = before;
        for pair in history.samples.windows(2) {
            let [from, to] = pair else { continue };
            let mut part = ExposureStep::NONE;
            for_each_substep(from, to, bottom, |seconds, temperature| {
                cure.advance(seconds, temperature, self.kinetics);
                let diffuses =
                    self.diffusion.at(temperature)[0] * FilmDiffusion::unfused_factor(Share(cure.fused[0]));
                part.path += diffuses * seconds[0];
                part.lost += self.dyed.dye.vapour_flux(temperature)[0] * seconds[0];
            });
            for_each_substep(from, to, face, |seconds, temperature| {
                release.heat(self.dyed, seconds, temperature);
            });
            let now = self.arrived(self.before.and(release));
            part.share = now - arrived;
            arrived = now;
            parts.push(part);
        }
        let fused = Share(cure.fused[0]);
        let mut steps = [ExposureStep::NONE; EXPOSURE_STEPS];
        steps[0].share = before;
        let (mut all, last) = (self.before.and(release), EXPOSURE_STEPS - 1);
        for &[temperature, seconds] in self.after {
            let (seconds, temperature) = (Lanes::<1>::splat(seconds), Lanes::<1>::splat(temperature));
            all.heat(self.dyed, seconds, temperature);
            steps[last].path +=
                (self.diffusion.at(temperature) * seconds)[0] * FilmDiffusion::unfused_factor(fused);
            steps[last].lost += (self.dyed.dye.vapour_flux(temperature) * seconds)[0];
        }
        let total = self.arrived(all).max(1e-30);
        steps[last].share = total - arrived;
        let path: f64 = parts.iter().map(|part| part.path).sum();
        // Parts of equal weight: as much of the way and as much of the dye in each.
        let scaled = |part: &ExposureStep| part.path / path.max(1e-30) + part.share / total;
        let whole: f64 = parts.iter().map(scaled).sum();
        let mut gone = 0.0;
        for part in &parts {
            let at = 1 + ((gone / whole.max(1e-30) * (last - 1) as f64) as usize).min(last - 2);
            steps[at].path += part.path;
            steps[at].share += part.share;
            steps[at].lost += part.lost;
            gone += scaled(part);
        }
        for step in &mut steps {
            step.share /= total;
        }
        HeatExposure { steps, fused }
    }

    fn arrived(&self, release: Release<1>) -> f64 {
        self.dyed.arrives(&release)[0]
    }
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
        for step in self.steps.iter().filter(|step| step.weight() > 0.0) {
            profile.step(&DyeStep {
                path: film * step.path,
                arrives: arrives * step.share,
                own: Lanes::ZERO,
                facing: Lanes::splat(step.lost),
            });
        }
    }
}
