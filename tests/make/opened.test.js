// Practices that are entries, opened to be changed: all open, on the clock of their page; what is not changed is run and saved as it is; what is done to
// them is told to the program, which does the same.

import assert from "node:assert/strict";
import { readFileSync, writeFileSync } from "node:fs";
import test from "node:test";

import { change, proposalOf } from "../../site_src/scripts/compose/change.js";
import { stoodOf } from "../../site_src/scripts/compose/chosen.js";
import { inMinutes } from "../../site_src/scripts/compose/minutes.js";
import { partTexts } from "../../site_src/scripts/compose/entry.js";
import { toAddress } from "../../site_src/scripts/make/asked.js";
import { laid } from "../../site_src/scripts/make/lay.js";
import { changedTitle } from "../../site_src/scripts/make/names.js";
import { adultsOf, asWritten, isUnchanged, opened, placesOf, withParts } from "../../site_src/scripts/make/opened.js";
import { otherwiseOf } from "../../site_src/scripts/make/otherwise.js";
import { changedText, notKept } from "../../site_src/scripts/make/saved.js";
import { swimOfPart } from "../../site_src/scripts/make/swim.js";
import { stepsOf } from "../../site_src/scripts/run/steps.js";

/** @type {any} */
const { data: squads, cases, folder } = JSON.parse(readFileSync(process.env.CASES ?? "", "utf8"));
const ON = "2026-11-27", DEEDS = ["swap", "up", "down", "out"], CODES = { swap: "t1", up: "t2", down: "t3", out: "t4" }; // no words in an id
const found = cases.map((own) => ({ ...own, ...opened(squads[own.run.squad], { squad: own.run.squad, request: own.request, from: own.file.id, practice: null, start: own.run.start, on: ON, number: 1, code: "", roles: own.roles }, own.file) }));

const proposed = ({ data, asked }, practice = asked.practice) => proposalOf(data, asked.request, practice);
const run = ({ data, asked, file, run: entry }, practice, sources = {}) => laid(data, asked.request, proposed({ data, asked }, practice).proposal, {
  id: "x", title: "X", page: "", start: entry.start, gravities: [], words: {}, written: { run: entry, file, places: placesOf(data, file, practice), chosen: practice.parts },
}, sources).run;
const textsOf = (data, request, practice) => {
  const { asked, order } = stoodOf(data, request, practice);
  return partTexts(asked, order);
};
const asSaved = ({ data, asked, file }, practice, title) => ({
  file, places: placesOf(data, file, practice), data, chosen: practice.parts, composed: textsOf(data, asked.request, practice), from: `${toAddress({ ...asked, on: "", practice: null })}&from=${file.id}`, title,
  adults: adultsOf(data, asked.request, file, { practice, proposal: proposed({ data, asked }, practice).proposal }),
});
const save = (own, practice, title) => changedText(asSaved(own, practice, title));
const gone = (own, practice) => notKept(asSaved(own, practice, ""));

test("every practice opens, and its clock is that of its page", () => {
  assert.ok(found.length);
  for (const { file, asked, told, run: entry, ...own } of found) {
    assert.equal(told, "", file.id);
    const { parts } = proposed({ asked, ...own }).proposal;
    let at = 0;
    const begins = parts.map(({ talk_s: lead, takes_s: takes }) => [at + lead, at += lead + takes][0]);
    const page = file.parts.map((_, k) => Math.min(...entry.parts.filter(({ number }) => number === k + 1).map(({ starts_s: starts }) => starts)));
    [...begins, at].forEach((own, k) => assert.ok(Math.abs(own - [...page, entry.ends_s][k]) < 1, `${file.id} ${own} ${page[k]}`));
    assert.ok(isUnchanged(own.data, file, asked.practice));
  }
});

