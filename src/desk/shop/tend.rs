//! What can happen on the Library screen, and what follows from it.

use super::super::draft::Draft;
use super::super::edit::change;
use super::super::field::Field;
use super::super::msg::Effect;
use super::super::room::{self, Answered};
use super::super::state::{Screen, State};
use super::super::update::{ask_again, reread};
use super::incoming::look;
use super::{Clock, HITS, Incoming, Look, Shop, saved_id};
use crate::library::log::{Change, Edit, Key, Kind, fields};
use crate::library::storage_layout::{Contents, Line};
use crate::library::table::Form;
use crate::library::{FabricDye, Library, Lot, shipped};
use crate::plan::Order;
use crate::quantity::FieldError;
use crate::textile::{FabricRecord, spelling};
use crate::wording::Language;
use serde_json::{Map, Value, json};
use std::sync::Arc;

/// Something that happened on the Library screen or to the store.
#[derive(Clone, Debug, PartialEq)]
pub enum ShopMsg {
    /// The store was opened: what ships, who this is, and every line that was kept.
    Opened {
        /// The library that ships.
        ships: Arc<Library>,
        /// This tablet.
        tablet: String,
        /// This opening of its page.
        session: String,
        /// What was kept.
        contents: Contents,
    },
    /// What another tab has stored.
    Heard(Contents),
    /// Time goes on.
    Tick,
    /// Something is searched for.
    Ask(String),
    /// It is looked for in something else.
    Look(Look),
    /// More of what was found.
    More,
    /// A record is opened.
    See(Key),
    /// It is closed.
    Close,
    /// A record becomes again what it was after an entry.
    BringBack(Key, Box<str>),
    /// A record goes.
    Remove(Key),
    /// A record is changed by hand.
    Edit(Key),
    /// A new record of this kind is written, as part of another if one is named.
    New(Kind, Option<Box<str>>),
    /// Text was typed into the column of this number.
    Write(usize, String),
    /// What was written is kept.
    Put,
    /// What was written is dropped.
    Drop,
    /// Of a conflict of the open record, the claim of this number holds: which conflict, which claim.
    Settle(usize, usize),
    /// The cloth in the order is kept as a record, with its lot.
    KeepCloth,
    /// The order is kept as a record.
    KeepOrder,
    /// A cloth or an order of the library goes into the form.
    Take(Key),
    /// A file was opened.
    File(String, Vec<u8>),
    /// Of a conflict that waits to come in, the claim of this number is chosen.
    Choose(usize, usize),
    /// What waits comes in.
    Apply,
    /// What waits is left, or what was refused is understood.
    Leave,
    /// The records were saved as a file.
    Saved,
    /// Something was answered about the print room.
    Answer(Answered),
    /// One step back.
    Undo,
    /// One step forward again.
    Redo,
}

