/* Is my print current? The codes are the rows of the list on the page: nothing is fetched. What is typed, or stands in the
   address as `#code-…`, is looked up and its row said again under the field.

   Markup: form.print-check[data-rest][data-odd][hidden] > input, .print-said[role=status]; li#code-…. */
(function () {
  "use strict";

  function ready(form) {
    const field = form.querySelector("input");
    const said = form.querySelector(".print-said");

    /** A code as it is typed: with a gap or a hyphen, in small letters. */
    const read = (text) => text.replace(/[\s-]/g, "").toUpperCase();

    function words(text) {
      const line = document.createElement("p");
      line.textContent = text;
      said.append(line);
    }

    function say() {
      const code = read(field.value);
      said.replaceChildren();
      said.className = "print-said";
      if (!code) return;
      const row = document.getElementById("code-" + code);
      if (row) {
        said.classList.add(...row.classList);
        said.append(...[...row.childNodes].map((node) => node.cloneNode(true)));
      } else {
        said.classList.add("print", "unknown");
        words(/^[34679CFHJKMPQRTWXY]{8}$/.test(code) ? form.dataset.rest : form.dataset.odd);
      }
    }

    function fromAddress() {
      const code = decodeURIComponent(location.hash).match(/^#code-(.+)$/);
      if (code) {
        field.value = code[1];
        say();
        form.scrollIntoView();
      }
    }

    form.hidden = false;
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      say();
    });
    addEventListener("hashchange", fromAddress);
    fromAddress();
  }

  const within = (root) => root.querySelectorAll(".print-check").forEach(ready);
  within(document);
  document.addEventListener("unfolded", (event) => within(event.target));
})();
