"""The Content-Security-Policy of every page, as a meta element: what the browser may load and run.

Scripts come from the site alone, and of the scripts that the theme writes into its pages only those
run whose hashes stand in the policy: `unsafe-inline` is not allowed. Styles come from the site
alone too; the theme has no style elements or style attributes of its own. Pictures may be `data:`
because the theme's style sheet holds its small icons so. Nothing at all comes from another host. A
meta element cannot say who may put the site into a frame: a host that can send headers should add
`frame-ancestors 'none'`.
"""

from __future__ import annotations

import base64
import hashlib
import re
from html import escape

_INLINE = re.compile(r"<script(?P<attributes>[^>]*)>(?P<code>.*?)</script>", re.DOTALL)
_HEAD = "<head>"


def with_policy(page: str) -> str:
    """A page with its policy; unchanged where it has no head."""
    meta = (
        f'<meta http-equiv="Content-Security-Policy" content="{escape(policy(page), quote=False)}">'
    )
    return page.replace(_HEAD, f"{_HEAD}\n    {meta}", 1)


def policy(page: str) -> str:
    """The policy of a page, with the hash of each script that stands in it."""
    hashes = " ".join(dict.fromkeys(script_hash(code) for code in inline_scripts(page)))
    rules = {
        "default-src": "'none'",
        "script-src": f"'self' {hashes}".rstrip(),
        "style-src": "'self'",
        "img-src": "'self' data:",
        "connect-src": "'self'",
        "worker-src": "'self'",
        "manifest-src": "'self'",
        "base-uri": "'none'",
        "form-action": "'none'",
    }
    return "; ".join(f"{name} {sources}" for name, sources in rules.items())


def inline_scripts(page: str) -> list[str]:
    """The code of every script that a browser would run from the page itself; data blocks are not
    run.
    """
    found = []
    for script in _INLINE.finditer(page):
        attributes = script["attributes"]
        if "src=" not in attributes and 'type="application/json"' not in attributes:
            found.append(script["code"])
    return found


def script_hash(code: str) -> str:
    """The source expression that allows one inline script, as CSP level 2 defines it."""
    digest = hashlib.sha256(code.encode()).digest()
    return f"'sha256-{base64.b64encode(digest).decode()}'"
