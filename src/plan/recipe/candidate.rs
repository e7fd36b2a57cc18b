//! Candidates: single ways to print one garment, with their film, cover and nap.

use crate::ink::{self, DepositedFilm, Mesh, Substrate, White, deposit, film_needed, reduced_body, smoothed};
use crate::optics::{Lab, Spectrum, WhiteFilm, ciede2000};
use crate::plan::order::{BlockerBase, Cloth, Job, Mix, Opacity, Role};
use crate::plan::report::Recipe;

/// The inks of a candidate, whatever the mesh: a white, with or without adhesion additive, over the cloth or
/// over a blocker.
#[derive(Clone, Copy, Debug)]
pub struct InkLayer<'a> {
    /// The white, pure or mixed.
    pub white: &'a White,
    /// The blocker under it.
    pub blocker: Option<&'a BlockerBase>,
    /// Whether adhesion additive is stirred in.
    pub additive: bool,
    /// Optical constants of the white.
    optics: WhiteFilm,
    /// Colour of a film of it too thick to see through.
    endless: Lab,
    /// Spectrum under the white: of the cloth or the blocker.
    under: Spectrum,
}

impl<'a> InkLayer<'a> {
    /// A layer on this cloth; `None` if the white's optical constants are not valid.
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

/// One way to print a garment: a layer through a mesh in a number of strokes, with or without a smoothing
/// screen, on cloth that is dried before or not.
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
    /// Strokes through it, with a flash between each two.
    pub strokes: u32,
    /// Whether a smoothing screen presses the nap into the first flashed film.
    pub smoothing: bool,
    /// Whether the cloth is dried before it is printed.
    pub dried: bool,
    /// Film of white, m.
    pub film: f64,
    layer: InkLayer<'a>,
}

/// Most strokes of white that are considered: each further one costs a flash and a station of the press.
/// Common practice, no source.
pub const MOST_STROKES: u32 = 2;

impl<'a> Candidate<'a> {
    /// A candidate on cloth that is not dried before.
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

    /// The same film through the same screens, with another layer.
    #[must_use]
    pub fn of(&self, layer: InkLayer<'a>) -> Self {
        let InkLayer { white, blocker, additive, .. } = layer;
        Self { white, blocker, additive, layer, ..*self }
    }

    /// The candidate of a recipe on this cloth; `None` if the job lacks an ink or a mesh that the recipe
    /// names.
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

    /// The recipe of this candidate, by ids.
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

    /// The white as it is deposited on this cloth; `times` scales the planned film.
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

    /// How well the white, with the order's reducer in it, holds fibres down.
    fn body(&self, job: &Job) -> f64 {
        reduced_body(self.white.body, job.order.print.reducer_percent)
    }

    /// Height of the nap under the white, m: after the smoothing screen, if there is one.
    #[must_use]
    pub fn nap(&self, cloth: &Cloth) -> f64 {
        if self.smoothing { smoothed(cloth.fabric.nap) } else { cloth.fabric.nap }
    }

    /// Film needed to hold this nap down, and the film that counts towards it, m.
    #[must_use]
    pub fn matting(&self, job: &Job, cloth: &Cloth) -> (f64, f64) {
        (film_needed(self.nap(cloth)), self.total_film() * self.body(job))
    }

    /// What the print looks like; `times` scales the planned film.
    #[must_use]
    pub fn look(&self, job: &Job, cloth: &Cloth, times: f64) -> ink::FilmOpacity {
        ink::opacity(&self.lay(job, cloth, times), &self.layer.optics, &self.layer.under)
    }

    /// How much of the garment shows, ΔE00: one number of [`Self::look`], at less cost. `times` scales the
    /// planned film.
    #[must_use]
    pub fn shows(&self, job: &Job, cloth: &Cloth, times: f64) -> f64 {
        let colour = ink::colour(&self.lay(job, cloth, times), &self.layer.optics, &self.layer.under);
        ciede2000(self.layer.endless, colour)
    }