/// The next state of the shop and what the browser has to do.
pub(in crate::desk) fn tend(state: &mut State, clock: Clock, msg: ShopMsg, effects: &mut Vec<Effect>) {
    let shop = &mut state.shop;
    shop.revision += 1;
    shop.clock = clock;
    let entries = shop.log.len();
    let mut lines = Vec::new();
    let mut answered = None;
    match msg {
        ShopMsg::Opened { ships, tablet, session, contents } => {
            shop.ships = ships;
            shop.log = crate::library::log::Log::new(tablet, session);
            shop.unreadable.clear();
            let read = shop.read(contents);
            shop.log.extend(read);
            shop.refold();
        }
        ShopMsg::Heard(contents) => shop.hear(contents),
        ShopMsg::Tick => {}
        ShopMsg::Ask(text) => {
            shop.asked = text;
            shop.shown = HITS;
            shop.search();
        }
        ShopMsg::Look(look) => {
            shop.look = look;
            shop.shown = HITS;
            shop.search();
        }
        ShopMsg::More => shop.shown = shop.shown.max(HITS) + HITS,
        ShopMsg::See(key) => {
            shop.open = Some(key);
            shop.form = None;
        }
        ShopMsg::Close => shop.open = None,
        ShopMsg::Write(column, text) => shop.type_in(column, text),
        ShopMsg::Drop => shop.form = None,
        // What a newer Whitehold wrote is not written over.
        _ if shop.read_only() && msg.writes() => {}
        ShopMsg::BringBack(key, entry) => {
            let edit = shop.log.bring_back(key.kind, &key.id, &entry);
            lines.extend(shop.edit(edit.into_iter().collect(), None));
        }
        ShopMsg::Remove(key) => {
            let edit = shop.log.remove(key.kind, &key.id);
            lines.extend(shop.edit(edit.into_iter().collect(), None));
        }
        ShopMsg::Edit(key) => shop.form = Some(Form::of(&shop.log, &key)),
        ShopMsg::New(kind, owner) => shop.begin(kind, owner),
        ShopMsg::Put => lines.extend(shop.put_form(state.draft.language == Language::Es)),
        ShopMsg::Settle(conflict, claim) => lines.extend(shop.settle(conflict, claim)),
        ShopMsg::KeepCloth => match keep_cloth(&state.draft, &mut state.shop) {
            Ok(line) => lines.extend(line),
            Err(errors) => state.errors = errors,
        },
        ShopMsg::KeepOrder => match state.draft.read() {
            Ok(order) => lines.extend(state.shop.keep_order(&order, state.draft.text(Field::Title))),
            Err(errors) => state.errors = errors,
        },
        ShopMsg::Take(key) => take(state, &key, effects),
        ShopMsg::File(name, bytes) => match look(&name, bytes, &shop.library, &shop.log) {
            Ok(incoming) => {
                shop.incoming = Some(incoming);
                shop.refused = None;
            }
            Err(refused) => {
                shop.refused = Some(refused);
                shop.incoming = None;
            }
        },
        ShopMsg::Choose(conflict, claim) => {
            if let Some(Incoming::Merge { chosen, .. }) = &mut shop.incoming
                && let Some(choice) = chosen.get_mut(conflict)
            {
                *choice = claim;
            }
        }
        ShopMsg::Apply => match shop.incoming.take() {
            Some(Incoming::Draft { draft, .. }) => {
                change(state, None, effects, |now| *now = *draft);
                state.screen = Screen::Job;
            }
            Some(incoming) => lines = shop.apply(incoming),
            None => {}
        },
        ShopMsg::Leave => {
            shop.incoming = None;
            shop.refused = None;
        }
        ShopMsg::Saved => {
            let id = saved_id(shop.log.tablet());
            let mut fields = Map::new();
            fields.insert("at".into(), clock.now.into());
            fields.insert("entries".into(), shop.log.len().into());
            let edit = shop.log.write(Kind::Setting, &id, &fields);
            lines.extend(shop.edit(vec![edit], None));
        }
        ShopMsg::Answer(answer) => {
            let edits = room::edits(shop, &state.draft, &answer);
            lines.extend(shop.edit(edits, None));
            answered = Some(answer);
        }
        ShopMsg::Undo => {
            if let Some(of) = shop.log.to_undo().map(|entry| entry.id.clone()) {
                lines.push(shop.append(Change::Undo { of: of.clone() }));
                shop.after(&of);
            }
        }
        ShopMsg::Redo => {
            if let Some(of) = shop.log.to_redo().map(|entry| entry.id.clone()) {
                lines.push(shop.append(Change::Redo { of: of.clone() }));
                shop.after(&of);
            }
        }
    }
    let shop = &mut state.shop;
    if shop.log.len() != entries
        && let Some(incoming) = shop.incoming.take()
    {
        shop.incoming = Some(incoming.again(&shop.library, &shop.log));
    }
    if !lines.is_empty() {
        state.shop.search();
        state.storing += 1;
        effects.push(Effect::Append(lines));
        // A trial that was noted counts at once.
        if !state.shop.learned {
            reread(state, effects);
        }
    }
    if std::mem::take(&mut state.shop.learned) {
        effects.push(Effect::Learned);
        ask_again(state, effects);
    }
    if let Some(answer) = answered {
        room::follow(state, &answer, effects);
    }
}

impl ShopMsg {
    /// Whether it adds to the log.
    fn writes(&self) -> bool {
        matches!(
            self,
            Self::BringBack(..)
                | Self::Remove(_)
                | Self::Edit(_)
                | Self::New(..)
                | Self::Put
                | Self::Settle(..)
                | Self::KeepCloth
                | Self::KeepOrder
                | Self::Apply
                | Self::Saved
                | Self::Answer(_)
                | Self::Undo
                | Self::Redo
        )
    }
}

