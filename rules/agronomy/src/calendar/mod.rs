//! Days: the real ones with 29 February, and the 365 days of the climate year.

mod climate_day;
mod day;
mod month_table;

pub use climate_day::{ClimateDay, MonthDayFault};
pub use day::{DateOutside, Day, FIRST_DATE, LAST_DATE};
pub(crate) use month_table::MONTH_STARTS;
pub use month_table::{DAYS_IN_MONTH, month_value};
