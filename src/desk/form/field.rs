use crate::diagnosis;
use crate::dryer;
use crate::plan::bounds;
use crate::quantity::Bound;
use crate::wording::Quantity;
use serde::{Deserialize, Serialize};

/// A field that is typed into.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Field {
    /// Name of the order.
    Title,
    /// What the garment's label says.
    Label,
    /// Colour by name, where the label does not give it.
    Colour,
    /// Weight of the cloth, where the label does not give it.
    Weight,
    /// Dye lot.
    Lot,
    /// Liquid water on the cloth.
    AddedWater,
    /// Pieces to print.
    Pieces,
    /// Spare pieces.
    Spares,
    /// Worth of one printed piece.
    ValueEach,
    /// Area of the print.
    Area,
    /// Share of it that is printed.
    Coverage,
    /// Stretch the print must take.
    Stretch,
    /// Reducer in the white.
    Reducer,
    /// Width by which the white extends beyond its blocker.
    Overhang,
    /// Colours printed over the white.
    ColoursOnTop,
    /// Day it must leave.
    Due,
    /// Days from printing until the white is judged.
    LookedAt,
    /// Age of the wearer, if a child.
    Age,
    /// Humidity of the room.
    Humidity,
    /// Set temperature of a dryer that cannot be changed.
    #[serde(rename = "fixed-heat")]
    FixedSetTemperature,
    /// Times through the dryer.
    Passes,
    /// Set temperature of the set point on the window.
    #[serde(rename = "air")]
    SetTemperature,
    /// Belt of the set point on the window.
    Belt,
    /// Set temperature of a run that went wrong.
    #[serde(rename = "ran-air")]
    RanSetTemperature,
    /// Its belt.
    RanBelt,
    /// Its film of white.
    RanFilm,
    /// Heated length of the shop's own dryer, m.
    HeatedLength,
    /// The hottest that it can be set to.
    HottestSet,
}

impl Field {
    /// Every field, in the order of the form.
    pub const ALL: [Self; 28] = [
        Self::Title,
        Self::Label,
        Self::Colour,
        Self::Weight,
        Self::Lot,
        Self::AddedWater,
        Self::Pieces,
        Self::Spares,
        Self::ValueEach,
        Self::Area,
        Self::Coverage,
        Self::Stretch,
        Self::Reducer,
        Self::Overhang,
        Self::ColoursOnTop,
        Self::Due,
        Self::LookedAt,
        Self::Age,
        Self::Humidity,
        Self::FixedSetTemperature,
        Self::Passes,
        Self::SetTemperature,
        Self::Belt,
        Self::RanSetTemperature,
        Self::RanBelt,
        Self::RanFilm,
        Self::HeatedLength,
        Self::HottestSet,
    ];

