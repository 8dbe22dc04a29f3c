// The signs, to be found by one's own words.

import { by, h } from "./element.js";
import { say } from "./words.js";

let rows = [];

const plain = (text) => text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();

/** Offers the signs; what is ticked stays ticked. */
export function offerSigns(signs) {
  const ticked = chosenSigns();
  rows = [...signs].sort((a, b) => a.name.localeCompare(b.name)).map((sign) => {
    const box = h("input", { type: "checkbox", name: "sign", value: sign.id, "aria-describedby": `look-${sign.id}` });
    const row = h("li", {}, h("label", {}, box, h("span", {}, sign.name)), h("small", { id: `look-${sign.id}` }, sign.look));
    return { box, row, text: plain([sign.name, sign.look, ...sign.words].join(" ")) };
  });
  by("signs").replaceChildren(...rows.map(({ row }) => row));
  choose(ticked);
}

/** The ids of the signs that are ticked. */
export const chosenSigns = () => rows.filter(({ box }) => box.checked).map(({ box }) => box.value);

/** Ticks these and no others. */
export function choose(ids) {
  for (const { box } of rows) box.checked = ids.includes(box.value);
  // The ticked ones stand first, so that they are seen without looking for them.
  by("signs").prepend(...rows.filter(({ box }) => box.checked).map(({ row }) => row));
  show();
}

/** Shows those that hold every word that was typed, and those that are ticked. */
function show() {
  const sought = plain(by("find-sign").value).split(/\s+/).filter(Boolean);
  let shown = 0;
  for (const { box, row, text } of rows) {
    row.hidden = !box.checked && !sought.every((word) => text.includes(word));
    if (!row.hidden) shown += 1;
  }
  by("signs-count").textContent = say("signs_count", shown, rows.length, chosenSigns().length);
}

by("find-sign").addEventListener("input", show);
by("signs").addEventListener("change", show);
// Enter in the search box looks; it does not send the form.
by("find-sign").addEventListener("keydown", (event) => {
  if (event.key === "Enter") event.preventDefault();
});
