"""YAML's own nodes, every scalar a text: what each of them is, is read by ``tree.py``."""

from __future__ import annotations

import operator
from typing import ClassVar

import yaml


class PlainLoader(yaml.CBaseLoader):
    """The base loader without the looks at resolvers of paths and of plain scalars, of which it has
    none: they took a third of the time to compose a file.
    """

    TAGS: ClassVar[dict[type[yaml.Node], str]] = {
        yaml.ScalarNode: yaml.CBaseLoader.DEFAULT_SCALAR_TAG,
        yaml.SequenceNode: yaml.CBaseLoader.DEFAULT_SEQUENCE_TAG,
        yaml.MappingNode: yaml.CBaseLoader.DEFAULT_MAPPING_TAG,
    }
    # Called before and after each node, for what they do to the loader alone: these do nothing, and
    # are called soonest.
    descend_resolver = staticmethod(operator.is_)  # type: ignore[assignment]
    ascend_resolver = staticmethod(bool)  # type: ignore[assignment]

    def resolve(self, kind: type[yaml.Node], value: object, implicit: object) -> str:
        """The tag of a node that names none."""
        return self.TAGS[kind]
