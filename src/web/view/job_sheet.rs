//! The Job sheet screen: the page that is printed, a button that prints it, and a way to read a printed one back.

use super::widgets::icon;
use super::widgets::map_picture::{PAPER, map_picture, set_point_picture};
use crate::desk::job_sheet::{JobSheet, PaperTrial};
use crate::desk::picture::Ink;
use crate::desk::picture::map::{HEIGHT, MapGrid, WIDTH, window_map, word_width};
use crate::desk::{Msg, State};
use crate::plan::{Topic, Verdict, WindowReport};
use crate::web::desk::Desk;
use crate::web::file;
use crate::wording::{JobSheetPhrase, Label, Voice};
use leptos::prelude::*;
use maud::{Markup, PreEscaped, html};

/// How much larger letters are on the small map of the page than on the screen's.
const LARGER: f64 = 1.35;

/// The screen.
pub fn job_sheet(desk: Desk) -> impl IntoView {
    let drawn = desk.memo(|state| paper(state).into_string());
    let said = desk.memo(|state| {
        let voice = state.voice();
        state.scanned.as_ref().map(|read| match read {
            Ok(title) => voice.say(&JobSheetPhrase::ReadBack { title: title.clone() }),
            Err(why) => voice.say(&JobSheetPhrase::Unread(*why)),
        })
    });
    let read = move |id: &'static str, name: JobSheetPhrase, camera: bool| {
        view! {
            <label class="btn" for=id>
                {move || desk.voice().say(&name)}
                <input
                    class="sr"
                    id=id
                    type="file"
                    accept="image/*"
                    capture=camera.then_some("environment")
                    on:change=move |event| desk.read_sheet(file::chosen(&event))
                />
            </label>
        }
    };
    view! {
        <div
            class="sheet-screen"
            on:dragover=|event| event.prevent_default()
            on:drop=move |event| desk.read_sheet(file::dropped(&event))
        >
            <div class="row sheet-bar">
                <button class="btn btn-main" type="button" id="print" on:click=move |_| print()>
                    {icon::icon(24, icon::PRINT)}
                    {move || desk.voice().say(&JobSheetPhrase::Print)}
                </button>
                {read("photograph", JobSheetPhrase::Photograph, true)}
                {read("open-picture", JobSheetPhrase::OpenPicture, false)}
                <p class="lab fill">{move || desk.voice().say(&JobSheetPhrase::OnePage)}</p>
            </div>
            {move || said.get().map(|said| view! {
                <div class="stale sheet-bar" id="scanned" role="status">
                    <p>{said}</p>
                    <button class="btn" type="button" on:click=move |_| desk.send(Msg::DismissScan)>
                        {desk.label(Label::Noticed)}
                    </button>
                </div>
            })}
            <div inner_html=move || drawn.get()></div>
        </div>
    }
}

fn print() {
    if let Some(window) = web_sys::window() {
        // A browser that cannot print has its own word for it.
        let _ = window.print();
    }
}

/// The page as markup.
fn paper(state: &State) -> Markup {
    let voice = state.voice();
    let Some(sheet) = JobSheet::of(state) else {
        let why = if state.report.is_some() { JobSheetPhrase::Refused } else { JobSheetPhrase::NothingYet };
        return html! { p class="state" { (voice.say(&why)) } };
    };
    let class = if sheet.tight { "paper paper-tight" } else { "paper" };
    html! {
        article class=(class) {
            (head(&sheet, voice))
            (settings(&sheet, voice))
            (run(&sheet))
            div class="p-two" {
                div { (why(&sheet, voice)) (first(&sheet, voice)) }
                @if let Some(window) = &state.window { (small_map(window, voice)) }
            }
            (limits(&sheet, voice))
            @if let Some(it) = &sheet.trial { (trial(it, voice)) }
            (foot(&sheet, voice))
        }
    }
}

/// A box to tick with a pen.
fn tick_box() -> Markup {
    html! { span class="tickbox" aria-hidden="true" {} }
}

fn head(sheet: &JobSheet, voice: Voice) -> Markup {
    let edge = match sheet.verdict {
        Verdict::Trial => "p-verdict p-dashed",
        _ => "p-verdict",
    };
    html! {
        header class="p-head" {
            div {
                h2 { (sheet.title) }
                p { @for (at, line) in sheet.about.iter().enumerate() { @if at > 0 { br; } (line) } }
            }
            div class=(edge) {
                svg class="p-mark" viewBox="0 0 96 96" aria-hidden="true" {
                    (PreEscaped(icon::mark(sheet.verdict)))
                }
                b { (voice.verdict(sheet.verdict)) }
            }
        }
    }
}

fn settings(sheet: &JobSheet, voice: Voice) -> Markup {
    html! {
        dl class="p-set" {
            div class="p-wide" {
                dt { (voice.label(Label::White)) }
                dd { b { (sheet.white) } small { (sheet.white_say) } }
            }
            @for figure in &sheet.figures {
                div {
                    dt { (figure.name) }
                    dd { b { (figure.value) } small { (figure.beside) } }
                }
            }
        }
        @if let Some(said) = &sheet.by_hand { p class="p-hand" { (said) } }
    }
}

fn run(sheet: &JobSheet) -> Markup {
    html! {
        ul class="p-run" { @for step in &sheet.run { li { (tick_box()) b { (step.name) } (step.under) } } }
    }
}

