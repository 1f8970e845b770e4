// The brief's own script: an assumption taken over into the line, a name put into a list.
"use strict";

document.addEventListener("click", (event) => {
  const button = event.target.closest("button");
  if (!button) return;
  if (button.dataset.phrase) {
    const phrase = document.getElementById("phrase");
    phrase.value = button.dataset.phrase;
    phrase.dispatchEvent(new Event("input", { bubbles: true }));
    phrase.focus();
  }
  if (button.dataset.add) {
    const name = document.getElementById("find-exercise");
    const list = document.getElementById(button.dataset.add);
    if (!name.value.trim()) return;
    list.value = [list.value.trim(), name.value.trim()].filter(Boolean).join("\n");
    name.value = "";
    list.dispatchEvent(new Event("change", { bubbles: true }));
    name.focus();
  }
});
