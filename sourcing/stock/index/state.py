"""What an index was made from: the files of a catalogue as they stood, and the program that read them."""

from __future__ import annotations

import os
from collections.abc import Iterator
from hashlib import blake2b
from pathlib import Path

SCHEMA = 2
_CLOCK_NS = 2_000_000_000
"""The coarsest clock of a file system: a file changed so shortly before it was read may have changed again."""

Stat = tuple[int, int, int, int]
FileState = tuple[str, Stat | None, str | None]
"""A name, its (size, mtime, ctime, inode), None where nothing stands there, and the digest of its bytes."""


def files_of(catalogue: str) -> list[str]:
    """Every file that a catalogue is read from, and those that would be if they were there.

    Raises OSError where a folder cannot be listed.
    """
    if not os.path.isdir(catalogue):
        folder = Path(catalogue).parent
        return [catalogue, str(folder / "materials.yaml"), str(folder / ".." / "materials.yaml")]
    named = [str(Path(catalogue, name)) for name in ("bench.yaml", "materials.yaml")]
    return named + [file for part in ("springs", "spools") for file in _listed(Path(catalogue, part))]


def _listed(folder: Path) -> Iterator[str]:
    try:
        names = sorted(os.listdir(folder))
    except FileNotFoundError:
        return
    yield from (str(folder / name) for name in names if name.endswith((".yaml", ".yml")) and not name.startswith("."))


def stat_of(file: str) -> Stat | None:
    """How a file stands on the disk; None where there is none. Raises OSError where nobody may say."""
    try:
        found = os.stat(file)
    except FileNotFoundError:
        if os.path.islink(file):
            raise
        return None
    return found.st_size, found.st_mtime_ns, found.st_ctime_ns, found.st_ino


def digest_of(file: str) -> str:
    """The digest of a file's bytes."""
    digest = blake2b(digest_size=16)
    with open(file, "rb") as stream:
        while part := stream.read(1 << 20):
            digest.update(part)
    return digest.hexdigest()


def state_of(catalogue: str, with_digests: bool) -> list[FileState]:
    """Every file as it stands now. Raises OSError."""
    states: list[FileState] = []
    for file in files_of(catalogue):
        stat = stat_of(file)
        states.append((file, stat, digest_of(file) if stat is not None and with_digests else None))
    return states


def unchanged(then: list[FileState], built_ns: int) -> bool:
    """Whether the files stand as they did when the index was begun at `built_ns`.

    The bytes are looked at only where the disk says that a file changed, or changed so late that this proves nothing.
    """
    return all(_same(file, stat, digest, built_ns) for file, stat, digest in then)


def _same(file: str, then: Stat | None, digest: str | None, built_ns: int) -> bool:
    now = stat_of(file)
    if now is None or then is None:
        return now is then
    sure = now == then and max(now[1], now[2]) < built_ns - _CLOCK_NS
    return sure or (now[0] == then[0] and digest_of(file) == digest)


def program_key() -> str:
    """What tells this program from every other: the schema, and name, size and time of each of its files."""
    top = Path(__file__).parents[2]
    digest = blake2b(str(SCHEMA).encode(), digest_size=16)
    for file in sorted(_files_under(str(top))):
        digest.update(file.encode("utf-8", "surrogateescape"))
    return digest.hexdigest()


def _files_under(folder: str) -> Iterator[str]:
    with os.scandir(folder) as entries:
        for entry in entries:
            if entry.is_dir(follow_symlinks=False):
                if entry.name != "__pycache__":
                    yield from _files_under(entry.path)
            elif entry.name.endswith((".py", ".csv")):
                found = entry.stat()
                yield f"{entry.path} {found.st_size} {found.st_mtime_ns}\n"
