"""What is said of a composed practice, by key: for the command, and in a squad's data for whoever
chooses by it, so that no sentence is written twice.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

SENTENCES: Mapping[str, str] = {
    # A piece in a practice.
    "role-w": "Warm-up",
    "role-s": "Skill",
    "role-m": "Main set",
    "role-n": "Main set",
    "role-o": "Main set",
    "role-e": "Relief",
    "role-c": "Cool-down",
    "role-held": "As written",
    "serves": "serves {goal}",
    "serves-by": "serves {goal}: {show}",
    "serves-some": "serves {goal} in part: {show}",
    "written-for": "written for {goal}",
    "and": " and ",
    "warms": "warms what comes: {strokes}",
    "legs": "wakes the legs before they work hard",
    "comes-up": "rises to {effort}",
    "carries": "carries tired legs into {strokes}",
    "after": "{effort}, after the work",
    "used": "a drill of it comes back in the main set",
    "as-wished": "{effort}, as wished",
    "trains": "none of the goals: it trains {goal}",
    "trains-by": "none of the goals: it trains {goal}: {show}",
    "no-other": "nothing for {goal} that may stand here is written for them",
    "no-other-fits": "nothing for {goal} fits as well here",
    "no-other-because": "nothing for {goal} can stand here: {because}",
    "stands-w": "eases in",
    "stands-s": "a skill before the main set",
    "stands-m": "none of the goals",
    "stands-n": "none of the goals",
    "stands-o": "none of the goals",
    "stands-c": "ends easy",
    "stands-held": "as on its page",
    "done-0": "done today",
    "done-1": "not done for 1 day",
    "done": "not done for {days} days",
    "gear": "needs {used} × {gear}, {here} are here",
    # What a practice does not meet.
    "unmet-goals": "{goal} is not in it, as {because}: {mend}.",
    "unmet-effort": "No main set is {effort}, as what serves the goals is not: drop the effort, or"
    " a goal.",
    "unmet-effort-harder": "Some of the work is harder than {effort}, as what else serves the goals"
    " is: drop the effort, or a goal.",
    "unmet-effort-one": "No main set is {effort}, as what serves the goal is not: drop the effort.",
    "unmet-effort-harder-one": "Some of the work is harder than {effort}, as what else serves the"
    " goal is: drop the effort.",
    "unmet-skill": "There is no skill in it: leave out a goal, or take more minutes.",
    "unmet-skill-one": "There is no skill in it: take more minutes.",
    "unmet-skill-none": "There is no skill in it: none for what is wished is written for them.",
    "unmet-skill-because": "There is no skill in it, as {because}: {mend}.",
    "unmet-relief": "Nothing easy carries tired legs into the stroke: take more minutes.",
    "unmet-skill-time-left": "There is no skill in it.",
    "unmet-relief-time-left": "Nothing easy carries tired legs into the stroke.",
    "unmet-slot-time-left": "{time} of the slot is not filled: swap a piece for a longer one.",
    "because-gear": "the gear for it is not at hand",
    "because-lanes": "the lanes are too full for it",
    "because-adults": "it needs more adults",
    "because-done": "what serves it was a main set in the last seven days",
    "because-leave_out": "it is left out",
    "because-groups": "nothing of it is written for these lane groups",
    "because-minutes": "there is no time for it",
    "because-taught": "what its drills need first has not been taught",
    "mend-gear": "bring it, or ask for another goal",
    "mend-lanes": "take more lanes, or ask for another goal",
    "mend-adults": "ask one more to come, or ask for another goal",
    "mend-done": "let a main set repeat, or ask for another goal",
    "mend-leave_out": "take it in again, or ask for another goal",
    "mend-groups": "ask for another goal",
    "mend-minutes": "take more minutes, or drop a goal",
    "mend-minutes-one": "take more minutes",
    "mend-taught": "teach that first, or ask for another goal",
    # Where nothing fits, the wish to drop.
    "hinders-goals": "Without {goal} there would be one.",
    "hinders-piece": "There is no {role} for them in this pool: write a set, or a practice with"
    " one.",
    "hinders-minutes": "In {minutes} minutes there would be one.",
    "hinders-done": "What was done lately is in the way: with repeats there would be one.",
    "hinders-gear": "With all the gear that the club owns there would be one.",
    "hinders-gear-one": "With {gear} there would be one.",
    "hinders-together": "There would be one {drops}.",
    "together-done": "with repeats",
    "together-gear": "with all the gear",
    "together-adults": "with more adults",
    "together-effort": "at another effort",
    "together-taught": "with more taught",
    "together-keep": "without what is kept",
    "together-leave_out": "with what is left out",
    "together-lanes": "with the usual lanes and heads",
    "together-minutes": "in {minutes} minutes",
    "nearest": ": “{title}”.",
    "hinders-adults": "With more adults there would be one.",
    "hinders-effort": "At another effort there would be one.",
    "hinders-taught": "With more taught there would be one.",
    "hinders-keep": "Without what is kept there would be one.",
    "hinders-leave_out": "With what is left out there would be one.",
    "hinders-room": "No {role} has room for {heads} in a lane.",
    "or": " or ",
    "hinders-fewer": "With {heads}, {most} in a lane, there would be one.",
    "heads": "{heads} in {group}",
    "hinders-lanes": "With the usual lanes and heads there would be one.",
    # A wish that cannot be.
    "bad-place": "there is no {what} '{id}'",
    "bad-place-known": "there is no {what} '{id}'; there are {known}",
    "bad-number": "{number} {what} for {group}: from 1 to {most} can be",
    "bad-none": "{number} {what} for {group}: from 1 to {most} can be, and who does not swim is"
    " left out of the lane groups",
    "bad-minutes": "{minutes} min: from {least} to {most} minutes can be composed",
    "bad-minutes-squad": "{minutes} minutes: {squad} has {most} at most",
    "bad-goals": "{number} goals: one to {most} can be asked for",
    "no-goals": "no goal is named: one to {most} can be asked for",
    "bad-goal": "nothing that {squad} may do in this pool serves {goal}; there is something for"
    " {known}",
    "bad-gear": "{number} of {gear}: the club owns {owned}",
    "no-gear": "{number} of {gear}: the club owns none",
    "bad-days": "{key} was done {days} days ago: 0 is today",
    "bad-stages": "{id} has {stages} stages, and {told} were told",
    "bad-keep": "{key} cannot stand there",
    "bad-keep-role": "{key} cannot stand as {role}, but as {roles}",
    "bad-keep-twice": "{key}: another piece is kept there already",
    "bad-keep-gear": "{title} cannot be kept: {used} use {gear} at once, {here} are here",
    "bad-keep-groups": "{title} cannot be kept: it is not for all of these lane groups, or not for"
    " this pool",
    "bad-keep-lanes": "{title} cannot be kept: the lanes are too full for it",
    "bad-keep-adults": "{title} cannot be kept: it needs more adults",
    "bad-keep-leave_out": "{title} cannot be kept: it is left out",
    "bad-lanes": "{lanes} lanes: {pool} has {most}",
    "bad-adults": "{adults} adults: for {heads} in {pool} it takes {least}",
    "bad-adults-1": "1 adult: for {heads} in {pool} it takes {least}",
    # As an entry.
    "entry-title": "{squad}: {title}",
    "entry-beside": "{title} beside the main set.",
    "entry-centre": "{title} at the centre.",
    "entry-purpose": "For {goals}.",
    # What was changed of a proposal, and what cannot be.
    "now": "now {time}",
    "left": "{time} left",
    "longer": "{what} {time} longer",
    "shorter": "{what} {time} shorter",
    "another": "{what} now {title}",
    "moved-up": "{what} now before {next}",
    "moved-down": "{what} now after {next}",
    "gone": "{what} taken out",
    "kept": "{what} kept",
    "free": "{what} no longer kept",
    "change-kept": "{title} is kept: free it first.",
    "change-swap": "Nothing else fits there as {role}.",
    "change-first": "A practice begins with its warm-up.",
    "change-last": "A practice ends with its cool-down.",
    "change-out": "A practice needs its {role}: swap it for another.",
    "broken-minutes": "It does not fit into the slot so: keep fewer pieces, or take another out.",
    "too-long": "In {minutes} minutes it does not fit: at its shortest it takes {time}.",
    "too-long-kept": " Free what is kept first.",
    "too-long-out": " Take out {titles} first.",
    "too-long-swap": " Swap {title}, the longest, first.",
    "broken-limit": "So there would be more fast, resisted or underwater metres than the squad may"
    " do in a practice.",
    "broken-dose": "So a drill would be done more often than its dose lets the squad.",
    "broken-breath": "So somebody would go under water too soon after fast work.",
    "broken-taught": "So a drill would come before what it needs first.",
    "bad-stand": "{title} cannot stand there: {because}.",
    "bad-twice": "No piece stands in a practice twice.",
    "bad-roles": "A practice begins with a warm-up, has a main set and ends with a cool-down.",
    "bad-deed": "there is nothing to {do} as {role}",
    "what-lanes": "lanes",
    "what-heads": "swimmers",
    "what-pool": "pool",
    "what-group": "lane group",
    "what-goal": "goal",
    "what-gear": "gear",
    "what-effort": "effort",
    "what-piece": "piece",
    "what-done": "practice of the squad, or piece,",
    "what-progression": "progression",
}


def said(key: str, /, **filled: object) -> str:
    """A sentence with its blanks filled."""
    return SENTENCES[key].format(**filled)


def role_word(role: str) -> str:
    """What a role is called."""
    return SENTENCES.get(f"role-{role}", SENTENCES["role-held"])


def words_in_a_row(words: Sequence[str], before_last: str = "and") -> str:
    """Words in a row: ``kick, walls and rotation``."""
    *others, last = words
    return said(before_last).join([", ".join(others), last]) if others else last
