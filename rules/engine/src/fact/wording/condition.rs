//! The words of the state the plant is in, and of what its owner wishes.

use super::words::FactWords;

pub(super) static SIGNS_HAS: FactWords = FactWords::told(
    ["{name}", "{name}"],
    [
        "Whether a sign is seen on the plant; where the signs are listed, a plain sign that is not listed is not there.",
        "Si se ve una señal en la planta; cuando se listan las señales, una visible a simple vista que no figura es que no está.",
    ],
)
.asked(
    ["Do you see this on it: {name}?", "¿Ve esto en la planta: {name}?"],
    [
        "Look at several shoots on all sides; turn leaves over and open a bud if the sign hides there.",
        "Mire varios brotes por todos lados; voltee hojas y abra una yema si la señal se esconde ahí.",
    ],
);

pub(super) static SEVERITY: FactWords = FactWords::told(
    ["severity of {name}", "gravedad de {name}"],
    [
        "How bad a sign is, slight, moderate or severe; of several reports the worst counts.",
        "Qué gravedad tiene una señal: leve, moderada o grave; si hay varias, cuenta la peor.",
    ],
)
.asked(
    ["How bad is it: {name}?", "¿Qué gravedad tiene: {name}?"],
    [
        "Slight: only when you look for it; moderate: seen at once; severe: on most of the plant, or parts of it die.",
        "Leve: solo si se busca; moderada: se ve enseguida; grave: en casi toda la planta, o se mueren partes.",
    ],
);

pub(super) static SHARE: FactWords = FactWords::told(
    ["share of the plant with {name}", "parte de la planta con {name}"],
    [
        "What share of the shoots, leaves or fruit shows a sign, in per cent.",
        "Qué parte de los brotes, hojas o frutos muestra una señal, en tanto por ciento.",
    ],
)
.asked(
    [
        "Of a hundred shoots, leaves or fruit, how many show it: {name}?",
        "De cada cien brotes, hojas o frutos, ¿cuántos lo muestran: {name}?",
    ],
    [
        "Take twenty at random from all sides, count those that show it and multiply by five.",
        "Tome veinte al azar por todos lados, cuente los que lo muestran y multiplique por cinco.",
    ],
);

pub(super) static SINCE: FactWords = FactWords::told(
    ["day on which it was first seen: {name}", "día en que se vio por primera vez: {name}"],
    [
        "The day on which a sign was first seen, or on which it happened.",
        "El día en que se vio una señal por primera vez, o en que ocurrió.",
    ],
)
.asked(
    ["When did you first see it: {name}?", "¿Cuándo lo vio por primera vez: {name}?"],
    [
        "Photographs on your telephone carry their date; right to the week will do.",
        "Las fotos del teléfono llevan fecha; basta con acertar la semana.",
    ],
);

pub(super) static VIGOUR: FactWords = FactWords::told(
    ["vigour", "vigor"],
    [
        "How strongly the plant grows: weak, normal or strong.",
        "Con qué fuerza crece la planta: poca, normal o mucha.",
    ],
)
.asked(
    ["Does it grow weakly, normally or strongly?", "¿Crece con poca fuerza, normal o con mucha?"],
    [
        "Compare this season's shoots with those of other seasons: thin and short is weak, thick and long is strong.",
        "Compare los brotes de esta temporada con los de otras: delgados y cortos, poca fuerza; gruesos y largos, mucha.",
    ],
);

pub(super) static WANTS: FactWords = FactWords::told(
    ["wish: {name}", "deseo: {name}"],
    [
        "Whether a work of choice, such as moving or dividing the plant, is wished; no when it is not said.",
        "Si se desea una labor que es opcional, como trasplantar o dividir la planta; no, si no se dice.",
    ],
);
