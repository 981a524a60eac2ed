"""The files of the cache folder. Each bears the sum of its bytes in its name, so that damage to one is known.

Nothing here is an error: where the folder is closed to us, nothing is kept.
"""

from __future__ import annotations

import os
import sqlite3
import tempfile
import zlib
from collections.abc import Callable, Iterator
from contextlib import suppress
from pathlib import Path

KEPT = 8
"""So many of a sort are kept; each new one lets go of the oldest."""

INDEX = ".sqlite"
_PART = 1 << 18


def cache_folder() -> Path | None:
    """The program's folder in the user's cache: $XDG_CACHE_HOME, else ~/.cache; None where there is no home."""
    named = os.environ.get("XDG_CACHE_HOME", "")
    if os.path.isabs(named):
        return Path(named, "springwright")
    home = os.environ.get("HOME", "")
    return Path(home, ".cache", "springwright") if os.path.isabs(home) else None


def sum_of(file: str) -> str:
    """The CRC-32 of a file's bytes with their number: against damage, and six times as quick as a digest."""
    found, size, part = 0, 0, bytearray(_PART)
    with open(file, "rb", buffering=0) as stream:
        while read := stream.readinto(part):
            found, size = zlib.crc32(memoryview(part)[:read], found), size + read
    return f"{found:08x}{size:x}"


def kept_files(folder: Path, key: str, suffix: str) -> Iterator[Path]:
    """The whole files of that key, each proved by its sum; what else bears such a name is passed over."""
    with suppress(OSError):
        for name in sorted(os.listdir(folder)):
            path = folder / name
            if name.startswith(f"{key}-") and name.endswith(suffix) and not path.is_symlink():
                with suppress(OSError):
                    if sum_of(str(path)) == name.removeprefix(f"{key}-").removesuffix(suffix):
                        yield path


def open_kept(folder: Path, key: str) -> Iterator[sqlite3.Connection]:
    """The whole indexes of that key."""
    for path in kept_files(folder, key, INDEX):
        with suppress(sqlite3.Error):
            yield sqlite3.connect(_address(path), uri=True)


def _address(path: Path) -> str:
    return f"{path.resolve().as_uri()}?mode=ro&immutable=1"


def attach(connection: sqlite3.Connection, kept: sqlite3.Connection) -> None:
    """Have the tables of a kept index at hand beside those of another, as `kept`."""
    ((_, _, file),) = kept.execute("PRAGMA database_list")
    connection.execute("ATTACH ? AS kept", (_address(Path(file)),))


def keep_index(connection: sqlite3.Connection, folder: Path, key: str) -> None:
    """Write an index to the disk and let go of those it replaces."""

    def write(scratch: str) -> None:
        target = sqlite3.connect(scratch)
        target.execute("PRAGMA journal_mode = OFF")
        connection.backup(target)
        target.close()

    keep(write, folder, key, INDEX)


def keep(write: Callable[[str], None], folder: Path, key: str, suffix: str) -> None:
    """Have a file written beside its place and put it there under the name that its bytes give it."""
    with suppress(OSError, sqlite3.Error):
        folder.mkdir(parents=True, exist_ok=True, mode=0o700)
        handle, scratch = tempfile.mkstemp(suffix=".part", dir=folder)
        os.close(handle)
        try:
            write(scratch)
            name = f"{key}-{sum_of(scratch)}{suffix}"
            os.replace(scratch, folder / name)
            _prune(folder, key, suffix)
        finally:
            with suppress(FileNotFoundError):
                os.unlink(scratch)


def _prune(folder: Path, key: str, suffix: str) -> None:
    """Let go of all but the newest under the key, and of the oldest of the others.

    Whoever comes last sees all that are there, and nobody takes the newest, so that processes that write at once leave
    one between them.
    """
    newest_first = sorted(((_written_ns(path), path.name, path) for path in folder.glob(f"*{suffix}")), reverse=True)
    same = [path for _, name, path in newest_first if name.startswith(f"{key}-")]
    others = [path for _, _, path in newest_first if path not in same]
    for path in (*same[1:], *others[KEPT - 1 :]):
        path.unlink(missing_ok=True)


def _written_ns(path: Path) -> int:
    """When a file was written; long ago where another process has just let go of it."""
    try:
        return path.stat().st_mtime_ns
    except FileNotFoundError:
        return 0
