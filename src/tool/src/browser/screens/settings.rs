//! The settings.

use super::{DeskPage, Element, parts};

/// The settings.
#[derive(Clone, Copy, Debug)]
pub struct SettingsPage<'a>(pub(super) &'a DeskPage);

impl<'a> SettingsPage<'a> {
    elements! {
        /// All of the screen.
        all => SETTINGS;
        /// When the records were last saved as a file.
        backup => BACKUP;
        /// The head of the themes.
        theme_head => THEMES;
    }

    /// A language to choose.
    #[must_use]
    pub fn language(self, name: &str) -> Element<'a> {
        self.0.element(parts::LANGUAGE_CHOICE).named(name)
    }

    /// A system of units to choose, by how its temperature begins.
    #[must_use]
    pub fn units(self, temperature: &str) -> Element<'a> {
        self.0.element(parts::UNITS_CHOICE).named(temperature)
    }

    /// A theme to choose.
    #[must_use]
    pub fn theme(self, name: &str) -> Element<'a> {
        self.0.element(parts::THEME_CHOICE).named(name)
    }

    /// A sign of money to choose.
    #[must_use]
    pub fn money(self, sign: &str) -> Element<'a> {
        self.0.element(parts::MONEY_CHOICE).named(sign)
    }

    /// A button by its name.
    #[must_use]
    pub fn button(self, name: &str) -> Element<'a> {
        self.0.element(parts::SETTINGS_BUTTON).named(name)
    }
}
