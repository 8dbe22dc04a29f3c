//! One question, answered by both sets.

use super::change::{self, Change, How};
use super::compared::{self, Compared};
use crate::compile::set::Set;
use crate::question::Question;

/// A set with the question as it understood it; none: it refused it.
pub type Asked<'a> = (&'a Set, Option<&'a Question>);

/// What stood there before and what stands there now, in words.
pub type Detail = Option<(String, String)>;

/// Answers a question by both sets and visits everything that differs; the detail is worked out only when it is asked for.
/// Whether anything does; nothing when neither set can answer.
pub fn compare(
    before: Asked<'_>,
    after: Asked<'_>,
    visit: &mut dyn FnMut(&Change<'_>, &dyn Fn() -> Detail),
) -> Option<bool> {
    fn decided<'a>((set, question): Asked<'a>) -> Option<Compared<'a>> {
        compared::of(set, question?)
    }
    let whole = |how| Change { rule: "", how };
    match (decided(before), decided(after)) {
        (None, None) => None,
        (Some(_), None) => {
            visit(&whole(How::Refused), &|| None);
            Some(true)
        }
        (None, Some(_)) => {
            visit(&whole(How::Understood), &|| None);
            Some(true)
        }
        (Some(was), Some(is)) => {
            let changes = change::between(&was, &is);
            for change in &changes {
                visit(change, &|| change::detail(change, (&was, before.0), (&is, after.0)));
            }
            Some(!changes.is_empty())
        }
    }
}
