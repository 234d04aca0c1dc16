"""What a reviewer must not miss: dangers that go, limits and doses that let more happen,
acceptances.
"""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import pytest
import yaml
from plans_world import club, write
from shared import CATALOGUE
from test_review import KICK, git, reviewed

from almanac.analysis.comparison import Comparison
from almanac.commands.main import main
from almanac.kinds import KIND
from almanac.model.compare import EntryChange, compare
from almanac.model.loosened import Loosened, loosened
from almanac.report.review.first import first_lines
from almanac.source import schemas
from almanac.source.git.objects import ChangedFile
from almanac.source.looser import WAYS, _opened, guarded_vocabularies, guards, way_of
from almanac.source.reader import Document


def told(
    kind: str, before: dict[str, Any], after: dict[str, Any] | None, **words: list[str]
) -> list[Loosened]:
    """What is loosened where one entry changes; ``words`` are vocabularies."""
    listed = {
        ("vocabulary", name): Document("", "", {"words": {word: {} for word in own}})
        for name, own in words.items()
    }
    old = {**listed, (kind, "x"): Document("x.yml", "", before)}
    new = {**listed, **({} if after is None else {(kind, "x"): Document("x.yml", "", after)})}
    return loosened(compare(old, new), old, new)


def test_every_limit_says_which_way_is_looser() -> None:
    properties = schemas.raw("policy")["properties"]
    levels = properties["levels"]["additionalProperties"]["properties"]
    for limits in (properties["limits"]["properties"], levels):
        for name, limit in limits.items():
            assert way_of(name, limit) in WAYS or "$ref" not in limit, (
                f"say which way {name} is looser, or let its name end in _most or _least"
            )


def ways(piece: Any) -> list[Any]:
    if isinstance(piece, list):
        return [way for item in piece for way in ways(item)]
    if isinstance(piece, dict):
        own = (
            [piece["looser"]] if "looser" in piece and not isinstance(piece["looser"], dict) else []
        )
        return own + [way for value in piece.values() for way in ways(value)]
    return []


def test_the_words_of_looser_are_known() -> None:
    for name in ("common", *KIND):
        assert set(ways(schemas.raw(name))) <= set(WAYS)


def limit(value: float, unit: str = "m") -> dict[str, Any]:
    return {"value": value, "unit": unit, "reason": "Because.", "source": "house preference"}


@pytest.mark.parametrize(
    "name", [n for n, p in schemas.raw("policy")["properties"]["limits"]["properties"].items()]
)
def test_each_limit_is_told_one_way_and_not_the_other(name: str) -> None:
    piece = schemas.raw("policy")["properties"]["limits"]["properties"][name]
    default = piece["default"]
    more = {"limits": {name: {**default, "value": default["value"] + 1}}}
    less = {"limits": {name: {**default, "value": default["value"] / 2}}}
    way = way_of(name, piece)
    # against the default, which stands where a policy leaves the limit out
    assert [one.sort for one in told("policy", {}, more)] == (["looser"] if way == "more" else [])
    assert [one.sort for one in told("policy", {}, less)] == (["looser"] if way == "less" else [])
    assert [one.sort for one in told("policy", less, {})] == (["looser"] if way == "more" else [])
    unit = {
        "limits": {
            name: {
                **default,
                "unit": "AU" if default["unit"] != "AU" else "s",
                "value": default["value"] + 1,
            }
        }
    }
    assert [one.sort for one in told("policy", {}, unit)] == ([] if way == "neither" else ["other"])


def test_times_of_lane_groups_that_become_faster_are_one_line() -> None:
    """Rest on a send-off is reckoned with them, and a day of tests changes many."""

    def club(*times: str) -> dict[str, Any]:
        tests = [{"benchmark": "back-kick-50", "time": time} for time in times]
        return {"lane_groups": {"heron-1": {"tests": tests}}}

    found = told("club", club("1:00.0", "1:10.0", "1:20.0"), club("0:50.0", "1:12.0", "1:19.0"))
    assert [one.path[-2] for one in found] == [0, 2]
    empty: Any = {field: [] for field in Comparison.__dataclass_fields__ if field != "comparable"}
    (line,) = first_lines(Comparison(**{**empty, "loosened": found}), "", ())
    assert line == (
        "- **Times become faster.** `club`: `heron-1.tests[0]` from `1:00.0` to `0:50.0`,"
        " `heron-1.tests[2]` from `1:20.0` to `1:19.0`. The rest that send-offs leave is reckoned "
        "with them."
    )
    assert told("club", club("1:00.0"), club("1:00.0", "0:40.0")) == []  # a new test


