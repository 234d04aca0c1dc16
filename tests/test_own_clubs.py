"""Clubs begun with ``start``: each checks, builds below a path, and says its own name and nobody
else's.
"""

from __future__ import annotations

import json
import re
import shutil
import subprocess
from argparse import ArgumentParser
from contextlib import redirect_stdout
from io import StringIO
from pathlib import Path

import pytest
import yaml
import zxingcpp
from own_clubs import CLUBS, DAY, own_club
from qr_pictures import drawn
from shared import share

from almanac.commands import start
from almanac.commands.main import main
from almanac.commands.outcome import UsageError
from almanac.commands.shared import load_and_check
from almanac.commands.start import add_arguments
from almanac.commands.start_questions import ask_club


@pytest.fixture(scope="module", params=CLUBS)
def club(
    request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory
) -> tuple[Path, str, str]:
    """A club's folder with its site, its name, and the path of its address."""
    own = own_club(tmp_path_factory, request.param)
    return own.root, own.name, own.path


def test_a_new_club_has_no_error_and_is_told_of_its_emergency_plan_alone(
    club: tuple[Path, str, str],
) -> None:
    folder, _, _ = club
    checked = load_and_check(folder, DAY)
    assert [one.code for one in checked.findings] == ["emergency-unsaid"]
    catalogue = checked.loaded.catalogue
    assert catalogue is not None
    assert catalogue.progressions and catalogue.faults and catalogue.practices
    first = next(iter(catalogue.club.pools.values()))
    for squad in catalogue.club.squads.values():
        assert catalogue.sets[f"first-set-{squad.level}"].course == first.course
        assert catalogue.practices[f"first-{squad.level}"].adults


def test_no_two_of_its_entries_have_one_id(club: tuple[Path, str, str]) -> None:
    """So that every command that takes an id knows which is meant."""
    catalogue = load_and_check(club[0], DAY).loaded.catalogue
    assert catalogue is not None
    ids = [id for kind, id in catalogue.entries if kind not in ("vocabulary", "source")]
    assert len(ids) == len({*ids})


def test_its_own_name_stands_on_every_page_and_nobody_elses(club: tuple[Path, str, str]) -> None:
    folder, name, path = club
    pages = sorted((folder / "site").rglob("*.html"))
    assert len(pages) > 60
    for page in pages:
        text = page.read_text("utf-8")
        title = re.search("<title>(.*?)</title>", text)
        assert title and title[1].endswith(name), page
        assert not re.search("quillwater|deck almanac", text, re.IGNORECASE), page
    assert re.search(rf"<h1[^>]*>{name}</h1>", (folder / "site/index.html").read_text("utf-8"))
    assert f'data-root="{path}"' in (folder / "site/404.html").read_text("utf-8")


OF_POOLS = ("add", "calculators", "checks", "computed", "data", "fields", "life", "otherwise",
            "privacy", "safety", "style", "words")  # fmt: skip


def test_no_page_of_a_club_on_land_speaks_of_lanes_and_pools_that_it_has_not(
    club: tuple[Path, str, str],
) -> None:
    """But those for editors, those of the trade, and what entries say of water themselves."""
    folder, name, _ = club
    pages = [
        page
        for page in (folder / "site").rglob("*.html")
        if page.stem not in OF_POOLS and page.parent.name != "words" and page.stem != "index"
    ]
    said = {
        page.stem: found
        for page in pages
        if (
            found := re.search(
                r"[Ll]ane group|land pool|data-choose=.pool|>Lanes<|Lengths in|m Distance",
                re.sub(r"<script.*?</script>", "", page.read_text("utf-8"), flags=re.DOTALL),
            )
        )
    }
    assert (said == {}) == (name == "Dry Club"), said
    calculators = (folder / "site/calculators.html").read_text("utf-8")
    assert 'id="week-load"' in calculators
    assert ('id="lane"' in calculators) == (name != "Dry Club")
    for page in ("otherwise.html", "gear/water-cup.html"):
        assert (folder / "site" / page).exists() == (name != "Dry Club"), page
    more = (folder / "site/more.html").read_text("utf-8")
    for path in ("meets", "timetables", "seasons"):
        assert f"{path}/index.html" not in more
        empty = (folder / f"site/{path}/index.html").read_text("utf-8")
        assert "<p>None yet." in empty and f"almanac new {path.removesuffix('s')} " in empty
    for page in ("style.html", "add.html"):
        text = (folder / "site" / page).read_text("utf-8")
        assert ("send-offs" in text or "across a pool" in text) == (name != "Dry Club"), page
        assert "in water" not in text and "on land -->" not in text
    covered = (folder / "site/coverage.html").read_text("utf-8")
    assert ("Race speed" in covered) == (name != "Dry Club")
    assert "sets/index.html" in more
    assert ("otherwise.html" in more) == (name != "Dry Club")


