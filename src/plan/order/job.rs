//! An order with every id resolved, and the check of its numbers.

use super::bounds;
use super::garment::Garment;
use super::mix::Mix;
use super::order_fields::Order;
use crate::cure::scorch_index;
use crate::dryer::Dryer;
use crate::ink::{Mesh, White};
use crate::migration::{Belief, DyedCloth, FilmDiffusion};
use crate::optics::{Lab, Spectrum};
use crate::plan::report::Reason;
use crate::quantity::FieldError;
use crate::quantity::units::kelvin;
use crate::textile::{Fabric, Fibre};

/// An order with every id resolved into plain values: everything that the plan reads. SI throughout, except
/// in the order itself.
#[derive(Clone, Debug)]
pub struct Job {
    /// The order as asked.
    pub order: Order,
    /// The cloth of each garment, in the order of the garments.
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
    /// Limits and shares that margins and verdicts are held to.
    pub rules: Rules,
    /// Limits of law that a caution may name.
    pub laws: Vec<Law>,
}

impl Job {
    /// Scorch index of all heat after the cure.
    #[must_use]
    pub fn yellows_later(&self) -> f64 {
        let events = self.order.print.heat_after.iter();
        events.map(|event| scorch_index(kelvin(event.temp_c), event.seconds)).sum()
    }
}

/// A limit of law, from `data/laws.json`.
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

/// The cloth of one garment: its thermal, dye and colour properties.
#[derive(Clone, Debug)]
pub struct Cloth {
    /// The garment as asked.
    pub garment: Garment,
    /// What was read and what was assumed.
    pub understood: Vec<Reason>,
    /// Questions that the reading left open.
    pub asks: Vec<Reason>,
    /// The cloth's thermal and textile properties, as the simulation reads them.
    pub fabric: Fabric,
    /// Its colour.
    pub lab: Lab,
    /// A reflectance spectrum of that colour.
    pub spectrum: Spectrum,
    /// Name of that colour.
    pub colour: String,
    /// Dye that can travel; absent where there is none.
    pub dyed: Option<DyedCloth>,
    /// How this lot's dye may differ from `dyed`: shift of the middle and spread of both sources, in ln units.
    pub belief: Belief,
    /// Whether it is known if the polyester is dyed; true also for cloth without polyester.
    pub dye_known: bool,
    /// Temperature above which it shrinks or distorts, K; absent if it does not.
    pub shrinks_above: Option<f64>,
    /// The fibre that softens first, and its softening temperature, K.
    pub softens: Option<(Fibre, f64)>,
    /// The fibre that melts first, and its melting temperature, K.
    pub melts: Option<(Fibre, f64)>,
    /// Highest temperature that a coating or a repellent finish withstands, K; absent on uncoated cloth.
    pub coating: Option<f64>,
    /// Whether the cloth yellows in the heat.
    pub scorches: bool,
}

/// What fails first as a cloth gets hotter.
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
    /// What fails first as the cloth gets hotter, and at what temperature, K: a fibre that softens, a fibre
    /// that nears its melting point, or the coating on the face.
    #[must_use]
    pub fn yields(&self) -> Option<(Yield, f64)> {
        let softens = self.softens.map(|(fibre, limit)| (Yield::Softens(fibre), limit));
        let melts = self.melts_from().map(|(fibre, limit)| (Yield::Melts(fibre), limit));
        let coating = self.coating.map(|limit| (Yield::Coating, limit));
        [softens, melts, coating].into_iter().flatten().min_by(|a, b| a.1.total_cmp(&b.1))
    }

    /// The fibre that melts first, and the temperature at which it begins to, K. A yarn sags before all of it
    /// has melted; a melting range is about 5 K broad: from memory.
    #[must_use]
    pub fn melts_from(&self) -> Option<(Fibre, f64)> {
        self.melts.map(|(fibre, limit)| (fibre, limit - 5.0))
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

    /// True for the cloths that every garment shop prints week after week: cotton, polyester, their blends and nylon, with
    /// ordinary dye and no coating. Common practice, no source; four blind leads run uncoated nylon without a trial.
    #[must_use]
    pub fn is_everyday(&self) -> bool {
        use super::DyeClass;
        let plain = [Fibre::Polyester, Fibre::Nylon, Fibre::Elastane].map(|fibre| self.share(fibre));
        let usual = self.cellulosic() + plain.into_iter().sum::<f64>();
        usual > 0.995
            && self.share(Fibre::Elastane) <= 0.08
            && self.garment.finish.is_empty()
            && self.garment.dye_class != DyeClass::SublimationPrinted
    }

    /// True for cloths whose lots differ most, so that the first piece is looked at however good the chance: dyed cloth of
    /// polyester alone, with elastane or without, and nylon. Common practice, no source.
    #[must_use]
    pub fn is_checked(&self) -> bool {
        let polyester = self.share(Fibre::Polyester) + self.share(Fibre::Elastane);
        self.dyed.is_some() && polyester > 0.95 || self.share(Fibre::Nylon) > 0.5
    }

    /// True for light shades, on which ghosting shows. L* over 65: common practice, no source.
    #[must_use]
    pub fn is_light(&self) -> bool {
        self.lab.lightness > 65.0
    }
}

/// Limits and shares that margins and verdicts are held to, from `data/limits.json`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rules {
    /// Fused share needed at the film's bottom, 0 to 1.
    pub fused: f64,
    /// Gelled share at a flashed film's underside after which it is dry to the touch, 0 to 1.
    pub gelled: f64,
    /// Highest scorch index that passes.
    pub scorch: f64,
    /// Shrinkage per kelvin above the cloth's limit, fraction.
    pub shrink_slope: f64,
    /// Highest shrinkage that passes, fraction.
    pub shrink_allowed: f64,
    /// Highest film temperature that passes, K.
    pub film_heat: f64,
    /// Film temperature from which plasticised PVC without stabiliser loses acid, K.
    pub acid_onset: f64,
    /// Largest colour difference of the white that passes, ΔE00.
    pub bleed: f64,
    /// Share of the open mesh volume that is transferred to the cloth, where the shop has not weighed its own
    /// print.
    pub transfer: f64,
    /// Diffusion of dye in the film.
    pub film_diffusion: FilmDiffusion,
    /// Diffusivity at the slow and at the fast end of its range, as multiples of the usual one.
    pub film_spread: [f64; 2],
    /// Chance of a fault that no model covers, 0 to 1.
    pub lapse: f64,
    /// Highest chance of a late fault for a go, 0 to 1.
    pub go: f64,
    /// Highest chance of a late fault for a go with check, 0 to 1.
    pub check: f64,
    /// Chance of a late fault above which the order is refused, 0 to 1.
    pub refuse: f64,
    /// Chance that a look at the dryer's exit finds a bad lot, for ordinary and for low-cure whites.
    pub power_exit: [f64; 2],
    /// Chance that a day in the oven finds a bad lot.
    pub power_hot_hold: f64,
    /// Chance that weeks in storage find a bad lot.
    pub power_weeks: f64,
    /// Chance that a test fails a good lot, 0 to 1.
    pub false_alarm: f64,
    /// Of tests of three pieces or more, the share in which more than one piece turns: among those that find
    /// a bad lot, and among those that fail a good one.
    pub second_piece: [f64; 2],
    /// Washing out one white and filling another, min.
    pub white_change: f64,
    /// Setting one screen more, min.
    pub screen_change: f64,
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
    test(&bounds::COLOURS_ON_TOP, f64::from(print.colours_on_top.count), "print.colours_on_top");
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
