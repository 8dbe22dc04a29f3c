//! The twelve months of the climate year.

/// Days of each month in the climate year, January first. February has 28.
pub const DAYS_IN_MONTH: [u8; 12] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/// Index of the first day of each month in the climate year.
pub(crate) const MONTH_STARTS: [u16; 12] = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334];

/// Month (0 to 11) in which the day with this index (0 to 364) lies.
pub(crate) fn month_of(index: u16) -> usize {
    MONTH_STARTS.partition_point(|start| *start <= index).saturating_sub(1)
}

/// The value of a month in a table of twelve, month 0 to 11; later months count round the year.
#[must_use]
pub fn month_value(table: &[f64; 12], month: usize) -> f64 {
    table.get(month % 12).copied().unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn starts_are_the_running_sum_of_the_lengths() {
        let mut start = 0;
        for (month, days) in DAYS_IN_MONTH.iter().enumerate() {
            assert_eq!(MONTH_STARTS[month], start);
            for day in 0..u16::from(*days) {
                assert_eq!(month_of(start + day), month);
            }
            start += u16::from(*days);
        }
        assert_eq!(start, 365);
    }
}
