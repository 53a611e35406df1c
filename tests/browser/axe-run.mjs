// axe-core on a page that Chromium shows: WCAG 2.0 to 2.2, levels A and AA, and axe's best practice.

import { readFileSync } from "node:fs";
import { require } from "./tools.mjs";

const source = readFileSync(require.resolve("axe-core/axe.min.js"), "utf8");
const TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22a", "wcag22aa", "best-practice"];

/** The rules that look at colours: all that can change with the scheme, since style sheets give colours alone by scheme. */
const OF_COLOURS = ["color-contrast", "link-in-text-block"];

/** The rules that look at sizes: what can change with the width of a page whose words and order stay. */
const OF_SIZES = ["target-size", "scrollable-region-focusable"];

/** What axe finds on a page, a line each; `switchedOff` are ids of rules, whose reasons stand where they are named. */
export const axeFinds = (page, switchedOff = []) => finds(page, { type: "tag", values: TAGS }, switchedOff);

/** The same of its colours alone, for a page that was looked at in another scheme. */
export const axeFindsOfColours = (page) => finds(page, { type: "rule", values: OF_COLOURS }, []);

/** The same of its sizes alone, for a page that was looked at in another width. */
export const axeFindsOfSizes = (page) => finds(page, { type: "rule", values: OF_SIZES }, []);

async function finds(page, runOnly, switchedOff) {
  // Handed over by the debugger, so that the page's own policy stays in force.
  if (!(await page.evaluate("typeof window.axe === 'object'"))) await page.evaluate(source);
  const found = await page.evaluate(
    ([only, off]) =>
      window.axe.run(document, {
        runOnly: only,
        rules: Object.fromEntries(off.map((id) => [id, { enabled: false }])),
        resultTypes: ["violations"],
        preload: false, // else axe fetches the style sheets itself, which the page's policy rightly forbids
      }),
    [runOnly, switchedOff],
  );
  return found.violations.flatMap((rule) =>
    rule.nodes.slice(0, 4).map((node) => `${rule.id}: ${node.target.join(" ")}: ${node.failureSummary.split("\n")[1]?.trim()} ${node.html.slice(0, 160)}`),
  );
}

/** Leaves the first so many of a long list's items, which are all alike: axe takes half a minute for a thousand of them. */
export const shortenLists = (page, most = 60) =>
  page.evaluate((most) => {
    for (const list of document.querySelectorAll("ul, ol, tbody, dl")) [...list.children].slice(most).forEach((item) => item.remove());
  }, most);

/** How many pixels a page can be pushed sideways. */
export const sideways = (page) => page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** Which elements reach out of the page at the side. */
export const reachingOut = (page) =>
  page.evaluate(() => {
    const width = document.documentElement.clientWidth;
    const out = [...document.querySelectorAll("body *")].filter((element) => element.getBoundingClientRect().right > width + 1);
    return out.slice(0, 3).map((element) => element.outerHTML.slice(0, 120));
  });
