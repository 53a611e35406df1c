// What the scripts add: search from the keyboard, the wording and the ticks remembered, readings judged.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { browser, folder, follow, url, watched } from "./tools.mjs";

const site = folder("COQUILLE_SITE");

let chromium;
before(async () => {
  chromium = await browser();
});
after(() => chromium.close());

async function opened(address, width = 1280) {
  const context = await chromium.newContext({ viewport: { width, height: 900 } });
  const { page, wrong } = await watched(context, site);
  await page.goto(url(site, address));
  return { context, page, wrong };
}

/** Tabs until the search field has the focus. */
async function tabToSearch(page) {
  for (let stops = 0; stops < 400; stops += 1) {
    if (await page.evaluate(() => document.activeElement?.type === "search")) return;
    await page.keyboard.press("Tab");
  }
  assert.fail("the search field cannot be reached with the Tab key");
}

/** The addresses found for what is typed, in their order. */
async function searched(page, text) {
  await tabToSearch(page);
  await page.keyboard.type(text);
  // Once the index is there, what is found stands there before the next key: anything said is about all that was typed.
  await page.waitForFunction(() => document.querySelector(".search-said").textContent !== "");
  return page.locator(".search ol a").evaluateAll((links) => links.map((link) => link.getAttribute("href").replace(/^(\.\.\/)+/, "")));
}

const SEARCHES = [
  ["two words of what is seen", "foil light", /^faults\/foil-/],
  ["a sentence of what is seen", "lamp stays lit", /^faults\/foil-stays-lit\.html$/],
  ["a name that people use elsewhere", "constant light", /^faults\/foil-stays-lit\.html$/],
  ["another word for a thing", "bodywire", /body-cord/],
  ["a word from another language", "becher", /barrel/],
  ["a slip of the pen", "barell", /barrel/],
  ["a job by its name", "rewire foil", /^jobs\/rewire-foil\.html$/],
  ["the beginning of a word", "rewi", /^jobs\/rewire-/],
];

for (const [what, text, wanted] of SEARCHES) {
  test(`search finds ${what}: "${text}"`, async () => {
    const { context, page, wrong } = await opened("index.html");
    const found = await searched(page, text);
    assert.ok(found.slice(0, 3).some((address) => wanted.test(address)), `among the first three of ${found.join(", ")}`);
    await page.keyboard.press("ArrowDown");
    const target = await page.evaluate(() => document.activeElement.href);
    assert.ok(target.endsWith(found[0]), "the arrow goes to the first page found");
    await Promise.all([page.waitForURL(target), page.keyboard.press("Enter")]);
    assert.deepEqual(wrong, []);
    await context.close();
  });
}

test("search says so when nothing is found, and Escape begins anew", async () => {
  const { context, page } = await opened("jobs/rewire-foil.html", 360);
  assert.deepEqual(await searched(page, "xylophonist"), []);
  assert.match(await page.locator(".search-said").innerText(), /^No page found/);
  await page.keyboard.press("Escape");
  assert.equal(await page.locator(".search-said").innerText(), "");
  await page.keyboard.type("reel");
  await page.locator(".search ol a").first().waitFor();
  await context.close();
});

test("search works from a page two folders down", async () => {
  const { context, page } = await opened("faults/foil-stays-lit.html");
  const question = await page.locator("ul.answers").last().locator("a").nth(1).getAttribute("href");
  await page.goto(new URL(question, page.url()).href);
  const found = await searched(page, "rewire foil");
  await page.keyboard.press("Enter");
  const target = await page.evaluate(() => document.activeElement.href);
  await Promise.all([page.waitForURL(target), page.keyboard.press("Enter")]);
  assert.ok(page.url().endsWith(found[0]));
  await context.close();
});

