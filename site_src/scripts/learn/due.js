// What comes back by now: reads what is kept, and needs no library for it.

import { read } from "../lib/storage.js";

/**
 * Whether a question comes back by now.
 * @param {import("./schedule.js").Return | undefined} kept
 * @param {Date} now
 */
export const isDue = (kept, now) => Boolean(kept && new Date(kept.due) <= now);

/** How many questions of all progressions come back by now.
 * @param {Date} now */
export function dueInAll(now) {
  const { shape = "circle", of = {} } = read("learn", /** @type {Partial<import("./progress.js").Kept>} */ ({}));
  return Object.values(of[shape]?.answers ?? {}).filter(({ back }) => isDue(back, now)).length;
}
