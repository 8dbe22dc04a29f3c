//! What a term turns out to be at a moment.

use lammas_agronomy::origin::Origin;
use lammas_agronomy::season::{Half, Series};

use super::marker_dates::{self, Dates};
use super::moment::Moment;
use super::{history, stage, water};
use crate::compile::call;
use crate::compile::path::SERIES;
use crate::compile::term::{MarkerAt, Term};
use crate::fact::catalogue::{Fact, Giver};
use crate::fact::choices::{HALF, KOPPEN};
use crate::fact::step::Step;
use crate::fact::value::{Reading, Truth, Value};

/// km/h in a m/s.
const KMH: f64 = 3.6;
/// Facts have decimal steps, binary sums of them don't: 25.3 - 14.8 is 10.5 and not a hair more.
const CLEAN: Step = Step::new(1, 1_000_000_000);

/// The reading of a term: its value rounded to the step of its fact, and the weakest origin of what went into it.
#[must_use]
pub fn term(term: &Term, moment: &Moment<'_>) -> Reading {
    let reading = raw(term, moment);
    match (reading.value, call::step(term)) {
        (Value::Number(number), Some(step)) => Reading { value: Value::Number(step.round(number)), ..reading },
        _ => reading,
    }
}

fn raw(of: &Term, moment: &Moment<'_>) -> Reading {
    let question = moment.question;
    let season = &question.climate.season;
    let sign = |number: u16| question.signs.get(usize::from(number));
    match of {
        Term::Fact(fact) => self::fact(*fact, moment),
        Term::Trait(number) => question.traits.get(usize::from(*number)).copied().unwrap_or(Reading::UNKNOWN),
        Term::Sign(number) => from_truth(sign(*number).map_or(Truth::Unknown, |s| s.seen)),
        Term::Severity(number) => given(sign(*number).and_then(|s| s.severity).map(Value::Choice)),
        Term::Share(number) => given(sign(*number).and_then(|s| s.share_pct).map(Value::Number)),
        Term::RegionIs(code) => match &question.region {
            None => Reading::UNKNOWN,
            Some(said) => from_truth(region_is(said, code)),
        },
        Term::RegionFlag(flag) => {
            let has = question.region_flags.contains(flag);
            Reading::new(Value::Truth(has), if has { Origin::Given } else { Origin::Assumed })
        }
        Term::Wants(job) => {
            let wanted = question.wishes.contains(job);
            Reading::new(Value::Truth(wanted), if wanted { Origin::Given } else { Origin::Assumed })
        }
        Term::Done(work, days) => given(history::count(*work, *days, moment).map(|count| Value::Truth(count > 0))),
        #[expect(clippy::cast_precision_loss, reason = "a history has at most some hundred entries")]
        Term::Count(work, days) => given(history::count(*work, *days, moment).map(|count| Value::Number(count as f64))),
        Term::Past(aggregate, series, days) => computed(season.past(*aggregate, *series, *days, moment.day), *series),
        Term::Ahead(aggregate, series, days) => computed(season.ahead(*aggregate, *series, *days, moment.day), *series),
        Term::FrostAhead(temperature, days) => {
            let (frost, origin) = season.frost_ahead(*temperature, *days, moment.day);
            Reading::new(Value::Truth(frost), origin)
        }
        Term::HeatSum { base_c, upper_c, from } => {
            let origin = marker_dates::origin(&from.marker, moment);
            match marker_dates::at(from, moment) {
                Dates::Unknown => Reading::UNKNOWN,
                Dates::Absent(_) => Reading::new(Value::Absent, origin),
                dates => match dates.last(moment.day) {
                    // It has not begun: nothing is summed yet.
                    None => Reading::new(Value::Number(0.0), origin),
                    Some(day) => Reading::new(
                        Value::Number(season.heat_sum(*base_c, *upper_c, day, moment.day)),
                        origin.weakest(season.heat_sum_origin(day, moment.day)),
                    ),
                },
            }
        }
        Term::Marker(at) => dated(at, moment, |dates| dates.nearest(moment.day).map(Value::Date)),
        Term::DaysTo(at) => {
            dated(at, moment, |dates| dates.next(moment.day).map(|day| Value::Number(f64::from(day - moment.day))))
        }
        Term::DaysFrom(at) => {
            dated(at, moment, |dates| dates.last(moment.day).map(|day| Value::Number(f64::from(moment.day - day))))
        }
        Term::Literal(value) => Reading::new(*value, Origin::Given),
        Term::Add(a, b) => both(term(a, moment), term(b, moment), 1.0),
        Term::Subtract(a, b) => both(term(a, moment), term(b, moment), -1.0),
        Term::Times(a, by) => scaled(term(a, moment), |x| x * by),
        Term::Over(a, by) => scaled(term(a, moment), |x| x / by),
        Term::Converted(a, from, to) => scaled(term(a, moment), |x| from.convert(x, to)),
        Term::Compare(a, comparison, b) => {
            let (a, b) = (term(a, moment), term(b, moment));
            let origin = a.origin.weakest(b.origin);
            let truth = match (a.value, b.value) {
                // Absent decides even beside unknown.
                (Value::Absent, _) | (_, Value::Absent) => {
                    Truth::known(*comparison == crate::lang::ast::Comparison::Unequal)
                }
                (Value::Unknown, _) | (_, Value::Unknown) => return Reading::UNKNOWN,
                (Value::Number(x), Value::Number(y)) => Truth::known(comparison.holds(x.total_cmp(&y))),
                (Value::Date(x), Value::Date(y)) => Truth::known(comparison.holds(x.cmp(&y))),
                _ => Truth::False,
            };
            Reading { origin, ..from_truth(truth) }
        }
    }
}

