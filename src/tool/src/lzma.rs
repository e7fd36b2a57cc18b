//! The wasm packed as LZMA: a quarter shorter than the best deflate, at the cost of an unpacker of our own in
//! `www/boot.js`, since no browser brings one.
//!
//! Before the raw stream stand eight bytes: how many bytes were packed, and their FNV-1a hash (32 bits, Fowler, Noll
//! and Vo), both big-endian. The literal context is four bits; neither positions of literals nor of matches count.

use anyhow::Result;
use lzma_rust2::{LzmaOptions, LzmaWriter};
use std::io::Write;

fn options() -> LzmaOptions {
    let mut options = LzmaOptions::with_preset(9);
    options.lc = 4;
    options.lp = 0;
    options.pb = 0;
    options.nice_len = LzmaOptions::NICE_LEN_MAX;
    options.dict_size = 1 << 22;
    options
}

/// Packs bytes.
///
/// # Errors
/// When they are more than four gigabytes.
pub fn pack(bytes: &[u8]) -> Result<Vec<u8>> {
    let mut packed = u32::try_from(bytes.len())?.to_be_bytes().to_vec();
    packed.extend(hash(bytes).to_be_bytes());
    let mut writer = LzmaWriter::new_no_header(packed, &options(), false)?;
    writer.write_all(bytes)?;
    Ok(writer.finish()?)
}

/// FNV-1a over 32 bits.
fn hash(bytes: &[u8]) -> u32 {
    bytes.iter().fold(0x811c_9dc5, |hash, byte| (hash ^ u32::from(*byte)).wrapping_mul(0x0100_0193))
}

#[cfg(test)]
mod tests {
    use super::*;
    use lzma_rust2::LzmaReader;
    use std::io::Read;

    /// Source: the test vectors of the FNV authors, `fnv-1a` over 32 bits: "", "a", "foobar".
    #[test]
    fn the_hash_is_the_published_one() {
        for (text, value) in [("", 0x811c_9dc5), ("a", 0xe40c_292c), ("foobar", 0xbf9c_f968)] {
            assert_eq!(hash(text.as_bytes()), value, "{text}");
        }
    }

    /// The peer is the crate's own reader; the page's reader is told by every story that opens it.
    #[test]
    fn packed_bytes_come_back() -> Result<()> {
        let bytes: Vec<u8> = (0..40_000_u32).map(|at| (at * at / 7 % 61) as u8).collect();
        let packed = pack(&bytes)?;
        let length = bytes.len() as u64;
        let mut back = Vec::new();
        LzmaReader::new(&packed[8..], length, 4, 0, 0, 1 << 22, None)?.read_to_end(&mut back)?;
        assert_eq!(back, bytes);
        Ok(())
    }
}
