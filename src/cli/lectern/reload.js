/* Shows the page anew when the guides have changed. Only the lectern puts it on pages. */
(function () {
  "use strict";

  const turn = document.currentScript.dataset.turn;
  const kept = "lectern " + window.location.pathname;
  try {
    const height = window.sessionStorage.getItem(kept);
    if (height) window.addEventListener("load", () => window.scrollTo(0, Number(height)));
    window.sessionStorage.removeItem(kept);
  } catch {
    // No storage: the page begins at its top.
  }

  function listen() {
    const news = new EventSource("/lectern/news?since=" + turn);
    news.onmessage = () => {
      news.close();
      try {
        window.sessionStorage.setItem(kept, String(window.scrollY));
      } catch {
        // As above.
      }
      window.location.reload();
    };
  }

  listen();
})();
