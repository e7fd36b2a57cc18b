//! A button that keeps the order in the form as a record, to be printed again.

use crate::desk::State;
use crate::desk::records::RecordsMsg;
use crate::web::desk::Desk;
use crate::wording::LibraryLabel;
use leptos::prelude::*;

/// The button, and whether the order is kept as it is.
pub fn keep_order(desk: Desk) -> impl IntoView {
    let kept = desk.memo(State::order_is_kept);
    view! {
        <div class="row blk">
            <button class="btn btn-tall" type="button" id="keep-order" on:click=move |_| desk.change_records(RecordsMsg::KeepOrder)>
                {move || desk.voice().word(LibraryLabel::KeepOrder)}
            </button>
            <span class="cap" role="status">
                {move || if kept.get() { desk.voice().word(LibraryLabel::OrderIsKept) } else { "" }}
            </span>
        </div>
    }
}
