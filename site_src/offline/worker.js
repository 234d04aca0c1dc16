// The service worker of a site that is kept on the device. The build writes the version below, and the list of files beside it.
// A version is kept whole in a cache of its own: filled to the last file before it takes over, and then the only one answered from.

/** @typedef {Record<string, [hash: string, size: number]>} Files by their path from the root */
/** @typedef {[address: string, hash: string, files: string[]]} PackEntry */
/** @typedef {{version: string, bytes: number, files: Files, packs: PackEntry[]}} List */
/** @typedef {{pieces: string[], files: Record<string, number[]>}} Pack pages that are fetched together, each piece of them once */
/** @typedef {{files: Files, version?: string, since?: string}} Note what we note about a version */

const scope = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self));
const VERSION = "@version@";
const ROOT = scope.registration.scope;
const PREFIX = `deck-almanac ${ROOT} `;
const LIST = new URL("precache.json", ROOT).href;
const NOTE = new URL("__kept__", ROOT).href; // no page: what we note about a version, in its own cache
const AT_ONCE = 6;
/** @type {Record<string, string>} */
const TYPES = { html: "text/html", json: "application/json", svg: "image/svg+xml" }; // of what comes in packs
const WORTH_A_PACK = 4; // pages that are wanted of it

/** @param {string} version */
const cacheName = (version) => PREFIX + version;
/** @param {string} file */
const addressOf = (file) => new URL(file, ROOT).href;

/** This site's open pages; another site may be open on the same host. */
async function openPages() {
  const pages = await scope.clients.matchAll({ type: "window", includeUncontrolled: true });
  return pages.filter(({ url }) => url.startsWith(ROOT));
}

/** @param {{type: string} & Record<string, unknown>} message */
async function tell(message) {
  (await openPages()).forEach((page) => page.postMessage({ root: ROOT, version: VERSION, ...message }));
}

/** @param {ArrayBuffer} bytes */
async function hashOf(bytes) {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return btoa(String.fromCharCode(...digest)).replaceAll("+", "-").replaceAll("/", "_").slice(0, 16);
}

/**
 * A file as the list names it, by its hash: a login page of the pool's network, or half a new version, is refused.
 * @param {string} file
 * @param {string} hash
 */
async function download(file, hash) {
  const response = await fetch(addressOf(file), { cache: "no-cache", redirect: "error" });
  if (!response.ok) {
    throw new Error(`${file}: ${response.status}`);
  }
  const bytes = await response.arrayBuffer();
  if ((await hashOf(bytes)) !== hash) {
    throw new Error(`${file} is not of this version`);
  }
  return new Response(bytes, { headers: { "Content-Type": response.headers.get("Content-Type") ?? "" } });
}

/** @param {Cache} cache
 * @returns {Promise<Note>} */
async function noteOf(cache) {
  const held = await cache.match(NOTE);
  return held ? held.json() : { files: {} };
}

/**
 * @param {Cache} cache
 * @param {Note} told
 */
async function note(cache, told) {
  const headers = { "Content-Type": "application/json" };
  await cache.put(NOTE, new Response(JSON.stringify(told), { headers }));
}

/** Files kept by an older version, by hash: what has not changed is not fetched again. */
async function olderFiles() {
  const found = new Map();
  for (const name of await caches.keys()) {
    if (name.startsWith(PREFIX) && name !== cacheName(VERSION)) {
      const cache = await caches.open(name);
      for (const [file, [hash]] of Object.entries((await noteOf(cache)).files)) {
        found.set(hash, () => cache.match(addressOf(file)));
      }
    }
  }
  return found;
}

/**
 * Do all of some tasks, a few at once. Where one fails, the others end with what they are at.
 * @param {(() => Promise<void>)[]} tasks
 */
async function doAll(tasks) {
  let next = 0;
  async function some() {
    while (next < tasks.length) {
      await tasks[next++]();
    }
  }
  /** @type {(problem: unknown) => never} */
  const stop = (problem) => {
    next = tasks.length;
    throw problem;
  };
  const ends = await Promise.allSettled(Array.from({ length: AT_ONCE }, () => some().catch(stop)));
  const broken = ends.find((end) => end.status === "rejected");
  if (broken?.status === "rejected") {
    throw broken.reason;
  }
}

/**
 * A page out of a pack: how far on each of its pieces is from the one before.
 * @param {Pack} pack
 * @param {string} file
 */
function pageOf(pack, file) {
  let at = -1;
  const pieces = (pack.files[file] ?? []).map((step) => pack.pieces[(at += step)]);
  return new TextEncoder().encode(pieces.join(""));
}

