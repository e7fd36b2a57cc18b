//! Tables in and out: RFC 4180 to the letter, a preview that changes nothing, errors by row and column, and one undo.

use serde_json::{Value, json};
use whitehold::library::log::{Change, Kind, Log};
use whitehold::library::table::{Preview, RecordTable, RowError, decode};
use whitehold::library::{self, Library};
use whitehold::quantity::Problem;

fn library() -> Library {
    library::starter().unwrap()
}

fn read(text: &str) -> Preview {
    Preview::of(text, &library(), &Log::new("a", "1"))
}

fn apply(log: &mut Log, text: &str) -> Preview {
    let (with, _) = library().with(log);
    let preview = Preview::of(text, &with, log);
    assert_eq!(preview.errors, [], "{text}");
    if let Some(change) = preview.change(log, "table.csv") {
        log.append(0, change);
    }
    preview
}

fn field(log: &Log, kind: Kind, id: &str, name: &str) -> Value {
    log.record(kind, id).and_then(|record| record.fields.get(name).cloned()).unwrap_or_default()
}

/// Source: RFC 4180, section 2, rules 1 to 7, in the order of the RFC; its `aaa,bbb,ccc` made to columns of a trial.
#[test]
fn the_rules_of_rfc_4180_hold() {
    // (rule, text, what stands in the columns id, white and note of every record)
    type Rows<'a> = &'a [[&'a str; 3]];
    let table: [(&str, &str, Rows); 11] = [
        (
            "1: a line each, CRLF",
            "id,white,note\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n",
            &[["aaa", "bbb", "ccc"], ["zzz", "yyy", "xxx"]],
        ),
        (
            "2: the last line may lack its end",
            "id,white,note\r\naaa,bbb,ccc\r\nzzz,yyy,xxx",
            &[["aaa", "bbb", "ccc"], ["zzz", "yyy", "xxx"]],
        ),
        ("3: a head in the format of a line", "note,id,white\r\nccc,aaa,bbb\r\n", &[["aaa", "bbb", "ccc"]]),
        ("4: spaces are part of a field", "id,white,note\r\naaa,bbb,  c c \r\n", &[["aaa", "bbb", "  c c "]]),
        (
            "5: fields may be quoted",
            "id,white,note\r\n\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx",
            &[["aaa", "bbb", "ccc"], ["zzz", "yyy", "xxx"]],
        ),
        (
            "6: a line break in quotes",
            "id,white,note\r\n\"aaa\",\"bbb\",\"c\r\ncc\"\r\nzzz,yyy,xxx",
            &[["aaa", "bbb", "c\r\ncc"], ["zzz", "yyy", "xxx"]],
        ),
        ("6: a comma in quotes", "id,white,note\r\naaa,bbb,\"c,c\"\r\n", &[["aaa", "bbb", "c,c"]]),
        (
            "7: a quote in quotes is doubled",
            "id,white,note\r\n\"aaa\",\"bbb\",\"c\"\"cc\"\r\n",
            &[["aaa", "bbb", "c\"cc"]],
        ),
        ("beyond: lone line feeds", "id,white,note\naaa,bbb,ccc\n", &[["aaa", "bbb", "ccc"]]),
        (
            "beyond: semicolons and a byte mark",
            "\u{feff}id;white;note\r\naaa;bbb;c,c\r\n",
            &[["aaa", "bbb", "c,c"]],
        ),
        ("beyond: tabs, empty rows", "id\twhite\tnote\n\naaa\tbbb\tccc\n\t\t\n", &[["aaa", "bbb", "ccc"]]),
    ];
    for (rule, text, rows) in table {
        let mut log = Log::new("a", "1");
        apply(&mut log, text);
        let found: Vec<_> = log
            .records(Kind::Trial)
            .map(|it| [json!(it.key.id), it.fields["white"].clone(), it.fields["note"].clone()])
            .collect();
        let expected: Vec<_> = rows.iter().map(|row| row.map(|text| json!(text))).collect();
        assert_eq!(found, expected, "{rule}");
    }
}

#[test]
fn what_is_written_is_read_back_without_a_change() {
    let mut log = Log::new("a", "1");
    apply(
        &mut log,
        "id,white,lot,printed,set_c,belt_m_per_min,note,reading,days,pieces,turned,delta_e\r\n\
         t1,gannet,HL-2031,2026-11-24,165,2.4,\"=SUM(A1), \"\"so\"\"\r\nand on\",r1,1,3,0,1.2\r\n\
         t1,gannet,HL-2031,2026-11-24,165,2.4,\"=SUM(A1), \"\"so\"\"\r\nand on\",r2,7,3,1,2.6\r\n\
         t2,tern,,2028-02-29,,,'-quoted,,,,,\r\n",
    );
    apply(&mut log, "name,class,low_cure,price_per_kg,price_unit\r\n@Heron,soft,yes,9.5,$/kg\r\n");
    apply(
        &mut log,
        "name,composition,construction,weight_gsm,colour\r\nRed interlock,92% polyester 8% elastane,interlock,150,red\r\n",
    );
    assert_eq!(field(&log, Kind::Trial, "t1", "note"), json!("=SUM(A1), \"so\"\r\nand on"));
    let (with, unusable) = library().with(&log);
    assert!(unusable.is_empty());
    for (table, rows) in [
        (RecordTable::Fabrics, with.fabrics.len()),
        (RecordTable::Whites, with.whites.len()),
        (RecordTable::Trials, 4),
    ] {
        let text = table.write(&with, &log);
        let preview = Preview::of(&text, &with, &log);
        assert_eq!((preview.table, preview.errors.as_slice()), (table, &[] as &[_]));
        assert_eq!(
            (preview.added.len(), preview.changed.len(), preview.unchanged),
            (0, 0, rows),
            "{table:?}"
        );
        assert!(preview.change(&log, "x").is_none());
    }
}

/// Source: OWASP, "CSV injection": a cell must not begin with `= + - @`, tab or carriage return.
#[test]
fn no_text_of_ours_is_a_formula_in_a_spreadsheet() {
    let mut log = Log::new("a", "1");
    for (at, text) in
        ["=1", "+1", "-1", "@a", "\tb", "\rc", "'=1", "''=1", "plain", "'plain"].into_iter().enumerate()
    {
        let fields = json!({ "white": "tern", "note": text });
        let edits = vec![log.write(Kind::Trial, &format!("t{at}"), fields.as_object().unwrap())];
        log.append(0, Change::Edit { edits, from: None });
    }
    let text = RecordTable::Trials.write(&library(), &log);
    let cells = text.replace("\r\n", ",").replace("\"\t", ",\t");
    assert!(
        !cells.split(',').any(|cell| cell.trim_matches('"').starts_with(['=', '+', '-', '@', '\t'])),
        "{text}"
    );
    let preview = Preview::of(&text, &library(), &log);
    assert_eq!((preview.unchanged, preview.changed.len()), (10, 0), "{:?}", preview.changed);
}

#[test]
fn a_preview_says_what_would_change_and_changes_nothing() {
    let mut log = Log::new("a", "1");
    let text = "id,name,weight_gsm,composition,construction\r\n\
        cotton-jersey,Cotton jersey,160,100% cotton,jersey\r\n\
        cotton-rib,Cotton rib,220,,\r\n\
        ,Hemp fleece,300,55% hemp 45% cotton,fleece\r\n";
    // An empty cell takes a field away, and a cloth without its fibres is none.
    assert_eq!(read(text).errors.len(), 1);
    let text = text.replace("220,,", "220,100% cotton,rib");
    let preview = apply(&mut log, &text);
    assert_eq!(preview.added.iter().map(|key| &*key.id).collect::<Vec<_>>(), ["hemp-fleece"]);
    let changes: Vec<_> =
        preview.changed.iter().map(|(key, what)| (&*key.id, what.len(), what[0].path.as_str())).collect();
    assert_eq!(changes, [("cotton-jersey", 1, "areal_weight")]);
    assert_eq!(preview.unchanged, 1);
    assert_eq!(field(&log, Kind::Fabric, "cotton-jersey", "areal_weight")["value"], json!(160.0));
    // The rest of the record that ships came along.
    assert_eq!(field(&log, Kind::Fabric, "cotton-jersey", "nombre"), json!("Punto liso de algodón"));

    // One entry, and one undo takes all of it back.
    assert_eq!(log.len(), 1);
    let of = log.to_undo().unwrap().id.clone();
    log.append(0, Change::Undo { of });
    assert_eq!((log.count(Kind::Fabric), library().with(&log).0), (0, library()));
}

#[test]
fn every_bad_cell_is_named_by_row_and_column() {
    let fabrics = "id,name,composition,construction,weight_gsm,weight_low_gsm,weight_high_gsm,dye_class\n";
    let whites = "id,name,class,low_cure,price_per_kg\n";
    let trials = "id,white,printed,set_c,belt_m_per_min,reading,days,pieces,turned,delta_e\n";
    type Fits = fn(&Problem) -> bool;
    let range: Fits = |it| matches!(it, Problem::OutOfRange { .. });
    let empty: Fits = |it| *it == Problem::Empty;
    let unknown: Fits = |it| matches!(it, Problem::Unknown { .. });
    let clash: Fits = |it| matches!(it, Problem::Contradiction { .. });
    let number: Fits = |it| *it == Problem::NotANumber;
    let odd: Fits = |it| *it == Problem::NotUnderstood;
    let sum: Fits = |it| matches!(it, Problem::SumNot100 { .. });
    let table: [(&str, &str, &str, Fits); 33] = [
        (fabrics, "a,A,100% cotton,jersey,19,,,", "weight_gsm", range),
        (fabrics, "a,A,100% cotton,jersey,heavy,,,", "weight_gsm", number),
        (fabrics, "a,A,100% cotton,jersey,inf,,,", "weight_gsm", number),
        (fabrics, "a,A,100% cotton,jersey,\"1,500\",,,", "weight_gsm", number),
        (fabrics, "a,A,100% cotton,jersey,150,160,,", "weight_low_gsm", clash),
        (fabrics, "a,A,100% cotton,jersey,150,,140,", "weight_high_gsm", clash),
        (fabrics, "a,A,100% cotton,jersy,150,,,", "construction", unknown),
        (fabrics, "a,A,100% cotton,jersey,150,,,blue", "dye_class", unknown),
        (fabrics, "a,A,80% cotton 30% nylon,jersey,150,,,", "composition", sum),
        (fabrics, "a,A,,jersey,150,,,", "composition", empty),
        (fabrics, "a,,100% cotton,jersey,150,,,", "name", empty),
        (fabrics, ",,100% cotton,jersey,150,,,", "id", empty),
        (fabrics, "a/b,A,100% cotton,jersey,150,,,", "id", odd),
        (fabrics, "a,A,100% cotton,jersey,150", "row", range),
        (fabrics, "a,A,100% cotton,jersey,150,,,,surplus", "row", range),
        (whites, "w,W,snow,no,9", "class", unknown),
        (whites, "w,W,soft,maybe,9", "low_cure", unknown),
        (whites, "w,W,soft,no,-1", "price_per_kg", range),
        (whites, "w,W,,no,9", "class", empty),
        (trials, "t,,2026-11-24,165,2.4,,,,,", "white", empty),
        (trials, "t,tern,2027-02-29,165,2.4,,,,,", "printed", odd),
        (trials, "t,tern,1900-02-29,165,2.4,,,,,", "printed", odd),
        (trials, "t,tern,24/11/2026,165,2.4,,,,,", "printed", odd),
        (trials, "t,tern,2026-11-24,16500,2.4,,,,,", "set_c", range),
        (trials, "t,tern,2026-11-24,165,0,,,,,", "belt_m_per_min", range),
        (trials, "t,tern,2026-11-24,165,2.4,,7,3,0,", "reading", empty),
        (trials, "t,tern,2026-11-24,165,2.4,r,,3,0,", "days", empty),
        (trials, "t,tern,2026-11-24,165,2.4,r,7,,0,", "pieces", empty),
        (trials, "t,tern,2026-11-24,165,2.4,r,7,2.5,0,", "pieces", number),
        (trials, "t,tern,2026-11-24,165,2.4,r,7,3,4,", "turned", clash),
        (trials, "t,tern,2026-11-24,165,2.4,r/1,7,3,0,", "reading", odd),
        (trials, "t,tern,2026-11-24,165,2.4,r,7,3,0,\nt,tern,2026-11-24,165,2.4,r,7,3,0,", "id", clash),
        (trials, "t,tern,2026-11-24,165,2.4,r,7,3,0,\nt,chalk,2026-11-24,165,2.4,s,7,3,0,", "id", clash),
    ];
    for (head, row, column, fits) in table {
        let preview = read(&format!("{head}{row}\n"));
        let line = 1 + row.lines().count() as u64;
        let error = preview.errors.first().unwrap_or_else(|| panic!("{row}: nothing wrong"));
        assert_eq!(
            (preview.errors.len(), error.line, error.error.field.as_str()),
            (1, line, column),
            "{row}: {error:?}"
        );
        assert!(fits(&error.error.problem), "{row}: {error:?}");
        assert!(preview.change(&Log::new("a", "1"), "x").is_none(), "{row}");
    }
}

#[test]
fn bad_columns_are_named_and_nothing_is_read() {
    for (head, columns) in [
        ("id,name,wieght_gsm", vec!["column"]),
        ("id,name,name", vec!["column"]),
        ("weight_gsm,construction", vec!["id"]),
        ("", vec!["column", "column", "column", "id"]),
        ("blue,green", vec!["column", "column", "id"]),
    ] {
        let preview = read(&format!("{head}\na,b,c\n"));
        let found: Vec<_> = preview.errors.iter().map(|error| error.error.field.as_str()).collect();
        assert_eq!(found, columns, "{head}");
        assert!(preview.errors.iter().all(RowError::of_head));
        assert!(preview.added.is_empty() && preview.changed.is_empty());
    }
}

#[test]
fn one_bad_row_holds_back_all_of_them() {
    let preview = read("name,class\nHeron,soft\nEgret,sofd\nCrane,stretch\n");
    assert_eq!((preview.errors.len(), preview.errors[0].line, preview.added.len()), (1, 3, 2));
    assert!(preview.change(&Log::new("a", "1"), "x").is_none());
}

/// Source: ISO 8859-1: 0xF3 is ó, 0xF1 is ñ. A comma is the decimal point where semicolons part the cells.
#[test]
fn a_spanish_spreadsheet_is_read() {
    let bytes = b"id;name;nombre;composition;construction;weight_gsm\r\nx;Rib;Canal\xe9 de a\xf1o;97,5% algod\xf3n 2,5% elastano;rib;212,5\r\n";
    let mut log = Log::new("a", "1");
    apply(&mut log, &decode(bytes.to_vec()));
    assert_eq!(field(&log, Kind::Fabric, "x", "nombre"), json!("Canalé de año"));
    assert_eq!(field(&log, Kind::Fabric, "x", "areal_weight")["value"], json!(212.5));
    assert_eq!(
        field(&log, Kind::Fabric, "x", "composition_percent"),
        json!({ "cotton": 97.5, "elastane": 2.5 })
    );
    assert_eq!(decode("añada".into()), "añada");
}
