/* What a page remembers on this device: ticks, readings, the wording chosen. Loaded before the scripts that use it.
   Some browsers keep such things per file, some not at all when a page is opened from disk: every call may find
   nothing, and nothing on a page depends on it. */
(function () {
  "use strict";

  const PREFIX = "coquille:";

  window.keep = {
    /** The text kept under `name`, or null. */
    get(name) {
      try {
        return window.localStorage.getItem(PREFIX + name);
      } catch {
        return null;
      }
    },

    /** Keeps `text` under `name`; an empty text is forgotten. */
    set(name, text) {
      try {
        if (text) window.localStorage.setItem(PREFIX + name, text);
        else window.localStorage.removeItem(PREFIX + name);
      } catch {
        // No storage here: the page works as it did without.
      }
    },
  };
})();

/* Remembers the wording chosen (full or short) from page to page. The switch itself is two radios and needs no script. */
(function () {
  "use strict";

  const radios = document.querySelectorAll(".wording input");
  const kept = window.keep.get("wording");
  for (const radio of radios) {
    if (kept) radio.checked = radio.value === kept;
    radio.addEventListener("change", () => window.keep.set("wording", radio.value));
  }
})();

/* Remembers ticks and readings of a page, under the page's own code: when what the page says changes, so does the code,
   and old ticks do not stand beside new steps. `[data-forget]` clears them. */
(function () {
  "use strict";

  /** The page that something stands on; a file of many pages has one a section. */
  function pageOf(element) {
    return element.closest("[data-code]");
  }

  const nameOf = (field) => pageOf(field).dataset.code + ":" + field.dataset.keep;
  const isTick = (field) => field.type === "checkbox";

  function recall(field) {
    const kept = window.keep.get(nameOf(field));
    if (kept === null) return;
    if (isTick(field)) field.checked = true;
    else field.value = kept;
  }

  function forget(field) {
    window.keep.set(nameOf(field), "");
    if (isTick(field)) field.checked = false;
    else field.value = "";
    field.dispatchEvent(new Event("input", { bubbles: true }));
  }

  function within(root) {
    for (const field of [...root.querySelectorAll("[data-keep]")].filter(pageOf)) {
      recall(field);
      field.addEventListener("input", () => {
        window.keep.set(nameOf(field), isTick(field) ? (field.checked ? "1" : "") : field.value);
      });
    }
    for (const button of [...root.querySelectorAll("[data-forget]")].filter(pageOf)) {
      button.hidden = false;
      button.addEventListener("click", () => pageOf(button).querySelectorAll("[data-keep]").forEach(forget));
    }
  }

  within(document);
  document.addEventListener("unfolded", (event) => within(event.target));
})();

/* Judges a reading against its limit: inside, outside, or too close to call when the meter's uncertainty reaches over the
   limit. The limits stand on `.reading` as data attributes in the unit of the field:
     data-at-most, data-at-least   the limit itself is inside
     data-under, data-over         the limit itself is outside
     data-amount, data-percent     how far the instrument may be off: so much, and so many percent of what it reads
   and so do the words (data-say-inside, -outside, -close, -none, -unclear, -below). A field with data-leads holds what the meter's
   leads read by themselves: it is taken off before the reading is judged, and one field tells all others on the page, each in
   its own unit (data-unit). */
