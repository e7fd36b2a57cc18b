//! The shop's own print room: five questions, then its shelf and its orders.

use super::{DeskPage, Element, parts};

/// The shop's own print room.
#[derive(Clone, Copy, Debug)]
pub struct PrintRoomPage<'a>(pub(super) &'a DeskPage);

impl<'a> PrintRoomPage<'a> {
    elements! {
        /// That the demo print room is in use.
        demo_note => DEMO_NOTE;
        /// What is missing before the shop can be opened.
        missing => MISSING;
        /// The whites on the shelf.
        stock => STOCK;
        /// The meshes to choose from.
        meshes => MESHES_CHOICE;
        /// The dryer's heated length.
        heated_length => HEATED_LENGTH;
        /// Opens the shop.
        open => OPEN_OWN_SHOP;
    }

    /// A white or blocker to choose.
    #[must_use]
    pub fn white(self, name: &str) -> Element<'a> {
        // "Chalk, ordinary" and not "Chalk Cool".
        self.0.element(parts::WHITES_CHOICE).named(&format!("{name},"))
    }

    /// A dryer to choose.
    #[must_use]
    pub fn dryer(self, name: &str) -> Element<'a> {
        self.0.element(parts::DRYERS_CHOICE).named(name)
    }

    /// A sign of money to choose.
    #[must_use]
    pub fn money(self, sign: &str) -> Element<'a> {
        self.0.element(parts::MONEY_CHOICE).named(sign)
    }
}
