// What is said in several ways, said in one, before a question is taken apart: hours as minutes, "we forgot the fins" as "no fins". Pure.

import { stems } from "../lib/words.js";
import { HARMLESS } from "./alarms.js";
import { OF_QUESTIONS } from "./frames.js";

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
  [/\b(?:an? )?couple of min(?:ute)?s\b/gu, "2 min"],
  [/\b(?:an? )?few (?:more )?min(?:ute)?s\b/gu, "5 min"],
  [/\b(?:two|2) hours\b|\b2 ?hrs?\b/gu, "120 min"],
];

const BODY = "(back|necks?|shoulders?|elbows?|wrists?|hips?|knees?|ankles?|f(?:oo|ee)t|heels?|arms?|legs?|ears?|eyes?)";

const JOINT = "(necks?|shoulders?|elbows?|wrists?|hips?|knees?|ankles?|heels?|ears?|eyes?)";
const SAID = "(?=\\s*(?:$|[?!.,;]|(?:and|but|today|tonight|what|which|can|should|how)\\b))"; // where nothing more is said of it

/** What hurts. @type {Saying[]} */
const PAINS = [
  [new RegExp(`\\b(?:injured|painful|busted|tweaked|strained|aching|achy) ${BODY}\\b`, "gu"), "sore $1"],
  [new RegExp(`\\b(?:bad|dodgy|gammy|crook) ${JOINT}\\b${SAID}`, "gu"), "sore $1"], // a bad hip position is a fault
  [/\b(?:bad|dodgy|gammy|crook) back\b(?=\s*(?:$|[?!.,;]|(?:and|but|today|tonight|swimming|when|while|after|from|what|which|can|should|how)\b))/gu, "sore back"], // a bad back kick is a fault
  [new RegExp(`\\b${BODY} (?:is |are |has been |keeps? )?(?:hurts?|hurting|aches?|aching|painful|in pain|playing up|niggling)\\b`, "gu"), "sore $1"],
  [/\b(?:low(?:er)? )?back (?:is |feels |gets |goes )?(?:very )?(?:tight|stiff)\b(?! and straight)/gu, "sore low back"],
  [/\bbroken (?:wrist|arm|leg|finger|thumb|toe|ankle|collar ?bone|foot|hand|bone|rib)s?\b(?! (?:rhythm|kick|stroke|recovery))/gu, "after a broken arm"],
  [new RegExp(`\\bbad for (?:the |your |my |his |her |their )?${BODY}\\b`, "gu"), "sore $1"],
];

/** Strokes as their changes in a medley are called: backstroke to breaststroke is back to breast. */
const SHORT = new Map(Object.entries({ backstroke: "back", breaststroke: "breast", butterfly: "fly", freestyle: "free", "front crawl": "free", crawl: "free" }));
const LONG = new Map([["back", "backstroke"], ["free", "freestyle"], ["fly", "butterfly"], ["breast", "breaststroke"]]);
const A_STROKE = "(backstroke|back|breaststroke|breast|butterfly|fly|freestyle|free|front crawl|crawl)";

/** @type {Saying[]} */
const CHANGES = [
  [new RegExp(`\\b${A_STROKE} (?:in)?to ${A_STROKE}\\b`, "gu"), (_, from = "", to = "") => `${SHORT.get(from) ?? from} to ${SHORT.get(to) ?? to}`],
];

/** @type {Saying[]} */
const STROKES = [
  [/\b((?:25|50|75|[1-9]\d0|[1-4]00)m?) (back|free|fly|breast)(?=\s*(?:$|[?!.]|(?:times?|pace|race|test|swim|splits?)\b))/gu, (_, far = "", short = "") => `${far} ${LONG.get(short)}`],
  [/(?<!\b(?:to|into) )\bbreast (?=turns?|legs?|arms?|pull|swim|drills?|finish|starts?|timing|sets?|technique|wall|kick drills?)/gu, "breaststroke "],
];

/** A medley: "im" is else the beginning of "I'm". @type {Saying[]} */
const MEDLEY = [
  [/\b(?:i\.m\.?|ims?)(?=\s*(?:$|[?!.,;]|(?:for|sets?|days?|night|practice|session|order|turns?|kick|legs|drills?|warm|swim|race|pace|test|transitions?|changes?|main|walls?)\b))|(?<=\d ?)ims?\b/gu, " medley"],
  [/\b(?:[1-4]00s?|\d ?[x×*] ?[1-4]00) *(?=medley)/gu, ""], // of any length: no swim of one stroke is meant
];

