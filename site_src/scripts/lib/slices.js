// Long work in slices, between which a page draws and hears keys.

const MOST_MS = 6; // of a slice: on a phone that is four times as slow still half of what a hand feels

/** Do work to its end, a slice at a time.
 * @param {Iterable<unknown>} work each step of it */
export async function inSlices(work) {
  let began = performance.now();
  for (const step of work) {
    void step;
    if (performance.now() - began > MOST_MS) {
      await new Promise((resolve) => { setTimeout(resolve); });
      began = performance.now();
    }
  }
}

/** What comes of work, done to its end at once.
 * @template T
 * @param {Iterator<unknown, T>} work
 * @returns {T} */
export function finished(work) {
  let step = work.next();
  while (!step.done) {
    step = work.next();
  }
  return step.value;
}

/** Do work to its end at once.
 * @param {Iterable<unknown>} work */
export function atOnce(work) {
  for (const step of work) {
    void step;
  }
}
