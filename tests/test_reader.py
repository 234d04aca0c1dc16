"""The strict reader, whatever bytes it is given: it never raises, it keeps its places, it hides
nothing.
"""

from __future__ import annotations

import copy
import json
import re
from collections.abc import Iterator
from datetime import date
from pathlib import Path
from typing import Any

import pytest
import yaml
from example_cases import BASE
from hypothesis import example, given
from hypothesis import strategies as st

from almanac.analysis.analysis import Analysis
from almanac.checks import check
from almanac.findings import Place
from almanac.model.load import load
from almanac.report.findings_shown import FORMATS
from almanac.report.set_json import set_json
from almanac.report.set_text import set_text
from almanac.source.reader import MOST_BYTES, Document, read
from almanac.source.stream import DEEPEST, hidden_structure, may_hide_structure
from almanac.source.suggest import listed, near_names, nearest

# ---- never raises

YAML_PIECES = st.sampled_from(
    ["a", "b: ", ": ", "- ", "? ", "\n", "\n  ", "\n    ", "[", "]", "{", "}", ", ", "'", '"', "\\",
     "\\x41", "\\u202e",
     "&a ", "*a", "!t ", "!!str ", "!<", "<<: ", "|", ">-", "|2", "%YAML 1.1", "%TAG", "---", "...",
     ("# "
         "c"), "\t", "\r\n",
     "\r", "\ufeff", "\x00", "\x85", "\u2028", "\u202e", "é", "\U0001f3ca", "1:15", "0x1f", "1e3",
     ".inf", "yes", "null",
     "~", "2026-01-01", "@", "`", "=", "<<<<<<< HEAD\n", "title: Six\n", "items:\n  - reps: 6\n"]
)  # fmt: skip
YAMLISH = st.lists(YAML_PIECES, max_size=30).map("".join)


def within(place: Place, text: str) -> bool:
    """Whether a place stands in a text, or just behind a line of it."""
    lines = text.split("\n")
    return place.line == 0 or (place.line <= len(lines) + 1 and place.column >= 1)


@given(
    st.binary(max_size=300)
    | YAMLISH.map(str.encode)
    | YAMLISH.map(lambda text: text.encode("utf-16"))
)
@example(b"\xff\xfe")
@example(b"? " * 30_000)
@example(b"- " * 30_000)
@example(b"[" * 30_000)
@example(b"{a: " * 10_000)
@example(b"[a: " * 10_000)
@example(b"- ? " * 10_000)
@example("".join(" " * depth + "a:\n" for depth in range(350)).encode())
@example(b"a: &a [" + b"*a, " * 10_000)
@example(b"a: b\n" * 10_000)
@example(b"\t" * MOST_BYTES)
@example(b"!" * MOST_BYTES)
@example(b'"' + b"\\x41" * 10_000 + b'"')
@example(b"a: " + b"1" * 60_000)
def test_no_bytes_raise(raw: bytes) -> None:
    document, findings = read(raw, "x.yml")
    assert document is not None or findings, "what is not read is told"
    for finding in findings:
        assert (
            finding.is_error and finding.place.file == "x.yml" and finding.message and finding.hint
        )
        assert within(finding.place, raw.decode("utf-8", "replace"))
        assert (finding.message + finding.hint).isprintable()


@given(YAMLISH)
def test_what_is_read_is_plain(text: str) -> None:
    document, _ = read(text.encode(), "x.yml")
    if document is not None:
        json.dumps(document.data, allow_nan=False)
        assert depth_of(document.data) <= DEEPEST


def depth_of(value: Any) -> int:
    inner = (
        value.values() if isinstance(value, dict) else value if isinstance(value, list) else None
    )
    return 0 if inner is None else 1 + max(map(depth_of, inner), default=0)


@given(YAMLISH)
def test_the_quick_look_misses_nothing_that_hides(text: str) -> None:
    """Where the slower pass is spared, it would have found no anchor, alias, tag, directive or
    second document.
    """
    text = re.sub(
        "[\r\x85\u2028\u2029\ufeff]", "\n", text
    )  # what the reader refuses before it looks
    if not may_hide_structure(text):
        findings, _ = hidden_structure(text, "x.yml")
        assert not {finding.code for finding in findings} & {
            "anchor",
            "alias",
            "tag",
            "directive",
            "several-documents",
        }


@given(st.text(max_size=40), st.lists(st.text(max_size=12), max_size=8))
def test_suggestions_come_from_the_choices(word: str, choices: list[str]) -> None:
    assert nearest(word, choices) in {None, *choices}
    assert all(choice in listed(choices) for choice in choices)


# ---- places


def marks(
    node: yaml.Node, path: tuple[str | int, ...] = ()
) -> Iterator[tuple[tuple[str | int, ...], bool, yaml.Mark]]:
    """Every value and key below a node, with PyYAML's own mark of where it begins."""
    yield path, False, node.start_mark
    if isinstance(node, yaml.MappingNode):
        for key, value in node.value:
            yield (*path, key.value), True, key.start_mark
            yield from marks(value, (*path, key.value))
    elif isinstance(node, yaml.SequenceNode):
        for number, item in enumerate(node.value):
            yield from marks(item, (*path, number))


