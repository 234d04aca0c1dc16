"""YAML that the parser cannot follow, in plain words and at the place where the mistake is, not
where it shows.
"""

from __future__ import annotations

import re

import yaml

from almanac.findings import Finding, Place, error
from almanac.source.scalars import in_quotes
from almanac.source.syntax.brackets import crossed, nothing_there, open_bracket
from almanac.source.syntax.goes_on import goes_on
from almanac.source.syntax.hashed_lines import hashed_line
from almanac.source.syntax.levels import levels, too_deep
from almanac.source.syntax.lined_up import lined_up
from almanac.source.syntax.look_alikes import look_alike
from almanac.source.syntax.quote_open import open_quote
from almanac.source.syntax.slips import Position, excerpt, recognised
from almanac.source.syntax.stray_lines import stray
from almanac.source.syntax.tried import Trial
from almanac.source.syntax.words import OTHER_CODES, SIMPLE, SINCE

_CONFLICT = re.compile(r"(?:<{7}|>{7}|\|{7})(?: |$)|={7}$")
_NO_SPACE = re.compile(r"\s*[A-Za-z_-]+:[^\s:]")
_COMMENT_BEHIND = re.compile(r"\s*[^\s#].*\s#")
_HASHED = re.compile(r"([a-z_]+): (#[0-9A-Za-z]+)")
_CLOSED = ("],", "},", '",', "',")
_OF_QUOTES = ("did not find expected", "end of stream", "document separator", "mapping values")
_NOT_YAML = "this is not sound YAML: "  # where nothing better can be said


def syntax_finding(problem: yaml.YAMLError, text: str, file: str) -> Finding:
    """A YAML syntax error, told by what the parser says of it and by the lines around."""
    lines = text.split("\n")
    said = str(getattr(problem, "problem", "") or problem).splitlines()[0]
    at = _position(getattr(problem, "problem_mark", None))
    since = _position(getattr(problem, "context_mark", None)) or at
    if at is None or since is None:
        return error("yaml-syntax", Place(file), _NOT_YAML + said, "compare it with another entry")
    if marks := [number for number, line in enumerate(lines) if _CONFLICT.match(line.rstrip())]:
        return _conflict(marks, lines, file)
    told = stray(said, at, since, lines) or _explain(said, at, since, lines, file)
    code, (line, column), message, hint = told
    hashed = _HASHED.search("\n".join(lines[since[0] : at[0] + 1]))
    if "not closed" in message and hashed:
        hint = f"'#' begins a comment: write {hashed[1]}: \"{hashed[2]}\", in quotes"
    elif any(map(_COMMENT_BEHIND.match, lines[max(0, min(since[0], at[0] - 1, line)) : at[0] + 1])):
        hint += "; or, where the ' #' belongs to a text, put that text in quotes"
    return error(code, Place(file, line + 1, column + 1), message, hint)


def _conflict(marks: list[int], lines: list[str], file: str) -> Finding:
    message = "two versions of this file were merged, and the choice between them is open"
    hint = "keep one of the two, and delete the marks"
    if {lines[own][0] for own in marks} < {"<", "=", ">"}:
        message = "marks of a merge were left here, without the others"
        hint = "delete them, and keep one of the versions that stand around them"
    if len(marks) == 1:
        message = "a mark of a merge stands here alone"
        hint = "delete it, and read the lines around it"
    return error("merge-conflict", Place(file, marks[0] + 1, 1), message, hint)


_Explained = tuple[str, Position, str, str]


def _position(mark: yaml.Mark | None) -> Position | None:
    return (mark.line, mark.column) if mark else None