(function () {
  "use strict";

  /** The number a person typed, with a point or a comma, or over the meter's range as meters show it; NaN for anything else. */
  function read(text) {
    const plain = text.trim().replace(/[\u2212\u2013]/g, "-").replace(/\s/g, "").replace(",", ".");
    if (/^(∞|O\.?L\.?)$/i.test(plain)) return Infinity;
    return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : NaN;
  }

  const inside = {
    atMost: (value, limit) => value <= limit,
    atLeast: (value, limit) => value >= limit,
    under: (value, limit) => value < limit,
    over: (value, limit) => value > limit,
  };

  /** How far what the instrument shows may be off. */
  const spreadOf = (shown, data) =>
    shown === Infinity ? 0 : Number(data.amount || 0) + (Math.abs(shown) * Number(data.percent || 0)) / 100;

  /** Only a temperature is less than nothing; anything else was read or written down wrongly. */
  const isBelow = (value, spread, data) => value + spread < 0 && !/^°/.test(data.unit || "");

  /** "inside", "outside" or "close". What is measured as the limit itself to the last digit is judged by the limit's words. */
  function judge(value, spread, data) {
    let verdict = "inside";
    for (const kind of Object.keys(inside)) {
      if (data[kind] === undefined) continue;
      const limit = Number(data[kind]);
      const ends = [value - spread, value + spread].map((end) => inside[kind](end, limit));
      if (!ends[0] && !ends[1]) return "outside";
      if (ends[0] !== ends[1]) verdict = "close";
    }
    return verdict;
  }

  /** What the leads read by themselves; 0 where nothing or no number was typed. */
  function leadsOf(field) {
    const ohms = field ? read(field.value) : 0;
    return ohms > 0 ? ohms : 0;
  }

  const LEADS = "leads";
  const ALL_LEADS = ".reading input[data-leads]";
  const OHMS = { "mΩ": 0.001, "Ω": 1 };
  const unitOf = (field) => field.closest(".reading").dataset.unit;

  /** What was kept of the leads, `0.3 Ω`, as it is written in a field's own unit. */
  function keptIn(unit) {
    const [typed, own] = (window.keep.get(LEADS) || "").split("\u00a0");
    const number = read(typed);
    if (!own || own === unit || Number.isNaN(number)) return typed;
    return String(Number(((number * OHMS[own]) / OHMS[unit]).toFixed(6)));
  }

  /** One field for the leads tells all others. */
  function lead(field) {
    field.value = keptIn(unitOf(field));
    field.closest(".reading-leads").hidden = false;
    field.addEventListener("input", () => {
      window.keep.set(LEADS, `${field.value}\u00a0${unitOf(field)}`);
      for (const other of document.querySelectorAll(ALL_LEADS)) {
        if (other !== field) other.value = keptIn(unitOf(other));
        other.dispatchEvent(new Event("leads"));
      }
    });
  }

  function judged(reading) {
    const field = reading.querySelector(".reading-entry input");
    const leads = reading.querySelector("input[data-leads]");
    const output = reading.querySelector(".verdict");
    const words = reading.dataset;
    const limited = ["atMost", "atLeast", "under", "over"].some((kind) => words[kind] !== undefined);
    if (!field || !output || !limited) return;

    const show = () => {
      const measured = read(field.value);
      const off = leadsOf(leads);
      // Tenths and hundredths of an ohm, not the last bits of a machine number.
      const value = Number((measured - off).toFixed(6));
      let verdict = "none";
      // What the meter may be off at the leads adds up with what it may be off at the reading.
      const spread = spreadOf(measured, words) + (off > 0 ? spreadOf(off, words) : 0);
      if (field.value.trim() && Number.isNaN(measured)) verdict = "unclear";
      else if (field.value.trim()) verdict = isBelow(value, spread, words) ? "below" : judge(value, spread, words);
      reading.dataset.verdict = verdict;
      const word = words["say" + verdict[0].toUpperCase() + verdict.slice(1)] || "";
      const without = off > 0 && !Number.isNaN(measured) && field.value.trim();
      output.textContent = without ? `${leads.dataset.sayLess} ${value.toLocaleString(document.documentElement.lang || undefined, { maximumFractionDigits: 6, useGrouping: false })} ${words.unit || ""}, ${word}`.replace(" ,", ",") : word;
      field.setAttribute("aria-invalid", String(verdict === "unclear" || verdict === "below"));
    };
    output.hidden = false;
    field.addEventListener("input", show);
    if (leads) leads.addEventListener("leads", show);
    show();
  }

  function within(root) {
    root.querySelectorAll(ALL_LEADS).forEach(lead);
    root.querySelectorAll(".reading").forEach(judged);
  }

  within(document);
  document.addEventListener("unfolded", (event) => within(event.target));
})();

