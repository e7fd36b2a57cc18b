//! Ways to lay the white down.

use super::{Base, Cloth, Job, Opacity, Pick, Step};
use crate::ink::{self, Bed, Lay, Mesh, White, deposit, film_needed, reduced_body, smoothed};
use crate::optics::{Lab, Spectrum};

/// One way: a white, perhaps a blocker under it, a mesh and strokes, perhaps a smoothing screen.
#[derive(Clone, Copy, Debug)]
pub struct Candidate<'a> {
    /// The white.
    pub white: &'a White,
    /// The blocker under it.
    pub base: Option<&'a Base>,
    /// The mesh.
    pub mesh: &'a Mesh,
    /// Strokes through it, a flash between two.
    pub strokes: u32,
    /// Whether a smoothing screen presses the nap into the first flashed film.
    pub smoothing: bool,
    /// Film of white, m.
    pub film: f64,
    /// What it looks like over the cloth or the blocker.
    pub look: ink::Opacity,
}

/// Most strokes of white; each more costs a flash and a station. Common practice, no source.
pub(super) const MOST_STROKES: u32 = 2;

impl<'a> Candidate<'a> {
    /// A way on this cloth; `None` for a white whose optics cannot be.
    fn new(
        job: &Job,
        cloth: &Cloth,
        white: &'a White,
        base: Option<&'a Base>,
        mesh: &'a Mesh,
        strokes: u32,
        smoothing: bool,
    ) -> Option<Self> {
        let film = film_on(job, cloth, mesh, strokes);
        let (optics, under) = (white.optics().ok()?, under(cloth, base));
        let bare = Self { white, base, mesh, strokes, smoothing, film, look: NOTHING };
        Some(Self { look: ink::opacity(&bare.lay(job, cloth, 1.0), &optics, &under), ..bare })
    }

    /// The way that a pick describes, found again among what the shop has.
    #[must_use]
    pub fn of_pick(job: &'a Job, cloth: &Cloth, pick: &Pick) -> Option<Self> {
        let white = job.whites.iter().find(|white| white.id == pick.white)?;
        let (mut base, mut strokes, mut threads, mut smoothing) = (None, 0, 0.0, false);
        for step in &pick.steps {
            match step {
                Step::Blocker { id, .. } => {
                    base = job.blockers.iter().chain(&job.market_blockers).find(|base| base.id == *id);
                }
                Step::White { strokes: more, threads_per_cm, .. } => {
                    strokes += more;
                    threads = *threads_per_cm;
                }
                Step::Smooth => smoothing = true,
                Step::Flash { .. } | Step::Dryer { .. } => {}
            }
        }
        let mesh = job.meshes.iter().min_by(|a, b| {
            let off = |mesh: &Mesh| (mesh.threads_per_m / 100.0 - threads).abs();
            off(a).total_cmp(&off(b))
        })?;
        Self::new(job, cloth, white, base, mesh, strokes.max(1), smoothing)
    }

    /// Film of white and blocker together, m.
    #[must_use]
    pub fn total_film(&self) -> f64 {
        self.film + self.base.map_or(0.0, |base| base.film)
    }

    /// Mass of all that is printed, kg/m².
    #[must_use]
    pub fn mass(&self) -> f64 {
        self.film * self.white.density + self.base.map_or(0.0, |base| base.film * base.density)
    }

    /// How the white lies on this cloth, its film so many times the planned one.
    #[must_use]
    pub fn lay(&self, job: &Job, cloth: &Cloth, times: f64) -> Lay {
        let film = times * self.film / f64::from(self.strokes);
        let below = self.base.map_or(0.0, |base| base.film);
        Lay::new(film, self.strokes, &Bed { nap: self.nap(cloth), film: below, body: self.body(job) })
    }

    /// How well the white, reduced as the order says, holds fibres down.
    fn body(&self, job: &Job) -> f64 {
        reduced_body(self.white.body, job.order.print.reducer_percent)
    }

    /// Height of the nap that the white meets, m.
    #[must_use]
    pub fn nap(&self, cloth: &Cloth) -> f64 {
        if self.smoothing { smoothed(cloth.fabric.nap) } else { cloth.fabric.nap }
    }

    /// Film that lays this nap down, and what the way's film holds down, m.
    #[must_use]
    pub fn matting(&self, job: &Job, cloth: &Cloth) -> (f64, f64) {
        (film_needed(self.nap(cloth)), self.total_film() * self.body(job))
    }

    /// The look of the same way with a film so many times the planned one.
    #[must_use]
    pub fn look_at(&self, job: &Job, cloth: &Cloth, times: f64) -> ink::Opacity {
        match self.white.optics() {
            Ok(optics) => ink::opacity(&self.lay(job, cloth, times), &optics, &under(cloth, self.base)),
            Err(_) => self.look,
        }
    }

    /// The same with one stroke more.
    #[must_use]
    pub fn with_one_stroke_more(&self, job: &Job, cloth: &Cloth) -> Option<Self> {
        Self::new(job, cloth, self.white, self.base, self.mesh, self.strokes + 1, self.smoothing)
    }

