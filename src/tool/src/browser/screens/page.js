// What every script of the page objects can use: finding a part of the page, and doing in the page what a hand does, faster
// than a driver can. `desk` is the custom element, `root` what is drawn in it.
const desk = document.querySelector("whitehold-desk");
const root = desk?.shadowRoot;

// A part of the page is `{ css, words, place }`: what the selector finds whose name begins with the words, and the how
// manyeth of them; -1 is the last. It is looked for in the desk first, then in the page around it.
const named = (it) => (it.getAttribute("aria-label") ?? it.textContent).trim();
const every = ({ css, words }) => {
  const among = (tree) =>
    Array.from(tree?.querySelectorAll(css) ?? []).filter((it) => named(it).startsWith(words ?? ""));
  const found = among(desk?.shadowRoot);
  return found.length > 0 ? found : among(document);
};
const find = (part) => every(part).at(part.place ?? 0);
const all = (css) => Array.from(root.querySelectorAll(css));

// Parts below the fold are left out of the layout until they are scrolled to. `work` sees them laid out.
const LEFT_OUT = ".answer > *, .order > *";
const laidOut = (work) => {
  const parts = root ? all(LEFT_OUT) : [];
  for (const part of parts) part.style.contentVisibility = "visible";
  const value = work();
  for (const part of parts) part.style.contentVisibility = "";
  return value;
};

const write = (field, text) => {
  field.value = text;
  field.dispatchEvent(new InputEvent("input", { bubbles: true, composed: true }));
};
// Elements that the page itself never draws: only a text that was taken for markup can have made them.
const markup = () => all("img, main b b, script").length;
const isBusy = () => find(PARTS.answer).getAttribute("aria-busy") === "true";

// The next turn of the event loop: what is drawn after a tap is drawn when the tap's event is over, and only then the
// attributes speak of it.
const afterwards = () =>
  new Promise((then) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = then;
    port2.postMessage(null);
  });
const nextFrame = () => new Promise((then) => requestAnimationFrame(() => setTimeout(then)));
const answered = async () => {
  await nextFrame();
  while (isBusy()) await nextFrame();
};
const appears = async (part) => {
  while (!find(part)) await afterwards();
  return find(part);
};
const tap = async (part) => (await appears(part)).click();

// Whether everything that was written is on the disk.
const isSaved = () => root.querySelector(".desk").dataset.saved === "true";
const saved = async () => {
  await afterwards();
  if (isSaved()) return;
  await new Promise((then) => {
    const watch = new MutationObserver(() => {
      if (!isSaved()) return;
      watch.disconnect();
      then();
    });
    watch.observe(root.querySelector(".desk"), { attributes: true });
  });
};

// The order's name, the shortest thing to write that is saved.
const orderName = () => find(PARTS.orderName).value;
const nameOrder = (text) => write(find(PARTS.orderName), text);

// The Library.
const openRecord = async (name) => {
  const found = find({ ...PARTS.hit, words: name });
  if (!found) throw new Error(`the list has no ${name}`);
  found.click();
  await appears(PARTS.changeRecord);
};
const changeRecord = async (fields) => {
  await tap(PARTS.changeRecord);
  await appears(PARTS.form);
  for (const [label, text] of Object.entries(fields)) fillIn(label, text);
  await tap(PARTS.keepRecord);
};
const fillIn = (label, text) => {
  const found = all(`${PARTS.form.css} label`).find((it) => it.textContent.startsWith(label));
  if (!found) throw new Error(`the form has no ${label}`);
  const field = root.getElementById(found.htmlFor);
  write(field, text);
  return field.value;
};
const writeWhite = async (name, className) => {
  await tap(PARTS.newWhite);
  await appears(PARTS.form);
  fillIn("name", name);
  fillIn("class", className);
  await tap(PARTS.keepRecord);
};

// The browser's database, by its own calls and not by the page's store.
const done = (request) =>
  new Promise((yes, no) => {
    request.onsuccess = () => yes(request.result);
    request.onerror = () => no(request.error);
  });
const database = async (work) => {
  const open = await done(indexedDB.open("whitehold"));
  try {
    return await work(open);
  } finally {
    open.close();
  }
};
// Every row of the journal as the page stored it, oldest first, and the texts into which older rows were sealed.
const stored = () =>
  database(async (open) => {
    const work = open.transaction(["journal", "segments"]);
    const rows = await done(work.objectStore("journal").getAll());
    const texts = await done(work.objectStore("segments").getAll());
    return { rows, texts };
  });
// The entries among them, drafts left out: a row with a third part is a draft's slot.
const entries = ({ rows, texts }) =>
  texts
    .flatMap((text) => text.split("\n").filter(Boolean))
    .concat(rows.filter((row) => row[2] === undefined).map((row) => row[1]))
    .map((text) => JSON.parse(text));
