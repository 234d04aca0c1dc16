"""A copy of an entry's text with other values and without some keys; every other byte stays."""

from __future__ import annotations

import re
from collections.abc import Collection

from almanac.source.edits.rewrite import Rewrites, rewritten
from almanac.source.reader import Document, read

_TOP_KEY = re.compile(r"[A-Za-z_]+:")


def copied(document: Document, words: Rewrites, without: Collection[str]) -> str | None:
    """The text with words in place of single values, and without top-level keys; None where it
    would not read back as just that.
    """
    whole = rewritten(document, words)
    if whole is None:
        return None
    kept, is_out = [], False
    for line in whole.splitlines(keepends=True):
        key = _TOP_KEY.match(line)
        if key:
            is_out = key[0][:-1] in without
        if not is_out:
            kept.append(line)
    text = "".join(kept)
    again, findings = read(text.encode("utf-8"), document.file)
    before, _ = read(whole.encode("utf-8"), document.file)
    if again is None or findings or before is None:
        return None
    left = {key: own for key, own in before.data.items() if key not in without}
    return text if again.data == left else None
