//! The words of the place where the plant stands, and of who and what is near it.

use super::words::FactWords;

pub(super) static PLANTING: FactWords = FactWords::told(
    ["planting place", "lugar de plantación"],
    [
        "Whether it stands in open ground, in a container, in a raised bed or indoors; in the ground when it is not said.",
        "Si está en el suelo, en maceta, en bancal elevado o dentro de casa; en el suelo si no se dice.",
    ],
)
.asked(
    [
        "Does it grow in the ground, in a pot, in a raised bed or indoors?",
        "¿Está en el suelo, en maceta, en un bancal (cama) elevado o dentro de casa?",
    ],
    [
        "What counts is where its roots are: in open ground or between walls.",
        "Cuenta dónde están las raíces: en el suelo abierto o entre paredes.",
    ],
);

pub(super) static CONTAINER_VOLUME: FactWords = FactWords::told(
    ["size of the pot", "volumen de la maceta"],
    ["How many litres of soil the pot holds.", "Cuántos litros de sustrato caben en la maceta."],
)
.asked(
    ["How many litres does the pot hold?", "¿Cuántos litros caben en la maceta?"],
    [
        "Look under its base; if nothing is stamped there, count the buckets it would take: a bucket is about 10 L (2.6 gal).",
        "Mire debajo de la base; si no está marcado, calcule cuántos cubos o cubetas caben: uno lleva unos 10 L (2,6 gal).",
    ],
);

pub(super) static CONTAINER_MATERIAL: FactWords = FactWords::told(
    ["material of the pot", "material de la maceta"],
    [
        "What the pot is made of: clay and fabric dry out faster than plastic.",
        "De qué es la maceta: el barro y la tela se secan antes que el plástico.",
    ],
)
.asked(
    ["Is the pot of clay, plastic, wood or fabric?", "¿La maceta es de barro, de plástico, de madera o de tela?"],
    [
        "Glazed clay counts as plastic: water does not pass through it.",
        "El barro esmaltado cuenta como plástico: no deja pasar el agua.",
    ],
);

pub(super) static EXPOSURE: FactWords = FactWords::told(
    ["sun at the place", "sol en el sitio"],
    [
        "How much direct sun the place has in the growing season; full sun when it is not said.",
        "Cuánto sol directo recibe el sitio en la temporada de crecimiento; pleno sol si no se dice.",
    ],
)
.asked(
    ["How much direct sun does the place get?", "¿Cuánto sol directo recibe el sitio?"],
    [
        "Count its hours of sun on a clear day: 6 or more is full sun, 3 to 6 half sun, under 3 shade; afternoon sun is sun only after midday.",
        "Cuente las horas de sol en un día despejado: 6 o más es pleno sol, de 3 a 6 medio sol, menos de 3 sombra; sol de tarde es solo después del mediodía.",
    ],
);

pub(super) static WIND: FactWords = FactWords::told(
    ["wind at the place", "viento en el sitio"],
    [
        "Whether the place is sheltered, open or windy; sheltered when it is not said.",
        "Si el sitio es abrigado, abierto o ventoso; abrigado si no se dice.",
    ],
)
.asked(
    ["Is the place sheltered, open or windy?", "¿El sitio es abrigado, abierto o ventoso?"],
    [
        "Sheltered: walls, fences or hedges near by; windy: a hilltop, a coast or a high terrace where leaves are often torn.",
        "Abrigado: muros, vallas o setos cerca; ventoso: una loma, la costa o una terraza alta donde el viento rasga las hojas.",
    ],
);

pub(super) static REFLECTED_HEAT: FactWords = FactWords::told(
    ["heat thrown back", "calor reflejado"],
    [
        "Whether a wall, paving or a roof throws heat at the plant; no when it is not said.",
        "Si una pared, un pavimento o un techo le devuelve calor a la planta; no, si no se dice.",
    ],
)
.asked(
    ["Does a wall, paving or a roof throw heat at it?", "¿Le devuelve calor una pared, un pavimento o un techo?"],
    [
        "Hold a hand between the plant and the wall or paving on a hot afternoon: does heat come from there?",
        "Ponga la mano entre la planta y la pared o el pavimento en una tarde de calor: ¿viene calor de ahí?",
    ],
);

pub(super) static MULCHED: FactWords = FactWords::told(
    ["mulch on the soil", "acolchado sobre el suelo"],
    [
        "Whether the soil round the plant is covered with mulch: bark, leaves, straw, compost or gravel.",
        "Si el suelo alrededor de la planta está acolchado: corteza, hojas, paja, compost o grava.",
    ],
)
.asked(
    ["Is the soil round it covered with mulch?", "¿Tiene acolchado alrededor: corteza, hojas, paja, compost o grava?"],
    [
        "Yes if no bare soil shows within an arm's length of the stem.",
        "Sí, si no se ve suelo desnudo a un brazo de distancia del tallo.",
    ],
);

