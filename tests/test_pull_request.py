"""The robot of pull requests: what it says where, what it never writes over, and what the workflows
may do.

The pins are the commits of the tags beside them, as public repositories that pin the same actions
write them.
"""

from __future__ import annotations

import fnmatch
import json
import re
import runpy
import subprocess
import threading
from collections.abc import Iterator
from http.server import BaseHTTPRequestHandler, HTTPServer
from pathlib import Path
from typing import Any

import pytest
import yaml
from plans_world import club
from test_review import KICK, edit, git

from almanac.commands.main import main
from almanac.report.review.markdown import MARK, MARK_NOTHING

ROOT = Path(__file__).resolve().parents[1]
SCRIPT = runpy.run_path(str(ROOT / "scripts" / "pull_request.py"))
decide, speaks, Refused, Act, Job = (
    SCRIPT[name] for name in ("decide", "speaks", "Refused", "Act", "Job")
)
SHA = "0123456789abcdef0123456789abcdef01234567"
FILES = f"https://github.com/quillwater/almanac/blob/{SHA}"
REPORT = (
    f"{MARK}\n\n## What this changes, against `abc`\n\n1 changed.\n\n- **changed** drill "
    f"[`x`]({FILES}/drills/x.yml#L3)\n"
)
NOTHING = f"{MARK_NOTHING}\n\n## What this changes, against `abc`\n\nno entry changed.\n"
ROBOT = {"login": "github-actions[bot]", "type": "Bot"}


def said_by(user: Any, body: str, id: int = 7) -> dict[str, Any]:
    return {"id": id, "user": user, "body": body}


# ---- which comment is its own


@pytest.mark.parametrize("report", ["", " ", "\n\n", "\t\n"])
def test_an_empty_report_says_nothing_and_touches_nobody(report: str) -> None:
    others = [
        said_by({"login": "coach", "type": "User"}, "Looks good."),
        said_by(ROBOT, MARK + "\n\nold"),
    ]
    assert decide(report, others, FILES) is None


@pytest.mark.parametrize(
    "other",
    [
        said_by({"login": "coach", "type": "User"}, f"{MARK}\n\nmine"),
        said_by({"login": "github-actions[bot]", "type": "User"}, f"{MARK}\n\nmine"),
        said_by({"login": "other[bot]", "type": "Bot"}, f"{MARK}\n\nmine"),
        said_by(ROBOT, f"Another workflow's words.\n{MARK}"),
        said_by(ROBOT, ""),
        said_by(ROBOT, None),  # type: ignore[arg-type]
        said_by(None, f"{MARK}\n\na ghost's"),
        {"id": 7},
    ],
)
def test_nobody_elses_comment_is_written_over(other: dict[str, Any]) -> None:
    assert decide(REPORT, [other], FILES) == Act(None, REPORT)


def test_its_own_comment_is_renewed_and_left_where_it_says_the_same() -> None:
    own = said_by(ROBOT, f"{MARK}\n\nold", 12)
    others = [said_by({"login": "coach", "type": "User"}, f"{MARK}\n\nmine", 3), own]
    assert decide(REPORT, others, FILES) == Act(12, REPORT)
    assert decide(REPORT, [said_by(ROBOT, REPORT.replace("\n", "\r\n"))], FILES) is None


def test_where_nothing_changes_it_is_silent_unless_it_has_spoken() -> None:
    assert decide(NOTHING, [], FILES) is None
    assert decide(NOTHING, [said_by(ROBOT, REPORT, 5)], FILES) == Act(5, NOTHING)
    assert decide(REPORT, [said_by(ROBOT, NOTHING, 5)], FILES) == Act(5, REPORT)


# ---- a report that somebody has tampered with


@pytest.mark.parametrize(
    "line",
    [
        "@everyone", "see https://evil.example", "[x](https://evil.example)",
        f"[`x`]({FILES}@evil.example/)",
        f"[`x`]({FILES}/../../../evil)[`y`](//evil)", "![x](https://evil.example/x.png)",
        f"![`x`]({FILES}/x.png)", "<img src=x>",
        "<!-- -->", "&#64;everyone <b>", "`open", "``a`", "#12", "GH-3", "www.evil.example",
        "deadbeef00", "| a | b |", "~~~",
        "\\`@x`", "[x][1]", "[1]: //evil.example", "javascript://x", "`a` `` b ``` @c ```` `",
    ],
)  # fmt: skip
def test_a_report_that_would_speak_is_refused(line: str) -> None:
    with pytest.raises(Refused):
        decide(f"{REPORT}\n{line}\n", [], FILES)


