//! A note that label and colour field name two colours, with a button that takes the label's.

use crate::desk::{Msg, colour_conflict as conflict_of};
use crate::web::desk::Desk;
use crate::wording::Phrase;
use leptos::prelude::*;

/// The sentence and its button; nothing while both agree.
pub fn colour_conflict(desk: Desk) -> impl IntoView {
    let found = desk.memo(|state| (conflict_of(&state.draft, state.records.library()), state.voice()));
    move || {
        let (conflict, voice) = found.get();
        conflict.map(|conflict| {
            let colour = voice.colour_or(&conflict.label);
            let say =
                Phrase::ColourClash { label: colour.clone(), chosen: voice.colour_or(&conflict.chosen) };
            view! {
                <div class="note" id="colour-clash" role="status">
                    <p class="small">{voice.say(&say)}</p>
                    <button class="btn" type="button" on:click=move |_| desk.send(Msg::ColourOfLabel)>
                        {voice.say(&Phrase::TakeColour { colour })}
                    </button>
                </div>
            }
        })
    }
}
