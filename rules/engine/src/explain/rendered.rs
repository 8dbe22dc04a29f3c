//! Texts that are the same in every answer, written as JSON once.

use std::ops::Deref;

use serde::{Serialize, Serializer};
use serde_json::value::RawValue;

/// A value with its JSON.
#[derive(Clone, Debug)]
pub struct Rendered<T> {
    value: T,
    json: Option<Box<RawValue>>,
}

impl<T: Serialize> Rendered<T> {
    /// Writes a value once and for all.
    #[must_use]
    pub fn of(value: T) -> Self {
        let json = serde_json::value::to_raw_value(&value).ok();
        Self { value, json }
    }
}

impl<T> Deref for Rendered<T> {
    type Target = T;

    fn deref(&self) -> &T {
        &self.value
    }
}

impl<T: Serialize> Serialize for Rendered<T> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match &self.json {
            Some(json) => json.serialize(serializer),
            None => self.value.serialize(serializer),
        }
    }
}
