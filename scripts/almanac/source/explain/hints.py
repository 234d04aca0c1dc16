"""What to write instead, where that takes some looking: a word, an id."""

from __future__ import annotations

import re
from collections.abc import Collection

from almanac.kinds import KIND
from almanac.source.failure import Failure
from almanac.source.lent import lent_words
from almanac.source.meant.further_out import flag_beside
from almanac.source.meant.left_open import is_open
from almanac.source.meant.words import plan_meant
from almanac.source.paths import is_id, plain_id
from almanac.source.said.times import of_day_meant, weeks_meant
from almanac.source.suggest import fold, listed, nearest, with_each_word

FIXED = "almanac check --fix does it"
_MOST_ALIKE = 4
_A_HOST = re.compile(r"https://[\w-]+(?:\.[\w-]+)*\.[^\W\d_]{2,}(?=[:/]|$)")
# What a coach says of several reps, and how it is written.
EFFORT_PLANS = {
    "descend": "{descend: [easy, fast]}",
    "build": "{build: [easy, fast]}",
    "rotate": "{rotate: [easy, fast]}",
}
# What coaches say a claim rests on, and the word for it.
_BASES = {
    **dict.fromkeys(
        ("experience", "own experience", "coaching", "practice", "opinion"), "common-practice"
    ),
    **dict.fromkeys(("study", "research", "paper", "science", "evidence"), "published"),
}
_NEW_LIST = "almanac new vocabulary"
_ANY = {"any", "all", "every", "each", "whatever", "various", "mixed", "varied", "both", "tbd", "?"}
SOURCE = "source"
TO_A_SOURCE = (
    "write the publication once, as drills/sources/KEY.yml (almanac new source KEY), and name it "
    "here: sources: [KEY]"
)  # in another club's entries it is a sentence still
_HAZARDS = "hazards"  # in another club's entries they are sentences still
REPS_BY_DISTANCE = re.compile(r"([1-9][0-9]{0,2}) ?[x×*] ?([0-9]{1,4})(?: ?[a-z]{1,7})?", re.ASCII)


def reference_hint(failure: Failure, kind: str) -> str:
    """For an id that nothing has: the nearest, the other kind that has it, or all that there
    are.
    """
    known = failure.names.of("reference", failure.wanted)
    if failure.wanted == SOURCE and " " in failure.value:
        return TO_A_SOURCE
    if certain := failure.names.certain("reference", failure.wanted, failure.value):
        return f"write {certain} ({known[certain]}); {FIXED}"
    if several := _several(failure, known):
        return several
    for other in KIND:
        file = failure.names.of("reference", other).get(failure.value)
        if file:
            return f"'{failure.value}' is a {other} ({file}), and a {kind} belongs here"
    near = nearest(failure.value, known)
    if near and not is_id(near):  # its file's name is told at the file
        return f"the nearest: {plain_id(near)}, as {known[near]} is to be called"
    said = fold(failure.value)
    begun = [own for own in known if own.startswith(f"{said}-")]
    alike = begun if near in begun else with_each_word(said, [(own, own) for own in known])
    alike = alike if near else [own for own in known if said in own.split("-")]
    if 1 < len(alike) <= _MOST_ALIKE and (not near or near in alike):
        return f"the nearest: {listed(alike)}"
    if near:
        return f"the nearest: {near} ({known[near]})"
    if not known:
        return f"there is no {kind} yet: write it first"
    told = f": write {listed(known)}" if len(known) <= 12 else ""
    if is_open(failure.value):
        return f"name one that there is{told}"
    is_new = failure.wanted in KIND and re.fullmatch(r"[a-z0-9]+(?:-[a-z0-9]+)*", failure.value)
    begin = f"; or begin it: almanac new {failure.wanted} {failure.value}" if is_new else ""
    return f"no {kind} is spelt like it{told}{begin}"


def _several(failure: Failure, known: Collection[str]) -> str:
    """For several words in one: that they want commas in a list, or that one belongs here; "" where
    they are not several.
    """
    words = re.sub(r"[,;|/+&]| and | or ", " ", failure.value).split()
    if len(words) < 2 or not all(word in known for word in words):
        return ""
    if failure.path and isinstance(failure.path[-1], int):
        is_parted = re.search("[;|/+&]", failure.value)
        why = "commas stand between the words of a list" if is_parted else "a comma is missing"
        return f"{why}: write {', '.join(words)}"
    turns = f"; by turns {{rotate: [{', '.join(words)}]}}" if failure.wanted == "efforts" else ""
    return f"one belongs here: write {listed(words)}{turns}"


