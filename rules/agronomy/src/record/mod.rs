//! A climate profile from a daily record.

mod csv;
mod days;
mod fault;
mod frost_seasons;
mod monthly;
mod quality;
mod quantile;

pub use csv::{CsvFault, CsvRows, read_csv};
pub use days::{Place, Record, RecordProfile};
pub use fault::RecordFault;
pub use frost_seasons::{FrostSeason, count_frost, frost_seasons};
pub use quality::{Gap, Quality};
pub use quantile::quantile_type_8;
