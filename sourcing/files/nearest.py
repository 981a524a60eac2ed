"""Which of the right words a wrong one comes nearest to."""

from __future__ import annotations

from collections.abc import Iterable

_LEAST_LIKENESS = 65


def nearest(word: str, choices: Iterable[str], limit: int = 3) -> tuple[str, ...]:
    """The choices that are like the word, nearest first; none where nothing comes near.

    Case, hyphens, underscores and spaces do not count.

    >>> nearest("Outside diameter", ["inside_diameter", "outside_diameter", "rate"])
    ('outside_diameter', 'inside_diameter')
    """
    from rapidfuzz import fuzz, process

    found = process.extract(
        word, list(choices), scorer=fuzz.ratio, processor=_plain, score_cutoff=_LEAST_LIKENESS, limit=limit
    )
    return tuple(choice for choice, _, _ in found)


def _plain(word: str) -> str:
    return word.casefold().replace("_", " ").replace("-", " ")
