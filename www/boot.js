// Starts the page: unpacks the wasm, draws the desk, and says in words when that cannot be.
// It stands behind the binding's own module, in one script. It makes no request and goes nowhere.

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

/** Reads base 116: seven letters stand for six bytes, and the last n + 1 letters for n. */
function bytes(text) {
  const value = new Uint8Array(128);
  let digits = 0;
  for (let code = 0; code < 128; code += 1) {
    if (!"\0\r\n<&>\t\v\f\x1a\x1b\x7f".includes(String.fromCharCode(code))) value[code] = digits++;
  }
  const read = new Uint8Array(Math.floor((text.length * 6) / 7));
  for (let from = 0, to = 0; from < text.length; from += 7, to += 6) {
    let number = 0;
    for (let place = from; place < from + 7; place += 1) {
      number = number * 116 + (place < text.length ? value[text.charCodeAt(place)] : 115);
    }
    // Shifts work on 32 bits only: the upper two bytes are divided off.
    const upper = Math.floor(number / 0x100000000);
    read[to] = upper >>> 8;
    read[to + 1] = upper;
    for (let place = 0; place < 4; place += 1) read[to + 2 + place] = number >>> (24 - 8 * place);
  }
  return read;
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

/** The smallest module that uses 128-bit vectors, as ours does: a browser that compiles it can compile ours. */
const SMALLEST = Uint8Array.of(0, 97, 115, 109, 1, 0, 0, 0, 1, 5, 1, 96, 0, 1, 123, 3, 2, 1, 0, 10, 10, 1, 8, 0, 65, 0, 253, 15, 253, 98, 11);

async function compile(reason, bytes) {
  try {
    return await WebAssembly.compile(bytes);
  } catch (cause) {
    throw new Refused(reason, cause);
  }
}

async function start() {
  needs("no-shadow", "attachShadow" in host && "adoptedStyleSheets" in document && "replaceSync" in CSSStyleSheet.prototype);
  needs("no-inflate", "DecompressionStream" in globalThis);
  needs("no-wasm", typeof WebAssembly === "object");
  document.adoptedStyleSheets = [sheet(document.getElementById("start-style").textContent)];
  await compile("no-wasm", SMALLEST);
  const styles = JSON.parse(new TextDecoder().decode(await unpack("styles")));
  const module = await compile("damaged", await unpack("core"));
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
