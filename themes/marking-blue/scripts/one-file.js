/* In the form that is one file: the title of the window and the focus follow the section that the address leads to.
   Which section is shown is a matter of the style sheet alone. */
(function () {
  "use strict";

  if (!document.body.classList.contains("one-file")) return;
  const book = document.title;

  function shown() {
    const target = document.querySelector(":target");
    return (target && target.closest(".leaf")) || document.querySelector(".leaf");
  }

  function follow() {
    const heading = shown()?.querySelector("h1");
    if (heading) document.title = heading.textContent + " | " + book;
    return heading;
  }

  window.addEventListener("hashchange", () => {
    const heading = follow();
    // A link to a place inside a section leads the focus there by itself.
    if (!heading || !document.querySelector(".leaf:target")) return;
    heading.tabIndex = -1;
    heading.focus({ preventScroll: true });
  });
  // The browser looks for the section when all is there.
  follow();
  window.addEventListener("load", follow);
})();
