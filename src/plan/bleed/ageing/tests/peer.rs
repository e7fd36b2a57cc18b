//! Dragged settings against a method of lines, `tests/peer/dragged.py`: dye that heat brings, and dye in the top layer on
//! the day that matters.

use super::*;
use crate::ink::{White, WhiteClass};
use crate::plan::order::{Garment, HeatEvent, Order, Print, Shop, Use};
use serde_json::{Value, json};

/// What the peer found: for each case its print, set temperature (°C), dwell (s), dye that heat brings (mg/m²) and dye in
/// the top layer on the day that matters (kg/m³).
const FOUND: &str = include_str!("../../../../../tests/dye/dragged.json");
/// Set temperature, °C, and dwell, s, of each case of a print, from where it is set to where a hand may drag it.
const SETTINGS: [[[f64; 2]; 4]; 2] = [
    [[152.0, 50.0], [180.0, 60.0], [216.0, 66.0], [200.0, 123.0]],
    [[160.0, 90.0], [190.0, 60.0], [216.0, 78.0], [220.0, 140.0]],
];

/// An order, whether a blocker lies under its white, and the white.
fn prints() -> Vec<(Order, bool, &'static str)> {
    let order = |label: &str, white: &str, dryer: &str| {
        let garment = Garment { label: format!("{label} red"), ..Garment::default() };
        let shop = Shop { shelf: vec![white.into(), "slate".into()], dryer: dryer.into(), ..Shop::default() };
        Order { garments: vec![garment], shop, ..Order::default() }
    };
    let interlock = "100% polyester interlock 150 gsm";
    let blend = "50% cotton 50% polyester jersey 185 gsm";
    let mut pressed = order(blend, "gannet", "long-kiln");
    let event = HeatEvent { what: "pressed names".into(), temp_c: 165.0, seconds: 30.0 };
    pressed.print = Print { heat_after: vec![event], reducer_percent: 3.0, ..pressed.print };
    let used = |order: Order, used: Use| Order { use_: used, ..order };
    let hot = Use { stacked_hot: true, container_days: 20.0, ..Use::default() };
    vec![
        (order(interlock, "gannet", "long-kiln"), false, "gannet"),
        (order(interlock, "tern", "gas-galley"), false, "tern"),
        (order(interlock, "tern", "long-kiln"), true, "tern"),
        (order(blend, "gannet", "long-kiln"), false, "gannet"),
        (order(blend, "chalk", "gas-galley"), false, "chalk"),
        (pressed, false, "gannet"),
        (used(order(interlock, "gannet", "long-kiln"), hot), false, "gannet"),
        (
            used(
                order(blend, "tern", "long-kiln"),
                Use { faced: false, looked_at_after_days: 30.0, ..Use::default() },
            ),
            false,
            "tern",
        ),
        (order("65% polyester 35% cotton fleece 280 gsm", "plover-cool", "long-kiln"), false, "plover-cool"),
        (order("100% polyester mesh 140 gsm", "gannet-cool", "gas-galley"), false, "gannet-cool"),
    ]
}

/// The capacities and kinetics that the peer's table was worked with.
fn as_in_the_table(white: &mut White) {
    white.dye_capacity = match white.class {
        WhiteClass::Polyester => 7.5e-3,
        WhiteClass::LowBleed => 2.95e-3,
        WhiteClass::NonGhosting => 2.1e-3,
        _ => white.dye_capacity,
    };
    white.kinetics.half_fused = kelvin(if white.low_cure { 122.0 } else { 148.0 });
    white.kinetics.fusion_time = 6.0;
}

