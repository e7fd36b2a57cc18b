//! The chance of a defect on a print whose run is known.

use crate::numerics::normal;
use crate::plan::{AsRun, Margin, Side, Topic};
use serde::{Deserialize, Serialize};

/// A defect that is seen on a print.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Defect {
    /// The white has turned towards the cloth's colour.
    Turned,
    /// A shadow of the print on the cloth that lay against it.
    Ghost,
    /// The print cracks when stretched.
    Cracks,
    /// The print washes off or turns to powder.
    WashesOff,
    /// The print peels off in one piece.
    Peels,
    /// The print is stiff as a board.
    Board,
    /// The cloth is yellow.
    Scorched,
    /// The cloth has shrunk or gone out of shape.
    Shrunk,
    /// Hairs of the cloth come through the white.
    NapShows,
    /// The cloth shows through the white.
    ClothShows,
}

impl Defect {
    /// Every defect.
    pub const ALL: [Self; 10] = [
        Self::Turned,
        Self::Cracks,
        Self::WashesOff,
        Self::Board,
        Self::Ghost,
        Self::Scorched,
        Self::Shrunk,
        Self::NapShows,
        Self::ClothShows,
        Self::Peels,
    ];
}

/// Chance of a defect on a run, 0 to 1.
pub(super) fn chance(seen: Defect, run: &AsRun) -> f64 {
    let past = |what: Topic| run.margin(what).map_or(0.0, past_limit);
    let either = |a: f64, b: f64| 1.0 - (1.0 - a) * (1.0 - b);
    match seen {
        Defect::Turned => run.turns,
        Defect::Ghost => run.ghosts,
        // An underfused film cracks and washes out; a fused one cracks only if the cloth stretches
        // further than it can.
        Defect::Cracks => either(past(Topic::Fusion), run.cracks),
        Defect::WashesOff => past(Topic::Fusion),
        Defect::Peels => either(past(Topic::Fusion), run.comes_off),
        Defect::Board => past(Topic::Hand),
        Defect::Scorched => past(Topic::Scorch),
        Defect::Shrunk => either(past(Topic::Shrink), past(Topic::Softening)),
        Defect::NapShows => past(Topic::Matting),
        Defect::ClothShows => past(Topic::Opacity),
    }
}

/// Chance that a margin's value lies beyond its limit. The band is taken to hold 8 in 10 cases and its
/// side towards the limit to be half of a normal distribution: assumed.
fn past_limit(margin: &Margin) -> f64 {
    let value = margin.value;
    let off = match margin.needed {
        Side::AtLeast => margin.limit - value.likely,
        Side::AtMost => value.likely - margin.limit,
    };
    // The side of the band that points towards the limit.
    let reaches_up = (margin.needed == Side::AtMost) == (off < 0.0);
    let flank = if reaches_up { value.high - value.likely } else { value.likely - value.low };
    // 1.2816 standard deviations hold 9 in 10 on one side.
    let deviation = flank / 1.2816;
    if deviation <= 1e-9 * margin.limit.abs().max(1e-9) {
        return if off > 0.0 { 1.0 } else { 0.0 };
    }
    normal::cumulative(off / deviation)
}
