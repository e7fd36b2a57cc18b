//! An answer is the same whatever was asked before it.
//!
//! Nothing outside the house can be asked here: what an answer is worth, other tests hold.

use whitehold::library::{self, harbour_lane, starter};
use whitehold::plan::{Priority, SimulationCache};

/// Every order of the week, one after another and then backwards, with other priorities between.
#[test]
fn what_was_asked_before_changes_no_answer() {
    let library = starter().expect("the starter library parses");
    let room = harbour_lane().expect("the demo print room parses");
    let mut memory = SimulationCache::default();
    let orders = room.orders.iter().chain(room.orders.iter().rev());
    for (turn, had) in orders.enumerate() {
        let mut order = had.order.clone();
        for priority in [order.print.priority, [Priority::Soft, Priority::Fast][turn % 2]] {
            order.print.priority = priority;
            let remembered = library::answer_with(&order, &library, &mut memory);
            let afresh = library::answer(&order, &library);
            assert_eq!(remembered, afresh, "{}, {priority:?}", had.id);
        }
    }
}
