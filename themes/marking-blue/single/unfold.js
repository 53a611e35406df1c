/* In the form that is one file: unfolds the sections past "I cannot tell", the sheets and the practice benches, before the other scripts look
   for what they work on. Links to them lead to a section for readers without scripting until then. */
(function () {
  "use strict";

  const folded = document.getElementById("folded-sections");
  if (!folded) return;
  const bytes = Uint8Array.from(window.atob(folded.textContent), (letter) => letter.charCodeAt(0));
  const sections = document.createElement("template");
  sections.innerHTML = window.fflate.strFromU8(window.fflate.inflateSync(bytes));
  document.querySelector("main").append(sections.content);
  folded.remove();
  document.getElementById("folded").remove();
  for (const link of document.querySelectorAll("a[data-unfolded]")) {
    link.setAttribute("href", link.dataset.unfolded);
    link.removeAttribute("data-unfolded");
  }
  // The browser may have looked for the section before it was there.
  window.addEventListener("load", () => {
    if (window.location.hash && !document.querySelector(":target")) window.location.replace(window.location.href);
  });
})();
