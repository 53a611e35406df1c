// The way to learn, its self-checks, "I am here", the hand-over, and finding by part and by letter.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { after, before, test } from "node:test";
import { pathToFileURL } from "node:url";
import { browser, folder, follow, guides, url, watched } from "./tools.mjs";

const site = folder("COQUILLE_SITE");

let chromium;
before(async () => {
  chromium = await browser();
});
after(() => chromium.close());

async function opened(address, options = {}) {
  const context = await chromium.newContext({ viewport: { width: 390, height: 800 }, ...options });
  const { page, wrong } = await watched(context, site);
  await page.goto(url(site, address));
  return { context, page, wrong };
}

for (const javaScriptEnabled of [true, false]) {
  test(`with scripting ${javaScriptEnabled ? "on" : "off"}: through every stop of the way to learn`, async () => {
    const { context, page, wrong } = await opened("index.html", { javaScriptEnabled });
    await follow(page, page.getByRole("link", { name: "From newcomer to bench hand" }));
    const stops = await page.locator(".stops > li").count();
    assert.ok(stops >= 6);
    await follow(page, page.locator(".stops a"));
    for (let stop = 1; stop <= stops; stop += 1) {
      assert.match(await page.locator(".kind").first().innerText(), new RegExp(`Stop ${stop} of ${stops}`));
      // A question whose wrong choices would give themselves away is not asked: the first stop has two left.
      assert.ok((await page.locator(".self-check > li").count()) >= (stop === 1 ? 2 : 3));
      const answer = page.locator(".self-check details").first();
      await answer.locator("summary").click();
      assert.ok(await answer.locator("b").isVisible());
      if (stop < stops) await follow(page, page.getByRole("link", { name: /^Next stop/ }));
    }
    assert.deepEqual(wrong, []);
    await context.close();
  });
}

test("a self-check has one right choice a question, judges from the keyboard and counts the first tries", async () => {
  const { context, page } = await opened("learning/first-season/tips.html");
  const questions = await page.locator(".self-check > li").all();
  for (const [at, question] of questions.entries()) {
    assert.equal(await question.locator("[data-right]").count(), 1);
    const words = await question.locator("label").allTextContents();
    assert.equal(new Set(words.map((text) => text.trim())).size, words.length);
    const first = question.locator(at === 0 ? "input:not([data-right])" : "input[data-right]").first();
    await first.focus();
    await page.keyboard.press("Space");
    assert.match(await question.locator(".check-verdict").innerText(), at === 0 ? /^Not that one/ : /^Right/);
  }
  assert.match(await page.locator("[data-sum]").innerText(), new RegExp(`${questions.length - 1} / ${questions.length}$`));
  await context.close();
});

test("a stop that is ticked stays ticked", async () => {
  const { context, page } = await opened("learning/first-season.html");
  await page.locator(".stops input").nth(1).check();
  await page.reload();
  assert.ok(await page.locator(".stops input").nth(1).isChecked());
  await context.close();
});

for (const [language, stays] of [["", "It stays lit"], ["fr/", "Elle reste allumée"]]) {
  test(`a search left half way is offered on ${language}index.html and on the guide, and is over at its ending`, async () => {
    const { context, page, wrong } = await opened(`${language}index.html`);
    assert.ok(await page.locator("[data-way-back]").isHidden());
    await page.goto(url(site, `${language}faults/foil-stays-lit.html`));
    await follow(page, page.locator("ul.answers").last().locator("a").filter({ hasText: stays }));
    const question = await page.locator("h1").innerText();
    const left = page.url();
    await page.goto(url(site, `${language}index.html`));
    await follow(page, page.locator("[data-way-back] a"));
    assert.equal(page.url(), left);
    assert.equal(await page.locator("h1").innerText(), question);
    await page.goto(url(site, `${language}faults/foil-dark-on-tester.html`));
    assert.ok(await page.locator("[data-way-back]").isHidden(), "another guide has no way back of its own");
    await page.goto(left);
    while ((await page.locator("ul.answers").count()) > 0) await follow(page, page.locator("ul.answers").last().locator("a"));
    await page.goto(url(site, `${language}index.html`));
    assert.ok(await page.locator("[data-way-back]").isHidden());
    assert.deepEqual(wrong, []);
    await context.close();
  });
}

test("what somebody else wrote into the storage does not become a link", async () => {
  const { context, page } = await opened("index.html");
  await page.evaluate(() => window.localStorage.setItem("coquille:here", JSON.stringify([{ address: "javascript:alert(1)", title: "x" }, null, 7])));
  await page.reload();
  assert.ok(await page.locator("[data-way-back]").isHidden());
  await context.close();
});

