"""A name as dots to cut into a collar: capital letters five dots wide and seven high.

What has no letter here (another script, a picture) becomes an open box; accents are left off.
"""

from __future__ import annotations

import textwrap
import unicodedata
from collections.abc import Iterator, Mapping

WIDE, HIGH = 5, 7
ADVANCE, LINE = WIDE + 1, HIGH + 2
"""Dots from one letter to the next, and from one line to the next."""

_BOX = "1F 11 11 11 11 11 1F"

_ROWS: Mapping[str, str] = {
    " ": "00 00 00 00 00 00 00", "0": "0E 11 13 15 19 11 0E", "1": "04 0C 04 04 04 04 0E", "2": "0E 11 01 02 04 08 1F",
    "3": "1F 02 04 02 01 11 0E", "4": "02 06 0A 12 1F 02 02", "5": "1F 10 1E 01 01 11 0E", "6": "06 08 10 1E 11 11 0E",
    "7": "1F 01 02 04 08 08 08", "8": "0E 11 11 0E 11 11 0E", "9": "0E 11 11 0F 01 02 0C", "A": "0E 11 11 1F 11 11 11",
    "B": "1E 11 11 1E 11 11 1E", "C": "0E 11 10 10 10 11 0E", "D": "1C 12 11 11 11 12 1C", "E": "1F 10 10 1E 10 10 1F",
    "F": "1F 10 10 1E 10 10 10", "G": "0E 11 10 17 11 11 0F", "H": "11 11 11 1F 11 11 11", "I": "0E 04 04 04 04 04 0E",
    "J": "07 02 02 02 02 12 0C", "K": "11 12 14 18 14 12 11", "L": "10 10 10 10 10 10 1F", "M": "11 1B 15 15 11 11 11",
    "N": "11 11 19 15 13 11 11", "O": "0E 11 11 11 11 11 0E", "P": "1E 11 11 1E 10 10 10", "Q": "0E 11 11 11 15 12 0D",
    "R": "1E 11 11 1E 14 12 11", "S": "0F 10 10 0E 01 01 1E", "T": "1F 04 04 04 04 04 04", "U": "11 11 11 11 11 11 0E",
    "V": "11 11 11 11 11 0A 04", "W": "11 11 11 15 15 15 0A", "X": "11 11 0A 04 0A 11 11", "Y": "11 11 11 0A 04 04 04",
    "Z": "1F 01 02 04 08 10 1F", "-": "00 00 00 1F 00 00 00", "_": "00 00 00 00 00 00 1F", ".": "00 00 00 00 00 0C 0C",
    ",": "00 00 00 00 0C 04 08", ":": "00 0C 0C 00 0C 0C 00", ";": "00 0C 0C 00 0C 04 08", "/": "00 01 02 04 08 10 00",
    "\\": "00 10 08 04 02 01 00", "+": "00 04 04 1F 04 04 00", "=": "00 00 1F 00 1F 00 00", "#": "0A 0A 1F 0A 1F 0A 0A",
    "(": "02 04 08 08 08 04 02", ")": "08 04 02 02 02 04 08", "<": "02 04 08 10 08 04 02", ">": "08 04 02 01 02 04 08",
    "'": "0C 04 08 00 00 00 00", '"': "0A 0A 0A 00 00 00 00", "!": "04 04 04 04 00 00 04", "?": "0E 11 01 02 04 00 04",
    "&": "0C 12 14 08 15 12 0D", "%": "18 19 02 04 08 13 03", "*": "00 04 15 0E 15 04 00", "⌀": "01 0E 13 15 19 0E 10",
    "°": "0C 12 12 0C 00 00 00", "Ø": "01 0E 13 15 19 0E 10", "@": "0E 11 01 0D 15 15 0E", "$": "04 0F 14 0E 05 1E 04",
    "[": "0E 08 08 08 08 08 0E", "]": "0E 02 02 02 02 02 0E", "|": "04 04 04 04 04 04 04", "~": "00 00 08 15 02 00 00",
}  # fmt: skip


def lettered(text: str) -> str:
    """The text in the letters that there are, without what cannot be seen.

    >>> lettered("Fächer 5 µm"), lettered("鍵")
    ('FACHER 5 □M', '□')
    """
    spread = unicodedata.normalize("NFKD", " ".join(text.split())).upper()
    plain = (each for each in spread if each.isprintable() and not unicodedata.combining(each))
    return "".join(each if each in _ROWS else "□" for each in plain)


def lines_of(name: str, figures: str, letters: int, most_lines: int) -> tuple[str, ...]:
    """The name over as many lines as it wants and may have, cut off where it is longer, and the figures below it.

    A name of which no sign is known is left out, for boxes tell nothing.

    >>> lines_of("punch-return", "⌀5.50", 8, 2), lines_of("鍵", "⌀5.50", 8, 2)
    (('PUNCH-', 'RETURN', '⌀5.50'), ('⌀5.50',))
    """
    signs = lettered(name)
    return (*(textwrap.wrap(signs, letters)[:most_lines] if signs.strip("□ ") else ()), figures)


def dots(text: str) -> Iterator[tuple[int, int]]:
    """The dots of a line as column from the left and row from the top.

    >>> len(list(dots("I"))), next(dots("I"))
    (11, (1, 0))
    """
    for place, letter in enumerate(text):
        for row, bits in enumerate(_ROWS.get(letter, _BOX).split()):
            yield from ((place * ADVANCE + at, row) for at in range(WIDE) if int(bits, 16) >> (WIDE - 1 - at) & 1)
