//! An answer is the same whatever was asked before it.
//!
//! Nothing outside the house can be asked here: what an answer is worth, other tests hold.

use super::common::{answered, demo_orders, library};
use whitehold::library::answer_with;
use whitehold::plan::{Priority, SimulationCache};

/// Every order of the week, one after another and then backwards, with other priorities between.
#[test]
fn what_was_asked_before_changes_no_answer() {
    let mut memory = SimulationCache::default();
    let orders = demo_orders().iter().chain(demo_orders().iter().rev());
    for (turn, (id, order)) in orders.enumerate() {
        let mut order = order.clone();
        for priority in [order.print.priority, [Priority::Soft, Priority::Fast][turn % 2]] {
            order.print.priority = priority;
            let remembered = answer_with(&order, library(), &mut memory);
            assert_eq!(remembered.as_ref(), Ok(&answered(&order)), "{id}, {priority:?}");
        }
    }
}
