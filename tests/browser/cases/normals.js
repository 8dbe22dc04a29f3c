import assert from "node:assert/strict";
import { celsius, millimetres, numbers, table } from "../../../api/src/pages/home/normals.js";
import { put } from "../../../api/src/pages/home/request.js";
import { answered, isQuiet, titles } from "../rose.js";

const LOW = "5.0 5.8 7.2 9.0 12.0 15.0 18.0 18.2 16.0 12.2 8.0 5.2";
const HIGH = "19.5,20.5,22.5,25.5,28.5,33.0,36.8,37.0,33.4,28.0,22.8,19.0";
const RAIN = "85\t95\t65\t25\t6\t1\t0\t1\t4\t15\t30\t65";

async function own(page) {
  await page.getByLabel("My monthly averages").check();
  await page.getByLabel("Latitude").fill("34.2");
  await page.getByLabel("Metres above the sea").fill("230");
  await page.getByLabel("Mean daily lowest temperature").fill(LOW);
  await page.getByLabel("Mean daily highest temperature").fill(HIGH);
  await page.getByLabel("Rain of the month").fill(RAIN);
  await page.getByRole("combobox", { name: "Plant", exact: true }).selectOption({ label: "Rose" });
  await page.getByLabel("Day", { exact: true }).fill("2026-09-15");
  await page.getByLabel("Years since planting").fill("4");
  await page.getByLabel("Find a sign").fill("dead flowers");
  await page.getByRole("checkbox", { name: "Spent blooms" }).check();
}

const ask = (page) => page.getByRole("button", { name: "What should be done?" }).click();

