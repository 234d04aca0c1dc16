"""Templates as Jinja compiles them, kept beside them as Python keeps its own byte code."""

from __future__ import annotations

import os
from pathlib import Path

from jinja2 import BytecodeCache
from jinja2.bccache import Bucket
from jinja2.compiler import CodeGenerator, Frame
from jinja2.nodes import Expr

from almanac.cache import Cache

_BESIDE = "__pycache__"
_MOST_BYTES = 4_000_000


class FinalizedOnce(CodeGenerator):
    """Writes code that has each expression made safe by the environment's ``finalize`` alone, which
    gives ``Markup``; Jinja would escape that again, and find nothing to do.
    """

    def _output_child_pre(
        self, node: Expr, frame: Frame, finalize: CodeGenerator._FinalizeInfo
    ) -> None:
        if finalize.src is None:
            super()._output_child_pre(node, frame, finalize)
        else:
            self.write(finalize.src)

    def _output_child_post(
        self, node: Expr, frame: Frame, finalize: CodeGenerator._FinalizeInfo
    ) -> None:
        if finalize.src is None:
            super()._output_child_post(node, frame, finalize)
        else:
            self.write(")")


class CompiledTemplates(BytecodeCache):
    """The compiled templates of a folder, by name, place and source; each is compiled anew where
    one differs. In a folder that cannot be written to they go to the user's cache.
    """

    def __init__(self, folder: Path) -> None:
        own = folder if os.access(folder, os.W_OK) else None
        self._cache = Cache(_BESIDE if own else "templates", folder=own, most_bytes=_MOST_BYTES)

    def load_bytecode(self, bucket: Bucket) -> None:
        """Called by Jinja before it compiles a template."""
        stored = self._cache.get(f"{bucket.key} {bucket.checksum}")
        if stored is not None:
            bucket.bytecode_from_string(stored)

    def dump_bytecode(self, bucket: Bucket) -> None:
        """Called by Jinja when it has compiled a template."""
        self._cache.put(f"{bucket.key} {bucket.checksum}", bucket.bytecode_to_string())
        self._cache.trim()
