//! What should never be written, written into every field of every screen, and into every form of the Library.

use super::files::open_library;
use crate::browser::fixture::Fixture;
use crate::browser::screens::{DeskPage, DeskScreen, Scope};
use anyhow::{Result, ensure};
use std::collections::BTreeSet;

/// Nothing, too much, too little, a wrong unit, what is pasted from elsewhere, pictures, other directions, markup.
const BAD: [&str; 10] = [
    "",
    "999999999999999999999",
    "-5",
    "330 °F oz",
    "\t12,5\u{a0}°C\r\nand\u{200b} a second line\r\n",
    "🙂🙂",
    "שלום \u{202e}abc",
    "<img src=x onerror=alert(1)><b>&lt;",
    "\" onfocus=alert(1) x='",
    "1e309 NaN Infinity",
];

/// Those of them that no field for a number may take in silence.
const NO_NUMBER: [&str; 4] =
    ["🙂🙂", "שלום \u{202e}abc", "<img src=x onerror=alert(1)><b>&lt;", "1e309 NaN Infinity"];

/// The job last: its bad fields would hide what the others show.
const SCREENS: [DeskScreen; 8] = [
    DeskScreen::Forecast,
    DeskScreen::Window,
    DeskScreen::Diagnosis,
    DeskScreen::Settings,
    DeskScreen::PrintRoom,
    DeskScreen::Library,
    DeskScreen::JobSheet,
    DeskScreen::Job,
];

/// Writes everything bad into every field of a part of the screen; hands back the fields. `marks` where a wrong number must be
/// marked at once.
async fn write_bad_input(desk: &DeskPage, name: &str, scope: Scope, marks: bool) -> Result<BTreeSet<String>> {
    let mut fields = BTreeSet::new();
    for bad in BAD.into_iter().chain(["a".repeat(20_000).as_str()]) {
        let written = desk.write_everywhere(scope, bad).await?;
        fields.extend(written.fields.iter().map(|id| format!("{name}: {id}")));
        let silent = if marks && NO_NUMBER.contains(&bad) { written.unmarked_numbers } else { Vec::new() };
        ensure!(silent.is_empty(), "{name}: {silent:?} take `{bad}` for a number");
        ensure!(written.markup == 0, "{name}: `{bad}` became markup");
    }
    Ok(fields)
}

/// Every field of every screen takes whatever is written: the last answer stays, nothing runs, and the words are words.
pub async fn every_field_takes_whatever_is_written(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().open_file().await?;
    let (job, diagnosis) = (desk.job(), desk.diagnosis());
    let mut fields = BTreeSet::new();
    for screen in SCREENS {
        desk.go_to(screen).await?;
        if screen == DeskScreen::Diagnosis {
            diagnosis.white_turned().tap().await?;
            desk.settle().await?;
        }
        fields.extend(write_bad_input(&desk, screen.address(), Scope::Screen, true).await?);
        if screen == DeskScreen::Diagnosis {
            diagnosis.says().says("cannot be read").await?;
        }
    }
    ensure!(fields.len() >= 27, "only into these was something written: {fields:?}");
    job.verdict().read().await?;
    job.stale().read().await?;
    job.back_to_answered().tap().await?;
    job.verdict().says("Trial first").await?;
    // A field that lies in a closed fold is told above the answer that stays.
    desk.settle().await?;
    ensure!(!job.stale().is_seen().await?, "the form can be read again");
    job.folded_number().write("5000000").await?;
    job.folded_number().fold(false).await?;
    job.stale().says("5000000 is out of range").await?;
    desk.has_no_complaints().await?;
    desk.close().await
}

/// So does every form of the Library; a number that is none is named, and the record waits.
pub async fn every_form_of_the_library_takes_whatever_is_written(fixture: &Fixture) -> Result<()> {
    let desk = open_library(fixture).await?;
    let library = desk.library();
    let mut forms = BTreeSet::new();
    // A trial of a lot, for the forms that belong to one.
    library.keep_cloth().tap().await?;
    library.name().read().await?;
    let form = library.begin(library.note_trial()).await?;
    form.fill("lot", "HL-2031").await?;
    form.fill("white", "gannet").await?;
    form.keep().tap().await?;
    library.note_look().read().await?;
    every_form_here(&desk, &mut forms).await?;
    for section in 0..i64::try_from(library.sections().count().await?)? {
        library.sections().nth(section).tap().await?;
        desk.settle().await?;
        every_form_here(&desk, &mut forms).await?;
        if library.hit().is_seen().await? {
            library.hit().tap().await?;
            desk.settle().await?;
            every_form_here(&desk, &mut forms).await?;
        }
    }
    ensure!(forms.len() >= 10, "only these forms were written into: {forms:?}");
    desk.turn_to(DeskScreen::Job).await?;
    desk.job().verdict().read().await?;
    desk.has_no_complaints().await?;
    desk.close().await
}

/// Opens every form that is offered on the screen, writes into it, tries to keep it, and leaves it.
async fn every_form_here(desk: &DeskPage, forms: &mut BTreeSet<String>) -> Result<()> {
    let library = desk.library();
    for name in library.records_to_begin().await? {
        if !forms.insert(name.clone()) {
            continue;
        }
        let form = library.begin(library.record_to_begin(&name)).await?;
        write_bad_input(desk, &name, Scope::RecordForm, false).await?;
        desk.write_everywhere(Scope::RecordForm, NO_NUMBER[2]).await?;
        form.keep().tap().await?;
        desk.settle().await?;
        ensure!(desk.markup_from_input().await? == 0, "{name}: what was written became markup");
        if form.all().is_seen().await? {
            form.error().read().await?;
            form.leave().tap().await?;
            desk.settle().await?;
        }
    }
    Ok(())
}
