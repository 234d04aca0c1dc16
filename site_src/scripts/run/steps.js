// A crew's whole practice as steps laid end to end: each send-off (of each wave), each wait, the end of each part. Nothing is computed
// but sums of what the build gives. Pure.

/** @typedef {import("./types.js").Block} Block */
/** @typedef {import("./types.js").Each} Each */
/** @typedef {import("./types.js").Part} Part */
/** @typedef {import("./types.js").RepBlock} RepBlock */
/** @typedef {import("./types.js").Round} Round */
/** @typedef {import("./types.js").RoundsBlock} RoundsBlock */
/** @typedef {import("./types.js").RunData} RunData */
/** @typedef {import("./types.js").Step} Step */
/** @typedef {{part: number, stage: number, path: string, rounds: Round[]}} Place where a block stands */

/**
 * What holds for rep `j`; null where it is not known.
 * @param {Each | undefined} each
 * @param {number} j
 * @returns {number | null}
 */
export const of = (each, j) => (Array.isArray(each) ? each[j] : each) ?? null;

/** @param {number} s */
const ms = (s) => Math.round(s * 1000);

/** What must pass before a part, in milliseconds: talk, change-over, gear.
 * @param {Part} part */
export const lead = (part) => ms((part.talk_s ?? 0) + (part.change_s ?? 0) + (part.gear_s ?? 0));

/**
 * The lengths of the waves of a rep: equal parts of its clock, to the millisecond and summing to it.
 * @param {number | null} clock
 * @param {number} waves
 * @param {number} wave from 1
 */
const waveLength = (clock, waves, wave) =>
  clock === null ? null : Math.round((clock * wave) / waves) - Math.round((clock * (wave - 1)) / waves);

/**
 * @param {RepBlock} block
 * @param {Place} place
 * @returns {Step[]}
 */
function reps(block, place) {
  const { part, stage, path, rounds } = place;
  const run = `${path}@${rounds.map(({ no }) => no).join(".")}`;
  const waves = block.waves ?? 1;
  const common = { kind: /** @type {const} */ ("rep"), part, stage, rounds, block, run, item: block.item, waves };
  const isKnown = Array.from({ length: block.reps }, (_, j) => of(block.every, j)).some((every) => every !== null);
  if (!isKnown) { // a list without times: one tap for all of its reps
    return [{ ...common, id: `${run}:0`, ms: null, rep: 0, reps: block.reps, wave: 1, waves: 1, whole: true, target: of(block.target, 0) }];
  }
  return Array.from({ length: block.reps * waves }, (_, k) => {
    const [j, wave] = [Math.floor(k / waves), (k % waves) + 1];
    const every = of(block.every, j);
    const home = of(block.home, j);
    return {
      ...common, id: `${run}:${j}.${wave}`, rep: j, reps: block.reps, wave,
      ms: every === null && wave === waves ? null : waveLength(every === null ? 0 : ms(every), waves, wave),
      target: of(block.target, j), aim: of(block.aim, j), rest: of(block.rest, j), home: home === null ? 0 : ms(home),
    };
  });
}

/**
 * @param {RoundsBlock} block
 * @param {Place} place
 * @returns {Step[]}
 */
function inRounds(block, place) {
  /** @type {Step[]} */
  const steps = [];
  let no = 0;
  for (const [g, { times, blocks }] of block.rounds.entries()) {
    for (let time = 0; time < times; time++) {
      const round = { node: block, no: ++no };
      if (no > 1 && block.between) {
        steps.push(between(block, place, round));
      }
      steps.push(...laid(blocks, { ...place, path: `${place.path}.${g}`, rounds: [...place.rounds, round] }));
    }
  }
  return steps;
}

/**
 * The wait before a round.
 * @param {RoundsBlock} block
 * @param {{part: number, stage: number, path: string, rounds: Round[]}} place
 * @param {Round} round
 * @returns {Step}
 */
export function between(block, { part, stage, path, rounds: outer }, round) {
  const id = `${path}@${[...outer, round].map(({ no }) => no).join(".")}:between`;
  const wait = { wait: block.between ?? 0, why: "between" };
  return { id, kind: "wait", part, stage, rounds: outer, ms: ms(wait.wait), wait, before: round };
}

/**
 * @param {Block[]} blocks
 * @param {Place} place
 * @returns {Step[]}
 */
function laid(blocks, place) {
  return blocks.flatMap((block, b) => {
    const here = { ...place, path: `${place.path}.${b}` };
    if ("rounds" in block) {
      return inRounds(block, here);
    }
    if ("wait" in block) {
      const { part, stage, path, rounds: outer } = here;
      const id = `${path}@${outer.map(({ no }) => no).join(".")}`;
      return [{ id, kind: /** @type {const} */ ("wait"), part, stage, rounds: outer, ms: ms(block.wait), wait: block }];
    }
    return reps(block, here);
  });
}

/**
 * All that a crew does, in order. The first step of each part is marked; each part ends with a step of its own.
 * @param {RunData} data
 * @param {string} crew its key
 * @returns {Step[]}
 */
export function stepsOf(data, crew) {
  return data.parts.flatMap((part, p) => {
    const own = part.crews[crew];
    if (!own) {
      return [];
    }
    const [place, end] = [{ part: p, stage: part.stage, path: `${p}`, rounds: [] }, /** @type {const} */ ("end")];
    const steps = [...laid(own.blocks, place), { id: `${p}:end`, kind: end, part: p, stage: part.stage, ms: 0, rounds: [] }];
    return steps.map((step, k) => (k ? step : { ...step, opens: true }));
  });
}
