"""A failed keyword of a schema, told as findings: what is wrong, and what to write. ``keywords``
has one function a keyword; the hints ask ``meant`` and ``said``.
"""
