// Whether what is typed says that somebody's life is in danger. Rather one alarm too many: what is harmless is known by what stands beside it, never by
// what is left unsaid. Pure.

import { distance, spelled, wordsOf } from "../lib/words.js";

const WHO = "(?:swimmers?|kids?|child(?:ren)?|boys?|girls?|lads?|man|woman|teenagers?|coach|teacher|lifeguard|parents?|mums?|dads?|someone|somebody|he|she)(?:['’]s)?";
const END = "(?=\\s*(?:$|[?!.,;]|(?:and|help|any ?more|what|in the (?:water|pool)|of the pool)\\b))"; // nothing more is said of it, or it is a matter of the stroke
const NOT = "(?:\\b(?:can)?not|\\bnto|n['’]?t|\\bno longer)";
const OF_THE_STROKE = "(?<!\\bwith (?:an? |the |his |her |bad |sore |weak )*)\\b(?:hips?|elbows?|arms?|wrists?|shoulders?|legs?|knees?|ankles?|feet|foot|body|trunk|core|lungs|muscles|" +
  "kick|stroke|technique|form|line|streamline|posture|position|pace|tempo|rhythm)(?: (?:has|have|had|is|are|just|always|keeps?))*";
const IN_DANGER = new RegExp([
  `(?:${NOT} ?|\\bstop(?:s|ped)? )breath(?:e|ing)\\b${END}`,
  `${NOT} stop(?:ping)? bleeding\\b`,
  `\\b${WHO} (?:has |have |is |are |just |suddenly )*collaps|^collapsed\\b|(?<!${OF_THE_STROKE} )\\bcollaps(?:es|ed)(?: (?:on|at|in|after|by|during)\\b|\\s*(?:$|[?!.,;]))`, // an elbow collapses, too
  `\\b(?:hit|hurt|banged|bumped|cracked|smashed|knocked|whacked|split) (?:his|her|their) head\\b`, // who always hits it has a fault
  `\\bbrok(?:e|en) (?:his|her|their|an?) (?:arm|leg|wrist|ankle|collar ?bone|neck|back)\\b${END}`,
  `${NOT} wak(?:e|ing)\\b`,
  `\\b${WHO} (?:is |are )?${NOT} moving\\b${END}|\\b${WHO} (?:isn['’]?t|aren['’]?t) moving\\b${END}`,
  `(?:\\b${WHO} (?:has |have |is |are |keeps )?|^)(?:went|gone|goes|going) under\\b${END}`,
  `\\b${WHO} (?:\\w+ )?(?:not|\\w+n['’]?t) (?:come|coming) (?:back )?up\\b${END}`,
  "\\b(?:shaking|trembling|twitching|jerking)\\b.*\\b(?:on the (?:floor|ground|deck)|foam\\w*|not (?:answer|respond|react)\\w*)|\\bfoam(?:s|ing)? (?:at|from|round) the mouth\\b",
  "^(?:fire|smoke)[!.]*$|^fire(?:!| (?:in|at|on)\\b)", // a fire start is fast
  `(?<!${OF_THE_STROKE}) (?:is|are) on fire\\b`,
  `\\b(?:${WHO}|him|her) (?:is |are |lies |lying )?(?:on|at) the bottom\\b${END}`,
].join("|"), "u");
/** The same words of what is no danger, a race that is lost, a trial of the alarm, work that is too much, with what is asked for by them. "Knocked out in the
 * heats" and "choked in the race" may be true. @type {import("./said-as.js").Saying[]} */
export const HARMLESS = [
  [/\bknocked out of (?:the |a |an |our |my |his |her |their )*(?:\w+ )?(?:heats?|semis?|semi-?finals?|quarter-?finals?|finals?|race|races|competition|league|gala|meet|relay|round|cup|tournament|qualifying)\b/gu, "lost meet"],
  [/\bknocked out in (?:the |a )?(?:first|second|next|qualifying) round\b/gu, "lost meet"],
  [/\bchok(?:es?|ed) (?:under pressure|(?:at|in) (?:the |his |her |their |big )*(?:meets|galas|competitions|races)|before (?:the |his |her |their |big )*(?:heats|semis|finals|meets|galas|competitions|championships|races))\b/gu, "nervous meet"],
  [/\bdrown(?:ing|ed|s)? in (paper ?work|work|admin|emails?|drills?|data|numbers|choices|options|information)\b/gu, "too much $1"],
  [/\b(?:a |the |our |next )*fire (?:drills?|practices?|exercise|exits?)\b/gu, "evacuation plan"],
  [/\b(?:a |the )*fire in (?:the|his|her|their|my|your) (legs?|belly|arms?|thighs?|calves|lungs)\b/gu, "burning $1"],
  [/\b(?:un)?conscious(?:ly)? (?:in)?competen(?:ce|t)\b/gu, "stages of learning"],
];

const LONG = 7; // letters from which a word is known with one of them wrong
const LONG_BESIDE = 6; // and where others stand beside it
const HEARD = ["collapsed", "collapses", "breathing", "bleeding"];
const KNOWN = new Set([...HEARD, "collapse"]);

/** Whether a word is another, or a slip of a wet thumb away from it.
 * @type {(word: string, other: string, least: number) => boolean} */
const isSlip = (word, other, least) => word === other || (other.length >= least && word[0] === other[0] && distance(word, other, 1) <= 1);

/** The words of a text in the spelling that is known: a siezure is a seizure.
 * @param {string} text */
const asSpelled = (text) => wordsOf(text).map(spelled);

/** Whether one of the words for a danger stands among those of a text.
 * @type {(words: string[], alarm: string[]) => boolean} */
const holds = (words, alarm) => words.some((_, at) => alarm.every((own, k) => isSlip(words[at + k] ?? "", own, alarm.length > 1 ? LONG_BESIDE : LONG)));

/** Whether a text says that somebody's life is in danger: by how it is said, or by one of the words that the hazards have for it.
 * @type {(text: string, alarms: string[]) => boolean} */
export function isInDanger(text, alarms) {
  const said = HARMLESS.reduce((so, [way]) => so.replace(way, " "), text.replace(/\s+/gu, " "));
  const heard = said.replace(/\p{L}+/gu, (word) => (KNOWN.has(word) ? word : HEARD.find((own) => isSlip(word, own, LONG)) ?? word));
  const words = asSpelled(said);
  return IN_DANGER.test(heard) || alarms.some((alarm) => holds(words, asSpelled(alarm)));
}
