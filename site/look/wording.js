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
