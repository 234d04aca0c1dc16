// JSON Schema, as much of 2020-12 as the published schemas use. Pure: a schema and a value give the keywords that fail.

import * as times from "./times.js";

const NEWLY = { around: [], instead: [], types: [], onKey: false };

const isObject = (value) => typeof value === "object" && value !== null && !Array.isArray(value);
const isText = (value) => typeof value === "string";
const isNumber = (value) => typeof value === "number";
const has = (value, key) => Object.hasOwn(value, key);
const length = (text) => [...text].length; // characters, not the halves that some of them have in memory

const TYPES = {
  string: isText,
  number: isNumber,
  integer: Number.isInteger,
  boolean: (value) => typeof value === "boolean",
  array: Array.isArray,
  object: isObject,
  null: (value) => value === null,
};

/** A value as text that is the same for equal values. */
function canonical(value) {
  return JSON.stringify(value, (key, inner) => (isObject(inner) ? Object.fromEntries(Object.entries(inner).sort()) : inner));
}

function isDay(text) {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text)?.map(Number) ?? [];
  const date = new Date(Date.UTC(2000, (month ?? 0) - 1, day));
  date.setUTCFullYear(year, (month ?? 0) - 1, day);
  return year > 0 && date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
}

/** Keywords that look at a value and nothing else: true where it passes. */
const PLAIN = {
  type: (value, wanted) => [wanted].flat().some((name) => TYPES[name](value)),
  enum: (value, wanted) => wanted.some((choice) => canonical(choice) === canonical(value)),
  const: (value, wanted) => canonical(wanted) === canonical(value),
  minLength: (value, limit) => !isText(value) || length(value) >= limit,
  maxLength: (value, limit) => !isText(value) || length(value) <= limit,
  pattern: (value, pattern) => !isText(value) || new RegExp(pattern, "u").test(value),
  format: (value, format) => !isText(value) || format !== "date" || isDay(value),
  minimum: (value, limit) => !isNumber(value) || value >= limit,
  maximum: (value, limit) => !isNumber(value) || value <= limit,
  exclusiveMinimum: (value, limit) => !isNumber(value) || value > limit,
  exclusiveMaximum: (value, limit) => !isNumber(value) || value < limit,
  minItems: (value, limit) => !Array.isArray(value) || value.length >= limit,
  maxItems: (value, limit) => !Array.isArray(value) || value.length <= limit,
  uniqueItems: (value, wanted) => !wanted || !Array.isArray(value) || new Set(value.map(canonical)).size === value.length,
  minProperties: (value, limit) => !isObject(value) || Object.keys(value).length >= limit,
  maxProperties: (value, limit) => !isObject(value) || Object.keys(value).length <= limit,
  required: (value, keys) => !isObject(value) || keys.every((key) => has(value, key)),
  dependentRequired: (value, needs) =>
    !isObject(value) || Object.entries(needs).every(([key, others]) => !has(value, key) || others.every((other) => has(value, other))),
};

/** The schema piece that a `$ref` into the same schema names. */
function follow(root, reference) {
  return reference.slice(2).split("/").reduce((piece, step) => piece[step], root);
}

const under = (at, step) => ({ ...NEWLY, path: [...at.path, step] });
const passes = (root, schema, value) => problemsOf(root, schema, value).next().done;

/** Keywords that lead on to other pieces of the schema: they give the problems found there. */
const LEADING = {
  *$ref(root, schema, value, at) {
    yield* problemsOf(root, follow(root, schema.$ref), value, at);
  },
  *properties(root, schema, value, at) {
    for (const [key, piece] of isObject(value) ? Object.entries(schema.properties) : []) {
      if (has(value, key)) {
        yield* problemsOf(root, piece, value[key], under(at, key));
      }
    }
  },
  *additionalProperties(root, schema, value, at) {
    const others = isObject(value) ? Object.keys(value).filter((key) => !has(schema.properties ?? {}, key)) : [];
    if (schema.additionalProperties === false && others.length) {
      yield { ...at, keyword: "additionalProperties", wanted: false, schema, value };
    }
    for (const key of isObject(schema.additionalProperties) ? others : []) {
      yield* problemsOf(root, schema.additionalProperties, value[key], under(at, key));
    }
  },
  *propertyNames(root, schema, value, at) {
    for (const key of isObject(value) ? Object.keys(value) : []) {
      yield* problemsOf(root, schema.propertyNames, key, { ...under(at, key), onKey: true });
    }
  },
  *items(root, schema, value, at) {
    for (const [number, item] of Array.isArray(value) ? value.entries() : []) {
      yield* problemsOf(root, schema.items, item, under(at, number));
    }
  },
  *if(root, schema, value, at) {
    if (passes(root, schema.if, value)) {
      yield* problemsOf(root, schema.then ?? {}, value, at);
    } else {
      const { required = [], type = [] } = schema === root ? {} : schema.if;
      const other = { ...at, instead: [...at.instead, ...required], types: [...at.types, ...[type].flat()] };
      yield* problemsOf(root, schema.else ?? {}, value, other);
    }
  },
  *dependentSchemas(root, schema, value, at) {
    for (const [key, piece] of isObject(value) ? Object.entries(schema.dependentSchemas) : []) {
      if (has(value, key)) {
        yield* problemsOf(root, piece, value, { ...at, because: key });
      }
    }
  },
  *not(root, schema, value, at) {
    if (passes(root, schema.not, value)) {
      yield { ...at, keyword: "not", wanted: schema.not, schema, value };
    }
  },
  *anyOf(root, schema, value, at) {
    if (!schema.anyOf.some((piece) => passes(root, piece, value))) {
      yield { ...at, keyword: "anyOf", wanted: schema.anyOf, schema, value };
    }
  },
  // Ours, and only where `form.json` has noted it: a time as on a pace clock.
  *clock(root, schema, value, at) {
    const problem = isText(value) || isNumber(value) ? times.problem(value) : null;
    if (problem) {
      yield { ...at, keyword: "clock", wanted: problem, schema, value };
    }
  },
};

/**
 * What fails in `value` by `schema`, a piece of `root`: the keyword with what it asks for, the value and its path, and
 * the pieces around it, nearest first. `instead` and `types` are what would have chosen another form of the value.
 */
function* problemsOf(root, schema, value, at = { ...NEWLY, path: [] }) {
  const here = { ...at, around: [schema, ...at.around] };
  for (const [keyword, wanted] of Object.entries(schema)) {
    if (has(LEADING, keyword)) {
      yield* LEADING[keyword](root, schema, value, here);
    } else if (has(PLAIN, keyword) && !PLAIN[keyword](value, wanted)) {
      yield { ...here, keyword, wanted, schema, value };
    }
  }
}

export const problemsIn = (schema, value) => [...problemsOf(schema, schema, value)];
export { passes };
export { follow };
export { isObject };
export const KEYWORDS = [...Object.keys(PLAIN), ...Object.keys(LEADING), "then", "else", "$schema", "$id", "$defs", "title", "description"];
