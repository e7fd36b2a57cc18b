//! Times a big shop's library natively: 20,000 cloths and 200,000 trial readings are written, read, searched, saved and merged.
//!
//! `cargo run --release -p whitehold-bench --example library_scale`

#![allow(clippy::unwrap_used)]

use serde_json::json;
use std::time::Instant;
use whitehold::library::log::{Change, Kind, Log, LogEntry, read_line};
use whitehold::library::search::SearchIndex;
use whitehold::library::table::{Preview, RecordTable};
use whitehold::library::{self, file};

/// Runs one part of the work and prints its time.
fn timed<T>(what: &str, run: impl FnOnce() -> T) -> T {
    let start = Instant::now();
    let made = run();
    println!("{what:<44} {:>9.1} ms", start.elapsed().as_secs_f64() * 1e3);
    made
}

/// Resident memory of this process, MB (Linux).
fn memory() -> f64 {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let line = status.lines().find(|line| line.starts_with("VmRSS"));
    let kib = line.and_then(|line| line.split_whitespace().nth(1)).and_then(|kib| kib.parse::<f64>().ok());
    kib.unwrap_or(f64::NAN) / 1024.0
}

fn main() {
    let starter = library::starter().unwrap();
    let colours = ["red", "maroon", "royal", "navy", "black", "heather grey", "kelly", "orange"];
    let makers = [
        "quay",
        "harbour",
        "skerry",
        "lantern",
        "breakwater",
        "capstan",
        "halyard",
        "mizzen",
        "gannet",
        "tarn",
    ];
    let mut log = Log::new("bench", "1");
    for number in 0..20_000 {
        let mut record = starter.fabrics[number % starter.fabrics.len()].clone();
        let maker = makers[number / 7 % makers.len()];
        record.id = format!("cloth-{number}");
        record.name = format!("{} {}, {maker} {number}", colours[number / 3 % colours.len()], record.name);
        let edits = vec![log.keep(&record.id, &record).unwrap()];
        log.append(number as i64, Change::Edit { edits, from: None });
    }
    for number in 0..200_000 {
        let fields =
            json!({ "days": number % 90, "pieces": 3, "turned": number % 3, "delta_e": 1.2, "note": "" });
        let edits = vec![log.write(
            Kind::Reading,
            &format!("t{}/r{}", number / 8, number % 8),
            fields.as_object().unwrap(),
        )];
        log.append(number, Change::Edit { edits, from: None });
    }
    let lines: Vec<String> = log.entries().iter().map(LogEntry::line).collect();
    println!(
        "{} entries, {:.1} MB of lines",
        lines.len(),
        lines.iter().map(String::len).sum::<usize>() as f64 / 1e6
    );
    drop(log);

    let before = memory();
    let entries: Vec<LogEntry> =
        timed("read the lines", || lines.iter().map(|line| read_line(line).unwrap()).collect());
    let mut log = Log::new("bench", "2");
    timed("put them into the log", || log.extend(entries));
    println!("{:<44} {:>9.1} MB", "memory of the log", memory() - before);
    let (with, unusable) = timed("put the shop's records over the library's", || starter.with(&log));
    assert!(unusable.is_empty() && with.fabrics.len() == 20_000 + starter.fabrics.len());
    let index = timed("index for the search", || SearchIndex::of(&with, &log));
    println!("{:<44} {:>9.1} MB", "memory of all of it", memory() - before);
    let kinds = [Kind::Fabric];
    for asked in ["red interlock", "royl fleece", "quay 77", "", "cotton", "nothing of the kind"] {
        let found = timed(&format!("search {asked:?}"), || index.find(asked, &kinds));
        println!("    {} found", found.count);
    }
    timed("count the readings", || assert_eq!(log.count(Kind::Reading), 200_000));
    timed("all readings of one trial", || assert_eq!(log.records_of(Kind::Reading, "t77").count(), 8));
    let mut worst = 0.0_f64;
    for number in 0..1000 {
        let start = Instant::now();
        let edit = log.write(Kind::Fabric, "cloth-77", json!({ "note": number }).as_object().unwrap());
        let entry = log.append(0, Change::Edit { edits: vec![edit], from: None });
        assert!(!entry.line().is_empty());
        worst = worst.max(start.elapsed().as_secs_f64() * 1e3);
    }
    println!("{:<44} {worst:>9.1} ms", "an edit of a record, worst of 1,000");
    let text = timed("export", || file::write(&log, 0));
    let opened = timed("import: read and check whole", || file::read(&text).unwrap());
    let empty = Log::new("other", "1");
    timed("import: preview into an empty log", || empty.preview(&opened.entries));
    timed("import: preview of what is known", || log.preview(&opened.entries));
    let mut other = empty;
    timed("import: merge into an empty log", || other.merge(0, "big", opened.entries, &[]).len());
    let csv = timed("write the table of cloths", || RecordTable::Fabrics.write(&with, &log));
    timed("preview the table of cloths", || Preview::of(&csv, &with, &log));
}
