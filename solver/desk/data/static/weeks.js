// The week's own script: a line's choices open and close in place.
"use strict";

document.addEventListener("htmx:beforeRequest", (event) => {
  const opener = event.target;
  if (!opener.matches("[aria-controls][hx-get]")) return;
  const choices = document.getElementById(opener.getAttribute("aria-controls"));
  if (choices.hasChildNodes()) {
    event.preventDefault();
    choices.replaceChildren();
    opener.setAttribute("aria-expanded", "false");
  }
});

document.addEventListener("htmx:afterSwap", (event) => {
  const opener = document.querySelector(`[aria-controls="${CSS.escape(event.target.id)}"]`);
  if (opener) opener.setAttribute("aria-expanded", String(event.target.hasChildNodes()));
});

document.addEventListener("htmx:afterSwap", (event) => {
  if (event.target.id !== "week") return;
  clear("faults");
  const told = event.target.querySelector(".edit-said");
  document.getElementById("said").textContent = told ? told.textContent : "";
});

let asked = null;
document.addEventListener("htmx:beforeRequest", (event) => { asked = event.target; });

function clear(id) {
  document.getElementById(id).replaceChildren();
}

document.addEventListener("click", (event) => {
  const clears = event.target.closest("[data-clears]");
  if (!clears) return;
  clear(clears.dataset.clears);
  const back = asked && asked.isConnected && asked.querySelector("button:not([disabled])");
  if (back) back.focus();
});

document.addEventListener("keydown", (event) => {
  if (event.key === " " && event.target.matches("a[role=button]")) { event.preventDefault(); event.target.click(); }
});
