// Only under `almanac serve`, in place of the offline worker: one that an earlier site left here is gone, so that no old page is shown.

self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", (event) => event.waitUntil(retire()));

async function retire() {
  for (const name of await caches.keys()) {
    await caches.delete(name);
  }
  await self.registration.unregister();
}
