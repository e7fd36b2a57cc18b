use whitehold::library::{anchor_chance, starter};
#[test]
fn show() {
    let library = starter().expect("library");
    for anchor in &library.anchors {
        let t = std::time::Instant::now();
        let c = anchor_chance(anchor, &library, "long-kiln");
        println!(
            "{:45} {:.3} want {:.2} {:?} {} ms",
            anchor.id,
            c.unwrap_or(f64::NAN),
            anchor.fails.value,
            anchor.fails.range,
            t.elapsed().as_millis()
        );
    }
}
