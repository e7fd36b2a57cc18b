//! A rule: one margin with its limit as a wall.

use crate::desk::picture::margin_bar::{HEIGHT, WIDTH, margin_bar as bar};
use crate::plan::{Margin, Side, Topic};
use crate::web::view::widgets::markup;
use crate::web::view::widgets::svg::SvgWriter;
use crate::wording::{Label, Numeral, Phrase, Voice};

/// The rule of a margin with its heading; `days` is when the bleed is judged.
pub fn margin_bar(margin: &Margin, voice: Voice, days: f64) -> String {
    let drawn = bar(margin);
    let what = match margin.what {
        Topic::Bleed => voice.say(&Phrase::BleedAfter { days: Numeral(voice.language).fixed(days, 0) }),
        topic => voice.topic(topic).to_owned(),
    };
    let write = |value| voice.margin(margin, value);
    let (likely, low, high) = (write(margin.value.likely), write(margin.value.low), write(margin.value.high));
    let limit = voice.say(&Phrase::LimitAt { value: write(margin.limit) });
    let title = voice.say(&Phrase::RulerTitle {
        what: what.clone(),
        likely: likely.clone(),
        low: low.clone(),
        high: high.clone(),
        limit: write(margin.limit),
    });
    // In brackets, as on the sheet: "0 0 to 0.2" reads as one number.
    let range =
        if low == high { String::new() } else { format!("({})", voice.say(&Phrase::To { low, high })) };
    let past = match (margin.what, margin.needed) {
        (Topic::Fusion, Side::AtLeast) => voice.label(Label::NotFused).to_owned(),
        (topic, _) => voice.past_limit(topic).to_lowercase(),
    };
    // Words under the scale keep clear of the limit's own word in the middle of the wall.
    let half = limit.chars().count() as f64 * 4.8;
    let middle = drawn.limit.clamp(12.0 + half, WIDTH - 12.0 - half);
    let past_width = past.chars().count() as f64 * 8.8;
    let past_fits = if drawn.fails_left {
        middle - half > 18.0 + past_width
    } else {
        WIDTH - 18.0 - past_width > middle + half
    };
    let ink = drawn.ink.name();
    let (from, to) = drawn.bar;
    let mut pen = SvgWriter::default();
    let (fails, fails_width) = drawn.fails;
    let area = format!("x=\"{fails}\" y=\"5\" width=\"{fails_width}\" height=\"31\"/>");
    pen.raw(&format!("<rect class=\"w-{ink}\" {area}<rect fill=\"url(#h-{ink})\" {area}"));
    let tick = |(x, long): &(f64, bool)| format!("M{x:.1} 36v-{}", if *long { 9 } else { 5 });
    pen.path("f-tick", &drawn.ticks.iter().map(tick).collect::<String>());
    pen.path("f-axis", &format!("M12 36H{}", WIDTH - 12.0));
    pen.path("point-halo", &format!("M{from:.1} 19H{to:.1}"));
    let width = (to - from).max(1.0);
    pen.raw(&format!("<rect class=\"b-{ink}\" x=\"{from}\" y=\"14\" width=\"{width}\" height=\"10\"/>"));
    let end = |beyond: bool, x: f64| if beyond { String::new() } else { format!("M{x:.1} 10v18") };
    pen.path("f-limit", &(end(drawn.beyond.0, from) + &end(drawn.beyond.1, to)));
    pen.path("f-limit", &format!("M{:.1} 0V42", drawn.limit));
    pen.path("rule-likely", &format!("M{:.1} 3l9 16-9 16-9-16z", drawn.likely));
    pen.text("t-b t-m", middle, 57.0, &markup::text(&limit));
    if past_fits {
        let (x, class) = if drawn.fails_left { (12.0, "t-b") } else { (WIDTH - 12.0, "t-b t-e") };
        pen.text(class, x, 57.0, &markup::text(&past));
    }
    let [what, likely, range, title] = [what, likely, range, title].map(|words| markup::text(&words));
    format!(
        "<div><p class=\"rule-h\">{what} <b>{likely}</b> <span>{range}</span></p><svg class=\"fig\" viewBox=\"0 0 {WIDTH} {HEIGHT}\" \
         role=\"img\"><title>{title}</title>{}</svg></div>",
        pen.done()
    )
}
