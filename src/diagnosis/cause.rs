//! Causes: what each changes in a run, how often it happens, and which test confirms it.

use crate::plan::{DialSetting, Job, Pick};
use crate::quantity::units::kelvin;

/// A cause and how well it fits.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cause {
    /// What it is.
    pub what: CauseKind,
    /// Its share among all causes, 0 to 1.
    pub share: f64,
    /// Chance of the defect if this is the cause, 0 to 1.
    pub chance: f64,
}

/// A possible cause of a defect.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum CauseKind {
    /// The set temperature differed from the plan; °C.
    Heat {
        /// As planned.
        planned: f64,
        /// As it was run.
        ran: f64,
    },
    /// The belt speed differed from the plan; m/min.
    Belt {
        /// As planned.
        planned: f64,
        /// As it was run.
        ran: f64,
    },
    /// The film differed from the plan; µm.
    Film {
        /// As planned.
        planned: f64,
        /// As it was run.
        ran: f64,
    },
    /// The cloth, its lot or the white itself: the defect occurs although everything was run as noted.
    Itself,
    /// The dryer is hotter than its set temperature.
    DryerHot,
    /// The dryer is cooler than its set temperature.
    DryerCold,
    /// The belt stopped for a while.
    BeltStopped,
    /// The piece went through the dryer once more.
    OnceMore,
    /// The film is thinner than planned.
    FilmThin,
    /// The film is thicker than planned.
    FilmThick,
    /// The white contained reducer.
    Reducer,
    /// The pieces were stacked hot.
    StackedHot,
    /// The cloth was damp.
    Damp,
    /// Something that the model does not cover: another tub, a dead panel, another cloth than the label
    /// says.
    Unseen,
}

/// A test that tells a cause from the others.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DiagnosticTest {
    /// A probe in the wet film, through the dryer.
    Probe,
    /// Time a mark on the belt.
    TimeBelt,
    /// Weigh a print before and after.
    WeighPrint,
    /// Print one piece as planned and one as it was run, side by side.
    TwinPrints,
    /// Press white cloth on the garment.
    ClothPress,
    /// Print the same white on undyed cotton.
    CottonTwin,
    /// Let two pieces cool apart and two in a stack.
    StackTwins,
    /// Weigh a shirt, dry it, weigh it again.
    DryShirt,
    /// Ask who was at the press; look at the tub and the panels.
    AskAndLook,
}

/// The hidden causes and how often each happens in a run of a careful shop. Common practice, no source.
#[must_use]
pub fn hidden() -> &'static [(CauseKind, f64)] {
    &[
        (CauseKind::DryerHot, 0.10),
        (CauseKind::DryerCold, 0.10),
        (CauseKind::BeltStopped, 0.03),
        (CauseKind::OnceMore, 0.03),
        (CauseKind::FilmThin, 0.08),
        (CauseKind::FilmThick, 0.08),
        (CauseKind::Reducer, 0.04),
        (CauseKind::StackedHot, 0.15),
        (CauseKind::Damp, 0.06),
    ]
}

/// How far a dryer is off if it is hot or cold, as a multiple of its air drift. Assumed.
const OFF_THE_DIAL: f64 = 2.0;
/// Time for which a stopped belt stands, s. Common practice, no source.
const STOP: f64 = 15.0;
/// Thickness of a thin and of a thick film, as a multiple of the planned one. Common practice, no source.
const THIN: f64 = 0.7;
const THICK: f64 = 1.4;
/// Reducer in a white that contains some, %. Common practice, no source.
const REDUCER: f64 = 5.0;
/// Water on a damp cloth, % of its weight. Common practice, no source.
const DAMP: f64 = 5.0;

impl CauseKind {
    /// The job, the pick and the setting with this cause added to what is noted; `None` if the cause is
    /// not a hidden one or was present anyway.
    pub(super) fn added_to(
        self,
        job: &Job,
        pick: &Pick,
        at: DialSetting,
    ) -> Option<(Job, Pick, DialSetting)> {
        let (mut changed, mut way) = (job.clone(), pick.clone());
        let DialSetting { set_c, belt_m_per_min: belt } = at;
        let off = OFF_THE_DIAL * job.dryer.drift.air;
        let dwell = job.dryer.heated_length() / (belt / 60.0);
        let now = match self {
            Self::DryerHot => DialSetting { set_c: set_c + off, ..at },
            Self::DryerCold => DialSetting { set_c: set_c - off, ..at },
            Self::BeltStopped => {
                let belt_m_per_min = job.dryer.heated_length() / (dwell + STOP) * 60.0;
                DialSetting { belt_m_per_min, ..at }
            }
            Self::OnceMore => {
                changed.order.shop.passes += 1;
                at
            }
            Self::FilmThin | Self::FilmThick => {
                let times = if self == Self::FilmThin { THIN } else { THICK };
                return Some((with_film(job, Some(times)), way, at));
            }
            Self::Reducer if job.order.print.reducer_percent < REDUCER => {
                changed.order.print.reducer_percent = REDUCER;
                at
            }
            Self::StackedHot if !job.order.use_.stacked_hot => {
                changed.order.use_.stacked_hot = true;
                at
            }
            Self::Damp => {
                // Cloth that was to be predried was not, or became damp again.
                way.recipe.predried = false;
                if !pick.recipe.predried {
                    let cloth = changed.cloths.get_mut(pick.garment)?;
                    cloth.garment.added_water_percent += DAMP;
                }
                at
            }
            _ => return None,
        };
        (kelvin(now.set_c) > 0.0 && now.belt_m_per_min > 0.0).then_some((changed, way, now))
    }

    /// The test that tells this cause from the others.
    #[must_use]
    pub fn test(self) -> DiagnosticTest {
        match self {
            Self::Heat { .. } => DiagnosticTest::TwinPrints,
            Self::DryerHot | Self::DryerCold => DiagnosticTest::Probe,
            Self::Belt { .. } | Self::BeltStopped => DiagnosticTest::TimeBelt,
            Self::Film { .. } | Self::FilmThin | Self::FilmThick => DiagnosticTest::WeighPrint,
            Self::Itself => DiagnosticTest::ClothPress,
            Self::OnceMore | Self::Unseen => DiagnosticTest::AskAndLook,
            Self::Reducer => DiagnosticTest::CottonTwin,
            Self::StackedHot => DiagnosticTest::StackTwins,
            Self::Damp => DiagnosticTest::DryShirt,
        }
    }
}

/// The same job with a film that is `times` as thick.
pub(super) fn with_film(job: &Job, times: Option<f64>) -> Job {
    let mut job = job.clone();
    if let Some(times) = times.filter(|times| times.is_finite() && *times > 0.0) {
        let transfer = job.order.shop.transfer.unwrap_or(job.rules.transfer);
        job.order.shop.transfer = Some(transfer * times);
    }
    job
}
