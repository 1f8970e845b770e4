// A window that shows a client is told when the client is changed elsewhere; only a window in sight listens.
"use strict";

function watch(band) {
  let stream = null;
  const news = band.querySelector(".news");
  const begin = () => {
    if (stream || document.hidden) return;
    stream = new EventSource(`${band.dataset.changes}?since=${encodeURIComponent(band.dataset.stamp)}`);
    stream.addEventListener("changed", (event) => tell(JSON.parse(event.data)));
    stream.addEventListener("gone", gone);
  };
  const end = () => { if (stream) stream.close(); stream = null; };
  const gone = () => {
    end();
    const all = document.createElement("a");
    all.href = "/";
    all.textContent = "To the clients";
    news.replaceChildren("This client was erased elsewhere. Nothing that is sent from this page is written down. ", all);
  };
  const tell = (told) => {
    if (told.stamp === band.dataset.stamp) return;
    const anew = document.createElement("a");
    anew.href = location.pathname + location.search;
    anew.textContent = "Show it anew";
    const what = told.since.map((one) => one.through ? `${one.said} (by ${one.through})` : one.said);
    news.replaceChildren(`Changed elsewhere${what.length ? `: ${what.join("; ")}` : ""}. `, anew);
  };
  // An act that leaves the window on its page hands over the stamp that holds after it.
  document.body.addEventListener("stamped", (event) => {
    const before = band.dataset.stamp;
    band.dataset.stamp = event.detail.value;
    for (const field of document.querySelectorAll('input[name="stamp"]')) {
      if (field.value === before) field.value = event.detail.value;
    }
    news.replaceChildren();
    end();
    begin();
  });
  document.addEventListener("visibilitychange", () => { if (document.hidden) end(); else begin(); });
  addEventListener("pagehide", end);
  begin();
}

addEventListener("DOMContentLoaded", () => {
  for (const band of document.querySelectorAll("[data-changes]")) watch(band);
});
