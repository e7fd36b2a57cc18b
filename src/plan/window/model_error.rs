//! How far the model itself may be off.

/// The model's own error at a dwell of one second, K s: about 10 K at 20 s and 3 K at 70 s. In a short dwell
/// the structure of the cloth and the place of its water, which no label tells, decide how hot the film gets;
/// in a long one everything nears the temperature of the dryer. 100 to 300 K s: from a solver that resolves
/// both, run beside this one on fleece; the form is assumed.
const MODEL_ERROR: f64 = 200.0;

/// Standard deviation of the film's temperature that is the model's own, after `dwell` seconds in the heat, K.
#[must_use]
pub fn model_error(dwell: f64) -> f64 {
    MODEL_ERROR / dwell.max(1.0)
}
