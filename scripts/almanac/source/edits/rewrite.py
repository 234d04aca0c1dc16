"""Single words of an entry written anew: an id, a word of a vocabulary. Comments, layout and every
other byte stay.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from typing import Any

import yaml

from almanac.source.edits.style import problems_marked, span
from almanac.source.reader import DataPath, Document, read
from almanac.source.scalars import name


@dataclass(frozen=True)
class Use:
    """A place in a document that names an entry: the way to it, whether it is a key that does so,
    the kind and the id that it names.
    """

    path: DataPath
    is_key: bool
    kind: str
    id: str


def uses(document: Document, kind: str) -> Iterator[Use]:
    """Every place of a document at which its schema takes an id, once each."""
    found = {}
    for problem in problems_marked(document, kind, "reference"):
        if isinstance(problem.instance, str):
            is_key = "propertyNames" in problem.absolute_schema_path
            path = tuple(problem.absolute_path) + ((problem.instance,) if is_key else ())
            found[path, is_key] = Use(path, is_key, str(problem.validator_value), problem.instance)
    return iter(found.values())


Rewrites = Mapping[tuple[DataPath, bool], str]
"""By the way to a value, and whether its key is meant: the word that takes its place."""


def rewritten(document: Document, words: Rewrites) -> str | None:
    """The document's text with these words in place of what stands there; None where the text would
    not read back as just that.
    """
    edits = []
    for (path, is_key), word in words.items():
        node = key_node(document, path) if is_key else document.node(path)
        if not isinstance(node, yaml.ScalarNode) or node.style in {"|", ">"}:
            return None
        edits.append((span(document.text, node), _written(word, node)))
    text = document.text
    for (start, end), word in sorted(edits, reverse=True):
        text = text[:start] + word + text[end:]
    again, _ = read(text.encode("utf-8"), document.file)
    expected = with_words(document.data, words)
    return text if again is not None and again.data == expected else None


def _written(word: str, old: yaml.ScalarNode) -> str:
    """A word as it stands in place of another: quoted as that one, or plain as a day is in place of
    a day.
    """
    if old.style:
        return f"{old.style}{word}{old.style}"
    kind = type(yaml.safe_load(word))
    return word if kind is date and kind is type(yaml.safe_load(old.value)) else name(word)


def renumbered(document: Document, numbers: Mapping[DataPath, str]) -> str | None:
    """The document's text with these numbers or times in place of those that stand there; None
    where it would not read back as just that.
    """
    edits = [(span(document.text, document.node(path)), text) for path, text in numbers.items()]
    text = document.text
    for (start, end), own in sorted(edits, reverse=True):
        text = text[:start] + own + text[end:]
    again, findings = read(text.encode("utf-8"), document.file)
    if again is None or findings:
        return None
    return text if but_for(again.data, numbers) == but_for(document.data, numbers) else None


def but_for(data: Any, paths: Collection[DataPath], path: DataPath = ()) -> Any:
    """Data without the values at some paths."""
    if path in paths:
        return None
    if isinstance(data, dict):
        return {key: but_for(value, paths, (*path, key)) for key, value in data.items()}
    if isinstance(data, list):
        return [but_for(value, paths, (*path, number)) for number, value in enumerate(data)]
    return data


def key_node(document: Document, path: DataPath) -> yaml.Node:
    """The key that the last step of the way to a value names."""
    above = document.node(path[:-1])
    assert isinstance(above, yaml.MappingNode)
    found: yaml.Node = next(key for key, _ in above.value if key.value == path[-1])
    return found


def with_words(data: Any, words: Rewrites, path: DataPath = ()) -> Any:
    """Data with these words in place of what stands there."""
    if isinstance(data, dict):
        return {
            words.get(((*path, key), True), key): with_words(value, words, (*path, key))
            for key, value in data.items()
        }
    if isinstance(data, list):
        return [with_words(value, words, (*path, number)) for number, value in enumerate(data)]
    return words.get((path, False), data)
