//! What the choices, and the engine's own words for an answer, are called in English and Spanish.

use super::wording::Words;

/// Yes.
pub static YES: Words = Words::new("yes", "sí");
/// No.
pub static NO: Words = Words::new("no", "no");
/// The answer of someone who does not know.
pub static CANT_TELL: Words = Words::new("I can't tell", "no lo sé");

/// What a choice is called, for the middle of a sentence. `list` is the name of a list of `choices`, or one of `band`,
/// `hold kind`, `status`, `origin`, `evidence`, `strength`, `certainty`, `series`, `aggregate`. None for another list
/// or a value that it does not have.
#[must_use]
pub fn choice_name(list: &str, value: &str) -> Option<&'static Words> {
    LISTS
        .iter()
        .find(|(name, _)| *name == list)
        .and_then(|(_, names)| names.iter().find(|(id, _)| *id == value))
        .map(|(_, words)| words)
}

/// What a row of days is called, to follow on [`aggregate_name`]: `tmax`, `rain`.
#[must_use]
pub fn series_name(series: &str) -> Option<&'static Words> {
    choice_name("series", series)
}

/// What is made of a row of days: `mean`, `min`, `max`, `sum`.
#[must_use]
pub fn aggregate_name(aggregate: &str) -> Option<&'static Words> {
    choice_name("aggregate", aggregate)
}

