"""New files written whole or not at all.

The bytes of each go to a hidden file in the same folder, are flushed to the disk, and take their name in one step.
Whatever goes wrong before that leaves the folder as it was.
"""

from __future__ import annotations

import errno
import os
import tempfile
from collections.abc import Mapping
from contextlib import ExitStack
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
    write_files({file: content})


def write_files(contents: Mapping[str, bytes]) -> None:
    """Write several files: all are on the disk before the first takes its name. Raises as `write_file` does."""
    for file in contents:
        refuse_unwritable(file)
    with ExitStack() as left_over:
        staged = {file: _staged(file, content, left_over) for file, content in contents.items()}
        for file, new in staged.items():
            with told_of_writing(file):
                os.replace(new, os.path.realpath(file))
    for folder in {Path(os.path.realpath(file)).parent for file in contents}:
        flush_folder(folder)


def _staged(file: str, content: bytes, left_over: ExitStack) -> str:
    """The hidden file that has the bytes, removed with what is left over unless it took its name by then."""
    path = Path(os.path.realpath(file))
    with told_of_writing(file):
        descriptor, new = tempfile.mkstemp(prefix=f".{path.name[:40]}.", suffix=".new", dir=path.parent)
        left_over.callback(Path(new).unlink, missing_ok=True)
        with open(descriptor, "wb") as stream:
            stream.write(content)
            os.fchmod(descriptor, _permissions(path))
            stream.flush()
            os.fsync(descriptor)
    return new


def refuse_unwritable(file: str) -> None:
    """Raise `Mistakes` where the file cannot be written, as far as that shows before it is tried."""
    path = Path(os.path.realpath(file))
    if path.is_dir() or file.endswith(os.sep):
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
