//! Films that take up dye and spread it, and a whole forecast.

use super::Row;
use super::timing::time;
use crate::dye_films;
use crate::scenarios::Failure;
use std::hint::black_box;

/// The rows of one film and of a whole forecast. Their peer is in Python: the tool adds it in rows of its own.
///
/// # Errors
/// [`Failure`] if the order cannot be answered.
pub fn rows() -> Result<Vec<Row>, Failure> {
    let row = |name: &str, ours: f64, unit, accuracy: &str| Row {
        name: name.into(),
        ours,
        peer: None,
        unit,
        accuracy: accuracy.into(),
    };
    let took = |work: fn()| {
        time(|| {
            work();
            Ok(())
        })
    };
    let alone = took(dye_films::solve_all::<1>)? / dye_films::COUNT;
    let lanes = took(dye_films::solve_all::<8>)? / dye_films::COUNT / 8.0;
    let forecast = dye_films::forecast(&whitehold::library::starter()?)?;
    let whole = time(|| {
        let forecast = whitehold::library::forecast_at(&forecast, None);
        black_box(forecast.map_err(|errors| format!("{errors:?}"))?);
        Ok(())
    })?;
    Ok(vec![
        row("one film with dye, alone", alone, "us a film", "30 steps"),
        row("one film with dye, of eight in lanes", lanes, "us a film", "30 steps"),
        row(
            "a 90-day forecast over all worlds",
            whole,
            "us a forecast",
            "its two histories of eight worlds included",
        ),
    ])
}
