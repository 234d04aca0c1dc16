"""A proposal that wants to hide something from its review, or to speak through it: trees that only
git's plumbing makes, and texts that a host would turn into mentions, links, images and markup.

What a comment becomes is read by markdown-it-py, a parser of CommonMark 0.31.2 that shares nothing
with this project.
"""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any
from urllib.parse import unquote

import pytest
from git_world import committed, git
from hypothesis import given
from hypothesis import strategies as st
from markdown_it import MarkdownIt
from markdown_it.token import Token
from plans_world import club
from shared import share

from almanac.analysis.comparison import Comparison
from almanac.commands.main import main
from almanac.findings import Place, error
from almanac.model.compare import EntryChange
from almanac.report.fenced import difference, fenced, linked
from almanac.report.review.markdown import MARK, MARK_NOTHING, review_markdown
from almanac.source.git.objects import ChangedFile

_FOLDS = re.compile(r"<details><summary>[A-Za-z0-9 ,:]+</summary>|</details>")

ADDRESS = "https://host.example/club/blob/abc"
KICK = "drills/skills/kicking/back-kick.yml"
# What a host makes something of where it stands outside code: mentions, issues, commits, addresses,
# pictures.
SPEAKS = re.compile(
    r"@\w|#\d|\bGH-\d|\w/\w+#|://|www\.|\b[0-9a-f]{7,40}\b|:[a-z]\w*:|[<>|]", re.IGNORECASE
)
HOSTILE = [
    "@everyone", "@club/head-coaches", "#1", "GH-1", "club/site#2", "https://evil.example",
    "www.evil.example",
    "![x](https://evil.example/x.png)", "[x](javascript:alert(1))", "<img src=x onerror=alert(1)>",
    "<!-- x -->",
    "-->", "``", "```", "` @everyone `", "\\`", "`", "</details>", "| a | b |", "a\n\n# b",
    "\u202egnp.exe",
    "\u200b", "&#64;everyone", "&lt;img&gt;", "![x][1]\n\n[1]: https://evil.example", "~~~", "$x$",
    ":tada:", "\x1b[31m",
    "deadbeefdeadbeef", "*x*", "_x_", "- [ ] x", "===", "\u2028",
    "\ud83d\ude00".encode("utf-16", "surrogatepass").decode("utf-16"),
]  # fmt: skip


@pytest.fixture
def repository(tmp_path: Path) -> Path:
    return committed(club(tmp_path / "club"))


def blob(root: Path, raw: bytes) -> str:
    return git(root, "hash-object", "-w", "--stdin", given=raw)


def proposal(root: Path, *entries: tuple[str, str, bytes]) -> str:
    """A commit on top of HEAD with these entries (mode, object, path) put into its index; nothing
    is checked out.
    """
    index = b"".join(f"{mode} {name}\t".encode() + path + b"\0" for mode, name, path in entries)
    git(root, "update-index", "-z", "--add", "--index-info", given=index)
    tree = git(root, "write-tree")
    git(root, "read-tree", "HEAD")
    return git(root, "commit-tree", tree, "-p", "HEAD", "-m", "proposal")


def reviewed(root: Path, capsys: pytest.CaptureFixture[str], head: str) -> dict:
    code = main(["review", "HEAD", head, "--json", "--root", str(root)])
    said = capsys.readouterr()
    assert not said.err
    result = json.loads(said.out)
    assert code == int(
        any(found["severity"] == "error" for found in result["findings"]["appeared"])
    )
    return result


def comment(root: Path, capsys: pytest.CaptureFixture[str], head: str) -> str:
    assert main(["review", "HEAD", head, "--links", ADDRESS, "--root", str(root)]) in (0, 1)
    return capsys.readouterr().out


def says_nothing_of_its_own(text: str) -> list[Token]:
    """That a comment holds no markup, mention, address or picture but the review's own; its
    tokens.
    """
    tokens = MarkdownIt("commonmark").enable("table").parse(text)
    for block in tokens:
        assert block.type not in {"fence", "code_block", "table_open", "hr", "blockquote_open"}
        if block.type == "html_block":
            folds = (
                line for line in block.content.split("\n") if line and not _FOLDS.fullmatch(line)
            )
            assert all(line in (MARK, MARK_NOTHING) for line in folds)
        for token in block.children or ():
            assert token.type not in {"image", "html_inline"}, token
            if token.type == "text":
                assert not SPEAKS.search(token.content), token.content
            if token.type == "link_open":
                assert str(token.attrs["href"]).startswith(f"{ADDRESS}/"), token.attrs
                assert ".." not in unquote(str(token.attrs["href"])).split("/")
    return [token for block in tokens for token in block.children or ()]


