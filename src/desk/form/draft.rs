//! The order as it is in the form: text exactly as typed, and the parts of the order that the form does not show.

use super::field::Field;
use crate::diagnosis::Defect;
use crate::numerics::sorting::map;
use crate::optics::Lab;
use crate::plan::{Colour, Garment, Order};
use crate::textile::Fibre;
use crate::wording::number::{self, Typed};
use crate::wording::{Language, Numeral, Quantity, Units, Voice};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// The text of one field.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct FieldText {
    /// The text, exactly as typed or last converted.
    pub text: String,
    /// The value in the unit of the order, as long as the page wrote the text and nothing was typed since: changing
    /// units back and forth then loses no digit.
    pub exact: Option<f64>,
}

/// The texts of several fields.
pub type Texts = BTreeMap<Field, FieldText>;

/// One garment in the form.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct GarmentDraft {
    /// What is typed.
    pub texts: Texts,
    /// What is chosen, and the parts that the form does not show.
    pub rest: Garment,
}

/// Light, dark, or as the device has it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Theme {
    /// As the device has it.
    #[default]
    Device,
    /// Light.
    Light,
    /// Dark.
    Dark,
}

impl Theme {
    /// Every theme.
    pub const ALL: [Self; 3] = [Self::Device, Self::Light, Self::Dark];
}

/// Everything Undo can take back.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Draft {
    /// The garments.
    pub garments: Vec<GarmentDraft>,
    /// The place of the one shown in the form.
    pub at: usize,
    /// What is typed about the rest of the order.
    pub texts: Texts,
    /// What is chosen, and the parts that the form does not show; without garments.
    pub rest: Order,
    /// Units of the texts.
    pub units: Units,
    /// Language of the page.
    pub language: Language,
    /// Its theme.
    pub theme: Theme,
    /// The chosen pick, by its key; `None` = the best.
    pub chosen: Option<String>,
    /// The defect that is seen on a print.
    pub seen: Option<Defect>,
}

impl Draft {
    /// The draft of an order under a title, in the units and language given.
    #[must_use]
    pub fn of(order: &Order, title: &str, voice: Voice) -> Self {
        let mut draft = Self { units: voice.units, language: voice.language, ..Self::default() };
        draft.open(order, title);
        draft
    }

    /// Puts an order into the form; units, language and theme stay.
    pub fn open(&mut self, order: &Order, title: &str) {
        self.garments = order
            .garments
            .iter()
            .map(|garment| GarmentDraft { texts: self.garment_texts(garment), rest: garment.clone() })
            .collect();
        if self.garments.is_empty() {
            let garment = Garment::default();
            self.garments.push(GarmentDraft { texts: self.garment_texts(&garment), rest: garment });
        }
        self.at = 0;
        self.chosen = None;
        self.seen = None;
        self.rest = Order { garments: Vec::new(), ..order.clone() };
        let (print, use_, shop) = (&order.print, &order.use_, &order.shop);
        self.texts = map([
            (Field::Title, words(title)),
            (Field::Area, self.number(Field::Area, print.area_cm2)),
            (Field::Coverage, self.number(Field::Coverage, print.coverage_percent)),
            (Field::Stretch, self.number(Field::Stretch, print.stretch_needed_percent)),
            (Field::Reducer, self.number(Field::Reducer, print.reducer_percent)),
            (Field::Overhang, self.number(Field::Overhang, print.overhang_mm)),
            (Field::ColoursOnTop, self.number(Field::ColoursOnTop, f64::from(print.colours_on_top.count))),
            (Field::Due, words(&use_.due)),
            (Field::LookedAt, self.number(Field::LookedAt, use_.looked_at_after_days)),
            (Field::Age, self.perhaps(Field::Age, use_.wearer_age_years)),
            (Field::Humidity, self.number(Field::Humidity, shop.humidity_percent)),
            (Field::FixedSetTemperature, self.perhaps(Field::FixedSetTemperature, shop.dryer_fixed)),
            (Field::Passes, self.number(Field::Passes, f64::from(shop.passes))),
        ]);
    }

    fn garment_texts(&self, garment: &Garment) -> Texts {
        map([
            (Field::Label, words(&garment.label)),
            (Field::Colour, words(&garment.colour.name)),
            (Field::Weight, self.perhaps(Field::Weight, garment.areal_weight_gsm)),
            (Field::Lot, words(&garment.lot)),
            (Field::AddedWater, self.number(Field::AddedWater, garment.added_water_percent)),
            (Field::Pieces, self.number(Field::Pieces, f64::from(garment.pieces))),
            (Field::Spares, self.number(Field::Spares, f64::from(garment.spares))),
            (Field::ValueEach, self.number(Field::ValueEach, garment.value_each)),
        ])
    }

