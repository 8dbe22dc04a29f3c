//! Signs in the caller's own words.

use super::super::SignState;
use super::super::said::Said;
use crate::compile::set::Set;
use crate::fact::value::Truth;
use crate::words::hear::Hearing;

/// Hears the words, and takes as seen what is understood. They never make a sign false, and what the caller denies by its
/// id stays denied: such words are unsure.
pub(super) fn heard(said: &Said, set: &Set, plant: u16, states: &mut [SignState]) -> Option<Hearing> {
    let condition = said.condition.as_ref()?;
    let words = condition.words.as_deref()?;
    let mut hearing = set.words.hear(words, plant, said.language.as_deref().unwrap_or("en"));
    let is_denied = |sign: u16| condition.not_seen.iter().any(|id| set.names.signs.number(id) == Some(sign));
    let understood = std::mem::take(&mut hearing.understood);
    for (sign, text) in understood {
        let Some(state) = states.get_mut(usize::from(sign)) else { continue };
        if is_denied(sign) && state.seen == Truth::False {
            hearing.unsure.push((text, vec![sign]));
        } else {
            state.seen = Truth::True;
            hearing.understood.push((sign, text));
        }
    }
    Some(hearing)
}
