// What a question asks for beside its words: minutes, lanes, heads, gear that is there or is not, a squad, a kind of page. Pure.

import { METRES_PER_YARD } from "../arithmetic/pools.js";
import { stems, wordsOf } from "../lib/words.js";
import { leftOut } from "./left-out.js";
import { isAway, isDare, isHarm, saidPlainly } from "./said-as.js";

/**
 * @typedef {object} Question
 * @property {string} asked as it is typed
 * @property {string} words those beside what is heard; "" where they only name what is asked for by minutes or room, a practice or a set
 * @property {number | null} minutes
 * @property {number | null} lanes
 * @property {number | null} swimmers
 * @property {number | null} adults who are there
 * @property {number | null} metres of a set or a practice
 * @property {Set<string>} gear at hand, where minutes, lanes or reps are told, too
 * @property {boolean} isSwumWith whether that gear is what reps are swum with: fins 8x50
 * @property {Set<string>} without gear
 * @property {import("./left-out.js").Unlike[]} unlike what is not wanted
 * @property {string[]} groups those of a squad that it names
 * @property {Set<string>} squads the terms of its name
 * @property {Set<string>} kinds
 * @property {boolean} isAway whether the gear that is not there is told to be missing, forgotten or broken
 * @property {boolean} isOver whether no more is told than the minutes that are left
 * @property {boolean} isToMake whether a practice is to be made, and not found
 *
 * @typedef {object} Names what a question may name
 * @property {[string, string][]} gear each piece with a name of it
 * @property {import("./left-out.js").Name[]} out what may be left out by name
 * @property {import("./said-as.js").Saying[]} away how it is said that gear is not there
 * @property {[string, string][]} squads each lane group with its squad
 * @property {number} lanes of the widest pool
 */

/** Words that name a kind of page: what is of that kind stands higher, and the word itself counts little. */
const KIND_WORDS = Object.entries({
  drill: "drill exercise activity",
  set: "set series",
  practice: "practice session workout training lesson class evening night morning day",
  benchmark: "test benchmark trial protocol",
  fault: "fix correct cure fault problem mistake error wrong stop help",
  block: "block cycle season plan",
  gear: "gear equipment kit gadget device thing",
  progression: "progression stage teach teaching learn introduce",
  danger: "danger hazard safety risk",
  source: "source study research evidence paper",
});
/** @type {Map<string, string>} */
export const KIND_OF = new Map(KIND_WORDS.flatMap(([kind, words]) => words.split(" ").flatMap((word) => stems(word).map((term) => [term, kind]))));

const LEFT = /(?<=\d\s*-?\s*(?:minutes?|mins?)\s+|(?:^|[^\p{L}])(?:no|without)\s+[\p{L}-]+\s+)(?:left|to go|to fill|to kill|in hand|early|to spare|spare|remaining|today|tonight|available)(?![\p{L}])/gu; // 15 minutes left is no side
const NOW = /(?<=\d\s*lanes?\s+)(?:today|tonight|only|left|free|open|available)(?![\p{L}])/gu;
const ABOUT = /(?<![\p{L}])(?:only|just|about|only got|got only|just got|around|roughly|under|less than|at most|max|up to|within)\s+(?=\d+\s*-?\s*(?:min|lane))/gu;
const AT_THE_END = /(?<![\p{L}])(?:last|final)\s+(?=\d+\s*-?\s*min)/u;
const METRES = /(?<![\d.x×*])(\d[.,]?\d?)\s*k(?:m)?(?![\p{L}\p{N}])|(?<![\dx×*]\s*)(\d{3,4})\s*(?:m|metres?|meters?|(y|yds?|yards?))?(?![\p{L}\p{N}])/u; // 2k, 1500 m, 2000 yards
const LEAST_ALONE = 1600; // what is told alone and is less is a race
const LEAST_METRES = 600; // what is less is a rep or a race
const LEAST_OF_AN_END = 200; // but of what opens or closes a practice
const AN_END = /\b(?:warm|loosen|cool|swim|wind)(?:ing|er)?[\s-]?(?:ups?|downs?)\b|\bloosen\w*/u;
/** Whether what opens or closes a practice is asked for.
 * @param {string} words */
