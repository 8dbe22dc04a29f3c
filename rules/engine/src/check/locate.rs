//! The place of a text in its file. Texts are read without their places, so these are looked up again in the file when a
//! fault has to point at one: a scan for keys that steps over quoted scalars and comments.

use crate::fault::Place;
use crate::pack::{At, Pack};

/// A stretch of a file, in bytes.
#[derive(Clone, Copy, Debug)]
pub(super) struct Stretch<'p> {
    file: &'p str,
    text: &'p str,
    from: usize,
    to: usize,
}

impl<'p> Stretch<'p> {
    /// The whole file.
    #[must_use]
    pub(super) fn file(pack: &'p Pack, file: &'p str) -> Self {
        let text = pack.files.get(file).map_or("", |text| &**text);
        Self { file, text, from: 0, to: text.len() }
    }

    /// The entry of a list in which this value stands.
    #[must_use]
    pub(super) fn entry<T>(pack: &'p Pack, file: &'p str, at: &At<T>) -> Self {
        let whole = Self::file(pack, file);
        let here = whole.offset(at);
        let lines = starts_of_lines(whole.text);
        let dash = |start: usize| {
            let rest = whole.text.get(start..).unwrap_or_default();
            let indent = rest.len() - rest.trim_start_matches(' ').len();
            rest.trim_start_matches(' ').starts_with("- ").then_some(indent)
        };
        let first = lines.iter().rev().filter(|start| **start <= here).find_map(|start| Some((*start, dash(*start)?)));
        let Some((from, indent)) = first else { return whole };
        let to =
            lines.iter().copied().filter(|start| *start > here).find(|start| dash(*start).is_some_and(|i| i <= indent));
        Self { from, to: to.unwrap_or(whole.to), ..whole }
    }

    /// From a value on, to the end of this stretch.
    #[must_use]
    pub(super) fn starting_at<T>(self, at: &At<T>) -> Self {
        Self { from: self.offset(at), ..self }
    }

    /// The key and its value, for the `nth` time that the key stands here.
    #[must_use]
    pub(super) fn key(self, key: &str, nth: usize) -> Option<Self> {
        let bytes = self.text.as_bytes();
        let mut seen = 0;
        let mut at = self.from;
        while at < self.to {
            let stepped = over_quotes_and_comments(bytes, at);
            if stepped > at {
                at = stepped;
                continue;
            }
            if begins_word(bytes, at) && self.text.get(at..).is_some_and(|rest| is_key(rest, key)) {
                if seen == nth {
                    return Some(Self { from: at, to: self.end_of_value(at, key).min(self.to), ..self });
                }
                seen += 1;
            }
            at += 1;
        }
        None
    }

    /// The first place of these words in the stretch.
    #[must_use]
    pub(super) fn words(self, words: &str) -> Option<Self> {
        let found = self.text.get(self.from..self.to)?.find(words)?;
        Some(Self { from: self.from + found, to: self.from + found + words.len(), ..self })
    }

    /// Where it begins.
    #[must_use]
    pub(super) fn place(self) -> Place {
        let before = self.text.get(..self.from).unwrap_or_default();
        let line = before.rsplit('\n').next().unwrap_or_default();
        let number = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
        Place {
            file: self.file.to_owned(),
            line: number(before.matches('\n').count() + 1),
            column: number(line.chars().count() + 1),
            width: 0,
        }
    }

    fn offset<T>(&self, at: &At<T>) -> usize {
        let number = |n: u64| usize::try_from(n).unwrap_or(usize::MAX).saturating_sub(1);
        let start = starts_of_lines(self.text).get(number(at.referenced.line())).copied().unwrap_or(0);
        let rest = self.text.get(start..).unwrap_or_default();
        start + rest.char_indices().nth(number(at.referenced.column())).map_or(0, |(at, _)| at)
    }

