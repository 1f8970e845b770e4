// What this browser keeps of sessions: drafts that are typed, and sessions that were sent and are not in the book yet.
// A draft is kept under its client, week, session and day; each sent session under a mark of its own, so that two
// windows never write over each other's.

const DRAFT = "setwright-draft:", SENT = "setwright-sent:";
let able = true;

/** Whether this browser lets anything be kept. */
export function keeps() { return able; }

export function mark() {
  return Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, "0")).join("");
}

function read(key) {
  try { return JSON.parse(localStorage.getItem(key)); } catch { return null; }
}

function write(key, value) {
  try {
    if (value === null) localStorage.removeItem(key);
    else localStorage.setItem(key, JSON.stringify(value));
    able = true;
  } catch { able = false; }
  return able;
}

function all(prefix) {
  try {
    return Object.keys(localStorage).filter((key) => key.startsWith(prefix)).map((key) => [key, read(key)]).filter(([, value]) => value);
  } catch { able = false; return []; }
}

// ---- drafts: {of, title, page, fields}

export function draft(name) { return read(DRAFT + name); }

export function keepDraft(name, what) { return write(DRAFT + name, what); }

/** The drafts of a client that are not sent, but for the one of a name. */
export function draftsOf(of, but) {
  const under = new Set(sent().map((one) => one.draft));
  return all(DRAFT).map(([key, value]) => ({ name: key.slice(DRAFT.length), ...value }))
    .filter((one) => one.of === of && one.name !== but && !under.has(one.name));
}

/** Whether anything is kept of a page of sessions; `path` is as addresses are written, letters escaped. */
export function holds(path) {
  const kept = [...sent(), ...all(DRAFT).map(([, value]) => value)];
  return kept.some((one) => new URL(one.page, location.href).pathname === path);
}

// ---- sent sessions: {id, at, draft, page, address, title, sets, state, said, fields}

/** The sessions that were sent and not acknowledged, the oldest first. */
export function sent() { return all(SENT).map(([, value]) => value).sort((one, other) => one.at - other.at); }

export function keepSent(one) { return write(SENT + one.id, one); }

export function changeSent(id, what) {
  const one = read(SENT + id);
  if (one) write(SENT + id, { ...one, ...what });
}

/** Forget a sent session; its draft too, unless something else was typed since. */
export function forgetSent(one) {
  const typed = draft(one.draft);
  if (typed && JSON.stringify(typed.fields) === JSON.stringify(one.typed)) keepDraft(one.draft, null);
  write(SENT + one.id, null);
}

/** Forget that a session was sent: what was typed is a draft again. */
export function unsend(one) {
  if (!draft(one.draft)) keepDraft(one.draft, { of: one.of, title: one.title, page: one.page, fields: one.typed });
  write(SENT + one.id, null);
}