/* Search without a server: the index is a script that sets `window.searchIndex`, looked up with MiniSearch.
   Both are fetched as classic scripts when the field is first used, so that a page opened from disk can have them and a
   page that is only read does not pay for them. Finds words by their beginning, forgives a slip of the pen, and knows the
   other names that the handbook's words give a thing.

   The index: { pages: [{ href, title, kind, about, also, text }], names: { "other name": ["name", …] } }.
   Nothing is fetched when data-scripts is empty: then both stand in the file.
   Markup: form.search[id][data-root][data-scripts][data-label][data-found][data-most]; what stands in it is made here, since without
   this script there is nothing to type into.
   data-found holds the words for 0, 1, 2, … pages found, parted by "|": each says from which number on it holds, and # is the number;
   data-most is how many pages are shown. */
(function () {
  "use strict";

  const FIELDS = ["title", "also", "about", "text"];
  const HOW = {
    boost: { title: 4, also: 3, about: 2 },
    prefix: (term) => term.length > 1,
    fuzzy: (term) => (term.length > 5 ? 2 : term.length > 3 ? 1 : false),
  };

  /** Lower case and without accents, so that "épée" is found by "epee". */
  const plain = (text) => text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();

  function load(source) {
    return new Promise((done, failed) => {
      const script = document.createElement("script");
      script.src = source;
      script.onload = done;
      script.onerror = failed;
      document.head.append(script);
    });
  }

  let engine = null;

  /** The engine over the index, built once. */
  function ready(sources) {
    engine ??= sources.reduce((before, source) => before.then(() => load(source)), Promise.resolve()).then(() => {
      const mini = new window.MiniSearch({
        fields: FIELDS,
        storeFields: ["href", "title", "kind", "about"],
        processTerm: (term) => plain(term) || null,
      });
      mini.addAll(window.searchIndex.pages.map((page, id) => ({ id, ...page })));
      return { mini, names: window.searchIndex.names || {} };
    });
    return engine;
  }

  /** The words asked for, and the names that the handbook uses for them. */
  function asked(text, names) {
    const words = " " + plain(text).replace(/\s+/g, " ").trim() + " ";
    const others = Object.keys(names).filter((name) => words.includes(" " + plain(name) + " "));
    return [text, ...others.flatMap((name) => names[name])];
  }

  function find({ mini, names }, text, most) {
    const queries = asked(text, names);
    const together = { ...HOW, combineWith: "AND" };
    const found = mini.search({ combineWith: "OR", queries: queries.map((query) => ({ ...together, queries: [query] })) });
    return (found.length ? found : mini.search(text, HOW)).slice(0, most);
  }

  /** One page found, as a row: its title, its kind, what it is about. */
  function row(page, root) {
    const item = document.createElement("li");
    const link = document.createElement("a");
    link.href = root + page.href;
    const text = document.createElement("span");
    text.className = "row-text";
    text.append(part("span", "row-name", page.title), part("small", "row-note", [page.kind === page.title ? "" : page.kind, page.about].filter(Boolean).join(": ")));
    link.append(text);
    item.append(link);
    return item;
  }

  function part(element, name, words) {
    const made = document.createElement(element);
    if (name) made.className = name;
    made.textContent = words;
    return made;
  }

  /** The label, the field, what is said of the pages found, and their list. */
  function furnished(form) {
    const label = part("label", "", form.dataset.label);
    label.htmlFor = `${form.id}-words`;
    const field = part("input", "", "");
    Object.assign(field, { id: label.htmlFor, type: "search", autocomplete: "off", spellcheck: false, enterKeyHint: "search" });
    const said = part("p", "search-said", "");
    said.id = `${form.id}-said`;
    said.setAttribute("role", "status");
    field.setAttribute("aria-describedby", said.id);
    const list = part("ol", "rows", "");
    list.hidden = true;
    form.replaceChildren(label, field, said, list);
    return { field, said, list };
  }

  function equip(form) {
    const { field, said, list } = furnished(form);
    const found = form.dataset.found.split("|").map((part) => [parseInt(part, 10), part.replace(/^\d+:/, "")]);
    const words = (number) => found.findLast(([from]) => from <= number)[1].replaceAll("#", number);
    const sources = form.dataset.scripts.split("|").filter(Boolean).map((name) => form.dataset.root + name);
    let turn = 0;

    async function look() {
      const mine = ++turn;
      const text = field.value.trim();
      if (text.length < 2) {
        list.hidden = true;
        said.textContent = "";
        return;
      }
      const pages = find(await ready(sources), text, Number(form.dataset.most));
      if (mine !== turn) return;
      list.replaceChildren(...pages.map((page) => row(page, form.dataset.root)));
      list.hidden = pages.length === 0;
      said.textContent = words(pages.length);
    }

    /** Arrows go from the field through the links and back; Escape empties the field. */
    function walk(event) {
      const stops = [field, ...list.querySelectorAll("a")];
      const at = stops.indexOf(document.activeElement);
      const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
      if (event.key === "Escape") {
        field.value = "";
        field.focus();
        look();
      } else if (step && stops[at + step]) {
        stops[at + step].focus();
      } else {
        return;
      }
      event.preventDefault();
    }

    form.hidden = false;
    field.addEventListener("focus", () => ready(sources).catch(() => (form.hidden = true)), { once: true });
    field.addEventListener("input", () => look().catch(() => (form.hidden = true)));
    form.addEventListener("keydown", walk);
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      const first = list.querySelector("a");
      if (first) first.focus();
    });
  }

  document.querySelectorAll("form.search").forEach(equip);
  for (const link of document.querySelectorAll("[data-find]")) {
    link.hidden = false;
    link.addEventListener("click", (event) => {
      const field = document.querySelector(link.getAttribute("href") + " input");
      if (!field) return;
      // The address stays as it is: in a handbook of one file it says which page is shown.
      event.preventDefault();
      field.focus();
    });
  }
})();

