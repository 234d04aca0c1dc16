// Keeping the screen on: asked for when a run begins and again at each return to the page, since a browser drops it when the page is left.

/** @typedef {"held" | "refused" | "absent"} Wake */

/** @type {WakeLockSentinel | null} */
let lock = null;
let isGiven = false;

/** Called where the browser takes it back while the page is seen: a low battery.
 * @type {() => void} */
let lost = () => {};

/** @param {() => void} act */
export function onLost(act) {
  lost = act;
}

/** Ask for it, and say what came of it.
 * @returns {Promise<Wake>} */
export async function ask() {
  if (!("wakeLock" in navigator)) {
    return "absent";
  }
  try {
    if (!lock || lock.released) {
      lock = await navigator.wakeLock.request("screen");
      isGiven = true;
      lock.addEventListener("release", () => isGiven && document.visibilityState === "visible" && lost());
    }
    return "held";
  } catch {
    return "refused"; // a low battery, or the browser's own rules
  }
}

/** Let the phone go dark again. */
export async function release() {
  isGiven = false;
  await lock?.release();
  lock = null;
}

/** @type {Record<Wake, string>} */
export const SAID = {
  held: "This phone stays lit while this page is in front.",
  refused: "This phone will go dark after its own time: keeping it lit was refused.",
  absent: "This phone will go dark after its own time: this browser can't keep it lit.",
};
