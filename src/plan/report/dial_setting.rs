//! What is set on a dryer, as its dials show it.

use super::pick::Setting;
use serde::{Deserialize, Serialize};

/// A set temperature and a belt speed, in the units of the dials.
///
/// Both are numbers of the same kind in code, and neither can stand in for the other:
///
/// ```compile_fail
/// use whitehold::plan::DialSetting;
///
/// // Which of the two is the belt? A pair is no setting.
/// let setting: DialSetting = (160.0, 2.4);
/// ```
///
/// ```
/// use whitehold::plan::DialSetting;
///
/// let setting = DialSetting { set_c: 160.0, belt_m_per_min: 2.4 };
/// assert!((setting.set_point().set - 433.15).abs() < 1e-9, "kelvins inside");
/// assert!((setting.set_point().belt - 0.04).abs() < 1e-12, "metres a second inside");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DialSetting {
    /// Set temperature, °C.
    pub set_c: f64,
    /// Belt speed, m/min.
    pub belt_m_per_min: f64,
}

impl Setting {
    /// What is dialled.
    #[must_use]
    pub fn dialled(&self) -> DialSetting {
        DialSetting { set_c: self.set_c, belt_m_per_min: self.belt_m_per_min }
    }
}
