//! Causes: what each changes in a run, how often it happens, and which test tells it apart.

use crate::plan::{DialSetting, Job, Pick};
use crate::quantity::units::kelvin;

/// A cause and how well it fits.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cause {
    /// What it is.
    pub what: CauseKind,
    /// Its share among all causes, 0 to 1.
    pub share: f64,
    /// Chance, 0 to 1, that what is seen shows where this is the cause.
    pub chance: f64,
}

/// What can be the cause.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum CauseKind {
    /// The dial was elsewhere than planned; °C.
    Heat {
        /// As planned.
        planned: f64,
        /// As it was run.
        ran: f64,
    },
    /// The belt ran otherwise than planned; m/min.
    Belt {
        /// As planned.
        planned: f64,
        /// As it was run.
        ran: f64,
    },
    /// The film was otherwise than planned; µm.
    Film {
        /// As planned.
        planned: f64,
        /// As it was run.
        ran: f64,
    },
    /// This cloth, this lot or this white: it happens though all was run as noted.
    Itself,
    /// The dryer is hotter than its dial says.
    DryerHot,
    /// The dryer is cooler than its dial says.
    DryerCold,
    /// The belt stood for a while.
    BeltStopped,
    /// It went through the dryer once more.
    OnceMore,
    /// The film is thinner than it was meant to be.
    FilmThin,
    /// The film is thicker than it was meant to be.
    FilmThick,
    /// There was reducer in the white.
    Reducer,
    /// The pieces were stacked hot.
    StackedHot,
    /// The cloth was damp.
    Damp,
    /// Something that no sum sees: another tub, a dead panel, another cloth than the label says.
    Unseen,
}

/// What tells a cause from the others.
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

/// How far a dryer is off its dial where that is the cause: twice what its record says it wanders.
const OFF_THE_DIAL: f64 = 2.0;
/// Seconds a belt stands before somebody is there: common practice, no source.
const STOOD: f64 = 15.0;
/// How thin or thick a film is where that is the cause, times the planned one: common practice, no source.
const THIN: f64 = 0.7;
const THICK: f64 = 1.4;
/// Reducer that somebody stirs in, %: common practice, no source.
const STIRRED_IN: f64 = 5.0;
/// Water on a cloth that lay damp, % of its weight: common practice, no source.
const DAMP: f64 = 5.0;

impl CauseKind {
    /// The job, the way and the setting (°C, m/min) where this happened on top of what is noted; nothing for what is no
    /// hidden change or was so anyway.
    pub(super) fn happens(self, job: &Job, pick: &Pick, at: DialSetting) -> Option<(Job, Pick, DialSetting)> {
        let (mut changed, mut way) = (job.clone(), pick.clone());
        let DialSetting { set_c, belt_m_per_min: belt } = at;
        let off = OFF_THE_DIAL * job.dryer.drift.air;
        let dwell = job.dryer.heated_length() / (belt / 60.0);
        let now = match self {
            Self::DryerHot => DialSetting { set_c: set_c + off, ..at },
            Self::DryerCold => DialSetting { set_c: set_c - off, ..at },
            Self::BeltStopped => {
                let belt_m_per_min = job.dryer.heated_length() / (dwell + STOOD) * 60.0;
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
            Self::Reducer if job.order.print.reducer_percent < STIRRED_IN => {
                changed.order.print.reducer_percent = STIRRED_IN;
                at
            }
            Self::StackedHot if !job.order.use_.stacked_hot => {
                changed.order.use_.stacked_hot = true;
                at
            }
            Self::Damp => {
                // Cloth that was to be dried was not, or lay until it was damp again.
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

/// The same job with a film so many times as thick.
pub(super) fn with_film(job: &Job, times: Option<f64>) -> Job {
    let mut job = job.clone();
    if let Some(times) = times.filter(|times| times.is_finite() && *times > 0.0) {
        let transfer = job.order.shop.transfer.unwrap_or(job.rules.transfer);
        job.order.shop.transfer = Some(transfer * times);
    }
    job
}
