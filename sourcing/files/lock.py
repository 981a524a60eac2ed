"""A file is changed by one process at a time, and whoever waits in vain is told who holds it, and since when.

The lock is the operating system's, on a hidden file beside the one to be changed, so that it ends with the process
that held it, however that ended. What stands in the hidden file is only for the telling.
"""

from __future__ import annotations

import getpass
import os
import time
from collections.abc import Generator
from contextlib import contextmanager, suppress
from datetime import datetime
from pathlib import Path

from sourcing.files.findings import Finding, Mistakes, Place

LONGEST_WAIT_S = 10.0
_PAUSE_S = 0.02
_LONGEST_NOTE = 200


def lock_beside(target: str) -> str:
    """The hidden file that stands beside a file while it is changed.

    >>> lock_beside("springs/drawer.yaml")
    'springs/.drawer.yaml.lock'
    """
    path = Path(target)
    return str(path.with_name(f".{path.name}.lock"))


@contextmanager
def locked(target: str, file: str, wait_s: float | None = None) -> Generator[None]:
    """Nobody else changes the target meanwhile; `file` is what messages call it.

    Raises `Mistakes` where somebody still holds it after the wait, and `OSError` where the folder takes no file.
    """
    path = lock_beside(target)
    descriptor = _taken(path, file, LONGEST_WAIT_S if wait_s is None else wait_s)
    try:
        yield
    finally:
        with suppress(FileNotFoundError):
            os.unlink(path)
        os.close(descriptor)


def _taken(path: str, file: str, wait_s: float) -> int:
    """The open lock file, ours alone."""
    until = time.monotonic() + wait_s
    while True:
        descriptor = os.open(path, os.O_RDWR | os.O_CREAT | os.O_NOFOLLOW, 0o666)
        try:
            if _ours(descriptor, path):
                with suppress(OSError):  # a full disk has no room for the note, and needs none
                    os.truncate(descriptor, 0)
                    os.pwrite(descriptor, _note().encode(), 0)
                return descriptor
            note = os.pread(descriptor, _LONGEST_NOTE, 0).decode(errors="replace")
        except BaseException:
            os.close(descriptor)
            raise
        os.close(descriptor)
        if time.monotonic() >= until:
            raise Mistakes((Finding(Place(file), _held(note), "a second try when it is done"),))
        time.sleep(_PAUSE_S)


def _ours(descriptor: int, path: str) -> bool:
    """Whether the lock is ours now: nobody holds it, and its holder before us has not taken it away meanwhile."""
    import fcntl

    try:
        fcntl.flock(descriptor, fcntl.LOCK_EX | fcntl.LOCK_NB)
        return os.path.samestat(os.fstat(descriptor), os.stat(path))
    except (BlockingIOError, FileNotFoundError):
        return False


def _note() -> str:
    try:
        user = getpass.getuser()
    except (KeyError, OSError):
        user = "somebody"
    return f"{os.getpid()} {datetime.now().astimezone().isoformat(timespec='seconds')} {user}"


def _held(note: str) -> str:
    """What a lock file's note says, for a message.

    >>> _held("")
    'another process is changing it'
    """
    try:
        process, since, user = note.split(" ", 2)
        began = datetime.fromisoformat(since)
        held_s = (datetime.now().astimezone() - began).total_seconds()
    except (TypeError, ValueError):
        return "another process is changing it"
    return f"{user} (process {process}) is changing it since {began:%H:%M:%S}, for {held_s:.0f} s"
