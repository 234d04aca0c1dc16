// Reminders of a send-off: the flash of a row, a sound, a vibration. Off at first, and never the time itself: a dark or locked phone gives
// none. What cannot be had is said after trying it.

import { read, write } from "../../lib/storage.js";

/** @typedef {"flash" | "sound" | "vibration"} Sign */
/** @typedef {Record<Sign, boolean>} Signs */

const SUBJECT = "run-signs";
const TONE_HZ = 880;
const TONE_S = 0.2;
const BUZZ_MS = 200;

/** @type {AudioContext | null} */
let sounds = null;

/** What this phone has refused. @type {Set<Sign>} */
const refused = new Set();

/** Whether a sign is known not to be had: the browser has none, or it was tried.
 * @param {Sign} sign */
export const isMissing = (sign) =>
  refused.has(sign) || (sign === "vibration" && typeof navigator.vibrate !== "function") || (sign === "sound" && typeof AudioContext !== "function");

/** What is on.
 * @returns {Signs} */
export const signs = () => ({ flash: false, sound: false, vibration: false, ...read(SUBJECT, {}) });

/** Switch a sign on or off; on is tried at once. False where it cannot be had.
 * @param {Sign} sign
 * @param {boolean} on */
export async function choose(sign, on) {
  const can = !on || (await tried(sign));
  refused[can ? "delete" : "add"](sign);
  write(SUBJECT, { ...signs(), [sign]: on && can });
  return can;
}

/** @param {Sign} sign
 * @returns {Promise<boolean>} */
async function tried(sign) {
  if (sign === "vibration") {
    return typeof navigator.vibrate === "function" && navigator.vibrate(BUZZ_MS);
  }
  return sign === "flash" || sound();
}

/** A tone; false where this browser gives none. */
async function sound() {
  try {
    sounds ??= new AudioContext();
    await Promise.race([sounds.resume(), new Promise((done) => setTimeout(done, 500))]);
    if (sounds.state !== "running") {
      return false;
    }
    const [tone, loudness] = [sounds.createOscillator(), sounds.createGain()];
    tone.frequency.value = TONE_HZ;
    loudness.gain.setValueAtTime(0.5, sounds.currentTime);
    loudness.gain.exponentialRampToValueAtTime(0.001, sounds.currentTime + TONE_S);
    tone.connect(loudness).connect(sounds.destination);
    tone.start();
    tone.stop(sounds.currentTime + TONE_S);
    return true;
  } catch {
    return false; // no Web Audio here
  }
}

/** Give what is on. */
export function give() {
  const on = signs();
  if (on.sound) {
    sound();
  }
  if (on.vibration) {
    navigator.vibrate?.(BUZZ_MS);
  }
}

/** One line for each sign that is off or cannot be had. */
export function said() {
  const on = signs();
  return [
    isMissing("vibration") ? "No vibration here." : on.vibration ? "" : "Vibration is off.",
    isMissing("sound") ? "No sound here." : on.sound ? "" : "Sound is off.",
  ].filter(Boolean);
}
