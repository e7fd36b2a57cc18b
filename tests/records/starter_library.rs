//! The library that ships is whole: every file parses, every number lies in its own range and says where it
//! comes from, every id is unique and resolves, every composition makes 100.

use serde_json::Value;
use std::collections::BTreeSet;
use std::path::PathBuf;
use whitehold::ink::{Mesh, WhiteClass};
use whitehold::library::{self, Library};
use whitehold::quantity::{GAS_CONSTANT, Problem, units};
use whitehold::textile::{Composition, Construction, Depth, DyeEnergy, Fibre, Shade, label};

fn starter() -> Library {
    library::starter().unwrap()
}

/// Every file of `data/`, by name.
fn files() -> Vec<(String, Value)> {
    let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("data");
    let mut files: Vec<_> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|kind| kind == "json"))
        .map(|path| {
            let name = path.file_name().unwrap().to_string_lossy().into_owned();
            (name, serde_json::from_str(&std::fs::read_to_string(&path).unwrap()).unwrap())
        })
        .collect();
    files.sort_by(|a, b| a.0.cmp(&b.0));
    files
}

/// Calls `look` with every object inside `value` and where it stands.
fn each_object(path: &str, value: &Value, look: &mut impl FnMut(&str, &serde_json::Map<String, Value>)) {
    match value {
        Value::Object(fields) => {
            look(path, fields);
            fields.iter().for_each(|(name, value)| each_object(&format!("{path}.{name}"), value, look));
        }
        Value::Array(items) => {
            items
                .iter()
                .enumerate()
                .for_each(|(at, value)| each_object(&format!("{path}[{at}]"), value, look));
        }
        _ => {}
    }
}

#[test]
fn every_number_lies_in_its_range_and_says_where_it_comes_from() {
    let mut numbers = 0;
    for (file, value) in files() {
        each_object(&file, &value, &mut |at, fields| {
            if let Some(source) = fields.get("source") {
                assert!(source.as_str().is_some_and(|text| text.len() > 5), "{at}: no source");
            }
            let Some(range) = fields.get("range") else { return };
            numbers += 1;
            let [low, value, high] =
                [&range[0], &fields["value"], &range[1]].map(|number| number.as_f64().unwrap());
            assert!(low <= value && value <= high, "{at}: {value} outside {low} to {high}");
            assert!(!fields["unit"].as_str().unwrap().is_empty(), "{at}: no unit");
            assert!(fields.contains_key("source"), "{at}: no source");
        });
    }
    assert!(numbers > 400, "only {numbers} numbers were looked at");
}

#[test]
fn every_id_is_unique_in_its_file() {
    for (file, value) in files() {
        let Value::Array(records) = &value else { continue };
        let key = ["id", "fibre", "construction", "class", "energy"]
            .into_iter()
            .find(|key| records[0].get(key).is_some())
            .unwrap_or_else(|| panic!("{file}: no key"));
        let ids: Vec<_> = records.iter().map(|record| record[key].as_str().unwrap()).collect();
        let unique: BTreeSet<_> = ids.iter().collect();
        assert_eq!(unique.len(), ids.len(), "{file}: an id stands twice");
    }
}

#[test]
fn the_tables_hold_every_kind_the_code_knows() {
    let library = starter();
    for fibre in Fibre::ALL {
        library.fibre(fibre).unwrap();
    }
    for construction in Construction::ALL {
        library.construction(construction).unwrap();
    }
    for class in [
        WhiteClass::Polyester,
        WhiteClass::LowBleed,
        WhiteClass::NonGhosting,
        WhiteClass::Cotton,
        WhiteClass::Soft,
        WhiteClass::Stretch,
        WhiteClass::Nylon,
    ] {
        library.white_class(class).unwrap();
        assert!(library.whites.iter().any(|white| white.class == class && !white.low_cure), "{class:?}");
    }
    for energy in [DyeEnergy::Low, DyeEnergy::Medium, DyeEnergy::High] {
        let class = library.dye_class(energy).unwrap();
        assert_eq!(library.dye(&class.typical_dye).unwrap().energy, energy);
    }
    assert!(library.fabrics.len() >= 34 && library.colours.len() >= 45 && library.dryers.len() == 3);
}

#[test]
fn every_cloth_makes_100_and_comes_to_a_plausible_thickness() {
    let library = starter();
    for record in &library.fabrics {
        let sum: f64 = record.composition_percent.values().sum();
        assert!((sum - 100.0).abs() < 1e-9, "{}: {sum}", record.id);
        let fabric = library.fabric_of(record).unwrap();
        assert!((1e-4..3e-3).contains(&fabric.thickness), "{}: {} m", record.id, fabric.thickness);
        assert!((0.03..0.12).contains(&fabric.conductivity), "{}: {}", record.id, fabric.conductivity);
    }
}

