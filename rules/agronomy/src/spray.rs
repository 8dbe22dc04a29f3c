//! Whether the weather allows a spray, with every reason.
//!
//! The limits are inputs, for the label's own prevail. Where none is given:
//! wind at least 3 and at most 8 mph, away from what must not be hit (pesticide stewardship pages on drift;
//! other sheets print 10 mph, common practice 15 km/h), because still air may be an inversion that carries
//! fine drops far; 4 to 29 C (oil: Colorado State University from 4 C, Washington State University 10 to
//! 29 C; sulphur and soap burn above 29 to 32 C); dry for 24 h (labels; common practice); no frost in those
//! hours (oil, Colorado State University).

/// The limits of a spray.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limits {
    /// Coolest and warmest air, C.
    pub temperature_c: (f64, f64),
    /// Least and most wind, m/s.
    pub wind_m_s: (f64, f64),
    /// Hours that must stay dry.
    pub dry_h: f64,
}

/// Miles per hour in m/s, exact.
const MPH: f64 = 0.447_04;

impl Default for Limits {
    fn default() -> Self {
        Self { temperature_c: (4.0, 29.0), wind_m_s: (3.0 * MPH, 8.0 * MPH), dry_h: 24.0 }
    }
}

/// What is known of the weather and the plant; nothing where it was not said.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Moment {
    /// Air now, C.
    pub temperature_c: Option<f64>,
    /// Wind now, m/s.
    pub wind_m_s: Option<f64>,
    /// Hours until rain is forecast.
    pub hours_to_rain: Option<f64>,
    /// Lowest temperature forecast in the dry hours, C.
    pub tmin_ahead_c: Option<f64>,
    /// Whether flowers are open where it would fall, weeds included.
    pub open_flowers: Option<bool>,
}

/// Whether the window is open.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Window {
    /// Nothing speaks against it.
    Open,
    /// Something does.
    Closed,
    /// Nothing that is known does, but something is not known.
    Depends,
}

/// The window and its reasons: those that close it first, then what is not known.
#[must_use]
pub fn window(moment: &Moment, limits: &Limits) -> (Window, Vec<String>) {
    let mut closing = Vec::new();
    let mut unknown = Vec::new();
    match moment.temperature_c {
        Some(now_c) if now_c > limits.temperature_c.1 => {
            closing.push(format!("{now_c:.1} C is above {:.1} C: sprays burn leaves in heat", limits.temperature_c.1));
        }
        Some(now_c) if now_c < limits.temperature_c.0 => {
            closing.push(format!(
                "{now_c:.1} C is below {:.1} C: it dries too slowly and works badly",
                limits.temperature_c.0
            ));
        }
        Some(_) => {}
        None => unknown.push("temperature is not known".to_owned()),
    }
    match moment.wind_m_s {
        Some(wind) if wind > limits.wind_m_s.1 => {
            closing.push(format!("wind of {wind:.1} m/s is above {:.1} m/s: it drifts", limits.wind_m_s.1));
        }
        Some(wind) if wind < limits.wind_m_s.0 => closing.push(format!(
            "wind of {wind:.1} m/s is below {:.1} m/s: still air may be an inversion, and drops hang and drift",
            limits.wind_m_s.0
        )),
        Some(_) => {}
        None => unknown.push("wind is not known".to_owned()),
    }
    match moment.hours_to_rain {
        Some(hours) if hours < limits.dry_h => {
            closing.push(format!("rain in {hours:.0} h, it must stay dry for {:.0} h: it washes off", limits.dry_h));
        }
        Some(_) => {}
        None => unknown.push("rain ahead is not known".to_owned()),
    }
    match moment.tmin_ahead_c {
        Some(ahead_c) if ahead_c <= 0.0 => {
            closing.push(format!("frost ahead, {ahead_c:.1} C: wet and tender leaves suffer"));
        }
        Some(_) => {}
        None => unknown.push("frost ahead is not known".to_owned()),
    }
    match moment.open_flowers {
        Some(true) => {
            closing.push("flowers are open: bees; wait for petal fall, unless the label allows it".to_owned());
        }
        Some(false) => {}
        None => unknown.push("open flowers are not known: bees".to_owned()),
    }
    let window = match (closing.is_empty(), unknown.is_empty()) {
        (false, _) => Window::Closed,
        (true, false) => Window::Depends,
        (true, true) => Window::Open,
    };
    closing.extend(unknown);
    (window, closing)
}

#[cfg(test)]
mod tests {
    use super::*;

    const FINE: Moment = Moment {
        temperature_c: Some(18.0),
        wind_m_s: Some(2.0),
        hours_to_rain: Some(48.0),
        tmin_ahead_c: Some(9.0),
        open_flowers: Some(false),
    };

    #[test]
    fn a_fine_evening_is_open_and_every_fault_closes_it_with_its_reason() {
        let limits = Limits::default();
        assert_eq!(window(&FINE, &limits), (Window::Open, vec![]));
        for (moment, word) in [
            (Moment { temperature_c: Some(31.0), ..FINE }, "burn"),
            (Moment { temperature_c: Some(2.0), ..FINE }, "slowly"),
            (Moment { wind_m_s: Some(5.0), ..FINE }, "drifts"),
            (Moment { wind_m_s: Some(0.3), ..FINE }, "inversion"),
            (Moment { hours_to_rain: Some(5.0), ..FINE }, "washes off"),
            (Moment { tmin_ahead_c: Some(-1.0), ..FINE }, "frost"),
            (Moment { open_flowers: Some(true), ..FINE }, "bees"),
        ] {
            let (state, reasons) = window(&moment, &limits);
            assert_eq!((state, reasons.len()), (Window::Closed, 1), "{word}");
            assert!(reasons[0].contains(word), "{reasons:?}");
        }
    }

    #[test]
    fn what_is_not_known_leaves_it_hanging_but_never_opens_it() {
        let limits = Limits::default();
        let (state, reasons) = window(&Moment { open_flowers: None, ..FINE }, &limits);
        assert_eq!((state, reasons.len()), (Window::Depends, 1));
        let (state, reasons) = window(&Moment { wind_m_s: Some(9.0), ..Moment::default() }, &limits);
        assert_eq!((state, reasons.len()), (Window::Closed, 5));
        assert!(reasons[0].contains("drifts"));
    }
}
