//! A rule file in its usual form. The text is the source of a rule; this changes only how it looks: line ends, blanks at the
//! ends of lines, empty lines, double quotes where both kinds would do, and in rules the order of the fields. Every comment stays,
//! in its order; where moving a field would move a comment past another, the fields stay as they are.
//!
//! What was made is read again and must say the same as before, else the file is left alone and that is the fault.

mod scan;

use serde_json::Value as Json;

use scan::{Scan, scan};

/// The fields of a rule in the order in which they are read most easily.
const RULE_FIELDS: [&str; 41] = [
    "id",
    "replace",
    "reword",
    "tighten",
    "withhold",
    "expects",
    "because",
    "loosen",
    "reviewed_by",
    "kind",
    "job",
    "manner",
    "title",
    "for",
    "window",
    "when",
    "blocks",
    "law",
    "hold",
    "strict",
    "outside",
    "rank",
    "evidence",
    "strength",
    "why",
    "steps",
    "amount",
    "materials",
    "keep_apart",
    "clashes",
    "alternate",
    "professional",
    "emergency",
    "notes",
    "expect",
    "after",
    "before",
    "repeat",
    "cautions",
    "reviewed",
    "sources",
];

/// Fields that hold an expression: it stands on one line, so that a fault in it can be pointed at.
const EXPRESSIONS: [&str; 10] =
    ["where", "when", "if", "unless", "opens", "best", "closes", "begins", "grown", "threshold"];

/// Why a file can't be put into its usual form.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Untidy {
    /// The line, from 1.
    pub line: usize,
    /// Why, in the writer's words.
    pub message: String,
}

/// The text in its usual form.
///
/// # Errors
/// A text that is no YAML, an expression that goes on over lines, or a file that would come to say something else.
pub fn tidy(text: &str) -> Result<String, Untidy> {
    let said = meaning(text)?;
    let plain = text.strip_prefix('\u{feff}').unwrap_or(text).replace("\r\n", "\n");
    one_line(&plain)?;
    let quoted = requoted(&plain);
    let spaced = spaced(&quoted);
    let ordered = ordered(&spaced);
    let same = |made: &str| meaning(made).is_ok_and(|made| made == said) && comments(made) == comments(&plain);
    // Of the two changes that move something, the one that can't be made safely is left out.
    if same(&ordered) {
        return Ok(ordered);
    }
    if same(&spaced) {
        return Ok(spaced);
    }
    Err(Untidy {
        line: 1,
        message: "the file can't be put into its usual form without saying something else".to_owned(),
    })
}

/// The comments of a text in order.
#[must_use]
pub fn comments(text: &str) -> Vec<String> {
    let of = |(from, to): &(usize, usize)| text.get(*from..*to).unwrap_or_default().trim_end().to_owned();
    scan(text).comments.iter().map(of).collect()
}

/// What a text says, whatever it looks like.
fn meaning(text: &str) -> Result<Json, Untidy> {
    serde_saphyr::from_str(text).map_err(|error| {
        let line = error.location().map_or(1, |place| usize::try_from(place.line()).unwrap_or(1));
        let shown = error.to_string();
        let first = shown.lines().next().unwrap_or_default();
        Untidy { line, message: format!("this is not YAML: {first}") }
    })
}

/// An expression over several lines has no columns that a fault could point at.
fn one_line(text: &str) -> Result<(), Untidy> {
    let Scan { inside, open, .. } = scan(text);
    for (number, line) in text.lines().enumerate().filter(|(number, _)| !inside.contains(number)) {
        let body = line.trim_start_matches([' ', '-']);
        let Some((key, value)) = body.split_once(':') else { continue };
        if !EXPRESSIONS.contains(&key) {
            continue;
        }
        let indent = line.len() - body.len();
        let next = text.lines().nth(number + 1).unwrap_or_default();
        let is_deeper = !next.trim().is_empty() && next.len() - next.trim_start().len() > indent;
        let value = value.trim();
        let goes_on = is_deeper && !value.is_empty() && !value.starts_with(['{', '[', '#']);
        let is_block = value.starts_with(['|', '>']);
        if open.contains(&number) || is_block || goes_on {
            let message = format!("the expression of `{key}` goes on over several lines, expected one line in quotes");
            return Err(Untidy { line: number + 1, message });
        }
    }
    Ok(())
}

