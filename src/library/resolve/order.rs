//! An order resolved: ids and labels into the plain values that the plan computes with.

use super::resolve_garment;
use crate::dryer::{Cooling, Dryer};
use crate::ink::{Blocker, Mesh, USUAL_TRANSFER, White};
use crate::library::{LawRecord, Library, Limits};
use crate::migration::FilmDiffusion;
use crate::plan::{self, BlockerBase, Job, Law, Order, Rules};
use crate::quantity::units::{celsius, kelvin};
use crate::quantity::{FieldError, Problem};

/// Resolves an order into a [`Job`].
///
/// # Errors
/// A [`FieldError`] for each field of the order or the library that cannot be used, by its path.
pub fn job(order: &Order, library: &Library) -> Result<Job, Vec<FieldError>> {
    plan::check(order)?;
    let mut errors = Vec::new();
    if order.garments.is_empty() {
        errors.push(FieldError::new("garments", "", Problem::Empty));
    }
    let mut cloths = Vec::new();
    for (i, garment) in order.garments.iter().enumerate() {
        match resolve_garment(garment, library) {
            Ok(cloth) => cloths.push(cloth),
            Err(found) => {
                errors.extend(found.into_iter().map(|error| error.within(&format!("garments[{i}]"))));
            }
        }
    }
    let mut whites = Vec::new();
    let mut blockers = Vec::new();
    for id in &order.shop.shelf {
        if let Ok(blocker) = library.blocker(id) {
            blockers.push(base(blocker));
        } else {
            match library.white_record(id).and_then(|record| library.white(record)) {
                Ok(white) => whites.push(white),
                Err(error) => errors.push(FieldError { field: "shop.shelf".into(), ..error }),
            }
        }
    }
    let dryer = library
        .dryer(&order.shop.dryer)
        .map_err(|error| vec![FieldError { field: "shop.dryer".into(), ..error }])
        .and_then(|record| {
            Dryer::from_record(record)
                .map_err(|found| found.into_iter().map(|error| error.within("dryer")).collect())
        });
    let dryer = match dryer {
        Ok(dryer) if errors.is_empty() => {
            // Stacking by the order overrides the usual cooling at the end of this dryer.
            let cooling = if order.use_.stacked_hot { Cooling::Stacked } else { dryer.cooling };
            Dryer { cooling, ..dryer }
        }
        dryer => {
            errors.extend(dryer.err().into_iter().flatten());
            return Err(errors);
        }
    };
    if let Some(fixed) = order.shop.dryer_fixed {
        let (min, max) = (celsius(dryer.set_low), celsius(dryer.set_high));
        if !(min..=max).contains(&fixed) {
            let problem = Problem::OutOfRange { min, max, unit: "°C".into() };
            return Err(vec![FieldError::new("shop.dryer_fixed", fixed.to_string(), problem)]);
        }
    }
    let market = market(library, &whites);
    let market_blockers: Vec<BlockerBase> = library
        .blockers
        .iter()
        .map(base)
        .filter(|base| blockers.iter().all(|had| had.id != base.id))
        .collect();
    let mut meshes = Vec::with_capacity(library.meshes.len());
    for record in &library.meshes {
        let at = |error: FieldError| vec![error.within(&format!("meshes.{}", record.id))];
        meshes.push(Mesh::try_from(record).map_err(at)?);
    }
    let mixes = plan::mixes(&whites);
    Ok(Job {
        order: order.clone(),
        cloths,
        whites,
        mixes,
        blockers,
        market,
        market_blockers,
        meshes,
        dryer,
        rules: rules(&library.limits),
        laws: laws(library),
    })
}

/// The limits of law that the library knows.
fn laws(library: &Library) -> Vec<Law> {
    let law = |record: &LawRecord| Law {
        id: record.id.clone(),
        limit: record.limit.value,
        since: record.since.clone(),
        law: record.limit.source.clone(),
    };
    library.laws.iter().map(law).collect()
}

/// Whites that the shop could buy: one of each kind that it does not have.
fn market(library: &Library, shelf: &[White]) -> Vec<White> {
    let mut market: Vec<White> = Vec::new();
    for record in &library.whites {
        let same = |white: &White| white.class == record.class && white.low_cure == record.low_cure;
        if !shelf.iter().chain(&market).any(same)
            && let Ok(white) = library.white(record)
        {
            market.push(white);
        }
    }
    market
}

fn base(record: &Blocker) -> BlockerBase {
    BlockerBase {
        id: record.id.clone(),
        name: record.name.clone(),
        density: record.density.value,
        dye_capacity: record.dye_capacity.value / 1000.0,
        reflectance: record.reflectance.value,
        film: record.film.value * 1e-6,
        price_per_kg: record.price_per_kg.value,
    }
}

/// The limits and shares of the rule in SI.
fn rules(limits: &Limits) -> Rules {
    let diffusivity = &limits.film_diffusivity_25c;
    Rules {
        fused: limits.fused_share.value,
        gelled: limits.gelled_share.value,
        scorch: limits.scorch_index.value,
        shrink_slope: limits.shrink_slope.value / 100.0,
        shrink_allowed: limits.shrink_allowed.value / 100.0,
        film_heat: kelvin(limits.film_heat.value),
        acid_onset: kelvin(limits.acid_onset.value),
        bleed: limits.bleed_limit.value,
        transfer: USUAL_TRANSFER,
        film_diffusion: FilmDiffusion {
            at_25c: diffusivity.value,
            energy: limits.film_diffusion_energy.value * 1e3,
        },
        film_spread: diffusivity.range.map(|end| end / diffusivity.value),
        lapse: limits.lapse.value,
        go: limits.go_share.value,
        check: limits.check_share.value,
        refuse: limits.refuse_share.value,
        power_exit: [limits.test_power_exit.value, limits.test_power_exit_low_cure.value],
        power_hot_hold: limits.test_power_hot_hold.value,
        power_weeks: limits.test_power_weeks.value,
        false_alarm: limits.test_false_alarm.value,
        second_piece: [limits.test_second_piece.value, limits.test_second_false_alarm.value],
        white_change: limits.white_change.value,
        screen_change: limits.screen_change.value,
    }
}
