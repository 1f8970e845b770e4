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

document.addEventListener("htmx:afterRequest", (event) => {
  const faults = document.getElementById("faults");
  if (event.detail.successful && event.detail.target && event.detail.target.id === "week") faults.replaceChildren();
  if (!event.detail.successful && faults.hasChildNodes()) faults.scrollIntoView({ block: "nearest" });
});

document.addEventListener("keydown", (event) => {
  if (event.key === " " && event.target.matches("a[role=button]")) { event.preventDefault(); event.target.click(); }
});
