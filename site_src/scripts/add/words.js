// Words for messages: did you mean, values shown on one line, lists in a sentence. The same as the command line's
// (suggest.py, failure.py), so that a mistake reads the same in the browser and in the check. Pure.

const MOST_SHOWN = 60;
const LONGEST_COMPARED = 80;
const UNPRINTABLE = /[\p{C}\p{Zl}\p{Zp}]|(?! )\p{Zs}/gu;

/** The longest run of letters that two stretches share, the first of them where there are several. */
function longestRun(a, b, [fromA, toA, fromB, toB]) {
  let best = [fromA, fromB, 0];
  let lengths = new Map();
  for (let i = fromA; i < toA; i += 1) {
    const next = new Map();
    for (let j = fromB; j < toB; j += 1) {
      if (a[i] === b[j]) {
        const length = (lengths.get(j - 1) ?? 0) + 1;
        next.set(j, length);
        best = length > best[2] ? [i - length + 1, j - length + 1, length] : best;
      }
    }
    lengths = next;
  }
  return best;
}

function shared(a, b, [fromA, toA, fromB, toB] = [0, a.length, 0, b.length]) {
  const [i, j, length] = longestRun(a, b, [fromA, toA, fromB, toB]);
  return length ? length + shared(a, b, [fromA, i, fromB, j]) + shared(a, b, [i + length, toA, j + length, toB]) : 0;
}

/** How alike two words are, 0 to 1: twice the letters in shared runs over all letters (Ratcliff and Obershelp 1988). */
function likeness(a, b) {
  return a.length + b.length ? (2 * shared(a, b)) / (a.length + b.length) : 1;
}

const fold = (word) => word.toLowerCase().replaceAll("_", "-").replaceAll(" ", "-");

/** The choice spelt most like `word`, or the one that it begins; null where none is near. */
function nearest(word, choices, cutoff = 0.7) {
  const folded = new Map();
  for (const choice of choices) {
    folded.set(fold(choice), folded.get(fold(choice)) ?? choice);
  }
  const written = fold(word).slice(0, LONGEST_COMPARED);
  let near = null;
  for (const choice of folded.keys()) {
    const score = likeness([...choice], [...written]);
    if (score >= cutoff && (!near || score > near.score || (score === near.score && choice > near.choice))) {
      near = { choice, score };
    }
  }
  const begun = written.length > 2 ? [...folded.keys()].filter((choice) => choice.startsWith(written)) : [];
  return folded.get(near?.choice ?? (begun.length === 1 ? begun[0] : "")) ?? null;
}

/** Words for a sentence: `a, b or c`, cut after `most`. */
function listed(words, most = 12) {
  if (words.length > most) {
    return `${words.slice(0, most).join(", ")} and ${words.length - most} more`;
  }
  return [words.slice(0, -1).join(", "), words.at(-1) ?? ""].filter(Boolean).join(" or ");
}

function escaped(char) {
  const simple = { "\n": "\\n", "\r": "\\r", "\t": "\\t" }[char];
  const number = char.codePointAt(0);
  const [letter, digits] = number < 0x100 ? ["x", 2] : number < 0x10000 ? ["u", 4] : ["U", 8];
  return simple ?? `\\${letter}${number.toString(16).padStart(digits, "0")}`;
}

/** A value for a sentence: in quotes, on one line, not too long. */
function shown(value) {
  const letters = [...String(value)];
  const text = letters.length <= MOST_SHOWN ? letters.join("") : `${letters.slice(0, MOST_SHOWN - 1).join("")}…`;
  return `'${text.replace(UNPRINTABLE, escaped)}'`;
}

/** A text in quotes as the command line puts a time that is none: backslashes doubled, what cannot be seen spelt out. */
function quoted(text) {
  const mark = text.includes("'") && !text.includes('"') ? '"' : "'";
  const spelt = text.replaceAll("\\", "\\\\").replace(UNPRINTABLE, escaped);
  return mark + (mark === "'" ? spelt.replaceAll("'", "\\'") : spelt) + mark;
}

/** What sort of value it is, for a sentence. */
function sortOf(value) {
  if (value === null) {
    return "empty";
  }
  if (typeof value === "boolean") {
    return `the word ${value}`;
  }
  if (typeof value === "number") {
    return `the number ${value}`;
  }
  return typeof value === "string" ? `the text ${shown(value)}` : Array.isArray(value) ? "a list" : "fields (name: value)";
}

/** The name of a list or kind in words. */
const told = (name) => name.replaceAll("-", " ").replaceAll("_", " ");

export { likeness, nearest, listed, shown, quoted, sortOf, told };
