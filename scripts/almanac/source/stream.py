"""What YAML can hide from a reader of its tree: anchors, aliases, tags, documents, depth; and syntax errors."""

from __future__ import annotations

import re

import yaml

from almanac.findings import Finding, Place, error

DEEPEST = 20

_SUSPECT = re.compile(r"(?m)(?:^|[\s\[\]{},:?-])[&*!]|^%|^---|^\.\.\.|^[ -]{40}")
_OPENING = re.compile(r"[\[{]")

_NODE_STARTS = (yaml.ScalarEvent, yaml.SequenceStartEvent, yaml.MappingStartEvent)
_NEST = (yaml.SequenceStartEvent, yaml.MappingStartEvent)
_UNNEST = (yaml.SequenceEndEvent, yaml.MappingEndEvent)


def may_hide_structure(text: str) -> bool:
    """Whether the slower pass over the stream of events is worth its time: no false negatives."""
    return _SUSPECT.search(text) is not None or len(_OPENING.findall(text)) > DEEPEST // 2


def hidden_structure(text: str, file: str) -> tuple[list[Finding], bool]:
    """Findings on anchors, aliases, tags, directives, documents and depth.

    Returns them, and whether the tree must not be built: an alias can repeat itself without end,
    and a deep tree overflows the composer.
    """
    findings: list[Finding] = []
    unsound, depth, documents = False, 0, 0

    def say(code: str, event: yaml.Event, message: str, mend: str) -> None:
        mark = event.start_mark
        place = Place(file, mark.line + 1, mark.column + 1) if mark else Place(file)
        findings.append(error(code, place, message, mend))

    try:
        for event in yaml.parse(text, Loader=yaml.CBaseLoader):
            if isinstance(event, yaml.DocumentStartEvent):
                documents += 1
                if documents == 2:
                    say("several-documents", event, "a second document begins here", "one entry a file: remove the '---'")
                    unsound = True
                if event.version or event.tags:
                    say("directive", event, "YAML directives are not used here", "remove the line that begins with '%'")
            elif isinstance(event, yaml.AliasEvent):
                say("alias", event, f"'*{event.anchor}' points to an anchor; anchors are not used here", "write it out")
                unsound = True
            elif isinstance(event, _NODE_STARTS):
                if event.anchor:
                    say("anchor", event, f"'&{event.anchor}' is an anchor; anchors are not used here", "remove it")
                if event.tag:
                    say("tag", event, f"'{event.tag}' is a tag; tags are not used here", "remove it, or put text in quotes")
                depth += isinstance(event, _NEST)
                if depth > DEEPEST:
                    say("too-deep", event, f"nested more than {DEEPEST} deep", "flatten it: an entry never needs as much")
                    return findings, True
            elif isinstance(event, _UNNEST):
                depth -= 1
    except yaml.YAMLError as problem:
        return [*findings, syntax_finding(problem, text, file)], True
    return findings, unsound


_PLAIN_WORDS = (
    ("mapping values are not allowed", "a second colon on the line, or a line indented too far", "put text with a colon in quotes"),
    ("did not find expected key", "a line that fits neither the list nor the fields around it", "line its indent up with its neighbours"),
    ("did not find expected '-' indicator", "a line that is not part of the list above it", "line its indent up, or begin it with '- '"),
    ("did not find expected ',' or", "a list or mapping in brackets that is not closed", "add the closing bracket, or quote text with commas"),
    ("found character that cannot start any token", "a character that cannot begin a value", "put the text in quotes"),
    ("found unexpected end of stream", "a quotation mark that is never closed", "add the closing quotation mark"),
    ("could not find expected ':'", "a line without a colon among the fields", "write 'field: value'"),
    ("did not find the expected", "something unfinished", "finish it, or put the text in quotes"),
)


def syntax_finding(problem: yaml.YAMLError, text: str, file: str) -> Finding:
    """A YAML syntax error in plain words, at its place. A tab in the indent has a code of its own."""
    mark = getattr(problem, "problem_mark", None) or getattr(problem, "context_mark", None)
    line, column = (mark.line, mark.column) if mark else (0, 0)
    place = Place(file, line + 1, column + 1)
    lines = text.split("\n")
    indent = re.match(r"\s*", lines[line]).group() if line < len(lines) else ""  # type: ignore[union-attr]
    if "\t" in indent:
        tab = Place(file, line + 1, indent.index("\t") + 1)
        return error("tab-indent", tab, "a tab stands in the indent", "indent with spaces")
    said = str(getattr(problem, "problem", "") or problem).splitlines()[0]
    for sign, message, mend in _PLAIN_WORDS:
        if sign in said:
            return error("yaml-syntax", place, f"this is not sound YAML: {message}", mend)
    return error("yaml-syntax", place, f"this is not sound YAML: {said}", "compare the line with a neighbouring entry")
