//! A white stirred into another.
//!
//! Sources: density of a mixture from the volumes of its parts (a mass balance); the two-constant theory of Kubelka and
//! Munk for opaque mixtures (Duncan 1940, from memory), worked here from its textbook form R = 1 + K/S - sqrt((K/S)² + 2 K/S).

use super::common::{an_order, answered, library};
use std::collections::BTreeSet;
use whitehold::ink::{White, WhiteClass};
use whitehold::library::{job, pick_window};
use whitehold::plan::PrintStep;

fn white(id: &str) -> White {
    library().white(library().white_record(id).expect("a white")).expect("a white")
}

#[test]
fn stirred_into_itself_it_stays_what_it_is() {
    for record in &library().whites {
        let plain = white(&record.id);
        let same = plain.with(&plain, 0.4);
        let pairs = [
            (plain.density, same.density),
            (plain.dye_capacity, same.dye_capacity),
            (plain.scattering, same.scattering),
            (plain.reflectance, same.reflectance),
            (plain.stretch, same.stretch),
            (plain.stiffness, same.stiffness),
            (plain.price_per_kg, same.price_per_kg),
        ];
        for (plain, same) in pairs {
            assert!((plain - same).abs() <= 1e-9 * plain.abs(), "{}: {plain} became {same}", record.id);
        }
    }
}

#[test]
fn volumes_and_light_add_as_the_textbook_says() {
    let (a, b) = (white("gannet"), white("shearwater"));
    for share in [0.15, 0.3, 0.5, 0.8] {
        let mix = a.with(&b, share);
        // A kilogram takes up so many litres.
        let litres = (1.0 - share) / a.density + share / b.density;
        assert!((mix.density * litres - 1.0).abs() < 1e-12, "{share}");
        let volumes = [(1.0 - share) / a.density / litres, share / b.density / litres];
        let scatter = volumes[0] * a.scattering + volumes[1] * b.scattering;
        let absorb =
            |white: &White| white.scattering * (1.0 - white.reflectance).powi(2) / (2.0 * white.reflectance);
        let ratio = (volumes[0] * absorb(&a) + volumes[1] * absorb(&b)) / scatter;
        let reflects = 1.0 + ratio - (ratio * ratio + 2.0 * ratio).sqrt();
        assert!((mix.scattering / scatter - 1.0).abs() < 1e-12, "{share}");
        assert!((mix.reflectance - reflects).abs() < 1e-12, "{share}: {} for {reflects}", mix.reflectance);
        // Between its parts in how it bends; what it binds, how often it ghosts and its price go with the mass.
        let between = |value: f64, a: f64, b: f64| value >= a.min(b) && value <= a.max(b);
        assert!(
            between(mix.stretch, a.stretch, b.stretch) && between(mix.stiffness, a.stiffness, b.stiffness)
        );
        let by_mass = [
            ("binds", mix.dye_capacity, a.dye_capacity, b.dye_capacity),
            ("ghosts", mix.ghosting, a.ghosting, b.ghosting),
            ("costs", mix.price_per_kg, a.price_per_kg, b.price_per_kg),
        ];
        for (what, found, a, b) in by_mass {
            let expected = (1.0 - share) * a + share * b;
            assert!(
                (found - expected).abs() < 1e-12 && (a - b).abs() > 1e-9,
                "{what}, {share}: {found} for {expected}"
            );
        }
    }
}

/// Cloth that stretches far asks for more stretch than a plain white has: some of the stretch white goes into it, and the
/// pick says how much, is found again by the page, and lists what it is made of.
#[test]
fn a_mixture_is_picked_where_the_cloth_stretches() {
    let order = an_order().label("92% cotton 8% elastane jersey 180 gsm black").pieces(72);
    let order = order.garment(|garment| garment.stretch_percent = 60.0);
    let order = order.shelf(&["chalk", "shearwater"]).build();
    let job = job(&order, library()).expect("an order");
    let mixed: BTreeSet<&str> = job.mixes.iter().map(|mix| mix.of.as_str()).collect();
    assert_eq!(mixed, ["chalk"].into(), "the stretch white is not mixed with itself");
    let report = answered(&order);
    let mixed = report.picks.iter().find(|pick| !pick.mix.is_empty()).expect("a mixture");
    assert_eq!(mixed.class, WhiteClass::Cotton);
    let (name, percent) = &mixed.mix[0];
    assert_eq!(name, &white("shearwater").name);
    assert!((10.0..=60.0).contains(percent), "{percent} %");
    assert!(mixed.steps.iter().any(|step| matches!(step, PrintStep::White { .. })));
    let window = pick_window(&order, library(), mixed).expect("its window is computed again");
    assert!(window.report(None).expect("a report").is_some());
}
