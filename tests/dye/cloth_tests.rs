//! The dye that a cloth releases stands at the level that heat-fastness tests of it see.
//!
//! Two standards press dyed cloth against something white and grade the stain by ISO 105-A03: ISO 105-P01 (dry heat, 30 s at
//! 150, 180 or 210 °C) and ISO 105-X10 (plasticised PVC at 80 °C; 16 h from memory). Usual grades of deep polyester are common
//! practice, no source. The level of the release is checked against them before anything is fitted to how often prints turn.

use super::common::library;
use whitehold::migration::{ClothTest, DyedCloth, crosses};
use whitehold::optics::{DyeAbsorption, FreshPrint, Spectrum, WhiteFilm, staining_grade};
use whitehold::plan::{Colour, Garment, Order};
use whitehold::quantity::units::kelvin;

/// A deep polyester of sportswear, as an order for it is resolved.
fn sportswear(colour: &str) -> DyedCloth {
    let garment = Garment {
        label: "100% polyester interlock 150 g/m2".into(),
        colour: Colour { name: colour.into(), lab: None },
        ..Garment::default()
    };
    let order = Order { garments: vec![garment], ..super::common::an_order().build() };
    let job = whitehold::library::job(&order, library()).expect("a sound order");
    job.cloths[0].dyed.expect("dyed polyester")
}

/// Staining grade of a white of this scattering power (times 50 µm) that takes up so much dye (kg/m²) in its outer 50 µm.
fn grade(dye: f64, scatters: f64) -> f64 {
    let depth = 50e-6;
    let white = WhiteFilm::new(scatters / depth, 0.85).expect("a white");
    let fresh = FreshPrint::new(depth, &white, &Spectrum::flat(0.8));
    let stained = fresh.stained(&DyeAbsorption::of_hue(0.5), dye / depth);
    staining_grade(fresh.lab(), stained).value
}

/// Grades of usual cloth: deep sportswear stains polyester to 3 to 4 at 180 °C, to 4 to 5 at 150 °C, and a foil of PVC to 3 to 4
/// (common practice, no source). Computed within a grade of that. What the white scatters is assumed: 1.5 over the depth that
/// takes the dye, as a white knit or foil just hides at three times that depth.
#[test]
fn grades_of_heat_fastness_are_the_usual_ones() {
    let cloth = sportswear("black");
    let rows = [
        ("ISO 105-P01, 150 °C 30 s", kelvin(150.0), 30.0, [4.0, 5.0]),
        ("ISO 105-P01, 180 °C 30 s", kelvin(180.0), 30.0, [3.0, 4.0]),
        ("ISO 105-P01, 210 °C 30 s", kelvin(210.0), 30.0, [1.5, 3.0]),
        ("ISO 105-X10, 80 °C 16 h", kelvin(80.0), 57_600.0, [3.0, 4.0]),
    ];
    for (test, temperature, seconds, [low, high]) in rows {
        let [freed, loose] = crosses(&cloth, temperature, seconds);
        let found = grade(freed + loose, 1.5);
        println!(
            "{test}: {:.1} + {:.1} mg/m², grade {found:.2}, usual {low} to {high}",
            freed * 1e6,
            loose * 1e6
        );
        assert!((low - 1.0..=high + 1.0).contains(&found), "{test}: {found:.2} for {low} to {high}");
    }
    // The hotter, the worse.
    assert!(ClothTest::IsoP01.usual().0 > kelvin(150.0));
}
