// What a site that is kept on this device has noted of itself.

import { root } from "./dom.js";

const NOTE = new URL("__kept__", root).href;

export const cacheNames = async () =>
  (await caches.keys()).filter((name) => name.startsWith(`deck-almanac ${root.href} `));

/** What the version kept on this device has noted: when it took over; null where none is kept whole.
 * @returns {Promise<{since: string} | null>} */
export async function noted() {
  for (const name of await cacheNames()) {
    const note = await (await (await caches.open(name)).match(NOTE))?.json();
    if (note?.since) {
      return note;
    }
  }
  return null;
}
