// Until when the water is mine today: said once, in Find or where a run is set up, and filled in in the other.

import { read, write } from "./storage.js";
import { today } from "./today.js";

const SUBJECT = "until";

/** As HH:MM; "" where nothing was said today, or it is past. */
export function mineUntil() {
  const kept = read(SUBJECT, { time: "", day: "" });
  const now = new Date().toTimeString().slice(0, "HH:MM".length);
  return kept.day === today && /^\d\d:\d\d$/.test(kept.time) && kept.time > now ? kept.time : "";
}

/** @param {string} time HH:MM, "" to forget it */
export const keepUntil = (time) => write(SUBJECT, { time, day: today });
