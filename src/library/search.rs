//! Finds records by words as people type them: in any order, by the beginning of a word, whatever the
//! accents and case. If no word begins with one that was typed, it is taken for a misspelling.
//!
//! The index maps every folded word to the records that have it. A record is found if it has all words of
//! the query. Hits are ranked by how near the words are: whole words before beginnings before
//! misspellings, then the shorter name, so that `red interlock` comes before `red interlock, recycled`.

use super::Library;
use super::log::{Key, Kind, Log, Record};
use crate::ink::WhiteRecord;
use crate::numerics::sorting::sorted;
use crate::textile::FabricRecord;
use crate::textile::spelling::fold;
use serde_json::Value;
use std::cmp::Ordering;
use std::collections::HashMap;
use strsim::osa_distance;

/// A record as the search knows it.
#[derive(Clone, Debug, PartialEq)]
pub struct SearchItem {
    /// Which record it is.
    pub key: Key,
    /// What it is called.
    pub name: String,
    /// Its name in Spanish, where it has another.
    pub nombre: String,
    /// Whether the shop wrote it; the others ship with the library.
    pub own: bool,
    /// Whether it was removed, or a later item replaces it.
    gone: bool,
}

/// An index over the records of a shop and of the library under them.
#[derive(Clone, Debug, Default)]
pub struct SearchIndex {
    items: Vec<SearchItem>,
    /// Folded words, sorted.
    words: Vec<IndexedWord>,
    /// Number of records of each kind, in the order of [`Kind::ALL`].
    counts: [usize; Kind::ALL.len()],
}

/// A word and the items that have it.
#[derive(Clone, Debug)]
struct IndexedWord {
    text: Box<str>,
    /// Set of its bytes, one bit each; see [`byte_set`].
    bytes: u64,
    items: Vec<u32>,
}

impl IndexedWord {
    fn new(text: Box<str>, items: Vec<u32>) -> Self {
        Self { bytes: byte_set(&text), text, items }
    }
}

/// What a search found.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SearchHits {
    /// Places of the nearest items in the index, the nearest first.
    pub items: Vec<u32>,
    /// Number of records found.
    pub count: usize,
    /// If no record has all words: the words that some record has, with how many have each.
    pub instead: Vec<(String, usize)>,
}

/// Fields of a shop's record whose words are searched.
const SEARCHED_FIELDS: [&str; 12] = [
    "name",
    "nombre",
    "construction",
    "class",
    "fabric",
    "lot",
    "white",
    "source",
    "note",
    "printed",
    "title",
    "customer",
];

impl SearchIndex {
    /// The index of all records. `library` is the shipped one with the shop's records laid over it.
    #[must_use]
    pub fn of(library: &Library, log: &Log) -> Self {
        let mut index = Self::default();
        let mut words: HashMap<Box<str>, Vec<u32>> = HashMap::new();
        all(library, log, &mut |item, searched| {
            let place = index.push(item);
            for word in cut(searched) {
                match words.get_mut(word) {
                    Some(list) if list.last() == Some(&place) => {}
                    Some(list) => list.push(place),
                    None => drop(words.insert(word.into(), vec![place])),
                }
            }
        });
        let words = words.into_iter().map(|(text, items)| IndexedWord::new(text, items)).collect();
        index.words = sorted(words, &|a: &IndexedWord, b| a.text.cmp(&b.text));
        index
    }

    /// Brings the index up to date with one record.
    pub fn follow(&mut self, library: &Library, log: &Log, key: &Key) {
        for item in self.items.iter_mut().filter(|item| !item.gone && item.key == *key) {
            item.gone = true;
            let count = &mut self.counts[key.kind as usize];
            *count = count.saturating_sub(1);
        }
        let Some((item, searched)) = one(library, log, key) else { return };
        let place = self.push(item);
        for word in cut(&searched) {
            match self.words.binary_search_by(|known| (*known.text).cmp(word)) {
                Ok(at) => {
                    let list = &mut self.words[at].items;
                    if list.last() != Some(&place) {
                        list.push(place);
                    }
                }
                Err(at) => self.words.insert(at, IndexedWord::new(word.into(), vec![place])),
            }
        }
    }

    fn push(&mut self, item: SearchItem) -> u32 {
        // More items than `u32::MAX` do not fit into memory.
        let place = u32::try_from(self.items.len()).unwrap_or(u32::MAX);
        self.counts[item.key.kind as usize] += 1;
        self.items.push(item);
        place
    }

