// What a set that is being written comes to, held against what the program adds up.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import test from "node:test";

import { totalOf, totalWords } from "../../site_src/scripts/add/total.js";

/** @type {import("../../site_src/scripts/add/names.js").Names} */
const NAMES = { kinds: {}, vocabulary: {}, reference: { lane_group: [["reds-2", "Reds 2"]] } };

test("every lane group goes as far as the program says", () => {
  for (const { id, items, far } of JSON.parse(readFileSync(process.env.CASES ?? "", "utf8"))) {
    for (const [group, metres] of Object.entries(far)) {
      assert.equal(totalOf(items, group).far, metres, `${id}, ${group}`);
    }
  }
});

test("a total is told once it is known, by time and by lane group too", () => {
  const reps = { reps: 4, distance: 50, do: "a" };
  assert.equal(totalWords([reps], "25m", NAMES), "In all 200 m");
  assert.equal(totalWords([{ rounds: 3, items: [reps, { pause: "1:00" }] }], "25yd", NAMES), "In all 600 yd");
  assert.equal(totalWords([reps, { reps: 2, time: "1:30", do: "b" }], "25m", NAMES), "In all 200 m and 3:00 by time");
  assert.equal(totalWords([{ ...reps, by_group: { "reds-2": { reps: 3 } } }], "25m", NAMES), "In all 200 m; Reds 2: 150 m");
  assert.equal(totalWords([{ rounds: 2, items: [{ ...reps, by_round: { last: { distance: 25 } } }] }], "25m", NAMES), "In all 300 m");
  const by_round = { last: { reps: 2 }, 2: { distance: 25 } }; // of the last round what is said of its number holds no more
  assert.equal(totalWords([{ rounds: 2, items: [{ ...reps, by_round }] }], "25m", NAMES), "In all 300 m");
  for (const open of [[], [{ reps: 4 }], [reps, { distance: 25 }], [{ items: [reps] }], [{ rounds: 1e9, items: [reps] }], [{ ...reps, time: "x" }]]) {
    assert.equal(totalWords(open, "25m", NAMES), "");
  }
});
