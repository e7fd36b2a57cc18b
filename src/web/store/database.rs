//! IndexedDB as futures: just what the store needs, with the reason of every failure.
//!
//! **Decision:** the calls to IndexedDB are our own, without a crate.
//! **Because:** neither of the two crates (idb 0.6, indexed_db_futures 0.6) reports why a transaction aborts at its
//! end, and a full disk is such an abort; both leave the durability of a transaction to the browser.
//! **Measured:** read in those versions, by 2026-11-25.
//! **Reconsider when:** a crate reports both the reason and the durability.

use crate::library::storage_layout::{self, ObjectStore, Trouble};
use js_sys::{Array, Object, Promise, Reflect};
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::{
    DomException, IdbDatabase, IdbFactory, IdbKeyRange, IdbObjectStore, IdbObjectStoreParameters,
    IdbOpenDbRequest, IdbRequest, IdbTransaction, IdbVersionChangeEvent,
};

#[wasm_bindgen]
extern "C" {
    /// A database whose transactions take options, which the binding has only as an unstable interface.
    #[wasm_bindgen(js_name = IDBDatabase)]
    type WithOptions;
    #[wasm_bindgen(method, catch, js_class = "IDBDatabase", js_name = transaction)]
    fn transaction_with_options(
        this: &WithOptions,
        parts: &Array,
        mode: &str,
        options: &Object,
    ) -> Result<IdbTransaction, JsValue>;
}

/// An open connection.
#[derive(Clone)]
pub struct Database {
    it: IdbDatabase,
}

impl Database {
    /// Opens a database of this version and creates the parts that an earlier one lacks; without a version, as it is.
    /// `blocked` is called if another connection must close first; the opening continues when it has.
    ///
    /// # Errors
    /// [`Trouble`] if the browser refuses, or the database is of a later version.
    pub async fn open(
        name: &str,
        version: Option<u32>,
        blocked: impl FnMut() + 'static,
    ) -> Result<Self, Trouble> {
        let factory = Reflect::get(&js_sys::global(), &"indexedDB".into()).map_err(|_| Trouble::Refused)?;
        if factory.is_undefined() || factory.is_null() {
            return Err(Trouble::Refused);
        }
        let factory: IdbFactory = factory.unchecked_into();
        let request = match version {
            Some(version) => factory.open_with_u32(name, version),
            None => factory.open(name),
        };
        let request = request.map_err(|thrown| refusal(trouble(&thrown)))?;
        let upgrading = request.clone();
        let upgrade =
            Closure::<dyn FnMut(IdbVersionChangeEvent)>::new(move |event: IdbVersionChangeEvent| {
                if make(&upgrading, event.old_version()).is_err()
                    && let Some(transaction) = upgrading.transaction()
                {
                    let _ = transaction.abort();
                }
            });
        let blocked = Closure::<dyn FnMut()>::new(blocked);
        request.set_onupgradeneeded(Some(upgrade.as_ref().unchecked_ref()));
        request.set_onblocked(Some(blocked.as_ref().unchecked_ref()));
        let it = done(&request).await.map_err(refusal)?.unchecked_into();
        Ok(Self { it })
    }

    /// Closes the connection when a later version of the page asks for that, and calls `then`; also when the browser
    /// closes it.
    pub fn when_closed(&self, then: impl Fn() + 'static) {
        let it = self.it.clone();
        let closed = Closure::<dyn FnMut()>::new(move || {
            it.close();
            then();
        });
        self.it.set_onversionchange(Some(closed.as_ref().unchecked_ref()));
        self.it.set_onclose(Some(closed.as_ref().unchecked_ref()));
        // A connection lives as long as its page.
        closed.forget();
    }

    /// Closes the connection.
    pub fn close(&self) {
        self.it.close();
    }

    /// A transaction that only reads.
    ///
    /// # Errors
    /// [`Trouble`] if the connection is closed or a part is missing.
    pub fn read(&self) -> Result<Transaction, Trouble> {
        self.transaction("readonly")
    }

    /// A transaction that is not reported complete before its changes are on the disk.
    ///
    /// # Errors
    /// [`Trouble`] if the connection is closed or a part is missing.
    pub fn write(&self) -> Result<Transaction, Trouble> {
        self.transaction("readwrite")
    }

    fn transaction(&self, mode: &str) -> Result<Transaction, Trouble> {
        let parts = Array::of2(&ObjectStore::Journal.name().into(), &ObjectStore::Segments.name().into());
        let options = Object::new();
        Reflect::set(&options, &"durability".into(), &"strict".into()).map_err(|thrown| trouble(&thrown))?;
        let with_options: &WithOptions = self.it.unchecked_ref();
        let it = with_options
            .transaction_with_options(&parts, mode, &options)
            .map_err(|thrown| trouble(&thrown))?;
        Ok(Transaction { it, committed: false })
    }
}

