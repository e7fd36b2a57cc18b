//! LZMA (lc 4, lp 0, pb 0), after Pavlov's specification of 2015.
//!
//! A range coder decodes each bit with an adaptive probability. The bits describe either a literal byte, in the context
//! of the upper four bits of the byte before and, after a match, of the byte that would have continued it; or a match,
//! which repeats earlier bytes at a new distance or at one of the last four.
//!
//! Eight bytes precede the stream: the unpacked length and the FNV-1a hash of the unpacked bytes (32 bits, Fowler, Noll
//! and Vo), both with the most significant byte first.

/// The stream is cut short or damaged.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Damaged;

/// Where each kind of probability begins in the table: first the literals, sixteen contexts of 0x300, then those of
/// matches, their lengths and distances.
const MATCH: usize = 12_288;
const REP: usize = MATCH + 12;
const REP0: usize = REP + 12;
const REP1: usize = REP0 + 12;
const REP2: usize = REP1 + 12;
const LONG: usize = REP2 + 12;
const SLOT: usize = LONG + 12;
const SPECIAL: usize = SLOT + 4 * 64;
const ALIGN: usize = SPECIAL + 115;
const LENGTH: usize = ALIGN + 16;
const REP_LENGTH: usize = LENGTH + 274;
/// Length of the table: a power of two, so that a masked index needs no bounds check.
const PLACES: usize = 1 << 14;
const _: () = assert!(REP_LENGTH + 274 <= PLACES);

/// A stream that is being unpacked.
#[derive(Clone, Debug)]
pub struct Unpacker {
    chance: [u16; PLACES],
    coder: Coder,
    state: usize,
    /// The last four distances minus one, the latest first.
    near: [u32; 4],
    to: usize,
    length: usize,
    /// Hash of the bytes unpacked so far, and of all bytes as the head gives it.
    hash: [u32; 2],
}

/// State of the range coder, and how far the packed bytes are read.
#[derive(Clone, Copy, Debug)]
struct Coder {
    range: u32,
    code: u32,
    at: usize,
}

impl Coder {
    #[inline(always)]
    fn shift(&mut self, packed: &[u8]) {
        if self.range < 1 << 24 {
            self.range <<= 8;
            // Beyond the end zeros are read; `more` checks after each piece that not too many were.
            let next = packed.get(self.at).copied().unwrap_or(0);
            self.code = (self.code << 8) | u32::from(next);
            self.at += 1;
        }
    }

    #[inline(always)]
    fn bit(&mut self, packed: &[u8], chance: &mut [u16; PLACES], place: usize) -> usize {
        // No branch on the bit, because it cannot be predicted: `all` is 0 for bit 0, and all ones for bit 1.
        let chance = &mut chance[place & (PLACES - 1)];
        let bound = (self.range >> 11) * u32::from(*chance);
        let bit = u32::from(self.code >= bound);
        let all = bit.wrapping_neg();
        self.range = bound.wrapping_add(self.range.wrapping_sub(bound << 1) & all);
        self.code = self.code.wrapping_sub(bound & all);
        // The probability moves by a 32nd towards 2048 after a 0; after a 1 towards 31, which in integers is 0.
        let to = 2048 - (2017 & all as i32);
        *chance = (i32::from(*chance) + ((to - i32::from(*chance)) >> 5)) as u16;
        self.shift(packed);
        bit as usize
    }

    #[inline(always)]
    fn tree(&mut self, packed: &[u8], chance: &mut [u16; PLACES], from: usize, bits: u32) -> usize {
        let mut node = 1;
        for _ in 0..bits {
            node = (node << 1) | self.bit(packed, chance, from + node);
        }
        node - (1 << bits)
    }

    #[inline(always)]
    fn backwards(&mut self, packed: &[u8], chance: &mut [u16; PLACES], from: usize, bits: u32) -> u32 {
        let (mut node, mut sum) = (1, 0);
        for place in 0..bits {
            let bit = self.bit(packed, chance, from + node);
            node = (node << 1) | bit;
            sum |= (bit as u32) << place;
        }
        sum
    }

    #[inline(never)]
    fn length(&mut self, packed: &[u8], chance: &mut [u16; PLACES], from: usize) -> usize {
        if self.bit(packed, chance, from) == 0 {
            self.tree(packed, chance, from + 2, 3)
        } else if self.bit(packed, chance, from + 1) == 0 {
            8 + self.tree(packed, chance, from + 10, 3)
        } else {
            16 + self.tree(packed, chance, from + 18, 8)
        }
    }

    #[inline(never)]
    fn distance(&mut self, packed: &[u8], chance: &mut [u16; PLACES], count: usize) -> u32 {
        let slot = self.tree(packed, chance, SLOT + 64 * count.min(3), 6);
        if slot < 4 {
            return slot as u32;
        }
        let bits = (slot as u32 >> 1) - 1;
        let mut distance = (2 | (slot as u32 & 1)) << bits;
        if slot < 14 {
            let from = SPECIAL + distance as usize - slot;
            return distance + self.backwards(packed, chance, from, bits);
        }
        for place in (4..bits).rev() {
            self.range >>= 1;
            if self.code >= self.range {
                self.code -= self.range;
                distance = distance.wrapping_add(1 << place);
            }
            self.shift(packed);
        }
        distance.wrapping_add(self.backwards(packed, chance, ALIGN, 4))
    }
}

