"""What the YAML parser cannot follow, or follows otherwise than it looks, told by its cause: the
slip of a hand, and where it is.

``finding.syntax_finding`` asks, in this order: lines from elsewhere, signs that only look like
plain ones, levels, what trying finds, slips in a line; then what the parser itself says.
"""
