// A composed practice, laid by the page, against the run that the build makes of the same practice as an entry.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import test from "node:test";

import { swumOf } from "../../site_src/scripts/make/amounts.js";
import { gravest, laid } from "../../site_src/scripts/make/lay.js";
import { stepsOf } from "../../site_src/scripts/run/steps.js";

/** @type {any} */
const { data, sources, cases, runs } = JSON.parse(readFileSync(process.env.CASES ?? "", "utf8"));
const WORDS = { w: "Warm-up", s: "Skill", m: "Main set", n: "Main set", e: "Main set", c: "Cool-down" };
const own = { id: "x", title: "X", page: "", start: "17:30", gravities: ["Life", "Injury", "Ache"], words: WORDS };

/** What is done when, of one part for one crew. */
const told = (part, crew) => stepsOf({ parts: [part] }, crew).map(({ kind, ms, target, aim, rest, home, wave, waves, item, wait }) =>
  ({ kind, ms, target, aim, rest, home, wave, waves, what: item === undefined ? null : [part.items[item].drills, part.items[item].metres], wait: wait && [wait.wait, wait.why] }));

/** The same, where times of yards and of reps more or fewer may part by a tenth of a second, to which they are rounded. */
function assertAlike(mine, theirs, words) {
  const split = (steps) => steps.flatMap(({ ms, target, aim, rest, home }) => [ms, home, ...[target, aim, rest].map((own) => typeof own === "number" ? own * 1000 : own)]);
  const [own, other] = [split(mine), split(theirs)];
  const rest = (steps) => steps.map((step) => ({ ...step, ms: 0, target: 0, aim: 0, rest: 0, home: 0 }));
  assert.deepEqual(rest(mine), rest(theirs), words);
  own.forEach((one, k) => assert.ok(one === other[k] || Math.abs(one - other[k]) < 101, `${words} ${one} ${other[k]}`));
}

test("parts that are run with times are run with those of the build", () => {
  let [timed, scaled, drills, tapped] = [0, 0, 0, 0];
  const elsewhere = { timed: 0, tapped: 0 };
  for (const { id, squad, request, proposal, run } of cases) {
    const made = laid(data[squad], request, proposal, own, sources, runs[squad]);
    assert.deepEqual(made.run.crews.map(({ key, lanes }) => [key, lanes]), run.crews.map(({ key, lanes }) => [key, lanes]), id);
    proposal.parts.forEach((part, k) => {
      const [mine, theirs] = [made.run.parts[k], run.parts[k]];
      assert.equal(mine.word, theirs.word);
      assert.ok(Math.abs(mine.starts_s - theirs.starts_s) < 6, `${id} ${part.piece} ${mine.starts_s} ${theirs.starts_s}`);
      if (made.tapped.includes(part)) {
        tapped += request.pool === "home" ? 1 : 0; // where sets and parts have their times
        elsewhere.tapped += request.pool === "home" ? 0 : 1;
        return;
      }
      const unit = request.pool === "yards-meet" ? "yd" : "m";
      const far = Object.keys(mine.crews).map((crew) => swumOf(mine, crew, unit));
      assert.equal(Math.max(...far), part.distance, `${id} ${part.piece} × ${part.number} ${far}`);
      for (const crew of Object.keys(theirs.crews)) {
        const words = `${id} ${part.piece} × ${part.number} ${crew}`;
        if (request.pool === "home") {
          assert.deepEqual(told(mine, crew), told(theirs, crew), words);
        } else {
          assertAlike(told(mine, crew), told(theirs, crew), words);
        }
      }
      timed += request.pool === "home" ? 1 : 0;
      elsewhere.timed += request.pool !== "home" && !part.piece.startsWith("drill/") ? 1 : 0;
      drills += part.piece.startsWith("drill/") ? 1 : 0;
      scaled += part.of && data[squad].pieces.find((piece) => piece.title === part.title)?.written !== part.number ? 1 : 0;
    });
  }
  assert.ok(timed && scaled && drills, `${timed} ${scaled} ${drills}`);
  assert.ok(timed > tapped, `${timed} ${tapped}`);
  assert.ok(elsewhere.timed > 3 * elsewhere.tapped, JSON.stringify(elsewhere));
  console.log(JSON.stringify({ timed, tapped, elsewhere }));
});

test("nothing is offered that was not held against the rules of this practice", () => {
  for (const { squad, request, proposal } of cases) {
    const { run } = laid(data[squad], request, proposal, own, sources);
    assert.deepEqual(run.cuts, []);
    for (const part of run.parts) {
      const all = JSON.stringify(part);
      assert.ok(!/"(least|most|copies|fewer|fewest|meet|skip)":/.test(all), all);
      assert.ok(/"again":0/.test(all));
    }
  }
});

test("a part in a pool of another length, or of which nothing is kept, is run by taps", () => {
  const { squad, request, proposal } = cases[0];
  const none = laid(data[squad], request, proposal, own, {});
  const sets = proposal.parts.filter(({ piece }) => !piece.startsWith("drill/"));
  assert.deepEqual(none.tapped, sets);
  const steps = stepsOf({ ...none.run, version: "" }, none.run.crews[0].key);
  assert.ok(steps.some(({ ms, whole }) => ms === null && whole));
});

test("more swimmers in a lane are home later", () => {
  const { squad, request, proposal } = cases[0];
  const [id, , lanes, heads] = data[squad].squad.groups[0];
  const usual = laid(data[squad], request, proposal, own, sources).run;
  const fuller = laid(data[squad], { ...request, heads: { [id]: heads + lanes } }, proposal, own, sources).run;
  const lastHome = (run) => stepsOf(run, id).filter(({ kind, home, waves }) => kind === "rep" && home && waves === 1).map(({ home, block }) => [home, block.gap]);
  const later = lastHome(fuller);
  assert.ok(later.length);
  lastHome(usual).forEach(([home, gap], k) => typeof gap === "number" && assert.equal(later[k][0], home + 1000 * gap));
});

test("dangers stand once, the gravest first, with what is done about them where anyone says it", () => {
  const found = gravest([[{ title: "b", gravity: "Ache" }, { title: "a", gravity: "Life" }], [{ title: "b", gravity: "Ache", control: "so" }, { title: "c" }]], own.gravities);
  assert.deepEqual(found.map(({ title, control }) => [title, control]), [["a", undefined], ["b", "so"], ["c", undefined]]);
});

test("of a practice whose part stands in another, the dangers of its other parts are not told", () => {
  let [fewer, seen] = [0, 0];
  for (const { squad, request, proposal } of cases) {
    const { run } = laid(data[squad], request, proposal, own, sources, runs[squad]);
    const titles = new Set(run.hazards.map(({ title }) => title));
    for (const { piece: key } of proposal.parts.filter(({ piece }) => piece.startsWith("part/"))) {
      const piece = data[squad].pieces.find(({ of, id, part = 0 }) => `${of}/${id}/${part}` === key);
      const whole = sources[`practices/${piece.id}`]?.hazards ?? [];
      assert.ok(piece.hazards.every((place) => titles.has(data[squad].hazards[place].title)));
      fewer += piece.hazards.length < whole.length ? 1 : 0;
      seen += 1;
    }
  }
  assert.ok(seen && fewer, `${seen} ${fewer}`);
});
