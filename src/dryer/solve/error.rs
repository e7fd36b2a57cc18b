use super::Case;
use crate::dryer::machine::{DriftCase, Dryer};
use crate::dryer::stack::{NearInfrared, Stack};
use crate::numerics::rosenbrock::IntegrationError;
use crate::quantity::{Bound, FieldError};

/// Why a history could not be computed.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum HistoryError {
    /// A value lies outside the range in which the equations hold.
    Outside(FieldError),
    /// The time integration failed.
    Integration(IntegrationError),
}

impl From<IntegrationError> for HistoryError {
    fn from(error: IntegrationError) -> Self {
        Self::Integration(error)
    }
}

impl From<FieldError> for HistoryError {
    fn from(error: FieldError) -> Self {
        Self::Outside(error)
    }
}

impl std::fmt::Display for HistoryError {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Outside(error) => error.fmt(out),
            Self::Integration(error) => error.fmt(out),
        }
    }
}

impl std::error::Error for HistoryError {}

const fn bound(field: &'static str, min: f64, max: f64, unit: &'static str) -> Bound {
    Bound { field, min, max, unit }
}

/// Checks a stack against the range of the equations: from bare cloth to 2.5 mm of film, from bone dry to
/// dripping wet.
pub(super) fn check_stack(stack: &Stack) -> Result<(), FieldError> {
    for film in [Some(&stack.film), stack.blocker.as_ref()].into_iter().flatten() {
        bound("film.thickness", 0.0, 2.5e-3, "m").check(film.thickness)?;
        bound("film.density", 500.0, 3000.0, "kg/m³").check(film.density)?;
    }
    for cloth in [Some(&stack.front), stack.back.as_ref()].into_iter().flatten() {
        bound("cloth.areal_mass", 0.01, 1.0, "kg/m²").check(cloth.areal_mass)?;
        bound("cloth.thickness", 1e-5, 2e-2, "m").check(cloth.thickness)?;
        bound("cloth.conductivity", 0.01, 1.0, "W/(m K)").check(cloth.conductivity)?;
        bound("cloth.heat_capacity", 500.0, 3000.0, "J/(kg K)").check(cloth.heat_capacity)?;
        bound("cloth.heat_capacity_slope", 0.0, 20.0, "J/(kg K²)").check(cloth.heat_capacity_slope)?;
        bound("cloth.regain_65", 0.0, 0.3, "kg/kg").check(cloth.regain_65)?;
    }
    if let Some(board) = &stack.board {
        bound("board.thickness", 1e-4, 2e-2, "m").check(board.thickness)?;
    }
    bound("gap_conductance", 1.0, 1000.0, "W/(m² K)").check(stack.gap_conductance)?;
    bound("humidity", 0.0, 1.0, "1").check(stack.humidity.0)?;
    bound("added_water", 0.0, 2.0, "kg/kg").check(stack.added_water)?;
    bound("entry_temperature", 250.0, 450.0, "K").check(stack.entry_temperature)?;
    let NearInfrared { film, through, cloth } = stack.near_infrared;
    for (field, share) in
        [("near_infrared.film", film), ("near_infrared.through", through), ("near_infrared.cloth", cloth)]
    {
        bound(field, 0.0, 1.0, "1").check(share)?;
    }
    Ok(())
}

/// Checks the zones and the belt of a dryer; reading its record is stricter.
pub(super) fn check_dryer(dryer: &Dryer) -> Result<(), FieldError> {
    bound("zones", 1.0, 64.0, "1").check(dryer.zones.len() as f64)?;
    for zone in &dryer.zones {
        bound("zone.length", 1e-3, 100.0, "m").check(zone.length)?;
        bound("zone.exchange", 0.0, 1.0, "1").check(zone.exchange)?;
    }
    bound("belt.heat_capacity", 10.0, 1e5, "J/(m² K)").check(dryer.belt.heat_capacity)?;
    bound("belt.contact", 0.1, 1e4, "W/(m² K)").check(dryer.belt.contact)?;
    bound("belt.entry_temperature", 230.0, 600.0, "K").check(dryer.belt.entry_temperature)?;
    bound("humidity_ratio", 0.0, 1.0, "kg/kg").check(dryer.humidity_ratio)?;
    Ok(())
}

/// Checks a drift case.
pub(super) fn check_drift_case(drift: &DriftCase) -> Result<(), FieldError> {
    bound("drift.air", -200.0, 200.0, "K").check(drift.air)?;
    bound("drift.panel", -500.0, 500.0, "K").check(drift.panel)?;
    for (field, factor) in
        [("drift.h", drift.h), ("drift.exchange", drift.exchange), ("drift.film", drift.film)]
    {
        bound(field, 0.1, 10.0, "1").check(factor)?;
    }
    bound("drift.water", 0.0, 10.0, "1").check(drift.water)?;
    bound("drift.stop", 0.0, 3600.0, "s").check(drift.stop)?;
    Ok(())
}

/// Checks a case with the air and emitter temperatures that follow from it. The belt must move, though it may
/// stop for a while.
pub(super) fn check_case(case: &Case, dryer: &Dryer) -> Result<(), FieldError> {
    bound("set", 200.0, 1100.0, "K").check(case.set)?;
    bound("belt", 1e-4, 10.0, "m/s").check(case.belt)?;
    bound("dwell", 0.02, 7200.0, "s").check(dryer.heated_length() / case.belt)?;
    check_drift_case(&case.drift)?;
    for zone in &dryer.zones {
        let air = case.set + zone.air_offset + case.drift.air;
        check_air(air)?;
        bound("zone.h_top", 0.1, 2000.0, "W/(m² K)").check(zone.h_top.in_air(air))?;
        bound("zone.h_bottom", 0.1, 2000.0, "W/(m² K)").check(zone.h_bottom.in_air(air))?;
        if let Some(offset) = zone.panel_offset {
            bound("zone.panel", 100.0, 3500.0, "K").check(case.set + offset + case.drift.panel)?;
        }
    }
    Ok(())
}

/// Checks an air temperature against the range of the correlations for water and air.
pub(super) fn check_air(air: f64) -> Result<(), FieldError> {
    bound("zone.air", 230.0, 800.0, "K").check(air).map(|_| ())
}
