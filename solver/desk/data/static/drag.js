// A line dragged by its name onto another day is moved there: the request of the form "To another day", by pointer.
"use strict";

(() => {
let carried = null;

function ready() {
  if (matchMedia("(pointer: coarse)").matches) return;  // a finger that stays scrolls or selects
  for (const name of document.querySelectorAll("[data-line] .what")) name.draggable = true;
  for (const note of document.querySelectorAll("[data-drag-note]")) note.hidden = false;
}

/** The day under the pointer, where the carried line can be put down. */
function dayOf(event) {
  const day = carried && event.target.closest && event.target.closest("[data-day]");
  return day && !day.contains(carried) ? day : null;
}

function mark(day) {
  for (const one of document.querySelectorAll("[data-day].under")) if (one !== day) one.classList.remove("under");
  if (day) day.classList.add("under");
}

document.addEventListener("dragstart", (event) => {
  const name = event.target.closest && event.target.closest('.what[draggable="true"]');
  carried = name && name.closest("[data-line]");
  if (!carried) return;
  carried.classList.add("carried");
  event.dataTransfer.effectAllowed = "move";
  event.dataTransfer.setData("text/plain", carried.querySelector("strong").textContent);
});

document.addEventListener("dragover", (event) => {
  const day = dayOf(event);
  mark(day);
  if (day) event.preventDefault();
});

document.addEventListener("dragend", () => {
  mark(null);
  if (carried) carried.classList.remove("carried");
  carried = null;
});

document.addEventListener("drop", (event) => {
  const day = dayOf(event);
  if (!day) return;
  event.preventDefault();
  const form = carried.querySelector("form"), values = Object.fromEntries(new FormData(form));
  const asked = { ...values, act: "move", value: day.dataset.day };
  htmx.ajax("POST", form.getAttribute("action"), { source: carried, target: "#week", values: asked });
});

addEventListener("DOMContentLoaded", ready);
document.addEventListener("htmx:afterSwap", (event) => { if (event.target.id === "week") ready(); });
})();
