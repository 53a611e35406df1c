// The forms in which a handbook is passed on, as a person uses them: the one file alone in an empty folder, with scripts and
// without; the book by epubcheck; the folder kept by a phone from an https address.
//
// In: COQUILLE_PASSED, a folder with what `bind --as folder,zip,single,epub` made of guides/ under the name `handbook`.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { copyFileSync, mkdirSync, readFileSync, statSync } from "node:fs";
import https from "node:https";
import path from "node:path";
import { after, before, test } from "node:test";
import { browser, folder, moved, require, scratch, soon, url, watched } from "./tools.mjs";

const passed = folder("COQUILLE_PASSED");
const alone = scratch("alone");
copyFileSync(path.join(passed, "handbook.html"), path.join(alone, "handbook.html"));

let chromium;
before(async () => {
  chromium = await browser();
});
after(() => chromium.close());

async function opened(fragment = "", settings = {}) {
  const context = await chromium.newContext({ viewport: { width: 360, height: 800 }, ...settings });
  const { page, wrong } = await watched(context, alone);
  await page.goto(url(alone, "handbook.html") + fragment);
  return { context, page, wrong };
}

/** The ids of the sections that are shown. */
const shown = (page) => page.locator(".leaf").evaluateAll((leaves) => leaves.filter((leaf) => leaf.checkVisibility()).map((leaf) => leaf.id));

/** Waits until this section is shown, and no other. */
const shows = (page, section, why) => soon(async () => assert.deepEqual(await shown(page), [section], why));

/** Waits until one section is shown whose id is so, and says which. */
function showsOne(page, wanted) {
  return soon(async () => {
    const [section, ...others] = await shown(page);
    assert.deepEqual(others, []);
    assert.match(section, wanted);
    return section;
  });
}

test("the one file is small enough to send", () => {
  assert.ok(statSync(path.join(alone, "handbook.html")).size < 6_000_000);
});

for (const javaScriptEnabled of [true, false]) {
  const how = javaScriptEnabled ? "" : ", scripting off";
  test(`alone in a folder it opens on the front page and leads to a cause${how}`, async () => {
    const { context, page, wrong } = await opened("", { javaScriptEnabled });
    await shows(page, "index");
    const lead = async (link) => {
      const to = (await link.getAttribute("href")).slice(1);
      await link.click();
      return soon(async () => {
        const [section, ...others] = await shown(page);
        assert.deepEqual(others, []);
        assert.ok(section === to || (await page.locator(`[id="${section}"] [id="${to}"]`).count()) === 1, `${to} is not in ${section}`);
        return section;
      });
    };
    const fault = page.locator("#index").getByRole("link", { name: /Lamp stays lit when the tip is pressed/ }).first();
    assert.equal(await lead(fault), "faults-foil-stays-lit");
    let section = "faults-foil-stays-lit";
    for (let question = 0; question < 12; question += 1) {
      // On the fault's own section the steps that isolate come first; the question is the last.
      const answers = page.locator(`[id="${section}"] ul[aria-label="Answers"]`).last().getByRole("link");
      if ((await answers.count()) === 0) break;
      section = await lead(answers.first());
    }
    assert.match(section, /^end-[0-9a-f]{8}$/);
    const job = page.locator(`[id="${section}"]`).getByRole("link", { name: /Do it/ }).first();
    assert.match(await lead(job), /^jobs-/);
    await page.goBack();
    await shows(page, section);
    assert.deepEqual(wrong, []);
    await context.close();
  });
}

test("the switch of wording holds for every section, scripting off", async () => {
  const { context, page } = await opened("#jobs-rewire-foil", { javaScriptEnabled: false });
  const words = async () => (await page.locator("#jobs-rewire-foil").innerText()).length;
  const full = await words();
  await page.locator(".one-file-words").getByRole("radio", { name: "short" }).check({ force: true });
  assert.ok((await words()) < full);
  await context.close();
});

