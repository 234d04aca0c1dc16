"""A fixed corpus of plain MkDocs pages: what a build is measured beside, so that the machine's own
speed falls out of the figure.

The same pages come out everywhere and always; a change of a letter makes every ratio that was
recorded beside it worthless, so a test holds the corpus to its digest.
"""

from __future__ import annotations

import hashlib
import random
from collections.abc import Callable
from pathlib import Path

PAGES, SECTIONS, SENTENCES = 300, 6, 8
DIGEST = "68c2d28b838a4a9a43590f452e21dae0da96dbe5965660b2cdc74bc41a75ea20"
_TEXT = """
water wall lane length hand hip knee kick line breath turn clock rope deck still deep slow fast long
short left right first last under over along before after with from into both each hold press lift
roll reach rest count swim float drop ease start finish push glide catch carry
"""
_WORDS = _TEXT.split()
_SETTINGS = """site_name: Corpus
docs_dir: docs
site_dir: site
theme: mkdocs
use_directory_urls: false
markdown_extensions: [tables, toc]
"""


def write_corpus(folder: Path) -> Path:
    """The corpus below ``folder``. Returns the configuration that MkDocs is to be given."""
    docs = folder / "docs"
    docs.mkdir(parents=True)
    for file, text in corpus().items():
        (docs / file).write_text(text, "utf-8")
    settings = folder / "mkdocs.yml"
    settings.write_text(_SETTINGS, "utf-8")
    return settings


def corpus() -> dict[str, str]:
    """Every page by its file."""
    pages = {f"page-{number:03}.md": _page(number) for number in range(1, PAGES)}
    return {"index.md": _page(0), **pages}


def digest() -> str:
    """SHA-256 of the whole corpus and its settings."""
    hashed = hashlib.sha256(_SETTINGS.encode())
    for file, text in corpus().items():
        hashed.update(f"{file}\n{text}".encode())
    return hashed.hexdigest()


def _page(number: int) -> str:
    # random() alone is promised to give the same numbers in every version of Python.
    draw = random.Random(number).random
    parts = [f"# Page {number}\n\n{_paragraph(draw)}"]
    for section in range(1, SECTIONS + 1):
        other = int(draw() * PAGES)
        link = f"[page {other}]({f'page-{other:03}.md' if other else 'index.md'})"
        items = "\n".join(f"- {_sentence(draw)}" for _ in range(4))
        rows = "\n".join(f"| {_words(draw, 2)} | *{_words(draw, 3)}* |" for _ in range(3))
        parts.append(
            f"## Part {section}\n\n{_paragraph(draw)} See {link}.\n\n{items}\n\n"
            f"| What | How |\n| --- | --- |\n{rows}"
        )
    return "\n\n".join(parts) + "\n"


def _paragraph(draw: Callable[[], float]) -> str:
    return " ".join(_sentence(draw) for _ in range(SENTENCES))


def _sentence(draw: Callable[[], float]) -> str:
    return f"{_words(draw, 5).capitalize()} **{_words(draw, 2)}** {_words(draw, 4)}."


def _words(draw: Callable[[], float], number: int) -> str:
    return " ".join(_WORDS[int(draw() * len(_WORDS))] for _ in range(number))
