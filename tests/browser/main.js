// Runs every test of `cases/`, one after the other, and counts.

import { mkdtemp, readdir, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { browse } from "./browser.js";
import { serve } from "./server.js";
import { COAST } from "./weather.js";

const wanted = process.argv.slice(2).join(" ");
const folder = new URL("cases/", import.meta.url);
const tests = [];
for (const name of (await readdir(folder)).sort()) {
  const { default: cases } = await import(new URL(name, folder));
  tests.push(...Object.entries(cases));
}
const chosen = tests.filter(([name]) => name.includes(wanted));

let passed = 0;
const weather = await mkdtemp(join(tmpdir(), "lammas-browser-"));
await writeFile(join(weather, "coast.json"), JSON.stringify(COAST));
const server = await serve(process.env.LAMMAS, weather);
const browser = await browse(server.url);
try {
  for (const [name, test] of chosen) {
    try {
      await test(browser);
      passed += 1;
    } catch (error) {
      console.log(`FAILED ${name}\n  ${String(error?.stack ?? error).split("\n").slice(0, 12).join("\n  ")}`);
    } finally {
      await browser.closePages();
    }
  }
} finally {
  await browser.close();
  await server.stop();
  await rm(weather, { recursive: true });
}
const failed = chosen.length - passed;
console.log(`browser: ${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 && passed > 0 ? 0 : 1;
