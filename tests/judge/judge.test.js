// Judge it: what the page draws is what the program drew; what it asks can be answered; who is ready.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import test from "node:test";

Object.assign(globalThis, {
  document: { documentElement: { dataset: { root: "./" } } },
  location: { href: "https://club.example/judge.html", pathname: "/judge.html" },
  localStorage: { getItem: () => null, setItem: () => undefined },
});
const { NOTHING, alike, isAtWall, next } = await import("../../site_src/scripts/judge/asking.js");
const { elements, placeOf } = await import("../../site_src/scripts/judge/drawing.js");
const { isReady, readyWords } = await import("../../site_src/scripts/judge/results.js");

/** @type {any} */
const { data, drawn, tolerance } = JSON.parse(readFileSync(process.env.JUDGED ?? "", "utf8"));
const NUMBER = /-?\d+(?:\.\d+)?/g;

/** Chance that a seed fixes (mulberry32, public domain). @param {number} seed */
const chanceOf = (seed) => () => {
  seed = (seed + 0x6d2b79f5) | 0;
  let mixed = Math.imul(seed ^ (seed >>> 15), 1 | seed);
  mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
  return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
};

test("what lies between is drawn as the program draws it, within half a unit", () => {
  for (const { at, along, parts } of drawn) {
    const found = elements(data.drawings[at], data.shapes, along);
    assert.equal(found.length, parts.length);
    for (const [place, part] of parts.entries()) {
      assert.equal(found[place].replace(NUMBER, "#"), part.replace(NUMBER, "#"));
      const [own, other] = [found[place], part].map((text) => (text.match(NUMBER) ?? []).map(Number));
      assert.ok(own.every((value, number) => Math.abs(value - other[number]) <= 0.66), `${data.drawings[at].fault} ${along}`);
    }
  }
});

test("a thousand pictures: one in four is right; what is wrong is over its tolerance and 8 px, what is right within it", () => {
  const chance = chanceOf(17);
  const seen = { right: 0, deck: 0, mirrored: 0 };
  /** @type {Set<string>} */
  const faults = new Set();
  /** @type {string[]} */
  let lately = [];
  for (let picture = 0; picture < 1000; picture += 1) {
    const asked = next(data, chance, lately);
    lately = [...lately, asked.drawing.fault].slice(-6);
    const { shift, scale, least } = tolerance[data.drawings.indexOf(asked.drawing)];
    const off = Math.abs(asked.along) * shift;
    if (asked.wrong) {
      assert.ok(off >= least && off * scale >= 8, `${asked.drawing.fault}: ${off * scale} px`);
    } else {
      assert.ok(off <= least, `${asked.drawing.fault}: ${off}`);
    }
    for (const choices of [asked.see, asked.first, asked.say]) {
      assert.equal(new Set(choices.map(({ words }) => words)).size, choices.length, JSON.stringify(choices));
      assert.ok(choices.length >= 3);
      assert.equal(choices.filter(({ right }) => right).length, 1);
    }
    assert.equal(asked.see.find(({ right }) => right)?.words === NOTHING, !asked.wrong);
    assert.ok(asked.say.filter(({ words }) => asked.fault.words.includes(words)).length === 1);
    faults.add(asked.drawing.fault);
    seen.right += Number(!asked.wrong);
    seen.deck += Number(asked.drawing.deck);
    seen.mirrored += Number(asked.mirrored);
  }
  assert.equal(faults.size, Object.values(data.faults).filter((fault) => /** @type {any} */ (fault).words.length).length);
  assert.ok(!faults.has("moves-before-the-signal"), "a still picture shows no time");
  assert.ok(Math.abs(seen.right - 250) < 70 && Math.abs(seen.mirrored - 500) < 80 && Math.abs(seen.deck - 500) < 80, JSON.stringify(seen)); // 5 standard deviations
});

test("a swimmer in mid-pool is not said to do what is done at a wall, nor the other way round", () => {
  const chance = chanceOf(18);
  const ids = Object.fromEntries(Object.entries(data.faults).map(([id, fault]) => [/** @type {any} */ (fault).title, id]));
  const walls = Object.values(ids).filter((id) => isAtWall(data, id));
  assert.ok(walls.length > 3 && walls.length < Object.keys(ids).length / 2, String(walls));
  for (let picture = 0; picture < 300; picture += 1) {
    const { drawing, see } = next(data, chance, []);
    for (const { words } of see.filter((choice) => choice.words !== NOTHING)) {
      assert.equal(walls.includes(ids[words]), walls.includes(drawing.fault), `${drawing.fault}: ${words}`);
    }
  }
});

test("what is asked of a picture can be seen from where it is seen from, and no answer is seen in it but its own", () => {
  const chance = chanceOf(19);
  const ids = Object.fromEntries(Object.entries(data.faults).map(([id, fault]) => [/** @type {any} */ (fault).title, id]));
  for (let picture = 0; picture < 300; picture += 1) {
    const { drawing, fault, see } = next(data, chance, []);
    const others = see.map(({ words }) => ids[words]).filter((own) => own && own !== drawing.fault);
    assert.equal(others.length, 2);
    for (const own of others) {
      assert.ok(data.drawings.some((/** @type {any} */ other) => other.fault === own && other.above === drawing.above), `${drawing.fault}: ${own}`);
      assert.equal(data.faults[own].body[0], fault.body[0]);
      assert.ok(!fault.shows_too.includes(own));
    }
    assert.ok(alike(data, drawing.fault, drawing).length >= 2);
  }
});

test("the place goes with the body, from right to wrong", () => {
  for (const drawing of data.drawings) {
    const [[x, y], [u, v]] = drawing.where;
    assert.deepEqual(placeOf(drawing, 0), [x, y]);
    assert.ok(Math.hypot(placeOf(drawing, 1)[0] - u, placeOf(drawing, 1)[1] - v) < 1e-6);
    const [there, deep] = placeOf(drawing, drawing.least);
    assert.ok(Math.abs(Math.hypot(there - x, deep - y) - drawing.least * Math.hypot(u - x, v - y)) < 1e-6);
  }
});

test("ready: eight of ten on two days, one at least two days after the other", () => {
  const rounds = (/** @type {[string, number][]} */ ...all) => all.map(([on, right]) => ({ on, right }));
  assert.equal(isReady(rounds(["2026-11-27", 8], ["2026-11-29", 9])), true);
  assert.equal(isReady(rounds(["2026-11-27", 8], ["2026-11-28", 10])), false);
  assert.equal(isReady(rounds(["2026-11-27", 10], ["2026-11-27", 10])), false);
  assert.equal(isReady(rounds(["2026-11-27", 7], ["2026-11-29", 10])), false);
  assert.equal(isReady(rounds(["2026-10-24", 8], ["2026-10-26", 8])), true); // over the change of the clocks
  assert.equal(isReady([]), false);
  assert.match(readyWords(rounds(["2026-11-27", 8])), /Not ready yet/);
});
