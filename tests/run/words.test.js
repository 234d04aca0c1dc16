// What cuts take, in words.

import assert from "node:assert/strict";
import { test } from "node:test";

import { cutWords } from "../../site_src/scripts/run/words.js";
import { data } from "./helpers.js";

test("a cut tells its part; parts of one name that lose the same are one line", () => {
  const titled = (/** @type {string[]} */ titles) => ({ ...data, parts: titles.map((title) => ({ ...data.parts[0], title })) });
  const round = (/** @type {number} */ part) => /** @type {const} */ ({ part, do: "round" });
  assert.deepEqual(cutWords([round(0), round(0), round(1)], titled(["Skill", "Main"])), ["Skill: 2 rounds fewer", "Main: a round fewer"]);
  assert.deepEqual(cutWords([round(0), round(1)], titled(["Skill", "Skill"])), ["Skill: a round fewer, both times"]);
  assert.deepEqual(cutWords([round(0), round(1), round(1)], titled(["Skill", "Skill"])), ["Skill: a round fewer", "Skill: 2 rounds fewer"]);
});
