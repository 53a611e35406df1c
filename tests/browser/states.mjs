// Every state of every part of the theme, on pages made from the parts' states.yaml: axe at four widths, as printed, and
// for colours in the dark.

import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { axeFinds, axeFindsOfColours } from "./axe-run.mjs";
import { browser, files, folder, url, watched } from "./tools.mjs";

const states = folder("COQUILLE_STATES");
const WIDTHS = [320, 480, 768, 1280];

/** Rules about a page as a whole; a page of states is none. They are in force on the real pages (axe.mjs). */
const OF_WHOLE_PAGES = [
  "heading-order", // a part's heading fits the page that it is made for, not the list of states
  "landmark-unique", // the same part stands here once a state, with the same name
  "landmark-no-duplicate-main", // as above
  "landmark-banner-is-top-level", // everything here stands in `main`
  "landmark-contentinfo-is-top-level", // as above
  "landmark-complementary-is-top-level", // as above
  "region", // as above
  "skip-link", // there is no frame around these pages
];

let chromium;
before(async () => {
  chromium = await browser();
});
after(() => chromium.close());

/** Does with each state's field what the state says. */
async function play(page) {
  for (const state of await page.locator(".state").all()) {
    const typed = await state.getAttribute("data-typed");
    if (typed) {
      const radio = state.locator(`input[type=radio][value="${typed}"]`);
      await ((await radio.count()) ? radio.check({ force: true }) : state.locator("input").first().fill(typed));
    }
    if ((await state.getAttribute("data-focused")) !== null) await state.locator("input, a, button").first().focus();
  }
}

const everything = (page) => axeFinds(page, OF_WHOLE_PAGES);

async function look(address, colorScheme, widths, media, finds) {
  const context = await chromium.newContext({ colorScheme });
  const { page, wrong } = await watched(context, states);
  const found = [];
  await page.emulateMedia({ media, colorScheme });
  await page.setViewportSize({ width: widths[0], height: 900 });
  await page.goto(url(states, address));
  if (media === "screen") await play(page);
  for (const width of widths) {
    await page.setViewportSize({ width, height: 900 });
    found.push(...(await finds(page)).map((finding) => `${width}: ${finding}`));
  }
  await context.close();
  assert.deepEqual([...found, ...wrong], []);
}

test("every part has its states on pages", () => {
  assert.ok(files(states, ".html").length >= 40);
});

for (const address of files(states, ".html")) {
  describe(address, { concurrency: 2 }, () => {
    test(`${address}, light`, () => look(address, "light", WIDTHS, "screen", everything));
    test(`${address}, dark`, () => look(address, "dark", [320, 1280], "screen", axeFindsOfColours));
    test(`${address}, printed`, () => look(address, "light", [800], "print", everything));
  });
}