/// Creates the parts that a database of an earlier version lacks.
fn make(request: &IdbOpenDbRequest, from: f64) -> Result<(), JsValue> {
    let database: IdbDatabase = request.result()?.unchecked_into();
    let counting = IdbObjectStoreParameters::new();
    counting.set_auto_increment(true);
    // The browser reports a version as a double; ours are small whole numbers.
    for part in storage_layout::upgrade(from as u32) {
        database.create_object_store_with_optional_parameters(part.name(), &counting)?;
    }
    Ok(())
}

/// A transaction over all parts. Dropped without a commit, it changes nothing.
pub struct Transaction {
    it: IdbTransaction,
    committed: bool,
}

impl Transaction {
    /// Adds a value under the next key.
    ///
    /// # Errors
    /// [`Trouble`] if the browser refuses it.
    pub fn add(&self, part: ObjectStore, value: &JsValue) -> Result<(), Trouble> {
        self.part(part)?.add(value).map_err(|thrown| trouble(&thrown))?;
        Ok(())
    }

    /// Deletes the row of a key.
    ///
    /// # Errors
    /// [`Trouble`] if the browser refuses it.
    pub fn delete(&self, part: ObjectStore, key: f64) -> Result<(), Trouble> {
        self.part(part)?.delete(&key.into()).map_err(|thrown| trouble(&thrown))?;
        Ok(())
    }

    /// Requests at once the rows with keys above this one, at most `most`, in the order of their keys.
    ///
    /// # Errors
    /// [`Trouble`] if they cannot be read.
    pub fn rows(
        &self,
        part: ObjectStore,
        above: f64,
        most: u32,
    ) -> Result<impl Future<Output = Result<Vec<(f64, JsValue)>, Trouble>> + use<>, Trouble> {
        let store = self.part(part)?;
        let range =
            IdbKeyRange::lower_bound_with_open(&above.into(), true).map_err(|thrown| trouble(&thrown))?;
        let keys = store.get_all_keys_with_key_and_limit(&range, most).map_err(|thrown| trouble(&thrown))?;
        let values = store.get_all_with_key_and_limit(&range, most).map_err(|thrown| trouble(&thrown))?;
        let (keys, values) = (done(&keys), done(&values));
        Ok(async move {
            let keys: Array = keys.await?.unchecked_into();
            let values: Array = values.await?.unchecked_into();
            Ok(keys.iter().map(|key| key.as_f64().unwrap_or_default()).zip(values.iter()).collect())
        })
    }

    /// Commits, and returns when the changes are on the disk.
    ///
    /// # Errors
    /// [`Trouble`] if none of the changes was stored.
    pub async fn commit(mut self) -> Result<(), Trouble> {
        let settled = Promise::new(&mut |resolve, reject| {
            self.it.set_oncomplete(Some(&resolve));
            self.it.set_onabort(Some(&reject));
        });
        self.committed = true;
        #[expect(deprecated, reason = "the binding calls it so from an old draft; the standard has it")]
        self.it.commit().map_err(|thrown| trouble(&thrown))?;
        match JsFuture::from(settled).await {
            Ok(_) => Ok(()),
            Err(_) => Err(exception(self.it.error())),
        }
    }

    fn part(&self, part: ObjectStore) -> Result<IdbObjectStore, Trouble> {
        self.it.object_store(part.name()).map_err(|thrown| trouble(&thrown))
    }
}

impl Drop for Transaction {
    fn drop(&mut self) {
        if !self.committed {
            // A transaction that the browser has ended by itself cannot be aborted again.
            let _ = self.it.abort();
        }
    }
}

/// The result of a request, once it is there.
fn done(request: &IdbRequest) -> impl Future<Output = Result<JsValue, Trouble>> + use<> {
    let settled = Promise::new(&mut |resolve, reject| {
        request.set_onsuccess(Some(&resolve));
        request.set_onerror(Some(&reject));
    });
    let request = request.clone();
    async move {
        match JsFuture::from(settled).await {
            Ok(_) => request.result().map_err(|thrown| trouble(&thrown)),
            Err(_) => Err(exception(request.error().ok().flatten())),
        }
    }
}

/// What a thrown value means.
pub fn trouble(thrown: &JsValue) -> Trouble {
    exception(thrown.dyn_ref::<DomException>().cloned())
}

fn exception(exception: Option<DomException>) -> Trouble {
    match exception {
        Some(exception) => Trouble::of_exception(&exception.name(), &exception.message()),
        None => Trouble::Failed("aborted".into()),
    }
}

/// An opening that fails with `InvalidStateError`, as in private windows of older Firefoxes, is a refusal.
fn refusal(trouble: Trouble) -> Trouble {
    if trouble == Trouble::Closed { Trouble::Refused } else { trouble }
}