    /// The byte after the value of the key that stands at `at`.
    fn end_of_value(&self, at: usize, key: &str) -> usize {
        let bytes = self.text.as_bytes();
        let mut cursor = at + key.len() + 1;
        while bytes.get(cursor) == Some(&b' ') {
            cursor += 1;
        }
        if matches!(bytes.get(cursor), Some(b'{' | b'[')) {
            return end_of_brackets(bytes, cursor);
        }
        if matches!(bytes.get(cursor), Some(b'"' | b'\'')) {
            return over_quotes_and_comments(bytes, cursor);
        }
        // A plain scalar or a block: up to the next line that stands no deeper than the key.
        let line = self.text.get(..at).and_then(|t| t.rfind('\n')).map_or(0, |n| n + 1);
        let indent = self.text.get(line..at).map_or(0, |t| t.chars().count());
        starts_of_lines(self.text)
            .into_iter()
            .filter(|start| *start > at)
            .find(|start| {
                let rest = self.text.get(*start..).unwrap_or_default().lines().next().unwrap_or_default();
                !rest.trim().is_empty() && rest.len() - rest.trim_start_matches(' ').len() <= indent
            })
            .unwrap_or(self.text.len())
    }
}

fn starts_of_lines(text: &str) -> Vec<usize> {
    std::iter::once(0).chain(text.match_indices('\n').map(|(at, _)| at + 1)).collect()
}

/// Whether a word, a quote or a comment may begin here.
fn begins_word(bytes: &[u8], at: usize) -> bool {
    at.checked_sub(1)
        .and_then(|before| bytes.get(before))
        .is_none_or(|b| matches!(b, b' ' | b'\n' | b'\r' | b'\t' | b'{' | b'[' | b',' | b':'))
}

fn is_key(rest: &str, key: &str) -> bool {
    let after = rest.strip_prefix(key).and_then(|after| after.strip_prefix(':'));
    after.is_some_and(|after| after.is_empty() || after.starts_with([' ', '\n', '\r', '{', '[', '"']))
}

/// The byte after the quoted scalar or comment that begins at `at`; `at` itself when none does.
fn over_quotes_and_comments(bytes: &[u8], at: usize) -> usize {
    if !begins_word(bytes, at) {
        return at;
    }
    let mut cursor = at + 1;
    match bytes.get(at) {
        Some(b'#') => {
            while bytes.get(cursor).is_some_and(|b| *b != b'\n') {
                cursor += 1;
            }
            cursor
        }
        Some(quote @ (b'"' | b'\'')) => {
            while let Some(byte) = bytes.get(cursor) {
                if byte == quote {
                    return cursor + 1;
                }
                cursor += if *quote == b'"' && *byte == b'\\' { 2 } else { 1 };
            }
            cursor
        }
        _ => at,
    }
}

fn end_of_brackets(bytes: &[u8], at: usize) -> usize {
    let mut depth = 0_usize;
    let mut cursor = at;
    while let Some(byte) = bytes.get(cursor) {
        let stepped = over_quotes_and_comments(bytes, cursor);
        if stepped > cursor {
            cursor = stepped;
            continue;
        }
        match byte {
            b'{' | b'[' => depth += 1,
            b'}' | b']' => depth = depth.saturating_sub(1),
            _ => {}
        }
        cursor += 1;
        if depth == 0 {
            return cursor;
        }
    }
    cursor
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEXT: &str = "- id: a\n  why: {en: \"say why: it's so\", es: 'el es: porqué'} # why: no\n  steps:\n    en:\n      - one\n    es: [uno]\n  title: don't\n- id: b\n  why: {es: no}\n";

    fn found(key: &str, inner: Option<&str>) -> Option<String> {
        let whole = Stretch { file: "f", text: TEXT, from: 0, to: TEXT.find("- id: b").unwrap() };
        let mut at = whole.key(key, 0)?;
        if let Some(inner) = inner {
            at = at.key(inner, 0)?;
        }
        Some(format!("{} {}", at.place(), &TEXT[at.from..at.to]))
    }

    #[test]
    fn keys_are_found_with_their_values_and_not_inside_quotes_or_comments() {
        assert_eq!(found("why", Some("es")).unwrap(), "f:2:33 es: 'el es: porqué'");
        assert_eq!(found("steps", Some("es")).unwrap(), "f:6:5 es: [uno]");
        assert_eq!(found("title", None).unwrap(), "f:7:3 title: don't\n");
        assert_eq!(found("why", Some("fr")), None);
        assert_eq!(found("hold", None), None);
    }
}
