// The rose of the tests: in the hot dry valley, in mid-September, with spent blooms.

import assert from "node:assert/strict";

/** Fills the form as a reader would, and asks; `age` in years, or nothing. */
export async function askForRose(page, age) {
  await page.getByRole("combobox", { name: "Climate" }).selectOption({ label: "Hot dry valley" });
  await page.getByRole("combobox", { name: "Plant", exact: true }).selectOption({ label: "Rose" });
  await page.getByLabel("Day", { exact: true }).fill("2026-09-15");
  if (age !== undefined) await page.getByLabel("Years since planting").fill(String(age));
  await page.getByLabel("Find a sign").fill("dead flowers");
  await page.getByRole("checkbox", { name: "Spent blooms" }).check();
  await page.getByRole("button", { name: "What should be done?" }).click();
  await answered(page);
}

/** Waits until an answer is shown. */
export async function answered(page) {
  await page.locator("#answer:not([aria-busy]) .notice").waitFor();
}

/** The titles of a group. */
export const titles = (page, group) => page.getByRole("region", { name: group }).getByRole("heading", { level: 4 }).allTextContents();

/** Fails when the page reached outside or its console said anything. */
export function isQuiet(page) {
  assert.deepEqual(page.outside, []);
  assert.deepEqual(page.said, []);
}

/** The address behind `#` of the rose of four years. */
export const ROSE = (language = "en") =>
  `#lang=${language}&climate=hot-dry-valley&plant=rose&date=2026-09-15&age=4&trait.flowering=repeat&wishes=transplant&signs=spent-blooms,scorched-petals`;