test("search finds a section and leads there, and the window is called after it", async () => {
  const { context, page, wrong } = await opened();
  await page.locator(".top").getByRole("link", { name: "Find" }).click();
  await page.keyboard.type("rewire foil");
  const found = page.locator(".search ol a").first();
  await found.waitFor();
  assert.equal(await found.getAttribute("href"), "#jobs-rewire-foil");
  await found.click();
  await shows(page, "jobs-rewire-foil");
  await page.waitForFunction(() => document.title.startsWith("Rewire a foil blade"));
  assert.deepEqual(wrong, []);
  await context.close();
});

test("ticks and readings are kept, judged, and cleared for the section alone", async () => {
  const { context, page, wrong } = await opened("#jobs-rewire-foil");
  const ticks = page.locator("#jobs-rewire-foil input[type=checkbox]");
  await ticks.nth(1).check();
  const reading = page.locator("#jobs-rewire-foil .reading[data-at-most]").first();
  await reading.locator("input[data-keep]").fill("1000000");
  assert.equal((await reading.locator("output").innerText()).trim(), "outside");
  await moved(page, () => page.evaluate(() => { location.hash = "#jobs-fit-foil-tip"; }));
  const other = page.locator("#jobs-fit-foil-tip input[type=checkbox]").first();
  await other.check();
  await page.reload();
  assert.ok(await other.isChecked());
  await moved(page, () => page.evaluate(() => { location.hash = "#jobs-rewire-foil"; }));
  assert.ok(await ticks.nth(1).isChecked());
  assert.equal((await reading.locator("output").innerText()).trim(), "outside", "a reading that was kept is judged again");
  await page.locator("#jobs-rewire-foil").getByRole("button", { name: "Clear my ticks and readings" }).click();
  await page.reload();
  assert.equal(await ticks.nth(1).isChecked(), false);
  assert.ok(await other.isChecked(), "the other section keeps its own");
  assert.deepEqual(wrong, []);
  await context.close();
});

test("what comes after “I cannot tell” is unfolded, and is said to be folded with scripting off", async () => {
  const unsure = (page) => page.locator("#faults-foil-stays-lit").getByRole("link", { name: "I cannot tell" }).last();
  const { context, page, wrong } = await opened("#faults-foil-stays-lit");
  const unfolded = () => page.locator(".leaf").count();
  const before = await unfolded();
  await unsure(page).click();
  const section = await showsOne(page, /-[0-9a-f]{8}$/);
  assert.equal(await unfolded(), before + 1, "the section that was asked for, and no other");
  await page.locator(`[id="${section}"]`).getByRole("link", { name: "I cannot tell" }).click();
  const ending = await showsOne(page, new RegExp(`^(?!${section}$)`));
  const handOver = page.locator(`[id="${ending}"] [data-hand-over]`);
  await soon(async () => assert.match(await handOver.innerText(), /I cannot tell[^]*I cannot tell/));
  await handOver.getByRole("button", { name: "Copy" }).click();
  await handOver.getByText("Copied.").waitFor();
  await page.reload();
  await shows(page, ending, "its address leads there again");
  assert.deepEqual(wrong, []);
  await context.close();

  const plain = await opened("#faults-foil-stays-lit", { javaScriptEnabled: false });
  await unsure(plain.page).click();
  await shows(plain.page, "folded");
  assert.match(await plain.page.locator("#folded").innerText(), /Switch scripting on/);
  await plain.context.close();
});

/** Does what the bench says next until it is known, then names a cause that is left and what mends it. */
async function found(bench) {
  for (let steps = 0; steps < 12 && (await bench.locator("[data-enough]").isHidden()); steps += 1) {
    await bench.locator("[data-probe]").filter({ has: bench.page().locator("[data-next]:visible") }).getByRole("button").click();
  }
  const left = await bench.locator("[data-suspect]:visible").first().getAttribute("data-suspect");
  const mends = await bench.evaluate((section, at) => JSON.parse(section.querySelector("[data-rehearsal]").content.textContent).suspects[at].remedy, Number(left));
  await named(bench, left, String(mends));
}

