//! A question as the engine takes it: the same members, with texts for choices and dates.
//!
//! Every conversion takes its source apart by name, so that a member which is added on one side can't be forgotten on
//! the other.

use chrono::NaiveDate;
use lammas_engine::question::said::{
    ClimateSaid, ConditionSaid, CountedFrostSaid, DaySaid, ForecastSaid, FrostDatesSaid, FrostSaid, NormalsSaid,
    PlantSaid, SignSaid, SiteSaid, SoilSaid, WaterSaid, WeatherSaid, WorkSaid,
};

use super::climate::{
    ClimateCountedFrost, ClimateDay, ClimateForecast, ClimateFrost, ClimateFrostDays, ClimateGiven, ClimateNormals,
};
use super::condition::{ConditionGiven, ConditionSign};
use super::date::Date;
use super::history::HistoryWork;
use super::plant::PlantGiven;
use super::site::{SiteGiven, SoilGiven};
use super::water::{WaterGiven, WeatherGiven};

/// The parts of a list as the engine takes them.
pub(crate) fn each<A, B: From<A>>(list: Vec<A>) -> Vec<B> {
    list.into_iter().map(B::from).collect()
}

impl From<Date> for NaiveDate {
    fn from(Date(date): Date) -> Self {
        date
    }
}

fn months(year: Option<[f64; 12]>) -> Option<Vec<f64>> {
    year.map(|months| months.to_vec())
}

impl From<ClimateGiven> for ClimateSaid {
    fn from(given: ClimateGiven) -> Self {
        let ClimateGiven {
            id,
            area,
            latitude,
            longitude,
            elevation_m,
            origin,
            normals,
            frost,
            counted_frost,
            extreme_min_c,
            heat_days_a_year,
            tmin_sd_k,
            observations,
            forecast,
            differences,
        } = given;
        Self {
            id,
            area,
            latitude,
            longitude,
            elevation_m,
            origin: origin.map(|choice| choice.word().to_owned()),
            normals: normals.map(Into::into),
            frost: frost.map(Into::into),
            counted_frost: counted_frost.map(Into::into),
            extreme_min_c,
            heat_days_a_year,
            tmin_sd_k: months(tmin_sd_k),
            observations: observations.map(each),
            forecast: forecast.map(Into::into),
            differences: differences.map(Into::into),
        }
    }
}

impl From<ClimateNormals> for NormalsSaid {
    fn from(given: ClimateNormals) -> Self {
        let ClimateNormals { tmin_c, tmax_c, rain_mm, rh_pct, dew_point_c, wind_ms, sunshine_h, solar_mj } = given;
        Self {
            tmin_c: tmin_c.to_vec(),
            tmax_c: tmax_c.to_vec(),
            rain_mm: months(rain_mm),
            rh_pct: months(rh_pct),
            dew_point_c: months(dew_point_c),
            wind_ms: months(wind_ms),
            sunshine_h: months(sunshine_h),
            solar_mj: months(solar_mj),
        }
    }
}

impl From<ClimateFrost> for FrostSaid {
    fn from(ClimateFrost { last, first }: ClimateFrost) -> Self {
        Self { last: last.map(Into::into).unwrap_or_default(), first: first.map(Into::into).unwrap_or_default() }
    }
}

impl From<ClimateCountedFrost> for CountedFrostSaid {
    fn from(given: ClimateCountedFrost) -> Self {
        let ClimateCountedFrost { seasons, share_pct, killing_share_pct, last, first, last_killing, first_killing } =
            given;
        let [last_killing, first_killing] = [last_killing, first_killing].map(|day| day.map(|day| day.to_string()));
        Self {
            seasons,
            share_pct,
            killing_share_pct,
            last: last.map(Into::into).unwrap_or_default(),
            first: first.map(Into::into).unwrap_or_default(),
            last_killing,
            first_killing,
        }
    }
}

impl From<ClimateFrostDays> for FrostDatesSaid {
    fn from(ClimateFrostDays { early, median, late }: ClimateFrostDays) -> Self {
        let [early, median, late] = [early, median, late].map(|day| day.map(|day| day.to_string()));
        Self { early, median, late }
    }
}

impl From<ClimateDay> for DaySaid {
    fn from(ClimateDay { date, tmin_c, tmax_c, rain_mm, wind_kmh }: ClimateDay) -> Self {
        Self { date: date.into(), tmin_c, tmax_c, rain_mm, wind_kmh }
    }
}

impl From<ClimateForecast> for ForecastSaid {
    fn from(ClimateForecast { issued, days }: ClimateForecast) -> Self {
        Self { issued: issued.into(), days: each(days) }
    }
}