fn from_truth(truth: Truth) -> Reading {
    match truth {
        Truth::Unknown => Reading::UNKNOWN,
        known => Reading::new(Value::Truth(known == Truth::True), Origin::Given),
    }
}

fn given(value: Option<Value>) -> Reading {
    value.map_or(Reading::UNKNOWN, |value| Reading::new(value, Origin::Given))
}

fn computed(found: Option<(f64, Origin)>, series: Series) -> Reading {
    match found {
        Some((value, origin)) => {
            let value = if series == Series::Wind { value * KMH } else { value };
            Reading::new(Value::Number(value), origin)
        }
        None => Reading::UNKNOWN,
    }
}

fn dated(at: &MarkerAt, moment: &Moment<'_>, pick: impl FnOnce(&Dates) -> Option<Value>) -> Reading {
    let origin = marker_dates::origin(&at.marker, moment);
    match marker_dates::at(at, moment) {
        Dates::Unknown => Reading::UNKNOWN,
        Dates::Absent(_) => Reading::new(Value::Absent, origin),
        dates @ Dates::Days(_) => Reading::new(pick(&dates).unwrap_or(Value::Absent), origin),
    }
}

fn both(a: Reading, b: Reading, sign: f64) -> Reading {
    #[expect(clippy::cast_possible_truncation, reason = "an offset is a whole number of days")]
    let value = match (a.value, b.value) {
        (Value::Absent, _) | (_, Value::Absent) => Value::Absent,
        (Value::Number(x), Value::Number(y)) => Value::Number(CLEAN.round(x + sign * y)),
        (Value::Date(x), Value::Number(y)) => Value::Date(x + (sign * y) as i32),
        (Value::Date(x), Value::Date(y)) => Value::Number(f64::from(x - y)),
        _ => Value::Unknown,
    };
    Reading::new(value, a.origin.weakest(b.origin))
}

fn scaled(a: Reading, by: impl FnOnce(f64) -> f64) -> Reading {
    match a.value {
        Value::Number(x) => Reading { value: Value::Number(CLEAN.round(by(x))), ..a },
        _ => a,
    }
}

/// Whether a region is this one or lies in it; unknown when it is said too coarsely to tell.
fn region_is(said: &str, code: &str) -> Truth {
    let inside = |inner: &str, outer: &str| {
        inner == outer || inner.strip_prefix(outer).is_some_and(|rest| rest.starts_with('-'))
    };
    if inside(said, code) {
        Truth::True
    } else if inside(code, said) {
        Truth::Unknown
    } else {
        Truth::False
    }
}

