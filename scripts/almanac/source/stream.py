"""What YAML can hide from a reader of its tree: anchors, aliases, tags, directives, documents,
depth.
"""

from __future__ import annotations

import re

import yaml

from almanac.findings import Finding, Place, error
from almanac.source.syntax.finding import syntax_finding

DEEPEST = 20

_MOST = 20
# Each begins with what seldom stands in a text, so that a search hardly stops: an anchor, alias or
# tag behind a space or a mark, or at the very start; and a line that begins so.
_SUSPECT = re.compile(r"[&*!](?<![^\s\[\]{},:?-][&*!])")
_SUSPECT_LINE = re.compile(r"\n(?:%|---|\.\.\.|[ ?:-]{20})")
_OPENING = re.compile(r"[\[{]")
_INNERMOST = re.compile(
    r"""[\[{][^\[\]{}"'#\n]*[\]}]"""
)  # lists and mappings that hold none: one deep, however many

_NODE_STARTS = (yaml.ScalarEvent, yaml.SequenceStartEvent, yaml.MappingStartEvent)
_NEST = (yaml.SequenceStartEvent, yaml.MappingStartEvent)
_UNNEST = (yaml.SequenceEndEvent, yaml.MappingEndEvent)


def may_hide_structure(text: str) -> bool:
    """Whether the slower pass over the stream of events is worth its time.

    It never misses an anchor, alias, tag, directive or second document, nor a depth that could
    overflow a reader; what is a little deeper than it may be, the reader itself finds.
    """
    return (
        _SUSPECT.search(text) is not None
        or _SUSPECT_LINE.search(f"\n{text}") is not None
        or len(_OPENING.findall(_INNERMOST.sub("", text))) + 1 > DEEPEST // 2
    )


def hidden_structure(text: str, file: str) -> tuple[list[Finding], bool]:
    """Findings on anchors, aliases, tags, directives, documents and depth.

    Returns them, and whether the tree must not be built: an alias can repeat itself without end,
    and a deep tree overflows the composer.
    """
    listener = _Listener(text, file)
    try:
        for event in yaml.parse(text, Loader=yaml.CBaseLoader):
            listener.hear(event)
            if listener.has_enough:
                break
    except yaml.YAMLError as problem:
        return [*listener.findings, syntax_finding(problem, text, file)], True
    return listener.findings, listener.is_unsound or listener.has_enough


class _Listener:
    """Hears the events of one file, and keeps what is amiss with them."""

    def __init__(self, text: str, file: str) -> None:
        self.findings: list[Finding] = []
        self.is_unsound = False
        self._lines, self._file = text.split("\n"), file
        self._depth = self._documents = 0

    @property
    def has_enough(self) -> bool:
        """Whether no more need be heard: too deep to go on, or told often enough."""
        return self._depth > DEEPEST or len(self.findings) >= _MOST

    def hear(self, event: yaml.Event) -> None:
        if isinstance(event, yaml.DocumentStartEvent):
            self._document(event)
        elif isinstance(event, yaml.AliasEvent):
            self.is_unsound = True
            hint = "write it out; a text that begins with '*' goes in quotes"
            self._say(
                "alias",
                event,
                f"'*{event.anchor}' points to an anchor; anchors are not used here",
                hint,
            )
        elif isinstance(event, _NODE_STARTS):
            self._node(event)
        elif isinstance(event, _UNNEST):
            self._depth -= 1

    def _document(self, event: yaml.DocumentStartEvent) -> None:
        self._documents += 1
        if self._documents == 2:
            self.is_unsound = True
            self._say(
                "several-documents",
                event,
                "a second document begins here",
                "one entry a file: move what follows the '---' into a file of its own",
            )
        if event.version or event.tags:
            self._say(
                "directive",
                event,
                "YAML directives are not used here",
                "remove the line that begins with '%'",
            )

    def _node(self, event: yaml.NodeEvent) -> None:
        if event.anchor:
            hint = "remove it; a text that begins with '&' goes in quotes"
            self._say(
                "anchor", event, f"'&{event.anchor}' is an anchor; anchors are not used here", hint
            )
        if getattr(event, "tag", None):
            hint = "remove it; a text that begins with '!' goes in quotes"
            self._say(
                "tag", event, f"'{self._written_tag(event)}' is a tag; tags are not used here", hint
            )
        self._depth += isinstance(event, _NEST)
        if self._depth > DEEPEST:
            self.is_unsound = True
            self._say(
                "too-deep",
                event,
                f"nested more than {DEEPEST} deep",
                "flatten it: an entry never needs as much",
            )

    def _written_tag(self, event: yaml.Event) -> str:
        """A tag as it stands in the file: the parser has spelt it out."""
        mark = event.start_mark
        found = re.search(r"!\S*", self._lines[mark.line][mark.column :]) if mark else None
        return found[0] if found else "!"

    def _say(self, code: str, event: yaml.Event, message: str, hint: str) -> None:
        mark = event.start_mark
        place = Place(self._file, mark.line + 1, mark.column + 1) if mark else Place(self._file)
        self.findings.append(error(code, place, message, hint))
