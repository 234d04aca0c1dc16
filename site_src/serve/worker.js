// Only under `almanac serve`, in place of the offline worker: one that an earlier site left here is gone, so that no old page is shown.

const scope = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self));

scope.addEventListener("install", () => scope.skipWaiting());
scope.addEventListener("activate", (event) => event.waitUntil(retire()));

async function retire() {
  for (const name of await caches.keys()) {
    await caches.delete(name);
  }
  await scope.registration.unregister();
}