KEYS = st.text(
    st.characters(codec="utf-8", categories=("L", "N", "Zs", "Po", "So")), min_size=1, max_size=8
).filter(lambda key: key.isprintable() and key not in {"null", "~", "<<"})
LEAVES = (
    st.none()
    | st.booleans()
    | st.integers(-(10**13), 10**13)
    | st.text(st.characters(codec="utf-8", exclude_categories=("C", "Zl", "Zp")))
)
INNER = st.recursive(
    LEAVES,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(KEYS, inner, max_size=4),
    max_leaves=12,
)
DATA = st.dictionaries(KEYS, INNER, min_size=1)


@given(DATA, st.sampled_from([None, True, False]), st.sampled_from([2, 4]))
def test_places_agree_with_pyyaml(data: dict[str, Any], flow: bool | None, indent: int) -> None:
    text = yaml.safe_dump(
        data, allow_unicode=True, default_flow_style=flow, indent=indent, sort_keys=False
    )
    document = sound(text)
    for path, of_key, mark in marks(yaml.compose(text, Loader=yaml.SafeLoader)):
        assert document.place(path, of_key) == Place("x.yml", mark.line + 1, mark.column + 1)


@pytest.mark.parametrize("file", sorted(BASE.rglob("*.yml")), ids=lambda file: file.stem)
def test_places_in_entries_agree_with_pyyaml(file: Path) -> None:
    text = file.read_text("utf-8")
    document = sound(text)
    for path, of_key, mark in marks(yaml.compose(text, Loader=yaml.SafeLoader)):
        assert document.place(path, of_key) == Place("x.yml", mark.line + 1, mark.column + 1)


def test_a_place_that_is_not_there_is_its_nearest_parents() -> None:
    document = sound("a:\n  - b: 1\n")
    assert document.place(("a", 0, "c")) == document.place(("a", 0)) == Place("x.yml", 2, 5)
    assert document.place(("a", 7)) == Place("x.yml", 2, 3)
    assert document.place(("z",)) == Place("x.yml", 1, 1)


def sound(text: str) -> Document:
    document, findings = read(text.encode(), "x.yml")
    assert document is not None and findings == []
    return document


# ---- plain data


@given(DATA)
def test_plain_data_goes_there_and_back(data: dict[str, Any]) -> None:
    assert sound(json.dumps(data, ensure_ascii=False, indent=1)).data == data


@pytest.mark.parametrize(
    ("written", "value"),
    [
        ("1:15", "1:15"), ("0:50", "0:50"), ("190:20:30", "190:20:30"), ("1:15.5", "1:15.5"),
        ("2026-09-01", "2026-09-01"),
        ("yes", "yes"), ("no", "no"), ("on", "on"), ("off", "off"), ("y", "y"), ("True", "True"),
        ("NULL", "NULL"),
        ("true", True), ("false", False), ("null", None), ("~", None), ("", None),
        ("6", 6), ("-6", -6), ("+6", 6), ("0", 0), ("06", "06"), ("0x6", "0x6"), ("0o6", "0o6"),
        ("1_000", "1_000"),
        ("2.5", 2.5), ("-0.5", -0.5), ("6.0", 6.0), (".5", ".5"), ("5.", "5."), ("1e3", "1e3"),
        (".inf", ".inf"),
        (".nan", ".nan"), ("0b1", "0b1"),
        ('"6"', "6"), ("'true'", "true"), ('""', ""), (">-\n  6", "6"), ("=", "="), ("50m", "50m"),
        ("٣", "٣"),
    ],
)  # fmt: skip
def test_plain_words(written: str, value: Any) -> None:
    found = sound(f"key: {written}\n").data["key"]
    assert found == value and type(found) is type(value)


# ---- entries that someone has damaged

DOCUMENTS = {
    file.relative_to(BASE): yaml.safe_load(json.dumps(sound(file.read_text("utf-8")).data))
    for file in BASE.rglob("*.yml")
}
DAMAGE = st.sampled_from(
    [None, True, False, 0, -1, 1, 6.0, 2.5, 0.0000001, 99999999999999, "", "x", "0:00", "0:01",
     "1:75", "23:59:59", "2026-02-30",
     "easy", "fast", "back-kick", "fins", "heron-1", "supine", "50m", [], {}, [[]], ["easy"],
     ["fast", "easy"],
     {"from": 9, "to": 1}, "é" * 500, {"descend": ["easy", "fast"]}, {"build": ["fast", "easy"]},
     {"rotate": ["fast", "easy"]},
     {"pause": "0:01"}, {"rounds": 50, "items": [{"reps": 100, "distance": 5000, "do": "back-kick",
         "effort": "fast"}]}]
)  # fmt: skip


