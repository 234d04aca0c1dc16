"""The rules behind "Add an entry", run in the browser: verdicts as jsonschema's, mistakes of the
same code at the same place as the command line's, YAML that is read back.
"""

from __future__ import annotations

import json
import random
from collections.abc import Iterator
from pathlib import Path
from typing import Any
from unittest import mock

import pytest
from example_cases import BASE, cases
from hypothesis import given
from hypothesis import strategies as st
from jsonschema import Draft202012Validator, FormatChecker
from jsonschema.validators import extend
from playwright.sync_api import Browser, Page
from shared import examples, share

from almanac.findings import Finding
from almanac.model.load import Loaded, load
from almanac.publish.node import run_tool
from almanac.resources import SITE_SOURCE
from almanac.site.form_data import form_file
from almanac.source import published_schemas, reader
from almanac.source.names import Names
from almanac.source.reader import Document
from almanac.source.validate import Shapes, _pattern
from almanac.units import TimeError, parse_time, show_time

from .conftest import ROOT

KINDS = ("drill", "fault", "gear", "benchmark", "progression", "set", "practice", "block")
Told = set[tuple[str, int, int]]  # code, line, column


@pytest.fixture(scope="module")
def rules(browser: Browser) -> Iterator[Page]:
    """An empty page with the form's functions as one object, ``rules``."""
    entry = str(Path(__file__).with_name("form_rules.js"))
    page = browser.new_page()
    options = ("--bundle", "--format=iife", "--global-name=rules")
    page.add_script_tag(content=run_tool(SITE_SOURCE, "esbuild", entry, *options))
    yield page
    page.close()


@pytest.fixture(scope="module")
def catalogue_names() -> Names:
    return load(ROOT).names


def verdicts(page: Page, schema: Any, values: list[Any]) -> list[bool]:
    """Whether each value passes a schema, as the page sees it."""
    script = "([schema, values]) => values.map((value) => rules.passes(schema, schema, value))"
    found: list[bool] = page.evaluate(
        f"given => ({script})(JSON.parse(given))", json.dumps([schema, values])
    )
    return found


def found_in_browser(
    page: Page, kind: str, names: Names, data: list[Any], form: Any
) -> list[list[tuple[str, list[str | int]]]]:
    """What the page finds in entries of a kind: code, and the path to what is wrong."""
    script = """([schema, values, form, kind]) => {
      const noted = rules.withNotes(schema, form.kinds[kind].notes);
      return values.map((value) => rules.findingsOf(noted, value, form)
        .map(({ code, path }) => [code, path]));
    }"""
    given = json.dumps([published_schemas.published(kind, names.words), data, form, kind])
    found = page.evaluate(
        f"given => ({script})(JSON.parse(given))", given
    )  # as a text: in parts it takes ten times as long
    return [[(code, path) for code, path in findings] for findings in found]


def placed(document: Document, code: str, path: list[str | int]) -> Told:
    """Where a path leads: to a value or to its key, the command line names the one or the other."""
    places = [document.place(tuple(path), of_key) for of_key in (False, True)]
    return {(code, place.line, place.column) for place in places}


def told(findings: list[Finding]) -> Told:
    return {(item.code, item.place.line, item.place.column) for item in findings}


def jsonschema_verdicts(schema: Any, values: list[Any]) -> list[bool]:
    """Verdicts of jsonschema, with patterns read as ECMA-262 does (Python's ``$`` also ends before
    a last line end).
    """
    cls = extend(Draft202012Validator, {"pattern": _pattern})
    validator = cls(schema, format_checker=FormatChecker(["date"]))
    return [validator.is_valid(value) for value in values]


