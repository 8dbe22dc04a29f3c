// What is wrong, at the field where it is, and once more above the form.

import { by, h } from "./element.js";
import { count, month } from "./words.js";

/** The field of the page that fills a place of the request; null when none does. */
function fieldOf(pointer) {
  const [, first, second, third] = pointer.split("/");
  const fields = {
    date: "date",
    wishes: "wishes",
    "climate/id": "climate",
    "climate/latitude": "latitude",
    "climate/elevation_m": "elevation",
    "climate/normals": { tmin_c: "tmin", tmax_c: "tmax", rain_mm: "rain" }[third],
    "plant/type": "plant",
    "plant/traits": `trait-${third}`,
    "plant/age_years": "age",
    "site/planting": "planting",
    "condition/signs": "find-sign",
  };
  const field = fields[`${first}/${second}`] ?? fields[first] ?? null;
  return field && by(field) ? field : null;
}

/** The faults of a problem, each with its field. The service says them in English. */
export function faultsOf(problem) {
  const errors = problem.errors ?? [];
  if (errors.length === 0) return [{ field: null, detail: problem.detail || problem.title, lang: "en" }];
  return errors.map(({ pointer, detail }) => {
    const at = pointer.match(/^\/climate\/normals\/\w+\/(\d+)$/)?.[1];
    return { field: fieldOf(pointer), detail, lang: "en", before: at ? `${month(Number(at))}: ` : "" };
  });
}

/** Takes away what was shown. */
export function clear() {
  by("wrong").hidden = true;
  by("wrong").replaceChildren();
  for (const note of document.querySelectorAll(".error")) note.remove();
  for (const field of document.querySelectorAll("[aria-invalid]")) {
    field.removeAttribute("aria-invalid");
    const rest = (field.getAttribute("aria-describedby") ?? "").split(" ").filter((id) => !id.endsWith("-error"));
    if (rest.join("")) field.setAttribute("aria-describedby", rest.join(" "));
    else field.removeAttribute("aria-describedby");
  }
}

/** Shows faults, and brings the first to the eye. */
export function show(faults) {
  clear();
  by("asking").open = true;
  const text = ({ before, detail, lang }) => [before ?? "", h("span", { lang: lang ?? null }, detail)];
  for (const fault of faults.filter(({ field }) => field)) {
    const field = by(fault.field);
    const id = `${fault.field}-error`;
    const isSecond = by(id);
    if (isSecond) {
      isSecond.append("; ", ...text(fault));
      continue;
    }
    field.closest(".field, .choice").append(h("p", { class: "error", id }, text(fault)));
    field.setAttribute("aria-invalid", "true");
    field.setAttribute("aria-describedby", `${field.getAttribute("aria-describedby") ?? ""} ${id}`.trim());
  }
  const go = (field) => (event) => {
    event.preventDefault();
    by(field).focus();
  };
  const name = (field) => document.querySelector(`label[for="${field}"]`)?.textContent ?? by(`${field}-label`)?.textContent ?? field;
  by("wrong").replaceChildren(h("p", {}, count("wrong", faults.length)), h("ul", {}, faults.map((fault) => h("li", {},
    fault.field ? h("a", { href: `#${fault.field}`, onclick: go(fault.field) }, name(fault.field)) : null,
    fault.field ? ": " : null, text(fault)))));
  by("wrong").hidden = false;
  by("wrong").focus();
}
