// What a row tells at each moment: the rep that is swum, and from 10 s before a send-off, or once all are home, what leaves then.

import assert from "node:assert/strict";
import { test } from "node:test";

import { lineWords, repWords, thenWords, timeWords } from "../../site_src/scripts/run/row-words.js";
import { at, changed, stateOf } from "../../site_src/scripts/run/replay.js";
import { rows } from "../../site_src/scripts/run/view.js";
import { data, runOf, START } from "./helpers.js";

const S = 1000;
const shared = { gear: { parachute: "Chute" } };

/** Go at the start: the first send-off is 15 s later. The rows at a second after that, as they are read. */
function told(file, run, changes, s) {
  let [own, state] = [run, stateOf(file, run)];
  for (const change of [{ at: START, do: "go" }, ...changes]) {
    ({ run: own, state } = changed(file, own, state, change));
  }
  const there = at(state, START + (15 + s) * S);
  const shown = { data: file, run: own, shared };
  return rows(there).map((row) => [timeWords(row), repWords(shown, there, row).join(", "), lineWords(shown, there, row), thenWords(shown, there, row)]);
}

const b = (s, changes = []) => told(data, runOf({ crews: ["b"] }), changes, s)[0];
const FIRST = "First: 300 Easy swim";

test("before the first send-off it is next; then it is swum; from 10 s before the next, that", () => {
  // group b: 300 every 380 s, home after 340 s; then 4 × 50 every 85 s, home after 84 s
  assert.deepEqual(b(-5), ["0:05", "1 of 1, next", "300 Easy swim", ""]);
  assert.deepEqual(b(0), ["6:20", "1 of 1, swimming", "300 Easy swim", "Next at :35: 4 × 50 Back kick, 1 of 4"]);
  assert.deepEqual(b(339), ["0:41", "1 of 1, swimming", "300 Easy swim", "Next at :35: 4 × 50 Back kick, 1 of 4"]);
  assert.deepEqual(b(340), ["0:40", "1 of 4, next", "4 × 50 Back kick", ""]); // all are home
  assert.deepEqual(b(380), ["1:25", "1 of 4, swimming", "4 × 50 Back kick", "Next at :00: 2 of 4"]);
  assert.deepEqual(b(454), ["0:11", "1 of 4, swimming", "4 × 50 Back kick", "Next at :00: 2 of 4"]);
  assert.deepEqual(b(455), ["0:10", "2 of 4, next", "4 × 50 Back kick", "Swimming: 1 of 4"]);
  assert.deepEqual(b(465), ["1:25", "2 of 4, swimming", "4 × 50 Back kick", "Next at :25: 3 of 4"]);
});

test("the last rep of a part is swum until all are home, and then what comes after it is told", () => {
  assert.deepEqual(b(640), ["1:20", "4 of 4, swimming, to its end", "4 × 50 Back kick", "Then: Main set: chute"]);
  assert.deepEqual(b(718), ["0:02", "4 of 4, swimming, to its end", "4 × 50 Back kick", "Then: Main set: chute"]);
  assert.deepEqual(b(719), ["0:01", "4 of 4, home, to its end", "Then: Main set: chute", ""]);
  const alone = { ...data, parts: data.parts.slice(0, 1) };
  assert.deepEqual(told(alone, runOf({ crews: ["b"] }), [], 719)[0].slice(1), ["4 of 4, home, to its end", "Then: the end", ""]);
});

test("a part that waits tells the talk that is left, what it begins with, and for whom", () => {
  assert.deepEqual(b(722), ["ready", "1:28, talk", `Main set: chute; planned ${clock(930)}, now ${clock(737)}`, "First: 25 Free kick"]);
  assert.deepEqual(b(900).slice(0, 2), ["ready", ""]); // nothing of the talk is left
  const before = at(stateOf(data, runOf()), START + 30 * S);
  const shown = { data, run: runOf(), shared };
  assert.deepEqual(rows(before).map((row) => [repWords(shown, before, row).join(", "), thenWords(shown, before, row)]), [["1:30, talk", FIRST], ["1:30, talk", FIRST]]);
  assert.deepEqual(told(data, runOf(), [], 662), [
    ["0:02", "waits", "for lanes 4–6", "First: 25 Back kick with chute"], ["0:58", "4 of 4, swimming, to its end", "4 × 50 Back kick", "Then: Main set: chute"],
  ]);
});

