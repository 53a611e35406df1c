// Letters twice as big: nothing runs off the side, and the club's name keeps its words whole. And what readers press beside the guides:
// the sheet's Print button, the answers before the questions, the note of the practice bench that a field is empty.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { browser, folder, soon, url, watched } from "./tools.mjs";

const site = folder("COQUILLE_SITE");
const PAGES = [
  "index.html", "lamps.html", "limits.html", "prints.html", "kit/foil.html", "kit/body-cord.html", "checks/bag-before-an-event.html",
  "faults/foil-stays-lit.html", "faults/foil-white-burns.html", "circuits/foil-bout.html", "lamps/foil-on-apparatus.html",
  "jobs/reseat-socket-wire.html", "practice/foil-stays-lit.html", "fr/index.html",
];

let chromium;
before(async () => {
  chromium = await browser();
});
after(() => chromium.close());

async function opened(address, width) {
  const context = await chromium.newContext({ viewport: { width, height: 800 } });
  const { page, wrong } = await watched(context, site);
  await page.goto(url(site, address));
  return { context, page, wrong };
}

for (const width of [360, 768, 1280]) {
  test(`with letters twice as big no page is wider than a screen of ${width}`, async () => {
    for (const address of PAGES) {
      const { context, page } = await opened(address, width);
      const { wide, name, word } = await page.evaluate(() => {
        document.documentElement.style.fontSize = "200%";
        const club = document.querySelector(".club");
        const longest = document.createElement("span");
        longest.textContent = club.textContent.trim().split(/\s+/).sort((one, other) => other.length - one.length)[0];
        longest.style.cssText = "position: absolute; white-space: nowrap; font-weight: 700; font-size: 1rem";
        document.body.append(longest);
        const word = longest.getBoundingClientRect().width;
        longest.remove();
        return { wide: document.documentElement.scrollWidth, name: club.getBoundingClientRect().width, word };
      });
      assert.ok(wide <= width, `${address}: ${wide} > ${width}`);
      assert.ok(name >= Math.floor(word), `${address}: the name has ${name} for a word of ${word}`);
      await context.close();
    }
  });
}

test("a sheet has a button that prints it, and none without scripts", async () => {
  const { context, page, wrong } = await opened("sheets/foil-stays-lit.html", 360);
  await page.evaluate(() => (window.print = () => (document.title = "printed")));
  await page.getByRole("button", { name: "Print", exact: true }).click();
  assert.equal(await page.title(), "printed");
  assert.deepEqual(wrong, []);
  await context.close();
  const without = await chromium.newContext({ javaScriptEnabled: false });
  const plain = await without.newPage();
  await plain.goto(url(site, "sheets/foil-stays-lit.html"));
  assert.equal(await plain.getByRole("button").count(), 0);
  await without.close();
});

test("before the questions, an answer goes on to question 1 and another to another guide", async () => {
  const { context, page } = await opened("faults/foil-stays-lit.html", 360);
  const answers = page.locator("section:has(> [id$='-first']) .answers a");
  const leads = await answers.evaluateAll((links) => links.map((link) => link.getAttribute("href")));
  assert.ok(leads.some((href) => href.endsWith("-question")) && leads.some((href) => href.includes(".html")), String(leads));
  await answers.and(page.locator("[href$='-question']")).click();
  await soon(async () => {
    const top = await page.locator(".ask-now > [id$='-question']").evaluate((heading) => heading.getBoundingClientRect().top);
    assert.ok(top >= 0 && top < 400, `question 1 is at ${top}`);
  });
  await context.close();
});

test("on the bench a missing choice is said beside the button, its field is ready, and the note goes when both are chosen", async () => {
  const { context, page } = await opened("practice/foil-stays-lit.html", 360);
  const note = page.locator("[data-lacking]");
  assert.equal(await note.isVisible(), false);
  await page.locator("[data-judge]").click();
  assert.equal(await note.isVisible(), true);
  assert.equal(await page.evaluate(() => document.activeElement.hasAttribute("data-cause")), true);
  await page.locator("[data-cause]").selectOption("0");
  await page.locator("[data-judge]").click();
  assert.equal(await page.evaluate(() => document.activeElement.hasAttribute("data-remedy")), true);
  await page.locator("[data-remedy]").selectOption("0");
  assert.equal(await note.isVisible(), false);
  await context.close();
});

test("search finds the handbook's own pages and says which item a page is about", async () => {
  const { context, page } = await opened("index.html", 360);
  const field = page.locator("form.search input");
  for (const [words, href] of [["juniors", "juniors.html"], ["bench sheets", "sheets.html"], ["is my print current", "prints.html"]]) {
    await field.fill(words);
    await page.locator(`form.search ol a[href$="${href}"]`).first().waitFor();
  }
  await field.fill("lamp stays lit");
  const hit = page.locator("form.search ol a[href$='faults/foil-stays-lit.html']");
  await hit.waitFor();
  assert.match(await hit.textContent(), /Foil/);
  await context.close();
});
