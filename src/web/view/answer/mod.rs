//! The answer: verdict, white, dryer figures, two margins, the print run, why, what would change it, other picks.
//!
//! In: the state; each part is drawn from [`Shown`]. Out: markup, put in its place where it differs from what stands
//! there, so that a change in the form leaves the rest untouched. Disclosures are no part of a markup, so that they
//! stay open.

pub mod advice;
pub mod cloth;
mod garments;
mod margin_bar;
pub mod margins;
mod print_run;
mod trade_off;

use crate::desk::picture::swatches::Swatches;
use crate::desk::{Action, Field, State};
use crate::optics::Lab;
use crate::plan::{Code, Margin, Pick, PrintStep, Reason, Report, Setting, Topic, Verdict};
use crate::quantity::FieldError;
use crate::web::desk::Desk;
use crate::web::view::widgets::disclosure::disclosure;
use crate::web::view::widgets::static_view::tap;
use crate::web::view::widgets::{icon, markup};
use crate::wording::{Label, Numeral, Phrase, Quantity, Voice, lead};
use cloth::{colours, knit, on_this_cloth};
use garments::every_garment;
use leptos::prelude::*;
use margin_bar::margin_bar;
use margins::margin_table;
use maud::{Markup, PreEscaped, html};
use print_run::print_run;
use std::sync::Arc;

/// A report; only itself is equal to it, so that no report is compared field by field.
#[derive(Clone)]
struct Given(Arc<Report>);

impl PartialEq for Given {
    fn eq(&self, other: &Self) -> bool {
        Arc::ptr_eq(&self.0, &other.0)
    }
}

/// Wrong fields that are named above an answer that stays. Chosen.
const MOST_WRONG: usize = 2;
/// Longest text of a wrong field that is repeated there, bytes. Chosen.
const LONGEST_REPEATED: usize = 60;

/// What the answer is drawn from: it is drawn anew only when one of these differs.
#[derive(Clone, PartialEq)]
struct Shown {
    report: Option<Given>,
    /// The place of the chosen pick.
    chosen: usize,
    /// The place of the recipe that was tapped in the trade-off chart.
    tapped: Option<usize>,
    voice: Voice,
    money: String,
    cloth: Option<Lab>,
    days: f64,
    stale: bool,
    /// What is wrong with the form: a closed disclosure may hide the field, so it is named here too.
    wrong: Vec<FieldError>,
    /// What the labels of the order's garments say.
    labels: Vec<String>,
}

impl Shown {
    fn of(state: &State) -> Self {
        Self {
            report: state.report.clone().map(Given),
            chosen: state.pick_at(),
            tapped: state.tapped,
            voice: state.voice(),
            money: state.money(),
            cloth: state.cloth,
            days: state.order.as_ref().map_or(90.0, |order| order.use_.looked_at_after_days),
            stale: state.stale(),
            wrong: state.errors.clone(),
            labels: state.order.as_ref().map_or_else(Vec::new, |order| {
                order.garments.iter().map(|garment| garment.label.clone()).collect()
            }),
        }
    }

    fn report(&self) -> Option<&Report> {
        self.report.as_ref().map(|report| &*report.0)
    }

    /// The pick that is shown; none where the order is refused.
    fn pick(&self) -> Option<&Pick> {
        self.report()?.picks.get(self.chosen)
    }

    fn colours(&self) -> Option<Swatches> {
        colours(self.cloth, self.pick()?)
    }

    /// A part of the answer that is there with any report.
    fn of_report(&self, part: impl Fn(&Report, Voice) -> Markup) -> Markup {
        self.report().map(|report| part(report, self.voice)).unwrap_or_default()
    }

    /// A part of the answer that is there where there is a pick.
    fn of_pick(&self, part: impl Fn(&Pick, Voice) -> Markup) -> Markup {
        self.pick().map(|pick| part(pick, self.voice)).unwrap_or_default()
    }
}

