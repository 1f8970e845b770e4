// A session in the gym: what is typed is kept in this browser until the book has it, also while there is no connection.
import { draft, keepDraft, keepSent, mark, sent } from "./kept.js";
import { keepAtHand } from "./offline.js";
import { sendSoon, show } from "./outbox.js";

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
  return Array.from(new FormData(form)).filter(([name, value]) => name !== "id" && typeof value === "string");
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
  const typed = fields(form), id = mark();
  const one = {
    id, at: Date.now(), of: form.dataset.of, draft: form.dataset.draft, page: form.dataset.page,
    address: form.getAttribute("action"), title: form.dataset.title, state: "waiting", said: "",
    sets: form.querySelectorAll(".done input:checked").length,
    typed, fields: [...typed, ["id", id]],
  };
  if (!one.sets) {
    event.preventDefault();
    show("Mark each set that was done; then the session can be written down.");
    document.getElementById("outbox").scrollIntoView({ block: "center" });
    return;
  }
  if (!keepSent(one)) return;  // nothing can be kept: the browser sends the form itself
  event.preventDefault();
  form.hidden = true;
  show();
  const place = document.getElementById("outbox");
  place.tabIndex = -1;
  place.focus();
  sendSoon();
}

function begin(form) {
  const { draft: name, of, page, title } = form.dataset, typed = draft(name);
  if (typed) {
    restore(form, typed.fields);
    show("What was typed here before is back; it is not in the book yet.");
  }
  form.hidden = sent().some((one) => one.draft === name);
  for (const one of form.querySelectorAll("#begin, #add-line, .add-set, #offline-note")) one.hidden = false;
  const save = () => { keepDraft(name, { of, page, title, fields: fields(form) }); };
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
  keepAtHand(form.getAttribute("action"));
}

const form = document.getElementById("session");
if (form) begin(form);
