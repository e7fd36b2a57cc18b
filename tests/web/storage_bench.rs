//! How fast a whole library is kept: 20,000 fabrics and 200,000 readings, in the release wasm, in a browser.
//!
//! Not run among the tests; `cargo xtask bench --only storage` runs it. Each figure stands beside its peer: the same
//! bytes through the browser's own calls in plain JS, which is the least that any store over that database can take.

use js_sys::Promise;
use std::fmt::Write;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use wasm_bindgen_test::{console_log, wasm_bindgen_test};
use whitehold::library::shelf::{self, Contents, Line};
use whitehold::web::store::{Opened, Store};

const FABRICS: usize = 20_000;
const READINGS: usize = 200_000;
const SAVES: usize = 300;
const OPENINGS: usize = 5;
const NAME: &str = "bench";

async fn js(body: &str) -> JsValue {
    let promise: Promise = js_sys::eval(&format!("(async () => {{ {body} }})()")).unwrap().into();
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

fn told(name: &str, ours: f64, peer: f64, unit: &str) {
    console_log!(
        "{{\"name\":\"storage: {name}\",\"ours\":{ours:.2},\"peer\":{peer:.2},\"ratio\":{:.2},\"unit\":\"{unit}\"}}",
        peer / ours
    );
}

/// Invented lines as long as real ones: a fabric about 330 bytes, a reading about 190.
fn library() -> Vec<Line> {
    let mut lines = Vec::with_capacity(FABRICS + READINGS);
    for number in 0..FABRICS {
        let id = format!("3f9c2a71b0d4-{number:06}");
        lines.push(Line::new(&id, format!(
            "{{\"id\":\"{id}\",\"at\":\"2026-{:02}-{:02}T09:41:07.250+01:00\",\"by\":\"tablet beside press 2\",\
             \"change\":{{\"fabric\":{{\"label\":\"{}% cotton {}% polyester\",\"construction\":\"jersey\",\
             \"areal_weight_gsm\":{},\"colour\":{{\"name\":\"kelly green\",\"lab\":[46.2,-41.7,23.9]}},\
             \"dyed_fibres\":[\"cotton\",\"polyester\"],\"dye_class\":\"disperse-high\",\"lot\":\"HL-{number}\"}}}}}}",
            number % 12 + 1, number % 28 + 1, number % 101, 100 - number % 101, 120 + number % 200
        )));
    }
    for number in 0..READINGS {
        let id = format!("3f9c2a71b0d4-{:06}", number + FABRICS);
        lines.push(Line::new(&id, format!(
            "{{\"id\":\"{id}\",\"at\":\"2026-{:02}-{:02}T16:05:52.125+01:00\",\"by\":\"tablet beside press 2\",\
             \"change\":{{\"reading\":{{\"trial\":\"3f9c2a71b0d4-{:06}\",\"day\":{},\"delta_e\":{}.{},\"piece\":{}}}}}}}",
            number % 12 + 1, number % 28 + 1, number / 10, number % 90, number % 6, number % 10, number % 12 + 1
        )));
    }
    lines
}

/// The whole library as the text of one file.
fn export(contents: &Contents) -> String {
    let mut text = String::with_capacity(contents.segments.iter().map(String::len).sum());
    for line in contents.lines() {
        let _ = writeln!(text, "{line}");
    }
    text
}

/// The browser's own calls for the same bytes: its times to write all segments, to read them and part their lines,
/// and to add one row.
const PEER: &str = "
    const done = (request) => new Promise((yes, no) => {
        request.onsuccess = () => yes(request.result); request.onerror = () => no(request.error); });
    const over = (work) => new Promise((yes, no) => { work.oncomplete = yes; work.onabort = no; });
    const open = async () => {
        const request = indexedDB.open('peer', 1);
        request.onupgradeneeded = () => ['journal', 'segments'].forEach((name) =>
            request.result.createObjectStore(name, { autoIncrement: true }));
        return done(request);
    };
    const strict = (db) => db.transaction(['journal', 'segments'], 'readwrite', { durability: 'strict' });
    const mine = await done(indexedDB.open('bench'));
    const texts = await done(mine.transaction('segments').objectStore('segments').getAll());
    mine.close();
    let start = performance.now();
    let db = await open();
    let work = strict(db);
    texts.forEach((text) => work.objectStore('segments').add(text));
    await over(work);
    const written = performance.now() - start;
    db.close();
    const read = [];
    for (let turn = 0; turn < 5; turn += 1) {
        start = performance.now();
        db = await open();
        const all = await done(db.transaction('segments').objectStore('segments').getAll());
        const lines = all.flatMap((text) => text.split('\\n'));
        if (lines.length < 220000) throw Error('too few');
        read.push(performance.now() - start);
        db.close();
    }
    db = await open();
    const saves = [];
    for (let turn = 0; turn < 300; turn += 1) {
        start = performance.now();
        work = strict(db);
        work.objectStore('journal').add(['id', 'x'.repeat(190)]);
        work.commit();
        await over(work);
        saves.push(performance.now() - start);
    }
    const at = (times, share) => times.sort((a, b) => a - b)[Math.round((times.length - 1) * share)];
    return [written, at(read, 0.5), at(saves, 0.5), at(saves, 0.95), performance.memory?.usedJSHeapSize ?? 0];";

#[wasm_bindgen_test]
#[ignore = "a bench"]
async fn a_whole_library_is_kept() {
    let Opened { store, .. } = Store::open(NAME, |_| ()).await.unwrap();
    let lines = library();
    let mut text = String::new();
    for line in &lines {
        let _ = writeln!(text, "{}", line.text);
    }
    let bytes = text.len();
    drop(lines);

    // A file comes in as one text; who reads it finds each line's id near its start.
    let start = now();
    let lines: Vec<Line> = shelf::lines(&text).map(|line| Line::new(&line[7..26], line)).collect();
    store.append(&lines).await.unwrap();
    let import = now() - start;
    drop((lines, text));

    let mut openings = Vec::new();
    let mut contents = Contents::default();
    for _ in 0..OPENINGS {
        drop(std::mem::take(&mut contents));
        let start = now();
        let opened = Store::open(NAME, |_| ()).await.unwrap();
        let count = opened.contents.lines().count();
        openings.push(now() - start);
        assert_eq!(count, FABRICS + READINGS);
        contents = opened.contents;
        opened.store.close();
    }
    let start = now();
    let exported = export(&contents);
    let blob = web_sys::Blob::new_with_str_sequence(&js_sys::Array::of1(&exported.as_str().into())).unwrap();
    let export = now() - start;
    assert!(blob.size() as usize >= bytes);
    drop(exported);

    let mut saves = Vec::new();
    for number in 0..SAVES {
        let line = Line::new(format!("save-{number}"), "x".repeat(190));
        let start = now();
        store.append(&[line]).await.unwrap();
        saves.push(now() - start);
    }
    let memory: js_sys::WebAssembly::Memory = wasm_bindgen::memory().unchecked_into();
    let wasm = js_sys::Reflect::get(&memory.buffer(), &"byteLength".into()).unwrap().as_f64().unwrap() / 1e6;
    let peer: js_sys::Array = js(PEER).await.unchecked_into();
    let peer = |place: u32| peer.get(place).as_f64().unwrap();
    console_log!("{} lines, {:.1} MB", FABRICS + READINGS, bytes as f64 / 1e6);
    told("open and read everything", at(&mut openings, 0.5), peer(1), "ms");
    told("take in a whole file", import, peer(0), "ms");
    told("write a whole file", export, f64::NAN, "ms");
    told("one save, half of them within", at(&mut saves, 0.5), peer(2), "ms");
    told("one save, 95 of 100 within", at(&mut saves, 0.95), peer(3), "ms");
    told("memory of the wasm, at its highest", wasm, peer(4) / 1e6, "MB");
}
