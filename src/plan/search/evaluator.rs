//! Windows, set points and assessments of one cloth, shared by every white with the same film.

use super::cache::{ClothSimulations, FusionKey, PlannedPoint, SimulationCache};
use super::dye_estimate::DyeEstimates;
use super::heat_estimate::{HeatEstimate, WindowHeat};
use crate::dryer::HistoryError;
use crate::ink::{CureKinetics, White};
use crate::plan::order::{Cloth, Job, Priority, kinetics};
use crate::plan::recipe::{
    Candidate, FlashStep, MOST_STROKES, film_on, first_candidate, flash_step, stack_of,
};
use crate::plan::report::{Code, Reason, RecipeScores, Side};
use crate::plan::verdict::{Assessment, Judgement, Pace, assess, judgement, pace};
use crate::plan::window::{
    Demands, Detail, DriftRun, Family, Question, SetPoint, Window, closed, hardest, openings, robust,
};
use crate::quantity::units::kelvin;
use std::collections::BTreeMap;
use std::collections::btree_map::Entry;

/// A set point, with the pace and the dye there.
#[derive(Clone, Copy, Debug)]
pub struct OperatingPoint {
    pub point: SetPoint,
    /// How fast the candidate runs there.
    pub pace: Pace,
    /// Dye that the heat brings there, from the window, as a mean over drift, kg/m².
    pub dye: f64,
    /// What the window says of its heat.
    pub heat: WindowHeat,
}

/// Evaluates the candidates of one cloth. Windows and set points are kept by the mass of the film, so that
/// every white with that film shares their simulations.
pub struct Evaluator<'a> {
    pub job: &'a Job,
    pub cloth: &'a Cloth,
    /// The lightest and the heaviest film on this cloth, kg/m².
    films: [f64; 2],
    simulations: ClothSimulations,
    /// What the films assessed so far tell of others.
    pub estimates: DyeEstimates,
    /// How far their heat was off from their windows'.
    pub heat_estimate: HeatEstimate,
    /// Candidates that were compared.
    pub compared: usize,
    /// Candidates that were assessed.
    pub assessed: usize,
    /// Their scores, for the trade-off.
    pub scores: Vec<RecipeScores>,
    /// Whether cloth is dried before, where that brings a candidate to a better verdict.
    pub dries: bool,
    flashes: BTreeMap<(u32, bool, bool), FlashStep>,
}

impl<'a> Evaluator<'a> {
    /// An evaluator with what `cache` keeps of this cloth; `None` if the job has no white, on the shelf or to
    /// buy.
    pub fn new(job: &'a Job, cloth: &'a Cloth, cache: &mut SimulationCache) -> Option<Self> {
        job.whites.iter().chain(&job.market).next()?;
        let films = films(job, cloth);
        Some(Self {
            job,
            cloth,
            films,
            simulations: cache.take(job, cloth, films),
            estimates: DyeEstimates::default(),
            heat_estimate: HeatEstimate::default(),
            compared: 0,
            assessed: 0,
            scores: Vec::new(),
            dries: false,
            flashes: BTreeMap::new(),
        })
    }

    /// Keeps the simulations for the next answer.
    pub fn keep(self, cache: &mut SimulationCache) {
        cache.keep(self.job, self.cloth, self.films, self.simulations);
    }