/** An age as what it tells of the water, and other turns of speech. @type {Saying[]} */
const OTHERS = [
  [/\bmain sets?\b/gu, "set"],
  [/\bunderwaters\b/gu, "underwater kick"],
  [/\bhow (?:far apart|much gap|long between)\b(?!.*\b(?:flags?|hands|feet|legs|arms|knees|meets|races|practices)\b).*/gu, "how many seconds apart"],
  [/\bchoked(?= (?:at|in|on|during) )/gu, "choked nervous before a race"], // an alarm stays one
  [/\b(?:at|in) the (?:very )?last min(?:ute)?\b|\blast[ -]min(?:ute)?(?= (?:change|swap|cover|switch))/gu, "last-minute"],
  [/\b(\w+ min(?:ute)?s?) (?:before|from|until|till|to|at|for) the (?:very )?end\b/gu, "last $1"],
  [/\b(?:first|opening|starting) (?=\w+ min)/gu, "warm up "],
  [/\b(\w+ min(?:ute)?s?) (?:at the start|at the beginning|to get going)\b/gu, "$1 warm up"],
  [/\bto (?:start|begin)(?: off| with)*(?=\s*[?!.]*$)/gu, "warm up"],
  [/\bto (?:end|finish)(?=\s*[?!.]*$)/gu, "cool down"],
  [/\b(?:off|on|@) ?:?(?:\d:)?[0-5]\d(?=\s*(?:$|[?!.,;]|(?:for|with|and)\b))/gu, ""], // 25s off 40: each lane group has a send-off of its own
  [/\b(?:no|without(?: using)?(?: the| any)?) (?:arms|hands)\b/gu, "arms at sides"],
  [/\b(?:build|make|write|create|plan|design|compose|invent|prepare|draft|generate|put together|come up with) (?:me |us )?(?:(?:a|an|my|our|own|the|new|quick|simple|whole|full|short|long|good) )*(?:practice|session|workout|training|lesson)\b/gu, "make a practice"],
  [/\b(?:no|without(?: a| any| the)?) (?:water|pool)\b(?=\s*(?:$|[?!.,;]|(?:tonight|today|tomorrow|this (?:week|morning|evening))\b))/gu, "on land"], // but not: up the nose
  [/\bwhat(?: does| do) [^?]*(?:\d\s*[x×*]\s*\d|\d:\d\d)[^?]* mean\b/gu, "glossary how to read a set"], // what does 4x50 on 1:10 mean
  [/\bwhat(?: does| do|['’]?s| is| are) ([\p{L}\p{N}/@ -]+?) (?:mean|stand for|stands for|means)\b/gu, "glossary $1"],
  [/\b(?:what|which)(?: drill| one)? (?:comes|goes|to do|to teach)(?: next)? after\b|\b(?:what(?:['’]?s| is)? )?next(?: step| drill| stage)? after\b/gu, "progression"],
  [/\bafter ([\p{L} ]+?) (?:what|what(?:['’]?s| is)) next\b/gu, "progression $1"],
  [/\bfrom (?=[\p{L} ]+ (?:to|into) )/gu, "progression "],
  [/\b(?:\d|1[0-2]|eight|nine|ten|eleven|twelve)\s*(?:and|&|\+)\s*unders?\b/gu, "children"],
  [/\b(?:\d|1[0-2]|four|five|six|seven|eight|nine|ten|eleven|twelve)\s*-?\s*(?:years?|yrs?)[\s-]*olds?\b|\b(?:u[\s-]?(?:\d|1[0-2])s?|under[\s-]?(?:\d|1[0-2])(?:s|(?=[\s?!.]*$)))(?![\p{L}\p{N}])(?!\s*-?\s*(?:min|sec|rest))/gu, "children"], // under 8 kicks is a number
  [/\b(?:(?:do|does|did|is|are)(?:n['’]?t| not)|never) (?:go|get|move|going|getting|moving)s? any ?where\b/gu, "goes nowhere"],
  [/\b(warm|cool)(up|down)s?\b/gu, "$1 $2"],
  [/\b(hips?|legs?|bod(?:y|ies)|bum|bottom|trunk|core) (?:collapse[sd]?|collapsing|drops? away|gives? way)\b/gu, "$1 sink"],
  [/\b(elbows?|arms?|wrists?) (?:collapse[sd]?|collapsing|gives? way)\b/gu, "$1 drops"],
  [/\b(?:(?:stroke|technique|form|style|kick|it|everything) )(?:falls?|falling|fell|comes?|goes) (?:apart|to pieces|to bits)\b/gu, "legs die tired technique"],
  [/(?<=(?:not|n['’]?t) )even |\beven (?=though\b|if\b|when\b)/gu, ""], // an even pace is one
];

const BEFORE = "(?:forgot(?:ten)?|left behind|missing|(?:have|has|did|do|does|had|got)(?:n['’]?t| not)(?: got| have| bring)?|(?:run|ran) out of|nobody has|no one has|none of (?:them|us) ha(?:s|ve)|not enough|too few|lost|locked away)";
const OUR = "(?:(?:the|our|my|her|his|their|any|enough|all) )*";
const MANY = "(?:(?:\\d+|two|three|four|five|six|half|some|most|a few|both)(?: of)? )?";
const AFTER = "(?: (?:are|is|were|have|has|all|been|got))* (?:missing|forgotten|gone|stolen|locked(?: away| up)?|not here|broken|flat|left behind|(?:left )?at home|in the other pool)";

const DARE = "(?:games?|contests?|challenges?|dares?|records?|longest|farthest|furthest|who can (?:go|hold|stay|swim|get|do|last)|competitions?)";
const OF_BREATH = "\\bunder ?water\\b|\\b(?:hold\\w*|held)\\b.*\\bbreath|\\bbreath\\w*.*\\b(?:hold\\w*|held)\\b";
const HARM = "(?:hits?|hitting|bangs?|banged|banging|knocks?|knocked|cracks?|cracked|bumps?|bumped|smash\\w*|crash\\w*|whacks?|whacked)";
const HARMED = "(?:heads?|face|teeth|tooth|chin|nose|forehead)";
const IS_HARM = new RegExp(`\\b${HARM}\\b.*\\b${HARMED}\\b|\\b${HARMED}\\b.*\\b${HARM}\\b`, "u");
const RULES = /\b(?:rules?|legal|disqualif\w*|explain)\b/u;
const UNBREATHED = "(?:no|without(?: an?| any)?|(?:on |in )?one) breath(?:s|ing)?";
const FAR = "(?:\\d{2,}(?!\\s*(?:strokes?|kicks?|beats?))|lengths?|widths?|laps?)";
const NO_BREATH = new RegExp(`\\b${UNBREATHED}(?: for| over)?(?: an?| the| one| whole| full)* ${FAR}\\b|` +
  `\\b${FAR}(?:s\\b|\\s*(?:m|met(?:re|er)s?|yds?|yards?)\\b)?,?(?: with)? ${UNBREATHED}\\b(?! (?:every|per|an?|to|on|each)\\b)|` +
  `\\b(?:drills?|sets?|swim|swimming|kick|kicking|games?) (?:with )?${UNBREATHED}\\b(?! (?:every|per|an?|to|on|each|\\d)\\b)|` +
  "\\bhow (?:far|long)\\b.*\\bwithout (?:breathing|air|(?:a |any )?breath)\\b", "u");
const MAY_HOLD = /\b(?:allowed|ok|okay|alright|safe|fine|can|should|may|must|why|teach|train|practi[sc]e)\b.*\b(?:hold\w*|held)\b(?: (?:their|his|her|your|the|my))? breath\b/u;
const HOLDING = /\bbreath[ -]?hold(?:s|ing)?\b(?=.*\b(?:for|sets?|drills?|train\w*|tests?|practi[sc]e|times?|games?|\d+)\b)/u; // who holds the breath has a fault
const DARED = new RegExp(`\\b${DARE}\\b.*(?:${OF_BREATH})|(?:${OF_BREATH}).*\\b${DARE}\\b`, "u");

/** Whether holding the breath or staying under is asked for as a game or for a distance, in any words: then the danger is meant to be found. What the
 * rules say of it is no dare.
 * @param {string} text in small letters */
export const isDare = (text) => NO_BREATH.test(text) || HOLDING.test(text) || MAY_HOLD.test(text) || (DARED.test(text) && !RULES.test(text));

/** Whether somebody's head or face meets something: that is a danger before it is a fault.
 * @param {string} text in small letters */
export const isHarm = (text) => IS_HARM.test(text);

/** "No" before gear that is told to be away in other words: the same words of anything else stay what they are.
 * @param {[string, string][]} gear each piece with a name of it
 * @returns {Saying[]} */
export function awayIn(gear) {
  const names = [...new Set(gear.map(([, name]) => name.toLowerCase()))].filter((name) => stems(name).length).sort((one, two) => two.length - one.length);
  const any = `(${names.map((name) => name.replace(/[^\p{L}\p{N} -]/gu, ".")).join("|")})s?`;
  return [
    [new RegExp(`(?<![\\p{L}])${BEFORE} ${OUR}${any}(?![\\p{L}])`, "gu"), "no $1"],
    [new RegExp(`(?<![\\p{L}])${MANY}${OUR}${any}${AFTER}(?![\\p{L}])`, "gu"), "no $1"],
  ];
}

/** Whether a text tells that gear is away, and does not only ask to do without: what is done then is asked, too.
 * @type {(text: string, away: Saying[], without: Set<string>) => boolean} */
export const isAway = (text, away, without) => without.size > 0 && (/\b(?:have|has|got|are|is) no\b/u.test(text) || away.some(([way]) => text.search(way) >= 0));

/** A question in the words that are heard.
 * @param {string} text
 * @param {Saying[]} away */
export const saidPlainly = (text, away) =>
  [...HARMLESS, ...OF_QUESTIONS, ...TIMES, ...PAINS, ...CHANGES, ...STROKES, ...MEDLEY, ...OTHERS, ...away].reduce((so, [way, plain]) => so.replace(way, /** @type {string} */ (plain)), text.toLowerCase());
