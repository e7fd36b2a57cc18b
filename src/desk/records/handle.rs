//! How a message changes the records: what is searched, open and written, and which entries join the log.

use super::incoming::look;
use super::{Clock, HITS, Incoming, RecordGroup, Records, RecordsMsg, room_settings, saved_id};
use crate::desk::form::{Draft, Field};
use crate::library::log::{Change, Edit, Key, Kind, fields};
use crate::library::storage_layout::Line;
use crate::library::table::Form;
use crate::library::{LotRecord, shipped};
use crate::plan::Order;
use crate::quantity::FieldError;
use crate::textile::{FabricRecord, spelling};
use crate::wording::Language;
use serde_json::{Map, Value, json};

impl Records {
    /// Handles a message; returns the lines to store, all of one change.
    ///
    /// # Errors
    /// A [`FieldError`] for each field of the draft that cannot be read, where cloth or order were to be kept.
    pub(in crate::desk) fn handle(
        &mut self,
        clock: Clock,
        msg: RecordsMsg,
        draft: &Draft,
    ) -> Result<Vec<Line>, Vec<FieldError>> {
        self.revision += 1;
        self.clock = clock;
        let entries = self.log.len();
        let lines = self.dispatch(msg, draft)?;
        // The preview of a waiting file is worked out anew when the log has changed.
        if self.log.len() != entries
            && let Some(incoming) = self.incoming.take()
        {
            self.incoming = Some(incoming.again(&self.library, &self.log));
        }
        if !lines.is_empty() {
            self.search();
        }
        Ok(lines)
    }

    fn dispatch(&mut self, msg: RecordsMsg, draft: &Draft) -> Result<Vec<Line>, Vec<FieldError>> {
        let mut lines = Vec::new();
        match msg {
            RecordsMsg::Opened { ships, tablet, session, contents } => {
                self.ships = ships;
                self.log = crate::library::log::Log::new(tablet, session);
                self.unreadable.clear();
                let read = self.read(contents);
                self.log.extend(read);
                self.refold();
            }
            RecordsMsg::Synced(contents) => self.sync(contents),
            RecordsMsg::Tick => {}
            RecordsMsg::Search(text) => {
                self.asked = text;
                self.shown = HITS;
                self.search();
            }
            RecordsMsg::Group(group) => {
                self.group = group;
                self.shown = HITS;
                self.search();
            }
            RecordsMsg::More => self.shown = self.shown.max(HITS) + HITS,
            RecordsMsg::Open(key) => {
                self.open = Some(key);
                self.form = None;
            }
            RecordsMsg::Close => self.open = None,
            RecordsMsg::Type(column, text) => self.type_in(column, text),
            RecordsMsg::DiscardForm => self.form = None,
            // Records of a newer version are not changed.
            _ if self.read_only() && msg.writes() => {}
            RecordsMsg::BringBack(key, entry) => {
                let edit = self.log.bring_back(key.kind, &key.id, &entry);
                lines.extend(self.edit(edit.into_iter().collect(), None));
            }
            RecordsMsg::Remove(key) => {
                let edit = self.log.remove(key.kind, &key.id);
                lines.extend(self.edit(edit.into_iter().collect(), None));
            }
            RecordsMsg::Edit(key) => self.form = Some(Form::of(&self.log, &key)),
            RecordsMsg::New(kind, owner) => self.begin(kind, owner),
            RecordsMsg::SaveForm => lines.extend(self.put_form(draft.language == Language::Es)),
            RecordsMsg::Resolve(conflict, claim) => lines.extend(self.resolve(conflict, claim)),
            RecordsMsg::KeepCloth => lines.extend(self.keep_cloth(draft)?),
            RecordsMsg::KeepOrder => {
                let order = draft.read()?;
                lines.extend(self.keep_order(&order, draft.text(Field::Title)));
            }
            RecordsMsg::FileChosen(name, bytes) => match look(&name, bytes, &self.library, &self.log) {
                Ok(incoming) => {
                    self.incoming = Some(incoming);
                    self.refused = None;
                }
                Err(refused) => {
                    self.refused = Some(refused);
                    self.incoming = None;
                }
            },
            RecordsMsg::ChooseClaim(conflict, claim) => {
                if let Some(Incoming::Merge { chosen, .. }) = &mut self.incoming
                    && let Some(choice) = chosen.get_mut(conflict)
                {
                    *choice = claim;
                }
            }
            RecordsMsg::Import => {
                if let Some(incoming) = self.incoming.take() {
                    lines = self.apply(incoming);
                }
            }
            RecordsMsg::DismissImport => {
                self.incoming = None;
                self.refused = None;
            }
            RecordsMsg::FileSaved => {
                let id = saved_id(self.log.tablet());
                let mut fields = Map::new();
                fields.insert("at".into(), self.clock.now.into());
                fields.insert("entries".into(), self.log.len().into());
                let edit = self.log.write(Kind::Setting, &id, &fields);
                lines.extend(self.edit(vec![edit], None));
            }
            RecordsMsg::PrintRoom(change) => {
                let edits = room_settings::edits(self, draft, &change);
                lines.extend(self.edit(edits, None));
            }
            // This changes the order form, not the records.
            RecordsMsg::PutInForm(_) => {}
            RecordsMsg::Undo => {
                if let Some(of) = self.log.to_undo().map(|entry| entry.id.clone()) {
                    lines.push(self.append(Change::Undo { of: of.clone() }));
                    self.after(&of);
                }
            }
            RecordsMsg::Redo => {
                if let Some(of) = self.log.to_redo().map(|entry| entry.id.clone()) {
                    lines.push(self.append(Change::Redo { of: of.clone() }));
                    self.after(&of);
                }
            }
        }
        Ok(lines)
    }

