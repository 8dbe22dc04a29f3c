//! A plain value read into a type, strictly: an object is an object, never a list of its members.
//!
//! In `text` mode, for queries and paths, all leaves are texts, and numbers and truths are read out of them.

use serde::de::value::StrDeserializer;
use serde::de::{DeserializeSeed, Deserializer, Error, IntoDeserializer, MapAccess, SeqAccess, Unexpected, Visitor};
use serde::forward_to_deserialize_any;
use serde_json::{Map, Value, map};

use crate::problem::wording::Misfit;

#[derive(Clone, Copy)]
pub(super) struct Reader<'a> {
    value: &'a Value,
    text: bool,
}

impl<'a> Reader<'a> {
    /// Reads JSON.
    pub(super) fn json(value: &'a Value) -> Self {
        Self { value, text: false }
    }

    /// Reads a value whose leaves are texts.
    pub(super) fn text(value: &'a Value) -> Self {
        Self { value, text: true }
    }

    fn misfit<'de, V: Visitor<'de>>(self, visitor: &V) -> Misfit {
        let found = match self.value {
            Value::Null => Unexpected::Unit,
            Value::Bool(truth) => Unexpected::Bool(*truth),
            Value::Number(number) => match (number.as_u64(), number.as_i64()) {
                (Some(value), _) => Unexpected::Unsigned(value),
                (_, Some(value)) => Unexpected::Signed(value),
                _ => Unexpected::Float(number.as_f64().unwrap_or(f64::NAN)),
            },
            Value::String(text) => Unexpected::Str(text),
            Value::Array(_) => Unexpected::Seq,
            Value::Object(_) => Unexpected::Map,
        };
        Misfit::invalid_type(found, visitor)
    }
}

macro_rules! out_of_text {
    ($($method:ident => $visit:ident: $type:ty),*) => {$(
        fn $method<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Misfit> {
            match self.value {
                Value::String(text) if self.text => match text.parse::<$type>() {
                    Ok(value) => visitor.$visit(value),
                    Err(_) => Err(self.misfit(&visitor)),
                },
                _ => self.deserialize_any(visitor),
            }
        }
    )*};
}

impl<'de> Deserializer<'de> for Reader<'de> {
    type Error = Misfit;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Misfit> {
        match self.value {
            Value::Null => visitor.visit_unit(),
            Value::Bool(truth) => visitor.visit_bool(*truth),
            Value::Number(number) => match (number.as_u64(), number.as_i64()) {
                (Some(value), _) => visitor.visit_u64(value),
                (_, Some(value)) => visitor.visit_i64(value),
                _ => visitor.visit_f64(number.as_f64().unwrap_or(f64::NAN)),
            },
            Value::String(text) => visitor.visit_borrowed_str(text),
            Value::Array(list) => visitor.visit_seq(Entries { rest: list.iter(), text: self.text }),
            Value::Object(object) => visitor.visit_map(Members { rest: object.iter(), value: None, text: self.text }),
        }
    }

    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Misfit> {
        match self.value {
            Value::Null => visitor.visit_none(),
            _ => visitor.visit_some(self),
        }
    }

    fn deserialize_newtype_struct<V: Visitor<'de>>(self, _name: &'static str, visitor: V) -> Result<V::Value, Misfit> {
        visitor.visit_newtype_struct(self)
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _name: &'static str,
        _fields: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Misfit> {
        match self.value {
            Value::Object(_) => self.deserialize_any(visitor),
            _ => Err(self.misfit(&visitor)),
        }
    }

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        name: &'static str,
        variants: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Misfit> {
        match self.value {
            Value::String(text) => {
                let choice: StrDeserializer<'_, Misfit> = text.as_str().into_deserializer();
                choice.deserialize_enum(name, variants, visitor)
            }
            _ => Err(self.misfit(&visitor)),
        }
    }

    fn deserialize_seq<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Misfit> {
        match self.value {
            // A parameter given once is a list of one.
            Value::String(_) if self.text => {
                visitor.visit_seq(Entries { rest: std::slice::from_ref(self.value).iter(), text: true })
            }
            _ => self.deserialize_any(visitor),
        }
    }

    fn deserialize_tuple<V: Visitor<'de>>(self, length: usize, visitor: V) -> Result<V::Value, Misfit> {
        match self.value {
            // A list that is too short fails by itself, once all that it has is read.
            Value::Array(list) if list.len() > length => Err(Misfit::invalid_length(list.len(), &visitor)),
            _ => self.deserialize_seq(visitor),
        }
    }

    out_of_text! {
        deserialize_bool => visit_bool: bool,
        deserialize_u8 => visit_u64: u64,
        deserialize_u16 => visit_u64: u64,
        deserialize_u32 => visit_u64: u64,
        deserialize_u64 => visit_u64: u64,
        deserialize_i8 => visit_i64: i64,
        deserialize_i16 => visit_i64: i64,
        deserialize_i32 => visit_i64: i64,
        deserialize_i64 => visit_i64: i64,
        deserialize_f32 => visit_f64: f64,
        deserialize_f64 => visit_f64: f64
    }

    forward_to_deserialize_any! {
        i128 u128 char str string bytes byte_buf unit unit_struct tuple_struct map identifier ignored_any
    }
}

struct Entries<'a> {
    rest: std::slice::Iter<'a, Value>,
    text: bool,
}

impl<'de> SeqAccess<'de> for Entries<'de> {
    type Error = Misfit;

    fn next_element_seed<T: DeserializeSeed<'de>>(&mut self, seed: T) -> Result<Option<T::Value>, Misfit> {
        let text = self.text;
        self.rest.next().map(|value| seed.deserialize(Reader { value, text })).transpose()
    }

    fn size_hint(&self) -> Option<usize> {
        Some(self.rest.len())
    }
}

struct Members<'a> {
    rest: map::Iter<'a>,
    value: Option<&'a Value>,
    text: bool,
}

impl<'de> MapAccess<'de> for Members<'de> {
    type Error = Misfit;

    fn next_key_seed<K: DeserializeSeed<'de>>(&mut self, seed: K) -> Result<Option<K::Value>, Misfit> {
        let Some((name, value)) = self.rest.next() else {
            return Ok(None);
        };
        self.value = Some(value);
        let name: StrDeserializer<'_, Misfit> = name.as_str().into_deserializer();
        seed.deserialize(name).map(Some)
    }

    fn next_value_seed<T: DeserializeSeed<'de>>(&mut self, seed: T) -> Result<T::Value, Misfit> {
        let value = self.value.take().unwrap_or(&Value::Null);
        seed.deserialize(Reader { value, text: self.text })
    }

    fn size_hint(&self) -> Option<usize> {
        Some(self.rest.len())
    }
}

/// Named texts as an object; a name that stands again makes its value a list.
pub(super) fn object_of(pairs: impl Iterator<Item = (String, String)>) -> Value {
    let mut object = Map::new();
    for (name, text) in pairs {
        match object.get_mut(&name) {
            None => {
                object.insert(name, Value::String(text));
            }
            Some(Value::Array(list)) => list.push(Value::String(text)),
            Some(one) => *one = Value::Array(vec![one.take(), Value::String(text)]),
        }
    }
    Value::Object(object)
}
