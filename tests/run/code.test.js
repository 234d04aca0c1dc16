import assert from "node:assert/strict";
import { test } from "node:test";

import { PoolClock } from "../../site_src/scripts/run/clock.js";
import { readCode, versionOf, shortVersion, written } from "../../site_src/scripts/run/code.js";
import { changed, stateOf } from "../../site_src/scripts/run/replay.js";
import { count, crewName, laneList, left, swum } from "../../site_src/scripts/run/words.js";
import { chance, data, runOf, START } from "./helpers.js";

const POOLS = ["home", "long-course"];
const CHANGES = [
  { at: START + 4000, do: "go", who: null }, { at: START + 400_000, do: "more", who: "b", s: 10 }, { at: START + 420_000, do: "late", who: null, s: 120 },
  { at: START + 500_000, do: "cut", until: START + 3_000_000 }, { at: START + 520_000, do: "back", of: [2, 3] },
];

test("a run passes whole by its code, and five changes take a code that can be typed", () => {
  const run = runOf({ changes: CHANGES });
  const code = written(run, data, POOLS);
  assert.deepEqual(readCode(code, data, POOLS, START + 600_000), run);
  assert.ok(code.replaceAll(" ", "").length <= 40, code);
  assert.equal(versionOf(code), shortVersion(data.version));
});

test("every kind of change passes", () => {
  const deeds = [
    { do: "hold", who: "a" }, { do: "stop" }, { do: "on", how: "same" }, { do: "on", how: "part" }, { do: "fewer", who: "a" }, { do: "sit", who: "b" },
    { do: "meet", who: "a" }, { do: "round", who: null, n: 1, part: 1 }, { do: "round", who: "a", n: -1, part: 1 }, { do: "skip", part: 2 },
    { do: "late", who: "a", s: 600 }, { do: "end", who: null },
    ...["rounds", "parts", "end"].map((by) => ({ do: "cut", until: START + 95 * 60_000, by })),
  ];
  const run = runOf({ marks: [0, 30], onward: true, pool: null, changes: deeds.map((deed, k) => ({ at: START + k * 700_000, ...deed })) });
  assert.deepEqual(readCode(written(run, data, POOLS), data, POOLS, START + 12_000_000), run);
});

test("its own start and until when the water is theirs pass; a code of another form is told apart", () => {
  for (const [planned, until] of [[START - 30 * 60_000, START + 75 * 60_000], [null, null], [START + 3 * 3600_000, null], [START, START + 60_000]]) {
    const run = runOf({ planned, until });
    assert.deepEqual(readCode(written(run, data, POOLS), data, POOLS, START + 600_000), run);
  }
  assert.equal(versionOf("6KS4 C90Y DHYG G401 0FF"), -1);
});

test("look-alike letters, spaces and small letters are taken for what was meant; every other slip is refused", () => {
  const run = runOf({ changes: CHANGES });
  const code = written(run, data, POOLS);
  const sloppy = code.toLowerCase().replaceAll("0", "o").replaceAll("1", "l").replaceAll(" ", "-");
  assert.deepEqual(readCode(sloppy, data, POOLS, START + 600_000), run);
  const plain = code.replaceAll(" ", "");
  const by = chance(3);
  for (let k = 0; k < plain.length; k++) {
    const other = "0123456789ABCDEFGHJKMNPQRSTVWXYZ".replace(plain[k], "")[Math.floor(by() * 31)];
    assert.equal(readCode(plain.slice(0, k) + other + plain.slice(k + 1), data, POOLS, START + 600_000), null, `letter ${k}`);
    if (plain[k] !== plain[k + 1]) {
      const swapped = plain.slice(0, k) + (plain[k + 1] ?? "") + plain[k] + plain.slice(k + 2);
      assert.ok(k === plain.length - 1 || readCode(swapped, data, POOLS, START + 600_000) === null, `letters ${k}, ${k + 1}`);
    }
  }
});

test("another data version is told apart", () => {
  const code = written(runOf(), data, POOLS);
  const newer = { ...data, version: "fedcba9876543210" };
  assert.equal(readCode(code, newer, POOLS, START), null);
  assert.notEqual(versionOf(code), shortVersion(newer.version));
});

test("a run that was led by hand comes out the same on the other phone", () => {
  let [run, state] = [runOf(), stateOf(data, runOf())];
  for (const change of CHANGES) {
    const made = changed(data, run, state, change);
    ({ run, state } = made ?? { run, state });
  }
  const theirs = readCode(written(run, data, POOLS), data, POOLS, START + 700_000);
  assert.deepEqual(stateOf(data, theirs), state);
});

/** Two clocks that a test turns by hand. */
function clocks(day) {
  const own = { at: day, mono: 5000, day: () => own.at, monotonic: () => own.mono };
  own.pass = (ms) => { own.at += ms; own.mono += ms; };
  return own;
}

test("within a page the monotonic clock counts, and a changed time of day is asked about", () => {
  const own = clocks(START);
  const clock = new PoolClock(0, own);
  own.pass(5400_000);
  assert.equal(clock.now(), START + 5400_000);
  own.at += 900;
  assert.equal(clock.parted(), 0);
  own.at += 3600_000;
  assert.equal(clock.parted(), 3600_900);
  assert.equal(clock.now(), START + 5400_000);
  clock.keep();
  assert.equal(clock.parted(), 0);
  assert.equal(new PoolClock(clock.offset, own).now(), START + 5400_000); // over a reload, too
  own.at -= 10_000;
  clock.follow();
  assert.equal(clock.now(), START + 5390_000);
});

test("the hand at the top sets the offset by less than half a minute", () => {
  for (const [past, offset] of [[0, 0], [12_300, -12_300], [48_000, 12_000]]) {
    const own = clocks(START + past);
    const clock = new PoolClock(0, own);
    clock.atTheTop();
    assert.equal(clock.offset, offset);
    assert.equal(clock.now() % 60_000, 0);
  }
});

test("times in words", () => {
  assert.deepEqual([0, 59, 60, 754, 3750].map(count), ["0:00", "0:59", "1:00", "12:34", "1:02:30"]);
  assert.deepEqual([1, 1000, 1001].map(left), ["0:01", "0:01", "0:02"]);
  assert.deepEqual([52.4, 60, 59.96].map(swum), ["0:52.4", "1:00", "1:00"]);
  assert.equal(laneList([1, 2, 3, 5]), "1–3, 5");
  const named = [{ title: "Osprey, lanes 4 to 6", lanes: [] }, { title: "Reed, lane 3", lanes: [] }, { title: "Reed, lane 3", lanes: [3] }, { title: "x", lanes: [1, 2], half: "first" }];
  assert.deepEqual(named.map(crewName), ["Osprey 4–6", "Reed 3", "Lane 3", "Lanes 1–2, first"]);
});
