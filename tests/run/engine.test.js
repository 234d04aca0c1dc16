import assert from "node:assert/strict";
import { readdirSync, readFileSync } from "node:fs";
import { test } from "node:test";

import { advance, begin, setOff } from "../../site_src/scripts/run/engine.js";
import { take } from "../../site_src/scripts/run/changes.js";
import { forecast } from "../../site_src/scripts/run/forecast.js";
import { offers, tried, waysToCut } from "../../site_src/scripts/run/offers.js";
import { stepsOf } from "../../site_src/scripts/run/steps.js";
import { at, changed, standing, stateOf } from "../../site_src/scripts/run/replay.js";
import { rows } from "../../site_src/scripts/run/view.js";
import { chance, data, MARKS, runOf, START } from "./helpers.js";

const S = 1000;

/** The times at which the parts of a run file begin and end when its blocks are laid end to end from 0, in seconds. */
function laid(file) {
  const crews = file.crews.map(({ key }) => key).filter((key) => file.parts.some((part) => part.crews[key]));
  const state = begin(file, { crews, marks: [], onward: true, begun: 0, changes: [] });
  for (const crew of state.crews) {
    const part = file.parts[crew.left[0].part];
    if (part.stage === file.parts[0].stage) {
      setOff(crew, part.starts_s * S);
    }
  }
  advance(state, 5 * 3600 * S);
  const [begins, ends] = [{}, {}];
  for (const crew of state.crews) {
    crew.done.forEach(({ step, at: began }) => (begins[`${crew.key} ${step.part}`] ??= began / S));
    crew.ended.forEach(({ part, at: ended }) => (ends[`${crew.key} ${part}`] = ended / S));
  }
  return { begins, ends };
}

/** Each part's end is rounded to a tenth, and the parts after it begin there. */
const ROUNDED_S = 0.35;

/** @param {object} file a run file in which every length is known */
function assertLaid(file) {
  const { begins, ends } = laid(file);
  for (const [p, part] of file.parts.entries()) {
    for (const [key, own] of Object.entries(part.crews)) {
      assert.ok(Math.abs(ends[`${key} ${p}`] - own.ends_s) < ROUNDED_S, `${file.id}: ${key} ends part ${p} at ${ends[`${key} ${p}`]}, planned ${own.ends_s}`);
    }
    const first = Math.min(...Object.keys(part.crews).map((key) => begins[`${key} ${p}`]));
    assert.ok(Math.abs(first - part.starts_s) < ROUNDED_S, `${file.id}: part ${p} begins at ${first}, planned ${part.starts_s}`);
  }
}

test("blocks laid end to end give the times of the plan", () => assertLaid(data));

test("and so they do in every file of a site", { skip: !process.env.RUN_FILES }, () => {
  const files = readdirSync(process.env.RUN_FILES).filter((name) => name.endsWith(".json"));
  const known = files.map((name) => JSON.parse(readFileSync(`${process.env.RUN_FILES}/${name}`, "utf-8")))
    .filter((file) => !file.parts.some((part) => part.from || Object.values(part.crews).some(({ from, ends_s }) => from || ends_s === undefined)));
  assert.ok(known.length > 0);
  known.forEach(assertLaid);
});

test("parts begin at Go, at the next full mark", () => {
  const { state } = changed(data, runOf(), stateOf(data, runOf()), { at: START + 61 * S, do: "go" });
  assert.deepEqual(state.crews.map(({ t }) => t - START), [75 * S, 75 * S]);
  const later = changed(data, runOf(), stateOf(data, runOf()), { at: START + 73 * S, do: "go" }); // too near to call
  assert.equal(later.state.crews[0].t - START, 90 * S);
  const atTop = runOf({ marks: [0] });
  assert.equal(changed(data, atTop, stateOf(data, atTop), { at: START + S, do: "go" }).state.crews[0].t - START, 60 * S);
});

test("a part waits for Go, and for the group that is not done", () => {
  let [run, state] = [runOf(), stateOf(data, runOf())];
  ({ run, state } = changed(data, run, state, { at: START, do: "go" }));
  const there = at(state, START + 620 * S);
  assert.deepEqual(rows(there).map(({ look }) => look), ["ends", "counts"]);
  assert.deepEqual(rows(there).map(({ isNext }) => isNext), [false, true]);
  assert.deepEqual(rows(there).map(({ in_ms }) => in_ms), [55 * S, 30 * S]);
  assert.equal(changed(data, run, state, { at: START + 700 * S, do: "go" }), null);
  assert.deepEqual(rows(at(state, START + 700 * S)).map(({ look }) => look), ["waits", "ends"]);
  assert.deepEqual(rows(at(state, START + 3600 * S)).map(({ look }) => look), ["ready", "ready"]);
});