def test_what_is_begun_in_a_hall_asks_for_no_water(
    club: tuple[Path, str, str], tmp_path: Path
) -> None:
    """Only a coach's own sentences and signature are then missing."""
    root = tmp_path / "own"
    for folder in ("drills", "plans"):
        shutil.copytree(club[0] / folder, root / folder)
    for kind in ("set", "practice", "drill"):
        assert main(["new", kind, f"own-{kind}", "--root", str(root), "--today", str(DAY)]) == 0
    texts = "".join(file.read_text("utf-8") for file in root.rglob("own-*.yml"))
    assert ("distance: " in texts) == (club[1] != "Dry Club")
    if club[1] == "Dry Club":
        told = {it.code for it in load_and_check(root, DAY).findings if it.is_error}
        assert told == {"starter-text", "missing-key"}
        assert "course: land" in texts and "mode: land" in texts


def test_what_cannot_be_composed_is_told_in_words_of_the_club(
    club: tuple[Path, str, str], capsys: pytest.CaptureFixture[str]
) -> None:
    """An example names a squad that is here; a club on land hears that what is composed is swum."""
    root = club[0]
    squad = next(iter(yaml.safe_load((root / "plans/club.yml").read_text("utf-8"))["squads"]))
    there = ["--root", str(root), "--today", str(DAY)]
    assert main(["compose", "practice", "--minutes", "60", *there]) == 2
    said = capsys.readouterr().err
    assert f"say --goals: almanac compose practice --squad {squad} --minutes 60" in said
    assert main(["compose", "block", "--goals", "walls", *there]) == 2
    assert f"almanac compose block --squad {squad} --starts" in capsys.readouterr().err
    if club[1] == "Dry Club":
        wish = ["--squad", squad, "--minutes", "60", "--goals", "kick-technique"]
        assert main(["compose", "practice", *wish, *there]) == 2
        assert "the club has no pool, and what is composed is swum" in capsys.readouterr().err


def test_its_files_lead_to_its_own_address(club: tuple[Path, str, str]) -> None:
    folder, name, path = club
    address = f"https://host.example{path}"
    feed = (folder / "site/data/v1/feed.xml").read_text("utf-8")
    assert f"{name}: what is new" in feed and address in feed
    assert json.loads((folder / "site/app.webmanifest").read_text("utf-8"))["name"] == name
    first = next((folder / "site/practices").glob("first-*.html"))
    assert f'card-from">{address}practices/{first.name}' in first.read_text("utf-8")
    assert address in (folder / "site/sitemap.xml").read_text("utf-8")
    for file in (folder / "site").rglob("*"):
        if file.suffix in {".json", ".xml", ".ics", ".csv", ".webmanifest"}:
            assert "quillwater" not in file.read_text("utf-8").lower(), file


CODE = re.compile(r'<svg role="img" aria-label="QR code of this page".*?</svg>', re.DOTALL)


def test_every_code_leads_to_the_page_that_it_stands_on_at_the_clubs_own_address(
    club: tuple[Path, str, str],
) -> None:
    """Drawn and read back by a reader of codes. Source: zxing-cpp."""
    folder, _, path = club
    site = folder / "site"
    codes = [
        (page, code)
        for page in sorted(site.rglob("*.html"))
        for code in CODE.findall(page.read_text("utf-8"))
    ]
    assert len(codes) > 20
    for page, code in share(codes, 8):
        (found,) = zxingcpp.read_barcodes(drawn(code))
        assert found.text == f"https://host.example{path}{page.relative_to(site)}"