@pytest.mark.parametrize(
    "line", ["`@everyone`", "`` a`b @x ``", f"[`@x`]({FILES}/drills/%40x.yml)",
             "` <img> `: 400 m → 500 m (12%)", "**Danger gone.** Drill `x` no longer says."]
)  # fmt: skip
def test_what_is_fenced_may_stand(line: str) -> None:
    assert speaks(f"{REPORT}\n{line}\n", FILES) == ""


@pytest.mark.parametrize(
    "report",
    ["no mark", MARK.replace("-->", "x -->") + "\n", f" {REPORT}", MARK + "\n" + "x" * 65_536],
)
def test_what_is_no_report_is_refused(report: str) -> None:
    with pytest.raises(Refused):
        decide(report, [], FILES)


ENVIRONMENT = {
    "GITHUB_SERVER_URL": "https://github.com", "GITHUB_API_URL": "https://api.github.com",
    "GITHUB_REPOSITORY": "quillwater/almanac",
    "PULL_REQUEST": "12", "PROPOSAL": SHA, "GITHUB_TOKEN": "token",
}  # fmt: skip


@pytest.mark.parametrize(
    "name, value",
    [("PULL_REQUEST", value) for value in ("", "0", "-1", "1 2", "12\n", "1e3", "../1",
                                           "12/comments", "٣", "9" * 12)]
    + [("PROPOSAL", value) for value in ("", "main", "--output=x", SHA + "\n", SHA[:39],
                                         SHA.upper())]
    + [("GITHUB_REPOSITORY", "a/b/c"), ("GITHUB_API_URL", "file:///etc/passwd"),
       ("GITHUB_SERVER_URL", "https://x/../y")],
)  # fmt: skip
def test_an_environment_out_of_form_is_refused(name: str, value: str) -> None:
    assert Job.of(ENVIRONMENT).number == 12
    with pytest.raises(Refused):
        Job.of({**ENVIRONMENT, name: value})


# ---- over HTTP, and with git


@pytest.fixture
def host() -> Iterator[tuple[str, list[tuple[str, str, Any]], list[dict[str, Any]]]]:
    """A stand-in for the host: its address, what it was asked, and the comments that it holds."""
    asked: list[tuple[str, str, Any]] = []
    comments: list[dict[str, Any]] = []

    class Handler(BaseHTTPRequestHandler):
        def answer(self) -> None:
            length = int(self.headers.get("Content-Length") or 0)
            says = json.loads(self.rfile.read(length)) if length else None
            asked.append((self.command, self.path, says))
            page = int(self.path.rpartition("page=")[2]) if "page=" in self.path else 1
            found: Any = comments[(page - 1) * 100 : page * 100] if self.command == "GET" else {}
            raw = json.dumps(found).encode()
            self.send_response(200)
            self.send_header("Content-Length", str(len(raw)))
            self.end_headers()
            self.wfile.write(raw)

        do_GET = do_POST = do_PATCH = answer  # noqa: N815

        def log_message(self, *_: Any) -> None:
            pass

    server = HTTPServer(("127.0.0.1", 0), Handler)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}", asked, comments
    server.shutdown()
    server.server_close()


