//! One fault: where it is made, and what is written there instead.

use anyhow::{Context, Result};
use serde_json::Value;
use std::path::PathBuf;

/// A change of the sources that cargo-mutants proposes.
#[derive(Clone, Debug, PartialEq)]
pub struct Fault {
    /// Place and change: `src/cure/mod.rs:45:9: replace * with / in Cure<L>::advance`.
    pub name: String,
    /// The file, from the project's root.
    pub file: PathBuf,
    /// Where the replaced text begins, and where what follows it begins.
    from: TextPlace,
    to: TextPlace,
    replacement: String,
}

/// A place in a text.
#[derive(Clone, Copy, Debug, PartialEq)]
struct TextPlace {
    /// Lines before its own.
    lines: usize,
    /// Characters before it in its line.
    characters: usize,
}

impl Fault {
    /// Reads all faults that cargo-mutants lists as JSON.
    ///
    /// # Errors
    /// [`anyhow::Error`] if it is no such list.
    pub fn read_all(json: &[u8]) -> Result<Vec<Self>> {
        let listed: Vec<Value> = serde_json::from_slice(json)?;
        listed
            .iter()
            .map(|it| Self::of(it).with_context(|| format!("no mutant can be read from {it}")))
            .collect()
    }

    fn of(listed: &Value) -> Option<Self> {
        let text = |field: &str| listed[field].as_str().map(str::to_owned);
        let place = |end: &str| {
            let before = |axis| usize::try_from(listed["span"][end][axis].as_u64()?.checked_sub(1)?).ok();
            Some(TextPlace { lines: before("line")?, characters: before("column")? })
        };
        Some(Self {
            name: text("name")?,
            file: text("file")?.into(),
            from: place("start")?,
            to: place("end")?,
            replacement: text("replacement")?,
        })
    }

    /// The text of the file with the fault in it.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the text is shorter than the fault's place.
    pub fn planted(&self, text: &str) -> Result<String> {
        let halves = self.from.offset(text).zip(self.to.offset(text));
        let halves = halves.and_then(|(from, to)| Some((text.get(..from)?, text.get(to..)?)));
        let (before, after) = halves.with_context(|| format!("{} has no such place", self.file.display()))?;
        // The comment keeps the replacement apart from what follows it.
        Ok(format!("{before}{} /* planted */{after}", self.replacement))
    }
}

impl TextPlace {
    /// Bytes before the place.
    fn offset(self, text: &str) -> Option<usize> {
        let mut lines = text.split_inclusive('\n');
        let line = (0..self.lines).try_fold(0, |at, _| Some(at + lines.next()?.len()))?;
        let rest = &text[line..];
        let ends = rest.char_indices().map(|(at, _)| at).chain([rest.len()]);
        ends.map(|at| line + at).nth(self.characters)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn a_fault_is_planted_where_it_is_listed() {
        let text = "// ü\nfn f(x: f64) -> f64 {\n    /* ü */ x * 2.0\n}\n";
        let rows = [
            (
                "an operator",
                [3, 15, 3, 16],
                "/",
                "fn f(x: f64) -> f64 {\n    /* ü */ x / /* planted */ 2.0\n}\n",
            ),
            ("a body of lines", [2, 21, 4, 2], "{ 0.0 }", "fn f(x: f64) -> f64 { 0.0 } /* planted */\n"),
            ("the end of the text", [5, 1, 5, 1], "x", &format!("{}x /* planted */", &text[6..])),
        ];
        for (case, [line, column, last, end], replacement, expected) in rows {
            let span = json!({ "start": { "line": line, "column": column }, "end": { "line": last, "column": end } });
            let listed =
                json!([{ "name": "n", "file": "src/f.rs", "span": span, "replacement": replacement }]);
            let faults = Fault::read_all(listed.to_string().as_bytes()).unwrap();
            assert_eq!(faults[0].planted(text).unwrap(), format!("// ü\n{expected}"), "{case}");
            assert!(faults[0].planted("").is_err(), "{case} in an empty text");
        }
        assert!(Fault::read_all(br#"[{ "name": "n" }]"#).is_err());
    }
}
