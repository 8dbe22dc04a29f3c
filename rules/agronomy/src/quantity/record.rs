//! Inputs that hold a whole daily record.

use super::Given;
use super::inputs::{Input, Kind};
use super::series::Series;
use crate::bounds::Unusable;
use crate::calendar::Day;
use crate::profile::DailyWeather;
use crate::record::Record;

pub(super) const MINIMA: Input = Input::new("series", Kind::Series, "daily record with a column tmin_c");
pub(super) const MAXIMA: Input = Input::new("series", Kind::Series, "daily record with a column tmax_c");
pub(super) const MEANS_AND_RAIN: Input =
    Input::new("series", Kind::Series, "daily record with columns tmin_c, tmax_c and precip_mm");

/// The days of the input `series`, in order: of the columns `tmin_c`, `tmax_c` and `precip_mm` those that are
/// there; the needed ones must be.
pub(super) fn days(given: &Given<'_>, needed: &[&str]) -> Result<Vec<DailyWeather>, Unusable> {
    let series = Series::new(given.text("series")?)?;
    for column in needed {
        series.column(column)?;
    }
    // a column that is not there reads as the date would, so it is left out below
    let column = |name: &str| series.column(name).ok();
    let columns = [column("tmin_c"), column("tmax_c"), column("precip_mm")];
    let there = columns.map(|column| column.is_some());
    let at = needed.iter().find_map(|name| column(name)).unwrap_or(0);
    let mut days = Vec::new();
    for day in series.days(columns.map(|column| column.unwrap_or(at))) {
        let (date, values) = day?;
        let [tmin_c, tmax_c, rain_mm] = values;
        let [has_tmin, has_tmax, has_rain] = there;
        days.push(DailyWeather {
            tmin_c: tmin_c.filter(|_| has_tmin),
            tmax_c: tmax_c.filter(|_| has_tmax),
            rain_mm: rain_mm.filter(|_| has_rain),
            ..DailyWeather::unknown(Day::from_date(date))
        });
    }
    let unread = |text: String| Unusable::Unread {
        field: "series",
        text,
        expected: "one or more days in order, each once, values in their ranges".to_owned(),
    };
    let record =
        Record::new(days).map_err(|faults| unread(faults.first().map_or_else(String::new, ToString::to_string)))?;
    if record.days().is_empty() {
        return Err(unread("a header alone".to_owned()));
    }
    Ok(record.days().to_vec())
}
