//! Times our march on every timed journey, and says how exact it is against a finer grid and a tighter tolerance.
//!
//! `whitehold-bench` for the timed journeys, `whitehold-bench random` for fifty random ones. With the feature `peers`
//! diffsol's BDF stands beside each timed journey, at the relative tolerance of the second word (1e-4 if none is given).

use std::hint::black_box;
use std::time::Instant;
use whitehold::dryer::{Grid, TOLERANCE};
use whitehold_bench::journeys::{Failure, random, timed};
use whitehold_bench::ours::{FINE, FINE_GRID, march, results};

fn main() -> Result<(), Failure> {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let trips = if words.first().is_some_and(|word| word == "random") { random(50)? } else { timed()? };
    let mut sums = [0.0; 2];
    let mut worst = [0.0_f64; 4];
    for trip in &trips {
        let case = [trip.case];
        let exact = results(trip, &march(trip, &case, FINE_GRID, FINE)?)[0];
        let [grid_peak, grid_fused] =
            results(trip, &march(trip, &case, Grid::of(&trip.stack), FINE)?)[0].apart(exact);
        let history = march(trip, &case, Grid::of(&trip.stack), TOLERANCE)?;
        let [peak, fused] = results(trip, &history)[0].apart(exact);
        let eight = trip.at_eight_speeds();
        let exact_eight = results(trip, &march(trip, &eight, FINE_GRID, FINE)?);
        let found_eight = results(trip, &march(trip, &eight, Grid::of(&trip.stack), TOLERANCE)?);
        let apart = found_eight.iter().zip(exact_eight).map(|(found, exact)| found.apart(exact));
        let lanes = apart.fold([0.0_f64; 2], |a, b| [a[0].max(b[0]), a[1].max(b[1])]);
        let alone = median(|| march(trip, &case, Grid::of(&trip.stack), TOLERANCE).map(black_box).map(drop))?;
        let side_by_side =
            median(|| march(trip, &eight, Grid::of(&trip.stack), TOLERANCE).map(black_box).map(drop))? / 8.0;
        println!(
            "{:24} grid {grid_peak:.3} K {grid_fused:.5}, shipped {peak:.3} K {fused:.5}, {}+{} steps, {alone:.1} us; in lanes {:.3} K {:.5}, {side_by_side:.1} us",
            trip.name, history.effort.accepted, history.effort.rejected, lanes[0], lanes[1]
        );
        #[cfg(feature = "peers")]
        beside(trip, exact, &words, alone)?;
        sums = [sums[0] + alone, sums[1] + side_by_side];
        for (worst, found) in worst.iter_mut().zip([peak, fused, lanes[0], lanes[1]]) {
            *worst = worst.max(found);
        }
    }
    let count = trips.len() as f64;
    println!(
        "mean {:.1} us alone, {:.1} us in lanes; worst {:.3} K {:.5} alone, {:.3} K {:.5} in lanes",
        sums[0] / count,
        sums[1] / count,
        worst[0],
        worst[1],
        worst[2],
        worst[3]
    );
    Ok(())
}

/// The peer on the same journey.
#[cfg(feature = "peers")]
fn beside(
    trip: &whitehold_bench::journeys::Trip,
    exact: whitehold_bench::ours::Result,
    words: &[String],
    ours: f64,
) -> Result<(), Failure> {
    use whitehold_bench::peers::{bdf, result};
    let relative = words.get(1).map_or(Ok(1e-4), |word| word.parse())?;
    let journey =
        whitehold::dryer::Equations::new(Grid::of(&trip.stack), &trip.stack, &trip.dryer, &trip.case, 1);
    let course = bdf(&journey, relative)?;
    let [peak, fused] = result(&course, &trip.ink).apart(exact);
    let time = median(|| bdf(&journey, relative).map(black_box).map(drop))?;
    println!(
        "    diffsol at {relative:e}: {peak:.3} K {fused:.5}, {} steps, {time:.1} us, {:.1} of ours",
        course.len(),
        time / ours
    );
    Ok(())
}

/// Median time of one call, us.
fn median(mut work: impl FnMut() -> Result<(), Failure>) -> Result<f64, Failure> {
    const CALLS: u32 = 20;
    let mut times = Vec::new();
    for _ in 0..15 {
        let start = Instant::now();
        for _ in 0..CALLS {
            work()?;
        }
        times.push(start.elapsed().as_secs_f64() / f64::from(CALLS) * 1e6);
    }
    times.sort_by(f64::total_cmp);
    Ok(times[times.len() / 2])
}
