//! Every selector of the page, in one place: what changes on the page is changed here once, for all stories.
//!
//! A part is found by what a person goes by where the page offers that: the words on a button, the question over a group of
//! answers. The words are English: so is every tablet of a story until its language is changed.

use serde_json::{Value, json};

/// A part of the page: what a selector finds whose name (its `aria-label`, or its text) begins with some words.
#[derive(Clone, Copy, Debug)]
pub struct Part {
    pub(super) css: &'static str,
    pub(super) words: &'static str,
}

/// What a selector finds.
const fn at(css: &'static str) -> Part {
    Part { css, words: "" }
}

/// What a selector finds, by its name.
const fn named(css: &'static str, words: &'static str) -> Part {
    Part { css, words }
}

// The frame.
pub(super) const TO_JOB: Part = at("nav a[href='#job']");
pub(super) const TO_WINDOW: Part = at("nav a[href='#window']");
pub(super) const TO_FORECAST: Part = at("nav a[href='#forecast']");
pub(super) const TO_PRINT_ROOM: Part = at("nav a[href='#shop']");
pub(super) const TO_LIBRARY: Part = at("nav a[href='#library']");
pub(super) const TO_DIAGNOSIS: Part = at("nav a[href='#wrong']");
pub(super) const TO_JOB_SHEET: Part = at("nav a[href='#sheet']");
pub(super) const TO_SETTINGS: Part = at("nav a[href='#settings']");
pub(super) const DESK: Part = at(".desk");
pub(super) const MAIN: Part = at("main");
pub(super) const TITLE: Part = at("h1");
pub(super) const UNDO: Part = named(".head button", "Undo");
pub(super) const REDO: Part = named(".head button", "Redo");
pub(super) const LANGUAGE: Part = at("#language");
pub(super) const FOLD: Part = at("details");
/// Something to tap in any screen, by its words.
pub(super) const BUTTON: Part = at("main button, main a.btn");

// The notice of a store that fails.
pub(super) const NOTICE: Part = at("#trouble");
pub(super) const SAVE_AS_FILE: Part = at("#take-away");
pub(super) const FILE_AT_NOTICE: Part = at("#bring");

// What the page says when it cannot start.
pub(super) const START_SECTION: Part = at("body > section");
pub(super) const NO_SHADOW: Part = at("#no-shadow");
pub(super) const NO_WASM: Part = at("#no-wasm");
pub(super) const DAMAGED: Part = at("#damaged");
pub(super) const BROKEN: Part = at("#broken");
pub(super) const START_AGAIN: Part = at("#broken a");
pub(super) const FAILURE_LINE: Part = at("#said");
pub(super) const PROMISE: Part = at("#promise");
pub(super) const NO_SCRIPT: Part = at("noscript");
pub(super) const BODY: Part = at("body");

// The order: its form.
pub(super) const ORDER: Part = at(".order");
pub(super) const LABEL: Part = at("#label");
pub(super) const LABEL_ERROR: Part = at("[data-error-for=label]");
pub(super) const UNDERSTOOD: Part = at("#understood");
pub(super) const LOT: Part = at("#lot");
pub(super) const ORDER_NAME: Part = at("#title");
pub(super) const PRIORITY: Part = at("[aria-labelledby=q-most] button");
pub(super) const COVERAGE_CHOICE: Part = at("[aria-labelledby=q-cover] button");
pub(super) const USE_CHOICE: Part = at("[aria-labelledby=q-kind] button");
pub(super) const ROLE_CHOICE: Part = at("[aria-labelledby=q-role] button");
pub(super) const MORE_OF_GARMENT: Part = named("details.more summary", "More about the garment");
pub(super) const UNDER_PRINT: Part = at("[aria-labelledby=q-under] button");
pub(super) const FOLDED_NUMBER: Part = at("details input[inputmode=decimal]");
pub(super) const KEEP_ORDER: Part = at("#keep-order");
pub(super) const ORDER_IS_KEPT: Part = at("#keep-order + span");
pub(super) const ADD_GARMENT: Part = at("#add-garment");
pub(super) const METER: Part = at("#meter");
pub(super) const METER_FILE: Part = at("#meter-file");
pub(super) const METER_SAMPLE: Part = at("#meter .seg .btn");
pub(super) const COLOUR_CLASH: Part = at("#colour-clash");
pub(super) const TAKE_COLOUR: Part = at("#colour-clash button");
pub(super) const WEEK_FOLD: Part = at("details.week summary");
pub(super) const WEEK_ORDER: Part = at("details.week ol button");

