//! The store against the browser's own database: what is acknowledged is there, whoever else writes and whatever the
//! browser refuses. The second reader and writer is plain JS over the standard's own calls, not the store.

use js_sys::Promise;
use std::cell::{Cell, RefCell};
use std::collections::BTreeSet;
use std::rc::Rc;
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::JsFuture;
use wasm_bindgen_test::wasm_bindgen_test;
use whitehold::library::storage_layout::{Contents, Line, SCHEMA, SEGMENT, Trouble};
use whitehold::web::file::Handle;
use whitehold::web::store::{OpenedStore, Store};

/// Runs the body of an async JS function and hands back its value.
async fn js(body: &str) -> JsValue {
    let promise: Promise = js_sys::eval(&format!("(async () => {{ {body} }})()")).unwrap().into();
    JsFuture::from(promise).await.unwrap()
}

/// Awaits in JS: a request of the database, or a moment.
const WAIT: &str = "const done = (request) => new Promise((yes, no) => {
    request.onsuccess = () => yes(request.result); request.onerror = () => no(request.error); });";

async fn a_moment() {
    js("await new Promise((go) => setTimeout(go, 50));").await;
}

fn line(id: impl std::fmt::Display) -> Line {
    Line::new(id.to_string(), format!("{{\"id\":\"{id}\",\"label\":\"50% cotton 50% polyester\"}}"))
}

fn texts(contents: &Contents) -> BTreeSet<String> {
    contents.lines().map(str::to_owned).collect()
}

async fn open(name: &str) -> OpenedStore {
    Store::open(name, |_| ()).await.unwrap()
}

/// Opens, and remembers what the store tells.
async fn listen(name: &str, schema: u32) -> (Result<OpenedStore, Trouble>, Rc<RefCell<Vec<Trouble>>>) {
    let told = Rc::new(RefCell::new(Vec::new()));
    let hears = Rc::clone(&told);
    (Store::open_as(name, schema, move |trouble| hears.borrow_mut().push(trouble)).await, told)
}

#[wasm_bindgen_test]
async fn what_is_acknowledged_is_there_for_another_reader() {
    let store = open("t-kept").await.store;
    store.append(&[line(1), line(2)]).await.unwrap();
    store.keep("draft/a", &line("a-1")).await.unwrap();
    store.keep("draft/a", &line("a-2")).await.unwrap();
    store.keep("draft/b", &line("b-1")).await.unwrap();
    let read = js(&format!(
        "{WAIT} const db = await done(indexedDB.open('t-kept'));
         const rows = await done(db.transaction('journal').objectStore('journal').getAll());
         db.close(); return rows.map((row) => row[0]).join(' ');"
    ))
    .await;
    assert_eq!(read.as_string().unwrap(), "1 2 a-1 a-2 b-1");
    let contents = open("t-kept").await.contents;
    assert_eq!(texts(&contents), BTreeSet::from([line(1).text, line(2).text]));
    assert_eq!(contents.slot("draft/a").unwrap().line, line("a-2"));
    assert_eq!(contents.slots("draft/").next().unwrap().line, line("b-1"));
}

/// 2,500 saves, turn and turn about, with a sealing among them.
#[wasm_bindgen_test]
async fn two_tabs_at_once_lose_nothing() {
    let [one, other] = [open("t-tabs").await.store, open("t-tabs").await.store];
    for number in 0..1250 {
        let (mine, yours) = ([line(format!("one-{number}"))], [line(format!("other-{number}"))]);
        let all = js_sys::Array::of2(&append(&one, &mine), &append(&other, &yours));
        if number == 1100 {
            all.push(&seal(&one));
        }
        JsFuture::from(Promise::all(&all)).await.unwrap();
    }
    let contents = open("t-tabs").await.contents;
    let expected: BTreeSet<String> = (0..1250)
        .flat_map(|number| [line(format!("one-{number}")).text, line(format!("other-{number}")).text])
        .collect();
    assert_eq!(texts(&contents), expected);
    assert_eq!(contents.lines().count(), expected.len(), "a line came twice");
    assert_eq!(contents.segments.len(), 2);
    // A tab that reads on has everything too.
    assert_eq!(texts(&one.read_on().await.unwrap()), expected);
    assert_eq!(texts(&one.read_on().await.unwrap()), BTreeSet::new());
}

