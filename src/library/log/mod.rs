//! The shop's own knowledge: an append-only log of [`LogEntry`]s, and the records folded from it.
//!
//! An entry is one change: fields written, a record removed, an earlier entry undone. Only the set of
//! entries decides: in whatever order they arrive, the same set folds to the same records. Undo, history,
//! two tabs and the merge of two tablets are therefore one mechanism, and a merge is the union of two
//! sets.
//!
//! ```text
//! order     e before f        ⇔ (stamp, id) of e < (stamp, id) of f       a Lamport clock; no wall clock decides
//! seen      w saw v           ⇔ v is reached from w by following `over`
//! in force  e counts          ⇔ the last Undo or Redo of e, if any, is a Redo
//! field     its values        = what writes in force say, less those that a later write in force had seen
//! ```
//!
//! A field with one value is settled. Several values mean that tablets wrote it without seeing each
//! other's entry: the last in order is used, and all are kept for a person to choose from ([`Conflict`]).
//! A record is removed only if every latest write removes it.
//!
//! Source of the clock: Lamport, Commun. ACM 21 (1978) 558. Of the fields: multi-value registers, Shapiro
//! et al., "A comprehensive study of convergent and commutative replicated data types", INRIA RR-7506
//! (2011), section 3.2.
//!
//! The module reads no clock and draws no random number: the caller passes in the time, the tablet and
//! the opening of its page.
//!
//! **Decision:** texts are folded as they are read, entries in order are not sorted, a record written once is
//! read as it stands, the index is one sorted list, and another tab's entries are followed record by record.
//! **Because:** a large log opens quickly only if no work is done twice.
//! **Measured:** 220,000 entries open in under a second (by 2026-11-25, machine not recorded; `cargo xtask
//! bench --only storage` measures it).
//! **Reconsider when:** that bench takes longer than a second, or a shop's log is much larger.

mod difference;
mod edits;
mod entries;
mod entry;
mod fold;
mod index;
mod kind;
mod line;
mod merge;
mod recorded;
mod records;

pub(super) use difference::overlay;
pub use difference::{FieldDifference, differences, same};
pub use entries::Log;
pub use entry::{Change, Edit, Fields, LogEntry, Put, Remove, VERSION};
pub use fold::{Claim, Conflict, Record, Version};
pub use kind::{Key, Kind};
pub use line::{LineProblem, read_line};
pub use merge::MergePreview;
pub(super) use recorded::recorded;
pub use recorded::{Recorded, fields, fields_of};
