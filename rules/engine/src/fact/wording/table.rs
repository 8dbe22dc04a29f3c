//! Which words belong to which fact.

use super::words::FactWords;
use super::{condition, history, plant, season, site, soil, weather};
use crate::fact::catalogue::Fact;

/// The words of a fact.
#[must_use]
pub const fn words(fact: Fact) -> &'static FactWords {
    match fact {
        Fact::PlantType => &plant::TYPE,
        Fact::PlantTrait => &plant::TRAIT,
        Fact::PlantAge => &plant::AGE,
        Fact::PlantPlantedOn => &plant::PLANTED_ON,
        Fact::PlantHeight => &plant::HEIGHT,
        Fact::PlantCanopyDiameter => &plant::CANOPY_DIAMETER,
        Fact::PlantTrunkDiameter => &plant::TRUNK_DIAMETER,
        Fact::PlantStage => &plant::STAGE,
        Fact::PlantStageSince => &plant::STAGE_SINCE,
        Fact::PlantBearing => &plant::BEARING,
        Fact::PlantHipsWanted => &plant::HIPS_WANTED,
        Fact::PlantJustBought => &plant::JUST_BOUGHT,
        Fact::PlantInLeaf => &plant::IN_LEAF,
        Fact::PlantWaterFactor => &plant::WATER_FACTOR,
        Fact::PlantRootDepth => &plant::ROOT_DEPTH,
        Fact::PlantDepletion => &plant::DEPLETION,
        Fact::SitePlanting => &site::PLANTING,
        Fact::SiteContainerVolume => &site::CONTAINER_VOLUME,
        Fact::SiteContainerMaterial => &site::CONTAINER_MATERIAL,
        Fact::SiteExposure => &site::EXPOSURE,
        Fact::SiteWind => &site::WIND,
        Fact::SiteReflectedHeat => &site::REFLECTED_HEAT,
        Fact::SiteMulched => &site::MULCHED,
        Fact::SiteFrostHollow => &site::FROST_HOLLOW,
        Fact::SoilTexture => &soil::TEXTURE,
        Fact::SoilPh => &soil::PH,
        Fact::SoilEc => &soil::EC,
        Fact::SoilDrainage => &soil::DRAINAGE,
        Fact::SoilMoisture => &soil::MOISTURE,
        Fact::WaterSourceAlkaline => &soil::WATER_SOURCE_ALKALINE,
        Fact::WaterEc => &soil::WATER_EC,
        Fact::WaterMethod => &soil::WATER_METHOD,
        Fact::WaterRestrictedDays => &soil::WATER_RESTRICTED_DAYS,
        Fact::SitePets => &site::PETS,
        Fact::SiteChildren => &site::CHILDREN,
        Fact::SiteNearWater => &site::NEAR_WATER,
        Fact::SiteBeesWorking => &site::BEES_WORKING,
        Fact::SiteFoodUse => &site::FOOD_USE,
        Fact::Region => &site::REGION,
        Fact::RegionFlag => &site::REGION_FLAG,
        Fact::SignsHas => &condition::SIGNS_HAS,
        Fact::Severity => &condition::SEVERITY,
        Fact::Share => &condition::SHARE,
        Fact::Since => &condition::SINCE,
        Fact::Vigour => &condition::VIGOUR,
        Fact::Wants => &condition::WANTS,
        Fact::Done => &history::DONE,
        Fact::Count => &history::COUNT,
        Fact::Last => &history::LAST,
        Fact::HarvestWait => &history::HARVEST_WAIT,
        Fact::Tmin => &weather::TMIN,
        Fact::Tmax => &weather::TMAX,
        Fact::Tmean => &weather::TMEAN,
        Fact::Rain => &weather::RAIN,
        Fact::Et0 => &weather::ET0,
        Fact::Rh => &weather::RH,
        Fact::Wind => &weather::WIND,
        Fact::Daylength => &weather::DAYLENGTH,
        Fact::Past => &weather::PAST,
        Fact::Ahead => &weather::AHEAD,
        Fact::FrostAhead => &weather::FROST_AHEAD,
        Fact::Soil10cm => &weather::SOIL_10CM,
        Fact::HeatLeft => &season::HEAT_LEFT,
        Fact::HeatSum => &season::HEAT_SUM,
        Fact::FrostChance => &season::FROST_CHANCE,
        Fact::FrostFree => &season::FROST_FREE,
        Fact::MildWinter => &season::MILD_WINTER,
        Fact::ColdWinter => &season::COLD_WINTER,
        Fact::HotSummer => &season::HOT_SUMMER,
        Fact::WetWinter => &season::WET_WINTER,
        Fact::DryWinter => &season::DRY_WINTER,
        Fact::DryColdest => &season::DRY_COLDEST,
        Fact::DrySpring => &season::DRY_SPRING,
        Fact::ShortSeason => &season::SHORT_SEASON,
        Fact::SeasonHalf => &season::HALF,
        Fact::WaterNeed => &weather::WATER_NEED,
        Fact::WaterInterval => &weather::WATER_INTERVAL,
        Fact::WaterDepletion => &weather::WATER_DEPLETION,
        Fact::LeafWet => &weather::LEAF_WET,
        Fact::Marker => &weather::MARKER,
        Fact::DaysTo => &weather::DAYS_TO,
        Fact::DaysFrom => &weather::DAYS_FROM,
        Fact::ChillHours => &season::CHILL_HOURS,
        Fact::ChillPortions => &season::CHILL_PORTIONS,
        Fact::ClimateZone => &season::ZONE,
        Fact::HeatDays => &season::HEAT_DAYS,
        Fact::Koppen => &season::KOPPEN,
        Fact::ExtremeMin => &season::EXTREME_MIN,
    }
}