    /// The item at a place.
    #[must_use]
    pub fn item(&self, place: u32) -> Option<&SearchItem> {
        self.items.get(place as usize)
    }

    /// How many records of a kind there are.
    #[must_use]
    pub fn count(&self, kind: Kind) -> usize {
        self.counts[kind as usize]
    }

    /// How many records there are.
    #[must_use]
    pub fn len(&self) -> usize {
        self.counts.iter().sum()
    }

    /// Whether there is nothing to find.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// The records of these kinds that have every word of the query, the nearest first; all of them for
    /// an empty query.
    #[must_use]
    pub fn find(&self, asked: &str, kinds: &[Kind]) -> SearchHits {
        let asked = fold(asked);
        let words: Vec<&str> = cut(&asked).collect();
        let wanted = |item: &SearchItem| !item.gone && kinds.contains(&item.key.kind);
        // The distance of every item; `OUT` for one that lacks a word.
        let mut off: Vec<u8> = self.items.iter().map(|item| if wanted(item) { 0 } else { OUT }).collect();
        let mut instead = Vec::new();
        for word in &words {
            let here = self.near(word);
            let has = |place: usize| here.get(place).is_some_and(|&off| off < OUT);
            let count =
                self.items.iter().enumerate().filter(|(place, item)| wanted(item) && has(*place)).count();
            instead.push(((*word).to_owned(), count));
            for (sum, &more) in off.iter_mut().zip(&here) {
                *sum = if more == OUT { OUT } else { sum.saturating_add(more) };
            }
        }
        let off_by = |place: u32| off.get(place as usize).copied().unwrap_or(OUT);
        let nearer = |a: u32, b: u32| {
            off_by(a).cmp(&off_by(b)).then_with(|| self.before(a, b, !words.is_empty())).is_lt()
        };
        // Many may be found and few are shown, so only the nearest are sorted.
        let mut items: Vec<u32> = Vec::with_capacity(MOST + 1);
        let mut count = 0;
        for place in (0_u32..).zip(&off).filter(|(_, off)| **off < OUT).map(|(place, _)| place) {
            count += 1;
            if items.len() == MOST && items.last().is_some_and(|&last| !nearer(place, last)) {
                continue;
            }
            let at = items.partition_point(|&other| nearer(other, place));
            items.insert(at, place);
            items.truncate(MOST);
        }
        instead.retain(|&(_, count)| count > 0);
        if count > 0 || words.len() < 2 {
            instead.clear();
        }
        SearchHits { items, count, instead }
    }

    /// Order of two items that are equally near: the shop's own first, then the shorter name, of which
    /// the query covers more. Without a query the list is sorted by name.
    fn before(&self, a: u32, b: u32, asked: bool) -> Ordering {
        let (Some(x), Some(y)) = (self.item(a), self.item(b)) else { return a.cmp(&b) };
        x.key
            .kind
            .cmp(&y.key.kind)
            .then(y.own.cmp(&x.own))
            .then(if asked { x.name.len().cmp(&y.name.len()) } else { Ordering::Equal })
            .then_with(|| x.name.cmp(&y.name))
            .then(a.cmp(&b))
    }

    /// The distance of every item's nearest word: 0 for the word itself, 1 for one that begins with it, 2
    /// or more for one that is spelt like it.
    fn near(&self, word: &str) -> Vec<u8> {
        let mut near = vec![OUT; self.items.len()];
        let mut put = |list: &[u32], off: u8| {
            for &place in list {
                if let Some(had) = near.get_mut(place as usize) {
                    *had = off.min(*had);
                }
            }
        };
        let from = self.words.partition_point(|known| &*known.text < word);
        let begin = self.words.iter().skip(from).take_while(|known| known.text.starts_with(word));
        let mut any = false;
        for known in begin {
            any = true;
            put(&known.items, u8::from(known.text.len() > word.len()));
        }
        if any {
            return near;
        }
        // Two changes in a word of six letters or more, one in a shorter word; words of one or two
        // letters are not corrected.
        let reach = match word.chars().count() {
            0..=2 => return near,
            3..=5 => 1,
            _ => 2,
        };
        let bytes = byte_set(word);
        for known in &self.words {
            // One changed letter flips at most two bits.
            let flipped = (bytes ^ known.bytes).count_ones() as usize;
            if flipped > reach * 2 || known.text.len().abs_diff(word.len()) > reach * 2 {
                continue;
            }
            let off = osa_distance(word, &known.text);
            if off <= reach {
                put(&known.items, 2 + u8::from(off > 1));
            }
        }
        near
    }
}

