// The shapes of composing: what is asked, what is answered, and what changes a proposal. `site_src/schemas/compose.json` tells the data.
//
// `propose(data, request)` in propose.js gives an Answer, the very values of `almanac compose practice --json`, or throws a BadWish whose
// message is one sentence. `practiceOf(proposal)` and `change(data, request, practice, deed)` in change.js change a proposal and give it
// anew; what they are given stays as it was, so that Take back is the practice before. `entryText` in entry.js writes it as an entry.

/** @typedef {"w" | "s" | "m" | "n" | "o" | "e" | "c"} Role warm-up, skill, main set, second main set, third, relief, cool-down; of a part that is held in a practice
 *   that is opened its place there, 0 to 9, A or B */
/** @typedef {string} Key of a piece: set/ID, part/PRACTICE/NUMBER or drill/ID; held/PRACTICE/NUMBER of a part that is held */

/** @typedef {{pool: string, minutes: number, goals: string[], groups?: string[], lanes?: Record<string, number>,
 *   heads?: Record<string, number>, gear?: Record<string, number>, effort?: string, adults?: number, done?: [string, number][],
 *   taught?: Record<string, number>, keep?: [Key, Role, number][], leave_out?: Key[]}} Request
 *   by ids. What is left out is as usual: all lane groups with their lanes and heads, the gear that the club owns, any effort, any number of
 *   adults (-1), nothing done lately, taught what the squad's blocks ask for. `gear`: how many are at hand, 0 for none; `done`: a piece's key
 *   or a practice's id with the days since; `taught`: by progression how many of its stages; `keep`: how often, -1 for however often */

/** @typedef {{id: string, in_use: number, at_hand: number}} GearNeeded */
/** @typedef {{role: string, as: Role, piece: Key, title: string, number: number, of: "rounds" | "reps" | null, talk_s: number, takes_s: number,
 *   distance: number, serves: string[], days_since: number | null, gear: GearNeeded[], why: string[]}} Part
 *   `role`: in words; `talk_s`: talk or change of gear before it; `serves`: ids of goals; `why`: short phrases */
/** @typedef {{wish: string, which: string | number | null, because: string, words: string}} Unmet
 *   `wish`: "slot", with the seconds that nothing fills, after a piece was taken out; `because`: "time-left" where there was time */
/** @typedef {{title: string, focus: string, cost: number, takes_s: number, left_s: number, distance: number, adults: number, parts: Part[], unmet: Unmet[]}} Proposal
 *   `takes_s` and `left_s` are the whole slot */
/** @typedef {{wish: string, which: string | number | null, words: string}} Hinders a wish to drop, where nothing fits; `words` a sentence */
/** @typedef {{version: 1, squad: string, groups: string[], pool: string, unit: string, minutes: number, goals: string[],
 *   proposals: Proposal[], hinders: Hinders[]}} Answer up to three proposals, the best first; none, and then what hinders */

/** @typedef {{role: Role, piece: Key, number: number, kept: boolean, talk_s?: number}} Chosen `talk_s`: before it, where a written practice has
 *   another talk than is usual */
/** @typedef {{parts: Chosen[], out: Key[]}} Practice
 *   a proposal by what of it is chosen; `out`: what was swapped or taken out, and is not offered again */
/** @typedef {{do: "swap" | "keep" | "free" | "up" | "down" | "out", role: Role}} Deed
 *   `swap`: for the next best, the others cut or lengthened where the slot asks for it; `keep`: neither swapped nor cut by what changes
 *   elsewhere, until `free`; `out`: taken out, and the others lengthened */
/** @typedef {{practice: Practice, proposal: Proposal, words: string[]}} Changed
 *   `words`: what moved and by how much: "now 58:40", "main set 6:00 shorter" */
/** @typedef {{refused: string, out?: Role[]}} Refused a sentence: why it cannot be; `out`: without the pieces in these roles it could */

export {};
