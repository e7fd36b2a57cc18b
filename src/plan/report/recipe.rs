//! One way to print a garment, by the ids of what it takes: all that a printer sets before the dryer.
//!
//! A recipe owns its ids and knows no records, so that it can be kept, compared and written: it is the key of
//! a pick on the page, on the job sheet and among what was assessed. Its text names the white first, then
//! what goes with it:
//!
//! ```text
//! gannet+curlew-30/slate/mesh-43x2/smooth/additive/dried
//! ```
//!
//! # Example
//!
//! ```
//! use whitehold::plan::{Mixture, Recipe};
//!
//! let recipe = Recipe {
//!     white: "gannet".into(),
//!     mixture: Some(Mixture { stretch: "curlew".into(), percent: 30 }),
//!     additive: false,
//!     blocker: Some("slate".into()),
//!     mesh: "mesh-43".into(),
//!     strokes: 2,
//!     smoothing: true,
//!     predried: false,
//! };
//! assert_eq!(recipe.to_string(), "gannet+curlew-30/slate/mesh-43x2/smooth");
//! assert_eq!(recipe.ink_id(), "gannet+curlew-30");
//! ```

use serde::{Deserialize, Serialize};
use std::fmt::{self, Display, Formatter};

/// One way to print a garment, by ids.
#[derive(Clone, Debug, Default, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Recipe {
    /// Id of the white.
    pub white: String,
    /// Stretch white that is stirred into it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub mixture: Option<Mixture>,
    /// Whether adhesion additive is stirred in.
    pub additive: bool,
    /// Id of the blocker under it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub blocker: Option<String>,
    /// Id of the mesh.
    pub mesh: String,
    /// Strokes of white through it.
    pub strokes: u32,
    /// Whether a smoothing screen presses the nap down.
    pub smoothing: bool,
    /// Whether the cloth is dried before it is printed.
    pub predried: bool,
}

/// Stretch white in another white.
#[derive(Clone, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Mixture {
    /// Id of the stretch white.
    pub stretch: String,
    /// Its share of the mass, %, 1 to 99.
    pub percent: u32,
}

/// One screen on the press, with what goes through it.
#[derive(Clone, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum PressScreen {
    /// A blocker, by its id.
    Blocker(String),
    /// A white or mixture, by its id, through a mesh.
    White {
        /// Id of the ink.
        ink: String,
        /// Id of the mesh.
        mesh: String,
    },
    /// The smoothing screen.
    Smoothing,
}

impl Recipe {
    /// Id under which the ink is known on the shelf: the white's, or that of its mixture.
    #[must_use]
    pub fn ink_id(&self) -> String {
        match &self.mixture {
            Some(mixture) => mixture.ink_id(&self.white),
            None => self.white.clone(),
        }
    }

    /// The screens that are set up, each once.
    pub fn screens(&self) -> impl Iterator<Item = PressScreen> {
        let blocker = self.blocker.clone().map(PressScreen::Blocker);
        let white = PressScreen::White { ink: self.ink_id(), mesh: self.mesh.clone() };
        let smoothing = self.smoothing.then_some(PressScreen::Smoothing);
        blocker.into_iter().chain([white]).chain(smoothing)
    }
}

impl Mixture {
    /// Id of a white with this stirred in.
    #[must_use]
    pub fn ink_id(&self, white: &str) -> String {
        format!("{white}+{}-{}", self.stretch, self.percent)
    }
}

impl Display for Recipe {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        f.write_str(&self.ink_id())?;
        if let Some(blocker) = &self.blocker {
            write!(f, "/{blocker}")?;
        }
        write!(f, "/{}x{}", self.mesh, self.strokes)?;
        let flags = [(self.smoothing, "/smooth"), (self.additive, "/additive"), (self.predried, "/dried")];
        flags.into_iter().filter(|(is, _)| *is).try_for_each(|(_, word)| f.write_str(word))
    }
}
