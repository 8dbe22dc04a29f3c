//! Reads a unit from its text.
//!
//! ```text
//! unit     = term { "/" term }            a "/" divides by the whole term that follows
//! term     = factor { [ "*" ] factor }    a space, a dot or nothing at all multiplies too
//! factor   = ( NAME | NUMBER | "(" unit ")" ) [ [ "**" | "^" ] EXPONENT ]
//! ```

use super::table::{self, SUBSTANCES};
use super::{Dimension, Factor, Unit, UnitFault};

/// Longer texts are no units.
const LONGEST: usize = 64;

/// Reads a unit. `per` divides like `/`, and a mass or a share may be followed by what is weighed
/// (`lb N per 1000 sq ft`).
///
/// # Errors
/// [`UnitFault::Unknown`], with the text as given.
pub fn read(text: &str) -> Result<Unit, UnitFault> {
    let unknown = || UnitFault::Unknown { text: text.to_owned() };
    if text.len() > LONGEST {
        return Err(UnitFault::Unknown { text: text.chars().take(LONGEST).collect() });
    }
    if let Some(named) = table::find(text.trim()) {
        return Ok(Unit {
            text: text.to_owned(),
            dimension: named.dimension,
            factor: named.factor,
            nought: named.nought,
        });
    }
    let plain = text
        .split(" per ")
        .map(without_substance)
        .collect::<Vec<_>>()
        .join("/")
        .replace("US gal", "gal")
        .replace("sq ft", "ft2")
        .replace("sq m", "m2")
        .replace('²', "2")
        .replace('³', "3")
        .replace('·', " ");
    let mut reader = Reader { rest: plain.trim() };
    let unit = reader.unit().filter(|_| reader.rest.is_empty()).ok_or_else(unknown)?;
    Ok(Unit { text: text.to_owned(), ..unit })
}

/// `lb N` without its `N`: only behind a mass or a share, for elsewhere `K` is the kelvin.
fn without_substance(segment: &str) -> &str {
    let segment = segment.trim();
    for substance in SUBSTANCES {
        if let Some(head) = segment.strip_suffix(substance).and_then(|h| h.strip_suffix(' ')) {
            let head = head.trim();
            let weighed = table::find(head.rsplit(' ').next().unwrap_or(head))
                .is_some_and(|named| [Dimension::MASS, Dimension::NONE, Dimension::VOLUME].contains(&named.dimension));
            if weighed {
                return head;
            }
        }
    }
    segment
}

struct Reader<'a> {
    rest: &'a str,
}

impl Reader<'_> {
    fn skip(&mut self, sign: &str) -> bool {
        self.rest.strip_prefix(sign).is_some_and(|rest| {
            self.rest = rest;
            true
        })
    }

    fn unit(&mut self) -> Option<Unit> {
        let mut unit = self.term()?;
        loop {
            self.rest = self.rest.trim_start();
            if !self.skip("/") {
                return Some(unit);
            }
            unit = unit.times(&self.term()?.power(-2)?)?;
        }
    }

    fn term(&mut self) -> Option<Unit> {
        self.rest = self.rest.trim_start();
        let mut unit = self.factor()?;
        loop {
            self.rest = self.rest.trim_start();
            if self.rest.starts_with("**") {
                return None;
            }
            let starred = self.skip("*");
            self.rest = self.rest.trim_start();
            if !starred && (self.rest.is_empty() || self.rest.starts_with(['/', ')'])) {
                return Some(unit);
            }
            unit = unit.times(&self.factor()?)?;
        }
    }

    fn factor(&mut self) -> Option<Unit> {
        let unit = if self.skip("(") {
            let inner = self.unit()?;
            self.rest = self.rest.trim_start();
            if !self.skip(")") {
                return None;
            }
            inner
        } else if self.rest.starts_with(|c: char| c.is_ascii_digit()) {
            self.number()?
        } else {
            self.name()?
        };
        match self.exponent()? {
            2 => Some(unit),
            halves => unit.power(halves),
        }
    }

    fn number(&mut self) -> Option<Unit> {
        let end = self.rest.find(|c: char| !c.is_ascii_digit()).unwrap_or(self.rest.len());
        let (digits, rest) = self.rest.split_at_checked(end)?;
        self.rest = rest;
        let value: u128 = digits.parse().ok().filter(|&value| value > 0)?;
        Some(Unit { text: String::new(), dimension: Dimension::NONE, factor: Factor::of(value, 1), nought: 0.0 })
    }

    fn name(&mut self) -> Option<Unit> {
        let end = self
            .rest
            .find(|c: char| !(c.is_alphabetic() || c == '_' || c == '%' || c == '°'))
            .unwrap_or(self.rest.len());
        let (name, rest) = self.rest.split_at_checked(end)?;
        let named = table::find(name)?;
        self.rest = rest;
        // Inside a product a degree is a difference: 20 C d are 20 K over a day.
        let dimension = if named.dimension == Dimension::READING { Dimension::DIFFERENCE } else { named.dimension };
        Some(Unit { text: String::new(), dimension, factor: named.factor, nought: 0.0 })
    }

    /// The exponent in halves; 2 where there is none.
    fn exponent(&mut self) -> Option<i8> {
        let marked = self.skip("**") || self.skip("^");
        let bare = self.rest.strip_prefix(['-', '+']).unwrap_or(self.rest);
        if !bare.starts_with(|c: char| c.is_ascii_digit()) {
            return if marked { None } else { Some(2) };
        }
        let sign = if self.skip("-") { -1 } else { 1 };
        self.skip("+");
        let end = self.rest.find(|c: char| !(c.is_ascii_digit() || (marked && c == '.'))).unwrap_or(self.rest.len());
        let (digits, rest) = self.rest.split_at_checked(end)?;
        self.rest = rest;
        match digits {
            "0.5" => Some(sign),
            _ => digits.parse::<i8>().ok().filter(|n| *n <= 9)?.checked_mul(2 * sign),
        }
    }
}
