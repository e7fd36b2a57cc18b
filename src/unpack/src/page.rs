//! What the page calls, over two buffers that stand in the wasm's memory from the start.
#![allow(
    unsafe_code,
    reason = "names for JS and buffers that JS writes: one thread, and nobody else holds them"
)]

use crate::Unpacker;

/// Room for what is packed; the one file is not allowed to be longer than 900,000 bytes.
const PACKED: usize = 1 << 20;
/// Room for what comes of them.
const OUT: usize = 1 << 22;
/// Says that the block is damaged.
const DAMAGED: u32 = u32::MAX;

struct Page {
    packed: [u8; PACKED],
    length: usize,
    out: [u8; OUT],
    unpacker: Unpacker,
}

static mut PAGE: Page = Page { packed: [0; PACKED], length: 0, out: [0; OUT], unpacker: Unpacker::IDLE };

/// The one page. Each export takes it once, runs to its end and calls no other, so there are never two of it.
fn page() -> &'static mut Page {
    // SAFETY: wasm without threads; see above. JS writes into `packed` between two calls only.
    unsafe { &mut *&raw mut PAGE }
}

/// Where JS writes what is packed.
#[unsafe(no_mangle)]
pub extern "C" fn packed() -> *const u8 {
    page().packed.as_ptr()
}

/// Where JS finds what came of them.
#[unsafe(no_mangle)]
pub extern "C" fn out() -> *const u8 {
    page().out.as_ptr()
}

/// Begins with so many bytes that were written: how many will come of them.
#[unsafe(no_mangle)]
pub extern "C" fn begin(written: usize) -> u32 {
    let page = page();
    page.length = written;
    let Some(packed) = page.packed.get(..written) else { return DAMAGED };
    match page.unpacker.begin(packed) {
        Ok(length) if length <= OUT => length as u32,
        _ => DAMAGED,
    }
}

/// Unpacks some bytes more: how many stand there now.
#[unsafe(no_mangle)]
pub extern "C" fn more(bytes: usize) -> u32 {
    let page = page();
    let packed = page.packed.get(..page.length).unwrap_or_default();
    page.unpacker.more(packed, &mut page.out, bytes).map_or(DAMAGED, |there| there as u32)
}

#[panic_handler]
fn stop(_: &core::panic::PanicInfo<'_>) -> ! {
    core::arch::wasm32::unreachable()
}
