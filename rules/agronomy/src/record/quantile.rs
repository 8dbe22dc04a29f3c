//! The quantile of a few values.

/// Quantile of values in ascending order by definition 8 of Hyndman and Fan (1996, "Sample quantiles in
/// statistical packages"): median-unbiased whatever the distribution. `share` lies in 0 to 1.
///
/// Infinite values may stand at the ends ("earlier than any", "later than any"): the quantile is none
/// where one of them weighs in it, and where there are no values.
#[must_use]
pub fn quantile_type_8(ascending: &[f64], share: f64) -> Option<f64> {
    let count = ascending.len() as f64;
    let place = (count + 1.0 / 3.0) * share + 1.0 / 3.0;
    let place = place.clamp(1.0, count.max(1.0));
    let below = place.floor();
    let weight = place - below;
    // place is 1 or more and at most the count
    let lower = *ascending.get(below as usize - 1)?;
    if weight < 1e-12 {
        return lower.is_finite().then_some(lower);
    }
    let upper = *ascending.get(below as usize)?;
    (lower.is_finite() && upper.is_finite()).then_some(lower + (upper - lower) * weight)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_quantile_hangs_on_what_never_came() {
        let never = f64::NEG_INFINITY;
        let ten = [never, never, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0];
        assert_eq!(quantile_type_8(&ten, 0.1), None);
        assert_eq!(quantile_type_8(&ten, 0.5), Some(5.5));
        assert_eq!(quantile_type_8(&[], 0.5), None);
        assert_eq!(quantile_type_8(&[4.0], 0.9), Some(4.0));
    }
}
