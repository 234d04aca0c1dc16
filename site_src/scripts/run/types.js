// The shapes of a run: what the build writes to data/v1/run/ (seconds), and what the engine makes of it (milliseconds).

/** @typedef {number | (number | null)[] | null} Each one for all reps, or one for each; null is not known */
/** @typedef {{title: string, control?: string, gravity?: string}} Hazard */
/** @typedef {{line: string, what?: string, drills?: string[], effort?: string, gear?: string[], how?: string, cue?: string, note?: string,
 *   metres?: number | null, result?: string, far?: boolean, under_water?: boolean, land?: boolean}} Item */
/** @typedef {{item: number, reps: number, every: Each, go?: "on" | "rest" | "straight", target?: Each, aim?: Each, rest?: Each, home?: Each,
 *   in_lane?: number, gap?: number, waves?: number, at_once?: number, begins?: string, suggested?: boolean, marks?: string[],
 *   more?: number[], fewer?: number, fewest?: number, sit?: number, again?: number, does?: string[]}} RepBlock */
/** @typedef {{wait: number, why: string, note?: string, on?: string[], off?: string[], far?: boolean}} WaitBlock */
/** @typedef {{rounds: {times: number, blocks: Block[]}[], between?: number, least?: number, most?: number, keeps_last?: boolean,
 *   copies?: number}} RoundsBlock */
/** @typedef {RepBlock | WaitBlock | RoundsBlock} Block */
/** @typedef {{lanes?: number[], ends_s?: number | null, from?: boolean, clock_over_s?: number, last_touch_s?: number, waits_s?: number,
 *   waits_for?: string, meet?: boolean, blocks: Block[]}} CrewPart */
/** @typedef {{stage: number, number: number, word: string, title: string, set?: string | null, turn?: number, talk_s?: number,
 *   change_s?: number, gear_s?: number, starts_s?: number | null, from?: boolean, place?: string, led_by?: string, end?: string,
 *   note?: string, joins?: boolean, helpers?: string[], hazards?: Hazard[], items: Item[], crews: Record<string, CrewPart>,
 *   skip?: boolean}} Part */
/** @typedef {{key: string, group: string, half?: string, title: string, lanes: number[], heads?: number, meant?: boolean}} CrewData */
/** @typedef {{part: number, do: "round" | "skip" | "reps", run?: string}} Cut `run`: the block of which reps go */
/** @typedef {"order" | "rounds" | "parts" | "end"} By a way to cut: as the build orders it, by rounds alone, by whole parts, the wind-down */
/** @typedef {{form: number, version: string, kind: "practice" | "set", id: string, title: string, page: string, squad?: string,
 *   start?: string, minutes?: number, pool?: string | null, course?: string, ends_s?: number | null, crews: CrewData[],
 *   hazards?: Hazard[], parts: Part[], cuts?: Cut[], made?: string}} RunData `made`: the words of the address that makes a composed practice */

/** @typedef {{node: RoundsBlock, no: number}} Round one time through a block of rounds; `no` is its place, a copy's lies between two */
/** @typedef {"rep" | "wait" | "end"} StepKind a send-off (of a wave), a wait on the clock, or the end of a part */
/** @typedef {{id: string, kind: StepKind, part: number, stage: number, ms: number | null, opens?: boolean, rounds: Round[],
 *   block?: RepBlock, run?: string, item?: number, rep?: number, reps?: number, wave?: number, waves?: number, whole?: boolean,
 *   target?: number | null, aim?: number | null, rest?: number | null, home?: number, sat?: boolean,
 *   wait?: WaitBlock, before?: Round}} Step one send-off; `run` is its block at one time through the rounds */
/** @typedef {{step: Step, at: number, undone?: boolean}} Begun a step that has begun; undone where it is swum again */
/** @typedef {"ready" | "running" | "held" | "tap" | "over"} Mode */
/** @typedef {{key: string, left: Step[], done: Begun[], ended: {part: number, at: number}[], mode: Mode, t: number, since: number,
 *   clear: number, home: number, late: number}} Crew
 *   `t`: when the next step begins, while running; `clear`: the earliest that it may; `since`: when it came to wait; `home`: when the last
 *   rep's last swimmer is home */
/** @typedef {{data: RunData, marks: number[], onward: boolean, crews: Crew[], now: number, stopped: number | null}} State */

/** @typedef {"go" | "hold" | "stop" | "on" | "more" | "fewer" | "sit" | "meet" | "round" | "skip" | "late" | "cut" | "end" | "back"} Deed */
/** @typedef {{at: number, do: Deed, who?: string | null, s?: number, n?: number, part?: number, how?: "same" | "next" | "part",
 *   until?: number, by?: By, of?: number[]}} Change `who`: a crew's key, else all; `at` and `until` in milliseconds of the pool's clock */
/** @typedef {{form: 1, kind: "practice" | "set", id: string, version: string, crews: string[], marks: number[], onward: boolean, begun: number,
 *   planned: number | null, until: number | null, pool: string | null, changes: Change[]}} Run `begun`: when it was set up; `planned`: the start of its slot;
 *   `until`: when the water is no longer theirs */

export {};
