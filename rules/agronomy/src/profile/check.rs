//! Everything that can be wrong with a profile, found at once.

use super::Profile;
use super::fault::ProfileFault;
use super::frost_dates::FrostTriple;
use super::limits::Limits;
use super::normals::{Humidity, Monthly, Radiation};
use super::weather::DailyWeather;
use crate::calendar::{ClimateDay, Day};
use crate::origin::Origin;

/// Last day, counted from the day of issue, that a forecast may speak of.
const FURTHEST_FORECAST_DAYS: i32 = 30;

#[derive(Default)]
struct Faults(Vec<ProfileFault>);

impl Faults {
    fn add(&mut self, path: impl Into<String>, words: impl Into<String>) {
        self.0.push(ProfileFault { path: path.into(), words: words.into() });
    }

    fn range(&mut self, path: &str, label: &str, limits: Limits, value: f64) -> bool {
        let fault = limits.fault(label, value);
        let sound = fault.is_none();
        if let Some(words) = fault {
            self.add(path, words);
        }
        sound
    }

    fn months(&mut self, path: &str, limits: Limits, values: &Monthly) {
        for (month, value) in values.iter().enumerate() {
            let label = format!("{}[{month}]", limits.name);
            self.range(&format!("{path}/{month}"), &label, limits, *value);
        }
    }

    /// Months in which `upper` lies below `lower`; those out of range were named already.
    fn order(&mut self, path: &str, (upper_name, upper): (&str, &Monthly), lower: (&str, &Monthly)) {
        for (month, (upper, below)) in upper.iter().zip(lower.1).enumerate() {
            if upper < below {
                let words = format!("{upper_name}[{month}] is below {}[{month}]", lower.0);
                self.add(format!("{path}/{month}"), words);
            }
        }
    }

    fn triple(&mut self, path: &str, triple: &FrostTriple) {
        let known: Vec<(&str, ClimateDay)> = ["early", "median", "late"]
            .into_iter()
            .zip(triple.days())
            .filter_map(|(name, day)| Some((name, day?)))
            .collect();
        for pair in known.windows(2) {
            if let [(earlier, before), (later, after)] = pair
                && after.days_from(*before) < 0
            {
                self.add(format!("{path}/{later}"), format!("{later} ({after}) lies before {earlier} ({before})"));
            }
        }
        if let [(_, first), middle, (_, last)] = known.as_slice()
            && middle.1.days_from(*first) >= 0
            && last.days_from(middle.1) >= 0
            && last.days_from(*first) < 0
        {
            let words = format!("late ({last}) lies more than half a year after early ({first})");
            self.add(format!("{path}/late"), words);
        }
    }

    fn days(&mut self, path: &str, days: &[DailyWeather]) {
        let mut before: Option<Day> = None;
        for (at, weather) in days.iter().enumerate() {
            let place = format!("{path}/{at}");
            let day = weather.day;
            if let Err(outside) = Day::supported(day.date()) {
                self.add(format!("{place}/day"), outside.to_string());
            }
            match before {
                Some(earlier) if earlier == day => {
                    self.add(format!("{place}/day"), format!("day `{}` comes twice", day.date()));
                }
                Some(earlier) if earlier > day => {
                    let words = format!("day `{}` follows `{}`", day.date(), earlier.date());
                    self.add(format!("{place}/day"), words + ", expected them in order");
                }
                _ => {}
            }
            before = Some(before.map_or(day, |earlier| earlier.max(day)));
            self.weather(&place, weather);
        }
    }

    fn weather(&mut self, place: &str, weather: &DailyWeather) {
        let fields = [
            (Limits::TMIN, weather.tmin_c),
            (Limits::TMAX, weather.tmax_c),
            (Limits::RAIN_OF_DAY, weather.rain_mm),
            (Limits::RH, weather.rh_pct),
            (Limits::WIND, weather.wind_ms),
        ];
        for (limits, value) in fields {
            if let Some(value) = value {
                self.range(&format!("{place}/{}", limits.name), limits.name, limits, value);
            }
        }
        if let (Some(tmin_c), Some(tmax_c)) = (weather.tmin_c, weather.tmax_c)
            && tmax_c < tmin_c
        {
            self.add(format!("{place}/tmax_c"), format!("tmax_c ({tmax_c}) is below tmin_c ({tmin_c})"));
        }
    }
}

impl Profile {
    /// Looks the whole profile over.
    ///
    /// # Errors
    /// All faults at once, in the order of the fields: values that are not finite or out of their
    /// range ([`Limits`]), maxima below minima, frost dates out of order, too many days, days out of
    /// order or doubled, a forecast without days or with days before it was issued.
    pub fn check(&self) -> Result<(), Vec<ProfileFault>> {
        let mut faults = Faults::default();
        self.check_place(&mut faults);
        self.check_normals(&mut faults);
        self.check_cold(&mut faults);
        self.check_weather(&mut faults);
        if faults.0.is_empty() { Ok(()) } else { Err(faults.0) }
    }

