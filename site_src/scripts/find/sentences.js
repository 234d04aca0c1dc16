// What is typed for an entry to the word: "they finished the set", where words that say what are too few to tell it from others. Pure.

import { stem, wordsOf } from "../lib/words.js";

const MOST = 2; // entries that one sentence is typed for: what is typed for more says too little
const LEAST_WORDS = 3; // of a sentence that another may be like
const SMALL = 0.5; // the share of small words from which on it is one
const LIKE = 0.75; // how like a sentence is that means the same

/** Every word of a sentence, small ones too, as it is compared.
 * @param {string} text */
const everyWord = (text) => wordsOf(text).map((word) => stem(word) ?? word);

/** Whether half of the words or more are small: "what do I say to them".
 * @param {string} text */
function isOfSmallWords(text) {
  const words = wordsOf(text);
  return words.length >= LEAST_WORDS && words.filter((word) => stem(word) === null).length >= SMALL * words.length;
}

export class Sentences {
  constructor() {
    /** @type {Map<string, Set<number>>} the entries of each, to the word */
    this.entries = new Map();
    /** @type {Map<string, string[]>} those of small words that hold a word */
    this.holding = new Map();
  }

  /** Take in what is typed for entries, a step each.
   * @param {string[]} typed by entry, each part after a semicolon */
  *taking(typed) {
    for (const [entry, names] of typed.entries()) {
      yield names.split("; ").filter(Boolean).forEach((name) => this.#take(name, entry));
    }
  }

  /** @type {(name: string, entry: number) => void} */
  #take(name, entry) {
    const words = everyWord(name);
    const whole = words.join(" ");
    const known = this.entries.get(whole);
    this.entries.set(whole, (known ?? new Set()).add(entry));
    if (!known && isOfSmallWords(name)) {
      new Set(words).forEach((word) => {
        const holding = this.holding.get(word) ?? [];
        holding.push(whole);
        this.holding.set(word, holding);
      });
    }
  }

  /** The entries that a text is typed for as it stands, or a sentence that is nearly the same; none where more share it.
   * @param {string} text
   * @returns {Set<number>} */
  of(text) {
    const whole = everyWord(text).join(" ");
    const found = this.entries.get(whole) ?? (isOfSmallWords(text) ? this.entries.get(this.#likest(whole)) : null);
    return found && found.size <= MOST ? found : new Set();
  }

  /** Of sentences of small words the one that is most like another, by twice what they share of what both have (Dice 1945), each word by how rare
   * it is in them; "" where none is like it.
   * @param {string} whole */
  #likest(whole) {
    /** @type {(word: string) => number} */
    const tells = (word) => Math.log(1 + this.entries.size / (this.holding.get(word)?.length ?? 0.5));
    /** @type {(words: Iterable<string>) => number} */
    const sum = (words) => [...words].reduce((all, word) => all + tells(word), 0);
    const asked = new Set(whole.split(" "));
    const others = new Set([...asked].flatMap((word) => this.holding.get(word) ?? []));
    let best = { whole: "", like: LIKE };
    for (const other of others) {
      const words = new Set(other.split(" "));
      const like = 2 * sum([...asked].filter((word) => words.has(word))) / (sum(asked) + sum(words));
      best = like >= best.like ? { whole: other, like } : best;
    }
    return best.whole;
  }
}