impl Shop {
    fn settle(&mut self, conflict: usize, claim: usize) -> Option<Line> {
        let key = self.open.clone()?;
        let record = self.log.record(key.kind, &key.id)?;
        let conflict = record.conflicts.get(conflict)?.clone();
        let edits = self.log.settle(&[(key, conflict, claim)]);
        (!edits.is_empty()).then(|| self.append(Change::Choose { edits }))
    }

    fn keep_order(&mut self, order: &Order, title: &str) -> Option<Line> {
        let (key, edit) = self.order(order, title);
        self.open = Some(key);
        self.look = Look::Orders;
        self.edit(vec![edit?], None)
    }

    /// The record of an order, and the edit that keeps it there; none if it is kept already. An order of the same title
    /// is the same order; one without a title is called what its first label says.
    fn order(&self, order: &Order, title: &str) -> (Key, Option<Edit>) {
        let label = order.garments.first().map_or("", |garment| garment.label.as_str());
        let title = if title.trim().is_empty() { label } else { title };
        let mut fields = fields(order);
        fields.insert("title".into(), json!(title));
        let id = self.free(Kind::Order, title, |there| there.get("title") == fields.get("title"));
        let edit = self.log.put(Kind::Order, &id, &fields, None);
        (Key::new(Kind::Order, id), edit)
    }

    /// Whether an order is kept as it stands.
    #[must_use]
    pub fn holds(&self, order: &Order, title: &str) -> bool {
        self.log.keys(Kind::Order).next().is_some() && self.order(order, title).1.is_none()
    }

    /// An id made of a name that no other record has; a record that `same` knows again keeps its own.
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

/// Keeps the cloth of the shown garment, and its lot.
fn keep_cloth(draft: &Draft, shop: &mut Shop) -> Result<Option<Line>, Vec<FieldError>> {
    let order = draft.read()?;
    let Some(garment) = order.garments.get(draft.at) else { return Ok(None) };
    let within = |error: FieldError| error.within(&format!("garments[{}]", draft.at));
    let (record, dye) = shop
        .library
        .cloth_of(garment)
        .map_err(|errors| errors.into_iter().map(within).collect::<Vec<_>>())?;
    let id = shop.free(Kind::Fabric, &record.name, |fields| fields.get("name") == Some(&json!(record.name)));
    let record = FabricRecord { id: id.clone(), ..record };
    let mut fields = fields(&record);
    fields.extend(self::fields(&dye));
    let mut edits: Vec<Edit> = shop.log.put(Kind::Fabric, &id, &fields, None).into_iter().collect();
    if !garment.lot.is_empty() {
        let part = garment.lot.replace('/', "-");
        let lot = Lot { name: garment.lot.clone(), ..Lot::default() };
        edits.extend(shop.log.keep(&format!("{id}/{part}"), &lot));
    }
    shop.open = Some(Key::new(Kind::Fabric, id));
    shop.look = Look::Fabrics;
    Ok(shop.edit(edits, None))
}

/// Puts a cloth or an order of the library into the form.
fn take(state: &mut State, key: &Key, effects: &mut Vec<Effect>) {
    let own = state.shop.log.record(key.kind, &key.id);
    match key.kind {
        Kind::Order => {
            let Some(record) = own else { return };
            let Ok(order) = record.read::<Order>() else { return };
            let title = record.fields.get("title").and_then(Value::as_str).unwrap_or_default().to_owned();
            change(state, None, effects, |draft| draft.open(&order, &title));
        }
        Kind::Fabric => {
            let library = Arc::clone(&state.shop.library);
            let Ok(fabric) = library.fabric_record(&key.id) else { return };
            let dye = own.and_then(|record| record.read::<FabricDye>().ok()).unwrap_or_default();
            let garment = library.garment(fabric, &dye);
            change(state, None, effects, |draft| {
                let order = Order { garments: vec![garment], ..draft.rest.clone() };
                let title = draft.text(Field::Title).to_owned();
                draft.open(&order, &title);
            });
        }
        _ => return,
    }
    state.screen = Screen::Job;
}