type Names = [(&'static str, Words)];

macro_rules! lists {
    ($($list:literal { $($id:literal $en:literal $es:literal,)* })*) => {
        static LISTS: &[(&str, &Names)] = &[$(($list, &[$(($id, Words::new($en, $es))),*])),*];
    };
}

// id, English, Spanish. The Spanish names of the soil textures are those of the FAO's Spanish guidelines for soil
// description, from memory.
lists! {
    "planting" {
        "ground" "open ground" "suelo",
        "container" "pot" "maceta",
        "raised-bed" "raised bed" "bancal o cama elevada",
        "indoor" "indoors" "dentro de casa",
    }
    "container material" {
        "clay" "clay" "barro",
        "plastic" "plastic" "plástico",
        "wood" "wood" "madera",
        "fabric" "fabric" "tela",
    }
    "exposure" {
        "full-sun" "full sun" "pleno sol",
        "half-sun" "half sun" "medio sol",
        "shade" "shade" "sombra",
        "afternoon-sun" "afternoon sun" "sol de tarde",
    }
    "wind" {
        "sheltered" "sheltered" "abrigado",
        "open" "open" "abierto",
        "windy" "windy" "ventoso",
    }
    "soil texture" {
        "sand" "sand" "arenosa",
        "loamy-sand" "loamy sand" "arenosa franca",
        "sandy-loam" "sandy loam" "franca arenosa",
        "loam" "loam" "franca",
        "silt-loam" "silt loam" "franca limosa",
        "silt" "silt" "limosa",
        "sandy-clay-loam" "sandy clay loam" "franca arcillosa arenosa",
        "clay-loam" "clay loam" "franca arcillosa",
        "silty-clay-loam" "silty clay loam" "franca arcillosa limosa",
        "sandy-clay" "sandy clay" "arcillosa arenosa",
        "silty-clay" "silty clay" "arcillosa limosa",
        "clay" "clay" "arcillosa",
    }
    "drainage" {
        "fast" "fast" "rápido",
        "good" "good" "bueno",
        "poor" "poor" "malo",
    }
    "soil moisture" {
        "dry" "dry" "seco",
        "moist" "moist" "húmedo",
        "wet" "wet" "mojado",
    }
    "way of watering" {
        "can" "watering can or hose" "regadera o manguera",
        "drip" "drip" "goteo",
        "basin" "basin" "alcorque o cajete",
        "sprinkler" "sprinkler" "aspersión",
    }
    "weekday" {
        "monday" "Monday" "lunes",
        "tuesday" "Tuesday" "martes",
        "wednesday" "Wednesday" "miércoles",
        "thursday" "Thursday" "jueves",
        "friday" "Friday" "viernes",
        "saturday" "Saturday" "sábado",
        "sunday" "Sunday" "domingo",
    }
    "vigour" {
        "weak" "weak" "débil",
        "normal" "normal" "normal",
        "strong" "strong" "fuerte",
    }
    "severity" {
        "slight" "slight" "leve",
        "moderate" "moderate" "moderada",
        "severe" "severe" "grave",
    }
    "köppen class" {
        "Af" "Af (tropical rainforest)" "Af (selva tropical)",
        "Am" "Am (tropical monsoon)" "Am (monzón tropical)",
        "Aw" "Aw (tropical savanna)" "Aw (sabana tropical)",
        "BWh" "BWh (hot desert)" "BWh (desierto cálido)",
        "BWk" "BWk (cold desert)" "BWk (desierto frío)",
        "BSh" "BSh (hot steppe)" "BSh (estepa cálida)",
        "BSk" "BSk (cold steppe)" "BSk (estepa fría)",
        "Csa" "Csa (temperate, dry summer, hot summer)" "Csa (templado, verano seco, verano caluroso)",
        "Csb" "Csb (temperate, dry summer, warm summer)" "Csb (templado, verano seco, verano templado)",
        "Csc" "Csc (temperate, dry summer, short cool summer)" "Csc (templado, verano seco, verano corto y fresco)",
        "Cwa" "Cwa (temperate, dry winter, hot summer)" "Cwa (templado, invierno seco, verano caluroso)",
        "Cwb" "Cwb (temperate, dry winter, warm summer)" "Cwb (templado, invierno seco, verano templado)",
        "Cwc" "Cwc (temperate, dry winter, short cool summer)" "Cwc (templado, invierno seco, verano corto y fresco)",
        "Cfa" "Cfa (temperate, no dry season, hot summer)" "Cfa (templado, sin estación seca, verano caluroso)",
        "Cfb" "Cfb (temperate, no dry season, warm summer)" "Cfb (templado, sin estación seca, verano templado)",
        "Cfc" "Cfc (temperate, no dry season, short cool summer)" "Cfc (templado, sin estación seca, verano corto y fresco)",
        "Dsa" "Dsa (continental, dry summer, hot summer)" "Dsa (continental, verano seco, verano caluroso)",
        "Dsb" "Dsb (continental, dry summer, warm summer)" "Dsb (continental, verano seco, verano templado)",
        "Dsc" "Dsc (continental, dry summer, short cool summer)" "Dsc (continental, verano seco, verano corto y fresco)",
        "Dsd" "Dsd (continental, dry summer, very cold winter)" "Dsd (continental, verano seco, invierno muy frío)",
        "Dwa" "Dwa (continental, dry winter, hot summer)" "Dwa (continental, invierno seco, verano caluroso)",
        "Dwb" "Dwb (continental, dry winter, warm summer)" "Dwb (continental, invierno seco, verano templado)",
        "Dwc" "Dwc (continental, dry winter, short cool summer)" "Dwc (continental, invierno seco, verano corto y fresco)",
        "Dwd" "Dwd (continental, dry winter, very cold winter)" "Dwd (continental, invierno seco, invierno muy frío)",
        "Dfa" "Dfa (continental, no dry season, hot summer)" "Dfa (continental, sin estación seca, verano caluroso)",
        "Dfb" "Dfb (continental, no dry season, warm summer)" "Dfb (continental, sin estación seca, verano templado)",
        "Dfc" "Dfc (continental, no dry season, short cool summer)" "Dfc (continental, sin estación seca, verano corto y fresco)",
        "Dfd" "Dfd (continental, no dry season, very cold winter)" "Dfd (continental, sin estación seca, invierno muy frío)",
        "ET" "ET (tundra)" "ET (tundra)",
        "EF" "EF (ice cap)" "EF (hielo perpetuo)",
    }
    "half of the year" {
        "warming" "warming" "hacia el calor",
        "cooling" "cooling" "hacia el frío",
        "even" "even all year" "parejo todo el año",
    }
    "band" {
        "now" "now" "ahora",
        "this-week" "this week" "esta semana",
        "this-month" "this month" "este mes",
        "later" "later" "más adelante",
    }
    "hold kind" {
        "hold" "wait" "espere",
        "guard" "wait: it holds for every plant" "espere: vale para todas las plantas",
        "clash" "does not go with another task" "no va con otra tarea",
        "apart" "keep it apart from other work" "sepárelo de otra labor",
        "done" "done already" "ya está hecho",
        "early" "too early" "demasiado pronto",
        "late" "too late" "demasiado tarde",
        "never" "has no season here" "aquí no tiene temporada",
        "withheld" "withheld by the house rules" "retirado por las reglas de la casa",
        "avoid" "leave alone" "mejor no hacerlo",
        "emergency" "an emergency comes first" "primero la emergencia",
    }
    "status" {
        "advised" "there is work to do" "hay tareas por hacer",
        "nothing-due" "nothing to do now" "nada que hacer ahora",
        "needs-facts" "more must be known first" "hace falta saber más",
    }
    "origin" {
        "given" "as you said" "según lo que usted dijo",
        "measured" "measured" "medido",
        "forecast" "forecast" "pronosticado",
        "computed" "from the usual climate" "según el clima habitual",
        "estimated" "estimated from where it is" "estimado por la ubicación",
        "assumed" "assumed" "supuesto",
    }
    "evidence" {
        "consensus" "the handbooks agree" "los manuales coinciden",
        "trial" "shown in trials" "demostrado en ensayos",
        "common-practice" "common practice" "práctica común",
        "doubtful" "doubtful" "dudoso",
    }
    "strength" {
        "do" "do" "hacer",
        "consider" "consider" "considerar",
        "avoid" "avoid" "evitar",
    }
    "certainty" {
        "high" "high" "alta",
        "medium" "medium" "media",
        "low" "low" "baja",
    }
    "series" {
        "tmin" "daily minimum temperature" "temperatura mínima",
        "tmax" "daily maximum temperature" "temperatura máxima",
        "tmean" "daily mean temperature" "temperatura media",
        "rain" "rain" "lluvia",
        "et0" "evapotranspiration" "evapotranspiración",
        "rh" "humidity of the air" "humedad del aire",
        "wind" "wind" "viento",
        "daylength" "day length" "duración del día",
    }
    "aggregate" {
        "mean" "mean" "promedio",
        "min" "lowest" "valor más bajo",
        "max" "highest" "valor más alto",
        "sum" "total" "total",
    }
}

#[cfg(test)]
mod tests {
    use lammas_agronomy::origin::Origin;
    use lammas_agronomy::season::Series;

    use super::*;
    use crate::compile::path::SERIES;
    use crate::fact::choices;
    use crate::pack::rule::{Evidence, Strength};

    #[test]
    fn every_choice_of_every_list_has_a_name() {
        for list in choices::ALL {
            for value in list.values {
                assert!(choice_name(list.name, value).is_some(), "{}: {value}", list.name);
            }
        }
    }

    #[test]
    fn no_name_is_left_over_of_a_choice_that_is_gone() {
        for list in choices::ALL {
            let (_, names) = LISTS.iter().find(|(name, _)| *name == list.name).unwrap();
            let ids: Vec<&str> = names.iter().map(|(id, _)| *id).collect();
            assert_eq!(ids, list.values, "{}", list.name);
        }
    }

    #[test]
    fn what_a_rule_set_and_an_answer_may_hold_has_a_name() {
        fn word(value: impl serde::Serialize) -> String {
            serde_json::to_value(value).unwrap().as_str().unwrap().to_owned()
        }
        let evidence = [Evidence::Consensus, Evidence::Trial, Evidence::CommonPractice, Evidence::Doubtful];
        let strength = [Strength::Do, Strength::Consider, Strength::Avoid];
        let named = evidence
            .map(|e| ("evidence", word(e)))
            .into_iter()
            .chain(strength.map(|s| ("strength", word(s))))
            .chain(Origin::ALL.map(|o| ("origin", word(o))))
            .chain(Series::ALL.map(|s| ("series", s.as_str().to_owned())))
            .chain(SERIES.map(|(name, ..)| ("series", name.to_owned())));
        for (list, value) in named {
            assert!(choice_name(list, &value).is_some(), "{list}: {value}");
        }
        for (list, values) in [
            ("band", "now this-week this-month later"),
            ("hold kind", "hold guard clash apart done early late never withheld avoid emergency"),
            ("status", "advised nothing-due needs-facts"),
            ("certainty", "high medium low"),
            ("aggregate", "mean min max sum"),
        ] {
            let (_, names) = LISTS.iter().find(|(name, _)| *name == list).unwrap();
            let ids: Vec<&str> = names.iter().map(|(id, _)| *id).collect();
            assert_eq!(ids.join(" "), values);
        }
    }

    #[test]
    fn no_two_choices_of_a_list_are_called_the_same() {
        for (list, names) in LISTS {
            for language in ["en", "es"] {
                let mut words: Vec<&str> = names.iter().map(|(_, words)| words.get(language)).collect();
                words.sort_unstable();
                words.dedup();
                assert_eq!(words.len(), names.len(), "{list} in {language}");
                assert!(words.iter().all(|w| !w.is_empty() && !w.ends_with('.')), "{list} in {language}");
            }
        }
    }

    #[test]
    fn another_list_and_another_value_have_no_name() {
        assert_eq!(choice_name("colour", "red"), None);
        assert_eq!(choice_name("wind", "red"), None);
        assert_eq!(series_name("mean"), None);
        assert_eq!(aggregate_name("tmax"), None);
    }

    #[test]
    fn the_weather_of_some_days_reads_well_in_both_languages() {
        use crate::fact::catalogue::Fact;
        use crate::fact::wording::words;
        let said = |fact: Fact, aggregate: &str, series: &str, language: &str| {
            words(fact)
                .name
                .get(language)
                .replace("{aggregate}", aggregate_name(aggregate).unwrap().get(language))
                .replace("{series}", series_name(series).unwrap().get(language))
                .replace("{days}", "7")
        };
        assert_eq!(said(Fact::Past, "mean", "tmax", "en"), "mean daily maximum temperature of the last 7 days");
        assert_eq!(said(Fact::Past, "sum", "rain", "es"), "total de lluvia de los últimos 7 días");
        assert_eq!(
            said(Fact::Ahead, "max", "tmax", "es"),
            "valor más alto de temperatura máxima de los próximos 7 días"
        );
        assert_eq!(said(Fact::Ahead, "min", "tmin", "en"), "lowest daily minimum temperature of the next 7 days");
    }
}
