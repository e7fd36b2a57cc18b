//! How long each demo order's answer takes, natively.
#![allow(clippy::unwrap_used)]
use std::time::Instant;
use whitehold::library::{answer, harbour_lane, starter};
fn main() {
    let library = starter().unwrap();
    let mut all = Vec::new();
    let full = std::env::args().any(|arg| arg == "full");
    for mut order in harbour_lane().unwrap().orders {
        if full {
            order.order.shop.shelf = library
                .whites
                .iter()
                .map(|w| w.id.clone())
                .chain(library.blockers.iter().map(|b| b.id.clone()))
                .collect();
        }
        let start = Instant::now();
        let n = if std::env::var("SAY").is_ok() { 1 } else { 20 };
        for _ in 0..n {
            std::hint::black_box(answer(&order.order, &library)).ok();
        }
        let ms = start.elapsed().as_secs_f64() * 1e3 / f64::from(n);
        let report = answer(&order.order, &library);
        let (verdict, picks, rejected) = report
            .as_ref()
            .map_or((String::new(), 0, 0), |r| (format!("{:?}", r.verdict), r.picks.len(), r.rejected.len()));
        let best = report.as_ref().ok().and_then(|r| r.picks.first()).map(|p| {
            format!(
                "{} {:?} {:?} {:.3}",
                p.white,
                p.steps
                    .iter()
                    .filter_map(|s| match s {
                        whitehold::plan::Step::White { threads_per_cm, film_um, .. } =>
                            Some(format!("{threads_per_cm:.0}:{film_um:.0}")),
                        whitehold::plan::Step::Smooth => Some("smooth".into()),
                        whitehold::plan::Step::Blocker { .. } => Some("blocker".into()),
                        _ => None,
                    })
                    .collect::<Vec<_>>(),
                p.additive,
                p.fail_later.likely
            )
        });
        println!("{:8} {ms:8.2} ms {verdict} picks {picks} rejected {rejected} {best:?}", order.id);
        all.push(ms);
    }
    all.sort_by(f64::total_cmp);
    println!("median {:.1} max {:.1}", all[all.len() / 2], all[all.len() - 1]);
}
