//! A flash gels a film to the touch and does not fuse it.

use super::common::{an_order, best, library};
use whitehold::cure::{fuse, gelled_at, trace};
use whitehold::dryer::{Film, FlashUnit, Stack, TOLERANCE, flash};
use whitehold::library::cure_kinetics;
use whitehold::numerics::Lanes;
use whitehold::plan::{PrintStep, Role};
use whitehold::quantity::Share;
use whitehold::quantity::units::{celsius, kelvin};
use whitehold::textile::Construction::{Canvas, Fleece, Interlock, Jersey, Mesh};
use whitehold::textile::Fibre::{Cotton, Nylon, Polyester};

/// Film surface at the end of a flash, °C. Common practice, no source.
const GEL_RANGE: std::ops::RangeInclusive<f64> = 82.0..=121.0;

/// Cloth, g/m², and how long its flash takes, s. Source: common practice, no source: gelled to the touch at 82 to 121 °C
/// after 3 to 8 s, longer on canvas; a little under and over on a warm and on a cold pallet.
#[test]
fn gelled_to_the_touch_and_not_fused() {
    let rows = [
        (Cotton, Jersey, 150.0, 3.0..6.0),
        (Cotton, Jersey, 180.0, 3.0..6.0),
        (Polyester, Interlock, 150.0, 2.5..5.0),
        (Nylon, Mesh, 110.0, 2.5..5.0),
        (Cotton, Fleece, 320.0, 3.0..5.0),
        (Cotton, Canvas, 340.0, 5.0..10.0),
    ];
    let share = Share(library().limits.gelled_share.value);
    for (fibre, make, weight, usual) in rows {
        let cloth = library().fabric(&[(fibre, 1.0)].into(), make, weight).expect("a fabric");
        let stack = Stack::garment(Film { thickness: 70e-6, density: Film::DENSITY }, &cloth, Share(0.55));
        for (pallet, ink) in [(25.0, "ordinary"), (25.0, "low-cure"), (55.0, "ordinary"), (55.0, "low-cure")]
        {
            let case = format!("{fibre:?} {make:?} {weight} g/m², pallet {pallet} °C, {ink}");
            let unit = FlashUnit { pallet: kelvin(pallet), ..FlashUnit::USUAL };
            let kinetics = cure_kinetics(library().kinetics_record(ink).expect("an ink"));
            let run =
                |seconds: f64| flash::<1>(&stack, &unit, Lanes::splat(seconds), TOLERANCE).expect(&case);
            let long = run(25.0);
            let seconds = gelled_at(&long, |sample| sample.film_bottom, &kinetics, share).expect(&case);
            assert!(usual.contains(&seconds), "{case}: {seconds:.1} s, usual {usual:?}");
            let surface = celsius(run(seconds).film_peak()[0]);
            assert!(GEL_RANGE.contains(&surface), "{case}: {surface:.0} °C after {seconds:.1} s");
            let short = run(seconds);
            let at_end = short.samples.iter().position(|sample| sample.time[0] >= seconds).expect(&case);
            let gelled = trace(&short, |sample| sample.film_bottom, &kinetics)[at_end].gelled[0];
            assert!((gelled - share.0).abs() < 0.01, "{case}: gelled {gelled:.3} at its end");
            let fused = fuse(&short, |sample| sample.film_bottom, &kinetics).fused[0];
            assert!(fused < 0.01, "{case}: fused {fused:.3}");
        }
    }
}

/// The same of the answer: what the desk and the job sheet write. Source: as above.
#[test]
fn an_answer_flashes_as_long_as_the_trade() {
    let rows = [
        ("100% cotton jersey 150 gsm black", "chalk"),
        ("100% polyester interlock 150 gsm white", "chalk"),
        ("100% nylon mesh 110 gsm green", "hawser"),
        ("100% cotton fleece 320 gsm black", "chalk"),
        ("100% cotton canvas 340 gsm navy", "chalk"),
    ];
    for (label, white) in rows {
        let order = an_order().label(label).shelf(&[white]).print(|print| print.role = Role::Underbase);
        let report = order.answered();
        let flash = best(&report).steps.iter().find_map(|step| match step {
            PrintStep::Flash { seconds, film_c } => Some((*seconds, *film_c)),
            _ => None,
        });
        let (seconds, film_c) = flash.unwrap_or_else(|| panic!("{label}: no flash"));
        assert!((2.0..10.0).contains(&seconds), "{label}: {seconds:.1} s");
        assert!(GEL_RANGE.contains(&film_c), "{label}: {film_c:.0} °C after {seconds:.1} s");
    }
}
