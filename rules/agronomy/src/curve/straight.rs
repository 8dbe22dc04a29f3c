//! Straight lines between the middles of the months.

use std::sync::LazyLock;

use super::row::Row;
use crate::calendar::{ClimateDay, DAYS_IN_MONTH, MONTH_STARTS, month_value};

/// Where noon of a day lies between two mid-months.
#[derive(Clone, Copy)]
struct Between {
    /// The month (0 to 11) whose middle came last.
    left: usize,
    /// Share of the way to the next middle, 0 to 1.
    way: f64,
}

/// Every profile uses the same ones, so they are worked out once.
static BETWEEN: LazyLock<Vec<Between>> = LazyLock::new(|| {
    ClimateDay::all()
        .map(|day| {
            let month = day.month_index();
            let noon = f64::from(day.day_of_year()) - 0.5;
            let left = if noon < middle(month) { (month + 11) % 12 } else { month };
            let right = (left + 1) % 12;
            let start = if middle(left) > noon { middle(left) - 365.0 } else { middle(left) };
            let end = if middle(right) < start { middle(right) + 365.0 } else { middle(right) };
            let end = if end < noon { end + 365.0 } else { end };
            Between { left, way: (noon - start) / (end - start) }
        })
        .collect()
});

/// A daily row from twelve monthly values, by straight lines between mid-months, round the year.
///
/// It never leaves the range of the monthly values, which is why it carries what may not turn
/// negative or pass a limit: the spread of the daily minimum, humidity, wind, sunshine. (Its monthly
/// means are a little flatter than the values given.)
#[must_use]
pub fn straight_lines(monthly: &[f64; 12]) -> Row {
    let mut between = BETWEEN.iter();
    Row::from_fn(|_| {
        let Some(Between { left, way }) = between.next().copied() else {
            return 0.0;
        };
        let (a, b) = (month_value(monthly, left), month_value(monthly, left + 1));
        a + (b - a) * way
    })
}

/// Days from the start of the year to the middle of a month (0 to 11).
fn middle(month: usize) -> f64 {
    let start = MONTH_STARTS.get(month).copied().unwrap_or_default();
    let days = DAYS_IN_MONTH.get(month).copied().unwrap_or_default();
    f64::from(start) + f64::from(days) / 2.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_stay_within_the_months_around_and_meet_them_in_the_middle() {
        let monthly = [1.0, 2.0, 4.0, 8.0, 3.0, 5.0, 9.0, 2.0, 6.0, 7.0, 1.5, 0.5];
        let row = straight_lines(&monthly);
        assert_eq!(row.extent(), (0.5, 9.0));
        for (month, value) in monthly.iter().enumerate().filter(|(m, _)| DAYS_IN_MONTH[*m] == 31) {
            let mid = ClimateDay::from_month_day(month as u32 + 1, 16).unwrap();
            assert_eq!(row.at(mid).to_bits(), value.to_bits());
        }
        // 1 January lies between the middles of December and January
        let new_year = row.at(ClimateDay::around(0));
        assert!((0.5..1.0).contains(&new_year));
    }
}
