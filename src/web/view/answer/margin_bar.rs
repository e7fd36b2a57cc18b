//! A margin as a bar: its range on a scale, with its limit as a wall and the failing side hatched.

use crate::desk::picture::margin_bar::{HEIGHT, MarginBar, WIDTH, margin_bar as bar};
use crate::plan::{Margin, Side, Topic};
use crate::web::view::widgets::svg::SvgWriter;
use crate::wording::{Label, Numeral, Phrase, Voice};
use maud::{Markup, html};

/// Base line of the words under the scale.
const WORDS: f64 = 57.0;
/// Width of a letter of the limit's words, and of the bold words of the failing side, in the widest face.
const LETTER: [f64; 2] = [9.6, 8.8];

/// The bar of a margin with its heading; `days` is when the bleed is judged.
pub fn margin_bar(margin: &Margin, voice: Voice, days: f64) -> Markup {
    let what = match margin.what {
        Topic::Bleed => voice.say(&Phrase::BleedAfter { days: Numeral(voice.language).fixed(days, 0) }),
        topic => voice.topic(topic).to_owned(),
    };
    let write = |value| voice.margin(margin, value);
    let (likely, low, high) = (write(margin.value.likely), write(margin.value.low), write(margin.value.high));
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
    html! {
        div {
            p class="rule-h" { (what) " " b { (likely) } " " span { (range) } }
            svg class="fig" viewBox={ "0 0 " (WIDTH) " " (HEIGHT) } role="img" {
                title { (title) }
                (picture(&bar(margin), margin, voice))
            }
        }
    }
}

fn picture(drawn: &MarginBar, margin: &Margin, voice: Voice) -> Markup {
    let mut pen = SvgWriter::default();
    let ink = drawn.ink.name();
    let ((fails, wide), (from, to)) = (drawn.fails, drawn.bar);
    pen.add(&html! {
        rect class={ "w-" (ink) } x=(fails) y="5" width=(wide) height="31" {}
        rect fill={ "url(#h-" (ink) ")" } x=(fails) y="5" width=(wide) height="31" {}
    });
    let tick = |(x, long): &(f64, bool)| format!("M{x:.1} 36v-{}", if *long { 9 } else { 5 });
    pen.path("f-tick", &drawn.ticks.iter().map(tick).collect::<String>());
    pen.path("f-axis", &format!("M12 36H{}", WIDTH - 12.0));
    pen.path("point-halo", &format!("M{from:.1} 19H{to:.1}"));
    let wide = (to - from).max(1.0);
    pen.add(&html! { rect class={ "b-" (ink) } x=(from) y="14" width=(wide) height="10" {} });
    let end = |beyond: bool, x: f64| if beyond { String::new() } else { format!("M{x:.1} 10v18") };
    pen.path("f-limit", &(end(drawn.beyond.0, from) + &end(drawn.beyond.1, to)));
    pen.path("f-limit", &format!("M{:.1} 0V42", drawn.limit));
    pen.path("rule-likely", &format!("M{:.1} 3l9 16-9 16-9-16z", drawn.likely));
    words(&mut pen, drawn, margin, voice);
    pen.done()
}

/// The limit's own words in the middle of the wall, and those of the failing side where they keep clear of them.
fn words(pen: &mut SvgWriter, drawn: &MarginBar, margin: &Margin, voice: Voice) {
    let limit = voice.say(&Phrase::LimitAt { value: voice.margin(margin, margin.limit) });
    let past = match (margin.what, margin.needed) {
        (Topic::Fusion, Side::AtLeast) => voice.label(Label::NotFused).to_owned(),
        (topic, _) => voice.past_limit(topic).to_lowercase(),
    };
    let width = |text: &str, letter: f64| text.chars().count() as f64 * letter;
    let half = 0.5 * width(&limit, LETTER[0]);
    let middle = drawn.limit.clamp(12.0 + half, WIDTH - 12.0 - half);
    pen.text("t-b t-m", middle, WORDS, &limit);
    let past_width = width(&past, LETTER[1]);
    let fits = if drawn.fails_left {
        middle - half > 18.0 + past_width
    } else {
        WIDTH - 18.0 - past_width > middle + half
    };
    if fits {
        let (x, class) = if drawn.fails_left { (12.0, "t-b") } else { (WIDTH - 12.0, "t-b t-e") };
        pen.text(class, x, WORDS, &past);
    }
}
