//! Dye released by a hot cloth: by vapour, by contact, and from the surface of its yarns.

use super::AdjacentCloth;
use crate::dryer::History;
use crate::numerics::{Lanes, arrhenius};
use crate::quantity::GAS_CONSTANT;

/// A disperse dye, in SI units.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dye {
    /// `ln(P / Pa) = a - b / (T + c)`, T in K.
    pub vapour: [f64; 3],
    /// Molar mass, kg/mol.
    pub molar_mass: f64,
    /// Diffusivity in dry polyester at 130 °C, m²/s.
    pub diffusivity_130c: f64,
    /// Activation energy of that diffusivity, J/mol.
    pub diffusion_energy: f64,
    /// Heat-setting temperature of the cloth, K, if the fibre is assumed to release less dye below it; `None` = no such
    /// gate.
    pub gate: Option<f64>,
}

impl Dye {
    /// Increase of the activation energy below the heat-setting temperature, J/mol, to the apparent energies of 200 to
    /// 300 kJ/mol there. Assumed, no source. It is not known whether a given cloth has such a gate, so the forecast
    /// shows it as an alternative case only.
    pub const GATE_ENERGY: f64 = 86e3;
    /// Usual heat-setting temperature of polyester knits, K: 170 to 190 °C, common practice, no source.
    pub const USUAL_SETTING: f64 = 453.15;

    /// Vapour pressure of the pure dye, Pa, at `temperature` in K.
    #[inline]
    #[must_use]
    pub fn vapour_pressure<const L: usize>(&self, temperature: Lanes<L>) -> Lanes<L> {
        let [a, b, c] = self.vapour;
        (-(temperature + c).recip() * b + a).exp()
    }

    /// Dye vapour that crosses the gap between yarn and film from saturated polyester, kg/(m² s), at `temperature` in
    /// K: `D_air/gap P M / (R T)`.
    #[inline]
    #[must_use]
    pub fn vapour_flux<const L: usize>(&self, temperature: Lanes<L>) -> Lanes<L> {
        let reduced = temperature * (1.0 / 298.0);
        let in_air = reduced * reduced / reduced.sqrt().sqrt() * DyedCloth::VAPOUR_DIFFUSIVITY;
        let saturated = self.vapour_pressure(temperature) / temperature * (self.molar_mass / GAS_CONSTANT);
        in_air * saturated * (1.0 / DyedCloth::GAP)
    }

    /// Diffusivity in polyester, m²/s, at `temperature` in K.
    #[inline]
    #[must_use]
    pub fn diffusivity<const L: usize>(&self, temperature: Lanes<L>) -> Lanes<L> {
        let cold = temperature.recip();
        let mut barrier = (cold + -1.0 / 403.15) * (self.diffusion_energy / GAS_CONSTANT);
        if let Some(set) = self.gate {
            barrier += (cold + -1.0 / set).max(Lanes::ZERO) * (Self::GATE_ENERGY / GAS_CONSTANT);
        }
        (-barrier).exp() * self.diffusivity_130c
    }
}

/// A dyed cloth, in SI units.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DyedCloth {
    /// The most volatile dye of its recipe.
    pub dye: Dye,
    /// Share of dyed polyester in the cloth, 0 to 1.
    pub share: f64,
    /// Dye on that polyester, kg/kg.
    pub on_fibre: f64,
    /// Dry mass of the cloth, kg/m².
    pub areal_mass: f64,
    /// Loose dye on the surface of the yarns, kg per m² of cloth.
    pub surface: f64,
}

impl DyedCloth {
    /// Dye on fibre at which polyester is saturated at 130 °C, kg/kg. 0.035 to 0.08: Disperse Red 15 at 100 °C 0.0348
    /// (a textbook's isotherm), the rest from memory.
    pub const SATURATION: f64 = 0.05;
    /// Heat of solution by which that rises with temperature, J/mol. 10 to 40 kJ/mol, from memory.
    pub const SOLUTION_HEAT: f64 = 20e3;
    /// Density of polyester, kg/m³. Morton & Hearle, from memory.
    pub const FIBRE_DENSITY: f64 = 1390.0;
    /// Air between yarn and film, m. 50 to 500 µm, assumed.
    pub const GAP: f64 = 150e-6;
    /// Diffusivity of dye vapour in air at 298 K, m²/s, rising with T^1.75. From memory for a molecule of this size.
    pub const VAPOUR_DIFFUSIVITY: f64 = 4.5e-6;
    /// Area of fibre in contact with the film per area of print. 0.1 to 2, assumed.
    pub const CONTACT: f64 = 0.2;
    /// How many times that area is in contact under a platen. 1 to 5, assumed.
    pub const PRESSED: f64 = 3.0;
    /// Share of the cloth's mass in the upper yarns, from which dye reaches the film. 0.2 to 0.5, assumed.
    pub const UPPER_YARNS: f64 = 0.35;
    /// Time constant with which loose surface dye leaves at 120 °C, s. A hypothesis from dyeing practice (poor clearing,
    /// finishes), not measured.
    pub const SURFACE_TIME: f64 = 10.0;
    /// Activation energy of that rate, J/mol: low, because loose dye is hardly held. The same hypothesis.
    pub const SURFACE_ENERGY: f64 = 60e3;

