//! The Job screen: the answer first, the order form beside it, under the right hand.

use super::{answer, order_form};
use crate::web::desk::Desk;
use crate::wording::Label;
use leptos::prelude::*;

/// The screen.
pub fn job(desk: Desk) -> impl IntoView {
    view! {
        <div class="job">
            {answer::answer(desk)}
            <section class="order" id="order" tabindex="-1" aria-label=move || desk.label(Label::Order)>
                {order_form::order_form(desk)}
            </section>
        </div>
    }
}
