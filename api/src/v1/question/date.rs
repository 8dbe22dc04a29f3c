//! Dates, days of a year, and moments, written as ISO 8601 writes them.

use std::borrow::Cow;
use std::fmt;

use chrono::{DateTime, FixedOffset, NaiveDate, SecondsFormat};
use serde::de::{Deserializer, Error, Visitor};
use serde::{Deserialize, Serialize, Serializer};
use utoipa::openapi::schema::{ObjectBuilder, Schema, Type};
use utoipa::openapi::{KnownFormat, RefOr, SchemaFormat};
use utoipa::{PartialSchema, ToSchema};

use crate::problem::clipped;

/// A calendar date, `2026-09-15`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Date(pub NaiveDate);

/// A day of every year, `05-31`. 29 February is taken as 28 February.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct DayOfYear {
    /// 1 to 12.
    pub month: u8,
    /// 1 to 31.
    pub day: u8,
}

/// A date, meaning its end at the place, or an instant with its offset.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AsOf {
    /// `2026-09-15`
    Day(NaiveDate),
    /// `2026-09-15T12:00:00Z`
    Instant(DateTime<FixedOffset>),
}

impl DayOfYear {
    /// The day that a text such as `05-31` names.
    pub(crate) fn of(text: &str) -> Option<Self> {
        <Self as Written>::read(text)
    }
}

/// An instant with its offset.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Instant(pub DateTime<FixedOffset>);

trait Written: Sized {
    const EXPECTED: &'static str;
    fn read(text: &str) -> Option<Self>;
}

impl Written for Date {
    const EXPECTED: &'static str = "a date such as `2026-09-15`";

    fn read(text: &str) -> Option<Self> {
        // Not shorter: `2026-9-1` is read as a day by one program and as a month by another.
        let date = NaiveDate::parse_from_str(text, "%Y-%m-%d").ok()?;
        (text.len() == 10 && date.to_string() == text).then_some(Self(date))
    }
}

impl Written for DayOfYear {
    const EXPECTED: &'static str = "a month and a day such as `05-31`";

    fn read(text: &str) -> Option<Self> {
        // 2024 has every day that any year has.
        let Date(date) = Date::read(&format!("2024-{text}"))?;
        let (month, day) = text.split_once('-')?;
        match date.to_string().as_str() {
            "2024-02-29" => Some(Self { month: 2, day: 28 }),
            _ => Some(Self { month: month.parse().ok()?, day: day.parse().ok()? }),
        }
    }
}

impl Written for Instant {
    const EXPECTED: &'static str = "an instant with its offset such as `2026-09-15T12:00:00Z`";

    fn read(text: &str) -> Option<Self> {
        DateTime::parse_from_rfc3339(text).ok().map(Self)
    }
}

impl Written for AsOf {
    const EXPECTED: &'static str = "a date such as `2026-09-15` or an instant such as `2026-09-15T12:00:00Z`";

    fn read(text: &str) -> Option<Self> {
        match Date::read(text) {
            Some(Date(date)) => Some(Self::Day(date)),
            None => DateTime::parse_from_rfc3339(text).ok().map(Self::Instant),
        }
    }
}

impl fmt::Display for Date {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.0)
    }
}

impl fmt::Display for DayOfYear {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:02}-{:02}", self.month, self.day)
    }
}

impl fmt::Display for Instant {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0.to_rfc3339_opts(SecondsFormat::AutoSi, true))
    }
}

impl fmt::Display for AsOf {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Day(date) => write!(f, "{date}"),
            Self::Instant(instant) => Instant(*instant).fmt(f),
        }
    }
}

struct Read<T>(std::marker::PhantomData<T>);

impl<T: Written> Visitor<'_> for Read<T> {
    type Value = T;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(T::EXPECTED)
    }

    fn visit_str<E: Error>(self, text: &str) -> Result<T, E> {
        T::read(text).ok_or_else(|| E::custom(format_args!("expected {}, found `{}`", T::EXPECTED, clipped(text))))
    }
}

macro_rules! sent_as_text {
    ($($type:ident: $name:literal, $about:literal, $schema:expr;)*) => {$(
        impl<'de> Deserialize<'de> for $type {
            fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                deserializer.deserialize_str(Read(std::marker::PhantomData))
            }
        }

        impl Serialize for $type {
            fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.collect_str(self)
            }
        }

        impl PartialSchema for $type {
            fn schema() -> RefOr<Schema> {
                let text = ObjectBuilder::new().schema_type(Type::String).description(Some($about));
                let text: ObjectBuilder = $schema(text);
                RefOr::T(Schema::Object(text.build()))
            }
        }

        impl ToSchema for $type {
            fn name() -> Cow<'static, str> {
                Cow::Borrowed($name)
            }
        }
    )*};
}

sent_as_text! {
    Date: "Date", "A calendar date.",
        |text: ObjectBuilder| text.format(Some(SchemaFormat::KnownFormat(KnownFormat::Date))).examples([serde_json::json!("2026-09-15")]);
    DayOfYear: "DayOfYear", "A month and a day of every year; 29 February is taken as 28 February.",
        |text: ObjectBuilder| text.pattern(Some("^(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])$")).examples([serde_json::json!("05-31")]);
    Instant: "Instant", "An instant with its offset (RFC 3339).",
        |text: ObjectBuilder| text.format(Some(SchemaFormat::KnownFormat(KnownFormat::DateTime))).examples([serde_json::json!("2026-09-15T12:00:00Z")]);
    AsOf: "AsOf", "A date, meaning its end at the place, or an instant with its offset (RFC 3339).",
        |text: ObjectBuilder| text.examples([serde_json::json!("2026-09-15"), serde_json::json!("2026-09-15T12:00:00Z")]);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_whole_dates_are_dates() {
        for text in ["2026-09-15", "2024-02-29", "0001-01-01"] {
            assert_eq!(Date::read(text).map(|d| d.to_string()).as_deref(), Some(text));
        }
        for text in ["2026-9-5", "2026-02-30", "2026-13-01", "+026-01-01", "15.09.2026", "2026-09-15T00:00:00Z", ""] {
            assert_eq!(Date::read(text), None, "{text}");
        }
    }

    #[test]
    fn a_day_of_every_year_has_no_year() {
        assert_eq!(DayOfYear::read("02-29"), Some(DayOfYear { month: 2, day: 28 }));
        assert_eq!(DayOfYear::read("12-31").map(|d| d.to_string()).as_deref(), Some("12-31"));
        for text in ["02-30", "13-01", "1-1", "2026-01-01"] {
            assert_eq!(DayOfYear::read(text), None, "{text}");
        }
    }

    #[test]
    fn as_of_is_a_date_or_an_instant() {
        assert!(matches!(AsOf::read("2026-09-15"), Some(AsOf::Day(_))));
        assert!(matches!(AsOf::read("2026-09-15T12:00:00+02:00"), Some(AsOf::Instant(_))));
        assert_eq!(AsOf::read("2026-09-15T12:00:00"), None);
    }

    #[test]
    fn what_was_found_is_said() {
        let error = serde_json::from_str::<Date>("\"15 Sept\"").expect_err("not a date").to_string();
        assert!(error.starts_with("expected a date such as `2026-09-15`, found `15 Sept`"), "{error}");
    }
}