async function named(bench, cause, remedy = { index: 1 }) {
  await bench.locator("[data-cause]").selectOption(cause);
  await bench.locator("[data-remedy]").selectOption(remedy);
  await bench.getByRole("button", { name: "Name it and see" }).click();
}

test("the practice bench is chosen, a fault is found on it, and the way stands beside the least-cost one", async () => {
  const { context, page, wrong } = await opened("", { acceptDownloads: true });
  await page.locator("footer").getByRole("link", { name: "Practice bench" }).click();
  await shows(page, "practice");
  await page.locator("#practice").getByRole("link", { name: "Lamp stays lit when the tip is pressed: With help" }).click();
  await shows(page, "practice-foil-stays-lit");
  await soon(() => assert.match(page.url(), /#practice-foil-stays-lit\?seed=[A-Z0-9]{4}&level=1$/, "the word is in the address"));
  const bench = page.locator("#practice-foil-stays-lit");
  assert.ok((await page.evaluate(() => document.documentElement.scrollWidth)) <= 360);
  await found(bench);
  assert.ok(await bench.locator("[data-verdict='remedy right']").isVisible());
  const total = (way) => bench.locator(`[data-way=${way}] [data-total]`).getAttribute("data-tenths");
  assert.ok(Number(await total("least")) > 0);
  assert.equal(await total("own"), await total("least"), "who does as told needs no more minutes");
  assert.ok((await bench.locator("[data-way=own] tbody tr").count()) > 0);
  assert.ok(await page.evaluate(() => document.activeElement.matches("#practice-foil-stays-lit [data-outcome] h2")));

  // What is kept is kept over a reload, stands on the list of exercises too, and goes into a table.
  await page.reload();
  await shows(page, "practice-foil-stays-lit");
  await page.locator("footer").getByRole("link", { name: "Practice bench" }).click();
  const results = page.locator("#practice [data-results]");
  await soon(async () => assert.equal(await results.locator("tbody tr").count(), 1));
  const [download] = await Promise.all([page.waitForEvent("download"), results.locator("[data-file]").click()]);
  const file = path.join(scratch("csv"), "practice.csv");
  await download.saveAs(file);
  assert.match(readFileSync(file, "utf8"), /"Lamp stays lit when the tip is pressed"/);
  const pdf = path.join(scratch("print"), "results.pdf");
  await page.pdf({ path: pdf, preferCSSPageSize: true });
  const printed = execFileSync("pdftotext", [pdf, "-"], { encoding: "utf8" });
  assert.match(printed, /Results on this device/);
  assert.doesNotMatch(printed, /What do you see\?/);
  assert.deepEqual(wrong, []);
  await context.close();
});

test("a teacher’s address sets the same fault for everybody, as it does in the folder", async () => {
  const causes = [];
  for (const seed of ["K7Q", "k7q", "é #1"]) {
    const { context, page, wrong } = await opened(`#practice-foil-stays-lit?seed=${encodeURIComponent(seed)}&level=2`);
    await shows(page, "practice-foil-stays-lit");
    const bench = page.locator("#practice-foil-stays-lit");
    assert.ok(await bench.locator("[data-possible]").isHidden(), "the level is the one of the address");
    assert.equal(await bench.locator("[data-seed]").inputValue(), seed.toUpperCase());
    await named(bench, "1");
    causes.push(await bench.locator("[data-was]").innerText());
    await page.goto(`${url(path.join(passed, "handbook"), "practice/foil-stays-lit.html")}#seed=${encodeURIComponent(seed)}&level=2`);
    await named(page.locator("main"), "1");
    assert.equal(await page.locator("[data-was]").innerText(), causes.at(-1), "the folder sets the same");
    assert.deepEqual(wrong.filter((what) => !what.includes("asks for")), []);
    await context.close();
  }
  assert.equal(causes[0], causes[1]);
});

test("on the bench: another fault, another level, away to read and back, and two benches side by side", async () => {
  const { context, page, wrong } = await opened("#practice-foil-stays-lit?seed=K7Q&level=1");
  const bench = page.locator("#practice-foil-stays-lit");
  await bench.locator("[data-probe] button").first().click();
  const spent = await bench.locator("[data-minutes]").innerText();
  assert.notEqual(spent, "0");
  await bench.getByRole("link", { name: /Back to|Lamp stays lit/ }).last().click();
  await shows(page, "faults-foil-stays-lit");
  await page.goBack();
  await shows(page, "practice-foil-stays-lit");
  assert.equal(await bench.locator("[data-minutes]").innerText(), spent, "what was done is still done");
  await bench.getByRole("link", { name: "From memory" }).click();
  await page.waitForURL(/\?seed=K7Q&level=3$/);
  await shows(page, "practice-foil-stays-lit");
  await bench.locator("[data-set]").getByRole("button", { name: "Another fault" }).click();
  await page.waitForURL((address) => !address.href.includes("K7Q"));
  await shows(page, "practice-foil-stays-lit");
  await page.goBack();
  await page.waitForURL(/K7Q/);
  await shows(page, "practice-foil-stays-lit");
  await moved(page, () => page.evaluate(() => { location.hash = "#practice-foil-white-burns?seed=CARD-1&level=2"; }));
  await shows(page, "practice-foil-white-burns");
  await named(page.locator("#practice-foil-white-burns"), "0");
  assert.ok(await page.locator("#practice-foil-white-burns [data-outcome]").isVisible());
  await page.waitForFunction(() => document.title.startsWith("White lamp"));
  assert.deepEqual(wrong, []);
  await context.close();
});

test("without scripting the bench is said to be folded, and its cards are there to print", async () => {
  const { context, page } = await opened("#practice", { javaScriptEnabled: false });
  await page.locator("#practice").getByRole("link", { name: "Lamp stays lit when the tip is pressed: On your own" }).click();
  await shows(page, "folded");
  await page.locator("#folded").getByRole("link", { name: "All exercises" }).click();
  await shows(page, "practice");
  await page.locator("#practice").getByRole("link", { name: /^Lamp stays lit when the tip is pressed: .* cards/ }).click();
  await shows(page, "practice-cards-foil-stays-lit");
  const section = page.locator("#practice-cards-foil-stays-lit");
  const back = section.getByText("Back of card 1", { exact: true });
  assert.equal(await back.count(), 1);
  assert.ok(await back.isHidden());
  await section.getByLabel("Show the back of card 1", { exact: true }).check();
  assert.ok(await back.isVisible());
  const pdf = path.join(scratch("cards"), "cards.pdf");
  await page.pdf({ path: pdf, preferCSSPageSize: true });
  const printed = execFileSync("pdftotext", ["-layout", pdf, "-"]).toString().split("\f").filter((text) => text.trim());
  assert.equal(printed.length, 2 * (await section.getByRole("article").count()));
  printed.forEach((text, at) => assert.match(text, at % 2 === 0 ? /^\s*Card \d+:/ : /^\s*Back of card \d+/));
  await context.close();
});

test("it prints the sheet that is shown and no other", async () => {
  const { context, page } = await opened("#sheets-rewire-foil");
  const pdf = path.join(scratch("print"), "sheet.pdf");
  await page.pdf({ path: pdf, preferCSSPageSize: true });
  const text = execFileSync("pdftotext", [pdf, "-"], { encoding: "utf8" });
  assert.match(text, /Rewire a foil blade/);
  assert.doesNotMatch(text, /What do you see/);
  const pages = Number(/^Pages:\s+(\d+)/m.exec(execFileSync("pdfinfo", [pdf], { encoding: "utf8" }))[1]);
  assert.ok(pages >= 1 && pages <= 5, `${pages} pages`);
  await context.close();
});

test("pictures, cautions and figures are there, and nothing is wider than a phone", async () => {
  const { context, page, wrong } = await opened("#circuits-foil-on-the-bench");
  for (const section of ["circuits-foil-on-the-bench", "faults-foil-stays-lit", "jobs-fit-foil-tip"]) {
    await page.goto(`${url(alone, "handbook.html")}#${section}`);
    await shows(page, section);
    assert.ok((await page.evaluate(() => document.documentElement.scrollWidth)) <= 360, section);
    const drawings = page.locator(`#${section} svg:visible`);
    assert.ok((await drawings.count()) > 0, section);
    const empty = await drawings.evaluateAll((all) => all.filter((svg) => !svg.closest("label") && svg.getBBox().width === 0).length);
    assert.equal(empty, 0, `${section}: a drawing without anything in it`);
  }
  assert.deepEqual(wrong, []);
  assert.match(await page.locator("#jobs-fit-foil-tip").innerText(), /CAUTION|WARNING|DANGER/);
  const picture = page.locator("#jobs-fit-foil-tip").getByRole("img").first();
  assert.ok((await picture.boundingBox()).height > 40);
  await context.close();
});

test("the book is valid: epubcheck has neither errors nor warnings", () => {
  const said = execFileSync("java", ["-jar", process.env.EPUBCHECK ?? "/usr/bin/epubcheck", "--failonwarnings", path.join(passed, "handbook.epub")], {
    encoding: "utf8",
    stdio: ["ignore", "pipe", "pipe"],
  });
  assert.match(said, /No errors or warnings detected/);
});

test("from an https address the browser keeps the handbook and shows it with the server gone", async () => {
  const keys = scratch("keys");
  const [key, certificate] = [path.join(keys, "key.pem"), path.join(keys, "certificate.pem")];
  execFileSync("openssl", ["req", "-x509", "-newkey", "rsa:2048", "-nodes", "-keyout", key, "-out", certificate, "-days", "2", "-subj", "/CN=localhost"], { stdio: "ignore" });
  const site = path.join(passed, "handbook");
  const types = { ".html": "text/html", ".js": "text/javascript", ".css": "text/css", ".svg": "image/svg+xml", ".webmanifest": "application/manifest+json" };
  const server = https.createServer({ key: readFileSync(key), cert: readFileSync(certificate) }, (asked, answer) => {
    const file = path.join(site, decodeURIComponent(new URL(asked.url, "https://localhost").pathname).replace(/\/$/, "/index.html"));
    try {
      const bytes = readFileSync(file);
      answer.writeHead(200, { "content-type": types[path.extname(file)] ?? "text/plain" }).end(bytes);
    } catch {
      answer.writeHead(404).end();
    }
  });
  await new Promise((done) => server.listen(0, "127.0.0.1", done));
  const profile = scratch("profile");
  mkdirSync(profile, { recursive: true });
  const { chromium: engine } = require("playwright-core");
  const context = await engine.launchPersistentContext(profile, {
    executablePath: process.env.COQUILLE_CHROMIUM ?? "/usr/bin/chromium",
    args: ["--no-sandbox", "--ignore-certificate-errors", "--allow-insecure-localhost"],
    ignoreHTTPSErrors: true,
  });
  try {
    const page = await context.newPage();
    const wrong = [];
    page.on("console", (said) => said.type() === "error" && wrong.push(`${said.text()} ${said.location().url}`));
    const address = `https://localhost:${server.address().port}/`;
    await page.goto(address);
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
    assert.deepEqual(wrong, []);
    server.closeAllConnections();
    await new Promise((done) => server.close(done));
    await page.goto(`${address}faults/foil-stays-lit.html`);
    assert.equal(await page.locator("h1").innerText(), "Lamp stays lit when the tip is pressed");
    await page.goto(address);
    assert.equal(await page.locator("h1").innerText(), "What do you see?");
  } finally {
    await context.close();
    server.close();
  }
});
