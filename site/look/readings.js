/* Judges a reading against its limit: inside, outside, or too close to say when the meter's uncertainty reaches over the
   limit. The limits stand on `.reading` as data attributes in the unit of the field:
     data-at-most, data-at-least   the limit itself is inside
     data-under, data-over         the limit itself is outside
     data-uncertainty              half width, same unit
   and so do the words (data-say-inside, -outside, -close, -none, -unclear). */
(function () {
  "use strict";

  /** The number a person typed, with a point or a comma; NaN for anything else. */
  function read(text) {
    const plain = text.trim().replace(/[\u2212\u2013]/g, "-").replace(/\s/g, "").replace(",", ".");
    return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : NaN;
  }

  const inside = {
    atMost: (value, limit) => value <= limit,
    atLeast: (value, limit) => value >= limit,
    under: (value, limit) => value < limit,
    over: (value, limit) => value > limit,
  };

  /** "inside", "outside" or "close". What is measured as the limit itself to the last digit is judged by the limit's words. */
  function judge(value, data) {
    const spread = Number(data.uncertainty) || 0;
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

  for (const reading of document.querySelectorAll(".reading")) {
    const field = reading.querySelector("input");
    const output = reading.querySelector(".verdict");
    const words = reading.dataset;
    const judged = ["atMost", "atLeast", "under", "over"].some((kind) => words[kind] !== undefined);
    if (!field || !output || !judged) continue;

    const show = () => {
      const value = read(field.value);
      let verdict = "none";
      if (field.value.trim()) verdict = Number.isNaN(value) ? "unclear" : judge(value, words);
      reading.dataset.verdict = verdict;
      output.textContent = words["say" + verdict[0].toUpperCase() + verdict.slice(1)] || "";
      field.setAttribute("aria-invalid", String(verdict === "unclear"));
    };
    output.hidden = false;
    field.addEventListener("input", show);
    show();
  }
})();
