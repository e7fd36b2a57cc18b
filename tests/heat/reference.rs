//! The cloths, the dryer and the inks of the reference, `tests/peer/rows.py`, and their histories.

use whitehold::cure::fuse;
use whitehold::dryer::{
    Belt, Case, Cooling, DriftCase, DriftRange, Dryer, Emitter, Film, HeatTransfer, History, Stack,
    TOLERANCE, Zone, history,
};
use whitehold::ink::CureKinetics;
use whitehold::library::{cure_kinetics, starter};
use whitehold::numerics::Lanes;
use whitehold::numerics::rosenbrock::Tolerance;
use whitehold::quantity::Share;
use whitehold::quantity::units::kelvin;
use whitehold::textile::{Construction, Fabric, Fibre};

/// A cloth by its dry weight (g/m²), thickness (mm) and shares, with the values of the reference.
pub(super) fn cloth(weight: f64, thickness: f64, shares: &[(Fibre, f64)]) -> Fabric {
    let (mut volume, mut heat, mut slope, mut regain) = (0.0, 0.0, 0.0, 0.0);
    for &(fibre, share) in shares {
        // density kg/m³, specific heat J/(kg K), its slope, regain at 65 % RH
        let [density, at_25c, rise, regain_65] = match fibre {
            Fibre::Cotton => [1540.0, 1250.0, 3.0, 0.075],
            Fibre::Polyester => [1390.0, 1030.0, 4.0, 0.004],
            Fibre::Nylon => [1140.0, 1450.0, 5.0, 0.041],
            Fibre::Viscose => [1520.0, 1350.0, 3.5, 0.13],
            _ => [1150.0, 1500.0, 3.0, 0.012],
        };
        volume += share * density;
        heat += share * at_25c;
        slope += share * rise;
        regain += share * regain_65;
    }
    let fill = weight / thickness / volume;
    let (fibre, air) = (0.20, 0.031);
    let conductivity = 0.5 * (fill * fibre + (1.0 - fill) * air) + 0.5 / (fill / fibre + (1.0 - fill) / air);
    Fabric {
        composition: shares.iter().copied().collect(),
        construction: Construction::Jersey,
        areal_mass: weight / 1000.0,
        thickness: thickness / 1000.0,
        conductivity,
        heat_capacity: heat,
        heat_capacity_slope: slope,
        regain_65: regain,
        open_area: 0.0,
        nap: 0.0,
        stretch: 0.0,
    }
}

pub(super) fn cotton() -> Fabric {
    cloth(150.0, 0.6, &[(Fibre::Cotton, 1.0)])
}

pub(super) fn polyester() -> Fabric {
    cloth(140.0, 0.45, &[(Fibre::Polyester, 1.0)])
}

pub(super) fn fleece(weight: f64, thickness: f64) -> Fabric {
    cloth(weight, thickness, &[(Fibre::Cotton, 0.8), (Fibre::Polyester, 0.2)])
}

/// A garment of this cloth under a film of some µm in a room of 65 % RH.
pub(super) fn printed(cloth: &Fabric, film: f64) -> Stack {
    Stack::garment(Film { thickness: film * 1e-6, density: 1300.0 }, cloth, Share(0.65))
}

/// The dryer of the reference: one zone of 1.8 m whose panel is `panel` kelvin hotter than its air.
pub(super) fn dryer(panel: f64) -> Dryer {
    Dryer {
        id: "reference".into(),
        name: "reference".into(),
        zones: vec![Zone {
            length: 1.8,
            air_offset: 0.0,
            h_top: HeatTransfer::measured(30.0),
            h_bottom: HeatTransfer::measured(15.0),
            panel_offset: Some(panel),
            exchange: 0.15,
            emitter: Emitter::MidInfrared,
        }],
        belt: Belt {
            heat_capacity: 600.0,
            contact: 40.0,
            entry_temperature: kelvin(70.0),
            slowest: 0.01,
            fastest: 0.2,
        },
        set_low: kelvin(110.0),
        set_high: kelvin(220.0),
        step: 1.0,
        humidity_ratio: 0.012,
        cooling: Cooling::Open,
        drift: DriftRange { air: 0.0, panel: 0.0, h: 0.0, exchange: 0.0, film: 0.0, stop: 0.0 },
        measured: false,
    }
}

/// The kinetics of the reference, °C and s: they stay when those that ship are calibrated anew.
pub(super) fn kinetics_of_reference(id: &str) -> CureKinetics {
    let ships = cure_kinetics(starter().expect("the library").kinetics_record(id).expect("a kind of ink"));
    let half_fused = kelvin(if id == "ordinary" { 148.0 } else { 122.0 });
    CureKinetics { half_fused, width: 4.0, fusion_time: 6.0, ..ships }
}

/// The history at a set temperature (°C) and dwells (s), side by side.
pub(super) fn at_dwells<const L: usize>(
    stack: &Stack,
    dryer: &Dryer,
    set: f64,
    dwells: [f64; L],
    tolerance: Tolerance,
) -> History<L> {
    let cases = dwells.map(|dwell| Case {
        set: kelvin(set),
        belt: dryer.heated_length() / dwell,
        drift: DriftCase::NOMINAL,
    });
    history(stack, dryer, &cases, 1, tolerance).expect("a sound stack")
}

pub(super) fn at_dwell(stack: &Stack, dryer: &Dryer, set: f64, dwell: f64) -> History<1> {
    at_dwells(stack, dryer, set, [dwell], TOLERANCE)
}

pub(super) fn fused<const L: usize>(history: &History<L>, ink: &CureKinetics) -> Lanes<L> {
    fuse(history, |sample| sample.film_bottom, ink).fused
}
