"""Which of the right words a wrong one comes nearest to."""

from __future__ import annotations

from collections.abc import Iterable

_LEAST_LIKENESS = 65
_LEAST_PIECE = 3
_CLOSE = 15


def nearest(word: str, choices: Iterable[str], limit: int = 3) -> tuple[str, ...]:
    """The choices that are like the word or hold it whole, nearest first; none where nothing comes near.

    What is much less like it than the nearest is left out; of what is equally like, the fewest slips of a finger
    (two letters in each other's place are one) come first.
    Case, hyphens, underscores and spaces do not count.

    >>> nearest("Outside diameter", ["inside_diameter", "outside_diameter", "rate"])
    ('outside_diameter',)
    >>> nearest("dry", ["indoor-dry", "damp"])
    ('indoor-dry',)
    >>> nearest("W80", ["W04", "W08"], limit=1)
    ('W08',)
    """
    from rapidfuzz import fuzz, process
    from rapidfuzz.distance import DamerauLevenshtein

    choices, plain = list(choices), _plain(word).strip()
    like = process.extract(word, choices, scorer=fuzz.ratio, processor=_plain, score_cutoff=_LEAST_LIKENESS, limit=None)
    like.sort(key=lambda match: (-match[1], DamerauLevenshtein.distance(plain, _plain(match[0]))))
    holding = [choice for choice in choices if len(plain) >= _LEAST_PIECE and plain in _plain(choice)]
    close = [choice for choice, likeness, _ in like if likeness >= like[0][1] - _CLOSE]
    return tuple(dict.fromkeys(close + holding))[:limit]


def _plain(word: str) -> str:
    return word.casefold().replace("_", " ").replace("-", " ")
