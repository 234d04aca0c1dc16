"""What of a set is said in words: efforts, gear, send-offs, marks, and with whom one swims."""

from __future__ import annotations

from almanac.model.catalogue import Catalogue
from almanac.model.effort_plans import Build, Descend, Effort, Hold, Rotate
from almanac.model.manner import PARTNERS, STARTS, TEAMS, Aim, Waves
from almanac.model.reps import Part, Reps
from almanac.model.sendoff import Sendoff, Times
from almanac.units import show_time

TO_MARK = {
    "wall": "to the wall", "flags": "to the flags", "near-flags": "to the first flags",
    "middle": "to the middle", "15m": "to 15 m", "end": "to the end",
}  # fmt: skip


ORDERS = {
    "rotate": "in turn", "medley": "in medley order", "reverse_medley": "in reverse medley order",
}  # fmt: skip


def do_words(catalogue: Catalogue, part: Part) -> str:
    """What is done: a drill, or several in turn."""
    titles = ", ".join(catalogue.drills[id].title for id in part.drills)
    return f"{ORDERS[part.order]}: {titles}" if part.order else titles


def how_words(catalogue: Catalogue, item: Reps) -> str:
    """How a rep starts, and with whom it is swum."""
    named = {STARTS: item.start, PARTNERS: item.partner, TEAMS: item.team}
    titles = (catalogue.words(list_)[word].title for list_, word in named.items() if word)
    return ", ".join(title[:1].lower() + title[1:] for title in titles)


def start_words(catalogue: Catalogue, start: str) -> str:
    """How a rep starts; "" where it is a push from the wall."""
    title = catalogue.words(STARTS)[start].title if start else ""
    return title[:1].lower() + title[1:]


def aim_words(catalogue: Catalogue, aim: Aim | None) -> str:
    """The time to hold, for all or by lane group."""
    if aim is None:
        return ""
    if aim.every is not None:
        return hold_words(aim.every)
    return "; ".join(
        f"{catalogue.lane_groups[group].title} {hold_words(time)}"
        for group, time in aim.by_group.items()
    )


def hold_words(seconds: float) -> str:
    """A time to hold: ``hold 0:38.0``."""
    return f"hold {show_time(seconds, tenths=True)}"


def effort_words(catalogue: Catalogue, effort: Effort) -> str:
    """An effort in words: ``steady``, ``descend steady to fast``."""

    def title(word: str) -> str:
        return catalogue.efforts[word].title.lower()

    match effort:
        case Hold(word):
            return title(word)
        case Descend(first, last, build):
            shape = f", each {effort_words(catalogue, build)}" if build else ""
            return f"descend {title(first)} to {title(last)}{shape}"
        case Build(first, last):
            return f"build {title(first)} to {title(last)}"
        case Rotate(words):
            return "in turn " + ", ".join(map(title, words))


def effort_of_reps(catalogue: Catalogue, item: Reps, effort: Effort) -> str:
    """An effort of reps in words. A single rep of those that go in turn, or each faster, has the
    first of them: so a piece that is cut to it says what is swum.
    """
    if item.reps == 1 and not (item.by_group or item.by_round):
        match effort:
            case Rotate(words):
                return effort_words(catalogue, Hold(words[0]))
            case Descend(first, _, build):
                return effort_words(catalogue, build or Hold(first))
    return effort_words(catalogue, effort)


def gear_words(catalogue: Catalogue, gear: tuple[str, ...]) -> str:
    """How gear is used: ``in the chute and with a snorkel``."""
    return " and ".join(catalogue.gear[id].use for id in gear)


def sendoff_words(catalogue: Catalogue, sendoff: Sendoff) -> str:
    """A send-off in words: ``on 1:05``, one for each rep, or where lane groups differ one for each
    of them.
    """
    if sendoff.every:
        return f"on {times_words(sendoff.every)}"
    if len(set(sendoff.by_group.values())) == 1 and len(sendoff.by_group) > 1:
        return f"on {times_words(next(iter(sendoff.by_group.values())))}"
    return "; ".join(
        f"{catalogue.lane_groups[group].title} on {times_words(own)}"
        for group, own in sendoff.by_group.items()
    )


def times_words(times: Times) -> str:
    """One time, or one a rep."""
    return ", ".join(map(show_time, times))


def waves_words(waves: Waves | None) -> str:
    """Who swims while who rests, in words: ``in 2 waves``, ``2 at a time``."""
    if waves is None:
        return ""
    return f"in {waves.number} waves" if waves.number else f"{waves.swimmers} at a time"
