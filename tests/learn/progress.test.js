// What Learn keeps: when a wrong answer comes back, progresses under shapes, what is taken along.

import assert from "node:assert/strict";
import test from "node:test";

/** @type {Record<string, string>} */
let store = {};
Object.assign(globalThis, {
  document: { documentElement: { dataset: { root: "./" } } },
  location: { href: "https://club.example/almanac/index.html", pathname: "/almanac/index.html" },
  localStorage: {
    getItem: (/** @type {string} */ key) => store[key] ?? null,
    setItem: (/** @type {string} */ key, /** @type {string} */ value) => { store[key] = value; },
  },
});
const { answered } = await import("../../site_src/scripts/learn/answering.js");
const { dueInAll } = await import("../../site_src/scripts/learn/due.js");
const { shuffled } = await import("../../site_src/scripts/learn/order.js");
const { nextOf } = await import("../../site_src/scripts/learn/next.js");
const { keep, rounds } = await import("../../site_src/scripts/judge/results.js");
const { bring, choose, clear, counts, kept, mine, takeAlong } = await import("../../site_src/scripts/learn/progress.js");

const at = (/** @type {string} */ text) => new Date(`2026-11-${text}:00Z`);
const days = (/** @type {string} */ due) => (Date.parse(due) - Date.parse("2026-11-02T10:00:00Z")) / 86_400_000;

test.beforeEach(() => { store = {}; });

test("what is right at once does not come back", () => {
  answered("aa", true, at("02T10:00"));
  assert.deepEqual(counts(["aa", "bb"], at("30T10:00")), { answered: 1, right: 1, due: [] });
});

test("what was wrong comes back at the next time, then after days that grow while it is right", () => {
  answered("aa", false, at("02T10:00"));
  assert.deepEqual(counts(["aa"], at("02T10:05")).due, []);
  assert.equal(dueInAll(at("02T18:00")), 1);
  const gaps = [];
  let now = at("02T18:00");
  for (let time = 0; time < 4; time += 1) {
    answered("aa", true, now);
    const due = mine().answers.aa.back?.due ?? "";
    gaps.push(days(due) - days(now.toISOString()));
    now = new Date(due);
  }
  assert.ok(gaps[0] >= 0.5 && gaps.every((gap, place) => place === 0 || gap > gaps[place - 1]), String(gaps));
  answered("aa", false, now);
  assert.ok(Date.parse(mine().answers.aa.back?.due ?? "") - now.getTime() < 3_600_000);
});

test("each shape has its own, and is cleared alone", () => {
  answered("aa", false, at("02T10:00"));
  choose("star");
  assert.deepEqual(mine().answers, {});
  answered("bb", true, at("02T10:00"));
  clear();
  choose("circle");
  assert.deepEqual(Object.keys(mine().answers), ["aa"]);
  assert.deepEqual(Object.keys(kept().of), ["circle", "star"]);
});

test("what is taken along comes in elsewhere, and the later answer counts", () => {
  answered("aa", false, at("02T10:00"));
  answered("bb", true, at("02T10:00"));
  const code = takeAlong();
  store = {};
  answered("bb", false, at("03T10:00"));
  assert.equal(bring(` ${code.slice(0, 40)}\n${code.slice(40)} `), "");
  assert.deepEqual([mine().answers.aa.right, mine().answers.bb.right], [false, false]);
  assert.equal(takeAlong().length > 20, true);
  for (const wrong of ["", "L1-", "L1-abc", code.slice(0, -9), `L1-${btoa('{"answers":{"zz":1}}')}`, `L1-${btoa('{"answers":{"<b>":{"right":true,"on":"2026-11-02"}}}')}`]) {
    assert.match(bring(wrong), /^This is no progress/, wrong);
  }
});

test("no order is told by its place: each answer stands first about as often", () => {
  const first = { a: 0, b: 0, c: 0 };
  for (let day = 0; day < 3000; day += 1) {
    first[/** @type {"a" | "b" | "c"} */ (shuffled(["a", "b", "c"], `2026-11-${day} key`)[0])] += 1;
  }
  assert.ok(Object.values(first).every((count) => Math.abs(count - 1000) < 130), JSON.stringify(first)); // 5 standard deviations of 26
  assert.deepEqual(shuffled([1, 2, 3, 4], "x"), shuffled([1, 2, 3, 4], "x"));
});

test("next is what was begun last and is not through, else the first that is not begun", () => {
  const all = [["aa", "ab"], ["ba", "bb"], ["ca", "cb"]];
  const next = () => nextOf(all, at("09T10:00"), mine());
  assert.equal(next(), 0);
  answered("ca", true, at("02T10:00"));
  assert.equal(next(), 2);
  answered("ba", false, at("03T10:00"));
  assert.equal(next(), 1);
  answered("bb", true, at("03T10:05"));
  assert.equal(next(), 2);
  answered("cb", true, at("04T10:05"));
  assert.equal(next(), 0);
  all[0].forEach((question) => answered(question, true, at("05T10:00")));
  assert.equal(next(), -1);
});

test("rounds of Judge it go along and are forgotten with the answers", () => {
  keep("circle", { on: "2026-11-27", right: 8 });
  const text = takeAlong();
  clear();
  assert.deepEqual(rounds("circle"), []);
  keep("circle", { on: "2026-11-29", right: 9 });
  assert.equal(bring(text), "");
  assert.equal(bring(text), "");
  assert.deepEqual(rounds("circle"), [{ on: "2026-11-27", right: 8 }, { on: "2026-11-29", right: 9 }]);
  const wrong = "L1-" + btoa(JSON.stringify({ answers: {}, rounds: [{ on: "2026-11-27", right: 80 }] }));
  assert.match(bring(wrong), /no progress/);
});
