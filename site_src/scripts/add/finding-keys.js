// What is wrong with the keys of an entry by its schema: missing, one without another, two together, unknown.

import { quote, say } from "./finding.js";
import { inWords } from "./names.js";
import { isObject } from "./schema.js";

/** @typedef {import("./finding.js").Failure} Failure */

/** @param {Failure} failure */
const keysOf = ({ value }) => (isObject(value) ? Object.keys(value) : []);

/** @param {Failure} failure */
export function missing(failure) {
  const keys = (failure.piece.required ?? []).filter((key) => !keysOf(failure).includes(key));
  return keys.map((key) => {
    const places = { path: failure.path, at: [...failure.path, key] };
    return say(failure, "missing-key", "this is still to be filled in", "", places);
  });
}

/** @param {Failure} failure */
export function dependent(failure) {
  const here = keysOf(failure);
  const pairs = Object.entries(failure.piece.dependentRequired ?? {}).filter(([key]) => here.includes(key));
  return pairs.flatMap(([key, others]) =>
    others.filter((other) => !here.includes(other)).map((other) => {
      const places = { path: [...failure.path, key], at: [...failure.path, other] };
      return say(failure, "missing-key", `this is needed beside “${inWords(key)}”`, "", places);
    }),
  );
}

/** @param {Failure} failure */
export function together(failure) {
  const others = (failure.piece.not?.anyOf ?? []).flatMap((piece) => piece.required ?? []);
  return others.filter((key) => keysOf(failure).includes(key)).map((key) => {
    const message = `this and “${inWords(failure.because)}” exclude each other`;
    return say(failure, "not-together", message, "take one of the two out", { path: [...failure.path, key] });
  });
}

/** @param {Failure} failure */
export function unknown(failure) {
  const known = Object.keys(failure.piece.properties ?? {});
  return keysOf(failure).filter((key) => !known.includes(key)).map((key) =>
    say(failure, "unknown-key", `there is no field ${quote(key)} here`, "", { path: [...failure.path, key] }),
  );
}
