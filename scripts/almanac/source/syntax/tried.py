"""Whether lines would do as an entry of their kind, asked of every mend that is tried: the file has
to read, and each field of it to stand where its kind has one.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache, cached_property
from itertools import chain
from typing import Any, NamedTuple

import yaml
from jsonschema import Draft202012Validator

from almanac.kinds import KIND, kind_of_path
from almanac.source import schemas
from almanac.source.plain_loader import PlainLoader

_MOST_READ = 1_000_000  # characters, in all that is tried for one slip
_OF_SHAPE = {"additionalProperties", "required"}
_HOLDERS = {"object", "array"}


class _Read(NamedTuple):
    """Fields missing, strange or of another shape; and how many fields and items there are: a mend
    that makes fewer has put them into a text, where nothing is amiss.
    """

    amiss: int
    held: int


class Trial:
    """What is tried on the lines of one file, of the kind whose key is ``kind``."""

    def __init__(self, lines: Sequence[str], kind: str) -> None:
        self.lines, self._kind, self._left = lines, kind, _MOST_READ

    @classmethod
    def of(cls, lines: Sequence[str], file: str) -> Trial | None:
        """None where no kind has such a file."""
        single = (own for own in KIND.values() if own.single and own.files == file)
        kind = kind_of_path(file) or next(single, None)
        return cls(lines, kind.key) if kind else None

    @cached_property
    def _before(self) -> _Read | None:
        return _read(self.lines, self._kind)

    @property
    def amiss(self) -> int | None:
        """How many fields are amiss in the lines as they are; None where these do not read."""
        return self._before.amiss if self._before else None

    def would_do(self, lines: Sequence[str], less: int = 0, at: int | None = None) -> bool:
        """Whether nothing is amiss in them, nor less held but for so many items, and whether the
        line ``at`` begins a field, an item or a text of its own. Never, once so much has been
        tried.
        """
        self._left -= sum(map(len, lines))
        if self._left < 0:
            return False
        after = _read(lines, self._kind, most=0, at=at)
        before = self._before
        return bool(after and not after.amiss and (not before or after.held >= before.held - less))


@cache
def _validator(kind: str) -> Draft202012Validator:
    return Draft202012Validator(schemas.inlined(kind))


def _read(
    lines: Sequence[str], kind: str, most: int | None = None, at: int | None = None
) -> _Read | None:
    """None where they do not read, or nothing begins in the line ``at``. What is amiss past
    ``most`` is not looked for.
    """
    try:
        root = yaml.compose("\n".join(lines), Loader=PlainLoader)
        data = _plain(root, set())
    except (yaml.YAMLError, ValueError, RecursionError):
        return None
    if at is not None and not _begins(root, at):
        return None
    amiss = 0
    for problem in _validator(kind).iter_errors(data):
        amiss += _is_of_shape(problem)
        if most is not None and amiss > most:
            break
    return _Read(amiss, _held(data))


def _is_of_shape(problem: Any) -> bool:
    if problem.validator != "type":
        return problem.validator in _OF_SHAPE
    wanted = problem.validator_value
    asked = {wanted} if isinstance(wanted, str) else {*wanted}
    held = problem.instance
    return held is None or isinstance(held, dict | list) or asked <= _HOLDERS


def _plain(node: yaml.Node | None, seen: set[int]) -> Any:
    """The data of a node, every value a text. Raises ValueError where a key is given twice, and
    where a node stands in two places: no entry has aliases, and ten of ten of ten do not end.
    """
    if id(node) in seen:
        raise ValueError
    seen.add(id(node))
    if isinstance(node, yaml.MappingNode):
        found = {str(key.value): _plain(value, seen) for key, value in node.value}
        if len(found) != len(node.value):
            raise ValueError
        return found
    if isinstance(node, yaml.SequenceNode):
        return [_plain(own, seen) for own in node.value]
    return node.value or None if isinstance(node, yaml.ScalarNode) else None


def _held(data: Any) -> int:
    inner = data.values() if isinstance(data, dict) else data
    return len(data) + sum(map(_held, inner)) if isinstance(data, dict | list) else 0


def _begins(node: yaml.Node | None, line: int) -> bool:
    """Whether a key, an item or a value begins in a line."""
    if node is None or not node.start_mark.line <= line <= node.end_mark.line:
        return False
    inner = node.value if isinstance(node, yaml.CollectionNode) else ()
    pairs = chain.from_iterable(inner) if isinstance(node, yaml.MappingNode) else inner
    return node.start_mark.line == line or any(_begins(own, line) for own in pairs)
