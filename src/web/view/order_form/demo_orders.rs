//! The orders of the demo print room, to choose from.

use crate::desk::Msg;
use crate::web::desk::Desk;
use crate::wording::{Label, Phrase};
use leptos::prelude::*;

/// The picker.
pub fn demo_orders(desk: Desk) -> impl IntoView {
    view! {
        <details class="week more">
            <summary class="btn btn-wide">{move || desk.label(Label::ThisWeek)}</summary>
            {desk.later(move || orders(desk))}
        </details>
    }
}

fn orders(desk: Desk) -> impl IntoView {
    let orders = desk.queries(|queries| queries.room.orders.clone());
    let rows = orders
        .into_iter()
        .map(|room_order| {
            let title = crate::web::cached_queries::title(&room_order);
            let label = room_order.order.garments.first().map(|it| it.label.clone()).unwrap_or_default();
            let pieces: u32 = room_order.order.garments.iter().map(|it| it.pieces).sum();
            let due = room_order.order.use_.due.clone();
            let line = move || {
                let voice = desk.voice();
                voice.say(&Phrase::OrderLine {
                    pieces: pieces.to_string(),
                    lot: String::new(),
                    due: voice.day(&due),
                })
            };
            let (order, name) = (room_order.order, title.clone());
            view! {
                <li>
                    <button
                        class="btn"
                        type="button"
                        on:click=move |_| {
                            desk.send(Msg::Open(Box::new(order.clone()), name.clone()));
                            desk.to_the_top();
                        }
                    >
                        <span>
                            {title}
                            <small>{label}</small>
                            <small>{line}</small>
                        </span>
                    </button>
                </li>
            }
        })
        .collect_view();
    view! {
        <div class="stack">
            <p class="cap">{move || desk.label(Label::DemoNote)}</p>
            <button class="btn btn-wide" type="button" on:click=move |_| desk.send(Msg::Blank)>
                {move || desk.label(Label::NewOrder)}
            </button>
            <ol>{rows}</ol>
        </div>
    }
}
