//! A typed read that takes no list for an object.
//!
//! The readers that `serde` derives accept `[34.2, 230]` for a structure of two members. The document of this service
//! does not, so a deserialiser is wrapped: where a structure is wanted it is asked for an object. Nothing is
//! allocated and no text is looked at twice.

use std::fmt;

use serde::Deserialize;
use serde::de::{DeserializeSeed, Deserializer, EnumAccess, MapAccess, SeqAccess, Visitor};

/// A deserialiser, visitor, seed or access made strict.
pub(super) struct Strict<T>(T);

/// Reads a `T` from JSON.
///
/// # Errors
/// The first thing that does not fit, in the parser's own words.
pub(super) fn from_json<T: for<'de> Deserialize<'de>>(text: &[u8]) -> serde_json::Result<T> {
    let mut json = serde_json::Deserializer::from_slice(text);
    let read = T::deserialize(Strict(&mut json))?;
    json.end()?;
    Ok(read)
}

macro_rules! ask_the_same {
    ($($method:ident)*) => {$(
        fn $method<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, D::Error> {
            self.0.$method(Strict(visitor))
        }
    )*};
}

impl<'de, D: Deserializer<'de>> Deserializer<'de> for Strict<D> {
    type Error = D::Error;

    ask_the_same! {
        deserialize_any deserialize_bool deserialize_i8 deserialize_i16 deserialize_i32 deserialize_i64
        deserialize_i128 deserialize_u8 deserialize_u16 deserialize_u32 deserialize_u64 deserialize_u128
        deserialize_f32 deserialize_f64 deserialize_char deserialize_str deserialize_string deserialize_bytes
        deserialize_byte_buf deserialize_option deserialize_unit deserialize_seq deserialize_map
        deserialize_identifier deserialize_ignored_any
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _name: &'static str,
        _fields: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, D::Error> {
        self.0.deserialize_map(Strict(visitor))
    }

    fn deserialize_unit_struct<V: Visitor<'de>>(self, name: &'static str, visitor: V) -> Result<V::Value, D::Error> {
        self.0.deserialize_unit_struct(name, Strict(visitor))
    }

    fn deserialize_newtype_struct<V: Visitor<'de>>(self, name: &'static str, visitor: V) -> Result<V::Value, D::Error> {
        self.0.deserialize_newtype_struct(name, Strict(visitor))
    }

    fn deserialize_tuple<V: Visitor<'de>>(self, length: usize, visitor: V) -> Result<V::Value, D::Error> {
        self.0.deserialize_tuple(length, Strict(visitor))
    }

    fn deserialize_tuple_struct<V: Visitor<'de>>(
        self,
        name: &'static str,
        length: usize,
        visitor: V,
    ) -> Result<V::Value, D::Error> {
        self.0.deserialize_tuple_struct(name, length, Strict(visitor))
    }

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        name: &'static str,
        variants: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, D::Error> {
        self.0.deserialize_enum(name, variants, Strict(visitor))
    }

    fn is_human_readable(&self) -> bool {
        self.0.is_human_readable()
    }
}

macro_rules! visit_the_same {
    ($($method:ident: $type:ty),* $(,)?) => {$(
        fn $method<E: serde::de::Error>(self, value: $type) -> Result<V::Value, E> {
            self.0.$method(value)
        }
    )*};
}

impl<'de, V: Visitor<'de>> Visitor<'de> for Strict<V> {
    type Value = V::Value;

    visit_the_same! {
        visit_bool: bool, visit_i8: i8, visit_i16: i16, visit_i32: i32, visit_i64: i64, visit_i128: i128,
        visit_u8: u8, visit_u16: u16, visit_u32: u32, visit_u64: u64, visit_u128: u128, visit_f32: f32,
        visit_f64: f64, visit_char: char, visit_str: &str, visit_borrowed_str: &'de str, visit_string: String,
        visit_bytes: &[u8], visit_borrowed_bytes: &'de [u8], visit_byte_buf: Vec<u8>,
    }

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.expecting(f)
    }

    fn visit_none<E: serde::de::Error>(self) -> Result<V::Value, E> {
        self.0.visit_none()
    }

    fn visit_unit<E: serde::de::Error>(self) -> Result<V::Value, E> {
        self.0.visit_unit()
    }

    fn visit_some<D: Deserializer<'de>>(self, deserializer: D) -> Result<V::Value, D::Error> {
        self.0.visit_some(Strict(deserializer))
    }

    fn visit_newtype_struct<D: Deserializer<'de>>(self, deserializer: D) -> Result<V::Value, D::Error> {
        self.0.visit_newtype_struct(Strict(deserializer))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, entries: A) -> Result<V::Value, A::Error> {
        self.0.visit_seq(Strict(entries))
    }

    fn visit_map<A: MapAccess<'de>>(self, members: A) -> Result<V::Value, A::Error> {
        self.0.visit_map(Strict(members))
    }

    fn visit_enum<A: EnumAccess<'de>>(self, choice: A) -> Result<V::Value, A::Error> {
        // The choices of a request are plain names: nothing is inside them to be strict about.
        self.0.visit_enum(choice)
    }
}

impl<'de, S: DeserializeSeed<'de>> DeserializeSeed<'de> for Strict<S> {
    type Value = S::Value;

    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<S::Value, D::Error> {
        self.0.deserialize(Strict(deserializer))
    }
}

impl<'de, A: SeqAccess<'de>> SeqAccess<'de> for Strict<A> {
    type Error = A::Error;

    fn next_element_seed<T: DeserializeSeed<'de>>(&mut self, seed: T) -> Result<Option<T::Value>, A::Error> {
        self.0.next_element_seed(Strict(seed))
    }

    fn size_hint(&self) -> Option<usize> {
        self.0.size_hint()
    }
}

impl<'de, A: MapAccess<'de>> MapAccess<'de> for Strict<A> {
    type Error = A::Error;

    fn next_key_seed<K: DeserializeSeed<'de>>(&mut self, seed: K) -> Result<Option<K::Value>, A::Error> {
        self.0.next_key_seed(seed)
    }

    fn next_value_seed<T: DeserializeSeed<'de>>(&mut self, seed: T) -> Result<T::Value, A::Error> {
        self.0.next_value_seed(Strict(seed))
    }

    fn size_hint(&self) -> Option<usize> {
        self.0.size_hint()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[derive(Debug, PartialEq, Deserialize)]
    struct Place {
        latitude: f64,
        #[serde(default)]
        inner: Option<Inner>,
    }

    #[derive(Debug, PartialEq, Deserialize)]
    struct Inner {
        depth: f64,
    }

    #[test]
    fn an_object_is_read_and_a_list_in_its_place_is_not() {
        let read = from_json::<Place>(br#"{"latitude": 1, "inner": {"depth": 2}}"#).expect("fits");
        assert_eq!(read, Place { latitude: 1.0, inner: Some(Inner { depth: 2.0 }) });
        assert!(serde_json::from_slice::<Place>(b"[1, [2]]").is_ok(), "else this file has no purpose");
        assert!(from_json::<Place>(b"[1, null]").is_err());
        assert!(from_json::<Place>(br#"{"latitude": 1, "inner": [2]}"#).is_err());
        assert!(from_json::<Place>(br#"{"latitude": 1} 2"#).is_err());
    }
}
