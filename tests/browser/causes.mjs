// Whoever has a fault and answers as that fault would, in every possible way, comes to an ending that names it or its remedy.
//
// The answers come from the guides as a person wrote them, read by js-yaml; the pages are only followed by their links. Nothing of the
// program's own reckoning is used.

import assert from "node:assert/strict";
import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import { test } from "node:test";
import { all, attribute, files, first, folder, guides, parsed, require, withClass, words } from "./tools.mjs";

const yaml = require("js-yaml");
const site = folder("COQUILLE_SITE");

/** A list, where one value may stand for a list of one. */
const many = (value) => (value === undefined || value === null ? [] : Array.isArray(value) ? value : [value]);
const plain = (text) => String(text).replace(/\s+/g, " ").trim();
const NOT_LISTED = Symbol("not on this list");

const symptoms = files(guides, ".yaml")
  .map((file) => yaml.load(readFileSync(path.join(guides, file), "utf8")))
  .filter((guide) => guide.symptom);

// ---- what a cause answers ----

/** The causes that an answer names: "a", ["a", otherwise], {cause: a, times: 2 in 3}. */
const meant = (answer) => many(answer.means).map((one) => (typeof one === "object" ? one : { cause: one }));

const isSure = (one) => {
  if (one.times === undefined) return true;
  const [times, of] = String(one.times).split("in").map(Number);
  return times >= of;
};

/** The words of every answer that a cause may give to a probe. */
function answersOf(probe, cause) {
  if (many(probe.mends).length) return [many(probe.mends).includes(cause) ? "It works now" : "No change"];
  const title = (answer) => plain(answer.title ?? String(answer.answer).replaceAll("-", " "));
  const named = probe.answers.filter((answer) => meant(answer).some((one) => one.cause === cause));
  const otherwise = probe.answers.filter((answer) => meant(answer).some((one) => one.cause === "otherwise"));
  assert.equal(otherwise.length, 1, `${probe.probe} has one answer that is otherwise`);
  // "2 in 3" on a single answer leaves 1 in 3 for the unremarkable one.
  const unsure = named.length === 1 && !isSure(meant(named[0]).find((one) => one.cause === cause));
  const given = named.length === 0 ? otherwise : unsure ? [...named, ...otherwise] : named;
  return [...new Set(given.map(title))];
}

// ---- pages ----

const known = new Map();

function page(address) {
  if (!known.has(address)) {
    assert.ok(existsSync(path.join(site, address)), `${address} is there`);
    const tree = parsed(path.join(site, address));
    known.set(address, { address, main: first(tree, (element) => element.tagName === "main"), tree });
  }
  return known.get(address);
}

const to = (from, href) => path.posix.join(path.posix.dirname(from), href.split("#")[0]);

/** The answers that a page offers, by their words; none at an ending. */
function offered({ address, main }) {
  // On a guide's own page the question stands last, below what isolates the fault.
  const list = all(main, withClass("answers")).at(-1);
  const links = list ? all(list, (element) => element.tagName === "a") : [];
  return new Map(links.map((link) => [words(first(link, withClass("answer-name"))), to(address, attribute(link, "href"))]));
}

/** The probe that a page asks: the one whose question is a heading of it. */
function asked(guide, { main }) {
  const headings = all(main, (element) => /^h[12]$/.test(element.tagName)).map(words);
  return guide.probes.find((probe) => headings.includes(plain(probe.ask)));
}

/** Every page that a cause comes to when no question is left. */
function endings(guide, cause, address, way = []) {
  const here = page(address);
  const answers = offered(here);
  if (answers.size === 0) return [{ here, way }];
  const probe = asked(guide, here);
  assert.ok(probe, `${address} asks a question of the guide ${guide.symptom}`);
  return answersOf(probe, cause).flatMap((answer) => {
    const next = answers.get(answer);
    const so = [...way, `${probe.probe}: ${answer}`];
    assert.ok(next, `${guide.symptom}, ${String(cause)}: ${address} has no answer "${answer}" (after ${so.join("; ")})`);
    return endings(guide, cause, next, so);
  });
}

/** Whether an ending says this cause by its name, or offers its lasting remedy. */
function names({ address, main }, title, remedy) {
  const links = all(main, (element) => element.tagName === "a").map((link) => to(address, attribute(link, "href") ?? ""));
  return words(main).includes(plain(title)) || (remedy !== undefined && links.includes(`jobs/${remedy}.html`));
}

for (const guide of symptoms) {
  const start = `faults/${guide.symptom}.html`;

  for (const cause of guide.causes) {
    test(`${guide.symptom}: "${cause.title}" is led to itself or its remedy`, () => {
      for (const { here, way } of endings(guide, cause.cause, start)) {
        assert.ok(names(here, cause.title, cause.lasting), `${here.address} names neither (after ${way.join("; ")})`);
      }
    });
  }

  if (guide["not on this list"]) {
    test(`${guide.symptom}: what is not on the list is told so, with advice`, () => {
      const advice = plain(guide["not on this list"].says).split(/[.<*[]/)[0];
      for (const { here, way } of endings(guide, NOT_LISTED, start)) {
        assert.ok(words(here.main).includes(advice), `${here.address} has no advice (after ${way.join("; ")})`);
      }
    });
  }
}

test("every page of questions and endings is on somebody's way, with or without \"I cannot tell\"", () => {
  for (const guide of symptoms) {
    const seen = new Set();
    const walk = (address) => {
      if (seen.has(address)) return;
      seen.add(address);
      const here = page(address);
      const unsure = first(here.main, withClass("unsure"));
      const cannot = unsure ? all(unsure, (link) => link.tagName === "a").map((link) => to(address, attribute(link, "href"))) : [];
      const own = (next) => next.startsWith(`faults/${guide.symptom}/`);
      [...offered(here).values(), ...cannot].filter(own).forEach(walk);
    };
    walk(`faults/${guide.symptom}.html`);
    const pages = files(site, ".html").filter((address) => address.startsWith(`faults/${guide.symptom}/`));
    assert.deepEqual(pages.filter((address) => !seen.has(address)), [], `pages of ${guide.symptom} that nobody comes to`);
  }
});