    fn resolve(&mut self, conflict: usize, claim: usize) -> Option<Line> {
        let key = self.open.clone()?;
        let record = self.log.record(key.kind, &key.id)?;
        let conflict = record.conflicts.get(conflict)?.clone();
        let edits = self.log.settle(&[(key, conflict, claim)]);
        (!edits.is_empty()).then(|| self.append(Change::Choose { edits }))
    }

    fn keep_order(&mut self, order: &Order, title: &str) -> Option<Line> {
        let (key, edit) = self.order(order, title);
        self.open = Some(key);
        self.group = RecordGroup::Orders;
        self.edit(vec![edit?], None)
    }

    /// The record of an order, and the edit that keeps it there; no edit if it is kept already. Orders of one title
    /// are the same order; one without a title is named by its first label.
    fn order(&self, order: &Order, title: &str) -> (Key, Option<Edit>) {
        let label = order.garments.first().map_or("", |garment| garment.label.as_str());
        let title = if title.trim().is_empty() { label } else { title };
        let mut fields = fields(order);
        fields.insert("title".into(), json!(title));
        let id = self.free(Kind::Order, title, |there| there.get("title") == fields.get("title"));
        let edit = self.log.put(Kind::Order, &id, &fields, None);
        (Key::new(Kind::Order, id), edit)
    }

    /// Whether an order is kept exactly as it is.
    #[must_use]
    pub fn holds(&self, order: &Order, title: &str) -> bool {
        self.log.keys(Kind::Order).next().is_some() && self.order(order, title).1.is_none()
    }

    /// An id made of a name that no other record has. A record that is the `same` keeps its id.
    fn free(&self, kind: Kind, name: &str, same: impl Fn(&Map<String, Value>) -> bool) -> String {
        let base: String =
            spelling::fold(name).replace(|it: char| !it.is_alphanumeric(), "-").chars().take(60).collect();
        let base = base.split('-').filter(|part| !part.is_empty()).collect::<Vec<_>>().join("-");
        let base = if base.is_empty() { "record".to_owned() } else { base };
        let taken = |id: &str| {
            let own = self.log.record(kind, id).map(|record| record.fields);
            own.or_else(|| shipped(kind, id)).is_some_and(|fields| !same(&fields))
        };
        let ids = std::iter::once(base.clone()).chain((2..).map(|number: u32| format!("{base}-{number}")));
        ids.into_iter().find(|id| !taken(id)).unwrap_or(base)
    }

    fn apply(&mut self, incoming: Incoming) -> Vec<Line> {
        match incoming {
            Incoming::Merge { name, entries, preview, chosen, .. } => {
                let conflicts = preview.into_conflicts().into_iter().zip(chosen);
                let choices: Vec<_> =
                    conflicts.map(|((key, conflict), which)| (key, conflict, which)).collect();
                let came = self.log.merge(self.clock.now, &name, entries, &choices);
                let lines = came.iter().map(|entry| Line::new(&*entry.id, entry.line())).collect();
                self.refold();
                lines
            }
            Incoming::Table { name, preview, .. } => {
                let Some(change) = preview.change(&self.log, &name) else { return Vec::new() };
                let entry = self.log.append(self.clock.now, change);
                self.refold();
                vec![Line::new(&*entry.id, entry.line())]
            }
            Incoming::Newer { .. } | Incoming::Draft { .. } => Vec::new(),
        }
    }

    /// Keeps the cloth of the shown garment, and its lot.
    fn keep_cloth(&mut self, draft: &Draft) -> Result<Option<Line>, Vec<FieldError>> {
        let order = draft.read()?;
        let Some(garment) = order.garments.get(draft.at) else { return Ok(None) };
        let within = |error: FieldError| error.within(&format!("garments[{}]", draft.at));
        let (record, dye) = self
            .library
            .cloth_of(garment)
            .map_err(|errors| errors.into_iter().map(within).collect::<Vec<_>>())?;
        let id =
            self.free(Kind::Fabric, &record.name, |fields| fields.get("name") == Some(&json!(record.name)));
        let record = FabricRecord { id: id.clone(), ..record };
        let mut held = fields(&record);
        held.extend(fields(&dye));
        let mut edits: Vec<Edit> = self.log.put(Kind::Fabric, &id, &held, None).into_iter().collect();
        if !garment.lot.is_empty() {
            let part = garment.lot.replace('/', "-");
            let lot = LotRecord { name: garment.lot.clone(), ..LotRecord::default() };
            edits.extend(self.log.keep(&format!("{id}/{part}"), &lot));
        }
        self.open = Some(Key::new(Kind::Fabric, id));
        self.group = RecordGroup::Fabrics;
        Ok(self.edit(edits, None))
    }
}

/// The kind of record that a part belongs to.
pub(super) fn owner_of(kind: Kind) -> Option<Kind> {
    match kind {
        Kind::Lot => Some(Kind::Fabric),
        Kind::Batch => Some(Kind::White),
        Kind::Reading | Kind::FollowUp => Some(Kind::Trial),
        Kind::Calibration | Kind::DailyCheck => Some(Kind::Dryer),
        _ => None,
    }
}