// The order: its answer.
pub(super) const ANSWER: Part = at(".answer");
pub(super) const VERDICT: Part = at("#verdict");
pub(super) const VERDICT_SAYS: Part = at(".plate-say");
pub(super) const REFUSAL: Part = at(".plate-no");
pub(super) const SHOW_WINDOW: Part = at(".plate a[href='#window']");
pub(super) const FACTS: Part = at(".facts");
pub(super) const WHITE: Part = at("[data-fact=white]");
pub(super) const SET_TEMPERATURE: Part = at("[data-fact=air]");
pub(super) const WHY: Part = at(".why");
pub(super) const STALE: Part = at(".stale");
pub(super) const BACK_TO_READABLE: Part = at(".stale button");
pub(super) const GARMENT_PLANS: Part = at(".every-garment");
pub(super) const GARMENT_PLAN_ROWS: Part = at(".every-garment tbody");

// The order: what is given up for what.
pub(super) const TRADE_HEAD: Part = at("#trade-head");
pub(super) const TRADE_SAYS: Part = at("#trade-says");
pub(super) const TRADE_FIGURE: Part = at("#trade-figure");
pub(super) const TRADE_MARK: Part = at("#trade circle.tap");
pub(super) const TRADE_FOLD: Part = at("#trade details summary");
pub(super) const TRADE_TABLE: Part = at("#trade details table");
pub(super) const TRADE_ROW: Part = at("#trade tbody tr");
pub(super) const TAPPED_RECIPE: Part = at("#trade-way");
pub(super) const TAPPED_RECIPE_SAYS: Part = at("#trade-way p");
pub(super) const USE_RECIPE: Part = at("#trade-way button");

// The cure window.
pub(super) const WINDOW: Part = at(".win");
pub(super) const SET_POINT_SAYS: Part = at("#say");
pub(super) const WINDOW_HEAD: Part = at(".plate-word");
pub(super) const OPENINGS: Part = at(".side .if-row");
pub(super) const MAP: Part = at("#map");
pub(super) const MAP_REGION: Part = at("#map path");
pub(super) const SET_POINT: Part = at("#set-point");

// The forecast.
pub(super) const FORECAST: Part = at(".fore");
pub(super) const NO_FORECAST: Part = at(".plate-say");
pub(super) const AGED: Part = at("#aged-says");
pub(super) const LOOKS: Part = at(".looks");
pub(super) const FIGURES_FOLD: Part = at("details.more summary");
pub(super) const FIGURES: Part = at("details.more");
pub(super) const HEAT_SLIDER: Part = at("#air-slide");

// The Library.
pub(super) const LOOK_IN: Part = at(".find .seg button");
pub(super) const WHITES: Part = named(".find .seg button", "Whites");
pub(super) const SEARCH: Part = at("#q");
pub(super) const FOUND_COUNT: Part = at(".find-n");
pub(super) const HITS: Part = at(".hits");
pub(super) const HIT: Part = at(".hits button");
pub(super) const RECORD: Part = at("#rec");
pub(super) const RECORD_NAME: Part = at("#rech");
pub(super) const RECORD_HOLDS: Part = at(".holds");
pub(super) const RECORD_PARTS: Part = at("#rec .hits");
pub(super) const RECORD_PAST: Part = at(".hist");
pub(super) const MOMENT: Part = at(".hist li");
pub(super) const BRING_BACK: Part = named(".hist button", "Bring back");
pub(super) const CHANGE_RECORD: Part = named("#rec button", "Change");
pub(super) const PRINT_ON_CLOTH: Part = named("#rec button", "Print on this");
pub(super) const PRINT_AGAIN: Part = named("#rec button", "Print again");
pub(super) const NEW_TUB: Part = named("#rec button", "New tub");
pub(super) const NOTE_TRIAL: Part = named("#rec button", "Note a trial");
pub(super) const NOTE_LOOK: Part = named("#rec button", "Note a look");
pub(super) const KEEP_CLOTH: Part = named("main button", "Keep the cloth of this order");
pub(super) const NEW_WHITE: Part = named("main button", "New white from its data sheet");
pub(super) const NEW_MESH: Part = named("main button", "New mesh");
/// Whatever begins a record on the screen.
pub(super) const BEGINS_RECORD: Part = at("main [data-do^='new-record:']");
pub(super) const FORM: Part = at("#form");
pub(super) const FORM_ERROR: Part = at("#form .err");
pub(super) const KEEP_RECORD: Part = named("#rec button", "Keep it");
pub(super) const LEAVE_RECORD: Part = named("#rec button", "Leave it");
pub(super) const INCOMING: Part = at("#incoming");
pub(super) const INCOMING_COUNTS: Part = at("#incoming .counts");
pub(super) const INCOMING_DIFFERS: Part = at("#incoming .differ");
pub(super) const OTHER_CLAIM: Part = at("#incoming .differ [aria-pressed=false]");
pub(super) const BRING_IN: Part = at("#incoming .btn-main");
pub(super) const LEAVE_FILE: Part = at("#incoming .btn-tall");
pub(super) const OPEN_FILE: Part = at("#open-file");
pub(super) const SAVE_LIBRARY: Part = at("#save-library");
pub(super) const SAVE_WHITES_TABLE: Part = named("#rec a", "Whites");
pub(super) const KEEP_ONE_FILE: Part = at("#rec [data-do=autosave-file]");

