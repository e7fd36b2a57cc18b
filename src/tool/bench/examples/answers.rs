//! How long each demo order's answer takes, natively.
#![allow(clippy::unwrap_used)]
use std::time::Instant;
use whitehold::library::{answer, harbour_lane, starter};
fn main() {
    let library = starter().unwrap();
    let mut all = Vec::new();
    for order in harbour_lane().unwrap().orders {
        let start = Instant::now();
        let n = 40;
        for _ in 0..n {
            std::hint::black_box(answer(&order.order, &library)).ok();
        }
        let ms = start.elapsed().as_secs_f64() * 1e3 / f64::from(n);
        let report = answer(&order.order, &library);
        let (verdict, picks, rejected) = report
            .as_ref()
            .map_or((String::new(), 0, 0), |r| (format!("{:?}", r.verdict), r.picks.len(), r.rejected.len()));
        println!("{:8} {ms:8.2} ms {verdict} picks {picks} rejected {rejected}", order.id);
        all.push(ms);
    }
    all.sort_by(f64::total_cmp);
    println!("median {:.1} max {:.1}", all[all.len() / 2], all[all.len() - 1]);
}
