//! Lists that come page by page.
//!
//! A cursor holds the key of the last entry given, so a page is right also when entries came or went in between. It
//! is written so that nobody is tempted to make one up.

use serde::Deserialize;
use utoipa::IntoParams;

use crate::problem::Problem;
use crate::problem::faults::Faults;
use crate::problem::kinds::BAD_QUERY;

const USUAL: u16 = 50;
const MOST: u16 = 200;

/// Which page of a list.
#[derive(Debug, Default, Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
#[into_params(parameter_in = Query)]
pub struct PageQuery {
    /// At most so many entries; 50 when left out.
    #[param(required = false, nullable = false, minimum = 1, maximum = 200, example = 50)]
    limit: Option<u16>,
    /// The `next_cursor` of the page before; left out for the first page.
    #[param(required = false, nullable = false, pattern = "^([0-9a-f]{2})+$", example = "65743068")]
    cursor: Option<String>,
}

/// One page of a list.
#[derive(Debug)]
pub struct Page<T> {
    /// The entries.
    pub items: Vec<T>,
    /// Where the next page begins; none after the last one.
    pub next_cursor: Option<String>,
}

impl PageQuery {
    /// The page that a call asks for which has parameters beside these.
    pub(crate) fn new(limit: Option<u16>, cursor: Option<String>) -> Self {
        Self { limit, cursor }
    }

    /// At most so many entries.
    pub(crate) fn limit(&self) -> usize {
        usize::from(self.limit.unwrap_or(USUAL))
    }

    /// What is wrong with it.
    pub(crate) fn check(&self, faults: &mut Faults) {
        faults.in_range("", "limit", self.limit.map(f64::from), (1.0, f64::from(MOST)), "");
        if self.cursor.as_deref().is_some_and(|cursor| read(cursor).is_none()) {
            faults.add("/cursor", "expected the `next_cursor` of the page before");
        }
    }

    /// The page of `sorted`, which is in the order of `key`.
    ///
    /// # Errors
    /// The problem `bad-query` when the limit is out of range or the cursor is not one of ours.
    pub fn of<T>(&self, sorted: impl IntoIterator<Item = T>, key: impl Fn(&T) -> &str) -> Result<Page<T>, Problem> {
        let mut faults = Faults::default();
        self.check(&mut faults);
        faults.or_problem(BAD_QUERY)?;

        let limit = self.limit();
        let after = self.cursor.as_deref().and_then(read);
        let mut rest =
            sorted.into_iter().filter(|item| after.as_deref().is_none_or(|after| key(item).as_bytes() > after));
        let items: Vec<T> = rest.by_ref().take(limit).collect();
        let more = rest.next().is_some();
        let next_cursor = items.last().filter(|_| more).map(|last| written(key(last)));
        Ok(Page { items, next_cursor })
    }
}

fn written(key: &str) -> String {
    key.bytes().map(|byte| format!("{byte:02x}")).collect()
}

/// A key's bytes. Keys are compared as bytes, so that what no key is still has its place among them.
fn read(cursor: &str) -> Option<Vec<u8>> {
    let digit = |c: char| match c {
        '0'..='9' | 'a'..='f' => c.to_digit(16).and_then(|digit| u8::try_from(digit).ok()),
        _ => None,
    };
    let digits: Vec<u8> = cursor.chars().map(digit).collect::<Option<_>>()?;
    if digits.is_empty() || !digits.len().is_multiple_of(2) {
        return None;
    }
    Some(digits.chunks_exact(2).map(|pair| (pair[0] << 4) | pair[1]).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    const NAMES: [&str; 5] = ["a", "b", "c", "d", "é"];

    fn page(limit: u16, cursor: Option<String>) -> Page<&'static str> {
        PageQuery { limit: Some(limit), cursor }.of(NAMES, |name| name).expect("a page")
    }

    #[test]
    fn pages_follow_each_other_without_gap_or_overlap() {
        for limit in 1..=6 {
            let (mut seen, mut cursor) = (Vec::new(), None);
            loop {
                let page = page(limit, cursor);
                assert!(page.items.len() <= usize::from(limit));
                seen.extend(page.items);
                cursor = page.next_cursor;
                if cursor.is_none() {
                    break;
                }
            }
            assert_eq!(seen, NAMES, "pages of {limit}");
        }
    }

    #[test]
    fn a_cursor_of_our_own_making_reads_back_and_others_are_refused() {
        assert_eq!(read(&written("et0_hs")).as_deref(), Some("et0_hs".as_bytes()));
        for cursor in ["", "6", "6g", "FF", "x"] {
            assert_eq!(read(cursor), None, "{cursor}");
        }
        let query = PageQuery { limit: Some(0), cursor: Some("x".to_owned()) };
        assert!(query.of(NAMES, |name| name).is_err());
    }
}
