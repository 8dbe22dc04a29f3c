// The form: choices from the service's words, and what is asked in and out of it.

import { by, h } from "./element.js";
import { blank } from "./link.js";
import { table } from "./normals.js";
import { chosenSigns, choose, narrowTo, offerSigns } from "./signs.js";
import { answerName, factAt } from "./named.js";
import { say } from "./words.js";

/** Works of choice, which nobody is told of unasked. */
const WISHES = ["transplant", "divide", "propagate", "plant", "store"];
const PLAIN = ["climate", "latitude", "elevation", "tmin", "tmax", "rain", "plant", "date", "age", "planting"];
const form = by("form");

let words = null;
let told = [];
let passed = [];

/** Offers the choices in the language of `vocabulary`; what is chosen stays. */
export function offer(vocabulary, language) {
  const asked = words ? fromForm() : null;
  words = vocabulary;
  for (const element of document.querySelectorAll("[data-say]")) element.textContent = say(element.dataset.say);
  for (const button of document.querySelectorAll("[data-language]")) {
    button.setAttribute("aria-pressed", String(button.dataset.language === language));
  }
  document.title = say("page_title");
  document.documentElement.lang = language;
  options(by("climate"), say("choose"), words.climates);
  options(by("plant"), say("choose"), words.plants);
  const planting = words.facts.find((fact) => fact.name === "site.planting");
  options(by("planting"), usual(planting?.choices, planting?.assumed), planting?.choices ?? []);
  offerClimates();
  by("wishes").replaceChildren(by("wishes-label"), ...WISHES.flatMap((id) => words.jobs.filter((job) => job.id === id)).map((job) =>
    h("label", {}, h("input", { type: "checkbox", name: "wish", value: job.id }), h("span", {}, job.name))));
  offerSigns(words.signs);
  if (asked) toForm(asked);
}

const usual = (choices = [], id) => {
  const name = choices.find((choice) => choice.id === id)?.name;
  return name ? say("then_taken", name) : say("not_said");
};

function options(select, first, list) {
  select.replaceChildren(h("option", { value: "" }, first), ...list.map((entry) => h("option", { value: entry.id }, entry.name)));
}

/** Every climate with how to tell that it is one's own; the words that all begin with stand once, above. */
function offerClimates() {
  const tells = words.climates.map((climate) => climate.tell);
  const head = tells[0]?.slice(0, tells[0].indexOf(": ") + 2) ?? "";
  const shared = head && tells.every((tell) => tell.startsWith(head)) ? head.length : 0;
  const rest = (tell) => tell.charAt(shared).toUpperCase() + tell.slice(shared + 1);
  by("climates").replaceChildren(...words.climates.flatMap((climate) => [
    h("dt", {}, h("button", { type: "button", onclick: () => {
      by("climate").value = climate.id;
      tell();
      by("climate").focus();
    } }, climate.name)),
    h("dd", {}, rest(climate.tell)),
  ]));
}

function tell() {
  by("climate-tell").textContent = words.climates.find((climate) => climate.id === by("climate").value)?.tell ?? "";
}

/** What only this plant has: its traits and its signs. */
function showPlant(chosen) {
  const plant = words.plants.find((entry) => entry.id === by("plant").value);
  narrowTo(plant?.id ?? "");
  by("traits").replaceChildren(...(plant?.traits ?? []).map((trait) => {
    const id = `trait-${trait.id}`;
    const select = h("select", { id, "data-trait": trait.id });
    options(select, usual(trait.values, trait.usual), trait.values);
    select.value = trait.values.some((value) => value.id === chosen[trait.id]) ? chosen[trait.id] : "";
    return h("div", { class: "field" }, h("label", { for: id }, trait.question), select);
  }));
}

function showWhere() {
  const own = form.elements.where.value === "own";
  by("where-own").hidden = !own;
  by("where-known").hidden = own;
}

function showTold() {
  const entries = told.map((entry) => {
    const fact = factAt(entry.pointer, words);
    const text = `${fact.called}: ${answerName(entry, fact, words)}`;
    const back = () => {
      told = told.filter((other) => other !== entry);
      showTold();
      by("told-heading")?.focus();
    };
    return h("li", {}, h("span", {}, text),
      h("button", { type: "button", "aria-label": say("take_back_this", text), onclick: back }, say("take_back")));
  });
  by("told").replaceChildren(...(entries.length
    ? [h("p", { class: "label", id: "told-heading", tabindex: "-1" }, say("told")), h("ul", { class: "told" }, entries)] : []));
}

/** What the form asks. */
export function fromForm() {
  const asked = blank();
  asked.where = form.elements.where.value;
  asked.units = form.elements.units.value;
  for (const name of PLAIN) asked[name] = by(name).value.trim();
  for (const select of by("traits").querySelectorAll("select")) asked.traits[select.dataset.trait] = select.value;
  asked.wishes = [...form.querySelectorAll("[name=wish]:checked")].map((box) => box.value);
  asked.signs = chosenSigns();
  asked.none = by("none-seen").checked;
  asked.looked = by("looked").checked;
  asked.told = told;
  asked.passed = passed;
  return asked;
}

/** Puts what is asked into the form. */
export function toForm(asked) {
  form.elements.where.value = asked.where;
  form.elements.units.value = asked.units;
  for (const name of PLAIN) by(name).value = asked[name];
  showPlant(asked.traits);
  for (const box of form.querySelectorAll("[name=wish]")) box.checked = asked.wishes.includes(box.value);
  choose(asked.signs);
  by("none-seen").checked = asked.none && asked.signs.length === 0;
  by("looked").checked = asked.looked;
  told = asked.told;
  passed = asked.passed;
  showWhere();
  tell();
  showTold();
}

/** Takes an answer to a question: into its field where there is one, else among what was told besides. */
export function take(pointer, value) {
  const asked = fromForm();
  const trait = pointer.match(/^\/plant\/traits\/(.+)$/)?.[1];
  if (pointer === "/plant/age_years") asked.age = String(value);
  else if (pointer === "/site/planting") asked.planting = value;
  else if (trait) asked.traits[trait] = value;
  else if (pointer === "/condition/signs/-" && Object.keys(value).length === 1) asked.signs.push(value.sign);
  else {
    const isList = pointer.endsWith("/-");
    asked.told = [...told.filter((entry) => isList || entry.pointer !== pointer), { pointer, value }];
  }
  toForm(asked);
}

/** Leaves a question aside that can't be answered. */
export function pass(fact) {
  passed = [...passed, fact];
}

form.addEventListener("change", (event) => {
  if (event.target.name === "where") showWhere();
  if (event.target.id === "climate") tell();
  if (event.target.id === "plant") {
    showPlant({});
    told = [];
    passed = [];
    showTold();
  }
  if (event.target.id === "none-seen" && event.target.checked) choose([]);
  if (event.target.name === "sign" && event.target.checked) by("none-seen").checked = false;
});

for (const id of ["tmin", "tmax", "rain"]) {
  by(id).addEventListener("paste", (event) => {
    const rows = table(event.clipboardData?.getData("text/plain") ?? "");
    if (!rows) return;
    event.preventDefault();
    for (const name of ["tmin", "tmax", "rain"]) by(name).value = rows[name];
  });
}
