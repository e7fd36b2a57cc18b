//! probe
use whitehold::library::*;
use whitehold::plan::*;
#[test]
fn probe() {
    let lib = starter().unwrap();
    let room = harbour_lane().unwrap();
    for o in &room.orders {
        let t = std::time::Instant::now();
        match answer(&o.order, &lib) {
            Ok(r) => {
                println!(
                    "\n== {} {} {} [{:?}] {:?} {:?}",
                    o.id,
                    o.title,
                    o.order.garments[0].label,
                    r.verdict,
                    o.order.print.priority,
                    t.elapsed()
                );
                for p in &r.picks {
                    let s = p.setting.unwrap();
                    println!(
                        "  {:?} {} {:?} low {} fail {:.3} ({:.3}-{:.3}) set {:.0} panel {:.0?} belt {:.2} dwell {:.0} hold belt {:.2} cost {:.2} rate {:.0} steps {}",
                        p.verdict,
                        p.name,
                        p.class,
                        p.low_cure,
                        p.fail_later.likely,
                        p.fail_later.low,
                        p.fail_later.high,
                        s.set_c,
                        s.panel_c,
                        s.belt_m_per_min,
                        s.dwell_s,
                        s.hold_belt_m_per_min,
                        p.cost_per_print.likely,
                        p.rate_per_hour.likely,
                        serde_json::to_string(&p.steps).unwrap()
                    );
                    println!(
                        "      {}",
                        p.margins
                            .iter()
                            .map(|m| format!(
                                "{:?} {:.2}/{:.2}/{:.2} lim {:.1}",
                                m.what, m.value.low, m.value.likely, m.value.high, m.limit
                            ))
                            .collect::<Vec<_>>()
                            .join("; ")
                    );
                    println!(
                        "      why {:?} advice {:?} first {:?}",
                        p.reasons.iter().map(|r| r.code).collect::<Vec<_>>(),
                        p.advice,
                        p.first_piece
                    );
                }
                for x in &r.rejected {
                    println!(
                        "  rejected {} {:?}",
                        x.name,
                        x.reasons.iter().map(|r| r.code).collect::<Vec<_>>()
                    );
                }
                println!(
                    "  possible {:?}",
                    r.to_make_it_possible
                        .iter()
                        .map(|r| serde_json::to_string(r).unwrap())
                        .collect::<Vec<_>>()
                );
                println!(
                    "  unknown {:?}",
                    r.unknowns.iter().map(|u| (u.ask.code, u.worth)).collect::<Vec<_>>()
                );
                if let Some(p) = r.picks.first() {
                    let t = std::time::Instant::now();
                    let w = window(&o.order, &lib, p, None).unwrap();
                    println!("  window {:?} room {:?}", t.elapsed(), w.room);
                }
            }
            Err(e) => println!("ERR {} {:?}", o.id, e),
        }
    }
}
