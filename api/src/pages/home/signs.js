// The signs, to be found by one's own words.

import { by, h } from "./element.js";
import { signsOf } from "./service.js";
import { say } from "./words.js";

let rows = [];
let plant = "";
/** The ids of the signs that the plant can have; null: any. */
let its = null;

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

/** Offers only what is looked for on a plant; all signs where none is chosen. */
export async function narrowTo(chosen) {
  if (chosen === plant) return;
  plant = chosen;
  its = null;
  try {
    const found = chosen ? new Set(await signsOf(chosen)) : null;
    // Another plant may have been chosen in the meantime.
    if (chosen === plant) its = found;
  } catch (error) {
    plant = "";
    console.warn(error);
  }
  show();
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

/** Shows those of the plant that hold every word that was typed, and those that are ticked. */
function show() {
  const sought = plain(by("find-sign").value).split(/\s+/).filter(Boolean);
  let [offered, shown] = [0, 0];
  for (const { box, row, text } of rows) {
    const isOffered = box.checked || !its || its.has(box.value);
    row.hidden = !isOffered || (!box.checked && !sought.every((word) => text.includes(word)));
    if (isOffered) offered += 1;
    if (!row.hidden) shown += 1;
  }
  by("signs-count").textContent = say("signs_count", shown, offered, chosenSigns().length);
}

by("find-sign").addEventListener("input", show);
by("signs").addEventListener("change", show);
// Enter in the search box looks; it does not send the form.
by("find-sign").addEventListener("keydown", (event) => {
  if (event.key === "Enter") event.preventDefault();
});