def test_every_keyword_of_the_schemas_is_known(rules: Page, catalogue_names: Names) -> None:
    leading = {"$ref", "properties", "items", "propertyNames", "if", "then", "else", "anyOf"}
    telling_nothing = {"$schema", "$id", "$defs", "title", "description", "dependentSchemas"}
    known = {*rules.evaluate("rules.KEYWORDS"), *leading, *telling_nothing}

    def keywords(piece: Any, is_fields: bool = False) -> Iterator[str]:
        if isinstance(piece, dict):
            yield from () if is_fields else piece
            for key, value in piece.items():
                if key not in {"const", "enum", "dependentRequired"} or is_fields:
                    yield from keywords(
                        value, not is_fields and key in {"properties", "$defs", "dependentSchemas"}
                    )
        elif isinstance(piece, list):
            for item in piece:
                yield from keywords(item)

    for kind in KINDS:
        assert set(keywords(published_schemas.published(kind, catalogue_names.words))) <= known


@pytest.mark.parametrize("kind", KINDS)
def test_verdicts_on_every_entry_of_the_catalogue(
    rules: Page, catalogue_names: Names, kind: str
) -> None:
    schema = published_schemas.published(kind, catalogue_names.words)
    data = [document.data for (own, _), document in load(ROOT).documents.items() if own == kind]
    assert data
    assert verdicts(rules, schema, data) == jsonschema_verdicts(schema, data) == [True] * len(data)


def test_verdicts_on_the_rejected_examples(
    rules: Page, tmp_path_factory: pytest.TempPathFactory
) -> None:
    seen = {True: 0, False: 0}
    for case in share(cases("rejected"), 120):
        root = tmp_path_factory.mktemp("case")
        for path in case.build(root):
            path.unlink()  # nobody may read it
        loaded = load(root)
        for (kind, _), document in loaded.documents.items():
            base = BASE / document.file
            if kind in KINDS and not (base.is_file() and base.read_text("utf-8") == document.text):
                schema = published_schemas.published(kind, loaded.names.words)
                (browser,), (reference,) = (
                    verdicts(rules, schema, [document.data]),
                    jsonschema_verdicts(schema, [document.data]),
                )
                assert browser == reference, (case.name, document.file)
                seen[reference] += 1
    assert seen[False] > 20
    assert seen[True] > 5  # what only the checks of the catalogue refuse


def paths(value: Any, path: tuple[Any, ...] = ()) -> Iterator[tuple[Any, ...]]:
    yield path
    items = (
        value.items()
        if isinstance(value, dict)
        else enumerate(value)
        if isinstance(value, list)
        else ()
    )
    for key, inner in items:
        yield from paths(inner, (*path, key))


SLIPS: tuple[Any, ...] = (
    "x", "one", "a b", "kick  on", "0:75", "0:0", "61:30", "1:2:30", "99:99:99", "0:00", "25m",
    "ten", "3,5", "backstoke", "flutter-kick",
    "back-streamline-kik", "backstroke swim", "2026-02-30", "2026-13-01", "17:60", "3 months",
    "<b>bold</b>", "two\nlines", "yes", "true",
    "wort " * 400, "ab", 0, -1, 3.5, 1000000, 90000, 0.01, None, "🏊" * 61, "שחייה על הגב",
    "e\u0301" * 70, "C:\\pool", "'quoted'", "\u00a0",
)  # fmt: skip


def slipped(data: Any, chance: random.Random) -> Any:
    """A copy of an entry with one mistake that a form can hold."""
    copy = json.loads(json.dumps(data))
    *way, last = chance.choice([path for path in paths(copy) if path])
    parent = copy
    for step in way:
        parent = parent[step]
    match chance.randrange(5):
        case 0 if isinstance(parent, dict):
            del parent[last]
        case 1 if isinstance(parent, list):
            parent.append(parent[last])
        case 2 if isinstance(parent[last], list):
            parent[last] = parent[last] * 14
        case 3 if isinstance(parent, dict):
            parent[
                chance.choice(["rest", "time", "parts", "distance", "set", "items", "sendoff"])
            ] = chance.choice(["0:20", 25, []])
        case _ if not isinstance(parent[last], dict | list):
            parent[last] = chance.choice(SLIPS)
        case _:
            parent[last] = {} if isinstance(parent[last], dict) else []
    return copy


# A form is made from the schema: no key, and no sort of value, that the schema does not know can
# stand in it.
BEYOND_A_FORM = (
    "there is no field",
    "must be fields",
    "must be a list",
    "must be text, and is the number",
    "is fields (name",
    "is a list",
)