/// The answer column.
pub fn answer(desk: Desk) -> impl IntoView {
    let shown = desk.memo(Shown::of);
    let busy = desk.memo(|state| state.asked.is_some());
    let drawn = move |part: fn(&Shown) -> Markup| shown.with(|shown| part(shown).into_string());
    let part = move |part: fn(&Shown) -> Markup| view! { <div inner_html=move || drawn(part)></div> };
    // What lies below what is seen first is drawn once that is painted.
    let below = move |part: fn(&Shown) -> Markup| {
        view! { <div inner_html=move || if desk.is_whole() { drawn(part) } else { String::new() }></div> }
    };
    let has_trade = move || shown.with(|it| it.report().is_some_and(|report| report.trade.is_some()));
    view! {
        <section
            class="answer"
            aria-labelledby="verdict"
            aria-busy=move || if busy.get() { "true" } else { "false" }
            on:click=move |event| tap(desk, &event)
        >
            // Always drawn at once: pictures elsewhere refer to this pattern.
            <div class="defs" inner_html=move || drawn(|it| it.colours().as_ref().map(knit).unwrap_or_default())></div>
            {part(stale)}
            {part(plate)}
            {part(|it| it.of_pick(|pick, voice| facts(pick, voice, it.colours().as_ref())))}
            {part(leading_margins)}
            <button
                class="btn btn-wide sum"
                type="button"
                // In portrait the order lies below: one line of it, and the way there.
                hidden=move || shown.with(|it| it.report.is_none())
                on:click=move |_| desk.focus("order")
            >
                <span>{move || desk.text(Field::Label)}</span>
                <b>{move || desk.label(Label::Change)}</b>
            </button>
            {part(|it| it.of_report(|report, voice| every_garment(report, &it.labels, voice)))}
            {part(|it| it.of_pick(print_run))}
            {part(|it| it.of_pick(why))}
            {below(on_cloth)}
            {below(|it| it.of_report(advice::changes))}
            {below(|it| it.of_pick(advice::to_do))}
            <div class="blk" id="trade" hidden=move || !has_trade()>
                {below(|it| it.of_report(|report, voice| {
                    trade_off::trade_off(report, it.chosen, it.tapped, &it.money, voice)
                }))}
                {disclosure(
                    desk,
                    Label::FiguresBehind,
                    move || shown.with(|it| it.report().is_some_and(trade_off::has_figures)),
                    move || shown.with(|it| {
                        it.of_report(|report, voice| trade_off::figures(report, &it.money, voice))
                    }),
                )}
            </div>
            {below(|it| it.of_pick(|pick, voice| {
                it.of_report(|report, _| advice::other_picks(report, pick, &it.money, voice))
            }))}
            {below(|it| it.of_pick(|_, voice| it.of_report(|report, _| advice::worth_knowing(report, voice))))}
            {disclosure(
                desk,
                Label::Margins,
                move || shown.with(|it| it.pick().is_some()),
                move || shown.with(|it| it.of_pick(|pick, voice| margin_table(&pick.margins, voice))),
            )}
            {below(|it| it.of_report(advice::cannot))}
            {below(|it| it.of_report(advice::careful))}
        </section>
    }
}

/// Says which order this answer belongs to while the form cannot be read.
fn stale(shown: &Shown) -> Markup {
    let voice = shown.voice;
    let repeated = shown.wrong.iter().filter(|error| error.value.len() <= LONGEST_REPEATED).take(MOST_WRONG);
    let wrong: Vec<String> = repeated.map(|error| voice.problem(error)).collect();
    html! {
        @if shown.stale {
            div class="stale" role="note" {
                p {
                    b { (voice.label(Label::Stale)) ". " }
                    (voice.label(Label::StaleSay)) " " (wrong.join(" "))
                }
                button class="btn" type="button" data-do=(Action::BackToReadable) {
                    (markup::sign(24, icon::UNDO)) (voice.label(Label::BackToThat))
                }
            }
        }
    }
}

