//! Spanish, with usted.

mod label;
mod name;
mod phrase;
mod reason;
mod wrong;

pub(super) use label::label;
pub(super) use name::{
    advice, class, construction, dye_class, fibre, finish, opacity, past_limit, priority, role, sheen, topic,
    use_kind, verdict, verdict_short,
};
pub(super) use phrase::phrase;
pub(super) use reason::reason;
pub(super) use wrong::{problem, trouble};

/// Days of the week from Sunday, short.
pub(super) const DAYS: [&str; 7] = ["dom", "lun", "mar", "mié", "jue", "vie", "sáb"];
/// Months, short.
pub(super) const MONTHS: [&str; 12] =
    ["ene", "feb", "mar", "abr", "may", "jun", "jul", "ago", "sep", "oct", "nov", "dic"];
