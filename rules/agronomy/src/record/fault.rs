//! Why no profile can be made of a record.

use chrono::NaiveDate;

/// Why no profile can be made of a record. Every text names the day or month and the field.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum RecordFault {
    /// There are too many days.
    #[error("record has {days} days, expected at most {most}")]
    TooLong {
        /// Days given.
        days: usize,
        /// Days allowed.
        most: usize,
    },
    /// A day comes twice.
    #[error("day `{date}` comes twice")]
    Doubled {
        /// The day.
        date: NaiveDate,
    },
    /// A date lies outside the supported years.
    #[error("date `{date}` lies outside 1900-01-01 to 2200-12-31")]
    Outside {
        /// The date.
        date: NaiveDate,
    },
    /// A value is not finite or out of range.
    #[error("day `{date}`: {words}")]
    Value {
        /// The day.
        date: NaiveDate,
        /// Field, value, range, unit.
        words: String,
    },
    /// A maximum lies below its minimum.
    #[error("day `{date}`: tmax_c ({tmax_c}) is below tmin_c ({tmin_c})")]
    Crossed {
        /// The day.
        date: NaiveDate,
        /// Minimum, °C.
        tmin_c: f64,
        /// Maximum, °C.
        tmax_c: f64,
    },
    /// The record spans less than a year.
    #[error("record spans {days} days, expected 365 or more")]
    TooShort {
        /// Days from the first to the last.
        days: i32,
    },
    /// A month of the year has too few days with both temperatures.
    #[error("month {month} has {days} days with tmin_c and tmax_c, expected {least} or more")]
    ThinMonth {
        /// Month, 1 to 12.
        month: u8,
        /// Days with both temperatures, over all years.
        days: u32,
        /// Days needed.
        least: u32,
    },
}
