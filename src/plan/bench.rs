//! Windows and set points, shared by every white that lays the same film.

use super::candidate::{Candidate, MOST_STROKES, film_on};
use super::cost::{Pace, pace};
use super::flash::{FlashStep, flash_step};
use super::hope::Hopes;
use super::judge::{Judged, must_fuse, stack_of};
use super::memory::{Marched, Memory};
use super::opening::openings;
use super::outlook::Outlook;
use super::trade::Tried;
use super::ways::first_way;
use super::window::{Demands, Detail, Family, Question, Run, SetPoint, Window, robust};
use super::window_report::kinetics;
use super::{Cloth, Code, Job, Priority, Reason, Side, explain};
use crate::dryer::HistoryError;
use crate::ink::{CureKinetics, White};
use crate::quantity::units::kelvin;
use std::collections::BTreeMap;
use std::collections::btree_map::Entry;

/// How two inks fuse, bit for bit, and whether on dried cloth: whites fuse alike unless their own prints were tested.
pub(super) type Fuses = ([[u64; 5]; 2], bool);

/// What a set point hangs on: how the inks fuse, the film's mass, and the demands, bit for bit.
pub(super) type Setting = ((Fuses, u32), [u64; 8]);

/// A set point, and what comes with it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Dial {
    pub point: SetPoint,
    /// How it runs there.
    pub pace: Pace,
    /// Dye that the heat there brings by the window, as a mean over drift, kg/m².
    pub dye: f64,
}

/// Windows and set points of one cloth, kept by the mass of the film: what is marched is shared by every white on it.
pub(super) struct Bench<'a> {
    pub(super) job: &'a Job,
    pub(super) cloth: &'a Cloth,
    /// Films that are looked at, kg/m².
    films: [f64; 2],
    marched: Marched,
    pub(super) hopes: Hopes,
    /// Ways that were compared.
    pub(super) looked: usize,
    pub(super) judged: usize,
    /// Those that were judged, as points between what is given up and what is got.
    pub(super) tried: Vec<Tried>,
    /// Whether cloth is dried before, where that brings a way to a better verdict.
    pub(super) dries: bool,
    flashes: BTreeMap<(u32, bool, bool), FlashStep>,
}

impl<'a> Bench<'a> {
    pub(super) fn new(job: &'a Job, cloth: &'a Cloth, memory: &mut Memory) -> Option<Self> {
        job.whites.iter().chain(&job.market).next()?;
        let films = films(job, cloth);
        Some(Self {
            job,
            cloth,
            films,
            marched: memory.take(job, cloth, films),
            hopes: Hopes::default(),
            looked: 0,
            judged: 0,
            tried: Vec::new(),
            dries: false,
            flashes: BTreeMap::new(),
        })
    }

    /// Keeps what was marched for the next answer.
    pub(super) fn keep(self, memory: &mut Memory) {
        memory.keep(self.job, self.cloth, self.films, self.marched);
    }

