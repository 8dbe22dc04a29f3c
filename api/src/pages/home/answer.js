// The answer, in three groups: this week, coming, leave alone; then what is worth knowing and what it stands on.

import { by, h } from "./element.js";
import { called, factName } from "./named.js";
import { questions } from "./question.js";
import { factList, part, sources, task } from "./task.js";
import { count, day, language, number, say } from "./words.js";

const SOON = ["now", "this-week"];

/** Shows an answer. */
export function show(answer, words, passed, answered) {
  const soon = answer.tasks.filter((entry) => SOON.includes(entry.priority.band));
  const later = answer.tasks.filter((entry) => !SOON.includes(entry.priority.band));
  by("answer-heading").textContent = asked(answer, words);
  by("answer-status").textContent = status(answer);
  by("answer-body").replaceChildren(...[
    questions(answer, passed, answered),
    group("this_week", soon.map((entry) => task(entry, answer, words))),
    group("coming", later.map((entry) => task(entry, answer, words))),
    group("leave_alone", leave(answer).map((entry) => held(entry, answer, words)), "held"),
    worth(answer, words),
    h("p", { class: "notice" }, answer.notice),
    ends(answer, words),
  ].filter(Boolean));
  by("answer").hidden = false;
}

/** The question in one line: plant, day, place. */
function asked(answer, words) {
  const plant = words.plants.find((entry) => entry.id === answer.asked.plant)?.name ?? answer.asked.plant;
  const climate = words.climates.find((entry) => entry.id === answer.climate.id)?.name ?? say("from_normals");
  return [plant, day(answer.asked.date), climate].filter(Boolean).join(", ");
}

function status(answer) {
  const left = answer.held.length ? `, ${count("left", answer.held.length)}` : "";
  if (answer.status === "advised") return `${count("due", answer.tasks.length)}${left}.`;
  const next = answer.next_opening ? ` ${say("next", answer.next_opening.title, day(answer.next_opening.date))}` : "";
  return `${say(answer.status === "nothing-due" ? "nothing_due" : "needs_facts")}${left}.${next}${answer.quiet ? ` ${answer.quiet}` : ""}`;
}

function group(heading, entries, kind = "") {
  return h("section", { class: "group", "aria-labelledby": `group-${heading}` },
    h("h3", { id: `group-${heading}` }, say(heading)),
    entries.length ? h("ol", { class: `tasks ${kind}`.trim() }, entries) : h("p", {}, say("none_week")));
}

/** What is to be left alone comes before what only waits. */
function leave(answer) {
  const avoid = (entry) => entry.kind === "avoid";
  return [...answer.held.filter(avoid), ...answer.held.filter((entry) => !avoid(entry))];
}

function held(entry, answer, words) {
  const others = entry.blocks.map((block) => block.because).filter((because, at, all) => because !== entry.because && all.indexOf(because) === at);
  return h("li", { "data-rule": entry.id },
    h("div", { class: "margin" }, h("h4", {}, entry.title),
      entry.look_again ? h("p", {}, say("look_again", day(entry.look_again))) : null,
      !entry.look_again && entry.changes_with.length ? h("p", {}, say("only_you", entry.changes_with.map((name) => called(name, words)).join(", "))) : null),
    h("div", { class: "work" },
      h("p", {}, entry.because),
      others.map((because) => h("p", {}, because)),
      part("mind", entry.cautions.map((caution) => caution.text)),
      entry.facts?.length || entry.sources?.length
        ? h("details", {}, h("summary", {}, say("why"), h("span", { class: "of" }, `: ${entry.title}`)),
          factList(entry.facts, words, answer.asked.plant), sources(entry.sources))
        : null));
}

function worth(answer, words) {
  if (answer.notes.length === 0 && answer.causes.length === 0) return null;
  return h("section", { class: "group", "aria-labelledby": "group-worth" },
    h("h3", { id: "group-worth" }, say("worth")),
    answer.causes.length
      ? h("p", {}, `${say("causes")}: ${answer.causes.map((cause) => `${cause.name} (${say(cause.likelihood)})`).join(", ")}.`)
      : null,
    h("ul", { class: "tasks held" }, answer.notes.map((note) => h("li", { "data-rule": note.id },
      h("div", { class: "margin" }, h("h4", {}, note.title)),
      h("div", { class: "work" }, h("p", {}, note.text),
        note.facts?.length || note.sources?.length
          ? h("details", {}, h("summary", {}, say("why"), h("span", { class: "of" }, `: ${note.title}`)),
            factList(note.facts, words, answer.asked.plant), sources(note.sources))
          : null)))));
}

/** The days that are known, where weather counts; why it does not stands among what is worth knowing. */
function weather(told) {
  if (!told?.used) return null;
  const spans = [["weather_observed", told.observed], ["weather_forecast", told.forecast]];
  const known = spans.filter(([, span]) => span).map(([word, span]) => say(word, day(span.to)));
  return h("p", {}, say("weather_used", day(told.issued_on ?? told.observed.to), known.join(", ")));
}

/** The year of a registered climate as a picture, fetched when it is opened. */
function year({ asked, climate }) {
  if (!climate.id) return null;
  const query = new URLSearchParams({ climate: climate.id, date: asked.date, language: language() });
  return h("details", { class: "year" }, h("summary", {}, say("year")),
    h("img", { src: `v1/season?${query}`, alt: say("year_alt"), loading: "lazy", width: 480, height: 1200 }));
}

/** What was assumed, what hangs on more, the season, how long it holds, and by which rules. */
function ends(answer, words) {
  const hangs = answer.depends_on.length + answer.depends_more;
  const next = answer.next_change ? say("then", day(answer.next_change.date), answer.next_change.because) : null;
  const { season } = answer;
  return h("div", { class: "ends" },
    h("p", { class: "holds" }, say("holds", day(answer.valid_until))),
    next ? h("p", {}, `${next}.`) : null,
    weather(answer.climate.weather),
    answer.assumptions.length
      ? h("div", {}, h("p", { class: "label" }, say("assumed")),
        h("ul", {}, answer.assumptions.map((fact) => h("li", {}, factName(fact, words, answer.asked.plant)))))
      : null,
    hangs
      ? h("details", {}, h("summary", {}, say("hangs", hangs)), h("ul", {}, answer.depends_on.map((entry) =>
        h("li", {}, `${entry.title}: ${entry.on.map((name) => called(name, words)).join(", ")}`))))
      : null,
    h("details", {}, h("summary", {}, say("season")),
      h("p", {}, say("season_now", number(season.tmin_c), number(season.tmax_c), number(season.daylength_h))),
      h("ul", {}, season.markers.filter((marker) => marker.nearest).map((marker) =>
        h("li", {}, `${marker.words}: ${day(marker.nearest)}`))),
      year(answer)),
    answer.rule_sets.map((set) => h("p", { class: "version" }, say("rule_set", set.name, set.version, set.sha256.slice(0, 12)))));
}
