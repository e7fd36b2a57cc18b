//! The languages, and the one place that names each of their folders.
//!
//! Each language is one folder with the same files and functions. [`in_language`] calls the same path in the folder
//! of the reader's language, so the compiler lists everything that a new folder lacks.

use super::{
    DiagnosisPhrase, ForecastPhrase, JobSheetPhrase, LibraryPhrase, Phrase, PrintRoomPhrase, TradeOffPhrase,
};
use serde::{Deserialize, Serialize};

/// A language of the page.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Language {
    /// English.
    #[default]
    En,
    /// Spanish.
    Es,
}

impl Language {
    /// The value of an HTML `lang` attribute.
    #[must_use]
    pub fn tag(self) -> &'static str {
        match self {
            Self::En => "en",
            Self::Es => "es",
        }
    }

    /// The other language.
    #[must_use]
    pub fn other(self) -> Self {
        match self {
            Self::En => Self::Es,
            Self::Es => Self::En,
        }
    }
}

/// The item of this path in the folder of a language; called, if arguments follow.
macro_rules! in_language {
    ($language:expr, $module:ident::$item:ident $(($($argument:expr),*))?) => {
        match $language {
            $crate::wording::Language::En => $crate::wording::en::$module::$item $(($($argument),*))?,
            $crate::wording::Language::Es => $crate::wording::es::$module::$item $(($($argument),*))?,
        }
    };
}
pub(super) use in_language;

/// A sentence of a screen. Numbers and names in it come ready written.
pub trait Sentence {
    /// The sentence in this language.
    fn written(&self, language: Language) -> String;
}

macro_rules! sentences {
    ($($kind:ty: $module:ident;)*) => {
        $(impl Sentence for $kind {
            fn written(&self, language: Language) -> String {
                in_language!(language, $module::phrase(self))
            }
        })*
    };
}

sentences! {
    Phrase: phrase;
    ForecastPhrase: forecast;
    TradeOffPhrase: trade_off;
    JobSheetPhrase: job_sheet;
    PrintRoomPhrase: print_room;
    LibraryPhrase: library;
    DiagnosisPhrase: diagnosis;
}