#[test]
fn every_white_blocker_and_mesh_resolves_to_plain_values() {
    let library = starter();
    for record in &library.whites {
        let white = library.white(record).unwrap();
        assert!(white.dye_capacity < 0.01 && white.dye_capacity_spread >= 1.0, "{}", white.id);
        assert!((1e4..1e6).contains(&white.scattering), "{}", white.id);
        let cooler = units::celsius(white.kinetics.half_fused) < 140.0;
        assert_eq!(cooler, white.low_cure, "{}", white.id);
    }
    for record in &library.meshes {
        let mesh = Mesh::try_from(record).unwrap();
        let pitch = 1.0 / mesh.threads_per_m;
        assert!(mesh.thread < pitch && mesh.thickness > mesh.thread, "{}: no opening left", mesh.id);
    }
}

/// Source: thickness of single jersey 140 to 180 g/m² 0.45 to 0.70 mm, interlock of 200 g/m² 0.8 to 1.0 mm, fleece
/// of 280 to 320 g/m² 1.3 to 2.0 mm, conductivity of jersey 0.035 to 0.055 W/(m K): ranges of the thermal-comfort
/// literature (Alambeta testers), from memory.
#[test]
fn thickness_and_conductivity_meet_the_thermal_comfort_literature() {
    let library = starter();
    for (composition, construction, weight, thick_mm) in [
        ([(Fibre::Cotton, 1.0)], Construction::Jersey, 150.0, 0.45..0.70),
        ([(Fibre::Cotton, 1.0)], Construction::Interlock, 200.0, 0.80..1.00),
        ([(Fibre::Polyester, 1.0)], Construction::Interlock, 145.0, 0.45..0.90),
        ([(Fibre::Cotton, 1.0)], Construction::Fleece, 280.0, 1.30..2.00),
    ] {
        let fabric = library.fabric(&Composition::from(composition), construction, weight).unwrap();
        let thickness = fabric.thickness * 1000.0;
        assert!(thick_mm.contains(&thickness), "{composition:?} {construction:?}: {thickness} mm");
        assert!((0.035..0.055).contains(&fabric.conductivity), "{construction:?}: {}", fabric.conductivity);
    }
}

/// Source: by hand. 50/50 of densities 1540 and 1390 kg/m³ is 1 / (0.5/1540 + 0.5/1390) = 1461.16 kg/m³; regain
/// 0.5 × 0.075 + 0.5 × 0.004 = 0.0395; dry mass 0.185 / 1.0395 = 0.177970 kg/m²; heat capacity (1250 + 1030) / 2.
#[test]
fn a_blend_is_mixed_by_mass_and_its_density_by_volume() {
    let composition = Composition::from([(Fibre::Cotton, 0.5), (Fibre::Polyester, 0.5)]);
    let fabric = starter().fabric(&composition, Construction::Jersey, 185.0).unwrap();
    let fill = 0.163;
    for (what, value, expected) in [
        ("regain", fabric.regain_65, 0.0395),
        ("dry mass", fabric.areal_mass, 0.177_970),
        ("heat capacity", fabric.heat_capacity, 1140.0),
        ("thickness", fabric.thickness, 0.177_970 / 1461.16 / fill),
    ] {
        assert!((value / expected - 1.0).abs() < 1e-5, "{what}: {value}, expected {expected}");
    }
}

/// Source: `chemicals.vapor_pressure.Antoine(T, A, B, C, base=e)` of the package `chemicals` 1.5.2 on its own
/// Landolt-Börnstein rows, Pa, at 130, 160 and 200 °C; Red 60 and Yellow 3 from the table of liquids, Red 60
/// brought to the solid by Clausius and Clapeyron's law with its heat of melting (38.5 kJ/mol at 458 K, from memory).
#[test]
fn vapour_pressures_equal_the_package_they_came_from() {
    let library = starter();
    for (celsius, liquid) in [(130.0, 0.045_360_4), (160.0, 0.849_454)] {
        let kelvin = units::kelvin(celsius);
        let expected = liquid * (-38.5e3 / GAS_CONSTANT * (1.0 / kelvin - 1.0 / 458.0)).exp();
        let value = library.dye("disperse-red-60").unwrap().vapour_pressure(kelvin);
        assert!((value / expected - 1.0).abs() < 1e-3, "at {celsius} °C: {value} for {expected} Pa");
    }
    for (dye, pascal) in [
        ("disperse-red-9", [0.704_563, 9.13378, 167.801]),
        ("disperse-orange-25", [0.011_861, 0.248_851, 7.89993]),
        ("disperse-violet-1", [0.004_847_75, 0.104_734, 3.2027]),
        ("disperse-blue-56", [0.030_521_2, 0.215_214, 1.97955]),
        ("disperse-yellow-54", [0.001_867_08, 0.032_767_3, 0.849_244]),
        ("disperse-yellow-3", [0.525_911, 4.73924, 57.6007]),
    ] {
        for (celsius, expected) in [130.0, 160.0, 200.0].into_iter().zip(pascal) {
            let value = library.dye(dye).unwrap().vapour_pressure(units::kelvin(celsius));
            assert!((value / expected - 1.0).abs() < 1e-5, "{dye} at {celsius} °C: {value} Pa");
        }
    }
}

