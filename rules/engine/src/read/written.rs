//! An entry as it is written: a new one, or one that speaks of an entry of a set below. Which it is says its first field.

use std::fmt;
use std::marker::PhantomData;

use serde::de::value::MapAccessDeserializer;
use serde::de::{Deserialize, DeserializeSeed, Deserializer, Error, IntoDeserializer, MapAccess, Visitor};

use crate::pack::At;
use crate::pack::layer::{Grounds, RewordEntry, TightenEntry, WithholdEntry};

/// The words, as the first field of an entry.
pub(super) const WORDS: [&str; 4] = ["replace", "reword", "tighten", "withhold"];

/// An entry as it is written.
pub(super) enum Written<T> {
    /// A new one.
    New(T),
    /// One that takes the place of one below.
    Replaced(T, Grounds),
    /// Other texts for one below.
    Reword(RewordEntry),
    /// More care with one below.
    Tighten(TightenEntry),
    /// One below is held.
    Withhold(WithholdEntry),
}

impl<'de, T: Deserialize<'de>> Deserialize<'de> for Written<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_map(Shape(PhantomData))
    }
}

struct Shape<T>(PhantomData<T>);

impl<'de, T: Deserialize<'de>> Visitor<'de> for Shape<T> {
    type Value = Written<T>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("an entry with its fields")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Written<T>, A::Error> {
        let first: Option<String> = map.next_key()?;
        let word = first.as_deref().and_then(|first| WORDS.iter().find(|word| **word == first)).copied();
        let whole = After { first, map };
        match word {
            Some("replace") => {
                let mut grounds = Grounds::default();
                let replacing = MapAccessDeserializer::new(Replacing { whole, grounds: &mut grounds });
                let entry = T::deserialize(replacing)?;
                Ok(Written::Replaced(entry, grounds))
            }
            Some("reword") => Ok(Written::Reword(Deserialize::deserialize(MapAccessDeserializer::new(whole))?)),
            Some("tighten") => Ok(Written::Tighten(Deserialize::deserialize(MapAccessDeserializer::new(whole))?)),
            Some(_) => Ok(Written::Withhold(Deserialize::deserialize(MapAccessDeserializer::new(whole))?)),
            None => Ok(Written::New(T::deserialize(MapAccessDeserializer::new(whole))?)),
        }
    }
}

/// The fields of an entry whose first name has been read already.
struct After<A> {
    first: Option<String>,
    map: A,
}

impl<'de, A: MapAccess<'de>> MapAccess<'de> for After<A> {
    type Error = A::Error;

    fn next_key_seed<K: DeserializeSeed<'de>>(&mut self, seed: K) -> Result<Option<K::Value>, A::Error> {
        match self.first.take() {
            Some(first) => seed.deserialize(first.into_deserializer()).map(Some),
            None => self.map.next_key_seed(seed),
        }
    }

    fn next_value_seed<V: DeserializeSeed<'de>>(&mut self, seed: V) -> Result<V::Value, A::Error> {
        self.map.next_value_seed(seed)
    }
}

/// The same of an entry that takes the place of another: `replace` is its id, and the grounds are kept apart.
struct Replacing<'g, A> {
    whole: After<A>,
    grounds: &'g mut Grounds,
}

impl<'de, A: MapAccess<'de>> MapAccess<'de> for Replacing<'_, A> {
    type Error = A::Error;

    fn next_key_seed<K: DeserializeSeed<'de>>(&mut self, seed: K) -> Result<Option<K::Value>, A::Error> {
        loop {
            let Some(name) = self.whole.next_key::<String>()? else { return Ok(None) };
            match name.as_str() {
                "because" => self.grounds.because = self.whole.next_value()?,
                "expects" => self.grounds.expects = Some(self.whole.next_value::<At<String>>()?),
                "loosen" => self.grounds.loosen = self.whole.next_value()?,
                "reviewed_by" => self.grounds.reviewed_by = self.whole.next_value()?,
                "replace" => return seed.deserialize("id".into_deserializer()).map(Some),
                "id" => return Err(Error::custom("expected `replace` or `id`, found both: write `replace` alone")),
                _ => return seed.deserialize(name.into_deserializer()).map(Some),
            }
        }
    }

    fn next_value_seed<V: DeserializeSeed<'de>>(&mut self, seed: V) -> Result<V::Value, A::Error> {
        self.whole.next_value_seed(seed)
    }
}