/// Hands each case to `seen`: number of its print, its setting, its film and its history.
fn each(mut seen: impl FnMut(usize, [f64; 2], &Ageing, &History<1>, &ExposureInputs<'_>)) {
    let library = starter().expect("the starter library parses");
    for (nth, (order, blocked, white)) in prints().into_iter().enumerate() {
        let mut job = job(&order, &library).unwrap_or_else(|errors| panic!("print {nth}: {errors:?}"));
        job.whites.iter_mut().for_each(as_in_the_table);
        let cloth = &job.cloths[0];
        let dyed = cloth.dyed.expect("dye");
        let white = job.whites.iter().find(|on_shelf| on_shelf.id == white).expect("on the shelf");
        let candidate = candidates(&job, cloth, white, &job.blockers)
            .into_iter()
            .find(|candidate| candidate.blocker.is_some() == blocked)
            .expect("a recipe");
        let after = heat_after(&job);
        for [set_c, dwell] in SETTINGS[nth % 2] {
            let belt = job.dryer.heated_length() / dwell;
            let case = Case { set: kelvin(set_c), belt, drift: DriftCase::NOMINAL };
            let history = history(&stack_of(&job, cloth, &candidate), &job.dryer, &[case], 1, TOLERANCE);
            let history = history.expect("it integrates");
            let inputs = ExposureInputs {
                dyed: &dyed,
                diffusion: job.rules.film_diffusion.with_reducer(Percent(order.print.reducer_percent)),
                kinetics: &candidate.white.kinetics,
                before: Release::NONE,
                after: &after,
            };
            let ageing = Ageing::new(&job, &dyed, &candidate, None, &history);
            let flashed = flashed(&job, &candidate, None);
            assert_eq!(flashed, Release::NONE, "the cases leave flashes out");
            seen(nth, [set_c, dwell], &ageing, &history, &inputs);
        }
    }
}

/// Dye that heat brings, kg/m², and dye in the top layer on the day that matters, kg/m³.
fn ours(ageing: &Ageing) -> [f64; 2] {
    let arrives = ageing.dyed.arrives(&ageing.released)[0];
    let mut top = 0.0;
    let cases = AgeingCases::lots(Lanes([arrives]), arrives);
    ageing.run(&cases, &[ageing.looked_at], |_, profile| top = profile.top()[0]);
    [arrives, top]
}

/// Source: `tests/peer/dragged.py`, SciPy's BDF on 160 cells of its own, its own quadrature of release, loss and path.
#[test]
fn dye_at_forty_dragged_settings_against_a_method_of_lines() {
    let found: Vec<[f64; 5]> = serde_json::from_str(FOUND).expect("the peer's table parses");
    let mut rows = found.into_iter();
    each(|nth, [set_c, dwell], ageing, _, _| {
        let [print, set, seconds, brought, top] = rows.next().expect("a row for each case");
        let same = [nth as f64 - print, set_c - set, dwell - seconds].iter().all(|apart| apart.abs() < 1e-9);
        assert!(
            same,
            "the table has print {print} at {set} °C, {seconds} s where the case is {nth} at {set_c} °C, {dwell} s"
        );
        let [arrives, here] = ours(ageing);
        let off = [arrives * 1e6 / brought - 1.0, (here - top) / (top + 1e-3)].map(f64::abs);
        assert!(off[0] < 0.0025, "print {nth}, {set_c} °C {dwell} s: {arrives} for {brought} mg/m²");
        assert!(off[1] < 0.04, "print {nth}, {set_c} °C {dwell} s: {here} for {top} kg/m³");
    });
    assert!(rows.next().is_none(), "the table has more rows than there are cases");
}

/// Prints the cases for the peer: `cargo test -p whitehold --lib cases_for_the_peer -- --ignored --nocapture`.
#[test]
#[ignore = "prints the cases for tests/peer/dragged.py"]
fn cases_for_the_peer() {
    let mut cases = Vec::new();
    each(|nth, [set_c, dwell], ageing, history, inputs| {
        let layer = |layer: &FilmLayer| json!([layer.thickness, layer.capacity, layer.diffusivity]);
        let mut layers: Vec<Value> = ageing.blocker.iter().map(layer).collect();
        layers.push(layer(&ageing.white));
        let dyed = inputs.dyed;
        let ink = inputs.kinetics;
        let pair = |place: [Lanes<1>; 2]| place.map(|lanes| lanes[0]);
        let samples = history.samples.iter();
        let samples: Vec<Value> = samples
            .map(|sample| json!([sample.time[0], pair(sample.film_bottom), pair(sample.cloth_face)]))
            .collect();
        let stays = ageing.storage.iter().map(|stay| json!([stay.seconds.min(1e300), stay.low, stay.high]));
        let [arrives, top] = ours(ageing);
        cases.push(json!({
            "print": nth, "set": set_c, "dwell": dwell, "layers": layers, "samples": samples,
            "dye": {
                "vapour": dyed.dye.vapour, "molar_mass": dyed.dye.molar_mass, "diffusivity": dyed.dye.diffusivity_130c,
                "energy": dyed.dye.diffusion_energy, "share": dyed.share, "on_fibre": dyed.on_fibre,
                "areal_mass": dyed.areal_mass, "surface": dyed.surface,
            },
            "film": [inputs.diffusion.at_25c, inputs.diffusion.energy],
            "ink": {
                "gel_time": ink.gel_time, "gel_reference": ink.gel_reference, "gel_energy": ink.gel_energy,
                "fusion_time": ink.fusion_time, "fusion_reference": ink.fusion_reference,
                "fusion_energy": ink.fusion_energy, "half_fused": ink.half_fused, "width": ink.width,
            },
            "after": inputs.after, "stays": stays.collect::<Vec<_>>(), "faced": ageing.faced,
            "looked_at": ageing.looked_at, "ours": [arrives * 1e6, top],
        }));
    });
    println!("{}", json!(cases));
}
