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
