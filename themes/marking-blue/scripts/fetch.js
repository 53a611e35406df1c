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
