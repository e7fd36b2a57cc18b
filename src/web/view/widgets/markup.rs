//! Markup of what is only read and tapped, as text: hundreds of records are drawn at once, and a view of Leptos for each
//! kind of row would cost the page more than all the words on them. Whatever a person or a file brought is escaped.

use super::icon;
use crate::plan::Verdict;

/// Text as it may stand in markup.
pub fn text(text: &str) -> String {
    let mut safe = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => safe.push_str("&amp;"),
            '<' => safe.push_str("&lt;"),
            '>' => safe.push_str("&gt;"),
            '"' => safe.push_str("&quot;"),
            letter => safe.push(letter),
        }
    }
    safe
}

/// A button that does something when it is tapped: see [`super::act`].
pub fn button(class: &str, act: &str, words: &str) -> String {
    let (act, words) = (text(act), text(words));
    format!("<button class=\"btn {class}\" type=\"button\" data-do=\"{act}\">{words}</button>")
}

/// A button that is one of several answers.
pub fn answer(act: &str, pressed: bool, words: &str) -> String {
    let (act, words) = (text(act), text(words));
    format!(
        "<button class=\"btn\" type=\"button\" data-do=\"{act}\" aria-pressed=\"{pressed}\">{words}</button>"
    )
}

/// A link that becomes a download when it is tapped.
pub fn download(id: &str, class: &str, act: &str, words: &str) -> String {
    let (act, words) = (text(act), text(words));
    format!("<a class=\"btn {class}\" id=\"{id}\" href=\"#library\" data-do=\"{act}\">{words}</a>")
}

/// The head of a section, with words beside it.
pub fn head(id: &str, words: &str, aside: &str) -> String {
    let (words, aside) = (text(words), text(aside));
    format!("<h2 class=\"sec-head gap-s\" id=\"{id}\">{words} <span class=\"aside\">{aside}</span></h2>")
}

/// A sign of the given view box; hidden from readers, who get the words beside it.
pub fn sign(size: u32, inside: &str) -> String {
    format!("<svg viewBox=\"0 0 {size} {size}\" aria-hidden=\"true\">{inside}</svg>")
}

/// The mark of a verdict in its colour.
pub fn mark(verdict: Verdict) -> String {
    format!("<span class=\"{}\">{}</span>", icon::verdict_class(verdict), sign(96, icon::mark(verdict)))
}

/// The mark of a verdict as the first cell of a row; `words` are for readers.
pub fn mark_cell(verdict: Verdict, words: &str) -> String {
    format!("<td class=\"mk\">{}<span class=\"sr\">{}</span></td>", mark(verdict), text(words))
}

/// A block of the answer under its heading, with words beside that; `inside` is markup.
pub fn block(heading: &str, aside: &str, inside: &str) -> String {
    let aside = if aside.is_empty() {
        String::new()
    } else {
        format!(" <span class=\"aside\">{}</span>", text(aside))
    };
    format!("<div class=\"blk\"><h2 class=\"sec-head\">{}{aside}</h2>{inside}</div>", text(heading))
}

/// A table with its head row that can be moved sideways, under a name; `heads` and `rows` are markup.
pub fn table(name: &str, heads: &str, rows: &str) -> String {
    format!(
        "<div class=\"scroll\" tabindex=\"0\" role=\"region\" aria-label=\"{}\"><table class=\"tbl\"><thead><tr>{heads}</tr>\
         </thead><tbody>{rows}</tbody></table></div>",
        text(name)
    )
}
