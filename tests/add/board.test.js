// The board of a set that is being written: its lines are those of the set's page, which the program has written.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import test from "node:test";

import { boardOf } from "../../site_src/scripts/add/board.js";

test("what is another in a round is said as on the set's page", () => {
  for (const { items, names, said } of JSON.parse(readFileSync(process.env.CASES, "utf8"))) {
    const own = boardOf(items, names).map(({ what }) => what).filter((what) => /^(Last round|Round \d)/.test(what));
    assert.deepEqual(own, said);
  }
});
