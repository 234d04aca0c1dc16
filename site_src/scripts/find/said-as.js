// What is said in several ways, said in one, before a question is taken apart: hours as minutes, "we forgot the fins" as "no fins". Pure.

import { stems } from "../lib/words.js";

/** @typedef {[RegExp, string | ((...found: string[]) => string)]} Saying a way to say something, and the plain one */

const HOUR = "(?:hours?|hrs?)";

/** Hours as minutes. @type {Saying[]} */
const TIMES = [
  [new RegExp(`(?:\\b(?:three|3) quarters|\\b3/4|¾)(?: of an)? ?${HOUR}\\b`, "gu"), "45 min"],
  [new RegExp(`\\b(?:quarter|1/4)(?: of an)? ${HOUR}\\b`, "gu"), "15 min"],
  [new RegExp(`\\b(?:an? |one |1 ?)?${HOUR} and a half\\b|\\b(?:1|one)(?: and a half|[.,]5| ?½| 1/2) ?${HOUR}\\b`, "gu"), "90 min"],
  [new RegExp(`\\b(?:an? |one |1 ?)?${HOUR} and a quarter\\b|\\b1[.,]25 ?${HOUR}\\b`, "gu"), "75 min"],
  [new RegExp(`(?:\\bhalf(?: an?|-?)|\\b1/2|½)(?: an?)? ?-?${HOUR}\\b`, "gu"), "30 min"],
  [/\b([12]) ?(?:hours?|hrs?|h) ?(?:and )?([0-5]\d) ?(?:min(?:ute)?s?|m)?\b/gu, (_, hours = "", minutes = "") => `${60 * Number(hours) + Number(minutes)} min`],
  [/\b(?:an|one|1) hour\b|\b1 ?hr?\b/gu, "60 min"],
  [/\b(?:two|2) hours\b|\b2 ?hrs?\b/gu, "120 min"],
];

const BODY = "(back|necks?|shoulders?|elbows?|wrists?|hips?|knees?|ankles?|f(?:oo|ee)t|heels?|arms?|legs?|ears?|eyes?)";

/** What hurts. @type {Saying[]} */
const PAINS = [
  [new RegExp(`\\b(?:bad|dodgy|gammy|injured|painful|crook|busted|tweaked|strained|aching|achy) ${BODY}\\b`, "gu"), "sore $1"],
  [new RegExp(`\\b${BODY} (?:is |are |has been |keeps? )?(?:hurts?|hurting|aches?|aching|painful|in pain|playing up|niggling)\\b`, "gu"), "sore $1"],
  [new RegExp(`\\bbad for (?:the |your |my |his |her |their )?${BODY}\\b`, "gu"), "sore $1"],
];

/** An age as what it tells of the water, and other turns of speech. @type {Saying[]} */
const OTHERS = [
  [/\bmain sets?\b/gu, "set"],
  [/\b(?:build|make|write|create|plan|design|compose|invent|come up with|put together) (?:me |us )?(?:(?:a|an|my|our|own|the|new|quick|simple) )*(?:practice|session|workout|training|lesson)\b/gu, "make a practice"],
  [/\b(?:no|without(?: a| any| the)?) (?:water|pool)\b(?! (?:shoe|cup|buoy|noodle|toy|bottle|break|clock))/gu, "on land"],
  [/\bwhat(?: does| do|['’]?s| is| are) ([\p{L}\p{N}/@ -]+?) (?:mean|stand for|stands for|means)\b/gu, "glossary $1"],
  [/\b(?:what|which)(?: drill| one)? (?:comes|goes|to do|to teach)(?: next)? after\b|\b(?:what(?:['’]?s| is)? )?next(?: step| drill| stage)? after\b/gu, "progression"],
  [/\bafter ([\p{L} ]+?) (?:what|what(?:['’]?s| is)) next\b/gu, "progression $1"],
  [/\bfrom (?=[\p{L} ]+ (?:to|into) )/gu, "progression "],
  [/\b(?:\d|1[0-2])\s*-?\s*(?:years?|yrs?)[\s-]*olds?\b|\b(?:u|under)[\s-]?(?:\d|1[0-2])s?\b(?!\s*-?\s*(?:min|lane|m\b|met(?:re|er)|sec|rep|length|swimmer))/gu, "children"],
];

const BEFORE = "(?:forgot(?:ten)?|left behind|missing|(?:have|has|did|do|does|had|got)(?:n['’]?t| not)(?: got| have| bring)?|(?:run|ran) out of|nobody has|no one has|none of (?:them|us) ha(?:s|ve)|not enough|too few|lost|locked away)";
const OUR = "(?:(?:the|our|my|her|his|their|any|enough|all) )*";
const AFTER = "(?: (?:are|is|were|have|has|all|been|got))* (?:missing|forgotten|gone|stolen|locked(?: away| up)?|not here|broken|flat|left behind|(?:left )?at home|in the other pool)";

const DARE = "(?=.*\\b(?:games?|contests?|competitions?|challenges?|dares?|longest|farthest|furthest|who can)\\b)";

/** Holding the breath or staying under as a game, in any words: the danger is meant to be found and not a game. @type {Saying[]} */
const DARES = [
  [new RegExp(`^${DARE}.*\\b(?:hold\\w*|held)\\b.*\\bbreath.*$`, "u"), "breath-hold contest"],
  [new RegExp(`^${DARE}.*\\bunder ?water\\b.*$`, "u"), "underwater record"],
  [/^.*\bno breaths? \d.*$/u, "breath-hold contest"],
];

/** "No" before gear that is told to be away in other words: the same words of anything else stay what they are.
 * @param {[string, string][]} gear each piece with a name of it
 * @returns {Saying[]} */
export function awayIn(gear) {
  const names = [...new Set(gear.map(([, name]) => name.toLowerCase()))].filter((name) => stems(name).length).sort((one, two) => two.length - one.length);
  const any = `(${names.map((name) => name.replace(/[^\p{L}\p{N} -]/gu, ".")).join("|")})s?`;
  return [
    [new RegExp(`(?<![\\p{L}])${BEFORE} ${OUR}${any}(?![\\p{L}])`, "gu"), "no $1"],
    [new RegExp(`(?<![\\p{L}])${OUR}${any}${AFTER}(?![\\p{L}])`, "gu"), "no $1"],
  ];
}

/** A question in the words that are heard.
 * @param {string} text
 * @param {Saying[]} away */
export const saidPlainly = (text, away) =>
  [...DARES, ...TIMES, ...PAINS, ...OTHERS, ...away].reduce((so, [way, plain]) => so.replace(way, /** @type {string} */ (plain)), text.toLowerCase());
