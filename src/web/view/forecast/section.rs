//! Cuts through the print: fresh, and on later days.

use super::ageing::day;
use crate::desk::picture::section::{FILM, FilmSection, FilmSections, HEIGHT, WIDTH, fibres, film_sections};
use crate::desk::picture::swatches::Swatches;
use crate::plan::BleedForecast;
use crate::web::view::widgets::svg::SvgWriter;
use crate::wording::{Label, Phrase, Quantity, Voice};
use leptos::prelude::*;
use maud::{Markup, html};

/// Top of the cuts in the picture, and the distance from one to the next.
const TOP: f64 = 54.0;
const STRIDE: f64 = 158.0;
/// Colour of the air over the film, the same in both themes as are the true colours beside it.
const BACKGROUND: &str = "#e3e6e6";

/// The figure, in the colours of this print.
pub fn section_view(
    forecast: &BleedForecast,
    colours: &Swatches,
    dye: &str,
    voice: Voice,
) -> Option<impl IntoView + use<>> {
    let drawn = film_sections(forecast)?;
    let name = |cut: &FilmSection| match cut.day {
        0.0 => voice.label(Label::Fresh).to_owned(),
        days => voice.say(&Phrase::DayNumber { day: day(voice, days) }),
    };
    let names: Vec<String> = drawn.cuts.iter().map(name).collect();
    let film = voice.quantity(Quantity::Film, forecast.film_um);
    let inside = picture(&drawn, &names, colours, dye, voice).into_string();
    Some(view! {
        <figure class="fig-s">
            <figcaption class="sec-head">
                {voice.label(Label::InsideFilm)}" "
                <span class="aside">{voice.say(&Phrase::FilmNear { film })}</span>
            </figcaption>
            <svg
                class="fig true-colour"
                id="section"
                viewBox="0 0 488 368"
                role="img"
                aria-label=voice.say(&Phrase::CutTitle { days: names })
                inner_html=inside
            ></svg>
            <p class="cap">{voice.forecast_cut(forecast)}" "{voice.label(Label::CutFigure)}</p>
        </figure>
    })
}

fn picture(drawn: &FilmSections, names: &[String], colours: &Swatches, dye: &str, voice: Voice) -> Markup {
    let mut pen = SvgWriter::default();
    let fibres = fibres();
    for (index, (cut, name)) in drawn.cuts.iter().zip(names).enumerate() {
        let left = 32.0 + STRIDE * index as f64;
        pen.text("t-b t-m", left + 0.5 * WIDTH, 20.0, name);
        // A picture within the picture cuts off what reaches over its edge.
        pen.add(&html! {
            svg x=(left) y=(TOP) width=(WIDTH) height=(HEIGHT) { (inside(drawn, cut, &fibres, colours, dye)) }
        });
        pen.path("f-axis", &format!("M{left} {TOP}h{WIDTH}v{HEIGHT}h-{WIDTH}z"));
    }
    let depth = voice.quantity(Quantity::Film, crate::migration::VISIBLE_DEPTH * 1e6);
    pen.path("f-limit f-thin", &format!("M26 {TOP}h-12v{:.1}h12", drawn.eye));
    pen.text("t-b", 0.0, 44.0, &voice.say(&Phrase::EyeSees { depth }));
    pen.text("t-m", 256.0, 358.0, voice.label(Label::DyedFibres));
    pen.done()
}

/// One cut: film and fibres, the dye in them, and the line of how much of it shows.
fn inside(drawn: &FilmSections, cut: &FilmSection, fibres: &str, colours: &Swatches, dye: &str) -> Markup {
    let mut pen = SvgWriter::default();
    pen.filled(BACKGROUND, "M0 0h132v280h-132z");
    pen.filled(&colours.fresh, "M0 0h132v208q-14 16-30-4-36-20-72 2-16 16-30 0z");
    if let Some(top) = drawn.blocker {
        pen.path("cut-base", &format!("M0 {top:.1}h132V{}h-132z", FILM - 4.0));
    }
    pen.path("held", &cut.bound);
    pen.stroked("dots", dye, &cut.free);
    pen.stroked("fibre-edge", &colours.shade, fibres);
    pen.stroked("fibre", &colours.cloth, fibres);
    pen.path("prof-halo", &cut.line);
    pen.path("prof", &cut.line);
    pen.line("f-eye", [0.0, drawn.eye], [WIDTH, drawn.eye]);
    pen.done()
}