test("the summary to hand over holds what was seen, answered, left and open, and can be copied", async () => {
  const { context, page, wrong } = await opened("faults/foil-stays-lit.html");
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  await follow(page, page.locator("ul.answers").last().locator("a").filter({ hasText: "It stays lit" }));
  await page.getByRole("button", { name: "Copy" }).click();
  await page.locator("[data-hand-over] [data-said]:not(:empty)").waitFor();
  const copied = await page.evaluate(() => window.navigator.clipboard.readText());
  for (const part of [/^Seen: Lamp stays lit/m, /as they should be\? It stays lit/, /Still possible: .*\(\d+\)/, /Open now: Take out both screws/, /minutes? spent/]) {
    assert.match(copied, part);
  }
  assert.deepEqual(wrong, []);
  await context.close();
});

test("pressing a part on the item's drawing leads to what there is at that part", async () => {
  const { context, page } = await opened("kit/foil.html");
  await follow(page, page.locator("nav.rail a").filter({ hasText: "Barrel" }));
  const place = page.locator(".kit-place:target");
  assert.equal(await place.locator("h3").innerText(), "Barrel");
  for (const inside of [/Wire worn through under the barrel/, /Tighten a loose barrel/]) assert.match(await place.innerText(), inside);
  await follow(page, place.getByRole("link", { name: "Wire worn through under the barrel" }));
  assert.ok(page.url().includes("faults/foil-stays-lit.html#"));
  await page.locator(":target").waitFor();
  await context.close();
});

test("the index by letters has words, parts and other names, each leading to its place", async () => {
  const { context, page } = await opened("all.html");
  const row = page.locator("main li").filter({ has: page.getByRole("link", { name: "bodywire", exact: true }) });
  assert.match(await row.innerText(), /see body cord/i);
  await follow(page, row.getByRole("link"));
  await page.locator(":target").waitFor();
  await context.close();
});

/** What `coquille sheet --kit` says: its boxes, and the time in all. */
async function kitSheet(context, ids, numbers) {
  const file = path.join(mkdtempSync(path.join(tmpdir(), "kit-")), "kit.html");
  execFileSync(process.env.COQUILLE, ["sheet", "--kit", ...ids, "--for", numbers, "--in", guides, "--html", "-o", file], { stdio: "ignore" });
  const page = await context.newPage();
  await page.goto(pathToFileURL(file).href);
  const boxes = await page.locator(".box-row").allInnerTexts();
  const inAll = /in all ([^.]*)\./.exec(await page.locator("body").innerText())[1];
  await page.close();
  return { boxes: boxes.map((box) => box.trim()), inAll };
}

for (const [ids, numbers, pieces] of [
  [["clean-foil-tip", "rewire-foil"], "F1..F3", "3"],
  [["clean-epee-tip", "clean-foil-tip", "rewire-epee", "wash-jacket"], "K1..K12", "12"],
  [["change-blade", "change-grip"], "F7", "1"],
]) {
  test(`what to fetch for ${ids.join(" and ")}, ticked on the page, is what the kit list says`, async () => {
    const { context, page, wrong } = await opened("fetch.html");
    const titles = [];
    for (const section of await page.locator("section.fetch").all()) {
      const link = section.locator("h2 a");
      const href = await link.getAttribute("href");
      if (!ids.some((id) => href.endsWith(`/${id}.html`))) continue;
      await section.getByLabel("Take this along").check();
      titles.push(await link.innerText());
    }
    assert.equal(titles.length, ids.length);
    await page.getByLabel("For how many pieces?").fill(pieces);
    const sheet = await kitSheet(context, ids, numbers);
    const listed = (await page.locator("[data-sum] [data-sum-of] li").allInnerTexts()).map((item) => item.trim());
    assert.deepEqual([...listed].sort(), [...sheet.boxes].sort());
    const waits = await page.locator("[data-sum] [data-waiting]").isVisible();
    const time = await page.locator(waits ? "[data-in-all]" : "[data-hands-on]").innerText();
    assert.equal(time, sheet.inAll);
    await page.getByRole("button", { name: "Start again" }).click();
    assert.equal(await page.locator("[data-sum]").isVisible(), false);
    assert.deepEqual(wrong, []);
    await context.close();
  });
}

test("without scripting each job says by itself what to fetch, and nothing asks to be ticked", async () => {
  const { context, page } = await opened("fetch.html", { javaScriptEnabled: false });
  assert.equal(await page.locator("[data-fetch]").isVisible(), false);
  assert.equal(await page.getByLabel("Take this along").first().isVisible(), false);
  assert.ok(await page.getByText("Foil wire with cup").first().isVisible());
  await context.close();
});