test("in fewer minutes it opens too, and keeps its parts, or says what to take out", () => {
  const kinds = new Set();
  for (const { data: _, asked, told, ...own } of found) {
    const request = { ...own.request, minutes: own.request.minutes - 10 }, again = opened(squads[own.run.squad], { ...asked, request, practice: null, roles: own.roles }, own.file);
    const all = withParts(squads[own.run.squad], own.file), cut = inMinutes(all, { ...asked.request, minutes: request.minutes }, asked.practice), keys = ({ parts }) => parts.map(({ piece }) => piece);
    assert.ok("refused" in cut ? again.told.includes(`can’t be opened here: ${cut.refused} What follows`) : again.told === "", own.file.id);
    kinds.add("practice" in cut ? "cut" : "refused");
    assert.ok("refused" in cut ? cut.refused.startsWith(`In ${request.minutes} minutes it does not fit: at its shortest`) : keys(cut.practice).join() === keys(asked.practice).join(), own.file.id);
    if (cut.out?.length) {
      assert.ok("practice" in inMinutes(all, { ...asked.request, minutes: request.minutes }, asked.practice, cut.out), own.file.id);
      kinds.add("out");
    }
  }
  assert.ok(kinds.has("out") && kinds.size > 1, [...kinds].join());
});

/** What is done when, and what is said. */
const told = (part, crew) => stepsOf({ parts: [part] }, crew).map(({ kind, ms, target, aim, rest, home, wave, waves, item, wait }) => ({ kind, ms, target, aim, rest, home, wave, waves, item, wait }));

test("what is not changed is run as the build runs it, word for word", () => {
  for (const own of found) {
    const made = run(own, own.asked.practice);
    assert.deepEqual(made.crews, own.run.crews, own.file.id);
    assert.equal(made.parts.length, own.run.parts.length, own.file.id);
    own.run.parts.forEach(({ skip: _, crews, starts_s: starts, ...part }, k) => {
      const { crews: mine, starts_s: begins, ...same } = made.parts[k];
      assert.deepEqual(same, part, own.file.id);
      assert.ok(Math.abs(begins - starts) < 1);
      for (const crew of Object.keys(crews)) {
        assert.deepEqual(told(made.parts[k], crew), told(own.run.parts[k], crew), `${own.file.id} ${k} ${crew}`);
        assert.ok(Math.abs(mine[crew].ends_s - crews[crew].ends_s) < 1);
      }
    });
    assert.ok(!/"(least|most|copies|fewer|fewest|meet|skip)":/.test(JSON.stringify(made.parts)), "nothing that no rule was asked for");
  }
});

test("what is not changed is saved word for word, and what is not kept is told", () => {
  for (const own of found) {
    const title = changedTitle(own.file, ON), text = save(own, own.asked.practice, title);
    assert.ok([...title].length <= 60 && title.endsWith(", changed 27 Nov"), title);
    for (const [key, lines] of own.file.head.filter(([key]) => !["title", "composed", "parts"].includes(key))) {
      const isIn = text.includes(lines);
      const words = { also_called: "other names", asked_as: "found by", review: "reviewed", accepts: "accepts" }[key];
      assert.ok(isIn || gone(own, own.asked.practice).includes(words), `${own.file.id} ${key}`);
    }
    assert.ok(text.includes(own.file.parts.map((part) => part.text).join("")), own.file.id);
    writeFileSync(`${folder}/${own.file.id}-as-it-is.yml`, text);
  }
});

test("a part that is held is swapped for nothing; what can be done to each is done, saved and told", () => {
  const steps = [], kinds = new Set();
  for (const own of found) {
    for (const { role, piece } of own.asked.practice.parts) {
      for (const deed of DEEDS.map((what) => ({ do: what, role }))) {
        const after = change(own.data, own.asked.request, own.asked.practice, deed);
        assert.ok(!(piece.startsWith("held/") && deed.do === "swap" && "practice" in after), own.file.id);
        steps.push({ id: own.file.id, request: own.asked.request, practice: own.asked.practice, deed, after: after.practice ?? null, refused: after.refused ?? "", takes: after.proposal?.takes_s ?? 0, cost: after.proposal?.cost ?? 0 });
        if ("practice" in after && steps.filter(({ id, deed: { do: what }, after: other }) => id === own.file.id && what === deed.do && other).length === 1) {
          writeFileSync(`${folder}/${own.file.id}-${CODES[deed.do]}.yml`, save(own, after.practice, `${changedTitle(own.file, ON)}`));
          steps.at(-1).file = `${own.file.id}-${CODES[deed.do]}`;
          const kept = placesOf(own.data, own.file, after.practice).filter((part) => part >= 0).length;
          const lost = own.file.parts.length - kept;
          assert.equal(lost > 0, gone(own, after.practice).includes("read them again"), own.file.id);
          const text = save(own, after.practice, "T"), often = otherwiseOf(own.data, own.file, after.practice.parts, placesOf(own.data, own.file, after.practice)).filter(Boolean);
          for (const { part, of } of often) {
            const notes = own.file.parts[part].text.match(/note: .*/g) ?? [];
            kinds.add(notes.length && notes.every((note) => text.includes(note)) ? `${of} with notes` : "");
          }
          assert.ok(run(own, after.practice).parts.length >= after.practice.parts.length);
        }
      }
    }
  }
  assert.ok(DEEDS.every((what) => steps.some(({ deed, after }) => deed.do === what && after)));
  assert.ok(found.length < 10 || (kinds.has("part with notes") && kinds.has("set with notes")), "done more or less often, it keeps its notes");
  writeFileSync(process.env.STEPS ?? "", JSON.stringify(steps));
});

