// What is asked of a picture: which fault, if any, and how much of it; the answers to choose from. Chance comes in as a function.

/** @typedef {import("./drawing.js").Drawing} Drawing */
/** @typedef {{title: string, href: string, body: [string, string], place: string, sign: string, right: string, see: string, words: string[],
 *   drills: string[], all_drills: string[], shows_too: string[]}} Fault */
/** @typedef {{most: number, shapes: string[], paints: Record<string, Record<string, string>>, drawings: Drawing[], faults: Record<string, Fault>}} Data */
/** @typedef {{words: string, right: boolean}} Choice */
/** A picture with what is asked of it: `along` how much of the fault is drawn, `mirrored` whether it swims to the left.
 * @typedef {{drawing: Drawing, fault: Fault, wrong: boolean, along: number, mirrored: boolean, see: Choice[], first: Choice[], say: Choice[]}} Asked */
/** @typedef {() => number} Chance */

export const NOTHING = "Nothing to mend";
const RIGHT_SHARE = 0.25;
const DECK_SHARE = 0.5;

/**
 * The next picture, of another fault than the last ones.
 * @param {Data} data
 * @param {Chance} chance
 * @param {string[]} lately
 * @returns {Asked}
 */
export function next(data, chance, lately) {
  const ids = askedOf(data).filter((id) => !lately.includes(id));
  const id = oneOf(ids, chance);
  const drawing = viewed(data, id, chance);
  const wrong = chance() >= RIGHT_SHARE;
  const along = wrong ? drawing.least + chance() * (data.most - drawing.least) : (2 * chance() - 1) * drawing.within;
  const fault = data.faults[id];
  const like = alike(data, id, drawing);
  const words = (/** @type {(fault: Fault) => string[]} */ of) => [like, Object.keys(data.faults)].map((all) => all.flatMap((own) => (own === id ? [] : of(data.faults[own]))));
  return {
    drawing,
    fault,
    wrong,
    along,
    mirrored: chance() < 0.5,
    see: seen(data, id, like, wrong, chance),
    first: choices(oneOf(fault.drills, chance), words((own) => own.drills), [...fault.drills, ...fault.all_drills], chance),
    say: choices(oneOf(fault.words, chance), words((own) => (own.place === fault.place ? [] : own.words)), fault.words, chance),
  };
}

/** The faults that are asked: what can be said first is known. Another, of time, is in no still picture and only fills up answers.
 * @param {Data} data */
export const askedOf = ({ faults }) => Object.keys(faults).filter((id) => faults[id].words.length);

/**
 * The view in which a fault is shown. Half of all pictures are seen as from the deck: so are most of a fault that is drawn so, since
 * what only shows from straight above is not.
 * @param {Data} data
 * @param {string} id
 * @param {Chance} chance
 */
function viewed(data, id, chance) {
  const asked = askedOf(data);
  const drawings = data.drawings.filter((own) => asked.includes(own.fault));
  const fromDeck = drawings.filter((own) => own.deck);
  const decks = fromDeck.filter((own) => own.fault === id);
  const others = drawings.filter((own) => own.fault === id && !own.deck);
  const share = (DECK_SHARE * asked.length) / fromDeck.length;
  return oneOf(decks.length && (chance() < share || !others.length) ? decks : others, chance);
}

/**
 * @template T
 * @param {T[]} list
 * @param {Chance} chance
 * @returns {T}
 */
const oneOf = (list, chance) => list[Math.floor(chance() * list.length)];

/**
 * Faults that may be in a picture as well as its own: seen from where it is seen from, at a wall or a rope as it is, for a swimmer who
 * moves before the signal is not in mid-pool; of a body in that position, and of that stroke; and not what its own picture shows too. What would leave fewer than two is let go,
 * and only then is one offered that is not asked.
 * @param {Data} data
 * @param {string} id
 * @param {Drawing} drawing
 * @returns {string[]}
 */
export function alike(data, id, { above }) {
  const [position, stroke] = data.faults[id].body;
  /** @type {((own: string) => boolean)[]} */
  const fits = [
    (own) => data.drawings.some((other) => other.fault === own && other.above === above),
    (own) => isAtWall(data, own) === isAtWall(data, id),
    (own) => data.faults[own].body[0] === position,
    (own) => [stroke, "any"].includes(data.faults[own].body[1]) || stroke === "any",
  ];
  const narrowed = (/** @type {string[]} */ all) =>
    fits.reduce((list, fit) => {
      const found = list.filter(fit);
      return found.length > 1 ? found : list;
    }, all.filter((own) => own !== id && !data.faults[id].shows_too.includes(own)));
  const asked = narrowed(askedOf(data));
  const isEnough = asked.length > 1 && asked.every((own) => fits.every((fit) => fit(own)));
  return isEnough ? asked : narrowed(Object.keys(data.faults));
}

/**
 * What may be seen: the fault, two that may be in such a picture, and nothing.
 * @param {Data} data
 * @param {string} id
 * @param {string[]} like
 * @param {boolean} wrong
 * @param {Chance} chance
 * @returns {Choice[]}
 */
function seen(data, id, like, wrong, chance) {
  const others = some(like, 2, chance).map((own) => ({ words: data.faults[own].title, right: false }));
  return [...mixed([{ words: data.faults[id].title, right: wrong }, ...others], chance), { words: NOTHING, right: !wrong }];
}

/** Whether a wall, a block or a rope is drawn with a fault.
 * @param {Data} data
 * @param {string} id */
export const isAtWall = (data, id) =>
  data.drawings.some((own) => own.fault === id && own.parts.some(([shape]) => /figure-(wall|tiles)/.test(data.shapes[shape])));

/**
 * The right one among two that are not, of faults that are like it where they have two.
 * @param {string} right
 * @param {string[][]} others those of faults that are like it, and those of all
 * @param {string[]} alsoRight
 * @param {Chance} chance
 */
function choices(right, others, alsoRight, chance) {
  const [near, all] = others.map((list) => [...new Set(list)].filter((words) => !alsoRight.includes(words)));
  const wrong = some(near.length > 1 ? near : all, 2, chance);
  return mixed([{ words: right, right: true }, ...wrong.map((words) => ({ words, right: false }))], chance);
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