fn fact(fact: Fact, moment: &Moment<'_>) -> Reading {
    let question = moment.question;
    let season = &question.climate.season;
    let climate_day = moment.day.climate_day();
    let habit = &moment.book.habit;
    let truth = |flag: Option<bool>| {
        flag.map_or(Reading::UNKNOWN, |yes| Reading::new(Value::Truth(yes), season.curve_origin()))
    };
    let number = |value: f64, origin: Origin| Reading::new(Value::Number(value), origin);
    match fact {
        Fact::PlantType => Reading::new(Value::Choice(question.plant), Origin::Given),
        Fact::PlantAge => match question.planted {
            Some(day) => number(f64::from(moment.day - day).max(0.0) / 365.25, Origin::Given),
            None => question.given(fact),
        },
        Fact::PlantStage => moment.stage(),
        Fact::PlantStageSince => stage::since(moment),
        Fact::PlantInLeaf => stage::in_leaf(moment),
        Fact::PlantWaterFactor => number(habit.water_factor, Origin::Computed),
        Fact::PlantRootDepth => number(habit.root_depth_m, Origin::Computed),
        Fact::PlantDepletion => number(habit.depletion, Origin::Computed),
        Fact::Tmin | Fact::Tmax | Fact::Tmean | Fact::Rain | Fact::Et0 | Fact::Rh | Fact::Wind => {
            let series = SERIES.iter().find(|(.., f)| *f == fact).map(|(_, series, _)| *series);
            series.map_or(Reading::UNKNOWN, |series| {
                computed(season.curve(series, climate_day).map(|value| (value, season.curve_origin())), series)
            })
        }
        Fact::Daylength => number(season.daylength_h(climate_day), Origin::Computed),
        Fact::Soil10cm => {
            let (value, origin) = season.soil_10cm_c(moment.day);
            number(value, origin)
        }
        Fact::HeatLeft => number(season.heat_left_cd(moment.day), season.curve_origin()),
        Fact::FrostChance => {
            season.frost_chance_pct().map_or(Reading::UNKNOWN, |pct| number(pct, season.curve_origin()))
        }
        Fact::FrostFree => truth(season.climate().frost_free),
        Fact::MildWinter => truth(season.climate().mild_winter),
        Fact::ColdWinter => truth(season.climate().cold_winter),
        Fact::HotSummer => truth(season.climate().hot_summer),
        Fact::WetWinter => truth(season.climate().wet_winter),
        Fact::DryWinter => truth(season.climate().dry_winter),
        Fact::DryColdest => truth(season.climate().dry_coldest),
        Fact::DrySpring => truth(season.climate().dry_spring),
        Fact::ShortSeason => truth(season.climate().short_season),
        Fact::SeasonHalf => {
            let half = match season.half(climate_day) {
                Half::Warming => "warming",
                Half::Cooling => "cooling",
                Half::Even => "even",
            };
            Reading::new(Value::Choice(HALF.position(half).unwrap_or(0)), season.curve_origin())
        }
        Fact::ChillHours | Fact::ChillPortions => match season.chill(moment.day) {
            Some((chill, origin)) => {
                number(if fact == Fact::ChillHours { chill.hours } else { chill.portions }, origin)
            }
            None => Reading::UNKNOWN,
        },
        Fact::ClimateZone => {
            season.hardiness_zone().map_or(Reading::UNKNOWN, |(zone, origin)| number(f64::from(zone.number()), origin))
        }
        Fact::HeatDays => {
            let (days, origin) = season.heat_days();
            number(days, origin)
        }
        Fact::ExtremeMin => {
            season.extreme_min_c().map_or(Reading::UNKNOWN, |(extreme_c, origin)| number(extreme_c, origin))
        }
        Fact::Koppen => match season.koppen().and_then(|class| KOPPEN.position(class)) {
            Some(class) => Reading::new(Value::Choice(class), season.curve_origin()),
            None => Reading::UNKNOWN,
        },
        Fact::WaterNeed => water::need(moment),
        Fact::WaterInterval => water::interval(moment),
        Fact::WaterDepletion => water::depletion(moment),
        other if other.entry().giver == Giver::Caller => question.given(other),
        _ => Reading::UNKNOWN,
    }
}
