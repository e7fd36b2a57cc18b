//! The screens: each shows the state and sends messages.
//!
//! In: the [`Desk`](crate::web::desk::Desk) handle, from which a view reads parts of the state.
//! Out: Leptos views and markup; what is done on them goes back as a `Msg`.
//! Must not know: storage, the solver, or how an answer is reached. Geometry comes from `desk::picture`, words from
//! `wording`. Each file or folder is named as its screen; `job` is the answer beside the order form.

mod answer;
mod diagnosis;
mod forecast;
mod frame;
mod job;
mod job_sheet;
mod library;
mod notice;
mod order_form;
mod perform;
mod print_room;
mod settings;
mod widgets;
mod window;

pub use frame::frame;
