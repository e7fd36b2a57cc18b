use super::bounds;
use super::garment::Garment;
use super::mix::Mix;
use super::order_fields::Order;
use crate::dryer::Dryer;
use crate::ink::{Mesh, White};
use crate::migration::{Belief, DyedCloth, FilmDiffusion};
use crate::optics::{Lab, Spectrum};
use crate::plan::report::Reason;
use crate::quantity::FieldError;
use crate::textile::{Fabric, Fibre};

/// An order with every id resolved into plain values: all that the plan may know. SI throughout.
#[derive(Clone, Debug)]
pub struct Job {
    /// The order as asked.
    pub order: Order,
    /// Its cloths, one a garment.
    pub cloths: Vec<Cloth>,
    /// Whites on the shelf.
    pub whites: Vec<White>,
    /// Whites on the shelf with stretch white stirred in.
    pub mixes: Vec<Mix>,
    /// Blockers on the shelf.
    pub blockers: Vec<BlockerBase>,
    /// Whites that could be bought, one of each class, ordinary and low-cure.
    pub market: Vec<White>,
    /// Blockers that could be bought.
    pub market_blockers: Vec<BlockerBase>,
    /// Meshes on hand.
    pub meshes: Vec<Mesh>,
    /// The dryer.
    pub dryer: Dryer,
    /// The limits and shares of the rule.
    pub rules: Rules,
    /// Limits of law that a caution may name.
    pub laws: Vec<Law>,
}

/// A limit of law, from `data/limits.json`.
#[derive(Clone, Debug, PartialEq)]
pub struct Law {
    /// Its id there.
    pub id: String,
    /// The figure, in its unit there.
    pub limit: f64,
    /// Day of force, `2020-07-07`.
    pub since: String,
    /// Which law.
    pub law: String,
}

/// The blocker, SI.
#[derive(Clone, Debug, PartialEq)]
pub struct BlockerBase {
    /// Id of the record.
    pub id: String,
    /// Name, as the shop calls it.
    pub name: String,
    /// Density, kg/m³.
    pub density: f64,
    /// Dye it can hold, kg/kg.
    pub dye_capacity: f64,
    /// Reflectance of its surface.
    pub reflectance: f64,
    /// Film after one stroke, m.
    pub film: f64,
    /// Price per kilogram.
    pub price_per_kg: f64,
}

/// A garment's cloth, with what it is to heat, dye and eye.
#[derive(Clone, Debug)]
pub struct Cloth {
    /// The garment as asked.
    pub garment: Garment,
    /// What was read and what was assumed.
    pub understood: Vec<Reason>,
    /// Questions that the reading left open.
    pub asks: Vec<Reason>,
    /// The cloth as the march sees it.
    pub fabric: Fabric,
    /// Its colour.
    pub lab: Lab,
    /// A reflectance spectrum of that colour.
    pub spectrum: Spectrum,
    /// Name of that colour.
    pub colour: String,
    /// Dye that can travel; absent where there is none.
    pub dyed: Option<DyedCloth>,
    /// What is believed of this lot's dye against what `dyed` says.
    pub belief: Belief,
    /// Whether it is known that the polyester is dyed (true also where there is none).
    pub dye_known: bool,
    /// Heat above which it shrinks or distorts, K.
    pub shrinks_above: Option<f64>,
    /// Fibre that softens first, and where, K.
    pub softens: Option<(Fibre, f64)>,
    /// Fibre that melts first, and where, K.
    pub melts: Option<(Fibre, f64)>,
    /// Heat that the coating or the repellent finish on it stands, K; absent on bare cloth.
    pub coating: Option<f64>,
    /// Whether it yellows.
    pub scorches: bool,
}

/// What gives way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Yield {
    /// A fibre that softens.
    Softens(Fibre),
    /// A fibre that melts.
    Melts(Fibre),
    /// The coating on the face.
    Coating,
}

impl Cloth {
    /// What gives way first as the cloth gets hotter, and where, K: a fibre that softens, a fibre near its melting, or the
    /// coating on its face.
    #[must_use]
    pub fn yields(&self) -> Option<(Yield, f64)> {
        let softens = self.softens.map(|(fibre, limit)| (Yield::Softens(fibre), limit));
        // A yarn sags before all of it melts; 5 K is how far a melting range is broad: from memory.
        let melts = self.melts.map(|(fibre, limit)| (Yield::Melts(fibre), limit - 5.0));
        let coating = self.coating.map(|limit| (Yield::Coating, limit));
        [softens, melts, coating].into_iter().flatten().min_by(|a, b| a.1.total_cmp(&b.1))
    }

    /// Mass share of one fibre, 0 to 1.
    #[must_use]
    pub fn share(&self, fibre: Fibre) -> f64 {
        self.fabric.composition.get(&fibre).copied().unwrap_or(0.0)
    }

    /// Mass share of the cellulosic fibres, 0 to 1.
    #[must_use]
    pub fn cellulosic(&self) -> f64 {
        [Fibre::Cotton, Fibre::Linen, Fibre::Hemp, Fibre::Viscose, Fibre::Modal, Fibre::Lyocell]
            .into_iter()
            .map(|fibre| self.share(fibre))
            .sum()
    }

