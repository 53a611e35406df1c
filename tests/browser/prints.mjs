// Is my print current? What a code typed in, or standing in the address, is answered with; and the same without scripts.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { browser, folder, url, watched } from "./tools.mjs";

const site = folder("COQUILLE_SITE");

let chromium;
before(async () => {
  chromium = await browser();
});
after(() => chromium.close());

async function opened(address, options = {}) {
  const context = await chromium.newContext({ viewport: { width: 360, height: 740 }, ...options });
  const { page, wrong } = await watched(context, site);
  const [file, anchor] = address.split("#");
  await page.goto(url(site, file) + (anchor ? `#${anchor}` : ""));
  return { context, page, wrong };
}

/** The code at the foot of a sheet, as it is printed. */
async function codeOf(address) {
  const { context, page } = await opened(address);
  const code = await page.locator(".title-block .code").last().textContent();
  await context.close();
  return code.trim();
}

const SHEET = "sheets/rewire-foil.html";

test("a code typed with its gap and in small letters is current", async () => {
  const code = await codeOf(SHEET);
  const { context, page, wrong } = await opened("prints.html");
  await page.getByRole("textbox", { name: /code/i }).fill(code.toLowerCase());
  await page.keyboard.press("Enter");
  const said = page.getByRole("status").filter({ hasText: code });
  assert.match(await said.textContent(), /Current/);
  assert.ok(await said.getByRole("link").first().isVisible());
  assert.deepEqual(wrong, []);
  await context.close();
});

test("what is no code, and a code of nobody's, are told apart", async () => {
  const { context, page } = await opened("prints.html");
  const field = page.getByRole("textbox", { name: /code/i });
  const said = page.locator(".print-said");
  await field.fill("hello");
  await page.keyboard.press("Enter");
  assert.match(await said.textContent(), /no code/);
  await field.fill("3333 3333");
  await page.keyboard.press("Enter");
  assert.match(await said.textContent(), /Not ours|Not the current one/);
  await context.close();
});

test("an address with a code in it answers at once, and without scripts leads to its row", async () => {
  const code = (await codeOf(SHEET)).replace(/\s/g, "");
  const { context, page } = await opened(`prints.html#code-${code}`);
  assert.match(await page.locator(".print-said").textContent(), /Current/);
  await context.close();
  const plain = await opened(`prints.html#code-${code}`, { javaScriptEnabled: false });
  assert.ok(await plain.page.locator(`#code-${code}`).isVisible());
  assert.ok(await plain.page.locator(".print-check").isHidden());
  await plain.context.close();
});
