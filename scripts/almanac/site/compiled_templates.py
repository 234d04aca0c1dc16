"""Templates as Jinja has compiled them, kept for the next run."""

from __future__ import annotations

from jinja2 import BytecodeCache
from jinja2.bccache import Bucket

from almanac.cache import Cache


class CompiledTemplates(BytecodeCache):
    """Compiled templates by name, place and source; each is compiled anew where one differs."""

    def __init__(self) -> None:
        self._cache = Cache("templates")

    def load_bytecode(self, bucket: Bucket) -> None:
        """Called by Jinja before it compiles a template."""
        stored = self._cache.get(f"{bucket.key} {bucket.checksum}")
        if stored is not None:
            bucket.bytecode_from_string(stored)

    def dump_bytecode(self, bucket: Bucket) -> None:
        """Called by Jinja when it has compiled a template."""
        self._cache.put(f"{bucket.key} {bucket.checksum}", bucket.bytecode_to_string())
