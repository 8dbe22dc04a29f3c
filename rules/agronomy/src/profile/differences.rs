//! A climate that differs from another in ways a gardener can say.

use super::{FrostTriple, GivenFrost, Humidity, Limits, Monthly, Profile, ProfileFault};
use crate::calendar::ClimateDay;
use crate::curve::{Harmonics, straight_lines};
use crate::frost::{FrostDates, Turning, site_frost, spread_from_normals};
use crate::origin::Origin;

/// In what a climate differs from another; [`Default`] is in nothing.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Differences {
    /// Nights all year, K: -2 is two degrees colder.
    pub nights_k: f64,
    /// Afternoons all year, K.
    pub afternoons_k: f64,
    /// Afternoons of summer, K: whole in the warmest part of the year, nothing in the coldest, by a wave between.
    pub summer_afternoons_k: f64,
    /// The last frosts, days: -7 is a week earlier.
    pub last_frost_days: Option<i16>,
    /// The first frosts, days: -21 is three weeks earlier.
    pub first_frost_days: Option<i16>,
    /// Cold air gathers: nights are 2 K colder.
    pub frost_pocket: bool,
    /// Before a wall in the sun: nights 1 K, afternoons 1.5 K warmer.
    pub warm_wall: bool,
    /// On a roof: summer afternoons 2 K warmer, wind half as strong again.
    pub roof: bool,
}

impl Differences {
    /// Nights of a frost pocket lie so much lower, K (own choice, as for a frost hollow).
    pub const POCKET_NIGHTS_K: f64 = -2.0;
    /// A wall in the sun gives back its warmth at night, K (own choice).
    pub const WALL_NIGHTS_K: f64 = 1.0;
    /// The same in the afternoons of all the year, K (own choice).
    pub const WALL_AFTERNOONS_K: f64 = 1.5;
    /// A roof is hotter in summer afternoons, K (own choice).
    pub const ROOF_SUMMER_K: f64 = 2.0;
    /// A roof is windier, times (own choice).
    pub const ROOF_WIND: f64 = 1.5;
    /// The warmest and coldest difference that may be stated, K.
    pub const TEMPERATURE: Limits = Limits { name: "difference", unit: "K", min: -15.0, max: 15.0 };
    /// The most days that may be stated.
    pub const DAYS: Limits = Limits { name: "difference", unit: "days", min: -90.0, max: 90.0 };

    fn check(&self) -> Result<(), Vec<ProfileFault>> {
        let days = |days: Option<i16>| f64::from(days.unwrap_or(0));
        let fields = [
            ("nights_k", Self::TEMPERATURE, self.nights_k),
            ("afternoons_k", Self::TEMPERATURE, self.afternoons_k),
            ("summer_afternoons_k", Self::TEMPERATURE, self.summer_afternoons_k),
            ("last_frost_days", Self::DAYS, days(self.last_frost_days)),
            ("first_frost_days", Self::DAYS, days(self.first_frost_days)),
        ];
        let faults: Vec<ProfileFault> = fields
            .into_iter()
            .filter_map(|(name, limits, value)| {
                Some(ProfileFault { path: format!("/{name}"), words: limits.fault(name, value)? })
            })
            .collect();
        if faults.is_empty() { Ok(()) } else { Err(faults) }
    }

    fn nights(&self) -> f64 {
        let pocket_k = if self.frost_pocket { Self::POCKET_NIGHTS_K } else { 0.0 };
        let wall_k = if self.warm_wall { Self::WALL_NIGHTS_K } else { 0.0 };
        self.nights_k + pocket_k + wall_k
    }

    /// On a part of the year whose share of summer is 0 to 1.
    fn afternoons(&self, summer: f64) -> f64 {
        let wall_k = if self.warm_wall { Self::WALL_AFTERNOONS_K } else { 0.0 };
        let roof_k = if self.roof { Self::ROOF_SUMMER_K } else { 0.0 };
        self.afternoons_k + wall_k + (self.summer_afternoons_k + roof_k) * summer
    }
}