def paths(value: Any, path: tuple[str | int, ...] = ()) -> Iterator[tuple[str | int, ...]]:
    """The path of every value below another."""
    inner = (
        value.items()
        if isinstance(value, dict)
        else enumerate(value)
        if isinstance(value, list)
        else ()
    )
    for step, item in inner:
        yield (*path, step)
        yield from paths(item, (*path, step))


@st.composite
def damaged(draw: st.DrawFn) -> tuple[Path, str]:
    """A file of base and its text with one value replaced, taken out or moved to another place."""
    file = draw(st.sampled_from(sorted(DOCUMENTS)))
    data = copy.deepcopy(DOCUMENTS[file])
    *way, last = draw(st.sampled_from(list(paths(data))))
    holder = data
    for step in way:
        holder = holder[step]
    what = draw(st.sampled_from(["replace", "replace", "remove", "add"]))
    if what == "remove":
        del holder[last]
    elif what == "replace" or isinstance(holder, list):
        holder[last] = draw(DAMAGE)
    else:
        holder[
            draw(
                st.sampled_from(
                    ["rest", "gear", "time", "parts", "expect", "moved_to", "accepts", "notes"]
                )
            )
        ] = draw(DAMAGE)
    return file, json.dumps(data, ensure_ascii=False)


@pytest.fixture(scope="module")
def root(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy of base that may be written to."""
    root = tmp_path_factory.mktemp("damaged")
    for file in DOCUMENTS:
        (root / file).parent.mkdir(parents=True, exist_ok=True)
        (root / file).write_bytes((BASE / file).read_bytes())
    return root


@given(damaged())
def test_no_damage_raises(root: Path, damage: tuple[Path, str]) -> None:
    """Whatever one value of one entry becomes: findings with places, and sums without inf or nan,
    never an exception.
    """
    file, text = damage
    before = (root / file).read_bytes()
    (root / file).write_text(text, "utf-8")
    try:
        loaded = load(root)
        analysis = Analysis(loaded.catalogue, date(2026, 10, 1)) if loaded.catalogue else None
        findings = [*loaded.findings, *(check(analysis) if analysis else ())]
        for form in FORMATS.values():
            assert form(findings, loaded.count)
        assert analysis or any(finding.is_error for finding in findings), (
            "where nothing was checked, an error says why"
        )
        for id in analysis.computable if analysis else ():
            json.dumps(set_json(analysis.summary(id)), allow_nan=False)
            assert set_text(analysis.catalogue, analysis.summary(id))
    finally:
        (root / file).write_bytes(before)


@pytest.mark.parametrize(
    ("said", "meant"),
    [
        ("back kik", ["back-kick-hands-up", "wall-hold-back-kick"]),
        ("streamlined bak kick", []), ("handsup kick back", ["back-kick-hands-up"]),
        ("dolfin bord", ["dolphin-on-board"]), ("braket kick", ["wall-hold-front-kick"]),
        ("6 beat kick", ["freestyle-two-beat"]), ("", []), ("---", []), ("é" * 500, []),
        ("hands", ["back-kick-hands-up"]), ("back", ["back-kick-hands-up", "wall-hold-back-kick"]),
    ],
)  # fmt: skip
def test_of_several_words_each_is_in_what_is_near(said: str, meant: list[str]) -> None:
    """A bracket kick is spelt like a back kik, and is none."""
    called = {
        "wall-hold-front-kick": ["Bracket kick"], "freestyle-two-beat": ["Two-beat kick"],
        "back-kick-hands-up": ["Back kick, hands up"], "wall-hold-back-kick": [],
        "dolphin-on-board": [],
    }  # fmt: skip
    assert near_names(said, called) == meant


@pytest.mark.parametrize(
    ("said", "meant"),
    [
        ("heron", ["heron-1", "heron-2"]), ("heron-3", ["heron-1", "heron-2"]),
        ("herron-2", ["heron-2"]), ("osprye", ["osprey"]),
        ("bakc kcik", ["zz-back-kick", "long-kick-on-the-back"]),  # the likest first
        ("breath", ["osprey"]), ("nobody", []),
    ],
)  # fmt: skip
def test_what_tells_two_apart_is_left_to_who_asks(said: str, meant: list[str]) -> None:
    """A number is no letter wrong; and what no name has, some meaning may."""
    called = {"heron-1": [], "heron-2": [], "osprey": [], "long-kick-on-the-back": [],
              "zz-back-kick": []}  # fmt: skip
    assert near_names(said, called, {"osprey": "who breathes late", "heron-1": "lane 1"}) == meant


def test_no_mend_is_tried_in_a_text_whose_aliases_grow_without_end() -> None:
    """Each of nine lists holds the one before ten times: a thousand million items, written out."""
    lists = ["l0: &l0 [x, x]"]
    lists += [f"l{n}: &l{n} [{', '.join([f'*l{n - 1}'] * 10)}]" for n in range(1, 10)]
    text = "\n".join(['title: "Back kick', "level: foundation", *lists]) + "\n"
    document, findings = read(text.encode(), "drills/skills/kicking/back-kick.yml")
    assert document is None
    assert [(own.code, own.place.line) for own in findings] == [("yaml-syntax", 1)]
