//! The words of the season and of the climate.

use super::words::FactWords;

pub(super) static HEAT_LEFT: FactWords = FactWords::told(
    ["warmth left before frost", "calor que queda antes de las heladas"],
    [
        "Degree days over 5 °C (41 °F) from the day to the usual first frost or the end of growth, whichever comes first; none in the cold half.",
        "Grados día sobre 5 °C (41 °F) desde el día hasta la primera helada habitual o el fin del crecimiento, lo que llegue antes; cero en la mitad fría.",
    ],
);

pub(super) static HEAT_SUM: FactWords = FactWords::told(
    ["warmth gathered since {marker}", "calor acumulado desde {marker}"],
    [
        "Degree days over a base temperature since a marker, up to a cut-off where one is named.",
        "Grados día sobre una temperatura base desde un hito de la temporada, con tope superior si se indica.",
    ],
);

pub(super) static FROST_CHANCE: FactWords = FactWords::told(
    ["share of years with frost", "parte de los años con heladas"],
    [
        "Share of years with any day at or below 0 °C (32 °F).",
        "Parte de los años en que algún día se llega a 0 °C (32 °F) o menos.",
    ],
);

pub(super) static FROST_FREE: FactWords = FactWords::told(
    ["climate without frost", "clima sin heladas"],
    ["Whether fewer than one year in ten has a frost.", "Si hiela en menos de uno de cada diez años."],
);

pub(super) static MILD_WINTER: FactWords = FactWords::told(
    ["mild winter", "invierno suave"],
    [
        "Whether nights of the coldest week are usually above 0 °C (32 °F).",
        "Si las noches de la semana más fría suelen estar por encima de 0 °C (32 °F).",
    ],
);

pub(super) static COLD_WINTER: FactWords = FactWords::told(
    ["cold winter", "invierno frío"],
    [
        "Whether nights of the coldest week are usually below -7 °C (19 °F).",
        "Si las noches de la semana más fría suelen estar por debajo de -7 °C (19 °F).",
    ],
);

pub(super) static HOT_SUMMER: FactWords = FactWords::told(
    ["hot summer", "verano muy caluroso"],
    [
        "Whether days of the warmest week usually reach 35 °C (95 °F).",
        "Si los días de la semana más cálida suelen llegar a 35 °C (95 °F).",
    ],
);

pub(super) static WET_WINTER: FactWords = FactWords::told(
    ["wet winter", "invierno lluvioso"],
    [
        "Whether the 13 coldest weeks bring more than 150 mm (5.9 in) of rain.",
        "Si en las 13 semanas más frías llueven más de 150 mm (5,9 in).",
    ],
);

pub(super) static DRY_WINTER: FactWords = FactWords::told(
    ["dry winter", "invierno seco"],
    [
        "Whether the 13 coldest weeks bring less than 75 mm (3 in) of rain.",
        "Si en las 13 semanas más frías llueven menos de 75 mm (3 in).",
    ],
);

pub(super) static DRY_COLDEST: FactWords = FactWords::told(
    ["rather dry winter", "invierno más bien seco"],
    [
        "Whether the 13 coldest weeks bring less than 120 mm (4.7 in) of rain.",
        "Si en las 13 semanas más frías llueven menos de 120 mm (4,7 in).",
    ],
);

pub(super) static DRY_SPRING: FactWords = FactWords::told(
    ["dry spring", "primavera seca"],
    [
        "Whether the first 6 weeks of growth bring less than 40 mm (1.6 in) of rain.",
        "Si en las primeras 6 semanas de crecimiento llueven menos de 40 mm (1,6 in).",
    ],
);

pub(super) static SHORT_SEASON: FactWords = FactWords::told(
    ["short season", "temporada corta"],
    [
        "Whether fewer than 130 days lie between the usual last frost and the usual first.",
        "Si entre la última helada habitual y la primera hay menos de 130 días.",
    ],
);

pub(super) static HALF: FactWords = FactWords::told(
    ["half of the year", "mitad del año"],
    [
        "Whether the year is warming or cooling on the day, or even where there are hardly any seasons.",
        "Si ese día el año va hacia el calor o hacia el frío, o es parejo donde casi no hay estaciones.",
    ],
);

pub(super) static CHILL_HOURS: FactWords = FactWords::told(
    ["chill hours", "horas de frío"],
    [
        "Hours between 0 and 7.2 °C (32 and 45 °F) since growth ended.",
        "Horas entre 0 y 7,2 °C (32 y 45 °F) desde que terminó el crecimiento.",
    ],
);

pub(super) static CHILL_PORTIONS: FactWords = FactWords::told(
    ["chill portions", "porciones de frío"],
    [
        "Cold since growth ended by the Dynamic model, in which warm days undo part of it.",
        "Frío desde que terminó el crecimiento según el modelo dinámico, en que el calor deshace una parte.",
    ],
);

pub(super) static ZONE: FactWords = FactWords::told(
    ["hardiness zone", "zona de rusticidad"],
    [
        "Zone, 1 to 13, by the mean of each year's lowest temperature.",
        "Zona, de 1 a 13, según el promedio de la mínima de cada año.",
    ],
);

pub(super) static HEAT_DAYS: FactWords = FactWords::told(
    ["heat days", "días de calor"],
    [
        "Days in a usual year with a maximum above 30 °C (86 °F).",
        "Días de un año normal con máxima por encima de 30 °C (86 °F).",
    ],
);

pub(super) static KOPPEN: FactWords = FactWords::told(
    ["Köppen climate class", "clase de clima de Köppen"],
    [
        "Class of the climate by Köppen's system of temperature and rain.",
        "Clase de clima según el sistema de Köppen, por temperatura y lluvia.",
    ],
);

pub(super) static EXTREME_MIN: FactWords = FactWords::told(
    ["coldest night of a usual year", "noche más fría de un año normal"],
    ["Mean of each year's lowest temperature.", "Promedio de la temperatura mínima de cada año."],
);