    /// Runs `look` on the same cloth with other dye: the windows' temperatures hold for it too. Windows that
    /// are simulated meanwhile are not kept, because they followed the other dye.
    pub fn on_cloth<T>(&mut self, cloth: &Cloth, look: impl FnOnce(&mut Evaluator<'_>) -> T) -> T {
        let known: Vec<FusionKey> = self.simulations.families.keys().copied().collect();
        let mut lent = Evaluator {
            job: self.job,
            cloth,
            films: self.films,
            simulations: std::mem::take(&mut self.simulations),
            estimates: DyeEstimates::default(),
            heat_estimate: HeatEstimate::default(),
            compared: self.compared,
            assessed: self.assessed,
            scores: Vec::new(),
            dries: false,
            flashes: BTreeMap::new(),
        };
        let found = look(&mut lent);
        self.simulations = lent.simulations;
        self.compared = lent.compared;
        self.simulations.families.retain(|fuses, _| known.contains(fuses));
        self.simulations.windows.retain(|(fuses, _), _| known.contains(fuses));
        found
    }

    /// Set temperature that cannot be changed, K.
    fn fixed(&self) -> Option<f64> {
        self.job.order.shop.dryer_fixed.map(kelvin)
    }

    /// How the inks of a candidate fuse on its cloth, and its mass to a tenth of a gram per square metre.
    fn key(&self, candidate: &Candidate<'_>) -> (FusionKey, u32) {
        let bits = |ink: CureKinetics| {
            let CureKinetics { half_fused, width, fusion_time, fusion_reference, fusion_energy, .. } = ink;
            [half_fused, width, fusion_time, fusion_reference, fusion_energy].map(f64::to_bits)
        };
        let fuses = (kinetics(self.job, candidate.white).map(bits), candidate.dried);
        (fuses, (candidate.mass() * 1e4).round() as u32)
    }

    /// The window of a candidate, interpolated from its family if it is not kept yet.
    ///
    /// # Errors
    /// [`HistoryError`] if a temperature history cannot be integrated.
    pub fn window(&mut self, candidate: &Candidate<'_>) -> Result<&Window, HistoryError> {
        let key @ (fuses, tenths) = self.key(candidate);
        let entry = match self.simulations.windows.entry(key) {
            Entry::Occupied(kept) => return Ok(kept.into_mut()),
            Entry::Vacant(entry) => entry,
        };
        let family = match self.simulations.families.entry(fuses) {
            Entry::Occupied(kept) => kept.into_mut(),
            Entry::Vacant(entry) => {
                let question = Question {
                    stack: &stack_of(self.job, self.cloth, candidate),
                    dryer: &self.job.dryer,
                    passes: self.job.order.shop.passes,
                    kinetics: kinetics(self.job, candidate.white),
                    dyed: self.cloth.dyed.as_ref(),
                    fixed: self.job.order.shop.dryer_fixed.map(kelvin),
                    detail: Detail::Coarse,
                };
                entry.insert(Family::compute(&question, self.films)?)
            }
        };
        // For the mass of the key, so that the window does not depend on which candidate asked first.
        Ok(entry.insert(family.window(f64::from(tenths) * 1e-4)))
    }

    /// The robust set point of a candidate, with the dye and the heat there; the same for every white of its
    /// mass that must fuse alike.
    fn set_point(
        &mut self,
        candidate: &Candidate<'_>,
        demands: &Demands,
    ) -> Result<Option<PlannedPoint>, HistoryError> {
        let key = (self.key(candidate), demands.bits());
        if let Some(kept) = self.simulations.points.get(&key) {
            return Ok(*kept);
        }
        let (job, fixed) = (self.job, self.fixed());
        let kinetics = hardest(job, candidate.white, demands.must_fuse);
        let window = self.window(candidate)?;
        let point = robust(window, &job.dryer, demands, fixed).map(|point| {
            let dye = [DriftRun::Nominal, DriftRun::Cold, DriftRun::Hot]
                .map(|run| window.at(run, point.set, point.belt).dye);
            let dwell = job.dryer.heated_length() / point.belt;
            let heat = WindowHeat::of(window, demands, &kinetics, &point, dwell);
            PlannedPoint { point, dye: dye.iter().sum::<f64>() / 3.0, heat }
        });
        self.simulations.points.insert(key, point);
        Ok(point)
    }

    /// The flash of a candidate, kept by film, kinetics and dryness; `None` if none of its films is flashed.
    fn flash(&mut self, candidate: &Candidate<'_>) -> Result<Option<FlashStep>, HistoryError> {
        if candidate.flashes(self.job) == 0 {
            return Ok(None);
        }
        let film =
            candidate.blocker.map_or(candidate.film / f64::from(candidate.strokes), |blocker| blocker.film);
        let key = ((film * 1e6).round() as u32, candidate.white.low_cure, candidate.dried);
        if let Some(step) = self.flashes.get(&key) {
            return Ok(Some(*step));
        }
        let step = flash_step(self.job, self.cloth, candidate)?;
        self.flashes.insert(key, step);
        Ok(Some(step))
    }

    /// What a set point must keep for a white; pace counts where the order asks for speed.
    pub fn demands(&self, white: &White) -> Demands {
        let usual = Demands::usual(self.job, self.cloth, white);
        match self.job.order.print.priority {
            Priority::Fast => Demands { pace: Demands::HURRY, ..usual },
            _ => usual,
        }
    }

    /// What would open the window of a white that has none, tried on its first candidate.
    ///
    /// # Errors
    /// [`HistoryError`] if a temperature history cannot be integrated.
    pub fn openings(&self, white: &White) -> Result<Vec<Reason>, HistoryError> {
        let demands = self.demands(white);
        match first_candidate(self.job, self.cloth, white) {
            Some(candidate) => {
                openings(self.job, self.cloth, &candidate, kinetics(self.job, white), &demands)
            }
            None => Ok(Vec::new()),
        }
    }

    /// The robust set point of a candidate; the reason if its window is closed.
    ///
    /// # Errors
    /// [`HistoryError`] if a temperature history cannot be integrated.
    pub fn operating_point(
        &mut self,
        candidate: &Candidate<'_>,
    ) -> Result<Result<OperatingPoint, Reason>, HistoryError> {
        let demands = self.demands(candidate.white);
        let needed =
            kinetics(self.job, candidate.white)[usize::from(!demands.must_fuse[0])].half_fused + 12.0;
        let Some(PlannedPoint { point, dye, heat }) = self.set_point(candidate, &demands)? else {
            let fixed = self.fixed();
            let side = closing_side(self.window(candidate)?, &demands, fixed);
            return Ok(Err(closed(self.cloth, side, needed)));
        };
        let dryings = match candidate.dried {
            true => self.simulations.histories.passes_to_dry(self.job, self.cloth, &point)?,
            false => Some(0),
        };
        // Cloth that no number of passes dries stays as cold as before.
        let Some(dryings) = dryings else {
            return Ok(Err(closed(self.cloth, Side::AtLeast, needed)));
        };
        let flash = self.flash(candidate)?.map_or(0.0, |flash| flash.seconds);
        let pace = pace(self.job, candidate, flash, point.belt, dryings);
        Ok(Ok(OperatingPoint { point, pace, dye, heat }))
    }

    /// Assesses one candidate at its robust set point; the reason if its window is closed.
    ///
    /// # Errors
    /// [`HistoryError`] if a temperature history cannot be integrated.
    pub fn assess<'w>(
        &mut self,
        candidate: Candidate<'w>,
    ) -> Result<Result<Assessment<'w>, Reason>, HistoryError> {
        Ok(match self.operating_point(&candidate)? {
            Ok(operating_point) => Ok(self.assess_at(candidate, operating_point.point)?),
            Err(reason) => Err(reason),
        })
    }

    /// Assesses a candidate whose window is closed, at the middle of the dryer's range.
    ///
    /// # Errors
    /// [`HistoryError`] if a temperature history cannot be integrated.
    pub fn assess_closed<'w>(&mut self, candidate: Candidate<'w>) -> Result<Assessment<'w>, HistoryError> {
        let middle = self.window(&candidate)?.middle();
        self.assess_at(candidate, SetPoint { set: self.fixed().unwrap_or(middle.set), ..middle })
    }

    fn assess_at<'w>(
        &mut self,
        candidate: Candidate<'w>,
        point: SetPoint,
    ) -> Result<Assessment<'w>, HistoryError> {
        let (demands, flash) = (self.demands(candidate.white), self.flash(&candidate)?);
        assess(&mut self.simulations.histories, self.job, self.cloth, candidate, point, demands, flash)
    }

    /// Adds every margin to an assessment.
    ///
    /// # Errors
    /// [`HistoryError`] if a temperature history cannot be integrated.
    pub fn judge<'w>(&mut self, assessment: Assessment<'w>) -> Result<Judgement<'w>, HistoryError> {
        judgement(&mut self.simulations.histories, self.job, self.cloth, assessment)
    }
}

