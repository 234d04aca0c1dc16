// What differs, put to what was there.

import assert from "node:assert/strict";
import test from "node:test";

import { applied } from "../../site_src/scripts/make/apply.js";

test("of an object the keys that differ, those that are new and those that are gone", () => {
  assert.deepEqual(applied({ a: 1, b: { c: 2 }, d: 3 }, { b: { c: 4 }, e: [5], "-": ["d"] }), { a: 1, b: { c: 4 }, e: [5] });
  assert.deepEqual(applied({ a: 1 }, { a: null }), { a: null });
});

test("of a list of objects the places that differ, or each by the one that it is like", () => {
  const old = [{ a: 1 }, { a: 2 }];
  assert.deepEqual(applied(old, { 1: { a: 3 } }), [{ a: 1 }, { a: 3 }]);
  assert.deepEqual(applied(old, [1, [0, { a: 4 }], 1]), [{ a: 2 }, { a: 4 }, { a: 2 }]);
  assert.equal(applied(old, {})[0], old[0]);
});

test("a list of numbers is another; of nothing comes what is told", () => {
  assert.deepEqual(applied([1, 2, 3], [4]), [4]);
  assert.deepEqual(applied(undefined, [{ a: 1 }]), [{ a: 1 }]);
  assert.deepEqual(applied(5, [1, 2]), [1, 2]);
});
