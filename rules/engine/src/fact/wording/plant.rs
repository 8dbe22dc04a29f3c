//! The words of what is known about the plant itself.

use super::words::FactWords;

pub(super) static TYPE: FactWords = FactWords::told(
    ["plant", "planta"],
    ["Which plant it is, by its id in the list of plants.", "Qué planta es, por su id en la lista de plantas."],
);

pub(super) static TRAIT: FactWords = FactWords::told(
    ["trait {name}", "característica {name}"],
    [
        "A trait that the plant's own entry declares, such as whether it flowers once a year or again and again.",
        "Una característica que declara la ficha de la planta, por ejemplo si florece una vez al año o varias.",
    ],
)
.asked(
    ["Which kind of this plant is it, by its {name}?", "¿De qué tipo es esta planta, según {name}?"],
    [
        "Look at the whole plant, or at the label that came with it.",
        "Mire la planta entera o la etiqueta con la que se vendió.",
    ],
);

pub(super) static AGE: FactWords = FactWords::told(
    ["years since planting", "años desde la plantación"],
    [
        "How many years the plant has stood in its place; reckoned from the planting date when that is given.",
        "Cuántos años lleva la planta en su sitio; se calcula con la fecha de plantación si se conoce.",
    ],
)
.asked(
    ["How many years has it stood there?", "¿Cuántos años lleva plantada ahí?"],
    [
        "Count the years since it was planted; to the half year is near enough.",
        "Cuente los años desde que se plantó; basta con afinar a medio año.",
    ],
);

pub(super) static PLANTED_ON: FactWords = FactWords::told(
    ["planting date", "fecha de plantación"],
    ["The day on which it was planted in its place.", "El día en que se plantó en su sitio."],
)
.asked(
    ["When was it planted?", "¿Cuándo se plantó?"],
    [
        "A receipt or a dated photograph helps; right to the week will do.",
        "Ayuda un recibo o una foto con fecha; basta con acertar la semana.",
    ],
);

pub(super) static HEIGHT: FactWords = FactWords::told(
    ["plant height", "altura de la planta"],
    [
        "Height from the soil to the highest leaves; typical of type and age when it is not given.",
        "Altura del suelo a las hojas más altas; si no se da, la habitual según tipo y edad.",
    ],
)
.asked(
    ["How tall is it?", "¿Qué altura tiene?"],
    [
        "Measure from the soil to the highest leaves, or compare it with your own height.",
        "Mida del suelo a las hojas más altas, o compárela con su propia estatura.",
    ],
);

pub(super) static CANOPY_DIAMETER: FactWords = FactWords::told(
    ["plant width", "ancho de la copa"],
    [
        "Width across the leaves; typical of type and age when it is not given.",
        "Ancho de la copa de lado a lado; si no se da, el habitual según tipo y edad.",
    ],
)
.asked(
    ["How wide is it across its leaves?", "¿Cuánto mide de ancho la copa?"],
    [
        "Measure on the ground from below the outermost leaves on one side to those on the other.",
        "Mida en el suelo desde debajo de las últimas hojas de un lado hasta las del otro.",
    ],
);

// Measured at knee height: common practice; handbooks differ between 15 cm for young stock and 1.3 m for timber.
pub(super) static TRUNK_DIAMETER: FactWords = FactWords::told(
    ["trunk thickness", "grosor del tronco"],
    [
        "Diameter of the trunk at knee height, above any swelling of the graft.",
        "Diámetro del tronco a la altura de la rodilla, por encima del abultamiento del injerto.",
    ],
)
.asked(
    ["How thick is the trunk?", "¿Qué grosor tiene el tronco?"],
    [
        "Put a tape round the trunk at knee height and divide by 3.14.",
        "Rodee el tronco con una cinta a la altura de la rodilla y divida entre 3,14.",
    ],
);

