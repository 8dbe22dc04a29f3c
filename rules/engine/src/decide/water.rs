//! The water of this plant on this day.

use lammas_agronomy::calendar::Day;
use lammas_agronomy::origin::Origin;
use lammas_agronomy::season::Series;
use lammas_agronomy::water::need::{Exposure, Place, WindExposure, need_mm_per_day};
use lammas_agronomy::water::{container, root_zone, soak, texture};

use super::moment::Moment;
use crate::compile::term::Work;
use crate::fact::catalogue::Fact;
use crate::fact::choices::{EXPOSURE, PLANTING, TEXTURE, WIND};
use crate::fact::value::{Reading, Value};

/// Share of the rain that reaches the roots (common practice).
const EFFECTIVE_RAIN: f64 = 0.8;
/// How many days back a soak still tells how much is left.
const SOAK_DAYS: i32 = 28;
/// Days of records from which the store can be followed without a soak.
const RECORD_DAYS: i32 = 14;

fn choice_name(reading: Reading, list: &'static crate::fact::choices::ChoiceList) -> &'static str {
    match reading.value {
        Value::Choice(number) => list.values.get(usize::from(number)).copied().unwrap_or_default(),
        _ => "",
    }
}

fn place(moment: &Moment<'_>) -> (Place, Origin) {
    let question = moment.question;
    let (exposure, wind, heat, mulch) = (
        question.given(Fact::SiteExposure),
        question.given(Fact::SiteWind),
        question.given(Fact::SiteReflectedHeat),
        question.given(Fact::SiteMulched),
    );
    let place = Place {
        exposure: match choice_name(exposure, &EXPOSURE) {
            "half-sun" => Exposure::HalfSun,
            "shade" => Exposure::Shade,
            "afternoon-sun" => Exposure::AfternoonSun,
            _ => Exposure::FullSun,
        },
        wind: match choice_name(wind, &WIND) {
            "open" => WindExposure::Open,
            "windy" => WindExposure::Windy,
            _ => WindExposure::Sheltered,
        },
        reflected_heat: heat.value == Value::Truth(true),
        // Bare soil is the careful assumption: it asks for more water, not for less.
        mulched: mulch.value == Value::Truth(true),
    };
    (place, exposure.origin.weakest(wind.origin).weakest(heat.origin))
}

fn need_on(moment: &Moment<'_>, day: Day) -> Option<(f64, Origin)> {
    let season = &moment.question.climate.season;
    let et0 = season.curve(Series::Et0, day.climate_day())?;
    let (place, origin) = place(moment);
    let need = need_mm_per_day(et0, moment.book.habit.water_factor, 1.0, place.microclimate());
    Some((need, origin.weakest(season.curve_origin())))
}

/// What the plant takes, mm/day.
#[must_use]
pub fn need(moment: &Moment<'_>) -> Reading {
    need_on(moment, moment.day).map_or(Reading::UNKNOWN, |(need, origin)| Reading::new(Value::Number(need), origin))
}

/// Total and readily available water of the root zone in mm, for a need in mm/day; loam where the texture is not said.
fn store(moment: &Moment<'_>, need_mm: f64) -> Option<(f64, f64, Origin)> {
    let given = moment.question.given(Fact::SoilTexture);
    let (name, origin) =
        if given.value.is_there() { (choice_name(given, &TEXTURE), given.origin) } else { ("loam", Origin::Assumed) };
    let texture = texture::find(&name.replace('-', " "))?;
    let total = texture.available_middle_mm_per_m() * moment.book.habit.root_depth_m;
    let readily = root_zone::readily_available_mm(total, root_zone::p_adjusted(moment.book.habit.depletion, need_mm));
    Some((total, readily, origin))
}

fn in_container(moment: &Moment<'_>) -> bool {
    matches!(choice_name(moment.question.given(Fact::SitePlanting), &PLANTING), "container" | "indoor")
}

/// Days between soaks: from the readily available water and the need less effective rain; of a pot from its volume.
#[must_use]
pub fn interval(moment: &Moment<'_>) -> Reading {
    let Some((need, origin)) = need_on(moment, moment.day) else { return Reading::UNKNOWN };
    let question = moment.question;
    if in_container(moment) {
        let volume = question.given(Fact::SiteContainerVolume);
        let canopy = question.given(Fact::PlantCanopyDiameter);
        return match (volume.value, canopy.value) {
            (Value::Number(litres), Value::Number(diameter)) => {
                let per_day = container::need_l_per_day(need, diameter, 0.0);
                let days = container::pot_interval(container::available_l(litres), per_day).days();
                Reading::new(Value::Number(f64::from(days)), origin.weakest(volume.origin).weakest(canopy.origin))
            }
            _ => Reading::UNKNOWN,
        };
    }
    let Some((_, readily, soil_origin)) = store(moment, need) else { return Reading::UNKNOWN };
    let rain = question.climate.season.curve(Series::Rain, moment.day.climate_day()).unwrap_or(0.0);
    let days = soak::interval_days(readily, need, rain * EFFECTIVE_RAIN);
    Reading::new(Value::Number(f64::from(days)), origin.weakest(soil_origin))
}

/// How empty the root zone is, 0 full to 1 empty: followed from the last soak in the history, or from a full store at
/// the beginning of fourteen days of records (own choice); else unknown.
#[must_use]
pub fn depletion(moment: &Moment<'_>) -> Reading {
    if in_container(moment) {
        return Reading::UNKNOWN;
    }
    let Some(job) = moment.set.names.jobs.number("water") else { return Reading::UNKNOWN };
    let soaked = super::history::last(Work::Job(job), moment).flatten().filter(|day| moment.day - *day <= SOAK_DAYS);
    let recorded = |day: Day| rain_on(moment, day);
    let from = match soaked {
        Some(day) => day,
        None if (1..=RECORD_DAYS).all(|back| recorded(moment.day - back).is_some()) => moment.day - RECORD_DAYS,
        None => return Reading::UNKNOWN,
    };
    let Some((need, origin)) = need_on(moment, moment.day) else { return Reading::UNKNOWN };
    let Some((total, readily, soil_origin)) = store(moment, need) else { return Reading::UNKNOWN };
    let mut missing = 0.0;
    let mut day = from;
    while day < moment.day {
        let need = need_on(moment, day).map_or(0.0, |(need, _)| need);
        let normal = moment.question.climate.season.curve(Series::Rain, day.climate_day()).unwrap_or(0.0);
        let rain = recorded(day).unwrap_or(normal) * EFFECTIVE_RAIN;
        missing = root_zone::depletion_after_mm(total, readily, missing, need, rain);
        day = day + 1;
    }
    Reading::new(Value::Number(missing / total.max(1e-9)), origin.weakest(soil_origin))
}

fn rain_on(moment: &Moment<'_>, day: Day) -> Option<f64> {
    let records = &moment.question.climate.profile.observations;
    let at = records.binary_search_by(|weather| weather.day.cmp(&day)).ok()?;
    records.get(at).and_then(|weather| weather.rain_mm)
}