// The shop's own print room.
pub(super) const DEMO_NOTE: Part = at(".none");
pub(super) const MISSING: Part = at("#missing");
pub(super) const STOCK: Part = at("#stock");
pub(super) const WHITES_CHOICE: Part = at("[aria-labelledby=q-whites] button");
pub(super) const DRYERS_CHOICE: Part = at("[aria-labelledby=q-dryers] button");
pub(super) const MESHES_CHOICE: Part = at("[aria-labelledby=q-meshes] button");
pub(super) const MONEY_CHOICE: Part = at("[aria-labelledby=q-money] button");
pub(super) const HEATED_LENGTH: Part = at("#heated_length");
pub(super) const OPEN_OWN_SHOP: Part = named("main button", "Open our own shop");

// What went wrong.
pub(super) const SEEN_CHOICE: Part = at("[aria-labelledby=seen] button");
pub(super) const CAUSES: Part = at("#causes");
pub(super) const CAUSE: Part = at(".causes li");
pub(super) const COMPARED: Part = at("#compare");
pub(super) const RUN_TEMPERATURE: Part = at("#ran_air");
pub(super) const RUN_TEMPERATURE_ERROR: Part = at("[data-error-for=ran_air]");
pub(super) const RUN_BELT: Part = at("#ran_belt");

// The job sheet.
pub(super) const PAPER: Part = at(".paper");
pub(super) const PAPER_TITLE: Part = at(".p-head h2");
pub(super) const PAPER_ABOUT: Part = at(".p-head p");
pub(super) const PAPER_VERDICT: Part = at(".p-verdict");
pub(super) const PAPER_SETTING: Part = at(".p-set");
pub(super) const PAPER_LOOKS: Part = at(".p-looks");
pub(super) const PAPER_CODE: Part = at(".p-qr svg");
pub(super) const NO_PAPER: Part = at(".state");
pub(super) const SHEET_PICTURE: Part = at("#open-picture");
pub(super) const READ_BACK: Part = at("#scanned");
pub(super) const READ_BACK_SEEN: Part = at("#scanned button");

// The settings.
pub(super) const SETTINGS: Part = at(".settings");
pub(super) const BACKUP: Part = at("#backup");
pub(super) const THEMES: Part = at("#q-theme");
pub(super) const THEME_CHOICE: Part = at("[aria-labelledby=q-theme] button");
pub(super) const LANGUAGE_CHOICE: Part = at("[aria-labelledby=q-tongue] button");
pub(super) const UNITS_CHOICE: Part = at("[aria-labelledby=q-units] button");
pub(super) const SETTINGS_BUTTON: Part = at(".settings button");

/// The parts that the scripts of `page.js` name.
pub(super) fn of_scripts() -> Value {
    let parts = [
        ("orderName", ORDER_NAME),
        ("answer", ANSWER),
        ("setTemperature", SET_TEMPERATURE),
        ("weekOrder", WEEK_ORDER),
        ("priority", PRIORITY),
        ("coverageChoice", COVERAGE_CHOICE),
        ("useChoice", USE_CHOICE),
        ("roleChoice", ROLE_CHOICE),
        ("setPoint", SET_POINT),
        ("map", MAP),
        ("whites", WHITES),
        ("search", SEARCH),
        ("hit", HIT),
        ("changeRecord", CHANGE_RECORD),
        ("newWhite", NEW_WHITE),
        ("form", FORM),
        ("keepRecord", KEEP_RECORD),
    ];
    parts.into_iter().map(|(name, part)| (name.to_owned(), part.json(0))).collect()
}

impl Part {
    /// As `page.js` takes it: the `place`-th of those that are found.
    pub(super) fn json(self, place: i64) -> Value {
        json!({ "css": self.css, "words": self.words, "place": place })
    }
}
