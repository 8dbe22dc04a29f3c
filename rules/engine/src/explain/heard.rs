//! What was heard, with the names of the signs.

use super::answer::{Heard, NotUnderstood, SignNamed, Understood, Unsure};
use crate::compile::set::Set;
use crate::words::hear::Hearing;

/// What was heard, in a language.
pub(super) fn shown<'a>(hearing: &'a Hearing, set: &'a Set, language: &str) -> Heard<'a> {
    let named = |sign: u16| SignNamed {
        sign: set.names.signs.name(sign),
        name: set.pack.signs.get(usize::from(sign)).map_or("", |filed| filed.entry.name.get(language)),
    };
    let understood = hearing.understood.iter().map(|(sign, text)| {
        let SignNamed { sign, name } = named(*sign);
        Understood { sign, name, text }
    });
    let unsure = hearing
        .unsure
        .iter()
        .map(|(text, signs)| Unsure { text, could_be: signs.iter().map(|sign| named(*sign)).collect() });
    Heard {
        understood: understood.collect(),
        unsure: unsure.collect(),
        not_understood: hearing.not_understood.iter().map(|text| NotUnderstood { text }).collect(),
    }
}
