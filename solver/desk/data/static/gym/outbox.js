// Sessions that were sent: tried again until the book has them, and shown on the page meanwhile.
import { changeSent, draftsOf, forgetSent, keeps, sent, unsend } from "./kept.js";
import { drop } from "./offline.js";

const FIRST_PAUSE = 2000, LONGEST_PAUSE = 60000, PATIENCE = 20000;
const AWAY = "no connection; it is sent as soon as there is one";
const UNKNOWN = "This browser is no longer known to the desk. Open the desk by its address again; what was typed stays here.";
let pause = FIRST_PAUSE, timer = 0, sending = false;

const count = (sets) => `${sets} set${sets === 1 ? "" : "s"}`;

function words(text, parent) {
  const p = document.createElement("p");
  p.textContent = text;
  parent.append(p);
  return p;
}

function choice(text, parent, act) {
  const button = document.createElement("button");
  button.type = "button";
  button.className = "small";
  button.textContent = text;
  button.addEventListener("click", act);
  parent.append(button, " ");
}

export function show(said = "") {
  const place = document.getElementById("outbox");
  const focused = place.contains(document.activeElement);
  place.replaceChildren();
  if (said) words(said, place);
  if (!keeps()) words("This browser lets nothing be kept: stay on this page until the session is written down.", place);
  for (const one of sent()) showSent(one, place);
  const form = document.getElementById("session");
  for (const one of draftsOf(place.dataset.of, form && form.dataset.draft)) {
    const link = document.createElement("a");
    link.href = one.page;
    link.textContent = `${one.title}: typed here, not sent yet`;
    words("", place).append(link);
  }
  if (focused) { place.tabIndex = -1; place.focus(); }
}

function showSent(one, place) {
  if (one.state === "conflict") {
    words(`${one.title}: ${one.said}. Nothing was written; what was typed is kept here.`, place);
    const row = words("", place);
    choice("Add these sets to it", row, () => again(one, "add"));
    choice("Write this one in its place", row, () => again(one, "replace"));
    choice("Throw this one away", row, () => { forgetSent(one); show(); });
  } else if (one.state === "refused") {
    words(`${one.title} was not taken: ${one.said} It is kept here.`, place);
    const row = words("", place);
    choice("Back to what was typed", row, () => { unsend(one); location.assign(one.page); });
    choice("Throw it away", row, () => { forgetSent(one); show(); });
  } else {
    words(`${one.title}: ${count(one.sets)} kept here, ${one.said || (navigator.onLine ? "being sent" : AWAY)}.`, place);
  }
}

function again(one, how) {
  changeSent(one.id, { state: "waiting", said: "", fields: [...one.fields.filter(([name]) => name !== "how"), ["how", how]] });
  show();
  send();
}

const waiting = () => sent().filter((one) => one.state === "waiting");

export async function send() {
  clearTimeout(timer);
  if (sending) return;
  sending = true;
  let failed = false;
  try {
    for (const one of waiting()) failed = !(await sendOne(one)) || failed;
  } finally { sending = false; }
  if (failed) {
    timer = setTimeout(send, pause);
    pause = Math.min(2 * pause, LONGEST_PAUSE);
  } else if (waiting().length) send();
  else pause = FIRST_PAUSE;
}

/** Try at once again, however long the next try would have been waited for. */
export function sendSoon() {
  pause = FIRST_PAUSE;
  return send();
}

async function sendOne(one) {
  let answer, said;
  try {
    answer = await fetch(one.address, {
      method: "POST", body: new URLSearchParams(one.fields), headers: { Accept: "application/json" },
      signal: AbortSignal.timeout(PATIENCE),
    });
    said = await answer.json().catch(() => ({}));
  } catch { return tell(one, { said: AWAY }, false); }
  if (answer.ok && said.state === "taken") {
    forgetSent(one);
    drop(one.address);
    show(`${one.title}: in the book, ${count(said.sets)}.${said.there_already ? " It was there already." : ""}`);
    return true;
  }
  if (answer.status === 409) return tell(one, { state: "conflict", said: said.said }, true);
  if (answer.status === 422) {
    const faults = (said.faults || []).map((fault) => `${fault.where}: ${fault.said}${fault.remedy ? ` (${fault.remedy})` : ""}.`);
    return tell(one, { state: "refused", said: faults.join(" ") }, true);
  }
  const unknown = answer.status === 403 || answer.redirected;
  return tell(one, { said: unknown ? UNKNOWN : "the desk did not take it; it is tried again" }, false);
}

function tell(one, what, heard) {
  changeSent(one.id, what);
  show();
  return heard;
}

show();
for (const event of ["online", "pageshow"]) addEventListener(event, sendSoon);
addEventListener("offline", () => show());
document.addEventListener("visibilitychange", () => { if (!document.hidden) sendSoon(); });
