// A session in the gym: what is typed is kept in this browser until the book has it, also while there is no connection.
"use strict";

(() => {
const DRAFT = `setwright-draft:${location.pathname}`;
const OUTBOX = "setwright-outbox";
const FIRST_PAUSE = 2000, LONGEST_PAUSE = 60000, PATIENCE = 20000;
const UNKNOWN = "This browser is no longer known to the desk. Open the desk by its address again; what was typed stays here.";
let pause = FIRST_PAUSE, timer = 0, sending = false, storage = true;

// ---- what is kept here

function kept(key, otherwise) {
  try { return JSON.parse(localStorage.getItem(key)) ?? otherwise; } catch { return otherwise; }
}

function keep(key, value) {
  try {
    if (value === null) localStorage.removeItem(key);
    else localStorage.setItem(key, JSON.stringify(value));
    storage = true;
  } catch { storage = false; }
  return storage;
}

function mark() {
  return Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, "0")).join("");
}

function change(id, what) {
  const waiting = kept(OUTBOX, []).map((one) => (one.id === id ? { ...one, ...what } : one));
  const left = what === null ? waiting.filter((one) => one.id !== id) : waiting;
  keep(OUTBOX, left.length ? left : null);
  show();
}

// ---- the outbox

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

function show(sent = "") {
  const place = document.getElementById("outbox");
  if (!place) return;
  const focused = place.contains(document.activeElement);
  place.replaceChildren();
  if (sent) words(sent, place);
  if (!storage) words("This browser lets nothing be kept: stay on this page until the session is written down.", place);
  for (const one of kept(OUTBOX, [])) {
    if (one.state === "conflict") {
      words(`${one.title}: ${one.said}. Nothing was written; what was typed is kept here.`, place);
      const row = words("", place);
      choice("Add these sets to it", row, () => again(one.id, "add"));
      choice("Write this one in its place", row, () => again(one.id, "replace"));
      choice("Throw this one away", row, () => change(one.id, null));
    } else if (one.state === "refused") {
      words(`${one.title} was not taken: ${one.said} It is kept here.`, place);
      const row = words("", place);
      choice("Back to what was typed", row, () => back(one));
      choice("Throw it away", row, () => change(one.id, null));
    } else {
      const why = one.said || (navigator.onLine ? "being sent" : "no connection; it is sent as soon as there is one");
      words(`${one.title}: ${one.sets} set${one.sets === 1 ? "" : "s"} kept here, ${why}.`, place);
    }
  }
  if (focused) { place.tabIndex = -1; place.focus(); }
}

function again(id, how) {
  const one = kept(OUTBOX, []).find((waiting) => waiting.id === id);
  if (!one) return;
  const fields = [...one.fields.filter(([name]) => name !== "how"), ["how", how]];
  change(id, { state: "waiting", said: "", fields });
  send();
}

function back(one) {
  const path = one.address;
  keep(`setwright-draft:${path}`, one.fields);
  change(one.id, null);
  location.assign(path);
}

async function send() {
  clearTimeout(timer);
  if (sending) return;
  sending = true;
  let failed = false;
  try {
    for (const one of kept(OUTBOX, []).filter((waiting) => waiting.state === "waiting")) {
      failed = !(await sendOne(one)) || failed;
    }
  } finally { sending = false; }
  if (failed) {
    timer = setTimeout(send, pause);
    pause = Math.min(2 * pause, LONGEST_PAUSE);
  } else if (kept(OUTBOX, []).some((waiting) => waiting.state === "waiting")) {
    send();
  } else pause = FIRST_PAUSE;
}

async function sendOne(one) {
  let answer, document_;
  try {
    answer = await fetch(one.address, {
      method: "POST", body: new URLSearchParams(one.fields), headers: { Accept: "application/json" },
      signal: AbortSignal.timeout(PATIENCE),
    });
    document_ = await answer.json().catch(() => ({}));
  } catch {
    change(one.id, { said: "no connection; it is sent as soon as there is one" });
    return false;
  }
  if (answer.ok && document_.state === "taken") {
    change(one.id, null);
    show(`${one.title}: in the book, ${document_.sets} set${document_.sets === 1 ? "" : "s"}.${document_.there_already ? " It was there already." : ""}`);
    return true;
  }
  if (answer.status === 409) change(one.id, { state: "conflict", said: document_.said });
  else if (answer.status === 422) {
    const said = (document_.faults || []).map((fault) => `${fault.where}: ${fault.said}${fault.remedy ? ` (${fault.remedy})` : ""}.`);
    change(one.id, { state: "refused", said: said.join(" ") });
  } else {
    change(one.id, { said: answer.status === 403 || answer.redirected ? UNKNOWN : "the desk did not take it; it is tried again" });
    return false;
  }
  return true;
}

// ---- the form

