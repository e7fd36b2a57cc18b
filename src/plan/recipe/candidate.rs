//! Ways to lay the white down.

use crate::ink::{self, DepositedFilm, Mesh, Substrate, White, deposit, film_needed, reduced_body, smoothed};
use crate::optics::{Lab, Spectrum, WhiteFilm, ciede2000};
use crate::plan::order::{BlockerBase, Cloth, Job, Mix, Opacity, Role};
use crate::plan::report::Recipe;

/// What is laid on the cloth, through whatever mesh: a white, perhaps with adhesion additive in it, over the cloth or a
/// blocker.
#[derive(Clone, Copy, Debug)]
pub struct InkLayer<'a> {
    /// The white, pure or mixed.
    pub white: &'a White,
    /// The blocker under it.
    pub blocker: Option<&'a BlockerBase>,
    /// Whether adhesion additive is stirred in.
    pub additive: bool,
    optics: WhiteFilm,
    endless: Lab,
    under: Spectrum,
}

impl<'a> InkLayer<'a> {
    /// A layer on this cloth; `None` for a white whose optics cannot be.
    #[must_use]
    pub fn new(
        cloth: &Cloth,
        white: &'a White,
        blocker: Option<&'a BlockerBase>,
        additive: bool,
    ) -> Option<Self> {
        let optics = white.optics().ok()?;
        let under = blocker.map_or(cloth.spectrum, |blocker| Spectrum::flat(blocker.reflectance));
        Some(Self { white, blocker, additive, endless: optics.endless(), optics, under })
    }
}

/// One way: a layer through a mesh in so many strokes, perhaps with a smoothing screen.
#[derive(Clone, Copy, Debug)]
pub struct Candidate<'a> {
    /// The white.
    pub white: &'a White,
    /// The blocker under it.
    pub blocker: Option<&'a BlockerBase>,
    /// Whether adhesion additive is stirred in.
    pub additive: bool,
    /// The mesh.
    pub mesh: &'a Mesh,
    /// Strokes through it, a flash between two.
    pub strokes: u32,
    /// Whether a smoothing screen presses the nap into the first flashed film.
    pub smoothing: bool,
    /// Whether the cloth is dried before it is printed.
    pub dried: bool,
    /// Film of white, m.
    pub film: f64,
    layer: InkLayer<'a>,
}

/// Most strokes of white; each more costs a flash and a station. Common practice, no source.
pub const MOST_STROKES: u32 = 2;

impl<'a> Candidate<'a> {
    /// A way to lay a layer on this cloth.
    #[must_use]
    pub fn new(
        job: &Job,
        cloth: &Cloth,
        layer: InkLayer<'a>,
        mesh: &'a Mesh,
        strokes: u32,
        smoothing: bool,
    ) -> Self {
        let film = film_on(job, cloth, mesh, strokes);
        let InkLayer { white, blocker, additive, .. } = layer;
        Self { white, blocker, additive, mesh, strokes, smoothing, dried: false, film, layer }
    }

    /// The same through the same screens with another layer.
    #[must_use]
    pub fn of(&self, layer: InkLayer<'a>) -> Self {
        let InkLayer { white, blocker, additive, .. } = layer;
        Self { white, blocker, additive, layer, ..*self }
    }

    /// The candidate of a recipe on this cloth; `None` where the shop has not all that it names.
    #[must_use]
    pub fn of_recipe(job: &'a Job, cloth: &Cloth, recipe: &Recipe) -> Option<Self> {
        let white = match &recipe.mixture {
            None => job.whites.iter().find(|white| white.id == recipe.white)?,
            Some(mixture) => {
                let made = |mix: &&Mix| mix.of == recipe.white && mix.mixture == *mixture;
                &job.mixes.iter().find(made)?.white
            }
        };
        let blocker = match &recipe.blocker {
            None => None,
            Some(id) => {
                Some(job.blockers.iter().chain(&job.market_blockers).find(|blocker| blocker.id == *id)?)
            }
        };
        let mesh = job.meshes.iter().find(|mesh| mesh.id == recipe.mesh)?;
        let layer = InkLayer::new(cloth, white, blocker, recipe.additive)?;
        let candidate = Self::new(job, cloth, layer, mesh, recipe.strokes.max(1), recipe.smoothing);
        Some(candidate.with_cloth(recipe.predried))
    }

    /// Its recipe.
    #[must_use]
    pub fn recipe(&self, job: &Job) -> Recipe {
        let mix = job.mixes.iter().find(|mix| mix.white.id == self.white.id);
        Recipe {
            white: mix.map_or(&self.white.id, |mix| &mix.of).clone(),
            mixture: mix.map(|mix| mix.mixture.clone()),
            additive: self.additive,
            blocker: self.blocker.map(|blocker| blocker.id.clone()),
            mesh: self.mesh.id.clone(),
            strokes: self.strokes,
            smoothing: self.smoothing,
            predried: self.dried,
        }
    }

