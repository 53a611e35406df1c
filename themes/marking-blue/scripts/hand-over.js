/* The summary to hand over can be copied or printed by itself. */
(function () {
  "use strict";

  /** The words of the summary, a line each. */
  function summary(block) {
    const lines = [...block.querySelectorAll("h2, p:not(.no-copy), li")].map((line) => line.textContent.replace(/\s+/g, " ").trim());
    const address = /^https?:/.test(window.location.href) ? [window.location.href] : [];
    return [...lines, ...address].join("\n");
  }

  async function copy(text) {
    try {
      await window.navigator.clipboard.writeText(text);
      return true;
    } catch {
      // A page opened from disk may be kept from the clipboard: the old way still goes through the selection.
      const field = document.createElement("textarea");
      field.value = text;
      document.body.append(field);
      field.select();
      const done = document.execCommand("copy");
      field.remove();
      return done;
    }
  }

  function ready(block) {
    const said = block.querySelector("[data-said]");
    const buttons = block.querySelector(".hand-over-buttons");
    const copying = block.querySelector("[data-copy]");
    buttons.hidden = false;
    copying.addEventListener("click", async () => {
      said.textContent = (await copy(summary(block))) ? said.dataset.sayCopied : said.dataset.sayNot;
      copying.focus();
    });
    block.querySelector("[data-print]").addEventListener("click", () => {
      document.body.classList.add("only-hand-over");
      window.print();
      document.body.classList.remove("only-hand-over");
    });
  }

  const within = (root) => root.querySelectorAll("[data-hand-over]").forEach(ready);
  within(document);
  document.addEventListener("unfolded", (event) => within(event.target));
})();
