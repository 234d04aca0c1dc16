// The shapes that Make a practice reads of `data/v1/compose/SQUAD.json`, beside those of composing (`compose/types.js`) and of a run.

/** @typedef {import("../compose/types.js").Request} Request */
/** @typedef {import("../compose/types.js").Proposal} Proposal */
/** @typedef {import("../compose/types.js").Practice} Practice */
/** @typedef {import("../compose/types.js").Part} Part */
/** @typedef {import("../run/types.js").Block} Block */
/** @typedef {import("../run/types.js").Item} Item */
/** @typedef {import("../run/types.js").Hazard} Hazard */
/** @typedef {import("../run/types.js").RunData} RunData */

/** @typedef {{of: "set" | "part" | "drill" | "held", id: string, part?: number, title: string, roles?: string, called?: string, goals?: number[], asks?: number[], drills?: number[], gear?: number[],
 *   talk?: number, cue?: string, what?: "rounds" | "reps", written?: number, scaled?: (string | number)[], hazards?: number[]}} Piece `talk` in tenths of seconds */
/** @typedef {[id: string, title: string, lanes: number, heads: number, gap: number]} Group `gap` in tenths of seconds */
/** @typedef {{items: Item[], crews: Record<string, {blocks: Block[]}>, hazards?: Hazard[]}} PieceRun what a piece that is a drill is run by */
/** @typedef {{items?: any, all?: any, each?: Record<string, any>}} Difference as `report/compose/runs.py` tells it, of `all` lane groups or of `each` */
/** @typedef {{pieces: Record<string, {from?: number, as?: Difference | PieceRun, sizes?: Record<string, Difference>}>}} PoolRuns `data/v1/compose/runs/SQUAD/POOL.json` */
/** @typedef {{goals: [id: string, title: string][], efforts: [id: string, title: string][],
 *   gear: [id: string, title: string, owned: number, change: number][], drills: string[],
 *   pools: [id: string, title: string, course: string, lanes: number][],
 *   squad: {id: string, title: string, minutes: number, groups: Group[], taught: number[], limits: number[], offers: Record<string, [piece: number, ...unknown[]][]>},
 *   progressions: [id: string, title: string, stages: number[][]][], practices: [id: string, title: string, pieces: number[]][],
 *   blocks: [id: string, title: string, starts: string, days: [after: number, practice: number][]][], pieces: Piece[],
 *   drill_hazards: Record<string, Hazard[]>, part_words: Record<string, string>, hazards: Hazard[]}} Data
 */
/** @typedef {{text: string, why?: string, stays?: "end" | "land" | "test", gear?: [gear: number, used: number][], as?: string, number?: number, talk?: number}} WrittenPart
 *   `text`: its lines; `why`: what binds it there; `stays`: why nothing changes places with it; `as`: the piece that it is, where it is one */
/** @typedef {{id: string, title: string, pool: string, head: [key: string, text: string][], adults: number, focus: string, goals: string[], pieces: Piece[], offers: [piece: number, ...unknown[]][],
 *   taught: number[], limits: number[], parts: WrittenPart[]}} File a practice that is opened, `data/v1/compose/practices/ID.json` */
/** @typedef {{part: number, of: Piece["of"], what: "rounds" | "reps", number: number, isWritten: boolean, scaled: (string | number)[]}} Otherwise a part of the practice
 *   that is opened, done so often; `isWritten`: as often as its piece is written; `scaled`: the path in its items to the reps of which there are more or fewer */
/** @typedef {Record<string, RunData>} Sources run data by name: sets/ID, practices/ID */

export {};