@pytest.mark.parametrize(
    ("drill", "is_under"),
    [
        ({"mode": "underwater"}, True),
        ({"mode": "wall", "under_water": 5}, True),
        ({"mode": "drill", "safety": [{"hazard": "blackout"}]}, True),
        ({"mode": "kick", "safety": [{"hazard": "cramp"}]}, False),
    ],
)
def test_steps_under_water_stand_among_what_is_read_first(
    drill: dict[str, Any], is_under: bool
) -> None:
    rests, up = "Then a minute of rest at the wall.", "Head out by 10 m, whatever the number was."
    later, more = "Head out by 20 m, whatever the number was.", "Count the tiles as they go by."
    found = told("drill", {**drill, "steps": [rests, up]}, {**drill, "steps": [later, more]})
    assert [one.sort for one in found] == (["gone", "other", "other"] if is_under else [])
    empty: Any = {field: [] for field in Comparison.__dataclass_fields__ if field != "comparable"}
    lines = "\n".join(first_lines(Comparison(**{**empty, "loosened": found}), "", ()))
    assert lines.count("**A step under water is told otherwise.**") == (3 if is_under else 0)
    assert all(("20" in lines, "tiles" in lines, "minute" in lines)) is is_under
    assert told("drill", {**drill, "steps": [rests, up]}, {**drill, "steps": [rests, up]}) == []


def test_limits_by_level_count_with_their_defaults() -> None:
    raised = {"levels": {"building": {"resisted_most": limit(9000)}}}
    (one,) = told("policy", {"levels": {"building": {}}}, raised)
    assert (one.sort, one.path) == ("looser", ("levels", "building", "resisted_most"))
    assert told("policy", raised, {"levels": {"building": {}}}) == []
    (one,) = told("policy", {"levels": {}}, raised)
    assert one.before["value"] < 9000
    (one,) = told(
        "policy",
        {"levels": {"building": {}}},
        {"levels": {"building": {"accepted_by": ["head-coach"]}}},
    )
    assert (one.sort, one.after) == ("accepted", "head-coach")


DOSE = {"distance": 25, "reps": {"from": 2, "to": 4}, "rest": "0:30", "most": 8}


@pytest.mark.parametrize(
    "change, raised",
    [
        ({"most": 9}, ["dose.most"]), ({"most": 7}, []), ({"rest": "0:20"}, ["dose.rest"]),
        ({"rest": "1:00"}, []),
        ({"rest": 20}, ["dose.rest"]), ({"distance": 50}, ["dose.distance"]),
        ({"reps": {"from": 2, "to": 5}}, ["dose.reps"]),
        ({"reps": {"from": 1, "to": 4}}, []),
        ({"distance": 50, "rest": "0:05", "most": 100},
         ["dose.distance", "dose.rest", "dose.most"]),
    ],
)  # fmt: skip
def test_a_raised_dose_is_told(change: dict[str, Any], raised: list[str]) -> None:
    found = told("drill", {"dose": DOSE}, {"dose": {**DOSE, **change}})
    assert [".".join(map(str, one.path)) for one in found] == raised
    assert {one.sort for one in found} <= {"looser"}


def test_words_are_compared_by_their_place_in_the_vocabulary() -> None:
    words = {"efforts": ["easy", "fast", "all-out"], "levels": ["foundation", "performing"]}
    before = {"effort": {"from": "easy", "to": "fast"}}
    (one,) = told("drill", before, {**before, "effort": {"from": "easy", "to": "all-out"}}, **words)
    assert (one.sort, one.path) == ("looser", ("effort", "to"))
    squads: list[dict[str, Any]] = [
        {"squads": {"reed": {"level": level}}} for level in words["levels"]
    ]
    (one,) = told("club", *squads, **words)
    assert (one.sort, one.path) == ("looser", ("squads", "reed", "level"))
    assert told("club", *reversed(squads), **words) == []
    assert (
        told("drill", before, {**before, "effort": {"from": "easy", "to": "easy"}}, **words) == []
    )


HAZARD = {"hazard": "A head meets the wall.", "control": "Count from the flags, a hand leading."}
OTHER = {"hazard": "A cord snaps and its end flies.", "control": "Look it over before each use."}


