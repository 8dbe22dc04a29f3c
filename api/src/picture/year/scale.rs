//! Heights: from values to where they are drawn.

/// Most steps of a scale.
const MOST_STEPS: f64 = 5.0;

/// A scale of a panel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Scale {
    low: f64,
    high: f64,
    step: f64,
    pub(super) top: f64,
    pub(super) bottom: f64,
}

impl Scale {
    /// A scale of whole steps that holds all from `low` to `high`, drawn from `top` to `bottom`; steps are the least of 5,
    /// 10, 20, 50, 100 and so on that suffices.
    pub(super) fn holding(low: f64, high: f64, top: f64, bottom: f64) -> Self {
        let mut step = 5.0;
        let mut factors = [2.0, 2.0, 2.5].into_iter().cycle();
        while (high / step).ceil() - (low / step).floor() > MOST_STEPS {
            step *= factors.next().unwrap_or(2.0);
        }
        let (low, high) = ((low / step).floor() * step, (high / step).ceil() * step);
        Self { low, high: if high > low { high } else { low + step }, step, top, bottom }
    }

    /// A scale with steps of its own.
    pub(super) fn of(low: f64, high: f64, step: f64, top: f64, bottom: f64) -> Self {
        Self { low, high, step, top, bottom }
    }

    /// Where a value is drawn.
    pub(super) fn y(&self, value: f64) -> f64 {
        self.bottom - (value - self.low) / (self.high - self.low) * (self.bottom - self.top)
    }

    /// The values at its steps, from low to high.
    pub(super) fn steps(&self) -> impl Iterator<Item = f64> + use<> {
        let Self { low, high, step, .. } = *self;
        (0..).map(move |count| low + f64::from(count) * step).take_while(move |value| *value <= high + step / 1000.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn a_scale_holds_what_it_must_in_few_whole_steps(low in -90.0..60.0f64, range in 0.0..3000.0f64) {
            let scale = Scale::holding(low, low + range, 100.0, 200.0);
            for value in [low, low + range] {
                let y = scale.y(value);
                prop_assert!((100.0 - 1e-6..=200.0 + 1e-6).contains(&y), "{value}: {y}");
            }
            let steps: Vec<_> = scale.steps().collect();
            prop_assert!((2..=6).contains(&steps.len()), "{steps:?}");
            prop_assert!(steps.iter().all(|step| (step / 5.0 - (step / 5.0).round()).abs() < 1e-9), "{steps:?}");
        }
    }
}
