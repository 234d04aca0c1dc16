// One failed keyword of a schema, with what its message needs: the value's name, what belongs there, what the schema says.
// As failure.py on the command line. Pure.

import { follow } from "./check.js";
import { shown, told } from "./words.js";

const TYPES = {
  string: "text",
  integer: "a whole number",
  number: "a number",
  boolean: "true or false",
  array: "a list",
  object: "fields (name: value)",
  null: "empty",
};

export class Failure {
  /** `root` is the schema with its notes, `names` the words and ids of form.json. */
  constructor(problem, root, names) {
    Object.assign(this, problem);
    this.root = root;
    this.names = names;
  }

  /** The value's name for a sentence: its key, or its number in the list of that key. */
  get name() {
    const keys = this.path.filter((step) => typeof step === "string");
    const last = this.path.at(-1);
    if (!keys.length) {
      return "the entry";
    }
    return typeof last === "string" ? shown(last) : `number ${last + 1} of ${shown(keys.at(-1))}`;
  }

  /** What the nearest piece around the value has under a keyword. */
  says(keyword) {
    return this.around.find((piece) => Object.hasOwn(piece, keyword))?.[keyword] ?? "";
  }

  /** The fields that may stand here, with their schemas. */
  get fields() {
    return this.around.reduce((found, piece) => ({ ...piece.properties, ...found }), {});
  }

  /** The description of a field that may stand here, as it is put in a sentence: lower case, no full stop. */
  about(field) {
    let piece = this.fields[field] ?? {};
    while (!piece.description && piece.$ref) {
      piece = follow(this.root, piece.$ref);
    }
    const text = piece.description ?? "";
    return text.slice(0, 1).toLowerCase() + text.slice(1).replace(/\.+$/, "");
  }

  /** What belongs here, for a sentence. */
  get noun() {
    let words = [this.wanted].flat().map((name) => TYPES[name]);
    if (this.says("clock")) {
      words = ["a time"];
    } else if (this.says("format") === "date") {
      words = ["a day"];
    } else if (this.says("vocabulary")) {
      words = [`a word of the ${told(this.says("vocabulary"))}`];
    } else if (this.says("reference")) {
      words = [`the id of a ${told(this.says("reference"))}`];
    }
    return [...this.types.map((name) => TYPES[name]), ...words].join(" or ");
  }

  /** The ids of a list: words of a vocabulary, or what can be named. */
  known(keyword, name) {
    return (this.names[keyword][name] ?? []).map(([id]) => id);
  }

  /** What there is to say: `path` is where the command line puts it, `at` the field that it is shown beside. */
  say(code, message, mend, { path = this.path, at = path } = {}) {
    return { code, path, at, message, mend: String(mend) };
  }
}
