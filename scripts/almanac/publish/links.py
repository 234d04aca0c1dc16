"""Links and anchors of the finished pages: what a page leads to has to be there.

MkDocs checks what stands in Markdown alone; most of our pages are HTML.
"""

from __future__ import annotations

import html
import posixpath
import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from urllib.parse import unquote, urlsplit

_SCRIPT_BODY = re.compile(r"(<script\b[^>]*>).*?</script>", re.DOTALL)


def _attribute(name: str) -> re.Pattern[str]:
    """An attribute within a tag: after it the tag ends before another begins. A pattern that begins
    with letters is looked for in a third of the time.
    """
    return re.compile(rf'{name}="(?<=\s{name}=")([^"<>]*)"(?=[^<>]*>)')


MISSING = "404.html"  # shown at any address: in a folder of the site "../" leads to the root, too
_UP = re.compile(r"^(?:\.\./)+")
_HREF, _SRC, _ID = map(_attribute, ("href", "src", "id"))


@dataclass
class LinkCheck:
    """The links and anchors of a site, gathered page by page; ``base`` is the path that its root
    has at the host, as ``/almanac/``.
    """

    base: str = "/"
    _links: dict[str, set[str]] = field(default_factory=dict)
    _anchors: dict[str, set[str]] = field(default_factory=dict)

    def add(self, file: str, text: str) -> None:
        """Take note of a page, by its file from the root of the site, in place of what it was."""
        plain = _SCRIPT_BODY.sub(r"\1", text)
        links = {*_HREF.findall(plain), *_SRC.findall(plain)}
        if file == MISSING:
            links = {_UP.sub("", link) for link in links}
        self._links[file] = links
        self._anchors[file] = set(_ID.findall(plain))

    def __len__(self) -> int:
        """How many pages are known."""
        return len(self._links)

    def take(self, other: LinkCheck) -> None:
        """Know of the pages that another check knows of."""
        self._links.update(other._links)
        self._anchors.update(other._anchors)

    def drop(self, file: str) -> None:
        """Forget a page."""
        self._links.pop(file, None)
        self._anchors.pop(file, None)

    def broken(self, files: Iterable[str]) -> Iterator[str]:
        """Every link of a page to what is not there, in a sentence; ``files`` is all that the site
        holds.
        """
        there = set(files)
        by_folder: dict[tuple[str, str], tuple[str, str]] = {}  # most links stand on many pages
        for page, links in sorted(self._links.items()):
            folder = posixpath.dirname(page)
            for link in sorted(links):
                if (folder, link) not in by_folder:
                    by_folder[folder, link] = self._target(folder, html.unescape(link))
                file, anchor = by_folder[folder, link]
                file = file or page
                if file not in there and f"{file}/index.html" not in there:
                    yield f"{page} leads to {link}, and {file} is not there"
                elif anchor and file in self._anchors and anchor not in self._anchors[file]:
                    yield f"{page} leads to {link}, and {file} has no place of that name"

    def _target(self, folder: str, link: str) -> tuple[str, str]:
        """File and anchor that a link on the pages of a folder leads to; "" for the page itself,
        and where it leads out of the site.

        What holds an equals sign is no anchor: a script of the page reads it, as the finder does.
        """
        parts = urlsplit(link)
        if parts.scheme or parts.netloc:
            return "", ""
        path = unquote(parts.path)
        if path.startswith("/"):
            path = path.removeprefix(self.base.rstrip("/")).lstrip("/") or "index.html"
        elif path:
            path = posixpath.normpath(posixpath.join(folder, path))
        fragment = unquote(parts.fragment)
        return path, "" if "=" in fragment or fragment == "top" else fragment
