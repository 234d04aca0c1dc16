"""What YAML can hide from a reader of its tree: anchors, aliases, tags, directives, documents, depth."""

from __future__ import annotations

import re

import yaml

from almanac.findings import Finding, Place, error
from almanac.source.syntax import syntax_finding

DEEPEST = 20

_MOST = 20
_SUSPECT = re.compile(r"(?m)(?:^|[\s\[\]{},:?-])[&*!]|^%|^---|^\.\.\.|^[ ?:-]{20}")
_OPENING = re.compile(r"[\[{]")

_NODE_STARTS = (yaml.ScalarEvent, yaml.SequenceStartEvent, yaml.MappingStartEvent)
_NEST = (yaml.SequenceStartEvent, yaml.MappingStartEvent)
_UNNEST = (yaml.SequenceEndEvent, yaml.MappingEndEvent)


def may_hide_structure(text: str) -> bool:
    """Whether the slower pass over the stream of events is worth its time.

    It never misses an anchor, alias, tag, directive or second document, nor a depth that could overflow a
    reader; what is a little deeper than it may be, the reader itself finds.
    """
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

    lines = text.split("\n")
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
                mend = "write it out; a text that begins with '*' goes in quotes"
                say("alias", event, f"'*{event.anchor}' points to an anchor; anchors are not used here", mend)
                unsound = True
            elif isinstance(event, _NODE_STARTS):
                if event.anchor:
                    mend = "remove it; a text that begins with '&' goes in quotes"
                    say("anchor", event, f"'&{event.anchor}' is an anchor; anchors are not used here", mend)
                if event.tag:
                    mend = "remove it; a text that begins with '!' goes in quotes"
                    say("tag", event, f"'{_written_tag(event, lines)}' is a tag; tags are not used here", mend)
                depth += isinstance(event, _NEST)
                if depth > DEEPEST:
                    say("too-deep", event, f"nested more than {DEEPEST} deep", "flatten it: an entry never needs as much")
                    return findings, True
            elif isinstance(event, _UNNEST):
                depth -= 1
            if len(findings) >= _MOST:
                return findings, True
    except yaml.YAMLError as problem:
        return [*findings, syntax_finding(problem, text, file)], True
    return findings, unsound


def _written_tag(event: yaml.Event, lines: list[str]) -> str:
    """A tag as it stands in the file: the parser has spelt it out."""
    mark = event.start_mark
    found = re.search(r"!\S*", lines[mark.line][mark.column :]) if mark else None
    return found[0] if found else "!"
