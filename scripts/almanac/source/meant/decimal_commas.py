"""Decimal commas in a row of fields in brackets, where a comma begins another field."""

from __future__ import annotations

import re

from almanac.source.failure import Failure

_THOUSANDS = 3  # digits behind a comma that parts a whole number
_BEHIND_A_COMMA = re.compile(r"([0-9]+)(?: ?(?:m|met(?:re|er)s?|s|secs?|seconds?))?")


def split_number(failure: Failure, key: str) -> str:
    """For the digits behind a decimal comma, which in brackets read as a field: what to write."""
    before = list(failure.value)[: list(failure.value).index(key)]
    behind = _BEHIND_A_COMMA.fullmatch(key)
    if not behind or failure.value[key] is not None or not before:
        return ""
    name, whole, digits = before[-1], str(failure.value[before[-1]]), behind[1]
    if not re.fullmatch("[0-9]+(:[0-5][0-9])?", whole) or name not in failure.fields:
        return ""
    piece = failure.resolved(failure.fields[name])
    if ":" in whole:
        is_tenths = piece.get("clock") and piece["clock"] != "whole"
        return f"write {name}: {whole}.{digits}, with a point" if is_tenths else ""
    if len(rows := _with_commas(failure, key)) > 1:
        return f"write {' and '.join(rows)}, each with a point"
    if len(digits) == _THOUSANDS and piece.get("type") == "integer":
        return f"write {name}: {whole}{digits}, without a comma"
    return f"write {name}: {whole}.{digits}, with a point"


def _with_commas(failure: Failure, key: str) -> list[str]:
    """The fields of one row in brackets that have decimal commas, each as it should be."""
    node = failure.document.node(failure.path)
    own, at = failure.document.text.split("\n"), node.start_mark
    row = own[at.line][at.column : node.end_mark.column if at.line == node.end_mark.line else None]
    found = re.findall(r"([a-z_]+): *([0-9]+),([0-9]+)(?=[,} ])", row)
    return [f"{name}: {whole}.{digits}" for name, whole, digits in found if name in failure.fields]
