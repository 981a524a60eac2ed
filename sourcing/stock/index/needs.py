"""Needs as they were last read: a need whose bytes have been read before is not read again."""

from __future__ import annotations

import json
import os
from contextlib import suppress
from hashlib import blake2b
from pathlib import Path

from sourcing.materials.model import OwnMaterials
from sourcing.need.model import Need
from sourcing.need.reading import read_need
from sourcing.stock.index import kept
from sourcing.stock.index.plain import Plain, with_tables
from sourcing.stock.index.state import program_key

_SUFFIX = ".need"


def known_need(path: str, own: OwnMaterials) -> Need:
    """The need that a file holds, as `read_need` gives it. Raises `Mistakes` as that does; nothing else is kept."""
    folder, key = kept.cache_folder(), _key(path, own)
    if folder is None or key is None:
        return read_need(path, own)
    for file in kept.kept_files(folder, key, _SUFFIX):
        with suppress(OSError, ValueError, TypeError, KeyError, IndexError):
            tables, value = json.loads(file.read_text("utf-8"))
            return with_tables(tables).back(value)
    need = read_need(path, own)
    if key == _key(path, own):
        plain = Plain()
        value = plain.of(need)
        text = json.dumps([plain.tables(), value])
        kept.keep(lambda scratch: _write(scratch, text), folder, key, _SUFFIX)
    return need


def _key(path: str, own: OwnMaterials) -> str | None:
    """The name and the bytes of a need, what its materials may mean, and the program; None where it cannot be read."""
    digest = blake2b(
        f"{path}\0{sorted(own.items())!r}\0{program_key()}".encode("utf-8", "surrogateescape"), digest_size=12
    )
    try:
        with open(os.fspath(path), "rb") as stream:
            digest.update(stream.read())
    except (OSError, ValueError):
        return None
    return digest.hexdigest()


def _write(file: str, text: str) -> None:
    Path(file).write_text(text, "utf-8")
