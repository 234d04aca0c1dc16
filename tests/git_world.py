"""Repositories for tests: git by nobody in particular, whatever the machine's own settings are."""

from __future__ import annotations

import subprocess
from pathlib import Path

_SETTINGS = (
    "user.name=Head coach", "user.email=coach@club.example", "commit.gpgsign=false",
    "core.autocrlf=false", "protocol.file.allow=always",
)  # fmt: skip


def git(root: Path, *arguments: str, given: bytes = b"") -> str:
    """What git prints in a folder, without the end of its last line."""
    settings = [word for setting in _SETTINGS for word in ("-c", setting)]
    command = ["git", "-C", str(root), *settings, *arguments]
    return (
        subprocess.run(command, check=True, capture_output=True, input=given)
        .stdout.decode()
        .strip()
    )


def committed(root: Path) -> Path:
    """The folder as a repository whose branch ``main`` holds all of it in one commit."""
    git(root, "init", "--quiet", "--initial-branch", "main")
    git(root, "add", "--all")
    git(root, "commit", "--quiet", "--message", "base")
    return root
