//! The screens of the page, and their names in its address.

use serde::{Deserialize, Serialize};

/// A screen of the page.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Screen {
    /// The answer and the order.
    #[default]
    Job,
    /// The cure window.
    Window,
    /// How the white ages.
    Forecast,
    /// The print room: whose it is, what is on its shelf, what is to be printed.
    PrintRoom,
    /// The shop's records.
    Library,
    /// What went wrong, and why.
    Diagnosis,
    /// The job sheet, as it is printed.
    JobSheet,
    /// Language, units, money and what else holds for every order.
    Settings,
}

impl Screen {
    /// Every screen, in the order of the index.
    pub const ALL: [Self; 8] = [
        Self::Job,
        Self::Window,
        Self::Forecast,
        Self::PrintRoom,
        Self::Library,
        Self::Diagnosis,
        Self::JobSheet,
        Self::Settings,
    ];

    /// The word behind `#` in the address. It stays as it is when a screen gets another name, so that bookmarks hold.
    #[must_use]
    pub fn hash(self) -> &'static str {
        match self {
            Self::Job => "job",
            Self::Window => "window",
            Self::Forecast => "forecast",
            Self::Library => "library",
            Self::Diagnosis => "wrong",
            Self::JobSheet => "sheet",
            Self::Settings => "settings",
            Self::PrintRoom => "shop",
        }
    }

    /// The screen of an address; `None` for an unknown one.
    #[must_use]
    pub fn of_hash(hash: &str) -> Option<Self> {
        let hash = hash.trim_start_matches('#');
        Self::ALL.into_iter().find(|screen| screen.hash() == hash)
    }
}
