//! Entries that are neither rules nor materials: field by field.

use serde_json::{Map, Value};

use super::rule::reworded;
use super::{Kind, Sentence, Words, normal};

/// Fields that hold nothing but words for people.
const TEXTS: [&str; 9] = ["name", "names", "about", "look", "words", "text", "title", "publisher", "review"];

/// What changed, by the fields of the entries as they are hashed.
pub(super) fn differences(before: &Value, after: &Value, words: Words<'_>) -> Vec<Sentence> {
    let empty = Map::new();
    let (b, a) = (before.as_object().unwrap_or(&empty), after.as_object().unwrap_or(&empty));
    let mut fields: Vec<&String> = b.keys().chain(a.keys().filter(|key| !b.contains_key(*key))).collect();
    fields.retain(|field| *field != "id");
    let mut out = Vec::new();
    let mut texts = Vec::new();
    for field in fields {
        let (was, is) = (b.get(field), a.get(field));
        let is_text = TEXTS.contains(&field.as_str());
        if (is_text && was == is) || (!is_text && was.map(one_form) == is.map(one_form)) {
            continue;
        }
        if is_text {
            texts.push(field.clone());
        } else if field == "sources" {
            let text = words.pick("other sources", "otras fuentes");
            out.push(Sentence { kind: Kind::Sources, text });
        } else {
            let none = words.pick("nothing", "nada");
            let show = |value: Option<&Value>| value.map_or_else(|| none.clone(), shown);
            let (was, is) = (show(was), show(is));
            let text = words.pick(format!("{field}: {is} instead of {was}"), format!("{field}: {is} en vez de {was}"));
            out.push(Sentence { kind: Kind::Setting, text });
        }
    }
    reworded(&texts, words, &mut out);
    out
}

/// A value in which expressions have one form for each meaning.
fn one_form(value: &Value) -> Value {
    match value {
        Value::String(text) => Value::String(normal::value(text)),
        Value::Array(items) => Value::Array(items.iter().map(one_form).collect()),
        Value::Object(map) => Value::Object(map.iter().map(|(key, item)| (key.clone(), one_form(item))).collect()),
        other => other.clone(),
    }
}

fn shown(value: &Value) -> String {
    match value {
        Value::String(text) => format!("`{text}`"),
        Value::Array(items) => format!("[{}]", items.iter().map(shown).collect::<Vec<_>>().join(", ")),
        Value::Object(map) => {
            format!(
                "{{{}}}",
                map.iter().map(|(key, item)| format!("{key}: {}", shown(item))).collect::<Vec<_>>().join(", ")
            )
        }
        other => other.to_string(),
    }
}
