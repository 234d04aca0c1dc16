"""Lines that came into an entry from elsewhere, and texts that begin with a sign of YAML's: what is
said of each where the parser gave up.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from almanac.source.scalars import in_quotes, scalar
from almanac.source.syntax.slips import (
    Position,
    Recognised,
    excerpt,
    field_names,
    without_dash,
)

_RULE = re.compile(r"\s*([-=~*_#]{4,}|\.{3,}|```\w*|~~~\w*)\s*")
# What a chat puts before a line: [27.11.26, 18:02] Name: or 18:02, 27/11/2026 - Name:
_ON, _AT = r"[0-9]{1,4}[./-][0-9]{1,2}[./-][0-9]{1,4}", r"[0-9]{1,2}:[0-9]{2}(?::[0-9]{2})?"
_SENT = re.compile(
    rf"\s*(?:- )?(\[?(?:{_ON},? {_AT}|{_AT},? {_ON}|{_AT}(?:\]|(?= [^\W\d_][\w ]{{0,30}}: )))"
    r"(?: ?[ap]m)?[^\[\]:]{0,3}[^:]{0,40}: )(.*)",
    re.IGNORECASE,
)
_OF_AN_ENTRY = re.compile(r"- |[a-z_]+:(?: |$)")
_TABLE_ROW = re.compile(r"\s*(?:- +)?\|(?:[^|]+\|){2,}\s*")
_CELLS = re.compile(r"\s*(?:- +)?(?:[^\t]+(?:\t[^\t]*){2,}|[0-9]+[,;] ?[0-9]+(?:[,;][^,;]+){2,})")
_REPS_SAID = re.compile(r"\s*(?:- +)?([1-9][0-9]?) ?[x×*] ?([1-9][0-9]{1,3})(?![0-9:]).*")
_OF_MAIL = re.compile(r"\s*>+ ?(?=- |[a-z_]+:(?: |$))")
_QUOTED_CELLS = re.compile(r"\s*(?:- +)?\"[^\"]*\"(?:[,;\t] *\"[^\"]*\"){2,}\s*")
_WHOLE_QUOTED = re.compile(r"""\s*(["'])([a-z_]+: ?[^"']+)\1""")
_ADDED = re.compile(r"\+(?!\+)\s*[\w-].*")
_FOLD = re.compile(r"\s*(?:- )?([a-z_]+): *[>|][-+0-9]*")
_FOLDED = re.compile(r"(\s*(?:- )?[a-z_]+:) +([>|][-+]?)[ \t]+([^\s#].*)")
_DASHES = re.compile(r"\s*(?:- )?([a-z_]+): +- (\S.*)")
_BEHIND_BRACKET = re.compile(r"\s*(?:- |[a-z_]+: )*((?:\[[^\[\]]*\]|\{[^{}]*\})[ ]*[^\s#,\]}:].*)")
_STARRED = re.compile(r"\s*(?:- |[a-z_]+: )+([*&].*)")
_IN_BRACES = re.compile(r"\{[^{}]*\}")
_BEFORE_FIELD = re.compile(r"(?<![,:{]) +(?=\"?([a-z][a-z0-9_-]*)\"?: )")
_BEHIND_NUMBER = re.compile(r"[{,] *[\w-]+: +[0-9][0-9:.]*$")
_TO_TICK = re.compile(r"\s*\[[ xX]?\] \S")
_STARRED_NAME = re.compile(r"\s*(?:- )?([*_`]+)([a-z_]+)\1?(?:: ?\1|\1:) *(\S.*)")


def stray(
    said: str, at: Position, since: Position, lines: Sequence[str]
) -> tuple[str, Position, str, str] | None:
    """The code, the place, what is wrong and the mend of a line that belongs to no entry, or begins
    with what YAML keeps for itself; None for anything else.
    """
    first = max(0, min(since[0], at[0]) - 1)
    for number in range(first, min(at[0] + 1, len(lines))):
        line = lines[number].rstrip()
        if _RULE.fullmatch(line) and line.strip() != "---":
            where = (number, len(line) - len(line.lstrip()))
            return "yaml-syntax", where, "this line is no part of an entry", "take it out"
        where = (number, len(line) - len(line.lstrip()))
        if sent := _SENT.fullmatch(line):
            message = "the time and the name before this come from a chat"
            hint = f"take them out: {excerpt(sent[2])}"
            if not _OF_AN_ENTRY.match(sent[2]):
                message, hint = "this line comes from a chat", "take it out"
            return "yaml-syntax", where, message, hint
        if any(own.fullmatch(line) for own in (_TABLE_ROW, _QUOTED_CELLS, _CELLS)):
            message = "a row of a table cannot stand here"
            hint = "write each cell behind its field's name and a colon, a line for each"
            return "yaml-syntax", where, message, hint
        if "expected ':'" in said and (whole := _WHOLE_QUOTED.fullmatch(line)):
            message = "a field stands in quotes with its value"
            return "yaml-syntax", where, message, f"write {excerpt(whole[2])}"
        below = "".join(lines[number + 1 : number + 2])
        are_fields_below = line.lstrip().startswith("- ") and below[where[1] :].startswith("  ")
        if (reps := _REPS_SAID.match(line)) and not are_fields_below:
            message = "reps stand here as on a whiteboard"
            told = f"- {{reps: {reps[1]}, distance: {reps[2]}, do: ..., effort: ..., rest: ...}}"
            return "yaml-syntax", where, message, f"write {told} among the items"
        if quoted := _OF_MAIL.match(line):
            message = "the '>' before this line comes from a mail"
            return "yaml-syntax", where, message, f"write {excerpt(line[quoted.end() :])}"
        if _ADDED.fullmatch(line):
            message = "the '+' before this line comes from a comparison of two versions"
            return "yaml-syntax", (number, 0), message, "take the '+' out"
    found = next(filter(None, _texts(said, at, since, lines)), None)
    return ("yaml-syntax", *found) if found else None


def _texts(
    said: str, at: Position, since: Position, lines: Sequence[str]
) -> Iterator[Recognised | None]:
    yield _unfolded(said, since, lines)
    yield _behind_fold(at, lines)
    line = lines[at[0]] if at[0] < len(lines) else ""
    if "block sequence entries" in said and (row := _DASHES.fullmatch(line.rstrip())):
        if re.fullmatch(r"[0-9][0-9:.]*", row[2]):
            message = "a dash stands before this number"
            yield (at[0], line.index(row[2]) - 2), message, f"write {row[1]}: {row[2]}"
        items = ", ".join(scalar(excerpt(own)) for own in re.split(r" +- +", row[2]))
        message = "a list cannot begin with a dash on the line of its field"
        yield (at[0], line.index(row[2]) - 2), message, f"write {row[1]}: [{items}]"
    yield _comma(said, at, line)
    for number in {since[0], at[0]}:
        own = lines[number].rstrip() if number < len(lines) else ""
        if _TO_TICK.match(own):
            yield without_dash(number, lines)
        if (named := _STARRED_NAME.fullmatch(own)) and named[2] in field_names():
            message = f"'{named[1]}' stands around the name of a field"
            where = (number, own.index(named[1]))
            yield where, message, f"write {named[2]}: {excerpt(named[3])}"
        if "expected" in said and (behind := _BEHIND_BRACKET.fullmatch(own)):
            message = "text goes on behind the closing bracket"
            mend = f"where the bracket belongs to the text, write {in_quotes(excerpt(behind[1]))}"
            yield (number, behind.start(1)), message, mend
    opening = lines[since[0]] if since[0] < len(lines) else ""
    if "alphabetic or numeric" in said and (starred := _STARRED.fullmatch(opening.rstrip())):
        message = f"a text cannot begin with '{starred[1][0]}'"
        yield since, message, f"put it in quotes: {in_quotes(excerpt(starred[1]))}"
    text = opening[since[1] :].strip()
    if ("end of stream" in said or "separator" in said) and re.fullmatch(r"'\w[^'\"]*", text):
        message = "a quotation mark that is never closed"
        whole = in_quotes(excerpt(text))
        yield since, message, f"close it; or, where it is an apostrophe, write {whole}"


def _unfolded(said: str, since: Position, lines: Sequence[str]) -> Recognised | None:
    """A text that begins as far out as the field with the ``>`` above it."""
    line = lines[since[0]] if since[0] < len(lines) else ""
    above = lines[since[0] - 1] if since[0] else ""
    fold = _FOLD.fullmatch(above.rstrip())
    if "expected ':'" not in said or not fold:
        return None
    where = (since[0], len(line) - len(line.lstrip()))
    message = f"the text of '{fold[1]}' begins no further in than its field"
    return where, message, "write two spaces before each line of it"


def _behind_fold(at: Position, lines: Sequence[str]) -> Recognised | None:
    """A text on the very line of the ``>`` that folds the lines below it."""
    found = _FOLDED.fullmatch(lines[at[0]].rstrip()) if at[0] < len(lines) else None
    if not found:
        return None
    if found[3] in {"-", "+"}:
        message = f"a blank stands between '{found[2]}' and '{found[3]}'"
        return (at[0], len(found[1]) + 1), message, f"write {found[1].strip()} {found[2]}{found[3]}"
    message = f"behind '{found[2]}' the text begins on the next line"
    hint = (
        f"leave '{excerpt(found[1].strip())} {found[2]}' on this line, and write "
        f"'{excerpt(found[3])}' on the next, two spaces further in"
    )
    return (at[0], len(found[1]) + 1), message, hint


def _comma(said: str, at: Position, line: str) -> Recognised | None:
    """Two fields in braces with no comma between."""
    row = next(
        (own for own in _IN_BRACES.finditer(line) if own.start() <= at[1] <= own.end()), None
    )
    if "did not find expected ',' or" not in said or not row or ";" in row[0]:
        return None
    names = [own for own in _BEFORE_FIELD.finditer(row[0]) if _begins_field(own)]
    if not names:
        return None
    where = (at[0], row.start() + names[0].end())
    mend = _BEFORE_FIELD.sub(lambda own: ", " if _begins_field(own) else own[0], row[0])
    return where, f"a comma is missing before '{names[0][1]}'", f"write {excerpt(mend)}"


def _begins_field(own: re.Match[str]) -> bool:
    """Whether a name before a colon is a field's, or any behind a number or a time, which never go
    on as a text does: of a lane group, say.
    """
    return own[1] in field_names() or bool(_BEHIND_NUMBER.search(own.string[: own.start()]))
