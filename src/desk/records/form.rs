//! Records written by hand, through a form.

use super::Records;
use super::handle::owner_of;
use crate::library::log::{Edit, Key, Kind};
use crate::library::shipped;
use crate::library::storage_layout::Line;
use crate::library::table::{CellKind, Form, columns};
use crate::wording::civil;
use serde_json::{Map, Value};

impl Records {
    /// Begins a new record. `owner` is the cloth of a trial, or the record that a part belongs to.
    pub(super) fn begin(&mut self, kind: Kind, owner: Option<Box<str>>) {
        let mut start = Map::new();
        if kind == Kind::Dryer {
            // A dryer has many numbers: it begins as a copy of one that ships.
            let like = self.library.dryers.first().map(|dryer| dryer.id.clone()).unwrap_or_default();
            start = shipped(kind, &like).unwrap_or_default();
            start.remove("name");
            start.remove("measured");
            start.insert("source".into(), format!("copied from {like}").into());
        }
        let owner = match (kind, owner) {
            (Kind::Trial, owner) => {
                if let Some(cloth) = owner {
                    let (fabric, lot) = cloth.split_once('/').unwrap_or((&cloth, ""));
                    start.insert("fabric".into(), fabric.into());
                    start.insert("lot".into(), lot.into());
                }
                None
            }
            (_, owner) => owner,
        };
        let mut form = Form::fresh(kind, owner, start);
        let today = self.today();
        for (column, text) in columns(kind).iter().zip(&mut form.texts) {
            let begins = matches!(column.name, "printed" | "came" | "opened" | "day");
            if matches!(column.what, CellKind::Day) && begins {
                text.clone_from(&today);
            }
        }
        form.shown.clone_from(&form.texts);
        self.form = Some(form);
        self.incoming = None;
    }

    /// The local date, `2026-11-24`.
    fn today(&self) -> String {
        let (year, month, day) = civil(self.clock.now, self.clock.ahead);
        format!("{year:04}-{month:02}-{day:02}")
    }

    pub(super) fn type_in(&mut self, column: usize, text: String) {
        if let Some(place) = self.form.as_mut().and_then(|form| form.texts.get_mut(column)) {
            *place = text;
        }
    }

    /// Saves the form as a record. Where it cannot be read, the form stays open with its errors.
    pub(super) fn put_form(&mut self, decimal_comma: bool) -> Option<Line> {
        let form = self.form.as_mut()?;
        form.shown.clone_from(&form.texts);
        match form.read(&self.library, &self.log, decimal_comma) {
            Err(errors) => {
                form.errors = errors;
                None
            }
            Ok((key, fields)) => {
                let edit = self.edit_of(&key, &fields);
                let owner = self.form.take().and_then(|form| form.owner);
                self.open = owner.and_then(|id| Some(Key::new(owner_of(key.kind)?, id))).or(Some(key));
                self.edit(edit.into_iter().collect(), None)
            }
        }
    }

    fn edit_of(&self, key: &Key, fields: &Map<String, Value>) -> Option<Edit> {
        let form = self.form.as_ref()?;
        if !self.log.stands(key) {
            return self.log.put(key.kind, &key.id, fields, None);
        }
        let changes = form.changes(fields);
        (!changes.is_empty()).then(|| self.log.write(key.kind, &key.id, &changes))
    }
}
