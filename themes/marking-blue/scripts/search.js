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