def test_a_danger_that_goes_is_told_and_one_that_comes_is_not() -> None:
    (one,) = told("drill", {"safety": [HAZARD, OTHER]}, {"safety": [OTHER]})
    assert (one.sort, one.before, one.after) == ("gone", HAZARD, None)
    assert told("drill", {"safety": [OTHER]}, {"safety": [HAZARD, OTHER]}) == []
    assert told("drill", {"safety": [OTHER, HAZARD]}, {"safety": [HAZARD, OTHER]}) == []
    assert [one.sort for one in told("drill", {"safety": [HAZARD, OTHER]}, {})] == ["gone", "gone"]
    assert [one.sort for one in told("gear", {"hazards": [HAZARD]}, {"hazards": []})] == ["gone"]
    suits: list[dict[str, Any]] = [
        {"not_for": {"levels": ["foundation", "building"], "turns": True}},
        {"not_for": {"levels": ["foundations"]}},
    ]
    assert [(one.sort, one.before) for one in told("gear", *suits)] == [
        ("gone", "foundation"), ("gone", "building"), ("gone", True),
    ]  # fmt: skip
    softer = {**HAZARD, "control": "Count from the flags."}
    (one,) = told("drill", {"safety": [HAZARD]}, {"safety": [softer]})
    assert (one.sort, one.before, one.after) == ("other", HAZARD, softer)


def test_a_danger_of_an_entry_that_is_removed_or_replaced_is_told() -> None:
    (one,) = told("drill", {"safety": [HAZARD], "dose": DOSE, "needs_first": ["a"]}, None)
    assert (one.sort, one.before) == ("gone", HAZARD)
    old = {
        ("drill", "x"): Document("x.yml", "", {"safety": [HAZARD, OTHER]}),
        ("drill", "y"): Document("y.yml", "", {"safety": [OTHER]}),
    }
    new = {**old, ("drill", "x"): Document("x.yml", "", {"moved_to": "y"})}
    (one,) = loosened(compare(old, new), old, new)
    assert (one.id, one.successor, one.sort, one.before) == ("x", "y", "gone", HAZARD)


def test_hazards_that_are_words_are_told_by_their_word_the_gravest_first() -> None:
    words = {
        ("vocabulary", "gravities"): {"words": {"can-kill": {}, "can-ache": {}}},
        ("vocabulary", "hazards"): {
            "words": {
                "sore": {"gravity": "can-ache"},
                "head-into-wall": {"gravity": "can-kill"},
                "head-into-walls": {},
            }
        },
    }
    sore, wall, other = ({"hazard": name} for name in ("sore", "head-into-wall", "head-into-walls"))
    old = {
        key: Document("", "", data)
        for key, data in {**words, ("drill", "x"): {"safety": [sore, wall]}}.items()
    }
    new = {**old, ("drill", "x"): Document("", "", {"safety": [other]})}
    assert [(one.sort, one.before) for one in loosened(compare(old, new), old, new)] == [
        ("gone", wall),
        ("gone", sore),
    ]
    new = {
        **old,
        ("drill", "x"): Document("", "", {"safety": [{**wall, "control": "Look up."}, sore]}),
    }
    (one,) = loosened(compare(old, new), old, new)
    assert (one.sort, one.hazard) == ("other", {"gravity": "can-kill"})
    del new["drill", "x"]
    assert len(loosened(compare(old, new), old, new)) == 2


ACCEPTS = {
    "check": "resisted-dose",
    "reason": "Two weeks before the break.",
    "until": "2026-12-01",
    "by": "head-coach",
}


def test_acceptances_that_come_or_are_prolonged_are_told() -> None:
    (one,) = told("set", {}, {"accepts": [ACCEPTS]})
    assert (one.sort, one.before, one.after) == ("accepted", None, ACCEPTS)
    longer = {**ACCEPTS, "until": "2027-12-01"}
    (one,) = told("set", {"accepts": [ACCEPTS]}, {"accepts": [longer]})
    assert (one.sort, one.before, one.after) == ("accepted", ACCEPTS, longer)
    assert told("set", {"accepts": [ACCEPTS]}, {}) == []


def test_controls_and_house_rules_that_change_are_told() -> None:
    words = {"words": {"cold": {"title": "Cold", "gravity": "grave", "control": "Out and dry."}}}
    weaker = {"words": {"cold": {"title": "Cold", "gravity": "grave", "control": "Wait."}}}
    assert [one.sort for one in told("vocabulary", words, weaker)] == ["other"]
    assert {one.sort for one in told("vocabulary", words, {"words": {}})} == {"gone"}
    rule = schemas.defaults("policy", "house_rules")["lightning"]
    assert [
        one.sort
        for one in told("policy", {}, {"house_rules": {"lightning": {**rule, "text": "Swim on."}}})
    ] == ["other"]