/** Fill this version's cache, every file. What an attempt before this one brought in is not fetched again. */
async function fill() {
  /** @type {List} */
  const list = await (await fetch(LIST, { cache: "no-store", redirect: "error" })).json();
  if (list.version !== VERSION) {
    throw new Error("the list is of another version");
  }
  const cache = await caches.open(cacheName(VERSION));
  const older = await olderFiles();
  await note(cache, { files: list.files });
  const arrived = new Set((await cache.keys()).map(({ url }) => url));
  const counted = new Set();
  let done = 0;
  /** @param {string} file */
  async function count(file) {
    if (!counted.has(file)) {
      counted.add(file);
      done += list.files[file][1];
      await tell({ type: "filling", done, bytes: list.bytes });
    }
  }
  /** @param {string} file */
  const isWanted = (file) => !arrived.has(addressOf(file)) && !older.has(list.files[file][0]);

  /** @type {(pack: PackEntry) => Promise<void>} */
  async function unpack([address, hash, inside]) {
    try {
      const pack = await (await download(address, hash)).json();
      for (const file of inside.filter(isWanted)) {
        const bytes = pageOf(pack, file);
        if ((await hashOf(bytes.buffer)) === list.files[file][0]) {
          const headers = { "Content-Type": `${TYPES[file.split(".").at(-1) ?? ""]}; charset=utf-8` };
          await cache.put(addressOf(file), new Response(bytes, { headers }));
          arrived.add(addressOf(file));
          await count(file);
        }
      }
    } catch {
      // its pages are then fetched one by one
    }
  }
  const packs = list.packs.filter(([, , inside]) => inside.filter(isWanted).length >= WORTH_A_PACK);
  await doAll(packs.map((pack) => () => unpack(pack)));

  /** @type {(file: string, hash: string) => Promise<void>} */
  async function take(file, hash) {
    if (!arrived.has(addressOf(file))) {
      await cache.put(addressOf(file), (await older.get(hash)?.()) ?? (await download(file, hash)));
    }
    await count(file);
  }
  await doAll(Object.entries(list.files).map(([file, [hash]]) => () => take(file, hash)));
}

async function install() {
  try {
    await fill();
    await tell({ type: "filled" });
  } catch (problem) {
    await tell({ type: "failed", because: problem instanceof Error ? problem.message : String(problem) });
    throw problem; // the browser drops this version; the one before goes on
  }
}

async function takeOver() {
  const cache = await caches.open(cacheName(VERSION));
  await note(cache, { ...(await noteOf(cache)), version: VERSION, since: new Date().toISOString() });
  for (const name of await caches.keys()) {
    if (name.startsWith(PREFIX) && name !== cacheName(VERSION)) {
      await caches.delete(name);
    }
  }
  await scope.clients.claim();
}

/** This version, waiting, takes over where the page that asks is the only one open: nobody is changed under their hands. */
async function takeOverIfAlone() {
  for (const wait_ms of [0, 300, 1000, 2000]) { // the page that was just left counts until the browser has let it go
    await new Promise((resolve) => setTimeout(resolve, wait_ms));
    if ((await openPages()).length <= 1) {
      return scope.skipWaiting();
    }
  }
  return undefined;
}

/** @param {string} address */
async function kept(address) {
  const url = new URL(address);
  const plain = url.origin + url.pathname + (url.pathname.endsWith("/") ? "index.html" : "");
  return caches.match(plain, { cacheName: cacheName(VERSION) });
}

/** @param {Request} request
 * @returns {Promise<Response>} */
async function answer(request) {
  const isPage = request.mode === "navigate";
  const found = await kept(request.url);
  if (found) {
    return found;
  }
  try {
    return await fetch(request);
  } catch {
    return (isPage && (await kept(addressOf("404.html")))) || Response.error();
  }
}

scope.addEventListener("install", (event) => event.waitUntil(install()));
scope.addEventListener("activate", (event) => event.waitUntil(takeOver()));
scope.addEventListener("message", (event) => {
  /** @type {Record<string, () => Promise<void>>} */
  const answers = { "take over": () => scope.skipWaiting(), "take over if alone": takeOverIfAlone };
  event.waitUntil(Promise.resolve(answers[event.data]?.()));
});
scope.addEventListener("fetch", (event) => {
  const { method, url } = event.request;
  if (method === "GET" && url.startsWith(ROOT)) {
    event.respondWith(answer(event.request));
  }
});