/// Single quotes become double ones where nothing inside has to be written otherwise.
fn requoted(text: &str) -> String {
    let mut bytes = text.as_bytes().to_vec();
    for quoted in scan(text).quoted.iter().filter(|quoted| quoted.quote == b'\'') {
        let inner = text.get(quoted.from + 1..quoted.to).unwrap_or_default();
        if !inner.contains(['\'', '"', '\\', '\n']) {
            for place in [quoted.from, quoted.to] {
                if let Some(byte) = bytes.get_mut(place) {
                    *byte = b'"';
                }
            }
        }
    }
    String::from_utf8(bytes).unwrap_or_else(|_| text.to_owned())
}

/// No blanks at the ends of lines, at most one empty line between two, one line end at the end.
fn spaced(text: &str) -> String {
    let Scan { open, inside, .. } = scan(text);
    let mut out = String::with_capacity(text.len());
    let mut was_empty = true;
    for (number, line) in text.lines().enumerate() {
        let keeps = open.contains(&number);
        let line = if keeps { line } else { line.trim_end() };
        let is_empty = line.is_empty() && !inside.contains(&number);
        if !(is_empty && was_empty) {
            out.push_str(line);
            out.push('\n');
        }
        was_empty = is_empty;
    }
    // A text that ends inside a block keeps its end as it is.
    if !open.contains(&text.lines().count().saturating_sub(1)) {
        let end = out.trim_end_matches('\n').len();
        out.truncate(end);
        if !out.is_empty() {
            out.push('\n');
        }
    }
    out
}

/// The fields of each rule in their order.
fn ordered(text: &str) -> String {
    let Scan { inside, .. } = scan(text);
    let lines: Vec<&str> = text.lines().collect();
    let starts = |number: usize, line: &str| line.starts_with("- ") && !inside.contains(&number);
    let first = (0..lines.len()).find(|at| lines.get(*at).is_some_and(|line| starts(*at, line)));
    let Some(first) = first else { return text.to_owned() };
    let mut out: Vec<String> = Vec::with_capacity(lines.len());
    // Comments right above an entry go with it, and it does not move: only its fields do.
    out.extend(lines.iter().take(first).map(|line| (*line).to_owned()));
    let mut at = first;
    while at < lines.len() {
        let mut end = at + 1;
        while end < lines.len() && lines.get(end).is_some_and(|line| line.starts_with(' ') || inside.contains(&end)) {
            end += 1;
        }
        let entry: Vec<(usize, &str)> = (at..end).filter_map(|number| Some((number, *lines.get(number)?))).collect();
        out.extend(fields_in_order(&entry, &inside));
        at = end;
        // What stands between two entries.
        while at < lines.len() && lines.get(at).is_some_and(|line| !starts(at, line)) {
            out.extend(lines.get(at).map(|line| (*line).to_owned()));
            at += 1;
        }
    }
    out.iter().flat_map(|line| [line.as_str(), "\n"]).collect()
}

