/* The practice bench on its page: sets the fault that the address names (#seed=K7Q&level=2), lets the learner do what the page lists,
   judges what they name and lays their way beside the least-cost one. Words stand in the page, as hidden elements or data-say-…;
   `practice.js` adds up. Results stay on this device (`keep.js`).

   In the form that is one file many benches stand together, each in its section, and the address names that first:
   #practice-foil-stays-lit?seed=K7Q&level=2. */
(function () {
  "use strict";

  const LETTERS = "34679CFHJKMPQRTWXY";
  const MOST_KEPT = 200;

  /** A figure with the page's mark before its decimals. */
  const figured = (value, mark) => String(value).replace(/(\d)\.(?=\d)/g, (_, digit) => digit + mark);

  const newSeed = () => Array.from(window.crypto.getRandomValues(new Uint8Array(4)), (byte) => LETTERS[byte % LETTERS.length]).join("");

  function kept() {
    try {
      return JSON.parse(window.keep.get("practice")) ?? [];
    } catch {
      return [];
    }
  }

  /** A cell that no table program takes for a formula. */
  const cell = (value) => `"${String(value).replace(/^(?=[=+\-@\t\r])/, "'").replaceAll('"', '""')}"`;

  /** The results on this device: a table, a file, and a button that forgets them. Stands on every page with `[data-results]`. */
  function results(root) {
    const body = root.querySelector("tbody");
    const fields = ["when", "name", "guide", "seed", "level", "cause", "remedy", "minutes", "least", "steps"];
    const section = root.closest(".leaf");
    const mark = root.dataset.sayDecimal;
    // Table programs of a country that writes 2,5 take a semicolon between two cells.
    const between = mark === "," ? ";" : ",";
    const told = (value) => (typeof value === "number" ? figured(value, mark) : value);

    function show() {
      if (section && section.getClientRects().length === 0) return;
      const all = kept();
      root.hidden = all.length === 0;
      body.replaceChildren(...all.map((result) => {
        const row = document.createElement("tr");
        row.append(...fields.map((field) => {
          const made = document.createElement("td");
          made.dataset.head = root.querySelector(`th[data-field=${field}]`).textContent;
          made.textContent = told(result[field]);
          return made;
        }));
        return row;
      }));
      const heads = fields.map((field) => root.querySelector(`th[data-field=${field}]`).textContent);
      const lines = [heads, ...all.map((result) => fields.map((field) => told(result[field])))];
      const text = lines.map((line) => line.map(cell).join(between)).join("\r\n") + "\r\n";
      root.querySelector("[data-file]").href = "data:text/csv;charset=utf-8,%EF%BB%BF" + encodeURIComponent(text);
    }

    root.querySelector("[data-forget-results]").addEventListener("click", () => {
      window.keep.set("practice", "");
      show();
    });
    root.querySelector("[data-print]").addEventListener("click", () => window.print());
    show();
    return show;
  }

  function bench(root, showResults) {
    const rules = window.practice;
    const data = JSON.parse(root.querySelector("[data-rehearsal]").content.textContent);
    const one = (selector) => root.querySelector(selector);
    const all = (selector) => [...root.querySelectorAll(selector)];
    const say = (name) => root.dataset["say" + name];
    const probes = all("[data-probe]");
    const reading = one("[data-reading]");
    const cause = one("[data-cause]");
    const remedy = one("[data-remedy]");
    const section = root.closest(".leaf");
    const before = section ? section.id + "?" : "";
    let run = null;
    let level = 1;
    let over = false;
    let address = null;

    /** Tenths of a minute as minutes, with the tenth if there is one: what is added up has to add up. */
    const minutes = (tenths) => figured(tenths / 10, say("Decimal"));
    const probeWords = (index) => probes[index].querySelector("[data-ask]").textContent;
    const answerWords = (index, answer) => probes[index].querySelector(`[data-answer="${answer}"] [data-words]`).textContent;
    const suspectWords = (at) => cause.querySelector(`option[value="${at}"]`).textContent;
    const jobWords = (job) => one(`[data-job="${job}"]`).textContent;
    const readingWords = (index) => reading.querySelector(`option[value="${index}"]`).textContent;
    const listed = (words) => words.join("; ") || say("Nothing");

    function share(value) {
      const n = Math.floor(value * 100 + 0.5);
      if (n === 0) return say("Under");
      return n === 100 && value < 1 ? say("Over") : String(n);
    }

    /** Where an exercise is, as it stands behind the # of the address. */
    const addressOf = (seed, level) => `${before}seed=${encodeURIComponent(seed)}&level=${level}`;

    /** In one file a section is shown when the address leads to it or to something in it: here it leads to the bench. */
    function meet(address) {
      if (section) root.id = address;
    }

    /** The address of the exercise that is set becomes the page's. */
    function write() {
      meet(address);
      try {
        window.history.replaceState(null, "", "#" + address);
      } catch {
        // The address stays as it is: the fault is set all the same.
      }
      // A browser looks for the place that an address leads to when it goes there, and at no other time.
      if (section && !section.contains(document.querySelector(":target"))) window.location.replace("#" + address);
    }

    /** Goes where the address leads, if that is this bench; what it leaves out is chosen and written into it. */
    function follow() {
      const fragment = window.location.hash.slice(1);
      const place = document.getElementById(fragment);
      const own = fragment.startsWith(before);
      const elsewhere = section && !own && !section.contains(place);
      if (elsewhere || (run && fragment === address)) return;
      const asked = new URLSearchParams(own ? fragment.slice(before.length) : "");
      const chosen = asked.get("level") ?? place?.querySelector(":scope > [data-level-link]")?.dataset.levelLink;
      if (!run || asked.get("seed") || chosen) set(asked.get("seed") || newSeed(), chosen);
      else if (section) write();
    }

    function set(seed, asked) {
      const drawn = rules.draw(data, seed);
      level = Math.min(3, Math.max(1, Number(asked) || 1));
      address = addressOf(drawn.seed, level);
      run = rules.begin(data, drawn);
      over = false;
      root.hidden = false;
      root.dataset.level = level;
      one("[data-seed]").value = drawn.seed;
      one("[data-name]").value ||= window.keep.get("practice-name") ?? "";
      all("[data-level-link]").forEach((link) => {
        link.href = "#" + addressOf(drawn.seed, link.dataset.levelLink);
        if (link.dataset.levelLink === String(level)) link.setAttribute("aria-current", "true");
        else link.removeAttribute("aria-current");
      });
      remedy.querySelectorAll("[data-other]").forEach((option) => {
        option.hidden = level < 3;
        option.disabled = level < 3;
      });
      all("[data-answer]").forEach((answer) => (answer.hidden = true));
      cause.value = remedy.value = "";
      one("[data-outcome]").hidden = one("[data-lacking]").hidden = true;
      one("[data-taken]").replaceChildren();
      one("[data-said]").textContent = "";
      show();
      write();
    }

    function show() {
      const shares = rules.shares(run);
      const next = level === 1 && !over ? rules.next(run) : null;
      const done = new Set(run.path.filter((step) => step.kind === "probe").map((step) => step.index));
      const stopped = over || run.mended;
      probes.forEach((item, index) => {
        item.querySelector("button").setAttribute("aria-disabled", String(stopped || done.has(index)));
        item.querySelector("[data-next]").hidden = next !== index;
      });
      one("[data-minutes]").textContent = minutes(run.spent);
      one("[data-open]").textContent = listed(run.open.map(jobWords));
      one("[data-possible]").hidden = level !== 1;
      all("[data-suspect]").forEach((item) => {
        const at = Number(item.dataset.suspect);
        item.hidden = !shares.has(at);
        item.querySelector("[data-share]").textContent = shares.has(at) ? share(shares.get(at)) : "";
      });
      one("[data-enough]").hidden = !(level === 1 && !over && rules.settled(run));
    }

    function doProbe(index) {
      const button = probes[index].querySelector("button");
      if (button.getAttribute("aria-disabled") === "true") return;
      const step = rules.probe(run, index);
      probes[index].querySelector(`[data-answer="${step.answer}"]`).hidden = false;
      one("[data-said]").textContent = answerWords(index, step.answer);
      show();
    }

    function figure(index, answer) {
      const word = one(`[data-word="${answer}"]`)?.textContent ?? answer;
      const buzzer = reading.querySelector(`option[value="${index}"]`).dataset.on === "buzzer";
      const heard = buzzer ? one(`[data-word="${answer} heard"]`)?.textContent : undefined;
      const measured = data.faults[run.drawn.fault]?.figures[index];
      return (heard ?? word) + (measured ? ` (${figured(measured, say("Decimal"))})` : "");
    }

    function doReading() {
      const index = Number(reading.value);
      if (reading.value === "" || over || run.mended) return;
      const step = rules.read(run, index);
      const words = step ? figure(index, step.answer) : say("Unknown");
      const item = document.createElement("li");
      item.textContent = `${readingWords(index)}${say("Colon")} ${words}`;
      one("[data-taken]").append(item);
      one("[data-said]").textContent = words;
      show();
    }

    function row(step, body) {
      const line = one("[data-step]").content.cloneNode(true);
      const put = (name, words) => (line.querySelector(`[data-is=${name}]`).textContent = words);
      const probe = step.kind === "probe";
      put("did", probe ? probeWords(step.index) : readingWords(step.index));
      put("answer", probe ? answerWords(step.index, step.answer) : figure(step.index, step.answer));
      put("minutes", minutes(step.minutes));
      const out = step.out.map(suspectWords);
      const told = step.told ? (out.length ? out.join("; ") : say("LessLikely")) : say("Nothing");
      put("out", step.needless ? say("Needless") : told);
      const tr = line.querySelector("tr");
      tr.dataset.tenths = step.minutes;
      body.append(line);
    }

    function way(name, shown) {
      const table = one(`[data-way=${name}]`);
      const body = table.querySelector("tbody");
      body.replaceChildren();
      shown.path.forEach((step) => row(step, body));
      table.querySelector("[data-closing]").textContent = minutes(rules.closing(shown));
      const total = table.querySelector("[data-total]");
      total.textContent = minutes(shown.spent + rules.closing(shown));
      total.dataset.tenths = shown.spent + rules.closing(shown);
    }

    function verdicts() {
      const { suspect } = run.drawn;
      const named = Number(cause.value);
      const job = Number(remedy.value);
      const { remedy: right, stop_gap: gap } = data.suspects[suspect];
      const possible = rules.suspectsOf(data, run.left);
      const same = possible.includes(named) && data.suspects[named].remedy === right && right !== null;
      return {
        cause: named === suspect ? "right" : same ? "same" : "wrong",
        remedy: job === (right ?? -1) ? "right" : gap !== null && job === gap ? "gap" : "wrong",
        certain: rules.settled(run),
        possible,
      };
    }

    function judge() {
      if (over) return;
      const empty = [cause, remedy].find((field) => field.value === "");
      one("[data-lacking]").hidden = !empty;
      if (empty) {
        empty.focus();
        return;
      }
      over = true;
      const verdict = verdicts();
      const least = rules.least(data, run.drawn);
      all("[data-verdict]").forEach((line) => {
        const [of, is] = line.dataset.verdict.split(" ");
        line.hidden = of === "guess" ? verdict.certain : verdict[of] !== is;
      });
      one("[data-was]").textContent = suspectWords(run.drawn.suspect);
      const right = data.suspects[run.drawn.suspect].remedy ?? -1;
      one("[data-mends]").textContent = remedy.querySelector(`option[value="${right}"]`).textContent;
      one("[data-left]").textContent = listed(verdict.possible.map(suspectWords));
      way("own", run);
      way("least", least);
      one("[data-outcome]").hidden = false;
      one("[data-outcome] h2").focus();
      show();
      remember(verdict, least);
    }

    function remember(verdict, least) {
      const name = one("[data-name]").value.trim();
      window.keep.set("practice-name", name);
      const word = (is) => say("Is" + is[0].toUpperCase() + is.slice(1));
      const result = {
        when: new Date().toISOString().slice(0, 16).replace("T", " "),
        name,
        guide: root.dataset.guide,
        seed: run.drawn.seed,
        level,
        cause: word(verdict.cause),
        remedy: word(verdict.remedy),
        minutes: (run.spent + rules.closing(run)) / 10,
        least: (least.spent + rules.closing(least)) / 10,
        steps: run.path.length,
      };
      window.keep.set("practice", JSON.stringify([...kept(), result].slice(-MOST_KEPT)));
      showResults.forEach((shown) => shown());
    }

    function another(word) {
      const { seed } = rules.draw(data, word);
      const next = addressOf(seed, level);
      meet(next);
      if (next === address) set(seed, level);
      else window.location.hash = next;
      one("h2").scrollIntoView();
    }

    probes.forEach((item, index) => item.querySelector("button").addEventListener("click", () => doProbe(index)));
    one("[data-read]")?.addEventListener("click", doReading);
    one("[data-judge]").addEventListener("click", judge);
    [cause, remedy].forEach((field) => field.addEventListener("change", () => {
      if (cause.value !== "" && remedy.value !== "") one("[data-lacking]").hidden = true;
    }));
    all("[data-again]").forEach((button) => button.addEventListener("click", () => another(newSeed())));
    one("[data-set]").addEventListener("submit", (event) => {
      event.preventDefault();
      another(one("[data-seed]").value || newSeed());
    });
    one("[data-print]").addEventListener("click", () => window.print());
    all("[data-level-link]").forEach((link) => link.addEventListener("click", () => meet(link.hash.slice(1))));
    window.addEventListener("hashchange", follow);
    follow();
  }

  const showResults = [];

  function within(root) {
    root.querySelectorAll("[data-without-script]").forEach((words) => (words.hidden = true));
    root.querySelectorAll("[data-results]").forEach((table) => showResults.push(results(table)));
    root.querySelectorAll("[data-bench]").forEach((one) => bench(one, showResults));
  }

  within(document);
  document.addEventListener("unfolded", (event) => within(event.target));
  // What an address leads to may be shown only when all is there.
  for (const moment of ["load", "hashchange"]) window.addEventListener(moment, () => showResults.forEach((show) => show()));
})();