@pytest.mark.parametrize(
    "broken",
    [
        None,
        7,
        "x",
        [],
        [[]],
        {"a": {"b": 1}},
        [None, {"hazard": None}],
        True,
        {"value": []},
        {"to": {}},
    ],
)
@pytest.mark.parametrize("kind", list(KIND))
def test_broken_data_never_ends_in_a_traceback(kind: str, broken: Any) -> None:
    every = dict.fromkeys(schemas.fields(kind), broken)
    sound = {
        "safety": [HAZARD],
        "dose": DOSE,
        "levels": {"building": {"resisted_most": limit(1)}},
        "limits": {"most_reps": limit(3)},
    }
    for before, after in ((every, sound), (sound, every), (every, {}), ({}, every)):
        told(kind, before, after)


def test_the_club_catalogue_has_guards_of_every_kind_that_can() -> None:
    for file in sorted((CATALOGUE / "drills" / "gear").glob("*.yml")):
        data = yaml.load(file.read_text("utf-8"), Loader=yaml.BaseLoader)
        assert ("hazards",) in (found := guards("gear", data)) and any(
            path[0] == "not_for" for path in found
        )


def test_they_stand_at_the_top_in_whole_sentences(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    root = club(tmp_path / "club")
    for arguments in (
        ["init", "--quiet"],
        ["add", "--all"],
        ["commit", "--quiet", "--message", "base"],
    ):
        git(root, *arguments)
    text = (root / KICK).read_text("utf-8")
    data = yaml.load(text, Loader=yaml.BaseLoader)
    (hazard,) = (danger["hazard"] for danger in data["safety"])
    text = re.sub(r"(?ms)^safety:.*?(?=^\w)", "safety: [{hazard: foot-strikes}]\n", text)
    write(root, KICK, re.sub(r"most: \d+", "most: 90", text))
    own = "plans/sets/six-fifties.yml"
    more = (root / own).read_text("utf-8").replace("reps: 6", "reps: 60")
    write(root, own, f"{more}accepts: [{json.dumps(ACCEPTS)}]\n")
    main(["review", "HEAD", "--markdown", "--root", str(root)])
    first = capsys.readouterr().out.split("### ")[1]
    assert first.startswith("Read this first\n")
    assert (
        f"**Danger gone.** Drill `back-kick` no longer says under `safety`: hazard `{hazard}`. "
        "Its name is `Head meets the wall`."
        " Its gravity is `can-kill`. What is always done: `Count strokes from the flags.`."
    ) in first
    assert "**Dose raised.** Drill `back-kick`: `dose.most` goes from `" in first
    assert (
        "**Accepted.** Set `six-fifties` accepts what the check `resisted-dose` finds, until "
        "`2026-12-01`, in the name of"
        " `head-coach`. The reason given: `Two weeks before the break.`."
    ) in first
    assert "**More work.** Set `six-fifties` grows from 300 m to 3,000 m." in first
    told = reviewed(root, capsys, "HEAD", code=1)["loosened"]
    assert [one["sort"] for one in told] == ["gone", "looser", "accepted"]


# ---- every field that is marked, derived from the schemas


def marked(piece: Any, kind: str, depth: int = 0) -> list[tuple[tuple[str, ...], dict[str, Any]]]:
    """Each marked field of a kind as a way of names to it and its schema; ``*`` for any name."""
    if not isinstance(piece, dict) or depth > 8:
        return []
    piece = _opened(kind, piece)
    if isinstance(piece.get("looser"), str):
        return [((), piece)]
    inside = {**piece.get("properties", {}), "*": piece.get("additionalProperties")}
    return [
        ((name, *way), field)
        for name, own in inside.items()
        for way, field in marked(own, kind, depth + 1)
    ]


def holding(way: tuple[str, ...], value: Any) -> dict[str, Any]:
    for name in reversed(way):
        value = {"building" if name == "*" else name: value}
    held: dict[str, Any] = value
    return held


MARKED = [
    (kind, way, field)
    for kind in KIND
    for way, field in marked({"properties": schemas.fields(kind)}, kind)
    if field["looser"] != "neither"
]


def two_values(field: dict[str, Any]) -> tuple[Any, Any]:
    """A value of a field, and one that lets more happen."""
    words, ways = field.get("enum") or ["foundation", "performing"], field["looser"]
    if field.get("type") == "array":
        return (["a"], ["a", "b"]) if ways == "more" else (["a", "b"], ["a"])
    if field.get("vocabulary") or field.get("reference") or "enum" in field:
        return (words[1], words[0]) if ways == "less" else (words[0], words[1])
    return (2, 1) if ways == "less" else (1, 2)


@pytest.mark.parametrize(
    "kind, way, field", MARKED, ids=[f"{kind}-{'.'.join(way)}" for kind, way, _ in MARKED]
)
def test_every_marked_field_is_told(kind: str, way: tuple[str, ...], field: dict[str, Any]) -> None:
    before, after = two_values(field)
    words = {field["vocabulary"]: ["foundation", "performing"]} if "vocabulary" in field else {}
    found = told(kind, holding(way, before), holding(way, after), **words)
    assert [one.path for one in found] == [tuple("building" if n == "*" else n for n in way)]
    if field["looser"] == "any":  # what is left out means something too
        beside = holding(way[:-1], {"title": "Beside"})
        assert [one.after for one in told(kind, beside, holding(way, after))] == [after]
        assert [one.before for one in told(kind, holding(way, before), beside)] == [before]


def test_what_limits_go_by_is_marked() -> None:
    """A field of a level, a mode, an effect of gear: an entry's limits go by these words; by what
    a source measured none does.
    """
    for kind in set(KIND) - {"policy", "log", "source"}:
        for name, field in schemas.fields(kind).items():
            says = _opened(kind, field)
            if says.get("vocabulary") in {"levels", "modes", "positions", "effects", "starts"}:
                assert "looser" in says, f"{kind}.{name}: say which way it is looser"
    assert {"levels", "modes", "efforts", "effects", "starts"} <= guarded_vocabularies()
    assert "hazards" not in guarded_vocabularies()  # another danger lets nothing happen


def test_a_word_that_is_new_or_stands_elsewhere_is_told() -> None:
    old = {("vocabulary", "levels"): Document("", "", {"words": {"low": {}, "high": {}}})}
    for words in (["new", "low", "high"], ["high", "low"], ["low"]):
        new = {("vocabulary", "levels"): Document("", "", {"words": {word: {} for word in words}})}
        (one,) = loosened(compare(old, new), old, new)
        assert (one.path, one.before, one.after) == (("words",), "low, high", ", ".join(words))


def test_files_that_check_and_files_that_hide_stand_at_the_top() -> None:
    empty: Any = {field: [] for field in Comparison.__dataclass_fields__ if field != "comparable"}

    def first(*files: str) -> str:
        changed = [ChangedFile(file, "100644", "100644") for file in files]
        assert not [file for file in changed if file.is_entry]
        return "\n".join(first_lines(Comparison(**{**empty, "files": changed}), "", ()))

    assert "no check reads it" in first("drills/.hidden.yml")
    assert "no check reads it" in first("plans/sets/.hid/a.yml")
    for file in (
        "scripts/almanac/checks/rule.py", ".github/x.yml", ".ci/run", "pyproject.toml",
        "requirements-test.txt", "tests/test_words.py", "site_src/templates/drill.md.j2",
    ):  # fmt: skip
        told = first("README.md", file)
        assert "This proposal changes what checks it or shows it: " in told and f"`{file}`" in told
    many = first(*(f"scripts/{number}.py" for number in range(30)))
    assert many.count("This proposal changes") == 1 and "and 22 more" in many
    assert first("README.md") == ""


def test_another_id_hides_nothing() -> None:
    """A rename that loosens as well is told as if the id had stayed: dangers, limits and every
    field, and once.
    """
    limits: dict[str, object] = {"safety": [HAZARD, OTHER], "dose": DOSE, "title": "X"}
    looser = {"safety": [OTHER], "title": "Y"}
    stays = compare_of({"x": limits}, {"x": looser})
    for before in (
        {"x": limits},
        {"x": limits, "y": {"moved_to": "x"}},
    ):  # a new id, and back to an old one
        old, new, change = compare_of(before, {"x": {"moved_to": "y"}, "y": looser})
        assert (change.what, change.id, change.moved_from) == ("moved", "y", "x")
        assert change.fields == stays[2].fields
        assert [(one.sort, one.path, one.before) for one in loosened([change], old, new)] == [
            (one.sort, one.path, one.before) for one in loosened([stays[2]], *stays[:2])
        ]
    assert len(loosened([stays[2]], *stays[:2])) > 1


def compare_of(
    before: dict[str, dict[str, object]], after: dict[str, dict[str, object]]
) -> tuple[dict[tuple[str, str], Document], dict[tuple[str, str], Document], EntryChange]:
    """Drills before and after by id, and the one change between them."""
    old, new = (
        {("drill", id): Document(f"{id}.yml", "", data) for id, data in drills.items()}
        for drills in (before, after)
    )
    (change,) = compare(old, new)
    return old, new, change
