// A word or id that is none of its list, told as on the command line (explain.py): what is near, where it belongs. Pure.

import { nearest, listed, shown, sortOf, told } from "./words.js";

const near = (word) => `did you mean '${word}'?`;

function* word(failure) {
  const name = failure.schema.vocabulary;
  const words = failure.known("vocabulary", name);
  const found = nearest(failure.value, words);
  const mend = found ? near(found) : `the words are ${listed(words, 24)} (drills/vocabulary/${name}.yml)`;
  yield failure.say("unknown-word", `${shown(failure.value)} is not one of the ${told(name)}`, mend);
}

function referenceMend(failure, kind) {
  const known = failure.names.reference[failure.schema.reference] ?? [];
  const found = nearest(failure.value, known.map(([id]) => id));
  if (found) {
    return `the nearest: ${found} (${known.find(([id]) => id === found)[2]})`;
  }
  for (const [other, ids] of Object.entries(failure.names.reference)) {
    const file = ids.find(([id]) => id === failure.value)?.[2];
    if (file) {
      return `'${failure.value}' is a ${other} (${file}), and a ${kind} belongs here`;
    }
  }
  if (!known.length) {
    return `there is no ${kind} yet: write it first`;
  }
  return `no ${kind} is spelt like it${known.length <= 12 ? `: write ${listed(known.map(([id]) => id))}` : ""}`;
}

function* reference(failure) {
  const kind = told(failure.schema.reference);
  const moved = failure.names.moved[failure.schema.reference]?.[failure.value];
  if (moved) {
    yield failure.say("moved-reference", `the ${kind} '${failure.value}' has moved`, `write ${moved}`);
  } else {
    yield failure.say("unknown-reference", `no ${kind} ${shown(failure.value)}`, referenceMend(failure, kind));
  }
}

/** What there is to say of a failed `enum`: by the list that form.json has noted for it, else by its own choices. */
export function* explainChoice(failure) {
  const { value, wanted, schema } = failure;
  if (schema.vocabulary || schema.reference) {
    yield* typeof value !== "string" ? [] : schema.vocabulary ? word(failure) : reference(failure);
    return;
  }
  const found = typeof value === "string" ? nearest(value, wanted) : null;
  const message = `${failure.name} must be one of ${listed(wanted)}, and is ${sortOf(value)}`;
  yield failure.say("unknown-word", message, found ? near(found) : `write ${listed(wanted)}`);
}
