//! Facts that the season gives, by name.

use lammas_agronomy::calendar::Day;
use lammas_agronomy::curve::{Aggregate, Series};
use lammas_agronomy::origin::Origin;
use lammas_agronomy::season::Half;
use lammas_engine::lang::ast::{Argument, Expr, ExprKind};
use lammas_engine::unit::Unit;

use super::facts::{Found, fact, id};
use super::markers::Dates;
use super::value::{Value, base, whole};
use super::world::World;

/// km/h in a m/s.
const KMH: f64 = 3.6;

fn series(name: &str) -> Option<(Series, f64, &'static str)> {
    Some(match name {
        "tmin" => (Series::Tmin, 0.1, "°C"),
        "tmax" => (Series::Tmax, 0.1, "°C"),
        "tmean" => (Series::Tmean, 0.1, "°C"),
        "rain" => (Series::Rain, 0.1, "mm"),
        "et0" => (Series::Et0, 0.1, "mm/day"),
        "rh" => (Series::Rh, 1.0, "%"),
        "wind" => (Series::Wind, 1.0, "km/h"),
        "daylength" => (Series::Daylength, 0.1, "h"),
        _ => return None,
    })
}

/// The value of a series in the unit that rules use, rounded to its step.
fn shown(of: (Series, f64, &'static str), value: f64) -> Value {
    let (series, step, unit) = of;
    Value::stepped(if series == Series::Wind { value * KMH } else { value }, step, unit)
}

fn aggregate(name: &str) -> Option<Aggregate> {
    Some(match name {
        "mean" => Aggregate::Mean,
        "min" => Aggregate::Min,
        "max" => Aggregate::Max,
        "sum" => Aggregate::Sum,
        _ => return None,
    })
}

/// A literal in the base unit of its dimension.
pub(crate) fn literal(argument: &Argument) -> f64 {
    let of = |expr: &Expr| match &expr.kind {
        ExprKind::Number(number) => base(number.value, Unit::find(&number.unit).unwrap()),
        other => panic!("{other:?} is no number"),
    };
    match argument {
        Argument::Value(Expr { kind: ExprKind::Negative(inner), .. }) => match &inner.kind {
            ExprKind::Number(number) => base(-number.value, Unit::find(&number.unit).unwrap()),
            other => panic!("{other:?} is no number"),
        },
        Argument::Value(expr) => of(expr),
        other => panic!("{other:?} is no number"),
    }
}

fn number_of_days(argument: &Argument) -> u16 {
    u16::try_from(whole(literal(argument))).unwrap()
}

impl World<'_> {
    /// A fact of the season without arguments.
    pub(crate) fn season_fact(&self, name: &str) -> Option<Found> {
        let season = &self.season;
        let curve = season.curve_origin();
        let today = self.day.climate_day();
        let flags = || season.climate();
        let flag = |flag: Option<bool>| fact(name, flag.map_or(Value::Unknown, Value::Yes), curve);
        if let Some(of) = series(name) {
            let value = season.curve(of.0, today);
            let origin = if of.0 == Series::Daylength { Origin::Computed } else { curve };
            return Some(fact(name, value.map_or(Value::Unknown, |value| shown(of, value)), origin));
        }
        Some(match name {
            "soil_10cm" => {
                let (value, origin) = season.soil_10cm_c(self.day);
                fact(name, Value::stepped(value, 0.5, "°C"), origin)
            }
            "season.heat_left" => fact(name, Value::stepped(season.heat_left_cd(self.day), 5.0, "°Cd"), curve),
            "frost.chance" => {
                let chance = season.frost_chance_pct().map_or(Value::Unknown, |pct| Value::stepped(pct, 1.0, "%"));
                fact(name, chance, curve)
            }
            "climate.frost_free" => flag(flags().frost_free),
            "climate.mild_winter" => flag(flags().mild_winter),
            "climate.cold_winter" => flag(flags().cold_winter),
            "climate.hot_summer" => flag(flags().hot_summer),
            "climate.wet_winter" => flag(flags().wet_winter),
            "climate.dry_winter" => flag(flags().dry_winter),
            "climate.dry_coldest" => flag(flags().dry_coldest),
            "climate.dry_spring" => flag(flags().dry_spring),
            "climate.short_season" => flag(flags().short_season),
            "season.half" => {
                let half = match season.half(today) {
                    Half::Warming => "warming",
                    Half::Cooling => "cooling",
                    Half::Even => "even",
                };
                fact(name, Value::Word(half.to_owned()), curve)
            }
            "chill_hours" | "chill_portions" => match season.chill_start() {
                None => fact(name, Value::Unknown, Origin::Given),
                Some(start) => {
                    let year = self.day.year();
                    let starts = [year, year - 1].map(|year| start.in_year(year));
                    let from = starts.into_iter().find(|from| *from <= self.day).unwrap();
                    let chill = season.chill_between(from, self.day);
                    let origin = season.heat_sum_origin(from, self.day);
                    let value = if name == "chill_hours" {
                        Value::stepped(chill.hours, 1.0, "h")
                    } else {
                        Value::stepped(chill.portions, 1.0, "")
                    };
                    fact(name, value, origin)
                }
            },
            "climate.zone" => {
                let Some((extreme_c, origin)) = season.extreme_min_c() else {
                    return Some(fact(name, Value::Unknown, Origin::Given));
                };
                let zone = ((extreme_c * 1.8 + 32.0 + 60.0) / 10.0 + 1e-9).floor() + 1.0;
                fact(name, Value::stepped(zone.clamp(1.0, 13.0), 1.0, ""), origin)
            }
            "climate.heat_days" => {
                let (days, origin) = season.heat_days();
                fact(name, Value::stepped(days, 1.0, "day"), origin)
            }
            "climate.extreme_min" => {
                let Some((extreme_c, origin)) = season.extreme_min_c() else {
                    return Some(fact(name, Value::Unknown, Origin::Given));
                };
                fact(name, Value::stepped(extreme_c, 1.0, "°C"), origin)
            }
            "climate.koppen" => match season.koppen() {
                Some(class) => fact(name, Value::Word(class.to_owned()), curve),
                None => fact(name, Value::Unknown, Origin::Given),
            },
            _ => return None,
        })
    }

    /// A fact of the season with arguments.
    pub(crate) fn season_call(&self, name: &str, arguments: &[Argument]) -> Option<Found> {
        let season = &self.season;
        let of_days = |of: &str, found: Option<(f64, Origin)>| match found {
            Some((value, origin)) => fact(name, shown(series(of).unwrap(), value), origin),
            None => fact(name, Value::Unknown, Origin::Given),
        };
        Some(match (name, arguments) {
            ("mean" | "min" | "max" | "sum", [of, days]) => {
                let past = season.past(aggregate(name)?, series(id(of))?.0, number_of_days(days), self.day);
                of_days(id(of), past)
            }
            ("ahead", [how, of, days]) => {
                let ahead = season.ahead(aggregate(id(how))?, series(id(of))?.0, number_of_days(days), self.day);
                of_days(id(of), ahead)
            }
            ("frost_ahead", [temperature, days]) => {
                let (yes, origin) = season.frost_ahead(literal(temperature), number_of_days(days), self.day);
                fact(name, Value::Yes(yes), origin)
            }
            ("heat_sum", [base, Argument::From(from)]) => self.heat_sum(name, literal(base), None, from),
            ("heat_sum", [base, upper, Argument::From(from)]) => {
                self.heat_sum(name, literal(base), Some(literal(upper)), from)
            }
            ("days_to" | "weeks_to", [Argument::Value(marker)]) => {
                let (dates, origin) = self.dates(marker);
                self.span(name, &dates, origin, |days, today| days.iter().find(|d| **d >= today).map(|d| *d - today))
            }
            ("days_from", [Argument::Value(marker)]) => {
                let (dates, origin) = self.dates(marker);
                self.span(name, &dates, origin, |days, today| days.iter().rfind(|d| **d <= today).map(|d| today - *d))
            }
            _ => return None,
        })
    }

    fn span(&self, name: &str, dates: &Dates, origin: Origin, pick: impl Fn(&[Day], Day) -> Option<i32>) -> Found {
        let value = match dates {
            Dates::Unknown => Value::Unknown,
            Dates::Absent { .. } => Value::Absent,
            Dates::On(days) => pick(days, self.day).map_or(Value::Absent, |days| Value::of(f64::from(days), "day")),
        };
        fact(name, value, origin)
    }

    /// From the marker's last occurrence on or before the day.
    fn heat_sum(
        &self,
        name: &str,
        base_c: f64,
        upper_c: Option<f64>,
        from: &lammas_engine::lang::ast::MarkerExpr,
    ) -> Found {
        let (dates, origin) = self.dates_with_offset(from);
        let last = match &dates {
            Dates::Unknown => return fact(name, Value::Unknown, origin),
            Dates::Absent { .. } => return fact(name, Value::Absent, origin),
            Dates::On(days) => days.iter().rfind(|day| **day <= self.day),
        };
        // It has not begun: nothing is summed yet.
        let Some(last) = last else { return fact(name, Value::of(0.0, "°Cd"), origin) };
        let sum = self.season.heat_sum(base_c, upper_c, *last, self.day);
        fact(name, Value::stepped(sum, 1.0, "°Cd"), origin.max(self.season.heat_sum_origin(*last, self.day)))
    }
}