    /// Language and units of the form.
    #[must_use]
    pub fn voice(&self) -> Voice {
        Voice { language: self.language, units: self.units }
    }

    /// The garment in the form.
    #[must_use]
    pub fn garment(&self) -> Option<&GarmentDraft> {
        self.garments.get(self.at)
    }

    /// The text of a field.
    #[must_use]
    pub fn text(&self, field: Field) -> &str {
        let texts = if field.of_garment() { self.garment().map(|it| &it.texts) } else { Some(&self.texts) };
        texts.and_then(|texts| texts.get(&field)).map_or("", |entry| &entry.text)
    }

    /// Writes text into a field, as typed.
    pub fn write(&mut self, field: Field, text: &str) {
        self.put(field, words(text));
    }

    /// Writes a value, in the unit of the order, into a field in the units of the form; `None` empties it.
    pub fn set(&mut self, field: Field, value: Option<f64>) {
        let entry = self.perhaps(field, value);
        self.put(field, entry);
    }

    /// Gives the shown garment a measured colour under the name of its sample. The colour holds as long as the field
    /// holds that name.
    pub fn measure(&mut self, name: String, lab: Lab) {
        if let Some(garment) = self.garments.get_mut(self.at) {
            garment.texts.insert(Field::Colour, words(&name));
            garment.rest.colour = Colour { name, lab: Some(lab.into()) };
        }
    }

    /// Empties the colour of the shown garment, so that its label decides.
    pub fn forget_colour(&mut self) {
        if let Some(garment) = self.garments.get_mut(self.at) {
            garment.texts.insert(Field::Colour, words(""));
            garment.rest.colour = Colour::default();
        }
    }

    fn put(&mut self, field: Field, entry: FieldText) {
        if field.of_garment() {
            if let Some(garment) = self.garments.get_mut(self.at) {
                garment.texts.insert(field, entry);
            }
        } else {
            self.texts.insert(field, entry);
        }
    }

    fn number(&self, field: Field, value: f64) -> FieldText {
        let Some(quantity) = field.quantity() else { return FieldText::default() };
        let shown = quantity.shown(value, self.units);
        FieldText { text: Numeral(self.language).short(shown, typed_decimals(quantity)), exact: Some(value) }
    }

    fn perhaps(&self, field: Field, value: Option<f64>) -> FieldText {
        value.map_or_else(FieldText::default, |value| self.number(field, value))
    }

    /// This draft in the language, units and theme of another.
    #[must_use]
    pub fn read_like(mut self, other: &Self) -> Self {
        if self.units != other.units {
            self.convert(other.units);
        }
        if self.language != other.language {
            self.translate(other.language);
        }
        Self { theme: other.theme, ..self }
    }

    /// Converts every number to other units.
    pub fn convert(&mut self, units: Units) {
        let before = self.units;
        self.units = units;
        self.rewrite(before);
    }

    /// Rewrites every number with the separators of another language.
    pub fn translate(&mut self, language: Language) {
        self.language = language;
        self.rewrite(self.units);
    }

    fn rewrite(&mut self, before: Units) {
        let form = self.clone();
        let all = self.garments.iter_mut().map(|garment| &mut garment.texts).chain([&mut self.texts]);
        for texts in all {
            for (&field, entry) in texts.iter_mut() {
                let Some(quantity) = field.quantity() else { continue };
                let read = number::read(&entry.text, quantity, field.whole());
                if let Some(value) = entry.exact.or(read.map(|typed| in_contract(typed, quantity, before))) {
                    *entry = form.number(field, value);
                }
            }
        }
    }

    /// Whether the polyester of the shown garment is dyed, as answered.
    #[must_use]
    pub fn dyed(&self) -> Option<bool> {
        self.garment()?.rest.dyed_fibres.as_ref().map(|fibres| fibres.contains(&Fibre::Polyester))
    }
}

/// Decimals when the page writes a number into a field.
pub(super) fn typed_decimals(quantity: Quantity) -> usize {
    match quantity {
        Quantity::Belt | Quantity::Money | Quantity::Width | Quantity::Length => 2,
        Quantity::Temperature | Quantity::Days | Quantity::Film => 0,
        _ => 1,
    }
}

/// What was typed, in the unit of the order.
pub(super) fn in_contract(typed: Typed, quantity: Quantity, units: Units) -> f64 {
    quantity.kept(typed.value, typed.units.unwrap_or(units))
}

fn words(text: &str) -> FieldText {
    FieldText { text: text.into(), exact: None }
}
