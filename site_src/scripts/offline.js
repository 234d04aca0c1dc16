// "Keep this site on my phone": asks for the service worker that stores every page, shows how far it is, and says what is kept.

import { make, one, root } from "./lib/dom.js";
import { cacheNames, noted } from "./lib/noted.js";

/** @type {HTMLElement | null} */
const box = document.querySelector("[data-keep]");
const isLine = box?.dataset.keep === "line"; // on Home: whether it is kept, and the button that keeps it
const mark = one("[data-kept]");
/** @param {number} bytes */
const megabytes = (bytes) => `${(bytes / 1e6).toFixed(1)} MB`;
/** @param {string} since */
const when = (since) =>
  new Date(since).toLocaleString(document.documentElement.lang, { dateStyle: "medium", timeStyle: "short" });

/** @param {...(Node | string)} children */
function showBox(...children) {
  box?.replaceChildren(...children);
}

/**
 * @param {string} text
 * @param {() => void} action
 */
function button(text, action) {
  const made = make("button", { type: "button", class: "tool" }, text);
  made.addEventListener("click", action);
  return made;
}

/** @param {string} before what to say first */
async function offer(before = "") {
  let size = "";
  try {
    const sum = await (await fetch(new URL("offline.json", root))).json();
    size = isLine ? ` (${megabytes(sum.fetched)})` : ` (${megabytes(sum.bytes)}, about ${megabytes(sum.fetched)} to fetch)`;
  } catch {
    // no signal just now; the button says so when it is pressed
  }
  const told = make("p", {}, before || (isLine ? "Not kept on this phone: with no signal it is gone." : "Every page, the finder and the search, with no signal."));
  showBox(told, button(isLine ? `Keep it${size}` : `Keep this site on my phone${size}`, keep));
}

/** This site's own registration: that of a site on the same host at a shorter path holds for this page too, and is not ours. */
async function registered() {
  const found = await navigator.serviceWorker.getRegistration(root);
  return found?.scope === root.href ? found : undefined;
}

async function keep() {
  showFilling(0, 1);
  try {
    await navigator.storage?.persist?.();
    // one whose pages the browser has thrown out
    await (await registered())?.unregister();
    const address = new URL("worker.js", root);
    const registration = await navigator.serviceWorker.register(address, { updateViaCache: "none" });
    const worker = registration.installing;
    worker?.addEventListener("statechange", () => {
      if (worker.state === "redundant") {
        offer(
          "That did not work: the signal went, or the site is just being renewed." +
            " What has come so far stays; try again.",
        );
      }
    });
  } catch (problem) {
    offer(`This browser would not keep it: ${problem instanceof Error ? problem.message : problem}`);
  }
}

/**
 * @param {number} done bytes
 * @param {number} bytes of all
 */
function showFilling(done, bytes) {
  if (!box) {
    return;
  }
  if (!box.querySelector("progress")) {
    const label = make("label", { for: "keeping" }, "Fetching every page ");
    const bar = make("progress", { id: "keeping", max: "1", value: "0" });
    showBox(label, bar, make("span", { class: "about" }));
  }
  /** @type {HTMLProgressElement} */ (one("progress", box)).value = done / bytes;
  one(".about", box).textContent = bytes > 1 ? ` ${megabytes(done)} of ${megabytes(bytes)}` : "";
}

async function forget() {
  await (await registered())?.unregister();
  await Promise.all((await cacheNames()).map((name) => caches.delete(name)));
  mark.textContent = "";
  document.documentElement.classList.remove("is-kept");
  offer();
}

async function showKept() {
  const note = await noted();
  if (!note) {
    return box ? offer() : undefined;
  }
  document.documentElement.classList.add("is-kept");
  if (mark.dataset.kept !== "missing") {
    mark.textContent = `✓ This page is kept on this device, as it was renewed on ${when(note.since)}.`;
  }
  const told = make("p", {}, isLine ? `✓ Kept on this phone, renewed on ${when(note.since)}.` : `✓ Kept on this device, with no signal too. Renewed on ${when(note.since)}.`);
  showBox(told, ...(isLine ? [] : [button("Do not keep it", forget)]));
  return undefined;
}

/** A newer version has come whole, and other pages of the old one may be open: change over when told to.
 * @param {ServiceWorker} waiting */
function offerNewer(waiting) {
  mark.textContent = "A newer version is here, whole. ";
  mark.append(button("Use it now", () => waiting.postMessage("take over")));
}

async function watch() {
  const workers = navigator.serviceWorker;
  const hadOne = workers.controller?.scriptURL === new URL("worker.js", root).href;
  workers.addEventListener("controllerchange", () => (hadOne ? location.reload() : showKept()));
  workers.addEventListener("message", ({ data }) => {
    if (data.root === root.href && data.type === "filling" && !hadOne) {
      showFilling(data.done, data.bytes);
    }
  });
  await showKept();
  const registration = await registered();
  if (registration && hadOne) {
    registration.waiting?.postMessage("take over if alone"); // then this page is asked for again, of the newer version
    awaitNewer(registration);
    registration.addEventListener("updatefound", () => awaitNewer(registration));
  }
}

/** Offer a newer version once it is here, or as soon as it is.
 * @param {ServiceWorkerRegistration} registration */
function awaitNewer({ installing, waiting }) {
  if (waiting) {
    offerNewer(waiting);
  }
  installing?.addEventListener("statechange", () => installing.state === "installed" && offerNewer(installing));
}

if (location.protocol === "file:") {
  const told = "every page is on this device already. The search needs a server; the finder does not.";
  showBox(make("p", {}, `Opened from a folder: ${told}`));
} else {
  document.head.append(make("link", { rel: "manifest", href: new URL("app.webmanifest", root).href }));
  if (!("serviceWorker" in navigator)) {
    showBox(make("p", {}, "To be kept on a phone, the site has to be opened over https."));
  } else {
    watch();
  }
}
