// Rows added to a form, and the fields of a row that its kind does not ask for put away.
"use strict";

(() => {
const NEEDS = { travel: ["for-travel", "for-sessions"], short: ["for-sessions"] };

function fit(row) {
  const kind = row.querySelector("select").value;
  for (const label of row.querySelectorAll(".for-travel, .for-sessions")) {
    const asked = (NEEDS[kind] || []).some((name) => label.classList.contains(name));
    label.hidden = !asked;
    label.querySelector("input").disabled = !asked;
  }
}

function addRow(button) {
  const place = document.getElementById(button.dataset.into);
  const html = document.getElementById(button.dataset.addRow).innerHTML.replaceAll("NEW", `n${place.children.length}`);
  place.insertAdjacentHTML("beforeend", html);
  const row = place.lastElementChild;
  fit(row);
  row.querySelector("select").focus();
}

addEventListener("DOMContentLoaded", () => {
  const rows = document.getElementById("spans");
  if (!rows) return;
  while (rows.children.length > 1) rows.lastElementChild.remove();
  for (const row of rows.children) fit(row);
  rows.addEventListener("change", (event) => {
    if (event.target.matches("select")) fit(event.target.closest(".span"));
  });
  for (const button of document.querySelectorAll("[data-add-row]")) {
    button.hidden = false;
    button.addEventListener("click", () => addRow(button));
  }
});
})();
