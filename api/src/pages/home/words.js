// What the page itself says. What the service says comes in the language that is asked for.

const WORDS = {
  page_title: ["Lammas: what the plant needs now", "Lammas: qué necesita ahora la planta"],
  title: ["What the plant needs now", "Qué necesita ahora la planta"],
  lead: [
    "Say where it grows, what it is and what you see. The season there is worked out, not looked up by month. Nothing is kept: what you enter stands only in the address of this page, so a link to it gives the same again.",
    "Diga dónde crece, qué planta es y qué ve. La temporada del lugar se calcula, no se mira por meses. No se guarda nada: lo que escribe está solo en la dirección de esta página, y un enlace a ella da lo mismo.",
  ],
  the_question: ["Your plant", "Su planta"],
  where: ["Where it grows", "Dónde crece"],
  where_known: ["A climate from the list", "Un clima de la lista"],
  where_own: ["My monthly averages", "Mis medias mensuales"],
  climate: ["Climate", "Clima"],
  choose: ["Choose…", "Elija…"],
  which_is_mine: ["Which one is mine?", "¿Cuál es el mío?"],
  latitude: ["Latitude", "Latitud"],
  latitude_hint: ["Degrees; south of the equator with a minus.", "Grados; al sur del ecuador, con signo menos."],
  elevation: ["Metres above the sea", "Metros sobre el mar"],
  units: ["In which units?", "¿En qué unidades?"],
  normals_hint: [
    "Twelve numbers each, January to December, with spaces, tabs, commas or lines between them. A whole table can be pasted into any of the three.",
    "Doce números en cada una, de enero a diciembre, separados por espacios, tabuladores, comas o líneas. En cualquiera de las tres se puede pegar una tabla entera.",
  ],
  tmin: ["Mean daily lowest temperature", "Media de las mínimas diarias"],
  tmax: ["Mean daily highest temperature", "Media de las máximas diarias"],
  rain: ["Rain of the month (if known)", "Lluvia del mes (si se sabe)"],
  what: ["What and when", "Qué y cuándo"],
  plant: ["Plant", "Planta"],
  date: ["Day", "Día"],
  age: ["Years since planting", "Años desde que se plantó"],
  planting: ["Planted in", "Plantada en"],
  not_said: ["Not said", "Sin decir"],
  then_taken: ["Not said, taken as: {0}", "Sin decir, se toma: {0}"],
  wishes: ["Do you mean to…", "¿Piensa usted…"],
  seen: ["What you see", "Qué ve"],
  find_sign: ["Find a sign", "Buscar una señal"],
  signs_hint: [
    "In your own words: “yellow”, “holes”, “greenfly”. Once one is ticked, what is plain to see and not ticked counts as not there.",
    "Con sus palabras: «amarillas», «agujeros», «pulgón». Si marca alguna, lo que se ve a simple vista y no está marcado cuenta como que no está.",
  ],
  signs_count: ["{0} of {1} shown, {2} ticked", "Se muestran {0} de {1}, {2} marcadas"],
  none_seen: ["I looked, and see none of these", "He mirado y no veo ninguna"],
  looked: ["I also looked under leaves, into buds and at the roots", "También miré bajo las hojas, en los capullos y en las raíces"],
  ask: ["What should be done?", "¿Qué hay que hacer?"],
  told: ["What you told besides", "Lo que ha dicho además"],
  take_back: ["Take back", "Retirar"],
  take_back_this: ["Take back: {0}", "Retirar: {0}"],
  yes: ["yes", "sí"],
  no: ["no", "no"],
  absent: ["does not come", "no llega"],
  unknown: ["not known", "no se sabe"],
  not_there: ["not there: {0}", "no está: {0}"],
  there: ["seen: {0}", "se ve: {0}"],
  foot: [
    "For home and landscape gardens. The advice is drafted and not yet reviewed by a horticulturist. The label of a product and the rules of your place come first.",
    "Para jardines de casa y paisajismo. El consejo está en borrador y aún no lo ha revisado un horticultor. Van primero la etiqueta del producto y las normas de su lugar.",
  ],
  docs: ["The calls behind this page (in English)", "Las llamadas detrás de esta página (en inglés)"],
  working: ["Working it out…", "Calculando…"],
  no_service: ["The service did not answer. Try again in a moment.", "El servicio no respondió. Pruebe de nuevo en un momento."],
  wrong_one: ["One entry needs another look:", "Hay que revisar un dato:"],
  wrong_many: ["{0} entries need another look:", "Hay que revisar {0} datos:"],
  need_choice: ["choose one", "elija una opción"],
  need_number: ["expected a number, found “{0}”", "se espera un número y se encontró «{0}»"],
  need_some_number: ["expected a number", "se espera un número"],
  need_twelve: ["expected 12 numbers, January to December, found {0}", "se esperan 12 números, de enero a diciembre, y hay {0}"],
  need_day: ["expected a day", "se espera un día"],
  due_one: ["One thing to do", "Una cosa por hacer"],
  due_many: ["{0} things to do", "{0} cosas por hacer"],
  left_one: ["one to leave alone", "una que dejar estar"],
  left_many: ["{0} to leave alone", "{0} que dejar estar"],
  nothing_due: ["Nothing is due", "No toca nada"],
  needs_facts: ["More must be known before anything can be advised", "Hay que saber más antes de aconsejar"],
  next: ["Next: {0}, from {1}.", "Lo próximo: {0}, desde el {1}."],
  this_week: ["This week", "Esta semana"],
  coming: ["Coming", "Más adelante"],
  leave_alone: ["Leave alone", "Déjelo estar"],
  none_week: ["Nothing.", "Nada."],
  today: ["today or tomorrow", "hoy o mañana"],
  any_day: ["Any day", "Cualquier día"],
  from_to: ["{0} to {1}", "Del {0} al {1}"],
  from_on: ["from {0}", "desde el {0}"],
  until: ["until {0}", "hasta el {0}"],
  best: ["best {0}", "mejor el {0}"],
  again_every: ["again every {0} days", "de nuevo cada {0} días"],
  again_most: ["at most {0} times in {1} days", "como mucho {0} veces en {1} días"],
  after: ["after “{0}”", "después de «{0}»"],
  apart: ["{0} days from {1}", "{0} días de {1}"],
  check_first: ["Check first", "Antes, mire"],
  call_now: ["Call now", "Llame ya"],
  call: ["Leave it to a professional", "Déjelo a un profesional"],
  how: ["How", "Cómo"],
  amount: ["How much", "Cuánto"],
  with: ["With", "Con"],
  mind: ["Mind", "Cuidado"],
  keep_apart: ["Keep apart", "Separe"],
  expect: ["What to expect", "Qué esperar"],
  about: ["about {0}", "hacia el {0}"],
  not_in_year: ["not within a year", "no en un año"],
  usually: ["usually {0}", "lo usual: {0}"],
  capped: ["the most it bears", "lo máximo que admite"],
  cannot_reckon: ["To reckon it, also needed: {0}", "Para calcularlo falta: {0}"],
  why: ["Why, and how we know", "Por qué, y cómo se sabe"],
  rests_on: ["It rests on", "Se apoya en"],
  sources: ["Sources", "Fuentes"],
  look_again: ["Look again on {0}.", "Vuelva a mirar el {0}."],
  only_you: ["Only you can change it: {0}.", "Solo usted puede cambiarlo: {0}."],
  decides: ["One answer decides more", "Una respuesta decide más"],
  settles: ["It settles: {0}", "Decide: {0}"],
  more_questions: ["Other questions ({0})", "Otras preguntas ({0})"],
  hangs: ["Not decided, since something is not known ({0})", "Sin decidir, porque falta saber algo ({0})"],
  worth: ["Worth knowing", "Conviene saber"],
  causes: ["What the signs may mean", "Qué pueden indicar las señales"],
  assumed: ["What was assumed", "Qué se ha supuesto"],
  holds: ["This holds until {0}, as long as nothing else changes.", "Vale hasta el {0}, mientras no cambie nada más."],
  weather_used: ["Weather of {0}: {1}.", "Tiempo del {0}: {1}."],
  weather_observed: ["observed to {0}", "observado hasta el {0}"],
  weather_forecast: ["forecast to {0}", "previsto hasta el {0}"],
  then: ["From {0}: {1}", "Desde el {0}: {1}"],
  season: ["The season there", "La temporada allí"],
  year: ["The whole year as a picture", "Todo el año en una imagen"],
  year_alt: ["Usual temperatures, rain, evapotranspiration and daylight through the year, with its dates by name.", "Temperaturas, lluvia, evapotranspiración y luz habituales a lo largo del año, con sus fechas por nombre."],
  season_now: ["Usual days now: {0} to {1} °C, {2} hours of daylight.", "Días usuales ahora: de {0} a {1} °C, {2} horas de luz."],
  rule_set: ["Rule set {0} {1}, {2}", "Reglas {0} {1}, {2}"],
  from_normals: ["your monthly averages", "sus medias mensuales"],
  strength_do: ["Do it", "Hágalo"],
  strength_consider: ["Worth considering", "Vale la pena pensarlo"],
  strength_avoid: ["Leave it alone", "Déjelo estar"],
  "evidence_consensus": ["the handbooks agree", "los manuales coinciden"],
  "evidence_trial": ["a trial showed it", "un ensayo lo mostró"],
  "evidence_common-practice": ["common practice of the trade", "práctica común del oficio"],
  "evidence_doubtful": ["told, not shown", "se dice, no se ha mostrado"],
  certainty_high: ["It rests on what was given or measured.", "Se apoya en lo dicho o medido."],
  certainty_medium: ["Fairly certain: part of it is worked out from usual weather.", "Bastante seguro: una parte se calcula con el tiempo usual."],
  certainty_low: ["Less certain: something was assumed, or its time is just beginning or ending.", "Menos seguro: algo se ha supuesto, o su época apenas empieza o termina."],
  origin_given: ["you said so", "lo dijo usted"],
  origin_measured: ["measured", "medido"],
  origin_forecast: ["forecast", "previsto"],
  origin_computed: ["worked out", "calculado"],
  origin_estimated: ["estimated from the place", "estimado por el lugar"],
  origin_assumed: ["assumed", "supuesto"],
  likely: ["likely", "probable"],
  possible: ["possible", "posible"],
  unlikely: ["unlikely", "poco probable"],
  unit_day: ["days", "días"],
  unit_days: ["days", "días"],
  unit_year: ["years", "años"],
};

