// The search of the page: an index of titles at once, with the texts when they have come; what a question finds, and the nearest word.

import { make, root } from "../lib/dom.js";
import { WordIndex } from "../lib/search.js";
import { atOnce, inSlices } from "../lib/slices.js";
import { stems } from "../lib/words.js";
import { answers, farOf, fieldsOf, inPlaceOf, isOfOtherKind, namesOfGear, WEIGHTS } from "./answers.js";
import { isUnwanted, namesToLeaveOut } from "./left-out.js";
import { isTitle } from "./names.js";
import { Phrases } from "./phrases.js";
import { asNamed, NOTHING_ASKED, questionOf } from "./question.js";
import { awayIn } from "./said-as.js";
import { Sentences } from "./sentences.js";
import { Ways } from "./ways.js";

/** @import {Known} from "./answers.js" */
/** @import {Answers} from "./answers.js" */
/** @import {Data, Entry} from "./list.js" */
/** @import {Question} from "./question.js" */

const OTHERWISE = "otherwise.html#"; // what is done where something is not as planned
const CALLED_SO = 0.7; // how like a name is that says so
const ASKED_SO = 2; // how much better what is asked for to the word is than all else

/** @type {(work: () => void) => void} */
const whenIdle = (work) => (window.requestIdleCallback ?? setTimeout)(work);

/**
 * @param {Data} data
 * @param {Entry[]} entries
 */
