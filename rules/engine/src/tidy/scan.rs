//! What of a YAML text is a comment, what stands in quotes, and where a scalar goes on over lines: as much as tidying needs.

/// A quoted scalar, by the bytes of its two quotes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Quoted {
    pub(super) from: usize,
    pub(super) to: usize,
    pub(super) quote: u8,
}

/// What a text is made of.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Scan {
    /// Each comment, from its `#` to the end of its line, in order.
    pub(super) comments: Vec<(usize, usize)>,
    /// Each quoted scalar in order.
    pub(super) quoted: Vec<Quoted>,
    /// The lines, counted from 0, that begin inside a scalar: nothing of their beginning may be moved.
    pub(super) inside: Vec<usize>,
    /// The lines whose end belongs to a scalar.
    pub(super) open: Vec<usize>,
}

/// Looks a text through once.
pub(super) fn scan(text: &str) -> Scan {
    let mut out = Scan::default();
    // How far a block scalar's key is indented, while one goes on.
    let mut block: Option<usize> = None;
    let mut quote: Option<(usize, u8)> = None;
    let mut at = 0;
    for (number, line) in text.split_inclusive('\n').enumerate() {
        let body = line.trim_end_matches('\n');
        let indent = body.len() - body.trim_start_matches(' ').len();
        if let Some(key) = block {
            if body.trim().is_empty() || indent > key {
                out.inside.push(number);
                out.open.push(number);
                at += line.len();
                continue;
            }
            block = None;
        }
        if quote.is_some() {
            out.inside.push(number);
        }
        let end = of_line(body, at, &mut quote, &mut out);
        if quote.is_some() {
            out.open.push(number);
        } else if begins_block(body.get(..end - at).unwrap_or(body)) {
            block = Some(indent);
        }
        at += line.len();
    }
    out
}

/// One line; the byte behind what is no comment.
fn of_line(body: &str, at: usize, quote: &mut Option<(usize, u8)>, out: &mut Scan) -> usize {
    let mut before = b'\n';
    let mut is_start = true;
    let mut skip = false;
    let bytes = body.as_bytes();
    for (place, byte) in bytes.iter().copied().enumerate() {
        if skip {
            skip = false;
            continue;
        }
        match *quote {
            Some((_, b'"')) if byte == b'\\' => skip = true,
            Some((_, b'\'')) if byte == b'\'' && bytes.get(place + 1) == Some(&b'\'') => skip = true,
            Some((from, which)) if byte == which => {
                out.quoted.push(Quoted { from, to: at + place, quote: which });
                *quote = None;
                is_start = false;
                before = byte;
            }
            Some(_) => {}
            None => {
                if byte == b'#' && (before == b'\n' || before == b' ' || before == b'\t') {
                    out.comments.push((at + place, at + body.len()));
                    return at + place;
                }
                if is_start && (byte == b'"' || byte == b'\'') {
                    *quote = Some((at + place, byte));
                }
                // A scalar begins at the start of a line and behind what separates; a blank does not change that.
                if byte != b' ' {
                    let next = bytes.get(place + 1).copied().unwrap_or(b' ');
                    is_start =
                        matches!(byte, b'[' | b'{' | b',') || (matches!(byte, b':' | b'-' | b'?') && next == b' ');
                }
                before = byte;
            }
        }
    }
    at + body.len()
}

/// Whether a line ends with the sign of a block scalar: `|` or `>`, perhaps with its indicators.
fn begins_block(body: &str) -> bool {
    let word = body.trim_end().rsplit([' ', ':']).next().unwrap_or_default();
    let mut letters = word.chars();
    matches!(letters.next(), Some('|' | '>')) && letters.all(|c| c == '-' || c == '+' || c.is_ascii_digit())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn comments(text: &str) -> Vec<&str> {
        scan(text).comments.into_iter().map(|(from, to)| &text[from..to]).collect()
    }

    #[test]
    fn a_comment_is_none_in_quotes_in_a_word_or_in_a_block() {
        let text = "# first\na: \"x # y\" # second\nb: it's#not # third\nc: 'it''s # z'\nd: |\n  # text\ne: 1 # last\n";
        assert_eq!(comments(text), ["# first", "# second", "# third", "# last"]);
    }

    #[test]
    fn a_quote_that_goes_on_over_lines_keeps_them() {
        let scan = scan("a: \"one\n  two # no\n  three\" # yes\nb: 'x'\n");
        assert_eq!((scan.inside, scan.open), (vec![1, 2], vec![0, 1]));
        assert_eq!((scan.comments.len(), scan.quoted.len()), (1, 2));
    }
}
