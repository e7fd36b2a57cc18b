//! Whether a film holds the fibres of a cloth down.
//!
//! ```text
//! needed = ½ nap                     film that holds hairs of this height down
//! held   = film · body               body: how well the ink holds, the cotton white = 1
//! stands = nap − held/½              what the next stroke still meets
//! body   = body of the class · e^(−0.03 reducer %)
//! nap under a smoothing screen = 0.4 nap
//! ```
//!
//! A smoothing screen has no image: after the first flash its squeegee presses the fibres into the warm
//! film, so that the next stroke meets a smoother face. Every number here is common practice, no source;
//! there is no standard and no published measurement. The result is visible on the first piece.

/// Film that holds the nap down, as a share of its height (0.3 to 0.8). Common practice, no source.
const FILM_NEEDED: f64 = 0.5;
/// Height of nap that a smoothing screen leaves, as a share (0.25 to 0.6). Common practice, no source.
const NAP_LEFT: f64 = 0.4;
/// Loss of body per percent of reducer, as an exponent (0.01 to 0.05). Common practice, no source.
const LOSS_PER_PERCENT: f64 = 0.03;

/// Film that holds down a nap of this height (m, 0 and up), m.
#[must_use]
pub fn film_needed(nap: f64) -> f64 {
    FILM_NEEDED * nap
}

/// Height of a nap (m) that stays upright under a film (m) of a white of this body, m.
#[must_use]
pub fn standing(nap: f64, film: f64, body: f64) -> f64 {
    (nap - film * body / FILM_NEEDED).max(0.0)
}

/// Height of a nap (m) after a smoothing screen, m.
#[must_use]
pub fn smoothed(nap: f64) -> f64 {
    NAP_LEFT * nap
}

/// Body of a white with this much reducer in it (%).
#[must_use]
pub fn reduced_body(body: f64, reducer_percent: f64) -> f64 {
    body * (-LOSS_PER_PERCENT * reducer_percent).exp()
}
