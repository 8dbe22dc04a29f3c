//! Every fact that a rule may speak of.
//!
//! To add a fact: a row here; its words in English and Spanish in `wording.rs`; where it is read, in `compile/path.rs`
//! (or `compile/call.rs` when it takes arguments); how it is found out, in `question/understand.rs` when the caller gives
//! it or in `decide/read.rs` when the season does. A test walks this table: each row has its words, is in range, and is used by some rule.

use super::choices::{self, ChoiceList};
use super::step::Step;
use crate::unit::Dimension;

/// What kind of value a fact has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FactType {
    /// Yes or no.
    Truth,
    /// A number.
    Number(Dimension),
    /// A day.
    Date,
    /// One of a fixed list.
    Choice(&'static ChoiceList),
    /// A plant of the packs.
    Plant,
    /// A value of a trait that the plant declares.
    Trait,
    /// A stage that the plant declares.
    Stage,
    /// A region code, from coarse to fine: `US` holds of `US-CA`.
    Region,
    /// A set of weekdays: read by the plan, never by a condition.
    Weekdays,
}

/// Who supplies a fact.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Giver {
    /// The caller, in the request.
    Caller,
    /// The caller's list of works.
    History,
    /// The season, computed from the climate profile.
    Season,
    /// The plant's own entry.
    Plant,
}

/// What holds when a fact is not given.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Missing {
    /// It is unknown.
    Unknown,
    /// This is assumed, and listed among the assumptions.
    Assumed(&'static str),
    /// It is worked out from other facts, and unknown when those are.
    Derived,
    /// It is always there.
    Computed,
    /// The question can't be answered.
    Refused,
}

/// One fact.
#[derive(Clone, Copy, Debug)]
pub struct Entry {
    /// Which.
    pub fact: Fact,
    /// The name that rules use.
    pub name: &'static str,
    /// Its arguments, as they are written; empty if it takes none.
    pub arguments: &'static str,
    /// Its type.
    pub ty: FactType,
    /// Its unit; empty if it has none.
    pub unit: &'static str,
    /// Its step.
    pub step: Step,
    /// Its range in its unit.
    pub range: Option<(f64, f64)>,
    /// Who supplies it.
    pub giver: Giver,
    /// What holds when it is not given.
    pub missing: Missing,
    /// Whether it is of the day.
    pub of_the_day: bool,
    /// Where it stands in a request, as a JSON pointer; empty if it doesn't.
    pub pointer: &'static str,
    /// What it costs the caller to find out: 1 a glance, 2 a close look, 4 a measurement; 0: never asked.
    pub cost: u8,
}

macro_rules! facts {
    ($($fact:ident $name:literal $arguments:literal $ty:expr, $unit:literal, $step:expr, $range:expr, $giver:ident, $missing:expr, $day:literal, $pointer:literal, $cost:literal;)*) => {
        /// The facts by name.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        #[repr(u8)]
        #[expect(missing_docs, reason = "the table below and `wording.rs` say what each is")]
        pub enum Fact { $($fact),* }

        /// The table.
        pub static CATALOGUE: &[Entry] = &[$(Entry {
            fact: Fact::$fact, name: $name, arguments: $arguments, ty: $ty, unit: $unit, step: $step, range: $range,
            giver: Giver::$giver, missing: $missing, of_the_day: $day, pointer: $pointer, cost: $cost,
        }),*];
    };
}

use FactType::{Choice, Date, Number, Truth};
use Missing::{Assumed, Computed, Derived, Unknown};

const ONE: Step = Step::new(1, 1);
const TENTH: Step = Step::new(1, 10);
const HALF: Step = Step::new(1, 2);
const TWENTIETH: Step = Step::new(1, 20);
const HUNDREDTH: Step = Step::new(1, 100);
const FIVE: Step = Step::new(5, 1);
const TEMPERATURE: FactType = Number(Dimension::Temperature);
const LENGTH: FactType = Number(Dimension::Length);
const SHARE: FactType = Number(Dimension::Share);
const SPAN: FactType = Number(Dimension::Duration);
const RATE: FactType = Number(Dimension::WaterRate);
const HEAT: FactType = Number(Dimension::HeatSum);
const SALT: FactType = Number(Dimension::Salinity);
const PLAIN: FactType = Number(Dimension::Plain);
const AIR: Option<(f64, f64)> = Some((-95.0, 65.0));
const PERCENT: Option<(f64, f64)> = Some((0.0, 100.0));

