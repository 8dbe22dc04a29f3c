//! Good text made bad: a bit flipped, a cut, a token where none belongs, another encoding.

use proptest::prelude::*;
use proptest::sample::Index;

/// What stands where a number or a date should, or in the middle of anything.
const TOKENS: [&[u8]; 24] = [
    b"1e308",
    b"-1e400",
    b"NaN",
    b"inf",
    b"-0",
    b"99999999999999999999",
    b"0x10",
    b"1_000",
    "١٢".as_bytes(),
    b"\0",
    b"\"",
    b",",
    b"\r",
    "\u{feff}".as_bytes(),
    b"2025-02-30",
    b"0000-00-00",
    b"9999-12-31",
    b"+5",
    b" ",
    b"null",
    b"{",
    b"]",
    b"\xff\xfe",
    b"",
];

/// One way to make a text bad.
#[derive(Clone, Debug)]
pub(crate) enum Change {
    /// A bit is another.
    Bit(Index, u8),
    /// The text ends early.
    Cut(Index),
    /// A token stands in between.
    Token(Index, usize),
    /// A token stands for what is between two commas, colons or line ends.
    Field(Index, usize),
    /// A column is missing everywhere.
    NoColumn(u8),
    /// A line comes twice.
    Twice(Index),
    /// Lines end as on other machines.
    LineEnds(&'static str),
    /// A mark of the byte order stands first.
    Marked,
    /// Every field stands in quotes.
    Quoted,
    /// Two bytes a character.
    Wide,
}

/// Any one to four changes; most of them are small, so that much of a text stays good.
pub(crate) fn changes() -> impl Strategy<Value = Vec<Change>> {
    let token = 0..TOKENS.len();
    let change = prop_oneof![
        4 => (any::<Index>(), 0_u8..8).prop_map(|(at, bit)| Change::Bit(at, bit)),
        1 => any::<Index>().prop_map(Change::Cut),
        4 => (any::<Index>(), token.clone()).prop_map(|(at, token)| Change::Token(at, token)),
        6 => (any::<Index>(), token).prop_map(|(at, token)| Change::Field(at, token)),
        1 => (0_u8..5).prop_map(Change::NoColumn),
        1 => any::<Index>().prop_map(Change::Twice),
        1 => prop_oneof![Just("\r\n"), Just("\r"), Just("\n\n"), Just("\u{2028}")].prop_map(Change::LineEnds),
        1 => Just(Change::Marked),
        1 => Just(Change::Quoted),
        1 => Just(Change::Wide),
    ];
    proptest::collection::vec(change, 1..=4)
}

/// The text after these changes.
pub(crate) fn changed(text: &str, changes: &[Change]) -> Vec<u8> {
    changes.iter().fold(text.as_bytes().to_vec(), one)
}

fn one(mut bytes: Vec<u8>, change: &Change) -> Vec<u8> {
    if bytes.is_empty() {
        return bytes;
    }
    let text = || String::from_utf8_lossy(&bytes).into_owned();
    match change {
        Change::Bit(at, bit) => {
            let at = at.index(bytes.len());
            bytes[at] ^= 1 << bit;
            bytes
        }
        Change::Cut(at) => {
            bytes.truncate(at.index(bytes.len()));
            bytes
        }
        Change::Token(at, token) => {
            let at = at.index(bytes.len());
            bytes.splice(at..at, TOKENS[*token].iter().copied());
            bytes
        }
        Change::Field(at, token) => {
            let at = at.index(bytes.len());
            let ends = |byte: &u8| matches!(byte, b',' | b'\n' | b':' | b'{' | b'[' | b']' | b'}');
            let from = bytes[..at].iter().rposition(ends).map_or(0, |end| end + 1);
            let to = bytes[at..].iter().position(ends).map_or(bytes.len(), |end| at + end).max(from);
            bytes.splice(from..to, TOKENS[*token].iter().copied());
            bytes
        }
        Change::NoColumn(which) => {
            let without = |line: &str| {
                let kept = line.split(',').enumerate().filter(|(at, _)| at != &usize::from(*which));
                kept.map(|(_, field)| field).collect::<Vec<_>>().join(",")
            };
            text().lines().map(without).collect::<Vec<_>>().join("\n").into_bytes()
        }
        Change::Twice(at) => {
            let text = text();
            let mut lines: Vec<&str> = text.lines().collect();
            if !lines.is_empty() {
                lines.push(lines[at.index(lines.len())]);
            }
            lines.join("\n").into_bytes()
        }
        Change::LineEnds(end) => text().replace('\n', end).into_bytes(),
        Change::Marked => [b"\xef\xbb\xbf".as_slice(), &bytes].concat(),
        Change::Quoted => {
            let quoted = |line: &str| line.split(',').map(|field| format!("\"{field}\"")).collect::<Vec<_>>().join(",");
            text().lines().map(quoted).collect::<Vec<_>>().join("\n").into_bytes()
        }
        Change::Wide => {
            let wide = text().encode_utf16().flat_map(u16::to_le_bytes).collect::<Vec<_>>();
            [b"\xff\xfe".as_slice(), &wide].concat()
        }
    }
}