fn append(store: &Store, lines: &[Line]) -> Promise {
    let (store, lines) = (store.clone(), lines.to_vec());
    wasm_bindgen_futures::future_to_promise(async move {
        store.append(&lines).await.unwrap();
        Ok(JsValue::NULL)
    })
}

fn seal(store: &Store) -> Promise {
    let store = store.clone();
    wasm_bindgen_futures::future_to_promise(async move {
        store.seal().await.unwrap();
        Ok(JsValue::NULL)
    })
}

#[wasm_bindgen_test]
async fn a_tab_hears_of_the_others_save_and_of_its_double() {
    let [one, other] = [open("t-news").await.store, open("t-news").await.store];
    let heard = Rc::new(Cell::new(0));
    let hears = Rc::clone(&heard);
    one.on_news(move || hears.set(hears.get() + 1));
    let names = Rc::new(RefCell::new(Vec::new()));
    let hears = Rc::clone(&names);
    one.introduce("tab-1", move |name| hears.borrow_mut().push(name.to_owned()));
    other.append(&[line(1)]).await.unwrap();
    other.introduce("tab-2", |_| ());
    a_moment().await;
    assert_eq!(heard.get(), 1);
    assert_eq!(*names.borrow(), ["tab-2"]);
    assert_eq!(texts(&one.read_on().await.unwrap()), BTreeSet::from([line(1).text]));
}

#[wasm_bindgen_test]
async fn a_whole_library_comes_in_one_go_or_not_at_all() {
    let store = open("t-whole").await.store;
    let lines: Vec<Line> = (0..5 * SEGMENT + 200).map(line).collect();
    // The journal refuses its first row: the segments that went before are not kept either.
    js("window.add = IDBObjectStore.prototype.add; IDBObjectStore.prototype.add = function (value) {
        if (this.name === 'journal') throw new DOMException('no room', 'QuotaExceededError');
        return window.add.call(this, value); };")
    .await;
    let refused = store.append(&lines).await;
    js("IDBObjectStore.prototype.add = window.add;").await;
    assert_eq!(refused, Err(Trouble::Full));
    assert!(open("t-whole").await.contents.is_empty());
    store.append(&lines).await.unwrap();
    let contents = open("t-whole").await.contents;
    assert_eq!((contents.segments.len(), contents.journal.len()), (5, 200));
    assert_eq!(texts(&contents), lines.into_iter().map(|line| line.text).collect());
}