fn why(sheet: &JobSheet, voice: Voice) -> Markup {
    html! {
        h3 { (voice.label(Label::Why)) }
        ul class="p-why" { @for reason in sheet.why.iter().chain(&sheet.garments) { li { (reason) } } }
    }
}

fn first(sheet: &JobSheet, voice: Voice) -> Markup {
    html! {
        h3 { (voice.label(Label::FirstPiece)) }
        ul class="p-first" { @for check in &sheet.first { li { (tick_box()) (check) } } }
    }
}

fn limits(sheet: &JobSheet, voice: Voice) -> Markup {
    html! {
        h3 { (voice.say(&JobSheetPhrase::Limits)) }
        ul class="p-limits" {
            @for limit in &sheet.limits {
                li { b { (limit.name) @if !limit.holds { " !" } } " " (limit.value) }
            }
        }
    }
}

/// The trial with a table to write its readings into; the first piece of an oven trial is kept as it is.
fn trial(trial: &PaperTrial, voice: Voice) -> Markup {
    let say = |phrase: JobSheetPhrase| voice.say(&phrase);
    let kept = |piece: u32| trial.oven && piece == 1;
    let row = |name: JobSheetPhrase, crossed: bool, inside: &Markup| {
        html! {
            tr {
                th scope="row" { (voice.say(&name)) }
                @for piece in 1..=trial.pieces {
                    @if crossed && kept(piece) { td class="x" {} } @else { td { (inside) } }
                }
            }
        }
    };
    let (empty, tick) = (Markup::default(), tick_box());
    html! {
        h3 { (voice.label(Label::TheTrial)) }
        p { (trial.say) }
        table class="p-read" {
            thead {
                tr {
                    th scope="col" { (say(JobSheetPhrase::Piece)) }
                    @for piece in 1..=trial.pieces {
                        th scope="col" { (piece) @if kept(piece) { ", " (say(JobSheetPhrase::Kept)) } }
                    }
                }
            }
            tbody {
                (row(JobSheetPhrase::Fresh, false, &empty))
                @if trial.oven { (row(JobSheetPhrase::AfterOven, true, &empty)) }
                (row(JobSheetPhrase::Pass, true, &tick))
            }
        }
        p class="p-then" {
            span { (tick) b { (trial.then) } }
            span { (tick) b { (say(JobSheetPhrase::OneTurns)) } }
        }
    }
}

fn foot(sheet: &JobSheet, voice: Voice) -> Markup {
    let say = |phrase: JobSheetPhrase| voice.say(&phrase);
    html! {
        div class="p-foot" {
            div {
                @if !sheet.looks.is_empty() {
                    h3 { (say(JobSheetPhrase::LookAgain)) }
                    ul class="p-first p-looks" {
                        @for (day, what) in &sheet.looks { li { (tick_box()) b { (day) } " " (what) } }
                    }
                }
                h3 { (voice.label(Label::Careful)) }
                p class="p-care" { (sheet.careful.join(" ")) }
                p class="p-sign" {
                    @for phrase in [JobSheetPhrase::SetBy, JobSheetPhrase::CheckedBy, JobSheetPhrase::DateTime] {
                        span { (say(phrase)) }
                    }
                }
            }
            div class="p-qr" { (code(sheet, voice)) }
        }
        p class="p-end" { (sheet.foot.join(" · ")) }
    }
}

/// The code that reads the sheet back, with a quiet zone of four modules around it.
fn code(sheet: &JobSheet, voice: Voice) -> Markup {
    html! {
        @if let Some(code) = &sheet.code {
            @let side = code.side() + 8;
            svg viewBox={ "-4 -4 " (side) " " (side) } role="img"
                aria-label=(voice.say(&JobSheetPhrase::CodeTitle)) { path d=(code.path()) {} }
        } @else {
            (voice.say(&JobSheetPhrase::TooLong))
        }
    }
}

/// The window as a small figure: what fails, what works, where the set point stands.
fn small_map(window: &WindowReport, voice: Voice) -> Markup {
    // Small letters would be too small on paper.
    let width = |topic: Topic| [LARGER * word_width(voice.past_limit(topic), "")[0], f64::INFINITY];
    let grid = MapGrid::of(window);
    let Some(map) = window_map(&grid, voice.units, &width) else { return Markup::default() };
    let set = window.setting.map(|setting| map.set_point(&window.drift, setting.dialled(), voice.units));
    html! {
        svg class="fig" viewBox={ "0 0 " (WIDTH) " " (HEIGHT) } role="img" aria-label=(voice.label(Label::Window)) {
            (hatches())
            (map_picture(&map, &grid, voice, &PAPER))
            @if let Some(set) = &set { (set_point_picture(set, &PAPER)) }
        }
    }
}

/// Hatches of the paper's own, since those of the screen are drawn in the colours of the screen.
fn hatches() -> Markup {
    let all = [
        (Ink::Fuse, 45, 14, "M1 0v14"),
        (Ink::Dye, -45, 11, "M1 0v11"),
        (Ink::Heat, 0, 22, "M0 11h22M11 0v22"),
        (Ink::Cloth, 45, 10, "M1 0v10"),
    ];
    html! {
        defs {
            @for (ink, turn, size, lines) in all {
                pattern id={ "paper-" (ink.name()) } width=(size) height=(size) patternUnits="userSpaceOnUse"
                    patternTransform={ "rotate(" (turn) ")" } { path class={ "h-" (ink.name()) } d=(lines) {} }
            }
        }
    }
}
