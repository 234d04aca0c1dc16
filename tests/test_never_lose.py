"""What a build never loses and never mixes: folders that it did not build, sites under a kill, two
builds at once, a full disk.
"""

from __future__ import annotations

import base64
import contextlib
import hashlib
import json
import os
import random
import shutil
import signal
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from example_cases import BASE
from shared import copied, examples, is_long, made_once

from almanac.commands.main import main
from almanac.publish import place
from almanac.publish.errors import PlaceError
from almanac.publish.offline import LIST, WORKER, file_hash
from almanac.publish.turn import turn
from almanac.resources import HOME, SITE_SOURCE

DAY = "2026-11-25"
OWN = "precious.txt"


def folder(path: Path, *, is_site: bool = False, says: str = "old") -> Path:
    """A folder with one file, or what looks like a small site."""
    path.mkdir(parents=True, exist_ok=True)
    (path / ("index.html" if is_site else OWN)).write_text(says)
    if is_site:
        (path / LIST).write_text(
            json.dumps({"format": 1, "version": "x", "files": {"index.html": []}})
        )
        (path / WORKER).write_text("worker")
    return path


def contents(site: Path) -> dict[str, bytes]:
    return {
        path.relative_to(site).as_posix(): path.read_bytes()
        for path in sorted(site.rglob("*"))
        if path.is_file()
    }


# ---- where a site may be put


