// Every state of every part of the theme, on pages made from the parts' states.yaml: axe at the least and the greatest width, for sizes
// at those between, as printed, and for colours in the dark. What is written from right to left has the same words and colours: axe looks
// at all of it once, and at its sizes in every width.

import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { axeFinds, axeFindsOfColours, axeFindsOfSizes } from "./axe-run.mjs";
import { browser, files, folder, url, watched } from "./tools.mjs";

const states = folder("COQUILLE_STATES");
const LEAST_AND_GREATEST = [320, 1280];
const BETWEEN = [480, 768];

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

/** What `finds` finds at each width, with the width before it. */
async function at(page, widths, finds, said = "") {
  const found = [];
  for (const width of widths) {
    await page.setViewportSize({ width, height: 900 });
    found.push(...(await finds(page)).map((finding) => `${width}${said}: ${finding}`));
  }
  return found;
}

async function look(address, finds) {
  const context = await chromium.newContext({ colorScheme: "light" });
  const { page, wrong } = await watched(context, states);
  await page.goto(url(states, address));
  const found = await finds(page);
  await context.close();
  assert.deepEqual([...found, ...wrong], []);
}

async function fromLeftToRight(page) {
  await page.emulateMedia({ media: "print" });
  const printed = await at(page, [800], everything, " printed");
  await page.emulateMedia({ media: "screen" });
  await play(page);
  const light = await at(page, LEAST_AND_GREATEST, everything);
  const between = await at(page, BETWEEN, axeFindsOfSizes);
  await page.emulateMedia({ media: "screen", colorScheme: "dark" });
  return [...printed, ...light, ...between, ...(await at(page, LEAST_AND_GREATEST, axeFindsOfColours, " dark"))];
}

async function fromRightToLeft(page) {
  await play(page);
  const [least, ...others] = [...LEAST_AND_GREATEST, ...BETWEEN];
  return [...(await at(page, [least], everything)), ...(await at(page, others, axeFindsOfSizes))];
}

test("every part has its states on pages", () => {
  assert.ok(files(states, ".html").length >= 40);
});

describe("each part in each state", { concurrency: 2 }, () => {
  for (const address of files(states, ".html")) {
    test(address, () => look(address, /-rtl\b/.test(address) ? fromRightToLeft : fromLeftToRight));
  }
});
