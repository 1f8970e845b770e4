// The slider over a curve's amounts: it shows the week of one amount at a time, and marks its point on the chart.
"use strict";

function slide(curve) {
  const range = curve.querySelector("#amount");
  if (!range || range.dataset.ready) return;
  range.dataset.ready = "yes";
  const points = [...curve.querySelectorAll("[data-point]")];
  const solved = points.filter((point) => point.querySelector("form"));
  const circles = curve.querySelectorAll("svg circle.point");
  const said = curve.querySelector("output[data-said]");
  const show = () => {
    points.forEach((point, place) => { point.hidden = place !== Number(range.value); });
    const point = points[Number(range.value)];
    said.textContent = point.dataset.said;
    range.setAttribute("aria-valuetext", point.dataset.said);
    circles.forEach((circle, place) => circle.classList.toggle("chosen", solved[place] === point));
  };
  range.value = range.dataset.start || "0";
  range.addEventListener("input", show);
  curve.querySelector("[data-slide]").hidden = false;
  show();
}

function slideAll() {
  document.querySelectorAll("[data-curve]").forEach(slide);
}

addEventListener("DOMContentLoaded", () => {
  slideAll();
  const standing = document.getElementById("standing");
  if (standing) new MutationObserver(slideAll).observe(standing, { childList: true });
});
