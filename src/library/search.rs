//! Records found by words, as people type them: any order, the beginning of a word is enough, accents and case do
//! not matter, and a word that nothing begins with is taken for a misspelt one.
//!
//! The index maps every folded word to the records that have it. A record is found if it has all words asked for; the
//! nearer the words, the higher it stands: whole words before beginnings before misspellings, then the shorter name,
//! so that `red interlock` comes before `red interlock, recycled`.

use super::Library;
use super::log::{Key, Kind, Log};
use crate::textile::spelling::{distance, fold};
use serde_json::Value;
use std::collections::{BTreeMap, HashMap};

/// Something that can be found.
#[derive(Clone, Debug, PartialEq)]
pub struct Item {
    /// Which record it is.
    pub key: Key,
    /// What it is called.
    pub name: String,
    /// Its name in Spanish, where it has another.
    pub nombre: String,
    /// Whether the shop wrote it, and not the library that ships.
    pub own: bool,
}

/// An index over the records of a shop and of the library under them.
#[derive(Clone, Debug, Default)]
pub struct Index {
    items: Vec<Item>,
    /// Folded words in order, each with the items that have it.
    words: Vec<(Box<str>, Vec<u32>)>,
    counts: BTreeMap<Kind, usize>,
}

/// What a search found.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Found {
    /// Places of the items in the index, the nearest first.
    pub items: Vec<u32>,
    /// How many there are in all kinds together.
    pub total: usize,
    /// Where nothing has all words: how many have each, for words that any has.
    pub instead: Vec<(String, usize)>,
}

