// The service worker: opens Now, Trays and the help without the server. The server writes VERSION and FILES above this text;
// VERSION is a digest of what FILES hold. Presses are not its business: they wait in the page's own outbox.

const NAME = `runboard-${VERSION}`;
const SHELLS = new Set(["/", "/trays", "/help"]);

// A new version waits until no page of the old one is open: a page that is being worked goes on with the files that it
// began with, and never gets half of each.
self.addEventListener("install", (event) => {
  event.waitUntil(caches.open(NAME).then((cache) => cache.addAll(FILES.map((file) => new Request(file, { cache: "no-cache" })))));
});

self.addEventListener("activate", (event) => {
  event.waitUntil((async () => {
    const old = (await caches.keys()).filter((name) => name.startsWith("runboard-") && name !== NAME);
    await Promise.all(old.map((name) => caches.delete(name)));
    await self.clients.claim();
  })());
});

// Asked by a page that has just been opened: where it is the only one, nothing of the old version is being worked. The
// page that it was opened in place of may still be counted for some seconds on a busy phone.
self.addEventListener("message", (event) => { if (event.data === "take over") event.waitUntil(takeOverIfAlone()); });

async function takeOverIfAlone() {
  for (let turn = 0; turn < 60; turn += 1) {
    const open = await clients.matchAll({ type: "window", includeUncontrolled: true });
    if (open.length < 2) return self.skipWaiting();
    await new Promise((over) => setTimeout(over, 250));
  }
  return undefined;
}

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

// An alert that the shop sent to a phone that may be locked. The newer one of the same alert takes the place of the older.
self.addEventListener("push", (event) => {
  const { id, says, at } = event.data.json();
  const body = new Date(at).toLocaleTimeString([], { hour: "2-digit", minute: "2-digit" });
  const how = { body, tag: id, renotify: true, requireInteraction: true, timestamp: Date.parse(at), icon: "/static/icons/icon-192.png" };
  event.waitUntil(registration.showNotification(says, how));
});

self.addEventListener("notificationclick", (event) => {
  event.notification.close();
  event.waitUntil((async () => {
    const open = await clients.matchAll({ type: "window", includeUncontrolled: true });
    const now = open.find((page) => new URL(page.url).pathname === "/");
    return now ? now.focus() : clients.openWindow("/");
  })());
});
