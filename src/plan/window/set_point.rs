//! A setting of the dryer.

use crate::plan::report::DialSetting;
use crate::quantity::units::kelvin;

/// A setting, SI.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SetPoint {
    /// Set temperature, K.
    pub set: f64,
    /// Belt speed, m/s.
    pub belt: f64,
    /// True if the whole drift box and a belt stop hold; false if only the run as planned does.
    pub robust: bool,
}

impl DialSetting {
    /// The set point in SI. `robust` is false, because whether the drift box holds there is not known yet.
    #[must_use]
    pub fn set_point(self) -> SetPoint {
        SetPoint { set: kelvin(self.set_c), belt: self.belt_m_per_min / 60.0, robust: false }
    }
}