/// Hits that are sorted and returned; a list is never read further. Assumed.
const MOST: usize = 400;

/// Distance of an item that is not a hit.
const OUT: u8 = u8::MAX;

/// Words of a folded text.
fn cut(folded: &str) -> impl Iterator<Item = &str> {
    folded.split([' ', '/', ',', '.', '%', '(', ')', ';', ':', '"']).filter(|word| !word.is_empty())
}

/// Passes on every item with the folded words that it is found by.
fn all(library: &Library, log: &Log, take: &mut dyn FnMut(SearchItem, &str)) {
    let mut give = |(item, searched): (SearchItem, String)| take(item, &searched);
    let own = |kind, id: &str| log.stands(&Key::new(kind, id));
    for it in &library.fabrics {
        give(fabric(it, own(Kind::Fabric, &it.id)));
    }
    for it in &library.whites {
        give(white(it, own(Kind::White, &it.id)));
    }
    let mut plain = |kind, id: &str, name: &str| give(item(kind, id, [name, name], own(kind, id), name));
    library.blockers.iter().for_each(|it| plain(Kind::Blocker, &it.id, &it.name));
    library.dryers.iter().for_each(|it| plain(Kind::Dryer, &it.id, &it.name));
    library.meshes.iter().for_each(|it| plain(Kind::Mesh, &it.id, &it.id));
    for kind in OWN {
        log.records(kind).for_each(|record| give(written(&record)));
    }
}

/// Kinds of which no record ships.
const OWN: [Kind; 5] = [Kind::Lot, Kind::Batch, Kind::Order, Kind::Trial, Kind::FollowUp];

fn one(library: &Library, log: &Log, key: &Key) -> Option<(SearchItem, String)> {
    let own = log.stands(key);
    let id = &*key.id;
    let plain = |name: &str| item(key.kind, id, [name, name], own, name);
    match key.kind {
        Kind::Fabric => library.fabrics.iter().find(|it| it.id == id).map(|it| fabric(it, own)),
        Kind::White => library.whites.iter().find(|it| it.id == id).map(|it| white(it, own)),
        Kind::Blocker => library.blockers.iter().find(|it| it.id == id).map(|it| plain(&it.name)),
        Kind::Dryer => library.dryers.iter().find(|it| it.id == id).map(|it| plain(&it.name)),
        Kind::Mesh => library.meshes.iter().find(|it| it.id == id).map(|it| plain(&it.id)),
        kind if OWN.contains(&kind) && own => log.record(kind, id).map(|record| written(&record)),
        _ => None,
    }
}

fn item(kind: Kind, id: &str, [name, nombre]: [&str; 2], own: bool, searched: &str) -> (SearchItem, String) {
    let searched = fold(&format!("{searched} {id} {}", id.replace('-', " ")));
    let key = Key::new(kind, id);
    (SearchItem { key, name: name.into(), nombre: nombre.into(), own, gone: false }, searched)
}

fn fabric(it: &FabricRecord, own: bool) -> (SearchItem, String) {
    let fibres: Vec<&str> = it.composition_percent.keys().map(|fibre| fibre.name()).collect();
    let searched = format!("{} {} {}", it.name, it.nombre, fibres.join(" "));
    item(Kind::Fabric, &it.id, [&it.name, &it.nombre], own, &searched)
}

fn white(it: &WhiteRecord, own: bool) -> (SearchItem, String) {
    let class = serde_json::to_value(it.class).ok();
    let class = class.as_ref().and_then(Value::as_str).unwrap_or_default();
    let searched = format!("{} {class} {}", it.name, if it.low_cure { "low-cure" } else { "" });
    item(Kind::White, &it.id, [&it.name, &it.name], own, &searched)
}

fn written(record: &Record) -> (SearchItem, String) {
    let text = |name: &str| record.fields.get(name).and_then(Value::as_str).unwrap_or_default();
    let searched: Vec<&str> = SEARCHED_FIELDS.iter().map(|name| text(name)).collect();
    let name = ["name", "title"].into_iter().map(text).find(|name| !name.is_empty());
    let name = name.unwrap_or(&record.key.id);
    item(record.key.kind, &record.key.id, [name, name], true, &searched.join(" "))
}

/// Set of the bytes of a word, one bit each; two bytes may share a bit.
fn byte_set(word: &str) -> u64 {
    word.bytes().fold(0, |set, byte| set | 1 << (byte % 64))
}
