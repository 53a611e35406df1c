// One page of every kind, on a phone and on a desk, light and dark: axe finds nothing, nothing scrolls sideways, the console stays empty,
// and nothing is asked for outside the folder.

import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { axeFinds, axeFindsOfColours, reachingOut, shortenLists, sideways } from "./axe-run.mjs";
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

/** What is wrong with a page by its sizes and colours, in light and in the dark. */
async function lookedAt(page) {
  const found = [];
  for (const width of [1280, 360]) {
    await page.setViewportSize({ width, height: 800 });
    const pushed = await sideways(page);
    if (pushed > 0) found.push(`${width}: scrolls sideways by ${pushed} px: ${await reachingOut(page)}`);
  }
  await shortenLists(page);
  for (const [colorScheme, finds] of [["light", axeFinds], ["dark", axeFindsOfColours]]) {
    await page.emulateMedia({ colorScheme });
    for (const width of [360, 1280]) {
      await page.setViewportSize({ width, height: 800 });
      found.push(...(await finds(page)).map((finding) => `${width}, ${colorScheme}: ${finding}`));
    }
  }
  return found;
}

describe("in light and in the dark", { concurrency: 2 }, () => {
  for (const [kind, address] of kinds) {
    test(`${kind}, ${address}`, async () => {
      const context = await chromium.newContext();
      const { page, wrong } = await watched(context, site);
      await page.goto(url(site, address));
      const found = await lookedAt(page);
      await context.close();
      assert.deepEqual([...found, ...wrong], []);
    });
  }
});

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
