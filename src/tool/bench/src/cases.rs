//! Trips written down for a solver that knows nothing of ours: every number in SI, beside it what we find.

use crate::journeys::{Failure, Trip};
use crate::ours::{FINE, FINE_GRID, Result as Found, march, results};
use serde_json::{Value, json};
use whitehold::dryer::{Dryer, Emitter, Film, Stack, StackGrid, TOLERANCE};
use whitehold::textile::Fabric;

/// The trips, each with our result as it ships and with our converged one.
///
/// # Errors
/// Where a march gives up.
pub fn written(trips: &[Trip]) -> Result<Value, Failure> {
    trips.iter().map(case).collect()
}

fn case(trip: &Trip) -> Result<Value, Failure> {
    let ours = results(trip, &march(trip, &[trip.case], StackGrid::of(&trip.stack), TOLERANCE)?)[0];
    let converged = results(trip, &march(trip, &[trip.case], FINE_GRID, FINE)?)[0];
    let found = |found: Found| json!({ "peak": found.peak, "fused": found.fused });
    let ink = &trip.ink;
    Ok(json!({
        "name": trip.name,
        "set": trip.case.set,
        "belt_speed": trip.case.belt,
        "stop": trip.case.drift.stop,
        "stack": stack(&trip.stack),
        "dryer": dryer(&trip.dryer, trip.case.set),
        "ink": {
            "gel_time": ink.gel_time, "gel_reference": ink.gel_reference, "gel_energy": ink.gel_energy,
            "fusion_time": ink.fusion_time, "fusion_reference": ink.fusion_reference,
            "fusion_energy": ink.fusion_energy, "half_fused": ink.half_fused, "width": ink.width,
        },
        "ours": found(ours),
        "converged": found(converged),
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
    let light = &stack.near_infrared;
    json!({
        "film": film(&stack.film),
        "blocker": stack.blocker.as_ref().map(film),
        "front": cloth(&stack.front),
        "back": stack.back.as_ref().map(cloth),
        "gap": stack.gap,
        "humidity": stack.humidity,
        "added_water": stack.added_water,
        "enters": stack.enters,
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
        "belt": { "heat_capacity": belt.heat_capacity, "contact": belt.contact, "enters": belt.enters },
        "humidity_ratio": dryer.humidity_ratio,
        "rests": dryer.cooling.stages().iter().map(rest).collect::<Vec<_>>(),
    })
}
