//! Names of what an order and a report hold: verdicts, topics, advice, fibres, finishes.

use super::Voice;
use super::language::in_language;
use crate::ink::WhiteClass;
use crate::plan::{
    Advice, DyeClass, Finish, Opacity, Priority, Role, Sheen, Topic, UnderPrint, UseKind, Verdict,
};
use crate::textile::{Construction, Fibre};

macro_rules! names {
    ($($(#[$doc:meta])* $name:ident: $kind:ty;)*) => {
        impl Voice {
            $($(#[$doc])*
            #[must_use]
            pub fn $name(self, what: $kind) -> &'static str {
                in_language!(self.language, name::$name(what))
            })*
        }
    };
}

names! {
    /// The verdict as the word on the plate.
    verdict: Verdict;
    /// The verdict as one word in a table.
    verdict_short: Verdict;
    /// What a margin is about, as a heading.
    topic: Topic;
    /// What happens past the limit, as a word on the picture.
    past_limit: Topic;
    /// A piece of advice.
    advice: Advice;
    /// A class of white.
    class: WhiteClass;
    /// A fibre.
    fibre: Fibre;
    /// A construction.
    construction: Construction;
    /// A kind of dye.
    dye_class: DyeClass;
    /// What matters most.
    priority: Priority;
    /// What the white is for.
    role: Role;
    /// How well the print must cover.
    opacity: Opacity;
    /// How the print is to shine.
    sheen: Sheen;
    /// What lies under the print.
    under_print: UnderPrint;
    /// What the garment is for.
    use_kind: UseKind;
    /// A finish.
    finish: Finish;
}