impl From<PlantGiven> for PlantSaid {
    fn from(given: PlantGiven) -> Self {
        let PlantGiven {
            kind,
            traits,
            age_years,
            planted_on,
            height_m,
            canopy_diameter_m,
            trunk_diameter_cm,
            stage,
            stage_since,
            bearing,
            hips_wanted,
            just_bought,
            in_leaf,
        } = given;
        Self {
            kind,
            traits,
            age_years,
            planted_on: planted_on.map(Into::into),
            height_m,
            canopy_diameter_m,
            trunk_diameter_cm,
            stage,
            stage_since: stage_since.map(Into::into),
            bearing,
            hips_wanted,
            just_bought,
            in_leaf,
        }
    }
}

impl From<SiteGiven> for SiteSaid {
    fn from(given: SiteGiven) -> Self {
        let SiteGiven {
            planting,
            container_volume_l,
            container_material,
            exposure,
            wind,
            reflected_heat,
            mulched,
            frost_hollow,
            soil,
            pets,
            children,
            near_water,
            bees_working,
            food_use,
            region,
            region_flags,
        } = given;
        Self {
            planting: planting.map(|choice| choice.word().to_owned()),
            container_volume_l,
            container_material: container_material.map(|choice| choice.word().to_owned()),
            exposure: exposure.map(|choice| choice.word().to_owned()),
            wind: wind.map(|choice| choice.word().to_owned()),
            reflected_heat,
            mulched,
            frost_hollow,
            soil: soil.map(Into::into).unwrap_or_default(),
            pets,
            children,
            near_water,
            bees_working,
            food_use,
            region,
            region_flags,
        }
    }
}

impl From<SoilGiven> for SoilSaid {
    fn from(SoilGiven { texture, ph, ec_ds_m, drainage, moisture }: SoilGiven) -> Self {
        Self {
            texture: texture.map(|choice| choice.word().to_owned()),
            ph,
            ec_ds_m,
            drainage: drainage.map(|choice| choice.word().to_owned()),
            moisture: moisture.map(|choice| choice.word().to_owned()),
        }
    }
}

impl From<WaterGiven> for WaterSaid {
    fn from(WaterGiven { method, source_alkaline, ec_ds_m, restricted_days }: WaterGiven) -> Self {
        Self {
            method: method.map(|choice| choice.word().to_owned()),
            source_alkaline,
            ec_ds_m,
            restricted_days: restricted_days.into_iter().map(|day| day.word().to_owned()).collect(),
        }
    }
}

impl From<WeatherGiven> for WeatherSaid {
    fn from(WeatherGiven { leaf_wet_h }: WeatherGiven) -> Self {
        Self { leaf_wet_h }
    }
}

impl From<ConditionGiven> for ConditionSaid {
    fn from(given: ConditionGiven) -> Self {
        let ConditionGiven { signs, not_seen, looked_closely, words, vigour, problems } = given;
        let vigour = vigour.map(|choice| choice.word().to_owned());
        Self { signs: signs.map(each), not_seen, looked_closely, words, vigour, problems }
    }
}

impl From<ConditionSign> for SignSaid {
    fn from(ConditionSign { sign, severity, share_pct, since }: ConditionSign) -> Self {
        let severity = severity.map(|choice| choice.word().to_owned());
        Self { sign, severity, share_pct, since: since.map(Into::into) }
    }
}

impl From<HistoryWork> for WorkSaid {
    fn from(HistoryWork { job, rule, material, date, label_days_to_harvest }: HistoryWork) -> Self {
        Self { job, rule, material, date: Some(date.into()), label_days_to_harvest }
    }
}

#[cfg(test)]
mod tests {
    use lammas_engine::fact::choices::{self, ChoiceList};

    use crate::v1::question::choices::{
        ContainerMaterial, Exposure, Planting, SignSeverity, SiteWind, SoilDrainage, SoilMoisture, SoilTexture, Vigour,
        WateringMethod, Weekday,
    };

    #[test]
    fn the_choices_of_a_question_are_those_of_the_engine_in_its_order() {
        macro_rules! same {
            ($($ours:ident $theirs:ident,)*) => {
                [$((stringify!($ours), $ours::ALL.iter().map(|choice| choice.word()).collect::<Vec<_>>(), &choices::$theirs),)*]
            };
        }
        let lists: [(&str, Vec<&str>, &ChoiceList); 11] = same![
            Planting PLANTING, ContainerMaterial CONTAINER_MATERIAL, Exposure EXPOSURE, SiteWind WIND,
            SoilTexture TEXTURE, SoilDrainage DRAINAGE, SoilMoisture MOISTURE, WateringMethod WATER_METHOD,
            Weekday WEEKDAY, Vigour VIGOUR, SignSeverity SEVERITY,
        ];
        for (name, ours, theirs) in lists {
            assert_eq!(ours, theirs.values, "{name}");
        }
    }
}
