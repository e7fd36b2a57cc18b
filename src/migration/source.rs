use super::AdjacentCloth;
use crate::dryer::History;
use crate::numerics::{Lanes, arrhenius};
use crate::quantity::GAS_CONSTANT;

/// A disperse dye, SI.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dye {
    /// `ln(P / Pa) = a - b / (T + c)`, T in K.
    pub vapour: [f64; 3],
    /// Molar mass, kg/mol.
    pub molar_mass: f64,
    /// Diffusivity in dry polyester at 130 °C, m²/s.
    pub diffusivity_130c: f64,
    /// Its activation energy, J/mol.
    pub diffusion_energy: f64,
    /// Heat that the cloth was set at, K, where the fibre is taken to be closed below it; absent = no such gate.
    pub gate: Option<f64>,
}

impl Dye {
    /// What the gate of a heat-set fibre adds to the activation energy below the setting heat, J/mol: apparent energies
    /// of 200 to 300 kJ/mol there; assumed. Nobody knows whether a given cloth has one, so it is another world and not
    /// the plain one.
    pub const GATE_ENERGY: f64 = 86e3;
    /// Heat that polyester knits are usually set at, K: 170 to 190 °C, common practice, no source.
    pub const USUAL_SETTING: f64 = 453.15;

    /// Vapour pressure of the pure dye, Pa, at `temperature` in K.
    #[inline]
    #[must_use]
    pub fn vapour_pressure<const L: usize>(&self, temperature: Lanes<L>) -> Lanes<L> {
        let [a, b, c] = self.vapour;
        (-(temperature + c).recip() * b + a).exp()
    }

    /// Vapour that crosses the gap between yarn and film from saturated polyester, kg/(m² s), at `temperature` in K:
    /// `D_air/gap P M / (R T)`.
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

/// A cloth as the dye in it sees the print, SI.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DyedCloth {
    /// The dye of the recipe that travels first.
    pub dye: Dye,
    /// Share of dyed polyester in the cloth, 0 to 1.
    pub share: f64,
    /// Dye on that polyester, kg/kg.
    pub on_fibre: f64,
    /// Dry mass of the cloth, kg/m².
    pub areal_mass: f64,
    /// Loose dye on the yarns' surface, kg per m² of cloth.
    pub surface: f64,
}

impl DyedCloth {
    /// Dye on fibre at which polyester is saturated, kg/kg. 0.05 to 0.08, from memory.
    pub const SATURATION: f64 = 0.06;
    /// Density of polyester, kg/m³. Morton & Hearle, from memory.
    pub const FIBRE_DENSITY: f64 = 1390.0;
    /// Air between yarn and film, m. 50 to 500 µm, assumed.
    pub const GAP: f64 = 150e-6;
    /// Diffusivity of dye vapour in air at 298 K, m²/s, rising with T^1.75. From memory for a molecule of this size.
    pub const VAPOUR_DIFFUSIVITY: f64 = 4.5e-6;
    /// Area of fibre in touch with the film per area of print. 0.1 to 2, assumed.
    pub const CONTACT: f64 = 0.5;
    /// Share of the cloth's mass in the yarn layer that the film sees. 0.2 to 0.5, assumed.
    pub const UPPER_YARNS: f64 = 0.35;
    /// Time in which loose surface dye leaves at 120 °C, s, and its activation energy, J/mol: hardly held by heat.
    /// A hypothesis from dyeing practice (poor clearing, finishes), not measured.
    pub const SURFACE_TIME: f64 = 10.0;
    /// See [`SURFACE_TIME`](Self::SURFACE_TIME).
    pub const SURFACE_ENERGY: f64 = 60e3;

    /// Activity of the dye on the fibre: dye over what saturates it, 0 to 1.
    #[must_use]
    pub fn activity(&self) -> f64 {
        (self.on_fibre / Self::SATURATION).min(1.0)
    }

    /// Dye that the yarns which the film sees carry before any heat, kg/m².
    #[must_use]
    pub fn upper_yarns(&self) -> f64 {
        (self.on_fibre * self.share * self.areal_mass * Self::UPPER_YARNS).max(1e-15)
    }

    /// The cloth as a film lies against it on a shelf, after `release` has run its upper yarns down.
    #[must_use]
    pub fn adjacent<const L: usize>(&self, release: &Release<1>) -> AdjacentCloth<L> {
        let left = self.left(release)[0];
        AdjacentCloth {
            activity: Lanes::splat(self.activity() * left),
            carries: Lanes::splat(self.upper_yarns() * left),
        }
    }

    /// Share of the upper yarns' dye that heat has left in them.
    fn left<const L: usize>(&self, release: &Release<L>) -> Lanes<L> {
        let [vapour, contact] = self.undrained(release);
        (-(vapour + contact) * (1.0 / self.upper_yarns())).exp()
    }

    /// What vapour and contact would bring from yarns that never run down, kg/m².
    fn undrained<const L: usize>(&self, release: &Release<L>) -> [Lanes<L>; 2] {
        let contact = (release.theta * (1.0 / std::f64::consts::PI)).sqrt()
            * (2.0 * Self::CONTACT * self.share * self.on_fibre * Self::FIBRE_DENSITY);
        [release.vapour, contact]
    }

    /// The dye that arrives, by the way that it came: vapour, contact, surface, kg/m².
    #[must_use]
    pub fn ways(&self, release: &Release<1>) -> [f64; 3] {
        let [vapour, contact] = self.undrained(release).map(|way| way[0]);
        let drained = (1.0 - self.left(release)[0]) * self.upper_yarns() / (vapour + contact).max(1e-30);
        [vapour * drained, contact * drained, (1.0 - (-release.surface[0]).exp()) * self.surface]
    }

    /// Dye that the three ways bring to the film together, kg/m².
    #[must_use]
    pub fn arrives<const L: usize>(&self, release: &Release<L>) -> Lanes<L> {
        let held = (-self.left(release) + 1.0) * self.upper_yarns();
        let loose = (-(-release.surface).exp() + 1.0) * self.surface;
        held + loose
    }
}

/// What heat has done to the dye so far. Adds up over every heat event of the print's life.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Release<const L: usize> {
    /// Dye that crossed the gap as vapour, kg/m².
    pub vapour: Lanes<L>,
    /// `integral of D_fibre dt`, m².
    pub theta: Lanes<L>,
    /// `integral of k_s dt`.
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

    /// After `other` as well.
    #[must_use]
    pub fn and(self, other: Self) -> Self {
        Self {
            vapour: self.vapour + other.vapour,
            theta: self.theta + other.theta,
            surface: self.surface + other.surface,
        }
    }

    /// Adds `seconds` at `temperature` (K).
    pub fn heat(&mut self, cloth: &DyedCloth, seconds: Lanes<L>, temperature: Lanes<L>) {
        self.vapour += cloth.dye.vapour_flux(temperature) * seconds * (cloth.activity() * cloth.share);
        self.theta += cloth.dye.diffusivity(temperature) * seconds;
        self.surface +=
            arrhenius(temperature, DyedCloth::SURFACE_TIME, 393.15, DyedCloth::SURFACE_ENERGY) * seconds;
    }
}

/// What a history does to the dye of the cloth's face.
#[must_use]
pub fn release<const L: usize>(history: &History<L>, cloth: &DyedCloth) -> Release<L> {
    let mut release = Release::NONE;
    history.for_each_substep(
        |sample| sample.cloth_face,
        |seconds, temperature| release.heat(cloth, seconds, temperature),
    );
    release
}
