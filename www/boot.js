// Starts the page: unpacks the wasm, draws the desk, and says in words when that cannot be.
// It makes no request and goes nowhere. The binding between wasm and page is packed with the wasm: it runs as a script of
// its own, which the policy lets in by its hash.

const host = document.querySelector("whitehold-desk");

/** The reasons for which the page may not start; each has a section of that name in index.html. */
class Refused extends Error {
  constructor(reason, cause) {
    super(cause ? String(cause) : reason);
    this.reason = reason;
  }
}

/** Puts the words for a reason in the desk's place. The first reason stays: later ones follow from it. */
function explain(reason, said) {
  if (!host.isConnected) return;
  host.remove();
  document.getElementById(reason).hidden = false;
  document.getElementById("promise").hidden = false;
  const line = document.getElementById("said");
  line.firstElementChild.textContent = said;
  line.hidden = false;
}

/** A constructed style sheet: the policy forbids every other kind. */
function sheet(text) {
  const made = new CSSStyleSheet();
  made.replaceSync(text);
  return made;
}

function needs(reason, holds) {
  if (!holds) throw new Refused(reason);
}

function unpacker() {
  try {
    return new DecompressionStream("deflate-raw");
  } catch (cause) {
    throw new Refused("no-inflate", cause);
  }
}

/** Reads letters: two bytes each, lower byte first; behind an escape the highest bit is flipped. The first letter says whether the last byte is a filler. */
function bytes(text) {
  const read = new Uint8Array(2 * text.length);
  let to = 0;
  for (let from = 1; from < text.length; from += 1) {
    let unit = text.charCodeAt(from);
    if (unit === 0xe000) unit = text.charCodeAt((from += 1)) ^ 0x8000;
    read[to++] = unit;
    read[to++] = unit >> 8;
  }
  return read.slice(0, Math.max(to - (text[0] === "1"), 0));
}

/** What a packed block holds. */
async function unpack(id) {
  const text = document.getElementById(id).textContent;
  const stream = unpacker();
  try {
    return await new Response(new Blob([bytes(text)]).stream().pipeThrough(stream)).arrayBuffer();
  } catch (cause) {
    throw new Refused("damaged", cause);
  }
}

/**
 * Unpacks LZMA (lc 4, lp 0, pb 0; Pavlov's specification of 2015) behind eight bytes: how many bytes were packed, and
 * their FNV-1a hash. No browser unpacks it by itself, and it is a quarter shorter than what browsers unpack.
 */
