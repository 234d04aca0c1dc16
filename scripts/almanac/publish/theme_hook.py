"""A hook of MkDocs for the templates of its theme. It only makes the build quicker: they are kept
as Jinja has compiled them, and what comes out alike on every page of a folder is made once.
"""

from __future__ import annotations

import os
import posixpath
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any

from jinja2 import Environment, FileSystemLoader, Template
from jinja2.runtime import Context

from almanac.site.compiled_templates import CompiledTemplates

if TYPE_CHECKING:
    from mkdocs.config.defaults import MkDocsConfig

# Parts that hang on the folder of a page alone, where the page stands outside the navigation: no
# part of that is then the present one.
_ALIKE = ("nav", "tabs", "search", "palette")


class _Listed(FileSystemLoader):
    """Lists no template in a hidden folder, for MkDocs uses none: the theme has thousands of icons
    in one.
    """

    def list_templates(self) -> list[str]:
        """The names of the templates."""
        found: set[str] = set()
        for place in self.searchpath:
            for folder, folders, files in os.walk(place):
                folders[:] = [name for name in folders if not name.startswith(".")]
                found.update(Path(folder, file).relative_to(place).as_posix() for file in files)
        return sorted(found)


def on_config(config: MkDocsConfig, /, **_: Any) -> MkDocsConfig:
    """Have the theme's environment list its templates quickly."""
    make = config.theme.get_env

    def get_env() -> Environment:
        env = make()
        if type(env.loader) is FileSystemLoader:
            env.loader = _Listed(env.loader.searchpath)
        return env

    config.theme.get_env = get_env  # type: ignore[method-assign]
    return config


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
