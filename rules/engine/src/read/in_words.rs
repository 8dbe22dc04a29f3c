//! What the YAML reader says, in the words of someone who writes rules: which field, what is needed, what stands there.

use crate::fault::{Fault, Place};
use crate::nearest::nearest;

/// The fault for a message of the reader at a place of a file's text.
pub(super) fn fault(place: Place, text: &str, message: &str) -> Fault {
    let message = message.lines().next().unwrap_or_default();
    let message = message.rfind(" at line ").and_then(|at| message.get(..at)).unwrap_or(message);
    let here = Here::of(&place, text);
    shaped(&place, &here, message).unwrap_or_else(|| {
        Fault::error("not-yaml", place, tidy(message)).help(
            "the slip is here or close by: look for a quote or bracket left open, or a tab at the beginning of a line",
        )
    })
}

/// Fields that hold a text in every language.
const TEXTS: [&str; 16] = [
    "title",
    "name",
    "why",
    "about",
    "look",
    "text",
    "because",
    "what",
    "ask",
    "tell",
    "early",
    "late",
    "never",
    "analysis",
    "professional",
    "review",
];

/// What stands around the place.
struct Here<'t> {
    /// The field before it on its line, in backticks, or `the entry`.
    field: String,
    /// The value that begins there, up to the next mark.
    found: &'t str,
    /// It is the first thing in the file.
    first: bool,
}

impl<'t> Here<'t> {
    fn of(place: &Place, text: &'t str) -> Self {
        let index = |n: u32| usize::try_from(n).unwrap_or(usize::MAX).saturating_sub(1);
        let line = text.lines().nth(index(place.line)).unwrap_or_default();
        let at = line.char_indices().nth(index(place.column)).map_or(line.len(), |(at, _)| at);
        let (before, after) = line.split_at(at);
        let field =
            before.rsplit(['{', ',', ' ', '[']).find_map(|word| word.strip_suffix(':')).filter(|word| !word.is_empty());
        let found = match after.chars().next() {
            Some(quote @ ('"' | '\'')) => after.get(1..).and_then(|rest| rest.split(quote).next()),
            _ => after.split([',', '}', ']', '#']).next(),
        };
        Self {
            field: field.map_or_else(|| "the entry".to_owned(), |field| format!("`{field}`")),
            found: found.unwrap_or_default().trim(),
            first: place.line <= 1 && place.column <= 1,
        }
    }
}

/// A fault of shape, if the message tells of one.
fn shaped(place: &Place, here: &Here<'_>, message: &str) -> Option<Fault> {
    let Here { field, found, first } = here;
    let fault = |words: String| Fault::error("wrong-shape", place.clone(), words);
    let number = |what: &str| fault(format!("{field} is {what}, found `{found}`"));
    Some(match message {
        "expected string scalar" => fault(format!("{field} is one value, not a list and not a group of fields")),
        "expected mapping start" if *first => fault("this file holds one entry with its fields".to_owned()),
        "expected mapping start" => {
            let cure = if TEXTS.contains(&field.trim_matches('`')) {
                "a text is written per language: `{en: \"…\", es: \"…\"}`"
            } else {
                "write its fields in braces, `{…}`, or a line each, deeper than it"
            };
            fault(format!("{field} has fields of its own, found {}", quoted(found))).help(cure)
        }
        "expected sequence start" if *first => fault("this file is a list of entries".to_owned())
            .help("each entry begins with `- ` at the beginning of a line"),
        "expected sequence start" => {
            fault(format!("{field} is a list, found {}", quoted(found))).help("write it in brackets: `[…]`")
        }
        // Grades are the only numbers so small: urgency and impact.
        "invalid u8" => number("a whole number from 0 to 3"),
        "invalid u16" => number("a whole number from 0 to 65535"),
        "invalid floating point" => number("a number"),
        "invalid boolean" => number("yes or no"),
        "cannot deserialize null into string; use Option<String>" => fault(format!("{field} has no value"))
            .help("write one, or take the field out; a text that looks like nothing stands in quotes"),
        "cannot deserialize tagged scalar into string" => {
            fault(format!("{field} has a tag")).help("take the word with the exclamation mark out")
        }
        words if words.contains(" enum") => {
            fault(format!("{field} is one word of a fixed list, found {}", quoted(found)))
        }
        "input is out of range" | "input contains invalid characters" | "premature end of input" | "trailing input" => {
            number("a date such as `2026-09-15`")
        }
        _ => return named(place, here, message),
    })
}

