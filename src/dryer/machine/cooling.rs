use crate::quantity::units::kelvin;
use serde::{Deserialize, Serialize};

/// What happens to a piece after the heat. It goes on curing, and its dye goes on moving, until it is cool.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Cooling {
    /// On the open belt end.
    #[default]
    Open,
    /// Under a fan at the belt end.
    Fan,
    /// Caught and stacked hot.
    Stacked,
}

/// One way of standing in the room, SI.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CoolingStage {
    /// Air around it, K.
    pub air: f64,
    /// Heat transfer on top, W/(m² K).
    pub h_top: f64,
    /// Heat transfer below, W/(m² K).
    pub h_bottom: f64,
    /// Whether it sees the room: what lies in a stack sees its like.
    pub radiates: bool,
    /// How long it is followed, s.
    pub seconds: f64,
}

/// On the open belt end. Heat transfer 10 to 30 W/(m² K): common practice, no source; 60 s is long enough for
/// the film to fall under 100 °C, where fusion and dye have stopped.
const OPEN: CoolingStage =
    CoolingStage { air: kelvin(25.0), h_top: 20.0, h_bottom: 10.0, radiates: true, seconds: 60.0 };
/// Under a fan, 2 to 4 m/s: 30 to 60 W/(m² K), from memory.
const FAN: CoolingStage = CoolingStage { h_top: 45.0, h_bottom: 15.0, ..OPEN };
/// On the way from the belt to the stack. 5 to 20 s: common practice, no source.
const CAUGHT: CoolingStage = CoolingStage { seconds: 10.0, ..OPEN };
/// In the middle of a warm stack: cloth on cloth leads heat away slowly, 1 to 4 W/(m² K); assumed. A quarter of an hour
/// is long enough to fall under 80 °C.
const IN_STACK: CoolingStage =
    CoolingStage { h_top: 2.0, h_bottom: 2.0, radiates: false, seconds: 900.0, ..OPEN };

impl Cooling {
    /// The rests, one after another.
    #[must_use]
    pub const fn stages(self) -> &'static [CoolingStage] {
        match self {
            Self::Open => &[OPEN],
            Self::Fan => &[FAN],
            Self::Stacked => &[CAUGHT, IN_STACK],
        }
    }
}