    /// Activity of the dye on the fibre at `temperature` (K): dye over dye at saturation, 0 to 1.
    #[inline]
    #[must_use]
    pub fn activity<const L: usize>(&self, temperature: Lanes<L>) -> Lanes<L> {
        let solves = (temperature.recip() - 1.0 / 403.15) * (Self::SOLUTION_HEAT / GAS_CONSTANT);
        (solves.exp() * (self.on_fibre / Self::SATURATION)).min(Lanes::splat(1.0))
    }

    /// Dye in the upper yarns before any heat, kg/m².
    #[must_use]
    pub fn upper_yarns(&self) -> f64 {
        (self.on_fibre * self.share * self.areal_mass * Self::UPPER_YARNS).max(1e-15)
    }

    /// The cloth beside a film on a shelf, after `release` has taken dye from its upper yarns.
    #[must_use]
    pub fn adjacent<const L: usize>(&self, release: &Release<1>) -> AdjacentCloth<L> {
        let left = self.left(release)[0];
        AdjacentCloth {
            activity: self.activity(Lanes::splat(298.15)) * left,
            carries: Lanes::splat(self.upper_yarns() * left),
        }
    }

    /// Share of the upper yarns' dye that heat has left in them.
    pub(super) fn left<const L: usize>(&self, release: &Release<L>) -> Lanes<L> {
        let [vapour, contact] = self.undrained(release);
        (-(vapour + contact) * (1.0 / self.upper_yarns())).exp()
    }

    /// Dye that vapour and contact would bring if the upper yarns lost none by it, kg/m².
    fn undrained<const L: usize>(&self, release: &Release<L>) -> [Lanes<L>; 2] {
        let contact = (release.theta * (1.0 / std::f64::consts::PI)).sqrt()
            * (2.0 * Self::CONTACT * self.share * self.on_fibre * Self::FIBRE_DENSITY);
        [release.vapour, contact]
    }

    /// Dye that arrives by vapour, by contact and from the surface, kg/m².
    #[must_use]
    pub fn ways(&self, release: &Release<1>) -> [f64; 3] {
        let [vapour, contact] = self.undrained(release).map(|way| way[0]);
        let drained = (1.0 - self.left(release)[0]) * self.upper_yarns() / (vapour + contact).max(1e-30);
        [vapour * drained, contact * drained, (1.0 - (-release.surface[0]).exp()) * self.surface]
    }

    /// Dye that arrives by all three, kg/m².
    #[must_use]
    pub fn arrives<const L: usize>(&self, release: &Release<L>) -> Lanes<L> {
        let [freed, loose] = self.sources(release);
        freed + loose
    }

    /// Dye that arrives from within the fibre, by vapour and contact, and what lay loose on the yarns, kg/m².
    #[must_use]
    pub fn sources<const L: usize>(&self, release: &Release<L>) -> [Lanes<L>; 2] {
        let freed = (-self.left(release) + 1.0) * self.upper_yarns();
        let loose = (-(-release.surface).exp() + 1.0) * self.surface;
        [freed, loose]
    }
}

/// Release of dye by heat so far. Releases add up over all heat that a print meets.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Release<const L: usize> {
    /// Dye that crossed the gap as vapour, kg/m².
    pub vapour: Lanes<L>,
    /// `integral of D_fibre dt`, m².
    pub theta: Lanes<L>,
    /// `integral of k_s dt`, without unit.
    pub surface: Lanes<L>,
}

impl<const L: usize> Release<L> {
    /// Before any heat.
    pub const NONE: Self = Self { vapour: Lanes::ZERO, theta: Lanes::ZERO, surface: Lanes::ZERO };

    /// One lane of it.
    #[must_use]
    pub fn lane(&self, lane: usize) -> Release<1> {
        let of = |lanes: &Lanes<L>| Lanes::splat(lanes[lane]);
        Release { vapour: of(&self.vapour), theta: of(&self.theta), surface: of(&self.surface) }
    }

    /// This release and `other` together.
    #[must_use]
    pub fn and(self, other: Self) -> Self {
        Self {
            vapour: self.vapour + other.vapour,
            theta: self.theta + other.theta,
            surface: self.surface + other.surface,
        }
    }

    /// Adds `seconds` at `temperature` (K) under a platen, which presses yarn and film together.
    pub fn press(&mut self, cloth: &DyedCloth, seconds: Lanes<L>, temperature: Lanes<L>) {
        let theta = self.theta;
        self.heat(cloth, seconds, temperature);
        // What comes by contact goes with its area and with the root of theta.
        self.theta = theta + (self.theta - theta) * (DyedCloth::PRESSED * DyedCloth::PRESSED);
    }

    /// Adds `seconds` at `temperature` (K).
    pub fn heat(&mut self, cloth: &DyedCloth, seconds: Lanes<L>, temperature: Lanes<L>) {
        self.vapour +=
            cloth.dye.vapour_flux(temperature) * cloth.activity(temperature) * seconds * cloth.share;
        self.theta += cloth.dye.diffusivity(temperature) * seconds;
        self.surface +=
            arrhenius(temperature, DyedCloth::SURFACE_TIME, 393.15, DyedCloth::SURFACE_ENERGY) * seconds;
    }
}

/// The release by a temperature history, at the face of the cloth.
#[must_use]
pub fn release<const L: usize>(history: &History<L>, cloth: &DyedCloth) -> Release<L> {
    let mut release = Release::NONE;
    history.for_each_substep(
        |sample| sample.cloth_face,
        |seconds, temperature| release.heat(cloth, seconds, temperature),
    );
    release
}
