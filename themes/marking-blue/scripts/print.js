/* A button that prints the page; without scripts it stays hidden, and the browser's own menu prints as well. */
(function () {
  "use strict";

  for (const button of document.querySelectorAll("[data-print-page]")) {
    button.hidden = false;
    button.addEventListener("click", () => window.print());
  }
})();
