// Sheets as Chromium prints them: A4, no line of work split between two pages, the code of the page on them.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { after, before, test } from "node:test";
import { all, browser, classes, files, folder, parsed, scratch, url, watched, withClass, words } from "./tools.mjs";

const site = folder("COQUILLE_SITE");
const paper = scratch("print");

let chromium;
before(async () => {
  chromium = await browser();
});
after(() => chromium.close());

/** Letters and figures alone: what a line says, wherever it is broken. */
const letters = (text) => text.normalize("NFKC").replace(/[^\p{L}\p{N}]/gu, "");

/** Prints a page; the letters of every page of paper, and its size in points. `change` runs on the page before. */
async function printed(address, change) {
  const context = await chromium.newContext();
  const { page } = await watched(context, site);
  await page.goto(url(site, address));
  if (change) await page.evaluate(change);
  const file = path.join(paper, `${address.replaceAll("/", "-")}.pdf`);
  writeFileSync(file, await page.pdf({ preferCSSPageSize: true }));
  await context.close();
  const size = execFileSync("pdfinfo", [file], { encoding: "utf8" }).match(/Page size:\s+([\d.]+) x ([\d.]+)/);
  const text = execFileSync("pdftotext", ["-raw", "-enc", "UTF-8", file, "-"], { encoding: "utf8" });
  const pages = text.split("\f").map(letters).filter((page) => page !== "");
  return { pages, width: Number(size[1]), height: Number(size[2]) };
}

/** The lines of a sheet as their letters. */
function lines(address) {
  const list = all(parsed(path.join(site, address)), (element) => element.tagName === "ol" && classes(element).includes("lines"));
  assert.equal(list.length, 1, `${address} has one list of lines`);
  return list[0].childNodes.filter((child) => child.tagName === "li").map((line) => letters(words(line))).filter(Boolean);
}

const split = (address, pages) => lines(address).filter((line) => !pages.some((page) => page.includes(line)));

const sheets = files(site, ".html").filter((address) => address.startsWith("sheets/"));

test("there is a sheet for every fault, job and check", () => {
  const guides = files(site, ".html").filter((address) => /^(faults|jobs|checks)\/[^/]+\.html$/.test(address));
  assert.deepEqual(sheets.map((sheet) => path.basename(sheet)).sort(), guides.map((guide) => path.basename(guide)).sort());
});

for (const address of sheets) {
  test(`${address} is printed on A4 with every line whole`, async () => {
    const { pages, width, height } = await printed(address);
    assert.ok(Math.abs(width - 595.28) < 1 && Math.abs(height - 841.89) < 1, `A4, not ${width} × ${height} pt`);
    assert.deepEqual(split(address, pages), [], `lines that stand on no page as a whole (${pages.length} pages)`);
    const code = readFileSync(path.join(site, address), "utf8").match(/data-code="(\w+)"/)[1];
    assert.ok(pages.at(-1).includes(code), `the last page has the code ${code}`);
    assert.ok(!pages.some((page) => page.includes("Printwithnoscaling")), "the bar for the screen is not printed");
  });
}

test("a line that may be split is seen to be", async () => {
  const longest = sheets.reduce((best, sheet) => (lines(sheet).length > lines(best).length ? sheet : best));
  const { pages } = await printed(longest, () => {
    const style = new CSSStyleSheet();
    style.replaceSync("@media print { .lines > li, .lines li * { break-inside: auto !important; display: block !important; line-height: 60mm; orphans: 1; widows: 1 } }");
    document.adoptedStyleSheets = [style];
  });
  assert.notDeepEqual(split(longest, pages), []);
});

test("every sheet has its code for the net, fields at its head, and boxes to tick", () => {
  for (const address of sheets) {
    const page = parsed(path.join(site, address));
    assert.equal(all(page, (element) => classes(element).includes("qr")).length, 1, `${address} has a QR code`);
    assert.ok(all(page, withClass("title-block")).length >= 2, `${address} has fields at its head and its code at its foot`);
    assert.ok(all(page, withClass("box")).length >= 3, `${address} has boxes`);
  }
});

test("a symptom sheet says how long each question takes, how much is found by then, and what it can have been", () => {
  const page = parsed(path.join(site, "sheets/foil-stays-lit.html"));
  const asides = all(page, withClass("line-aside")).map(words);
  assert.ok(asides.length >= 5);
  for (const aside of asides) assert.match(aside, /min, (under |over )?\d+ in 100 found by then/);
  const numbers = asides.map((aside) => Number(aside.match(/(\d+) in 100/)[1]));
  assert.deepEqual(numbers, [...numbers].sort((one, other) => one - other), "what is found only grows");
  assert.match(words(page), /What it was/);
});

test("a page of the handbook prints without what is only for the screen", async () => {
  const { pages } = await printed("jobs/rewire-foil.html");
  assert.ok(pages[0].includes("Rewireafoilblade"));
  assert.ok(!pages.join("").includes("Findapage"));
});
