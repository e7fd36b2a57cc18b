//! Types that are stored as records, and the names of their fields.

use super::Kind;
use crate::dryer::DryerRecord;
use crate::ink::{Blocker, MeshRecord, WhiteRecord};
use crate::plan::Order;
use crate::textile::FabricRecord;
use serde::de::value::Error;
use serde::de::{DeserializeOwned, Deserializer, Error as _, Visitor};
use serde::{Serialize, forward_to_deserialize_any};
use serde_json::{Map, Value};

/// A type that is stored as a record of one kind.
pub trait Recorded: Serialize + DeserializeOwned {
    /// Its kind.
    const KIND: Kind;
}

/// Names the kind of record that each type is stored as.
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

/// The fields of a record; empty for a value that does not serialise to an object.
#[must_use]
pub fn fields<T: Serialize>(record: &T) -> Map<String, Value> {
    // Through text, which is how records are written anyway: a serialiser into values would add a second
    // copy of every serialiser to the page.
    let text = serde_json::to_string(record).unwrap_or_default();
    serde_json::from_str(&text).unwrap_or_default()
}

/// Names of the fields of a struct; `None` for one that accepts any field.
#[must_use]
pub fn fields_of<T: DeserializeOwned>() -> Option<&'static [&'static str]> {
    let mut names = None;
    // This always fails; its purpose is to learn which fields the type asks for.
    let _ = T::deserialize(Asked(&mut names));
    names
}

/// A deserialiser without data that records the names of the fields asked of it.
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
