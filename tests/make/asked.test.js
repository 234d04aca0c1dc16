// What is asked of Make a practice, as an address and back; the wish to drop; until when.

import assert from "node:assert/strict";
import test from "node:test";

import { answersOf, requestOf } from "../../site_src/scripts/make/answers.js";
import { fromAddress, leftOf, minutesUntil, slotUntil, toAddress, wayPast, without } from "../../site_src/scripts/make/asked.js";
import { versionOf } from "../../site_src/scripts/make/names.js";

const request = {
  pool: "home", minutes: 75, goals: ["kick-endurance", "walls"], groups: ["heron-2"], gear: { fins: 0 }, lanes: { "heron-2": 2 }, heads: {}, taught: { "kick-into-stroke": 2 },
  done: [["heron-first", 3], ["part/heron-first/2", 0]], effort: "strong", adults: 3,
};
const asked = {
  squad: "heron", request, on: "2026-11-27", start: "17:30", number: 2, code: "",
  practice: { parts: [{ role: "w", piece: "set/warm", number: 4, kept: false }, { role: "m", piece: "part/other/3", number: 2, kept: true }], out: ["drill/x"] },
};

test("an address says all that was asked and changed, and is read back", () => {
  assert.deepEqual(fromAddress(toAddress(asked)), asked);
  assert.ok(!toAddress(asked).includes("%"));
});

test("a practice that is an entry is named, and stays named once it is changed", () => {
  const { from, practice, roles } = fromAddress("squad=heron&pool=home&minutes=60&from=heron-sixth&roles=wm");
  assert.deepEqual([from, practice, roles], ["heron-sixth", null, "wm"]);
  assert.equal(fromAddress(toAddress({ ...asked, from })).from, from);
  assert.ok(!toAddress({ ...asked, practice: null, from }).includes("heron-sixth"), "another proposal is not it");
});

test("a talk that is not the usual stands with its piece, and a part that is held by its place", () => {
  const held = { role: "3", piece: "held/heron-sixth/3", number: 1, kept: false };
  const own = { ...asked, practice: { ...asked.practice, parts: [...asked.practice.parts.map((part) => ({ ...part, talk_s: 75 })), held] } };
  assert.deepEqual(fromAddress(toAddress(own)), own);
});

test("a day and a time that there are not are left out", () => {
  for (const [on, start] of [["2026-02-31", "24:00"], ["9999-99-99", "99:99"], ["", ""]]) {
    const found = fromAddress(`squad=heron&minutes=60&on=${on}&start=${start}`);
    assert.deepEqual([found.on, found.start], ["", ""]);
  }
  const found = fromAddress("squad=heron&minutes=60&on=2028-02-29&start=23:59");
  assert.deepEqual([found.on, found.start], ["2028-02-29", "23:59"]);
});

test("an address that asks for nothing, or for what can't be, is none", () => {
  for (const address of ["", "squad=heron", "squad=<b>&minutes=60", "squad=heron&minutes=-5", "squad=heron&minutes=many"]) {
    assert.equal(fromAddress(address), null, address);
  }
  const odd = fromAddress("squad=heron&minutes=60&goals=a,<i>,b&parts=x.set/a:2,w.set/a:9999,w.set/b:1&start=99&number=9&code=<&done=a:b");
  assert.deepEqual([odd.request.goals, odd.practice.parts.length, odd.start, odd.number, odd.code, odd.request.done], [["a", "b"], 1, "", 1, "", []]);
});

