use super::Case;
use crate::dryer::machine::{DriftCase, Dryer};
use crate::dryer::stack::Stack;
use crate::numerics::rosenbrock::IntegrationError;
use crate::quantity::{Bound, FieldError};

/// Why there is no history.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum HistoryError {
    /// A value outside the range in which the equations hold.
    Outside(FieldError),
    /// The march could not be finished.
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

/// Holds a stack to what the equations can follow: from bare cloth to two millimetres of film, from bone dry
/// to dripping.
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
    bound("gap_conductance", 1.0, 1000.0, "W/(m² K)").check(stack.gap_conductance)?;
    bound("humidity", 0.0, 1.0, "1").check(stack.humidity.0)?;
    bound("added_water", 0.0, 2.0, "kg/kg").check(stack.added_water)?;
    bound("entry_temperature", 250.0, 450.0, "K").check(stack.entry_temperature)?;
    for share in [stack.near_infrared.film, stack.near_infrared.through, stack.near_infrared.cloth] {
        bound("near_infrared", 0.0, 1.0, "1").check(share)?;
    }
    Ok(())
}

/// Holds a dryer's zones and belt to the same; its record is read more strictly.
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

pub(super) fn check_drift_case(drift: &DriftCase) -> Result<(), FieldError> {
    bound("drift.air", -200.0, 200.0, "K").check(drift.air)?;
    bound("drift.panel", -500.0, 500.0, "K").check(drift.panel)?;
    for factor in [drift.h, drift.exchange, drift.film] {
        bound("drift", 0.1, 10.0, "1").check(factor)?;
    }
    bound("drift.water", 0.0, 10.0, "1").check(drift.water)?;
    bound("stop", 0.0, 3600.0, "s").check(drift.stop)?;
    Ok(())
}

/// Holds a setting to the same. A belt that stands still for good has no history; one that stops for a while
/// has.
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

/// Holds air to what the fits for water and air cover.
pub(super) fn check_air(air: f64) -> Result<(), FieldError> {
    bound("zone.air", 230.0, 800.0, "K").check(air).map(|_| ())
}
