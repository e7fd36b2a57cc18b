//! The sheet screen: the page that is printed, a button that prints it, and a way to read a printed one back.

use super::widgets::{icon, markup};
use crate::desk::job_sheet::{Figure, JobSheet};
use crate::desk::picture::Ink;
use crate::desk::picture::map::{HEIGHT, WIDTH, WindowMap, window_map, word_width};
use crate::desk::{Msg, State};
use crate::plan::{Topic, Verdict, WindowReport};
use crate::web::desk::Desk;
use crate::web::file;
use crate::wording::{JobSheetPhrase, Label, Numeral, Quantity, Voice};
use leptos::prelude::*;
use std::fmt::Write;

/// How much larger letters are on the small map of the page than on the screen's.
const LARGER: f64 = 1.35;

/// The screen.
pub fn job_sheet(desk: Desk) -> impl IntoView {
    let paper = desk.memo(paper);
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
            <div inner_html=move || paper.get()></div>
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
fn paper(state: &State) -> String {
    let voice = state.voice();
    let Some(sheet) = JobSheet::of(state) else {
        let why = if state.report.is_some() { JobSheetPhrase::Refused } else { JobSheetPhrase::NothingYet };
        return format!("<p class=\"state\">{}</p>", markup::text(&voice.say(&why)));
    };
    let class = if sheet.tight { "paper paper-tight" } else { "paper" };
    let figure = state.window.as_ref().and_then(|window| small_map(window, voice)).unwrap_or_default();
    [
        format!("<article class=\"{class}\">"),
        head(&sheet, voice),
        settings(&sheet, voice),
        run(&sheet),
        format!(
            "<div class=\"p-two\"><div>{}{}</div>{figure}</div>",
            why(&sheet, voice),
            first(&sheet, voice)
        ),
        limits(&sheet, voice),
        trial(&sheet, voice),
        foot(&sheet, voice),
        "</article>".into(),
    ]
    .concat()
}

const BOX: &str = "<span class=\"tickbox\" aria-hidden=\"true\"></span>";

fn lines(parts: &[String]) -> String {
    parts.iter().map(|part| markup::text(part)).collect::<Vec<_>>().join("<br>")
}

fn list(class: &str, items: impl Iterator<Item = String>) -> String {
    let items: String = items.map(|item| format!("<li>{item}</li>")).collect();
    format!("<ul class=\"{class}\">{items}</ul>")
}

fn head(sheet: &JobSheet, voice: Voice) -> String {
    let edge = match sheet.verdict {
        Verdict::Trial => "p-verdict p-dashed",
        _ => "p-verdict",
    };
    let (title, about) = (markup::text(&sheet.title), lines(&sheet.about));
    let (mark, word) = (icon::mark(sheet.verdict), voice.verdict(sheet.verdict));
    format!(
        "<header class=\"p-head\"><div><h2>{title}</h2><p>{about}</p></div><div class=\"{edge}\"><svg class=\"p-mark\" \
         viewBox=\"0 0 96 96\" aria-hidden=\"true\">{mark}</svg><b>{word}</b></div></header>"
    )
}

fn settings(sheet: &JobSheet, voice: Voice) -> String {
    let one = |figure: &Figure| {
        let Figure { name, value, beside } = figure;
        let [name, value, beside] = [name, value, beside].map(|it| markup::text(it));
        format!("<div><dt>{name}</dt><dd><b>{value}</b><small>{beside}</small></dd></div>")
    };
    let figures: String = sheet.figures.iter().map(one).collect();
    let (name, white) = (voice.label(Label::White), markup::text(&sheet.white));
    let say = markup::text(&sheet.white_say);
    let by_hand =
        sheet.by_hand.as_ref().map(|said| format!("<p class=\"p-hand\">{}</p>", markup::text(said)));
    format!(
        "<dl class=\"p-set\"><div class=\"p-wide\"><dt>{name}</dt><dd><b>{white}</b><small>{say}</small></dd></div>\
         {figures}</dl>{}",
        by_hand.unwrap_or_default()
    )
}

fn run(sheet: &JobSheet) -> String {
    let steps = sheet.run.iter().map(|step| {
        let (name, under) = (markup::text(&step.name), markup::text(&step.under));
        format!("{BOX}<b>{name}</b>{under}")
    });
    list("p-run", steps)
}

fn titled(words: &str, rest: &str) -> String {
    format!("<h3>{words}</h3>{rest}")
}

fn why(sheet: &JobSheet, voice: Voice) -> String {
    let reasons = sheet.why.iter().chain(&sheet.garments).map(|it| markup::text(it));
    titled(voice.label(Label::Why), &list("p-why", reasons))
}

fn first(sheet: &JobSheet, voice: Voice) -> String {
    let checks = sheet.first.iter().map(|it| format!("{BOX}{}", markup::text(it)));
    titled(voice.label(Label::FirstPiece), &list("p-first", checks))
}

fn limits(sheet: &JobSheet, voice: Voice) -> String {
    let rows = sheet.limits.iter().map(|limit| {
        let (name, value) = (markup::text(&limit.name), markup::text(&limit.value));
        let sign = if limit.holds { "" } else { " !" };
        format!("<b>{name}{sign}</b> {value}")
    });
    titled(&voice.say(&JobSheetPhrase::Limits), &list("p-limits", rows))
}

fn trial(sheet: &JobSheet, voice: Voice) -> String {
    let Some(trial) = &sheet.trial else { return String::new() };
    let word = |paper: JobSheetPhrase| markup::text(&voice.say(&paper));
    let pieces = 1..=trial.pieces;
    let kept = |piece: u32| trial.oven && piece == 1;
    let head: String = pieces
        .clone()
        .map(|piece| {
            let kept = if kept(piece) { format!(", {}", word(JobSheetPhrase::Kept)) } else { String::new() };
            format!("<th scope=\"col\">{piece}{kept}</th>")
        })
        .collect();
    let row = |name: JobSheetPhrase, crossed: bool, inside: &str| {
        let cells: String = pieces
            .clone()
            .map(|piece| match crossed && kept(piece) {
                true => "<td class=\"x\"></td>".to_owned(),
                false => format!("<td>{inside}</td>"),
            })
            .collect();
        format!("<tr><th scope=\"row\">{}</th>{cells}</tr>", word(name))
    };
    let oven = if trial.oven { row(JobSheetPhrase::AfterOven, true, "") } else { String::new() };
    let (fresh, pass) = (row(JobSheetPhrase::Fresh, false, ""), row(JobSheetPhrase::Pass, true, BOX));
    let (say, then, stop) =
        (markup::text(&trial.say), markup::text(&trial.then), word(JobSheetPhrase::OneTurns));
    let rest = format!(
        "<p>{say}</p><table class=\"p-read\"><thead><tr><th scope=\"col\">{}</th>{head}</tr></thead><tbody>{fresh}{oven}\
         {pass}</tbody></table><p class=\"p-then\"><span>{BOX}<b>{then}</b></span><span>{BOX}<b>{stop}</b></span></p>",
        word(JobSheetPhrase::Piece)
    );
    titled(voice.label(Label::TheTrial), &rest)
}

fn foot(sheet: &JobSheet, voice: Voice) -> String {
    let word = |paper: JobSheetPhrase| markup::text(&voice.say(&paper));
    let looks = sheet.looks.iter().map(|(day, what)| {
        let (day, what) = (markup::text(day), markup::text(what));
        format!("{BOX}<b>{day}</b> {what}")
    });
    let looks = if sheet.looks.is_empty() {
        String::new()
    } else {
        titled(&word(JobSheetPhrase::LookAgain), &list("p-first p-looks", looks))
    };
    let careful = titled(voice.label(Label::Careful), &format!("<p class=\"p-care\">{}</p>", careful(sheet)));
    let code = match &sheet.code {
        Some(code) => format!(
            "<svg viewBox=\"-4 -4 {0} {0}\" role=\"img\" aria-label=\"{1}\"><path d=\"{2}\"/></svg>",
            code.side() + 8,
            word(JobSheetPhrase::CodeTitle),
            code.path(),
        ),
        None => word(JobSheetPhrase::TooLong),
    };
    let sign = [JobSheetPhrase::SetBy, JobSheetPhrase::CheckedBy, JobSheetPhrase::DateTime]
        .map(|it| format!("<span>{}</span>", word(it)));
    format!(
        "<div class=\"p-foot\"><div>{looks}{careful}<p class=\"p-sign\">{}</p></div><div class=\"p-qr\">{code}</div></div>\
         <p class=\"p-end\">{}</p>",
        sign.concat(),
        markup::text(&sheet.foot.join(" · ")),
    )
}

fn careful(sheet: &JobSheet) -> String {
    sheet.careful.iter().map(|it| markup::text(it)).collect::<Vec<_>>().join(" ")
}

/// The window as a small figure: what fails, what works, where the set point stands.
fn small_map(window: &WindowReport, voice: Voice) -> Option<String> {
    // Small letters would be too small on paper.
    let width = |topic: Topic| [LARGER * word_width(voice.past_limit(topic), "")[0], f64::INFINITY];
    let map = window_map(window, voice.units, &width)?;
    let (left, top) = (map.belt.start, map.heat.end);
    let (wide, high) = (map.belt.end - left, map.heat.start - top);
    let mut inside = String::from("<defs>");
    // Hatches of its own, since those of the screen are drawn in the colours of the screen.
    for (ink, turn, size, lines) in [
        (Ink::Fuse, 45, 14, "M1 0v14"),
        (Ink::Dye, -45, 11, "M1 0v11"),
        (Ink::Heat, 0, 22, "M0 11h22M11 0v22"),
        (Ink::Cloth, 45, 10, "M1 0v10"),
    ] {
        let ink = ink.name();
        let _ = write!(
            inside,
            "<pattern id=\"paper-{ink}\" width=\"{size}\" height=\"{size}\" patternUnits=\"userSpaceOnUse\" \
             patternTransform=\"rotate({turn})\"><path class=\"h-{ink}\" d=\"{lines}\"/></pattern>"
        );
    }
    let _ = write!(
        inside,
        "</defs><rect class=\"f-sheet\" x=\"{left}\" y=\"{top}\" width=\"{wide}\" height=\"{high}\"/>\
         <clipPath id=\"paper-clip\"><rect x=\"{left}\" y=\"{top}\" width=\"{wide}\" height=\"{high}\"/></clipPath>\
         <g clip-path=\"url(#paper-clip)\">"
    );
    for area in &map.areas {
        let (ink, region, wall) = (area.ink.name(), &area.region, &area.wall);
        if area.ink != Ink::Cloth {
            let _ = write!(inside, "<path class=\"w-{ink}\" d=\"{region}\"/>");
        }
        let _ = write!(
            inside,
            "<path fill=\"url(#paper-{ink})\" d=\"{region}\"/><path class=\"f-{ink}\" d=\"{wall}\"/>"
        );
    }
    inside.push_str("</g>");
    for area in &map.areas {
        if let Some((x, y)) = area.word {
            let word = voice.past_limit(area.topic).to_uppercase();
            let _ = write!(inside, "<text class=\"t-halo t-xl\" x=\"{x:.0}\" y=\"{y:.0}\">{word}</text>");
        }
    }
    if let Some(((x, y), turn)) = map.works {
        let _ = write!(
            inside,
            "<text class=\"t-halo t-xl t-m\" transform=\"translate({x:.0} {y:.0}) rotate({turn:.0})\">{}</text>",
            voice.label(Label::Works).to_uppercase()
        );
    }
    axes(&mut inside, &map, voice);
    if let Some(setting) = window.setting {
        let set = map.set_point(&window.drift, setting.set_c, setting.belt_m_per_min, voice.units);
        let ((x, y), (w, h)) = (set.middle, set.half);
        let (a, b) = (w.max(12.0) + 6.0, h.max(12.0) + 6.0);
        let _ = write!(
            inside,
            "<g transform=\"translate({x:.1} {y:.1})\"><path class=\"rect-margin\" d=\"M{:.1} {:.1}h{:.1}v{:.1}h{:.1}z\"/>\
             <path class=\"point\" d=\"M0 {:.1}V{:.1}M0 {b:.1}V{:.1}M{:.1} 0H{:.1}M{a:.1} 0H{:.1}\"/>\
             <circle class=\"point-core\" r=\"7\"/></g>",
            -w,
            -h,
            2.0 * w,
            2.0 * h,
            -2.0 * w,
            -b - 28.0,
            -b,
            b + 28.0,
            -a - 32.0,
            -a,
            a + 32.0,
        );
    }
    let name = markup::text(voice.label(Label::Window));
    Some(format!(
        "<svg class=\"fig\" viewBox=\"0 0 {WIDTH} {HEIGHT}\" role=\"img\" aria-label=\"{name}\">{inside}</svg>"
    ))
}

fn axes(inside: &mut String, map: &WindowMap, voice: Voice) {
    let (left, right, bottom, top) = (map.belt.start, map.belt.end, map.heat.start, map.heat.end);
    let numeral = Numeral(voice.language);
    let _ = write!(inside, "<path class=\"f-axis\" d=\"M{left} {top}V{bottom}H{right}\"/>");
    for (x, value) in map.belt_ticks.iter().step_by(2) {
        let value = numeral.fixed(*value, map.belt_decimals);
        let _ = write!(
            inside,
            "<path class=\"f-axis\" d=\"M{x:.1} {bottom}v8\"/><text class=\"t-m\" x=\"{x:.1}\" y=\"{:.1}\">{value}</text>",
            bottom + 32.0
        );
    }
    for (y, value) in map.heat_ticks.iter().step_by(2) {
        let value = numeral.fixed(*value, 0);
        let _ = write!(
            inside,
            "<path class=\"f-axis\" d=\"M{left} {y:.1}h-8\"/><text class=\"t-e\" x=\"{:.1}\" y=\"{:.1}\">{value}</text>",
            left - 12.0,
            y + 9.0
        );
    }
    let unit = |quantity: Quantity| quantity.unit(voice.units, voice.language);
    let _ = write!(
        inside,
        "<text class=\"t-b t-e\" x=\"{right}\" y=\"{0}\">{1}, {2}</text><text class=\"t-b\" x=\"0\" y=\"{0}\">{3}, {4}</text>",
        HEIGHT - 6.0,
        voice.label(Label::Belt).to_lowercase(),
        unit(Quantity::Belt),
        voice.label(Label::AirAxis),
        unit(Quantity::Temperature),
    );
}
