//! How long a big shop waits for its library: 20,000 cloths and 200,000 trial readings, in the release wasm, in a
//! browser, through the same state, messages and store as the page.
//!
//! Not run among the tests; `cargo xtask bench --only storage` runs it and writes the rows to `dist/bench.json`. Where
//! there is a peer it is the same bytes through the browser's own calls in plain JS, which is the least that any store
//! over that database can take.

use js_sys::{Array, Promise, Uint8Array};
use std::sync::Arc;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use wasm_bindgen_test::{console_log, wasm_bindgen_test};
use whitehold::desk::records::{Clock, RecordGroup, RecordsMsg};
use whitehold::desk::{Draft, Effect, Msg, State, update};
use whitehold::library::log::{Change, Key, Kind, Log};
use whitehold::library::storage_layout::{Contents, Line};
use whitehold::library::{Library, file, starter};
use whitehold::plan::Order;
use whitehold::web::store::{OpenedStore, Store};
use whitehold::wording::{Language, Voice};

const FABRICS: usize = 20_000;
const READINGS: usize = 200_000;
const SAVES: usize = 300;
const OPENINGS: usize = 5;
const NAME: &str = "bench";

/// What a person types into the search, letter by letter; the last two are misspelt or found nowhere.
const ASKED: [&str; 6] =
    ["red interlock", "quay 77", "cotton fleece navy", "heather", "royl jersy", "nothing of the kind"];

async fn js(body: &str, given: &JsValue) -> JsValue {
    let run: js_sys::Function =
        js_sys::eval(&format!("(async (given) => {{ {PEER} {body} }})")).unwrap().unchecked_into();
    let promise: Promise = run.call1(&JsValue::NULL, given).unwrap().unchecked_into();
    JsFuture::from(promise).await.unwrap()
}

/// Milliseconds since the page opened.
fn now() -> f64 {
    js_sys::eval("performance.now()").unwrap().as_f64().unwrap()
}

/// The value at a share of sorted times.
fn at(times: &mut [f64], share: f64) -> f64 {
    times.sort_by(f64::total_cmp);
    times[((times.len() - 1) as f64 * share).round() as usize]
}

/// A row, with what was asked for and what the peer took.
fn told(name: &str, ours: f64, unit: &str, within: f64, peer: Option<(f64, &str)>) {
    let peer = peer.map_or_else(String::new, |(peer, name)| {
        format!(",\"peer\":{peer:.2},\"ratio\":{:.3},\"peer_name\":\"{name}\"", peer / ours)
    });
    console_log!(
        "{{\"name\":\"storage: {name}\",\"ours\":{ours:.2},\"unit\":\"{unit}\",\
         \"accuracy\":\"asked for: within {within} {unit}\"{peer}}}"
    );
}

/// MB of the wasm's memory, which never shrinks, and of the page's JS.
fn memory() -> [f64; 2] {
    let memory: js_sys::WebAssembly::Memory = wasm_bindgen::memory().unchecked_into();
    let wasm = js_sys::Reflect::get(&memory.buffer(), &"byteLength".into()).unwrap().as_f64().unwrap();
    let js = js_sys::eval("performance.memory?.usedJSHeapSize ?? 0").unwrap().as_f64().unwrap();
    [wasm / 1e6, js / 1e6]
}

/// The page's state, as the desk holds it.
struct Tablet {
    state: State,
}

impl Tablet {
    fn opens(ships: &Arc<Library>, session: &str, contents: Contents) -> Self {
        let draft = Draft::of(&Order::default(), "", Voice::default());
        let mut tablet = Self { state: State::new(draft) };
        let (ships, tablet_name) = (Arc::clone(ships), "bench".to_owned());
        tablet.does(RecordsMsg::Opened { ships, tablet: tablet_name, session: session.into(), contents });
        tablet
    }

    /// Lines to store.
    fn does(&mut self, msg: RecordsMsg) -> Vec<Line> {
        let clock = Clock { now: 1_795_000_000_000, ahead: 60 };
        let (state, effects) = update(std::mem::take(&mut self.state), Msg::Records(clock, msg));
        self.state = state;
        let lines = effects.into_iter().filter_map(|effect| match effect {
            Effect::AppendLog(lines) => Some(lines),
            _ => None,
        });
        lines.flatten().collect()
    }
}

