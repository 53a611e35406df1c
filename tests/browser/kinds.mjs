// One page of every kind that a handbook has, the fullest of its kind: what is hard to show is on the fullest page.

import { statSync } from "node:fs";
import path from "node:path";
import { files, first, folder, parsed, withClass, words } from "./tools.mjs";

/** The kind of a page by its address; endings are told apart by what they say of themselves. */
function kind(site, address) {
  const [place, guide, step] = address.split("/");
  if (!guide) return address;
  if (place === "sheets") return `sheet of ${sheetOf(site, guide)}`;
  if (place === "practice") return step ? "exercise cards" : "practice bench";
  if (place === "learning") return step ? "stop of a way to learn" : "way to learn";
  if (!step) return place;
  if (!step.startsWith("end-")) return "question";
  return `ending: ${words(first(parsed(path.join(site, address)), withClass("kind"))).split(",")[0]}`;
}

function sheetOf(site, file) {
  const at = ["faults", "jobs", "checks"].find((place) => files(path.join(site, place), ".html").includes(file));
  return at ?? "nothing";
}

/** Pairs of kind and address. */
export function onePageOfEachKind() {
  const site = folder("COQUILLE_SITE");
  const size = (address) => statSync(path.join(site, address)).size;
  const kinds = new Map();
  for (const address of files(site, ".html")) {
    const its = kind(site, address);
    if (!kinds.has(its) || size(address) > size(kinds.get(its))) kinds.set(its, address);
  }
  return [...kinds];
}
