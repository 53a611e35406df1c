/* Judges the self-check after a stop: says whether the choice is right, and counts what was right at the first try. Without it the answers
   stand behind their folds. */
(function () {
  "use strict";

  for (const check of document.querySelectorAll("[data-check]")) {
    const questions = [...check.querySelectorAll(".self-check > li")];
    const sum = check.querySelector("[data-sum]");
    const first = new Map();

    function judge(question, choice) {
      const right = choice.hasAttribute("data-right");
      question.querySelector(".check-verdict").textContent = right ? check.dataset.sayRight : check.dataset.sayWrong;
      if (!first.has(question)) first.set(question, right);
      sum.hidden = first.size < questions.length;
      sum.querySelector("b").textContent = `${[...first.values()].filter(Boolean).length} / ${questions.length}`;
    }

    for (const question of questions) {
      question.addEventListener("change", (event) => judge(question, event.target));
    }
  }
})();