def test_what_it_is_written_with(club: tuple[Path, str, str]) -> None:
    folder, name, _ = club
    assert name in (folder / "README.md").read_text("utf-8")
    assert "almanac check" in (folder / ".github/workflows/site.yml").read_text("utf-8")
    assert "pip install deck-almanac" not in (folder / "README.md").read_text("utf-8")
    drill = next((folder / "drills/skills").rglob("*.yml")).read_text("utf-8")
    assert drill.startswith("# From the catalogue that the program comes with.")
    assert "again: 2027-06-29" in drill  # four weeks: by then somebody of this club has read it


@pytest.fixture(scope="module")
def unasked(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, str]:
    """A club begun without an option, not to be changed, and what was said."""
    root, said = tmp_path_factory.mktemp("unasked") / "own", StringIO()
    with redirect_stdout(said):
        assert main(["start", str(root), "--today", DAY.isoformat()]) == 0
    return root, said.getvalue()


def test_a_start_that_was_killed_stands_in_no_ones_way(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What it had written is swept up, also from the folder itself, which else holds something."""
    own = tmp_path / "own"
    own.mkdir()

    def killed(*_: Path) -> None:
        raise KeyboardInterrupt

    with monkeypatch.context() as patched:
        patched.setattr(start, "_put", killed)
        patched.setattr(start.shutil, "rmtree", lambda *_, **__: None)
        assert main(["start", str(own)]) == 130
    (left,) = own.iterdir()
    assert main(["start", str(own)]) == 0
    assert not left.exists() and (own / "plans/club.yml").is_file()
    left, other = (tmp_path / f".almanac-start-{name}-a_b1c2d3" for name in ("new", "new-2"))
    left.mkdir()
    other.mkdir()
    assert main(["start", str(tmp_path / "new")]) == 0
    assert not left.exists()
    assert other.is_dir(), "somebody else's, who may be at it"


def test_what_the_program_lends_stands_in_no_entrys_way(
    unasked: tuple[Path, str], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Words of the program name the drill, which a club renames and retires as any other."""
    root = shutil.copytree(unasked[0], tmp_path / "own")
    there = ["--root", str(root), "--today", DAY.isoformat()]
    assert main(["rename", "back-streamline-kick", "long-line", *there]) == 0
    assert [one for one in load_and_check(root, DAY).findings if one.is_error] == []
    capsys.readouterr()
    assert main(["retire", "long-line", "--for", "back-kick-with-fins", *there]) == 0
    said = capsys.readouterr().out
    assert "places name it" in said and "vocabulary" not in said
    told = re.findall(r"(\S+)\.yml:\d+:\d+: names long-line: it is taken out there", said)
    assert told, "easier drills, or it would come before itself"
    assert not any(one.code == "circle" for one in load_and_check(root, DAY).findings)


ADDRESS = "git+https://host.example/club/program.git@0a1b2c3"


@pytest.mark.parametrize("program", ["", ADDRESS])
def test_the_workflow_installs_what_is_named_or_says_that_nothing_is(
    unasked: tuple[Path, str], tmp_path: Path, capsys: pytest.CaptureFixture[str], program: str
) -> None:
    """The step that tells it is run as a runner runs it: by bash, with the variable set."""
    root, said = unasked
    if program:
        root = tmp_path / "own"
        assert main(["start", str(root), "--program", program, "--today", DAY.isoformat()]) == 0
        said = capsys.readouterr().out
    assert ("until PROGRAM" in said) == (not program)
    workflow = yaml.safe_load((root / ".github/workflows/site.yml").read_text("utf-8"))
    assert workflow["env"] == {"PROGRAM": program}
    steps = workflow["jobs"]["site"]["steps"]
    (told,) = (step for step in steps if step.get("if") == "env.PROGRAM == ''")
    done = subprocess.run(["bash", "-ec", told["run"]], capture_output=True, text=True, check=False)
    assert done.returncode == 1
    assert done.stdout.startswith("::error file=.github/workflows/site.yml::Write behind PROGRAM")
    assert steps[steps.index(told) + 1] == {"run": 'pip install "$PROGRAM"'}
    readme = (root / "README.md").read_text("utf-8")
    assert (f"pip install '{ADDRESS}'" in readme) == bool(program) and "$" not in readme


@pytest.mark.parametrize(
    ("options", "said"),
    [
        (("--pool", "home 30m 6 1-2"), "--pool: 'home 30m 6 1-2' is no pool"),
        (("--squad", "reds soaring 2 2 10 -"), "--squad: 'reds soaring 2 2 10 -' is no squad"),
        (("--gear", "trampoline=1"), "--gear: no gear 'trampoline'"),
        (("--gear", "kickbord=1"), "is it 'kickboard'?"),
        (("--program", "two words"), "is nothing that pip installs"),
        (("--pool", "home 25m 6 1..-2"), "is no depth"),
        (("--squad", "reds building 2 ² 10 -"), "'²' is no number of lanes"),
        (("--pool", "home 25m 6 0-2"), "is no depth: above 0"),
        (("--address", "our.example"), "do you mean https://our.example?"),
        (("--address", "http://our.example:99999/"), "a port is a number from 1 to 65535"),
        (("--emergency", "112 / Mill Lane"), "2 of six are said"),
        (("--emergency", "the desk / a b / c d / e f / g h / i j"), "'the desk' is no number"),
        (("--name", "<b>"), "a name is"),
        (("--squad", "reds building 2 2 10 4:75"), "--squad: '4:75' is no time"),
        (("--squad", "reds building 2 2 10 0:04"), "is no time over 200"),
        (("--squad", "reds building 2 2 10 4.40"), "'4.40' is no time: do you mean 4:40?"),
        (("--squad", "reds building 2 7 10 -"), "'Reds' fills 7 lanes, and Pool has 6"),
        (("--squad", "reds building 2 2 9 -", "--squad", "Reds foundation 2 2 9 -"),
         "two are called 'reds'"),
        (("--colour", "orange"), "is no colour"), (("--colour", "#ffb000"), "amber"),
        (("--welcome", "x"), "a welcome is"), (("--pool", "??? 25m 6 1-2"), "gives no file's name"),
    ],
)  # fmt: skip
def test_what_cannot_be_is_told_by_its_option(options: tuple[str, ...], said: str) -> None:
    parser = ArgumentParser()
    add_arguments(parser)
    with pytest.raises(UsageError) as told:
        ask_club(parser.parse_args(["own", *options]), ["fins", "kickboard"], 1.35)
    assert said in str(told.value)


def test_what_is_refused_writes_nothing(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["start", str(tmp_path / "own"), "--gear", "trampoline=1"]) == 2
    assert "--gear: no gear 'trampoline'" in capsys.readouterr().err
    assert list(tmp_path.iterdir()) == []


def test_a_pool_too_shallow_for_a_start_is_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["start", str(tmp_path / "own"), "--pool", "Small 25m 4 0.4-0.9"]) == 0
    assert "note: Small: 0.4 to 0.9 m is too shallow for any dive" in capsys.readouterr().out