export function engine(data, entries) {
  const ways = new Ways(data);
  /** @type {import("./question.js").Names | null} what a question may name: told when the first is asked */
  let names = null;
  const heard = () => {
    const gear = namesOfGear(data);
    return (names ??= { gear, out: namesToLeaveOut(data, gear), away: awayIn(gear), squads: data.groups.map(({ id, squad }) => [id, squad]), lanes: data.lanes });
  };
  /** @type {Known | null} titles and facts alone, until the rest is taken in */
  let known = null;
  let isRead = false;
  const asTitles = () => entries.map((entry) => fieldsOf(entry));
  const read = () => {
    if (!known) {
      known = { words: new WordIndex(WEIGHTS, data.synonyms).add(asTitles()), phrases: new Phrases(), sentences: new Sentences(), ways };
      atOnce(known.phrases.taking(entries, () => ""));
    }
    return known;
  };

  /** Entries as they are known by documents and by what is typed for each, taken in without keeping a key waiting.
   * @type {(documents: import("../lib/search.js").Document[], typed: string[]) => Promise<Known>} */
  async function slowly(documents, typed) {
    const fresh = { words: new WordIndex(WEIGHTS, data.synonyms), phrases: new Phrases(), sentences: new Sentences(), ways };
    await fresh.words.addSlowly(documents);
    await inSlices(fresh.phrases.taking(entries, ({ number }) => typed[number] ?? ""));
    await inSlices(fresh.sentences.taking(typed));
    return fresh;
  }

  /** What is typed for entries and their texts.
   * @param {() => void} done */
  async function readTexts(done) {
    const texts = /** @type {{almanacTexts?: [string, string][]}} */ (/** @type {unknown} */ (self)).almanacTexts ?? [];
    const own = entries.map((entry) => texts[entry.text] ?? ["", ""]);
    known = await slowly(entries.map((entry, at) => fieldsOf(entry, ...own[at])), own.map(([typed]) => typed));
    isRead = true;
    done();
  }

  /** @type {(question: Question, entry: Entry) => boolean} */
  const isFree = ({ without }, { needs, kind }) =>
    data.narrowed.includes(kind) && (without.has("none") ? !needs.length : !needs.some((id) => without.has(id)));

  /** @type {(question: Question, entry: Entry) => boolean} */
  const isUsing = ({ gear }, { needs, suits }) => [...needs, ...suits].some((id) => gear.has(id));

  /** @type {(question: Question) => boolean} */
  const isHeard = ({ minutes, lanes, swimmers, without, unlike, metres }) => [minutes, lanes, swimmers, metres].some((number) => number !== null) || without.size + unlike.length > 0;

  /** @type {(found: Answers, passes: (entry: Entry) => boolean) => Answers} */
  const only = ({ scores, sure }, passes) => ({ sure, scores: new Map([...scores].filter(([number]) => passes(/** @type {Entry} */ (entries[number])))) });

  /** Of the last question: asked for twice a key. @type {{words: string, unknown: ReturnType<WordIndex["unknown"]>}} */
  let last = { words: "", unknown: [] };
  /** @param {Question} question */
  function unknown({ words }) {
    if (isRead && words !== last.words) {
      last = { words, unknown: words ? read().words.unknown(words) : [] };
    }
    return isRead ? last.unknown : [];
  }

  /** What was meant by a text of a question, with the nearest word in the place of each that nothing has.
   * @type {(question: Question, text: string) => string} */
  const meantBy = (question, text) => unknown(question).reduce((words, { word, near }) => (near ? words.replace(word, near) : words), text);

  /** @type {(question: Question) => Question} */
  const mended = (question) => ({ ...question, words: asNamed(meantBy(question, question.words)) });

  /** How much an entry is called by what is asked for without gear: "kick without a board".
   * @type {(question: Question) => (number: number) => number} */
  function called({ words, without }) {
    const own = heard().gear.filter(([id]) => without.has(id)).flatMap(([, name]) => [`${words} without ${name}`, `${words} no ${name}`].map((phrase) => [...new Set([...stems(phrase), ...read().phrases.missing(phrase)])]));
    const likenesses = own.map((terms) => read().phrases.likenesses(terms));
    return (number) => {
      const like = Math.max(0, ...likenesses.map((by) => by.get(number) ?? 0));
      return like < CALLED_SO ? 0 : like;
    };
  }

  /** Of answers what needs none of the gear that is not there and is nothing that is not wanted, what is called so first; what a page says of it stays.
   * @type {(found: Answers, question: Question) => Answers} */
  function inPlace(found, question) {
    const isNot = isUnwanted(question.unlike);
    /** @type {(entry: Entry) => boolean} */
    const isTold = ({ href }) => href.startsWith(OTHERWISE) && !question.without.size && question.words !== "";
    const free = only(found, (entry) => isTold(entry) || (isFree(question, entry) && !isNot(entry)));
    const isCalled = called(question);
    return { ...free, scores: new Map([...free.scores].map(([number, score]) => [number, score * (1 + 3 * isCalled(number))])) };
  }

  /** @type {(question: Question) => import("./answers.js").Scores} where no words tell one entry from another */
  const ofAll = (question) => (question.metres ? farOf(entries, question) : inPlaceOf(entries, question.without));

  /** @type {(question: Question) => Answers | null} */
  function answered(question) {
    const found = question.words ? answers(read(), entries, mended(question)) : null;
    const own = found ?? (isHeard(question) ? { scores: ofAll(question), sure: new Set(entries.keys()) } : null);
    if (own && question.isSwumWith) {
      const using = only(own, (entry) => isUsing(question, entry));
      return using.scores.size ? using : own;
    }
    return own && question.without.size + question.unlike.length ? inPlace(own, question) : own;
  }

  /** What a question is typed for to the word, but no set where a drill is asked for; and beside that what has it as its title.
   * @type {(question: Question) => Set<number>} */
  function toTheWord({ asked }) {
    const terms = stems(asked);
    const typed = [...read().sentences.of(asked)].filter((number) => !isOfOtherKind(entries[number]?.kind ?? "", terms));
    const titled = typed.length ? entries.filter((entry) => isTitle(entry, terms)).map(({ number }) => number) : [];
    return new Set([...typed, ...titled]);
  }

  /** What is asked for to the word stands first.
   * @type {(own: Answers | null, exactly: Set<number>) => Answers | null} */
  function withExact(own, exactly) {
    if (!exactly.size) {
      return own;
    }
    const { scores, sure } = own ?? { scores: new Map(), sure: new Set() };
    const best = ASKED_SO * Math.max(1, ...scores.values());
    /** @type {[number, number][]} */
    const first = [...exactly].map((number) => [number, best * (1 + (scores.get(number) ?? 0) / best)]);
    return { scores: new Map([...scores, ...first]), sure: new Set([...sure, ...exactly]) };
  }

  return {
    /** @param {string} words */
    question: (words) => (words ? questionOf(words, heard()) : NOTHING_ASKED),

    /** How well entries answer; null where nothing is asked.
     * @param {Question} question
     * @returns {Answers | null} */
    answers: (question) => withExact(answered(question), toTheWord(question)),

    /** A question as it was meant, with what is misspelt mended.
     * @param {Question} question */
    meant: (question) => meantBy(question, question.asked.toLowerCase()),

    /** The words that nothing has, and what is looked for in their place; none before all is read.
     * @param {Question} question */
    unknown,

    /** The word that is nearest to what nothing answers, and how many hits it has; null where none is near.
     * @param {Question} question */
    nearest(question) {
      const word = read().words.terms.nearest(question.words);
      const hits = word ? (answers(read(), entries, questionOf(word, heard()))?.scores.size ?? 0) : 0;
      return hits ? { word, hits } : null;
    },

    /** Get ready before the first letter is typed. The texts are a script: a page opened from a folder may fetch nothing.
     * @param {() => void} done when the texts are there, too */
    warm(done) {
      const texts = make("script", { src: new URL("search/texts.js", root).href });
      const areThere = new Promise((resolve) => { texts.addEventListener("load", resolve); });
      whenIdle(() => {
        document.head.append(texts);
        questionOf("a", heard()); // so that the first letter need not make ready what hears a question
        void slowly(asTitles(), []).then(async (titles) => {
          known ??= titles;
          await areThere;
          whenIdle(() => { void readTexts(done); });
        });
      });
    },
  };
}
