"""A file's bytes replaced by others, whole or not at all.

The new bytes go to a hidden file in the same folder, are flushed to the disk, and take the old one's place in one
step, so that whoever reads meets the old file or the new one. Whatever goes wrong before that step leaves the old
file as it was and nothing beside it; a process that is killed may leave the hidden file, which the next change
removes.
"""

from __future__ import annotations

import errno
import os
import stat
from collections.abc import Callable, Generator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import Protocol, TypeVar

from sourcing.files.disk import read_raw
from sourcing.files.findings import Finding, Mistakes, Place
from sourcing.files.lock import locked

_ANY_MAY_WRITE = stat.S_IWUSR | stat.S_IWGRP | stat.S_IWOTH


class Changed(Protocol):
    """What a change of a file gives: its bytes after it, and whatever else its maker wants to tell."""

    @property
    def raw(self) -> bytes:
        """The file's bytes after the change."""
        ...


T = TypeVar("T", bound=Changed)


def change_file(file: str, change: Callable[[bytes], T]) -> T:
    """Put in place of a file's bytes what `change` makes of them, under the file's lock.

    Where the file is a symbolic link, the file that it leads to is changed, and the link stays. Raises `Mistakes`
    where the file may not be written, or somebody else changes it meanwhile; then nothing was changed.
    """
    target = os.path.realpath(file)
    with told_of_writing(file):
        if not stat.S_ISREG(os.stat(target).st_mode):
            raise OSError(errno.EINVAL, "no plain file")
        refuse_if_read_only(target, os.path.dirname(target))
        with locked(target, file):
            before = read_raw(file)
            after = change(before)
            _replace(target, file, before, after.raw)
    return after


@contextmanager
def told_of_writing(file: str) -> Generator[None]:
    """What the disk refuses, told as a mistake."""
    try:
        yield
    except PermissionError:
        expected = "leave to write it; nothing was changed"
        raise Mistakes((Finding(Place(file), "you may not write it or its folder", expected),)) from None
    except OSError as error:
        found = f"it cannot be written ({(error.strerror or 'the disk refuses').lower()})"
        raise Mistakes((Finding(Place(file), found, "a disk that takes it; nothing was changed"),)) from None


def refuse_if_read_only(*paths: str) -> None:
    """A file that may not be written could still be replaced, and whoever may do all is not asked; so it is asked.

    Raises PermissionError.
    """
    for path in paths:
        writable = os.stat(path).st_mode & _ANY_MAY_WRITE
        if not writable or not os.access(path, os.W_OK):
            raise PermissionError(errno.EACCES, os.strerror(errno.EACCES), path)


def _replace(target: str, file: str, before: bytes, after: bytes) -> None:
    path = Path(target)
    new = path.with_name(f".{path.name}.new")
    new.unlink(missing_ok=True)
    try:
        _write(new, after, os.stat(target))
        if read_raw(file) != before or os.path.realpath(file) != target:
            found = "somebody changed it meanwhile"
            raise Mistakes((Finding(Place(file), found, "a second try; nothing was changed"),))
        os.replace(new, target)
    finally:
        new.unlink(missing_ok=True)
    flush_folder(path.parent)


def _write(new: Path, content: bytes, like: os.stat_result) -> None:
    """The content in a new file on the disk, with the permissions of the old one, and its owner where that may be."""
    descriptor = os.open(new, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600)
    with open(descriptor, "wb") as stream:
        stream.write(content)
        with suppress(PermissionError):
            os.fchown(descriptor, like.st_uid, like.st_gid)
        os.fchmod(descriptor, stat.S_IMODE(like.st_mode))
        stream.flush()
        os.fsync(descriptor)


def flush_folder(folder: Path) -> None:
    """The new name on the disk too; some kinds of disk have no such thing, and the change is made already."""
    with suppress(OSError):
        descriptor = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(descriptor)
        finally:
            os.close(descriptor)
