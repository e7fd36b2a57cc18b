//! How likely something is seen on a print that was run in a known way.

use crate::numerics::normal;
use crate::plan::{AsRun, Margin, Side, Topic};
use serde::{Deserialize, Serialize};

/// What is seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Defect {
    /// The white has turned towards the cloth's colour.
    Turned,
    /// A shadow of the print on the cloth that lay against it.
    Ghost,
    /// It cracks when stretched.
    Cracks,
    /// It washes off or goes to powder.
    WashesOff,
    /// It peels off whole.
    Peels,
    /// It feels like a board.
    Board,
    /// The cloth is yellow.
    Scorched,
    /// The cloth has shrunk or gone out of shape.
    Shrunk,
    /// Hairs stand through the white.
    NapShows,
    /// The cloth shows through the white.
    ClothShows,
}

impl Defect {
    /// Everything that can be said to be seen.
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

/// Chance, 0 to 1, that it is seen on a run.
pub(super) fn chance(seen: Defect, run: &AsRun) -> f64 {
    let past = |what: Topic| run.margin(what).map_or(0.0, past_limit);
    let either = |a: f64, b: f64| 1.0 - (1.0 - a) * (1.0 - b);
    match seen {
        Defect::Turned => run.turns,
        Defect::Ghost => run.ghosts,
        // A film that is not fused through cracks and washes out; one that is cracks only where the cloth goes further.
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

/// Chance that a margin's value lies past its limit. Its band holds 8 in 10 (see [`Band`](crate::quantity::Band)); on the
/// side of the limit it is taken as the flank of a normal distribution: assumed.
fn past_limit(margin: &Margin) -> f64 {
    let value = margin.value;
    let off = match margin.needed {
        Side::AtLeast => margin.limit - value.likely,
        Side::AtMost => value.likely - margin.limit,
    };
    // The flank that reaches for the limit, or the one that reaches back from beyond it.
    let reaches_up = (margin.needed == Side::AtMost) == (off < 0.0);
    let flank = if reaches_up { value.high - value.likely } else { value.likely - value.low };
    // 1.2816 standard deviations hold 9 in 10 on one side.
    let deviation = flank / 1.2816;
    if deviation <= 1e-9 * margin.limit.abs().max(1e-9) {
        return if off > 0.0 { 1.0 } else { 0.0 };
    }
    normal::cumulative(off / deviation)
}
