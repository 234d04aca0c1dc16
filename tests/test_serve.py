"""``serve``: the served site is the one that a build would make, and no save ends it."""

from __future__ import annotations

import contextlib
import itertools
import json
import operator
import os
import random
import re
import shutil
import signal
import socket
import subprocess
import sys
import threading
import urllib.request
from collections.abc import Callable, Iterator
from datetime import date
from pathlib import Path
from urllib.error import HTTPError

import pytest
from example_cases import BASE, cases
from saves import SAVES, Save, add_drill, break_or_mend, edit_text, remove_set, retitle_goal
from shared import CATALOGUE, DAY, copied, examples, is_long

from almanac import resources
from almanac.analysis.touched import Documents, lost
from almanac.commands import rebuild as rebuilding
from almanac.commands.main import main
from almanac.commands.rebuild import Rebuilder
from almanac.commands.watch import Watch
from almanac.model.load import load
from almanac.publish.build import build_site
from almanac.publish.node import NodeError
from almanac.publish.viewers import Viewers
from almanac.source.reader import read

SET = "plans/sets/six-fifties.yml"
PAGE = "sets/six-fifties.html"
SEEN = ("\npurpose: ", "\npurpose: Seen. ")
DRILL = "drills/skills/kicking/back-kick.yml"


class Seen(Viewers):
    """Viewers that look at a page of a test's choice, and remember what changed."""

    def __init__(self) -> None:
        super().__init__()
        self.files: list[str] = []
        self.said: list[str] = []
        self.views = [PAGE]

    @property
    def in_view(self) -> list[str]:
        return self.views

    def changed(self, file: str) -> None:
        super().changed(file)
        self.files.append(file)

    def say(self, message: str) -> None:
        super().say(message)
        self.said.append(message)


class Bench:
    """A copy of a catalogue that is kept up to date in ``site``."""

    def __init__(self, root: Path, source: Path = BASE) -> None:
        self.root = copied(source, root)
        self.site = root / "site"
        self.viewers = Seen()
        self.is_newer: Callable[[], bool] = lambda: False
        self.rebuilder = Rebuilder(
            self.root, self.site, self.viewers, lambda: DAY, lambda: self.is_newer()
        )
        assert self.rebuilder.rebuild()
        self.rebuilder.prepare()

    def replaced(self, file: str, old: str, new: str) -> None:
        text = (self.root / file).read_text("utf-8")
        assert old in text
        (self.root / file).write_text(text.replace(old, new, 1), "utf-8")

    def saved(self, file: str, old: str, new: str) -> bool:
        self.replaced(file, old, new)
        self.viewers.files.clear()
        return self.rebuilder.rebuild()

    def clean(self, into: Path) -> dict[str, bytes]:
        """What a build makes of the files as they are."""
        own = load(copied(self.root, into))
        assert own.catalogue is not None
        build_site(rebuilding.Analysis(own.catalogue, DAY), own.names, into, into / "site")
        return contents(into / "site")


def contents(site: Path) -> dict[str, bytes]:
    return {
        path.relative_to(site).as_posix(): path.read_bytes()
        for path in sorted(site.rglob("*"))
        if path.is_file()
    }


def differing(one: dict[str, bytes], other: dict[str, bytes]) -> list[str]:
    return sorted(name for name in one.keys() | other.keys() if one.get(name) != other.get(name))


