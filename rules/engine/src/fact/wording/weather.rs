//! The words of the weather, of the water of the plant, and of the days to and from a marker.

use super::words::FactWords;

pub(super) static TMIN: FactWords = FactWords::told(
    ["usual minimum of the day", "mínima habitual del día"],
    [
        "Lowest temperature that is usual on the day, from the curve of the normals.",
        "Temperatura mínima habitual del día, según la curva de los valores normales.",
    ],
);

pub(super) static TMAX: FactWords = FactWords::told(
    ["usual maximum of the day", "máxima habitual del día"],
    [
        "Highest temperature that is usual on the day, from the curve of the normals.",
        "Temperatura máxima habitual del día, según la curva de los valores normales.",
    ],
);

pub(super) static TMEAN: FactWords = FactWords::told(
    ["usual mean temperature of the day", "temperatura media habitual del día"],
    [
        "Half the sum of the usual minimum and maximum of the day.",
        "La mitad de la suma de la mínima y la máxima habituales del día.",
    ],
);

pub(super) static RAIN: FactWords = FactWords::told(
    ["usual rain of the day", "lluvia habitual del día"],
    [
        "The normals' rain spread evenly over its days; unknown where the profile has no rain.",
        "La lluvia de los valores normales repartida por igual entre sus días; desconocida si el perfil no trae lluvia.",
    ],
);

pub(super) static ET0: FactWords = FactWords::told(
    ["reference evapotranspiration", "evapotranspiración de referencia"],
    [
        "Water that a well watered short grass would use on such a day.",
        "Agua que gastaría en un día así un césped corto y bien regado.",
    ],
);

pub(super) static RH: FactWords = FactWords::told(
    ["usual humidity of the air", "humedad habitual del aire"],
    [
        "Mean relative humidity that is usual on the day; unknown where the profile has none.",
        "Humedad relativa media habitual del día; desconocida si el perfil no la trae.",
    ],
);

pub(super) static WIND: FactWords = FactWords::told(
    ["usual wind", "viento habitual"],
    [
        "Mean wind that is usual on the day; unknown where the profile has none.",
        "Viento medio habitual del día; desconocido si el perfil no lo trae.",
    ],
);

pub(super) static DAYLENGTH: FactWords = FactWords::told(
    ["day length", "duración del día"],
    ["Hours from sunrise to sunset at the place.", "Horas de sol a sol en el lugar."],
);

pub(super) static PAST: FactWords = FactWords::told(
    ["{aggregate} {series} of the last {days} days", "{aggregate} de {series} de los últimos {days} días"],
    [
        "Mean, lowest, highest or total of the weather over the days before the day asked: records where enough days are there, else the curve of the normals.",
        "Promedio, valor más bajo, más alto o total del tiempo en los días anteriores: registros si hay días suficientes, si no la curva de los valores normales.",
    ],
);

pub(super) static AHEAD: FactWords = FactWords::told(
    ["{aggregate} {series} of the next {days} days", "{aggregate} de {series} de los próximos {days} días"],
    [
        "Mean, lowest, highest or total of the weather over the day asked and those after it: the forecast for its days, the curve of the normals beyond.",
        "Promedio, valor más bajo, más alto o total del tiempo en el día y los siguientes: el pronóstico mientras alcanza, después la curva de los valores normales.",
    ],
);

pub(super) static FROST_AHEAD: FactWords = FactWords::told(
    [
        "night at {temperature} or colder in the next {days} days",
        "noche a {temperature} o menos en los próximos {days} días",
    ],
    [
        "Whether a night so cold lies ahead: by the forecast, else when one year in ten or more has it in those days.",
        "Si viene una noche así de fría: según el pronóstico, o si la hay en esos días en uno de cada diez años o más.",
    ],
);

pub(super) static SOIL_10CM: FactWords = FactWords::told(
    ["soil temperature at 10 cm (4 in)", "temperatura del suelo a 10 cm (4 in)"],
    [
        "Temperature of the soil at 10 cm (4 in), which follows that of the air more gently and later.",
        "Temperatura del suelo a 10 cm (4 in), que sigue a la del aire con retraso y más suave.",
    ],
);

pub(super) static LEAF_WET: FactWords = FactWords::told(
    ["hours of wet leaves", "horas con la hoja mojada"],
    [
        "Longest time in the last day that the leaves stayed wet; it is never guessed from rain.",
        "El tiempo más largo del último día en que la hoja siguió mojada; nunca se supone por la lluvia.",
    ],
)
.asked(
    [
        "For how many hours on end were the leaves wet in the last day?",
        "¿Cuántas horas seguidas estuvieron mojadas las hojas en el último día?",
    ],
    [
        "Count from when dew, rain or the sprinkler wetted them to when they felt dry inside the plant.",
        "Cuente desde que las mojó el rocío, la lluvia o el riego hasta que se sienten secas dentro de la planta.",
    ],
);

pub(super) static WATER_NEED: FactWords = FactWords::told(
    ["water use of the plant", "gasto de agua de la planta"],
    [
        "Water that this plant uses in a day, from the reference evapotranspiration, its own factor, its width and the sun of its place.",
        "Agua que gasta esta planta en un día, según la evapotranspiración de referencia, su coeficiente, su copa y el sol del sitio.",
    ],
);

pub(super) static WATER_INTERVAL: FactWords = FactWords::told(
    ["days between soaks", "días entre riegos"],
    [
        "Days from one deep soak to the next, from what the root zone holds and the plant uses, less the rain that helps.",
        "Días entre un riego profundo y el siguiente, según lo que guarda la zona de raíces y gasta la planta, menos la lluvia útil.",
    ],
);

pub(super) static WATER_DEPLETION: FactWords = FactWords::told(
    ["soil water used up", "agua del suelo gastada"],
    [
        "Share of the soil's water that is used up, 0 full and 1 empty; known only from two weeks of records or since a watering in the history.",
        "Parte del agua del suelo ya gastada, 0 lleno y 1 vacío; solo se sabe con dos semanas de registros o desde un riego del historial.",
    ],
);

pub(super) static MARKER: FactWords = FactWords::told(
    ["{marker}", "{marker}"],
    [
        "A day on which the season turns at this place, such as the usual first frost: the one nearest to the day asked.",
        "Un día en que cambia la temporada en este lugar, como la primera helada habitual: el más cercano al día consultado.",
    ],
);

pub(super) static DAYS_TO: FactWords = FactWords::told(
    ["time to {marker}", "tiempo hasta {marker}"],
    [
        "How long it is from the day asked to the next time that a marker comes.",
        "Cuánto falta desde el día consultado hasta la próxima vez que llega un hito de la temporada.",
    ],
);

pub(super) static DAYS_FROM: FactWords = FactWords::told(
    ["time since {marker}", "tiempo desde {marker}"],
    [
        "How long ago it is, on the day asked, that a marker last came.",
        "Cuánto hace, el día consultado, que llegó por última vez un hito de la temporada.",
    ],
);