test("a wish that is in the way can be dropped, where there is anything left to ask", () => {
  const title = (goal) => ({ walls: "Walls" })[goal] ?? goal;
  assert.deepEqual(without(request, { wish: "goals", which: "walls" }, title), { title: "Without walls", request: { ...request, goals: ["kick-endurance"] } });
  assert.equal(without({ ...request, goals: ["walls"] }, { wish: "goals", which: "walls" }, title), null);
  assert.equal(without(request, { wish: "minutes", which: 60 }, title).request.minutes, 60);
  assert.deepEqual(without(request, { wish: "gear", which: null }, title).request.gear, {});
  assert.equal(without(request, { wish: "taught", which: null }, title), null);
  const full = { ...request, lanes: { b: 2 }, heads: { a: 40, b: 20 } }, groups = [["a", "A", 3, 12, 100], ["b", "B", 1, 9, 100]];
  assert.deepEqual(without(full, { wish: "lanes", which: 5 }, title, groups), { title: "With 5 in a lane", request: { ...full, heads: { a: 15, b: 18 } } });
  assert.deepEqual(without(full, { wish: "lanes", which: null }, title, groups).request.heads, {});
  assert.equal(wayPast(request, { wish: "goals", which: "walls", because: "gear", words: "" }, title).title, "With all the gear");
  assert.equal(wayPast(request, { wish: "goals", which: "walls", because: "minutes", words: "" }, title).title, "Without walls");
  assert.equal(wayPast(request, { wish: "skill", which: null, because: "minutes", words: "" }, title).title, "Without walls");
  assert.equal(wayPast({ ...request, minutes: 60 }, { wish: "relief", which: null, because: "minutes", words: "" }, title).request.minutes, 70);
  assert.equal(wayPast({ ...request, minutes: 115 }, { wish: "relief", which: null, because: "minutes", words: "" }, title), null);
  assert.equal(wayPast(request, { wish: "skill", which: null, because: "time-left", words: "" }, title), null, "there is time: no wish is in the way");
  assert.equal(wayPast(request, { wish: "effort", which: "strong", because: "goals", words: "" }, title).title, "At any effort");
});

test("minutes until a time of day, of the next day where it is past", () => {
  const now = new Date(2026, 10, 27, 18, 0, 30);
  assert.equal(minutesUntil(now, "18:45"), 44);
  assert.equal(minutesUntil(now, "00:30"), 389);
  assert.equal(minutesUntil(now, ""), 0);
});

test("minutes that are left of a slot that runs", () => {
  const at = (hours, minutes) => leftOf(new Date(2026, 10, 27, hours, minutes, 30), "17:30", 75);
  assert.deepEqual([at(17, 29), at(17, 30), at(17, 31), at(18, 20), at(18, 44), at(18, 45), at(9, 0)], [0, 0, 74, 25, 1, 0, 0]);
});

test("answers make the request that made them", () => {
  const data = { squad: { groups: [["heron-1", "One", 3, 12, 100], ["heron-2", "Two", 3, 12, 100]] } };
  const done = [{ id: "heron-first", title: "", days: 3 }, { id: "part/heron-first/2", title: "", days: 0 }, { id: "other", title: "", days: 5 }];
  const answers = answersOf(request, ["heron-1", "heron-2"], done);
  assert.deepEqual([...answers.notDone], ["other"]);
  assert.deepEqual(requestOf({ answers, data, done }), request);
});

test("a version is the same for the same text, and another for another", () => {
  assert.match(versionOf("a"), /^[0-9a-f]{16}$/);
  assert.equal(versionOf("a"), versionOf("a"));
  assert.notEqual(versionOf("ab"), versionOf("ba"));
});

test("an end is counted from the start of the slot, and from now where it runs", () => {
  const now = new Date(2026, 10, 27, 18, 1), slot = { start: "17:30", isToday: true, until: "18:15", minutes: 60 };
  assert.deepEqual(slotUntil(now, slot), { minutes: 14, start: "18:01" });
  assert.deepEqual(slotUntil(now, { ...slot, isToday: false }), { minutes: 45, start: "17:30" });
  assert.deepEqual(slotUntil(now, { ...slot, start: "19:00", until: "19:40" }), { minutes: 40, start: "19:00" });
  assert.deepEqual(slotUntil(now, { ...slot, until: "17:55" }), { minutes: 25, start: "17:30" }, "an end that is past is of the slot");
  assert.deepEqual(slotUntil(now, { ...slot, start: "" }), { minutes: 14, start: "18:01" });
  assert.deepEqual(slotUntil(now, { ...slot, until: "" }), { minutes: 60 });
});