test("90 minutes, drawn at odd moments and once after 20 frozen minutes, move no send-off", () => {
  const long = { ...data, parts: [{ ...data.parts[1], stage: 0, crews: { b: { blocks: [{ item: 1, reps: 90, every: 60, target: 30, rest: 30, home: 40 }] } } }], cuts: [] };
  const run = runOf({ crews: ["b"] });
  let { state } = changed(long, run, stateOf(long, run), { at: START + 0.4 * S, do: "go" });
  const first = START + 15 * S;
  const by = chance(1);
  for (let moment = START + S; moment < first + 5400 * S; moment += moment > START + 1800 * S && moment < START + 1810 * S ? 1200 * S : 900 + 300 * by()) {
    state = at(state, moment);
    const [row] = rows(state);
    if (row.look === "counts") {
      const due = first + Math.ceil(Math.max(0, moment - first + 0.001) / 60_000) * 60_000;
      assert.equal(moment + row.in_ms, due);
    }
  }
  assert.deepEqual(state.crews[0].done.map((begun, k) => begun.at - first - k * 60_000), Array(90).fill(0));
});

/** What the build gives from each step to the next. */
const PLAN = new Map(["a", "b"].flatMap((key) => stepsOf(data, key).map(({ id, ms }) => [key + id, ms])));

const noMatter = () => {};

/** A run with changes by chance: what may be offered, holds, stops, going on, and takings back. */
function byChance(seed, look = noMatter, file = data, crews = ["a", "b"]) {
  const by = chance(seed);
  let run = runOf({ onward: by() < 0.5, crews });
  let state = stateOf(file, run);
  let now = START;
  for (let k = 0; k < 40; k++) {
    now += Math.floor(by() * 120 * S);
    const there = at(state, now);
    const who = by() < 0.4 ? null : crews[Math.floor(by() * crews.length)];
    const standingNow = standing(run);
    const wanted = there.stopped !== null
      ? [{ do: "on", how: ["same", "next", "part"][Math.floor(by() * 3)] }]
      : [{ do: "go", who }, { do: "go", who }, { do: "hold", who }, { do: "stop" }, { do: "cut", until: now + 600 * S, ...(k % 4 ? { by: ["rounds", "parts", "end"][k % 4 - 1] } : {}) },
        ...offers(there, who).map(({ change }) => change), ...(standingNow.length ? [{ do: "back", of: [standingNow.at(-1)] }] : [])];
    const change = { ...wanted[Math.floor(by() * wanted.length)], at: now };
    const made = changed(file, run, state, change);
    look({ before: there, change, made, preview: () => (change.do === "back" ? null : tried(there, change)) });
    if (made) {
      ({ run, state } = made);
    }
  }
  return { run, state };
}

/** Runs by chance with what was seen at each change: gone through once for all tests. */
const seen = new Map();

function recorded(seed) {
  if (!seen.has(seed)) {
    const steps = [];
    seen.set(seed, { ...byChance(seed, (step) => steps.push(step)), steps });
  }
  return seen.get(seed);
}

test("nothing that has begun is ever moved or undone, and no send-off comes sooner than planned", () => {
  let number = 0;
  for (let seed = 1; seed <= 30; seed++) {
    const { state, steps } = recorded(seed);
    steps.filter(({ made }) => made).forEach(({ before, change, made }) => {
      number++;
      made.state.crews.forEach((crew, k) => {
        const done = before.crews[k].done;
        const kept = crew.done.slice(0, done.length).map(({ step, at: began }) => [step.id, began]);
        const wanted = change.do === "back" && crew.done.length < done.length ? kept : done.map(({ step, at: began }) => [step.id, began]);
        assert.deepEqual(kept, wanted, `seed ${seed}: ${JSON.stringify(change)}`);
      });
    });
    for (const { key, done } of state.crews) {
      const again = done.filter(({ undone }) => undone).map(({ step }) => `${step.part} ${step.item}`);
      assert.ok(again.every((item) => again.filter((other) => other === item).length <= 2), `seed ${seed}: ${again}`);
      for (let k = 1; k < done.length; k++) {
        const [earlier, later] = [done[k - 1], done[k]];
        if (earlier.step.part === later.step.part && earlier.step.ms !== null && !earlier.undone) {
          const planned = PLAN.get(key + earlier.step.id.split("+")[0]);
          assert.ok(later.at - earlier.at >= planned, `seed ${seed}: ${later.step.id} after ${later.at - earlier.at}, planned ${planned}`);
        }
      }
    }
  }
  assert.ok(number > 500, `${number} changes made`);
});

