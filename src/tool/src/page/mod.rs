//! From source to `dist`: the wasm, the one file, the JS package and the site.
//!
//! In: the sources, and the compiler that [`toolchain`] finds. Out: `dist/whitehold.html`, `dist/pkg`, `dist/site`, and a web
//! server that hands the site out. It must not know how the page is tested or measured.
//!
//! [`build`] walks through the modules in this order: [`wasm`] compiles and binds, [`imports`] reads what the module may
//! call, [`one_file`] packs the page ([`lzma`], then [`utf16`]) under its [`policy`], [`package`] writes the JS package,
//! [`site`] what a web server hands out.

pub mod build;
pub mod imports;
pub mod lzma;
pub mod one_file;
pub mod package;
pub mod policy;
pub mod serve;
pub mod site;
pub mod toolchain;
pub mod utf16;
pub mod wasm;
