"""An entry with the words that were surely meant in place of those that stand there."""

from __future__ import annotations

import yaml

from almanac.source.edits.rewrite import Rewrites, rewritten
from almanac.source.edits.style import span
from almanac.source.edits.taken_out import Spot, without_items
from almanac.source.explain.hints import EFFORT_PLANS
from almanac.source.reader import DataPath, Document, read


def mended(document: Document, words: Rewrites) -> str | None:
    """The document's text with these words, none twice in a list because of it; None where it would
    not read back as that.
    """
    text = rewritten(document, words)
    return text and _once(text, document.file, words)


def _once(text: str, file: str, words: Rewrites) -> str:
    """A text without those of the words that were put into a list which has them already; an effort
    that goes from a word to the same one is that word.
    """
    document, _ = read(text.encode("utf-8"), file)
    assert document is not None, file
    spots, plain = set[Spot](), dict[tuple[int, int], str]()
    for (*way, number), is_key in ((_now(path, words), own) for (path, own) in words if path):
        node = document.node(tuple(way))
        if is_key or not isinstance(node, yaml.SequenceNode) or not isinstance(number, int):
            continue
        said = [item.value for item in node.value]
        above = document.node(tuple(way[:-1])) if way and way[-1] in EFFORT_PLANS else None
        if above is not None and len(above.value) == 1 and len({*said}) == 1:
            plain[span(text, above)] = said[0]
        elif above is None and said[number] in said[:number]:
            mark = node.value[number].start_mark
            spots.add((mark.line + 1, mark.column + 1))
    for (start, end), word in sorted(plain.items(), reverse=True):
        text = text[:start] + word + text[end:]
    return without_items(text, spots) if spots and not plain else text


def _now(path: DataPath, words: Rewrites) -> DataPath:
    """The way to a value where keys on it are written anew too."""
    return tuple(words.get((path[: at + 1], True), step) for at, step in enumerate(path))
