// Whatever the eyes, the hands, the screen and the language.

import assert from "node:assert/strict";
import { mkdir } from "node:fs/promises";
import { join } from "node:path";
import { faults } from "../browser.js";
import { answered, isQuiet, ROSE } from "../rose.js";

const cases = {};
for (const language of ["en", "es"]) {
  for (const dark of [false, true]) {
    for (const width of [320, 390, 1280]) {
      const name = `${language}-${dark ? "dark" : "light"}-${width}`;
      cases[`axe finds nothing and nothing sticks out (${name})`] = async (browser) => {
        const form = await browser.open(`#lang=${language}`, { width, dark });
        await form.locator("#signs li").first().waitFor();
        await look(form, `form-${name}`);
        await form.locator("input[name=where][value=own]").check();
        await form.locator("#plant").selectOption("citrus");
        await form.locator("#tmin").fill("1 2");
        await form.locator("button.main").click();
        await form.locator("#tmin-error").waitFor();
        await look(form, `wrong-${name}`);
        const page = await browser.open(ROSE(language), { width, dark });
        await answered(page);
        await look(page, `answer-${name}`);
        // axe judges what is shown: open all that can be opened.
        await page.locator("details").evaluateAll((all) => all.forEach((details) => { details.open = true; }));
        await look(page, `all-${name}`);
      };
    }
  }
}

async function look(page, name) {
  if (process.env.SHOTS) {
    await mkdir(process.env.SHOTS, { recursive: true });
    await page.screenshot({ path: join(process.env.SHOTS, `${name}.png`), fullPage: true });
  }
  assert.deepEqual(await faults(page), [], name);
  const [shown, whole] = await page.evaluate(() => [document.documentElement.clientWidth, document.documentElement.scrollWidth]);
  assert.ok(whole <= shown, `${name}: ${whole} px wide on ${shown}`);
  isQuiet(page);
}

cases["a plant is offered only what is looked for on it, and what is ticked stays"] = async (browser) => {
  const page = await browser.open();
  const sign = (id) => page.locator(`#signs li:has(input[value="${id}"])`);
  await sign("spent-blooms").waitFor();
  assert.ok(await sign("browned-blossom").isVisible());
  await page.selectOption("#plant", "rose");
  await sign("browned-blossom").waitFor({ state: "hidden" });
  assert.ok(await sign("spent-blooms").isVisible());
  await sign("spent-blooms").locator("input").check();
  await page.selectOption("#plant", "peach");
  await sign("browned-blossom").waitFor();
  assert.ok(await sign("spent-blooms").isVisible());
  await page.selectOption("#plant", "");
  await sign("footprints-stay").waitFor();
};

cases["the keyboard alone is enough"] = async (browser) => {
  const page = await browser.open();
  await page.locator("#signs li").first().waitFor();
  const tabTo = async (id) => {
    for (let presses = 0; presses < 120; presses += 1) {
      if ((await page.evaluate(() => document.activeElement.id)) === id) return;
      await page.keyboard.press("Tab");
    }
    throw new Error(`${id} can't be reached`);
  };
  await tabTo("climate");
  await page.keyboard.type("Hot dry");
  await tabTo("plant");
  await page.keyboard.type("Rose");
  await tabTo("age");
  await page.keyboard.type("4");
  await tabTo("find-sign");
  await page.keyboard.type("dead flowers");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Space");
  assert.equal(await page.locator("#signs input:checked").getAttribute("value"), "spent-blooms");
  await tabTo("looked");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await answered(page);
  assert.equal(await page.evaluate(() => document.activeElement.id), "answer-heading");
};

cases["a reader of screens is told where things are"] = async (browser) => {
  const page = await browser.open(ROSE());
  await answered(page);
  assert.equal(await page.getByRole("main").count(), 1);
  assert.equal(await page.getByRole("banner").count(), 1);
  assert.equal(await page.getByRole("contentinfo").count(), 1);
  assert.match(await page.locator("#answer-status[role=status]").textContent(), /^\d+ things to do, \d+ to leave alone\.$/);
  for (const group of ["This week", "Coming", "Leave alone"]) {
    assert.equal(await page.getByRole("region", { name: group }).count(), 1, group);
  }
  const levels = await page.locator("h1, h2, h3, h4, h5").evaluateAll((all) =>
    all.filter((heading) => heading.checkVisibility()).map((heading) => Number(heading.tagName.slice(1))));
  levels.reduce((before, level) => {
    assert.ok(level <= before + 1, `h${before} is followed by h${level}`);
    return level;
  }, 0);
};

cases["on paper stands the answer and not the form"] = async (browser) => {
  const page = await browser.open(ROSE());
  await answered(page);
  await page.emulateMedia({ media: "print" });
  assert.equal(await page.locator("#form").isVisible(), false);
  assert.equal(await page.locator(".question").isVisible(), false);
  assert.ok(await page.locator("[data-rule='rose.renewal-cut'] .work").isVisible());
  assert.ok(await page.locator(".notice").isVisible());
  if (process.env.SHOTS) await page.pdf({ path: join(process.env.SHOTS, "answer.pdf"), format: "A4" });
};

cases["without a script the page says where else to ask"] = async (browser) => {
  const page = await browser.open("", { script: false });
  assert.match(await page.locator("noscript").innerText(), /POST \/v1\/advice[\s\S]*README/);
  const answer = await page.request.get(`${browser.url}openapi.json`);
  assert.equal(answer.status(), 200);
};

cases["text from the address is never markup"] = async (browser) => {
  const bad = "<img src=x onerror=alert(1)>";
  const page = await browser.open(`#lang=en&climate=hot-dry-valley&plant=rose&date=2026-09-15&told=${encodeURIComponent(JSON.stringify(["/site/region", bad]))}&signs=${encodeURIComponent(bad)}`);
  await page.locator("#wrong li").first().waitFor();
  assert.equal(await page.locator("main img").count(), 0);
  assert.deepEqual(page.outside, []);
};

export default cases;
