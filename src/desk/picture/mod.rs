//! The geometry of the pictures: scales, ticks, regions and path strings, in the units of their view boxes.
//!
//! In: parts of an answer, units of the page.
//! Out: places and paths; the views only put them into markup.
//! Must not know: the page's state, markup, a browser.
//!
//! The pictures:
//!
//! | file | picture |
//! |---|---|
//! | `margin_bar` | a margin: its limit a wall, the failing side hatched, a bar from low to high, a diamond for likely |
//! | `map` | the cure window: failing regions hatched and named, the clear strip works, a cross for the set point |
//! | `history` | temperatures and fusion over the run |
//! | `ageing` | the colour difference over the days after, as a band |
//! | `section` | cuts through the film with the dye in it |
//! | `swatches` | the split circle: the white fresh at the left, predicted at the right |
//! | `trade_off` | recipes between two scales, better to the left and down |

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
            Topic::Scorch | Topic::Shrink | Topic::Softening | Topic::FilmHeat | Topic::LaterHeat => {
                Self::Heat
            }
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
