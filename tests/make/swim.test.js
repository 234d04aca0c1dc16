// What is swum of a piece, in its row: as a coach writes it on a board.

import assert from "node:assert/strict";
import test from "node:test";

import { swimOf } from "../../site_src/scripts/make/swim.js";

const crews = [{ key: "one", title: "One", lanes: [] }, { key: "two", title: "Two", lanes: [] }, { key: "three", title: "Three", lanes: [5, 6] }];
const items = [{ line: "50 Kick, strong", what: "4 × 50 Kick", effort: "strong" }, { line: "100 Swim, easy", what: "1 × 100 Swim", effort: "easy" }, { line: "25 Scull" }];
const reps = (item, number, every) => ({ item, reps: number, every });
const part = (one, two, three) => ({ items, crews: { one: { blocks: one }, two: { blocks: two }, ...(three ? { three: { blocks: three } } : {}) } });
const line = (said, goes = "", depth = 0, whose = "") => ({ whose, said, goes, depth });

test("rounds stand over what they hold, with the pause between them and each group’s send-off", () => {
  const blocks = (every) => [{ rounds: [{ times: 3, blocks: [reps(0, 4, every), { wait: 20, why: "pause" }, reps(1, 1, 120)] }], between: 45 }, reps(2, 4, 40), reps(2, 1, null)];
  assert.deepEqual(swimOf(part(blocks(65), blocks(70)), crews), {
    lines: [line("3 rounds, 0:45 between"), line("4 × 50 Kick, strong", "1:05 · 1:10", 1), line("100 Swim, easy", "2:00", 1)], more: 2,
  });
});

test("a line in which groups differ stands under the name of each, and what all swim once", () => {
  const swum = (number, rounds = 2) => [reps(1, 1, 100), { rounds: [{ times: rounds, blocks: [reps(2, number, 40)] }] }];
  assert.deepEqual(swimOf(part(swum(4), swum(6), swum(6)), crews).lines,
    [line("100 Swim, easy", "1:40"), line("2 rounds"), line("4 × 25 Scull", "0:40", 1, "One"), line("6 × 25 Scull", "0:40", 1, "Two and Lanes 5–6")]);
  assert.deepEqual(swimOf(part(swum(4), swum(4, 3)), crews).lines, [line("100 Swim, easy", "1:40"), line("2 rounds", "", 0, "One"), line("3 rounds", "", 0, "Two"), line("4 × 25 Scull", "0:40", 1)]);
});

test("where one group has lines that another has not, what begins alike stands once", () => {
  assert.deepEqual(swimOf(part([reps(1, 1, 100)], [reps(1, 1, 110), reps(2, 4, 40)], [reps(1, 1, 110), reps(2, 4, 45), reps(0, 2, 60)]), crews),
    { lines: [line("100 Swim, easy", "1:40 · 1:50"), line("4 × 25 Scull", "0:40 · 0:45", 0, "Two and Lanes 5–6")], more: 1 });
  assert.equal(swimOf({ items, crews: { two: { blocks: [reps(2, 4, 40)] } } }, crews).lines[0].whose, "", "nobody else swims it");
});

test("rounds that differ say which they are", () => {
  const blocks = [{ rounds: [{ times: 1, blocks: [reps(1, 1, 100)] }, { times: 2, blocks: [reps(2, 4, 40)] }], between: 30 }];
  assert.deepEqual(swimOf(part(blocks, blocks), crews).lines.map(({ said }) => said), ["Round 1 of 3", "100 Swim, easy", "Rounds 2 to 3 of 3, 0:30 between", "4 × 25 Scull"]);
});

test("of rests the word stands once", () => {
  const rest = (seconds) => [{ item: 2, reps: 4, rest: seconds, go: "rest" }];
  assert.deepEqual(swimOf(part(rest(14), rest(13)), crews).lines, [line("4 × 25 Scull", "0:14 · 0:13 rest")]);
});