/// One line for every cloth that ships and one of a reading, with signs where the numbers belong. Made as the page
/// makes them, so that they are as long as real ones.
fn patterns(ships: &Library) -> JsValue {
    let colours = ["red", "maroon", "royal", "navy", "black", "heather grey", "kelly", "orange"];
    let makers = ["quay", "harbour", "skerry", "lantern", "breakwater", "capstan", "halyard", "mizzen"];
    let mut log = Log::new("bench", "0");
    let patterns = Array::new();
    let put = |log: &mut Log, edit| {
        let entry = log.append(1_795_000_000_000, Change::Edit { edits: vec![edit], from: None });
        let line = entry.line();
        let line = line.replace(&format!("\"id\":\"{}\"", entry.id), "\"id\":\"bench.0.@e\"");
        let line = line.replace(&format!("\"stamp\":{}", entry.stamp), "\"stamp\":@s");
        patterns.push(&line.into());
    };
    for (number, fabric) in ships.fabrics.iter().enumerate() {
        let mut record = fabric.clone();
        let (colour, maker) = (colours[number % colours.len()], makers[number / 3 % makers.len()]);
        record.name = format!("{colour} {}, {maker} @n", record.name);
        let edit = log.keep(&format!("cloth-{}-@n", record.id), &record).unwrap();
        put(&mut log, edit);
    }
    let reading = serde_json::json!({ "days": 30, "pieces": 3, "turned": 1, "delta_e": 1.2, "note": "" });
    let edit = log.write(Kind::Reading, "t@t/r@r", reading.as_object().unwrap());
    put(&mut log, edit);
    patterns.into()
}

/// Writes the patterns out, lays the lines in the database that the store made, and hands back what that took.
const LAY: &str = "
    const reading = given.pop();
    const lines = [];
    for (let n = 0; n < 20000; n += 1) lines.push(given[n % given.length].replaceAll('@n', n));
    for (let n = 0; n < 200000; n += 1)
        lines.push(reading.replace('@t', Math.floor(n / 8)).replace('@r', n % 8));
    const texts = [];
    for (let at = 0; at < lines.length; at += 1000)
        texts.push(lines.slice(at, at + 1000).map((line, n) =>
            line.replace('@e', String(at + n).padStart(6, '0')).replace('@s', at + n + 1) + '\\n').join(''));
    const db = await done(indexedDB.open('bench'));
    const start = performance.now();
    const work = strict(db);
    texts.forEach((text) => work.objectStore('segments').add(text));
    await over(work);
    const took = performance.now() - start;
    db.close();
    return [took, texts.reduce((sum, text) => sum + text.length, 0) / 1e6];";

/// Reads everything that was laid and parts its lines.
const READ: &str = "
    const took = [];
    for (let turn = 0; turn < 5; turn += 1) {
        const start = performance.now();
        const db = await done(indexedDB.open('bench'));
        const all = await done(db.transaction('segments').objectStore('segments').getAll());
        if (all.flatMap((text) => text.split('\\n')).length < 220000) throw Error('too few');
        took.push(performance.now() - start);
        db.close();
    }
    return took;";

/// Adds one row at a time to a database of its own.
const SAVE: &str = "
    const request = indexedDB.open('peer', 1);
    request.onupgradeneeded = () => ['journal', 'segments'].forEach((name) =>
        request.result.createObjectStore(name, { autoIncrement: true }));
    const db = await done(request);
    const took = [];
    for (let turn = 0; turn < 300; turn += 1) {
        const start = performance.now();
        const work = strict(db);
        work.objectStore('journal').add(['id', 'x'.repeat(250)]);
        work.commit();
        await over(work);
        took.push(performance.now() - start);
    }
    return took;";

/// What the scripts share.
const PEER: &str = "
    const done = (request) => new Promise((yes, no) => {
        request.onsuccess = () => yes(request.result); request.onerror = () => no(request.error); });
    const over = (work) => new Promise((yes, no) => { work.oncomplete = yes; work.onabort = no; });
    const strict = (db) => db.transaction(['journal', 'segments'], 'readwrite', { durability: 'strict' });";

fn numbers(value: &JsValue) -> Vec<f64> {
    Array::from(value).iter().map(|it| it.as_f64().unwrap()).collect()
}

const PLAIN: &str = "plain JS over the same database";

