// What is swum of a piece, in its row: as a coach writes it on a board.

import assert from "node:assert/strict";
import test from "node:test";

import { swimOf } from "../../site_src/scripts/make/swim.js";

const crews = [{ key: "one", title: "One" }, { key: "two", title: "Two" }];
const items = [{ line: "50 Kick, strong", what: "4 × 50 Kick", effort: "strong" }, { line: "100 Swim, easy", what: "1 × 100 Swim", effort: "easy" }, { line: "25 Scull" }];
const reps = (item, number, every) => ({ item, reps: number, every });
const part = (one, two) => ({ items, crews: { one: { blocks: one }, two: { blocks: two } } });

test("rounds stand over what they hold, with the pause between them and each group’s send-off", () => {
  const blocks = (every) => [{ rounds: [{ times: 3, blocks: [reps(0, 4, every), { wait: 20, why: "pause" }, reps(1, 1, 120)] }], between: 45 }, reps(2, 4, 40), reps(2, 1, null)];
  assert.deepEqual(swimOf(part(blocks(65), blocks(70)), crews), [{
    whose: "",
    lines: [{ said: "3 rounds, 0:45 between", goes: "", depth: 0 }, { said: "4 × 50 Kick, strong", goes: "1:05 · 1:10", depth: 1 }, { said: "100 Swim, easy", goes: "2:00", depth: 1 }],
    more: 2,
  }]);
});

test("what one group swims otherwise stands under its name", () => {
  const found = swimOf(part([reps(2, 4, 40)], [reps(2, 6, 40)]), crews);
  assert.deepEqual(found.map(({ whose, lines }) => [whose, lines[0].said]), [["One", "4 × 25 Scull"], ["Two", "6 × 25 Scull"]]);
  assert.equal(swimOf({ items, crews: { two: { blocks: [reps(2, 4, 40)] } } }, crews)[0].whose, "", "nobody else swims it");
});

test("rounds that differ say which they are", () => {
  const blocks = [{ rounds: [{ times: 1, blocks: [reps(1, 1, 100)] }, { times: 2, blocks: [reps(2, 4, 40)] }], between: 30 }];
  assert.deepEqual(swimOf(part(blocks, blocks), crews)[0].lines.map(({ said }) => said), ["Round 1 of 3", "100 Swim, easy", "Rounds 2 to 3 of 3, 0:30 between", "4 × 25 Scull"]);
});