export default {
  "numbers are read however they are set apart": () => {
    const twelve = [1, -2, 3.5, 4, 5, 6, 7, 8, 9, 10, 11, 12];
    for (const text of [
      "1 -2 3.5 4 5 6 7 8 9 10 11 12",
      "1,-2,3.5,4,5,6,7,8,9,10,11,12",
      "1, -2, 3.5, 4, 5, 6, 7, 8, 9, 10, 11, 12",
      "1\t\u22122\t3,5\t4\t5\t6\t7\t8\t9\t10\t11\t12",
      "1;-2;3,5;4;5;6;7;8;9;10;11;12",
      "Jan\nFeb\n1°C\n-2°C\n3.5°C\n4 5 6 7 8 9 10 11 12\n",
      "1\u00a0-2 3.5 | 4 | 5 6 7 8 9 10 11 12",
    ]) assert.deepEqual(numbers(text), { numbers: twelve }, text);
    assert.deepEqual(numbers("1 2x 3"), { odd: "2x" });
    assert.deepEqual(numbers(""), { numbers: [] });
    assert.deepEqual(numbers("5"), { numbers: [5] });
  },

  "a table is read along or across": () => {
    const low = LOW.split(" ").map(Number);
    const high = HIGH.split(",").map(Number);
    const rows = { tmin: low.join(" "), tmax: high.join(" "), rain: "" };
    assert.deepEqual(table(`low\t${low.join("\t")}\nhigh\t${high.join("\t")}\n`), rows);
    const across = low.map((value, at) => `M${"abc".charAt(at % 3)}\t${high[at]}\t${value}`).join("\n");
    assert.deepEqual(table(across), rows);
    assert.equal(table("1 2 3"), null);
    assert.equal(table(LOW), null);
  },

  // 0 °F, freezing and boiling point of water, and 1 in = 25.4 mm: NIST Special Publication 811 (2008), appendix B.
  "units of the United States are turned into metric ones": () => {
    assert.deepEqual([celsius(32), celsius(212), celsius(0)], [0, 100, -17.78]);
    assert.equal(millimetres(1), 25.4);
  },

  // RFC 6901, sections 3 and 4: `~1` is `/`, `~0` is `~`, `-` is the place after the last entry.
  "a value is put where its pointer points": () => {
    const body = { condition: { signs: [{ sign: "a" }] } };
    put(body, "/condition/signs/-", { sign: "b" });
    put(body, "/condition/not_seen/-", "c");
    put(body, "/site/soil/ph", 8.2);
    put(body, "/x~1y/z~0", true);
    put(body, "/__proto__/told", true);
    assert.equal({}.told, undefined);
    assert.deepEqual(body.condition, { signs: [{ sign: "a" }, { sign: "b" }], not_seen: ["c"] });
    assert.deepEqual([body.site, body["x/y"]], [{ soil: { ph: 8.2 } }, { "z~": true }]);
  },

  "monthly averages serve as a climate": async (browser) => {
    const page = await browser.open();
    await own(page);
    await ask(page);
    await answered(page);
    assert.match(await page.locator("#answer-heading").textContent(), /your monthly averages/);
    assert.ok((await titles(page, "This week")).includes("Cut back for the late flush"));
    isQuiet(page);
  },

  "the same averages in °F and inches give the same tasks": async (browser) => {
    const page = await browser.open();
    await own(page);
    await ask(page);
    await answered(page);
    const before = await titles(page, "This week");
    await page.locator("#asking > summary").click();
    await page.getByLabel("°F, in").check();
    const inF = (text) => text.split(/[ ,\t]/).map((value) => ((Number(value) * 9) / 5 + 32).toFixed(2)).join(" ");
    await page.getByLabel("Mean daily lowest temperature").fill(inF(LOW));
    await page.getByLabel("Mean daily highest temperature").fill(inF(HIGH));
    await page.getByLabel("Rain of the month").fill(RAIN.split("\t").map((mm) => (mm / 25.4).toFixed(3)).join(" "));
    await ask(page);
    await page.waitForURL(/units=f/);
    await answered(page);
    assert.deepEqual(await titles(page, "This week"), before);
  },

  "a pasted table fills all three": async (browser) => {
    const page = await browser.open();
    await page.getByLabel("My monthly averages").check();
    const text = [LOW, HIGH, RAIN].map((row) => row.split(/[ ,\t]/).join("\t")).join("\n");
    await page.locator("#tmin").evaluate((field, pasted) => {
      const data = new DataTransfer();
      data.setData("text/plain", pasted);
      field.dispatchEvent(new ClipboardEvent("paste", { clipboardData: data, bubbles: true, cancelable: true }));
    }, text);
    assert.equal(await page.locator("#rain").inputValue(), "85 95 65 25 6 1 0 1 4 15 30 65");
    assert.equal(await page.locator("#tmax").inputValue(), HIGH.split(",").map(Number).join(" "));
  },

  "a bad average is named at its field": async (browser) => {
    const page = await browser.open();
    await own(page);
    const high = page.getByLabel("Mean daily highest temperature");
    for (const [text, message] of [
      [HIGH.replace("20.5", "2o.5"), /expected a number, found “2o\.5”/],
      [HIGH.replace(",19.0", ""), /expected 12 numbers, January to December, found 11/],
      // The service's own word, with the month that its index means.
      [HIGH.replace("28.5", "8.5"), /May: tmax_c\[4\] is below tmin_c\[4\]/],
    ]) {
      if (!(await high.isVisible())) await page.locator("#asking > summary").click();
      await high.fill(text);
      await ask(page);
      await page.locator("#tmax[aria-invalid]").waitFor();
      assert.match(await page.locator("#tmax-error").innerText(), message);
      assert.match(await high.getAttribute("aria-describedby"), /tmax-error/);
      assert.equal(await page.evaluate(() => document.activeElement.id), "wrong");
      await page.locator("#wrong").getByRole("link").click();
      assert.equal(await page.evaluate(() => document.activeElement.id), "tmax");
      assert.equal(await page.locator("#tmin[aria-invalid]").count(), 0);
      await high.fill(HIGH);
      await ask(page);
      await answered(page);
      assert.equal(await page.locator("[aria-invalid], .error").count(), 0);
    }
    assert.deepEqual(page.outside, []);
  },

  "what is missing or out of range is named at its field": async (browser) => {
    const page = await browser.open();
    await page.locator("#climate option").nth(1).waitFor({ state: "attached" });
    await ask(page);
    assert.equal(await page.locator("#climate-error").innerText(), "choose one");
    assert.equal(await page.locator("#plant-error").innerText(), "choose one");
    await page.getByRole("combobox", { name: "Climate" }).selectOption("cold-inland");
    await page.getByRole("combobox", { name: "Plant", exact: true }).selectOption("rose");
    await page.getByLabel("Years since planting").fill("-3");
    await ask(page);
    await page.locator("#age-error").waitFor();
    assert.match(await page.locator("#age-error").innerText(), /0 to 1000/);
    assert.equal(await page.locator("#answer").isVisible(), false);
  },
};
