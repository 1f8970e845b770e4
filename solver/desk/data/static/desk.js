// The desk's own script: the news of a search as they come, put in where the page says so.
"use strict";

function listen(place) {
  const news = new EventSource(place.dataset.news);
  delete place.dataset.news;
  const show = (event) => {
    const focused = document.activeElement && place.contains(document.activeElement);
    place.innerHTML = JSON.parse(event.data);
    htmx.process(place);
    const first = place.querySelector("[autofocus]");
    if (first && (focused || event.type === "end")) first.focus();
  };
  news.addEventListener("standing", show);
  news.addEventListener("end", (event) => { news.close(); show(event); });
  addEventListener("pagehide", () => news.close());
}

function begin(root) {
  for (const place of root.querySelectorAll("[data-news]")) listen(place);
}

addEventListener("DOMContentLoaded", () => begin(document));
document.addEventListener("htmx:afterSwap", (event) => begin(event.target));
