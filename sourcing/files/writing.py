"""A new file written whole or not at all.

The bytes go to a hidden file in the same folder, are flushed to the disk, and take their name in one step. Whatever
goes wrong before that leaves the folder as it was.
"""

from __future__ import annotations

import errno
import os
import tempfile
from contextlib import suppress
from pathlib import Path

from sourcing.files.disk import missing
from sourcing.files.findings import Finding, Mistakes, Place
from sourcing.files.replacing import flush_folder, refuse_if_read_only, told_of_writing

_PERMISSIONS = 0o666


def write_file(file: str, content: bytes) -> None:
    """Write the bytes under that name, in place of a file that has it.

    Raises `Mistakes` with one finding where the name is a folder's, its folder is not there, or the disk refuses; then
    nothing was changed.
    """
    refuse_unwritable(file)
    path = Path(os.path.realpath(file))
    with told_of_writing(file):
        descriptor, new = tempfile.mkstemp(prefix=f".{path.name[:40]}.", suffix=".new", dir=path.parent)
        try:
            with open(descriptor, "wb") as stream:
                stream.write(content)
                os.fchmod(descriptor, _permissions(path))
                stream.flush()
                os.fsync(descriptor)
            os.replace(new, path)
        finally:
            with suppress(FileNotFoundError):
                os.unlink(new)
    flush_folder(path.parent)


def refuse_unwritable(file: str) -> None:
    """Raise `Mistakes` where the file cannot be written, as far as that shows before it is tried."""
    path = Path(os.path.realpath(file))
    if path.is_dir():
        raise Mistakes((Finding(Place(file), "a folder", "a name for a new file; nothing was written"),))
    if not path.parent.is_dir():
        raise Mistakes((missing(file, "a new file"),))
    with told_of_writing(file):
        if path.exists() and not path.is_file():
            raise OSError(errno.EINVAL, "no plain file")
        refuse_if_read_only(*(str(each) for each in (path, path.parent) if each.exists()))


def _permissions(path: Path) -> int:
    """Those of the file that is replaced, else what the user's mask leaves."""
    if path.exists():
        return os.stat(path).st_mode & 0o777
    mask = os.umask(0)
    os.umask(mask)
    return _PERMISSIONS & ~mask
