//! The words of the works that were done.

use super::words::FactWords;

pub(super) static DONE: FactWords = FactWords::told(
    ["done in the last {days} days: {name}", "hecho en los últimos {days} días: {name}"],
    [
        "Whether a work was done, or a material or a class of materials was used, within so many days.",
        "Si se hizo una labor, o se aplicó un producto o una clase de productos, en tantos días.",
    ],
)
.asked(
    [
        "Was this done or used in the last {days} days: {name}?",
        "¿Se hizo o se aplicó esto en los últimos {days} días: {name}?",
    ],
    [
        "Look in your garden diary or at the date on the receipt, or ask whoever works there.",
        "Mire su cuaderno de jardín o la fecha del recibo, o pregunte a quien lo atiende.",
    ],
);

pub(super) static COUNT: FactWords = FactWords::told(
    ["times in the last {days} days: {name}", "veces en los últimos {days} días: {name}"],
    [
        "How many times a work was done, or a material used, within so many days.",
        "Cuántas veces se hizo una labor, o se aplicó un producto, en tantos días.",
    ],
)
.asked(
    [
        "How many times was this done or used in the last {days} days: {name}?",
        "¿Cuántas veces se hizo o se aplicó esto en los últimos {days} días: {name}?",
    ],
    [
        "Count what others did too: a gardener, a contractor, a neighbour.",
        "Cuente también lo que hicieron otros: un jardinero, una empresa, un vecino.",
    ],
);

pub(super) static LAST: FactWords = FactWords::told(
    ["last time: {name}", "última vez: {name}"],
    [
        "The day on which a work was last done, or a material last used; absent when never.",
        "El día en que se hizo una labor, o se aplicó un producto, por última vez; no existe si nunca.",
    ],
)
.asked(
    ["When was this last done or used: {name}?", "¿Cuándo se hizo o se aplicó esto por última vez: {name}?"],
    [
        "Right to a few days will do; say so if it never was.",
        "Basta con acertar en unos días; dígalo si nunca se hizo.",
    ],
);

pub(super) static HARVEST_WAIT: FactWords = FactWords::told(
    ["end of the wait before harvest", "fin del plazo de seguridad antes de cosechar"],
    [
        "The day from which a treated crop may be picked: the day of the treatment plus the days to harvest on its label.",
        "El día desde el que se puede cosechar lo tratado: el día del tratamiento más los días hasta la cosecha que dice su etiqueta.",
    ],
)
.asked(
    [
        "What does the label of the last treatment say about the days to wait before harvest?",
        "¿Qué plazo hasta la cosecha dice la etiqueta del último tratamiento?",
    ],
    [
        "Look on the label for days to harvest; without a label do not pick, and ask the maker.",
        "Busque en la etiqueta el plazo de seguridad o los días a cosecha; sin etiqueta no coseche y pregunte al fabricante.",
    ],
);
