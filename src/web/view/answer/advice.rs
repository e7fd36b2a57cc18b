//! What would change the answer, what to do, other ways, what cannot do it, what to be careful of.

use crate::desk::{Choice, Msg, key};
use crate::plan::{Code, Pick, PrintStep, Reason, Report, Topic, Value, Verdict};
use crate::web::desk::Desk;
use crate::web::view::widgets::icon;
use crate::web::view::widgets::markup::{self, text};
use crate::wording::{Label, Numeral, Phrase, Voice};

/// True for a code that says what would change the answer, not why it is so.
pub fn is_change(code: Code) -> bool {
    matches!(
        code,
        Code::BuyClass
            | Code::UseBlocker
            | Code::IfUndyed
            | Code::IfDried
            | Code::IfHotter
            | Code::OtherHeat
            | Code::OtherProcess
            | Code::OpensCooler
            | Code::OpensHotter
            | Code::OpensSlower
            | Code::OpensFaster
            | Code::OpensPreDry
            | Code::OpensThinner
            | Code::OpensTwoPasses
            | Code::OpensLowCure
    )
}

/// The verdict a change would lead to.
pub fn leads_to(reason: &Reason) -> Option<Verdict> {
    match reason.values.get("verdict") {
        Some(Value::Word(word)) => serde_json::from_value(serde_json::Value::String(word.clone())).ok(),
        _ => None,
    }
}

/// What a tap on the answer does.
pub fn does(desk: Desk, act: &str) {
    match act.strip_prefix("use:") {
        Some(key) => desk.send(Msg::Use(key.into())),
        None if act == "undyed" => desk.send(Msg::Choose(Choice::Dyed(Some(false)))),
        None if act == "back" => desk.send(Msg::BackToReadable),
        None => {
            if let Ok(way) = act.parse() {
                desk.send(Msg::Tap(way));
            }
        }
    }
}

/// What would change the answer; what the desk can do at once is a button.
pub fn changes(report: &Report, voice: Voice) -> String {
    let row = |reason: &Reason| {
        let said = text(&voice.reason(reason));
        let mark = leads_to(reason).map_or_else(String::new, |verdict| {
            format!(
                "<span class=\"num\">{}</span>{}",
                text(voice.verdict_short(verdict)),
                markup::mark(verdict)
            )
        });
        if reason.code == Code::IfUndyed {
            format!(
                "<button class=\"btn\" type=\"button\" data-do=\"undyed\"><span>{said}</span>{mark}</button>"
            )
        } else {
            format!("<p class=\"if-row\"><span>{said}</span>{mark}</p>")
        }
    };
    listed(
        Label::WouldChange,
        "div class=\"if\"",
        report.to_make_it_possible.iter().map(row).collect(),
        voice,
    )
}

/// A block with a list of rows; nothing where there is none. `list` opens the list.
fn listed(title: Label, list: &str, rows: String, voice: Voice) -> String {
    if rows.is_empty() {
        return rows;
    }
    let end = list.split(' ').next().unwrap_or_default();
    markup::block(voice.label(title), "", &format!("<{list}>{rows}</{end}>"))
}

/// What to do, and what to look at on the first piece.
pub fn to_do(pick: &Pick, voice: Voice) -> String {
    let row = |words: &str| format!("<li>{}</li>", text(words));
    let advice = pick.advice.iter().map(|advice| row(voice.advice(*advice))).collect();
    let checks = pick.first_piece.iter().map(|code| row(&voice.code(*code))).collect();
    let dashes = "ul class=\"plain dashes\"";
    listed(Label::ToDo, dashes, advice, voice) + &listed(Label::FirstPiece, dashes, checks, voice)
}