def test_a_pool_in_which_nobody_can_stand_comes_without_the_set_that_asks_for_it(
    tmp_path: Path,
) -> None:
    deep = ("--pool", "Deep 25m 6 1.83-2", "--squad", "Reds foundation 2 2 9 -")
    assert main(["start", str(tmp_path / "own"), *deep, "--today", DAY.isoformat()]) == 0
    assert not (tmp_path / "own/plans/sets/floats-sculls-and-slides.yml").exists()
    assert (tmp_path / "own/plans/sets/first-kicks-on-back.yml").exists()


def test_whoever_stands_in_an_empty_folder_begins_there(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The folder is a repository with nothing in it yet."""
    (tmp_path / ".git").mkdir()
    monkeypatch.chdir(tmp_path)
    assert main(["start", ".", "--today", DAY.isoformat()]) == 0
    named = {".git", ".github", ".gitignore", "README.md", "drills", "plans"}
    assert {path.name for path in Path().iterdir()} == named


def test_what_fails_half_way_leaves_the_folder_empty(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The third file or folder that is put there is refused."""
    rename, put = Path.rename, list[Path]()

    def refused(path: Path, target: Path) -> Path:
        if target.parent == tmp_path:
            put.append(target)
            if len(put) == 3:
                raise OSError("no room")
        return rename(path, target)

    monkeypatch.setattr(Path, "rename", refused)
    assert main(["start", str(tmp_path), "--today", DAY.isoformat()]) == 4
    assert len(put) == 3 and list(tmp_path.iterdir()) == []


def test_a_folder_that_holds_something_is_left_alone(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "mine.txt").write_text("mine", "utf-8")
    assert main(["start", str(tmp_path)]) == 2
    assert "holds something already" in capsys.readouterr().err
    assert [path.name for path in tmp_path.iterdir()] == ["mine.txt"]
