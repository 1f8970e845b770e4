// Has the service worker keep a gym page while its session is open, and drops it afterwards.
import { holds } from "./kept.js";

const workers = () => navigator.serviceWorker;  // none where the page came over an unsafe connection
const pathOf = (address) => new URL(address, location.href).pathname;  // as scopes are written, letters escaped
const nameOf = (address) => `setwright-gym:${address}`;

/** Keep the page of a day at hand; the pages of other days go, unless something is kept of them. */
export async function keepAtHand(address) {
  if (!workers()) return;
  address = pathOf(address);
  for (const one of await workers().getRegistrations()) {
    const path = new URL(one.scope).pathname;
    if (path !== address && !holds(path)) await dropAt(path, one);
  }
  const one = await workers().register(address.replace(/[^/]+$/, "keeper.js"), { scope: address }).catch(() => null);
  if (!one) return;
  const worker = one.active || one.waiting || one.installing;
  const loaded = performance.getEntriesByType("resource").map((entry) => new URL(entry.name).pathname);
  const files = loaded.filter((path) => path.startsWith("/static/"));
  worker.postMessage([location.pathname + location.search, ...new Set(files)]);
}

/** Forget the page of a day. */
export async function drop(address) {
  if (!workers()) return;
  await dropAt(pathOf(address), await workers().getRegistration(address));
}

async function dropAt(path, one) {
  if (one && new URL(one.scope).pathname === path) await one.unregister();
  await caches.delete(nameOf(path));
}
