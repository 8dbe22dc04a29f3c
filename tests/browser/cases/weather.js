import assert from "node:assert/strict";
import { answered, isQuiet, titles } from "../rose.js";

const asked = (date, language = "en") => `#lang=${language}&climate=mediterranean-coast&plant=rose&date=${date}`;

export default {
  "who names only the climate is told of the heat wave, and up to which day it is known": async (browser) => {
    const page = await browser.open(asked("2026-09-15"));
    await answered(page);
    assert.ok((await titles(page, "This week")).some((title) => /shade/i.test(title)), "a shade is due");
    const ends = await page.locator(".ends").innerText();
    assert.match(ends, /Weather of 15 September 2026: observed to 14 September 2026, forecast to 17 September 2026\./);
    isQuiet(page);
  },

  "weather that is over 36 hours old is said not to count, in both languages": async (browser) => {
    for (const [language, title, words] of [
      ["en", "The weather at hand is not used", /issued on 15 September 2026, more than 36 hours before/],
      ["es", "El tiempo disponible no se usa", /emitió el 15 de septiembre de 2026, más de 36 horas antes/],
    ]) {
      const page = await browser.open(asked("2026-09-17", language));
      await answered(page);
      const note = page.locator("[data-rule='climate.weather-not-used']");
      assert.equal(await note.getByRole("heading", { level: 4 }).textContent(), title);
      assert.match(await note.innerText(), words);
      assert.doesNotMatch(await page.locator(".ends").innerText(), /Weather of|Tiempo del/);
      isQuiet(page);
    }
  },
};
