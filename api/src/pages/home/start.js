// The page: asks the service, shows what it says, and keeps the question in the address.

import { show as showAnswer } from "./answer.js";
import { by } from "./element.js";
import { fromForm, offer, pass, take, toForm } from "./form.js";
import { read, written } from "./link.js";
import { request } from "./request.js";
import { advice, vocabulary } from "./service.js";
import { language, say, speak } from "./words.js";
import { clear, faultsOf, show as showWrong } from "./wrong.js";

let words = null;
/** Counts questions, so that a slow answer never overwrites a later one. */
let turn = 0;

function today() {
  const now = new Date();
  const two = (part) => String(part).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

const preferred = () => (navigator.languages.find((tag) => /^(en|es)\b/.test(tag)) ?? "en").slice(0, 2);

async function change(to) {
  speak(to);
  words = await vocabulary(to);
  offer(words, to);
}

/** Asks with what the form holds. */
async function ask({ keepFocus = false } = {}) {
  turn += 1;
  const mine = turn;
  const asked = fromForm();
  const fragment = written(asked, language());
  if (location.hash.slice(1) !== fragment) history.pushState(null, "", `#${fragment}`);
  clear();
  by("trouble").textContent = "";
  const { body, faults } = request(asked, language());
  if (faults.length) return fail(faults);
  by("answer").setAttribute("aria-busy", "true");
  by("answer-status").textContent = say("working");
  try {
    const { answer, problem } = await advice(body);
    if (mine !== turn) return;
    if (problem) return fail(faultsOf(problem));
    showAnswer(answer, words, asked.passed, answered);
    by("asking").open = false;
    if (!keepFocus) by("answer-heading").focus();
    by("answer").scrollIntoView({ block: "start" });
  } catch (error) {
    if (mine !== turn) return;
    by("trouble").textContent = say("no_service");
    console.warn(error);
  } finally {
    if (mine === turn) by("answer").removeAttribute("aria-busy");
  }
}

/** An answer to another question must not stand beside what is wrong with this one. */
function fail(faults) {
  by("answer").hidden = true;
  showWrong(faults);
}

function answered(question, choice) {
  if (choice.pointer === undefined) pass(question.fact);
  else take(choice.pointer, choice.value);
  return ask();
}

async function fromAddress() {
  const { asked, language: named, asks } = read(location.hash);
  const to = named === "es" || named === "en" ? named : preferred();
  if (!words || to !== language()) await change(to);
  toForm({ ...asked, date: asked.date || today() });
  if (asks) return ask({ keepFocus: true });
  clear();
  by("answer").hidden = true;
  by("asking").open = true;
}

const orTrouble = (work) => async (...given) => {
  try {
    await work(...given);
  } catch (error) {
    by("trouble").textContent = say("no_service");
    console.warn(error);
  }
};

by("form").addEventListener("submit", (event) => {
  event.preventDefault();
  return orTrouble(ask)();
});
for (const button of document.querySelectorAll("[data-language]")) {
  button.addEventListener("click", orTrouble(async () => {
    const isShown = !by("answer").hidden;
    await change(button.dataset.language);
    if (isShown) await ask({ keepFocus: true });
    else clear();
  }));
}
window.addEventListener("popstate", orTrouble(fromAddress));
speak(preferred());
orTrouble(fromAddress)();