    /// Looks at the same cloth with other dye: the windows' heat serves it as it is. Windows that are marched meanwhile
    /// are not kept, because they followed the other dye.
    pub(super) fn on_cloth<T>(&mut self, cloth: &Cloth, look: impl FnOnce(&mut Bench<'_>) -> T) -> T {
        let known: Vec<Fuses> = self.marched.families.keys().copied().collect();
        let mut lent = Bench {
            job: self.job,
            cloth,
            films: self.films,
            marched: std::mem::take(&mut self.marched),
            hopes: Hopes::default(),
            looked: self.looked,
            judged: self.judged,
            tried: Vec::new(),
            dries: false,
            flashes: BTreeMap::new(),
        };
        let found = look(&mut lent);
        self.marched = lent.marched;
        self.looked = lent.looked;
        self.marched.families.retain(|fuses, _| known.contains(fuses));
        self.marched.windows.retain(|(fuses, _), _| known.contains(fuses));
        found
    }

    fn fixed(&self) -> Option<f64> {
        self.job.order.shop.dryer_fixed.map(kelvin)
    }

    /// How the inks of a way fuse on its cloth, and its mass to a tenth of a gram on a square metre.
    fn key(&self, way: &Candidate<'_>) -> (Fuses, u32) {
        let bits = |ink: CureKinetics| {
            let CureKinetics { half_fused, width, fusion_time, fusion_reference, fusion_energy, .. } = ink;
            [half_fused, width, fusion_time, fusion_reference, fusion_energy].map(f64::to_bits)
        };
        let fuses = (kinetics(self.job, way.white).map(bits), way.dried);
        (fuses, (way.mass() * 1e4).round() as u32)
    }

    pub(super) fn window(&mut self, way: &Candidate<'_>) -> Result<&Window, HistoryError> {
        let key @ (fuses, tenths) = self.key(way);
        let entry = match self.marched.windows.entry(key) {
            Entry::Occupied(had) => return Ok(had.into_mut()),
            Entry::Vacant(entry) => entry,
        };
        let family = match self.marched.families.entry(fuses) {
            Entry::Occupied(had) => had.into_mut(),
            Entry::Vacant(entry) => {
                let question = Question {
                    stack: &stack_of(self.job, self.cloth, way),
                    dryer: &self.job.dryer,
                    passes: self.job.order.shop.passes,
                    kinetics: kinetics(self.job, way.white),
                    dyed: self.cloth.dyed.as_ref(),
                    fixed: self.job.order.shop.dryer_fixed.map(kelvin),
                    detail: Detail::Coarse,
                };
                entry.insert(Family::compute(&question, self.films)?)
            }
        };
        // Of the mass that the key stands for, whichever way asked first.
        Ok(entry.insert(family.window(f64::from(tenths) * 1e-4)))
    }

    /// The robust set point of a way and the dye there, kg/m²; the same for every white of its mass that must fuse alike.
    fn set_point(
        &mut self,
        way: &Candidate<'_>,
        demands: &Demands,
    ) -> Result<Option<(SetPoint, f64)>, HistoryError> {
        let key = (self.key(way), demands.bits());
        if let Some(had) = self.marched.points.get(&key) {
            return Ok(*had);
        }
        let (job, fixed) = (self.job, self.fixed());
        let window = self.window(way)?;
        let point = robust(window, &job.dryer, demands, fixed).map(|point| {
            let dye =
                [Run::Nominal, Run::Cold, Run::Hot].map(|run| window.at(run, point.set, point.belt).dye);
            (point, dye.iter().sum::<f64>() / 3.0)
        });
        self.marched.points.insert(key, point);
        Ok(point)
    }

    fn flash(&mut self, way: &Candidate<'_>) -> Result<Option<FlashStep>, HistoryError> {
        if way.flashes(self.job) == 0 {
            return Ok(None);
        }
        let film = way.base.map_or(way.film / f64::from(way.strokes), |base| base.film);
        let key = ((film * 1e6).round() as u32, way.white.low_cure, way.dried);
        if let Some(step) = self.flashes.get(&key) {
            return Ok(Some(*step));
        }
        let step = flash_step(self.job, self.cloth, way)?;
        self.flashes.insert(key, step);
        Ok(Some(step))
    }

    pub(super) fn demands(&self, white: &White) -> Demands {
        let pace = match self.job.order.print.priority {
            Priority::Fast => 1.0,
            _ => 0.35,
        };
        Demands::of(&self.job.rules, self.cloth, must_fuse(self.job, white.low_cure), pace)
    }

    /// What would open the window of a white that has none, over the first way to print it.
    pub(super) fn openings(&self, white: &White) -> Result<Vec<Reason>, HistoryError> {
        let demands = self.demands(white);
        match first_way(self.job, self.cloth, white) {
            Some(way) => openings(self.job, self.cloth, &way, kinetics(self.job, white), &demands),
            None => Ok(Vec::new()),
        }
    }

    /// The robust set point of a way; the reason where its window is closed.
    pub(super) fn dial(&mut self, way: &Candidate<'_>) -> Result<Result<Dial, Reason>, HistoryError> {
        let demands = self.demands(way.white);
        let needed = kinetics(self.job, way.white)[usize::from(!demands.must_fuse[0])].half_fused + 12.0;
        let Some((point, dye)) = self.set_point(way, &demands)? else {
            let fixed = self.fixed();
            let side = closing_side(self.window(way)?, &demands, fixed);
            return Ok(Err(explain::closed(self.cloth, side, needed)));
        };
        let dryings = match way.dried {
            true => self.marched.rides.passes_to_dry(self.job, self.cloth, &point)?,
            false => Some(0),
        };
        // Cloth that no pass dries is as cold as before.
        let Some(dryings) = dryings else {
            return Ok(Err(explain::closed(self.cloth, Side::AtLeast, needed)));
        };
        let flash = self.flash(way)?.map_or(0.0, |flash| flash.seconds);
        Ok(Ok(Dial { point, pace: pace(self.job, way, flash, point.belt, dryings), dye }))
    }

    /// The outlook on one way; the reason where its window is closed.
    pub(super) fn weigh<'w>(
        &mut self,
        way: Candidate<'w>,
    ) -> Result<Result<Outlook<'w>, Reason>, HistoryError> {
        Ok(match self.dial(&way)? {
            Ok(dial) => Ok(self.weigh_at(way, dial.point)?),
            Err(reason) => Err(reason),
        })
    }

    /// Weighs a way whose window is closed, at the middle of what the dryer can do.
    pub(super) fn weigh_closed<'w>(&mut self, way: Candidate<'w>) -> Result<Outlook<'w>, HistoryError> {
        let middle = self.window(&way)?.middle();
        self.weigh_at(way, SetPoint { set: self.fixed().unwrap_or(middle.set), ..middle })
    }

    fn weigh_at<'w>(&mut self, way: Candidate<'w>, point: SetPoint) -> Result<Outlook<'w>, HistoryError> {
        let (demands, flash) = (self.demands(way.white), self.flash(&way)?);
        self.marched.rides.weigh(self.job, self.cloth, way, point, demands, flash)
    }

    /// Every margin of a way.
    pub(super) fn judge<'w>(&mut self, outlook: Outlook<'w>) -> Result<Judged<'w>, HistoryError> {
        self.marched.rides.judge(self.job, self.cloth, outlook)
    }
}

