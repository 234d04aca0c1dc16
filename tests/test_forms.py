"""The form of a catalogue: told once where it is another, and the steps that lead to the present one."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest
from example_cases import BASE

from almanac.commands.main import COMMANDS
from almanac.findings import Place
from almanac.model.load import load
from almanac.source.forms import FORM, STEPS, form_of, other_form, updated
from almanac.source.reader import read


def _says(text: str, form: int) -> tuple[str, str, Place, str] | None:
    document, findings = read(text.encode(), "plans/club.yml")
    assert findings == []
    finding = other_form(document, form)
    return finding and (finding.code, finding.message, finding.place, finding.hint)


def test_the_present_form_is_nothing_to_tell() -> None:
    assert _says("form: 3\n", 3) is None
    assert _says("title: A club of form 1\n", 1) is None
    assert other_form(None) is None  # that the club is missing is told elsewhere


def test_a_newer_form() -> None:
    said = _says("title: x\nform: 4\n", 3)
    assert said is not None
    code, message, place, hint = said
    assert (code, place) == ("newer-form", Place("plans/club.yml", 2, 7))
    assert "form 4" in message and "no form after 3" in message
    assert "install the newer program" in hint


def test_an_older_form() -> None:
    for text, place in [
        ("title: x\n", Place("plans/club.yml", 1, 1)),
        ("form: 1\n", Place("plans/club.yml", 1, 7)),
    ]:
        said = _says(text, 3)
        assert said is not None
        assert (said[0], said[2]) == ("older-form", place)
        assert "form 1" in said[1] and "reads form 3" in said[1]
        assert "install the program that reads form 1" in said[3]
        assert "almanac update" not in said[3]  # there is no such command


@pytest.mark.parametrize("form", [0, -1, True, 1.5, "2", None, [2]])
def test_what_is_no_form_is_left_to_the_schema(form: object) -> None:
    assert form_of({"form": form}) == FORM


def test_one_finding_and_not_thirty(tmp_path: Path) -> None:
    """Half of the catalogue fits no schema of this program, and one file is no YAML."""
    (tmp_path / "plans" / "sets").mkdir(parents=True)
    (tmp_path / "plans" / "club.yml").write_text(f"form: {FORM + 1}\nbasins: []\n", "utf-8")
    (tmp_path / "plans" / "sets" / "a.yml").write_text("a: [\n", "utf-8")
    loaded = load(tmp_path)
    assert [finding.code for finding in loaded.findings] == ["newer-form"]
    assert loaded.catalogue is None


def test_the_form_is_in_the_model() -> None:
    catalogue = load(BASE).catalogue
    assert catalogue is not None
    assert catalogue.club.form == 1


def _rename(kind: str, data: Mapping[str, Any]) -> dict[str, Any]:
    """A step of a set: its distance becomes a length."""
    if kind != "set":
        return dict(data)
    return {"length" if key == "distance" else key: value for key, value in data.items()}


def _double(kind: str, data: Mapping[str, Any]) -> dict[str, Any]:
    return {**data, "length": data["length"] * 2} if kind == "set" else dict(data)


_FAKE = {1: _rename, 2: _double}


def test_steps_are_taken_in_order() -> None:
    old = {"title": "A set", "distance": 50}
    assert updated("set", old, 1, _FAKE) == {"title": "A set", "length": 100}
    assert updated("set", {"length": 50}, 2, _FAKE) == {"length": 100}
    assert updated("set", {"length": 50}, 3, _FAKE) == {"length": 50}
    assert old == {"title": "A set", "distance": 50}  # as it was


def test_the_club_says_its_new_form() -> None:
    assert updated("club", {"title": "A club"}, 1, _FAKE) == {"title": "A club", "form": 3}
    assert updated("club", {"form": 2}, 2, _FAKE) == {"form": 3}
    assert updated("club", {"title": "A club"}, 3, _FAKE) == {"title": "A club"}
    with pytest.raises(KeyError):
        updated("club", {}, 1, {2: _double})


def test_every_form_leads_to_the_present_one() -> None:
    assert set(STEPS) == set(range(1, FORM))
    assert FORM == 1 or "update" in COMMANDS, "an older form is told to run it"