test("a list of changes gives the same state on another phone, and what was shown before a change is what comes", () => {
  for (let seed = 1; seed <= 20; seed++) {
    const { run, state, steps } = recorded(seed);
    steps.filter(({ made, change }) => made && change.do !== "back").forEach(({ made, preview, change }) => {
      assert.equal(forecast(made.state).ends, preview().ends, `seed ${seed}: ${JSON.stringify(change)}`);
    });
    const moment = START + 7200 * S;
    assert.deepEqual(at(stateOf(data, JSON.parse(JSON.stringify(run))), moment), at(state, moment), `seed ${seed}`);
  }
});

test("stop stands everything in every state, and going on is at a full mark", () => {
  const [modes, made] = [new Set(), { same: 0, next: 0, part: 0 }];
  for (let seed = 1; seed <= 40; seed++) {
    const { run, state } = recorded(seed);
    const there = at(state, state.now + 31 * S);
    if (there.stopped !== null) {
      continue;
    }
    there.crews.forEach(({ mode }) => modes.add(mode));
    const stopped = changed(data, run, state, { at: there.now, do: "stop" });
    assert.ok(stopped, `seed ${seed}`);
    const long = at(stopped.state, there.now + 900 * S);
    assert.deepEqual(long.crews.map(({ done }) => done.length), there.crews.map(({ done }) => done.length));
    for (const how of ["same", "next", "part"]) {
      const on = changed(data, stopped.run, stopped.state, { at: there.now + 900 * S, do: "on", how });
      assert.ok(on || how !== "next", `seed ${seed} ${how}`);
      made[how] += on ? 1 : 0;
      for (const crew of (on?.state.crews ?? []).filter(({ mode, left }) => mode === "running" && left[0]?.kind === "rep")) {
        assert.ok(MARKS.includes((crew.t / S) % 60), `seed ${seed} ${how} ${crew.t}`);
      }
    }
    const end = changed(data, stopped.run, stopped.state, { at: there.now + 900 * S, do: "end" });
    assert.ok(end === null || end.state.crews.every(({ mode }) => mode === "over"));
  }
  assert.deepEqual(modes, new Set(["ready", "running", "held", "over"]));
  assert.ok(made.same > 5 && made.part > 2 && made.same < made.next, JSON.stringify(made));
});

test("a lane that is slowed meets the others again", () => {
  let [run, state] = [runOf(), stateOf(data, runOf())];
  const make = (change) => {
    const made = changed(data, run, state, change);
    assert.ok(made, JSON.stringify(change));
    ({ run, state } = made);
  };
  make({ at: START, do: "go" });
  make({ at: START + 400 * S, do: "more", who: "b", s: 10 });
  const b = at(state, START + 700 * S).crews[1];
  assert.deepEqual(b.done.map((begun) => begun.at - START), [15, 395, 480, 575, 670].map((s) => s * S));
  assert.equal(b.done.at(-1).step.rest, 29);
  assert.equal(at(state, START + 700 * S).crews[0].ended[0].at, START + 675 * S); // the other group's clock is its own
  const offered = offers(at(state, START + 500 * S), "b").find(({ change }) => change.do === "meet");
  assert.ok(offered);
  make({ at: START + 500 * S, do: "meet", who: "b" });
  assert.deepEqual(rows(at(state, START + 900 * S)).map(({ look }) => look), ["ready", "ready"]);
  assert.equal(at(state, START + 900 * S).crews[1].done.length, 3);
});

test("a sat-out rep leaves the clock as it is; rounds keep their own targets", () => {
  let [run, state] = [runOf(), stateOf(data, runOf())];
  ({ run, state } = changed(data, run, state, { at: START, do: "go" }));
  const plain = at(state, START + 1200 * S).crews[0].done.map(({ at: began }) => began);
  const sat = changed(data, run, state, { at: START + 400 * S, do: "sit", who: "a" });
  assert.deepEqual(at(sat.state, START + 1200 * S).crews[0].done.map(({ at: began }) => began), plain);
  assert.equal(at(sat.state, START + 1200 * S).crews[0].done.filter(({ step }) => step.sat).length, 1);
  const fewer = changed(data, run, state, { at: START + 400 * S, do: "fewer", who: "a" });
  assert.deepEqual(at(fewer.state, START + 1200 * S).crews[0].done.map(({ step }) => step.target), [290, 62, 60, 58]);
});

