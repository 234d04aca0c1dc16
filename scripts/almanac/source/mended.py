"""An entry with the words that were surely meant in place of those that stand there."""

from __future__ import annotations

import yaml

from almanac.source.reader import Document, read
from almanac.source.rewrite import Rewrites, rewritten
from almanac.source.style import span
from almanac.source.taken_out import Spot, without_items

_EFFORT_PLANS = ("descend", "build", "rotate")


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
    for (*way, number), is_key in (use for use in words if use[0]):
        node = document.node(tuple(way))
        if is_key or not isinstance(node, yaml.SequenceNode) or not isinstance(number, int):
            continue
        said = [item.value for item in node.value]
        above = document.node(tuple(way[:-1])) if way and way[-1] in _EFFORT_PLANS else None
        if above is not None and len(above.value) == 1 and len({*said}) == 1:
            plain[span(text, above)] = said[0]
        elif above is None and said[number] in said[:number]:
            mark = node.value[number].start_mark
            spots.add((mark.line + 1, mark.column + 1))
    for (start, end), word in sorted(plain.items(), reverse=True):
        text = text[:start] + word + text[end:]
    return without_items(text, spots) if spots and not plain else text
