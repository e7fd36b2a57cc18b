//! Markup of what is only read and tapped, as text: hundreds of records are drawn at once, and a view of Leptos for each
//! kind of row would cost the page more than all the words on them. Whatever a person or a file brought is escaped.

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