def _explain(said: str, at: Position, since: Position, lines: list[str], file: str) -> _Explained:
    line = lines[at[0]] if at[0] < len(lines) else ""
    char = line[at[1] : at[1] + 1]
    if char == "\t":
        return "tab-indent", at, "a tab stands where a text could begin", "use spaces"
    found = look_alike(at, since, lines) or crossed(said, at, since, lines)
    found = found or _tried(said, at, since, lines, file)
    found = found or levels(said, at, lines)
    found = found or recognised(said, at, since, lines) or _comma_behind(at, lines)
    if found := found or _begins_no_text(said, at, line):
        return "yaml-syntax", *found
    for sign, message, hint in SIMPLE:
        if sign in said:
            return "yaml-syntax", at, message.format(char=char), hint
    for sign, message, hint in SINCE:
        if sign in said:
            return "yaml-syntax", since, message, hint
    for sign, code, message, hint in OTHER_CODES:
        if sign in said:
            return code, (at[0], 0) if code == "directive" else at, message, hint
    if "mapping values are not allowed" in said:
        return "yaml-syntax", *_second_colon(at, line, lines)
    if "expected node content" in said:
        return "yaml-syntax", *nothing_there(at, lines)
    if "did not find expected ',' or" in said:
        return "yaml-syntax", *open_bracket(at, since, lines)
    return "yaml-syntax", at, *_unfitting(said, char, line[: at[1]])


def _tried(
    said: str, at: Position, since: Position, lines: list[str], file: str
) -> tuple[Position, str, str] | None:
    """What one quotation mark more, or a few lines further in or out, would mend."""
    trial = Trial.of(lines, file)
    if trial and "expected ':'" in said:
        return goes_on(since[0], trial)
    if trial and any(own in said for own in _OF_QUOTES) and (found := open_quote(at[0], trial)):
        return found
    if "did not find expected" not in said and "mapping values" not in said:
        return None
    meant = trial and (hashed_line(at[0], trial) or lined_up(at[0], trial))
    return meant or too_deep(at[0], lines)


def _comma_behind(at: Position, lines: list[str]) -> tuple[Position, str, str] | None:
    """A comma at the end of a line of fields, behind a bracket or a quotation mark."""
    for number in (at[0], at[0] - 1):
        line = lines[number].rstrip() if 0 <= number < len(lines) else ""
        is_whole = all(line.count(own) == line.count(end) for own, end in ("[]", "{}"))
        if line.endswith(_CLOSED) and is_whole:
            where = (number, len(line) - 1)
            return where, "a comma ends this line, which is no list", "take it out"
    return None


def _begins_no_text(said: str, at: Position, line: str) -> tuple[Position, str, str] | None:
    """A sign that YAML keeps for itself at the begin of a text."""
    text = line[at[1] :].lstrip()
    if re.search(r"[\[{][^\]}]*$", line[: at[1]]):  # in brackets a comma ends it
        text = re.split(r"[,\]}]", text)[0]
    tag = re.match(r"\s*(?:- |[a-z_]+: )*(!.*)", line)
    if text[:1] in {"@", "`", "%"} and "cannot start" in said:
        return (
            at,
            f"'{text[0]}' cannot begin a text",
            f"put it in quotes: {in_quotes(excerpt(text))}",
        )
    if tag and "expected" in said:
        where = (at[0], tag.start(1))
        return where, "'!' cannot begin a text", f"put it in quotes: {in_quotes(excerpt(tag[1]))}"
    return None


def _second_colon(at: Position, line: str, lines: list[str]) -> tuple[Position, str, str]:
    """A colon where a value was being read: in a text, after a slip in the line above, or in a line
    too far in.
    """
    if ":" in line[: at[1]].rstrip(":"):
        return at, "a second colon on the line", "put text with a colon in quotes"
    above = at[0] - 1
    if above >= 0 and _NO_SPACE.match(lines[above]):
        return (
            (above, lines[above].index(":")),
            "no space stands after this colon",
            "write 'field: value', with a space",
        )
    indent = len(line) - len(line.lstrip())
    message = "this line is indented further than the one above it allows"
    return (
        (at[0], indent),
        message,
        "line its indent up with its neighbours, or put text with a colon in quotes",
    )


def _unfitting(said: str, char: str, before: str) -> tuple[str, str]:
    if char and char in "]}":
        return (
            f"'{char}' closes a bracket that was never opened",
            "take it out, or put the text in quotes",
        )
    if char == ":":
        return (
            "a colon with no name before it",
            "write the field's name before the colon",
        )
    if before.rstrip()[-1:] in {'"', "'"}:
        hint = "put the quotation marks round the whole of it, or use the other sort"
        return "text goes on behind a closing quotation mark", hint
    if "did not find expected" in said:
        message = "this line fits neither the list nor the fields around it"
        return (
            message,
            "line its indent up with its neighbours, or put the text in quotes",
        )
    return _NOT_YAML + said, "compare the line with another entry"