fn fields_in_order(entry: &[(usize, &str)], inside: &[usize]) -> Vec<String> {
    let as_it_is = || entry.iter().map(|(_, line)| (*line).to_owned()).collect();
    let mut fields: Vec<(&str, Vec<String>)> = Vec::new();
    let mut above: Vec<String> = Vec::new();
    for (place, (number, line)) in entry.iter().enumerate() {
        let body = if place == 0 { line.get(2..) } else { line.strip_prefix("  ") };
        let own = body.filter(|body| !inside.contains(number) && !body.starts_with([' ', '-']));
        match own {
            Some(body) if body.starts_with('#') => above.push((*line).to_owned()),
            Some(body) => {
                let Some((name, _)) = body.split_once(':') else { return as_it_is() };
                let mut lines = std::mem::take(&mut above);
                lines.push(format!("  {body}"));
                fields.push((name, lines));
            }
            // Something of a field, after a comment of the entry: it is not clear whose the comment is.
            None if !above.is_empty() => return as_it_is(),
            None => match fields.last_mut() {
                Some((_, lines)) => lines.push((*line).to_owned()),
                None => return as_it_is(),
            },
        }
    }
    let place = |name: &str| RULE_FIELDS.iter().position(|field| *field == name);
    // What is said of a rule below need not have a title.
    let says_so = |name: &str| ["title", "reword", "tighten", "withhold"].contains(&name);
    let is_rule = fields.iter().all(|(name, _)| place(name).is_some()) && fields.iter().any(|(name, _)| says_so(name));
    if !is_rule || !above.is_empty() {
        return as_it_is();
    }
    fields.sort_by_key(|(name, _)| place(name));
    let mut lines: Vec<String> = fields.into_iter().flat_map(|(_, lines)| lines).collect();
    match lines.first_mut() {
        // A comment can't stand behind the dash.
        Some(first) if first.trim_start().starts_with('#') => return as_it_is(),
        Some(first) => first.replace_range(..2, "- "),
        None => {}
    }
    let text = |lines: &[String]| comments(&lines.join("\n"));
    let before: Vec<String> = as_it_is();
    if text(&before) == text(&lines) { lines } else { before }
}

#[cfg(test)]
mod tests {
    use super::*;

    const RULE: &str = "# about cuts\n\n\n- id: rose.cut\r\n  title: {en: 'Cut', es: \"it's\"}   # said\n  sources: [a]\n  job: prune\n\n# the end\n";

    #[test]
    fn fields_stand_in_order_in_double_quotes_and_every_comment_stays() {
        let made = tidy(RULE).unwrap();
        assert_eq!(
            made,
            "# about cuts\n\n- id: rose.cut\n  job: prune\n  title: {en: \"Cut\", es: \"it's\"}   # said\n  sources: [a]\n\n# the end\n"
        );
        assert_eq!(tidy(&made).as_deref(), Ok(made.as_str()));
    }

    #[test]
    fn comments_that_would_change_places_keep_the_fields_where_they_are() {
        let text = "- title: {en: a} # one\n  # two\n  id: rose.cut\n";
        assert_eq!(tidy(text).as_deref(), Ok(text));
    }

    #[test]
    fn an_expression_over_several_lines_is_named_with_its_line() {
        for text in
            ["- id: a\n  when: \"x and\n    y\"\n", "- id: a\n  when: >\n    x\n", "- id: a\n  when: x and\n    y\n"]
        {
            let untidy = tidy(text).unwrap_err();
            assert_eq!(untidy.line, 2, "{text}");
            assert!(untidy.message.starts_with("the expression of `when` goes on over several lines"), "{untidy:?}");
        }
        assert!(
            tidy("- id: a\n  window:\n    opens: x\n  when: \"y\" # z\n  hold:\n    - if: \"q\"\n      because: b\n")
                .is_ok()
        );
    }

    #[test]
    fn what_stands_in_a_block_is_not_touched() {
        let text = "- id: a\n  notes: |\n    one  \n\n\n    'two'\n  title: x\n";
        let made = tidy(text).unwrap();
        assert!(made.contains("    one  \n\n\n    'two'\n"), "{made}");
    }

    #[test]
    fn what_is_no_yaml_is_said_to_be_none() {
        assert!(tidy("- a: [1\n- b").unwrap_err().message.starts_with("this is not YAML"));
    }
}