/* "I am here": a search for a fault that is left half way is remembered on this device, one place a guide, and offered again on the front
   page and on the guide's own page. An ending is the end of it. */
(function () {
  "use strict";

  const MOST = 5;
  /** Nothing else may become a link, whatever stands in the storage. */
  const PAGE = /^([a-z]{2,3}(-[A-Za-z0-9]{1,8})*\/)?faults\/[A-Za-z0-9-]+\/[A-Za-z0-9-]+\.html$/;

  function kept() {
    try {
      const all = JSON.parse(window.keep.get("here"));
      return Array.isArray(all) ? all.filter((one) => PAGE.test(one?.address)) : [];
    } catch {
      return [];
    }
  }

  const keep = (all) => window.keep.set("here", all.length ? JSON.stringify(all.slice(0, MOST)) : "");

  const here = document.querySelector("[data-here]");
  if (here) {
    const others = kept().filter((one) => one.symptom !== here.dataset.symptom);
    const { symptom, title, address } = here.dataset;
    const at = document.querySelector("h1")?.textContent.trim() ?? "";
    keep(here.dataset.here === "going" ? [{ symptom, title, address, at }, ...others] : others);
  }

  for (const block of document.querySelectorAll("[data-way-back]")) {
    const only = block.dataset.wayBack;
    const list = block.querySelector("ul");
    const show = () => {
      const all = kept().filter((one) => !only || one.symptom === only);
      list.replaceChildren(...all.map((one) => {
        const item = document.createElement("li");
        const link = document.createElement("a");
        link.href = block.dataset.root + one.address;
        link.textContent = one.title;
        const at = document.createElement("span");
        at.className = "quiet small";
        at.textContent = one.at;
        item.append(link, " ", at);
        return item;
      }));
      block.hidden = all.length === 0;
    };
    block.querySelector("button").addEventListener("click", () => {
      keep(only ? kept().filter((one) => one.symptom !== only) : []);
      show();
    });
    show();
  }
})();

