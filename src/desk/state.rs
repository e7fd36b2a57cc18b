use super::form::{Draft, Field, draft_file};
use super::records::{Records, RoomSettings};
use super::screen::Screen;
use crate::diagnosis::{Diagnosis, NotedRun};
use crate::ink::USUAL_TRANSFER;
use crate::library::file;
use crate::library::sheet_code::SheetCodeError;
use crate::library::storage_layout::Trouble;
use crate::optics::Lab;
use crate::optics::meter::{MeterError, MeterFile};
use crate::plan::{
    BleedForecast, DialSetting, Order, Pick, PrintStep, Reason, Report, Setting, Topic, WindowReport,
};
use crate::quantity::{Bound, FieldError};
use crate::wording::Voice;
use serde::{Deserialize, Serialize};
use std::sync::Arc;

/// How far from the best set point a forecast can be dragged while no window has been worked out: K.
const NEAR_K: f64 = 15.0;
/// The same for the belt: by what factor.
const NEAR_BELT: f64 = 1.6;

/// Whether the draft is saved.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Keeping {
    /// No save was tried yet.
    #[default]
    Untried,
    /// A save is on its way to the disk.
    Saving,
    /// The draft on the page is on the disk.
    Kept,
    /// It could not be saved.
    NotKept,
}

/// What was changed last: changes of the same thing in a row are one step of Undo.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Touch {
    /// A field of the garment with this number; of the order, with 0.
    Field(Field, usize),
    /// The set point.
    Point,
}

/// The whole state of the page.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct State {
    /// The order form.
    pub draft: Draft,
    /// Drafts that Undo goes back to, the newest last.
    pub undo: Vec<Draft>,
    /// Drafts that Redo goes forward to, the next last.
    pub redo: Vec<Draft>,
    /// What was changed last.
    pub touch: Option<Touch>,
    /// The screen shown.
    pub screen: Screen,
    /// The last order that could be read and was answered.
    pub order: Option<Order>,
    /// Its title.
    pub title: String,
    /// Its answer.
    pub report: Option<Arc<Report>>,
    /// Colour of its cloth, where known.
    pub cloth: Option<Lab>,
    /// The order being worked out.
    pub asked: Option<Order>,
    /// What is wrong with the form. The last answer stays beside it.
    pub errors: Vec<FieldError>,
    /// The window of the chosen pick, at the set point.
    pub window: Option<WindowReport>,
    /// What is wrong with the set point, or why there is no window or forecast.
    pub window_errors: Vec<FieldError>,
    /// A colour meter's file that was opened for the garment, or why it cannot be read.
    #[serde(skip)]
    pub meter: Option<Result<MeterFile, MeterError>>,
    /// How the white of the chosen pick ages, at the set point; `None` too where nothing bleeds.
    pub forecast: Option<BleedForecast>,
    /// The causes that fit the defect, for the run in the draft.
    #[serde(skip)]
    pub diagnosis: Option<Diagnosis>,
    /// The last job sheet that was read back: the title of its order, or why it could not be read.
    #[serde(skip)]
    pub scanned: Option<Result<String, SheetCodeError>>,
    /// The recipe of the trade-off chart that was tapped, by its place.
    #[serde(skip)]
    pub tapped: Option<usize>,
    /// What the live region says to screen readers.
    pub spoken: String,
    /// Whether the draft is saved.
    pub keeping: Keeping,
    /// The shop's records.
    #[serde(skip)]
    pub records: Records,
    /// Changes of records that are on their way to the disk.
    pub storing: u32,
    /// What is wrong with the store; shown until it works again.
    pub trouble: Option<Trouble>,
}

impl State {
    /// The state over a draft, with nothing answered yet.
    #[must_use]
    pub fn new(draft: Draft) -> Self {
        Self { draft, ..Self::default() }
    }

    /// Language and units.
    #[must_use]
    pub fn voice(&self) -> Voice {
        self.draft.voice()
    }

    /// The sign of the shop's money as it follows a name, `, €`; empty for a shop that uses none.
    #[must_use]
    pub fn money(&self) -> String {
        let sign = RoomSettings::of(self.records.log()).money;
        if sign.is_empty() { sign } else { format!(", {sign}") }
    }

