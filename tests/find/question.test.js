// What a question says beside its words: gear that is away, minutes, an age.

import assert from "node:assert/strict";
import test from "node:test";

import { isInDanger } from "../../site_src/scripts/find/alarms.js";
import { withGuides } from "../../site_src/scripts/find/guides.js";
import { namesToLeaveOut } from "../../site_src/scripts/find/left-out.js";
import { questionOf } from "../../site_src/scripts/find/question.js";
import { awayIn } from "../../site_src/scripts/find/said-as.js";
import { PLAIN } from "../../site_src/scripts/lib/plain-words.js";
import { atOnce } from "../../site_src/scripts/lib/slices.js";
import { stem } from "../../site_src/scripts/lib/words.js";
import { Sentences } from "../../site_src/scripts/find/sentences.js";

/** @type {[string, string][]} */
const GEAR = [["pool-shoes", "Pool shoes"], ["water-cup", "Water cup"], ["fins", "Fins"]];
const DATA = {
  words: {
    stroke: [["backstroke", "Backstroke"], ["butterfly", "Butterfly"], ["any", "Any stroke"]], position: [["supine", "On the back"], ["vertical", "Upright"]], goal: [["underwater", "Under water"]], effort: [["fast", "Fast"], ["all-out", "All-out"]],
  },
  fast: ["fast", "all-out"],
  synonyms: [["Butterfly", "fly"], ["Dolphin", "fly kick"], ["Start", "dive", "diving"], ["Kick", "legs only"], ["Sprint", "sprinting"]],
};
const asked = (words) => questionOf(words, { gear: GEAR, out: namesToLeaveOut(DATA, GEAR), away: awayIn(GEAR), squads: [], lanes: 6 });

test("no water is land, but gear of that name is only gear that is away", () => {
  assert.equal(asked("no water tonight").words.includes("on land"), true);
  assert.equal(asked("no water up the nose").words.includes("on land"), false);
  for (const [words, id] of [["no pool shoes", "pool-shoes"], ["no water cup", "water-cup"], ["we forgot the fins", "fins"]]) {
    assert.deepEqual([...asked(words).without], [id], words);
    assert.equal(asked(words).words.includes("on land"), false, words);
  }
});

test("efforts that count as fast are left out by the club's own names", () => {
  const words = { ...DATA.words, effort: [["brisk", "Brisk"], ["quick", "Quick"], ["full-gas", "Full gas"]] };
  const out = namesToLeaveOut({ ...DATA, words, fast: ["quick", "full-gas"] }, GEAR);
  const left = (text) => questionOf(text, { gear: GEAR, out, away: awayIn(GEAR), squads: [], lanes: 6 }).unlike.map(({ id }) => id);
  for (const [text, ids] of [["kick set, nothing quick", ["quick"]], ["no full gas", ["full-gas"]], ["a set, no sprinting", ["full-gas"]], ["kick not quick", []], ["no brisk kick", []], ["no fast", []]]) {
    assert.deepEqual(left(text), ids, text);
  }
});

test("what is not wanted is left out, and what is seen not to be done is none of it", () => {
  const left = (words) => asked(words).unlike.map(({ id }) => id);
  for (const [words, id] of [
    ["kick set not on the back", "supine"], ["nothing on the back", "supine"], ["anything except butterfly", "butterfly"], ["drills but not fly", "butterfly"], ["no underwater", "underwater"],
    ["no fly kick", "dolphin"], ["no diving", "start"], ["butterfly instead of backstroke", "backstroke"], ["backstroke but not kick", "kick"], ["a set, no sprinting", "all-out"], ["kick on the side not back", "supine"],
    ["avoid butterfly", "butterfly"], ["a set, avoiding backstroke tonight", "backstroke"], ["skip kick, more swim", "kick"], ["never butterfly", "butterfly"],
  ]) {
    assert.deepEqual(left(words), [id], words);
  }
  assert.deepEqual(left("no fly or backstroke"), ["butterfly", "backstroke"]);
  assert.equal(asked("kick set not on the back").words, "kick set");
  assert.deepEqual([...asked("kick without any fins or pool shoes").without], ["fins", "pool-shoes"]);
  for (const words of ["he is not on his back", "not upright enough", "no backstroke flags", "no back pain", "back kick", "kick not fast", "no kick in the last 25", "avoid kicking from the knees", "avoid a dive too deep", "skipping kick beats", "swimmer who never kicks", "he never kicks on his back", "never fast"]) {
    assert.deepEqual(left(words), [], words);
  }
});