/// The profile of a climate that differs from a known one (which has passed its check) in stated ways.
///
/// Nights move the daily minimum, the extreme minimum, records and forecast; afternoons the daily maximum, which never
/// falls below the minimum. Frost dates that were given or counted bend by as many days as the reckoned ones move, and
/// still win over those; stated days win over bending, and move reckoned dates too. Frost dates that were moved so
/// count as given. Heat days that were counted no longer hold and are left out when afternoons
/// differ; a dew point is held at the new maximum.
///
/// # Errors
/// A difference that is not finite or more than 15 K or 90 days; stated days for frost that this climate has not.
pub fn differences(from: &Profile, differences: &Differences) -> Result<Profile, Vec<ProfileFault>> {
    differences.check()?;
    let nights_k = differences.nights();
    let old = &from.normals;
    let turning = Turning::of(&Harmonics::of_months(&old.tmin_c));
    let summer_of = |day: ClimateDay| {
        let off = f64::from(day.days_from(turning.warmest)) / 365.0;
        (1.0 + libm::cos(off * std::f64::consts::TAU)) / 2.0
    };
    let mut profile = from.clone();
    let normals = &mut profile.normals;
    normals.tmin_c = old.tmin_c.map(|tmin_c| tmin_c + nights_k);
    for (month, (tmax_c, tmin_c)) in (1..).zip(normals.tmax_c.iter_mut().zip(&normals.tmin_c)) {
        let middle = ClimateDay::from_month_day(month, 15).unwrap_or(turning.warmest);
        *tmax_c = (*tmax_c + differences.afternoons(summer_of(middle))).max(*tmin_c);
    }
    if let Some(Humidity::DewPoint(dew_point_c)) = &mut normals.humidity {
        for (dew_c, tmax_c) in dew_point_c.iter_mut().zip(&normals.tmax_c) {
            *dew_c = dew_c.min(*tmax_c);
        }
    }
    if let Some(wind_ms) = normals.wind_ms.as_mut().filter(|_| differences.roof) {
        *wind_ms = wind_ms.map(|ms| (ms * Differences::ROOF_WIND).min(Limits::WIND.max));
    }
    let forecast = profile.forecast.iter_mut().flat_map(|forecast| &mut forecast.days);
    for weather in profile.observations.iter_mut().chain(forecast) {
        weather.tmin_c = weather.tmin_c.map(|tmin_c| tmin_c + nights_k);
        let warmer_k = differences.afternoons(summer_of(weather.day.climate_day()));
        let least_c = weather.tmin_c.unwrap_or(f64::NEG_INFINITY);
        weather.tmax_c = weather.tmax_c.map(|tmax_c| (tmax_c + warmer_k).max(least_c));
    }
    profile.extreme_min_c = from.extreme_min_c.map(|extreme_c| extreme_c + nights_k);
    let same_afternoons = [0.0, 1.0].iter().all(|summer| differences.afternoons(*summer).abs() < 1e-9);
    profile.heat_days_a_year = from.heat_days_a_year.filter(|_| same_afternoons);
    if profile.origin == Origin::Measured {
        profile.origin = Origin::Given;
    }
    if nights_k != 0.0 || differences.last_frost_days.is_some() || differences.first_frost_days.is_some() {
        profile.frost = frost(from, &profile.normals.tmin_c, differences, turning)?;
        profile.counted_frost = None;
    }
    profile.check()?;
    Ok(profile)
}

fn frost(
    from: &Profile,
    new_tmin_c: &Monthly,
    differences: &Differences,
    turning: Turning,
) -> Result<Option<GivenFrost>, Vec<ProfileFault>> {
    let old = &from.normals;
    let mut means_c = old.tmin_c;
    for (mean_c, tmax_c) in means_c.iter_mut().zip(&old.tmax_c) {
        *mean_c = (*mean_c + tmax_c) / 2.0;
    }
    // one spread for both, so that only the nights move the dates
    let spread_k = straight_lines(&from.tmin_sd_k.unwrap_or_else(|| spread_from_normals(&means_c)));
    let reckoned = |tmin_c: &Monthly| FrostDates::from_normals(&Harmonics::of_months(tmin_c).row(), &spread_k, turning);
    let (level, site) = (reckoned(&old.tmin_c), reckoned(new_tmin_c));
    let (counted, given) = (from.counted_frost.as_ref(), from.frost.as_ref());
    let before = site_frost(level, None, counted, given, Origin::Computed).dates;
    let bent = site_frost(site, Some(&level), counted, given, Origin::Computed).dates;

    let told = |triple: fn(&GivenFrost) -> FrostTriple| {
        counted.is_some() || given.is_some_and(|given| triple(given) != FrostTriple::default())
    };
    let side = |field: &str, days: Option<i16>, before: FrostTriple, bent: FrostTriple, told: bool| match days {
        Some(_) if before == FrostTriple::default() => Err(ProfileFault {
            path: format!("/{field}"),
            words: format!("{field} is given, but this climate has no such frost to move"),
        }),
        Some(days) => Ok(FrostTriple::of_days(before.days().map(|day| day.map(|day| day.plus(days.into()))))),
        None if told => Ok(bent),
        None => Ok(FrostTriple::default()),
    };
    let last = side("last_frost_days", differences.last_frost_days, before.last, bent.last, told(|given| given.last));
    let first =
        side("first_frost_days", differences.first_frost_days, before.first, bent.first, told(|given| given.first));
    match (last, first) {
        (Ok(last), Ok(first)) => {
            let frost = GivenFrost { last, first };
            Ok((frost != GivenFrost::default()).then_some(frost))
        }
        (last, first) => Err([last.err(), first.err()].into_iter().flatten().collect()),
    }
}
