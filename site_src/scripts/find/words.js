// Finding by words, typing errors forgiven. Pure: no page, no storage.

const IDLE = new Set("a an and are as at by do for from had has have her his i in is it its my of on or she that the their they to too when with".split(" "));

/** The words of a text: lower case, without accents, letters and digits only. */
function wordsOf(text) {
  return text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
}

/** Typing errors that a word may hold. One of three letters may miss one between its ends: "kik" for "kick". */
function allowance(asked, word) {
  if (asked.length < 4) {
    return asked.length === 3 && word.length === 4 && asked[0] === word[0] && asked[2] === word[3] ? 1 : 0;
  }
  return asked.length < 8 ? 1 : 2;
}

/** Whether two words differ by at most `most` letters put in, left out, changed, or swapped with the next. */
function isNear(one, other, most) {
  if (Math.abs(one.length - other.length) > most) {
    return false;
  }
  let before = [];
  let last = Array.from({ length: other.length + 1 }, (_, column) => column);
  for (let row = 1; row <= one.length; row += 1) {
    const current = [row];
    let least = row;
    for (let column = 1; column <= other.length; column += 1) {
      const same = one[row - 1] === other[column - 1];
      let cost = Math.min(last[column] + 1, current[column - 1] + 1, last[column - 1] + (same ? 0 : 1));
      if (row > 1 && column > 1 && one[row - 1] === other[column - 2] && one[row - 2] === other[column - 1]) {
        cost = Math.min(cost, before[column - 2] + 1);
      }
      current.push(cost);
      least = Math.min(least, cost);
    }
    if (least > most) {
      return false;
    }
    [before, last] = [last, current];
  }
  return last[other.length] <= most;
}

/** How well a word of an entry answers a word that was asked for, 0 to 1. */
function likeness(asked, word) {
  if (word === asked) {
    return 1;
  }
  if (word.startsWith(asked)) {
    return 0.9;
  }
  if (asked.length > 3 && word.length > 3 && asked.startsWith(word)) {
    return 0.6; // "kicking" asked, "kick" written
  }
  return isNear(asked, word, allowance(asked, word)) ? 0.5 : 0;
}

/** An index of entries: each is a list of [text, weight]. */
export class WordIndex {
  constructor(entries) {
    this.words = new Map(); // word -> Map(number of the entry -> weight)
    entries.forEach((fields, number) => fields.forEach(([text, weight]) => this.#take(number, text, weight)));
  }

  #take(number, text, weight) {
    for (const word of wordsOf(text)) {
      const where = this.words.get(word) ?? this.words.set(word, new Map()).get(word);
      where.set(number, Math.max(weight, where.get(number) ?? 0));
    }
  }

  /** Entries that answer every word asked for, as a Map from number to score; null where nothing is asked. */
  search(text) {
    const all = wordsOf(text);
    const asked = all.filter((word) => !IDLE.has(word));
    if (!asked.length) {
      return null;
    }
    return asked.map((word) => this.#one(word)).reduce((found, next) => {
      const both = new Map();
      for (const [number, score] of found) {
        if (next.has(number)) {
          both.set(number, score + next.get(number));
        }
      }
      return both;
    });
  }

  #one(asked) {
    const scores = new Map();
    for (const [word, where] of this.words) {
      const like = likeness(asked, word);
      if (like) {
        for (const [number, weight] of where) {
          scores.set(number, Math.max(scores.get(number) ?? 0, like * weight));
        }
      }
    }
    return scores;
  }
}
