//! Which types of the house are records, and the names of their fields.

use super::{Edit, Key, Kind, Log};
use crate::dryer::DryerRecord;
use crate::ink::{Blocker, MeshRecord, WhiteRecord};
use crate::plan::Order;
use crate::quantity::FieldError;
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

macro_rules! recorded {
    ($($kind:ident: $record:ty;)*) => {
        $(impl Recorded for $record {
            const KIND: Kind = Kind::$kind;
        })*
    };
}

recorded! {
    Fabric: FabricRecord;
    White: WhiteRecord;
    Blocker: Blocker;
    Dryer: DryerRecord;
    Mesh: MeshRecord;
    Order: Order;
}

impl Log {
    /// The edit that keeps a record under an id; nothing if it is kept already.
    #[must_use]
    pub fn keep<T: Recorded>(&self, id: &str, record: &T) -> Option<Edit> {
        self.put(T::KIND, id, &fields(record), fields_of::<T>())
    }
}

impl Log {
    /// A record as a type of the house, as [`Record::read`](super::Record::read); nothing if it is not there.
    ///
    /// # Errors
    /// As there.
    pub fn read<T: Recorded>(&self, key: &Key) -> Option<Result<T, FieldError>> {
        // What was written once is read as it stands; whatever that stumbles over is read with more care.
        let once = self.written_once(key).and_then(|text| {
            let id = serde_json::to_string(&*key.id).ok()?;
            let rest = text.trim_start().strip_prefix('{')?;
            let comma = if rest.trim_start().starts_with('}') { "" } else { "," };
            serde_json::from_str(&format!("{{\"id\":{id}{comma}{rest}")).ok()
        });
        if let Some(read) = once {
            return Some(Ok(read));
        }
        self.record(key.kind, &key.id).filter(|record| !record.removed).map(|record| record.read::<T>())
    }
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
