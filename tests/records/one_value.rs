//! A number that stands both in `data/limits.json` and beside its equation is the same number in both places.
//!
//! `data/` is where a shop looks a value up, with its range and source; the equation's own constant is what computes.

use whitehold::dryer::{Cooling, Film, FlashUnit, Stack};
use whitehold::library::starter;
use whitehold::migration::{DyedCloth, VISIBLE_DEPTH};
use whitehold::plan::{ANCHOR_FILM, SCREEN_CHANGE};
use whitehold::quantity::units::celsius;

#[test]
fn data_and_equations_agree() {
    let library = starter().expect("the starter library parses");
    let rows = [
        ("film-heat-capacity", Film::HEAT_CAPACITY),
        ("film-heat-capacity-slope", Film::HEAT_CAPACITY_SLOPE),
        ("film-conductivity", Film::CONDUCTIVITY),
        ("film-cloth-contact", Film::CONTACT),
        ("emissivity-white", Film::EMISSIVITY),
        ("cloth-gap", Stack::GAP),
        ("cooling", Cooling::Open.stages()[0].h_top),
        ("flash-exchange", FlashUnit::USUAL.exchange),
        ("flash-panel", celsius(FlashUnit::USUAL.panel)),
        ("dye-saturation", DyedCloth::SATURATION * 100.0),
        ("dye-in-air", DyedCloth::VAPOUR_DIFFUSIVITY),
        ("vapour-gap", DyedCloth::GAP * 1e6),
        ("contact-share", DyedCloth::CONTACT),
        ("dye-visible-depth", VISIBLE_DEPTH * 1e6),
        ("anchor-film", ANCHOR_FILM * 1e6),
        ("screen-change", SCREEN_CHANGE),
    ];
    for (id, computes) in rows {
        let stands = library.limit(id).unwrap_or_else(|error| panic!("{id}: {error}")).value.value;
        assert!((computes - stands).abs() <= 1e-9 * stands.abs(), "{id}: data {stands}, equation {computes}");
    }
}
