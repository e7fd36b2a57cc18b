//! Gelation, fusion and scorch along a temperature history.
//!
//! In: a [`History`] and the kinetics of an ink. Out: gelled and fused shares ([`fuse`], [`trace`]), when a
//! film has gelled ([`gelled_at`]), the scorch index of the cloth ([`scorch()`], [`scorch_index`]), and kinetics estimated from
//! tested prints ([`estimate_kinetics`]). Must not know: dye, nor which fused share is enough.
//!
//! A plastisol gels when its resin absorbs the plasticiser, and fuses when the crystallites of the resin melt
//! in it. Gelation depends on time at temperature; fusion is limited by temperature as well, so that no dwell
//! time makes up for a dryer that is too cool:
//!
//! ```text
//! dg/dt   = k_g(T) (1 - g)                        k_g = 1/t_g exp[-E_g/R (1/T - 1/T_g)]
//! dphi/dt = g k_f(T) max(phi_eq(T) - phi, 0)      phi_eq = 1 / (1 + exp(-(T - T_50) / s))
//! ```
//!
//! with `g` the gelled and `phi` the fused share. No published constants for garment plastisol were found;
//! those of `data/kinetics.json` are calibrated to common practice. `tests/heat/kinetics.rs` checks the forms
//! against the Arrhenius integral, Kissinger's peak and isothermal solutions.

mod calibrate;
mod scorch;

pub use calibrate::{KineticsEstimate, PrintTestOutcome, estimate_kinetics};
pub use scorch::{Scorch, scorch, scorch_index, scorch_temperature};

use crate::dryer::{History, Place, for_each_substep};
use crate::ink::CureKinetics;
use crate::numerics::{Lanes, arrhenius};
use crate::quantity::Share;

/// Gelation and fusion of a film.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cure<const L: usize> {
    /// Gelled share, 0 to 1.
    pub gelled: Lanes<L>,
    /// Fused share, 0 to 1.
    pub fused: Lanes<L>,
}

impl<const L: usize> Cure<L> {
    /// Wet ink.
    pub const NONE: Self = Self { gelled: Lanes::ZERO, fused: Lanes::ZERO };

    /// Adds `seconds` at `temperature` (K) by the exponential midpoint rule, which is exact at constant
    /// temperature.
    pub fn advance(&mut self, seconds: Lanes<L>, temperature: Lanes<L>, kinetics: &CureKinetics) {
        let gel = arrhenius(temperature, kinetics.gel_time, kinetics.gel_reference, kinetics.gel_energy);
        let halfway = (-gel * seconds * 0.5).exp();
        let gelled = -(-self.gelled + 1.0) * halfway + 1.0;
        self.gelled = -(-self.gelled + 1.0) * halfway * halfway + 1.0;
        let rate =
            arrhenius(temperature, kinetics.fusion_time, kinetics.fusion_reference, kinetics.fusion_energy);
        let gap = (equilibrium_fusion(temperature, kinetics) - self.fused).max(Lanes::ZERO);
        self.fused += gap * (-(-rate * gelled * seconds).exp() + 1.0);
    }
}

/// Fused share in equilibrium at `temperature` (K): `phi_eq`, 0 to 1.
#[inline]
#[must_use]
pub fn equilibrium_fusion<const L: usize>(temperature: Lanes<L>, kinetics: &CureKinetics) -> Lanes<L> {
    (((-temperature + kinetics.half_fused) * (1.0 / kinetics.width)).exp() + 1.0).recip()
}

/// Gelation and fusion at `place` at the end of a history.
///
/// ```
/// use whitehold::cure::fuse;
/// use whitehold::dryer::{Case, DriftCase, Dryer, Film, Stack, TOLERANCE, history};
/// use whitehold::library::{cure_kinetics, starter};
/// use whitehold::quantity::{Celsius, Share};
/// use whitehold::textile::{Construction, Fibre};
///
/// let library = starter().expect("the starter library");
/// let dryer = Dryer::from_record(library.dryer("long-kiln").expect("a dryer")).expect("a sound record");
/// let tee = library.fabric(&[(Fibre::Cotton, 1.0)].into(), Construction::Jersey, 180.0).expect("a jersey");
/// let stack = Stack::garment(Film { thickness: 100e-6, density: Film::DENSITY }, &tee, Share(0.65));
/// // Two lanes: 30 s and 60 s in the dryer.
/// let cases = [30.0, 60.0].map(|seconds| Case {
///     set: Celsius(165.0).kelvin(),
///     belt: dryer.heated_length() / seconds,
///     drift: DriftCase::NOMINAL,
/// });
/// let history = history(&stack, &dryer, &cases, 1, TOLERANCE)?;
/// let kinetics = cure_kinetics(&library.kinetics[0]);
/// let fused = fuse(&history, |sample| sample.film_bottom, &kinetics).fused;
/// assert!(fused[0] < fused[1] && fused[1] > 0.9);
/// # Ok::<(), whitehold::dryer::HistoryError>(())
/// ```
#[must_use]
pub fn fuse<const L: usize>(history: &History<L>, place: Place<L>, kinetics: &CureKinetics) -> Cure<L> {
    let mut cure = Cure::NONE;
    history.for_each_substep(place, |seconds, temperature| cure.advance(seconds, temperature, kinetics));
    cure
}

