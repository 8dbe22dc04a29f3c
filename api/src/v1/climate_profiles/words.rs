//! What a record tells of a climate, and what it does not, in words.

use lammas_agronomy::profile::Profile;
use lammas_agronomy::record::Quality;

use super::answer::{ProfilePart, ProfileRemark};
use crate::v1::question::choices::Language;

/// What is known now, and what is not.
pub(super) fn told(
    profile: &Profile,
    quality: &Quality,
    language: Language,
) -> (Vec<ProfileRemark>, Vec<ProfileRemark>) {
    let spanish = language == Language::Es;
    let remark =
        |about: ProfilePart, en: String, es: String| ProfileRemark { about, words: if spanish { es } else { en } };
    let (mut known, mut unknown) = (Vec::new(), Vec::new());
    let missing = quality.days - quality.recorded_days;
    let gaps_en = if missing == 0 {
        "no day is missing".to_owned()
    } else {
        format!("{missing} are missing, and none was filled in")
    };
    let gaps_es =
        if missing == 0 { "no falta ninguno".to_owned() } else { format!("faltan {missing} y no se rellenó ninguno") };
    let days = quality.recorded_days;
    known.push(remark(
        ProfilePart::Temperature,
        format!("The monthly normals are means of {days} days with both temperatures; {gaps_en}."),
        format!("Los valores mensuales son promedios de {days} días con ambas temperaturas; {gaps_es}."),
    ));
    match &profile.counted_frost {
        Some(frost) => known.push(remark(
            ProfilePart::Frost,
            format!(
                "Frost dates are counted in {} seasons; frost came in {:.0} % of them.",
                frost.seasons,
                100.0 * frost.share_with_frost
            ),
            format!(
                "Las fechas de heladas se contaron en {} temporadas; heló en el {:.0} % de ellas.",
                frost.seasons,
                100.0 * frost.share_with_frost
            ),
        )),
        None => unknown.push(remark(
            ProfilePart::Frost,
            format!(
                "Fewer than 8 seasons to count frost in ({} there are): frost dates and the coldest night follow from the normals and the spread of the minimum, and are less sure.",
                quality.frost_seasons
            ),
            format!(
                "Hay menos de 8 temporadas para contar heladas ({}): las fechas de heladas y la noche más fría se deducen de los valores mensuales y de la variación de la mínima, y son menos seguras.",
                quality.frost_seasons
            ),
        )),
    }
    match (&profile.normals.rain_mm, quality.rain_days) {
        (Some(_), days) => known.push(remark(
            ProfilePart::Rain,
            format!("The rain of a month is its mean day times its days, over {days} days that were read."),
            format!("La lluvia de cada mes es su día medio por sus días, con {days} días leídos."),
        )),
        (None, 0) => unknown.push(remark(
            ProfilePart::Rain,
            "There is no rain in the record: the rains, wet and dry winters, recent rain and all that hangs on them are unknown.".to_owned(),
            "El registro no trae lluvia: la época de lluvias, los inviernos secos o lluviosos, la lluvia reciente y lo que dependa de ellos no se saben.".to_owned(),
        )),
        (None, days) => unknown.push(remark(
            ProfilePart::Rain,
            format!("Rain was read on {days} days, in some month on fewer than 15: too few for normals, so what hangs on rain is unknown."),
            format!("La lluvia se leyó en {days} días, en algún mes menos de 15: muy pocos para valores normales, así que lo que depende de la lluvia no se sabe."),
        )),
    }
    let weather = (&profile.normals.humidity, &profile.normals.wind_ms, &profile.normals.radiation);
    if let (None, None, None) = weather {
        unknown.push(remark(
            ProfilePart::Evaporation,
            "Humidity, wind and radiation are not known: evaporation is reckoned from the temperatures alone (Hargreaves-Samani).".to_owned(),
            "No se conocen la humedad, el viento ni la radiación: la evaporación se calcula solo con las temperaturas (Hargreaves-Samani).".to_owned(),
        ));
    }
    if profile.longitude_deg.is_none() {
        unknown.push(remark(
            ProfilePart::Place,
            "Without a longitude the date of today is that in UTC.".to_owned(),
            "Sin longitud, la fecha de hoy es la de UTC.".to_owned(),
        ));
    }
    if profile.elevation_m.is_none() {
        unknown.push(remark(
            ProfilePart::Place,
            "The height above the sea is not known.".to_owned(),
            "No se conoce la altura sobre el nivel del mar.".to_owned(),
        ));
    }
    if let (Some(first), Some(last)) = (profile.observations.first(), profile.observations.last()) {
        let (first, last) = (first.day.date(), last.day.date());
        known.push(remark(
            ProfilePart::RecentWeather,
            format!("The days from {first} to {last} go along as recent weather: a question about the days after them reads them."),
            format!("Los días del {first} al {last} van como tiempo reciente: los lee una pregunta sobre los días que siguen."),
        ));
    }
    (known, unknown)
}
