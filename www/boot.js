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

/**
 * Reads letters: two bytes each, lower byte first, in blocks of 256 behind the key that masks them. The first letter says
 * whether the last byte is a filler.
 */
function bytes(text) {
  const read = new Uint8Array(2 * text.length);
  let to = 0;
  for (let from = 1; from < text.length; from += 257) {
    const key = text.charCodeAt(from) + 1;
    const end = Math.min(256, text.length - from - 1);
    for (let place = 0; place < end; place += 1) {
      const spread = Math.imul(key + 0x10000 * place, 0x9e3779b1);
      const mask = Math.imul(spread ^ (spread >>> 15), 0x85ebca6b) >>> 16;
      const unit = text.charCodeAt(from + 1 + place) ^ mask;
      read[to++] = unit;
      read[to++] = unit >> 8;
    }
  }
  return read.slice(0, Math.max(to - (text[0] === "1"), 0));
}

/** The letters of a block that never runs. */
function block(id) {
  return document.getElementById(id).textContent;
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

/** Bytes that are unpacked at a time: the browser compiles one piece beside the next. */
const PIECE = 1 << 16;

/**
 * What unpacks the other blocks. No browser unpacks LZMA by itself, and in script it took the longest part of a start: a
 * small wasm of its own does it, which stands in the file as it is.
 */
async function unpacker() {
  const { exports: its } = await WebAssembly.instantiate(await compile("damaged", bytes(block("unpack"))));
  const memory = new Uint8Array(its.memory.buffer);
  // Numbers come out of wasm with a sign; minus one says damaged.
  const told = (number) => {
    needs("damaged", number >= 0);
    return number;
  };
  let length = 0;
  let there = 0;
  /** Begins with a block and hands back how many bytes will come of it. */
  const begin = (id) => {
    const packed = bytes(block(id));
    memory.set(packed, its.packed());
    [length, there] = [told(its.begin(packed.length)), 0];
    return length;
  };
  /** Unpacks at least so many bytes of it, or all, and hands back how many are there. */
  const reach = (wanted) => {
    while (there < Math.min(wanted, length)) there = told(its.more(Math.min(wanted, length) - there));
    return there;
  };
  const part = (from, to) => memory.slice(its.out() + from, its.out() + to);
  return { begin, reach, part };
}

/** Compiles the core while it is unpacked; before it stands its binding, behind the number of bytes that it takes. */
async function core({ begin, reach, part }) {
  const length = begin("core");
  needs("damaged", reach(4) >= 4);
  const cut = 4 + new DataView(part(0, 4).buffer).getUint32(0);
  needs("damaged", reach(cut) >= cut);
  const text = new TextDecoder().decode(part(4, cut));
  let had = cut;
  const pieces = new ReadableStream({
    pull(to) {
      const there = reach(had + PIECE);
      to.enqueue(part(had, there));
      had = there;
      if (had === length) to.close();
    },
  });
  const wasm = new Response(pieces, { headers: { "content-type": "application/wasm" } });
  try {
    return { module: await WebAssembly.compileStreaming(wasm), text };
  } catch (cause) {
    throw new Refused("damaged", cause);
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
  performance.mark("begun");
  // The browser opens its own store for this page meanwhile; what is in it is asked later.
  globalThis.indexedDB?.databases?.().catch(() => {});
  needs("no-shadow", "attachShadow" in host && "adoptedStyleSheets" in document && "replaceSync" in CSSStyleSheet.prototype);
  needs("no-wasm", typeof WebAssembly === "object");
  document.adoptedStyleSheets = [sheet(block("start-style"))];
  await compile("no-wasm", SMALLEST);
  const packed = await unpacker();
  packed.begin("styles");
  const styles = JSON.parse(new TextDecoder().decode(packed.part(0, packed.reach(Infinity))));
  const { module, text } = await core(packed);
  performance.mark("compiled");
  const { initSync, mount } = await binding(text);
  initSync({ module });
  performance.mark("started");
  mount(host, { styles, standalone: true });
  performance.mark("drawn");
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
