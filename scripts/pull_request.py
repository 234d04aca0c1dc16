"""What .github/workflows/review.yml does with a pull request, in two steps of different rights.

``review FILE`` may read the repository: it fetches the proposal as git objects, has ``almanac
review`` read them, and writes the report. ``comment FILE`` may write comments: it takes that report
for data, which somebody may have tampered with, and makes one comment of it or brings the robot's
own up to date. It runs on Python alone.
"""

from __future__ import annotations

import base64
import json
import os
import re
import subprocess
import sys
import urllib.request
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

ROBOT = "github-actions[bot]"
MARK = "<!-- deck-almanac-review"  # what the first line of every report begins with
MARKS = (f"{MARK} -->", f"{MARK}: nothing -->")
MOST = 65_536  # characters of a comment
_LEFT = "refs/proposal/head"
# A code span of one line, by CommonMark's rule: as many ticks at its end as at its start.
_SPAN = re.compile(r"(?<!`)(`+)(?!`)[^\n]*?(?<!`)\1(?!`)")
# What a host makes something of outside code: mentions, markup, pictures, addresses, numbers of
# issues, commits.
_SPEAKS = re.compile(
    r"[@<>`\\]|!\[|\]\[|\]:|://|\bwww\.|#\d|\bGH-\d|\b[0-9a-f]{7,40}\b|^\s*\||^\s*~~~",
    re.IGNORECASE | re.MULTILINE,
)


# A piece that is folded away: the program's own words and numbers, on a line of their own.
_FOLD = re.compile(r"^(<details><summary>[A-Za-z0-9 ,:]+</summary>|</details>)$", re.MULTILINE)


class Refused(Exception):
    """What the workflow was given is not what it takes; the message says what."""


@dataclass(frozen=True)
class Job:
    """The pull request that a run is about, as GitHub itself says in the environment."""

    server: str
    api: str
    repository: str
    number: int
    proposal: str
    token: str

    @classmethod
    def of(cls, environment: Mapping[str, str]) -> Job:
        """The job of an environment. Raises Refused where a value does not have its form."""
        return cls(
            _formed(environment, "GITHUB_SERVER_URL", r"https://[\w.-]+"),
            _formed(environment, "GITHUB_API_URL", r"https?://[\w.:/-]+"),
            _formed(environment, "GITHUB_REPOSITORY", r"[\w.-]+/[\w.-]+"),
            int(_formed(environment, "PULL_REQUEST", r"[1-9][0-9]{0,8}")),
            _formed(environment, "PROPOSAL", r"[0-9a-f]{40}|[0-9a-f]{64}"),
            _formed(environment, "GITHUB_TOKEN", r"[\x21-\x7e]+"),
        )

    @property
    def files(self) -> str:
        """Where the proposal's files can be looked at."""
        return f"{self.server}/{self.repository}/blob/{self.proposal}"


def _formed(environment: Mapping[str, str], name: str, form: str) -> str:
    value = environment.get(name, "")
    if not re.fullmatch(form, value, re.ASCII):
        raise Refused(f"{name} is not as it should be")
    return value


# ---- the step that may read


def review(job: Job, remote: str, to: Path, almanac: list[str]) -> None:
    """Write the report on a proposal. Raises Refused where it cannot be fetched or read."""
    basic = base64.b64encode(f"x-access-token:{job.token}".encode()).decode()
    access = {
        "GIT_CONFIG_COUNT": "1",
        "GIT_CONFIG_KEY_0": f"http.{job.server}/.extraheader",
        "GIT_CONFIG_VALUE_0": f"AUTHORIZATION: basic {basic}",
    }
    what = f"+refs/pull/{job.number}/head:{_LEFT}"
    _run(["git", "fetch", "--no-tags", "--no-recurse-submodules", remote, what], access)
    if _run(["git", "rev-parse", _LEFT]).strip() != job.proposal:
        raise Refused("the proposal has moved on: the run for its newer state tells of it")
    base = _run(["git", "merge-base", "HEAD", job.proposal]).strip()
    report = _run(
        [*almanac, "review", base, job.proposal, "--markdown", "--links", job.files], fine=(0, 1)
    )
    if not report.startswith(MARK):
        raise Refused("almanac review gave no report")
    to.write_text(report, "utf-8")


