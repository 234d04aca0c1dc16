// A picture between two drawings of a body: from what a build sends, each number moved from right to wrong.

/** @typedef {{fault: string, deck: boolean, above: boolean, height: number, level: number | null, where: [[number, number], [number, number]], ring: number,
 *   least: number, within: number, parts: [number, string, string?][]}} Drawing */

const HALVES = 2;

/**
 * The elements of a drawing, so far along from right, 0, to wrong, 1.
 * @param {Drawing} drawing
 * @param {string[]} shapes
 * @param {number} along
 */
export const elements = (drawing, shapes, along) =>
  drawing.parts.map(([shape, steps, moves]) => {
    const numbers = placed(steps);
    const moved = moves ? moves.split(" ").map(Number) : [];
    let at = 0;
    return shapes[shape].replace(/#/g, () => {
      const value = (numbers[at] + along * (moved[at] ?? 0)) / HALVES;
      at += 1;
      return String(Math.round(value * 10) / 10);
    });
  });

/**
 * Where the difference is in a picture, so far along.
 * @param {Drawing} drawing
 * @param {number} along
 * @returns {[number, number]}
 */
export const placeOf = ({ where: [[x, y], [u, v]] }, along) => [x + along * (u - x), y + along * (v - y)];

/** Numbers from steps: each was sent less the one two before it.
 * @param {string} steps */
function placed(steps) {
  const found = steps.split(" ").map(Number);
  for (let at = 2; at < found.length; at += 1) {
    found[at] += found[at - 2];
  }
  return found;
}