// fact, name, arguments, type, unit, step, range, giver, when missing, of the day, pointer, cost
facts! {
    PlantType "plant.type" "" FactType::Plant, "", ONE, None, Caller, Missing::Refused, false, "/plant/type", 0;
    PlantTrait "plant.trait" "(NAME)" FactType::Trait, "", ONE, None, Caller, Unknown, false, "/plant/traits", 1;
    PlantAge "plant.age" "" SPAN, "year", TENTH, Some((0.0, 1000.0)), Caller, Unknown, false, "/plant/age_years", 1;
    PlantPlantedOn "plant.planted_on" "" Date, "", ONE, None, Caller, Unknown, false, "/plant/planted_on", 1;
    PlantHeight "plant.height" "" LENGTH, "m", TWENTIETH, Some((0.0, 120.0)), Caller, Assumed("typical of type and age"), false, "/plant/height_m", 1;
    PlantCanopyDiameter "plant.canopy_diameter" "" LENGTH, "m", TWENTIETH, Some((0.0, 60.0)), Caller, Assumed("typical of type and age"), false, "/plant/canopy_diameter_m", 1;
    PlantTrunkDiameter "plant.trunk_diameter" "" LENGTH, "cm", ONE, Some((0.0, 1000.0)), Caller, Unknown, false, "/plant/trunk_diameter_cm", 2;
    PlantStage "plant.stage" "" FactType::Stage, "", ONE, None, Caller, Derived, false, "/plant/stage", 1;
    PlantStageSince "plant.stage_since" "" Date, "", ONE, None, Caller, Derived, false, "/plant/stage_since", 1;
    PlantBearing "plant.bearing" "" Truth, "", ONE, None, Caller, Unknown, false, "/plant/bearing", 1;
    PlantHipsWanted "plant.hips_wanted" "" Truth, "", ONE, None, Caller, Unknown, false, "/plant/hips_wanted", 1;
    PlantJustBought "plant.just_bought" "" Truth, "", ONE, None, Caller, Assumed("no"), false, "/plant/just_bought", 1;
    PlantInLeaf "plant.in_leaf" "" Truth, "", ONE, None, Caller, Derived, false, "/plant/in_leaf", 1;
    PlantWaterFactor "plant.water_factor" "" PLAIN, "", HUNDREDTH, Some((0.0, 2.0)), Plant, Computed, false, "", 0;
    PlantRootDepth "plant.root_depth" "" LENGTH, "m", TWENTIETH, Some((0.0, 10.0)), Plant, Computed, false, "", 0;
    PlantDepletion "plant.depletion" "" PLAIN, "", TWENTIETH, Some((0.0, 1.0)), Plant, Computed, false, "", 0;
    SitePlanting "site.planting" "" Choice(&choices::PLANTING), "", ONE, None, Caller, Assumed("ground"), false, "/site/planting", 1;
    SiteContainerVolume "site.container_volume" "" Number(Dimension::Volume), "L", ONE, Some((0.0, 10_000.0)), Caller, Unknown, false, "/site/container_volume_l", 1;
    SiteContainerMaterial "site.container_material" "" Choice(&choices::CONTAINER_MATERIAL), "", ONE, None, Caller, Unknown, false, "/site/container_material", 1;
    SiteExposure "site.exposure" "" Choice(&choices::EXPOSURE), "", ONE, None, Caller, Assumed("full-sun"), false, "/site/exposure", 1;
    SiteWind "site.wind" "" Choice(&choices::WIND), "", ONE, None, Caller, Assumed("sheltered"), false, "/site/wind", 1;
    SiteReflectedHeat "site.reflected_heat" "" Truth, "", ONE, None, Caller, Assumed("no"), false, "/site/reflected_heat", 1;
    SiteMulched "site.mulched" "" Truth, "", ONE, None, Caller, Unknown, false, "/site/mulched", 1;
    SiteFrostHollow "site.frost_hollow" "" Truth, "", ONE, None, Caller, Assumed("no"), false, "/site/frost_hollow", 1;
    SoilTexture "soil.texture" "" Choice(&choices::TEXTURE), "", ONE, None, Caller, Unknown, false, "/site/soil/texture", 2;
    SoilPh "soil.ph" "" PLAIN, "", TENTH, Some((2.0, 12.0)), Caller, Unknown, false, "/site/soil/ph", 4;
    SoilEc "soil.ec" "" SALT, "dS/m", TENTH, Some((0.0, 60.0)), Caller, Unknown, false, "/site/soil/ec_ds_m", 4;
    SoilDrainage "soil.drainage" "" Choice(&choices::DRAINAGE), "", ONE, None, Caller, Unknown, false, "/site/soil/drainage", 2;
    SoilMoisture "soil.moisture" "" Choice(&choices::MOISTURE), "", ONE, None, Caller, Unknown, true, "/site/soil/moisture", 2;
    WaterSourceAlkaline "water.source_alkaline" "" Truth, "", ONE, None, Caller, Unknown, false, "/water/source_alkaline", 1;
    WaterEc "water.ec" "" SALT, "dS/m", TENTH, Some((0.0, 60.0)), Caller, Unknown, false, "/water/ec_ds_m", 4;
    WaterMethod "water.method" "" Choice(&choices::WATER_METHOD), "", ONE, None, Caller, Assumed("basin"), false, "/water/method", 1;
    WaterRestrictedDays "water.restricted_days" "" FactType::Weekdays, "", ONE, None, Caller, Assumed("none"), false, "/water/restricted_days", 0;
    SitePets "site.pets" "" Truth, "", ONE, None, Caller, Unknown, false, "/site/pets", 1;
    SiteChildren "site.children" "" Truth, "", ONE, None, Caller, Unknown, false, "/site/children", 1;
    SiteNearWater "site.near_water" "" Truth, "", ONE, None, Caller, Unknown, false, "/site/near_water", 1;
    SiteBeesWorking "site.bees_working" "" Truth, "", ONE, None, Caller, Unknown, true, "/site/bees_working", 1;
    SiteFoodUse "site.food_use" "" Truth, "", ONE, None, Caller, Derived, false, "/site/food_use", 1;
    Region "region" "" FactType::Region, "", ONE, None, Caller, Unknown, false, "/site/region", 1;
    RegionFlag "region.flag" "(NAME)" Truth, "", ONE, None, Caller, Assumed("no"), false, "/site/region_flags", 0;
    SignsHas "signs" "has ID" Truth, "", ONE, None, Caller, Unknown, false, "/condition/signs", 1;
    Severity "severity" "(ID)" Choice(&choices::SEVERITY), "", ONE, None, Caller, Unknown, false, "/condition/signs", 1;
    Share "share" "(ID)" SHARE, "%", ONE, PERCENT, Caller, Unknown, false, "/condition/signs", 2;
    Since "since" "(ID)" Date, "", ONE, None, Caller, Unknown, false, "/condition/signs", 1;
    Vigour "vigour" "" Choice(&choices::VIGOUR), "", ONE, None, Caller, Unknown, false, "/condition/vigour", 1;
    Wants "wants" "(JOB)" Truth, "", ONE, None, Caller, Assumed("no"), false, "/wishes", 0;
    Done "done" "(JOB or MATERIAL or CLASS, within DAYS)" Truth, "", ONE, None, History, Unknown, false, "/history", 1;
    Count "count" "(JOB or MATERIAL, within DAYS)" PLAIN, "", ONE, Some((0.0, 1000.0)), History, Unknown, false, "/history", 1;
    Last "last" "(JOB or MATERIAL)" Date, "", ONE, None, History, Unknown, false, "/history", 1;
    HarvestWait "harvest_wait" "" Date, "", ONE, None, History, Unknown, false, "/history", 1;
    Tmin "tmin" "" TEMPERATURE, "°C", TENTH, AIR, Season, Computed, false, "", 0;
    Tmax "tmax" "" TEMPERATURE, "°C", TENTH, AIR, Season, Computed, false, "", 0;
    Tmean "tmean" "" TEMPERATURE, "°C", TENTH, AIR, Season, Computed, false, "", 0;
    Rain "rain" "" LENGTH, "mm", TENTH, Some((0.0, 2000.0)), Season, Derived, false, "", 0;
    Et0 "et0" "" RATE, "mm/day", TENTH, Some((0.0, 20.0)), Season, Computed, false, "", 0;
    Rh "rh" "" SHARE, "%", ONE, PERCENT, Season, Derived, false, "", 0;
    Wind "wind" "" Number(Dimension::Speed), "km/h", ONE, Some((0.0, 400.0)), Season, Derived, false, "", 0;
    Daylength "daylength" "" SPAN, "h", TENTH, Some((0.0, 24.0)), Season, Computed, false, "", 0;
    Past "mean, min, max, sum" "(tmin tmax tmean rain et0 rh, N days)" TEMPERATURE, "", TENTH, None, Season, Derived, false, "", 0;
    Ahead "ahead" "(mean min max sum, tmin tmax tmean rain, N days)" TEMPERATURE, "", TENTH, None, Season, Derived, true, "/climate/forecast", 0;
    FrostAhead "frost_ahead" "(TEMPERATURE, N days)" Truth, "", ONE, None, Season, Computed, true, "/climate/forecast", 0;
    Soil10cm "soil_10cm" "" TEMPERATURE, "°C", HALF, AIR, Season, Computed, false, "", 0;
    HeatLeft "season.heat_left" "" HEAT, "°Cd", FIVE, Some((0.0, 15_000.0)), Season, Computed, false, "", 0;
    HeatSum "heat_sum" "(BASE, [UPPER,] from MARKER)" HEAT, "°Cd", ONE, Some((0.0, 20_000.0)), Season, Derived, false, "", 0;
    FrostChance "frost.chance" "" SHARE, "%", ONE, PERCENT, Season, Computed, false, "", 0;
    FrostFree "climate.frost_free" "" Truth, "", ONE, None, Season, Computed, false, "", 0;
    MildWinter "climate.mild_winter" "" Truth, "", ONE, None, Season, Computed, false, "", 0;
    ColdWinter "climate.cold_winter" "" Truth, "", ONE, None, Season, Computed, false, "", 0;
    HotSummer "climate.hot_summer" "" Truth, "", ONE, None, Season, Computed, false, "", 0;
    WetWinter "climate.wet_winter" "" Truth, "", ONE, None, Season, Derived, false, "", 0;
    DryWinter "climate.dry_winter" "" Truth, "", ONE, None, Season, Derived, false, "", 0;
    DryColdest "climate.dry_coldest" "" Truth, "", ONE, None, Season, Derived, false, "", 0;
    DrySpring "climate.dry_spring" "" Truth, "", ONE, None, Season, Derived, false, "", 0;
    ShortSeason "climate.short_season" "" Truth, "", ONE, None, Season, Computed, false, "", 0;
    SeasonHalf "season.half" "" Choice(&choices::HALF), "", ONE, None, Season, Computed, false, "", 0;
    WaterNeed "water.need" "" RATE, "mm/day", TENTH, Some((0.0, 40.0)), Season, Derived, false, "", 0;
    WaterInterval "water.interval" "" SPAN, "day", ONE, Some((1.0, 28.0)), Season, Derived, false, "", 0;
    WaterDepletion "water.depletion" "" PLAIN, "", TWENTIETH, Some((0.0, 1.0)), Season, Unknown, false, "", 0;
    LeafWet "weather.leaf_wet" "" SPAN, "h", ONE, Some((0.0, 24.0)), Caller, Unknown, true, "/weather/leaf_wet_h", 2;
    Marker "marker" "such as first_frost.median, rises(tmean, 10 °C), stage(ID)" Date, "", ONE, None, Season, Derived, false, "", 0;
    DaysTo "days_to, weeks_to" "(MARKER)" SPAN, "day", ONE, Some((0.0, 800.0)), Season, Derived, false, "", 0;
    DaysFrom "days_from" "(MARKER)" SPAN, "day", ONE, Some((0.0, 800.0)), Season, Derived, false, "", 0;
    ChillHours "chill_hours" "" SPAN, "h", ONE, Some((0.0, 9000.0)), Season, Derived, false, "", 0;
    ChillPortions "chill_portions" "" PLAIN, "", ONE, Some((0.0, 400.0)), Season, Derived, false, "", 0;
    ClimateZone "climate.zone" "" PLAIN, "", ONE, Some((1.0, 13.0)), Season, Computed, false, "", 0;
    HeatDays "climate.heat_days" "" SPAN, "day", ONE, Some((0.0, 366.0)), Season, Computed, false, "", 0;
    Koppen "climate.koppen" "" Choice(&choices::KOPPEN), "", ONE, None, Season, Derived, false, "", 0;
    ExtremeMin "climate.extreme_min" "" TEMPERATURE, "°C", ONE, AIR, Season, Computed, false, "", 0;
}

