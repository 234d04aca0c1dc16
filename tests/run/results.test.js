import assert from "node:assert/strict";
import { test } from "node:test";

import { asEntry, asText, metres, span } from "../../site_src/scripts/run/done.js";
import { at, changed, stateOf } from "../../site_src/scripts/run/replay.js";
import { resultOf, slotOf, slots, swapped } from "../../site_src/scripts/run/results.js";
import { data, runOf, START } from "./helpers.js";

const S = 1000;

/** The practice with three in each lane 5 s apart, timed. */
const timed = structuredClone(data);
timed.parts = [{ ...timed.parts[1], stage: 0, crews: { b: { blocks: [{ item: 0, reps: 4, every: 60, target: 30, rest: 30, home: 40, in_lane: 3, gap: 5 }] } } }];

/** Touches in lane 4, at seconds after the first send-off. */
function touched(...seconds) {
  const run = runOf({ crews: ["b"] });
  const { state } = changed(timed, run, stateOf(timed, run), { at: START, do: "go" });
  let touches = [];
  for (const s of seconds) {
    const moment = START + (15 + s) * S;
    const there = at(state, moment);
    const slot = slotOf(slots(there, there.crews[0], [4, 5]), touches, 4, moment);
    touches = slot ? [...touches, { lane: 4, place: slot.place, rep: slot.rep, at: moment }] : touches;
  }
  const there = at(state, START + 600 * S);
  const all = slots(there, there.crews[0], [4, 5]).filter(({ lane }) => lane === 4);
  return { touches, all, results: all.map((slot) => resultOf(slot, touches)) };
}

test("each touch is counted from the send-off of its own place", () => {
  assert.deepEqual(touched(30.4, 36, 41.2, 90.1).results.slice(0, 4), [30.4, 31, 31.2, 30.1]);
});

test("a missed touch leaves a blank and shifts nothing of the next rep", () => {
  const { results } = touched(30.4, 90.1, 96, 101.5);
  assert.deepEqual(results.slice(0, 6), [30.4, null, null, 30.1, 31, 31.5]);
});

test("a touch that nobody can have made is none", () => {
  assert.deepEqual(touched(3).touches, []);
  assert.deepEqual(touched(3 * 60 + 90).touches, []); // long after the last rep
});

test("order changed swaps two and leaves the others", () => {
  const { touches, all } = touched(30.4, 36, 41.2);
  const after = swapped(touches, { lane: 4, rep: all[0].rep }, 0, 1);
  assert.deepEqual(all.slice(0, 3).map((slot) => resultOf(slot, after)), [36, 25.4, 31.2]);
});

test("what was done is counted: metres, minutes, changes, no reps that were sat out", () => {
  let [run, state] = [runOf(), stateOf(data, runOf())];
  for (const change of [{ at: START, do: "go" }, { at: START + 400 * S, do: "sit", who: "a" }, { at: START + 420 * S, do: "fewer", who: "b" }, { at: START + 900 * S, do: "end" }]) {
    ({ run, state } = changed(data, run, state, change));
  }
  const over = at(state, START + 1000 * S);
  assert.deepEqual(over.crews.map((crew) => metres(over, crew)), [300 + 3 * 50, 300 + 3 * 50]);
  assert.deepEqual(span(over), { from: START + 15 * S, to: START + 900 * S });
  const { file, entry } = asEntry(over, run, { heads: 18, note: "Cold water." });
  assert.match(file, /^plans\/logs\/2026-11-2\d-two-lanes\.yml$/);
  assert.deepEqual(Object.keys(entry), ["title", "practice", "on", "minutes", "metres", "heads", "changed", "note"]);
  assert.deepEqual(entry.changed, ["Sit out, lanes 1–3.", "Fewer reps, lanes 4–6."]);
  assert.equal(entry.minutes, 15);
  assert.equal(asEntry(over, run, {}), null);
  const text = asText(over, run);
  assert.match(text, /450 m/);
  assert.match(text, /^Warm-up: 4 reps each$/m); // once where all have done as many
  const short = { ...over, crews: [over.crews[0], { ...over.crews[1], done: over.crews[1].done.slice(0, -1) }] };
  assert.match(asText(short, run), /^Warm-up: 4 reps \(lanes 1–3\), 3 reps \(lanes 4–6\)$/m);
});
