// Chromium without a window, cut off from everything but the server. Every page notes what it tried to reach and what
// its console said.

import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { join } from "node:path";

const require = createRequire(join(process.env.MODULES, "package.json"));
const { chromium } = require("playwright-core");
const axeSource = await readFile(require.resolve("axe-core/axe.min.js"), "utf8");

/** A browser; `open(address, how)` gives a page. */
export async function browse(url) {
  const browser = await chromium.launch({
    executablePath: process.env.CHROMIUM,
    args: ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
      "--disable-component-update", "--disable-sync"],
  });
  const contexts = [];
  return {
    url,
    /** `how`: width, height, dark, language, script. The page has `outside` and `said` beside what Playwright gives. */
    open: async (address = "", { width = 1280, height = 900, dark = false, language = "en-GB", script = true } = {}) => {
      const context = await browser.newContext({
        viewport: { width, height }, colorScheme: dark ? "dark" : "light", locale: language, javaScriptEnabled: script,
      });
      contexts.push(context);
      const page = await context.newPage();
      page.outside = [];
      page.said = [];
      await context.route("**/*", (route) => {
        if (route.request().url().startsWith(url)) return route.continue();
        page.outside.push(route.request().url());
        return route.abort();
      });
      page.on("console", (message) => page.said.push(`${message.type()}: ${message.text()}`));
      page.on("pageerror", (error) => page.said.push(`error: ${error}`));
      page.setDefaultTimeout(10_000);
      await page.goto(url + address);
      return page;
    },
    closePages: () => Promise.all(contexts.splice(0).map((context) => context.close())),
    close: () => browser.close(),
  };
}

/** What axe finds wrong on a page, as text. */
export async function faults(page) {
  await page.evaluate(axeSource);
  const { violations } = await page.evaluate(() => globalThis.axe.run());
  return violations.map(({ id, help, nodes }) => `${id}: ${help}: ${nodes.map((node) => node.html).slice(0, 3).join(" | ")}`);
}
