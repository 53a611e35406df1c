/* What a page remembers on this device: ticks, readings, the wording chosen. Loaded before the scripts that use it.
   Some browsers keep such things per file, some not at all when a page is opened from disk: every call may find
   nothing, and nothing on a page depends on it. */
(function () {
  "use strict";

  const PREFIX = "coquille:";

  window.keep = {
    /** The text kept under `name`, or null. */
    get(name) {
      try {
        return window.localStorage.getItem(PREFIX + name);
      } catch {
        return null;
      }
    },

    /** Keeps `text` under `name`; an empty text is forgotten. */
    set(name, text) {
      try {
        if (text) window.localStorage.setItem(PREFIX + name, text);
        else window.localStorage.removeItem(PREFIX + name);
      } catch {
        // No storage here: the page works as it did without.
      }
    },
  };
})();