/// A transaction that is ended before its end was written, whoever ends it, is not acknowledged.
#[wasm_bindgen_test]
async fn a_save_that_is_broken_off_is_not_acknowledged() {
    let store = open("t-abort").await.store;
    js("window.commit = IDBTransaction.prototype.commit;
        IDBTransaction.prototype.commit = IDBTransaction.prototype.abort;")
    .await;
    let broken = store.append(&[line(1)]).await;
    js("IDBTransaction.prototype.commit = window.commit;").await;
    assert!(matches!(broken, Err(Trouble::Failed(_))), "{broken:?}");
    assert!(open("t-abort").await.contents.is_empty());
}

#[wasm_bindgen_test]
async fn a_later_database_is_read_and_never_written() {
    open("t-newer").await.store.append(&[line(1)]).await.unwrap();
    js(&format!(
        "{WAIT} const request = indexedDB.open('t-newer', 99);
         request.onupgradeneeded = () => request.result.createObjectStore('of a later version');
         (await done(request)).close();"
    ))
    .await;
    let OpenedStore { store, contents, wiped } = open("t-newer").await;
    assert_eq!(texts(&contents), BTreeSet::from([line(1).text]));
    assert!(!wiped);
    assert_eq!(store.trouble(), Some(Trouble::Newer));
    assert_eq!(store.append(&[line(2)]).await, Err(Trouble::Newer));
    assert_eq!(store.seal().await, Err(Trouble::Newer));
    assert_eq!(texts(&open("t-newer").await.contents), BTreeSet::from([line(1).text]));
}

/// The next version of the page opens in one tab: the tab with this version lets go and says so.
#[wasm_bindgen_test]
async fn an_older_tab_makes_way_for_a_newer_one() {
    let (older, told) = listen("t-way", SCHEMA).await;
    let older = older.unwrap_or_else(|trouble| panic!("{trouble:?}")).store;
    older.append(&[line(1)]).await.unwrap();
    let (newer, complaints) = listen("t-way", SCHEMA + 1).await;
    let newer = newer.unwrap_or_else(|trouble| panic!("{trouble:?}"));
    assert_eq!(texts(&newer.contents), BTreeSet::from([line(1).text]));
    assert_eq!(*complaints.borrow(), []);
    assert_eq!(*told.borrow(), [Trouble::Closed]);
    assert_eq!(older.append(&[line(2)]).await, Err(Trouble::Closed));
    newer.store.append(&[line(3)]).await.unwrap();
}

/// A tab that does not let go is named, and the opening goes on by itself when the tab is closed.
#[wasm_bindgen_test]
async fn an_upgrade_that_is_held_up_says_so_and_goes_on_later() {
    open("t-held").await.store.close();
    js(&format!(
        "{WAIT} window.held = await done(indexedDB.open('t-held', {SCHEMA}));
         setTimeout(() => window.held.close(), 200);"
    ))
    .await;
    let (newer, told) = listen("t-held", SCHEMA + 1).await;
    assert_eq!(*told.borrow(), [Trouble::Blocked]);
    newer.unwrap_or_else(|trouble| panic!("{trouble:?}")).store.append(&[line(1)]).await.unwrap();
}

#[wasm_bindgen_test]
async fn a_database_that_the_browser_deleted_is_missed() {
    let first = open("t-wiped").await;
    assert!(!first.wiped, "a new one is no loss");
    first.store.append(&[line(1)]).await.unwrap();
    first.store.close();
    js(&format!("{WAIT} await done(indexedDB.deleteDatabase('t-wiped'));")).await;
    let second = open("t-wiped").await;
    assert!(second.wiped);
    second.store.append(&[line(2)]).await.unwrap();
    assert!(!open("t-wiped").await.wiped);
}

#[wasm_bindgen_test]
async fn a_browser_that_stores_nothing_says_so() {
    for refusing in [
        "undefined",
        "({ open() { throw new DOMException('sandboxed', 'SecurityError'); } })",
        "({ open() { throw new DOMException('private', 'InvalidStateError'); } })",
    ] {
        js(&format!(
            "Object.defineProperty(window, 'indexedDB', {{ value: {refusing}, configurable: true }});"
        ))
        .await;
        let opened = Store::open("t-refused", |_| ()).await;
        js("delete window.indexedDB;").await;
        assert_eq!(opened.err(), Some(Trouble::Refused), "{refusing}");
    }
}

/// The browser's own file system stands in for the disk: the same kind of handle, without the dialog.
#[wasm_bindgen_test]
async fn a_file_that_was_chosen_is_written_again_and_again() {
    js("window.showSaveFilePicker = async ({ suggestedName }) =>
        (await navigator.storage.getDirectory()).getFileHandle(suggestedName, { create: true });")
    .await;
    assert!(Handle::can_be_had());
    let file = Handle::choose("library.jsonl").await.unwrap().expect("a file");
    for text in ["{\"id\":\"1\",\"label\":\"algodón\"}\n", "{}\n"] {
        file.write(text).await.unwrap();
        let read = js("const root = await navigator.storage.getDirectory();
            return (await (await root.getFileHandle('library.jsonl')).getFile()).text();")
        .await;
        assert_eq!(read.as_string().unwrap(), text);
    }
    js("window.showSaveFilePicker = async () => { throw new DOMException('no', 'AbortError'); };").await;
    assert!(Handle::choose("library.jsonl").await.unwrap().is_none(), "thinking better of it is no failure");
}
