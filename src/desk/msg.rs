//! What can happen on the page, and what the browser is asked to do about it.

use super::form::{Draft, Field, Theme};
use super::records::{Clock, RecordsMsg};
use super::screen::Screen;
use crate::diagnosis::{Defect, Diagnosis, NotedRun};
use crate::library::sheet_code::{SheetCode, SheetCodeError};
use crate::library::storage_layout::{Line, Trouble};
use crate::optics::Lab;
use crate::plan::{
    BleedForecast, CureKind, DialSetting, DyeClass, Finish, Opacity, Order, Pick, Priority, Report, Role,
    Sheen, UnderPrint, UseKind, WindowReport,
};
use crate::quantity::FieldError;
use std::sync::Arc;

/// Something that happened on the page.
#[derive(Clone, Debug, PartialEq)]
pub enum Msg {
    /// The page has started: its draft is to be answered.
    Start,
    /// Text was typed into a field.
    Type(Field, String),
    /// The stepper of a field was tapped: so many steps up, or down where negative.
    Step(Field, i32),
    /// A choice was made.
    Choose(Choice),
    /// Typing or dragging is over: the next touch is a new step of Undo.
    Done,
    /// The garment at this place is shown in the form.
    Garment(usize),
    /// A garment is added.
    AddGarment,
    /// The shown garment is removed.
    RemoveGarment,
    /// An order is put into the form under a title.
    Open(Box<Order>, String),
    /// A new order for the same shop.
    Blank,
    /// The share of the open mesh volume that is transferred to the cloth moves so many steps; `None` = back to the
    /// prior.
    Transfer(Option<i32>),
    /// The other system of units is shown.
    Units,
    /// The other language is shown.
    Language,
    /// A theme is shown.
    Theme(Theme),
    /// One step back.
    Undo,
    /// One step forward again.
    Redo,
    /// Back to the last draft that could be read.
    BackToReadable,
    /// The text of a colour meter's file was opened for the shown garment.
    Meter(String),
    /// One of its samples, by its place, is the garment's colour.
    Sample(usize),
    /// The shown garment's colour is the one on its label, whatever stands in the colour field.
    ColourOfLabel,
    /// A screen is shown.
    Show(Screen),
    /// The recipe at this place of the trade-off chart was tapped.
    Tap(usize),
    /// A pick is chosen by its key.
    Use(String),
    /// The set point was moved.
    Point(DialSetting),
    /// The set point goes back to the best.
    BestPoint,
    /// An order was answered.
    Answered(Box<Order>, Result<Box<Answer>, Vec<FieldError>>),
    /// A window was worked out for the pick of this key.
    Windowed(String, Result<Box<WindowReport>, Vec<FieldError>>),
    /// How the white ages was worked out for the pick of this key.
    Forecast(String, Result<Box<BleedForecast>, Vec<FieldError>>),
    /// Something happened to the shop's records, at this time.
    Records(Clock, RecordsMsg),
    /// So many changes of records were stored. Those that could not be stay in memory and are tried again.
    LogAppended(u32, Result<(), Trouble>),
    /// The draft on the page was saved, or could not be.
    DraftSaved(Result<(), Trouble>),
    /// A saved draft was found after the page was drawn.
    DraftFound(Box<Draft>),
    /// The store reports a problem.
    Trouble(Trouble),
    /// The notice about the store was read.
    DismissTrouble,
    /// The text of a file with a draft was opened.
    OpenDraftFile(String),
    /// A defect is seen on a print; `None` takes that back.
    DefectSeen(Option<Defect>),
    /// The causes that fit were worked out for the pick of this key.
    Diagnosed(String, Result<Option<Box<Diagnosis>>, Vec<FieldError>>),
    /// A job sheet was read back, or could not be.
    Scanned(Result<Box<SheetCode>, SheetCodeError>),
    /// The notice about it was read.
    DismissScan,
}

/// An answer with the colour of the cloth it is for.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// The report.
    pub report: Arc<Report>,
    /// Colour of the first garment's cloth, where known.
    pub cloth: Option<Lab>,
}

/// Something that is chosen, not typed.
#[derive(Clone, Debug, PartialEq)]
pub enum Choice {
    /// Whether the polyester is dyed.
    Dyed(Option<bool>),
    /// How well its dye holds.
    DyeClass(DyeClass),
    /// Whether it bears a finish.
    Finish(Finish, bool),
    /// What lies under the print.
    UnderPrint(UnderPrint),
    /// What matters most.
    Priority(Priority),
    /// What the white is for.
    Role(Role),
    /// How well it must cover.
    Opacity(Opacity),
    /// How it must shine.
    Sheen(Sheen),
    /// How the colours on top cure.
    ColourCure(CureKind),
    /// What it is worn for.
    Kind(UseKind),
    /// Whether pieces are stacked while hot.
    StackedHot(bool),
    /// The dryer, by its id.
    Dryer(String),
    /// Whether a white or blocker is on the shelf.
    Shelf(String, bool),
}

/// Something for the browser to do.
#[derive(Clone, Debug, PartialEq)]
pub enum Effect {
    /// Work out an order and send [`Msg::Answered`].
    Answer(Box<Order>),
    /// Work out the window of a pick and send [`Msg::Windowed`] with the key.
    Window {
        /// The order.
        order: Box<Order>,
        /// The pick.
        pick: Box<Pick>,
        /// Its key.
        key: String,
        /// The set point; `None` = the best.
        at: Option<DialSetting>,
    },
    /// Work out how the white of a pick ages and send [`Msg::Forecast`] with the key.
    Forecast {
        /// The order.
        order: Box<Order>,
        /// The pick.
        pick: Box<Pick>,
        /// Its key.
        key: String,
        /// The set point; `None` = the best.
        at: Option<DialSetting>,
    },
    /// Work out the causes that fit what is seen and send [`Msg::Diagnosed`] with the key.
    Diagnose {
        /// The order.
        order: Box<Order>,
        /// The pick.
        pick: Box<Pick>,
        /// Its key.
        key: String,
        /// How it was run.
        run: NotedRun,
        /// What is seen.
        seen: Defect,
    },
    /// Save the draft and send [`Msg::DraftSaved`].
    SaveDraft,
    /// Store these lines of the log and send [`Msg::LogAppended`].
    AppendLog(Vec<Line>),
    /// The library has changed: what was answered with the one before no longer holds.
    LibraryChanged,
}
