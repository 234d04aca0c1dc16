"""What is said of each complaint of the YAML parser, in words of this catalogue."""

from __future__ import annotations

SIMPLE = (
    (
        "expected '-' indicator",
        "this line is not part of the list above it",
        "line its indent up, or begin it with '- '",
    ),
    ("cannot start any token", "'{char}' cannot begin a text", "put the text in quotes"),
    (
        "mapping keys are not allowed",
        "'{char}' cannot begin a text here",
        "put the text in quotes; what is not known yet is left out with its field",
    ),
    (
        "block sequence entries",
        "a list cannot begin on the line of its field",
        "begin it on the next line, or write [a, b]",
    ),
    (
        "escape character",
        "this backslash means nothing",
        "write two backslashes, or use single quotes",
    ),
    (
        "hexdecimal number",
        "this backslash wants digits after it",
        "write two backslashes, or use single quotes",
    ),
)
SINCE = (
    (
        "unexpected end of stream",
        "a quotation mark that is never closed",
        "add the closing quotation mark",
    ),
    (
        "expected ':'",
        "a line without a colon among the fields",
        "write 'field: value', or indent what goes on a text",
    ),
    (
        "alphabetic or numeric character",
        "a text cannot begin with '*' or '&'",
        "put the text in quotes",
    ),
    (
        "document separator",
        "a quotation mark that is never closed",
        "add the closing quotation mark",
    ),
)
OTHER_CODES = (
    (
        "directive name",
        "directive",
        "YAML directives are not used here",
        "remove the line that begins with '%'",
    ),
    (
        "incompatible YAML document",
        "directive",
        "YAML directives are not used here",
        "remove the line that begins with '%'",
    ),
    (
        "maximum nesting depth",
        "too-deep",
        "nested more than 20 deep",
        "flatten it: an entry never needs as much",
    ),
    (
        "undefined tag handle",
        "tag",
        "'!' begins a tag; tags are not used here",
        "put text that begins with '!' in quotes",
    ),
)
