use crate::quantity::Share;
use crate::textile::Fabric;

/// A plastisol film, SI.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Film {
    /// Thickness, m; 0 is no film.
    pub thickness: f64,
    /// Density, kg/m³.
    pub density: f64,
}

impl Film {
    /// Density of a white ink, kg/m³. 1200 to 1450, from memory (PVC 1400, ester 970, TiO2 4100).
    pub const DENSITY: f64 = 1300.0;
    /// Specific heat at 25 °C, J/(kg K). 1300 to 1900; PVC 1300 to 2100 in a textile-finishing table, rest
    /// from memory.
    pub const HEAT_CAPACITY: f64 = 1450.0;
    /// Rise of the specific heat with temperature, J/(kg K²). From memory.
    pub const HEAT_CAPACITY_SLOPE: f64 = 2.0;
    /// Conductivity, W/(m K). 0.14 to 0.22, from memory.
    pub const CONDUCTIVITY: f64 = 0.18;
    /// Emissivity of film and cloth in the mid infrared. 0.82 to 0.90: NIJ study of the mid-infrared
    /// emissivity of fabrics (cotton 0.88, polyester 0.88); film from memory.
    pub const EMISSIVITY: f64 = 0.90;
    /// Thermal contact between film and cloth, W/(m² K). Assumed: the film wets the yarns; 1000 to 5000 give
    /// the same result.
    pub const CLOTH_CONTACT: f64 = 2000.0;
    /// Thermal contact between two films, W/(m² K). Assumed: one is printed on the other while wet.
    pub const FILM_CONTACT: f64 = 50_000.0;
}

/// Absorption of near-infrared radiation, which unlike that of a panel depends on the colour. Shares of the
/// incident radiation, 0 to 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NearInfrared {
    /// Share that a white film absorbs. 0.15 to 0.45, assumed: titanium dioxide reflects most of it.
    pub film: f64,
    /// Share that the film transmits to the cloth. 0.05 to 0.3, assumed.
    pub through: f64,
    /// Share that the cloth absorbs of what reaches it. 0.10 to 0.96 for knits (Bauer, Gresser & Mark, J.
    /// Textile Sci. Fashion Technol. 2021).
    pub cloth: f64,
}

impl NearInfrared {
    /// A white film on a cloth of this lightness (CIE L*, 0 to 100): a straight line between the darkest and
    /// the lightest knit measured; assumed. A black dyed without carbon may absorb far less of such a lamp
    /// than it does of light.
    #[must_use]
    pub fn on_cloth(lightness: f64) -> Self {
        Self { cloth: 0.96 - 0.86 * (lightness / 100.0).clamp(0.0, 1.0), ..Self::UNKNOWN }
    }

    /// A white film on a cloth of unknown colour.
    pub const UNKNOWN: Self = Self { film: 0.30, through: 0.15, cloth: 0.50 };
}

/// A board of cardboard in a garment, right under the printed cloth. It lets little vapour through: were it
/// sealed, the heat that drying takes would be missing, and wet cloth would cure.
///
/// Density, conductivity and heat capacity: Ashby, Materials and the Environment, "Paper and cardboard", which
/// gives the ranges; the values are their middles.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Board {
    /// Thickness, m.
    pub thickness: f64,
}

impl Board {
    /// The board that shops put into garments, 2 mm. 1 to 3 mm: common practice, no source.
    pub const USUAL: Self = Self { thickness: 2e-3 };
    /// Density, kg/m³. 480 to 860.
    pub const DENSITY: f64 = 670.0;
    /// Conductivity, W/(m K). 0.06 to 0.17.
    pub const CONDUCTIVITY: f64 = 0.11;
    /// Specific heat, J/(kg K). 1340 to 1400.
    pub const HEAT_CAPACITY: f64 = 1370.0;
    /// Resistance to vapour, as a multiple of that of still air as thick as the board. 5 to 50, assumed: between
    /// open cloth (2.5) and coated board.
    pub const VAPOUR_RESISTANCE: f64 = 15.0;
}

/// What lies on the belt: a film on the front of a garment, whose back or a board lies under it.
#[derive(Clone, Debug, PartialEq)]
pub struct Stack {
    /// The white film on top.
    pub film: Film,
    /// The blocker film under it.
    pub blocker: Option<Film>,
    /// The printed cloth.
    pub front: Fabric,
    /// The back of the garment under it; `None` for a flat piece.
    pub back: Option<Fabric>,
    /// A board under it, in the place of the back: a back under the board would add a tenth to the board's heat
    /// capacity and is left out.
    pub board: Option<Board>,
    /// Heat transfer from the front to back or board, W/(m² K).
    pub gap_conductance: f64,
    /// Relative humidity of the room that the cloth lay in.
    pub humidity: Share,
    /// Water beyond the regain, kg per kg of dry cloth.
    pub added_water: f64,
    /// Temperature of the whole stack at the entry, K.
    pub entry_temperature: f64,
    /// Absorption of near-infrared radiation.
    pub near_infrared: NearInfrared,
}

impl Stack {
    /// Heat transfer from front to back through a little air, W/(m² K). Assumed: 1 mm of air gives 30,
    /// touching cloth 60.
    pub const GAP_CONDUCTANCE: f64 = 40.0;
    /// Room temperature, K.
    pub const ROOM: f64 = 298.15;

    /// A garment of `cloth`, front and back alike, in a room of this relative humidity.
    #[must_use]
    pub fn garment(film: Film, cloth: &Fabric, humidity: Share) -> Self {
        Self {
            film,
            blocker: None,
            front: cloth.clone(),
            back: Some(cloth.clone()),
            board: None,
            gap_conductance: Self::GAP_CONDUCTANCE,
            humidity,
            added_water: 0.0,
            entry_temperature: Self::ROOM,
            near_infrared: NearInfrared::UNKNOWN,
        }
    }

    /// The same garment beside the print. Without a film it heats faster and dries upwards as well, so it
    /// meets the limits of the cloth first.
    #[must_use]
    pub fn bare(&self) -> Self {
        Self { film: Film { thickness: 0.0, ..self.film }, blocker: None, ..self.clone() }
    }

    /// True if nothing is printed.
    #[must_use]
    pub fn is_bare(&self) -> bool {
        self.printed() < Self::NO_FILM
    }

    /// Thickness below which a film counts as none, m: no screen prints it, and its cells would have no heat
    /// capacity.
    pub const NO_FILM: f64 = 1e-7;

    /// Thickness of film and blocker together, m.
    #[must_use]
    pub fn printed(&self) -> f64 {
        self.film.thickness + self.blocker.map_or(0.0, |blocker| blocker.thickness)
    }
}
