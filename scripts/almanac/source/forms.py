"""The form of a catalogue: which version of the shapes of entries it is written in.

``plans/club.yml`` carries it as ``form``; where it does not, the form is 1. Whoever changes the
shape of an entry so that entries of clubs no longer fit raises ``FORM`` by one and writes, in the
same commit, the step that takes an entry from the form before to the new one.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from almanac.findings import Finding, error
from almanac.source.reader import Document

FORM = 1
# A step takes the kind and the data of one entry in form N, changes neither, and returns the data
# in form N + 1. What it raises is a fault of the program: it is given sound entries of form N.
Step = Callable[[str, Mapping[str, Any]], dict[str, Any]]
STEPS: Mapping[int, Step] = {}  # by N


def form_of(club: Mapping[str, Any]) -> int:
    """The form that a club's data are in. What cannot be a form counts as the present one, and is
    left to the schema.
    """
    form = club.get("form", 1)
    return form if isinstance(form, int) and not isinstance(form, bool) and form > 0 else FORM


def other_form(club: Document | None, form: int = FORM) -> Finding | None:
    """What to say, once, of a catalogue in another form than ``form``; None where it is in that."""
    if club is None or (found := form_of(club.data)) == form:
        return None
    place = club.place(("form",))
    if found > form:
        return error(
            "newer-form",
            place,
            f"the entries are in form {found}, and this program reads no form after {form}",
            "install the newer program that wrote them; nothing in the entries needs changing",
        )
    return error(
        "older-form",
        place,
        f"the entries are in form {found}, and this program reads form {form}",
        f"install the program that reads form {found}; what form {form} changed "
        "stands in the program's list of changes",
    )


def updated(
    kind: str, data: Mapping[str, Any], since: int, steps: Mapping[int, Step] = STEPS
) -> dict[str, Any]:
    """The data of an entry in form ``since``, taken by all later steps to the form after the last.

    The club's then say that form. Raises KeyError where a step is missing.
    """
    present = dict(data)
    to = max(steps, default=since - 1) + 1
    for form in range(since, to):
        present = steps[form](kind, present)
    return {**present, "form": to} if kind == "club" and to > since else present