test("under ten is an age, but under ten minutes, metres or lanes is none", () => {
  for (const words of ["under 10s", "u10", "under 8"]) {
    assert.equal(asked(words).words, "children", words);
  }
  assert.equal(asked("kick under 10 minutes").minutes, 10);
  assert.equal(asked("under 3 lanes").lanes, 3);
  assert.equal(asked("u10 kick set").words, "children kick set");
  for (const words of ["under 8 kicks", "under 5 laps", "under 6 seconds"]) {
    assert.equal(asked(words).words.includes("children"), false, words);
  }
  assert.equal(asked("under 5 m").words.includes("children"), false);
});

test("a game of the breath or under water weighs the danger, and the question stays as it is asked", () => {
  const dared = [
    "hold breath game", "who can hold their breath longest", "holding breath competition for kids", "no breath 25", "no breath for 25 m", "no breath for a whole length", "underwater contest",
    "50 m on one breath",
  ];
  for (const words of dared) {
    assert.equal(asked(words).kinds.has("danger"), true, words);
    assert.equal(words.endsWith(asked(words).words.trim()), true, words); // "no" is heard of gear
  }
  for (const words of ["breath hold for 10 s", "breath-holding set", "25 no breath", "25s no breath", "swim a length without breathing", "how far can they go without air"]) {
    assert.equal(asked(words).kinds.has("danger"), true, words);
  }
  assert.equal(asked("length without breathing to the left").kinds.has("danger"), false);
  for (const words of ["who can explain underwater rules", "underwater rule in competition", "no breath 3 strokes into the turn", "50 free, one breath every 3 strokes", "underwater dolphin", "holds his breath"]) {
    assert.equal(asked(words).kinds.has("danger"), false, words);
    assert.equal(words.endsWith(asked(words).words.trim()), true, words);
  }
});

test("what hurts is sore, in any words", () => {
  for (const words of ["bad knee", "dodgy knee", "knee hurts", "knee is playing up"]) {
    assert.equal(asked(words).words.trim(), "sore knee", words);
  }
  for (const words of ["bad habit", "bad hip position", "bad arm position", "bad back kick", "bad foot position", "bad legs"]) {
    assert.equal(asked(words).words, words);
  }
});

test("a tight back is sore, and minutes before the end are the last ones", () => {
  assert.equal(asked("lower back tight").words, "sore low back");
  assert.equal(asked("five minutes before the end").minutes, 5);
  assert.equal(asked("five minutes before the end").words, "cool-down");
});

test("a practice that is to be made is no practice of that name", () => {
  for (const words of ["build my own practice", "plan a session", "write a new workout"]) {
    assert.equal(asked(words).words, "make a practice", words);
  }
  assert.equal(asked("turns session").words, "turns session");
  assert.equal(asked("compose a session for two groups").isToMake, true);
  assert.equal(asked("make a session shorter").isToMake, false);
});

test("gear that is told to be away is no choice to do without", () => {
  for (const words of ["two fins are missing", "we forgot the fins", "we have no fins today"]) {
    assert.equal(asked(words).isAway, true, words);
    assert.deepEqual([...asked(words).without], ["fins"], words);
  }
  assert.equal(asked("kick with no fins").isAway || asked("kick without fins").isAway, false);
  assert.deepEqual([...asked("kick with or without fins").without], []);
});

test("breast is breaststroke but in a change of strokes, and a send-off is no word", () => {
  assert.equal(asked("breast turns").words, "breaststroke turns");
  assert.equal(asked("back to breast turn").words, "back to breast turn");
  assert.equal(asked("25s hard off 40").words, "25s hard");
  assert.equal(asked("25s hard off 40").kinds.has("set"), true);
});

test("a swimmer with something is asked for as a need", () => {
  for (const words of ["swimmer with one leg", "a boy who has asthma", "kid in a wheelchair"]) {
    assert.deepEqual([...asked(words).kinds], ["need"], words);
  }
  assert.equal(asked("kids with fins").kinds.has("need"), false);
  assert.equal(asked("one arm fly").kinds.has("need"), false);
});