export const isOfAnEnd = (words) => AN_END.test(words);
const THE_END = "cool-down"; // what is done in the last minutes, where nothing else is asked for
const MINUTES = /(\d+)\s*-?\s*(?:minutes?|mins?|['′])(?![\p{L}\p{N}])/u;
const LANES = /(?<!too many .*)(\d+)\s*lanes?(?![\p{L}\p{N}])/u; // too many in one lane is no number of lanes
const HALF_POOL = /\bhalf (?:of )?(?:an? |the |our )?pool\b/u;
const HEADS = "swimmers|kids|children|heads|athletes|youngsters|juniors|beginners|boys|girls|people|pupils|seniors|minis|of them";
const ADULTS = "coach|coaches|adults?|teachers?";
const SWIMMERS = new RegExp(`(?<![x×*]\\s*)(\\d+)\\s*(?:${HEADS})(?![\\p{L}\\p{N}])`, "u");
const COACHES = new RegExp(`(\\d+)\\s*(${ADULTS})(?![\\p{L}\\p{N}])`, "u");
const COUNTED = new RegExp(`[\\p{L}]+(?=\\s*-?\\s*(?:min|(?:lanes?|${HEADS}|${ADULTS})\\b))`, "gu"); // twelve minutes, two lanes
const OF_WHOM = /(?:^|[^\p{L}])(?:swimmers?|kids?|child(?:ren)?|boys?|girls?|lads?|lass(?:es)?|athletes?|teenagers?|someone|somebody|one)\s+(?:with|who\s+ha[sd]|has|in\s+an?)\s/u;
const TO_MAKE = /\bmake a practice\b(?! (?:shorter|longer|harder|easier|better|fun|interesting|safer|more|less|work)\b)/u; // as it is said plainly
const OF_SETS = /\d\s*[x×*]\s*\d|\b(?:25|50|75|100|150|200|300|400)s\b/u; // 8 x 50, 75s

const A_LEVEL = "(?:beginners?|novices?|learners?|improvers?|intermediates?|children|kids|juniors|minis)";
const FOR_A_LEVEL = new RegExp(`^(?:for )?${A_LEVEL}[ ,]+\\d{2,3} ?(?:m|met(?:re|er)s?|y|yards?)?$|^\\d{2,3} ?(?:m|met(?:re|er)s?|y|yards?)?[ ,]+(?:for )?${A_LEVEL}$`, "u"); // children 25 m

export const WHOLES = new Set(["set", "practice"]);

/** @type {Question} */
export const NOTHING_ASKED = {
  asked: "", words: "", metres: null, minutes: null, lanes: null, swimmers: null, adults: null, without: new Set(), unlike: [], isSwumWith: false, gear: new Set(), groups: [], squads: new Set(), kinds: new Set(), isOver: false, isToMake: false, isAway: false,
};

/** What goes by two names, by the one that the catalogue uses: flutter on the back is no work of the whole stroke.
 * @param {string} words */
export const asNamed = (words) => (stems(words).length > 3 ? words : words.replace(/\bback(?:stroke| crawl) (?=kick|legs)/giu, "back ").replace(/\bback legs\b/giu, "back kick"));

/** A number that is told with its unit, and the text without it.
 * @param {string} text
 * @param {RegExp} pattern
 * @returns {[number | null, string]} */
function counted(text, pattern) {
  const found = pattern.exec(text);
  return found ? [Number(found[1]), text.replace(found[0], " ")] : [null, text];
}

/**
 * @param {string} text
 * @param {Names} names
 * @returns {Question}
 */
export function questionOf(text, { gear, out, away, squads, lanes: most }) {
  const plainly = saidPlainly(text, away).replace(COUNTED, (word) => inFigures(word));
  const said = plainly.replace(LEFT, " ");
  const half = most > 1 ? said.replace(HALF_POOL, (found) => `${found} ${Math.floor(most / 2)} lanes`) : said;
  const plain = half.replace(ABOUT, "").replace(NOW, " ");
  const [minutes, timeless] = counted(plain.replace(AT_THE_END, ""), MINUTES);
  const [lanes, wide] = counted(timeless, LANES);
  const [swimmers, ofHeads] = counted(wide, SWIMMERS);
  const [adults, rest] = lanes || swimmers || minutes ? grownUps(ofHeads) : [null, ofHeads];
  const [metres, near] = farIn(rest);
  const { without, unlike, rest: bare } = leftOut(near, out);
  const isOfReps = OF_SETS.test(bare);
  const isHere = minutes !== null || lanes !== null;
  const left = leftOf(plain, { bare, isLeft: said !== plainly });
  const words = left.isLast ? THE_END : bare;
  const named = squadsIn(squads, new Set(wordsOf(words)));
  const kinds = kindsIn(words, said, { isOfReps, gear, metres });
  return {
    asked: text, words: [minutes, lanes, swimmers, metres].some(Boolean) ? besides(words, named.squads) : words.trim(), metres, minutes, lanes, swimmers, adults, without, unlike,
    isSwumWith: isOfReps && !isHere, gear: new Set(isHere || isOfReps ? gearIn(words, gear) : []),
    ...named,
    kinds,
    isOver: left.isOver,
    isToMake: TO_MAKE.test(said),
    isAway: isAway(text.toLowerCase(), away, without),
  };
}

/** The lane groups of squads that are named, and the terms of their names.
 * @type {(squads: [string, string][], asked: Set<string>) => {groups: string[], squads: Set<string>}} */
function squadsIn(squads, asked) {
  const named = squads.filter(([, squad]) => asked.has(squad.toLowerCase()));
  return { groups: named.map(([group]) => group), squads: new Set(named.flatMap(([, squad]) => stems(squad))) };
}

/** Whether no more is told than minutes: the last ones, or any that are left over.
 * @type {(plain: string, own: {bare: string, isLeft: boolean}) => {isLast: boolean, isOver: boolean}} */
function leftOf(plain, { bare, isLeft }) {
  const isAlone = !stems(bare).length;
  const isLast = isAlone && AT_THE_END.test(plain);
  return { isLast, isOver: isLast || (isAlone && isLeft && MINUTES.test(plain)) };
}

/** The kinds of pages that a question asks for: reps are a set's, metres alone a practice's, "a boy with" is of a need, but with gear.
 * @type {(words: string, said: string, more: {isOfReps: boolean, gear: [string, string][], metres: number | null}) => Set<string>} */
const kindsIn = (words, said, { isOfReps, gear, metres }) => {
  const isOfWhom = OF_WHOM.test(said) && !gearIn(said, gear).length;
  const kinds = new Set([...stems(words).flatMap((term) => KIND_OF.get(term) ?? []), ...(isOfReps || FOR_A_LEVEL.test(words) ? ["set"] : []), ...(isOfWhom ? ["need"] : []), ...(isDare(said) || isHarm(said) ? ["danger"] : [])]);
  if (/\bseasons?\b/u.test(words)) {
    kinds.add("season");
  }
  return metres && !kinds.size ? kinds.add("practice") : kinds;
};

/** Words that ask for more than a practice or a set, of a squad or not, else none: then only what fits tells one from another.
 * @type {(words: string, squads: Set<string>) => string} */
const besides = (words, squads) => (stems(words).every((term) => squads.has(term) || WHOLES.has(KIND_OF.get(term) ?? "")) ? "" : words.trim());

/** Whether no more is told than how far, and that is a practice.
 * @type {(text: string, told: string, metres: number) => boolean} */
const isFarAlone = (text, told, metres) => metres >= LEAST_ALONE && !stems(text.replace(told, " ")).length;

/** How far a set or a practice is to be, and the text without it; of nothing else.
 * @type {(text: string) => [number | null, string]} */
const farIn = (text) => {
  const [told = "", thousands, whole, yards] = METRES.exec(text) ?? [];
  const metres = thousands ? 1000 * Number(thousands.replace(",", ".")) : Number(whole) * (yards ? METRES_PER_YARD : 1);
  const isEnd = AN_END.test(text);
  const isWhole = isEnd || isFarAlone(text, told, metres) || stems(text).some((term) => WHOLES.has(KIND_OF.get(term) ?? ""));
  return metres >= (isEnd ? LEAST_OF_AN_END : LEAST_METRES) && (thousands || isWhole) ? [metres, text.replace(told, " ")] : [null, text];
};

/** The adults who are told, and the text without their number: who is there says what is asked, "one coach two lanes".
 * @type {(text: string) => [number | null, string]} */
const grownUps = (text) => {
  const [adults] = counted(text, COACHES);
  return [adults, text.replace(COACHES, "$2")];
};

/** A number in words as figures; any other word as it stands.
 * @param {string} word */
function inFigures(word) {
  const [term = ""] = stems(word);
  return /^\d+$/.test(term) ? term : word;
}

/** The gear that a text names.
 * @type {(text: string, names: [string, string][]) => string[]} */
function gearIn(text, names) {
  const terms = stems(text);
  return names.filter(([id, name]) => id !== "none" && terms.some((_, at) => starts(terms.slice(at), stems(name)))).map(([id]) => id);
}

/** @type {(terms: string[], name: string[]) => boolean} */
const starts = (terms, name) => name.length > 0 && name.every((term, at) => terms[at] === term);
