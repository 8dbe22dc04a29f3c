//! Slips of the pen: in every word of the mini pack that means something letters are swapped, left out or doubled. The fault must
//! stand under the word that is wrong, say it, and where it names a cure, the cure must put the set right.

use std::collections::BTreeMap;

use lammas_engine::check::{Checked, check};
use lammas_engine::fault::{Fault, Weight};
use lammas_engine::read::PackFile;

use crate::support::MINI;

/// A word of a file: where it stands.
struct Word {
    file: usize,
    from: usize,
    to: usize,
}

/// Words that mean something: keys, ids, names of facts, markers, choices, units. Not the texts for people, and not what an
/// id is called where it is given: there a slip is a new name, and the fault stands where the old one is asked for.
fn words() -> Vec<Word> {
    let mut out = Vec::new();
    for (file, (path, text)) in MINI.iter().enumerate() {
        let is_read = ["rules/", "materials/", "problems/", "plants/"].iter().any(|folder| path.starts_with(folder));
        if !is_read {
            continue;
        }
        let mut line_at = 0;
        for line in text.split_inclusive('\n') {
            let is_name = |at: usize| {
                let before = line[..at].trim_end();
                before.ends_with("id:") || before.ends_with("{id:") || before.ends_with("stages:")
            };
            // A text for people begins at its language.
            let end = ["{en:", "title:", "#"].iter().filter_map(|mark| line.find(mark)).min().unwrap_or(line.len());
            let mut from = 0;
            while let Some(start) = line[from..end].find(|c: char| c.is_ascii_lowercase()).map(|at| from + at) {
                let length = line[start..]
                    .find(|c: char| !(c.is_ascii_lowercase() || c.is_ascii_digit() || "_.-".contains(c)))
                    .unwrap_or(line.len() - start);
                if length >= 5 && start + length <= end && !is_name(start) {
                    out.push(Word { file, from: line_at + start, to: line_at + start + length });
                }
                from = (start + length).min(end);
            }
            line_at += line.len();
        }
    }
    out
}

/// The word with letters swapped, left out, or doubled.
fn slips(word: &str) -> [String; 3] {
    let middle = word.len() / 2;
    let mut swapped: Vec<u8> = word.bytes().collect();
    swapped.swap(middle - 1, middle);
    let left_out = format!("{}{}", &word[..middle], &word[middle + 1..]);
    let doubled = format!("{}{}", &word[..=middle], &word[middle..]);
    [String::from_utf8(swapped).unwrap(), left_out, doubled]
}

fn files() -> Vec<PackFile> {
    MINI.iter().map(|(path, text)| PackFile { path: (*path).to_owned(), text: (*text).to_owned() }).collect()
}

/// The bytes under a fault in the text of its file.
fn under(fault: &Fault, text: &str) -> Option<(usize, usize)> {
    let line = usize::try_from(fault.place.line).ok()?.checked_sub(1)?;
    let column = usize::try_from(fault.place.column).ok()?.checked_sub(1)?;
    let at: usize = text.split_inclusive('\n').take(line).map(str::len).sum();
    let rest = text.get(at..)?;
    let byte = |chars: usize| rest.char_indices().nth(chars).map_or(rest.len(), |(byte, _)| byte);
    Some((at + byte(column), at + byte(column + usize::try_from(fault.place.width).ok()?)))
}

fn errors(checked: &Checked) -> impl Iterator<Item = &Fault> {
    checked.faults.iter().filter(|fault| fault.weight == Weight::Error)
}

#[test]
fn a_slip_of_the_pen_is_pointed_at_and_its_cure_puts_the_set_right() {
    let (mut broken, mut pointed, mut cures, mut cured, mut calls) = (0, 0, 0, 0, 0);
    let mut codes: BTreeMap<&str, usize> = BTreeMap::new();
    let (mut elsewhere, mut not_cured) = (Vec::new(), Vec::new());
    for word in words() {
        let (path, text) = MINI[word.file];
        for slip in slips(&text[word.from..word.to]) {
            if slip == text[word.from..word.to] {
                continue;
            }
            let mut files = files();
            files[word.file].text.replace_range(word.from..word.to, &slip);
            let wrong = files[word.file].text.clone();
            let checked = check(&files);
            if errors(&checked).next().is_none() {
                continue; // another word that means something too
            }
            broken += 1;
            let end = word.from + slip.len();
            // Under the word or the part of it that is wrong; of a call it begins there and goes on over what is in brackets.
            let here = |fault: &&Fault| {
                let place = under(fault, &wrong).filter(|_| fault.place.file == path);
                place.is_some_and(|(from, to)| {
                    let is_call = from == word.from && wrong[end..].starts_with('(');
                    from >= word.from && from <= end && (to <= end.max(from) || is_call)
                })
            };
            let Some(fault) = errors(&checked).find(here) else {
                elsewhere.push(format!("{path}: `{slip}`: {}", errors(&checked).next().unwrap()));
                continue;
            };
            assert!(fault.message.contains('`') && !fault.message.ends_with('.'), "{fault}");
            pointed += 1;
            *codes.entry(fault.code).or_default() += 1;
            // "did you mean `X`?": X is put under the fault.
            let cure = fault.help.as_deref().and_then(|help| help.strip_prefix("did you mean `"));
            let Some(cure) = cure.and_then(|cure| cure.split('`').next()) else { continue };
            cures += 1;
            let (from, to) = under(fault, &wrong).unwrap();
            let to = if to == from || to > end { end } else { to };
            calls += usize::from(under(fault, &wrong).is_some_and(|(_, to)| to > end));
            files[word.file].text.replace_range(from..to, cure);
            let again = check(&files);
            match errors(&again).next() {
                None => cured += 1,
                Some(left) => not_cured.push(format!("{path}: `{slip}` -> `{cure}`: {left}")),
            }
        }
    }
    let share = |part: usize, of: usize| format!("{part} of {of} ({:.1} %)", 100.0 * part as f64 / of.max(1) as f64);
    println!("broken files              {broken}");
    println!("the fault is under it     {}", share(pointed, broken));
    println!("  and its arguments       {}", share(calls, pointed));
    println!("with a cure               {}", share(cures, pointed));
    println!("the cure compiles         {}", share(cured, cures));
    println!("{codes:?}");
    for line in elsewhere.iter().take(12).chain(not_cured.iter().take(12)) {
        println!("  {line}");
    }
    assert!(broken >= 200);
    assert!(pointed * 100 >= broken * 95, "{}", share(pointed, broken));
    assert!(cured * 100 >= cures * 90 && cures > 100, "{}", share(cured, cures));
}