test("where only a practice is asked for, what fits tells one from another and no word does", () => {
  for (const words of ["75 min practice", "90 minute session", "practice for 4 lanes", "40 minutes training"]) {
    assert.equal(asked(words).words, "", words);
    assert.equal(asked(words).kinds.has("practice"), true, words);
  }
  assert.equal(asked("75 min turns practice").words.includes("turns"), true);
  assert.equal(asked("practice").words, "practice");
});

test("metres of what opens or closes a practice may be few, those of a race are a race", () => {
  assert.equal(asked("warm up 400").metres, 400);
  assert.equal(asked("200 m swim down").metres, 200);
  assert.equal(asked("400 free set").metres, null);
  assert.equal(asked("600 m main set").metres, 600);
  assert.equal(asked("600 m main set").words, "");
  assert.equal(asked("back kick 200").metres, null);
});

test("a head that meets something is a danger, a hand that meets the water is none", () => {
  for (const words of ["hits head on the wall", "banged her face on the rope", "his teeth hit the wall"]) {
    assert.equal(asked(words).kinds.has("danger"), true, words);
  }
  for (const words of ["hand hits the water flat", "head moves on the back", "hits the wall late"]) {
    assert.equal(asked(words).kinds.has("danger"), false, words);
  }
});

test("what a line of a set means is asked of the words, with its numbers or without", () => {
  assert.equal(asked("what does 4x50 on 1:10 mean").words, "glossary how to read a set");
  assert.equal(asked("what does 4x50 on 1:10 mean").kinds.has("set"), true);
  assert.equal(asked("what does descend mean").words, "glossary descend");
  assert.equal(asked("what does a 6 beat kick mean").words, "glossary a 6 beat kick");
});

test("an age may be written in words, and a bad back is sore unless it is a stroke's", () => {
  assert.equal(asked("ten year olds").words, "children");
  assert.equal(asked("bad back after fly").words.startsWith("sore back"), true);
  assert.equal(asked("bad back kick").words, "bad back kick");
});

test("a sentence of small words is known by all of them, and one that many pages share by none", () => {
  const sentences = new Sentences();
  atOnce(sentences.taking(["they finished the set; what do I do now", "what should they feel; kick", "kick", "kick"]));
  assert.deepEqual([...sentences.of("They finished the set!")], [0]);
  assert.deepEqual([...sentences.of("what should they feel?")], [1]);
  assert.deepEqual([...sentences.of("and what should they feel")], [1]);
  assert.deepEqual([...sentences.of("finish strong")], []);
  assert.deepEqual([...sentences.of("kick")], []);
});

const PRACTICE = { kind: "practice", href: "practices/one.html" };
const MAKE = { kind: "page", href: "make.html" };
const CROWD = { kind: "page", href: "otherwise.html#too-many" };
const FITS = { fits: true, cut: null, isForOthers: false, crowded: "" };
const guided = (words, fit, hits = [PRACTICE, PRACTICE, PRACTICE]) => {
  const question = asked(words);
  const groups = [{ heads: 10, lanes: 2 }];
  return withGuides(hits, [...hits, MAKE, CROWD], { isPractice: question.kinds.has("practice") }, { question, meant: words, fit: () => fit, groups, alarms: [] }).hits.map(({ href }) => href);
};

test("the page that makes a practice stands behind what fits, and first where nothing does", () => {
  assert.equal(guided("75 min practice", FITS).indexOf(MAKE.href), 2);
  assert.equal(guided("30 min practice", { ...FITS, fits: false }).indexOf(MAKE.href), 0);
  assert.equal(guided("75 min practice", { ...FITS, isForOthers: true }).indexOf(MAKE.href), 0);
  assert.equal(guided("turns practice", FITS).includes(MAKE.href), false);
});

test("more in a lane than any lane group has gets what is done then", () => {
  assert.equal(guided("4 lanes 32 swimmers", FITS)[0], CROWD.href);
  assert.equal(guided("4 lanes 20 swimmers", FITS).includes(CROWD.href), false);
});

test("what something is leads to the words, too; what is on tonight does not", () => {
  const words = { kind: "page", href: "words.html" };
  const named = ["Pre-set kick", "Kick before the set", "Pregnancy"].map((title) => ({ ...PRACTICE, title, also: "" }));
  /** @param {string} text */
  const hits = (text) => withGuides(named, [words], { isPractice: false }, { question: asked(text), meant: text, fit: () => FITS, groups: [], alarms: [] }).hits;
  assert.equal(hits("what is a pre-set").indexOf(words), 1, "after what is called so");
  assert.equal(hits("what is kick").indexOf(words), 2);
  assert.equal(hits("what is a taper").indexOf(words), 0);
  for (const text of ["what is on tonight", "what is next", "what is wrong with the kick", "pre-set"]) {
    assert.equal(hits(text).includes(words), false, text);
  }
});