@pytest.fixture
def own_site_source(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A copy of templates, styles and settings that a test may save."""
    copy = tmp_path / "program"
    left_out = shutil.ignore_patterns("node_modules")
    shutil.copytree(resources.SITE_SOURCE, copy / "site_src", ignore=left_out)
    shutil.copy(resources.SETTINGS, copy / "mkdocs.yml")
    new = {"SITE_SOURCE": copy / "site_src", "SETTINGS": copy / "mkdocs.yml"}
    old = {word: getattr(resources, word) for word in new}
    for name, module in list(sys.modules.items()):
        if name.startswith("almanac."):
            for word, path in new.items():
                if getattr(module, word, None) == old[word]:
                    monkeypatch.setattr(module, word, path)
    return copy


def change_template(program: Path, chance: random.Random) -> None:
    path = program / "site_src/templates/fault.md.j2"
    path.write_text(path.read_text("utf-8") + f"\nSeen {chance.randrange(1000)} times.\n", "utf-8")


def change_style(program: Path, chance: random.Random) -> None:
    path = program / "site_src/styles/almanac.css"
    path.write_text(path.read_text("utf-8") + f"/* {chance.randrange(1000)} */\n", "utf-8")


def change_page(program: Path, chance: random.Random) -> None:
    path = program / "site_src/pages/privacy.md"
    text = path.read_text("utf-8")
    path.write_text(re.sub(r"(?m)^title: .*$", f"title: Kept {chance.randrange(9)}", text), "utf-8")


def add_page(program: Path, chance: random.Random) -> None:
    path = program / f"site_src/pages/more-{chance.randrange(100)}.md"
    path.write_text("# More\n\nA page that nobody leads to.\n", "utf-8")


def change_settings(program: Path, chance: random.Random) -> None:
    path = program / "mkdocs.yml"
    text = path.read_text("utf-8")
    path.write_text(re.sub("toc_depth: .", f"toc_depth: {chance.choice('234')}", text), "utf-8")


OF_PROGRAM = (change_template, change_style, change_page, add_page, change_settings)
# What leaves the entries sound comes first: after a set that others name has gone, all stays as it
# was to the end.
FIRST: tuple[Save, ...] = (
    edit_text, add_drill, retitle_goal, break_or_mend, break_or_mend, change_page, change_style,
    remove_set, change_template,
)  # fmt: skip


def every_field(root: Path) -> Path:
    """The least catalogue that has every kind of entry, and every field."""
    next(case for case in cases("accepted") if case.name == "every-field").build(root)
    return root


def newer_by(chance: random.Random) -> Callable[[], bool]:
    """Another save may come while one is built, and has then come."""
    looks = (chance.random() < 0.01 for _ in itertools.count())
    has_come = itertools.accumulate(looks, operator.or_)
    return lambda: next(has_come)


@pytest.mark.parametrize("seed", range(examples(1, 12)))
def test_after_any_saves_the_site_is_the_one_that_a_build_makes(
    tmp_path: Path, own_site_source: Path, seed: int
) -> None:
    chance = random.Random(seed)
    bench = Bench(tmp_path / "club", CATALOGUE if is_long() else every_field(tmp_path / "entries"))
    sound = copied(bench.root, tmp_path / "sound")
    more = [chance.choice((*SAVES, *OF_PROGRAM)) for _ in range(examples(0, 25))]
    built = 0
    for save in (*FIRST, *more):
        save(own_site_source if save in OF_PROGRAM else bench.root, chance)
        bench.is_newer = newer_by(chance)
        bench.viewers.views = chance.sample(
            [PAGE, "sets/kick-and-go.html", "index.html", "drills/none.html"], 2
        )
        if bench.rebuilder.rebuild():
            built += 1
            shutil.rmtree(sound)
            copied(bench.root, sound)
    assert built >= 5
    amiss = [own for own in bench.viewers.said if own.startswith(("nothing was built", "a fault"))]
    assert is_long() or amiss == [], "the next save would build all of it, and hide what is wrong"
    bench.is_newer = lambda: False
    if not bench.rebuilder.rebuild():
        for name in ("drills", "plans"):
            shutil.rmtree(bench.root / name)
        copied(sound, bench.root)
        assert bench.rebuilder.rebuild()
    assert differing(contents(bench.site), bench.clean(tmp_path / "clean")) == []


@pytest.fixture(scope="module")
def bench(tmp_path_factory: pytest.TempPathFactory) -> Bench:
    """One for the tests that leave it as they found it."""
    return Bench(tmp_path_factory.mktemp("club"))


def test_the_page_in_view_comes_first_and_an_equal_page_is_not_written(bench: Bench) -> None:
    before = {path: path.stat().st_mtime_ns for path in bench.site.rglob("*.html")}
    assert bench.saved(SET, *SEEN)
    assert bench.viewers.files[0] == PAGE
    after = {path: path.stat().st_mtime_ns for path in bench.site.rglob("*.html")}
    written = {
        path.relative_to(bench.site).as_posix() for path in after if after[path] != before.get(path)
    }
    assert PAGE in written and len(written) < 5
    assert "Seen." in (bench.site / PAGE).read_text("utf-8")
    assert bench.saved(SET, *SEEN[::-1])


def test_the_pages_that_a_change_touches_come_before_the_rest(bench: Bench) -> None:
    title = "title: Back kick"
    bench.viewers.views = []
    assert bench.saved(DRILL, title, f"{title} again")
    pages = [file for file in bench.viewers.files if file.endswith(".html")]
    assert {"drills/back-kick.html", PAGE, "faults/bent-knees.html", "drills/index.html"} <= {
        *pages
    }
    first_data = bench.viewers.files.index("data/v1/drills.csv")
    assert all(bench.viewers.files.index(page) < first_data for page in pages)
    assert bench.saved(DRILL, f"{title} again", title)
    bench.viewers.views = [PAGE]


def test_pages_that_show_a_word_come_before_all_that_it_may_reach(bench: Bench) -> None:
    file, title = "drills/vocabulary/goals.yml", "title: Kick technique"
    bench.viewers.views = ["by/goal.html"]
    assert bench.saved(file, title, f"{title} anew")
    pages = [file for file in bench.viewers.files if file.endswith(".html")]
    assert pages[0] == "by/goal.html" and "drills/back-kick.html" in pages
    assert pages[-1] == "find.html"  # it names all of them, and takes longer than any
    assert bench.saved(file, f"{title} anew", title)
    bench.viewers.views = [PAGE]


def test_a_text_that_is_gone_is_sought_in_pieces() -> None:
    def documents(text: str) -> Documents:
        document, _ = read(text.encode(), "drills/vocabulary/goals.yml")
        assert document is not None
        return {("vocabulary", "goals"): document}

    old = documents(
        "title: Goals\nafter: 0:45\nwords: {a: {title: Fast, means: Moves the water to the "
        "feet.}}\n"
    )
    new = documents("title: Goals\nwords: {a: {title: Quick, means: Moves water to the feet.}}\n")
    assert lost(old, old) == set()
    assert lost(old, new) == {"Fast", "Moves the water", "to the feet."}
    assert lost(old, {}) == {"Goals", "Fast", "Moves the water", "to the feet."}


def test_a_broken_entry_is_told_and_the_last_good_site_stays(
    bench: Bench, capsys: pytest.CaptureFixture[str]
) -> None:
    before = contents(bench.site)
    assert not bench.saved(SET, "title: ", "titel: ")
    out = capsys.readouterr().out
    assert f"{SET}:1:1: error" in out and out.endswith("the last good site stays\n")
    assert f"{SET}:1:1: error" in bench.viewers.said[-1]
    assert contents(bench.site) == before
    assert bench.saved(SET, "titel: ", "title: ")
    assert bench.viewers.said[-1] == ""
    assert contents(bench.site) == before


@pytest.mark.parametrize("where", ["load_and_check", "SitePages", "build_site"])
def test_a_fault_is_told_with_its_log_and_the_next_save_is_built(
    bench: Bench,
    where: str,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    tmp_path: Path,
) -> None:
    before = contents(bench.site)

    def broken(*_: object, **__: object) -> None:
        raise RuntimeError("the pool is empty")

    monkeypatch.setattr("tempfile.tempdir", str(tmp_path))
    if where == "build_site":
        bench.rebuilder._live = None
    with monkeypatch.context() as patch:
        patch.setattr(rebuilding, where, broken)
        assert not bench.saved(SET, *SEEN)
    said = capsys.readouterr().err
    assert said.startswith("a fault of the program itself; please report ")
    assert "the pool is empty" in Path(said.split()[-1]).read_text("utf-8")
    assert said.strip() in bench.viewers.said[-1]
    assert contents(bench.site) == before
    assert bench.saved(SET, *SEEN[::-1])
    assert contents(bench.site) == before
    bench.rebuilder.prepare()


def test_a_template_that_is_gone_is_told_as_the_program_s_fault_and_none_of_the_disk(
    bench: Bench,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    tmp_path: Path,
) -> None:
    before = contents(bench.site)
    source = tmp_path / "source"
    for name in ("templates", "theme"):
        shutil.copytree(resources.SITE_SOURCE / name, source / name)
    monkeypatch.setattr("tempfile.tempdir", str(tmp_path))
    with monkeypatch.context() as patch:
        patch.setattr(rebuilding, "SITE_SOURCE", source)
        (source / "templates/_parts.j2").unlink()
        assert not bench.saved(SET, *SEEN)
    said = capsys.readouterr().err
    assert said.startswith("a fault of the program itself; please report ")
    assert "_parts.j2" in Path(said.split()[-1]).read_text("utf-8")
    assert contents(bench.site) == before
    assert bench.saved(SET, *SEEN[::-1])
    assert contents(bench.site) == before
    bench.rebuilder.prepare()


def test_a_script_that_cannot_be_bundled_is_told(
    bench: Bench, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def broken(*_: object) -> None:
        raise NodeError("esbuild found something wrong:\nfind.js:3:1: Unexpected end of file")

    with monkeypatch.context() as patch:
        patch.setattr("almanac.publish.live_site.bundles", broken)
        assert not bench.rebuilder.rebuild()
    assert "nothing was built: esbuild found something wrong" in capsys.readouterr().err
    assert "find.js:3:1" in bench.viewers.said[-1]
    assert bench.rebuilder.rebuild()
    bench.rebuilder.prepare()


def spoil_nothing_there(root: Path) -> None:
    shutil.rmtree(root / "drills")
    shutil.rmtree(root / "plans")


def spoil_folder_renamed(root: Path) -> None:
    (root / "drills/skills").rename(root / "drills/skill")


def spoil_ten_megabytes(root: Path) -> None:
    (root / SET).write_bytes(b"title: x\n" * 1_200_000)


def spoil_no_utf8(root: Path) -> None:
    (root / SET).write_bytes(b"title: \xff\xfe\0")


def spoil_folder_for_file(root: Path) -> None:
    (root / SET).unlink()
    (root / SET).mkdir()


def spoil_link(root: Path) -> None:
    (root / SET).unlink()
    (root / SET).symlink_to(root / SET)


def spoil_pipe(root: Path) -> None:
    (root / SET).unlink()
    os.mkfifo(root / SET)


SPOILS = [
    spoil_nothing_there, spoil_folder_renamed, spoil_ten_megabytes, spoil_no_utf8,
    spoil_folder_for_file, spoil_link,
    spoil_pipe,
]  # fmt: skip


@pytest.mark.parametrize("spoil", SPOILS, ids=lambda spoil: spoil.__name__)
def test_whatever_a_save_does_the_site_stays_and_the_next_is_built(
    bench: Bench, spoil: Callable[[Path], None]
) -> None:
    before = contents(bench.site)
    spoil(bench.root)
    assert not bench.rebuilder.rebuild()
    assert contents(bench.site) == before
    for name in ("drills", "plans"):
        shutil.rmtree(bench.root / name, ignore_errors=True)
    copied(BASE, bench.root)
    assert bench.rebuilder.rebuild()
    assert contents(bench.site) == before
    bench.rebuilder.prepare()


def test_a_file_that_goes_while_it_is_read_is_told(
    bench: Bench, monkeypatch: pytest.MonkeyPatch
) -> None:
    from almanac.model import reading

    plainly = reading.read_at_most

    def gone(path: Path) -> bytes:
        if path.name == Path(SET).name:
            raise PermissionError(13, "Permission denied", str(path))
        return plainly(path)

    with monkeypatch.context() as patch:
        patch.setattr(reading, "read_at_most", gone)
        assert not bench.rebuilder.rebuild()
    assert "permission denied" in bench.viewers.said[-1]
    assert bench.rebuilder.rebuild()


def test_the_library_that_watches_says_nothing_on_the_terminal() -> None:
    words = "import logging, almanac.commands.watch; logging.getLogger('watchdog.x').warning('no')"
    done = subprocess.run([sys.executable, "-c", words], capture_output=True, check=True)
    assert done.stderr == b""


def test_what_is_watched_is_noticed_again_after_it_was_gone(tmp_path: Path) -> None:
    root = copied(BASE, tmp_path)
    with Watch(root) as watch:
        saved = threading.Event()

        def follow() -> None:
            while watch.wait():
                saved.set()

        threading.Thread(target=follow, daemon=True).start()

        def noticed(save: Callable[[], object]) -> bool:
            saved.clear()
            save()
            return saved.wait(30)

        assert noticed(lambda: (root / SET).write_text("title: x\n", "utf-8"))
        assert noticed(lambda: (root / "plans").rename(root / "plan"))
        assert noticed(lambda: (root / "plan").rename(root / "plans"))
        assert noticed(lambda: (root / SET).write_text("title: y\n", "utf-8"))
        assert noticed(lambda: (root / SET).unlink())


class Process:
    """``almanac serve`` on a copy of the least catalogue, as a process."""

    def __init__(self, root: Path) -> None:
        self.root = copied(BASE, root)
        command = [sys.executable, "-m", "almanac", "serve", "--port", "0", "--root", str(root)]
        self.process = subprocess.Popen(
            [*command, "--today", str(DAY)],
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            text=True,
        )
        assert self.process.stdout is not None
        self.said: list[str] = []
        for line in self.process.stdout:
            self.said.append(line)
            if line.startswith("serving "):
                break
        found = re.search(r"http://127\.0\.0\.1:(\d+)/", self.said[-1])
        assert found is not None, self.said
        self.address, self.port = found[0], int(found[1])
        threading.Thread(target=self.said.extend, args=(self.process.stdout,), daemon=True).start()

    def get(self, path: str) -> tuple[int, str, str]:
        """Status, type and text of what is served."""
        try:
            with urllib.request.urlopen(self.address + path) as answer:
                return answer.status, answer.headers["Content-Type"], answer.read().decode()
        except HTTPError as problem:
            return problem.code, problem.headers["Content-Type"], problem.read().decode()

    def version(self, page: str) -> str:
        found = re.search(r'data-page="([^"]*)" data-version="(\d+)"', self.get(page)[2])
        assert found is not None and found[1] == page
        return found[2]

    def news(self, page: str, since: str, told: str = "") -> dict[str, str]:
        query = f"_serve/changes?page={page}&since={since}&told={told}"
        answer: dict[str, str] = json.loads(self.get(query)[2])
        return answer


@pytest.fixture(scope="module")
def served(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Process]:
    running = Process(tmp_path_factory.mktemp("served"))
    yield running
    running.process.terminate()
    running.process.wait(30)


def test_ctrl_c_ends_it_as_it_is_meant_to_end(tmp_path: Path) -> None:
    # Whoever is begun by a shell in its background ignores Ctrl-C, and so do those that it begins.
    before = signal.signal(signal.SIGINT, signal.default_int_handler)
    try:
        running = Process(tmp_path)
    finally:
        signal.signal(signal.SIGINT, before)
    running.process.send_signal(signal.SIGINT)
    assert running.process.wait(30) == 0


def test_pages_are_served_with_the_reloader_and_no_offline_worker(served: Process) -> None:
    code, kind, text = served.get(PAGE)
    assert (code, kind) == (200, "text/html; charset=utf-8")
    assert text.count("/_serve/reload.js") == 1 and "script-src 'self'" in text
    assert "/_serve/" not in (served.root / "site" / PAGE).read_text("utf-8")
    assert "unregister" in served.get("worker.js")[2]
    assert "unregister" not in (served.root / "site/worker.js").read_text("utf-8")
    assert served.get("_serve/reload.js")[:2] == (200, "text/javascript; charset=utf-8")
    assert served.get("")[2] == served.get("index.html")[2]
    assert served.get("styles/almanac.css")[:2] == (200, "text/css; charset=utf-8")


@pytest.mark.parametrize(
    "path",
    [
        "nothing.html",
        "../plans/club.yml",
        "%2e%2e/plans/club.yml",
        "sets/%00.html",
        "a" * 5000,
        "//plans",
    ],
)
def test_nothing_else_is_served(served: Process, path: str) -> None:
    code, kind, text = served.get(path)
    assert (code, kind) == (404, "text/html; charset=utf-8")
    assert "squads" not in text and "/_serve/reload.js" in text


def test_a_save_is_told_to_the_pages_that_show_it(served: Process) -> None:
    since = served.version(PAGE)
    path = served.root / SET
    path.write_text(path.read_text("utf-8").replace(SEEN[0], "\npurpose: Told. ", 1), "utf-8")
    while not served.news(PAGE, since)["reload"]:
        pass
    assert "Told." in served.get(PAGE)[2]
    assert int(served.version(PAGE)) > int(since)


def test_findings_are_told_to_every_page_until_they_are_mended(served: Process) -> None:
    page = "index.html"
    path = served.root / SET
    sound = path.read_text("utf-8")
    path.write_text(sound.replace("title: ", "titel: ", 1), "utf-8")
    news = served.news(page, served.version(page))
    while f"{SET}:1:1: error" not in news["message"]:  # an earlier save may still be under way
        news = served.news(page, served.version(page), news["told"])
    path.write_text(sound, "utf-8")
    while news["message"]:
        news = served.news(page, served.version(page), news["told"])


def test_a_port_that_is_taken_is_one_sentence(
    served: Process, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    root = copied(BASE, tmp_path)
    assert main(["serve", "--root", str(root), "--port", str(served.port)]) == 4
    said = capsys.readouterr()
    assert said.err == (
        f"almanac: port {served.port} is taken: stop what uses it, or name another with --port\n"
    )
    assert not (root / "site").exists(), "told before anything is built"


@pytest.mark.parametrize("port", ["70000", "-1", "http", "8000.5", "9" * 5000, "٨٠٠٠", ""])
def test_a_port_that_cannot_be_is_wrong_usage(
    port: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["serve", "--root", str(copied(BASE, tmp_path)), f"--port={port}"]) == 2
    assert f"'{port}' is no port: name one from 0 to 65535" in capsys.readouterr().err


def answered(served: Process, *lines: str) -> str:
    """The first line that is answered to a request."""
    with socket.create_connection(("127.0.0.1", served.port), 30) as connection:
        connection.sendall("\r\n".join([*lines, "Connection: close", "", ""]).encode("latin-1"))
        return connection.makefile("rb").readline().decode("latin-1").strip()


@pytest.mark.parametrize(
    "hosts",
    [
        ["evil.example"], ["evil.example:8000"], ["127.0.0.1.evil.example"],
        ["127.0.0.1", "evil.example"], [""], [],
        ["localhost:x"], ["0.0.0.0"], ["[::2]"], ["localhost@evil.example"], ["127.0.0.1:8000/x"],
    ],
)  # fmt: skip
def test_no_page_from_elsewhere_may_read_the_site(served: Process, hosts: list[str]) -> None:
    """A name of somebody else's that was made to lead to this machine stands in the Host header."""
    for path in ("/", "/_serve/changes?page=index.html&since=0&told=x", "/worker.js"):
        lines = [f"GET {path} HTTP/1.1", *(f"Host: {host}" for host in hosts)]
        assert answered(served, *lines) == "HTTP/1.1 421 Misdirected Request"
    evil = "GET http://evil.example/ HTTP/1.1"
    assert answered(served, evil, f"Host: 127.0.0.1:{served.port}").startswith("HTTP/1.1 421")


@pytest.mark.parametrize("host", ["127.0.0.1", "localhost", "LOCALHOST:8000", "[::1]:8000"])
def test_this_machine_may_by_any_of_its_names(served: Process, host: str) -> None:
    assert answered(served, "GET / HTTP/1.1", f"Host: {host}") == "HTTP/1.1 200 OK"


@pytest.mark.parametrize("path", ["http://[", "/_serve/changes?page=a&since=" + "9" * 5000])
def test_no_request_is_a_fault(served: Process, path: str) -> None:
    first = answered(served, f"GET {path} HTTP/1.1", "Host: localhost")
    assert re.match("HTTP/1.1 (200|400|421) ", first)


def test_a_build_beside_it_is_noticed_at_the_next_save(bench: Bench, tmp_path: Path) -> None:
    """What it knew of the site is no longer so: it builds all of it."""
    other = copied(bench.root, tmp_path / "other")
    text = (other / DRILL).read_text("utf-8")
    (other / DRILL).write_text(text.replace("title: Back kick", "title: Other kick", 1), "utf-8")
    own = load(other)
    assert own.catalogue is not None
    build_site(rebuilding.Analysis(own.catalogue, DAY), own.names, bench.root, bench.site)
    assert "Other kick" in (bench.site / "drills/back-kick.html").read_text("utf-8")
    assert bench.saved(SET, *SEEN)
    assert differing(contents(bench.site), bench.clean(tmp_path / "clean")) == []
    bench.rebuilder.prepare()
    assert bench.saved(SET, *SEEN[::-1])


def test_a_site_that_goes_meanwhile_is_built_again(bench: Bench) -> None:
    before = contents(bench.site)
    shutil.rmtree(bench.site)
    shutil.rmtree(bench.root / "build")
    bench.rebuilder.rebuild()
    assert bench.rebuilder.rebuild()
    assert contents(bench.site) == before
    bench.rebuilder.prepare()


def test_what_a_killed_build_put_aside_is_the_last_good_site(bench: Bench) -> None:
    """Though nothing can be built: the entries are broken when it starts."""
    before = contents(bench.site)
    bench.site.rename(bench.root / ".site.almanac-old")
    bench.replaced(SET, "title: ", "titel: ")
    starting = Rebuilder(bench.root, bench.site, bench.viewers, lambda: DAY, lambda: False)
    starting.mend()
    assert not starting.rebuild()
    assert contents(bench.site) == before
    bench.replaced(SET, "titel: ", "title: ")
    assert bench.rebuilder.rebuild()
    bench.rebuilder.prepare()


@pytest.mark.parametrize("what", ["build", "site"])
def test_a_file_in_place_of_a_folder_is_told_and_mended(bench: Bench, what: str) -> None:
    before = contents(bench.site)
    shutil.rmtree(bench.root / what)
    (bench.root / what).write_text("precious")
    bench.rebuilder._live = None
    assert not bench.rebuilder.rebuild()
    assert (
        "nothing was built: " in bench.viewers.said[-1]
        and str(bench.root) in bench.viewers.said[-1]
    )
    assert (bench.root / what).read_text() == "precious"
    (bench.root / what).unlink()
    assert bench.rebuilder.rebuild()
    assert contents(bench.site) == before
    bench.rebuilder.prepare()


def test_a_terminal_that_has_gone_ends_nothing(
    bench: Bench, monkeypatch: pytest.MonkeyPatch
) -> None:
    with Path("/dev/full").open("w") as full, monkeypatch.context() as patch:
        patch.setattr(sys, "stdout", full)
        patch.setattr(sys, "stderr", full)
        assert bench.saved(SET, *SEEN)
        assert not bench.saved(SET, "title: ", "titel: ")
        with contextlib.suppress(OSError):
            full.close()
    assert bench.saved(SET, "titel: ", "title: ")
    assert bench.saved(SET, *SEEN[::-1])


def test_a_day_that_is_none_is_wrong_usage(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", "--today", "2026-02-30"]) == 2
    assert "'2026-02-30' is no day: the calendar has none such" in capsys.readouterr().err


def test_the_clock_can_be_stood_in_for(monkeypatch: pytest.MonkeyPatch) -> None:
    from almanac.commands.outcome import UsageError, today

    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1790000000")
    assert today() == date(2026, 9, 21)
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "soon")
    with pytest.raises(UsageError, match="is no number of seconds"):
        today()
