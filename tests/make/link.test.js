// A link whose words are of nothing here: what is near is told, and stands in its place.

import assert from "node:assert/strict";
import test from "node:test";

import { mended, unreadable } from "../../site_src/scripts/make/link.js";

/** @type {any} */
const data = { goals: [["walls", "Walls"], ["kick-speed", "Kick speed"], ["kick-endurance", "Kick endurance"]], pools: [["home", "Baths"], ["lake", "Long lake"]], efforts: [["easy", "Easy"]], squad: { groups: [["heron-1", "Heron, lanes 1 to 3"]] } };
const REQUEST = { pool: "home", minutes: 60, goals: ["walls"], groups: ["heron-1"], effort: "easy" };

test("what is here is followed", () => {
  assert.equal(mended(REQUEST, data, "home"), null);
  assert.equal(mended({ ...REQUEST, effort: "", groups: [] }, data, "home"), null);
});

test("what is not is told with what is near, which then stands in its place", () => {
  const near = mended({ ...REQUEST, goals: ["walls", "kick-sped"] }, data, "home");
  assert.deepEqual([near?.said, near?.field, near?.request.goals], ["There is no goal “kick-sped” here: is Kick speed meant?", "goals", ["walls", "kick-speed"]]);
  const pool = mended({ ...REQUEST, pool: "moon" }, data, "home");
  assert.deepEqual([pool?.said, pool?.request.pool], ["There is no pool “moon” here: there are Baths, Long lake.", "home"]);
  assert.equal(mended({ ...REQUEST, pool: "" }, data, "home")?.said, "This link names no pool.");
  assert.equal(mended({ ...REQUEST, effort: "mad" }, data, "home")?.request.effort, "");
  assert.deepEqual(mended({ ...REQUEST, groups: ["sharks"] }, data, "home")?.request.groups, []);
});

test("an address that is no request says why", () => {
  const said = ["", "page", "squad=heron", "squad=a,b&minutes=60", "minutes=60", "squad=heron&minutes=soon"].map(unreadable);
  assert.deepEqual(said, ["", "", "This link says no minutes.", "This link names “a,b”, and a practice is for one squad.", "This link names no squad.", "This link says “soon” for the minutes, which is no number that can be."]);
});
