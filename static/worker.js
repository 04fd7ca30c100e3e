// The service worker: opens Now and Trays without the server. The server writes VERSION and FILES above this text;
// VERSION is a digest of what FILES hold. Presses are not its business: they wait in the page's own outbox.

const NAME = `runboard-${VERSION}`;
const SHELLS = new Set(["/", "/trays"]);

self.addEventListener("install", (event) => {
  event.waitUntil(caches.open(NAME).then((cache) => cache.addAll(FILES.map((file) => new Request(file, { cache: "no-cache" })))));
  self.skipWaiting();
});

self.addEventListener("activate", (event) => {
  event.waitUntil((async () => {
    const old = (await caches.keys()).filter((name) => name.startsWith("runboard-") && name !== NAME);
    await Promise.all(old.map((name) => caches.delete(name)));
    await self.clients.claim();
  })());
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== "GET" || url.origin !== location.origin) return;
  if (request.mode === "navigate" ? SHELLS.has(url.pathname) : FILES.includes(url.pathname)) event.respondWith(kept(request, url));
});

// What is kept comes first, so that a bad Wi-Fi costs nothing; a new version brings a new worker with new files.
async function kept(request, url) {
  const cache = await caches.open(NAME);
  return (await cache.match(url.pathname)) ?? fetch(request);
}
