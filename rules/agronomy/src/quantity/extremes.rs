//! Days of a record in unbroken order, with their extremes.

use chrono::NaiveDate;

use super::series::Series;
use crate::bounds::{Unusable, in_order, within};

/// A day of the record; a value may be missing.
pub(super) struct DayRow {
    pub(super) date: NaiveDate,
    values_c: [Option<f64>; 2],
}

impl DayRow {
    /// Minimum and maximum in C, or the error that says which day has none.
    pub(super) fn extremes_c(&self) -> Result<(f64, f64), Unusable> {
        let [Some(tmin_c), Some(tmax_c)] = self.values_c else {
            return Err(hole(&format!("the record has no extremes on {}", self.date)));
        };
        within("tmin_c", tmin_c, "C", -90.0, 60.0)?;
        within("tmax_c", tmax_c, "C", -90.0, 60.0)?;
        in_order("tmin_c", tmin_c, "tmax_c", tmax_c, "C")?;
        Ok((tmin_c, tmax_c))
    }

    /// The minimum in C, where there is one.
    pub(super) fn tmin_c(&self) -> Option<f64> {
        let [tmin_c, _] = self.values_c;
        tmin_c
    }
}

/// What is wrong with a record that lacks a day.
pub(super) fn hole(what: &str) -> Unusable {
    Unusable::Unread {
        field: "series",
        text: what.to_owned(),
        expected: "every day that is asked for, with tmin_c and tmax_c".to_owned(),
    }
}

/// The days from `from` on, one after the other, until the record ends, skips a day, or passes `to`.
/// Never empty.
pub(super) fn days_from(text: &str, from: NaiveDate, to: Option<NaiveDate>) -> Result<Vec<DayRow>, Unusable> {
    let series = Series::new(text)?;
    let columns = [series.column("tmin_c")?, series.column("tmax_c")?];
    let mut rows: Vec<DayRow> = Vec::new();
    for day in series.days(columns) {
        let (date, values_c) = day?;
        let wanted = match rows.last() {
            None => Some(from),
            Some(last) => last.date.succ_opt(),
        };
        if wanted.is_some_and(|wanted| date < wanted) {
            continue;
        }
        if wanted != Some(date) || to.is_some_and(|to| date > to) {
            break;
        }
        rows.push(DayRow { date, values_c });
    }
    if rows.is_empty() { Err(hole(&format!("the record has no day {from}"))) } else { Ok(rows) }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn date(day: u32) -> NaiveDate {
        NaiveDate::from_ymd_opt(2026, 3, day).unwrap()
    }

    #[test]
    fn days_run_until_one_is_skipped() {
        let text = "date,tmin_c,tmax_c\n2026-03-01,1,9\n2026-03-02,2,\n2026-03-04,3,9\n";
        let rows = days_from(text, date(1), None).unwrap();
        assert_eq!(rows.len(), 2);
        assert_eq!(rows[0].extremes_c(), Ok((1.0, 9.0)));
        assert_eq!(rows[1].tmin_c(), Some(2.0));
        assert_eq!(
            rows[1].extremes_c().unwrap_err().to_string(),
            "series is `the record has no extremes on 2026-03-02`, expected every day that is asked for, with tmin_c and tmax_c"
        );
        assert!(days_from(text, date(3), None).is_err());
        assert_eq!(days_from(text, date(1), Some(date(1))).unwrap().len(), 1);
    }
}
