// The year as a picture: as an `<img>` and by itself, in real fonts.

import assert from "node:assert/strict";
import { mkdir } from "node:fs/promises";
import { join } from "node:path";
import { answered, isQuiet, ROSE } from "../rose.js";

const cases = {};
const PLACES = ["hot-dry-valley", "southern-temperate", "tropical-lowland", "short-summer-north"];
const PATH = (climate, language = "en") => `v1/season?climate=${climate}&date=2026-09-15&language=${language}`;

/** The picture opened by itself, with its own headers, as wide as the window. */
async function shown(browser, path, how) {
  const page = await browser.open("health/live", how);
  // A browser that opens an address asks for a page; this one is made to ask for the picture.
  await page.route(browser.url + path, (route) =>
    route.continue({ headers: { ...route.request().headers(), accept: "image/svg+xml" } }));
  const answer = await page.goto(browser.url + path);
  assert.equal(answer.headers()["content-type"], "image/svg+xml");
  await page.evaluate((width) => {
    document.documentElement.setAttribute("width", width);
    document.documentElement.removeAttribute("height");
  }, how.width);
  return page;
}

async function keep(page, name) {
  if (!process.env.SHOTS) return;
  await mkdir(process.env.SHOTS, { recursive: true });
  // A picture by itself has no body to be scrolled: the window is made as high as it is.
  const [width, height] = await page.evaluate(() => {
    const { right, bottom } = document.documentElement.getBoundingClientRect();
    return [Math.ceil(right), Math.ceil(bottom)];
  });
  await page.setViewportSize({ width, height });
  await page.screenshot({ path: join(process.env.SHOTS, `${name}.png`) });
}

for (const dark of [false, true]) {
  for (const width of [320, 640, 1280]) {
    const name = `${dark ? "dark" : "light"}-${width}`;
    cases[`a picture of the year can be read (${name})`] = async (browser) => {
      for (const climate of PLACES) {
        for (const language of ["en", "es"]) {
          const page = await shown(browser, PATH(climate, language), { width, dark });
          await keep(page, `year-${climate}-${language}-${name}`);
          const texts = await page.locator("svg text").evaluateAll((all) => all.map((text) => {
            const { left, top, right, bottom } = text.getBoundingClientRect();
            const scale = text.getScreenCTM().a;
            return { left, right, middle: (top + bottom) / 2, px: Number.parseFloat(getComputedStyle(text).fontSize) * scale, said: text.textContent };
          }));
          assert.ok(texts.length > 30);
          const smallest = Math.min(...texts.map((text) => text.px));
          assert.ok(smallest >= 9, `${climate} ${language}: ${smallest} px`);
          for (const text of texts) {
            assert.ok(text.left >= 0 && text.right <= width, `${climate} ${language}: ${text.said} sticks out`);
            for (const other of texts) {
              if (other === text || Math.abs(other.middle - text.middle) > text.px * 0.6) continue;
              const covers = other.left < text.right - 0.5 && text.left < other.right - 0.5;
              assert.ok(!covers, `${climate} ${language}: "${text.said}" covers "${other.said}"`);
            }
          }
        }
      }
    };
  }
}

cases["the address of a season is the source of an image"] = async (browser) => {
  const page = await browser.open("", { width: 320 });
  const size = await page.evaluate(async (path) => {
    const image = document.createElement("img");
    image.alt = "";
    document.body.replaceChildren(image);
    await new Promise((loaded, failed) => {
      image.onload = loaded;
      image.onerror = () => failed(new Error("it does not load"));
      image.src = path;
    });
    return { width: image.naturalWidth, height: image.naturalHeight };
  }, `/${PATH("hot-dry-valley")}`);
  assert.ok(size.width === 480 && size.height > 600, JSON.stringify(size));
  assert.deepEqual(page.outside, []);
};

cases["the page shows the year of a registered climate as a picture"] = async (browser) => {
  const page = await browser.open(ROSE("es"), { width: 390 });
  await answered(page);
  await page.getByText("La temporada allí").click();
  await page.getByText("Todo el año en una imagen").click();
  const picture = page.getByRole("img", { name: /Temperaturas, lluvia/ });
  await picture.evaluate((image) => image.decode());
  assert.match(await picture.getAttribute("src"), /climate=hot-dry-valley.*date=2026-09-15.*language=es/);
  await keep(page, "year-on-the-page");
  isQuiet(page);
};

export default cases;