/// Evaluations of the fusion in [`spare`]: after six the secant is within 0.05 K wherever it matters.
const LOOKS: usize = 6;
/// Most that [`spare`] looks for on either side, K.
const MOST_SPARE: f64 = 80.0;

/// How much colder the film could be at every moment of a history and still fuse by `needed`, K; negative
/// where it would have to be hotter. Held to ±80 K.
///
/// The root of `logit(phi) - logit(needed)` over the shift, by secants that never leave the bracket.
#[must_use]
pub fn spare<const L: usize>(
    history: &History<L>,
    place: Place<L>,
    kinetics: &CureKinetics,
    needed: Share,
) -> Lanes<L> {
    let logit = |share: f64| {
        let share = share.clamp(1e-9, 1.0 - 1e-9);
        (share / (1.0 - share)).ln()
    };
    let over = |colder: Lanes<L>| {
        let mut cure = Cure::NONE;
        history.for_each_substep(place, |seconds, temperature| {
            cure.advance(seconds, temperature - colder, kinetics);
        });
        Lanes::from_fn(|lane| logit(cure.fused[lane]) - logit(needed.0))
    };
    let (mut fuses, mut fails) = (Lanes::<L>::splat(-MOST_SPARE), Lanes::<L>::splat(MOST_SPARE));
    let (mut last, mut at) = (Lanes::<L>::ZERO, Lanes::<L>::ZERO);
    let mut found_last = Lanes::<L>::ZERO;
    for look in 0..LOOKS {
        let found = over(at);
        let mut next = at;
        for lane in 0..L {
            if found[lane] >= 0.0 {
                fuses[lane] = at[lane];
            } else {
                fails[lane] = at[lane];
            }
            // In equilibrium a kelvin moves the logit by one over the width: the first slope.
            let (run, rise) = (at[lane] - last[lane], found_last[lane] - found[lane]);
            let slope = if look > 0 && run * rise > 0.0 { rise / run } else { 1.0 / kinetics.width };
            let secant = at[lane] + found[lane] / slope;
            // Its ends belong to the bracket: a secant that has arrived stays where it is.
            let inside = secant >= fuses[lane] && secant <= fails[lane];
            next[lane] = if inside { secant } else { 0.5 * (fuses[lane] + fails[lane]) };
        }
        (last, found_last, at) = (at, found, next);
    }
    at
}

/// Gelation and fusion at `place` at each sample of a history.
#[must_use]
pub fn trace<const L: usize>(history: &History<L>, place: Place<L>, kinetics: &CureKinetics) -> Vec<Cure<L>> {
    let mut cure = Cure::NONE;
    let mut trace = Vec::with_capacity(history.samples.len());
    trace.push(cure);
    for pair in history.samples.windows(2) {
        if let [from, to] = pair {
            for_each_substep(from, to, place, |seconds, temperature| {
                cure.advance(seconds, temperature, kinetics);
            });
            trace.push(cure);
        }
    }
    trace
}

/// Time (s) at which the gelled share at `place` passes `share` (0 to 1); `None` if it never does.
///
/// Within a part of a time step the rate is constant, so that what is not gelled falls as an exponential: the
/// moment at which it reaches `1 - share` lies `ln[(1-g0)/(1-share)] / ln[(1-g0)/(1-g1)]` into the part that
/// begins with `g0` and ends with `g1`. Time steps are seconds long; the end of one would be up to a quarter
/// of a flash too late.
#[must_use]
pub fn gelled_at(
    history: &History<1>,
    place: Place<1>,
    kinetics: &CureKinetics,
    share: Share,
) -> Option<f64> {
    let mut cure = Cure::NONE;
    let (mut passed, mut found) = (0.0, None);
    history.for_each_substep(place, |seconds, temperature| {
        let before = 1.0 - cure.gelled[0];
        cure.advance(seconds, temperature, kinetics);
        let after = 1.0 - cure.gelled[0];
        if found.is_none() && after <= 1.0 - share.0 {
            let part = (before / (1.0 - share.0)).ln() / (before / after).ln();
            found = Some(passed + seconds[0] * part.clamp(0.0, 1.0));
        }
        passed += seconds[0];
    });
    found
}