    /// Everything on the page as one file: the shop's records, and the draft in its head.
    #[must_use]
    pub fn file(&self) -> String {
        let draft = serde_json::from_str(&draft_file::write(&self.draft)).ok();
        file::write_with(self.records.log(), self.records.clock().now, draft)
    }

    /// Whether everything on the page is on the disk: the draft and every change of a record.
    #[must_use]
    pub fn kept(&self) -> Keeping {
        if self.keeping == Keeping::Kept && self.storing > 0 { Keeping::Saving } else { self.keeping }
    }

    /// Whether the order in the form is kept as a record, just as it stands.
    #[must_use]
    pub fn order_is_kept(&self) -> bool {
        let title = self.draft.text(Field::Title);
        self.draft.read().is_ok_and(|order| self.records.holds(&order, title))
    }

    /// True if the answer on the screen belongs to an earlier order than the form.
    #[must_use]
    pub fn stale(&self) -> bool {
        self.report.is_some() && !self.errors.is_empty()
    }

    /// The chosen pick, or the best.
    #[must_use]
    pub fn pick(&self) -> Option<&Pick> {
        let picks = &self.report.as_ref()?.picks;
        let chosen = self.draft.chosen.as_ref();
        chosen.and_then(|chosen| picks.iter().find(|pick| is_key_of(chosen, pick))).or_else(|| picks.first())
    }

    /// The place of that pick among all picks.
    #[must_use]
    pub fn pick_at(&self) -> usize {
        let picks = self.report.as_ref().map_or(&[][..], |report| &report.picks);
        let pick = self.pick();
        picks.iter().position(|it| pick.is_some_and(|pick| std::ptr::eq(it, pick))).unwrap_or(0)
    }

    /// The pick whose window is shown: the chosen one, or the one whose closed window refuses the order.
    #[must_use]
    pub fn pick_or_closed(&self) -> Option<&Pick> {
        self.pick().or_else(|| self.report.as_ref()?.closed.as_deref())
    }

    /// What was read from the label of the garment in the form; empty while there is no answer.
    #[must_use]
    pub fn readings(&self) -> &[Reason] {
        let each = self.report.as_ref().map(|report| report.understood_each.as_slice());
        each.and_then(|each| each.get(self.draft.at)).map_or(&[], Vec::as_slice)
    }

    /// Colour of the cloth of the garment in the form, where the answer is about that garment.
    #[must_use]
    pub fn shade(&self) -> Option<Lab> {
        self.cloth.filter(|_| self.report.as_ref().is_some_and(|report| report.garment == self.draft.at))
    }

    /// Errors of one field of the shown garment, of the order or of the shop.
    pub fn errors_of(&self, field: Field) -> impl Iterator<Item = FieldError> {
        let garment = format!("garments[{}]", self.draft.at);
        let all = self.errors.iter().chain(&self.window_errors);
        let found = all.filter(move |error| {
            let here = !error.field.starts_with("garments[") || error.field.starts_with(&garment);
            here && Field::of_path(&error.field) == Some(field)
        });
        let of_shop = field.of_shop().then(|| self.draft.value(field, field.bound()).err());
        found.cloned().chain(of_shop.flatten())
    }

    /// Whether the chosen pick has a margin against bleeding and a setting to work the forecast out at.
    #[must_use]
    pub fn bleeds(&self) -> bool {
        self.pick().is_some_and(|pick| {
            pick.setting.is_some() && pick.margins.iter().any(|margin| margin.what == Topic::Bleed)
        })
    }

    /// The setting that the shown screen is about: its own, or the best of the pick.
    #[must_use]
    pub fn stands(&self) -> Option<Setting> {
        let shown = match self.screen {
            Screen::Forecast => self.forecast.as_ref().and_then(|forecast| forecast.setting),
            _ => self.window.as_ref().and_then(|window| window.setting),
        };
        shown.or_else(|| self.pick_or_closed().and_then(|pick| pick.setting))
    }

