//! Scenarios as JSON, for a solver that shares nothing with ours: every number in SI, and beside it what our solver finds.

use crate::scenarios::{Failure, Scenario};
use crate::solve::{CureSummary, FINE, FINE_GRID, solve, summaries};
use serde_json::{Value, json};
use whitehold::dryer::{Board, Dryer, Emitter, Film, Stack, StackGrid, TOLERANCE};
use whitehold::textile::Fabric;

/// The scenarios, each with our result as it ships and, if `converges`, with our converged one.
///
/// # Errors
/// [`Failure`] if the solver gives up.
pub fn export(scenarios: &[Scenario], converges: bool) -> Result<Value, Failure> {
    scenarios.iter().map(|scenario| case(scenario, converges)).collect()
}

fn converged(scenario: &Scenario) -> Result<CureSummary, Failure> {
    Ok(summaries(scenario, &solve(scenario, &[scenario.case], FINE_GRID, FINE)?)[0])
}

fn case(scenario: &Scenario, converges: bool) -> Result<Value, Failure> {
    let history = solve(scenario, &[scenario.case], StackGrid::of(&scenario.stack), TOLERANCE)?;
    let ours = summaries(scenario, &history)[0];
    let leaves = history.samples.iter().find(|sample| sample.time[0] >= history.exit_time[0] - 1e-9);
    let water = leaves.map(|sample| sample.water[0]);
    let found = |found: CureSummary| json!({ "peak": found.peak, "fused": found.fused });
    let ink = &scenario.ink;
    Ok(json!({
        "name": scenario.name,
        "set": scenario.case.set,
        "belt_speed": scenario.case.belt,
        "stop": scenario.case.drift.stop,
        "stack": stack(&scenario.stack),
        "dryer": dryer(&scenario.dryer, scenario.case.set),
        "ink": {
            "gel_time": ink.gel_time, "gel_reference": ink.gel_reference, "gel_energy": ink.gel_energy,
            "fusion_time": ink.fusion_time, "fusion_reference": ink.fusion_reference,
            "fusion_energy": ink.fusion_energy, "half_fused": ink.half_fused, "width": ink.width,
        },
        "ours": { "peak": ours.peak, "fused": ours.fused, "water": water },
        "converged": if converges { found(converged(scenario)?) } else { Value::Null },
    }))
}

fn stack(stack: &Stack) -> Value {
    let film = |film: &Film| json!({ "thickness": film.thickness, "density": film.density });
    let cloth = |cloth: &Fabric| {
        json!({
            "areal_mass": cloth.areal_mass, "thickness": cloth.thickness, "conductivity": cloth.conductivity,
            "heat_capacity": cloth.heat_capacity, "heat_capacity_slope": cloth.heat_capacity_slope,
            "regain_65": cloth.regain_65,
        })
    };
    let board = |board: &Board| {
        json!({
            "thickness": board.thickness, "density": Board::DENSITY, "conductivity": Board::CONDUCTIVITY,
            "heat_capacity": Board::HEAT_CAPACITY, "vapour_resistance": Board::VAPOUR_RESISTANCE,
        })
    };
    let light = &stack.near_infrared;
    json!({
        "film": film(&stack.film),
        "blocker": stack.blocker.as_ref().map(film),
        "front": cloth(&stack.front),
        "back": stack.back.as_ref().map(cloth),
        "board": stack.board.as_ref().map(board),
        "gap": stack.gap_conductance,
        "humidity": stack.humidity.0,
        "added_water": stack.added_water,
        "enters": stack.entry_temperature,
        "near_infrared": { "film": light.film, "through": light.through, "cloth": light.cloth },
    })
}

fn dryer(dryer: &Dryer, set: f64) -> Value {
    let zone = |zone: &whitehold::dryer::Zone| {
        let air = set + zone.air_offset;
        let emitter = match zone.emitter {
            Emitter::None => "none",
            Emitter::MidInfrared => "mid-infrared",
            Emitter::NearInfrared => "near-infrared",
        };
        json!({
            "length": zone.length, "air_offset": zone.air_offset, "h_top": zone.h_top.in_air(air),
            "h_bottom": zone.h_bottom.in_air(air), "panel_offset": zone.panel_offset,
            "exchange": zone.exchange, "emitter": emitter,
        })
    };
    let rest = |rest: &whitehold::dryer::CoolingStage| {
        json!({
            "air": rest.air, "h_top": rest.h_top, "h_bottom": rest.h_bottom, "radiates": rest.radiates,
            "seconds": rest.seconds,
        })
    };
    let belt = &dryer.belt;
    json!({
        "zones": dryer.zones.iter().map(zone).collect::<Vec<_>>(),
        "belt": { "heat_capacity": belt.heat_capacity, "contact": belt.contact, "enters": belt.entry_temperature },
        "humidity_ratio": dryer.humidity_ratio,
        "rests": dryer.cooling.stages().iter().map(rest).collect::<Vec<_>>(),
    })
}
