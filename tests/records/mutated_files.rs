//! Ten thousand damaged library files and tables: none makes a panic, and none is taken in part.

use serde_json::json;
use whitehold::library::log::{Change, Kind, Log};
use whitehold::library::table::{Preview, RecordTable, decode};
use whitehold::library::{self, Library, file};

/// Damaged files of each sort.
const EACH: u64 = 2500;

/// A generator of the same numbers every time: Steele, Lea and Flood, "Fast splittable pseudorandom number
/// generators", OOPSLA 2014 (SplitMix64).
struct Dice(u64);

impl Dice {
    fn roll(&mut self, below: usize) -> usize {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        (z ^ (z >> 31)) as usize % below.max(1)
    }
}

/// What damage and mischief look like.
const SCRAPS: [&[u8]; 18] = [
    b"\"",
    b"{",
    b"}",
    b"[",
    b",",
    b";",
    b"\n",
    b"\r",
    b"\0",
    b"\xff",
    b"null",
    b"-1",
    b"1e308",
    b"99999999999999999999",
    b"\\u0000",
    b"\\ud800",
    "\u{feff}".as_bytes(),
    b"=1+1",
];

/// One to four changes: letters turned, cut, put in, lines swapped or doubled, the end cut off.
fn damage(text: &str, dice: &mut Dice) -> Vec<u8> {
    let mut bytes = text.as_bytes().to_vec();
    for _ in 0..=dice.roll(4) {
        let at = dice.roll(bytes.len());
        let end = (at + 1 + dice.roll(40)).min(bytes.len());
        match dice.roll(8) {
            0 if !bytes.is_empty() => bytes[at] ^= 1 << dice.roll(8),
            1 => drop(bytes.drain(at.min(bytes.len())..end)),
            2 => {
                let scrap = SCRAPS[dice.roll(SCRAPS.len())];
                bytes.splice(at..at, scrap.iter().copied());
            }
            3 => {
                let copy = bytes[at.min(end)..end].to_vec();
                let to = dice.roll(bytes.len());
                bytes.splice(to..to, copy);
            }
            4 => bytes.truncate(bytes.len() - dice.roll(bytes.len() / 3)),
            5 => {
                let scrap = SCRAPS[dice.roll(SCRAPS.len())];
                bytes.splice(at.min(end)..end, scrap.iter().copied());
            }
            _ => {
                let mut lines: Vec<Vec<u8>> =
                    bytes.split(|&byte| byte == b'\n').map(<[u8]>::to_vec).collect();
                let (from, to) = (dice.roll(lines.len()), dice.roll(lines.len()));
                if dice.roll(2) == 0 {
                    lines.swap(from, to);
                } else {
                    lines.insert(to, lines[from].clone());
                }
                bytes = lines.join(&b'\n');
            }
        }
    }
    bytes
}

fn shop(library: &Library) -> Log {
    let mut log = Log::new("bench", "1");
    for record in library.fabrics.iter().take(3) {
        let edits = vec![log.keep(&record.id, record).unwrap()];
        log.append(1, Change::Edit { edits, from: None });
    }
    let edits = vec![log.keep("long-kiln", library.dryer("long-kiln").unwrap()).unwrap()];
    let of = log.append(2, Change::Edit { edits, from: None }).id;
    log.append(3, Change::Undo { of });
    for (kind, id, fields) in [
        (Kind::Trial, "t1", json!({ "white": "gannet", "lot": "HL-2031", "printed": "2026-11-24" })),
        (Kind::Reading, "t1/r1", json!({ "days": 1, "pieces": 3, "turned": 0, "delta_e": 1.2 })),
        (Kind::Reading, "t1/r2", json!({ "days": 7, "pieces": 3, "turned": 1 })),
        (
            Kind::White,
            "heron",
            json!({ "name": "Heron", "class": "soft", "low_cure": true, "source": "typed in" }),
        ),
    ] {
        let edits = vec![log.write(kind, id, fields.as_object().unwrap())];
        log.append(4, Change::Edit { edits, from: None });
    }
    log
}

/// Everything in the log folded and read.
fn use_all(log: &Log, library: &Library) {
    for key in log.all_keys() {
        let past = log.past(key.kind, &key.id).len();
        assert!(past > 0 || log.record(key.kind, &key.id).is_none());
    }
    let (with, _) = library.with(log);
    RecordTable::ALL.iter().for_each(|table| assert!(!table.write(&with, log).is_empty()));
    assert!(file::read(&file::write(log, 0)).is_ok(), "what was taken can be saved and opened");
}

