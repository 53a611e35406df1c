/* Remembers ticks and readings of a page, under the page's own code: when what the page says changes, so does the code,
   and old ticks do not stand beside new steps. `[data-forget]` clears them. */
(function () {
  "use strict";

  const page = document.body.dataset.code;
  const fields = document.querySelectorAll("[data-keep]");
  if (!page || !fields.length) return;

  const nameOf = (field) => page + ":" + field.dataset.keep;
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

  for (const field of fields) {
    recall(field);
    field.addEventListener("input", () => {
      window.keep.set(nameOf(field), isTick(field) ? (field.checked ? "1" : "") : field.value);
    });
  }
  for (const button of document.querySelectorAll("[data-forget]")) {
    button.hidden = false;
    button.addEventListener("click", () => fields.forEach(forget));
  }
})();