pub(super) static FROST_HOLLOW: FactWords = FactWords::told(
    ["frost hollow", "hondonada fría"],
    [
        "Whether cold air gathers here, so that nights are colder than round about; no when it is not said.",
        "Si aquí se junta el aire frío y las noches son más frías que alrededor; no, si no se dice.",
    ],
)
.asked(
    ["Does cold air gather here on still nights?", "¿Se junta aquí el aire frío en las noches sin viento?"],
    [
        "Think of the foot of a slope, a dip, or a fence that dams the cold; frost lies here when the neighbours have none.",
        "Piense en el pie de una ladera, un bajo o una valla que retiene el frío; aquí hiela cuando donde los vecinos no.",
    ],
);

pub(super) static PETS: FactWords = FactWords::told(
    ["pets about", "mascotas en el jardín"],
    [
        "Whether pets come here; cautions for them are shown unless the answer is no.",
        "Si entran mascotas; los avisos para ellas se muestran salvo que la respuesta sea no.",
    ],
)
.asked(
    ["Do pets come here?", "¿Entran aquí mascotas u otros animales domésticos?"],
    [
        "Count the neighbours' dogs and cats, poultry and tortoises too.",
        "Cuente también perros y gatos de los vecinos, gallinas y tortugas.",
    ],
);

pub(super) static CHILDREN: FactWords = FactWords::told(
    ["children about", "niños en el jardín"],
    [
        "Whether children come here; cautions for them are shown unless the answer is no.",
        "Si entran niños; los avisos para ellos se muestran salvo que la respuesta sea no.",
    ],
)
.asked(
    ["Do children come here?", "¿Entran aquí niños?"],
    ["Count those who visit or pass by too.", "Cuente también a los que vienen de visita o pasan por ahí."],
);

pub(super) static NEAR_WATER: FactWords = FactWords::told(
    ["open water near by", "agua cerca"],
    [
        "Whether a pond, stream, ditch or drain is near; cautions for it are shown unless the answer is no.",
        "Si hay cerca un estanque, arroyo, acequia o desagüe; los avisos para el agua se muestran salvo que la respuesta sea no.",
    ],
)
.asked(
    ["Is a pond, stream, ditch or drain near?", "¿Hay cerca un estanque, un arroyo, una acequia o un desagüe?"],
    [
        "Think where rain runs off to: a gutter in the street that leads to a stream counts.",
        "Piense adónde corre la lluvia: cuenta la alcantarilla de la calle que va a dar a un arroyo.",
    ],
);

pub(super) static BEES_WORKING: FactWords = FactWords::told(
    ["bees on open flowers", "abejas en flores abiertas"],
    [
        "Whether bees are on open flowers here today; cautions for them are shown unless the answer is no.",
        "Si hoy hay abejas en flores abiertas aquí; los avisos para ellas se muestran salvo que la respuesta sea no.",
    ],
)
.asked(
    ["Are bees on open flowers here today?", "¿Hay hoy abejas en flores abiertas aquí?"],
    [
        "Watch the flowers for a few minutes in the sun, weeds in bloom too; bumblebees and wild bees count.",
        "Observe las flores unos minutos al sol, también las hierbas en flor; cuentan los abejorros y las abejas silvestres.",
    ],
);

pub(super) static FOOD_USE: FactWords = FactWords::told(
    ["grown to be eaten", "cultivo para comer"],
    [
        "Whether any part of the plant is eaten; the plant's own entry tells when it is not said.",
        "Si se come alguna parte de la planta; si no se dice, lo indica la ficha de la planta.",
    ],
)
.asked(
    ["Is any part of it eaten?", "¿Se come alguna parte de ella?"],
    [
        "Petals in a salad, hips for tea and leaves for the kitchen count.",
        "Cuentan los pétalos en ensalada, el escaramujo para infusión y las hojas para la cocina.",
    ],
);

pub(super) static REGION: FactWords = FactWords::told(
    ["region", "región"],
    [
        "Where this is in law, as an ISO 3166 code; it is never inferred from coordinates.",
        "A qué región legal pertenece, con su código ISO 3166; nunca se deduce de las coordenadas.",
    ],
)
.asked(
    [
        "In which country, and which state or province, is the garden?",
        "¿En qué país, y en qué estado, provincia o comunidad, está el jardín?",
    ],
    [
        "Give the ISO 3166 code, as fine as you know it: ES, MX-SON, US-CA.",
        "Dé el código ISO 3166, tan preciso como lo sepa: ES, MX-SON, US-CA.",
    ],
);

pub(super) static REGION_FLAG: FactWords = FactWords::told(
    ["{name} in this region", "{name} en esta región"],
    [
        "Whether a rule or a danger of the region holds here, such as a ban on watering; no when nobody has set it.",
        "Si rige aquí una norma o un riesgo de la región, como una prohibición de riego; no, si nadie lo ha indicado.",
    ],
);
