// One task: in the margin what and when, beside it what to check first and the work.

import { h } from "./element.js";
import { called, factName } from "./named.js";
import { day, known, number, say } from "./words.js";

const unitName = (unit) => (known(`unit_${unit}`) ? say(`unit_${unit}`) : unit);
const capital = (text) => text.charAt(0).toUpperCase() + text.slice(1);

/** A task as an entry of its list. `answer` and `words` name what it speaks of. */
export function task(entry, answer, words) {
  const before = (entry.after ?? []).flatMap((id) => answer.tasks.filter((other) => other.id === id));
  return h("li", { "data-rule": entry.id },
    h("div", { class: "margin" },
      h("h4", {}, entry.title),
      h("p", { class: "when" }, when(entry)),
      before.map((other) => h("p", {}, capital(say("after", other.title)))),
      h("p", {}, standing(entry))),
    h("div", { class: "work" },
      // What is for safety on the day stands before the steps.
      part("call_now", entry.emergency ? [entry.emergency.call] : [], "first"),
      part("check_first", entry.check_first.map((check) => check.text), "first"),
      part("call", entry.professional ? [entry.professional] : [], "first"),
      part("how", entry.steps, "", entry.steps.length > 1 ? "ol" : "p"),
      part("amount", entry.amounts.map((amount) => measure(amount, words))),
      part("with", (entry.materials ?? []).map((material) => material.name + (material.analysis ? ` (${material.analysis})` : ""))),
      part("mind", entry.cautions.map((caution) => caution.text)),
      part("keep_apart", entry.keep_apart.map((apart) => say("apart", apart.days, apart.name))),
      part("expect", (entry.expect ?? []).map(expected)),
      reasons(entry, words, answer.asked.plant)));
}

/** A part under its heading; nothing when there is nothing to say. */
export function part(heading, texts, kind = "", list = "ul") {
  if (texts.length === 0) return null;
  const body = list === "p" || (list === "ul" && texts.length === 1)
    ? texts.map((text) => h("p", {}, text))
    : h(list, {}, texts.map((text) => h("li", {}, text)));
  return h("div", { class: `part ${kind}`.trim() }, h("h5", {}, say(heading)), body);
}

function when({ window, priority, repeat }) {
  const parts = [];
  if (priority.band === "now") parts.push(say("today"));
  if (window.all_year) parts.push(say("any_day"));
  else if (window.opens && window.closes) parts.push(say("from_to", day(window.opens, false), day(window.closes, false)));
  else if (window.opens) parts.push(say("from_on", day(window.opens, false)));
  else if (window.closes) parts.push(say("until", day(window.closes, false)));
  if (window.best && window.best !== window.opens) parts.push(say("best", day(window.best, false)));
  if (repeat?.min_days) {
    const days = repeat.max_days && repeat.max_days !== repeat.min_days ? `${repeat.min_days}–${repeat.max_days}` : repeat.min_days;
    parts.push(say("again_every", days));
  }
  if (repeat?.times) parts.push(say("again_most", repeat.times, repeat.within_days));
  return capital(parts.join(", "));
}

function standing({ strength, evidence }) {
  const parts = [strength && say(`strength_${strength}`), evidence && say(`evidence_${evidence}`)].filter(Boolean);
  return parts.join("; ") + (parts.length ? "." : "");
}

function measure(amount, words) {
  const range = ({ min, max, unit }) => `${min === max ? number(min) : `${number(min)}–${number(max)}`} ${unitName(unit)}`.trim();
  let text = amount.what;
  if (amount.value !== undefined) {
    const us = amount.us ? ` (${number(amount.us.value)} ${unitName(amount.us.unit)})` : "";
    text += `: ${number(amount.value)} ${unitName(amount.unit ?? "")}${us}`;
  } else if (amount.typical) {
    const us = amount.typical.us ? ` (${range(amount.typical.us)})` : "";
    text += `: ${say("usually", range(amount.typical))}${us}`;
  }
  if (amount.capped) text += `, ${say("capped")}`;
  if (amount.needs.length) {
    text += `. ${say("cannot_reckon", amount.needs.map((name) => called(name, words)).join(", "))}`;
  }
  return [text.trim(), ...amount.remarks].join(". ");
}

function expected({ name, from, until }) {
  if (!from) return `${name}: ${say("not_in_year")}`;
  const days = until && until !== from ? say("from_to", day(from, false), day(until, false)).toLowerCase() : say("about", day(from, false));
  return `${name}: ${days}`;
}

function reasons(entry, words, plant) {
  const facts = entry.reasons.flatMap((reason) => reason.facts ?? []);
  const seen = facts.filter((fact, at) => facts.findIndex((other) => other.name === fact.name) === at);
  return h("details", {},
    h("summary", {}, say("why"), h("span", { class: "of" }, `: ${entry.title}`)),
    entry.reasons.map((reason) => h("p", {}, reason.text)),
    entry.certainty ? h("p", {}, say(`certainty_${entry.certainty}`)) : null,
    factList(seen, words, plant),
    sources(entry.sources));
}

/** The facts that something rests on. */
export function factList(facts, words, plant) {
  if (!facts?.length) return null;
  return [h("p", {}, `${say("rests_on")}:`), h("ul", { class: "facts" }, facts.map((fact) =>
    h("li", {}, `${factName(fact, words, plant)} (${say(`origin_${fact.origin}`)})`)))];
}

/** Sources, each with how it was read. */
export function sources(list) {
  if (!list?.length) return null;
  const one = ({ title, publisher, year, how_read: how }) => [title, publisher, year].filter(Boolean).join(", ") + (how && how !== title ? ` (${how})` : "");
  return [h("p", {}, `${say("sources")}:`), h("ul", { class: "facts" }, list.map((source) => h("li", {}, one(source))))];
}
