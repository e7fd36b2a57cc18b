//! Records that a shop writes itself and the starter library has none of. Days are written `2026-11-24`.

use crate::library::Library;
use crate::library::log::recorded;
use crate::library::resolve::{DryerRun, ProbeAt, ProbeReading, ProbeRun};
use crate::plan::{Colour, DyeClass, Evidence, EvidenceSubject, Garment};
use crate::quantity::FieldError;
use crate::textile::{Fibre, label};
use serde::{Deserialize, Serialize};

/// What a shop knows of a cloth beyond the table's row; fields of the same record.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct FabricDye {
    /// Its colour; an empty name = not known.
    pub colour: Colour,
    /// Which fibres are dyed; absent = not known.
    pub dyed_fibres: Option<Vec<Fibre>>,
    /// What kind of dye is on its polyester.
    pub dye_class: DyeClass,
}

/// A dye lot of a cloth. Its id: `fabric/lot`.
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

/// A batch of a white or blocker. Its id: `white/batch`.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct BatchRecord {
    /// Number on the tub.
    pub name: String,
    /// Day it was opened.
    pub opened: String,
    /// What is left, kg; absent = not weighed.
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

/// What was seen on a trial on one day. Its id: `trial/reading`.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct TrialReading {
    /// Days after printing; a hot hold counts as the days that it stands for.
    pub days: f64,
    /// Pieces looked at.
    pub pieces: u32,
    /// Pieces that turned.
    pub turned: u32,
    /// Colour difference ΔE00 to the fresh white, if measured.
    pub delta_e: Option<f64>,
    /// Anything worth knowing.
    pub note: String,
}

/// A look that is due later. Its id: `trial/look`.
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

/// A probe's ride through a dryer. Its id: `dryer/ride`.
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
    /// What it read, in the order of time.
    pub readings: Vec<ProbeReading>,
    /// Anything worth knowing.
    pub note: String,
}

impl CalibrationRecord {
    /// The ride as [`ProbeRun`] computes with it; `id` is that of this record.
    ///
    /// # Errors
    /// If the cloth is not known.
    pub fn ride(self, id: &str, library: &Library) -> Result<ProbeRun, FieldError> {
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
    /// A reading of this trial as evidence for an order: about the lot if one is known, else about the white.
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
        }
    }
}
