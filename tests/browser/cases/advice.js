import assert from "node:assert/strict";
import { answered, askForRose, isQuiet, ROSE, titles } from "../rose.js";

export default {
  "a rose in the hot valley in September is cut this week and left where it stands": async (browser) => {
    const page = await browser.open();
    await askForRose(page, 4);
    assert.ok((await titles(page, "This week")).includes("Cut back for the late flush"));
    assert.ok((await titles(page, "Leave alone")).includes("No moving in warm weather"));
    assert.equal((await titles(page, "Coming")).includes("Cut back for the late flush"), false);
    isQuiet(page);
  },

  "what to check first stands before the steps": async (browser) => {
    const page = await browser.open();
    await askForRose(page, 4);
    const cut = page.locator("[data-rule='rose.renewal-cut'] .work");
    const parts = await cut.locator("h5").allTextContents();
    assert.deepEqual(parts.slice(0, 2), ["Check first", "How"]);
    assert.ok(parts.includes("Mind"));
    assert.match(await cut.innerText(), /no day above 36 °C/);
    await cut.getByText("Why, and how we know").click();
    assert.match(await cut.innerText(), /It rests on[\s\S]*Sources/);
  },

  "an answer to the question is put to use": async (browser) => {
    const page = await browser.open();
    await askForRose(page);
    assert.equal((await titles(page, "This week")).includes("Cut back for the late flush"), false);
    const question = page.getByRole("region", { name: "One answer decides more" });
    assert.equal(await question.getByRole("heading").first().textContent(), "How many years has it stood there?");
    await question.getByRole("button", { name: /^≥/ }).click();
    await page.locator("[data-rule='rose.renewal-cut'] .when").waitFor();
    assert.ok((await titles(page, "This week")).includes("Cut back for the late flush"));
    assert.notEqual(await question.getByRole("heading").first().textContent(), "How many years has it stood there?");
    const [, age] = page.url().match(/[#&]age=([\d.]+)(?:&|$)/) ?? [];
    assert.ok(Number(age) >= 1, `the age ${age} stands in the address`);
    isQuiet(page);
  },

  "an answer without a field of its own can be taken back": async (browser) => {
    const page = await browser.open(ROSE());
    await answered(page);
    await page.getByText(/^Other questions/).click();
    await page.getByRole("group", { name: "Is your water hard, does it leave limescale?" }).getByRole("button", { name: "yes" }).click();
    await page.waitForURL(/told=/);
    await answered(page);
    await page.locator("#asking > summary").click();
    const told = page.locator("#told li");
    assert.match(await told.innerText(), /: yes/);
    await told.getByRole("button").click();
    assert.equal(await told.count(), 0);
    await page.getByRole("button", { name: "What should be done?" }).click();
    await page.waitForFunction(() => !location.hash.includes("told="));
    isQuiet(page);
  },

  "a question that can't be answered makes room for the next": async (browser) => {
    const page = await browser.open(ROSE());
    await answered(page);
    const heading = page.locator(".question h3");
    const first = await heading.textContent();
    await page.locator(".question > .answers").getByRole("button", { name: "I can't tell" }).click();
    await page.waitForFunction((text) => document.querySelector(".question h3")?.textContent !== text, first);
    assert.match(page.url(), /passed=/);
  },

  "the address gives the same again": async (browser) => {
    const page = await browser.open();
    await askForRose(page, 4);
    const before = await page.locator("#answer").innerText();
    await page.reload();
    await answered(page);
    assert.equal(await page.locator("#answer").innerText(), before);
    const other = await browser.open(page.url().slice(browser.url.length));
    await answered(other);
    assert.equal(await other.locator("#answer").innerText(), before);
    assert.equal(await other.getByLabel("Years since planting").inputValue(), "4");
    assert.equal(await other.locator("#signs input:checked").count(), 1);
  },

  "back leads to the question before": async (browser) => {
    const page = await browser.open();
    await askForRose(page);
    await page.locator(".question > .answers button").nth(2).click();
    await page.locator("[data-rule='rose.renewal-cut'] .when").waitFor();
    await page.goBack();
    await page.locator("[data-rule='rose.renewal-cut']").waitFor({ state: "detached" });
    assert.equal(await page.getByLabel("Years since planting").inputValue(), "");
  },

  "Spanish is spoken from the form to the sources": async (browser) => {
    const page = await browser.open(ROSE());
    await answered(page);
    await page.getByRole("button", { name: "Español" }).click();
    await page.getByRole("heading", { name: "Esta semana" }).waitFor();
    assert.equal(await page.locator("html").getAttribute("lang"), "es");
    assert.match(await page.locator("#answer-heading").textContent(), /Rosal, 15 de septiembre de 2026, Valle/);
    const text = await page.locator("main").innerText();
    for (const english of ["This week", "Check first", "Look again", "years", "worked out"]) {
      assert.equal(text.includes(english), false, english);
    }
    isQuiet(page);
  },

  "the language of the reader's browser is spoken first": async (browser) => {
    const page = await browser.open("", { language: "es-MX" });
    await page.getByRole("combobox", { name: "Clima" }).waitFor();
  },

  "the day is today until another is chosen": async (browser) => {
    const page = await browser.open();
    await page.locator("#climate option").nth(1).waitFor({ state: "attached" });
    const today = await page.evaluate(() => new Date().toLocaleDateString("sv-SE"));
    assert.equal(await page.getByLabel("Day", { exact: true }).inputValue(), today);
  },
};
