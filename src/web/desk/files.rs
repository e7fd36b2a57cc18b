//! Files out of the page and into it: libraries, tables, drafts, a meter's samples, pictures of sheets.

use super::Desk;
use crate::desk::records::RecordsMsg;
use crate::desk::{Msg, Screen, State, draft_file};
use crate::library::file as library_file;
use crate::library::table::RecordTable;
use crate::web::{file, sheet_scanner};
use leptos::prelude::*;
use std::rc::Rc;

/// Name of the file with everything on the page.
const FILE: &str = "whitehold.jsonl";

impl Desk {
    /// Makes the link that is being tapped a download of everything on the page: the records and the draft.
    pub fn hand_out(self, tap: &web_sys::Event) {
        if let Err(trouble) = file::hand_out(tap, FILE, &self.state.with_untracked(State::file)) {
            self.send(Msg::Trouble(trouble));
        }
    }

    /// Makes the link that is being tapped a download of the shop's records.
    pub fn hand_out_library(self, tap: &web_sys::Event) {
        let (name, text) = self.library_file();
        match file::hand_out(tap, &name, &text) {
            Ok(()) => self.change_records(RecordsMsg::FileSaved),
            Err(trouble) => self.send(Msg::Trouble(trouble)),
        }
    }

    /// Makes the link that is being tapped a download of a table.
    pub fn hand_out_table(self, tap: &web_sys::Event, table: RecordTable) {
        let (name, text) = self.state.with_untracked(|state| {
            let what = match table {
                RecordTable::Fabrics => "fabrics",
                RecordTable::Whites => "whites",
                RecordTable::Trials => "trials",
            };
            (state.records.file_name(what, "csv"), table.write(state.records.library(), state.records.log()))
        });
        if let Err(trouble) = file::hand_out(tap, &name, &text) {
            self.send(Msg::Trouble(trouble));
        }
    }

    /// Name and text of the library file.
    fn library_file(self) -> (String, String) {
        self.state.with_untracked(|state| {
            let shop = &state.records;
            (shop.file_name("library", "jsonl"), library_file::write(shop.log(), shop.clock().now))
        })
    }

    /// Previews the import of a file that was chosen or dropped.
    pub fn take_in(self, file: Option<web_sys::File>) {
        let Some(file) = file else { return };
        wasm_bindgen_futures::spawn_local(async move {
            match file::bytes(&file).await {
                Ok(bytes) => {
                    self.change_records(RecordsMsg::FileChosen(file.name(), bytes));
                    self.focus("incoming");
                }
                Err(trouble) => self.send(Msg::Trouble(trouble)),
            }
        });
    }

    /// Whether every change is written to a chosen file; `None` where the browser lets no page write files.
    pub fn autosaves(self) -> Option<bool> {
        let on = self.autosaving.get();
        file::Handle::can_be_had().then_some(on)
    }

    /// Lets a file be chosen that is kept up to date from now on.
    pub fn autosave(self) {
        wasm_bindgen_futures::spawn_local(async move {
            let (name, _) = self.library_file();
            match file::Handle::choose(&name).await {
                Ok(Some(handle)) => {
                    self.handle.set_value(Some(Rc::new(handle)));
                    self.autosaving.set(true);
                    self.write_file();
                }
                Ok(None) => {}
                Err(trouble) => self.send(Msg::Trouble(trouble)),
            }
        });
    }

    /// Writes the chosen file anew; while it is being written, once more afterwards.
    pub(super) fn write_file(self) {
        let Some(handle) = self.handle.get_value() else { return };
        if self.waiting.try_update_value(|waiting| std::mem::replace(&mut waiting.file, true)) != Some(false)
        {
            self.waiting.update_value(|waiting| waiting.file_again = true);
            return;
        }
        wasm_bindgen_futures::spawn_local(async move {
            let (_, text) = self.library_file();
            let written = handle.write(&text).await;
            let mut again = false;
            self.waiting.update_value(|waiting| {
                waiting.file = false;
                again = std::mem::take(&mut waiting.file_again);
            });
            match written {
                // The file is gone or may not be written any more: another has to be chosen.
                Err(trouble) => {
                    self.handle.set_value(None);
                    self.autosaving.set(false);
                    self.send(Msg::Trouble(trouble));
                }
                Ok(()) if again => self.write_file(),
                Ok(()) => self.change_records(RecordsMsg::FileSaved),
            }
        });
    }

    /// Opens a saved file: its draft at once; its records after their import was confirmed.
    pub fn bring(self, file: Option<web_sys::File>) {
        let Some(file) = file else { return };
        wasm_bindgen_futures::spawn_local(async move {
            match file::text(&file).await {
                Ok(text) => {
                    let entries = library_file::header(&text).map(|header| header.entries);
                    if entries.is_none_or(|entries| entries == 0) || draft_file::read_file(&text).is_some() {
                        self.send(Msg::OpenDraftFile(text.clone()));
                    }
                    if entries.is_some_and(|entries| entries > 0) {
                        self.send(Msg::Show(Screen::Library));
                        self.change_records(RecordsMsg::FileChosen(file.name(), text.into_bytes()));
                        self.focus("incoming");
                    }
                }
                Err(trouble) => self.send(Msg::Trouble(trouble)),
            }
        });
    }

    /// Reads a colour meter's file for the garment in the form.
    pub fn measure(self, file: Option<web_sys::File>) {
        let Some(file) = file else { return };
        wasm_bindgen_futures::spawn_local(async move {
            match file::text(&file).await {
                Ok(text) => self.send(Msg::Meter(text)),
                Err(trouble) => self.send(Msg::Trouble(trouble)),
            }
        });
    }

    /// Reads a job sheet back from a photograph of it.
    pub fn read_sheet(self, file: Option<web_sys::File>) {
        let Some(file) = file else { return };
        wasm_bindgen_futures::spawn_local(async move {
            let sheet_code = sheet_scanner::sheet_code_in(&file).await;
            self.send(Msg::Scanned(sheet_code.map(Box::new)));
        });
    }
}
