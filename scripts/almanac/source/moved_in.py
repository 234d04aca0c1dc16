"""A field of the entry that blanks before it put among the named things of the field above: what
stands below it then reads as more of those, and fails in each of its fields.
"""

from __future__ import annotations

from almanac.findings import Finding, error
from almanac.source import schemas
from almanac.source.reader import Document


def moved_in(document: Document, kind: str) -> Finding | None:
    """The one thing to tell of it, or None."""
    fields = schemas.fields(kind)
    for top, held in document.data.items():
        by_id = schemas.resolve(fields[top]).get("additionalProperties") if top in fields else None
        if not isinstance(held, dict) or not isinstance(by_id, dict):
            continue
        for key, value in held.items():
            if value is None and key in fields and key not in document.data:
                place = document.place((top, key), of_key=True)
                message = f"'{key}' is a field of the entry, and begins too far in"
                hint = "write it at the margin, without blanks before it"
                return error("missing-key", place, message, hint)
    return None
