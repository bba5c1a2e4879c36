// SPDX-License-Identifier: Apache-2.0
// Keeps the page for the next visit, where it came from a server. The command writes PAGE, its name beside this file,
// and EDITION, which is another one for every other page, above.
const CACHE = "rodtravel-page ";
const address = new URL(PAGE, location).href;

self.addEventListener("install", (event) => {
  const keep = async () => (await caches.open(CACHE + EDITION)).add(new Request(address, { cache: "reload" }));
  event.waitUntil(keep().then(() => self.skipWaiting()));
});

/* The one before is dropped once this one is whole. */
self.addEventListener("activate", (event) => {
  const drop = async () => {
    const old = (await caches.keys()).filter((name) => name.startsWith(CACHE) && name !== CACHE + EDITION);
    await Promise.all(old.map((name) => caches.delete(name)));
  };
  event.waitUntil(drop().then(() => self.clients.claim()));
});

/* The page alone; what else the server has is none of its business. */
self.addEventListener("fetch", (event) => {
  const asked = new URL(event.request.url);
  if (event.request.mode !== "navigate" || asked.origin + asked.pathname !== address) return;
  event.respondWith(caches.match(address).then((kept) => kept || fetch(event.request)));
});
