//! probe
use whitehold::library::*;
#[test]
fn probe() {
    let lib = starter().unwrap();
    for a in &lib.anchors {
        println!(
            "{:40} {:?} said {:.2} fitted {}",
            a.id,
            anchor_chance(a, &lib, "long-kiln"),
            a.fails.value,
            a.fitted
        );
    }
}
