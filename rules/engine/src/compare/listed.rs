//! Whatever is a list by name: dropped, added, or with another value.

use super::{Kind, Sentence, Words};

/// One of a list.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Item {
    /// By what it is known again.
    pub(super) key: String,
    /// What it is called.
    pub(super) name: String,
    /// Its value in one form for each meaning; empty if it has none.
    pub(super) value: String,
    /// The value in words.
    pub(super) shown: String,
}

impl Item {
    /// Something without a value.
    pub(super) fn named(key: impl Into<String>, name: impl Into<String>) -> Self {
        Self { key: key.into(), name: name.into(), value: String::new(), shown: String::new() }
    }

    /// Something whose value is said as it is compared.
    pub(super) fn valued(key: impl Into<String>, name: impl Into<String>, value: impl Into<String>) -> Self {
        let value = value.into();
        Self { key: key.into(), name: name.into(), shown: value.clone(), value }
    }

    /// With its value in words.
    pub(super) fn shown(self, shown: impl Into<String>) -> Self {
        Self { shown: shown.into(), ..self }
    }

    fn whole(&self) -> String {
        match (self.name.is_empty(), self.shown.is_empty()) {
            (_, true) => self.name.clone(),
            (true, _) => self.shown.clone(),
            _ => format!("{} ({})", self.name, self.shown),
        }
    }
}

/// Says what of a list is gone, new or other, in one sentence; the order of the list does not count.
pub(super) fn changes(
    kind: Kind,
    label: &str,
    before: &[Item],
    after: &[Item],
    words: Words<'_>,
    out: &mut Vec<Sentence>,
) {
    let find = |list: &[Item], key: &str| list.iter().find(|item| item.key == key).cloned();
    let mut said = Vec::new();
    for item in before {
        match find(after, &item.key) {
            None => {
                let gone = item.whole();
                said.push(words.pick(format!("no longer {gone}"), format!("ya no {gone}")));
            }
            Some(now) if now.value != item.value => {
                let (b, a) = (&item.shown, &now.shown);
                let change = words.pick(format!("{a} instead of {b}"), format!("{a} en vez de {b}"));
                said.push(if now.name.is_empty() { change } else { format!("{}: {change}", now.name) });
            }
            Some(_) => {}
        }
    }
    for item in after.iter().filter(|item| find(before, &item.key).is_none()) {
        let new = item.whole();
        said.push(words.pick(format!("now also {new}"), format!("ahora también {new}")));
    }
    if !said.is_empty() {
        out.push(Sentence { kind, text: format!("{label}: {}", said.join("; ")) });
    }
}

/// Says that one value is another.
pub(super) fn value(kind: Kind, label: &str, before: &str, after: &str, words: Words<'_>, out: &mut Vec<Sentence>) {
    if before != after {
        let none = words.pick("none", "nada");
        let or = |text: &str| if text.is_empty() { none.clone() } else { text.to_owned() };
        let (b, a) = (or(before), or(after));
        let text = words.pick(format!("{label}: {a} instead of {b}"), format!("{label}: {a} en vez de {b}"));
        out.push(Sentence { kind, text });
    }
}