    /// Accepted range of a field. That of the set point is what the axes of the window show; before there is a
    /// window, a neighbourhood of the best point.
    #[must_use]
    pub fn bound(&self, field: Field) -> Option<Bound> {
        let ends = |axis: &[f64]| Some((*axis.first()?, *axis.last()?));
        let (window, best) = (self.window.as_ref(), self.pick_or_closed().and_then(|pick| pick.setting));
        match field {
            Field::SetTemperature => {
                let near = best.map(|best| (best.set_c - NEAR_K, best.set_c + NEAR_K));
                let (min, max) = window.and_then(|window| ends(&window.set_c)).or(near)?;
                Some(Bound { field: "air", min, max, unit: "°C" })
            }
            Field::Belt => {
                let near =
                    best.map(|best| (best.belt_m_per_min / NEAR_BELT, best.belt_m_per_min * NEAR_BELT));
                let (min, max) = window.and_then(|window| ends(&window.belt_m_per_min)).or(near)?;
                Some(Bound { field: "belt", min, max, unit: "m/min" })
            }
            field => field.bound(),
        }
    }

    /// The share of the open mesh volume that is transferred to the cloth: the shop's own, or the prior.
    #[must_use]
    pub fn transfer(&self) -> f64 {
        self.draft.rest.shop.transfer.unwrap_or(USUAL_TRANSFER)
    }

    /// The order that would be asked about if this one were opened; `None` where it cannot be read.
    #[must_use]
    pub fn would_ask(&self, order: &Order, title: &str) -> Option<Order> {
        let mut draft = self.draft.clone();
        draft.open(order, title);
        draft.read().ok().map(|order| self.records.with_trials(order))
    }

    /// How the print that went wrong was run, as typed; an empty field = as planned.
    ///
    /// # Errors
    /// A [`FieldError`] for each of the three fields that cannot be read or lies outside its range.
    pub fn run(&self) -> Result<NotedRun, Vec<FieldError>> {
        let mut errors = Vec::new();
        let mut number = |field: Field| {
            self.draft.value(field, field.bound()).unwrap_or_else(|error| {
                errors.push(error);
                None
            })
        };
        let run = NotedRun {
            set_c: number(Field::RanSetTemperature),
            belt_m_per_min: number(Field::RanBelt),
            film_um: number(Field::RanFilm),
        };
        if errors.is_empty() { Ok(run) } else { Err(errors) }
    }

    /// The set point asked for: what is typed, completed by the setting of the shown screen; `None` = the best.
    ///
    /// # Errors
    /// A [`FieldError`] for each of the two fields that cannot be read or lies outside [`Self::bound`].
    pub fn point(&self) -> Result<Option<DialSetting>, Vec<FieldError>> {
        let typed = |field| self.draft.value(field, self.bound(field));
        let (set_c, belt) = match (typed(Field::SetTemperature), typed(Field::Belt)) {
            (Ok(set_c), Ok(belt)) => (set_c, belt),
            (set_c, belt) => return Err([set_c.err(), belt.err()].into_iter().flatten().collect()),
        };
        Ok(match (set_c, belt, self.stands()) {
            (Some(set_c), Some(belt_m_per_min), _) => Some(DialSetting { set_c, belt_m_per_min }),
            (Some(set_c), None, Some(setting)) => Some(DialSetting { set_c, ..setting.dialled() }),
            (None, Some(belt_m_per_min), Some(setting)) => {
                Some(DialSetting { belt_m_per_min, ..setting.dialled() })
            }
            _ => None,
        })
    }
}

/// What tells one pick from another on the page, in a draft and on a sheet: the text of its recipe.
#[must_use]
pub fn key(pick: &Pick) -> String {
    pick.recipe.to_string()
}

/// Whether a key that was kept means this pick.
///
/// Drafts and sheets kept before December 2026 name a pick by its white and its steps; they still open.
#[must_use]
pub fn is_key_of(kept: &str, pick: &Pick) -> bool {
    kept == key(pick) || kept == key_by_steps(pick)
}

/// The key that drafts and sheets carried before recipes were written as such.
fn key_by_steps(pick: &Pick) -> String {
    let mut key = pick.white.clone();
    for (white, share) in &pick.mix {
        key.push_str(&format!("+{white}:{share:.0}"));
    }
    for step in &pick.steps {
        match step {
            PrintStep::Blocker { id, .. } => key.push_str(&format!("/{id}")),
            PrintStep::White { strokes, threads_per_cm, .. } => {
                key.push_str(&format!("/{strokes}x{threads_per_cm:.0}"));
            }
            PrintStep::Smooth => key.push_str("/smooth"),
            PrintStep::PreDry { .. } => key.push_str("/dried"),
            PrintStep::Flash { .. } | PrintStep::Dryer { .. } => {}
        }
    }
    key
}
