"""The form of a catalogue: told once where it is another."""

from __future__ import annotations

from pathlib import Path

import pytest
from example_cases import BASE
from git_world import committed
from shared import copied

from almanac.commands.main import COMMANDS, main
from almanac.findings import Place
from almanac.model.load import load
from almanac.source.forms import FORM, form_of, newer_form
from almanac.source.reader import read

OLD_FINS = (
    "{hazard: foot-strikes}\nnot_for:\n  people:\n    - Sore ankles.",
    (
        "{hazard: Blades strike a foot., control: Leave ten seconds apart.}\nnot_for:\n  - Sore "
        "ankles."
    ),
)


def _older(root: Path) -> Path:
    """A copy of the examples' club in which two places of one entry are of form 1."""
    file = copied(BASE, root) / "drills/gear/fins.yml"
    text = file.read_text("utf-8")
    assert OLD_FINS[0] in text
    file.write_text(text.replace(*OLD_FINS), "utf-8")
    return root


def test_the_present_form_and_an_older_one_are_nothing_to_tell_by_themselves() -> None:
    for text in ("form: 3\n", "title: A club of form 1\n", "form: 2\n"):
        document, findings = read(text.encode(), "plans/club.yml")
        assert findings == [] and newer_form(document, 3) is None
    assert newer_form(None) is None  # that the club is missing is told elsewhere


def test_a_newer_form() -> None:
    document, _ = read(b"title: x\nform: 4\n", "plans/club.yml")
    said = newer_form(document, 3)
    assert said is not None
    assert (said.code, said.place) == ("newer-form", Place("plans/club.yml", 2, 7))
    assert "form 4" in said.message and "no form after 3" in said.message
    assert "install the newer program" in said.hint


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


@pytest.mark.parametrize("words", ["check", "build", "sum six-fifties", "explain six-fifties"])
def test_every_command_says_in_one_sentence_how_to_go_on(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], words: str
) -> None:
    assert main([*words.split(), "--root", str(_older(tmp_path))]) == 1
    said = "".join(capsys.readouterr())
    assert said.count(" error ") == 1 and "1 error" in said
    assert "drills/gear/fins.yml is written in form 1" in said and "almanac update" in said


def test_so_does_a_file_from_outside(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    entry = tmp_path / "mine.yml"
    text = (BASE / "plans/sets/six-fifties.yml").read_text("utf-8")
    dangers = "safety:\n  - hazard: One swims into another.\n  - hazard: Nobody looks at all.\n"
    entry.write_text(text + dangers, "utf-8")
    assert main(["sum", str(entry), "--root", str(BASE)]) == 1
    said = "".join(capsys.readouterr())
    assert said.count(" error ") == 1 and "this entry is written in form 1" in said


def test_a_review_of_an_older_club_names_it_once(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """By the change that ``update`` makes, the base is the older one."""
    root = _older(tmp_path)
    committed(root)
    assert main(["update", "--root", str(root)]) == 0
    capsys.readouterr()
    assert main(["review", "HEAD", "--root", str(root)]) == 0
    assert capsys.readouterr().out.count("older-form") == 1


def test_an_older_club_whose_entries_all_fit_is_read(tmp_path: Path) -> None:
    root = copied(BASE, tmp_path)
    catalogue = load(root).catalogue
    assert catalogue is not None and catalogue.club.form == 1


def test_whoever_is_told_to_update_can() -> None:
    assert FORM == 1 or "update" in COMMANDS
