//! Reads the order from the text in the form, or says which fields cannot be read.

use super::draft::{Draft, FieldText, in_contract, typed_decimals};
use super::field::Field;
use crate::optics::Lab;
use crate::plan::{Colour, Order};
use crate::quantity::{Bound, FieldError, Problem};
use crate::wording::Quantity;
use crate::wording::number;

/// Most letters that a field of words takes.
const MOST_LETTERS: usize = 400;

impl Draft {
    /// The number in a field, in the unit of the order; `None` if the field is empty and may be.
    ///
    /// # Errors
    /// A [`FieldError`] if the text cannot be read, lies outside `bound`, or is missing.
    pub fn value(&self, field: Field, bound: Option<Bound>) -> Result<Option<f64>, FieldError> {
        let entry = if field.of_garment() {
            self.garment().and_then(|garment| garment.texts.get(&field))
        } else {
            self.texts.get(&field)
        };
        entry.map_or(Ok(None), |entry| self.read_entry(field, self.at, entry, bound))
    }

    fn read_entry(
        &self,
        field: Field,
        garment: usize,
        entry: &FieldText,
        bound: Option<Bound>,
    ) -> Result<Option<f64>, FieldError> {
        let wrong = |problem| FieldError::new(field.path(garment), &entry.text, problem);
        if entry.text.trim().is_empty() {
            return if field.optional() { Ok(None) } else { Err(wrong(Problem::Empty)) };
        }
        let Some(quantity) = field.quantity() else { return Ok(None) };
        let value = match entry.exact {
            Some(value) => value,
            None => number::read(&entry.text, quantity, field.whole())
                .map(|typed| in_contract(typed, quantity, self.units))
                .ok_or_else(|| wrong(Problem::NotANumber))?,
        };
        if field.whole() && (value - value.round()).abs() > 1e-9 {
            return Err(wrong(Problem::NotANumber));
        }
        if let Some(bound) = bound
            && bound.check(value).is_err()
        {
            return Err(wrong(self.out_of_range(bound, quantity)));
        }
        Ok(Some(value))
    }

    /// The accepted range in the units of the form, its ends rounded inwards to what can be typed.
    fn out_of_range(&self, bound: Bound, quantity: Quantity) -> Problem {
        let fine = 10_f64.powi(i32::try_from(typed_decimals(quantity)).unwrap_or(0)).min(10.0);
        let unit = match quantity.unit(self.units, self.language) {
            "" => bound.unit,
            unit => unit,
        };
        Problem::OutOfRange {
            min: (quantity.shown(bound.min, self.units) * fine - 1e-6).ceil() / fine,
            max: (quantity.shown(bound.max, self.units) * fine + 1e-6).floor() / fine,
            unit: unit.into(),
        }
    }

    /// The order that the form describes.
    ///
    /// # Errors
    /// A [`FieldError`] for each field that cannot be read or lies outside its range.
    pub fn read(&self) -> Result<Order, Vec<FieldError>> {
        let mut errors = Vec::new();
        let mut order = self.rest.clone();
        for (index, draft) in self.garments.iter().enumerate() {
            let mut garment = draft.rest.clone();
            let text = |field| draft.texts.get(&field).map_or("", |entry: &FieldText| entry.text.as_str());
            let mut number = |field: Field| {
                let entry = draft.texts.get(&field).cloned().unwrap_or_default();
                self.read_entry(field, index, &entry, field.bound()).unwrap_or_else(|error| {
                    errors.push(error);
                    None
                })
            };
            garment.areal_weight_gsm = number(Field::Weight);
            garment.added_water_percent = number(Field::AddedWater).unwrap_or(0.0);
            garment.pieces = count(number(Field::Pieces));
            garment.spares = count(number(Field::Spares));
            garment.value_each = number(Field::ValueEach).unwrap_or(0.0);
            garment.label = text(Field::Label).trim().into();
            match typed_colour(text(Field::Colour), &draft.rest.colour) {
                Ok(colour) => garment.colour = colour,
                Err(error) => {
                    let field = Field::Colour.path(index);
                    errors.push(FieldError::new(field, text(Field::Colour), error.problem));
                }
            }
            garment.lot = text(Field::Lot).trim().into();
            if garment.label.is_empty() {
                errors.push(FieldError::new(Field::Label.path(index), "", Problem::Empty));
            }
            for field in [Field::Label, Field::Colour, Field::Lot] {
                if text(field).chars().count() > MOST_LETTERS {
                    let problem = Problem::TooLong { max: MOST_LETTERS };
                    errors.push(FieldError::new(field.path(index), text(field), problem));
                }
            }
            order.garments.push(garment);
        }
        let mut number = |field: Field| {
            self.value(field, field.bound()).unwrap_or_else(|error| {
                errors.push(error);
                None
            })
        };
        order.print.area_cm2 = number(Field::Area).unwrap_or_default();
        order.print.coverage_percent = number(Field::Coverage).unwrap_or_default();
        order.print.stretch_needed_percent = number(Field::Stretch).unwrap_or_default();
        order.print.reducer_percent = number(Field::Reducer).unwrap_or_default();
        // A draft of an earlier version does not have this field.
        order.print.overhang_mm = number(Field::Overhang).unwrap_or(order.print.overhang_mm);
        order.print.colours_on_top.count = count(number(Field::ColoursOnTop));
        order.use_.looked_at_after_days = number(Field::LookedAt).unwrap_or_default();
        order.use_.wearer_age_years = number(Field::Age);
        order.shop.humidity_percent = number(Field::Humidity).unwrap_or_default();
        order.shop.dryer_fixed = number(Field::FixedSetTemperature);
        order.shop.passes = count(number(Field::Passes));
        order.use_.due = self.text(Field::Due).trim().into();
        if errors.is_empty() { Ok(order) } else { Err(errors) }
    }
}

/// The colour of a garment as typed: a name, a hexadecimal swatch, or the three numbers of a colour meter. Numbers
/// that came with the order hold as long as the field holds their name.
fn typed_colour(text: &str, had: &Colour) -> Result<Colour, FieldError> {
    let name = text.trim().to_owned();
    if name.is_empty() || name == had.name {
        let lab = had.lab.filter(|_| name == had.name);
        return Ok(Colour { name, lab });
    }
    let lab = Lab::read(&name)?.map(Into::into);
    Ok(Colour { name, lab })
}

/// A number that was checked against its bound, as a count.
fn count(value: Option<f64>) -> u32 {
    value.map_or(0, |value| value.clamp(0.0, f64::from(u32::MAX)).round() as u32)
}
