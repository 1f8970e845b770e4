// The service worker of one day's gym page: where the connection is away, it gives the page as it was shown last.
// It keeps that page and its static files, nothing else; `offline.js` says which, and takes it away again.
"use strict";

const NAME = `setwright-gym:${new URL(registration.scope).pathname}`;

addEventListener("install", () => skipWaiting());
addEventListener("activate", (event) => event.waitUntil(clients.claim()));

async function keepOnly(addresses) {
  const cache = await caches.open(NAME);
  for (const address of addresses) {
    const answer = await fetch(address, { cache: "no-store", redirect: "error" });
    if (answer.ok) await cache.put(address, answer);
  }
  const wanted = new Set(addresses.map((address) => new URL(address, location.href).href));
  for (const held of await cache.keys()) if (!wanted.has(held.url)) await cache.delete(held);
}

addEventListener("message", (event) => {
  if (Array.isArray(event.data)) event.waitUntil(keepOnly(event.data).catch(() => {}));
});

addEventListener("fetch", (event) => {
  if (event.request.method !== "GET") return;
  event.respondWith(fetch(event.request).catch(async (error) => {
    const held = await caches.match(event.request, { cacheName: NAME });
    if (held) return held;
    throw error;
  }));
});
