//! What a daily curve, a record or a forecast may be asked for.

/// A daily value: the curve, the records and the forecast know the same ones.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Series {
    /// Daily minimum temperature, °C.
    Tmin,
    /// Daily maximum temperature, °C.
    Tmax,
    /// Half the sum of the daily minimum and maximum, °C.
    Tmean,
    /// Rain, mm a day.
    Rain,
    /// Reference evapotranspiration, mm a day.
    Et0,
    /// Mean relative humidity, %.
    Rh,
    /// Wind at 2 m, m/s.
    Wind,
    /// From sunrise to sunset of the sun's centre, h.
    Daylength,
}

impl Series {
    /// All of them.
    pub const ALL: [Self; 8] =
        [Self::Tmin, Self::Tmax, Self::Tmean, Self::Rain, Self::Et0, Self::Rh, Self::Wind, Self::Daylength];

    /// The word for it in rules: `tmin`, `tmax`, `tmean`, `rain`, `et0`, `rh`, `wind`, `daylength`.
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            Self::Tmin => "tmin",
            Self::Tmax => "tmax",
            Self::Tmean => "tmean",
            Self::Rain => "rain",
            Self::Et0 => "et0",
            Self::Rh => "rh",
            Self::Wind => "wind",
            Self::Daylength => "daylength",
        }
    }

    /// Whether it is a temperature.
    #[must_use]
    pub fn is_temperature(self) -> bool {
        matches!(self, Self::Tmin | Self::Tmax | Self::Tmean)
    }
}

/// What is made of the values of several days.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Aggregate {
    /// Their mean.
    Mean,
    /// The smallest.
    Min,
    /// The largest.
    Max,
    /// Their sum.
    Sum,
}
