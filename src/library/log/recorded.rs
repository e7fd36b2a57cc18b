//! Which types of the house are records, and the names of their fields.

use super::Kind;
use crate::dryer::DryerRecord;
use crate::ink::{Blocker, MeshRecord, WhiteRecord};
use crate::plan::Order;
use crate::textile::FabricRecord;
use serde::de::value::Error;
use serde::de::{DeserializeOwned, Deserializer, Error as _, Visitor};
use serde::{Serialize, forward_to_deserialize_any};
use serde_json::{Map, Value};

/// A type that is kept as a record of one kind.
pub trait Recorded: Serialize + DeserializeOwned {
    /// Its kind.
    const KIND: Kind;
}

/// Says which kind of record each type is kept as.
macro_rules! recorded {
    ($($kind:ident: $record:ty;)*) => {
        $(impl $crate::library::log::Recorded for $record {
            const KIND: $crate::library::log::Kind = $crate::library::log::Kind::$kind;
        })*
    };
}

pub(in crate::library) use recorded;

recorded! {
    Fabric: FabricRecord;
    White: WhiteRecord;
    Blocker: Blocker;
    Dryer: DryerRecord;
    Mesh: MeshRecord;
    Order: Order;
}

/// The fields of a record; none of what is no object.
#[must_use]
pub fn fields<T: Serialize>(record: &T) -> Map<String, Value> {
    // Through text, which records are written as anyway: a writer of values would double the page's writers.
    let text = serde_json::to_string(record).unwrap_or_default();
    serde_json::from_str(&text).unwrap_or_default()
}

/// Names of the fields of a struct; nothing for one that takes any field.
#[must_use]
pub fn fields_of<T: DeserializeOwned>() -> Option<&'static [&'static str]> {
    let mut names = None;
    // Fails always: all it is asked for is what the type would like to be given.
    let _ = T::deserialize(Asked(&mut names));
    names
}

/// A reader that holds nothing and writes down the names that it is asked for.
struct Asked<'a>(&'a mut Option<&'static [&'static str]>);

impl<'de> Deserializer<'de> for Asked<'_> {
    type Error = Error;

    fn deserialize_any<V: Visitor<'de>>(self, _: V) -> Result<V::Value, Error> {
        Err(Error::custom("nothing here"))
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        fields: &'static [&'static str],
        _: V,
    ) -> Result<V::Value, Error> {
        *self.0 = Some(fields);
        Err(Error::custom("nothing here"))
    }

    forward_to_deserialize_any! {
        bool i8 i16 i32 i64 i128 u8 u16 u32 u64 u128 f32 f64 char str string bytes byte_buf option unit unit_struct
        newtype_struct seq tuple tuple_struct map enum identifier ignored_any
    }
}
