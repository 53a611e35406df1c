/* Lets a phone keep the handbook, when it is read from its address on the net. From disk nothing is asked for. */
(function () {
  "use strict";

  if (window.location.protocol !== "https:" || !("serviceWorker" in navigator)) return;
  const root = document.currentScript.dataset.root;
  const manifest = document.createElement("link");
  manifest.rel = "manifest";
  manifest.href = root + "handbook.webmanifest";
  document.head.append(manifest);
  navigator.serviceWorker.register(root + "offline-worker.js").catch(() => {});
})();
