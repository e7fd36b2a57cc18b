//! The functions that the page calls, with two static buffers in the wasm's memory.
#![allow(unsafe_code, reason = "names for JS and buffers that JS writes: one thread, no other reference")]

use crate::Unpacker;

/// Largest packed length, bytes; the single-file page may have 900,000 at most.
const PACKED: usize = 1 << 20;
/// Largest unpacked length, bytes.
const OUT: usize = 1 << 22;
/// Returned if the stream is damaged.
const DAMAGED: u32 = u32::MAX;

struct Page {
    packed: [u8; PACKED],
    length: usize,
    out: [u8; OUT],
    unpacker: Unpacker,
}

static mut PAGE: Page = Page { packed: [0; PACKED], length: 0, out: [0; OUT], unpacker: Unpacker::IDLE };

/// The static state. Each export takes the reference once and calls no other export, so there are never two.
fn page() -> &'static mut Page {
    // SAFETY: wasm without threads; see above. JS writes into `packed` between two calls only.
    unsafe { &mut *&raw mut PAGE }
}

/// Address at which JS writes the packed bytes.
#[unsafe(no_mangle)]
pub extern "C" fn packed() -> *const u8 {
    page().packed.as_ptr()
}

/// Address at which JS reads the unpacked bytes.
#[unsafe(no_mangle)]
pub extern "C" fn out() -> *const u8 {
    page().out.as_ptr()
}

/// Begins a stream of `written` packed bytes; returns its unpacked length.
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

/// Unpacks `bytes` more; returns how many are unpacked by now.
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
