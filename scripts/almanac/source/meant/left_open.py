"""What somebody has left open for now: TBD, a question mark."""

from __future__ import annotations

from copy import deepcopy
from dataclasses import replace
from typing import Any

from jsonschema import Draft202012Validator

from almanac.findings import Finding
from almanac.source import schemas
from almanac.source.failure import Failure

_OPEN = {
    "tbd", "tbc", "tba", "?", "??", "???", "n/a", "na", "xx", "xxx", "...", "…", "todo",
    "to do", "unknown", "not known", "later", "open", "to follow", "to be decided",
    "to be confirmed", "not sure", "ask",
}  # fmt: skip


def is_open(value: object) -> bool:
    """Whether a value only says that there is none yet."""
    return isinstance(value, str) and value.strip().lower().rstrip(".!") in _OPEN | {""}


def with_leave(finding: Finding, failure: Failure) -> Finding:
    """A finding of a value that is left open, which says so where its field need not be there."""
    name = failure.path[-1] if failure.path else 0
    if failure.on_key or not isinstance(name, str) or not is_open(failure.value):
        return finding
    if not _can_go(failure) or f"leave '{name}' out" in finding.hint:
        return finding
    return replace(finding, hint=f"{finding.hint}; until it is known, leave '{name}' out")


def _can_go(failure: Failure) -> bool:
    """Whether an entry lacks no field without this one."""
    path = failure.path
    rest: Any = deepcopy(failure.document.data)
    around = rest
    for step in path[:-1]:
        around = around[step]
    del around[path[-1]]
    problems = Draft202012Validator(schemas.inlined(failure.kind)).iter_errors(rest)
    return not any(
        own.validator in {"required", "minProperties"} and tuple(own.absolute_path) == path[:-1]
        for own in problems
    )
