//! A colour meter's file for the garment: choosing it, and one of its samples.

use crate::desk::Msg;
use crate::web::desk::Desk;
use crate::web::file;
use crate::wording::Label;
use leptos::prelude::*;

/// Most samples that are offered at once; a meter's file of one cloth holds a few.
const MOST: usize = 60;

/// The button, and what the file holds or why it cannot be read.
pub fn meter(desk: Desk) -> impl IntoView {
    let shown = desk.memo(|state| {
        let voice = state.voice();
        state.meter.as_ref().map(|file| match file {
            Err(error) => Err(voice.meter_problem(error)),
            Ok(file) => {
                let samples = file.samples.iter().take(MOST);
                let samples = samples.map(|it| (it.name.clone(), it.lab.swatch())).collect::<Vec<_>>();
                let notes = file.notes.iter().map(|note| voice.meter_note(*note)).collect::<Vec<_>>();
                Ok((samples, notes.join(" ")))
            }
        })
    });
    view! {
        <div class="stack" id="meter">
            <label class="btn btn-wide" for="meter-file">
                {move || desk.label(Label::MeterFile)}
                <input
                    class="sr"
                    type="file"
                    id="meter-file"
                    accept=".txt,.csv,.tsv,.cgats,.it8"
                    on:change=move |event| desk.measure(file::chosen(&event))
                />
            </label>
            {move || match shown.get() {
                None => ().into_any(),
                Some(Err(problem)) => view! { <p class="err" role="alert">{problem}</p> }.into_any(),
                Some(Ok((samples, notes))) => {
                    let buttons = samples
                        .into_iter()
                        .enumerate()
                        .map(|(place, (name, swatch))| view! {
                            <button class="btn" type="button" on:click=move |_| desk.send(Msg::Sample(place))>
                                <svg class="swatch true-colour" viewBox="0 0 18 18" aria-hidden="true">
                                    <rect width="18" height="18" fill=swatch></rect>
                                </svg>
                                {name}
                            </button>
                        })
                        .collect_view();
                    view! {
                        <p class="aside" role="status">{notes}</p>
                        <div class="seg" role="group" aria-label=move || desk.label(Label::MeterFile)>{buttons}</div>
                    }
                    .into_any()
                }
            }}
        </div>
    }
}