/// The ways to print as a table, each with a button that chooses it.
pub fn other_ways(report: &Report, chosen: &Pick, money: &str, voice: Voice) -> String {
    if report.picks.len() < 2 {
        return String::new();
    }
    let numeral = Numeral(voice.language);
    let row = |pick: &Pick| {
        let base = pick.steps.iter().find_map(|step| match step {
            PrintStep::Blocker { name, .. } => Some(voice.say(&Phrase::Needs { blocker: name.clone() })),
            _ => None,
        });
        let mut base = base.unwrap_or_else(|| voice.label(Label::NoBlocker).to_lowercase());
        if pick.is_dried() {
            base = format!("{base}, {}", voice.label(Label::DriedFirst));
        }
        let bleed = pick.margins.iter().find(|margin| margin.what == Topic::Bleed);
        let bleed = bleed.map_or_else(|| "–".into(), |margin| voice.margin(margin, margin.value.likely));
        let choose = if std::ptr::eq(pick, chosen) {
            format!("<b>{}</b>", text(voice.label(Label::Chosen)))
        } else {
            let say = text(voice.label(Label::Use));
            format!(
                "<button class=\"btn\" type=\"button\" data-do=\"use:{}\" aria-label=\"{say} {}\">{say}</button>",
                text(&key(pick)),
                text(&pick.name)
            )
        };
        format!(
            "<tr>{}<td><b>{}</b><br>{}</td><td \
             class=\"r\">{}</td><td class=\"r\">{}</td><td class=\"r\">{}</td><td class=\"r\">{}</td><td>{choose}</td></tr>",
            markup::mark_cell(pick.verdict, voice.verdict(pick.verdict)),
            text(&pick.name),
            text(&base),
            text(&bleed),
            text(&voice.chance(pick.fail_later.likely)),
            text(&numeral.fixed(pick.rate_per_hour.likely, 0)),
            text(&numeral.fixed(pick.cost_per_print.likely, 2))
        )
    };
    let label = |label: Label| text(voice.label(label));
    let heads = format!(
        "<th class=\"mk\"><span class=\"sr\">{}</span></th><th>{}</th><th class=\"r\">{}</th><th class=\"r\">{}</th><th \
         class=\"r\">{}</th><th class=\"r\">{}{}</th><th><span class=\"sr\">{}</span></th>",
        label(Label::Verdict),
        label(Label::White),
        text(voice.topic(Topic::Bleed)),
        label(Label::LateFault),
        label(Label::PerHour),
        label(Label::PerPrint),
        text(money),
        label(Label::Use)
    );
    let rows: String = report.picks.iter().map(row).collect();
    let name = voice.label(Label::OtherWays);
    markup::block(name, voice.label(Label::ShelfFirst), &markup::table(name, &heads, &rows))
}

/// What is not known, and what it would be worth.
pub fn worth_knowing(report: &Report, voice: Voice) -> String {
    let rows = report.unknowns.iter().map(|unknown| {
        let worth = voice.say(&Phrase::Worth { chance: voice.chance(unknown.worth) });
        format!(
            "<p class=\"if-row\"><span>{}</span><span class=\"lab\">{}</span></p>",
            text(&voice.reason(&unknown.ask)),
            text(&worth)
        )
    });
    listed(Label::WorthKnowing, "div class=\"if\"", rows.collect(), voice)
}

/// The whites that cannot do it; those that fail for the same reason stand together.
pub fn cannot(report: &Report, voice: Voice) -> String {
    let mut reasons: Vec<(String, Vec<&str>)> = Vec::new();
    for rejected in &report.rejected {
        let why = rejected.reasons.first().map(|reason| voice.reason(reason)).unwrap_or_default();
        match reasons.iter_mut().find(|(other, _)| *other == why) {
            Some((_, names)) => names.push(&rejected.name),
            None => reasons.push((why, vec![&rejected.name])),
        }
    }
    let mark = markup::mark(Verdict::Refuse);
    let rows = reasons.iter().map(|(why, names)| {
        format!("<li>{mark}<p><b>{}. </b>{}</p></li>", text(&names.join(", ")), text(why))
    });
    listed(Label::CannotDoIt, "ul class=\"why\"", rows.collect(), voice)
}

/// What to be careful of.
pub fn careful(report: &Report, voice: Voice) -> String {
    let rows: String = report
        .cautions
        .iter()
        .map(|caution| {
            format!(
                "<div class=\"warn\"><span class=\"c-heat\">{}</span><p>{}</p></div>",
                markup::sign(36, icon::caution(caution.code)),
                text(&voice.reason(caution))
            )
        })
        .collect();
    if rows.is_empty() { rows } else { markup::block(voice.label(Label::Careful), "", &rows) }
}
