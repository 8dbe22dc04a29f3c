//! A climate profile from a daily record.

mod calendar_years;
mod csv;
mod days;
mod fault;
mod frost_seasons;
mod frost_years;
mod lines;
mod monthly;
mod quality;
mod quantile;
mod sampling;
mod station_csv;
mod suspicions;

pub use calendar_years::{CalendarYear, calendar_years, days_above, monthly_climate};
pub use csv::{CsvRows, Layout, read_csv, read_csv_in};
pub use days::{Place, Record, RecordProfile};
pub use fault::RecordFault;
pub use frost_seasons::{FrostSeason, count_frost, frost_seasons};
pub use frost_years::{FrostYear, YearRule, frost_years};
pub use lines::CsvFault;
pub use quality::{Gap, Quality};
pub use quantile::quantile_type_8;
pub use sampling::{FrostSampling, frost_sampling};
pub use station_csv::{StationUnits, read_station_csv};
pub use suspicions::{Extreme, Stuck, Suspicions, UnitSuspicion, suspicions};