impl Unpacker {
    /// Before any stream.
    pub const IDLE: Self = Self {
        chance: [0; PLACES],
        coder: Coder { range: 0, code: 0, at: 0 },
        state: 0,
        near: [0; 4],
        to: 0,
        length: 0,
        hash: [0; 2],
    };

    /// Begins a packed stream; returns its unpacked length.
    ///
    /// # Errors
    /// [`Damaged`] if it is shorter than its head.
    pub fn begin(&mut self, packed: &[u8]) -> Result<usize, Damaged> {
        let word = |at: usize| {
            let word = packed.get(at..at + 4).and_then(|word| word.try_into().ok());
            word.map(u32::from_be_bytes).ok_or(Damaged)
        };
        // The first byte of an LZMA stream is always 0.
        let coder = Coder { range: u32::MAX, code: word(9)?, at: 13 };
        let (length, hash) = (word(0)? as usize, [0x811c_9dc5, word(4)?]);
        self.chance = [1024; PLACES];
        (self.coder, self.state, self.near, self.to) = (coder, 0, [0; 4], 0);
        (self.length, self.hash) = (length, hash);
        Ok(length)
    }

    /// Unpacks `bytes` more into `out`, which must hold all earlier ones; returns how many are unpacked by now. All are
    /// when that is the length that [`begin`](Self::begin) returned; then their hash has been checked.
    ///
    /// # Errors
    /// [`Damaged`] if the stream is cut short, a match reaches before the start, or the hash differs.
    pub fn more(&mut self, packed: &[u8], out: &mut [u8], bytes: usize) -> Result<usize, Damaged> {
        let out = out.get_mut(..self.length).ok_or(Damaged)?;
        let until = self.length.min(self.to.saturating_add(bytes));
        let before = self.to;
        let (mut coder, mut state, mut to) = (self.coder, self.state, self.to);
        let chance = &mut self.chance;
        while to < until {
            if coder.bit(packed, chance, MATCH + state) == 0 {
                let letter =
                    literal(&mut coder, packed, chance, out, to, (state >= 7).then_some(self.near[0]));
                *out.get_mut(to).ok_or(Damaged)? = letter;
                to += 1;
                state = if state < 4 {
                    0
                } else if state < 10 {
                    state - 3
                } else {
                    state - 6
                };
                continue;
            }
            let count;
            if coder.bit(packed, chance, REP + state) == 0 {
                let found = coder.length(packed, chance, LENGTH);
                let distance = coder.distance(packed, chance, found);
                self.near = [distance, self.near[0], self.near[1], self.near[2]];
                state = if state < 7 { 7 } else { 10 };
                count = found + 2;
            } else {
                let which = if coder.bit(packed, chance, REP0 + state) == 0 {
                    0
                } else if coder.bit(packed, chance, REP1 + state) == 0 {
                    1
                } else {
                    2 + coder.bit(packed, chance, REP2 + state)
                };
                if which == 0 && coder.bit(packed, chance, LONG + state) == 0 {
                    state = if state < 7 { 9 } else { 11 };
                    count = 1;
                } else {
                    // This distance moves to the front of the four.
                    let distance = self.near[which & 3];
                    self.near.copy_within(0..which, 1);
                    self.near[0] = distance;
                    count = 2 + coder.length(packed, chance, REP_LENGTH);
                    state = if state < 7 { 8 } else { 11 };
                }
            }
            let back = (self.near[0] as usize).checked_add(1).ok_or(Damaged)?;
            let from = to.checked_sub(back).ok_or(Damaged)?;
            let end = (to + count).min(out.len());
            // Byte by byte, because a match may overlap what it writes; `from < to`, and `end` lies within `out`.
            for place in 0..end - to {
                out[to + place] = out[from + place];
            }
            to = end;
        }
        (self.coder, self.state, self.to) = (coder, state, to);
        let added = out.get(before..to).ok_or(Damaged)?;
        self.hash[0] =
            added.iter().fold(self.hash[0], |hash, byte| (hash ^ u32::from(*byte)).wrapping_mul(0x0100_0193));
        let whole = to < self.length || self.hash[0] == self.hash[1];
        // The coder reads up to five bytes ahead of what it has decoded.
        if self.coder.at <= packed.len() + 5 && whole { Ok(to) } else { Err(Damaged) }
    }
}

/// The next literal byte; `near` is the last distance minus one if a match came before it.
#[inline(always)]
fn literal(
    coder: &mut Coder,
    packed: &[u8],
    chance: &mut [u16; PLACES],
    out: &[u8],
    to: usize,
    near: Option<u32>,
) -> u8 {
    let seen = |back: usize| to.checked_sub(back).and_then(|at| out.get(at)).map_or(0, |it| usize::from(*it));
    let from = 0x300 * (seen(1) >> 4);
    let mut letter = 1;
    if let Some(near) = near {
        // As long as its bits equal those of the byte that would continue the match, that byte is the context.
        let mut like = seen((near as usize).saturating_add(1));
        while letter < 256 {
            let expected = (like >> 7) & 1;
            like <<= 1;
            let bit = coder.bit(packed, chance, from + ((1 + expected) << 8) + letter);
            letter = (letter << 1) | bit;
            if bit != expected {
                break;
            }
        }
    }
    while letter < 256 {
        letter = (letter << 1) | coder.bit(packed, chance, from + letter);
    }
    letter as u8
}
