//! Runs through a dryer as a shop writes them down: the temperatures they give, and what they say about
//! the dryer and the ink.

use super::{cure_kinetics, not_solved, resolve_garment};
use crate::cure::{PrintTestOutcome, estimate_kinetics, trace};
use crate::dryer::{
    self, Case, Cooling, Dryer, Film, HistoryError, HistorySample, NearInfrared, Place, Stack,
    TemperatureReading,
};
use crate::dryer::{DriftCase, TOLERANCE, history};
use crate::library::{Library, bounds as library_bounds};
use crate::plan::{Curve, Garment, bounds};
use crate::quantity::units::{celsius, kelvin};
use crate::quantity::{Band, Bound, FieldError, Percent, Share};
use serde::{Deserialize, Serialize};

/// One run of one print.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct DryerRun {
    /// Id of the dryer.
    pub dryer: String,
    /// What was printed on.
    pub garment: Garment,
    /// Film of white, µm; 0 for bare cloth.
    pub film_um: f64,
    /// Film of blocker under it, µm.
    pub blocker_um: f64,
    /// Set temperature, °C.
    pub set_c: f64,
    /// Belt, m/min.
    pub belt_m_per_min: f64,
    /// Passes through the dryer; absent means one.
    pub passes: Option<u32>,
    /// Humidity of the room, %; absent means 60.
    pub humidity_percent: Option<f64>,
    /// How it cooled; absent means as in the dryer's record.
    pub cooling: Option<Cooling>,
    /// Id of the white whose fusion is followed; absent means an ordinary one.
    pub white: Option<String>,
}

/// Where a probe or tape lay.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ProbeAt {
    /// On the film.
    FilmTop,
    /// Between film and cloth.
    #[default]
    FilmBottom,
    /// In the cloth.
    Cloth,
}

/// A reading of a probe.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ProbeReading {
    /// Time since the print entered the heat, s.
    pub seconds: f64,
    /// Temperature that it read, °C.
    pub temp_c: f64,
}

/// A probe's run through a dryer.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct ProbeRun {
    /// The run.
    pub run: DryerRun,
    /// Where the probe lay.
    pub at: ProbeAt,
    /// Its readings, in the order of time.
    pub readings: Vec<ProbeReading>,
}

/// What a probe run says about a dryer.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct DryerLearnt {
    /// Air temperature above the set temperature, K.
    pub air_k: Band,
    /// Heat transfer, as a multiple of the record's.
    pub h: Band,
    /// Exchange factor, as a multiple of the record's.
    pub exchange: Band,
    /// Remaining root-mean-square difference between readings and equations, K.
    pub misfit_k: f64,
    /// Whether the readings can come from such a dryer.
    pub believable: bool,
}

/// Prints of one white that were washed, stretched or rubbed.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct TestedWhite {
    /// Id of the white.
    pub white: String,
    /// Its prints.
    pub prints: Vec<TestedPrint>,
}

/// One print and the results of its tests.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TestedPrint {
    /// The run in which it was cured.
    pub run: DryerRun,
    /// Its results in wash, stretch and rub.
    pub seen: PrintTestOutcome,
}

/// What tested prints say about a white.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct WhiteLearnt {
    /// Temperature of half fusion, °C.
    pub half_fused_c: Band,
    /// Time constant of fusion at its reference, s.
    pub fusion_time_s: Band,
    /// How probable such results are under the model, 0 to 1; far below 0.01, look for an error.
    pub expected: f64,
}

/// A run in SI: its stack, its dryer and its setting.
struct Resolved {
    stack: Stack,
    dryer: Dryer,
    case: Case,
    passes: u32,
}

fn one(error: FieldError) -> Vec<FieldError> {
    vec![error]
}

fn history_error(error: HistoryError) -> Vec<FieldError> {
    match error {
        HistoryError::Outside(error) => one(error),
        error => not_solved("run", &error),
    }
}

