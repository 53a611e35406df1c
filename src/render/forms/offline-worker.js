/* Keeps the handbook on the device: fetches every file once an edition, answers from what is kept, and lets go of older
   editions when the pages that show them are closed. EDITION and FILES stand above. */
"use strict";

const OURS = "handbook " + self.registration.scope + " ";
const NAME = OURS + EDITION;

self.addEventListener("install", (event) => {
  const asked = FILES.map((file) => new Request(file, { cache: "no-cache" }));
  event.waitUntil(caches.open(NAME).then((kept) => kept.addAll(asked)));
});

self.addEventListener("activate", (event) => {
  const gone = (names) => names.filter((name) => name.startsWith(OURS) && name !== NAME);
  event.waitUntil(caches.keys().then((names) => Promise.all(gone(names).map((name) => caches.delete(name)))));
});

self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== "GET" || !url.href.startsWith(self.registration.scope)) return;
  if (url.pathname.endsWith("/")) url.pathname += "index.html";
  const kept = caches.open(NAME).then((cache) => cache.match(url.href, { ignoreSearch: true }));
  event.respondWith(kept.then((answer) => answer || fetch(event.request)));
});
