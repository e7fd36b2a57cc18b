//! Records that only a shop writes; none of them ships. Days are written `2026-11-24`.

use crate::library::Library;
use crate::library::log::recorded;
use crate::library::resolve::{DryerRun, ProbeAt, ProbeReading, ProbeRun};
use crate::plan::{Colour, DyeClass, Evidence, EvidenceSubject, Garment};
use crate::quantity::FieldError;
use crate::textile::{Fibre, label};
use serde::{Deserialize, Serialize};

/// What a shop knows about the dye of a fabric. These fields belong to the same record as
/// [`FabricRecord`](crate::textile::FabricRecord).
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct FabricDye {
    /// Its colour; an empty name means unknown.
    pub colour: Colour,
    /// Which fibres are dyed; absent means unknown.
    pub dyed_fibres: Option<Vec<Fibre>>,
    /// What kind of dye is on its polyester.
    pub dye_class: DyeClass,
}

/// A dye lot of a fabric. Its id is `fabric/lot`.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct LotRecord {
    /// Number on the box.
    pub name: String,
    /// Day it came in.
    pub came: String,
    /// Anything worth knowing.
    pub note: String,
}

/// A batch of a white or blocker. Its id is `white/batch`.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct BatchRecord {
    /// Number on the tub.
    pub name: String,
    /// Day it was opened.
    pub opened: String,
    /// Remaining ink, kg; absent means not weighed.
    pub left_kg: Option<f64>,
    /// Anything worth knowing.
    pub note: String,
}

/// A trial print.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct TrialRecord {
    /// The cloth: id of its record, or what its label says.
    pub fabric: String,
    /// Its dye lot.
    pub lot: String,
    /// Id of the white.
    pub white: String,
    /// Day it was printed.
    pub printed: String,
    /// Id of the dryer.
    pub dryer: String,
    /// Set temperature, °C.
    pub set_c: Option<f64>,
    /// Belt, m/min.
    pub belt_m_per_min: Option<f64>,
    /// Anything worth knowing.
    pub note: String,
}

/// The result of inspecting a trial on one day. Its id is `trial/reading`.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct TrialReading {
    /// Days after printing; an oven test counts as the days of storage that it represents.
    pub days: f64,
    /// Pieces inspected.
    pub pieces: u32,
    /// Pieces that turned.
    pub turned: u32,
    /// Colour difference ΔE00 to the fresh white, if measured.
    pub delta_e: Option<f64>,
    /// Anything worth knowing.
    pub note: String,
}

/// An inspection that is due later. Its id is `trial/look`.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct FollowUpRecord {
    /// Day it is due.
    pub due: String,
    /// Day it was done, empty if open.
    pub done: String,
    /// What to look for.
    pub note: String,
}

/// A probe's run through a dryer. Its id is `dryer/run`.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct CalibrationRecord {
    /// Day of it.
    pub day: String,
    /// Id of the cloth that the probe lay on, or what its label says.
    pub fabric: String,
    /// Film of white, µm; 0 for bare cloth.
    pub film_um: f64,
    /// Where the probe lay.
    pub at: ProbeAt,
    /// Set temperature, °C.
    pub set_c: f64,
    /// Belt, m/min.
    pub belt_m_per_min: f64,
    /// Its readings, in the order of time.
    pub readings: Vec<ProbeReading>,
    /// Anything worth knowing.
    pub note: String,
}

impl CalibrationRecord {
    /// The run in the form that is computed with; `id` is that of this record and begins with its
    /// dryer's.
    ///
    /// # Errors
    /// A [`FieldError`] on `fabric` if it is neither the id of a record nor a label that can be read.
    pub fn probe_run(self, id: &str, library: &Library) -> Result<ProbeRun, FieldError> {
        let fabric = library.fabric_record(&self.fabric);
        let garment = match fabric {
            Ok(fabric) => library.garment(fabric, &FabricDye::default()),
            Err(error) if label::read(&self.fabric).is_err() => {
                return Err(FieldError { field: "fabric".into(), ..error });
            }
            Err(_) => Garment { label: self.fabric, ..Garment::default() },
        };
        let run = DryerRun {
            dryer: id.split('/').next().unwrap_or_default().into(),
            garment,
            film_um: self.film_um,
            set_c: self.set_c,
            belt_m_per_min: self.belt_m_per_min,
            ..DryerRun::default()
        };
        Ok(ProbeRun { run, at: self.at, readings: self.readings })
    }
}

recorded! {
    Calibration: CalibrationRecord;
    Lot: LotRecord;
    Batch: BatchRecord;
    Trial: TrialRecord;
    Reading: TrialReading;
    FollowUp: FollowUpRecord;
    Fabric: FabricDye;
}

impl TrialRecord {
    /// A reading of this trial as evidence for an order: about the lot if it is known, else about the
    /// white.
    #[must_use]
    pub fn evidence(&self, reading: &TrialReading) -> Evidence {
        let (about, name) = if self.lot.is_empty() {
            (EvidenceSubject::White, &self.white)
        } else {
            (EvidenceSubject::Lot, &self.lot)
        };
        Evidence {
            about,
            name: name.clone(),
            white: self.white.clone(),
            pieces: reading.pieces,
            turned: reading.turned,
            days: reading.days,
            blocker: None,
        }
    }
}
