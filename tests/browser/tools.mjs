// What the checks of pages share: the bound handbook, a browser that has no network, pages as trees.
//
// In: COQUILLE_SITE, COQUILLE_STATES, COQUILLE_GUIDES (tests/run sets them). The packages stand in tests/tools.

import { createRequire } from "node:module";
import { mkdtempSync, readdirSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";

export const require = createRequire(new URL("../tools/package.json", import.meta.url));
const { chromium } = require("playwright-core");

export const project = path.resolve(import.meta.dirname, "../..");
export const guides = process.env.COQUILLE_GUIDES ?? path.join(project, "guides");

/** A folder that tests/run makes. */
export function folder(name) {
  const there = process.env[name];
  if (!there) throw new Error(`${name} is not set: tests/run binds the handbook and sets it`);
  return path.resolve(there);
}

/** Every file below a folder whose name ends so, as sorted addresses with "/". */
export function files(top, ending) {
  const all = readdirSync(top, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  const addresses = all.map((entry) => path.relative(top, path.join(entry.parentPath ?? entry.path, entry.name)).split(path.sep).join("/"));
  return addresses.filter((address) => address.endsWith(ending)).sort();
}

export const url = (top, address) => pathToFileURL(path.join(top, address)).href;

/** Chromium as Debian has it, with a profile of its own and nothing that asks the network. */
export function browser() {
  return chromium.launch({
    executablePath: process.env.COQUILLE_CHROMIUM ?? "/usr/bin/chromium",
    headless: true,
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--disable-dev-shm-usage",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-default-apps",
      "--disable-sync",
      "--no-first-run",
      "--no-pings",
    ],
  });
}

/**
 * A page that notes everything a page must not do: a message on the console that is an error or a warning, a script that fails, a request
 * that leaves the folder or finds no file. `wrong` holds them.
 */
export async function watched(context, top) {
  const page = await context.newPage();
  // Nothing here is measured in time, and the machine may be busy with other tests.
  page.setDefaultTimeout(120_000);
  const wrong = [];
  const inside = pathToFileURL(top + path.sep).href;
  page.on("console", (said) => {
    if (["error", "warning"].includes(said.type())) wrong.push(`${page.url()}: the console says: ${said.text()}`);
  });
  page.on("pageerror", (error) => wrong.push(`${page.url()}: a script fails: ${error.message}`));
  page.on("request", (request) => {
    if (!request.url().startsWith(inside) && !request.url().startsWith("data:")) wrong.push(`${page.url()}: asks for ${request.url()}`);
  });
  // What was still loading when the page was left is given up by the browser; a file that is not there says so.
  page.on("requestfailed", (request) => {
    if (request.failure()?.errorText !== "net::ERR_ABORTED") wrong.push(`${page.url()}: ${request.url()} does not come`);
  });
  return { page, wrong };
}

/** Clicks the first of these links and waits for the page that it leads to. */
export async function follow(page, link) {
  const target = await link.first().evaluate((element) => element.href);
  await Promise.all([page.waitForURL(target), link.first().click()]);
}

/** Does what changes the address within the page, and waits until the scripts have heard of it. */
export async function moved(page, act) {
  const heard = page.evaluate(() => new Promise((done) => window.addEventListener("hashchange", () => done(), { once: true })));
  await act();
  await heard;
}

/**
 * What `holds` gives, asked again until it does not throw: a click waits neither for the page it leads to nor for the script that it wakes,
 * and the machine may be busy with other tests.
 */
export async function soon(holds, patience = 60_000) {
  const over = Date.now() + patience;
  for (;;) {
    try {
      return await holds();
    } catch (error) {
      if (Date.now() > over) throw error;
      await new Promise((again) => setTimeout(again, 50));
    }
  }
}

/** A place to write to that goes away with the machine's temporary files. */
export const scratch = (name) => mkdtempSync(path.join(tmpdir(), `coquille-${name}-`));

/** `work` on every item, so many at a time, in order of the items. */
export async function each(items, atATime, work) {
  const left = [...items];
  const worker = async (number) => {
    for (let item = left.shift(); item !== undefined; item = left.shift()) await work(item, number);
  };
  await Promise.all(Array.from({ length: atATime }, (_, number) => worker(number)));
}

// ---- pages as trees, read by parse5 ----

const parse5 = require("parse5");

export const parsed = (file) => parse5.parse(readFileSync(file, "utf8"));

export const attribute = (element, name) => element.attrs?.find((one) => one.name === name)?.value;
export const classes = (element) => (attribute(element, "class") ?? "").split(/\s+/);

/** Every element below, in document order. */
export function* elements(node) {
  for (const child of node.childNodes ?? []) {
    if (child.tagName) yield child;
    yield* elements(child);
  }
}

export const all = (node, is) => [...elements(node)].filter(is);
export const first = (node, is) => all(node, is)[0];
export const withClass = (name) => (element) => classes(element).includes(name);

/** The words of an element, with single blanks. */
export function words(node) {
  const text = (node) => (node.nodeName === "#text" ? node.value : (node.childNodes ?? []).map(text).join(""));
  return text(node).replace(/\s+/g, " ").trim();
}