    /// True if the print covers as the order asks even at the thin end of the shop's film drift.
    #[must_use]
    pub fn covers(&self, job: &Job, cloth: &Cloth) -> bool {
        self.shows(job, cloth, 1.0 - job.dryer.drift.film) <= most_shown(job.order.print.opacity)
    }

    /// True if the nap of the cloth stands through the film.
    #[must_use]
    pub fn nap_stands(&self, job: &Job, cloth: &Cloth) -> bool {
        let (needed, held) = self.matting(job, cloth);
        held < needed
    }

    /// True if the nap would stand through the film without a smoothing screen.
    #[must_use]
    pub fn wants_smoothing(&self, job: &Job, cloth: &Cloth) -> bool {
        let (_, held) = self.matting(job, cloth);
        held < film_needed(cloth.fabric.nap)
    }

    /// Flashes of this candidate: one after each film that another is printed on. An underbase is flashed
    /// before its colours, and a highlight is printed on ink that was flashed.
    ///
    /// **Decision:** the role of the white counts, not only its own strokes.
    /// **Because:** each flash is a step at the press, and heat that frees dye from the cloth.
    /// **Measured:** nothing; it follows from the order of the steps at the press (2026-11-28).
    /// **Reconsider when:** a role is added, or colours are printed wet on wet on the white.
    #[must_use]
    pub fn flashes(&self, job: &Job) -> u32 {
        let alone = job.order.print.role == Role::TopWhite;
        self.strokes.saturating_sub(1) + u32::from(self.blocker.is_some()) + u32::from(!alone)
    }

    /// The same on cloth that is dried before (`true`) or printed as it lies (`false`).
    #[must_use]
    pub fn with_cloth(&self, dried: bool) -> Self {
        Self { dried, ..*self }
    }

    /// The same with a smoothing screen; `None` if no film is flashed before the last stroke.
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

    /// The same through the next coarser mesh; `None` if this mesh is the coarsest.
    #[must_use]
    pub fn through_coarser_mesh(&self, job: &'a Job, cloth: &Cloth) -> Option<Self> {
        let coarser = job.meshes.iter().filter(|mesh| mesh.volume() > self.mesh.volume());
        let mesh = coarser.min_by(|a, b| a.volume().total_cmp(&b.volume()))?;
        let coarser = Self::new(job, cloth, self.layer, mesh, self.strokes, self.smoothing);
        Some(Self { dried: self.dried, ..coarser })
    }
}

/// Share of the open mesh volume that is transferred to the cloth: from the shop's own weighed print, or the
/// prior.
fn transfer(job: &Job) -> f64 {
    job.order.shop.transfer.unwrap_or(job.rules.transfer)
}

/// Film of white that a mesh deposits on this cloth in so many strokes, m. Cloth with holes loses the share
/// of its open area.
pub fn film_on(job: &Job, cloth: &Cloth, mesh: &Mesh, strokes: u32) -> f64 {
    deposit(mesh, transfer(job), strokes) * (1.0 - cloth.fabric.open_area)
}

/// How much of the garment may still show: colour difference to a film too thick to see through, ΔE00. 1 is
/// what a trained eye finds, 3 what a customer remarks: common practice, no source.
#[must_use]
pub fn most_shown(opacity: Opacity) -> f64 {
    match opacity {
        Opacity::Soft => 6.0,
        Opacity::Standard => 3.0,
        Opacity::Full => 1.5,
    }
}

/// Film thickness for which the trade's experience of bleeding is stated, m. 90 to 110 µm: common practice,
/// no source. On cloth that bleeds, the recipe nearest to it is always assessed, and the anchors are computed
/// at the film that this recipe lays down.
pub const ANCHOR_FILM: f64 = 100e-6;

/// Hue of the travelling dye, degrees. Cloth of hardly any chroma is dyed with a mixture, and the dye of it
/// that travels first is taken as red, whatever the cloth's own hue; common practice, no source.
#[must_use]
pub fn travelling_hue(lab: Lab) -> f64 {
    if lab.chroma() < 12.0 { 20.0 } else { lab.hue() }
}