    /// Film of white and blocker together, m.
    #[must_use]
    pub fn total_film(&self) -> f64 {
        self.film + self.blocker.map_or(0.0, |blocker| blocker.film)
    }

    /// Mass of all that is printed, kg/m².
    #[must_use]
    pub fn mass(&self) -> f64 {
        self.film * self.white.density + self.blocker.map_or(0.0, |blocker| blocker.film * blocker.density)
    }

    /// How the white lies on this cloth, its film so many times the planned one.
    #[must_use]
    pub fn lay(&self, job: &Job, cloth: &Cloth, times: f64) -> DepositedFilm {
        let film = times * self.film / f64::from(self.strokes);
        let below = self.blocker.map_or(0.0, |blocker| blocker.film);
        DepositedFilm::new(
            film,
            self.strokes,
            &Substrate { nap: self.nap(cloth), film: below, body: self.body(job) },
        )
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

    /// What the print looks like with a film so many times the planned one.
    #[must_use]
    pub fn look(&self, job: &Job, cloth: &Cloth, times: f64) -> ink::FilmOpacity {
        ink::opacity(&self.lay(job, cloth, times), &self.layer.optics, &self.layer.under)
    }

    /// How much of the garment shows with a film so many times the planned one, ΔE00: one number of [`Self::look`].
    #[must_use]
    pub fn shows(&self, job: &Job, cloth: &Cloth, times: f64) -> f64 {
        let colour = ink::colour(&self.lay(job, cloth, times), &self.layer.optics, &self.layer.under);
        ciede2000(self.layer.endless, colour)
    }

    /// True where the print covers as the order asks even where the shop's film wanders thin.
    #[must_use]
    pub fn covers(&self, job: &Job, cloth: &Cloth) -> bool {
        self.shows(job, cloth, 1.0 - job.dryer.drift.film) <= most_shown(job.order.print.opacity)
    }

    /// True where the nap of the cloth stands through the film.
    #[must_use]
    pub fn nap_stands(&self, job: &Job, cloth: &Cloth) -> bool {
        let (needed, held) = self.matting(job, cloth);
        held < needed
    }

    /// True where the nap would stand through the film without a smoothing screen.
    #[must_use]
    pub fn wants_smoothing(&self, job: &Job, cloth: &Cloth) -> bool {
        let (_, held) = self.matting(job, cloth);
        held < film_needed(cloth.fabric.nap)
    }

    /// Flashes of this way: one after each film that another lies on. An underbase is flashed before its colours, and a
    /// highlight is printed on ink that was flashed.
    #[must_use]
    pub fn flashes(&self, job: &Job) -> u32 {
        let alone = job.order.print.role == Role::TopWhite;
        self.strokes.saturating_sub(1) + u32::from(self.blocker.is_some()) + u32::from(!alone)
    }

    /// The same on cloth that is dried before, or printed as it lies.
    #[must_use]
    pub fn with_cloth(&self, dried: bool) -> Self {
        Self { dried, ..*self }
    }

    /// The same with a smoothing screen; `None` where no film has been flashed before the last stroke.
    #[must_use]
    pub fn smoothed(&self) -> Option<Self> {
        (self.strokes > 1 || self.blocker.is_some()).then_some(Self { smoothing: true, ..*self })
    }

    /// The same with one stroke more.
    #[must_use]
    pub fn with_one_stroke_more(&self, job: &Job, cloth: &Cloth) -> Self {
        let more = Self::new(job, cloth, self.layer, self.mesh, self.strokes + 1, self.smoothing);
        Self { dried: self.dried, ..more }
    }

    /// The same through the next coarser mesh.
    #[must_use]
    pub fn through_coarser_mesh(&self, job: &'a Job, cloth: &Cloth) -> Option<Self> {
        let coarser = job.meshes.iter().filter(|mesh| mesh.volume() > self.mesh.volume());
        let mesh = coarser.min_by(|a, b| a.volume().total_cmp(&b.volume()))?;
        let coarser = Self::new(job, cloth, self.layer, mesh, self.strokes, self.smoothing);
        Some(Self { dried: self.dried, ..coarser })
    }
}

/// The share of the open mesh volume that lies on the cloth: from the shop's own weighed print, or the prior.
fn transfer(job: &Job) -> f64 {
    job.order.shop.transfer.unwrap_or(job.rules.transfer)
}

/// Film that a mesh lays on this cloth, m. A mesh cloth loses film through its holes.
pub fn film_on(job: &Job, cloth: &Cloth, mesh: &Mesh, strokes: u32) -> f64 {
    deposit(mesh, transfer(job), strokes) * (1.0 - cloth.fabric.open_area)
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

/// The hue by which the travelling dye is drawn, degrees. A cloth of hardly any chroma is a mixture, and the dye of it
/// that travels first is taken as red (its hue is not the cloth's); common practice, no source.
#[must_use]
pub fn travelling_hue(lab: Lab) -> f64 {
    if lab.chroma() < 12.0 { 20.0 } else { lab.hue() }
}
