//! The Library: the shop's records, and the form in which one is written.

use super::{DeskPage, Element, parts};
use anyhow::{Result, ensure};
use serde_json::json;
use std::path::Path;

/// The shop's records.
#[derive(Clone, Copy, Debug)]
pub struct LibraryPage<'a>(pub(super) &'a DeskPage);

impl<'a> LibraryPage<'a> {
    elements! {
        /// What can be looked in, one button each, with how many records there are.
        sections => LOOK_IN;
        /// The search.
        search => SEARCH;
        /// How many were found of how many.
        found => FOUND_COUNT;
        /// The list of what was found.
        hits => HITS;
        /// The records in it.
        hit => HIT;
        /// The open record, or its form.
        record => RECORD;
        /// The open record's name.
        name => RECORD_NAME;
        /// What the open record holds.
        holds => RECORD_HOLDS;
        /// The records that belong to the open one.
        belongs => RECORD_PARTS;
        /// What happened to the open record.
        past => RECORD_PAST;
        /// The moments of its past.
        moments => MOMENT;
        /// Brings an earlier state back.
        bring_back => BRING_BACK;
        /// Opens the form of the open record.
        change => CHANGE_RECORD;
        /// Prints on the open cloth.
        print_on_this => PRINT_ON_CLOTH;
        /// Prints the open order again.
        print_again => PRINT_AGAIN;
        /// Keeps the cloth of the order in the form.
        keep_cloth => KEEP_CLOTH;
        /// Begins a white.
        new_white => NEW_WHITE;
        /// Begins a mesh.
        new_mesh => NEW_MESH;
        /// Begins a tub of the open white.
        new_tub => NEW_TUB;
        /// Begins a trial of the open cloth.
        note_trial => NOTE_TRIAL;
        /// Begins a look at the open trial.
        note_look => NOTE_LOOK;
        /// What a file would bring in.
        incoming => INCOMING;
        /// How many entries it would bring.
        incoming_counts => INCOMING_COUNTS;
        /// Values on which two tablets differ.
        incoming_differs => INCOMING_DIFFERS;
        /// Of those, the one that is not chosen.
        other_claim => OTHER_CLAIM;
        /// Brings the file in.
        bring_in => BRING_IN;
        /// Leaves the file.
        leave_file => LEAVE_FILE;
        /// Saves all records as a file.
        save_library => SAVE_LIBRARY;
        /// Saves the whites as a table.
        save_whites => SAVE_WHITES_TABLE;
        /// Keeps one file on the disk up to date.
        keep_one_file => KEEP_ONE_FILE;
    }

    /// Looks in a section, by its name.
    ///
    /// # Errors
    /// [`anyhow::Error`] if there is none of that name.
    pub async fn look_in(self, section: &str) -> Result<()> {
        self.sections().named(section).tap().await
    }

    /// The form of a record that is written.
    #[must_use]
    pub fn form(self) -> RecordForm<'a> {
        RecordForm(self.0)
    }

    /// Taps a button that opens the form.
    ///
    /// # Errors
    /// [`anyhow::Error`] if no form comes.
    pub async fn begin(self, button: Element<'a>) -> Result<RecordForm<'a>> {
        button.tap().await?;
        self.form().all().read().await?;
        Ok(self.form())
    }

    /// Writes a soft white of this name and price.
    ///
    /// # Errors
    /// [`anyhow::Error`] if it is not kept.
    pub async fn write_white(self, name: &str, price: &str) -> Result<()> {
        self.look_in("Whites").await?;
        self.0.settle().await?;
        let form = self.begin(self.new_white()).await?;
        form.fill("name", name).await?;
        form.fill("class", "soft").await?;
        form.fill("price a kilogram", price).await?;
        form.keep().tap().await?;
        self.name().says(name).await
    }

    /// Opens a file whose content would come in.
    ///
    /// # Errors
    /// [`anyhow::Error`] if nothing is said of it.
    pub async fn open_file(self, file: &Path) -> Result<()> {
        self.0.element(parts::OPEN_FILE).choose_file(file).await?;
        self.incoming().read().await.map(drop)
    }

    /// A button that begins a record, by its name.
    #[must_use]
    pub fn record_to_begin(self, name: &str) -> Element<'a> {
        self.0.element(parts::BEGINS_RECORD).named(name)
    }

    /// The names of the buttons that begin a record.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the script fails.
    pub async fn records_to_begin(self) -> Result<Vec<String>> {
        let names = "return every(arguments[0]).map(named)";
        Ok(serde_json::from_value(self.0.element(parts::BEGINS_RECORD).run(names, vec![]).await?)?)
    }
}

/// The form of a record.
#[derive(Clone, Copy, Debug)]
pub struct RecordForm<'a>(&'a DeskPage);

impl<'a> RecordForm<'a> {
    elements! {
        /// All of it.
        all => FORM;
        /// What is wrong in it.
        error => FORM_ERROR;
        /// Keeps the record.
        keep => KEEP_RECORD;
        /// Leaves it.
        leave => LEAVE_RECORD;
    }

    /// Fills the field whose label begins so, or chooses in it.
    ///
    /// # Errors
    /// [`anyhow::Error`] if there is no such field, or it does not take the text.
    pub async fn fill(self, label: &str, text: &str) -> Result<()> {
        let holds =
            self.0.run("return fillIn(arguments[0], arguments[1])", vec![json!(label), json!(text)]).await?;
        ensure!(holds == text, "`{label}` took {holds} for {text}");
        Ok(())
    }
}