/// The lightest and the heaviest film that can be printed on this cloth, kg/m².
fn films(job: &Job, cloth: &Cloth) -> [f64; 2] {
    let (mut least, mut most) = (f64::INFINITY, 0.0_f64);
    let blocker =
        job.blockers.iter().chain(&job.market_blockers).map(|blocker| blocker.film * blocker.density);
    let blocker = if cloth.dyed.is_some() { blocker.fold(0.0, f64::max) } else { 0.0 };
    for white in job.whites.iter().chain(&job.market) {
        for mesh in &job.meshes {
            let film = |strokes: u32| film_on(job, cloth, mesh, strokes) * white.density;
            (least, most) = (least.min(film(1)), most.max(film(MOST_STROKES) + blocker));
        }
    }
    [least.min(most), most]
}

/// The first white that a closed window rules out. One is enough: inks of one kind share their heat, and to
/// look for what would open the window of every white would take a second.
pub fn first_closed<'j>(job: &'j Job, found: &[Result<Assessment<'_>, Reason>]) -> Option<&'j White> {
    let closed = |found: &Result<Assessment<'_>, Reason>| {
        found.as_ref().is_err_and(|reason| reason.code == Code::WindowClosed)
    };
    job.whites.iter().zip(found).find(|(_, found)| closed(found)).map(|(white, _)| white)
}

/// Which demand closes a window: too cool to fuse, or too hot for cloth and film.
fn closing_side(window: &Window, demands: &Demands, fixed: Option<f64>) -> Side {
    let sets = fixed.as_ref().map_or(window.set.as_slice(), std::slice::from_ref);
    let fuses = sets.iter().any(|&set| {
        window
            .belt
            .iter()
            .any(|&belt| demands.fused_of(&window.at(DriftRun::Nominal, set, belt)) >= demands.fused)
    });
    if fuses { Side::AtMost } else { Side::AtLeast }
}