    /// The same through the next coarser mesh.
    #[must_use]
    pub fn through_coarser_mesh(&self, job: &'a Job, cloth: &Cloth) -> Option<Self> {
        let coarser = job.meshes.iter().filter(|mesh| mesh.volume() > self.mesh.volume());
        let mesh = coarser.min_by(|a, b| a.volume().total_cmp(&b.volume()))?;
        Self::new(job, cloth, self.white, self.base, mesh, self.strokes, self.smoothing)
    }
}

/// The look of no film at all, until it is computed.
const NOTHING: ink::Opacity = ink::Opacity {
    contrast_ratio: 0.0,
    colour: Lab::new(0.0, 0.0, 0.0),
    endless: Lab::new(100.0, 0.0, 0.0),
    garment_shows: 100.0,
};

/// The share of the open mesh volume that lies on the cloth: from the shop's own weighed print, or the prior.
fn transfer(job: &Job) -> f64 {
    job.order.shop.transfer.unwrap_or(job.rules.transfer)
}

/// Film that a mesh lays on this cloth, m. A mesh cloth loses film through its holes.
pub(super) fn film_on(job: &Job, cloth: &Cloth, mesh: &Mesh, strokes: u32) -> f64 {
    deposit(mesh, transfer(job), strokes) * (1.0 - cloth.fabric.open_area)
}

/// What lies under the white.
fn under(cloth: &Cloth, base: Option<&Base>) -> Spectrum {
    base.map_or_else(|| Spectrum::of_cloth(cloth.lab), |base| Spectrum::flat(base.reflectance))
}

/// How much of the garment may still show, ΔE00 to a film too thick to see through. Common practice, no source: 1 is
/// what a trained eye finds, 3 what a customer remarks.
#[must_use]
pub fn most_shown(opacity: Opacity) -> f64 {
    match opacity {
        Opacity::Soft => 6.0,
        Opacity::Standard => 3.0,
        Opacity::Full => 1.5,
    }
}

/// Film that the trade's experience of bleeding is stated at, m. 90 to 110 µm: common practice, no source; the same
/// as `anchor-film` in `data/limits.json`, where it is reconciled with what a mesh lays down.
pub const ANCHOR_FILM: f64 = 100e-6;

/// The ways worth weighing for one white: the thinnest film that covers, and on cloth that bleeds the one nearest to
/// the heavy film that such cloth is printed with; each also over every blocker at hand. Where the nap of the cloth
/// stands through the thinnest one, the same again with a smoothing screen.
#[must_use]
pub fn candidates<'a>(
    job: &'a Job,
    cloth: &Cloth,
    white: &'a White,
    bases: &'a [Base],
) -> Vec<Candidate<'a>> {
    let mut ways = Vec::new();
    let bases = bases.iter().map(Some).filter(|_| cloth.dyed.is_some());
    for base in std::iter::once(None).chain(bases) {
        let plain = worth_weighing(job, cloth, white, base, false);
        let stands = plain.first().is_some_and(|way| {
            let (needed, held) = way.matting(job, cloth);
            held < needed
        });
        ways.extend(plain);
        if stands {
            ways.extend(worth_weighing(job, cloth, white, base, true));
        }
    }
    ways
}

/// The thinnest way that covers even where the shop's film wanders thin and, under a smoothing screen, lays the nap
/// down; then the heavy one, if it differs.
fn worth_weighing<'a>(
    job: &'a Job,
    cloth: &Cloth,
    white: &'a White,
    base: Option<&'a Base>,
    smoothing: bool,
) -> Vec<Candidate<'a>> {
    let most = most_shown(job.order.print.opacity);
    let films: Vec<Candidate<'a>> = job
        .meshes
        .iter()
        .flat_map(|mesh| (1..=MOST_STROKES).map(move |strokes| (mesh, strokes)))
        // A smoothing screen needs a film that has been flashed.
        .filter(|(_, strokes)| !smoothing || *strokes > 1 || base.is_some())
        .filter_map(|(mesh, strokes)| Candidate::new(job, cloth, white, base, mesh, strokes, smoothing))
        .collect();
    let lies = |way: &&Candidate<'_>| {
        let (needed, held) = way.matting(job, cloth);
        !smoothing || held >= needed
    };
    let thinnest = films
        .iter()
        .filter(|way| way.look_at(job, cloth, 1.0 - job.dryer.drift.film).garment_shows <= most)
        .filter(lies)
        .min_by(|a, b| a.film.total_cmp(&b.film))
        .or_else(|| films.iter().max_by(|a, b| a.film.total_cmp(&b.film)));
    let heavy = films
        .iter()
        .min_by(|a, b| (a.film - ANCHOR_FILM).abs().total_cmp(&(b.film - ANCHOR_FILM).abs()))
        .filter(|_| cloth.dyed.is_some() && white.dye_capacity > 0.0)
        .filter(|heavy| thinnest.is_none_or(|thin| heavy.film > thin.film * 1.1));
    thinnest.into_iter().chain(heavy).copied().collect()
}

/// The hue by which the travelling dye is drawn, degrees. A cloth of hardly any chroma is a mixture, and the dye of it
/// that travels first is taken as red (its hue is not the cloth's); common practice, no source.
#[must_use]
pub fn travelling_hue(lab: Lab) -> f64 {
    if lab.chroma() < 12.0 { 20.0 } else { lab.hue() }
}
