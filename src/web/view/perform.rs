//! Performs the actions of static views: each becomes a message, a file, or a turn to another screen.

use crate::desk::records::RecordsMsg;
use crate::desk::{Action, Choice, Field, Msg, Screen};
use crate::web::desk::Desk;
use web_sys::MouseEvent;

/// Performs an action. A browser hands out a file for a click only: without the event of one, files are not saved.
pub fn perform(desk: Desk, action: &Action, click: Option<&MouseEvent>) {
    match action.clone() {
        Action::ShowWindow => {
            if let Some(click) = click {
                desk.follow_link(click, Screen::Window);
            }
        }
        Action::ChoosePick(key) => desk.send(Msg::Use(key)),
        Action::TapTradeOff(place) => desk.send(Msg::Tap(place)),
        Action::AssumeUndyed => desk.send(Msg::Choose(Choice::Dyed(Some(false)))),
        Action::BackToReadable => desk.send(Msg::BackToReadable),
        Action::Defect(defect) => {
            let had = desk.with_untracked(|state| state.draft.seen);
            desk.send(Msg::DefectSeen(Some(defect).filter(|_| had != Some(defect))));
        }
        Action::Room(change) => desk.change_records(RecordsMsg::PrintRoom(change)),
        Action::Language(language) => {
            if desk.with_untracked(|state| state.draft.language) != language {
                desk.send(Msg::Language);
            }
        }
        Action::Units(units) => {
            if desk.with_untracked(|state| state.draft.units) != units {
                desk.send(Msg::Units);
            }
        }
        Action::Theme(theme) => desk.send(Msg::Theme(theme)),
        Action::Humidity(nudge) => desk.send(Msg::Step(Field::Humidity, nudge.taps())),
        Action::Transfer(nudge) => desk.send(Msg::Transfer(nudge.map(|nudge| nudge.taps()))),
        Action::NewCloth => {
            desk.send(Msg::Blank);
            desk.send(Msg::Show(Screen::Job));
        }
        Action::SaveLibrary => {
            if let Some(click) = click {
                desk.hand_out_library(click);
            }
        }
        Action::SaveTable(table) => {
            if let Some(click) = click {
                desk.hand_out_table(click, table);
            }
        }
        Action::AutosaveFile => {
            if click.is_some() {
                desk.autosave();
            }
        }
        action => {
            if let Some(msg) = of_records(desk, action) {
                let opens = matches!(msg, RecordsMsg::Open(_) | RecordsMsg::Edit(_) | RecordsMsg::New(..));
                desk.change_records(msg);
                if opens {
                    show_record(desk);
                }
            }
        }
    }
}

/// Brings the open record into view, on the Library screen.
fn show_record(desk: Desk) {
    if desk.with_untracked(|state| state.screen) == Screen::Library {
        desk.show("rec");
    } else {
        desk.send(Msg::Show(Screen::Library));
    }
}

/// The message to the records; nothing where no record is open that it would be about.
fn of_records(desk: Desk, action: Action) -> Option<RecordsMsg> {
    let open = || desk.with_untracked(|state| state.records.open().cloned());
    Some(match action {
        Action::Group(group) => RecordsMsg::Group(group),
        Action::Search(text) => RecordsMsg::Search(text),
        Action::ShowMore => RecordsMsg::More,
        Action::OpenRecord(key) => RecordsMsg::Open(key),
        Action::NewRecord(kind, owner) => RecordsMsg::New(kind, owner),
        Action::EditRecord => RecordsMsg::Edit(open()?),
        Action::RemoveRecord => RecordsMsg::Remove(open()?),
        Action::BringBack(entry) => RecordsMsg::BringBack(open()?, entry),
        Action::PutInForm(key) => RecordsMsg::PutInForm(key),
        Action::SaveForm => RecordsMsg::SaveForm,
        Action::DiscardForm => RecordsMsg::DiscardForm,
        Action::KeepCloth => RecordsMsg::KeepCloth,
        Action::KeepOrder => RecordsMsg::KeepOrder,
        Action::Resolve(conflict, claim) => RecordsMsg::Resolve(conflict, claim),
        Action::ChooseClaim(conflict, claim) => RecordsMsg::ChooseClaim(conflict, claim),
        Action::Import => RecordsMsg::Import,
        Action::DismissImport => RecordsMsg::DismissImport,
        _ => return None,
    })
}