    /// True for the cloths that every garment shop prints week after week: cotton, polyester and their blends,
    /// knitted, with ordinary dye and no coating. Common practice, no source.
    #[must_use]
    pub fn is_everyday(&self) -> bool {
        use super::DyeClass;
        let usual = self.cellulosic() + self.share(Fibre::Polyester) + self.share(Fibre::Elastane);
        usual > 0.995
            && self.share(Fibre::Elastane) <= 0.08
            && self.garment.finish.is_empty()
            && self.garment.dye_class != DyeClass::SublimationPrinted
    }

    /// True for light shades, on which ghosting shows. L* over 65: common practice, no source.
    #[must_use]
    pub fn is_light(&self) -> bool {
        self.lab.lightness > 65.0
    }
}

/// The limits and shares of the rule, from `data/limits.json`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rules {
    /// Fused share needed at the film's bottom.
    pub fused: f64,
    /// Gelled share after which a flash is dry to the touch.
    pub gelled: f64,
    /// Scorch index that passes.
    pub scorch: f64,
    /// Shrinkage per kelvin above the cloth's limit, fraction.
    pub shrink_slope: f64,
    /// Shrinkage that passes, fraction.
    pub shrink_allowed: f64,
    /// Film temperature that passes, K.
    pub film_heat: f64,
    /// Film temperature from which plasticised PVC without stabiliser loses acid, K.
    pub acid_onset: f64,
    /// Colour difference of the white that passes, ΔE00.
    pub bleed: f64,
    /// Share of the open mesh volume that lies on the cloth.
    pub transfer: f64,
    /// How dye spreads through the film.
    pub film_diffusion: FilmDiffusion,
    /// How much slower and faster it may be.
    pub film_spread: [f64; 2],
    /// Chance of a fault that no model sees.
    pub lapse: f64,
    /// Spread of the exposure between lots, ln units.
    pub lot_spread: f64,
    /// Chance of a late fault up to which it is a go.
    pub go: f64,
    /// Chance up to which it is a go with check.
    pub check: f64,
    /// Chance from which it is refused.
    pub refuse: f64,
    /// Power of looking at the exit, for ordinary and for low-cure whites.
    pub power_exit: [f64; 2],
    /// Power of a day in the oven.
    pub power_hot_hold: f64,
    /// Power of weeks on the shelf.
    pub power_weeks: f64,
    /// Share of false alarms of a test.
    pub false_alarm: f64,
    /// Share of tests of three pieces or more, of those that find a bad lot and of those that fail a good one, in which
    /// more than one piece turns.
    pub second_piece: [f64; 2],
}

/// Checks every number of an order against its bound.
///
/// # Errors
/// One [`FieldError`] for each field outside its range, by its path.
pub fn check(order: &Order) -> Result<(), Vec<FieldError>> {
    let mut errors = Vec::new();
    let mut test = |bound: &crate::quantity::Bound, value: f64, parent: &str| {
        if let Err(error) = bound.check(value) {
            errors.push(error.within(parent));
        }
    };
    for (i, garment) in order.garments.iter().enumerate() {
        let parent = format!("garments[{i}]");
        if let Some(weight) = garment.areal_weight_gsm {
            test(&bounds::AREAL_WEIGHT, weight, &parent);
        }
        test(&bounds::STRETCH, garment.stretch_percent, &parent);
        test(&bounds::ADDED_WATER, garment.added_water_percent, &parent);
        test(&bounds::PIECES, f64::from(garment.pieces), &parent);
        test(&bounds::SPARES, f64::from(garment.spares), &parent);
        test(&bounds::VALUE, garment.value_each, &parent);
        for (j, seen) in garment.fastness.iter().enumerate() {
            let parent = format!("{parent}.fastness[{j}]");
            test(&bounds::GRADE, seen.grade, &parent);
            if let Some(celsius) = seen.temp_c {
                test(&bounds::TEST_HEAT, celsius, &parent);
            }
            if let Some(seconds) = seen.seconds {
                test(&bounds::TEST_SECONDS, seconds, &parent);
            }
        }
    }
    let print = &order.print;
    test(&bounds::AREA, print.area_cm2, "print");
    test(&bounds::COVERAGE, print.coverage_percent, "print");
    test(&bounds::REDUCER, print.reducer_percent, "print");
    test(&bounds::OVERHANG, print.overhang_mm, "print");
    test(&bounds::STRETCH_NEEDED, print.stretch_needed_percent, "print");
    for (i, event) in print.heat_after.iter().enumerate() {
        let parent = format!("print.heat_after[{i}]");
        test(&bounds::HEAT_AFTER, event.temp_c, &parent);
        test(&bounds::HEAT_SECONDS, event.seconds, &parent);
    }
    test(&bounds::LOOKED_AT, order.use_.looked_at_after_days, "use");
    test(&bounds::STORAGE, order.use_.storage_c, "use");
    test(&bounds::CONTAINER, order.use_.container_days, "use");
    if let Some(age) = order.use_.wearer_age_years {
        test(&bounds::AGE, age, "use");
    }
    test(&bounds::HUMIDITY, order.shop.humidity_percent, "shop");
    test(&bounds::PASSES, f64::from(order.shop.passes), "shop");
    if let Some(transfer) = order.shop.transfer {
        test(&bounds::TRANSFER, transfer, "shop");
    }
    for (i, garment) in order.garments.iter().enumerate() {
        if let Some(Err(error)) = garment.colour.lab.map(|lab| Lab::from(lab).check()) {
            errors.push(error.within(&format!("garments[{i}].colour")));
        }
    }
    if errors.is_empty() { Ok(()) } else { Err(errors) }
}