/// The verdict and its sentence; while there is none, what is waited for.
fn plate(shown: &Shown) -> Markup {
    let voice = shown.voice;
    let Some(report) = shown.report() else {
        let say = voice.label(if !shown.wrong.is_empty() { Label::NoAnswerSay } else { Label::Reckoning });
        return plate_of("plate-ask", "", icon::OPEN, voice.label(Label::NoAnswerYet), say, false, voice);
    };
    let pick = shown.pick();
    let verdict = pick.map_or(Verdict::Refuse, |pick| pick.verdict);
    let class = match verdict {
        Verdict::Go | Verdict::GoWithCheck => "plate-go",
        Verdict::Trial => "plate-trial",
        Verdict::Refuse => "plate-no",
    };
    let colour = if verdict == Verdict::Refuse { " c-no" } else { "" };
    let say = match (pick, why_not(report)) {
        (Some(pick), _) => what_to_do(pick, voice),
        (None, Some(reason)) => voice.reason(reason),
        (None, None) => voice.label(Label::RefuseSay).into(),
    };
    let has_window = pick.is_some() || report.closed.is_some();
    plate_of(class, colour, icon::mark(verdict), voice.verdict(verdict), &say, has_window, voice)
}

fn plate_of(
    class: &str,
    colour: &str,
    mark: &'static str,
    word: &str,
    say: &str,
    has_window: bool,
    voice: Voice,
) -> Markup {
    html! {
        div class={ "plate " (class) } {
            svg class={ "plate-mark" (colour) } viewBox="0 0 96 96" aria-hidden="true" { (PreEscaped(mark)) }
            div {
                p class="plate-word" id="verdict" { (word) }
                p class="plate-say" { (say) }
            }
            @if has_window {
                a class="btn btn-main" href="#window" data-do=(Action::ShowWindow) {
                    (voice.label(Label::ShowWindow))
                }
            }
        }
    }
}

/// The one reason that rules out everything, if there is one: a reason about the order, or the same for every white.
fn why_not(report: &Report) -> Option<&Reason> {
    let of_order = report.to_make_it_possible.iter().find(|reason| !advice::is_change(reason.code));
    let mut firsts = report.rejected.iter().filter_map(|rejected| rejected.reasons.first());
    let first = firsts.next();
    let shared =
        first.filter(|first| first.code != Code::ClothBleeds && firsts.all(|other| other.code == first.code));
    of_order.or(shared)
}

/// The sentence on the plate.
fn what_to_do(pick: &Pick, voice: Voice) -> String {
    match (pick.verdict, &pick.trial) {
        (Verdict::Go, _) => voice.label(Label::GoSay).into(),
        (Verdict::GoWithCheck, _) => voice.label(Label::GoWithCheckSay).into(),
        (Verdict::Trial, Some(trial)) if trial.hours > 0.0 => {
            let numeral = Numeral(voice.language);
            voice.say(&Phrase::TrialSay {
                pieces: trial.pieces,
                hours: numeral.short(trial.hours, 0),
                oven: voice.quantity(Quantity::Temperature, trial.oven_c),
                mark: numeral.fixed(trial.pass_mark, 1),
                days: numeral.short(trial.stands_for_days, 0),
            })
        }
        (Verdict::Trial, trial) => {
            voice.say(&Phrase::TrialLook { pieces: trial.as_ref().map_or(2, |trial| trial.pieces) })
        }
        (Verdict::Refuse, _) => voice.label(Label::RefuseSay).into(),
    }
}

/// The white and the dryer's figures.
fn facts(pick: &Pick, voice: Voice, colours: Option<&Swatches>) -> Markup {
    let class =
        voice.say(&Phrase::WhiteOf { class: voice.class(pick.class).into(), low_cure: pick.low_cure });
    let mix: Vec<_> = pick
        .mix
        .iter()
        .map(|(name, share)| (name.clone(), voice.quantity(Quantity::Percent, *share)))
        .collect();
    let under = if mix.is_empty() { class } else { voice.say(&Phrase::MixOf { class, parts: mix }) };
    let passes = pick.steps.iter().find_map(|step| match step {
        PrintStep::Dryer { passes } => Some(*passes),
        _ => None,
    });
    html! {
        dl class="facts" {
            div class="facts-name" {
                dt { (voice.label(Label::White)) }
                dd data-fact="white" { (pick.name) }
                dd class="under" { (under) }
                @if let Some(colours) = colours { (chip(colours)) }
            }
            @if let Some(setting) = pick.setting { (dryer_figures(&setting, passes.unwrap_or(1), voice)) }
        }
    }
}