#[cfg(test)]
mod tests {
    use std::collections::{BTreeMap, BTreeSet};

    use super::*;
    use crate::fact::catalogue::CATALOGUE;
    use crate::fact::wording::Words;

    /// The placeholders of a text, sorted, each once.
    fn placeholders(text: &str) -> BTreeSet<&str> {
        text.split('{').skip(1).map(|rest| rest.split_once('}').unwrap().0).collect()
    }

    fn every_text(words: &FactWords) -> Vec<Words> {
        let asked = words.ask.iter().flat_map(|ask| [ask.question, ask.look]);
        [words.name, words.about].into_iter().chain(asked).collect()
    }

    #[test]
    fn every_fact_that_costs_something_has_a_question_and_no_other_has_one() {
        for entry in CATALOGUE {
            assert_eq!(words(entry.fact).ask.is_some(), entry.cost > 0, "{}", entry.name);
        }
    }

    #[test]
    fn no_two_facts_share_their_words() {
        let mut names = BTreeMap::new();
        for entry in CATALOGUE {
            for (language, about) in [("en", words(entry.fact).about.en), ("es", words(entry.fact).about.es)] {
                let other = names.insert((language, about), entry.name);
                assert_eq!(other, None, "{} says the same: {about}", entry.name);
            }
        }
    }

    #[test]
    fn both_languages_say_something_and_use_the_same_placeholders() {
        for entry in CATALOGUE {
            for text in every_text(words(entry.fact)) {
                assert!(!text.en.trim().is_empty() && !text.es.trim().is_empty(), "{}", entry.name);
                assert_eq!(placeholders(text.en), placeholders(text.es), "{}", entry.name);
            }
        }
    }

    #[test]
    fn only_the_arguments_of_a_fact_stand_in_its_words() {
        let expected = |arguments: &str| match arguments {
            "" => vec![],
            "(NAME)" | "has ID" | "(ID)" | "(JOB)" | "(JOB or MATERIAL)" => vec!["name"],
            "(JOB or MATERIAL or CLASS, within DAYS)" | "(JOB or MATERIAL, within DAYS)" => {
                vec!["days", "name"]
            }
            "(tmin tmax tmean rain et0 rh, N days)" | "(mean min max sum, tmin tmax tmean rain, N days)" => {
                vec!["aggregate", "days", "series"]
            }
            "(TEMPERATURE, N days)" => vec!["days", "temperature"],
            "(BASE, [UPPER,] from MARKER)" | "(MARKER)" => vec!["marker"],
            marker if marker.starts_with("such as") => vec!["marker"],
            other => panic!("no placeholders are agreed for `{other}`"),
        };
        for entry in CATALOGUE {
            let words = words(entry.fact);
            let named: Vec<&str> = placeholders(words.name.en).into_iter().collect();
            assert_eq!(named, expected(entry.arguments), "{}", entry.name);
            assert!(placeholders(words.about.en).is_empty(), "{}", entry.name);
            if let Some(ask) = words.ask {
                assert_eq!(placeholders(ask.question.en), placeholders(words.name.en), "{}", entry.name);
                assert!(placeholders(ask.look.en).is_empty(), "{}", entry.name);
            }
        }
    }

    #[test]
    fn names_are_phrases_and_the_rest_are_sentences() {
        for entry in CATALOGUE {
            let words = words(entry.fact);
            for name in [words.name.en, words.name.es] {
                assert!(!name.ends_with(['.', '?']) && name.chars().count() <= 60, "{name}");
            }
            for about in [words.about.en, words.about.es] {
                assert!(about.ends_with('.'), "{about}");
            }
            if let Some(ask) = words.ask {
                assert!(ask.question.en.ends_with('?'), "{}", ask.question.en);
                assert!(ask.question.es.contains('¿') && ask.question.es.ends_with('?'), "{}", ask.question.es);
                for look in [ask.look.en, ask.look.es] {
                    assert!(look.ends_with(['.', '?']), "{look}");
                }
            }
        }
    }
}
