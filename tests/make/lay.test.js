// A composed practice, laid by the page, against the run that the build makes of the same practice as an entry.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import test from "node:test";

import { swumOf } from "../../site_src/scripts/make/amounts.js";
import { gravest, laid } from "../../site_src/scripts/make/lay.js";
import { cutsOf, mayGo } from "../../site_src/scripts/make/may-go.js";
import { pieceOf } from "../../site_src/scripts/make/places.js";
import { stepsOf } from "../../site_src/scripts/run/steps.js";

/** @type {any} */
const { data, sources, cases, runs } = JSON.parse(readFileSync(process.env.CASES ?? "", "utf8"));
const WORDS = { w: "Warm-up", s: "Skill", m: "Main set", n: "Main set", e: "Main set", c: "Cool-down" };
const own = { id: "x", title: "X", page: "", start: "17:30", gravities: ["Life", "Injury", "Ache"], words: WORDS };

/** What is done when, of one part for one crew. */
const told = (part, crew) => stepsOf({ parts: [part] }, crew).map(({ kind, ms, target, aim, rest, home, wave, waves, item, wait }) =>
  ({ kind, ms, target, aim, rest, home, wave, waves, what: item === undefined ? null : [part.items[item].drills, part.items[item].metres], wait: wait && [wait.wait, wait.why] }));

test("every part is run with the times of the build", () => {
  let [scaled, drills, elsewhere] = [0, 0, 0];
  for (const { id, squad, request, proposal, run } of cases) {
    const made = laid(data[squad], request, proposal, own, sources, runs[squad][request.pool]);
    assert.deepEqual(made.run.crews.map(({ key, lanes }) => [key, lanes]), run.crews.map(({ key, lanes }) => [key, lanes]), id);
    assert.deepEqual(made.tapped, [], id);
    proposal.parts.forEach((part, k) => {
      const [mine, theirs] = [made.run.parts[k], run.parts[k]];
      assert.equal(mine.word, theirs.word);
      assert.ok(Math.abs(mine.starts_s - theirs.starts_s) < 6, `${id} ${part.piece} ${mine.starts_s} ${theirs.starts_s}`);
      const unit = request.pool === "yards-meet" ? "yd" : "m";
      const far = Object.keys(mine.crews).map((crew) => swumOf(mine, crew, unit));
      assert.equal(Math.max(...far.map((own) => own?.far)), part.distance, `${id} ${part.piece} × ${part.number} ${JSON.stringify(far)}`);
      for (const crew of Object.keys(theirs.crews)) {
        assert.deepEqual(told(mine, crew), told(theirs, crew), `${id} ${part.piece} × ${part.number} ${crew}`);
      }
      elsewhere += request.pool !== "home" ? 1 : 0;
      drills += part.piece.startsWith("drill/") ? 1 : 0;
      scaled += part.of && data[squad].pieces.find((piece) => piece.title === part.title)?.written !== part.number ? 1 : 0;
    });
  }
  assert.ok(elsewhere && scaled && drills, `${elsewhere} ${scaled} ${drills}`);
});

/** The rounds of a part for one crew that may be fewer: from how many, to how few. */
const fewer = ({ crews }, crew) => crews[crew].blocks.flatMap((block) => (block.least === undefined ? [] : [[block.rounds.reduce((sum, { times }) => sum + times, 0), block.least, Boolean(block.keeps_last)]]));

test("nothing may go that may not in the build's own run of it", () => {
  let [skips, rounds, none] = [0, 0, 0];
  for (const { id, squad, request, proposal, run: theirs } of cases) {
    const { run } = laid(data[squad], request, proposal, own, sources, runs[squad][request.pool]);
    none += run.cuts.length ? 0 : 1;
    assert.ok(!run.parts[0].skip && !run.parts[run.parts.length - 1].skip, id);
    run.parts.forEach((part, k) => {
      assert.ok(!part.skip || theirs.parts[k].skip, `${id} ${part.title}`);
      skips += part.skip ? 1 : 0;
      for (const crew of Object.keys(part.crews)) {
        for (const [number, least, keepsLast] of fewer(part, crew)) {
          const [[many, fewest, last] = []] = fewer(theirs.parts[k], crew);
          assert.ok(many === number && fewest <= least && least < number && last === keepsLast, `${id} ${part.title} ${number} ${least} ${many} ${fewest}`);
          rounds += 1;
        }
      }
      const all = JSON.stringify(part);
      assert.ok(!/"(copies|fewer|fewest|meet)":/.test(all), all);
      assert.ok(/"again":0/.test(all));
    });
    for (const cut of run.cuts) {
      assert.ok(theirs.cuts.some(({ part, do: what }) => part === cut.part && what === cut.do), `${id} ${JSON.stringify([cut, theirs.cuts])}`);
    }
  }
  assert.ok(skips && rounds && none, `${skips} ${rounds} ${none}`);
});

test("where somebody goes under water all of it stays, and so does what a later part learns from", () => {
  const { squad, request, proposal } = cases.find((one) => laid(data[one.squad], one.request, one.proposal, own, sources).run.cuts.length);
  const table = data[squad], part = proposal.parts.findIndex((_, k) => mayGo(table, request, proposal)?.[k]);
  const [piece, last] = [part, part + 1].map((k) => pieceOf(table, proposal.parts[k].piece));
  const [drill] = piece.drills, asks = { ...table, pieces: table.pieces.map((one) => (one === last ? { ...one, asks: [drill] } : one)) };
  const learns = (taught) => mayGo({ ...asks, squad: { ...table.squad, taught } }, request, proposal)[part];
  assert.deepEqual([learns([]), learns([drill])], [false, true]);
  const dive = (offer) => (table.pieces[offer[0]] === piece ? [...offer.slice(0, 3), [[[1, 25, [1], [], [0, 0, 0, 15]]]]] : offer);
  const offers = { ...table.squad.offers, [request.pool]: table.squad.offers[request.pool].map(dive) };
  assert.equal(mayGo({ ...table, squad: { ...table.squad, offers } }, request, proposal), null);
});

test("what no lane group does has no round to spare", () => {
  const nobody = { stage: 0, number: 1, word: "main", title: "X", items: [], crews: {} };
  assert.deepEqual(cutsOf([nobody, nobody, nobody]), []);
  assert.deepEqual(cutsOf([]), []);
});

test("what is run by nothing that is kept is run by taps", () => {
  const { squad, request, proposal } = cases[0];
  const none = laid(data[squad], request, proposal, own, {}), { hazards } = laid(data[squad], request, proposal, own, sources, runs[squad][request.pool]).run;
  assert.deepEqual(none.tapped, proposal.parts);
  assert.ok(!none.isRead && hazards.length);
  const steps = stepsOf({ ...none.run, version: "" }, none.run.crews[0].key);
  assert.ok(steps.some(({ ms, whole }) => ms === null && whole));
});

test("more swimmers in a lane are home later", () => {
  const { squad, request, proposal } = cases[0];
  const here = runs[squad][request.pool], [id, , lanes, heads] = data[squad].squad.groups[0];
  const usual = laid(data[squad], request, proposal, own, sources, here).run;
  const fuller = laid(data[squad], { ...request, heads: { [id]: heads + lanes } }, proposal, own, sources, here).run;
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
    const { run } = laid(data[squad], request, proposal, own, sources, runs[squad][request.pool]);
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