test("the short wording stays short on the next page, and full again when that is chosen", async () => {
  const { context, page } = await opened("faults/foil-stays-lit.html");
  const seen = (wording) => page.locator(`main .${wording}`).first().isVisible();
  assert.deepEqual([await seen("learner"), await seen("practised")], [true, false]);
  await page.getByRole("radio", { name: "short" }).check({ force: true });
  assert.deepEqual([await seen("learner"), await seen("practised")], [false, true]);
  await follow(page, page.locator("ul.answers").last().locator("a").nth(1));
  assert.ok(await page.getByRole("radio", { name: "short" }).isChecked());
  assert.deepEqual([await seen("learner"), await seen("practised")], [false, true]);
  await page.getByRole("radio", { name: "full" }).check({ force: true });
  await page.reload();
  assert.ok(await page.getByRole("radio", { name: "full" }).isChecked());
  await context.close();
});

test("ticks and readings are there again after a reload, and gone when they are cleared", async () => {
  const { context, page } = await opened("jobs/rewire-foil.html");
  const ticks = page.locator("main input[type=checkbox]");
  const field = page.locator("main .reading-entry input").first();
  await ticks.nth(1).check();
  await field.fill("1.2");
  await page.reload();
  assert.deepEqual([await ticks.nth(0).isChecked(), await ticks.nth(1).isChecked()], [false, true]);
  assert.equal(await field.inputValue(), "1.2");
  await page.getByRole("button", { name: "Clear my ticks and readings" }).click();
  await page.reload();
  assert.equal(await ticks.nth(1).isChecked(), false);
  assert.equal(await field.inputValue(), "");
  await context.close();
});

test("a reading is judged by its own limit: inside, outside, on it, and what is no number", async () => {
  const { context, page } = await opened("jobs/rewire-foil.html");
  const reading = page.locator(".reading[data-at-most]").first();
  const most = Number(await reading.getAttribute("data-at-most"));
  assert.ok(most > 0);
  const verdict = async (typed) => {
    await reading.locator(".reading-entry input").fill(typed);
    return (await reading.locator("output").innerText()).trim();
  };
  assert.equal(await verdict(String(most / 2)), "inside");
  assert.equal(await verdict(String(most * 2)), "outside");
  assert.equal(await verdict(String(most / 2).replace(".", ",")), "inside");
  assert.ok(!["inside", "outside"].includes(await verdict("O,5")));
  assert.equal(await reading.locator(".reading-entry input").getAttribute("aria-invalid"), "true");
  assert.match(await verdict("-1"), /^less than nothing/);
  assert.equal(await verdict("OL"), "outside", "over the meter's range is a figure too");
  await context.close();
});

test("a reading within the meter's uncertainty of its limit is too close to call, and the leads are taken off first", async () => {
  const { context, page } = await opened("jobs/rewire-foil.html");
  const reading = page.locator(".reading[data-at-most][data-amount]").first();
  const most = Number(await reading.getAttribute("data-at-most"));
  const amount = Number(await reading.getAttribute("data-amount"));
  const percent = Number(await reading.getAttribute("data-percent"));
  const verdict = async (field, typed) => {
    await reading.locator(field).fill(String(typed));
    return (await reading.locator("output").innerText()).trim();
  };
  const value = ".reading-entry input";
  const spread = amount + (most * percent) / 100;
  assert.ok(spread > 0);
  assert.equal(await verdict(value, most), "too close to call");
  assert.equal(await verdict(value, (most - 2 * spread).toFixed(3)), "inside");
  assert.equal(await verdict(value, (most + 2 * spread).toFixed(3)), "outside");
  // Taking the leads off is a second reading of the same meter, with an uncertainty of its own.
  assert.match(await verdict("input[data-leads]", (3 * spread).toFixed(3)), /without the leads: .*, too close to call$/);
  assert.match(await verdict("input[data-leads]", (6 * spread).toFixed(3)), /without the leads: .*, inside$/);
  await page.reload();
  assert.equal(await reading.locator("input[data-leads]").inputValue(), (6 * spread).toFixed(3));
  await context.close();
});
