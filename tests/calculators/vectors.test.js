// The page's calculators against the program's: every case of the file that a build writes, to the shown digit.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import test from "node:test";

import { answer } from "../../site_src/scripts/arithmetic/calculators.js";
import { showNumber, showTime, showTimed, upTo } from "../../site_src/scripts/arithmetic/rounding.js";
import { readField, timeOf } from "../../site_src/scripts/arithmetic/typed.js";

/** @type {any} */
const vectors = JSON.parse(readFileSync(process.env.VECTORS ?? "", "utf8"));

test("every case comes out alike", () => {
  for (const { calculator, given, numbers, shown, says } of vectors.cases) {
    const found = answer(vectors.words[calculator], given, vectors.club);
    const where = `${calculator} ${JSON.stringify(given)}`;
    assert.deepEqual(found.says, says, where);
    assert.deepEqual(found.shown, shown, where);
    for (const [name, value] of Object.entries(numbers)) {
      for (const [at, each] of [value].flat().entries()) {
        const own = [found.numbers[name]].flat()[at];
        assert.ok(Math.abs(Number(own) - each) <= 2e-6 * Math.max(1, Math.abs(each)), `${where}: ${name} ${own}, not ${each}`);
      }
    }
  }
});

test("a keypad's digits are read from the right", () => {
  for (const [typed, seconds] of /** @type {[string, number][]} */ ([
    ["125", 85], ["1:25", 85], ["85", 85], ["45", 45], ["5", 5], ["1005", 605], ["12530", 5130], ["1:25.3", 85.3], ["125,34", 85.34], ["0:52.81", 52.81],
    ["26.5", 26.5],
  ])) {
    assert.equal(timeOf(typed), seconds, typed);
  }
  for (const typed of ["175", "1:75", "1:2", "a", "1.2.3", "-5", "1234567", ":25", "6100"]) {
    assert.equal(typeof timeOf(typed), typed === "6100" ? "number" : "string", typed);
  }
});

test("what is wrong with a field is a sentence, and no number", () => {
  const field = { name: "n", title: "Swimmers", takes: /** @type {const} */ ("whole"), unit: "", least: 1, most: 20, choices: {}, many: false, optional: false, default: "" };
  assert.deepEqual(readField(field, ""), { missing: true });
  assert.deepEqual(readField({ ...field, optional: true }, " "), {});
  assert.equal(readField(field, "6").value, 6);
  for (const text of ["0", "21", "2.5", "six", "1e3", "٣"]) {
    const found = readField(field, text);
    assert.match(found.wrong ?? "", /^Swimmers: .*\.$/, text);
    assert.equal(found.value, undefined, text);
  }
});

test("numbers and times are shown as the program shows them", () => {
  for (const [seconds, shown] of vectors.rounding.times) {
    assert.deepEqual([showTime(seconds), showTime(seconds, 1)], shown, String(seconds));
  }
  for (const [value, shown] of vectors.rounding.numbers) {
    assert.deepEqual([0, 1, 2, 3].map((places) => showNumber(value, places)), shown, String(value));
  }
  assert.equal(upTo(85.0000001, 5), 85);
  assert.equal(showTimed(26.05), "0:26.05");
});