/// A split circle on the cloth, small.
fn chip(colours: &Swatches) -> Markup {
    let turned = colours.turned.get(1).map_or("", String::as_str);
    html! {
        dd class="chip-cell" {
            svg class="chip true-colour" viewBox="0 0 132 92" aria-hidden="true" {
                rect width="132" height="92" fill="url(#knit)" {}
                circle cx="66" cy="46" r="36" fill=(colours.fresh) {}
                path d="M66 10a36 36 0 0 1 0 72z" fill=(turned) {}
            }
        }
    }
}

fn dryer_figures(setting: &Setting, passes: u32, voice: Voice) -> Markup {
    let unit = |quantity: Quantity| quantity.unit(voice.units, voice.language);
    let low = voice.bare(Quantity::Belt, setting.belt_m_per_min - setting.hold_belt_m_per_min);
    let high = voice.bare(Quantity::Belt, setting.belt_m_per_min + setting.hold_belt_m_per_min);
    let hold = voice.quantity(Quantity::TemperatureDifference, setting.hold_c);
    let figure = |name: Label, fact: &str, value: String, unit: &str, under: &Phrase| {
        html! {
            div {
                dt { (voice.label(name)) }
                dd data-fact=(fact) { (value) small { (unit) } }
                dd class="under" { (voice.say(under)) }
            }
        }
    };
    let air = voice.bare(Quantity::Temperature, setting.air_c);
    let belt = voice.bare(Quantity::Belt, setting.belt_m_per_min);
    let dwell = voice.bare(Quantity::Seconds, setting.dwell_s.round());
    let hold = Phrase::HoldWithin { value: hold };
    html! {
        (figure(Label::DryerAir, "air", air, unit(Quantity::Temperature), &hold))
        (figure(Label::Belt, "belt", belt, unit(Quantity::Belt), &Phrase::To { low, high }))
        (figure(Label::InTheHeat, "dwell", dwell, "s", &Phrase::PassCount { count: passes }))
    }
}

/// The two margins that lead, as bars.
fn leading_margins(shown: &Shown) -> Markup {
    shown.of_pick(|pick, voice| {
        html! {
            div class="rules" { @for margin in leading(pick) { (margin_bar(margin, voice, shown.days)) } }
        }
    })
}

fn on_cloth(shown: &Shown) -> Markup {
    shown.of_pick(|pick, voice| {
        shown.colours().map(|colours| on_this_cloth(pick, &colours, voice)).unwrap_or_default()
    })
}

/// The two margins to lead with: bleed and fusion, completed by the tightest others.
fn leading(pick: &Pick) -> Vec<&Margin> {
    let of = |topic| pick.margins.iter().find(move |margin| margin.what == topic);
    let mut leading: Vec<&Margin> = [of(Topic::Bleed), of(Topic::Fusion)].into_iter().flatten().collect();
    for margin in &pick.margins {
        if leading.len() < 2 && !leading.iter().any(|other| other.what == margin.what) {
            leading.push(margin);
        }
    }
    leading
}

fn why(pick: &Pick, voice: Voice) -> Markup {
    let sure = voice.say(&Phrase::HowSure { chance: voice.chance(1.0 - pick.fail_later.likely) });
    let reasons = html! {
        ol class="why" {
            @for reason in &pick.reasons {
                @let said = voice.reason(reason);
                @let (head, rest) = lead(&said);
                @let (sign, class) = icon::reason(reason.code);
                li { span class=(class) { (markup::sign(28, sign)) } p { b { (head) } " " (rest) } }
            }
        }
    };
    markup::block(voice.label(Label::Why), &sure, &reasons)
}