ATTRIBUTES = (
    "* export-ignore", "* export-subst", "* text eol=crlf", "* filter=evil",
    "* working-tree-encoding=UTF-16",
    "* ident", "* -diff linguist-generated", "drills/** binary",
)  # fmt: skip


@pytest.mark.parametrize(
    "attributes, where",
    [
        (ATTRIBUTES[0], b".gitattributes"),
        *share(
            [
                (own, where)
                for own in ATTRIBUTES
                for where in (b".gitattributes", b"plans/.gitattributes")
            ],
            4,
        ),
    ],
)
def test_no_attribute_hides_or_alters_an_entry(
    repository: Path, capsys: pytest.CaptureFixture[str], attributes: str, where: bytes
) -> None:
    text = (repository / KICK).read_bytes() + b"# $Format:%H$ $Id$\n"
    set_text = (
        (repository / "plans/sets/six-fifties.yml").read_bytes().replace(b"reps: 6", b"reps: 60")
    )
    head = proposal(
        repository,
        ("100644", blob(repository, text.replace(b"factor: 1.0", b"factor: 1.2")), KICK.encode()),
        ("100644", blob(repository, set_text), b"plans/sets/six-fifties.yml"),
        ("100644", blob(repository, attributes.encode()), where),
    )
    result = reviewed(repository, capsys, head)
    assert {entry["id"] for entry in result["entries"]} == {"back-kick", "six-fifties"}
    assert result["files"] == [{"what": "added", "file": where.decode()}]
    said = comment(repository, capsys, head)
    first = said.split("### ")[1]
    assert (
        first.startswith("Read this first")
        and f"`{where.decode()}`" in first
        and "hide files" in first
    )
    says_nothing_of_its_own(said)