let place = 0;

/** Speaks `en` or `es` from here on. */
export function speak(language) {
  place = language === "es" ? 1 : 0;
}

/** The language that is spoken. */
export const language = () => (place === 1 ? "es" : "en");

/** Words by their key, with `{0}`, `{1}`… filled in. */
export function say(key, ...parts) {
  return WORDS[key][place].replace(/\{(\d)\}/g, (_, at) => parts[at]);
}

/** Words for a count of one, or of many. */
export const count = (key, number) => (number === 1 ? say(`${key}_one`) : say(`${key}_many`, number));

/** Whether there are words for a key. */
export const known = (key) => key in WORDS;

/** A number as it is written in the language. */
export const number = (value) => new Intl.NumberFormat(language(), { maximumFractionDigits: 2 }).format(value);

/** A date of the form `2026-09-15` in words; without its year on demand. */
export function day(date, withYear = true) {
  const parts = { day: "numeric", month: "long", timeZone: "UTC", ...(withYear ? { year: "numeric" } : {}) };
  return new Intl.DateTimeFormat(language() === "es" ? "es" : "en-GB", parts).format(new Date(`${date}T00:00Z`));
}

/** The name of a month, 0 to 11. */
export function month(at) {
  const name = new Intl.DateTimeFormat(language(), { month: "long", timeZone: "UTC" }).format(Date.UTC(2026, at, 1));
  return name.charAt(0).toUpperCase() + name.slice(1);
}
