//! A setting of the dryer.

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