def test_what_is_no_plain_file_is_told(
    repository: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    link, raw = blob(repository, b"/etc/passwd"), (repository / KICK).read_bytes()
    head = proposal(
        repository,
        ("120000", link, b"plans/sets/linked.yml"),
        ("120000", link, b"drills/skills/elsewhere"),
        ("160000", git(repository, "rev-parse", "HEAD"), b"drills/skills/borrowed"),
        ("100755", blob(repository, raw), KICK.encode()),
        ("120000", link, b"scripts/way-out"),
        ("100644", blob(repository, b"x"), b".github/workflows/@everyone.yml"),
    )
    result = reviewed(repository, capsys, head)
    told = {(found["code"], found["file"]) for found in result["findings"]["appeared"]}
    assert told == {
        ("link", "plans/sets/linked.yml"),
        ("link", "drills/skills/elsewhere"),
        ("submodule", "drills/skills/borrowed"),
        ("marked-as-program", KICK),
    }
    said = comment(repository, capsys, head)
    first = said.split("### ")[1]
    assert (
        "scripts/way-out" in first
        and ".github/workflows/@everyone.yml" in first
        and "borrowed" in first
    )
    says_nothing_of_its_own(said)


def test_a_link_in_place_of_all_entries_is_not_followed(
    repository: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    here = blob(repository, str(repository / "drills").encode())
    plans = git(repository, "rev-parse", "HEAD:plans")
    tree = git(
        repository,
        "mktree",
        given=f"040000 tree {plans}\tplans\n120000 blob {here}\tdrills\n".encode(),
    )
    head = git(repository, "commit-tree", tree, "-p", "HEAD", "-m", "proposal")
    result = reviewed(repository, capsys, head)
    assert ("link", "drills") in {
        (found["code"], found["file"]) for found in result["findings"]["appeared"]
    }
    is_lent = {"vocabulary", "source", "policy"}
    assert {"removed"} == {
        entry["what"] for entry in result["entries"] if entry["kind"] not in is_lent
    }


NAMES = [
    b"a\nb.yml", b"a`b`.yml", b"@everyone.yml", b"<img src=x onerror=alert(1)>.yml", b"![x](y).yml",
    b"a|b.yml",
    "\u202elmy.exe.yml".encode(), b"\xff\xfe.yml", b"a\x1b[31m.yml", b"#1.yml",
    b"x.yml\n\n# heading", b"a\tb.yml",
    b"``` .yml", b"[a](javascript:alert(1)).yml", b"www.evil.example.yml", "\u200b.yml".encode(),
    b"a\\b.yml",
    b"x" * 300 + b".yml", b" .yml", b"con.yml", b"a:b*?.yml", b'"quoted".yml', b"-rf.yml",
    "ｂack-kick.yml".encode(),
]  # fmt: skip


def test_no_name_speaks_and_each_is_told(
    repository: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    raw = blob(repository, (repository / KICK).read_bytes())
    folders = (b"drills/skills/kicking/", b"plans/sets/", b"drills/", b"")
    files = [("100644", raw, folder + name) for folder in folders for name in NAMES]
    deep = ("100644", raw, b"/".join([b"drills/skills"] + [b"d" * 50] * 30) + b"/x.yml")
    head = proposal(repository, *files, deep)
    result = reviewed(repository, capsys, head)
    in_folders = [found["file"] for found in result["findings"]["appeared"]]
    for folder in ("drills/skills/kicking/", "plans/sets/", "drills/"):
        assert sum(
            file.startswith(folder) and "/" not in file[len(folder) :] for file in in_folders
        ) >= len(NAMES)
    at_top = [file["file"] for file in result["files"] if not file["file"].startswith("drills/")]
    assert len([file for file in at_top if not file.startswith("plans/")]) == len(NAMES)
    assert all(file["file"].isprintable() for file in result["files"])
    says_nothing_of_its_own(comment(repository, capsys, head))


@pytest.mark.parametrize("name", ["..", ".", ".git", "a/b", ""])
def test_a_crafted_tree_writes_nothing_elsewhere(
    repository: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], name: str
) -> None:
    """Names that git itself never writes into a tree, and that lead out of the folder."""
    raw = blob(repository, b"title: escaped\n")
    level = bytes.fromhex(raw)
    inner = git(repository, "hash-object", "-t", "tree", "-w", "--literally", "--stdin",
                given=b"100644 escaped.yml\0" + level)  # fmt: skip
    outer = git(repository, "hash-object", "-t", "tree", "-w", "--literally", "--stdin",
                given=f"40000 {name}\0".encode() + bytes.fromhex(inner))  # fmt: skip
    top = git(repository, "hash-object", "-t", "tree", "-w", "--literally", "--stdin",
              given=b"40000 drills\0" + bytes.fromhex(outer))  # fmt: skip
    head = git(repository, "commit-tree", top, "-p", "HEAD", "-m", "proposal")
    main(["review", "HEAD", head, "--links", ADDRESS, "--root", str(repository)])
    says_nothing_of_its_own(capsys.readouterr().out)
    assert not list(tmp_path.rglob("escaped.yml")) and not Path("escaped.yml").exists()


def test_clashes_of_case_and_of_one_letters_forms(
    repository: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    raw = blob(repository, (repository / KICK).read_bytes())
    head = proposal(
        repository,
        ("100644", raw, b"drills/skills/kicking/Back-Kick.yml"),
        ("100644", raw, b"drills/Skills/kicking/other.yml"),
        ("100644", raw, "plans/sets/caf\u00e9.yml".encode()),
        ("100644", raw, "plans/sets/cafe\u0301.yml".encode()),
    )
    clashes = [found for found in reviewed(repository, capsys, head)["findings"]["appeared"]
               if found["code"] == "case-clash"]  # fmt: skip
    assert [found["file"] for found in clashes] == [
        "drills/Skills", "drills/skills/kicking/Back-Kick.yml", "plans/sets/caf\u00e9.yml",
    ]  # fmt: skip
    assert "drills/skills/kicking/back-kick.yml" in clashes[1]["message"]


def test_a_huge_file_is_told_and_not_read(
    repository: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    huge = blob(repository, b"title: x\n" * 3_000_000)
    head = proposal(
        repository, ("100644", huge, b"plans/sets/huge.yml"), ("100644", huge, b"huge.bin")
    )
    (found,) = reviewed(repository, capsys, head)["findings"]["appeared"]
    assert (found["code"], found["file"]) == ("file-too-large", "plans/sets/huge.yml")


def test_an_entry_that_cannot_be_read_is_not_said_to_be_removed(
    repository: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    head = proposal(repository, ("100644", blob(repository, b"title: ["), KICK.encode()))
    assert reviewed(repository, capsys, head)["entries"][0]["what"] == "unreadable"


def test_replaced_objects_are_not_heeded(
    repository: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    raw = (repository / KICK).read_bytes()
    changed = blob(repository, raw.replace(b"factor: 1.0", b"factor: 1.2"))
    head = proposal(repository, ("100644", changed, KICK.encode()))
    git(repository, "replace", changed, blob(repository, raw))
    assert reviewed(repository, capsys, head)["entries"]


def test_no_value_key_or_finding_speaks(
    repository: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Every hostile text as a value, as a key, as an id that is named, as a word and as a lane
    group's name.
    """
    texts = [text for text in HOSTILE if all(char.isprintable() for char in text)]
    quoted = {text: json.dumps(text, ensure_ascii=False) for text in texts}
    values = ", ".join(json.dumps(f"x {text}", ensure_ascii=False) for text in texts)
    keys = "".join(f"{quoted[text]}: 1\n" for text in texts)
    drill = (repository / KICK).read_text("utf-8")
    drill = re.sub(r"(?m)^cues: .*$", lambda _: f"cues: [{values}]", drill)
    words = (repository / "drills/vocabulary/goals.yml").read_text("utf-8")
    words += "".join(f"  {quoted[text]}: {{title: x, means: {quoted[text]}}}\n" for text in texts)
    club_text = (repository / "plans/club.yml").read_text("utf-8")
    club_text = club_text.replace(
        "lane_groups:\n", "lane_groups:\n  \"@everyone ![x](//evil.example)\": {title: '@here'}\n"
    )
    head = proposal(
        repository,
        ("100644", blob(repository, drill.encode()), KICK.encode()),
        ("100644", blob(repository, (drill + keys).encode()), b"drills/skills/kicking/keys.yml"),
        ("100644", blob(repository, words.encode()), b"drills/vocabulary/goals.yml"),
        ("100644", blob(repository, club_text.encode()), b"plans/club.yml"),
    )
    said = comment(repository, capsys, head)
    tokens = says_nothing_of_its_own(said)
    code = " ".join(token.content for token in tokens if token.type == "code_inline")
    missing = [text for text in texts if " ".join(text.split()) not in code]
    assert not missing


@given(st.lists(st.sampled_from(HOSTILE) | st.text(max_size=12), max_size=8).map("".join))
def test_a_fenced_text_is_one_code_span_and_nothing_else(text: str) -> None:
    for said in (
        fenced(text),
        difference(text, "other" + text),
        linked(text, Place(f"drills/{text}.yml"), ADDRESS),
    ):
        assert "\n" not in said
        spans = [
            token
            for token in says_nothing_of_its_own(f"- **changed** {said}: done\n")
            if token.type == "code_inline"
        ]
        assert len(spans) >= (1 if text.strip() else 0)
    (span,) = (
        (
            token
            for token in says_nothing_of_its_own(f"{fenced(text, 5000)} x")
            if token.type == "code_inline"
        )
        if " ".join(text.split())
        else [None]
    )
    if span is not None and text.isprintable():
        assert span.content.strip() == " ".join(text.split())


def test_a_change_far_into_a_text_is_shown() -> None:
    before, after = (
        "a" * 500 + " nobody goes under alone",
        "a" * 500 + " everybody goes under alone",
    )
    said = difference(before, after)
    assert "nobody goes" in said and "everybody goes" in said
    assert difference(12, "12") == '`12` → `"12"`'


@pytest.mark.parametrize("sort", ["entries", "appeared", "files"])
def test_a_long_comment_is_cut_between_lines_and_says_so(sort: str) -> None:
    ids = [f"{'水`' * (number % 40)}{number}" for number in range(2000)]
    found = {
        "entries": [EntryChange("added", "set", id, f"plans/sets/{id}.yml") for id in ids],
        "appeared": [
            error("link", Place(f"plans/sets/{id}.yml"), f"@everyone {id}", "x") for id in ids
        ],
        "files": [ChangedFile(f".github/{id}", "", "100644") for id in ids],
    }
    empty: Any = {
        name: []
        for name in (
            "entries",
            "figures",
            "appeared",
            "gone",
            "alike",
            "unused",
            "files",
            "loosened",
        )
    }
    said = review_markdown(Comparison(**{**empty, sort: found[sort]}), "main", ADDRESS)
    assert 60_000 < len(said.encode()) <= 65_536
    end = re.search(
        r"\n\nCut here, because a comment holds no more: ([\d,]+) lines are left out", said
    )
    assert end
    shown = sum(line.startswith("- ") for line in said.splitlines())
    briefly = {  # in brief and, but for files, in full: what is new, entries, what one check finds
        "entries": 2 + 2 * len(ids),
        "appeared": 1 + len(ids),
        "files": 1 + 2 * len(ids),
    }
    assert shown + int(end[1].replace(",", "")) == briefly[sort]
    says_nothing_of_its_own(said)