@pytest.mark.parametrize("kind", KINDS)
def test_mistakes_are_those_of_the_command_line(rules: Page, loaded: Loaded, kind: str) -> None:
    """Thousands of slips in real entries: the same codes at the same places."""
    assert loaded.catalogue is not None
    form = json.loads(form_file(loaded.catalogue, loaded.names, "")[1])
    shapes = Shapes(loaded.names)
    chance = random.Random(kind)
    entries = [document.data for (own, _), document in loaded.documents.items() if own == kind]
    data = [slipped(chance.choice(entries), chance) for _ in range(examples(120, 600))]
    codes: set[str] = set()
    apart = []
    for value, found in zip(
        data, found_in_browser(rules, kind, loaded.names, data, form), strict=True
    ):
        document = Document("entry.yml", json.dumps(value, ensure_ascii=False), value)
        findings = shapes.check(document, kind).findings
        if any(words in finding.message for finding in findings for words in BEYOND_A_FORM):
            continue
        wanted = told(findings)
        places = [placed(document, *finding) for finding in found]
        lone = [one for one in places if not one & wanted]
        unsaid = wanted.difference(*places)
        if lone or unsaid:
            apart.append({"only in the browser": lone, "only on the command line": unsaid})
        codes |= {code for code, *_ in wanted}
    assert apart == []
    assert len(codes) >= 8, sorted(codes)


def test_did_you_mean_forgives_a_slip(rules: Page, loaded: Loaded) -> None:
    """One letter wrong, gone or doubled in an id: the id itself is named, nearly always."""
    chance = random.Random(6)
    ids = list(loaded.names.of("reference", "drill"))
    slips = []
    for id in ids * 4:
        place = chance.randrange(len(id))
        slips.append(id[:place] + chance.choice("abcdefgh") + id[place + chance.randrange(3) :])
    known = [[id, id.replace("-", " "), ""] for id in ids]
    script = "([slips, known]) => slips.map((slip) => rules.nearest(slip, known)?.[0])"
    found = rules.evaluate(script, [slips, known])
    right = sum(one == id for one, id in zip(found, ids * 4, strict=True))
    assert right >= 0.98 * len(slips)
    assert rules.evaluate("(known) => rules.nearest('zzzz', known)", known) is None


@given(st.one_of(st.from_regex(r"\A\d{1,2}(:[0-5]\d){1,2}(\.\d)?\Z"), st.integers(1, 86_399)))
def test_times_are_shown_as_on_the_command_line(rules: Page, value: str | int) -> None:
    try:
        seconds = parse_time(value)
    except TimeError:
        return
    assert rules.evaluate("(value) => rules.tidy(value)", value) == show_time(seconds)


HOSTILE = (
    "yes", "No", "off", "on", "y", "null", "~", "true", "False", "1:15", "17:30", "0:15.5",
    "190:20:30", "1", "-1", "+2", "1.5", ".5", "5.", "1e5",
    "0x1F", "0o17", "0b1", "1_000", "1,5", ".inf", ".nan", "2026-10-01", "2026-10-01 12:00", "- a",
    "-", "--- a", "---", "...", "? a", ": a", "a: b", "a:",
    "a:b", "#", "# a", "a # b", "a #b", "a#b", "'", "''", '"', '""', "it's", 'say "go"', "\\",
    "\\n", "C:\\pool", "&a", "*a", "!a", "!!str a", "%a", "@a",
    "`a`", "|", ">", ">-", "|-", "[a]", "{a: b}", "[", "]", "{", "}", ",", "a, b", "=", "<<",
    "<b>bold</b>", "<script>alert(1)</script>", "{{ 7 * 7 }}",
    "a\tb", "\ta", "a\n- b", "a\n\nb", "a\n  b", "a\n\tb", "a \nb", "\n", "\n\na", "a\n", " a",
    "a ", "a  b", "  ", "", "\u00a0a", "a\u3000b",
    "🏊 laps 🏊‍♀️", "שחייה על הגב", "سباحة: الظهر", "e\u0301", "中文：字", "\u200b", "\u200f",
    "\U0010ffff", "x" * 300, "word " * 100 + "end", "word: " * 100,
    "# " * 100, "- " * 100, ("a " * 60).strip() + "  " + "b", "x" * 100_000,
    "kick it " * 12_000 + "!", "“curly”", "½ of it", "é", "(a)", "100 %", "50 × 4",
)  # fmt: skip
REFUSED = (
    "\0",
    "a\0b",
    "a\rb",
    "a\r\nb",
    "\x07",
    "\x1b[31m",
    "\x7f",
    "\x85",
    "a\u2028b",
    "\u2029",
    "\u202eabc",
    "\u2066x\u2069",
    "\ufeffa",
    "\uffff",
)


