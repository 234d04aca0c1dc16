// Which editor a shape gets.

import { choice, fields, optional } from "./groups.js";
import * as leaves from "./leaves.js";
import { list, pairs } from "./lists.js";

const EDITORS = { choice, fields, list, pairs, ...leaves };

/** The editor of a shape. `raw` is what a draft holds for it; `place` has label, hint, whether it is needed, and so on. */
export function editorOf(form, shape, raw, place) {
  const isOptionalGroup = ["fields", "pairs"].includes(shape.sort) && !place.needed && !place.bare;
  return (isOptionalGroup ? optional : EDITORS[shape.sort])(form, shape, raw, place);
}