/// Source: energy classes of disperse dyes by how they are dyed (carrier at the boil: low; high temperature or thermofixing
/// near 210 °C: high), dyeing handbooks, from memory.
#[test]
fn energy_classes_are_those_of_dyeing() {
    use DyeEnergy::{High, Low};
    let library = starter();
    for (dye, energy) in [
        ("disperse-red-9", Low),
        ("disperse-red-60", Low),
        ("disperse-blue-56", Low),
        ("disperse-yellow-3", Low),
        ("disperse-yellow-54", Low),
        ("disperse-blue-79", High),
    ] {
        assert_eq!(library.dye(dye).unwrap().energy, energy, "{dye}");
    }
    for dye in &library.dyes {
        assert!(dye.valid_k[0] < dye.valid_k[1], "{}", dye.id);
    }
}

#[test]
fn an_unknown_id_names_the_nearest_and_what_is_accepted() {
    let library = starter();
    let error = library.white_record("gannet-cold").unwrap_err();
    let Problem::Unknown { nearest, accepted } = error.problem else { panic!("{error}") };
    assert_eq!(nearest.first().map(String::as_str), Some("gannet-cool"));
    assert!(accepted.contains(&"tern".to_owned()));
    assert!(matches!(library.colour("rojp").unwrap_err().problem,
        Problem::Unknown { nearest, .. } if nearest.contains(&"rojo".to_owned())));
}

#[test]
fn a_cloth_outside_the_bounds_is_refused_by_name() {
    let library = starter();
    let cotton = Composition::from([(Fibre::Cotton, 1.0)]);
    for weight in [f64::NAN, -1.0, 19.0, 601.0] {
        let error = library.fabric(&cotton, Construction::Jersey, weight).unwrap_err();
        assert_eq!(error.field, "areal_weight_gsm");
    }
    for shares in [vec![], vec![(Fibre::Cotton, 0.5)], vec![(Fibre::Cotton, 2.0), (Fibre::Silk, -1.0)]] {
        let error = library.fabric(&shares.into_iter().collect(), Construction::Jersey, 150.0).unwrap_err();
        assert!(matches!(error.problem, Problem::SumNot100 { .. }), "{error}");
    }
}

#[test]
fn colours_answer_to_either_language() {
    let library = starter();
    for (name, id) in [
        ("Red", "red"),
        ("ROJO", "red"),
        ("azul  marino", "navy"),
        ("Navy-Blue", "navy"),
        ("marrón", "brown"),
        ("marron", "brown"),
        ("limón", "lemon"),
        ("hot pink", "hot-pink"),
    ] {
        assert_eq!(library.colour(name).unwrap().id, id, "{name}");
    }
    let mut names = BTreeSet::new();
    for colour in &library.colours {
        let own: BTreeSet<_> = colour.names().map(whitehold::textile::spelling::fold).collect();
        for name in own {
            assert!(names.insert(name.clone()), "{name:?} stands for two colours");
        }
        let [lightness, a, b] = colour.lab;
        assert!((0.0..=100.0).contains(&lightness) && a.hypot(b) < 110.0, "{}", colour.id);
        // A pale shade is a light colour, a deep one is not unless it glows.
        assert!(colour.depth != Depth::Pale || lightness > 70.0, "{}: {lightness}", colour.id);
        let glows = colour.shade == Shade::Fluorescent;
        assert!(colour.depth != Depth::Deep || glows || lightness < 70.0, "{}: {lightness}", colour.id);
    }
}

#[test]
fn the_demo_room_stands_on_records_that_exist() {
    let library = starter();
    let room = library::harbour_lane().unwrap();
    assert_eq!(room.orders.len(), 12);
    library.dryer(&room.dryer).unwrap();
    for id in &room.shelf {
        assert!(library.white_record(id).is_ok() || library.blocker(id).is_ok(), "{id}");
    }
    let mut ids = BTreeSet::new();
    for library::RoomOrder { id, order, .. } in &room.orders {
        assert!(ids.insert(id), "{id} stands twice");
        assert_eq!(order.shop.shelf, room.shelf, "{id}");
        assert_eq!(order.shop.dryer, room.dryer, "{id}");
        assert!(order.other.is_empty(), "{id}: unknown field {:?}", order.other);
        for garment in &order.garments {
            assert!(garment.colour.name.is_empty(), "{id}: the label says the colour");
            let read = label::read(&garment.label).unwrap_or_else(|errors| panic!("{id}: {errors:?}"));
            let colour = read.colour.unwrap_or_else(|| panic!("{id}: no colour"));
            library.colour(&colour).unwrap();
            let composition = read.body.composition();
            let construction = read.construction.unwrap_or_else(|| panic!("{id}: no construction"));
            let weight = read.areal_weight_gsm.unwrap_or_else(|| panic!("{id}: no weight"));
            library.fabric(&composition, construction, weight).unwrap();
            assert!(read.notes.is_empty(), "{id}: {:?}", read.notes);
        }
    }
}