/* The summary to hand over can be copied or printed by itself. */
(function () {
  "use strict";

  /** The words of the summary, a line each. */
  function summary(block) {
    const lines = [...block.querySelectorAll("h2, p:not(.no-copy), li")].map((line) => line.textContent.replace(/\s+/g, " ").trim());
    const address = /^https?:/.test(window.location.href) ? [window.location.href] : [];
    return [...lines, ...address].join("\n");
  }

  async function copy(text) {
    try {
      await window.navigator.clipboard.writeText(text);
      return true;
    } catch {
      // A page opened from disk may be kept from the clipboard: the old way still goes through the selection.
      const field = document.createElement("textarea");
      field.value = text;
      document.body.append(field);
      field.select();
      const done = document.execCommand("copy");
      field.remove();
      return done;
    }
  }

  function ready(block) {
    const said = block.querySelector("[data-said]");
    const buttons = block.querySelector(".hand-over-buttons");
    const copying = block.querySelector("[data-copy]");
    buttons.hidden = false;
    copying.addEventListener("click", async () => {
      said.textContent = (await copy(summary(block))) ? said.dataset.sayCopied : said.dataset.sayNot;
      copying.focus();
    });
    block.querySelector("[data-print]").addEventListener("click", () => {
      document.body.classList.add("only-hand-over");
      window.print();
      document.body.classList.remove("only-hand-over");
    });
  }

  const within = (root) => root.querySelectorAll("[data-hand-over]").forEach(ready);
  within(document);
  document.addEventListener("unfolded", (event) => within(event.target));
})();

/* A button that prints the page; without scripts it stays hidden, and the browser's own menu prints as well. */
(function () {
  "use strict";

  function within(root) {
    for (const button of root.querySelectorAll("[data-print-page]")) {
      button.hidden = false;
      button.addEventListener("click", () => window.print());
    }
  }

  within(document);
  document.addEventListener("unfolded", (event) => within(event.target));
})();

/* What to fetch for several jobs together: adds up what is ticked on the page, as `sheet --kit` does. Hands-on times add up over jobs
   and pieces; waiting goes on beside other work, so only the longest counts. Tools are fetched once, parts and consumables for every
   piece; amounts with the same unit add up, and what cannot be counted stands as often as it is needed. */
