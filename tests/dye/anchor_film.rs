//! The film that the deposit hands over is the film that the trade's experience of bleeding is stated at.

use super::common::{an_order, library};
use crate::anchor_cases::{AnchorRecord, anchors};
use whitehold::ink::{Mesh, USUAL_TRANSFER, WhiteRecord, deposit};
use whitehold::library;
use whitehold::plan::{ANCHOR_FILM, Order, PrintStep, assess_white};

/// Film of white at which the trade knows how often cloth bleeds into it, µm. Common practice, no source.
const KNOWN_AT: [f64; 2] = [90.0, 110.0];

/// Source: 90 to 110 µm, common practice, no source. Film in µm of two strokes at the prior, and the transfer that each
/// mesh would need for the middle of it, from plain-weave geometry worked in Python.
#[test]
fn two_strokes_of_the_coarsest_mesh_lay_the_film_of_the_anchors() {
    // The range of `USUAL_TRANSFER`.
    let most = 0.7;
    let (film, [thin, thick]) = (ANCHOR_FILM * 1e6, KNOWN_AT);
    let rows = [
        ("mesh-32", 96.2, 0.676),
        ("mesh-43", 71.6, 0.908),
        ("mesh-48", 64.2, 1.013),
        ("mesh-61", 49.5, 1.314),
    ];
    for (id, laid, needed) in rows {
        let record = library().meshes.iter().find(|mesh| mesh.id == id).expect("a mesh of the library");
        let mesh = Mesh::try_from(record).expect("a mesh that can be woven");
        let found = deposit(&mesh, USUAL_TRANSFER, 2) * 1e6;
        assert!((found - laid).abs() < 0.05, "{id}: {found} µm");
        let transfer = film / (deposit(&mesh, 1.0, 2) * 1e6);
        assert!((transfer - needed).abs() < 5e-4, "{id}: {transfer}");
        // Only the coarsest mesh reaches it within what a mesh can give.
        let reaches = (thin..=thick).contains(&found);
        assert_eq!(reaches, id == "mesh-32", "{id}: {found} µm");
        assert_eq!(transfer <= most, id == "mesh-32", "{id}: {transfer}");
    }
}

fn order_of(anchor: &AnchorRecord, white: &str) -> Order {
    let order = an_order().label(&anchor.label).colour(&anchor.colour).shelf(&[white]);
    let order = order.garment(|garment| garment.dye_class = anchor.dye_class);
    order.build()
}

/// Every anchor whose white blocks and lies on the cloth itself is computed at a film of 90 to 110 µm, less the holes of
/// the cloth; a mesh, which is full of them, is left out.
#[test]
fn anchors_are_computed_at_the_film_they_are_stated_at() {
    let [thin, thick] = KNOWN_AT;
    let mut looked_at = 0;
    for anchor in anchors().iter().filter(|anchor| {
        !anchor.blocker && anchor.stretch_white_percent == 0.0 && !anchor.label.contains("mesh")
    }) {
        let same =
            |white: &&WhiteRecord| white.class == anchor.white_class && white.low_cure == anchor.low_cure;
        let record = library().whites.iter().find(same).expect("a white of the class");
        if library().white(record).expect("resolves").dye_capacity <= 0.0 {
            continue;
        }
        let job = library::job(&order_of(anchor, &record.id), library()).expect("a readable order");
        let pick = assess_white(&job, &record.id, false).expect("it integrates").expect("an open window");
        let film = pick.steps.iter().rev().find_map(|step| match step {
            PrintStep::White { film_um, .. } => Some(*film_um),
            _ => None,
        });
        let film = film.expect("white is printed");
        assert!((thin..=thick).contains(&film), "{}: {film:.1} µm", anchor.id);
        looked_at += 1;
    }
    assert!(looked_at >= 10, "only {looked_at}");
}