/// Messages that carry a name.
fn named(place: &Place, here: &Here<'_>, message: &str) -> Option<Fault> {
    let fault = |words: String| Fault::error("wrong-shape", place.clone(), words);
    if let Some(rest) = message.strip_prefix("missing field ") {
        return Some(fault(format!("the field {rest} is missing here")));
    }
    if let Some(rest) = message.strip_prefix("duplicate mapping key: ") {
        let key = rest.split(',').next().unwrap_or_default();
        return Some(fault(format!("the field `{key}` stands there twice")).help("take one of them out"));
    }
    if let Some(rest) = message.strip_prefix("unknown field ") {
        let (word, known) = word_and_known(rest);
        let fault = fault(format!("there is no field `{word}` here"));
        if super::written::WORDS.contains(&word) {
            return Some(fault.help(format!("`{word}` stands first in its entry: `- {word}: ID`")));
        }
        return Some(nearest_or_all(fault, word, &known, "the fields are"));
    }
    if let Some(rest) = message.strip_prefix("unknown variant ") {
        let (word, known) = word_and_known(rest);
        let fault = fault(format!("{} can't be `{word}`", here.field));
        return Some(nearest_or_all(fault, word, &known, "it is one of"));
    }
    let of_a_kind = message.strip_prefix("invalid type: ").or_else(|| message.strip_prefix("invalid value: "));
    if let Some((found, expected)) = of_a_kind.and_then(|rest| rest.split_once(", expected ")) {
        return Some(fault(format!("expected {expected}, found {}", kind_in_words(found))));
    }
    // Our own shapes say it all, some with the cure behind a colon.
    let own = message.strip_prefix("expected ")?;
    let (own, cure) = own.rsplit_once(": write ").map_or((own, None), |(own, cure)| (own, Some(cure)));
    let fault = fault(format!("expected {own}"));
    Some(match cure {
        Some(cure) => fault.help(format!("write {cure}")),
        None => fault,
    })
}

fn quoted(found: &str) -> String {
    match found.chars().next() {
        None => "nothing".to_owned(),
        Some('[') => "a list".to_owned(),
        Some('{') => "a group of fields".to_owned(),
        Some(_) => format!("`{found}`"),
    }
}

/// ``integer `3` `` into `` `3` ``.
fn kind_in_words(found: &str) -> String {
    match found {
        "map" => "a group of fields".to_owned(),
        "sequence" => "a list".to_owned(),
        _ => match found.split(['`', '"']).nth(1) {
            Some(value) => format!("`{value}`"),
            None => "nothing".to_owned(),
        },
    }
}

/// `` `word`, expected one of a, b `` into the word and the known ones.
fn word_and_known(rest: &str) -> (&str, Vec<&str>) {
    let (word, list) = rest.split_once(", expected ").unwrap_or((rest, ""));
    let list = list.strip_prefix("one of ").unwrap_or(list);
    let known =
        list.split([',', ' ']).map(|name| name.trim_matches('`')).filter(|name| !name.is_empty() && *name != "or");
    (word.trim_matches('`'), known.collect())
}

fn nearest_or_all(fault: Fault, word: &str, known: &[&str], lead: &str) -> Fault {
    match nearest(word, known.iter().copied()) {
        Some(name) => fault.help(format!("did you mean `{name}`?")),
        None if known.is_empty() => fault,
        None => fault.help(format!("{lead} {}", known.join(", "))),
    }
}

/// A message of the reader about the syntax, without the names of its functions and options.
fn tidy(message: &str) -> String {
    if message.starts_with("multiple YAML documents") {
        return "the file holds several documents: `---` may stand only at its top".to_owned();
    }
    let end = [", set ", "; use ", "If you just use"].into_iter().filter_map(|advice| message.find(advice)).min();
    end.and_then(|end| message.get(..end)).unwrap_or(message).trim_end_matches(['.', ' ']).to_owned()
}