(function () {
  "use strict";

  const UNITS = ["", "ml", "cl", "l", "mm", "cm", "m", "in", "g", "kg"];

  /** "about 2.5 ml" as thousandths of a unit, or null if it cannot be counted. */
  function amount(text) {
    const found = /^(about )?\s*(\d{1,9})(?:\.(\d{0,3}))?\s*(\D*)$/.exec(text.trim());
    if (!found || !UNITS.includes(found[4].trim())) return null;
    return { about: Boolean(found[1]), thousandths: Number(found[2]) * 1000 + Number((found[3] || "").padEnd(3, "0")), unit: found[4].trim() };
  }

  function summed(texts, times, words) {
    const sums = [];
    const said = [];
    for (const text of texts) {
      const one = amount(text);
      const known = one ? sums.find((sum) => sum.unit === one.unit) : said.find((word) => word.text === text);
      if (one && known) {
        known.thousandths += one.thousandths;
        known.about = known.about || one.about;
      } else if (one) sums.push(one);
      else if (known) known.often += 1;
      else said.push({ text, often: 1 });
    }
    const figure = (thousandths) => (thousandths / 1000).toLocaleString(document.documentElement.lang || undefined, { maximumFractionDigits: 3, useGrouping: false });
    const counted = sums.map((sum) => `${sum.about ? "about " : ""}${figure(sum.thousandths * times)} ${sum.unit}`.trim());
    const others = said.map((word) => (word.often * times === 1 ? word.text : words.sayTimes.replace("##", word.often * times).replace("#", word.text)));
    return [...counted, ...others].join(" + ");
  }

  function duration(minutes, words) {
    if (minutes === 0) return words.sayNoMin;
    if (minutes < 100) return words.sayNMin.replace("#", minutes);
    const hours = Math.floor(minutes / 60);
    if (minutes % 60 === 0) return words.sayNH.replace("#", hours);
    return words.sayNHMin.replace("##", hours).replace("#", minutes % 60);
  }

  /** The lines of one kind, each thing once, in the order in which they come up. */
  function lines(jobs, kind, times, words) {
    const things = new Map();
    for (const line of jobs.flatMap((job) => [...job.querySelectorAll(`[data-of="${kind}"]`)])) {
      const known = things.get(line.dataset.thing) || { line, amounts: [] };
      if (line.dataset.quantity) known.amounts.push(line.dataset.quantity);
      things.set(line.dataset.thing, known);
    }
    return [...things.values()].map(({ line, amounts }) => {
      const item = document.createElement("li");
      item.append(line.querySelector("a").cloneNode(true));
      const sum = summed(amounts, times, words);
      if (sum) item.append(`, ${sum}`);
      const hazards = line.querySelector("[data-hazards]");
      if (hazards) item.append(" ", hazards.textContent);
      return item;
    });
  }

  function show(together, jobs, pieces) {
    const words = together.dataset;
    const sum = together.querySelector("[data-sum]");
    sum.hidden = jobs.length === 0;
    const numbers = (name) => jobs.map((job) => Number(job.dataset[name]));
    const handsOn = numbers("minutes").reduce((all, one) => all + one, 0) * pieces;
    const waiting = Math.max(0, ...numbers("waiting"));
    sum.querySelector("[data-jobs]").textContent = jobs.map((job) => job.querySelector("h2").textContent).join("; ");
    sum.querySelector("[data-hands-on]").textContent = duration(handsOn, words);
    sum.querySelector("[data-in-all]").textContent = duration(handsOn + waiting, words);
    const wait = sum.querySelector("[data-waiting]");
    wait.hidden = waiting === 0;
    wait.querySelector("[data-wait]").textContent = duration(waiting, words);
    for (const list of sum.querySelectorAll("[data-sum-of]")) {
      const kind = list.dataset.sumOf;
      const found = lines(jobs, kind, kind === "tools" ? 1 : pieces, words);
      list.hidden = found.length === 0;
      list.querySelector("ul").replaceChildren(...found);
    }
    together.querySelector("[data-said]").textContent = jobs.length ? duration(handsOn + waiting, words) : "";
  }

  for (const together of document.querySelectorAll("[data-fetch]")) {
    const page = together.parentElement;
    const picks = [...page.querySelectorAll("[data-pick]")];
    const pieces = together.querySelector("[data-pieces]");
    const count = () => Math.min(99, Math.max(1, Math.floor(Number(pieces.value)) || 1));
    const again = () => {
      const jobs = picks.filter((pick) => pick.checked).map((pick) => pick.closest("section"));
      show(together, jobs, count());
    };
    together.hidden = false;
    for (const pick of picks) {
      pick.closest(".fetch-pick").hidden = false;
      pick.addEventListener("change", again);
    }
    pieces.addEventListener("input", again);
    // What was reckoned with is what stands there.
    pieces.addEventListener("change", () => (pieces.value = count()));
    together.querySelector("[data-print-sum]").addEventListener("click", () => {
      document.body.classList.add("only-fetch");
      window.print();
      document.body.classList.remove("only-fetch");
    });
    together.querySelector("[data-untick]").addEventListener("click", () => {
      for (const pick of picks) pick.checked = false;
      again();
      picks[0].focus();
    });
    again();
  }
})();
