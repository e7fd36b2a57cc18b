//! An order as a press lead says it: `an_order().label("100% cotton jersey 150 gsm black").shelf(&["chalk"]).build()`.

use super::{answered, library};
use whitehold::plan::{Garment, Order, Pick, Print, Report, Shop, Use};

/// An order under construction.
#[derive(Clone, Debug)]
pub struct OrderBuilder(Order);

/// One garment without a label and an empty shelf beside the demo's long dryer; all else as an order has it by itself.
pub fn an_order() -> OrderBuilder {
    let shop = Shop { dryer: "long-kiln".into(), ..Shop::default() };
    OrderBuilder(Order { garments: vec![Garment::default()], shop, ..Order::default() })
}

/// Methods about a garment change the last one.
impl OrderBuilder {
    pub fn label(self, label: &str) -> Self {
        self.garment(|garment| garment.label = label.into())
    }

    pub fn colour(self, name: &str) -> Self {
        self.garment(|garment| garment.colour.name = name.into())
    }

    pub fn pieces(self, pieces: u32) -> Self {
        self.garment(|garment| garment.pieces = pieces)
    }

    /// Worth of one printed piece, in the shop's money.
    pub fn worth(self, value_each: f64) -> Self {
        self.garment(|garment| garment.value_each = value_each)
    }

    /// Liquid water on the cloth, % of its dry weight.
    pub fn soaked(self, added_water_percent: f64) -> Self {
        self.garment(|garment| garment.added_water_percent = added_water_percent)
    }

    /// Anything else of the garment.
    pub fn garment(mut self, change: impl FnOnce(&mut Garment)) -> Self {
        change(self.0.garments.last_mut().expect("an order has a garment"));
        self
    }

    /// A further garment of the same design, in all but the label like the last one.
    pub fn and_on(mut self, label: &str) -> Self {
        let like = self.0.garments.last().cloned().unwrap_or_default();
        self.0.garments.push(like);
        self.label(label)
    }

    /// Whites and blockers by their ids.
    pub fn shelf(self, ids: &[&str]) -> Self {
        self.shop(|shop| shop.shelf = ids.iter().map(|id| (*id).to_owned()).collect())
    }

    /// Every white of the library that ships.
    pub fn every_white(self) -> Self {
        self.shop(|shop| shop.shelf = library().whites.iter().map(|white| white.id.clone()).collect())
    }

    pub fn dryer(self, id: &str) -> Self {
        self.shop(|shop| shop.dryer = id.into())
    }

    /// Humidity of the room where the cloth lies, %.
    pub fn humidity(self, percent: f64) -> Self {
        self.shop(|shop| shop.humidity_percent = percent)
    }

    /// Anything else of the shop.
    pub fn shop(mut self, change: impl FnOnce(&mut Shop)) -> Self {
        change(&mut self.0.shop);
        self
    }

    /// Anything of the print.
    pub fn print(mut self, change: impl FnOnce(&mut Print)) -> Self {
        change(&mut self.0.print);
        self
    }

    /// Anything of what becomes of the garments.
    pub fn used(mut self, change: impl FnOnce(&mut Use)) -> Self {
        change(&mut self.0.use_);
        self
    }

    pub fn build(self) -> Order {
        self.0
    }

    /// The answer to it over the library that ships.
    pub fn answered(self) -> Report {
        answered(&self.0)
    }

    /// The first pick of that answer.
    pub fn picked(self) -> Pick {
        let report = self.answered();
        report.picks.first().cloned().unwrap_or_else(|| panic!("no pick: {report:?}"))
    }
}