impl DryerRun {
    fn resolve(&self, library: &Library) -> Result<Resolved, Vec<FieldError>> {
        let record =
            library.dryer(&self.dryer).map_err(|error| one(FieldError { field: "dryer".into(), ..error }))?;
        let mut dryer = Dryer::from_record(record)?;
        dryer.cooling = self.cooling.unwrap_or(dryer.cooling);
        let cloth = resolve_garment(&self.garment, library)
            .map_err(|errors| errors.into_iter().map(|error| error.within("garment")).collect::<Vec<_>>())?;
        library_bounds::FILM.check(self.film_um).map_err(one)?;
        library_bounds::BLOCKER.check(self.blocker_um).map_err(one)?;
        let set =
            Bound { field: "set_c", min: celsius(dryer.set_low), max: celsius(dryer.set_high), unit: "°C" };
        set.check(self.set_c).map_err(one)?;
        dryer::bounds::BELT_SPEED
            .check(self.belt_m_per_min)
            .map_err(|error| one(FieldError { field: "belt_m_per_min".into(), ..error }))?;
        let passes = self.passes.unwrap_or(1);
        bounds::PASSES.check(f64::from(passes)).map_err(one)?;
        let humidity = bounds::HUMIDITY.check(self.humidity_percent.unwrap_or(60.0)).map_err(one)?;
        bounds::ADDED_WATER
            .check(self.garment.added_water_percent)
            .map_err(|error| one(error.within("garment")))?;
        let film = |um: f64| Film { thickness: um * 1e-6, density: Film::DENSITY };
        let stack = Stack::garment(film(self.film_um), &cloth.fabric, Percent(humidity).share());
        let mut stack = self.garment.under_print.under(stack);
        stack.blocker = (self.blocker_um > 0.0).then(|| film(self.blocker_um));
        stack.added_water = self.garment.added_water_percent / 100.0;
        stack.near_infrared = NearInfrared::on_cloth(cloth.lab.lightness);
        let belt = self.belt_m_per_min / 60.0;
        Ok(Resolved {
            stack,
            dryer,
            case: Case { set: kelvin(self.set_c), belt, drift: DriftCase::NOMINAL },
            passes,
        })
    }

    /// Temperatures, water and fusion over the run.
    ///
    /// # Errors
    /// A [`FieldError`] for each field that cannot be used, by its path;
    /// [`Problem::NotSolved`](crate::quantity::Problem::NotSolved) on `run` if its heat cannot be computed.
    pub fn curve(&self, library: &Library) -> Result<Curve, Vec<FieldError>> {
        let Resolved { stack, dryer, case, passes } = self.resolve(library)?;
        let kinetics = match &self.white {
            Some(id) => {
                library.white_record(id).and_then(|record| library.white(record)).map_err(one)?.kinetics
            }
            None => cure_kinetics(library.kinetics_record("ordinary").map_err(one)?),
        };
        let history = history(&stack, &dryer, &[case], passes, TOLERANCE).map_err(history_error)?;
        Ok(Curve::of(&history, &trace(&history, |sample| sample.film_bottom, &kinetics)))
    }
}

impl ProbeRun {
    /// What the run says about the dryer.
    ///
    /// # Errors
    /// A [`FieldError`] for each field that cannot be used, by its path;
    /// [`Problem::NotSolved`](crate::quantity::Problem::NotSolved) on `run` if its heat cannot be computed.
    pub fn learn(&self, library: &Library) -> Result<DryerLearnt, Vec<FieldError>> {
        let within = |errors: Vec<FieldError>| errors.into_iter().map(|error| error.within("run")).collect();
        let Resolved { stack, dryer, case, .. } =
            self.run.resolve(library).map_err(|errors| -> Vec<_> { within(errors) })?;
        let readings: Vec<TemperatureReading> = self
            .readings
            .iter()
            .map(|reading| TemperatureReading {
                seconds: reading.seconds,
                temperature: kelvin(reading.temp_c),
            })
            .collect();
        let place: Place<8> = match self.at {
            ProbeAt::FilmTop => |sample: &HistorySample<8>| sample.film_top,
            ProbeAt::FilmBottom => |sample: &HistorySample<8>| sample.film_bottom,
            ProbeAt::Cloth => |sample: &HistorySample<8>| sample.cloth,
        };
        let found =
            dryer::calibrate(&stack, &dryer, case.set, case.belt, place, &readings).map_err(history_error)?;
        Ok(DryerLearnt {
            air_k: found.air,
            h: found.h,
            exchange: found.exchange,
            misfit_k: found.misfit,
            believable: found.believable,
        })
    }
}

impl TestedWhite {
    /// What the prints say about the white.
    ///
    /// # Errors
    /// A [`FieldError`] for each field that cannot be used, by its path;
    /// [`Problem::NotSolved`](crate::quantity::Problem::NotSolved) on `run` if its heat cannot be computed.
    pub fn learn(&self, library: &Library) -> Result<WhiteLearnt, Vec<FieldError>> {
        let record = library.white_record(&self.white).map_err(one)?;
        let white = library.white(record).map_err(one)?;
        let needed = library.limits.fused_share.value;
        let mut prints = Vec::with_capacity(self.prints.len());
        for (i, print) in self.prints.iter().enumerate() {
            let at = format!("prints[{i}].run");
            let Resolved { stack, dryer, case, passes } = print
                .run
                .resolve(library)
                .map_err(|errors| errors.into_iter().map(|error| error.within(&at)).collect::<Vec<_>>())?;
            let history = history(&stack, &dryer, &[case], passes, TOLERANCE).map_err(history_error)?;
            prints.push((history, print.seen));
        }
        let learnt = estimate_kinetics(&white.kinetics, Share(needed), &prints);
        Ok(WhiteLearnt {
            half_fused_c: learnt.half_fused.map(celsius),
            fusion_time_s: learnt.fusion_time,
            expected: learnt.expected.0,
        })
    }
}