function addSet(section) {
  const rows = section.querySelectorAll(".set"), last = rows[rows.length - 1];
  const row = last.cloneNode(true), before = Number(last.dataset.set), number = before + 1;
  row.dataset.set = number;
  row.querySelector(".number").textContent = number;
  row.setAttribute("aria-label", last.getAttribute("aria-label").replace(/\d+$/, number));
  for (const input of row.querySelectorAll("input")) {
    input.name = input.name.replace(/-\d+$/, `-${number}`);
    if (input.type === "checkbox") input.checked = false;
    else if (input.name.startsWith("ended-")) input.value = "";
    else if (!input.name.startsWith("side-")) input.value = last.querySelector(`[name="${input.name.replace(/-\d+$/, `-${before}`)}"]`).value;
  }
  last.after(row);
  return row;
}

function addLine(form) {
  const lines = form.querySelector("#lines");
  const index = 1 + Math.max(-1, ...Array.from(lines.children, (line) => Number(line.dataset.line)));
  lines.insertAdjacentHTML("beforeend", form.querySelector("#line-row").innerHTML.replaceAll("LINE", index));
  const line = lines.lastElementChild;
  line.dataset.line = index;
  line.querySelector(".add-set").hidden = false;
  return line;
}

function fields(form) {
  return Array.from(new FormData(form)).filter(([, value]) => typeof value === "string");
}

function localMoment() {
  const now = new Date();
  return new Date(now - now.getTimezoneOffset() * 60000).toISOString().slice(0, 19);
}

// Each line of a draft is put where its lift stands now; a lift that the page does not have is added.
function restore(form, draft) {
  const said = new Map(draft), free = new Set(form.querySelectorAll(".line"));
  for (const [name, lift] of draft.filter(([field]) => field.startsWith("lift-"))) {
    const from = name.slice(5);
    let line = [...free].find((one) => one.querySelector(`[name="lift-${one.dataset.line}"]`).value === lift)
      || [...free].find((one) => !one.querySelector(`[name="lift-${one.dataset.line}"]`).value);
    line = line || addLine(form);
    free.delete(line);
    const to = line.dataset.line;
    line.querySelector(`[name="lift-${to}"]`).value = lift;
    for (const [field, value] of draft) {
      const [, kind, number] = field.match(new RegExp(`^(load|reps|left|ended|side)-${from}-(\\d+)$`)) || [];
      if (!kind) continue;
      while (!line.querySelector(`[name="reps-${to}-${number}"]`)) addSet(line);
      const input = line.querySelector(`[name="${kind}-${to}-${number}"]`);
      if (input) input.value = value;
      line.querySelector(`[name="done-${to}-${number}"]`).checked = said.has(`done-${from}-${number}`);
    }
  }
  for (const name of ["started", "minutes", "hard", "note"]) {
    if (said.has(name)) form.querySelector(`[name="${name}"]`).value = said.get(name);
  }
}

function submit(form, event) {
  const entry = {
    id: mark(), address: form.getAttribute("action"), title: form.dataset.title, state: "waiting", said: "",
    sets: form.querySelectorAll(".done input:checked").length,
  };
  entry.fields = [...fields(form).filter(([name]) => name !== "id"), ["id", entry.id]];
  if (!entry.sets) {
    event.preventDefault();
    show("Mark each set that was done; then the session can be written down.");
    document.getElementById("outbox").scrollIntoView({ block: "center" });
    return;
  }
  if (!keep(OUTBOX, [...kept(OUTBOX, []), entry])) return;
  event.preventDefault();
  keep(DRAFT, null);
  form.hidden = true;
  show();
  const place = document.getElementById("outbox");
  place.tabIndex = -1;
  place.focus();
  pause = FIRST_PAUSE;
  send();
}

function begin(form) {
  const draft = kept(DRAFT, null);
  if (draft) {
    restore(form, draft);
    show("What was typed here before is back; it is not in the book yet.");
  }
  for (const one of form.querySelectorAll("#begin, #add-line, .add-set, #offline-note")) one.hidden = false;
  const save = () => { keep(DRAFT, fields(form)); };
  form.addEventListener("input", save);
  form.addEventListener("change", (event) => {
    if (event.target.matches(".done input")) {
      const row = event.target.closest(".set");
      row.querySelector('[name^="ended-"]').value = event.target.checked ? localMoment() : "";
    }
    save();
  });
  form.addEventListener("click", (event) => {
    if (event.target.matches(".add-set")) addSet(event.target.closest(".line")).querySelector("input").focus();
    else if (event.target.id === "add-line") addLine(form).querySelector("input").focus();
    else if (event.target.id === "begin") form.querySelector('[name="started"]').value = localMoment().slice(11, 16);
    else return;
    save();
  });
  form.addEventListener("submit", (event) => submit(form, event));
}

addEventListener("DOMContentLoaded", () => {
  const form = document.getElementById("session");
  show();
  if (form) begin(form);
  send();
});
for (const event of ["online", "pageshow"]) addEventListener(event, () => { pause = FIRST_PAUSE; send(); });
addEventListener("offline", () => show());
document.addEventListener("visibilitychange", () => { if (!document.hidden) send(); });
})();