    fn check_place(&self, faults: &mut Faults) {
        let fields = [
            (Limits::LATITUDE, Some(self.latitude_deg)),
            (Limits::LONGITUDE, self.longitude_deg),
            (Limits::ELEVATION, self.elevation_m),
        ];
        for (limits, value) in fields {
            if let Some(value) = value {
                faults.range(&format!("/{}", limits.name), limits.name, limits, value);
            }
        }
        if !matches!(self.origin, Origin::Given | Origin::Measured | Origin::Estimated) {
            let words = format!("origin is `{}`, expected `given`, `measured` or `estimated`", self.origin.as_str());
            faults.add("/origin", words);
        }
    }

    fn check_normals(&self, faults: &mut Faults) {
        let normals = &self.normals;
        faults.months("/normals/tmin_c", Limits::TMIN, &normals.tmin_c);
        faults.months("/normals/tmax_c", Limits::TMAX, &normals.tmax_c);
        let tmax = ("tmax_c", &normals.tmax_c);
        faults.order("/normals/tmax_c", tmax, ("tmin_c", &normals.tmin_c));
        if let Some(rain_mm) = &normals.rain_mm {
            faults.months("/normals/rain_mm", Limits::RAIN_OF_MONTH, rain_mm);
        }
        match &normals.humidity {
            Some(Humidity::RhMean(rh)) => {
                faults.months("/normals/humidity/rh_mean", Limits::RH_MEAN, rh);
            }
            Some(Humidity::DewPoint(dew)) => {
                let path = "/normals/humidity/dew_point";
                faults.months(path, Limits::DEW_POINT, dew);
                faults.order(path, tmax, ("dew_point", dew));
            }
            None => {}
        }
        if let Some(wind_ms) = &normals.wind_ms {
            faults.months("/normals/wind_ms", Limits::WIND, wind_ms);
        }
        match &normals.radiation {
            Some(Radiation::SunshineHours(hours)) => {
                faults.months("/normals/radiation/sunshine_hours", Limits::SUNSHINE, hours);
            }
            Some(Radiation::SolarMj(solar)) => {
                faults.months("/normals/radiation/solar_mj", Limits::SOLAR, solar);
            }
            None => {}
        }
    }

    fn check_cold(&self, faults: &mut Faults) {
        if let Some(frost) = &self.frost {
            faults.triple("/frost/last", &frost.last);
            faults.triple("/frost/first", &frost.first);
        }
        if let Some(counted) = &self.counted_frost {
            faults.triple("/counted_frost/last", &counted.last);
            faults.triple("/counted_frost/first", &counted.first);
            let shares = [
                ("share_with_frost", counted.share_with_frost),
                ("share_with_killing_frost", counted.share_with_killing_frost),
            ];
            for (name, share) in shares {
                let limits = Limits { name, unit: "of 1", min: 0.0, max: 1.0 };
                faults.range(&format!("/counted_frost/{name}"), name, limits, share);
            }
        }
        if let Some(extreme_min_c) = self.extreme_min_c {
            let coldest_c = self.normals.tmin_c.iter().copied().fold(f64::INFINITY, f64::min);
            let name = Limits::EXTREME_MIN.name;
            let path = "/extreme_min_c";
            if faults.range(path, name, Limits::EXTREME_MIN, extreme_min_c) && extreme_min_c > coldest_c {
                let words = format!("{name} ({extreme_min_c}) is above the coldest month's tmin_c ({coldest_c})");
                faults.add(path, words);
            }
        }
        if let Some(days) = self.heat_days_a_year {
            faults.range("/heat_days_a_year", Limits::HEAT_DAYS.name, Limits::HEAT_DAYS, days);
        }
        if let Some(tmin_sd_k) = &self.tmin_sd_k {
            faults.months("/tmin_sd_k", Limits::TMIN_SD, tmin_sd_k);
        }
    }

    fn check_weather(&self, faults: &mut Faults) {
        let count = self.observations.len();
        if count > Self::MOST_OBSERVATIONS {
            let most = Self::MOST_OBSERVATIONS;
            faults.add("/observations", format!("{count} days, expected at most {most}"));
        } else {
            faults.days("/observations", &self.observations);
        }
        let Some(forecast) = &self.forecast else {
            return;
        };
        let issued = forecast.issued;
        if let Err(outside) = Day::supported(issued.date()) {
            faults.add("/forecast/issued", outside.to_string());
        }
        let (count, most) = (forecast.days.len(), Self::MOST_FORECAST_DAYS);
        if count == 0 || count > most {
            faults.add("/forecast/days", format!("{count} days, expected 1 to {most}"));
            return;
        }
        faults.days("/forecast/days", &forecast.days);
        for (at, weather) in forecast.days.iter().enumerate() {
            let ahead = weather.day - issued;
            let issued = issued.date();
            let date = weather.day.date();
            if ahead < 0 {
                let words = format!("day `{date}` lies before the day of issue `{issued}`");
                faults.add(format!("/forecast/days/{at}/day"), words);
            } else if ahead > FURTHEST_FORECAST_DAYS {
                let words = format!(
                    "day `{date}` lies more than {FURTHEST_FORECAST_DAYS} days after the day of issue `{issued}`"
                );
                faults.add(format!("/forecast/days/{at}/day"), words);
            }
        }
    }
}
