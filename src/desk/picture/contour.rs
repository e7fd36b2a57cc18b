//! Regions of a grid past a limit, as closed polygons.
//!
//! Marching squares: each cell with corners on both sides of zero is cut by straight lines between linear
//! crossings on its edges; a saddle is decided by the mean of its corners. The grid is surrounded by
//! cells of zero width that do not fail, so that every cut closes and the frame needs no special case.

use crate::numerics::sorting::map;

/// A point in axis units.
pub type Point = (f64, f64);

/// A region: its closed outlines (outer ones and holes), and the parts of them that are limits, not frame.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Region {
    /// Closed outlines; the inside is on the left, so holes run clockwise.
    pub outlines: Vec<Vec<Point>>,
    /// The same without the parts along the frame.
    pub walls: Vec<Vec<Point>>,
}

impl Region {
    /// Area of the region, in axis units squared.
    #[must_use]
    pub fn area(&self) -> f64 {
        self.outlines.iter().map(|outline| signed_area(outline)).sum::<f64>().abs()
    }
}

/// Area of a closed outline by the shoelace formula; positive if it runs counter-clockwise.
fn signed_area(outline: &[Point]) -> f64 {
    let after = outline.iter().skip(1).chain(outline.first());
    outline.iter().zip(after).map(|(a, b)| a.0 * b.1 - b.0 * a.1).sum::<f64>() / 2.0
}

/// A grid surrounded by cells of zero width.
struct Ringed<'a> {
    x: &'a [f64],
    y: &'a [f64],
    excess: &'a [f64],
}

impl Ringed<'_> {
    fn columns(&self) -> usize {
        self.x.len() + 2
    }

    fn rows(&self) -> usize {
        self.y.len() + 2
    }

    fn place(&self, column: usize, row: usize) -> Point {
        let held = |axis: &[f64], at: usize| axis[at.saturating_sub(1).min(axis.len() - 1)];
        (held(self.x, column), held(self.y, row))
    }

    /// Excess over the limit. The surrounding cells never fail, and NaN fails.
    fn excess(&self, column: usize, row: usize) -> f64 {
        if column == 0 || row == 0 || column > self.x.len() || row > self.y.len() {
            return f64::NEG_INFINITY;
        }
        let value = self.excess[(row - 1) * self.x.len() + column - 1];
        if value.is_nan() { f64::INFINITY } else { value }
    }
}

/// The region where `excess` is positive. `excess` has a row for each `y`, each with a value for each `x`.
///
/// Returns an empty region for fewer than two values on an axis, or an `excess` of another size.
#[must_use]
pub fn region(x: &[f64], y: &[f64], excess: &[f64]) -> Region {
    if x.len() < 2 || y.len() < 2 || excess.len() != x.len() * y.len() {
        return Region::default();
    }
    let grid = Ringed { x, y, excess };
    let outlines = join(&cuts(&grid));
    let walls = outlines.iter().flat_map(|outline| without_frame(outline, x, y)).collect();
    Region { outlines, walls }
}

/// An edge of the surrounded grid: its lower left end, and whether it runs up.
type Edge = (usize, usize, bool);

/// A cut from an edge to an edge with the failing side on its left, and where it crosses the first.
struct EdgeCut {
    from: Edge,
    to: Edge,
    at: Point,
}

fn cuts(grid: &Ringed<'_>) -> Vec<EdgeCut> {
    let mut cuts = Vec::new();
    for row in 0..grid.rows() - 1 {
        for column in 0..grid.columns() - 1 {
            let corner = |dx: usize, dy: usize| grid.excess(column + dx, row + dy);
            let corners = [corner(0, 0), corner(1, 0), corner(1, 1), corner(0, 1)];
            let fails = corners.map(|value| value > 0.0);
            // Edges counter-clockwise from the bottom; edge k lies between corners k and k + 1.
            let edges: [Edge; 4] = [
                (column, row, false),
                (column + 1, row, true),
                (column, row + 1, false),
                (column, row, true),
            ];
            // Counter-clockwise around the cell, a cut starts where failing turns to not failing, and ends where it
            // turns back.
            let leaves: Vec<usize> = (0..4).filter(|&k| fails[k] && !fails[(k + 1) % 4]).collect();
            let enters: Vec<usize> = (0..4).filter(|&k| !fails[k] && fails[(k + 1) % 4]).collect();
            let saddle_fails = corners.iter().sum::<f64>() > 0.0;
            for (nth, &leave) in leaves.iter().enumerate() {
                // A single cut has one end; at a saddle, the failing corners are joined or separated.
                let next = enters.iter().position(|&enter| enter == (leave + 1) % 4).unwrap_or(nth);
                let enter = match enters.len() {
                    1 => enters[0],
                    _ if saddle_fails => enters[next],
                    _ => enters[1 - next],
                };
                cuts.push(EdgeCut { from: edges[leave], to: edges[enter], at: crossing(grid, edges[leave]) });
            }
        }
    }
    cuts
}

/// Where the excess is zero on an edge.
fn crossing(grid: &Ringed<'_>, (column, row, up): Edge) -> Point {
    let (next_column, next_row) = if up { (column, row + 1) } else { (column + 1, row) };
    let (a, b) = (grid.place(column, row), grid.place(next_column, next_row));
    let (from, to) = (grid.excess(column, row), grid.excess(next_column, next_row));
    let share = if from.is_finite() && to.is_finite() { from / (from - to) } else { 0.5 };
    (a.0 + (b.0 - a.0) * share, a.1 + (b.1 - a.1) * share)
}

/// Joins cuts into closed outlines.
fn join(cuts: &[EdgeCut]) -> Vec<Vec<Point>> {
    let mut open = map(cuts.iter().enumerate().map(|(index, cut)| (cut.from, index)));
    let mut outlines = Vec::new();
    while let Some((_, first)) = open.pop_first() {
        let mut outline = vec![cuts[first].at];
        let mut at = cuts[first].to;
        while let Some(next) = open.remove(&at) {
            outline.push(cuts[next].at);
            at = cuts[next].to;
        }
        outline.dedup();
        if outline.len() > 2 {
            outlines.push(outline);
        }
    }
    outlines
}

/// The runs of an outline that do not lie on the frame.
fn without_frame(outline: &[Point], x: &[f64], y: &[f64]) -> Vec<Vec<Point>> {
    let (left, right) = (x[0], x[x.len() - 1]);
    let (bottom, top) = (y[0], y[y.len() - 1]);
    let same = |a: f64, b: f64, edge: f64| (a - edge).abs() < 1e-9 && (b - edge).abs() < 1e-9;
    let framed = |a: Point, b: Point| {
        same(a.0, b.0, left) || same(a.0, b.0, right) || same(a.1, b.1, bottom) || same(a.1, b.1, top)
    };
    let count = outline.len();
    // Start after a piece of frame, so that no run is cut in two.
    let start = (0..count).find(|&k| framed(outline[k], outline[(k + 1) % count])).map_or(0, |k| k + 1);
    let mut runs: Vec<Vec<Point>> = Vec::new();
    let mut running = false;
    for step in 0..count {
        let (a, b) = (outline[(start + step) % count], outline[(start + step + 1) % count]);
        if framed(a, b) {
            running = false;
        } else if let (true, Some(run)) = (running, runs.last_mut()) {
            run.push(b);
        } else {
            runs.push(vec![a, b]);
            running = true;
        }
    }
    runs
}