function lzma(packed) {
  const head = new DataView(packed.buffer);
  const out = new Uint8Array(head.getUint32(0));
  // One table of chances, part after part: the literals, then what tells matches, their lengths and distances.
  const chance = new Uint16Array(13568).fill(1024);
  const [MATCH, REP, REP0, REP1, REP2, LONG] = [12288, 12300, 12312, 12324, 12336, 12348];
  const [SLOT, SPECIAL, ALIGN, LENGTH, REP_LENGTH] = [12360, 12616, 12731, 12747, 13021];
  let at = 13;
  let range = 0xffffffff;
  let code = head.getUint32(9);
  const shift = () => {
    if (range < 0x1000000) {
      range = (range << 8) >>> 0;
      code = ((code << 8) | packed[at++]) >>> 0;
    }
  };
  const bit = (place) => {
    const one = chance[place];
    const bound = (range >>> 11) * one;
    if (code < bound) {
      range = bound;
      chance[place] = one + ((2048 - one) >> 5);
      shift();
      return 0;
    }
    range -= bound;
    code -= bound;
    chance[place] = one - (one >> 5);
    shift();
    return 1;
  };
  const tree = (from, bits) => {
    let node = 1;
    for (let n = 0; n < bits; n += 1) node = (node << 1) | bit(from + node);
    return node - (1 << bits);
  };
  const backwards = (from, bits) => {
    let [node, sum] = [1, 0];
    for (let n = 0; n < bits; n += 1) {
      const one = bit(from + node);
      node = (node << 1) | one;
      sum |= one << n;
    }
    return sum;
  };
  const length = (from) => {
    if (!bit(from)) return tree(from + 2, 3);
    return bit(from + 1) ? 16 + tree(from + 18, 8) : 8 + tree(from + 10, 3);
  };
  let [state, to, hash] = [0, 0, 0x811c9dc5];
  let [near, near1, near2, near3] = [0, 0, 0, 0];
  while (to < out.length && at <= packed.length + 4) {
    if (!bit(MATCH + state)) {
      const from = 0x300 * ((to ? out[to - 1] : 0) >> 4);
      let letter = 1;
      if (state >= 7) {
        let like = out[to - near - 1];
        while (letter < 256) {
          const expected = (like >> 7) & 1;
          like <<= 1;
          const one = bit(from + ((1 + expected) << 8) + letter);
          letter = (letter << 1) | one;
          if (one !== expected) break;
        }
      }
      while (letter < 256) letter = (letter << 1) | bit(from + letter);
      out[to++] = letter;
      state = state < 4 ? 0 : state < 10 ? state - 3 : state - 6;
      continue;
    }
    let count;
    if (bit(REP + state)) {
      if (bit(REP0 + state)) {
        let distance = near1;
        if (bit(REP1 + state)) {
          distance = near2;
          if (bit(REP2 + state)) [distance, near3] = [near3, near2];
          near2 = near1;
        }
        [near1, near] = [near, distance];
      } else if (!bit(LONG + state)) {
        state = state < 7 ? 9 : 11;
        out[to] = out[to - near - 1];
        to += 1;
        continue;
      }
      count = length(REP_LENGTH);
      state = state < 7 ? 8 : 11;
    } else {
      [near3, near2, near1] = [near2, near1, near];
      count = length(LENGTH);
      state = state < 7 ? 7 : 10;
      const slot = tree(SLOT + 64 * Math.min(count, 3), 6);
      near = slot;
      if (slot > 3) {
        const bits = (slot >> 1) - 1;
        near = (2 | (slot & 1)) << bits;
        if (slot < 14) {
          near += backwards(SPECIAL + near - slot, bits);
        } else {
          for (let n = bits - 1; n > 3; n -= 1) {
            range >>>= 1;
            if (code >= range) {
              code -= range;
              near += 2 ** n;
            }
            shift();
          }
          near += backwards(ALIGN, 4);
        }
      }
    }
    for (count += 2; count > 0 && to < out.length; count -= 1, to += 1) out[to] = out[to - near - 1];
  }
  for (const byte of out) hash = Math.imul(hash ^ byte, 0x01000193);
  if (hash >>> 0 !== head.getUint32(4)) throw new Refused("damaged");
  return out;
}

/** The smallest module that uses 128-bit vectors, as ours does: a browser that compiles it can compile ours. */
const SMALLEST = Uint8Array.of(0, 97, 115, 109, 1, 0, 0, 0, 1, 5, 1, 96, 0, 1, 123, 3, 2, 1, 0, 10, 10, 1, 8, 0, 65, 0, 253, 15, 253, 98, 11);

async function compile(reason, bytes) {
  try {
    return await WebAssembly.compile(bytes);
  } catch (cause) {
    throw new Refused(reason, cause);
  }
}

/** Runs the binding, which hands itself over at its end. */
function binding(text) {
  return new Promise((bound, refused) => {
    host.bound = bound;
    const script = document.createElement("script");
    script.type = "module";
    script.onerror = refused;
    script.textContent = text;
    document.head.append(script);
  });
}

async function start() {
  needs("no-shadow", "attachShadow" in host && "adoptedStyleSheets" in document && "replaceSync" in CSSStyleSheet.prototype);
  needs("no-inflate", "DecompressionStream" in globalThis);
  needs("no-wasm", typeof WebAssembly === "object");
  document.adoptedStyleSheets = [sheet(document.getElementById("start-style").textContent)];
  await compile("no-wasm", SMALLEST);
  const styles = JSON.parse(new TextDecoder().decode(await unpack("styles")));
  const core = lzma(bytes(document.getElementById("core").textContent));
  const cut = 4 + new DataView(core.buffer).getUint32(0);
  const module = await compile("damaged", core.subarray(cut));
  const { initSync, mount } = await binding(new TextDecoder().decode(core.subarray(4, cut)));
  initSync({ module });
  mount(host, { styles, standalone: true });
}

/** Whether an error is a trap of the wasm, after which it is dead. */
function isTrap(error) {
  return typeof WebAssembly === "object" && error instanceof WebAssembly.RuntimeError;
}

// The page's own panic hook says what happened; a bare trap (the stack ran out) comes as an error of the engine.
addEventListener("whitehold-failed", (event) => explain("broken", event.detail));
addEventListener("error", (event) => {
  if (isTrap(event.error)) explain("broken", event.message);
});
addEventListener("unhandledrejection", (event) => {
  if (isTrap(event.reason)) explain("broken", String(event.reason));
});

start().catch((error) => explain(error.reason ?? "broken", String(error)));
