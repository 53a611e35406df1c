// One page of every kind, on a phone and on a desk, light and dark: axe finds nothing, nothing scrolls sideways, the console stays empty,
// and nothing is asked for outside the folder.

import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { axeFinds, axeFindsOfColours, reachingOut, sideways } from "./axe-run.mjs";
import { onePageOfEachKind } from "./kinds.mjs";
import { browser, folder, url, watched } from "./tools.mjs";

const site = folder("COQUILLE_SITE");
const kinds = onePageOfEachKind();
let chromium;

before(async () => {
  chromium = await browser();
});
after(() => chromium.close());

test("every kind of page is among those that are looked at", () => {
  const names = kinds.map(([kind]) => kind);
  const wanted = [
    "index.html", "lamps.html", "jobs.html", "limits.html", "stores.html", "words.html", "sheets.html", "about.html", "writing.html",
    "all.html", "kit", "faults", "jobs", "checks", "circuits", "question", "ending: Cause found", "ending: Remedy found", "ending: Mended",
    "ending: Not on this list", "ending: Hand over", "sheet of faults", "sheet of jobs", "sheet of checks",
  ];
  assert.deepEqual(wanted.filter((name) => !names.includes(name)), []);
  assert.ok(!names.includes("sheet of nothing"));
});

for (const colorScheme of ["light", "dark"]) {
  describe(colorScheme, { concurrency: 2 }, () => {
    for (const [kind, address] of kinds) {
      test(`${colorScheme}: ${kind}, ${address}`, async () => {
        const context = await chromium.newContext({ colorScheme });
        const { page, wrong } = await watched(context, site);
        const found = [];
        await page.setViewportSize({ width: 360, height: 800 });
        await page.goto(url(site, address));
        for (const width of [360, 1280]) {
          await page.setViewportSize({ width, height: 800 });
          found.push(...(await (colorScheme === "light" ? axeFinds : axeFindsOfColours)(page)).map((finding) => `${width}: ${finding}`));
          const pushed = await sideways(page);
          if (pushed > 0) found.push(`${width}: scrolls sideways by ${pushed} px: ${await reachingOut(page)}`);
        }
        await context.close();
        assert.deepEqual([...found, ...wrong], []);
      });
    }
  });
}

test("axe, the console and the watch on requests find what is wrong", async () => {
  const { page, wrong } = await watched(await chromium.newContext(), site);
  await page.goto(url(site, "index.html"));
  await page.evaluate(() => {
    const image = document.createElement("img");
    image.src = "http://127.0.0.1:9/x.png";
    document.querySelector("main").append(image);
  });
  const found = await axeFinds(page);
  assert.ok(found.some((finding) => finding.startsWith("image-alt")), found.join("\n"));
  assert.ok(wrong.some((said) => said.includes("Content Security Policy")), wrong.join("\n"));
});