/// Opens damaged text as a library file; says whether it was taken.
fn open(text: &str, log: &Log, library: &Library) -> bool {
    let Ok(opened) = file::read(text) else { return false };
    assert_eq!(opened.entries.len(), opened.header.entries, "all of it or nothing");
    if opened.newer().is_some() || file::agrees(log, &opened).is_err() {
        return false;
    }
    let mut merged = log.clone();
    let preview = log.preview(&opened.entries);
    assert_eq!(preview.lost, 0);
    let count = opened.entries.len();
    let came = merged.merge(0, "damaged.json", opened.entries, &[]);
    assert!(came.len() <= count + 1);
    if merged.read_only() {
        return false;
    }
    use_all(&merged, library);
    true
}

#[test]
fn damaged_library_files_are_refused_whole() {
    let library = library::starter().unwrap();
    let log = shop(&library);
    let text = file::write(&log, 5);
    let other = Log::new("other", "1");
    let mut dice = Dice(1);
    let mut taken = 0;
    for _ in 0..EACH {
        let damaged = damage(&text, &mut dice);
        let damaged = decode(damaged);
        if open(&damaged, &other, &library) {
            taken += 1;
            // Only what the checksum does not see was changed: line ends, space after the last line.
            assert_eq!(file::read(&damaged).unwrap().entries.len(), log.len());
        }
    }
    assert!(taken < EACH / 10, "{taken} of {EACH} were taken");
}

/// The same with a checksum that fits, as somebody would make who edits the file by hand.
#[test]
fn meddled_library_files_are_taken_whole_or_not_at_all() {
    let library = library::starter().unwrap();
    let log = shop(&library);
    let text = file::write(&log, 5);
    let body: String = text.lines().take(text.lines().count() - 1).map(|line| format!("{line}\n")).collect();
    let mut dice = Dice(2);
    let mut taken = 0;
    for round in 0..EACH {
        let damaged = decode(damage(&body, &mut dice));
        // As `file::write` does: over every line, each with one line feed.
        let lines: String = damaged.lines().map(|line| format!("{line}\n")).collect();
        let sealed = format!("{lines}{}\n", json!({ "sha256": file::sha256(&lines) }));
        let into = if round % 2 == 0 { Log::new("other", "1") } else { log.clone() };
        taken += u64::from(open(&sealed, &into, &library));
    }
    assert!((1..EACH).contains(&taken), "{taken} of {EACH} were taken");
}

fn damaged_tables(tables: [RecordTable; 2], mut dice: Dice) {
    let library = library::starter().unwrap();
    let log = shop(&library);
    let (with, _) = library.with(&log);
    let (mut clean, mut refused) = (0, 0);
    for round in 0..EACH {
        let text = tables[(round % 2) as usize].write(&with, &log);
        // A table of a handful of rows: damage must hit something.
        let text: String = text.split_inclusive("\r\n").take(6).collect();
        let text = decode(damage(&text, &mut dice));
        let preview = Preview::of(&text, &with, &log);
        let Some(change) = preview.change(&log, "damaged.csv") else {
            refused += u64::from(!preview.errors.is_empty());
            continue;
        };
        assert!(preview.errors.is_empty(), "nothing is applied while a row is wrong");
        assert_eq!(change.edits().len(), preview.added.len() + preview.changed.len(), "all rows or none");
        clean += 1;
        let mut after = log.clone();
        let of = after.append(0, change).id;
        let (_, unusable) = library.with(&after);
        assert_eq!(unusable, [], "what a table brings in can be computed with: {text}");
        after.append(0, Change::Undo { of });
        assert_eq!(library.with(&after).0, with, "one undo takes it back");
    }
    assert!(clean > 0 && refused > EACH / 4, "{clean} applied, {refused} refused");
}

#[test]
fn damaged_tables_of_records_are_taken_whole_or_not_at_all() {
    damaged_tables([RecordTable::Fabrics, RecordTable::Whites], Dice(3));
}

#[test]
fn damaged_tables_of_trials_are_taken_whole_or_not_at_all() {
    damaged_tables([RecordTable::Trials, RecordTable::Trials], Dice(4));
}
