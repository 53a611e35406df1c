// From the front page to the proof of the mend by clicks alone, over file://, with scripting on and off.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { browser, folder, follow, url, watched } from "./tools.mjs";

const site = folder("COQUILLE_SITE");

/** What a foil answers whose wire is worn through under a barrel that turns. */
const ANSWERS = {
  "With tip and spring out, does the lamp go dark, and are cup and spring as they should be?": "It stays lit",
  "With tip and spring out, can you turn the barrel by hand, or does the lamp flicker when you lean on it?":
    "It turns or rocks, or the lamp flickers",
};

let chromium;
before(async () => {
  chromium = await browser();
});
after(() => chromium.close());

/** Answers every question until none is left; the words of the answers given. On a guide's own page the question stands last, below
    what isolates the fault. */
async function answer(page, answers) {
  const given = [];
  while ((await page.locator("ul.answers").count()) > 0) {
    assert.ok(given.length < 12, "a way has an end");
    const asked = (await page.locator("h1, h2").allTextContents()).find((heading) => answers[heading.trim()]);
    assert.ok(asked, `somebody knows the answer to what ${page.url()} asks`);
    given.push(answers[asked.trim()]);
    await follow(page, page.locator("ul.answers").last().locator("a").filter({ hasText: answers[asked.trim()] }));
  }
  return given;
}

for (const javaScriptEnabled of [true, false]) {
  const scripting = javaScriptEnabled ? "on" : "off";

  test(`with scripting ${scripting}: from the front page to the proof of a rewired foil`, async () => {
    const context = await chromium.newContext({ javaScriptEnabled, viewport: { width: 390, height: 800 } });
    const { page, wrong } = await watched(context, site);
    await page.goto(url(site, "index.html"));
    assert.equal(await page.locator("h1").innerText(), "What do you see?");
    await follow(page, page.getByRole("main").getByRole("link", { name: "Foil", exact: true }));
    await follow(page, page.getByRole("main").getByRole("link", { name: /Lamp stays lit when the tip is pressed/ }));
    assert.ok(await page.getByText("With the foil unplugged from the cord").first().isVisible(), "isolating comes first");

    const given = await answer(page, ANSWERS);
    assert.deepEqual(given, ["It stays lit", "It turns or rocks, or the lamp flickers"]);
    assert.match(await page.locator("h1").innerText(), /Wire worn through under the barrel/);
    assert.equal(await page.locator(".remedy.stop-gap").count(), 0, "nothing short of a rewire helps a worn wire");

    await follow(page, page.locator(".remedy.lasting a"));
    assert.equal(await page.locator("h1").innerText(), "Rewire a foil blade");
    assert.ok(await page.getByRole("heading", { name: "Prove it" }).isVisible());
    assert.ok((await page.locator("main input").count()) > 0, "there is something to tick or write");
    assert.deepEqual(wrong, []);
    await context.close();
  });

  test(`with scripting ${scripting}: one page back asks the question before`, async () => {
    const context = await chromium.newContext({ javaScriptEnabled });
    const { page } = await watched(context, site);
    await page.goto(url(site, "faults/foil-stays-lit.html"));
    await follow(page, page.locator("ul.answers").last().locator("a").filter({ hasText: "It stays lit" }));
    const second = await page.locator("h1").innerText();
    await follow(page, page.locator("ul.answers").last().locator("a").nth(1));
    await follow(page, page.getByRole("link", { name: /^Back to:/ }));
    assert.equal(await page.locator("h1").innerText(), second);
    await context.close();
  });

  test(`with scripting ${scripting}: who cannot tell twice is handed over`, async () => {
    const context = await chromium.newContext({ javaScriptEnabled });
    const { page } = await watched(context, site);
    await page.goto(url(site, "faults/foil-stays-lit.html"));
    await follow(page, page.getByRole("link", { name: "I cannot tell" }));
    await follow(page, page.getByRole("link", { name: "I cannot tell" }));
    assert.match(await page.locator("main").innerText(), /somebody with a meter/);
    await context.close();
  });
}