    /// Id of its control on the page: the last part of its path in an order. Paths, and so ids, are part of the API.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Title => "title",
            Self::Label => "label",
            Self::Colour => "colour",
            Self::Weight => "areal_weight_gsm",
            Self::Lot => "lot",
            Self::AddedWater => "added_water_percent",
            Self::Pieces => "pieces",
            Self::Spares => "spares",
            Self::ValueEach => "value_each",
            Self::Area => "area_cm2",
            Self::Coverage => "coverage_percent",
            Self::Stretch => "stretch_needed_percent",
            Self::Reducer => "reducer_percent",
            Self::Overhang => "overhang_mm",
            Self::ColoursOnTop => "colours_on_top",
            Self::Due => "due",
            Self::LookedAt => "looked_at_after_days",
            Self::Age => "wearer_age_years",
            Self::Humidity => "humidity_percent",
            Self::FixedSetTemperature => "dryer_fixed",
            Self::Passes => "passes",
            Self::SetTemperature => "air",
            Self::Belt => "belt",
            Self::RanSetTemperature => "ran_air",
            Self::RanBelt => "ran_belt",
            Self::RanFilm => "ran_film",
            Self::HeatedLength => "heated_length",
            Self::HottestSet => "hottest_set",
        }
    }

    /// The field that a path in an order ends in: `garments[0].label` is the label.
    #[must_use]
    pub fn of_path(path: &str) -> Option<Self> {
        path.rsplit('.').find_map(|step| {
            let step = step.split('[').next().unwrap_or(step);
            Self::ALL.into_iter().find(|field| field.id() == step)
        })
    }

    /// True for a field of one garment.
    #[must_use]
    pub fn of_garment(self) -> bool {
        matches!(
            self,
            Self::Label
                | Self::Colour
                | Self::Weight
                | Self::Lot
                | Self::AddedWater
                | Self::Pieces
                | Self::Spares
                | Self::ValueEach
        )
    }

    /// What its number measures; `None` for words.
    #[must_use]
    pub fn quantity(self) -> Option<Quantity> {
        Some(match self {
            Self::Title | Self::Label | Self::Colour | Self::Lot | Self::Due => return None,
            Self::Weight => Quantity::Weight,
            Self::AddedWater | Self::Coverage | Self::Stretch | Self::Reducer | Self::Humidity => {
                Quantity::Percent
            }
            Self::Pieces | Self::Spares | Self::Passes | Self::ColoursOnTop | Self::Age => Quantity::Plain,
            Self::HeatedLength => Quantity::Length,
            Self::ValueEach => Quantity::Money,
            Self::Area => Quantity::Area,
            Self::Overhang => Quantity::Width,
            Self::LookedAt => Quantity::Days,
            Self::FixedSetTemperature | Self::SetTemperature | Self::RanSetTemperature | Self::HottestSet => {
                Quantity::Temperature
            }
            Self::Belt | Self::RanBelt => Quantity::Belt,
            Self::RanFilm => Quantity::Film,
        })
    }

    /// Its accepted range, in the unit of the order; `None` for words, and for the set point, whose range is the
    /// window's.
    #[must_use]
    pub fn bound(self) -> Option<Bound> {
        Some(match self {
            Self::Weight => bounds::AREAL_WEIGHT,
            Self::AddedWater => bounds::ADDED_WATER,
            Self::Pieces => bounds::PIECES,
            Self::Spares => bounds::SPARES,
            Self::ValueEach => bounds::VALUE,
            Self::Area => bounds::AREA,
            Self::Coverage => bounds::COVERAGE,
            Self::Stretch => bounds::STRETCH_NEEDED,
            Self::Reducer => bounds::REDUCER,
            Self::Overhang => bounds::OVERHANG,
            Self::ColoursOnTop => bounds::COLOURS_ON_TOP,
            Self::LookedAt => bounds::LOOKED_AT,
            Self::Age => bounds::AGE,
            Self::Humidity => bounds::HUMIDITY,
            Self::FixedSetTemperature => bounds::DRYER_FIXED,
            Self::Passes => bounds::PASSES,
            Self::RanSetTemperature => diagnosis::bounds::SET,
            Self::RanBelt => diagnosis::bounds::BELT,
            Self::RanFilm => diagnosis::bounds::FILM,
            Self::HeatedLength => dryer::bounds::HEATED_LENGTH,
            Self::HottestSet => dryer::bounds::HOTTEST_SET,
            Self::Title
            | Self::Label
            | Self::Colour
            | Self::Lot
            | Self::Due
            | Self::SetTemperature
            | Self::Belt => {
                return None;
            }
        })
    }

    /// True where only whole numbers are accepted.
    #[must_use]
    pub fn whole(self) -> bool {
        matches!(self, Self::Pieces | Self::Spares | Self::Passes | Self::ColoursOnTop)
    }

    /// True where it may be empty.
    #[must_use]
    pub fn optional(self) -> bool {
        matches!(
            self,
            Self::Title
                | Self::Colour
                | Self::Weight
                | Self::Lot
                | Self::Due
                | Self::Age
                | Self::FixedSetTemperature
                | Self::SetTemperature
                | Self::Belt
                | Self::RanSetTemperature
                | Self::RanBelt
                | Self::RanFilm
                | Self::HeatedLength
                | Self::HottestSet
        )
    }

    /// Its path in an order, for the garment of this number.
    #[must_use]
    pub fn path(self, garment: usize) -> String {
        let id = self.id();
        match self {
            Self::Title => id.into(),
            field if field.of_garment() => format!("garments[{garment}].{id}"),
            Self::ColoursOnTop => format!("print.{id}.count"),
            Self::Area | Self::Coverage | Self::Stretch | Self::Reducer | Self::Overhang => {
                format!("print.{id}")
            }
            Self::Due | Self::LookedAt | Self::Age => format!("use.{id}"),
            Self::Humidity | Self::FixedSetTemperature | Self::Passes => format!("shop.{id}"),
            _ => id.into(),
        }
    }

    /// True for what the print room asks about the shop's dryer: it is part of no order.
    #[must_use]
    pub fn of_shop(self) -> bool {
        matches!(self, Self::HeatedLength | Self::HottestSet)
    }
}
