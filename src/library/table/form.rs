//! The form of one record that is written by hand; it reads and writes the same columns as the table.

use super::super::Library;
use super::super::log::{Key, Kind, Log, same};
use super::cell::{RowCells, at_path, unguard};
use super::column::{CellKind, TableColumn, columns};
use super::{record, rows};
use crate::quantity::FieldError;
use serde_json::{Map, Value};

/// A record that is being edited.
#[derive(Clone, Debug, PartialEq)]
pub struct Form {
    /// Kind of the record.
    pub kind: Kind,
    /// Its id; `None` while it is new.
    pub id: Option<Box<str>>,
    /// Id of the record that a new one will belong to, if any.
    pub owner: Option<Box<str>>,
    /// Its fields before the edit; for a new record, the fields that it starts from.
    before: Map<String, Value>,
    /// The text in each of its columns.
    pub texts: Vec<String>,
    /// The texts when the form was last drawn; typing does not redraw it.
    pub shown: Vec<String>,
    /// What is wrong with it.
    pub errors: Vec<FieldError>,
}

impl Form {
    /// The form of an existing record.
    #[must_use]
    pub fn of(log: &Log, key: &Key) -> Self {
        let before = record::known(log, key).unwrap_or_default();
        Self::new(key.kind, Some(key.id.clone()), None, before)
    }

    /// The form of a new record. `owner` is the record that it belongs to, if any.
    #[must_use]
    pub fn fresh(kind: Kind, owner: Option<Box<str>>, start: Map<String, Value>) -> Self {
        Self::new(kind, None, owner, start)
    }

    fn new(kind: Kind, id: Option<Box<str>>, owner: Option<Box<str>>, before: Map<String, Value>) -> Self {
        let texts = record::cells(columns(kind), id.as_deref().unwrap_or_default(), &before);
        let texts: Vec<String> = texts.iter().map(|text| unguard(text).to_owned()).collect();
        Self { kind, id, owner, before, shown: texts.clone(), texts, errors: Vec::new() }
    }

    /// The columns that a person fills in and that the record has a place for, each with its number.
    pub fn columns(&self) -> impl Iterator<Item = (usize, &'static TableColumn)> {
        let shown = |column: &TableColumn| match column.what {
            CellKind::Id => self.id.is_none() && self.kind == Kind::Mesh,
            CellKind::Low | CellKind::High | CellKind::Unit => false,
            _ => {
                column.path.rsplit_once('/').is_none_or(|(within, _)| at_path(&self.before, within).is_some())
            }
        };
        columns(self.kind).iter().enumerate().filter(move |(_, column)| shown(column))
    }

    /// The errors of a column.
    pub fn errors_of(&self, column: &TableColumn) -> impl Iterator<Item = &FieldError> {
        let path = column.path.replace('/', ".");
        self.errors.iter().filter(move |error| {
            let plain = error.field.replace('[', ".").replace(']', "");
            error.field == column.name || plain == path || plain.rsplit('.').next() == Some(&path)
        })
    }

    /// Of the fields `after`, those that differ from before the edit; `null` for a removed one. Writing
    /// only these keeps what another tab wrote meanwhile.
    #[must_use]
    pub fn changes(&self, after: &Map<String, Value>) -> Map<String, Value> {
        let mut changes = Map::new();
        for name in self.before.keys().chain(after.keys()) {
            let value = after.get(name).unwrap_or(&Value::Null);
            if !same(self.before.get(name).unwrap_or(&Value::Null), value) {
                changes.insert(name.clone(), value.clone());
            }
        }
        changes
    }

    /// The record in the form: its key and all its fields.
    ///
    /// # Errors
    /// A [`FieldError`] for each column that cannot be read, or for the first needed field that is empty
    /// or cannot be used.
    pub fn read(
        &self,
        library: &Library,
        log: &Log,
        decimal_comma: bool,
    ) -> Result<(Key, Map<String, Value>), Vec<FieldError>> {
        let shown: Vec<(usize, &TableColumn)> = self.columns().collect();
        let names: Vec<String> = shown.iter().map(|(_, column)| column.name.to_owned()).collect();
        let texts = shown.iter().map(|&(at, _)| self.texts.get(at).cloned().unwrap_or_default()).collect();
        let cells = RowCells::new(&names, texts, decimal_comma);
        let stated = record::stated(columns(self.kind), &cells, &self.before)?;
        let id = match (&self.id, &self.owner) {
            (Some(id), _) => id.to_string(),
            (None, owner) => free(self.kind, owner.as_deref(), &cells, log).map_err(|error| vec![error])?,
        };
        let key = Key::new(self.kind, id);
        let fields = record::complete(&key, &self.before, stated, columns(self.kind), library);
        fields.map(|fields| (key, fields)).map_err(|error| vec![error])
    }
}

/// An id that no other record has, made from its name or its day.
fn free(kind: Kind, owner: Option<&str>, cells: &RowCells<'_>, log: &Log) -> Result<String, FieldError> {
    let named = match kind {
        Kind::Fabric | Kind::White | Kind::Dryer | Kind::Mesh => rows::id(cells)?,
        Kind::Lot | Kind::Batch => rows::id(cells)?,
        Kind::Reading => "r".into(),
        Kind::FollowUp => "look".into(),
        _ => ["printed", "day"].map(|name| cells.word(name)).concat(),
    };
    let named = if named.is_empty() { "record".to_owned() } else { named };
    let base = owner.map_or(named.clone(), |owner| format!("{owner}/{named}"));
    let taken = |id: &str| record::known(log, &Key::new(kind, id)).is_some();
    let mut ids = std::iter::once(base.clone()).chain((2..).map(|number: u32| format!("{base}-{number}")));
    Ok(ids.find(|id| !taken(id)).unwrap_or(base))
}
