// The questions that decide more: the first is asked, the others wait behind it.

import { h } from "./element.js";
import { say } from "./words.js";

/** The questions of an answer; `answered(question, choice)` is called with what was chosen. */
export function questions(answer, passed, answered) {
  const open = answer.questions.filter((question) => !passed.includes(question.fact));
  if (open.length === 0) return null;
  const [first, ...rest] = open;
  const title = (id) => [...answer.depends_on, ...answer.tasks, ...answer.held].find((entry) => entry.id === id)?.title;
  const one = (question, heading) => [
    h(heading, {}, question.text),
    h("p", {}, question.look),
    settles(question.settles.map(title).filter(Boolean)),
    h("div", { class: "answers", role: "group", "aria-label": question.text }, question.answers.map((choice) =>
      h("button", { type: "button", onclick: () => answered(question, choice) }, choice.text))),
  ];
  return h("section", { class: "question", "aria-labelledby": "question-heading" },
    h("p", { class: "about", id: "question-heading" }, say("decides")),
    one(first, "h3"),
    rest.length ? h("details", {}, h("summary", {}, say("more_questions", rest.length)),
      rest.map((question) => h("div", { class: "more-question" }, one(question, "h4")))) : null);
}

const settles = (titles) => (titles.length ? h("p", { class: "about" }, say("settles", titles.join("; "))) : null);
