"""A file's bytes made into text, and what can go wrong on the way.

YAML's line breaks and a text editor's differ in three rare characters (next line, line separator, paragraph
separator). They are refused like control characters, so that a line number always means the line an editor shows.
"""

from __future__ import annotations

import os
import re
import stat
from pathlib import Path

from sourcing.files.findings import Finding, Mistakes, Place
from sourcing.files.nearest import nearest

_NOT_TEXT = re.compile("[^\t\n\r\x20-\x7e\xa0-\u2027\u202a-\ud7ff\ue000-\ufefe\uff00-\ufffd\U00010000-\U0010ffff]")
_LINE_BREAK = re.compile("\r\n|\r|\n")
_LOOKED_AT_FOR_BINARY = 8192


def read_text(file: str) -> str:
    """The text of a file, without a byte order mark.

    Raises `Mistakes` with one finding where the file is missing, is no file, may not be read, or is not UTF-8 text.
    """
    return text_of(read_raw(file), file)


def read_raw(file: str) -> bytes:
    """The bytes of a file. Raises `Mistakes` with one finding where it is missing, is no file or may not be read."""
    try:
        return _read_bytes(file)
    except (FileNotFoundError, NotADirectoryError):
        raise Mistakes((missing(file, "a file"),)) from None
    except (OSError, ValueError) as error:
        raise Mistakes((trouble(file, error),)) from None


def text_of(raw: bytes, file: str) -> str:
    """The text that a file's bytes are, without a byte order mark. Raises `Mistakes` where they are not UTF-8 text."""
    text = _decoded(raw, file)
    if wrong := _NOT_TEXT.search(text):
        place = place_at(text, wrong.start(), file)
        found = f"a character that is not text ({ord(wrong[0]):#06x})"
        raise Mistakes((Finding(place, found, "letters, figures and signs; delete it"),))
    return text


def missing(path: str, what: str) -> Finding:
    """That nothing stands at a path, with the nearest names in its folder."""
    folder = os.path.dirname(path)
    if folder and not os.path.isdir(folder):
        return Finding(Place(path), f"no folder {folder}", f"{what} in a folder that is there", _names_like(folder))
    return Finding(Place(path), "nothing of that name", what, _names_like(path))


def trouble(path: str, error: OSError | ValueError) -> Finding:
    """What the disk answered, in words."""
    if isinstance(error, PermissionError):
        return Finding(Place(path), "you may not read it", "leave to read it; look at who owns it and its permissions")
    if isinstance(error, IsADirectoryError):
        return Finding(Place(path), "a folder", "a file")
    if isinstance(error, NotADirectoryError):
        return Finding(Place(path), "a file", "a folder")
    reason = (error.strerror if isinstance(error, OSError) else None) or "that is no name for a file"
    return Finding(Place(path), f"it cannot be read ({reason.lower()})", "a file that can be read")


def place_at(text: str, offset: int, file: str) -> Place:
    """The line and column, from 1, of an offset in the text."""
    before = _LINE_BREAK.split(text[:offset])
    return Place(file, len(before), len(before[-1]) + 1)


def _read_bytes(file: str) -> bytes:
    mode = os.stat(file).st_mode
    if stat.S_ISDIR(mode):
        raise IsADirectoryError
    if not (stat.S_ISREG(mode) or stat.S_ISFIFO(mode)):
        raise OSError(0, "a device, not a file")
    with open(file, "rb") as stream:
        return stream.read()


def _names_like(path: str) -> tuple[str, ...]:
    folder, name = os.path.split(path.rstrip("/"))
    try:
        names = sorted(os.listdir(folder or "."))
    except (OSError, ValueError):
        return ()
    stems = {Path(found).stem: found for found in names if found != name}
    return tuple(str(Path(folder, stems[stem])) for stem in nearest(Path(name).stem, stems))


def _decoded(raw: bytes, file: str) -> str:
    if raw.startswith((b"\xff\xfe", b"\xfe\xff")):
        raise Mistakes((Finding(Place(file), "text in UTF-16", "text in UTF-8; save the file again as UTF-8"),))
    if b"\0" in raw[:_LOOKED_AT_FOR_BINARY]:
        raise Mistakes((Finding(Place(file), "bytes that are not text", "a text file, in UTF-8"),))
    try:
        return raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        before = raw[: error.start].decode("utf-8-sig", "replace")
        found = f"a byte that is not UTF-8 text ({raw[error.start]:#04x})"
        raise Mistakes(
            (Finding(place_at(before, len(before), file), found, "text in UTF-8; save the file again as UTF-8"),)
        ) from None