test("a round more is the build's round once more, a round fewer leaves what has begun", () => {
  const ready = stateOf(data, runOf());
  const more = tried(ready, { at: START, do: "round", n: 1, part: 1 });
  const fewer = tried(ready, { at: START, do: "round", n: -1, part: 1 });
  const plain = forecast(ready).ends;
  assert.equal(more.ends - plain, 255 * S); // 90 + 2 × 70 + 20 = 250, and to the next full mark
  assert.equal(plain - fewer.ends, 60 * S); // then the other group is the last
  const two = [1, 2].map(() => ({ at: START, do: "round", n: -1, part: 1 }));
  take(ready, two[0]);
  assert.equal(tried(ready, two[1]), null); // never below the least
});

test("cut to an end takes what the build lists, in order, and no more than needed", () => {
  const state = stateOf(data, runOf());
  const { ends } = forecast(state);
  const one = tried(state, { at: START, do: "cut", until: ends - 60 * S });
  assert.deepEqual(one.cuts, [{ part: 1, do: "round" }]);
  assert.ok(one.ends <= ends - 60 * S);
  const far = { at: START, do: "cut", until: ends - 400 * S };
  assert.equal(tried(state, far).cuts.length, 1); // never the wind-down
  const other = structuredClone(data);
  other.parts[2].word = "main";
  assert.equal(tried(stateOf(other, runOf()), far).cuts.length, 2);
  assert.equal(tried(state, { at: START, do: "cut", until: ends }), null);
});

test("an end is met in a few ways, each of which keeps the warm-up and a wind-down", () => {
  const file = structuredClone(data);
  file.parts[0].skip = true;
  file.parts[2].skip = true;
  file.parts[2].crews.a.blocks = [{ item: 0, reps: 4, every: 120, home: 90, fewer: 1, fewest: 2 }];
  file.parts[2].crews.b.blocks = file.parts[2].crews.a.blocks;
  const state = stateOf(file, runOf());
  const { ends } = forecast(state);
  const ways = (s) => waysToCut(state, ends - s * S).map(({ change, cuts, ends: then, less_m: less }) => ({ by: change.by, cuts, saves: (ends - then) / S, less }));
  const main = { part: 1, do: "skip" };
  const reps = { part: 2, do: "reps", run: "2.0@" };
  assert.deepEqual(ways(60), [
    { by: "rounds", cuts: [{ part: 1, do: "round" }], saves: 60, less: 50 },
    { by: "end", cuts: [reps], saves: 120, less: 200 },
    { by: "parts", cuts: [main], saves: 660 + 90, less: 250 }, // with its talk
  ]); // what takes least first
  const both = ways(300); // one round may go, and two of four easy reps
  assert.deepEqual(both.map(({ by, saves }) => [by, saves]), [["parts", 750], ["end", 300], ["rounds", 60]]);
  assert.deepEqual(both[1].cuts, [{ part: 1, do: "round" }, reps, reps]); // no more rounds than the wind-down asks for
  const none = ways(3000); // not enough: the most first, and still no part that a practice begins or ends with
  assert.ok(none.every(({ cuts }) => cuts.every((cut) => cut.do !== "skip" || cut.part === 1)), JSON.stringify(none));
  assert.deepEqual(waysToCut(state, ends), []);
});

test("the shown end is the same before Go and after it, unless talk of the plan is left out, and late counts from now", () => {
  const end = (run, s) => forecast(at(stateOf(data, run), START + s * S)).ends - START;
  const gone = (run, s) => forecast(changed(data, run, stateOf(data, run), { at: START + s * S, do: "go" }).state).ends - START;
  const run = runOf();
  assert.deepEqual([end(run, 0) - gone(run, 0)], [105 * S]); // 2 min of talk, less 15 s to the mark
  for (const s of [120, 130, 361, 900]) {
    assert.equal(end(run, s), gone(run, s), `${s} s after the start`);
  }
  const late = runOf({ begun: START + 360 * S });
  const off = runOf({ begun: START + 360 * S, planned: null });
  for (const own of [late, off]) {
    assert.equal(end(own, 360), gone(own, 360));
    const later = tried(at(stateOf(data, own), START + 360 * S), { at: START + 360 * S, do: "late", who: null, s: 300 });
    assert.equal(later.ends - START - end(own, 360), 300 * S - 15 * S); // the mark at 375 s; now the one at 660
  }
});

