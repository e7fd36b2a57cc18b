//! The peer of `cargo xtask bench`: BDF of the crate diffsol, on our right-hand side and our grid, with our Jacobian.

use crate::scenarios::Failure;
use crate::solve::CureSummary;
use diffsol::{
    ConstantOp, DenseMatrix, NalgebraContext, NalgebraLU, NalgebraMat, NalgebraVec, NonLinearOp,
    NonLinearOpJacobian, OdeBuilder, OdeEquations, OdeEquationsRef, OdeSolverMethod, OdeSolverStopReason, Op,
    ParameterisedOp, UnitCallable, Vector,
};
use whitehold::cure::fuse;
use whitehold::dryer::{self, History, HistorySample, StageEquations};
use whitehold::ink::CureKinetics;
use whitehold::numerics::Lanes;
use whitehold::numerics::rosenbrock::Effort;

type Matrix64 = NalgebraMat<f64>;
type Vector64 = NalgebraVec<f64>;

/// One stage as diffsol takes equations.
struct Equations<'a> {
    stage: &'a StageEquations,
    start: &'a [f64],
    context: NalgebraContext,
}

/// Its right-hand side, and its start.
struct Rates<'a>(&'a Equations<'a>);
struct Start<'a>(&'a Equations<'a>);

macro_rules! sized {
    ($name:ident, $equations:ident => $of:expr) => {
        impl Op for $name<'_> {
            type M = Matrix64;
            type V = Vector64;
            type T = f64;
            type C = NalgebraContext;
            fn nstates(&self) -> usize {
                let $equations = self;
                $of.start.len()
            }
            fn nout(&self) -> usize {
                self.nstates()
            }
            fn nparams(&self) -> usize {
                0
            }
            fn context(&self) -> &NalgebraContext {
                let $equations = self;
                &$of.context
            }
        }
    };
}
sized!(Equations, equations => equations);
sized!(Rates, rates => rates.0);
sized!(Start, start => start.0);

impl NonLinearOp for Rates<'_> {
    fn call_inplace(&self, x: &Vector64, _: f64, y: &mut Vector64) {
        y.for_each_batch_host([x], |y: &mut [f64], [x]: [&[f64]; 1], _| self.0.stage.rates(x, y));
    }
}

impl NonLinearOpJacobian for Rates<'_> {
    fn jac_mul_inplace(&self, x: &Vector64, _: f64, v: &Vector64, y: &mut Vector64) {
        y.for_each_batch_host([x, v], |y: &mut [f64], [x, v]: [&[f64]; 2], _| {
            y.fill(0.0);
            self.0.stage.jacobian(x, |row, column, value| y[row] += value * v[column]);
        });
    }
    fn jacobian_inplace(&self, x: &Vector64, _: f64, y: &mut Matrix64) {
        let x = x.clone_as_vec();
        self.0.stage.jacobian(&x, |row, column, value| y.set_index(row, column, value));
    }
}

impl ConstantOp for Start<'_> {
    fn call_inplace(&self, _: f64, y: &mut Vector64) {
        for (place, value) in self.0.start.iter().enumerate() {
            y.set_index(place, *value);
        }
    }
}

impl<'a> OdeEquationsRef<'a> for Equations<'_> {
    type Rhs = Rates<'a>;
    type Init = Start<'a>;
    type Mass = ParameterisedOp<'a, UnitCallable<Matrix64>>;
    type Root = ParameterisedOp<'a, UnitCallable<Matrix64>>;
    type Out = ParameterisedOp<'a, UnitCallable<Matrix64>>;
    type Reset = ParameterisedOp<'a, UnitCallable<Matrix64>>;
}

impl OdeEquations for Equations<'_> {
    fn rhs(&self) -> Rates<'_> {
        Rates(self)
    }
    fn init(&self) -> Start<'_> {
        Start(self)
    }
    fn mass(&self) -> Option<ParameterisedOp<'_, UnitCallable<Matrix64>>> {
        None
    }
    fn root(&self) -> Option<ParameterisedOp<'_, UnitCallable<Matrix64>>> {
        None
    }
    fn out(&self) -> Option<ParameterisedOp<'_, UnitCallable<Matrix64>>> {
        None
    }
    fn set_params(&mut self, _: &Vector64) {}
    fn get_params(&self, _: &mut Vector64) {}
}

/// The film's bottom along a transit: time (s), temperature (K) and its rate at each step.
pub type FilmBottom = Vec<[f64; 3]>;

/// Solves a transit with BDF. `relative` is the relative tolerance; the absolute ones are as in our solver: `relative` times
/// 100 K, and a thousandth of that for the water.
///
/// # Errors
/// [`Failure`] if diffsol gives up.
pub fn bdf(transit: &dryer::TransitEquations, relative: f64) -> Result<FilmBottom, Failure> {
    let mut course = FilmBottom::new();
    let mut state = transit.start.clone();
    let mut clock = 0.0;
    for stage in &transit.stages {
        let nodes = stage.nodes();
        if let Some(belt) = stage.belt {
            state[nodes - 1] = belt;
        }
        let absolute = (0..state.len())
            .map(|i| if i < nodes { 100.0 * relative } else { 0.1 * relative })
            .collect::<Vec<_>>();
        let start = std::mem::take(&mut state);
        let equations = Equations { stage, start: &start, context: NalgebraContext::default() };
        let problem =
            OdeBuilder::<Matrix64>::new().rtol(relative).atol(absolute).build_from_eqn(equations)?;
        let mut solver = problem.bdf::<NalgebraLU<f64>>()?;
        let here = |at: diffsol::StateRef<'_, Vector64>| {
            [clock + at.t, at.y.get_index(transit.film_bottom), at.dy.get_index(transit.film_bottom)]
        };
        course.push(here(solver.state()));
        solver.set_stop_time(stage.duration)?;
        loop {
            let reason = solver.step()?;
            course.push(here(solver.state()));
            if matches!(reason, OdeSolverStopReason::TstopReached) {
                break;
            }
        }
        state = solver.state().y.clone_as_vec();
        clock += stage.duration;
    }
    Ok(course)
}

/// Peak and fusion of a course, fused by our own kinetics: only the temperatures are compared.
#[must_use]
pub fn summary(course: &FilmBottom, ink: &CureKinetics) -> CureSummary {
    let unused = [Lanes::ZERO; 2];
    let samples = course.iter().map(|[time, temperature, rate]| HistorySample {
        time: Lanes([*time]),
        film_top: unused,
        film_bottom: [Lanes([*temperature]), Lanes([*rate])],
        cloth_face: unused,
        cloth: unused,
        water: Lanes::ZERO,
        face_water: Lanes::ZERO,
    });
    let history =
        History::<1> { samples: samples.collect(), exit_time: Lanes::ZERO, effort: Effort::default() };
    CureSummary {
        peak: history.film_bottom_peak()[0],
        fused: fuse(&history, |sample| sample.film_bottom, ink).fused[0],
    }
}
