// Every failed keyword told as on the command line (explain.py): what is wrong in plain words, and what to write instead.
// One small function a keyword. A form cannot hold a key that the schema does not know, so those get few words. Pure.

import { problemsIn } from "./check.js";
import { explainChoice } from "./choices.js";
import { Failure } from "./failure.js";
import { listed, shown, sortOf } from "./words.js";

const DECIMAL_COMMA = /^[0-9]+,([0-9]{1,2}|[0-9]{4,})$/;
const MEANT_NUMBER = /^0*([0-9]{1,3}([,_' ][0-9]{3})+|[0-9]+) ?[a-z]{0,7}$/;
const s = (count) => (count === 1 ? "" : "s");

/** The number that someone meant, or nothing. */
function numberMeant(value, wanted) {
  if (typeof value === "number") {
    return Number.isInteger(value) ? String(value) : "a whole number";
  }
  if (typeof value !== "string") {
    return "";
  }
  if (wanted === "number" && DECIMAL_COMMA.test(value)) {
    return value.replace(",", ".");
  }
  return MEANT_NUMBER.exec(value)?.[1].replace(/[^0-9]/g, "") ?? "";
}

function typeMend(failure) {
  const { wanted, value } = failure;
  if (failure.says("format") === "date") {
    return "write a day that exists, as YYYY-MM-DD";
  }
  if (wanted === "integer" || wanted === "number") {
    return `write ${numberMeant(value, wanted) || "it"} in digits alone, without quotes or unit`;
  }
  if (wanted === "object" && failure.says("required")) {
    return `write {${failure.says("required").map((key) => `${key}: ...`).join(", ")}}`;
  }
  if (failure.says("vocabulary")) {
    return `the words are ${listed(failure.known("vocabulary", failure.says("vocabulary")), 24)}`;
  }
  return failure.says("says") || failure.says("description") || `write ${failure.noun} here`;
}

function* missing(failure) {
  const wanted = failure.wanted.filter((key) => !Object.hasOwn(failure.value, key));
  const here = failure.instead.filter((key) => failure.fields[key]);
  const others = (here.length ? here : failure.instead).map((key) => `'${key}'`);
  const otherwise = wanted.length === failure.wanted.length && others.length ? `; or write ${listed(others)} instead` : "";
  for (const key of wanted) {
    const mend = `add '${key}': ${failure.about(key)}`.replace(/[: ]+$/, "") + otherwise;
    yield failure.say("missing-key", `'${key}' is missing from ${failure.name}`, mend, { at: [...failure.path, key] });
  }
}

function* together(failure) {
  const others = (failure.wanted.anyOf ?? []).flatMap((piece) => piece.required ?? []);
  const key = failure.because;
  for (const other of others.filter((name) => Object.hasOwn(failure.value, name))) {
    const mend = `keep '${key}' or '${other}', and take the other out`;
    yield failure.say("not-together", `'${key}' and '${other}' exclude each other`, mend, { path: [...failure.path, other] });
  }
}

function* date(failure) {
  yield failure.say("bad-date", `${shown(failure.value)} is no day`, "write a day that exists, as YYYY-MM-DD");
}

function* pattern(failure) {
  if (failure.says("format") === "date") {
    yield* date(failure);
  } else if (failure.value.includes("\n")) {
    yield failure.say("bad-form", `${failure.name} must be one line`, "write it on one line, or fold it with '>-'");
  } else {
    const message = failure.onKey ? `${failure.name} will not do as a name` : `${failure.name} cannot be ${shown(failure.value)}`;
    yield failure.say("bad-form", message, failure.says("says") || failure.says("description"));
  }
}

function* bound(failure) {
  const { minimum, exclusiveMinimum, maximum } = failure.schema;
  const bounds = [["at least", minimum], ["more than", exclusiveMinimum], ["at most", maximum]].filter(([, limit]) => limit !== undefined);
  const span = bounds.map(([words, limit]) => `${words} ${limit}`).join(" and ");
  yield failure.say("out-of-range", `${failure.name} is ${failure.value}; it must be ${span}`, failure.says("description"));
}

function* size(failure, has, verb) {
  const few = failure.keyword.startsWith("min");
  const code = typeof failure.value === "string" ? (few ? "too-short" : "too-long") : few ? "too-few" : "too-many";
  const limit = few ? `needs at least ${failure.wanted}` : `may ${verb} at most ${failure.wanted}`;
  yield failure.say(code, `${has}; it ${limit}`, failure.says("description"));
}

function* length(failure) {
  const count = [...failure.value].length;
  yield* size(failure, `${failure.name} has ${count} character${s(count)}`, "have");
}

function* amount(failure) {
  const isList = Array.isArray(failure.value);
  const count = isList ? failure.value.length : Object.keys(failure.value).length;
  yield* size(failure, `${failure.name} holds ${count || "no"} ${isList ? "item" : "field"}${s(count)}`, "hold");
}

function* repeated(failure) {
  const seen = new Set();
  for (const [number, item] of failure.value.entries()) {
    if (seen.has(JSON.stringify(item))) {
      const what = typeof item === "string" ? shown(item) : "the same item";
      const path = [...failure.path, number];
      yield failure.say("repeated-item", `${what} stands twice in ${failure.name}`, "remove one of the two", { path });
    }
    seen.add(JSON.stringify(item));
  }
}

function* dependent(failure) {
  for (const [key, others] of Object.entries(failure.wanted)) {
    for (const other of Object.hasOwn(failure.value, key) ? others.filter((name) => !Object.hasOwn(failure.value, name)) : []) {
      const places = { path: [...failure.path, key], at: [...failure.path, other] };
      yield failure.say("missing-key", `'${key}' needs '${other}' beside it`, `add '${other}', or remove '${key}'`, places);
    }
  }
}

const EXPLANATIONS = {
  *additionalProperties(failure) {
    for (const key of Object.keys(failure.value).filter((name) => !failure.fields[name])) {
      yield failure.say("unknown-key", `there is no field ${shown(key)} here`, `the fields here are ${listed(Object.keys(failure.fields), 24)}`);
    }
  },
  required: missing,
  *type(failure) {
    yield failure.say("wrong-type", `${failure.name} must be ${failure.noun}, and is ${sortOf(failure.value)}`, typeMend(failure));
  },
  enum: (failure) => explainChoice(failure),
  not: together,
  *clock(failure) {
    yield failure.say("bad-time", failure.wanted.message, failure.wanted.mend);
  },
  format: date,
  pattern: (failure) => (failure.schema.clock ? [] : pattern(failure)),
  ...Object.fromEntries(["minimum", "maximum", "exclusiveMinimum", "exclusiveMaximum"].map((name) => [name, (failure) => (failure.schema.clock ? [] : bound(failure))])),
  minLength: length,
  maxLength: length,
  ...Object.fromEntries(["minItems", "maxItems", "minProperties", "maxProperties"].map((name) => [name, amount])),
  uniqueItems: repeated,
  *const(failure) {
    const message = `${failure.name} can only be ${failure.wanted}, and is ${sortOf(failure.value)}`;
    yield failure.say("wrong-value", message, `write ${failure.wanted}, or leave '${failure.path.at(-1)}' out`);
  },
  dependentRequired: dependent,
};

/** What there is to say about a value by a schema with its notes, each mistake once. */
export function explain(schema, value, names) {
  const said = new Map();
  for (const problem of problemsIn(schema, value)) {
    const failure = new Failure(problem, schema, names);
    const plain = [failure.say("bad-value", `${failure.name} is not as the schema asks`, failure.says("description"))];
    for (const finding of EXPLANATIONS[problem.keyword]?.(failure) ?? plain) {
      const key = JSON.stringify([finding.path, finding.code, finding.message]);
      said.set(key, said.get(key) ?? finding);
    }
  }
  return [...said.values()];
}

/** A published schema with the notes of form.json laid back over it, by their pointers. */
export function withNotes(schema, notes) {
  const noted = structuredClone(schema);
  for (const [pointer, note] of Object.entries(notes)) {
    Object.assign(pointer.split("/").slice(1).reduce((piece, step) => piece[step], noted), note);
  }
  return noted;
}
