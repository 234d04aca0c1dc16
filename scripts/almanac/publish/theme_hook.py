"""A hook of MkDocs for the templates of its theme. It only makes the build quicker: they are kept
as Jinja has compiled them, and what comes out alike on every page of a folder is made once.
"""

from __future__ import annotations

import posixpath
from collections.abc import Callable, Iterator
from typing import Any

from jinja2 import Environment, Template
from jinja2.runtime import Context

from almanac.site.compiled_templates import CompiledTemplates

# Parts that hang on the folder of a page alone, where the page stands outside the navigation: no
# part of that is then the present one.
_ALIKE = ("nav", "tabs", "search", "palette")


def on_env(env: Environment, /, **_: Any) -> Environment:
    """Have the environment remember."""
    env.bytecode_cache = CompiledTemplates()
    for name in _ALIKE:
        _make_once(env.get_template(f"partials/{name}.html"))
    return env


def _make_once(template: Template) -> None:
    """Have a template of the theme give for a folder's pages what it gave for the first of them, as
    long as the navigation is the same.
    """
    made: dict[str, list[str]] = {}
    made_for: list[object] = [None]
    make: Callable[[Context], Iterator[str]] = template.root_render_func

    def remembered(context: Context) -> Iterator[str]:
        page, nav = context.get("page"), context.get("nav")
        if page is None or nav is None or page in nav.pages:
            yield from make(context)
            return
        if made_for[0] is not nav:
            made.clear()
            made_for[0] = nav
        folder = posixpath.dirname(page.url)
        if folder not in made:
            made[folder] = list(make(context))
        yield from made[folder]

    template.root_render_func = remembered
