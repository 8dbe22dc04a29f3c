//! What the markers of the season are called, for the middle of a sentence: "closes 8 weeks before the usual first frost".

use crate::fact::wording::Words;

/// What a marker without arguments is called, with its article; none for any other path.
///
/// After `de` or `a` the Spanish article `el` is drawn together: `de el fin` is written `del fin`.
#[must_use]
pub fn marker_name(path: &str) -> Option<&'static Words> {
    NAMES.iter().find(|(name, _)| *name == path).map(|(_, words)| words)
}

macro_rules! names {
    ($($path:literal $en:literal $es:literal;)*) => {
        static NAMES: &[(&str, Words)] = &[$(($path, Words::new($en, $es))),*];
    };
}

// path, English, Spanish
names! {
    "last_frost.early" "the earliest likely last frost" "la última helada en un año temprano";
    "last_frost.median" "the usual last frost" "la última helada habitual";
    "last_frost.late" "the latest likely last frost" "la última helada en un año tardío";
    "first_frost.early" "the earliest likely first frost" "la primera helada en un año temprano";
    "first_frost.median" "the usual first frost" "la primera helada habitual";
    "first_frost.late" "the latest likely first frost" "la primera helada en un año tardío";
    "last_killing_frost.median" "the usual last killing frost" "la última helada fuerte habitual";
    "first_killing_frost.median" "the usual first killing frost" "la primera helada fuerte habitual";
    "growing.start" "the start of the growing season" "el comienzo de la temporada de crecimiento";
    "growing.end" "the end of the growing season" "el fin de la temporada de crecimiento";
    "hot_season.start" "the start of the hot season" "el comienzo de la temporada de calor fuerte";
    "hot_season.end" "the end of the hot season" "el fin de la temporada de calor fuerte";
    "warmest_week" "the warmest week" "la semana más cálida";
    "coldest_week" "the coldest week" "la semana más fría";
    "longest_day" "the longest day" "el día más largo del año";
    "shortest_day" "the shortest day" "el día más corto del año";
    "spring_equinox" "the spring equinox" "el equinoccio de primavera";
    "autumn_equinox" "the autumn equinox" "el equinoccio de otoño";
    "rains.start" "the start of the rains" "el comienzo de las lluvias";
    "rains.end" "the end of the rains" "el fin de las lluvias";
    "second_rains.start" "the start of the second rains" "el comienzo de las segundas lluvias";
    "second_rains.end" "the end of the second rains" "el fin de las segundas lluvias";
    "planted" "the day of planting" "el día de la plantación";
    "today" "the day asked" "el día consultado";
    "harvest_wait" "the end of the wait before harvest" "el fin del plazo de seguridad antes de cosechar";
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::compile::marker::{CALL_NAMES, FIXED_NAMES, named};

    #[test]
    fn every_marker_without_arguments_has_a_name() {
        for path in FIXED_NAMES.iter().copied().chain(["harvest_wait"]) {
            assert!(marker_name(path).is_some(), "{path}");
        }
    }

    #[test]
    fn no_name_is_left_over_of_a_marker_that_is_gone() {
        for (path, _) in NAMES {
            assert!(named(path).is_some(), "{path}");
        }
    }

    #[test]
    fn a_marker_with_arguments_has_no_fixed_name() {
        for path in CALL_NAMES.iter().copied().chain(["rises(tmean, 10 °C)", "last_frost", ""]) {
            assert_eq!(marker_name(path), None, "{path}");
        }
    }

    #[test]
    fn each_name_has_its_article_and_is_said_of_one_marker_only() {
        for language in ["en", "es"] {
            let mut words: Vec<&str> = NAMES.iter().map(|(_, words)| words.get(language)).collect();
            let articles: &[&str] = if language == "es" { &["el ", "la "] } else { &["the "] };
            for name in &words {
                assert!(articles.iter().any(|article| name.starts_with(article)), "{name}");
            }
            words.sort_unstable();
            words.dedup();
            assert_eq!(words.len(), NAMES.len(), "{language}");
        }
    }

    #[test]
    fn names_fit_into_a_sentence() {
        let frost = marker_name("first_frost.median").unwrap();
        assert_eq!(format!("closes 8 weeks before {}", frost.get("en")), "closes 8 weeks before the usual first frost");
        assert_eq!(
            format!("cierra 8 semanas antes de {}", frost.get("es-MX")),
            "cierra 8 semanas antes de la primera helada habitual"
        );
        assert_eq!(marker_name("hot_season.end").unwrap().get("en"), "the end of the hot season");
    }
}
