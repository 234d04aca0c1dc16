// More or fewer rounds and reps than are written, and what can't be told from them.

import assert from "node:assert/strict";
import test from "node:test";

import { byTap, itemsOf, often } from "../../site_src/scripts/make/often.js";

const ITEMS = [{ line: "4 × 50 Kick, easy", what: "4 × 50 Kick", metres: 50, note: "as on Monday" }, { line: "100 Swim", what: "1 × 100 Swim", metres: 100 }];
const piece = (what, written) => ({ of: "part", id: "x", title: "X", what, written });
const block = (more = {}) => ({ item: 0, reps: 4, every: 60, target: 50, rest: 10, ...more });

test("reps that are alike are so many more, and those in turn go on in turn", () => {
  assert.deepEqual(often([block()], ITEMS, piece("reps", 4), 6), [block({ reps: 6 })]);
  const inTurn = block({ target: [50, 40, 50, 40], rest: [10, 20, 10, 20], does: ["a", "b", "a", "b"] });
  const [made] = often([inTurn], ITEMS, piece("reps", 4), 5);
  assert.deepEqual([made.reps, made.target, made.rest, made.does], [5, [50, 40, 50, 40, 50], [10, 20, 10, 20, 10], ["a", "b", "a", "b", "a"]]);
});

test("of drills in turn that come once the first stay; what descends can't be told", () => {
  const once = block({ target: [50, 40, 30, 20], does: ["a", "b", "c", "d"] });
  assert.deepEqual(often([once], ITEMS, piece("reps", 4), 2)[0].target, [50, 40]);
  assert.equal(often([once], ITEMS, piece("reps", 4), 5), null);
  assert.equal(often([block({ target: [50, 49, 48, 47] })], ITEMS, piece("reps", 4), 3), null);
});

test("what comes after the last rep takes it another time, however many there are", () => {
  const last = block({ every: [60, 60, 60, 45] });
  assert.deepEqual(often([last], ITEMS, piece("reps", 4), 3)[0].every, [60, 60, 45]);
});

test("rounds that are alike are so many; those that are not can't be told", () => {
  const rounds = { rounds: [{ times: 3, blocks: [block()] }], between: 30 };
  assert.deepEqual(often([rounds], ITEMS, piece("rounds", 3), 2), [{ ...rounds, rounds: [{ times: 2, blocks: [block()] }] }]);
  const unlike = { rounds: [{ times: 2, blocks: [block()] }, { times: 1, blocks: [block({ target: 40 })] }] };
  assert.equal(often([unlike], ITEMS, piece("rounds", 3), 2), null);
  assert.equal(often([unlike], ITEMS, piece("rounds", 3), 3)[0], unlike);
});

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

test("the line says how often, and nothing of another evening", () => {
  const crews = { a: { blocks: [block(), { item: 1, reps: 1, every: 90, target: 80, rest: 10 }] } };
  assert.deepEqual(itemsOf(ITEMS, crews, piece("reps", 4), 6)[0], { line: "6 × 50 Kick, easy", what: "6 × 50 Kick", metres: 50 });
  assert.equal(itemsOf(ITEMS, crews, piece("reps", 4), 1)[0].line, "50 Kick, easy");
});
