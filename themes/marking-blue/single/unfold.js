/* In the form that is one file: unfolds a section past "I cannot tell", a sheet or a practice bench when the address leads to it or into it,
   and only then: to set them all costs a phone many seconds. Links to them lead to a section for readers without scripting until this
   runs, before the other scripts. Those look for what they work on when they start, and in a section that tells of itself by the event
   `unfolded`. */
(function () {
  "use strict";

  const folded = document.getElementById("folded-sections");
  if (!folded) return;
  let sections = null;

  /** The text of each section that is still folded, by its id. */
  function all() {
    if (sections) return sections;
    const bytes = Uint8Array.from(window.atob(folded.textContent), (letter) => letter.charCodeAt(0));
    const text = window.fflate.strFromU8(window.fflate.inflateSync(bytes));
    // A section's own id is the first in it.
    sections = new Map(text.split(/(?=<section class="?leaf\b)/).map((section) => [/ id="?([^\s">]+)/.exec(section)?.[1], section]));
    return sections;
  }

  /** The section that has an id, or has it in it. */
  function holding(id) {
    if (all().has(id)) return id;
    const marks = [` id=${id}>`, ` id=${id} `, ` id="${id}"`];
    return [...all()].find(([, section]) => marks.some((mark) => section.includes(mark)))?.[0];
  }

  /** Where the address leads; a practice bench has what is set on it behind a `?`. */
  function sought() {
    try {
      return decodeURIComponent(window.location.hash.slice(1)).split("?")[0];
    } catch {
      return "";
    }
  }

  function unfold() {
    const id = sought();
    const own = id && !document.getElementById(id) && holding(id);
    if (!own) return;
    const made = document.createElement("template");
    made.innerHTML = all().get(own);
    all().delete(own);
    const section = made.content.firstElementChild;
    document.querySelector("main").append(section);
    section.dispatchEvent(new Event("unfolded", { bubbles: true }));
    // The browser looked for the place before it was there.
    window.location.replace(window.location.href);
  }

  document.getElementById("folded").remove();
  for (const link of document.querySelectorAll("a[data-unfolded]")) {
    link.setAttribute("href", link.dataset.unfolded);
    link.removeAttribute("data-unfolded");
  }
  window.addEventListener("hashchange", unfold);
  window.addEventListener("load", () => {
    if (window.location.hash && !document.querySelector(":target")) window.location.replace(window.location.href);
  });
  unfold();
})();
