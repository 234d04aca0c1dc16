// The choice in JavaScript against the program's: every answer and every refusal, to the letter.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import test from "node:test";

import { change, proposalOf } from "../../site_src/scripts/compose/change.js";
import { practiceOf, stoodOf } from "../../site_src/scripts/compose/chosen.js";
import { inMinutes } from "../../site_src/scripts/compose/minutes.js";
import { entryText } from "../../site_src/scripts/compose/entry.js";
import { titled } from "../../site_src/scripts/compose/named.js";
import { propose } from "../../site_src/scripts/compose/propose.js";
import { fromAddress } from "../../site_src/scripts/make/asked.js";
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

test("every change comes out alike", () => {
  for (const { squad, request, answer, steps } of cases) {
    const first = steps.length ? practiceOf(answer.proposals[0]) : null;
    assert.deepEqual(first, steps[0]?.practice ?? null);
    for (const { practice, deed, changed, entry } of steps) {
      const before = JSON.stringify(practice), found = change(data[squad], request, practice, deed);
      assert.deepEqual(found, changed, JSON.stringify({ squad, request, practice, deed }));
      assert.equal(JSON.stringify(practice), before);
      if ("practice" in found) {
        assert.deepEqual(proposalOf(data[squad], request, found.practice), { proposal: found.proposal });
        const { asked, order } = stoodOf(data[squad], request, found.practice);
        assert.equal(entryText(asked, order, "17:30"), entry);
        const opened = fromAddress(/^composed: "(.*)"$/m.exec(entry)?.[1] ?? "");
        assert.deepEqual(opened?.practice?.parts, found.practice.parts.map((part) => ({ ...part, kept: false })));
        const again = proposalOf(data[squad], opened.request, opened.practice);
        assert.deepEqual([again.proposal.takes_s, again.proposal.title], [found.proposal.takes_s, found.proposal.title]);
        assert.ok(entry.startsWith(`title: ${JSON.stringify(titled(asked, order))}\n`));
      }
    }
  }
});

test("in other minutes every practice comes out alike", () => {
  for (const { squad, request, timed } of cases) {
    for (const { practice, minutes, changed } of timed) {
      const before = JSON.stringify(practice), found = answerOf(() => inMinutes(data[squad], { ...request, minutes }, practice));
      assert.deepEqual("refused" in found ? { refused: found.refused } : found, changed, JSON.stringify({ squad, request, practice, minutes }));
      assert.equal(JSON.stringify(practice), before);
    }
  }
});

test("what is asked is left as it was", () => {
  const { squad, request } = cases[0], before = JSON.stringify([data[squad], request]);
  propose(data[squad], request);
  assert.equal(JSON.stringify([data[squad], request]), before);
});
