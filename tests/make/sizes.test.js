// Every size of every piece, laid by the page, against what the program makes of it.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import test from "node:test";

import { laid } from "../../site_src/scripts/make/lay.js";
import { stepsOf } from "../../site_src/scripts/run/steps.js";

/** @type {any} */
const { data, sources, runs, sizes } = JSON.parse(readFileSync(process.env.SIZES ?? "", "utf8"));
const own = { id: "x", title: "X", page: "", start: "17:30", gravities: [], words: {} };

/** What is done when, and what is said of it. */
const told = (part, crew) => stepsOf({ parts: [part] }, crew).map(({ kind, ms, target, aim, rest, home, wave, waves, item, wait, block }) => {
  const { line, what, drills, metres, far, effort } = part.items[item] ?? {};
  return { kind, ms, target, aim, rest, home, wave, waves, wait, go: block?.go, begins: block?.begins, gap: block?.gap, marks: block?.marks, does: block?.does, line, what, drills, metres, far, effort };
});

const one = ({ squad, pool, piece, number, distance }, here = runs[squad][pool]) => laid(data[squad], { squad, pool, minutes: 60 },
  { parts: [{ piece, number, distance, as: "m", title: piece, role: "", talk_s: 0, takes_s: 0 }] }, own, sources, here);

test("each is run with its times, in every pool, each lane group its own", () => {
  let others = 0;
  for (const size of sizes) {
    const words = `${size.squad} ${size.pool} ${size.piece} × ${size.number}`, { tapped, run: { parts: [part] } } = one(size);
    assert.deepEqual(tapped, [], words);
    assert.deepEqual(Object.keys(part.crews), Object.keys(size.crews), words);
    for (const crew of Object.keys(size.crews)) {
      assert.deepEqual(told(part, crew), told({ ...part, items: size.items, crews: size.crews }, crew), `${words} ${crew}`);
    }
    others += (data[size.squad].pieces.find(({ of, id, part: place = 0 }) => [`${of}/${id}`, `${of}/${id}/${place}`].includes(size.piece)).written ?? 1) === size.number ? 0 : 1;
  }
  assert.ok(others > sizes.length / 2, `${others} of ${sizes.length}`);
});

test("where what it is run by cannot be read, only what is as it is written has times, in its own pool", () => {
  const found = sizes.map((size) => [size, one(size, null)]);
  const timed = found.filter(([, { tapped }]) => !tapped.length).map(([size]) => size);
  assert.ok(timed.length && timed.length < sizes.length / 2);
  for (const { squad, pool, piece } of timed) {
    const [of, id] = piece.split("/"), [, , course] = data[squad].pools.find(([own]) => own === pool);
    assert.equal(sources[`${of === "set" ? "sets" : "practices"}/${id}`].course, course);
  }
  assert.ok(found.every(([, { tapped, isRead }]) => isRead === !tapped.length));
});
