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
