"""The catalogue in which every field of every kind stands, with hostile text in each that takes
free text.

Which fields those are follows from the schemas: every text that no vocabulary, list of ids, choice,
time, day or form narrows. Each carries a mark of its own and as many payloads as it holds.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import yaml
from example_cases import cases

from almanac.source import schemas
from almanac.source.files import entry_files
from almanac.source.reader import read

CASE = next(case for case in cases("accepted") if case.name == "every-field")
EVIL = "https://evil.example"
# What a spreadsheet takes for a formula or a command where it begins a cell.
FORMULAS = ('=HYPERLINK("https://evil.example")', "@SUM(1)", "+1+cmd|'/C calc'!A0", "-2+3")
IN_TABLES = {"title", "summary", "other", "note", "changed[]"}  # fields that begin a cell
PAYLOADS = (
    *FORMULAS,
    # HTML, attributes, comments, ends of what text may stand in
    "<img src=x onerror=pwn()>", "<svg/onload=pwn()>", "<script>pwn()</script>",
    "</script><script>pwn()</script>",
    "</style></title></textarea></svg>", "<!--", "-->", "]]>", '"onmouseover="pwn()',
    "'onfocus='pwn()'autofocus='", "<b>bold</b>",
    "&lt;i&gt;&#60;u&#62;", "&amp;", "<iframe/srcdoc=x>", "<base/href=//evil.example>",
    "<style>*{display:none}</style>",
    # scripts
    "';pwn();//", "\\';pwn()//", "${pwn()}", "`${pwn()}`", "\\u003cscript\\u003e",
    "javascript:pwn()", '"}];pwn();[{"',
    # Markdown and its extensions
    "![x](https://evil.example/x.png)", "[x](javascript:pwn())", "<https://evil.example>",
    "**bold**", "_i_", "`code`", "~~s~~",
    "==m==", "^^i^^", "{onclick=pwn()}", "{:onclick=pwn()}", "[^1]", ":fire:",
    '--8<--"/etc/passwd"', "[TOC]", "|a|b|", "*[HTML]:x", "\\*",
    "#", "---", "!!!note", "++ctrl++", "(c)", "$x$", "[[x]]",
    # templates
    "{{7*7}}", "{%raw%}", "{#x#}", "<%=7*7%>", "#{7*7}",
    # styles, addresses, calendars, other alphabets
    "url(https://evil.example)", "expression(pwn())", "//evil.example", "data:text/html,x",
    "END:VEVENT", "ATTACH:https://evil.example",
    "\\n", "\\;\\,", "%0d%0aX:1", "../../x", "é水", "עברית", "🏊",
)  # fmt: skip
_NARROW = ("vocabulary", "reference", "enum", "const", "clock", "format")
_BESIDE = ("if", "then", "else", "allOf", "anyOf", "oneOf")
_OPEN_FORMS = {
    "^[^\\n]*$",
    "^[^\\n<>&]*$",
    "^[^\\n;]*$",
    "^\\S+( \\S+){1,6}$",
}  # one line, no markup, no semicolon, two to seven words


@dataclass(frozen=True)
class Injected:
    """A text that was put into a field: the entry's kind and id, the field without numbers and
    names, the text.
    """

    kind: str
    id: str
    field: str
    text: str


def inject(root: Path, turn: int = 0) -> list[Injected]:
    """Lay out the catalogue below ``root`` with hostile text in it. ``turn`` begins with other
    payloads.
    """
    CASE.build(root)
    put: list[Injected] = []
    for entry in entry_files(root)[0]:
        path = root / entry.file
        document, _ = read(path.read_bytes(), entry.file)
        assert document is not None
        data = document.data

        def told(field: str, text: str, kind: str = entry.kind, id: str = entry.id) -> str:
            put.append(Injected(kind, id, field, text))
            return text

        def changed(
            value: Any, pieces: list[Any], field: str, kind: str = entry.kind, told: Any = told
        ) -> Any:
            opened = [own for piece in pieces for own in _all(kind, piece)]
            if isinstance(value, dict):
                return {
                    name: changed(own, _of_name(opened, name), f"{field}.{_shown(opened, name)}")
                    for name, own in value.items()
                }
            if isinstance(value, list):
                inside = [piece["items"] for piece in opened if "items" in piece]
                return [changed(own, inside, f"{field}[]") for own in value]
            if isinstance(value, str) and is_free(opened):
                return told(field, text_for(opened, field, len(put), turn))
            return value

        new = changed(data, [{"properties": schemas.fields(entry.kind)}], entry.kind)
        path.write_text(
            yaml.dump(new, Dumper=_Plain, allow_unicode=True, sort_keys=False, width=10**6), "utf-8"
        )
    return put


class _Plain(yaml.SafeDumper):
    """Writes without anchors, every text in double quotes."""

    def ignore_aliases(self, data: Any) -> bool:
        return True


_Plain.add_representer(
    str,
    lambda dumper, text: dumper.represent_scalar(
        "tag:yaml.org,2002:str", text, style=None if re.fullmatch(r"[\w:.-]+", text) else '"'
    ),
)


def _all(kind: str, piece: Any) -> Iterator[dict[str, Any]]:
    """A piece and those beside it that a value may be held against, each with its ``$ref``
    opened.
    """
    if not isinstance(piece, Mapping):
        return
    whole = dict(piece)
    while "$ref" in whole:
        target = whole.pop("$ref")
        shared = target.startswith("common.json")
        whole = {
            **schemas.raw("common" if shared else kind)["$defs"][target.rpartition("/")[2]],
            **whole,
        }
    yield whole
    for keyword in _BESIDE:
        beside = whole.get(keyword, ())
        for other in beside if isinstance(beside, list) else [beside]:
            yield from _all(kind, other)


def _of_name(opened: list[Any], name: Any) -> list[Any]:
    known = [piece["properties"][name] for piece in opened if name in piece.get("properties", {})]
    return known or [
        piece["additionalProperties"]
        for piece in opened
        if isinstance(piece.get("additionalProperties"), dict)
    ]


def _shown(opened: list[Any], name: Any) -> str:
    """A field's name; ``*`` for a name that authors give."""
    return str(name) if any(name in piece.get("properties", {}) for piece in opened) else "*"


def is_free(opened: list[Any]) -> bool:
    """Whether a field takes any text: of these pieces none narrows it."""
    texts = [piece for piece in opened if piece.keys() - {"description"}]
    return (
        bool(texts)
        and not any(keyword in piece for piece in texts for keyword in _NARROW)
        and all(piece.get("pattern", "^[^\\n]*$") in _OPEN_FORMS for piece in texts)
    )


def text_for(opened: list[Any], field: str, number: int, turn: int) -> str:
    """A hostile text that a field takes: its mark, and as many payloads as fit."""
    most = min([piece["maxLength"] for piece in opened if "maxLength" in piece], default=1200)
    least = max([piece["minLength"] for piece in opened if "minLength" in piece], default=0)
    forms = [re.compile(piece["pattern"]) for piece in opened if "pattern" in piece]
    mark = f"Zq{number}z"
    shift = (number * 7 + turn * 5) % len(PAYLOADS)
    text, words = "", 0
    first = FORMULAS[number % len(FORMULAS) :][:1] if field.rpartition(".")[2] in IN_TABLES else ()
    for payload in (*first, *PAYLOADS[shift:], *PAYLOADS[:shift]):
        longer = f"{text} {payload}" if text else f"{payload} {mark}"
        if len(longer) <= most and all(form.search(longer) for form in forms):
            text, words = longer, words + 1
    text = text or mark
    while len(text) < least:
        text += " x"
    return text