/// Films from the lightest to the heaviest that can be laid on this cloth, kg/m².
fn films(job: &Job, cloth: &Cloth) -> [f64; 2] {
    let (mut least, mut most) = (f64::INFINITY, 0.0_f64);
    let blocker = job.blockers.iter().chain(&job.market_blockers).map(|base| base.film * base.density);
    let blocker = if cloth.dyed.is_some() { blocker.fold(0.0, f64::max) } else { 0.0 };
    for white in job.whites.iter().chain(&job.market) {
        for mesh in &job.meshes {
            let film = |strokes: u32| film_on(job, cloth, mesh, strokes) * white.density;
            (least, most) = (least.min(film(1)), most.max(film(MOST_STROKES) + blocker));
        }
    }
    [least.min(most), most]
}

/// The first white that a closed window rules out: inks of one kind share their heat, and to ask every white what would
/// open its window would cost a second.
pub(super) fn first_closed<'j>(job: &'j Job, found: &[Result<Outlook<'_>, Reason>]) -> Option<&'j White> {
    let closed = |found: &Result<Outlook<'_>, Reason>| {
        found.as_ref().is_err_and(|reason| reason.code == Code::WindowClosed)
    };
    job.whites.iter().zip(found).find(|(_, found)| closed(found)).map(|(white, _)| white)
}

/// Which demand closes a window: too cool to fuse, or too hot for cloth and film.
fn closing_side(window: &Window, demands: &Demands, fixed: Option<f64>) -> Side {
    let sets = fixed.as_ref().map_or(window.set.as_slice(), std::slice::from_ref);
    let fuses = sets.iter().any(|&set| {
        window.belt.iter().any(|&belt| demands.fused_of(&window.at(Run::Nominal, set, belt)) >= demands.fused)
    });
    if fuses { Side::AtMost } else { Side::AtLeast }
}