def test_only_what_a_build_has_made_is_replaced(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Each folder that something would be lost in is named in one sentence, and stays to the
    byte.
    """
    root = copied(BASE, tmp_path / "above/club")
    (root / ".git").mkdir()
    folder(root / "notes")
    folder(root / "site")
    folder(tmp_path / "repository", is_site=True)
    (tmp_path / "repository/.git").mkdir()
    (tmp_path / "file").write_text("precious")
    (tmp_path / "round").symlink_to(tmp_path / "round")
    (tmp_path / "to-club").symlink_to(root)
    (tmp_path / "to-notes").symlink_to(root / "notes")
    before = contents(tmp_path)
    outs = [
        root, root / "drills", root / "plans", root / "drills/skills/new", root / "build",
        root / "build/site", root / "notes",
        root / "site", root / ".git/x", root.parent, tmp_path, Path("/"), HOME, HOME.parent,
        SITE_SOURCE, SITE_SOURCE / "new",
        HOME / "scripts/almanac/new", tmp_path / "repository", tmp_path / "file",
        tmp_path / "file/x", tmp_path / "round",
        tmp_path / "to-club", tmp_path / "to-notes", root / "drills/../../club",
    ]  # fmt: skip
    for out in outs:
        with pytest.raises(PlaceError, match=r"^/[^\n]*$"):
            place.place_of(out, root, root / "build")
    for more in ([], ["--out", str(root)], ["--out", str(root / "notes")]):
        assert main(["build", "--root", str(root), "--today", DAY, *more]) == 2
        said = capsys.readouterr().err
        assert said.startswith("almanac: nothing was built: /") and said.count("\n") == 1
    assert contents(tmp_path) == before


def test_what_may_be_replaced(tmp_path: Path) -> None:
    root, work = folder(tmp_path / "club"), tmp_path / "club/build"
    (tmp_path / "empty").mkdir()
    (tmp_path / "dangling").symlink_to("later")
    (tmp_path / "link").symlink_to("empty")
    folder(tmp_path / "site", is_site=True)
    for out, leads_to in {
        "empty": "empty", "new/deep": "new/deep", "dangling": "later", "link": "empty",
        "site": "site", "club/site": "club/site",
    }.items():  # fmt: skip
        assert place.place_of(tmp_path / out, root, work) == tmp_path / leads_to


@pytest.mark.parametrize("own", ["mine.txt", "notes/a.txt", "data/mine.csv", "data/v1/a.txt"])
def test_what_somebody_has_put_into_a_site_is_named_and_stays(tmp_path: Path, own: str) -> None:
    site, fresh = folder(tmp_path / "site", is_site=True), folder(tmp_path / "new", is_site=True)
    (site / own).parent.mkdir(parents=True, exist_ok=True)
    (site / own).write_text("precious")
    before = contents(site)
    for tried in (
        lambda: place.place_of(site, tmp_path / "club", tmp_path / "club/build"),
        lambda: place.put(fresh, site),
    ):
        with pytest.raises(PlaceError, match=rf"^/[^\n]*/{own} is of no build[^\n]*--out$"):
            tried()
    assert contents(site) == before


def test_what_a_host_asks_for_stays_in_a_site(tmp_path: Path) -> None:
    site = folder(tmp_path / "site", is_site=True)
    for name in ("CNAME", ".nojekyll", ".DS_Store"):
        (site / name).write_text("quillwater.example")
    for says in ("new", "newer"):
        place.put(folder(tmp_path / "fresh", is_site=True, says=says), site)
        assert (site / "index.html").read_text() == says
        assert (site / "CNAME").read_text() == (site / ".nojekyll").read_text() != ""


@pytest.mark.parametrize("listed", ["", "{", "[]", "7", '{"files": {}}', "[" * 100_000, '"\ud800"'])
def test_a_list_of_files_that_is_none_is_no_mark(tmp_path: Path, listed: str) -> None:
    site = folder(tmp_path / "site", is_site=True)
    assert place.is_built(site)
    (site / LIST).write_text(listed, "utf-8", errors="surrogatepass")
    assert not place.is_built(site)


def test_a_folder_for_pages_that_is_somebody_elses_stays(tmp_path: Path) -> None:
    root = copied(BASE, tmp_path)
    before = contents(folder(root / "build/site"))
    assert main(["build", "--root", str(root), "--today", DAY]) == 2
    assert contents(root / "build/site") == before


# ---- a kill between the renames


def put_and_die(fresh: Path, site: Path, steps: int, is_far: bool) -> int:
    """Put a site in its place in a process that is killed after so many steps. Returns how it
    ended.
    """
    process = os.fork()
    if process:
        return os.waitstatus_to_exitcode(os.waitpid(process, 0)[1])
    left = steps

    def counted(really: Callable[..., Any]) -> Callable[..., Any]:
        def step(*arguments: Any, **options: Any) -> Any:
            nonlocal left
            left -= 1
            if left < 0:
                os.kill(os.getpid(), signal.SIGKILL)
            return really(*arguments, **options)

        return step

    with contextlib.suppress(BaseException), pytest.MonkeyPatch.context() as patch:
        for owner, name in ((Path, "rename"), (Path, "write_bytes"), (shutil, "rmtree")):
            patch.setattr(owner, name, counted(getattr(owner, name)))
        patch.setattr(place, "_are_apart", lambda *_: is_far)
        place.put(fresh, site)
        os._exit(0)
    os._exit(1)


@pytest.mark.parametrize("device", ["near", "far"])
@pytest.mark.parametrize("has_old", [True, False])
@pytest.mark.parametrize("steps", range(9))
def test_a_kill_between_the_renames_is_mended(
    tmp_path: Path, steps: int, has_old: bool, device: str
) -> None:
    site, fresh = tmp_path / "out/site", folder(tmp_path / "work/site", is_site=True, says="new")
    if has_old:
        folder(site, is_site=True)
    code = put_and_die(fresh, site, steps, device == "far")
    assert code in (0, -signal.SIGKILL)
    place.mend(site)
    if has_old or code == 0:
        stands = (site / "index.html").read_text()
        assert stands == "new" if code == 0 else stands in {"old", "new"}
        assert sorted(contents(site)) == sorted(["index.html", LIST, WORKER])
    if not fresh.is_dir() or (fresh / "index.html").read_text() == "old":
        folder(fresh, is_site=True, says="new")
    place.put(fresh, site)
    assert (site / "index.html").read_text() == "new"
    assert sorted(path.name for path in site.parent.iterdir()) == ["site"]


def test_a_rename_that_fails_leaves_the_old_site(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    site, fresh = (
        folder(tmp_path / "site", is_site=True),
        folder(tmp_path / "fresh", is_site=True, says="new"),
    )
    really = Path.rename

    def failing(self: Path, target: Path) -> Path:
        if self == fresh:
            raise OSError(28, "No space left on device", str(target))
        return really(self, target)

    monkeypatch.setattr(Path, "rename", failing)
    with pytest.raises(OSError, match="No space left"):
        place.put(fresh, site)
    assert (site / "index.html").read_text() == "old"


def test_a_link_stays_a_link(tmp_path: Path) -> None:
    folder(tmp_path / "real", is_site=True)
    (tmp_path / "site").symlink_to("real")
    out = place.place_of(tmp_path / "site", folder(tmp_path / "club"), tmp_path / "club/build")
    place.put(folder(tmp_path / "fresh", is_site=True, says="new"), out)
    assert (tmp_path / "site").is_symlink()
    assert (tmp_path / "site/index.html").read_text() == "new"


def test_what_has_the_name_of_a_site_that_was_put_aside_stays(tmp_path: Path) -> None:
    site, fresh = (
        folder(tmp_path / "site", is_site=True),
        folder(tmp_path / "fresh", is_site=True, says="new"),
    )
    before = contents(folder(tmp_path / ".site.almanac-old"))
    with pytest.raises(PlaceError, match="is in the way"):
        place.put(fresh, site)
    assert contents(tmp_path / ".site.almanac-old") == before
    assert (site / "index.html").read_text() == "old"


# ---- one at a time

HOLD = """
import os, sys, time
from pathlib import Path
from almanac.publish.turn import turn
with turn(Path(sys.argv[1])):
    if os.fork() == 0:  # as a build forks one off
        time.sleep(60)
        os._exit(0)
    print("held", flush=True)
    time.sleep(60)
"""


def test_the_second_waits_and_says_for_whom_and_a_kill_leaves_no_lock(tmp_path: Path) -> None:
    holder = subprocess.Popen(
        [sys.executable, "-c", HOLD, tmp_path],
        stdout=subprocess.PIPE,
        text=True,
        start_new_session=True,
    )
    assert holder.stdout is not None and holder.stdout.readline() == "held\n"
    told: list[str] = []

    def wait_for(who: str) -> None:
        told.append(who)
        holder.kill()  # and what it forked off lives on
        holder.wait()

    try:
        with turn(tmp_path, wait_for) as second:
            assert told == [f"process {holder.pid}"]
            assert second.before and second.before != second.own
    finally:
        os.killpg(holder.pid, signal.SIGKILL)
    with turn(tmp_path, told.append) as third:
        assert third.before == second.own
    assert len(told) == 1


def command(root: Path, *more: str | Path) -> list[str]:
    return [
        sys.executable,
        "-m",
        "almanac",
        "build",
        "--root",
        str(root),
        "--today",
        DAY,
        *map(str, more),
    ]


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The smallest catalogue with its site, not to be changed."""

    def make(into: Path) -> None:
        copied(BASE, into)
        subprocess.run(command(into), check=True, capture_output=True)

    return made_once(tmp_path_factory, "smallest-built", make)


def whole(site: Path) -> set[str]:
    """The files of a site, each of which is the one that its list says."""
    listed = json.loads((site / LIST).read_bytes())
    for file, (mark, size) in listed["files"].items():
        content = (site / file).read_bytes()
        assert len(content) == size and mark in _marks(content), file
    assert listed["version"] in (site / WORKER).read_text("utf-8")
    return set(contents(site))


def _marks(content: bytes) -> Iterator[str]:
    yield base64.urlsafe_b64encode(hashlib.sha256(content).digest()).decode()[:16]


def test_builds_that_are_killed_at_any_moment_leave_a_whole_site(
    built: Path, tmp_path: Path
) -> None:
    """The site that stands is the one before or the one after, and the next build is a whole
    one.
    """
    root = tmp_path / "club"
    shutil.copytree(built, root)
    before, chance = contents(root / "site"), random.Random(12)
    text = (root / "plans/sets/six-fifties.yml").read_text("utf-8")
    names = whole(root / "site")
    started = time.monotonic()
    if is_long():
        subprocess.run(command(root), capture_output=True, check=True)
    longest = max(3.0, 1.1 * (time.monotonic() - started))
    for number in range(examples(2, 50)):
        (root / "plans/sets/six-fifties.yml").write_text(
            text.replace("The line", f"Line {number}"), "utf-8"
        )
        building = subprocess.Popen(
            command(root), stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
        )
        time.sleep(chance.uniform(0.1, longest))
        building.kill()
        building.communicate()
        if (root / "site").exists():
            assert whole(root / "site") == names
    (root / "plans/sets/six-fifties.yml").write_text(text, "utf-8")
    assert subprocess.run(command(root), capture_output=True, check=False).returncode == 0
    assert contents(root / "site") == before


def test_two_builds_at_once_give_one_whole_site(built: Path, tmp_path: Path) -> None:
    root = tmp_path / "club"
    shutil.copytree(built, root)
    before = contents(root / "site")
    shutil.rmtree(root / "site")
    shutil.rmtree(root / "build/pages")
    both = [
        subprocess.Popen(command(root), stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)
        for _ in range(2)
    ]
    said = [building.communicate()[1] for building in both]
    assert [building.returncode for building in both] == [0, 0], said
    assert contents(root / "site") == before
    assert "".join(said).count("builds here; this build waits until it is done") <= 1


# ---- a disk that takes no more


# No file may grow past 20,000 bytes: what the system then says of a write names no path, as on a
# full disk. A process of its own sets that: a fork that goes on in Python can stand still for ever
# where the process before it has threads, as a worker of the tests has.
LIMITED = (sys.executable, "-c", """
import os, resource, signal, sys
signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
resource.setrlimit(resource.RLIMIT_FSIZE, (20_000, 20_000))
os.execv(sys.argv[1], sys.argv[1:])
""")  # fmt: skip


def test_a_disk_that_takes_no_more_is_one_sentence_with_the_path(
    built: Path, tmp_path: Path
) -> None:
    root = tmp_path / "club"
    shutil.copytree(built, root)
    before = contents(root / "site")
    shutil.rmtree(root / "build/pages")
    done = subprocess.run(
        [*LIMITED, *command(root, "--no-cache")], capture_output=True, text=True, check=False
    )
    assert done.returncode == 4
    assert done.stderr.count("\n") == 1 and "Traceback" not in done.stderr
    assert done.stderr.startswith(f"almanac: nothing was built: {root / 'build'}/")
    assert contents(root / "site") == before


@pytest.fixture
def small_disk(tmp_path: Path) -> Iterator[tuple[Path, tuple[str, ...]]]:
    """A disk of 1 MB, where this machine lets us make one; else another disk than that of the
    test, with what keeps a process from writing much to it.
    """
    small = tmp_path / "small"
    small.mkdir()
    mount = ["mount", "-t", "tmpfs", "-o", "size=1m", "none", small]
    if (
        shutil.which("mount")
        and subprocess.run(mount, capture_output=True, check=False).returncode == 0
    ):
        yield small, ()
        subprocess.run(["umount", small], check=True)
    else:
        there = (path for path in map(Path, ("/dev/shm", "/var/tmp")) if path.is_dir())
        disk = next(path for path in there if path.stat().st_dev != tmp_path.stat().st_dev)
        other = Path(tempfile.mkdtemp(dir=disk))
        yield other, LIMITED
        shutil.rmtree(other)


def test_a_full_disk_is_one_sentence_with_the_path(
    built: Path, tmp_path: Path, small_disk: tuple[Path, tuple[str, ...]]
) -> None:
    root, (small, limit) = tmp_path / "club", small_disk
    shutil.copytree(built, root)
    folder(small / "deep/site", is_site=True)
    done = subprocess.run(
        [*limit, *command(root, "--out", small / "deep/site")],
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 4, done
    where = root / "build" if limit else small / "deep/.site.almanac-new"
    assert done.stderr.count("\n") == 1 and f"nothing was built: {where}/" in done.stderr
    assert [path.name for path in (small / "deep").iterdir()] == ["site"]
    assert (small / "deep/site/index.html").read_text() == "old"


def test_a_first_page_that_somebody_has_changed_by_hand_is_named_and_stays(tmp_path: Path) -> None:
    site, fresh = folder(tmp_path / "site", is_site=True), folder(tmp_path / "new", is_site=True)
    index, listed = site / "index.html", json.loads((site / LIST).read_text())
    listed["files"] = {"index.html": [file_hash(index.read_bytes()), 1]}
    (site / LIST).write_text(json.dumps(listed))
    place.put(fresh, site)  # as it was made, it may be replaced
    (site / LIST).write_text(json.dumps(listed))
    index.write_text("my own words")
    again = folder(tmp_path / "newer", is_site=True)
    with pytest.raises(PlaceError, match=r"/index\.html was changed after a build[^\n]*--out$"):
        place.put(again, site)
    assert index.read_text() == "my own words"
