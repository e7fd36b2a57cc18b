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

async function unpack(text) {
  const stream = unpacker();
  try {
    const packed = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
    return await new Response(new Blob([packed]).stream().pipeThrough(stream)).arrayBuffer();
  } catch (cause) {
    throw new Refused("damaged", cause);
  }
}

async function compile(bytes) {
  try {
    return await WebAssembly.compile(bytes);
  } catch (cause) {
    throw new Refused("no-wasm", cause);
  }
}

async function start() {
  needs("no-shadow", "attachShadow" in host && "adoptedStyleSheets" in document && "replaceSync" in CSSStyleSheet.prototype);
  needs("no-inflate", "DecompressionStream" in globalThis);
  needs("no-wasm", typeof WebAssembly === "object");
  document.adoptedStyleSheets = [sheet(document.getElementById("style-page").textContent)];
  const module = await compile(await unpack(document.getElementById("core").textContent));
  initSync({ module });
  const styles = Array.from(document.querySelectorAll("script.style:not(#style-page)"), (block) => block.textContent);
  mount(host, { styles, standalone: true });
}

// After a panic the wasm is dead and every later call into it fails. The page's own hook says what happened; a bare
// trap (the stack ran out) comes as an error of the engine.
addEventListener("whitehold-failed", (event) => explain("broken", event.detail));
addEventListener("error", (event) => {
  if (event.error instanceof WebAssembly.RuntimeError) explain("broken", event.message);
});
addEventListener("unhandledrejection", (event) => {
  if (event.reason instanceof WebAssembly.RuntimeError) explain("broken", String(event.reason));
});

start().catch((error) => explain(error.reason ?? "broken", String(error)));
