//! Films that bind a part of their dye, as `tests/peer/sheet.py` solves them too. In place of time they have the diffusion
//! path, the integral of D dt.

use crate::scenarios::Failure;
use serde_json::{Value, json};
use std::hint::black_box;
use whitehold::library::{self, Library};
use whitehold::migration::{DyeProfile, DyeStep, FilmLayer};
use whitehold::numerics::Lanes;
use whitehold::plan::{Garment, Order, PickForecast, Shop};

/// Film (m), capacity (kg/m³) and dye (kg/m²) that heat drives in. Those of `tests/dye/sheet.rs`.
const FILMS: [[f64; 3]; 4] =
    [[100e-6, 4.0, 250e-6], [100e-6, 4.0, 450e-6], [60e-6, 1.0, 80e-6], [100e-6, 0.0, 50e-6]];
/// Path of the heat, m², cut into ten steps.
const HEAT: f64 = 1e-9;
/// Further paths after which the film is examined, m².
const PATHS: [f64; 5] = [0.0, 2e-10, 1e-9, 5e-9, 2e-8];
/// Steps from one of them to the next.
const BETWEEN: usize = 4;

/// Free dye in the top 30 µm after each of those paths, kg/m³, in the first of `L` lanes that all hold this film.
#[must_use]
pub fn tops<const L: usize>([film, capacity, arrives]: [f64; 3]) -> [f64; PATHS.len()] {
    let layer = FilmLayer { thickness: film, capacity, diffusivity: 1.0 };
    let mut profile = DyeProfile::<L>::clean(layer, None);
    for _ in 0..10 {
        let (path, arrives) = (Lanes::splat(HEAT / 10.0), Lanes::splat(arrives / 10.0));
        profile.step(&DyeStep { path, arrives, ..DyeStep::NONE });
    }
    let mut done = 0.0;
    PATHS.map(|path| {
        for _ in 0..BETWEEN {
            let part = (path - done) / BETWEEN as f64;
            profile.step(&DyeStep { path: Lanes::splat(part), ..DyeStep::NONE });
        }
        done = path;
        profile.top()[0]
    })
}

/// The films as JSON with what our solver finds, for a solver that shares nothing with it.
#[must_use]
pub fn export() -> Value {
    let film = |film: &[f64; 3]| json!({ "film": film, "tops": tops::<1>(*film) });
    json!({ "heat": HEAT, "paths": PATHS, "films": FILMS.iter().map(film).collect::<Vec<_>>() })
}

/// Solves every film once, in `L` lanes.
pub fn solve_all<const L: usize>() {
    for film in FILMS {
        black_box(tops::<L>(film));
    }
}

/// How many films there are.
pub const COUNT: f64 = FILMS.len() as f64;

/// The forecast of red polyester interlock in a white that blocks.
///
/// # Errors
/// [`Failure`] if the order cannot be answered.
pub fn forecast(library: &Library) -> Result<PickForecast, Failure> {
    let as_text = |errors: Vec<whitehold::quantity::FieldError>| format!("{errors:?}");
    let garment = Garment { label: "100% polyester interlock 150 gsm red".into(), ..Garment::default() };
    let shop = Shop { shelf: vec!["gannet".into()], dryer: "long-kiln".into(), ..Shop::default() };
    let order = Order { garments: vec![garment], shop, ..Order::default() };
    let report = library::answer(&order, library).map_err(as_text)?;
    let pick = report.picks.first().ok_or("no way to print")?;
    library::pick_forecast(&order, library, pick).map_err(as_text)?.ok_or_else(|| "no dye".into())
}
