//! What `cargo xtask bench` times and `cargo xtask peer` checks, apart from the tool: it links the product.

pub mod cases;
pub mod films;
pub mod journeys;
pub mod ours;
#[cfg(feature = "peers")]
pub mod peers;
pub mod rows;