def written(rules: Page, values: list[Any]) -> list[str]:
    found: list[str] = rules.evaluate(
        "(values) => values.map((value) => rules.toYaml(value))", values
    )
    return found


def assert_reads_back(value: dict[str, Any], text: str, refused: bool = False) -> None:
    document, found = read_at_any_size(text.encode())
    # blanks are refused as a text, and read back all the same
    findings = [finding for finding in found if finding.code != "blank-text"]
    assert [finding.code for finding in findings if finding.code != "control-character"] == []
    assert bool(findings) == refused, findings
    assert document is not None
    assert document.data == value


def read_at_any_size(raw: bytes) -> tuple[Document | None, list[Finding]]:
    """What the strict reader makes of a file, however large it is."""
    with mock.patch.object(reader, "MOST_BYTES", 10**9):
        return reader.read(raw, "entry.yml")


@pytest.mark.parametrize("text", [*HOSTILE, *REFUSED], ids=lambda text: ascii(text[:30]))
def test_hostile_text_reads_back_the_same(rules: Page, text: str) -> None:
    value = {
        "title": text,
        "purpose": f"{text} and on {text}",
        "steps": [
            text,
            "plain",
            f"Long enough to be folded, {text} " + "and more words " * 10 + "end.",
        ],
        "goals": [text, text],
        "look_for": [{"from": text, "see": text}, {"from": "side-deck", "see": "x"}],
        "items": [
            {
                "rounds": 2,
                "items": [
                    {
                        "reps": 4,
                        "distance": 50,
                        "note": text,
                        "gear": [text],
                        "effort": {"build": [text, "b"]},
                    }
                ],
            }
        ],
    }
    assert_reads_back(value, *written(rules, [value]), refused=text in REFUSED)


scalars = st.one_of(
    st.text(
        st.characters(
            codec="utf-8",
            exclude_categories=("Cc", "Zl", "Zp", "Cs"),
            exclude_characters="\ufeff\ufffe\uffff\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069",
        ),
        max_size=150,
    ),
    st.text("ab :#-?\"'\\\n,[]{}|>&*!%@`.0159", max_size=60),
    st.sampled_from(HOSTILE[:90]),
    st.integers(-(10**9), 10**9),
    st.decimals(-1000, 1000, places=3).map(float),
    st.booleans(),
    st.none(),
)
trees = st.recursive(
    scalars,
    lambda inner: (
        st.lists(inner, min_size=1, max_size=5)
        | st.dictionaries(
            st.from_regex(r"\A[a-z][a-z0-9_-]{0,12}\Z"), inner, min_size=1, max_size=5
        )
    ),
    max_leaves=25,
)


@given(st.dictionaries(st.from_regex(r"\A[a-z][a-z0-9_]{0,12}\Z"), trees, min_size=1, max_size=6))
def test_any_entry_reads_back_the_same(rules: Page, value: dict[str, Any]) -> None:
    assert_reads_back(value, *written(rules, [value]))


@pytest.mark.parametrize("kind", KINDS)
def test_every_entry_of_the_catalogue_reads_back_the_same(rules: Page, kind: str) -> None:
    data = [document.data for (own, _), document in load(ROOT).documents.items() if own == kind]
    for value, text in zip(data, written(rules, data), strict=True):
        assert_reads_back(value, text)
        assert max(map(len, text.splitlines())) <= 130