def test_it_comments_once_and_then_renews_that(
    host: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    address, asked, comments = host
    for name, value in {**ENVIRONMENT, "GITHUB_API_URL": address}.items():
        monkeypatch.setenv(name, value)
    report = tmp_path / "review.md"
    report.write_text(REPORT)
    assert SCRIPT["main"](["comment", str(report)]) == 0
    assert asked[-1] == ("POST", "/repos/quillwater/almanac/issues/12/comments", {"body": REPORT})
    comments += [said_by({"login": "coach", "type": "User"}, MARK, n) for n in range(150)] + [
        said_by(ROBOT, MARK, 999)
    ]
    assert SCRIPT["main"](["comment", str(report)]) == 0
    assert asked[-1] == ("PATCH", "/repos/quillwater/almanac/issues/comments/999", {"body": REPORT})
    report.write_text("")
    count = len([one for one in asked if one[0] != "GET"])
    assert SCRIPT["main"](["comment", str(report)]) == 0
    report.write_text(REPORT + "\n@everyone\n")
    assert SCRIPT["main"](["comment", str(report)]) == 1
    assert len([one for one in asked if one[0] != "GET"]) == count
    assert "Traceback" not in capsys.readouterr().err


def test_it_reviews_a_proposal_that_it_never_checks_out(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    origin, here = club(tmp_path / "origin"), tmp_path / "here"
    git(origin, "init", "--quiet", "--initial-branch", "main")
    git(origin, "add", "--all")
    git(origin, "commit", "--quiet", "--message", "base")
    git(tmp_path, "clone", "--quiet", str(origin), "here")
    edit(origin, KICK, "factor: 1.0", "factor: 1.1")
    (origin / "evil.sh").write_text("exit 1\n")
    git(origin, "add", "--all")
    git(origin, "commit", "--quiet", "--message", "proposal")
    head = git(origin, "rev-parse", "HEAD").strip()
    git(origin, "update-ref", "refs/pull/12/head", head)
    monkeypatch.chdir(here)
    monkeypatch.setenv("GITHUB_TOKEN", "token")
    seen = tmp_path / "environment"
    program = [
        "env",
        f"SEEN={seen}",
        "bash",
        "-c",
        'env > "$SEEN"; exec "$0" "$@"',
        str(ROOT / ".venv/bin/almanac"),
    ]
    job = Job.of({**ENVIRONMENT, "PROPOSAL": head})
    SCRIPT["review"](job, str(origin), here / "review.md", program)
    report = (here / "review.md").read_text("utf-8")
    assert (
        "1 changed" in report
        and f"[`evil.sh`](https://github.com/quillwater/almanac/blob/{head}/evil.sh)" in report
    )
    assert decide(report, [], job.files) == Act(None, report)
    assert (
        not (here / "evil.sh").exists()
        and "GITHUB_TOKEN" not in seen.read_text()
        and "x-access-token" not in seen.read_text()
    )
    with pytest.raises(Refused, match="moved on"):
        SCRIPT["review"](
            Job.of({**ENVIRONMENT, "PROPOSAL": SHA}), str(origin), here / "other.md", program
        )
    with pytest.raises(Refused):
        SCRIPT["review"](job, str(origin), here / "other.md", ["false"])
    assert not (here / "other.md").exists()


def test_the_mark_is_the_programs() -> None:
    assert SCRIPT["MARKS"] == (MARK, MARK_NOTHING)


# ---- the workflows


WORKFLOWS = {
    path.name: yaml.load(path.read_text("utf-8"), yaml.CSafeLoader)
    for path in (ROOT / ".github/workflows").glob("*.yml")
}
STEPS = [
    (name, job, step)
    for name, flow in WORKFLOWS.items()
    for job in flow["jobs"].values()
    for step in job["steps"]
]


def test_every_action_is_pinned_by_commit_with_its_version_beside() -> None:
    used = [
        line
        for path in (ROOT / ".github/workflows").glob("*.yml")
        for line in path.read_text("utf-8").splitlines()
        if "uses:" in line
    ]
    assert len(used) >= 10
    for line in used:
        assert re.search(r"uses: actions/[a-z-]+@[0-9a-f]{40} # v\d+\.\d+\.\d+(;|$)", line), line


def test_no_workflow_has_more_rights_than_it_says() -> None:
    writes = []
    for name, flow in WORKFLOWS.items():
        assert set(flow["permissions"].values()) <= {"read"}, name
        for job_name, job in flow["jobs"].items():
            rights = job.get("permissions", flow["permissions"])
            assert set(rights) <= {"contents", "pull-requests", "pages", "id-token"}
            writes += [(name, job_name, right) for right, may in rights.items() if may == "write"]
            assert "timeout-minutes" in job
    assert sorted(writes) == [
        ("publish.yml", "publish", "id-token"),
        ("publish.yml", "publish", "pages"),
        ("review.yml", "comment", "pull-requests"),
    ]
    said = (ROOT / ".github/workflows/review.yml").read_text("utf-8")
    assert "secrets." not in "".join(
        path.read_text("utf-8") for path in (ROOT / ".github/workflows").glob("*.yml")
    )
    assert (
        "`review` reads the repository and nothing else; `comment` reads it too and writes "
        "comments on pull requests" in said
    )


def test_what_runs_with_rights_runs_nothing_of_the_proposal() -> None:
    flow = WORKFLOWS["review.yml"]
    on = flow[True]  # YAML 1.1 reads `on` as true
    assert set(on) == {"pull_request_target"} and "paths" not in on["pull_request_target"]
    for _, _, step in (one for one in STEPS if one[0] == "review.yml"):
        if "checkout" in step.get("uses", ""):
            assert not {"ref", "repository"} & step["with"].keys()
        assert "cache" not in step.get("with", {})
    assert flow["jobs"]["comment"]["needs"] == "review"


def test_no_value_of_a_proposal_is_pasted_into_a_command_and_no_token_is_left_on_disk() -> None:
    for name, _, step in STEPS:
        assert "${{" not in step.get("run", ""), name
        if "checkout" in step.get("uses", ""):
            assert step["with"]["persist-credentials"] is False, name
        for value in step.get("env", {}).values():
            assert "${{" not in value or re.fullmatch(
                r"\$\{\{ github\.(token|event\.pull_request\.(number|head\.sha)) \}\}", value
            )


def test_what_a_file_says_gives_the_runner_no_command(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A line that begins with `::` is a command to whoever runs the check."""
    root = club(tmp_path / "club")
    text = (root / KICK).read_text("utf-8")
    said = (
        '"::error::x": 3\n"a\\n::stop-commands::x": 1\nxlevel: "a\\n::set-output '
        'name=x::y"\n"\\e[31m": 2\n'
    )
    (root / KICK).write_text(text + said, "utf-8")
    (root / "plans/sets/a,b:c\n::x.yml").write_text(text, "utf-8")
    assert main(["check", "--format", "github", "--root", str(root)]) == 1
    *lines, count, _ = capsys.readouterr().out.split("\n")
    assert len(lines) >= 5 and "errors" in count
    for line in lines:
        assert re.match(
            r"::(error|warning) file=[^,:]*(,line=\d+,col=\d+)?,title=[a-z0-9-]+::[^\x1b\r]", line
        ), line


# ---- who must agree


def owners(file: str) -> list[str]:
    """The owners of a file by .github/CODEOWNERS: those of the last line that fits, as git's ignore
    rules fit.
    """
    found: list[str] = []
    for line in (ROOT / ".github/CODEOWNERS").read_text("utf-8").splitlines():
        pattern, *names = line.split() or ["#"]
        if pattern.startswith("#"):
            continue
        form = re.escape(pattern.lstrip("/")).replace(r"\*\*/", "(.*/)?").replace(r"\*", "[^/]*")
        whole = form if "/" in pattern.strip("/") or pattern.startswith("/") else f"(.*/)?{form}"
        if re.fullmatch(whole, file):
            found = names
    return found


def tracked() -> list[str]:
    return subprocess.run(
        ["git", "ls-files", "-z"], cwd=ROOT, check=True, capture_output=True, text=True
    ).stdout.split("\0")[:-1]


def test_the_maintainers_own_everything_that_runs() -> None:
    files = tracked()
    runs = [
        file
        for file in files
        if not fnmatch.fnmatch(file, "drills/*.yml") and not fnmatch.fnmatch(file, "plans/*.yml")
    ]
    for part in (".github/workflows/review.yml", ".github/CODEOWNERS", ".ci/run",
                 "scripts/pull_request.py", "scripts/setup.sh",
                 "site_src/package.json", "mkdocs.yml", "pyproject.toml", "requirements.txt",
                 ".pre-commit-config.yaml", "tests/conftest.py",
                 ".vscode/settings.json"):  # fmt: skip
        assert part in runs
    new = [".gitattributes", "drills/.gitattributes", "plans/sets/.gitattributes", ".gitmodules",
           "Makefile", "conftest.py", "setup.py",
           "drills/skills/kicking/conftest.py", "plans/x.js", "sitecustomize.py",
           ".github/actions/x/action.yml", "tox.ini",
           "site_src/templates/x.j2", "drills/x.sh", "CODEOWNERS", "docs/CODEOWNERS", ".mailmap",
           ".npmrc"]  # fmt: skip
    for file in [*runs, *new]:
        assert owners(file) == ["@quillwater/maintainers"], file


def test_entries_have_coaches_and_limits_have_the_welfare_lead() -> None:
    entries = [file for file in tracked() if re.match(r"(drills|plans)/.*\.yml$", file)]
    assert len(entries) > 100
    for file in entries:
        assert owners(file) and "@quillwater/maintainers" not in owners(file), file
    for file in (
        "plans/policy.yml",
        "plans/club.yml",
        "drills/gear/fins.yml",
        "drills/vocabulary/hazards.yml",
    ):
        assert "@quillwater/welfare-leads" in owners(file)


def test_what_is_folded_away_speaks_no_more_than_the_rest() -> None:
    fold = "\n<details><summary>Figures that move: 1,204 lines</summary>\n\n- {}\n\n</details>\n"
    assert speaks(REPORT + fold.format("set `x`"), FILES) == ""
    assert speaks(REPORT + fold.format("@everyone"), FILES)
    assert speaks(REPORT + "<details open ontoggle=x><summary>a</summary>\n", FILES)
    assert speaks(REPORT + "<details><summary>a <b></summary>\n", FILES)
