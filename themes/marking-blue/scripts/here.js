/* "I am here": a search for a fault that is left half way is remembered on this device, one place a guide, and offered again on the front
   page and on the guide's own page. An ending is the end of it. */
(function () {
  "use strict";

  const MOST = 5;
  /** Nothing else may become a link, whatever stands in the storage. */
  const PAGE = /^([a-z]{2,3}(-[A-Za-z0-9]{1,8})*\/)?faults\/[A-Za-z0-9-]+\/[A-Za-z0-9-]+\.html$/;

  function kept() {
    try {
      const all = JSON.parse(window.keep.get("here"));
      return Array.isArray(all) ? all.filter((one) => PAGE.test(one?.address)) : [];
    } catch {
      return [];
    }
  }

  const keep = (all) => window.keep.set("here", all.length ? JSON.stringify(all.slice(0, MOST)) : "");

  const here = document.querySelector("[data-here]");
  if (here) {
    const others = kept().filter((one) => one.symptom !== here.dataset.symptom);
    const { symptom, title, address } = here.dataset;
    const at = document.querySelector("h1")?.textContent.trim() ?? "";
    keep(here.dataset.here === "going" ? [{ symptom, title, address, at }, ...others] : others);
  }

  for (const block of document.querySelectorAll("[data-way-back]")) {
    const only = block.dataset.wayBack;
    const list = block.querySelector("ul");
    const show = () => {
      const all = kept().filter((one) => !only || one.symptom === only);
      list.replaceChildren(...all.map((one) => {
        const item = document.createElement("li");
        const link = document.createElement("a");
        link.href = block.dataset.root + one.address;
        link.textContent = one.title;
        const at = document.createElement("span");
        at.className = "quiet small";
        at.textContent = one.at;
        item.append(link, " ", at);
        return item;
      }));
      block.hidden = all.length === 0;
    };
    block.querySelector("button").addEventListener("click", () => {
      keep(only ? kept().filter((one) => one.symptom !== only) : []);
      show();
    });
    show();
  }
})();