def _run(
    command: list[str], more: Mapping[str, str] | None = None, fine: tuple[int, ...] = (0,)
) -> str:
    """What a command prints; the token is in nothing's reach but git's."""
    own = {name: value for name, value in os.environ.items() if name != "GITHUB_TOKEN"}
    done = subprocess.run(command, env={**own, **(more or {})}, capture_output=True, check=False)
    if done.returncode not in fine:
        raise Refused(
            f"{command[0]} {command[1]}: {done.stderr.decode('utf-8', 'replace').strip()}"
        )
    return done.stdout.decode("utf-8")


# ---- the step that may write


@dataclass(frozen=True)
class Act:
    """What to do: a comment's id, or None for a new one, and its text."""

    comment: int | None
    text: str


def decide(report: str, comments: Iterable[Mapping[str, Any]], files: str) -> Act | None:
    """What to do about a report; None where there is nothing to say or it is said already.

    A comment is the robot's own where the robot wrote it and it begins with the mark: no one
    else's is ever written over. Raises Refused where the report is none.
    """
    if not report.strip():
        return None
    first = report.split("\n", 1)[0]
    if first not in MARKS or len(report) > MOST:
        raise Refused("this is no report of a review, or one longer than a comment")
    if said := speaks(report, files):
        raise Refused(f"the report would say more than it should: {said!r}")
    own = next((comment for comment in comments if _is_own(comment)), None)
    if own is None:
        return Act(None, report) if first == MARKS[0] else None
    if str(own["body"]).replace("\r\n", "\n").strip() == report.strip():
        return None
    return Act(int(own["id"]), report)


def _is_own(comment: Mapping[str, Any]) -> bool:
    user = comment.get("user") or {}
    is_robot = user.get("login") == ROBOT and user.get("type") == "Bot"
    return is_robot and str(comment.get("body") or "").startswith(MARK)


def speaks(report: str, files: str) -> str:
    """What of a report a host would make something of, outside code and but for links to ``files``;
    "" where there is nothing.
    """
    rest = report.split("\n", 1)[1] if "\n" in report else ""
    rest = _FOLD.sub("FOLD", rest)
    rest = _SPAN.sub("CODE", rest)
    rest = re.sub(
        rf"(?<!!)\[CODE\]\({re.escape(files)}/[\w./%~#-]*\)", "LINK", rest, flags=re.ASCII
    )
    found = _SPEAKS.search(rest) or re.search(r"\]\(", rest)
    return rest[max(0, found.start() - 20) : found.end() + 20] if found else ""


Ask = Callable[[str, str, Any], Any]


def comment(job: Job, report: str, ask: Ask) -> str:
    """Make or renew the comment; what was done, in a word or two. ``ask`` sends a request: method,
    address, what it says.
    """
    there = f"{job.api}/repos/{job.repository}/issues"
    comments: list[Mapping[str, Any]] = []
    for page in range(1, 101):
        some = ask("GET", f"{there}/{job.number}/comments?per_page=100&page={page}", None)
        comments += some
        if len(some) < 100:
            break
    act = decide(report, comments, job.files)
    if act is None:
        return "nothing to say"
    if act.comment is None:
        ask("POST", f"{there}/{job.number}/comments", {"body": act.text})
        return "commented"
    ask("PATCH", f"{there}/comments/{act.comment}", {"body": act.text})
    return "renewed the comment"


def _asker(token: str) -> Ask:
    def ask(method: str, address: str, says: Any) -> Any:
        request = urllib.request.Request(  # noqa: S310 (https alone: Job.of holds the address to it)
            address,
            data=None if says is None else json.dumps(says).encode(),
            method=method,
            headers={
                "Authorization": f"Bearer {token}",
                "Accept": "application/vnd.github+json",
                "X-GitHub-Api-Version": "2022-11-28",
            },
        )
        with urllib.request.urlopen(request, timeout=30) as answer:  # noqa: S310
            return json.load(answer)

    return ask


def main(arguments: list[str]) -> int:
    """0 where all is done; 1, with a sentence, where it is not."""
    step, file = arguments
    try:
        job = Job.of(os.environ)
        if step == "review":
            remote = f"{job.server}/{job.repository}"
            review(job, remote, Path(file), [".venv/bin/almanac"])
        else:
            print(comment(job, Path(file).read_text("utf-8"), _asker(job.token)))
    except (Refused, OSError, UnicodeDecodeError) as problem:
        print(f"pull request: {problem}", file=sys.stderr)
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
