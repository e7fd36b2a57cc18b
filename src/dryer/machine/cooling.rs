use crate::quantity::units::kelvin;
use serde::{Deserialize, Serialize};

/// How a piece cools after the dryer. Its film goes on fusing and its dye goes on moving until it is cool.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Cooling {
    /// On the open end of the belt.
    #[default]
    Open,
    /// Under a fan at the end of the belt.
    Fan,
    /// Caught at the end of the belt and stacked hot.
    Stacked,
}

/// A stage of cooling with constant surroundings, SI.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CoolingStage {
    /// Air temperature, K.
    pub air: f64,
    /// Heat transfer on top, W/(m² K).
    pub h_top: f64,
    /// Heat transfer below, W/(m² K).
    pub h_bottom: f64,
    /// Whether it radiates to the room: inside a stack it faces other pieces as warm as itself.
    pub radiates: bool,
    /// Duration, s.
    pub seconds: f64,
}

/// On the open end of the belt. Heat transfer 10 to 30 W/(m² K): common practice, no source; after 60 s the
/// film is below 100 °C, where fusion and dye transfer have stopped.
const OPEN: CoolingStage =
    CoolingStage { air: kelvin(25.0), h_top: 20.0, h_bottom: 10.0, radiates: true, seconds: 60.0 };
/// Under a fan, 2 to 4 m/s: 30 to 60 W/(m² K), from memory.
const FAN: CoolingStage = CoolingStage { h_top: 45.0, h_bottom: 15.0, ..OPEN };
/// From the belt to the stack. 5 to 20 s: common practice, no source.
const CAUGHT: CoolingStage = CoolingStage { seconds: 10.0, ..OPEN };
/// In the middle of a warm stack: cloth on cloth conducts heat away slowly, 1 to 4 W/(m² K); assumed. After a
/// quarter of an hour a piece is below 80 °C.
const IN_STACK: CoolingStage =
    CoolingStage { h_top: 2.0, h_bottom: 2.0, radiates: false, seconds: 900.0, ..OPEN };

impl Cooling {
    /// The stages, in order.
    #[must_use]
    pub const fn stages(self) -> &'static [CoolingStage] {
        match self {
            Self::Open => &[OPEN],
            Self::Fan => &[FAN],
            Self::Stacked => &[CAUGHT, IN_STACK],
        }
    }
}
