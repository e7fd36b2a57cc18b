//! Films that bind a part of their dye, as `tests/peer/sheet.py` solves them too: time is the path, the integral of D dt.

use crate::journeys::Failure;
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
/// Further paths after which the film is looked at, m².
const PATHS: [f64; 5] = [0.0, 2e-10, 1e-9, 5e-9, 2e-8];
/// Steps between two looks.
const BETWEEN: usize = 4;

/// Free dye in the top 30 µm at every look, kg/m³: one film in each lane.
#[must_use]
pub fn tops<const L: usize>([film, capacity, arrives]: [f64; 3]) -> [f64; PATHS.len()] {
    let layer = FilmLayer { thickness: film, capacity, diffusivity: 1.0 };
    let mut sheet = DyeProfile::<L>::clean(layer, None);
    for _ in 0..10 {
        let (path, arrives) = (Lanes::splat(HEAT / 10.0), Lanes::splat(arrives / 10.0));
        sheet.step(&DyeStep { path, arrives, ..DyeStep::NONE });
    }
    let mut had = 0.0;
    PATHS.map(|path| {
        for _ in 0..BETWEEN {
            let part = (path - had) / BETWEEN as f64;
            sheet.step(&DyeStep { path: Lanes::splat(part), ..DyeStep::NONE });
        }
        had = path;
        sheet.top()[0]
    })
}

/// The films with what ours finds, for a solver that knows nothing of ours.
#[must_use]
pub fn written() -> Value {
    let film = |film: &[f64; 3]| json!({ "film": film, "tops": tops::<1>(*film) });
    json!({ "heat": HEAT, "paths": PATHS, "films": FILMS.iter().map(film).collect::<Vec<_>>() })
}

/// All films once, `L` side by side in each.
pub fn all<const L: usize>() {
    for film in FILMS {
        black_box(tops::<L>(film));
    }
}

/// How many there are.
pub const COUNT: f64 = FILMS.len() as f64;

/// A forecast ready to be asked for any set point: red polyester interlock, a white that blocks.
///
/// # Errors
/// Where the order cannot be answered.
pub fn forecast(library: &Library) -> Result<(Order, PickForecast), Failure> {
    let told = |errors: Vec<whitehold::quantity::FieldError>| format!("{errors:?}");
    let garment = Garment { label: "100% polyester interlock 150 gsm red".into(), ..Garment::default() };
    let shop = Shop { shelf: vec!["gannet".into()], dryer: "long-kiln".into(), ..Shop::default() };
    let order = Order { garments: vec![garment], shop, ..Order::default() };
    let report = library::answer(&order, library).map_err(told)?;
    let pick = report.picks.first().ok_or("no way to print")?;
    let forecast = library::pick_forecast(&order, library, pick).map_err(told)?.ok_or("no dye")?;
    Ok((order, forecast))
}
