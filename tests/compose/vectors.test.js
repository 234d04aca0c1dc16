// The choice in JavaScript against the program's: every answer and every refusal, to the letter.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import test from "node:test";

import { propose } from "../../site_src/scripts/compose/propose.js";
import { BadWish } from "../../site_src/scripts/compose/request.js";

/** @type {any} */
const { data, cases } = JSON.parse(readFileSync(process.env.VECTORS ?? "", "utf8"));

/** @param {() => any} ask */
function answerOf(ask) {
  try {
    return ask();
  } catch (problem) {
    if (problem instanceof BadWish) {
      return { refused: problem.message };
    }
    throw problem;
  }
}

test("every request is answered alike", () => {
  assert.ok(cases.length);
  for (const { squad, request, answer } of cases) {
    assert.deepEqual(answerOf(() => propose(data[squad], request)), answer, JSON.stringify({ squad, request }));
  }
});

test("what is asked is left as it was", () => {
  const { squad, request } = cases[0], before = JSON.stringify([data[squad], request]);
  propose(data[squad], request);
  assert.equal(JSON.stringify([data[squad], request]), before);
});
