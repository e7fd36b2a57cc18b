use whitehold::library::{self, starter};
use whitehold::plan::*;
#[test]
fn show() {
    let library = starter().expect("library");
    for (label, colour, use_) in [
        ("100% polyester interlock 150 g/m2", "red", Use::default()),
        (
            "50/50 cotton polyester jersey",
            "red",
            Use { stacked_hot: true, container_days: 20.0, ..Use::default() },
        ),
    ] {
        let order = Order {
            garments: vec![Garment {
                label: label.into(),
                colour: Colour { name: colour.into(), lab: None },
                lot: "A".into(),
                ..Garment::default()
            }],
            use_,
            shop: Shop {
                shelf: library
                    .whites
                    .iter()
                    .map(|w| w.id.clone())
                    .chain(library.blockers.iter().map(|b| b.id.clone()))
                    .collect(),
                dryer: "long-kiln".into(),
                ..Shop::default()
            },
            ..Order::default()
        };
        let t = std::time::Instant::now();
        let report = library::answer(&order, &library).expect("an answer");
        println!("answer {} ms", t.elapsed().as_millis());
        for pick in &report.picks {
            let t = std::time::Instant::now();
            let f = library::pick_forecast(&order, &library, pick).expect("f").expect("bleeds");
            let prep = t.elapsed();
            let t = std::time::Instant::now();
            let r = f.report(None).expect("r").expect("r");
            let rep = t.elapsed();
            println!(
                "{} {:?} prep {prep:?} report {rep:?}; fail {:.3} stays {:.3} {:?} bleed margin {:?}",
                pick.white,
                r.verdict,
                pick.fail_later.likely,
                r.stays_white,
                r.first_shows,
                pick.margins.iter().find(|m| m.what == Topic::Bleed).map(|m| m.value)
            );
            for (i, d) in r.days.iter().enumerate() {
                println!(
                    "  {d:6.2} {:.2?} p {:.3} slow {:.2} fast {:.2} cold {:.2} hot {:.2} gated {:.2} open {:.2} warm {:.2}",
                    [r.de00[i].low, r.de00[i].lower, r.de00[i].likely, r.de00[i].upper, r.de00[i].high],
                    r.shows[i],
                    r.worlds.slow_film[i],
                    r.worlds.fast_film[i],
                    r.worlds.cold[i],
                    r.worlds.hot[i],
                    r.worlds.gated[i],
                    r.worlds.open[i],
                    r.worlds.warmer[i]
                );
            }
            println!(
                "  {:?}\n  {:?} rim {:?} {:?}",
                r.ledger,
                r.grades.iter().map(|g| (g.step.text(), g.de00)).collect::<Vec<_>>(),
                r.rim_de00.map(|r| r.likely),
                r.ghosting
            );
            println!("  {:?}", f.oven(24.0, 60.0).expect("o"));
            let t = std::time::Instant::now();
            for _ in 0..20 {
                let s = pick.setting.unwrap();
                let _ = f.report(Some((s.set_c + 5.0, s.belt_m_per_min)));
            }
            println!("  drag {:?}", t.elapsed() / 20);
        }
    }
}
