"""What is said of a file before any rule looks at the catalogue: each code with its explanation, as
the site shows it.
"""

from __future__ import annotations

READING_CODES: dict[str, str] = {
    # which files there are
    "bad-id": "An id is the file's name: lower-case letters, digits and single hyphens, at most "
    "60, and no device's name.",
    "cannot-read": "A file or folder that the computer will not read.",
    "case-clash": "In a proposal: two names that are one file on a computer which does not tell "
    "capitals, or forms of one letter, apart.",
    "duplicate-id": "Two files of one kind have the same name, say in two families.",
    "folder-as-entry": "A folder whose name ends in .yml.",
    "link": "A symbolic link. Entries are plain files in plain folders, so that nothing leads out "
    "of the catalogue or in a loop.",
    "marked-as-program": "In a proposal: an entry's file marked as a program to run.",
    "missing-file": "A file that everything stands on is not there: the club, the policy, or a "
    "vocabulary.",
    "no-family": "A drill beside the folders of families.",
    "not-a-file": "A pipe or a device in place of a file.",
    "not-a-folder": "A file in place of a folder of entries.",
    "stray-file": "A file among the entries that is none, or that nothing reads.",
    "stray-folder": "A folder where none belongs.",
    "submodule": "In a proposal: another repository in place of a folder of entries.",
    # the form of all entries
    "newer-form": "Entries that a newer program has written; nothing else is told of them.",
    "older-form": "Entries in the form of an older program; nothing else is told of them but how "
    "to bring them to the present form.",
    # what the file holds
    "blank-text": "A text of which nothing can be seen: blanks, zero-width or control characters.",
    "control-character": "A character that no eye sees and that changes how text reads: control "
    "characters and overrides of direction.",
    "empty-file": "A file without an entry.",
    "file-too-large": "An entry has at most 64 KiB.",
    "merge-conflict": "The marks that git leaves where two changes met.",
    "not-a-mapping": "A file that holds a list or a text, and no fields.",
    "not-utf8": "Bytes that are not UTF-8.",
    # strict YAML
    "alias": "YAML aliases are not used: what is meant is written out.",
    "anchor": "YAML anchors are not used.",
    "bad-key": "A field's name is a word.",
    "cut-text": "A comment that cuts a text short: YAML takes ' #' for one in any text without "
    "quotes.",
    "directive": "YAML directives (lines that begin with %) are not used.",
    "duplicate-key": "A field given twice, both lines named: plain YAML would keep the second and "
    "say nothing.",
    "long-number": "A number of more than 15 characters.",
    "merge-key": "YAML merge keys (<<) are not used.",
    "several-documents": "One entry a file.",
    "tab-indent": "A tab in the indent.",
    "tag": "YAML tags are not used.",
    "too-deep": "Nested more than 20 deep.",
    "yaml-syntax": "Text that is no sound YAML, told in plain words.",
    # the shape of an entry
    "bad-date": "A day is written YYYY-MM-DD, exists, and lies from 1900 to 2199.",
    "bad-form": "A text that does not have the form that its field asks for.",
    "bad-time": "A time is written m:ss, m:ss.t or h:mm:ss, or as a number of seconds.",
    "bad-value": "A value that the schema refuses in some other way.",
    "missing-key": "A field that an entry of this kind must have, or that another field asks for.",
    "moved-reference": "An id that has moved: the present one is named.",
    "moved-in-circle": "Ids that move round in a circle.",
    "not-together": "Two fields that exclude each other, say a send-off and a rest.",
    "out-of-range": "A number outside the range of its field.",
    "repeated-item": "One thing twice in a list that holds each once.",
    "too-few": "A list with fewer items than its field asks for.",
    "too-long": "A text longer than its field allows.",
    "too-many": "A list with more items than its field allows.",
    "too-short": "A text shorter than its field asks for.",
    "unknown-key": "A field that an entry of this kind does not have; the nearest is named, or the "
    "kind that has it.",
    "unknown-reference": "An id that no entry has; the nearest is named with its file.",
    "unknown-word": "A word that is not in its vocabulary; the nearest is named.",
    "wrong-type": "Text where a number belongs, a word where true or false belongs, and so on.",
    "wrong-value": "A field that can hold one value only, and holds another.",
    # what may be so and is hardly ever meant
    "bare-seconds": "A time without a colon: it is read as seconds, and may be minutes and "
    "seconds, or minutes.",
    "long-wait": "A send-off, a rest, a pause or a talk with hours in it: mostly it is m:ss, with "
    "seconds too many.",
    "stray-mark": "A text that ends in a comma or a semicolon, or in a quotation mark that opens "
    "nowhere: the sign is left over, or the rest of the text is missing. Or a line that goes on "
    "with the text above it in a list, where a dash may be missing.",
    # style, mended by almanac check --fix
    "key-order": "Fields in another order than the schema's.",
    "list-order": "A list that the alphabet orders, in another order.",
    "quoted-time": "A time in quotation marks that needs none.",
    # acceptances
    "acceptance-ended": "The day on which an acceptance ends has passed: an error where it "
    "is of an error of safety.",
    "acceptance-not-allowed": "An error of safety is accepted where the level of those who do it "
    "accepts none (the lowest never does), by a role that the policy does not name, or for longer "
    "than its acceptance_most.",
    "acceptance-of-error": "Only warnings and errors of safety can be accepted.",
    "acceptance-unneeded": "Nothing breaks the accepted check any more: the acceptance goes.",
    "unknown-check": "An acceptance of a check that does not exist.",
}
