// More or fewer rounds and reps than are written, by taps; and what is said of them.

import assert from "node:assert/strict";
import test from "node:test";

import { byTap, counted, itemsByTap } from "../../site_src/scripts/make/often.js";

const ITEMS = [{ line: "4 × 50 Kick, easy", what: "4 × 50 Kick", metres: 50, note: "as on Monday" }, { line: "100 Swim", what: "1 × 100 Swim", metres: 100 }];
const piece = (what, written) => ({ of: "part", id: "x", title: "X", what, written });
const block = (more = {}) => ({ item: 0, reps: 4, every: 60, target: 50, rest: 10, ...more });

test("by taps there is no time, and as many as are asked for", () => {
  assert.deepEqual(byTap([block()], piece("reps", 4), 7), [{ item: 0, reps: 7, every: null }]);
  const unlike = { rounds: [{ times: 2, blocks: [block()] }, { times: 1, blocks: [block()] }] };
  assert.equal(byTap([unlike], piece("rounds", 3), 5)[0].rounds.reduce((sum, { times }) => sum + times, 0), 5);
});

test("by taps rounds that differ are each as written, and the last stays the last", () => {
  const rep = (item) => ({ item, reps: 1, every: null }), one = (item) => ({ times: 1, blocks: [rep(item)] });
  const by = (rounds, more, number) => byTap([{ rounds, ...more }], piece("rounds", 3), number)[0].rounds;
  assert.deepEqual(by([one(0), one(1), one(2)], { keeps_last: true }, 2), [one(0), one(2)]);
  assert.deepEqual(by([one(0), one(1), one(2)], { keeps_last: true }, 1), [one(2)]);
  assert.deepEqual(by([{ ...one(0), times: 2 }, one(2)], { keeps_last: true }, 5), [{ ...one(0), times: 4 }, one(2)]);
  assert.deepEqual(by([one(0), one(1), one(2)], {}, 2), [one(0), one(1)]);
});

test("the line says how often", () => {
  const crews = { a: { blocks: [block(), { item: 1, reps: 1, every: 90, target: 80, rest: 10 }] } };
  assert.deepEqual(itemsByTap(ITEMS, crews, piece("reps", 4), 6), [{ ...ITEMS[0], line: "6 × 50 Kick, easy", what: "6 × 50 Kick" }, ITEMS[1]]);
  assert.equal(counted(ITEMS[0], 1).line, "50 Kick, easy");
  assert.equal(counted({ line: "4 × 50 Back kick, change of speed." }, 12).line, "50 Back kick, change of speed.");
});
