// What is asked of a picture: which fault, if any, and how much of it; the answers to choose from. Chance comes in as a function.

/** @typedef {import("./drawing.js").Drawing} Drawing */
/** @typedef {{title: string, href: string, body: [string, string], place: string, sign: string, right: string, see: string, words: string[],
 *   drills: string[], all_drills: string[]}} Fault */
/** @typedef {{most: number, shapes: string[], paints: Record<string, Record<string, string>>, drawings: Drawing[], faults: Record<string, Fault>}} Data */
/** @typedef {{words: string, right: boolean}} Choice */
/** A picture with what is asked of it: `along` how much of the fault is drawn, `mirrored` whether it swims to the left.
 * @typedef {{drawing: Drawing, fault: Fault, wrong: boolean, along: number, mirrored: boolean, see: Choice[], first: Choice[], say: Choice[]}} Asked */
/** @typedef {() => number} Chance */

export const NOTHING = "Nothing to mend";
const RIGHT_SHARE = 0.25;

/**
 * The next picture, of another fault than the last ones. Half are seen as from the deck, where the fault is drawn so.
 * @param {Data} data
 * @param {Chance} chance
 * @param {string[]} lately
 * @returns {Asked}
 */
export function next(data, chance, lately) {
  const ids = Object.keys(data.faults).filter((id) => !lately.includes(id));
  const id = oneOf(ids, chance);
  const views = data.drawings.filter((own) => own.fault === id);
  const drawing = oneOf(views, chance);
  const wrong = chance() >= RIGHT_SHARE;
  const along = wrong ? drawing.least + chance() * (data.most - drawing.least) : (2 * chance() - 1) * drawing.within;
  const fault = data.faults[id];
  return {
    drawing,
    fault,
    wrong,
    along,
    mirrored: chance() < 0.5,
    see: seen(data, id, wrong, chance),
    first: choices(oneOf(fault.drills, chance), othersOf(data, id, (own) => own.drills), [...fault.drills, ...fault.all_drills], chance),
    say: choices(oneOf(fault.words, chance), othersOf(data, id, (own) => (own.place === fault.place ? [] : own.words)), fault.words, chance),
  };
}

/**
 * @template T
 * @param {T[]} list
 * @param {Chance} chance
 * @returns {T}
 */
const oneOf = (list, chance) => list[Math.floor(chance() * list.length)];

/**
 * What may be seen: the fault, two that a body in that position may have, and nothing. At a wall or a rope, and away from it, others
 * are asked, where there are two: nobody who swims moves before the signal.
 * @param {Data} data
 * @param {string} id
 * @param {boolean} wrong
 * @param {Chance} chance
 * @returns {Choice[]}
 */
function seen(data, id, wrong, chance) {
  const [position, stroke] = data.faults[id].body;
  const alike = Object.entries(data.faults).filter(([own, fault]) => own !== id && fault.body[0] === position);
  const there = alike.filter(([own]) => isAtWall(data, own) === isAtWall(data, id));
  const others = there.length > 1 ? there : alike;
  const near = others.filter(([, own]) => own.body[1] === stroke || own.body[1] === "any" || stroke === "any");
  const like = near.length > 1 ? near : others;
  const titles = some(like.map(([, own]) => own.title), 2, chance);
  const own = { words: data.faults[id].title, right: wrong };
  return [...mixed([own, ...titles.map((words) => ({ words, right: false }))], chance), { words: NOTHING, right: !wrong }];
}

/** Whether a wall, a block or a rope is drawn with a fault.
 * @param {Data} data
 * @param {string} id */
export const isAtWall = (data, id) =>
  data.drawings.some((own) => own.fault === id && own.parts.some(([shape]) => /figure-(wall|tiles)/.test(data.shapes[shape])));

/**
 * @param {Data} data
 * @param {string} id
 * @param {(fault: Fault) => string[]} of
 */
const othersOf = (data, id, of) => Object.entries(data.faults).flatMap(([own, fault]) => (own === id ? [] : of(fault)));

/**
 * The right one among two that are not.
 * @param {string} right
 * @param {string[]} others
 * @param {string[]} alsoRight
 * @param {Chance} chance
 */
function choices(right, others, alsoRight, chance) {
  const wrong = [...new Set(others)].filter((words) => !alsoRight.includes(words));
  return mixed([{ words: right, right: true }, ...some(wrong, 2, chance).map((words) => ({ words, right: false }))], chance);
}

/**
 * @template T
 * @param {T[]} list
 * @param {number} many
 * @param {Chance} chance
 */
const some = (list, many, chance) => mixed(list, chance).slice(0, many);

/**
 * A list in another order (Fisher and Yates).
 * @template T
 * @param {T[]} list
 * @param {Chance} chance
 * @returns {T[]}
 */
function mixed(list, chance) {
  const found = [...list];
  for (let at = found.length - 1; at > 0; at -= 1) {
    const other = Math.floor(chance() * (at + 1));
    [found[at], found[other]] = [found[other], found[at]];
  }
  return found;
}
