use crate::textile::Fabric;

/// A plastisol film, SI.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Film {
    /// Thickness of everything printed, blocker and white together, m.
    pub thickness: f64,
    /// Density, kg/m³.
    pub density: f64,
}

impl Film {
    /// Density of a white ink, kg/m³. 1200 to 1450, from memory (PVC 1400, ester 970, TiO2 4100).
    pub const DENSITY: f64 = 1300.0;
    /// Specific heat at 25 °C, J/(kg K). 1300 to 1900; PVC 1300 to 2100 in a textile-finishing table, rest from memory.
    pub const HEAT_CAPACITY: f64 = 1450.0;
    /// Its rise with temperature, J/(kg K²). From memory.
    pub const HEAT_CAPACITY_SLOPE: f64 = 2.0;
    /// Conductivity, W/(m K). 0.14 to 0.22, from memory.
    pub const CONDUCTIVITY: f64 = 0.18;
    /// Emissivity of film and cloth in the mid infrared. 0.82 to 0.90: NIJ study of the mid-infrared emissivity of
    /// fabrics (cotton 0.88, polyester 0.88); film from memory.
    pub const EMISSIVITY: f64 = 0.90;
    /// Contact between film and cloth face, W/(m² K). Assumed: the film wets the yarns; 1000 to 5000 moves nothing.
    pub const CONTACT: f64 = 2000.0;
}

/// What lies on the belt: a film on the front of a garment whose back lies under it.
#[derive(Clone, Debug, PartialEq)]
pub struct Stack {
    /// The film.
    pub film: Film,
    /// The cloth that is printed.
    pub front: Fabric,
    /// The back of the garment under it; absent for a flat piece.
    pub back: Option<Fabric>,
    /// Heat transfer from front to back, W/(m² K).
    pub gap: f64,
    /// Humidity of the room the cloth lay in, 0 to 1.
    pub humidity: f64,
    /// Liquid water beyond the regain, kg per kg of dry cloth.
    pub added_water: f64,
    /// Temperature of everything as it enters, K.
    pub enters: f64,
}

impl Stack {
    /// Front to back through a little air, W/(m² K). Assumed: 1 mm of air is 30, touching cloth 60.
    pub const GAP: f64 = 40.0;
    /// Room temperature, K.
    pub const ROOM: f64 = 298.15;

    /// A garment of `cloth`, front and back alike, in a room of this humidity (0 to 1).
    #[must_use]
    pub fn garment(film: Film, cloth: &Fabric, humidity: f64) -> Self {
        Self {
            film,
            front: cloth.clone(),
            back: Some(cloth.clone()),
            gap: Self::GAP,
            humidity,
            added_water: 0.0,
            enters: Self::ROOM,
        }
    }
}
