//! Facts that the caller gives, by name, from the caller's words.

use lammas_agronomy::calendar::Day;
use lammas_agronomy::origin::Origin;
use lammas_engine::lang::ast::{Argument, Expr, ExprKind};
use lammas_engine::lang::parse;
use lammas_engine::pack::word::Seen;
use lammas_engine::unit::Unit;

use super::tree::Names;
use super::value::{Read, Value, base, to_step};
use super::world::World;

/// Facts of the day.
const OF_THE_DAY: [&str; 5] = ["soil.moisture", "site.bees_working", "ahead", "frost_ahead", "weather.leaf_wet"];

pub(crate) type Found = (Value, Read);

/// A fact with its name, value and origin.
pub(crate) fn fact(name: &str, value: Value, origin: Origin) -> Found {
    let of_the_day = OF_THE_DAY.contains(&name);
    (value, Read { name: name.to_owned(), written: name.to_owned(), of_the_day, known: false, origin })
}

fn given(name: &str, value: Option<Value>) -> Found {
    fact(name, value.unwrap_or(Value::Unknown), Origin::Given)
}

fn or_assumed(name: &str, value: Option<Value>, usual: Value) -> Found {
    match value {
        Some(value) => fact(name, value, Origin::Given),
        None => fact(name, usual, Origin::Assumed),
    }
}

fn word(text: Option<&String>) -> Option<Value> {
    text.map(|text| Value::Word(text.clone()))
}

/// An id as an argument.
pub(crate) fn id(argument: &Argument) -> &str {
    match argument {
        Argument::Value(Expr { kind: ExprKind::Path(id), .. }) => id,
        other => panic!("{other:?} is no id"),
    }
}

