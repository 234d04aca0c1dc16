// What a made practice is called, and the times on its sheets, in words.

import assert from "node:assert/strict";
import test from "node:test";

import { eachTime, go, minutesOf } from "../../site_src/scripts/make/goes.js";
import { idOf } from "../../site_src/scripts/make/names.js";

test("a file is called by its title and the day, no longer than an id may be", () => {
  assert.equal(idOf("Heron: kick endurance, walls – turn and away", "2026-11-05"), "heron-kick-endurance-walls-turn-and-away-5-nov");
  assert.equal(idOf("osprey-socks", "2026-11-27"), "osprey-socks-27-nov");
  assert.equal(idOf("Süßwasser: übung", "2026-11-27"), "susswasser-ubung-27-nov");
  assert.equal(idOf("水泳", "2026-11-27"), "practice-27-nov");
  const long = idOf(`Heron: ${"kick and go ".repeat(6)}`, "2026-11-27");
  assert.match(long, /^heron(-kick|-and|-go)+-27-nov$/);
  assert.ok(long.length <= 60);
});

test("each rep has its own target, told until they come again", () => {
  assert.equal(eachTime(65), "1:05");
  assert.equal(eachTime([82.3, 79.8, 77.4, 75]), "1:22 / 1:20 / 1:17 / 1:15");
  assert.equal(eachTime([40, 35, 40, 35, 40]), "0:40 / 0:35");
  assert.equal(eachTime([40, 40, 35]), "0:40 / 0:40 / 0:35");
  assert.equal(eachTime([null, null]), "");
});

test("the minutes of rows add up to those of the whole", () => {
  const lasting = (/** @type {number[]} */ ...all) => minutesOf(all.map((takes) => ({ talk_s: 30, takes_s: takes - 30 })));
  assert.deepEqual(lasting(994, 784, 1160, 390, 239), [17, 13, 19, 6, 4]); // 59:27, of which each alone, rounded, makes 61
  assert.deepEqual(lasting(90, 31, 31, 40), [2, 1, 1, 1]); // half a minute is never none
  assert.deepEqual(lasting(600, 100, 20, 600), [10, 2, 1, 9]); // and is made up for
});

test("send-offs that differ are told once each", () => {
  assert.equal(go({ item: 0, reps: 4, every: [60, 60, 60, 45] }), "1:00 / 0:45");
});
