// How many questions come back by now, for Home: reads what is kept, and needs no library for it.

import { read } from "../lib/storage.js";

/** @param {Date} now */
export function dueInAll(now) {
  const { shape = "circle", of = {} } = read("learn", /** @type {Partial<import("./progress.js").Kept>} */ ({}));
  return Object.values(of[shape]?.answers ?? {}).filter(({ back }) => back && new Date(back.due) <= now).length;
}