test("a part of unknown length waits for a tap and says from when", () => {
  const unknown = structuredClone(data);
  unknown.parts[0].crews.a.blocks[1].every = null;
  let [run, state] = [runOf({ crews: ["a"] }), null];
  state = stateOf(unknown, run);
  assert.ok(forecast(state).isFrom);
  ({ run, state } = changed(unknown, run, state, { at: START, do: "go" }));
  const there = at(state, START + 2000 * S);
  assert.equal(rows(there)[0].look, "tap");
  ({ run, state } = changed(unknown, run, state, { at: START + 2000 * S, do: "go" }));
  assert.equal(rows(at(state, START + 2001 * S))[0].look, "ready");
});

test("changes by chance keep the rules in every file of a site, too", { skip: !process.env.RUN_FILES }, () => {
  const files = readdirSync(process.env.RUN_FILES).filter((name) => name.endsWith(".json"));
  for (const [seed, name] of files.entries()) {
    const file = JSON.parse(readFileSync(`${process.env.RUN_FILES}/${name}`, "utf-8"));
    const crews = file.crews.map(({ key }) => key).filter((key) => file.parts.some((part) => part.crews[key])).slice(0, 3);
    const plan = new Map(crews.flatMap((key) => stepsOf(file, key).map(({ id, ms }) => [key + id, ms])));
    const { state } = byChance(seed, noMatter, file, crews);
    for (const { key, done } of state.crews) {
      for (let k = 1; k < done.length; k++) {
        const [earlier, later] = [done[k - 1], done[k]];
        const planned = plan.get(key + earlier.step.id.split("+")[0]);
        const isWithin = earlier.step.part === later.step.part && planned !== null && !earlier.undone;
        assert.ok(!isWithin || later.at - earlier.at >= planned, `${name}: ${later.step.id} after ${later.at - earlier.at}, planned ${planned}`);
      }
    }
  }
});

/** A run stopped some seconds after the start, and what going on makes of it 60 s later; null where that is not offered. */
function afterStop(file, s, how, before = [], wait_s = 60) {
  let [run, state] = [runOf({ crews: ["b"] }), null];
  state = stateOf(file, run);
  for (const change of [{ at: START, do: "go" }, ...before, { at: START + s * S, do: "stop" }]) {
    ({ run, state } = changed(file, run, state, change));
  }
  return changed(file, run, state, { at: START + (s + wait_s) * S, do: "on", how });
}

test("the same rep again comes after its planned rest, counted from the stop", () => {
  // group b: 300 at 15 s, then 4 × 50 at 395 s every 85 s with 19 s rest
  const soon = afterStop(data, 400, "same", [], 3).state.crews[0];
  assert.equal(soon.t - START, 420 * S); // 400 + 19 = 419, and to the next full mark
  assert.deepEqual([soon.left[0].rep, soon.done.at(-1).undone], [0, true]);
  const home = afterStop(data, 478, "same", [], 1).state.crews[0];
  assert.equal(home.t - START, 495 * S); // home already: no sooner than the next rep would have gone at 480, and 482 is past the mark
});

test("a rep is swum again as often as the build says", () => {
  const file = structuredClone(data);
  const block = file.parts[0].crews.b.blocks[1];
  block.again = 1;
  const once = afterStop(file, 400, "same");
  assert.ok(once.state.crews[0].done.at(-1).undone);
  const before = [{ at: START + 400 * S, do: "stop" }, { at: START + 460 * S, do: "on", how: "same" }]; // the next mark is 465
  assert.equal(afterStop(file, 470, "same", before), null);
  assert.ok(afterStop(file, 470, "next", before));
  block.again = 0;
  assert.equal(afterStop(file, 400, "same"), null);
  delete block.again;
  assert.ok(afterStop(file, 470, "same", before));
});

test("the next part is gone to only where what is left may go", () => {
  const next = afterStop(data, 400, "part").state.crews[0];
  assert.deepEqual([next.left[0].kind, next.left[1].part], ["end", 1]);
  const file = structuredClone(data);
  file.parts[0].crews.b.meet = false;
  assert.equal(afterStop(file, 400, "part"), null);
  file.parts[0].skip = true;
  assert.ok(afterStop(file, 400, "part"));
  const alone = { ...data, parts: data.parts.slice(0, 1) };
  assert.equal(afterStop(alone, 400, "part"), null); // that is the end
});
