"""Templates, and the one place where text from entries is made safe for Markdown and HTML alike."""

from __future__ import annotations

import html
import json
import re
from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined, TemplateNotFound
from markupsafe import Markup

from almanac.arithmetic.brief import IN_FULL
from almanac.cache import digest
from almanac.site.compiled_templates import CompiledTemplates, FinalizedOnce

# Everything that HTML, Markdown or one of the Markdown extensions could take for markup.
_SPECIAL = re.compile(r"[&<>\"'`\\*_{}\[\]#|~^=$!@]")


def safe(value: Any) -> Markup:
    """Text that shows as it was written, in a Markdown page or an HTML attribute. None shows as
    nothing.
    """
    if type(value) is str:  # as nearly all are
        return _safe(value)
    if isinstance(value, Markup):
        return value
    return _safe("" if value is None else str(value))


# The same words, times and numbers stand on many pages.
@lru_cache(maxsize=2**15)
def _safe(text: str) -> Markup:
    return Markup(_SPECIAL.sub(_reference, " ".join(text.split())))


def _reference(special: re.Match[str]) -> str:
    return f"&#{ord(special[0])};"


def front_matter(**fields: Any) -> Markup:
    """A page's front matter. Texts are escaped for the theme, which puts them into HTML as they
    are.
    """
    lines = [
        f"{name}: {json.dumps(_escaped(value), ensure_ascii=False)}"
        for name, value in fields.items()
        if value not in (None, "", ())
    ]
    return Markup("\n".join(["---", *lines, "---"]))


def _escaped(value: Any) -> Any:
    if isinstance(value, str):
        return html.escape(value)
    if isinstance(value, dict):
        return {name: _escaped(inner) for name, inner in value.items()}
    return [_escaped(item) for item in value] if isinstance(value, (list, tuple)) else value


def fingerprint(text: str) -> str:
    """Eight letters by which two printed cards that say other things can be told apart."""
    return digest(text).hex()[:8]


def script_json(value: Any) -> Markup:
    """JSON to stand inside a script element: nothing in it can end the element, or a Markdown
    block.
    """
    text = json.dumps(value, ensure_ascii=False, separators=(",", ":"))
    return Markup(text.replace("<", "\\u003c").replace(">", "\\u003e").replace("&", "\\u0026"))


_OF_EVERY_DICT = frozenset(dir(dict))


class _Environment(Environment):
    code_generator_class = FinalizedOnce

    def getattr(self, obj: Any, attribute: str) -> Any:
        """As Jinja's, which first looks for an attribute: a dictionary has few, and to find none
        takes long.
        """
        if type(obj) is dict and attribute in obj and attribute not in _OF_EVERY_DICT:
            return obj[attribute]
        try:
            return getattr(obj, attribute)
        except AttributeError:
            return super().getattr(obj, attribute)


class Templates:
    """The page templates of one folder."""

    def __init__(self, folder: Path) -> None:
        self._environment = _Environment(
            loader=FileSystemLoader(folder),
            autoescape=True,
            finalize=safe,
            undefined=StrictUndefined,
            trim_blocks=True,
            lstrip_blocks=True,
            keep_trailing_newline=True,
            bytecode_cache=CompiledTemplates(folder),
            auto_reload=False,  # it would ask for the file of each at every page
        )
        self._environment.filters["fingerprint"] = fingerprint
        self._environment.globals |= {"front_matter": front_matter, "in_full": IN_FULL}

    def page(self, name: str, context: Mapping[str, Any]) -> str:
        """The text of a page. Raises jinja2.UndefinedError where the template asks for what is not
        there, LookupError where a template is missing.
        """
        try:
            return self._environment.get_template(f"{name}.md.j2").render(context)
        except TemplateNotFound as missing:  # an OSError, which would pass for one of the disk
            raise LookupError(f"no template {missing.message}") from missing
