// The desk's own script: the news of a search as they come, put in where the page says so; only a window in sight listens,
// because a browser opens no more than six connections to one desk.
"use strict";

const STILL_THERE = 20000;  // between two words to the desk that a window out of sight still waits for its search

function listen(place) {
  const address = place.dataset.news;
  delete place.dataset.news;
  let news = null, timer = 0, ended = false, left = false;
  const show = (event) => {
    const focused = document.activeElement && place.contains(document.activeElement);
    place.innerHTML = JSON.parse(event.data);
    htmx.process(place);
    const first = place.querySelector("[autofocus]");
    if (first && (focused || event.type === "end")) first.focus();
  };
  const close = () => { if (news) news.close(); news = null; };
  const open = () => {
    clearInterval(timer);
    if (news || ended) return;
    news = new EventSource(address);
    news.addEventListener("standing", show);
    news.addEventListener("end", (event) => { ended = true; close(); show(event); });
  };
  const wait = () => {
    close();
    if (ended || left) return;  // a page that is left waits for nothing
    const say = () => fetch(address.replace(/news$/, "waited"), { method: "POST" }).catch(() => {});
    timer = setInterval(say, STILL_THERE);
    say();
  };
  document.addEventListener("visibilitychange", () => { if (document.hidden) wait(); else open(); });
  addEventListener("pagehide", () => { left = true; clearInterval(timer); close(); });
  addEventListener("pageshow", (event) => { left = false; if (event.persisted && !document.hidden) open(); });
  if (document.hidden) wait(); else open();
}

function begin(root) {
  for (const place of root.querySelectorAll("[data-news]")) listen(place);
}

addEventListener("DOMContentLoaded", () => begin(document));
document.addEventListener("htmx:afterSwap", (event) => begin(event.target));
