/* A button that prints the page; without scripts it stays hidden, and the browser's own menu prints as well. */
(function () {
  "use strict";

  function within(root) {
    for (const button of root.querySelectorAll("[data-print-page]")) {
      button.hidden = false;
      button.addEventListener("click", () => window.print());
    }
  }

  within(document);
  document.addEventListener("unfolded", (event) => within(event.target));
})();
