//! JSON read as a plain value. Unlike `serde_json`'s own reading, a member that stands twice is refused: which of
//! the two was meant can't be told.

use std::fmt;

use serde::Deserialize;
use serde::de::{Deserializer, Error, MapAccess, SeqAccess, Visitor};
use serde_json::{Map, Number, Value};

pub(super) struct Tree(pub(super) Value);

impl<'de> Deserialize<'de> for Tree {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(TreeVisitor)
    }
}

struct TreeVisitor;

impl<'de> Visitor<'de> for TreeVisitor {
    type Value = Tree;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a JSON value")
    }

    fn visit_unit<E>(self) -> Result<Tree, E> {
        Ok(Tree(Value::Null))
    }

    fn visit_bool<E>(self, value: bool) -> Result<Tree, E> {
        Ok(Tree(Value::Bool(value)))
    }

    fn visit_u64<E>(self, value: u64) -> Result<Tree, E> {
        Ok(Tree(Value::Number(value.into())))
    }

    fn visit_i64<E>(self, value: i64) -> Result<Tree, E> {
        Ok(Tree(Value::Number(value.into())))
    }

    fn visit_f64<E: Error>(self, value: f64) -> Result<Tree, E> {
        let number = Number::from_f64(value).ok_or_else(|| E::custom("a number is not finite"))?;
        Ok(Tree(Value::Number(number)))
    }

    fn visit_str<E>(self, text: &str) -> Result<Tree, E> {
        Ok(Tree(Value::String(text.to_owned())))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut entries: A) -> Result<Tree, A::Error> {
        let mut list = Vec::new();
        while let Some(Tree(entry)) = entries.next_element()? {
            list.push(entry);
        }
        Ok(Tree(Value::Array(list)))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut members: A) -> Result<Tree, A::Error> {
        let mut object = Map::new();
        while let Some(name) = members.next_key::<String>()? {
            if object.contains_key(&name) {
                return Err(Error::custom(format_args!("the field `{name}` stands twice")));
            }
            let Tree(value) = members.next_value()?;
            object.insert(name, value);
        }
        Ok(Tree(Value::Object(object)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_member_that_stands_twice_is_refused_with_its_place() {
        let error = serde_json::from_str::<Tree>("{\"pets\": true,\n \"pets\": false}").err().expect("refused");
        assert!(error.to_string().starts_with("the field `pets` stands twice at line 2"), "{error}");
    }

    #[test]
    fn everything_else_is_kept_as_it_is() {
        let text = r#"{"b":[1,-2,2.5,"x",null,true],"a":{}}"#;
        let Tree(value) = serde_json::from_str(text).expect("JSON");
        assert_eq!(value.to_string(), text);
    }
}
