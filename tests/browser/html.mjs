// Every page conforms to the HTML standard, by the Nu HTML checker, in one run of Java over the whole folder.

import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import path from "node:path";
import { test } from "node:test";
import { files, folder, project } from "./tools.mjs";

/** Messages that are accepted, each with its reason. */
const ACCEPTED = [
  // The checker reads files without knowing from where: to it 'self' is nowhere. That the policy lets the handbook's own files through, over
  // file://, is seen in Chromium: a blocked one would be an error on the console (axe.mjs, walk.mjs).
  /^Resource violates Content Security Policy \(meta tag\): (external stylesheet|external script|image) “[^”:]*” blocked by “(style|script|img)-src” directive\.$/,
];

const checker = path.join(project, "tests/tools/node_modules/vnu-jar/build/dist/vnu.jar");

/** What the checker says about a folder or files. */
function messages(...paths) {
  const ran = spawnSync("java", ["-Xss4m", "-jar", checker, "--format", "json", "--exit-zero-always", "--skip-non-html", ...paths], {
    encoding: "utf8",
    maxBuffer: 1 << 30,
  });
  assert.equal(ran.status, 0, `the checker ran: ${ran.error ?? ran.stderr.slice(0, 2000)}`);
  return JSON.parse(ran.stderr).messages;
}

const told = (message) => `${path.basename(message.url ?? "")}:${message.lastLine ?? 0} ${message.type}: ${message.message} ${message.extract ?? ""}`;
const isAccepted = (message) => ACCEPTED.some((accepted) => accepted.test(message.message));

/** The first few of each message, so that one fault on every page is told once. */
function summed(messages) {
  const kinds = new Map();
  for (const message of messages) kinds.set(message.message, [...(kinds.get(message.message) ?? []), message]);
  return [...kinds.values()].map((same) => `${same.length} times: ${told(same[0])}`).join("\n");
}

for (const [name, what] of [["COQUILLE_SITE", "every page of the handbook"], ["COQUILLE_STATES", "every state of every part"]]) {
  test(`${what} conforms to the HTML standard`, () => {
    const site = folder(name);
    assert.ok(files(site, ".html").length > 20);
    const left = messages(site).filter((message) => !isAccepted(message));
    assert.equal(left.length, 0, `\n${summed(left)}`);
  });
}

test("the checker finds what is wrong in a page that does not conform", () => {
  const bad = path.join(project, "tests/browser/does-not-conform.html");
  assert.ok(messages(bad).some((message) => message.type === "error" && message.message.includes("ul")));
});