test("what stands in a held part already is not had again beyond its dose", () => {
  let tried = 0;
  for (const own of found) {
    const { parts } = own.asked.practice, inside = parts.flatMap(({ piece }, place) => (piece.startsWith("held/") ? [...own.file.parts[place].text.matchAll(/ set: ([\w-]+)/g)] : [])).map(([, id]) => `set/${id}`);
    for (const piece of new Set(inside)) {
      for (const { role } of parts.filter(({ role, piece: other }) => "mn".includes(role) && other !== piece)) {
        const { written = 1 } = own.data.pieces.find(({ of, id }) => `${of}/${id}` === piece) ?? {}, practice = { parts: parts.map((part) => (part.role === role ? { role, piece, number: written, kept: false } : part)), out: [] };
        const minutes = Math.min(120, own.data.squad.minutes), longer = { ...own, asked: { ...own.asked, request: { ...own.asked.request, minutes } } };
        tried += 1;
        if ("proposal" in proposed(longer, practice)) {
          writeFileSync(`${folder}/${own.file.id}-t5.yml`, save(longer, practice, changedTitle(own.file, ON)).replace(/minutes: \d+/, `minutes: ${minutes}`));
        }
      }
    }
  }
  assert.ok(found.length < 10 || tried > 5, String(tried));
});

test("opened for one lane group alone, it is run and read without the stations of the others", () => {
  for (const { file, run: entry, request, roles } of found) {
    for (const [group] of squads[entry.squad].squad.groups) {
      const there = { file, run: entry, ...opened(squads[entry.squad], { squad: entry.squad, request: { ...request, groups: [group] }, from: file.id, practice: null, start: entry.start, on: ON, number: 1, code: "", roles }, file) };
      const made = run(there, there.asked.practice), own = entry.parts.filter(({ crews }) => Object.keys(crews).some((key) => key.split("/")[0] === group));
      assert.equal(made.parts.length, own.length, `${file.id} ${group}`);
      file.parts.forEach((_, place) => swimOfPart(made.parts.filter(({ number }) => number === place + 1), made.crews));
      made.crews.forEach(({ key }) => stepsOf(made, key));
    }
  }
});

test("a practice stands in the pool that it is written for alone", () => {
  const [{ file, run: entry, asked }] = found, data = squads[entry.squad], other = data.pools.map(([id]) => id).find((id) => id !== file.pool && data.squad.offers[id]);
  if (other) {
    const there = opened(data, { ...asked, practice: null, request: { ...asked.request, pool: other } }, file);
    assert.match(there.told, /can’t be opened here/);
  }
  assert.ok(found.length < 10 || other);
});

test("a practice that was composed keeps the roles of its pieces; one that is not the squad's is offered to nobody", () => {
  const [{ file, run: entry, asked }] = found, data = squads[entry.squad], own = withParts(data, file);
  assert.deepEqual(own.pieces.slice(data.pieces.length).map(({ of }) => of), file.pieces.map(() => "held"));
  assert.ok(data.pieces.every(({ of }) => of !== "held"), "the data of the squad stay as they were");
  const pair = asWritten(own, asked.request, file);
  assert.deepEqual(pair.practice, asked.practice, "the same each time");
});
