//! Fields that may be written in two shapes: one or many, a list or `all`, an id or an id with days.

use std::fmt;
use std::marker::PhantomData;

use serde::de::value::{MapAccessDeserializer, SeqAccessDeserializer};
use serde::de::{Deserialize, Deserializer, MapAccess, SeqAccess, Visitor};
use serde::{Serialize, Serializer};

use super::At;

/// One map, or a list of such maps.
#[derive(Clone, Debug)]
pub struct OneOrMany<T>(pub Vec<T>);

impl<T> Default for OneOrMany<T> {
    fn default() -> Self {
        Self(Vec::new())
    }
}

impl<T: Serialize> Serialize for OneOrMany<T> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        self.0.serialize(serializer)
    }
}

impl<'de, T: Deserialize<'de>> Deserialize<'de> for OneOrMany<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Shape<T>(PhantomData<T>);
        impl<'de, T: Deserialize<'de>> Visitor<'de> for Shape<T> {
            type Value = OneOrMany<T>;
            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("one entry or a list of them")
            }
            fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<Self::Value, A::Error> {
                Ok(OneOrMany(vec![T::deserialize(MapAccessDeserializer::new(map))?]))
            }
            fn visit_seq<A: SeqAccess<'de>>(self, seq: A) -> Result<Self::Value, A::Error> {
                Ok(OneOrMany(Vec::deserialize(SeqAccessDeserializer::new(seq))?))
            }
        }
        deserializer.deserialize_any(Shape(PhantomData))
    }
}

/// A list of ids, or `all`.
#[derive(Clone, Debug)]
pub enum AllOr {
    /// Every one there is.
    All,
    /// These.
    These(Vec<At<String>>),
}

impl Serialize for AllOr {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::All => serializer.serialize_str("all"),
            Self::These(ids) => ids.serialize(serializer),
        }
    }
}

impl<'de> Deserialize<'de> for AllOr {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Shape;
        impl<'de> Visitor<'de> for Shape {
            type Value = AllOr;
            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("`all` or a list of ids")
            }
            fn visit_str<E: serde::de::Error>(self, word: &str) -> Result<AllOr, E> {
                if word == "all" {
                    return Ok(AllOr::All);
                }
                Err(E::custom(format!("expected `all` or a list of ids, found `{word}`: write `[{word}]`")))
            }
            fn visit_seq<A: SeqAccess<'de>>(self, seq: A) -> Result<AllOr, A::Error> {
                Ok(AllOr::These(Vec::deserialize(SeqAccessDeserializer::new(seq))?))
            }
        }
        deserializer.deserialize_any(Shape)
    }
}

/// A rule that comes before or after, perhaps some days apart.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct OrderEntry {
    /// The other rule.
    pub rule: String,
    /// Days between them; 0 when only the order matters.
    pub days: u16,
}

impl<'de> Deserialize<'de> for OrderEntry {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        #[derive(serde::Deserialize)]
        #[serde(deny_unknown_fields)]
        struct Apart {
            rule: String,
            days: u16,
        }
        struct Shape;
        impl<'de> Visitor<'de> for Shape {
            type Value = OrderEntry;
            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("a rule's id, or `{rule: id, days: 14}`")
            }
            fn visit_str<E: serde::de::Error>(self, rule: &str) -> Result<OrderEntry, E> {
                Ok(OrderEntry { rule: rule.to_owned(), days: 0 })
            }
            fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<OrderEntry, A::Error> {
                let Apart { rule, days } = Apart::deserialize(MapAccessDeserializer::new(map))?;
                Ok(OrderEntry { rule, days })
            }
        }
        deserializer.deserialize_any(Shape)
    }
}
