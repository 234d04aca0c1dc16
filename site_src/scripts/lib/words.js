// Words as the search compares them: without accents and endings, numbers as figures. Pure.

import { stemmer } from "stemmer";

const NUMBERS = "zero one two three four five six seven eight nine ten eleven twelve".split(" ");
const TENS = { twenty: 20, thirty: 30, forty: 40, fifty: 50, hundred: 100, hundreds: 100, fifties: 50 };
const IDLE = new Set(
  (
    "a an and any are as at be been by can could do does doing did for from get gets getting give go goes going gone went good has had have" +
    " having her hers him his how i if in into is it its just let lets like make makes me my of on or our out please she should" +
    " so some that the their them then there they this those to too us use using very want was we were what when where which" +
    " while who why will with would you your whats hes shes theyre dont doesnt isnt cant wont ive very really also vs versus poor bad badly" +
    " someone somebody anyone anybody everyone everybody stuff got id weve youre thats theres didnt wasnt arent havent hasnt" +
    " because routine cos coz couldnt shouldnt wouldnt need needs needed seems anything pls plz thanks" +
    " gonna gotta wanna kinda sorta might may must actually basically honestly literally seriously simply maybe perhaps probably currently already though" +
    " although however until yet etc ok okay hi hello sorry damn stupid hell am im ive weve theyve hes shes happen happens happening supposed trying try" +
    " tries keep keeps keeping pretty quite rather totally completely constantly apparently obviously anyway anyways whatever everything anywhere everywhere since during" +
    " he himself herself itself themselves than about shall whom whose such upon among able avoid avoiding"
  ).split(" "),
);
// Spelled in two ways, or bent in a way that no rule of endings knows.
const ALIKE = new Map(
  Object.entries({
    metre: "meter", centre: "center", colour: "color", practise: "practice", programme: "program", grey: "gray", swam: "swim",
    swum: "swim", flying: "flyer", swimmer: "swim", sank: "sink", sunk: "sink", feet: "foot", kerb: "curb", breath: "breathe", kids: "kid",
    breastroke: "breaststroke", brestroke: "breaststroke", brest: "breast", backcrawl: "backstroke", bouy: "buoy", sox: "sock", tired: "tire", tires: "tire", minute: "min",
    mins: "min", faster: "fast", fastest: "fast", slower: "slow", slowest: "slow", easier: "easy", deeper: "deep", lower: "low", sprinter: "sprint",
    racer: "race", kicker: "kick", backstroker: "backstroke", breaststroker: "breaststroke", freestyler: "freestyle", dolphining: "dolphin",
    higher: "high", splits: "split", dying: "die", dies: "die", lying: "lie", flexible: "flex", lightening: "lightning", lightnin: "lightning", medecine: "medicine", parashoot: "parachute", flexibility: "flex",
    fell: "fall", fallen: "fall", came: "come", forgot: "forget", forgotten: "forget", held: "hold", kept: "keep", stood: "stand", threw: "throw", thrown: "throw", bled: "bleed",
    drank: "drink", ran: "run", sat: "sit", stuck: "stick", swung: "swing", taught: "teach", shook: "shake", spun: "spin", tore: "tear", torn: "tear", felt: "feel",
    brought: "bring", bent: "bend", children: "kid", childs: "kid", child: "kid", teeth: "tooth", swollen: "swell", coughed: "cough", asma: "asthma", ankels: "ankle", tonite: "tonight", broke: "broken", heats: "race", seasure: "seizure", siezure: "seizure", seizer: "seizure", ceasure: "seizure", concusion: "concussion", dove: "dive", dived: "dive", mother: "mum", mom: "mum", father: "dad", grandma: "grandad", grandpa: "grandad", youth: "junior", youths: "junior", cadets: "junior", nite: "night", settings: "configuration", pregnant: "pregnancy", asthmatic: "asthma", epileptic: "epilepsy", diabetic: "diabetes", lite: "light", thru: "through", hite: "height", banged: "bang", freestile: "freestyle",
  }),
);
// Spelled in two ways by rule, UK and US: colour and color, metre and meter, realise and realize, anaemia and anemia, travelling and traveling.
/** @type {[RegExp, string][]} */
const SPELLED = [
  [/(?<=\p{L}{3})our(?=s|ed|ing|ful|ite|$)/gu, "or"], [/(?<=\p{L}{2}[bcdhtv])re(?=s?$|d$)/gu, "er"], [/(?<=\p{L}{3})is(?=e[sdr]?$|ing$|ation)/gu, "iz"],
  [/(?<=\p{L}{2})yse(?=[sdr]?$)/gu, "yze"], [/(?<=\p{L})(?:ae|oe)(?=\p{L}{2})/gu, "e"], [/(?<=\p{L}{2}[aeiou])ll(?=ing$|ed$|er$)/gu, "l"],
];
const COMPOUND = /[\p{L}\p{N}]+(?:['’-][\p{L}\p{N}]+)+/gu;
const REPS = /(\d+)\s*(?:[x×*]|lots of|times|by)\s*(\d+)(?:m|s)?(?![\p{L}\p{N}])|(?<!\p{N})(\d{1,2})\s+(\d{2,3})['’]?s(?![\p{L}\p{N}])/gu; // 8 x 50 is one thing
const METRES = /(?<=\d)\s*(?:m|mtrs?|met(?:re|er)s?)(?![\p{L}\p{N}])/gu; // 200 m is a 200
const SHORTENED = /(?<=\p{L})['’](?=(?:s|t|re|ve|ll|d|m)(?![\p{L}\p{N}]))/gu; // doesn't is one word

/** @param {string} text */
const plain = (text) => text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase().replace(SHORTENED, "").replace(METRES, "").replace(REPS, "$1$3x$2$4");

const LETTERS_ALONE = /^[A-Za-z ]*$/; // as most of what is typed is: there is nothing to make alike

/**
 * The words of a text, without accents, in small letters.
 * @param {string} text
 * @returns {string[]}
 */
export const wordsOf = (text) => (LETTERS_ALONE.test(text) ? text.toLowerCase().split(" ").filter(Boolean) : plain(text).match(/[\p{L}\p{N}]+/gu) ?? []);

/** A word that says reps of a distance: 8x50. */
export const OF_REPS = /^\d+x\d+$/;

/** The same of any number of reps.
 * @param {string} word */
export const ofDistance = (word) => word.replace(/^\d+/, "");

/** Words as they stand in an index; "warm-up" also as "warmup", 8x50 also as x50.
 * @param {string} text */
export const indexed = (text) => {
  const words = wordsOf(text);
  if (LETTERS_ALONE.test(text)) {
    return words;
  }
  const compounds = plain(text).match(COMPOUND) ?? [];
  return [...words, ...compounds.map((word) => wordsOf(word).join("")), ...words.filter((word) => OF_REPS.test(word)).map(ofDistance)];
};

/**
 * A word without the endings that people change: knees, kicking and 100s are knee, kick and 100; six is 6. Idle words are none.
 * @param {string} word
 * @returns {string | null}
 */
export function stem(word) {
  const known = STEMS.get(word);
  if (known !== undefined) {
    return known;
  }
  const own = stemOf(word);
  STEMS.set(word, own);
  return own;
}

/** @type {Map<string, string | null>} words come again and again */
const STEMS = new Map();

/** A word as it is written here, where it is known to be written, or to be told, otherwise.
 * @param {string} word */
export const spelled = (word) => ALIKE.get(word) ?? ALIKE.get(word.replace(/s$/, "")) ?? word;

/** @type {(word: string) => string | null} */
function stemOf(word) {
  if (IDLE.has(word)) {
    return null;
  }
  const number = NUMBERS.indexOf(word);
  if (number > 0) {
    return String(number);
  }
  if (word in TENS) {
    return String(TENS[/** @type {keyof typeof TENS} */ (word)]);
  }
  if (/^\d/.test(word)) {
    return word.replace(/(?<=\d)(s|m|th|x)$/, "");
  }
  return stemmer(SPELLED.reduce((own, [way, other]) => own.replace(way, other), spelled(word)).replace(/^(.*[^s])s$/, "$1"));
}

/** The words of a question that are worth looking for, as they are compared.
 * @param {string} text
 * @returns {string[]} */
export const stems = (text) => wordsOf(text).flatMap((word) => stem(word) ?? []);

/** Letters that may be wrong: none in a number or a very short word; one in "kik", two from six letters on: swapped letters are two.
 * @param {string} term */
export const mistakes = (term) => (/^\d/.test(term) || term.length < 3 ? 0 : term.length < 6 ? 1 : 2);

/** Letters to change, add, take away or swap with the next to make one word of another (Damerau 1964, each place changed once); more
 * than `most` is as good as any.
 * @param {string} one
 * @param {string} other
 * @param {number} most */
export function distance(one, other, most) {
  if (Math.abs(one.length - other.length) > most) {
    return most + 1;
  }
  /** @type {[number[], number[]]} */
  let [before, row] = [[], Array.from({ length: other.length + 1 }, (_, at) => at)];
  for (let at = 1; at <= one.length; at += 1) {
    [before, row] = [row, nextRow(one, other, at, before, row)];
    if (Math.min(...row) > most) {
      return most + 1;
    }
  }
  return row[other.length] ?? most + 1;
}

/** The next row of what beginnings are apart.
 * @type {(one: string, other: string, at: number, before: number[], row: number[]) => number[]} */
function nextRow(one, other, at, before, row) {
  const next = [at];
  for (let to = 1; to <= other.length; to += 1) {
    const same = one[at - 1] === other[to - 1] ? 0 : 1;
    const isSwapped = at > 1 && to > 1 && one[at - 1] === other[to - 2] && one[at - 2] === other[to - 1];
    const swapped = isSwapped ? /** @type {number} */ (before[to - 2]) + 1 : Infinity;
    next.push(Math.min(/** @type {number} */ (row[to]) + 1, /** @type {number} */ (next[to - 1]) + 1, /** @type {number} */ (row[to - 1]) + same, swapped));
  }
  return next;
}
