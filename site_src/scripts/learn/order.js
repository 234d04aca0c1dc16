// The order in which answers are shown: another each day, the same all day.

/**
 * A list in an order that a seed fixes (Fisher and Yates; the numbers by a linear congruence of Numerical Recipes).
 * @template T
 * @param {T[]} list
 * @param {string} seed
 * @returns {T[]}
 */
export function shuffled(list, seed) {
  let state = [...seed].reduce((sum, letter) => (Math.imul(sum, 31) + letter.charCodeAt(0)) >>> 0, 7);
  const found = [...list];
  for (let at = found.length - 1; at > 0; at -= 1) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    const other = Math.floor((state / 2 ** 32) * (at + 1));
    [found[at], found[other]] = [found[other], found[at]];
  }
  return found;
}
