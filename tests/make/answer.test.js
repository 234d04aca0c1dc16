// The answer to a request is worked out before it is asked for, in short steps, and once: held by what is tried, not by a clock.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import test from "node:test";

import { Around } from "../../site_src/scripts/compose/around.js";
import { propose, proposing } from "../../site_src/scripts/compose/propose.js";
import { answerSoon, answerTo } from "../../site_src/scripts/make/answer.js";
import { fromAddress, toAddress } from "../../site_src/scripts/make/asked.js";

/** @type {{data: any, requests: any[]}} */
const { data, requests } = JSON.parse(readFileSync(process.env.REQUESTS ?? "", "utf8"));
const MOST_AROUND = 1300; // hearts, for three proposals: 400 each and a few
const fill = Around.prototype.fill;
let filled = 0;
Around.prototype.fill = function counted(...own) {
  filled += 1;
  return fill.apply(this, own);
};

/** How many hearts something is tried around while this is done.
 * @param {() => any} act */
async function tried(act) {
  filled = 0;
  await act();
  return filled;
}

/** The request as its address has it.
 * @param {any} request */
const addressed = (request) => fromAddress(toAddress({ squad: data.squad.id, request, on: "2026-11-27", start: "17:30", number: 1, practice: null, code: "" }))?.request;

test("what was worked out before the tap is not worked out again, nor when its address is shown", async () => {
  for (const request of requests) {
    const before = await tried(() => answerSoon(data, request));
    assert.ok(before > 0, JSON.stringify(request));
    assert.equal(await tried(() => answerTo(data, request)), 0);
    assert.equal(await tried(() => answerTo(data, addressed(request))), 0, "the words of an address ask for the same");
    assert.deepEqual(answerTo(data, request), propose(data, request));
  }
});

test("a tap that comes before the end goes on from there", async () => {
  const [request, other] = requests, whole = await tried(() => propose(data, request));
  answerTo(data, other);
  filled = 0;
  const soon = answerSoon(data, request);
  const answer = answerTo(data, request);
  assert.equal(filled, whole);
  assert.deepEqual(answer, propose(data, request));
  assert.deepEqual(await soon, answer);
});

test("what is no longer asked for is dropped", async (own) => {
  const [request, other] = requests, whole = await tried(() => propose(data, request)), instead = await tried(() => propose(data, other));
  let now = 0;
  own.mock.method(performance, "now", () => { now += 1000; return now; }); // as slow as can be: each step is a slice
  const found = await tried(async () => {
    const soon = answerSoon(data, request);
    answerTo(data, other);
    assert.equal(await soon, null);
  });
  assert.ok(whole > 0 && found === instead, `${found} hearts; ${instead} of what is asked for, and some of ${whole}`);
});

test("a wish that cannot be is told, before and when it is asked", async () => {
  const bad = { ...requests[0], minutes: 5 };
  const { message, field } = await answerSoon(data, bad);
  assert.match(message, /^5 min/);
  assert.equal(field, "minutes");
  assert.equal(await answerSoon(data, bad), answerTo(data, bad));
});

test("where nothing fits, what is in the way is looked for at the tap alone: in one step, for which no key waits", async () => {
  const nothing = { ...requests[0], minutes: 20, gear: Object.fromEntries(data.gear.map(([id]) => [id, 0])), goals: data.goals.slice(0, 3).map(([id]) => id), lanes: {}, heads: {}, adults: -1, done: data.pieces.map(({ of, id, part }) => [of === "part" ? `${of}/${id}/${part ?? 0}` : `${of}/${id}`, 1]) };
  await answerSoon(data, nothing);
  const before = await tried(() => answerSoon(data, nothing));
  assert.equal(before, 0);
  const answer = answerTo(data, nothing);
  assert.ok(typeof answer !== "string" && !answer.proposals.length && answer.hinders.length, JSON.stringify(answer));
  assert.equal(await answerSoon(data, nothing), answer);
});

test("a step tries one heart at most, and an answer no more than it must", () => {
  for (const request of requests) {
    const steps = proposing(data, request);
    let all = 0, step;
    do {
      filled = 0;
      step = steps.next();
      assert.ok(filled <= 1, `${filled} hearts in one step: a key that is typed meanwhile waits for all of them`);
      all += filled;
    } while (!step.done);
    assert.ok(all < MOST_AROUND, `${all} hearts: ${JSON.stringify(request)}`);
  }
});