#[wasm_bindgen_test]
#[ignore = "a bench"]
async fn a_whole_library_is_kept() {
    let ships = Arc::new(starter().unwrap());
    let OpenedStore { store, .. } = Store::open(NAME, |_| ()).await.unwrap();
    store.close();
    let laid = numbers(&js(LAY, &patterns(&ships)).await);
    console_log!("{} lines, {:.1} MB", FABRICS + READINGS, laid[1]);
    let [before, _] = memory();

    // From the call that opens the database to records that can be searched and orders that can be answered with them.
    let mut openings = Vec::new();
    let mut opened = None;
    for turn in 0..OPENINGS {
        drop(opened.take());
        let start = now();
        let OpenedStore { store, contents, .. } = Store::open(NAME, |_| ()).await.unwrap();
        let tablet = Tablet::opens(&ships, &turn.to_string(), contents);
        openings.push(now() - start);
        opened = Some((store, tablet));
    }
    let (store, mut tablet) = opened.unwrap();
    assert_eq!(tablet.state.records.log().len(), FABRICS + READINGS);
    assert_eq!(tablet.state.records.library().fabrics.len(), FABRICS + ships.fabrics.len());
    let [open, js_open] = memory();
    let mut peer = numbers(&js(READ, &JsValue::NULL).await);
    let peer = (at(&mut peer, 0.5), PLAIN);
    told("a library of 220,000 lines opens", at(&mut openings, 0.5), "ms", 1000.0, Some(peer));

    let mut searches = Vec::new();
    tablet.does(RecordsMsg::Group(RecordGroup::Fabrics));
    for asked in ASKED {
        for (end, letter) in asked.char_indices() {
            let text = asked[..end + letter.len_utf8()].to_owned();
            let start = now();
            tablet.does(RecordsMsg::Search(text));
            let hits = tablet.state.records.hits(Language::En);
            searches.push(now() - start);
            assert!(hits.len() <= 12);
        }
    }
    tablet.does(RecordsMsg::Search("quay 77".into()));
    assert!(tablet.state.records.found() > 0, "nothing is found");
    told("one letter more in the search, 95 of 100 within", at(&mut searches, 0.95), "ms", 16.7, None);
    told("one letter more in the search, the slowest", at(&mut searches, 1.0), "ms", 16.7, None);

    // A cloth is opened, its form filled in, and kept: the last tap until the disk has it.
    let id = format!("cloth-{}-77", ships.fabrics[77 % ships.fabrics.len()].id);
    let key = Key::new(Kind::Fabric, id);
    let mut saves = Vec::new();
    tablet.does(RecordsMsg::Open(key.clone()));
    for number in 0..SAVES {
        tablet.does(RecordsMsg::Edit(key.clone()));
        tablet.does(RecordsMsg::Type(1, format!("quay cloth, new name {number}")));
        let start = now();
        let lines = tablet.does(RecordsMsg::SaveForm);
        store.append(&lines).await.unwrap();
        saves.push(now() - start);
        assert_eq!(lines.len(), 1, "{:?}", tablet.state.records.form());
    }
    let mut peer = numbers(&js(SAVE, &JsValue::NULL).await);
    for (name, share) in [("half of them", 0.5), ("95 of 100", 0.95)] {
        let peer = (at(&mut peer, share), PLAIN);
        told(&format!("one save, {name} within"), at(&mut saves, share), "ms", 20.0, Some(peer));
    }
    told("memory of the wasm, open and used", open, "MB", 200.0, None);
    console_log!(
        "    {before:.0} MB before; {js_open:.0} MB of JS, rubbish included, after {OPENINGS} openings"
    );

    let start = now();
    let text = file::write(tablet.state.records.log(), 0);
    let blob = web_sys::Blob::new_with_str_sequence(&Array::of1(&text.as_str().into())).unwrap();
    told("the whole library written as a file", now() - start, "ms", 3000.0, None);
    drop((text, tablet));
    store.close();

    let mut tablet = Tablet::opens(&ships, "import", Contents::default());
    let OpenedStore { store, .. } = Store::open("bench-import", |_| ()).await.unwrap();
    let start = now();
    let bytes = Uint8Array::new(&JsFuture::from(blob.array_buffer()).await.unwrap()).to_vec();
    tablet.does(RecordsMsg::FileChosen("whitehold-library.jsonl".into(), bytes));
    assert!(tablet.state.records.incoming().is_some(), "{:?}", tablet.state.records.refused());
    let previewed = now() - start;
    let lines = tablet.does(RecordsMsg::Import);
    store.append(&lines).await.unwrap();
    let peer = (laid[0], PLAIN);
    told("a whole library taken in from a file", now() - start, "ms", 3000.0, Some(peer));
    assert_eq!(lines.len(), FABRICS + READINGS + SAVES + 1);
    console_log!("    {previewed:.0} ms of it until the preview");
    told("memory of the wasm, after taking it in", memory()[0], "MB", 200.0, None);
}
