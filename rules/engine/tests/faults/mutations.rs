//! Packs as a cat on the keyboard leaves them.

use lammas_engine::check::check;
use lammas_engine::fault::Weight;
use lammas_engine::read::PackFile;
use proptest::prelude::*;

use crate::support::MINI;

/// One thing that happens to a file.
#[derive(Clone, Debug)]
enum Blow {
    /// A stretch is gone.
    Cut(usize, usize),
    /// A stretch stands there twice.
    Twice(usize, usize),
    /// A stretch of another file is put in.
    Paste(usize, usize, usize, usize),
    /// A byte becomes another one.
    Byte(usize, u8),
    /// Something that means something in YAML or in an expression is put in.
    Insert(usize, &'static str),
    /// A line goes to another place.
    Line(usize, usize),
}

const PIECES: [&str; 40] = [
    "{",
    "}",
    "[",
    "]",
    "\"",
    "'",
    ":",
    ": ",
    "- ",
    "\n",
    "\n  ",
    "\t",
    "#",
    "&a ",
    "*a",
    "!!str ",
    "|",
    ">",
    "---\n",
    "? ",
    "not ",
    " and ",
    " or ",
    "(",
    ")",
    " is absent",
    " < ",
    "..",
    " else ",
    " °C",
    "-",
    "999999999999999999999",
    "1e308",
    "NaN",
    ".inf",
    "null",
    "~",
    "é",
    "\u{0}",
    "\u{feff}",
];

fn blow() -> impl Strategy<Value = Blow> {
    let at = || 0_usize..1_000_000;
    let short = || 1_usize..60;
    prop_oneof![
        (at(), short()).prop_map(|(from, length)| Blow::Cut(from, length)),
        (at(), short()).prop_map(|(from, length)| Blow::Twice(from, length)),
        (at(), at(), at(), short()).prop_map(|(to, file, from, length)| Blow::Paste(to, file, from, length)),
        (at(), any::<u8>()).prop_map(|(at, byte)| Blow::Byte(at, byte)),
        (at(), prop::sample::select(&PIECES[..])).prop_map(|(at, piece)| Blow::Insert(at, piece)),
        (at(), at()).prop_map(|(from, to)| Blow::Line(from, to)),
    ]
}

/// A stretch of `length` bytes somewhere in `bytes`; where exactly hangs on the length of it.
fn stretch(bytes: &[u8], from: usize, length: usize) -> std::ops::Range<usize> {
    let from = from % (bytes.len() + 1);
    from..(from + length).min(bytes.len())
}

fn strike(text: &str, blow: &Blow) -> String {
    let mut bytes = text.as_bytes().to_vec();
    match blow {
        Blow::Cut(from, length) => {
            bytes.drain(stretch(&bytes, *from, *length));
        }
        Blow::Twice(from, length) => {
            let range = stretch(&bytes, *from, *length);
            let copy = bytes[range.clone()].to_vec();
            bytes.splice(range.start..range.start, copy);
        }
        Blow::Paste(to, file, from, length) => {
            let other = MINI[file % MINI.len()].1.as_bytes();
            let copy = other[stretch(other, *from, *length)].to_vec();
            let to = to % (bytes.len() + 1);
            bytes.splice(to..to, copy);
        }
        Blow::Byte(at, byte) => {
            let at = at % bytes.len().max(1);
            if let Some(cell) = bytes.get_mut(at) {
                *cell = *byte;
            }
        }
        Blow::Insert(at, piece) => {
            let at = at % (bytes.len() + 1);
            bytes.splice(at..at, piece.bytes());
        }
        Blow::Line(from, to) => {
            let mut lines: Vec<&str> = text.split_inclusive('\n').collect();
            if !lines.is_empty() {
                let line = lines.remove(from % lines.len());
                lines.insert(to % (lines.len() + 1), line);
            }
            bytes = lines.concat().into_bytes();
        }
    }
    String::from_utf8_lossy(&bytes).into_owned()
}

/// Whatever is said has a place that is there, a code with a page, and words.
fn is_sound(files: &[PackFile]) -> Result<(), TestCaseError> {
    let checked = check(files);
    for fault in &checked.faults {
        let known = lammas_engine::check::page(fault.code).is_some();
        prop_assert!(known, "{} has no page", fault.code);
        let lines =
            files.iter().find(|file| file.path == fault.place.file).map_or(0, |file| file.text.split('\n').count() + 1);
        prop_assert!(fault.place.line as usize <= lines, "{fault} stands beyond the {lines} lines of its file");
        prop_assert!(!fault.message.is_empty() && !fault.message.ends_with('.'), "{fault}");
        for type_name in ["u8", "u16", "f64", "Option<", "struct ", "enum ", "serde", "::"] {
            let quoted_from_the_pack = files.iter().any(|file| file.text.contains(type_name));
            prop_assert!(quoted_from_the_pack || !fault.message.contains(type_name), "{fault}");
        }
    }
    let errors = checked.faults.iter().any(|fault| fault.weight == Weight::Error);
    prop_assert_eq!(checked.set.is_none(), errors);
    Ok(())
}

fn mini() -> Vec<PackFile> {
    MINI.iter().map(|(path, text)| PackFile { path: (*path).to_owned(), text: (*text).to_owned() }).collect()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 1500, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_blow_on_the_files_makes_the_checker_fall_over(blows in prop::collection::vec((0_usize..MINI.len(), blow()), 1..6)) {
        let mut files = mini();
        for (file, blow) in &blows {
            let text = strike(&files[*file].text, blow);
            files[*file].text = text;
        }
        is_sound(&files)?;
    }

    #[test]
    fn no_expression_makes_the_checker_fall_over(words in prop::collection::vec(prop::sample::select(&WORDS[..]), 0..14)) {
        let condition = words.join(" ");
        let mut files = mini();
        let rules = files.iter_mut().find(|file| file.path == "rules/rose.yaml").expect("the rules are there");
        rules.text = rules.text.replace("not climate.frost_free or water.interval < 8 days", &condition);
        is_sound(&files)?;
    }
}

/// Words of expressions, so that some of what is made of them can be read.
const WORDS: [&str; 48] = [
    "and",
    "or",
    "not",
    "(",
    ")",
    "<",
    "<=",
    ">",
    ">=",
    "=",
    "!=",
    "in",
    "{",
    "}",
    ",",
    "+",
    "-",
    "*",
    "/",
    "2",
    "7.2",
    "30 °C",
    "95 °F",
    "5 K",
    "8 weeks",
    "3 days",
    "1 year",
    "10 %",
    "550 °Cd",
    "soil.ph",
    "soil.moisture",
    "dry",
    "wet",
    "tmax",
    "mean(tmax, 7 days)",
    "site.mulched",
    "signs has aphids",
    "first_frost.median",
    "is absent",
    "weeks_to(first_frost.median)",
    "days_from(last(feed))",
    "plant.age",
    "plant.stage",
    "bloom",
    "done(oil, within 14 days)",
    "heat_sum(10 °C, from growing.start)",
    "season.heat_left",
    "plant.trait(flowering)",
];

#[test]
fn two_thousand_rules_are_checked_as_well_as_eight() {
    let mut files = mini();
    let rules = files.iter().find(|file| file.path == "rules/rose.yaml").expect("the rules are there").text.clone();
    let soak = rules.split("- id: rose.soak\n").nth(1).and_then(|rest| rest.split("- id: ").next()).expect("a rule");
    for part in 0..4 {
        let text = (0..500).map(|n| format!("- id: rose.soak-{part}-{n}\n{soak}")).collect();
        files.push(PackFile { path: format!("rules/many-{part}.yaml"), text });
    }
    let checked = check(&files);
    assert_eq!(checked.faults, []);
    assert_eq!(checked.set.map(|set| set.rules.len()), Some(2008));
}
