//! A climate profile from a daily record.

mod calendar_years;
mod csv;
mod days;
mod fault;
mod frost_seasons;
mod frost_years;
mod monthly;
mod quality;
mod quantile;

pub use calendar_years::{CalendarYear, calendar_years, days_above, monthly_climate};
pub use csv::{CsvFault, CsvRows, read_csv};
pub use days::{Place, Record, RecordProfile};
pub use fault::RecordFault;
pub use frost_seasons::{FrostSeason, count_frost, frost_seasons};
pub use frost_years::{FrostYear, YearRule, frost_years};
pub use quality::{Gap, Quality};
pub use quantile::quantile_type_8;
