"""The Content-Security-Policy of every page, as a meta element: what the browser may load and run.

Everything comes from the site alone: scripts, styles, the face, pictures, requests, workers. No
script and no style stands in a page, so none that got into one would count. The search box of the
Bar asks a page of the site. Pictures may be `data:` because style sheets hold small marks so. A
meta element cannot say who may put the site into a frame: a host that can send headers should add
`frame-ancestors 'none'`.
"""

from __future__ import annotations

_RULES = {
    "default-src": "'none'",
    "script-src": "'self'",
    "style-src": "'self'",
    "img-src": "'self' data:",
    "font-src": "'self'",
    "connect-src": "'self'",
    "worker-src": "'self'",
    "manifest-src": "'self'",
    "base-uri": "'none'",
    "form-action": "'self'",
}
POLICY = "; ".join(f"{name} {sources}" for name, sources in _RULES.items())
_HEAD = "<head>"
_META = f'<meta http-equiv="Content-Security-Policy" content="{POLICY}">'


def with_policy(page: str) -> str:
    """A page with its policy; unchanged where it has no head."""
    return page.replace(_HEAD, f"{_HEAD}\n{_META}", 1)