pub(super) static STAGE: FactWords = FactWords::told(
    ["stage of the plant", "fase de la planta"],
    [
        "What the plant is doing: resting, breaking bud, in leaf, in bloom; reckoned from the season where it is not given and the plant has a model.",
        "Qué está haciendo la planta: en reposo, brotando, con hojas, en flor; si no se dice, se calcula con la temporada cuando la planta tiene modelo.",
    ],
)
.asked(
    ["What is the plant doing now?", "¿Qué está haciendo la planta ahora?"],
    [
        "Look at the shoot tips: resting buds, new leaves, flower buds, open flowers, fruit or falling leaves.",
        "Mire las puntas de los brotes: yemas en reposo, hojas nuevas, botones, flores abiertas, fruto u hojas que caen.",
    ],
);

pub(super) static STAGE_SINCE: FactWords = FactWords::told(
    ["beginning of this stage", "comienzo de esta fase"],
    ["The day on which the present stage began.", "El día en que empezó la fase actual."],
)
.asked(
    ["Since when has it been doing that?", "¿Desde cuándo está así?"],
    [
        "Take the day on which about one shoot in ten had reached it.",
        "Tome el día en que había llegado a esa fase más o menos un brote de cada diez.",
    ],
);

pub(super) static BEARING: FactWords = FactWords::told(
    ["plant of bearing age", "planta en producción"],
    ["Whether the plant is old enough to bear fruit, and does.", "Si la planta ya tiene edad de dar fruto y lo da."],
)
.asked(
    ["Does it bear fruit already?", "¿Ya da fruto?"],
    [
        "Yes if it carries fruit now or carried some last season.",
        "Sí, si ahora tiene fruto o lo tuvo la temporada pasada.",
    ],
);

pub(super) static JUST_BOUGHT: FactWords = FactWords::told(
    ["just bought, still in its pot", "recién comprada, aún en su maceta"],
    [
        "Whether it was bought in the last weeks and still stands in the pot it came in.",
        "Si se compró en las últimas semanas y sigue en la maceta en que vino.",
    ],
)
.asked(
    [
        "Did you just buy it, and is it still in its nursery pot?",
        "¿Acaba de comprarla y sigue en la maceta del vivero?",
    ],
    [
        "Bought in the last weeks and neither planted nor repotted since.",
        "Comprada en las últimas semanas y ni plantada ni cambiada de maceta desde entonces.",
    ],
);

pub(super) static HIPS_WANTED: FactWords = FactWords::told(
    ["rose hips wanted", "escaramujos deseados"],
    [
        "Whether the fruit of the rose is to be left to ripen.",
        "Si se quiere dejar madurar el fruto del rosal, el escaramujo.",
    ],
)
.asked(
    ["Do you want to keep the rose hips?", "¿Quiere conservar los escaramujos, el fruto del rosal?"],
    [
        "Hips are the round fruit that follows the flowers, orange or red when ripe.",
        "Son los frutos redondos que siguen a la flor, anaranjados o rojos al madurar.",
    ],
);

pub(super) static IN_LEAF: FactWords = FactWords::told(
    ["plant in leaf", "planta con hojas"],
    [
        "Whether the plant carries open leaves; follows from its stage when it is not given.",
        "Si la planta tiene hojas abiertas; si no se dice, se deduce de su fase.",
    ],
)
.asked(
    ["Is it in leaf?", "¿Tiene hojas?"],
    [
        "Yes if leaves are open; swelling buds alone do not count.",
        "Sí, si hay hojas abiertas; las yemas hinchadas no cuentan.",
    ],
);

pub(super) static WATER_FACTOR: FactWords = FactWords::told(
    ["water factor", "coeficiente de riego"],
    [
        "Share of the reference evapotranspiration that this plant uses, from its own entry.",
        "Parte de la evapotranspiración de referencia que gasta esta planta, según su ficha.",
    ],
);

pub(super) static ROOT_DEPTH: FactWords = FactWords::told(
    ["root depth", "profundidad de las raíces"],
    [
        "Depth of soil from which this plant takes most of its water, from its own entry.",
        "Profundidad de suelo de la que esta planta toma casi toda el agua, según su ficha.",
    ],
);

pub(super) static DEPLETION: FactWords = FactWords::told(
    ["share of soil water that may be used", "parte del agua del suelo que se puede gastar"],
    [
        "Share of the water held in the root zone that this plant may use up before it suffers, from its own entry.",
        "Parte del agua guardada en la zona de raíces que esta planta puede gastar antes de sufrir, según su ficha.",
    ],
);
