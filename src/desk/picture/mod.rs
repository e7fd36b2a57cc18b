//! The geometry of the pictures: scales, ticks, regions and path strings, in the units of their view boxes.
//!
//! Pure and tested without a browser; the views only place what is worked out here. The grammar: *rule* (limit
//! wall, failing side hatched, bar from low to high, diamond for likely), *map* (failing regions hatched and
//! named, the clear strip works, a dashed box for how far the dryer wanders, a cross for the set point),
//! *history* (curves over time), *ageing* (a band over the days after), *section* (a cut through the film), *split
//! circle* (fresh left, predicted right), *trade* (marks of verdicts between two scales, better to the left and down).

pub mod ageing;

pub mod contour;
pub mod history;
pub mod map;
mod map_labels;
pub mod margin_bar;
pub mod scale;
pub mod section;
pub mod swatches;
pub mod trade_off;

use crate::plan::Topic;

/// What a topic is drawn as: its colour and its hatch always mean the same.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ink {
    /// Fusion: blue, falling lines.
    Fuse,
    /// Dye: plum, rising lines.
    Dye,
    /// Heat: rust, a grid.
    Heat,
    /// The cloth and the film itself: slate, plain.
    Cloth,
}

impl Ink {
    /// The ink of a topic.
    #[must_use]
    pub fn of(topic: Topic) -> Self {
        match topic {
            Topic::Fusion => Self::Fuse,
            Topic::Bleed | Topic::Rim | Topic::Ghosting => Self::Dye,
            Topic::Scorch | Topic::Shrink | Topic::Softening | Topic::FilmHeat => Self::Heat,
            Topic::Opacity
            | Topic::Matting
            | Topic::Hand
            | Topic::Gloss
            | Topic::Stretch
            | Topic::Adhesion
            | Topic::Wash => Self::Cloth,
        }
    }

    /// The word its classes and patterns end in.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Fuse => "fuse",
            Self::Dye => "dye",
            Self::Heat => "heat",
            Self::Cloth => "cloth",
        }
    }
}
