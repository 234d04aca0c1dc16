"""What can be amiss with a path in the catalogue, one finding each: no plain file, a stray, a bad
name.
"""

from __future__ import annotations

import re
import stat
import unicodedata

from almanac.findings import Finding, Place, error

MOST_ID = 60
_ID = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
# An ending that was meant for ".yml", also with one more that an editor has put behind it.
_NEARLY_YML = re.compile(r"\.y+a*m+l(\.[a-z]{2,4})?$|\.ym$|\.lym$", re.IGNORECASE)
_WRITTEN = re.compile(r"(.+)\.(?:docx?|odt|rtf|pages|pdf)", re.IGNORECASE)
_EDITORS = re.compile(r"~$|\.(?:bak|orig|rej|swp|tmp)$", re.IGNORECASE)
_COPY_MARK = re.compile(r"[ _-]*(\([0-9]+\)|copy)$", re.IGNORECASE)
# Names that one common operating system keeps for devices: such a file cannot be checked out there.
_DEVICE = re.compile(r"con|prn|aux|nul|com[0-9]|lpt[0-9]")


def by_mode(path: str, mode: int) -> Finding | None:
    """What keeps a path of this ``st_mode`` from being a plain file, if anything does."""
    if stat.S_ISREG(mode):
        return None
    if stat.S_ISLNK(mode):
        return link(path)
    return folder_as_entry(path) if stat.S_ISDIR(mode) else no_file(path)


def link(path: str) -> Finding:
    """A symbolic link, to a file or a folder: it could lead out of the catalogue, or round in a
    loop.
    """
    return error(
        "link",
        Place(path),
        "this is a link; entries are plain files in plain folders",
        "put the file itself here",
    )


def folder_as_entry(path: str) -> Finding:
    """A folder whose name ends as an entry's does."""
    return error(
        "folder-as-entry",
        Place(path),
        "this is a folder, named like an entry",
        "rename or remove it",
    )


def no_file(path: str) -> Finding:
    """A pipe, a socket or a device, which may never end."""
    return error("not-a-file", Place(path), "this is a pipe or a device, and no file", "remove it")


def no_folder(path: str) -> Finding:
    """A file where a folder of entries belongs."""
    message = "this is a file, and a folder of entries belongs here"
    return error("not-a-folder", Place(path), message, "rename it, and make the folder")


def unreadable(path: str, what: str, reason: str | None) -> Finding:
    """A file or folder that the computer will not read, with its reason."""
    message = f"the {what} cannot be read: {(reason or 'no reason is given').lower()}"
    return error(
        "cannot-read", Place(path), message, "let your user read it, or put it back as it was"
    )


def stray_file(path: str) -> Finding:
    """A file among entries that is none by its name's ending."""
    name = path.rpartition("/")[2]
    stem = _NEARLY_YML.sub("", name)
    is_bare = "." not in name and _ID.fullmatch(name) is not None
    hint = f"rename it {stem}.yml" if stem != name else "move it out of the catalogue"
    if is_bare:
        hint = f"if it is an entry, rename it {name}.yml; else {hint}"
    if written := _WRITTEN.fullmatch(name):
        hint = f"an entry is plain text: copy its words into {written[1]}.yml with a text editor"
    elif _EDITORS.search(name):
        hint = "delete it: an editor left it as a copy"
    return error(
        "stray-file", Place(path), "an entry's file ends in .yml, and this one does not", hint
    )


def no_family(path: str, folder: str) -> Finding:
    """An entry beside the folders of families."""
    message = "this stands in no family: each family has a folder of its own"
    return error("no-family", Place(path), message, f"move it into a folder below {folder}/")


def unprintable(folder: str, name: str) -> Finding:
    """A name that no terminal could show, told by its escapes."""
    shown = "".join(char if char.isprintable() else f"\\x{ord(char) & 0xFFFF:02x}" for char in name)
    message = "the name holds a character that cannot be shown"
    return error(
        "bad-id",
        Place(f"{folder}/{shown}"),
        message,
        "rename it: lower-case letters, digits and single hyphens",
    )


def is_id(name: str) -> bool:
    """Whether a name is in the style of ids."""
    return _ID.fullmatch(name) is not None


def plain_id(name: str) -> str:
    """A name in lower-case letters without accents, digits and single hyphens."""
    plain = unicodedata.normalize("NFKD", name.lower().replace("ß", "ss"))
    letters = "".join(own for own in plain if not unicodedata.combining(own))
    return re.sub(r"[^a-z0-9]+", "-", letters).strip("-")


def bad_name(name: str, path: str, what: str) -> Finding | None:
    """What is amiss with an entry's id, or with the name of a family's folder, if anything is."""
    ending = ".yml" if what == "file" else ""
    if not _ID.fullmatch(name):
        better = plain_id(_COPY_MARK.sub("", re.sub(r"(?i)(\.ya?ml)+$", "", name)))
        message = f"'{name}' is no id: an id is lower-case letters, digits and single hyphens"
        also = ", or delete it, if it is a copy" if _COPY_MARK.search(name) else ""
        return error(
            "bad-id",
            Place(path),
            message,
            f"rename the {what} {better}{ending}{also}" if better else f"rename the {what}",
        )
    if _DEVICE.fullmatch(name):
        return error(
            "bad-id",
            Place(path),
            f"'{name}' is a device's name on some computers",
            f"rename the {what}",
        )
    if len(name) > MOST_ID:
        return error(
            "bad-id",
            Place(path),
            f"the id has {len(name)} characters, at most {MOST_ID}",
            f"shorten the {what}'s name",
        )
    return None