test("where somebody's life is in danger, what to do then is first", () => {
  const help = { kind: "danger", href: "safety.html#in-an-emergency" };
  /** @param {string} text */
  const first = (text, meant = text, alarms = ["drowning", "unconscious", "chest pain", "passed out", "having a fit", "won't stop bleeding"]) =>
    withGuides([PRACTICE, help], [PRACTICE, help], { isPractice: false }, { question: asked(text), meant, fit: () => FITS, groups: [], alarms }).hits[0];
  assert.equal(first("drownding", "drowning"), help, "as it was meant");
  for (const text of ["kid not breathing", "She is not breathing!", "he isn't breathing", "child stopped breathing", "can't breathe", "swimmer unconscious", "swimmer at the bottom", "drowning in lane 2",
    "he is not moving", "the boy isn't moving", "does not wake up", "she went under and did not come up", "swimmer goes under", "fire!", "fire in the changing room", "chest pain", "kid passed out", "she is having a fit", "wont stop bleeding", "the boy has collapsed", "collapsed after a sprint", "she banged her head"]) {
    assert.equal(first(text), help, text);
  }
  for (const text of ["not breathing to the left", "kids not breathing out", "can't breathe between strokes", "stop at the bottom of the kick", "legs not moving", "he is not moving forward", "went under the rope", "he goes under the flags", "fire start", "the hand went under", "swimmer at the bottom of the kick", "no breathing sets", "elbow collapsed", "always hits her head on the wall", "his elbow has collapsed", "what fits 10 min"]) {
    assert.equal(first(text), PRACTICE, text);
  }
});

test("a change of strokes is called as medleys have it", () => {
  assert.equal(asked("backstroke to breaststroke turn").words, "back to breast turn");
  assert.equal(asked("butterfly into backstroke").words, "fly to back");
});

test("minutes are heard as they are said", () => {
  for (const [words, minutes, rest] of [
    ["easy ten minutes to start", 10, "easy warm up"], ["first 15 minutes", 15, "warm up"], ["five minutes before the end", 5, "cool-down"], ["a couple of minutes at the end", 2, "cool-down"],
    ["last quarter of an hour", 15, "cool-down"], ["they finished ten minutes early", 10, ""], ["quarter of an hour left", 15, ""],
  ]) {
    const { minutes: heard, words: left } = asked(words);
    assert.deepEqual([heard, left.replace(/\s+/g, " ").replace(/^a /, "")], [minutes, rest], words);
  }
  assert.equal(asked("last five minutes").isOver, true);
  assert.equal(asked("swap it at the last minute").minutes, null);
  assert.equal(asked("15 minutes of kick").isOver, false);
});

test("what stands round a question asks for nothing, and what is done on a page asks for it", () => {
  for (const [words, rest] of [
    ["how do I know if the kick is too wide", "the kick is too wide"], ["show me a drill for rotation", "drill for rotation"], ["everything we have on rotation", "rotation"],
    ["where do I put in my own times", "where do i calculator work out times"], ["how do I change the pool to 50 m", "how do i settings pool lane group"], ["what's on tomorrow", "tonight timetable"],
    ["one of them can't do the drill", "too hard easier"], ["knocked out of the heats", "lost meet"], ["hips collapse", "hips sink"],
  ]) {
    assert.equal(asked(words).words.trim(), rest, words);
  }
  assert.equal(asked("they wont stop chatting").words.trim(), "they nobody listens");
  assert.equal(asked("where do I put in my lane group").words.trim(), "where do i settings my lane group");
  assert.equal(asked("who do I call").words.trim(), "emergency who to call");
  assert.equal(asked("is this app free").words.trim(), "licence");
  // no matter of who listens, of settings, of what it costs
  for (const words of ["won't stop coughing", "does not stop vomiting", "arms won't come out of the water", "put the squad in lanes", "put lane ropes out", "fill the pool", "is the free stroke hard"]) {
    assert.equal(asked(words).words.trim(), words);
  }
  assert.equal(asked("10 and unders kick").words, "children kick");
  assert.deepEqual([...asked("beginners 200 m").kinds], ["set"]);
  assert.deepEqual([...asked("are they allowed to hold their breath").kinds], ["danger"]);
});