/// Fields whose words a record is found by.
const TOLD: [&str; 12] = [
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

impl Index {
    /// The index of everything there is. `library` is what ships with the shop's records laid over it.
    #[must_use]
    pub fn of(library: &Library, log: &Log) -> Self {
        let mut index = Self::default();
        let mut words: HashMap<Box<str>, Vec<u32>> = HashMap::new();
        let mut add = |kind: Kind, id: &str, name: &str, nombre: &str, own: bool, told: &str| {
            let Ok(place) = u32::try_from(index.items.len()) else { return };
            let id: Box<str> = id.into();
            for word in fold(told).split([' ', '/', ',', '.', '%']).chain([fold(&id).as_str()]) {
                if word.is_empty() {
                    continue;
                }
                let list = match words.get_mut(word) {
                    Some(list) => list,
                    None => words.entry(word.into()).or_default(),
                };
                if list.last() != Some(&place) {
                    list.push(place);
                }
            }
            *index.counts.entry(kind).or_default() += 1;
            let key = Key { kind, id };
            index.items.push(Item { key, name: name.into(), nombre: nombre.into(), own });
        };
        let own = |kind, id: &str| log.stands(&Key::new(kind, id));
        for it in &library.fabrics {
            let mut told = format!("{} {} {}", it.name, it.nombre, it.id.replace('-', " "));
            for fibre in it.composition_percent.keys() {
                told.push(' ');
                told.push_str(fibre.name());
            }
            add(Kind::Fabric, &it.id, &it.name, &it.nombre, own(Kind::Fabric, &it.id), &told);
        }
        for it in &library.whites {
            let class = serde_json::to_value(it.class).ok();
            let class = class.as_ref().and_then(Value::as_str).unwrap_or_default();
            let told = format!("{} {class} {}", it.name, if it.low_cure { "low-cure" } else { "" });
            add(Kind::White, &it.id, &it.name, &it.name, own(Kind::White, &it.id), &told);
        }
        for it in &library.blockers {
            add(Kind::Blocker, &it.id, &it.name, &it.name, own(Kind::Blocker, &it.id), &it.name);
        }
        for it in &library.dryers {
            add(Kind::Dryer, &it.id, &it.name, &it.name, own(Kind::Dryer, &it.id), &it.name);
        }
        for it in &library.meshes {
            let told = it.id.replace('-', " ");
            add(Kind::Mesh, &it.id, &it.id, &it.id, own(Kind::Mesh, &it.id), &told);
        }
        for kind in [Kind::Lot, Kind::Batch, Kind::Order, Kind::Trial, Kind::FollowUp] {
            for record in log.records(kind) {
                let text = |name: &str| record.fields.get(name).and_then(Value::as_str).unwrap_or_default();
                let told: Vec<&str> = TOLD.iter().map(|name| text(name)).collect();
                let told = format!("{} {}", told.join(" "), record.key.id.replace('-', " "));
                let name = ["name", "title"].into_iter().map(text).find(|name| !name.is_empty());
                let name = name.unwrap_or(&record.key.id).to_owned();
                add(kind, &record.key.id, &name, &name, true, &told);
            }
        }
        index.words = words.into_iter().collect();
        index.words.sort_unstable_by(|a, b| a.0.cmp(&b.0));
        index
    }

    /// The item at a place.
    #[must_use]
    pub fn item(&self, place: u32) -> Option<&Item> {
        self.items.get(place as usize)
    }

    /// How many records of a kind there are.
    #[must_use]
    pub fn count(&self, kind: Kind) -> usize {
        self.counts.get(&kind).copied().unwrap_or_default()
    }

    /// How many records there are.
    #[must_use]
    pub fn len(&self) -> usize {
        self.items.len()
    }

    /// Whether there is nothing to find.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.items.is_empty()
    }

    /// The items of these kinds that have every word asked for, nearest first; all of them if nothing is asked.
    #[must_use]
    pub fn find(&self, asked: &str, kinds: &[Kind]) -> Found {
        let asked = fold(asked);
        let words: Vec<&str> =
            asked.split([' ', '/', ',', '.', '%']).filter(|word| !word.is_empty()).collect();
        let of_kind = |place: u32| self.item(place).is_some_and(|item| kinds.contains(&item.key.kind));
        let mut near: HashMap<u32, u32> = HashMap::new();
        let mut instead = Vec::new();
        let mut first = true;
        for word in &words {
            let mut here: HashMap<u32, u32> = HashMap::new();
            for (&place, &off) in &self.near(word) {
                if of_kind(place) {
                    here.insert(place, off);
                }
            }
            instead.push(((*word).to_owned(), here.len()));
            if first {
                near = here;
            } else {
                near.retain(|place, off| {
                    here.get(place).is_some_and(|more| {
                        *off += more;
                        true
                    })
                });
            }
            first = false;
        }
        let mut found: Vec<(u32, u32)> = if words.is_empty() {
            (0..self.items.len() as u32).filter(|&place| of_kind(place)).map(|place| (0, place)).collect()
        } else {
            near.into_iter().map(|(place, off)| (off, place)).collect()
        };
        let name = |place: u32| self.item(place).map_or("", |item| item.name.as_str());
        let own = |place: u32| self.item(place).is_some_and(|item| item.own);
        let kind = |place: u32| self.item(place).map(|item| item.key.kind);
        found.sort_unstable_by(|&(off, a), &(other, b)| {
            off.cmp(&other)
                .then(kind(a).cmp(&kind(b)))
                .then(own(b).cmp(&own(a)))
                .then_with(|| name(a).len().cmp(&name(b).len()))
                .then_with(|| name(a).cmp(name(b)))
                .then(a.cmp(&b))
        });
        instead.retain(|&(_, count)| count > 0);
        if !found.is_empty() || words.len() < 2 {
            instead.clear();
        }
        Found { items: found.into_iter().map(|(_, place)| place).collect(), total: self.items.len(), instead }
    }

    /// The items that have a word, a word that begins like it, or else one that is spelt much like it; and how far
    /// off the word is.
    fn near(&self, word: &str) -> HashMap<u32, u32> {
        let mut near: HashMap<u32, u32> = HashMap::new();
        let mut put = |list: &[u32], off: u32| {
            for &place in list {
                near.entry(place).and_modify(|had| *had = off.min(*had)).or_insert(off);
            }
        };
        let from = self.words.partition_point(|(known, _)| &**known < word);
        let begin = self.words.iter().skip(from).take_while(|(known, _)| known.starts_with(word));
        let mut any = false;
        for (known, list) in begin {
            any = true;
            put(list, u32::from(known.len() > word.len()));
        }
        if any {
            return near;
        }
        // Two changes in a word of six letters or more, one in a shorter one; short words are not guessed at.
        let letters = word.chars().count();
        let reach = match letters {
            0..=2 => return near,
            3..=5 => 1,
            _ => 2,
        };
        let signs = signs(word);
        for (known, list) in &self.words {
            // A change of a letter turns at most two signs.
            let turned = (signs ^ self::signs(known)).count_ones() as usize;
            if known.len().abs_diff(word.len()) > reach * 2 || turned > reach * 2 {
                continue;
            }
            let off = distance(word, known);
            if off <= reach {
                put(list, 2 + off as u32);
            }
        }
        near
    }
}

/// Which letters and digits a word has, one bit each.
fn signs(word: &str) -> u64 {
    word.bytes().fold(0, |signs, byte| signs | 1 << (byte % 64))
}
