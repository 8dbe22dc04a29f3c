//! The range that each measured value must lie in.

/// A field with its unit and the range that it must lie in.
///
/// The ranges are wide enough for every place on land, and narrow enough to catch a value in another
/// unit (common practice; the temperatures lie just beyond the extremes on record).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limits {
    /// Name of the field, with its unit.
    pub name: &'static str,
    /// Unit as it is written out.
    pub unit: &'static str,
    /// Smallest value allowed.
    pub min: f64,
    /// Largest value allowed.
    pub max: f64,
}

macro_rules! limits {
    ($($(#[$doc:meta])* $constant:ident = $name:literal, $unit:literal, $min:literal .. $max:literal;)*) => {
        impl Limits {
            $($(#[$doc])*
            pub const $constant: Self = Self { name: $name, unit: $unit, min: $min, max: $max };)*
        }
    };
}

limits! {
    /// Latitude.
    LATITUDE = "latitude_deg", "°", -90.0 .. 90.0;
    /// Longitude.
    LONGITUDE = "longitude_deg", "°", -180.0 .. 180.0;
    /// Height above the sea.
    ELEVATION = "elevation_m", "m", -500.0 .. 9000.0;
    /// Daily or mean minimum temperature.
    TMIN = "tmin_c", "°C", -90.0 .. 60.0;
    /// Daily or mean maximum temperature.
    TMAX = "tmax_c", "°C", -90.0 .. 60.0;
    /// Rain of a month.
    RAIN_OF_MONTH = "rain_mm", "mm", 0.0 .. 5000.0;
    /// Rain of a day.
    RAIN_OF_DAY = "rain_mm", "mm", 0.0 .. 2000.0;
    /// Relative humidity.
    RH = "rh_pct", "%", 0.0 .. 100.0;
    /// Mean relative humidity of a month.
    RH_MEAN = "rh_mean", "%", 0.0 .. 100.0;
    /// Dew point.
    DEW_POINT = "dew_point", "°C", -95.0 .. 40.0;
    /// Wind at 2 m.
    WIND = "wind_ms", "m/s", 0.0 .. 40.0;
    /// Sunshine a day.
    SUNSHINE = "sunshine_hours", "h", 0.0 .. 24.0;
    /// Solar radiation a day.
    SOLAR = "solar_mj", "MJ/m²", 0.0 .. 45.0;
    /// Mean annual extreme minimum.
    EXTREME_MIN = "extreme_min_c", "°C", -90.0 .. 40.0;
    /// Heat days of a year.
    HEAT_DAYS = "heat_days_a_year", "days", 0.0 .. 366.0;
    /// Spread of the daily minimum.
    TMIN_SD = "tmin_sd_k", "K", 0.1 .. 20.0;
}

impl Limits {
    /// What is wrong with a value, if anything: `elevation_m is 9500, expected -500 to 9000 m`.
    /// `label` is the field as the caller may call it, such as `tmin_c[6]`.
    #[must_use]
    pub fn fault(&self, label: &str, value: f64) -> Option<String> {
        if value.is_finite() && (self.min..=self.max).contains(&value) {
            return None;
        }
        let space = if self.unit == "°" { "" } else { " " };
        let Self { unit, min, max, .. } = self;
        if value.is_finite() {
            Some(format!("{label} is {value}, expected {min} to {max}{space}{unit}"))
        } else {
            Some(format!("{label} is not a finite number, expected {min} to {max}{space}{unit}"))
        }
    }
}
