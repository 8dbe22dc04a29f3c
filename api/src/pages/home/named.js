// What a pointer, a value, a fact is called.

import { day, known, number, say } from "./words.js";

/** The fact that a JSON pointer of the request gives. */
export function factAt(pointer, words) {
  const fact = words.facts.find((entry) => entry.pointer === pointer);
  return fact ?? { called: pointer.split("/").filter((part) => part && part !== "-").at(-1)?.replaceAll("_", " ") ?? pointer };
}

/** What was answered, in words. */
export function answerName({ pointer, value }, fact, words) {
  const sign = (id) => words.signs.find((entry) => entry.id === id)?.name ?? id;
  if (pointer === "/condition/not_seen/-") return say("not_there", sign(value));
  if (pointer === "/condition/signs/-") return say("there", sign(value.sign));
  return valueName(value, fact.unit, fact.choices);
}

/** A value with its unit, in words. */
export function valueName(value, unit = "", choices = []) {
  const named = known(`unit_${unit}`) ? say(`unit_${unit}`) : unit;
  if (value === null) return say("unknown");
  if (value === "absent") return say("absent");
  if (typeof value === "boolean") return say(value ? "yes" : "no");
  if (typeof value === "number") return `${number(value)} ${named}`.trim();
  if (typeof value === "object") return JSON.stringify(value);
  if (/^\d{4}-\d\d-\d\d$/.test(value)) return day(value);
  return choices.find((choice) => choice.id === value)?.name ?? value.replaceAll("-", " ");
}

/** A fact of an answer: what it is called, and its value in words. */
export function factName(fact, words, plant) {
  const trait = fact.name.match(/^plant\.trait\((.+)\)$/)?.[1];
  const values = trait
    ? words.plants.find((entry) => entry.id === plant)?.traits.find((entry) => entry.id === trait)?.values
    : words.facts.find((entry) => entry.name === fact.name)?.choices;
  return `${fact.words}: ${valueName(fact.value, fact.unit, values)}`;
}

/** What a fact is called that is named as rules write it: `plant.age`, `signs has webbing`, `wants(transplant)`. */
export function called(name, words) {
  const sign = words.signs.find((entry) => `signs has ${entry.id}` === name);
  if (sign) return sign.name;
  const [, base, argument] = name.match(/^([^(]+)\((.*)\)$/) ?? [null, name, ""];
  const fact = words.facts.find((entry) => entry.name === base);
  if (!fact) return name;
  const job = words.jobs.find((entry) => entry.id === argument);
  return fact.called.replace(/\{\w+\}/, job?.name ?? argument);
}