impl World<'_> {
    /// A fact or marker of a name; none: the name is a word.
    pub(crate) fn path(&self, name: &str, names: Names) -> Option<Found> {
        let said = self.said;
        let (plant, site, soil, water) = (&said.plant, &said.site, &said.site.soil, &said.water);
        let yes = |truth: Option<bool>| truth.map(Value::Yes);
        let number = |number: Option<f64>, step: f64, unit: &str| number.map(|n| Value::stepped(n, step, unit));
        let words = |text: &str| Value::Word(text.to_owned());
        if names == Names::Short && self.plant().traits.iter().any(|t| t.id.value == name) {
            return Some(self.trait_of_plant(name));
        }
        Some(match name {
            "plant.type" => given(name, Some(words(&plant.kind))),
            "plant.age" => given(name, self.age_years().map(|years| Value::stepped(years, 0.1, "year"))),
            "plant.planted_on" => given(name, plant.planted_on.map(|date| Value::On(Day::from_date(date)))),
            "plant.height" => self.size(name, plant.height_m, &self.plant().size.height.value),
            "plant.canopy_diameter" => {
                self.size(name, plant.canopy_diameter_m, &self.plant().size.canopy_diameter.value)
            }
            "plant.trunk_diameter" => given(name, number(plant.trunk_diameter_cm, 1.0, "cm")),
            "plant.stage" => self.stage(),
            "plant.stage_since" => self.stage_since(),
            "plant.in_leaf" => self.in_leaf(),
            "plant.bearing" => given(name, yes(plant.bearing)),
            "plant.just_bought" => or_assumed(name, yes(plant.just_bought), Value::Yes(false)),
            "plant.hips_wanted" => given(name, yes(plant.hips_wanted)),
            "site.planting" => or_assumed(name, word(site.planting.as_ref()), words("ground")),
            "site.container_volume" => given(name, number(site.container_volume_l, 1.0, "L")),
            "site.container_material" => given(name, word(site.container_material.as_ref())),
            "site.exposure" => or_assumed(name, word(site.exposure.as_ref()), words("full-sun")),
            "site.wind" => or_assumed(name, word(site.wind.as_ref()), words("sheltered")),
            "site.reflected_heat" => or_assumed(name, yes(site.reflected_heat), Value::Yes(false)),
            "site.mulched" => given(name, yes(site.mulched)),
            "site.frost_hollow" => or_assumed(name, yes(site.frost_hollow), Value::Yes(false)),
            "soil.texture" => given(name, word(soil.texture.as_ref())),
            "soil.ph" => given(name, number(soil.ph, 0.1, "")),
            "soil.ec" => given(name, number(soil.ec_ds_m, 0.1, "dS/m")),
            "soil.drainage" => given(name, word(soil.drainage.as_ref())),
            "soil.moisture" => given(name, word(soil.moisture.as_ref())),
            "water.source_alkaline" => given(name, yes(water.source_alkaline)),
            "water.ec" => given(name, number(water.ec_ds_m, 0.1, "dS/m")),
            "water.method" => or_assumed(name, word(water.method.as_ref()), words("basin")),
            "site.pets" => given(name, yes(site.pets)),
            "site.children" => given(name, yes(site.children)),
            "site.near_water" => given(name, yes(site.near_water)),
            "site.bees_working" => given(name, yes(site.bees_working)),
            "site.food_use" => match site.food_use {
                Some(_) => given(name, yes(site.food_use)),
                None => fact(name, Value::Yes(self.plant().food_use), Origin::Computed),
            },
            "region" => given(name, site.region.clone().map(Value::Region)),
            "vigour" => given(name, said.condition.as_ref().and_then(|c| word(c.vigour.as_ref()))),
            "weather.leaf_wet" => given(name, number(said.weather.leaf_wet_h, 1.0, "h")),
            _ => return self.season_fact(name).or_else(|| self.marker_fact(name, &[])),
        })
    }

    /// A fact with arguments.
    pub(crate) fn call(&self, name: &str, arguments: &[Argument]) -> Found {
        match (name, arguments) {
            ("plant.trait", [argument]) => self.trait_of_plant(id(argument)),
            ("region.flag", [argument]) => {
                let set = self.said.site.region_flags.iter().any(|flag| flag == id(argument));
                or_assumed(name, set.then_some(Value::Yes(true)), Value::Yes(false))
            }
            ("severity", [argument]) => given(name, self.worst(id(argument))),
            ("share", [argument]) => given(name, self.share(id(argument))),
            ("wants", [argument]) => {
                let wished = self.said.wishes.iter().any(|job| job == id(argument));
                or_assumed(name, wished.then_some(Value::Yes(true)), Value::Yes(false))
            }
            ("done", [what, Argument::Within(within, _)]) => {
                let count = self.count(id(what), super::tree::days(within));
                given(name, count.map(|count| Value::Yes(count > 0)))
            }
            ("count", [what, Argument::Within(within, _)]) => {
                let count = self.count(id(what), super::tree::days(within));
                given(name, count.map(|count| Value::of(f64::from(u32::try_from(count).unwrap()), "")))
            }
            _ => self
                .season_call(name, arguments)
                .or_else(|| self.marker_fact(name, arguments))
                .unwrap_or_else(|| panic!("`{name}` is not known to the plain evaluator")),
        }
    }

    fn trait_of_plant(&self, name: &str) -> Found {
        let entry = self.plant().traits.iter().find(|t| t.id.value == name).unwrap();
        match (self.said.plant.traits.get(name), &entry.usual) {
            (Some(value), _) => fact("plant.trait", Value::Word(value.clone()), Origin::Given),
            (None, Some(usual)) => fact("plant.trait", Value::Word(usual.value.clone()), Origin::Assumed),
            (None, None) => fact("plant.trait", Value::Unknown, Origin::Given),
        }
    }

    /// Years; from the planting day when that is given.
    fn age_years(&self) -> Option<f64> {
        match self.said.plant.planted_on {
            Some(date) => Some(f64::from(self.day - Day::from_date(date)) / 365.25),
            None => self.said.plant.age_years.map(|years| to_step(years, 0.1)),
        }
    }

    /// Said, else typical of type and age: younger plants in proportion, never under a quarter.
    fn size(&self, name: &str, said_m: Option<f64>, grown: &str) -> Found {
        if let Some(size_m) = said_m {
            return fact(name, Value::stepped(size_m, 0.05, "m"), Origin::Given);
        }
        let literal = |text: &str| {
            let read = parse::after(text).unwrap();
            base(read.from, Unit::find(&read.unit).unwrap())
        };
        let share = match (self.age_years(), &self.plant().size.grown_after) {
            (Some(years), Some(after)) => (years * 365.25 / literal(&after.value)).clamp(0.25, 1.0),
            _ => 1.0,
        };
        fact(name, Value::stepped(literal(grown) / 1000.0 * share, 0.05, "m"), Origin::Assumed)
    }

    /// Whether a sign is seen.
    pub(crate) fn sign(&self, sign: &str) -> Found {
        let condition = self.said.condition.as_ref();
        let listed = condition.and_then(|c| c.signs.as_ref());
        let seen = listed.is_some_and(|list| list.iter().any(|s| s.sign == sign));
        let not_seen = condition.is_some_and(|c| c.not_seen.iter().any(|s| s == sign));
        let plain = self.pack.signs.iter().any(|s| s.entry.id.value == sign && s.entry.seen == Seen::Plain);
        let looked = plain || condition.is_some_and(|c| c.looked_closely);
        given(
            "signs",
            if seen {
                Some(Value::Yes(true))
            } else if not_seen || (listed.is_some() && looked) {
                Some(Value::Yes(false))
            } else {
                None
            },
        )
    }

    fn entries(&self, sign: &str) -> impl Iterator<Item = &lammas_engine::question::said::SignSaid> {
        let listed = self.said.condition.as_ref().and_then(|c| c.signs.as_ref());
        listed.into_iter().flatten().filter(move |entry| entry.sign == sign)
    }

    /// Of several entries of one sign the worst.
    pub(crate) fn worst(&self, sign: &str) -> Option<Value> {
        ["severe", "moderate", "slight"]
            .into_iter()
            .find(|grade| self.entries(sign).any(|entry| entry.severity.as_deref() == Some(grade)))
            .map(|grade| Value::Word(grade.to_owned()))
    }

    fn share(&self, sign: &str) -> Option<Value> {
        let most = self.entries(sign).filter_map(|entry| entry.share_pct).max_by(f64::total_cmp)?;
        Some(Value::stepped(most, 1.0, "%"))
    }

    /// First seen.
    pub(crate) fn since(&self, sign: &str) -> Option<Day> {
        self.entries(sign).filter_map(|entry| entry.since).min().map(Day::from_date)
    }
}
