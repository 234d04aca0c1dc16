"""A hook of MkDocs that keeps the theme's templates as Jinja has compiled them. It only makes the
build quicker.
"""

from __future__ import annotations

from typing import Any

from jinja2 import Environment

from almanac.site.compiled_templates import CompiledTemplates


def on_env(env: Environment, /, **_: Any) -> Environment:
    """Take compiled templates from the store of earlier runs."""
    env.bytecode_cache = CompiledTemplates()
    return env