/** The time of day at so many seconds after the start, where this test runs. */
const clock = (s) => new Date(START + s * S).toTimeString().slice(0, 5);

test("waves leave one after the other, and between rounds and with gear what comes is told, and the wait", () => {
  // group a of the main set, alone: 2 reps every 70 s in two waves, home after 29 s; then 20 s for gear, and 90 s between rounds
  const main = { ...data, parts: [data.parts[1]] };
  const a = (s) => told(main, runOf({ crews: ["a"] }), [], s)[0];
  const line = "25 Back kick with chute";
  assert.deepEqual(a(0), ["0:35", "1 of 2, swimming, wave 1/2, round 1/3", line, "Next at :50: 1 of 2"]);
  assert.deepEqual(a(26), ["0:09", "1 of 2, next, wave 2/2, round 1/3", line, "Swimming: 1 of 2"]);
  assert.deepEqual(a(29), ["0:06", "1 of 2, next, wave 2/2, round 1/3", line, ""]);
  assert.deepEqual(a(35), ["0:35", "1 of 2, swimming, wave 2/2, round 1/3", line, "Next at :25: 2 of 2"]);
  assert.deepEqual(a(133), ["1:57", "2 of 2, swimming, wave 2/2, round 1/3", line, "Next at :25: 1 of 2, next round"]);
  assert.deepEqual(a(134), ["1:56", "1 of 2, next, wave 1/2, round 2/3", line, "Gear change; off: Chute"]);
  assert.deepEqual(a(161), ["1:29", "1 of 2, next, wave 1/2, round 2/3", line, "Between rounds"]);
});

test("short reps change over halfway; a rep that is sat out says so; land work is no swimming", () => {
  const short = structuredClone({ ...data, parts: data.parts.slice(0, 1) });
  short.parts[0].crews.b.blocks = [{ item: 1, reps: 6, every: 12, sit: 1 }];
  const own = (s, changes = []) => told(short, runOf({ crews: ["b"] }), changes, s)[0];
  assert.deepEqual([5, 6, 7].map((s) => own(s)[1]), ["1 of 6, swimming", "2 of 6, next", "2 of 6, next"]);
  const sat = [{ at: START + 16 * S, do: "sit", who: "b" }];
  assert.deepEqual([7, 13].map((s) => own(s, sat)[1]), ["2 of 6, next: sits out", "2 of 6, sits out"]);
  short.parts[0].items[1].land = true;
  assert.deepEqual([own(5)[1], own(7)[3]], ["1 of 6, working", "Working: 1 of 6"]);
});

test("a held group tells who still swims and then what goes next; one without times what it does", () => {
  const held = [{ at: START + 405 * S, do: "hold", who: "b" }];
  assert.deepEqual(b(400, held), ["0:10", "1 of 4, held", "4 × 50 Back kick", "Next: 2 of 4"]);
  assert.deepEqual(b(470, held), ["1:20", "2 of 4, held", "4 × 50 Back kick", ""]); // home 84 s after 380
  const free = structuredClone({ ...data, parts: data.parts.slice(0, 1) });
  free.parts[0].crews.b.blocks = [{ item: 1, reps: 4, every: null }, { item: 0, reps: 1, every: null }];
  assert.deepEqual(told(free, runOf({ crews: ["b"] }), [], 100)[0], ["1:40", "4 reps, no time known", "4 × 50 Back kick", "Next: 300 Easy swim, 1 rep"]);
});
