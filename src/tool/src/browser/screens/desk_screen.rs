//! The screens of the desk, with their addresses, links and landmarks.

use super::parts::{self, Part};

/// A screen of the desk.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DeskScreen {
    /// The order and its answer.
    Job,
    /// The cure window.
    Window,
    /// How the white ages.
    Forecast,
    /// The shop's own print room.
    PrintRoom,
    /// The shop's records.
    Library,
    /// What went wrong with a print.
    Diagnosis,
    /// The sheet that is printed for the press.
    JobSheet,
    /// The settings.
    Settings,
}

impl DeskScreen {
    /// Every screen, the job first.
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

    /// Its name in the page's address, behind `#`.
    #[must_use]
    pub fn address(self) -> &'static str {
        match self {
            Self::Job => "job",
            Self::Window => "window",
            Self::Forecast => "forecast",
            Self::PrintRoom => "shop",
            Self::Library => "library",
            Self::Diagnosis => "wrong",
            Self::JobSheet => "sheet",
            Self::Settings => "settings",
        }
    }

    /// The link that leads to it.
    pub(super) fn link(self) -> Part {
        match self {
            Self::Job => parts::TO_JOB,
            Self::Window => parts::TO_WINDOW,
            Self::Forecast => parts::TO_FORECAST,
            Self::PrintRoom => parts::TO_PRINT_ROOM,
            Self::Library => parts::TO_LIBRARY,
            Self::Diagnosis => parts::TO_DIAGNOSIS,
            Self::JobSheet => parts::TO_JOB_SHEET,
            Self::Settings => parts::TO_SETTINGS,
        }
    }

    /// Something that only this screen shows.
    pub(super) fn landmark(self) -> Part {
        match self {
            Self::Job => parts::VERDICT,
            Self::Window => parts::SET_POINT_SAYS,
            Self::Forecast => parts::AGED,
            Self::PrintRoom => parts::MISSING,
            Self::Library => parts::HITS,
            Self::Diagnosis => parts::CAUSES,
            Self::JobSheet => parts::PAPER_VERDICT,
            Self::Settings => parts::THEMES,
        }
    }
}

impl std::fmt::Display for DeskScreen {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        out.write_str(self.address())
    }
}