test("a life in danger is heard however it is said, and a race that is lost is none", () => {
  const alarms = ["knocked out", "choking", "choked", "drowning", "unconscious", "a fire", "fire in the", "seizure", "concussion"];
  for (const words of [
    "kid knocked out", "knocked out at the gala", "he got knocked out in the race", "choking", "choked in the race", "a fire in the changing room", "there is a fire", "fire", "smoke", "drowning in the deep end",
    "girl collapsed", "swimmer has collapsed", "collapses after the race", "collapsed on deck", "unconscious in the water", "he is not breathing", "hit his head", "she went under",
    "knocked out in the heat", "knocked out in the heats", "choked at the finals", "coach collapsed", "a girl in my squad collapsed", "somebody with bad knees collapses in the shower",
    "the cut doesn't stop bleeding", "went under and did not come up", "he isn't coming up", "found him at the bottom", "the sauna is on fire", "fire! where is the exit", "siezure", "concusion", "she broke her arm", "kid has broken his leg!", "not  breathing", "nto brething", "notbreathing", "she colapsed", "drwoning", "choaking", "kid shaking on the floor", "foaming at the mouth",
  ]) {
    assert.equal(isInDanger(words, alarms), true, words);
  }
  for (const words of [
    "knocked out of the heats", "knocked out in the second round", "choked under pressure", "drowning in paperwork", "a fire drill", "fire exits", "fire in his legs", "hips collapse at the catch",
    "elbow collapses in the pull", "his elbow has collapsed in the pull", "her legs are on fire", "he does not come up to breathe", "hips are not coming up", "broke his arm in March, can he swim", "unconsciously drops it", "crowned", "breaching", "a core that does not collapse", "unconscious competence",
  ]) {
    assert.equal(isInDanger(words, alarms), false, words);
  }
});

test("how far a practice is to be is heard in metres, in thousands and in yards", () => {
  for (const [words, metres] of [["3k", 3000], ["2000 yards", 1829], ["3000 yard workout", 2743], ["2.5k practice", 2500]]) {
    const { metres: heard, kinds } = asked(words);
    assert.deepEqual([Math.round(heard), [...kinds]], [metres, ["practice"]], words);
  }
  for (const words of ["1500 m", "400 im", "1000 yards of kick"]) { // a race, or a part of more
    assert.equal(asked(words).metres, null, words);
  }
});

test("a squad is heard by its name, which is no word to look for beside others", () => {
  const of = (words) => questionOf(words, { gear: GEAR, out: namesToLeaveOut(DATA, GEAR), away: awayIn(GEAR), squads: [["robin-1", "Robin"], ["robin-2", "Robin"], ["wren-1", "Wren"]], lanes: 6 });
  assert.deepEqual(of("robin kick set").groups, ["robin-1", "robin-2"]);
  assert.deepEqual([...of("robin kick set").squads], ["robin"]);
  assert.equal(of("20 min set robin").words, "");
  assert.equal(of("robin kick 20 min").words, "robin kick");
  assert.deepEqual(of("kick set").groups, []);
});

const KEYS = ["qwertyuiop", "asdfghjkl", "zxcvbnm"];
/** @param {string} letter the keys beside its own, in its row and in the next */
const beside = (letter) => {
  const [row] = KEYS.filter((keys) => keys.includes(letter));
  const at = row.indexOf(letter), [above, below] = [KEYS[KEYS.indexOf(row) - 1] ?? "", KEYS[KEYS.indexOf(row) + 1] ?? ""];
  return [row[at - 1], row[at + 1], above[at], above[at + 1], below[at - 1], below[at]].filter(Boolean);
};

test("a wet thumb that meets the key beside makes no everyday word of one of the trade", () => {
  for (const word of ["kick", "line", "dive", "game", "rate", "lead", "whip", "load", "drop", "clock", "wave", "find", "foot", "roll", "long", "finger", "dry", "pole", "hold", "swim", "turn", "fins", "back", "pull"]) {
    const slips = [...word].flatMap((letter, at) => beside(letter).map((key) => word.slice(0, at) + key + word.slice(at + 1)));
    const told = slips.filter((slip) => PLAIN.has(stem(slip)) && !["gold", "lone"].includes(slip)); // a medal is asked for, and who is lonely
    assert.deepEqual(told, [], word);
  }
});
