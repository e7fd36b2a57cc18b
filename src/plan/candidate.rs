//! Ways to lay the white down.

use super::{Base, Cloth, Job, Opacity};
use crate::ink::{Mesh, White, contrast_ratio, deposit};
use crate::optics::{Lab, Spectrum, WhiteFilm, ciede2000};

/// One way: a white, perhaps a blocker under it, a mesh and strokes.
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
    /// Film of white, m.
    pub film: f64,
    /// How much of what lies under it still shows, ΔE00.
    pub shows: f64,
    /// Contrast of the film over black against over a white card.
    pub contrast: f64,
}

impl Candidate<'_> {
    /// Film of white and blocker together, m.
    #[must_use]
    pub fn total_film(&self) -> f64 {
        self.film + self.base.map_or(0.0, |base| base.film)
    }
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

/// Film that the trade's experience of bleeding is stated at, m. 90 to 110 µm: common practice, no source.
const ANCHOR_FILM: f64 = 100e-6;

/// The ways worth weighing for one white: the thinnest film that covers, and on cloth that bleeds the one nearest to
/// the heavy film that such cloth is printed with; each also over every blocker at hand.
#[must_use]
pub fn candidates<'a>(
    job: &'a Job,
    cloth: &Cloth,
    white: &'a White,
    bases: &'a [Base],
) -> Vec<Candidate<'a>> {
    let Ok(optics) = white.optics() else { return Vec::new() };
    let most = most_shown(job.order.print.opacity);
    let mut ways = Vec::new();
    let bases = bases.iter().map(Some).filter(|_| cloth.dyed.is_some());
    for base in std::iter::once(None).chain(bases) {
        let backing = match base {
            Some(base) => Spectrum::flat(base.reflectance),
            None => Spectrum::of_cloth(cloth.lab),
        };
        let mut films: Vec<Candidate<'_>> = Vec::new();
        for mesh in &job.meshes {
            for strokes in 1..=2 {
                // A mesh cloth loses film through its holes.
                let film = deposit(mesh, job.rules.transfer, strokes) * (1.0 - cloth.fabric.open_area);
                let (shows, contrast) = cover(film, cloth.fabric.nap, &optics, &backing);
                films.push(Candidate { white, base, mesh, strokes, film, shows, contrast });
            }
        }
        let thinnest = films
            .iter()
            .filter(|way| way.shows <= most)
            .min_by(|a, b| a.film.total_cmp(&b.film))
            .or_else(|| films.iter().max_by(|a, b| a.film.total_cmp(&b.film)));
        let heavy = films
            .iter()
            .min_by(|a, b| (a.film - ANCHOR_FILM).abs().total_cmp(&(b.film - ANCHOR_FILM).abs()))
            .filter(|_| cloth.dyed.is_some() && white.dye_capacity > 0.0);
        ways.extend(thinnest.copied());
        if let Some(heavy) = heavy
            && thinnest.is_none_or(|thin| heavy.film > thin.film * 1.1)
        {
            ways.push(*heavy);
        }
    }
    ways
}

/// How much of what lies under a film still shows (ΔE00 to an endless film), and its contrast ratio.
///
/// A film on cloth is no flat sheet. Part of it sinks between the yarns, and what stays above lies thin over their
/// crowns and thick between them: three equal parts, thinner than the deposit by 0.6, 0.35 and 0.1 of the nap's height
/// but never under a tenth of it, and the light of the three is added. The shares are assumed, no source; with them a
/// dark jersey wants two strokes and a pale one a single one, as the trade knows it.
#[must_use]
pub fn cover(film: f64, nap: f64, white: &WhiteFilm, backing: &Spectrum) -> (f64, f64) {
    let parts = [0.6, 0.35, 0.1].map(|sunk| (film - sunk * nap).max(0.1 * film));
    let [thin, mean, thick] = parts.map(|part| white.over(part, backing));
    let seen = thin.with(&mean, |a, b| a + b).with(&thick, |sum, c| (sum + c) / 3.0);
    let contrast = parts.map(|part| contrast_ratio(part, white)).iter().sum::<f64>() / 3.0;
    (ciede2000(white.endless(), seen.lab()), contrast)
}

/// The hue by which the travelling dye is drawn, degrees. A cloth of hardly any chroma is a mixture, and the dye of it
/// that travels first is taken as red (its hue is not the cloth's); common practice, no source.
#[must_use]
pub fn travelling_hue(lab: Lab) -> f64 {
    if lab.chroma() < 12.0 { 20.0 } else { lab.hue() }
}
