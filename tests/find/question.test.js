// What a question says beside its words: gear that is away, minutes, an age.

import assert from "node:assert/strict";
import test from "node:test";

import { questionOf } from "../../site_src/scripts/find/question.js";
import { awayIn } from "../../site_src/scripts/find/said-as.js";

/** @type {[string, string][]} */
const GEAR = [["pool-shoes", "Pool shoes"], ["water-cup", "Water cup"], ["fins", "Fins"]];
const asked = (words) => questionOf(words, { gear: GEAR, away: awayIn(GEAR), squads: [], lanes: 6 });

test("no water is land, but gear of that name is only gear that is away", () => {
  assert.equal(asked("no water tonight").words.includes("on land"), true);
  assert.equal(asked("no water up the nose").words.includes("on land"), false);
  for (const [words, id] of [["no pool shoes", "pool-shoes"], ["no water cup", "water-cup"], ["we forgot the fins", "fins"]]) {
    assert.deepEqual([...asked(words).without], [id], words);
    assert.equal(asked(words).words.includes("on land"), false, words);
  }
});

test("under ten is an age, but under ten minutes, metres or lanes is none", () => {
  for (const words of ["under 10s", "u10", "under 8"]) {
    assert.equal(asked(words).words, "children", words);
  }
  assert.equal(asked("kick under 10 minutes").minutes, 10);
  assert.equal(asked("under 3 lanes").lanes, 3);
  assert.equal(asked("u10 kick set").words, "children kick set");
  for (const words of ["under 8 kicks", "under 5 laps", "under 6 seconds"]) {
    assert.equal(asked(words).words.includes("children"), false, words);
  }
  assert.equal(asked("under 5 m").words.includes("children"), false);
});

test("a game of the breath or under water weighs the danger, and the question stays as it is asked", () => {
  const dared = [
    "hold breath game", "who can hold their breath longest", "holding breath competition for kids", "no breath 25", "no breath for 25 m", "no breath for a whole length", "underwater contest",
  ];
  for (const words of dared) {
    assert.equal(asked(words).kinds.has("danger"), true, words);
    assert.equal(words.endsWith(asked(words).words.trim()), true, words); // "no" is heard of gear
  }
  for (const words of ["who can explain underwater rules", "underwater rule in competition", "no breath 3 strokes into the turn", "underwater dolphin", "holds his breath"]) {
    assert.equal(asked(words).kinds.has("danger"), false, words);
    assert.equal(words.endsWith(asked(words).words.trim()), true, words);
  }
});

test("what hurts is sore, in any words", () => {
  for (const words of ["bad knee", "dodgy knee", "knee hurts", "knee is playing up"]) {
    assert.equal(asked(words).words.trim(), "sore knee", words);
  }
  for (const words of ["bad habit", "bad hip position", "bad arm position", "bad back kick", "bad foot position", "bad legs"]) {
    assert.equal(asked(words).words, words);
  }
});

test("a practice that is to be made is no practice of that name", () => {
  for (const words of ["build my own practice", "plan a session", "write a new workout"]) {
    assert.equal(asked(words).words, "make a practice", words);
  }
  assert.equal(asked("turns session").words, "turns session");
});

test("a swimmer with something is asked for as a need", () => {
  for (const words of ["swimmer with one leg", "a boy who has asthma", "kid in a wheelchair"]) {
    assert.deepEqual([...asked(words).kinds], ["need"], words);
  }
  assert.equal(asked("kids with fins").kinds.has("need"), false);
  assert.equal(asked("one arm fly").kinds.has("need"), false);
});
