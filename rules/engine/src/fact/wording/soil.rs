//! The words of the soil and of the water that the caller has.

use super::words::FactWords;

// Ribbons of under 2.5 cm (loam) and over 5 cm (clay): Thien 1979, A flow diagram for teaching texture-by-feel
// analysis, J. Agron. Educ. 8, 54-55; from memory.
pub(super) static TEXTURE: FactWords = FactWords::told(
    ["soil texture", "textura del suelo"],
    [
        "How sandy or clayey the soil is: one of the twelve classes of the United States Department of Agriculture.",
        "Qué tan arenoso o arcilloso es el suelo: una de las doce clases del Departamento de Agricultura de Estados Unidos.",
    ],
)
.asked(
    ["Is the soil sandy, loamy or clayey?", "¿El suelo es arenoso, franco o arcilloso?"],
    [
        "Knead a moist ball and press it out between thumb and finger: sand makes no ribbon, loam one under 2.5 cm (1 in), clay one over 5 cm (2 in).",
        "Amase una bola húmeda y aplástela entre el pulgar y el índice: la arena no hace cinta, el suelo franco hace una de menos de 2,5 cm (1 in), la arcilla una de más de 5 cm (2 in).",
    ],
);

pub(super) static PH: FactWords = FactWords::told(
    ["soil pH", "pH del suelo"],
    [
        "How acid or alkaline the soil is: under 7 acid, over 7 alkaline.",
        "Qué tan ácido o alcalino es el suelo: por debajo de 7 ácido, por encima de 7 alcalino.",
    ],
)
.asked(
    ["What is the pH of the soil?", "¿Qué pH tiene el suelo?"],
    [
        "Mix soil from three spots in the root zone and test it with a kit and distilled water, or send it to a soil laboratory.",
        "Mezcle tierra de tres puntos de la zona de raíces y mídala con un kit y agua destilada, o llévela a un laboratorio de suelos.",
    ],
);

pub(super) static EC: FactWords = FactWords::told(
    ["salt in the soil", "sales en el suelo"],
    [
        "Salinity of the soil as its electrical conductivity in dS/m.",
        "Salinidad del suelo, medida como conductividad eléctrica en dS/m.",
    ],
)
.asked(
    [
        "How salty is the soil: what is its electrical conductivity?",
        "¿Qué tan salino es el suelo: cuál es su conductividad eléctrica?",
    ],
    [
        "A soil laboratory measures it, in dS/m or mmho/cm, which is the same; a white crust is a hint, not a measurement.",
        "La mide un laboratorio de suelos, en dS/m o mmho/cm, que es lo mismo; una costra blanca es un indicio, no una medida.",
    ],
);

// A fall of 2 to 10 cm an hour on the second filling: common practice, and handbooks differ by some centimetres.
pub(super) static DRAINAGE: FactWords = FactWords::told(
    ["soil drainage", "drenaje del suelo"],
    ["How fast water leaves the soil: fast, good or poor.", "Con qué rapidez se va el agua del suelo: rápida, buena o mala."],
)
.asked(
    ["Does water drain away fast, well or poorly?", "¿El agua se va rápido, bien o mal?"],
    [
        "Fill a hole 30 cm (12 in) deep twice: the second time a fall of 2 to 10 cm (1 to 4 in) an hour is good, more is fast, less is poor.",
        "Llene dos veces un hoyo de 30 cm (12 in): la segunda vez, si baja de 2 a 10 cm (1 a 4 in) por hora es bueno, si baja más es rápido, si baja menos es malo.",
    ],
);

pub(super) static MOISTURE: FactWords = FactWords::told(
    ["soil moisture", "humedad del suelo"],
    [
        "How wet the soil feels today 5 cm (2 in) down; it is never reckoned from the weather.",
        "Qué tan húmedo se siente hoy el suelo a 5 cm (2 in); nunca se calcula con el tiempo que hizo.",
    ],
)
.asked(
    [
        "Is the soil dry, moist or wet a finger's length down?",
        "¿Está el suelo seco, húmedo o mojado a un dedo de profundidad?",
    ],
    [
        "Push a finger 5 cm (2 in) in: dry soil crumbles and leaves it clean, moist soil clings and holds together, wet soil smears.",
        "Meta un dedo 5 cm (2 in): el suelo seco se desmorona y lo deja limpio, el húmedo se pega y se puede apelmazar, el mojado embarra.",
    ],
);

pub(super) static WATER_SOURCE_ALKALINE: FactWords = FactWords::told(
    ["alkaline water", "agua alcalina"],
    [
        "Whether the water used is alkaline: hard water that leaves limescale.",
        "Si el agua que se usa es alcalina: agua dura que deja sarro de cal.",
    ],
)
.asked(
    ["Is your water hard, does it leave limescale?", "¿Su agua es dura, deja sarro de cal?"],
    [
        "Look for a white crust in the kettle or on the tap; the water supplier also tells.",
        "Busque una costra blanca en la tetera o el grifo (la llave); también lo dice quien suministra el agua.",
    ],
);

pub(super) static WATER_EC: FactWords = FactWords::told(
    ["salt in the water", "sales en el agua"],
    [
        "Salinity of the water used, as its electrical conductivity in dS/m.",
        "Salinidad del agua que se usa, medida como conductividad eléctrica en dS/m.",
    ],
)
.asked(
    [
        "How salty is your water: what is its electrical conductivity?",
        "¿Qué tan salina es su agua: cuál es su conductividad eléctrica?",
    ],
    [
        "It stands in the supplier's or the well's report, or take a pocket meter; 1000 µS/cm is 1 dS/m.",
        "Figura en el análisis del suministro o del pozo, o use un medidor de bolsillo; 1000 µS/cm son 1 dS/m.",
    ],
);

pub(super) static WATER_METHOD: FactWords = FactWords::told(
    ["way of watering", "forma de riego"],
    [
        "How water is brought to the plant; into a basin round it when it is not said.",
        "Cómo se le lleva el agua a la planta; si no se dice, a un alcorque o cajete.",
    ],
)
.asked(
    [
        "How do you water: can or hose, drip, basin or sprinkler?",
        "¿Cómo riega: con regadera o manguera, por goteo, en alcorque (cajete) o por aspersión?",
    ],
    [
        "A basin is a rim of earth round the plant that is filled with water.",
        "El alcorque o cajete es un borde de tierra alrededor de la planta que se llena de agua.",
    ],
);

pub(super) static WATER_RESTRICTED_DAYS: FactWords = FactWords::told(
    ["days without watering", "días en que no se puede regar"],
    [
        "Days of the week on which watering is not allowed; none when it is not said.",
        "Días de la semana en que no se permite regar; ninguno si no se dice.",
    ],
);