def _hazard_meant(text: str, words: Collection[str]) -> str:
    """The word of the hazards that shares most with a sentence, or all that there are."""
    said = set(re.findall(r"[a-z]{3,}", text.lower()))
    shared = {word: len(said.intersection(word.split("-"))) for word in words}
    most = max(shared.values())
    near = [word for word in words if shared[word] == most] if most else []
    return f"hazard: {near[0]}" if len(near) == 1 else f"its word: {listed(near or words, 60)}"


def word_hint(failure: Failure, words: Collection[str]) -> str:
    """What to write for a word that is not of its vocabulary, whose words these are."""
    certain = failure.names.certain("vocabulary", failure.wanted, failure.value)
    likely = failure.names.likely(failure.wanted, failure.value)
    near = certain or likely or nearest(failure.value, words)
    near = near or failure.names.meaning(failure.wanted, failure.value)
    file = f"drills/vocabulary/{failure.wanted}.yml"
    if failure.wanted == _HAZARDS and " " in failure.value and words:
        return f"write {_hazard_meant(failure.value, words)}, and keep this sentence as 'own'"
    plans = [own for own in EFFORT_PLANS if failure.value.lower().startswith(own[:-1])]
    if failure.wanted == "efforts" and (plan := plan_meant(failure.value, EFFORT_PLANS, failure)):
        return f"write {plan}"
    if failure.wanted == "efforts" and plans:
        return f"write {EFFORT_PLANS[plans[0]]}, with the words of {file}"
    if certain:
        return f"write {certain}; {FIXED}"
    if both := _from_to(failure, words):
        return both
    if several := _several(failure, words):
        return several
    if flag := flag_beside(failure):
        return f"write {flag}: true in place of '{failure.path[-1]}'"
    if near:
        return f"did you mean '{near}'?"
    if (meant := _BASES.get(failure.value.lower(), "")) in words:
        return f"write {meant}"
    return _of_words(failure, words, file)


def _from_to(failure: Failure, words: Collection[str]) -> str:
    """For two efforts with a dash between, ``steady-strong``: what that may be; "" elsewhere."""
    ends = re.split(r" ?(?:-|–|->|→|\bto\b) ?", failure.value.strip().lower())
    if failure.wanted != "efforts" or len(ends) != 2 or not all(own in words for own in ends):
        return ""
    pair = f"[{', '.join(ends)}]"
    return (
        f"one belongs here: {ends[0]} or {ends[1]}; within each rep {{build: {pair}}}, from rep to "
        f"rep {{descend: {pair}}}"
    )


def _of_words(failure: Failure, words: Collection[str], file: str) -> str:
    """The words of a list, of which none is like what stands there, and why one of them is due."""
    value, all_of_them = failure.value, listed(words, 24)
    if not words:
        return f"the club has no such list yet: write its words in {file}"
    if value.partition("#")[0] in words:
        return f"a blank belongs before a comment: write {value.replace('#', '  #', 1)}"
    if value.lower() in _ANY:
        return f"one of them has to be chosen: write {all_of_them}"
    if failure.wanted == "efforts" and re.search("[0-9]", value):
        return f"an effort is a word here: write {all_of_them}"
    if failure.wanted in failure.names.lent:
        return f"the words are {all_of_them}; for one of your own: {_NEW_LIST} {failure.wanted}"
    if failure.names.lent and value in lent_words(
        failure.wanted
    ):  # an entry of the program, beside a list of one's own
        mend = f"where one of them stands for {value}, write also: [{value}] in it"
        return f"the words are {all_of_them} ({file}); {mend}, and --fix puts it everywhere"
    return f"the words are {all_of_them} ({file})"


def form_hint(failure: Failure) -> str:
    """How to write a time of day or a number of weeks that is written in another way."""
    if failure.on_key:
        return ""
    address = f"https://{failure.value.removeprefix('http://').lstrip('/')}"
    if _A_HOST.match(address) and "https" in failure.wanted and re.search(failure.wanted, address):
        return f"write {address}"
    if failure.value == "24:00":
        return 'write "23:59", the last minute of the day'
    for meant in (of_day_meant(failure.value), weeks_meant(failure.value)):
        if meant and re.search(failure.wanted, meant):
            return f'write "{meant}"' if ":" in meant else f"write {meant}"
    return ""
