//! Text into tokens.

use super::ast::Span;

/// What a token is.
#[derive(Clone, Debug, PartialEq)]
pub enum Token {
    /// A number with its unit, if one follows it.
    Number {
        /// The number.
        value: f64,
        /// The unit's symbol as written; empty if there is none.
        unit: String,
    },
    /// A path or a word: ids joined by dots. A hyphen inside an id belongs to it.
    Word(String),
    /// One of `( ) , { } < <= > >= = != + - * / ..`.
    Mark(&'static str),
}

/// A token and where it stands, in bytes of the expression.
#[derive(Clone, Debug, PartialEq)]
pub struct Lexeme {
    /// The token.
    pub token: Token,
    /// Where it stands.
    pub span: Span,
}

/// What can't be read, and where.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unreadable {
    /// Where.
    pub span: Span,
    /// Why: lower case, no full stop.
    pub message: String,
    /// The cure, if it is known.
    pub help: Option<String>,
}

impl Unreadable {
    pub(crate) fn new(span: Span, message: impl Into<String>) -> Self {
        Self { span, message: message.into(), help: None }
    }

    pub(crate) fn help(mut self, help: impl Into<String>) -> Self {
        self.help = Some(help.into());
        self
    }
}

const MARKS: [&str; 16] = ["..", "<=", ">=", "!=", "(", ")", ",", "{", "}", "<", ">", "=", "+", "-", "*", "/"];

/// The words that join expressions; a number is never followed by one of them as its unit.
pub const JOINERS: [&str; 8] = ["and", "or", "not", "is", "has", "from", "within", "else"];

/// Reads `text` into tokens.
///
/// # Errors
/// A character that begins no token.
pub fn tokens(text: &str) -> Result<Vec<Lexeme>, Unreadable> {
    let mut out = Vec::new();
    let mut at = 0;
    while let Some(rest) = text.get(at..) {
        let Some(first) = rest.chars().next() else { break };
        if first.is_whitespace() {
            at += first.len_utf8();
            continue;
        }
        let (token, length) = if first.is_ascii_digit() {
            number(rest)
        } else if first.is_alphabetic() {
            let length = word_length(rest);
            (Token::Word(rest.get(..length).unwrap_or_default().to_owned()), length)
        } else if let Some(mark) = MARKS.iter().find(|mark| rest.starts_with(**mark)) {
            (Token::Mark(mark), mark.len())
        } else {
            let span = Span::new(at, at + first.len_utf8());
            let fault = Unreadable::new(span, format!("`{first}` means nothing in an expression"));
            return Err(match first {
                '!' | '&' | '|' => fault.help("write `not`, `and`, `or`, `!=`"),
                '"' | '\'' => fault.help("ids stand without quotes"),
                '≤' | '≥' | '≠' => fault.help("write `<=`, `>=`, `!=`"),
                _ => fault,
            });
        };
        out.push(Lexeme { token, span: Span::new(at, at + length) });
        at += length;
    }
    Ok(out)
}

/// The length in bytes of the word that `text` begins with.
fn word_length(text: &str) -> usize {
    let mut length = 0;
    let mut chars = text.char_indices().peekable();
    while let Some((at, c)) = chars.next() {
        let joins = matches!(c, '-' | '.' | '_') && chars.peek().is_some_and(|(_, next)| next.is_alphanumeric());
        // `a..b` is a range, not a path
        if c.is_alphanumeric() || joins {
            length = at + c.len_utf8();
        } else {
            break;
        }
    }
    length
}

/// The number that `text` begins with, and the unit that follows it, if any.
fn number(text: &str) -> (Token, usize) {
    let digits = |from: usize| text.get(from..).map_or(0, |rest| rest.bytes().take_while(u8::is_ascii_digit).count());
    let mut length = digits(0);
    let fraction = digits(length + 1);
    if text.get(length..=length) == Some(".") && fraction > 0 {
        length += 1 + fraction;
    }
    let value = text.get(..length).and_then(|t| t.parse().ok()).unwrap_or(0.0);
    let gap = text.get(length..).map_or(0, |rest| rest.len() - rest.trim_start_matches(' ').len());
    let unit = text.get(length + gap..).map_or("", unit_at);
    if unit.is_empty() {
        return (Token::Number { value, unit: String::new() }, length);
    }
    (Token::Number { value, unit: unit.to_owned() }, length + gap + unit.len())
}

/// The unit that `text` begins with: letters, `°`, `%`, `²`, and a slash between two letters.
fn unit_at(text: &str) -> &str {
    let letter = |c: char| c.is_alphabetic() || matches!(c, '°' | '%' | '²');
    let mut end = 0;
    let mut chars = text.char_indices().peekable();
    while let Some((at, c)) = chars.next() {
        let slash = c == '/' && end > 0 && chars.peek().is_some_and(|(_, next)| letter(*next));
        let square = c == '2' && matches!(text.get(..end), Some("m" | "ft" | "g/m"));
        if letter(c) || slash || square {
            end = at + c.len_utf8();
        } else {
            break;
        }
    }
    let unit = text.get(..end).unwrap_or_default();
    if JOINERS.contains(&unit) { "" } else { unit }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn shown(text: &str) -> Vec<String> {
        tokens(text)
            .unwrap()
            .into_iter()
            .map(|l| match l.token {
                Token::Number { value, unit } => format!("{value}|{unit}"),
                Token::Word(word) => word,
                Token::Mark(mark) => mark.to_owned(),
            })
            .collect()
    }

    #[test]
    fn a_hyphen_inside_an_id_belongs_to_it_and_a_minus_has_spaces() {
        assert_eq!(shown("signs has spent-blooms"), ["signs", "has", "spent-blooms"]);
        assert_eq!(shown("hot_season.end - 4 weeks"), ["hot_season.end", "-", "4|weeks"]);
    }

    #[test]
    fn units_follow_their_numbers() {
        assert_eq!(shown("> 95 °F"), [">", "95|°F"]);
        assert_eq!(shown("10 g/m² and 3"), ["10|g/m²", "and", "3|"]);
        assert_eq!(shown("2 in"), ["2|in"]);
        assert_eq!(shown("7..14 days"), ["7|", "..", "14|days"]);
        assert_eq!(shown("0.5 g/m2"), ["0.5|g/m2"]);
        assert_eq!(shown("within 28 days)"), ["within", "28|days", ")"]);
    }

    #[test]
    fn what_means_nothing_is_named_with_its_place() {
        let fault = tokens("a ≥ 3").unwrap_err();
        assert_eq!((fault.span.start, fault.help.as_deref()), (2, Some("write `<=`, `>=`, `!=`")));
    }
}
