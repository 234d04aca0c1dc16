// What of a link to Make a practice can't be followed, in a sentence with what is near: links are typed and shortened by hand. Pure.

/** @import {Data, Request} from "./types.js" */

/** @typedef {{said: string, field: string, request: Request}} Mended `field`: the question that it is of; `request`: with what is near in its place */

const NEAR = 3; // of so many letters one may be another

/** How many letters one is from another: left out, put in or another (Levenshtein).
 * @param {string} one
 * @param {string} other */
function apart(one, other) {
  let row = Array.from({ length: other.length + 1 }, (_, k) => k);
  [...one].forEach((letter, at) => {
    const next = [at + 1];
    [...other].forEach((own, k) => next.push(Math.min(next[k] + 1, row[k + 1] + 1, row[k] + Number(own !== letter))));
    row = next;
  });
  return row[other.length];
}

/** Why an address is no request; "" where it asks for nothing, or can be read.
 * @param {string} address after the # */
export function unreadable(address) {
  const words = new URLSearchParams(address), [squad, minutes] = [words.get("squad") ?? "", words.get("minutes") ?? ""];
  return !["squad", "minutes", "goals", "from"].some((name) => words.has(name)) ? ""
    : !squad ? "This link names no squad." : !/^[\w-]+$/.test(squad) ? `This link names “${squad}”, and a practice is for one squad.`
      : !minutes ? "This link says no minutes." : `This link says “${minutes}” for the minutes, which is no number that can be.`;
}

/** The first of what a link names that is not here; null where all is.
 * @param {Request} request
 * @param {Data} data
 * @param {string} usual the pool that is meant where there is none near
 * @returns {Mended | null} */
export function mended(request, { goals, pools, efforts, squad }, usual) {
  /** @type {[what: string, field: keyof Request, wanted: string[], known: [id: string, title: string, ...unknown[]][]][]} */
  const asked = [["pool", "pool", [request.pool], pools], ["goal", "goals", request.goals, goals], ["effort", "effort", request.effort ? [request.effort] : [], efforts], ["lane group", "groups", request.groups ?? [], squad.groups]];
  for (const [what, field, wanted, known] of asked) {
    const strange = wanted.find((id) => !known.some(([own]) => own === id));
    if (strange !== undefined) {
      const near = known.filter(([id]) => apart(strange, id) * NEAR <= Math.max(strange.length, id.length)).sort(([one], [other]) => apart(strange, one) - apart(strange, other))[0];
      const said = near ? `is ${near[1]} meant?` : `there are ${known.map(([, title]) => title).join(", ")}.`;
      const instead = near ? [near[0]] : field === "pool" ? [usual] : [], now = wanted.flatMap((id) => (id === strange ? instead : [id]));
      return { said: strange ? `There is no ${what} “${strange}” here: ${said}` : `This link names no ${what}.`, field, request: { ...request, [field]: Array.isArray(request[field]) ? now : now[0] ?? "" } };
    }
  }
  return null;
}