/// How many facts there are.
pub const COUNT: usize = Fact::ExtremeMin as usize + 1;

impl Fact {
    /// Its row.
    #[must_use]
    pub fn entry(self) -> &'static Entry {
        // The table is made from the same list as the enumeration, so the row is there.
        CATALOGUE.get(self as usize).unwrap_or(&FIRST)
    }

    /// The fact of this name that takes no arguments.
    #[must_use]
    pub fn find(name: &str) -> Option<Self> {
        CATALOGUE.iter().find(|e| e.name == name && e.arguments.is_empty()).map(|e| e.fact)
    }
}

static FIRST: Entry = Entry {
    fact: Fact::PlantType,
    name: "plant.type",
    arguments: "",
    ty: FactType::Plant,
    unit: "",
    step: ONE,
    range: None,
    giver: Giver::Caller,
    missing: Missing::Refused,
    of_the_day: false,
    pointer: "/plant/type",
    cost: 0,
};

#[cfg(test)]
mod tests {
    use super::*;
    use crate::unit::Unit;

    #[test]
    fn every_row_stands_at_its_own_place_and_has_a_unit_of_its_dimension() {
        assert_eq!(CATALOGUE.len(), COUNT);
        for (at, entry) in CATALOGUE.iter().enumerate() {
            assert_eq!(entry.fact as usize, at, "{}", entry.name);
            if let (Number(dimension), false) = (entry.ty, entry.unit.is_empty()) {
                assert_eq!(Unit::find(entry.unit).unwrap().dimension, dimension, "{}", entry.name);
            }
        }
    }

    #[test]
    fn what_is_asked_has_a_place_in_the_request() {
        for entry in CATALOGUE {
            assert!(entry.cost == 0 || !entry.pointer.is_empty(), "{}", entry.name);
        }
    }
}
