"""Springs and spools found by words: partial or misspelt, figures among them.

Every word must be found in a thing: in one of its texts, or among its figures. A word counts 100 where it stands there
as it was typed, 90 where something begins with it, 80 where something holds it, and less where it is only like
something; things are told in the order of their means.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from statistics import fmean

from sourcing import quantities as q
from sourcing.quantities import QuantityError
from sourcing.springs.model import TorsionSpring
from sourcing.stock.figures import ANGULAR_RATE, RATE, spring_figure
from sourcing.stock.model import Catalogue, Spool, StockSpring
from sourcing.stock.rates import believed_rate

_SAME, _BEGINS, _HOLDS, _LIKE = 100.0, 90.0, 80.0, 75.0
_LEAST_LIKENESS = 70
_LEAST_BEGUN, _LEAST_HELD = 2, 3
_MOST_PARTS = 3
_FRACTION_TOLERANCE = 0.01
_LENGTH = "length"
_PARSERS: Mapping[str, Callable[[str], float]] = {
    _LENGTH: q.wire_diameter_mm,
    RATE: q.rate_n_per_mm,
    ANGULAR_RATE: q.angular_rate_n_mm_per_deg,
}
_ALSO_CALLED = {"conical": "cone", "extension": "tension"}

Thing = StockSpring | Spool


@dataclass(frozen=True, slots=True)
class _Figure:
    """A figure that is looked for, with half a unit of its last place; by what it measures, all where it is bare."""

    sought: Mapping[str, float]
    half_place: float

    def score(self, thing: Thing) -> float:
        return max((self._score(*pair) for pair in _figures_of(thing)), default=0.0)

    def _score(self, value: float, measure: str) -> float:
        sought = self.sought.get(measure)
        if sought is None or abs(value - sought) > self.half_place * (1 + 1e-9):
            return 0.0
        return _SAME if abs(value - sought) <= 1e-6 * sought else _BEGINS


@dataclass(frozen=True, slots=True)
class _Sought:
    """One word that is looked for, or a figure with its unit."""

    text: str
    figure: _Figure | None


def found_by_words(words: str, catalogue: Catalogue) -> tuple[Thing, ...]:
    """The springs and spools in which every word is found, best first.

    A figure is looked for among wire, diameters, free length, legs, rate and wire left, to half a unit of its last
    place.
    """
    sought = list(_sought(words.split()))
    things: list[Thing] = [*catalogue.springs, *catalogue.spools]
    texts = [_words_of(thing) for thing in things]
    vocabulary = {word for text in texts for word in text}
    likenesses = [_likenesses(one.text.casefold(), vocabulary) for one in sought]
    scored: list[tuple[float, Thing]] = []
    for thing, text in zip(things, texts, strict=True):
        scores = [_score(one, likeness, thing, text) for one, likeness in zip(sought, likenesses, strict=True)]
        if scores and min(scores) > 0.0:
            scored.append((fmean(scores), thing))
    scored.sort(key=lambda pair: -pair[0])
    return tuple(thing for _, thing in scored)


def _score(sought: _Sought, likenesses: dict[str, float], thing: Thing, text: Iterable[str]) -> float:
    by_text = max((likenesses.get(word, 0.0) for word in text), default=0.0)
    return max(by_text, sought.figure.score(thing) if sought.figure else 0.0)


def _likenesses(word: str, vocabulary: set[str]) -> dict[str, float]:
    """How much a word counts for each word of the catalogue that is like it."""
    from rapidfuzz import fuzz, process

    like = {
        known: likeness / 100 * _LIKE
        for known, likeness, _ in process.extract(
            word, list(vocabulary), scorer=fuzz.ratio, score_cutoff=_LEAST_LIKENESS, limit=None
        )
    }
    for known in vocabulary:
        if known == word:
            like[known] = _SAME
        elif len(word) >= _LEAST_BEGUN and known.startswith(word):
            like[known] = _BEGINS
        elif len(word) >= _LEAST_HELD and word in known:
            like[known] = _HOLDS
    return like


def _words_of(thing: Thing) -> set[str]:
    """The words of all its texts, and the parts of those that signs divide, in small letters."""
    if isinstance(thing, Spool):
        texts = (thing.id, thing.material.name, thing.shelf, thing.note, "spool", "wire")
    else:
        spring = thing.spring
        texts = (thing.id, spring.kind, spring.material.name, thing.shelf, thing.seller, thing.note)
        ends = (getattr(spring, key, None) for key in ("ends", "hooks", "hand"))
        texts += (*ends, _ALSO_CALLED.get(spring.kind))
        texts += ("double",) if getattr(spring, "bodies", 1) > 1 else ()
    words = {word for text in texts if text for word in text.casefold().split()}
    return words | {part for word in words for part in re.split(r"[\W_]+", word) if part}


def _figures_of(thing: Thing) -> Iterator[tuple[float, str]]:
    """Its figures, and what each of them measures."""
    if isinstance(thing, Spool):
        yield thing.wire_diameter_mm, _LENGTH
        if thing.length_left_mm is not None:
            yield thing.length_left_mm, _LENGTH
        return
    for name in ("wire", "outside", "inside", "length"):
        if (value := spring_figure(thing, name)) is not None:
            yield value, _LENGTH
    if isinstance(thing.spring, TorsionSpring):
        yield from ((leg.length_mm, _LENGTH) for leg in thing.spring.legs)
    yield believed_rate(thing), ANGULAR_RATE if isinstance(thing.spring, TorsionSpring) else RATE


def _sought(words: list[str]) -> Iterator[_Sought]:
    """The words, those of one figure ("1 1/4 in", "MWG 20") taken together."""
    at = 0
    while at < len(words):
        size, figure = next(
            (size, figure)
            for size in range(min(_MOST_PARTS, len(words) - at), 0, -1)
            if (figure := _figure(words[at : at + size])) or size == 1
        )
        yield _Sought(" ".join(words[at : at + size]), figure)
        at += size


def _figure(parts: list[str]) -> _Figure | None:
    """The figure that the words write together; None where they write none."""
    text = " ".join(parts)
    if not re.search("[0-9]", text) or (len(parts) > 1 and not re.search("[A-Za-z/]", text)):
        return None
    parsed = {measure: _parsed(parse, text) for measure, parse in _PARSERS.items()}
    sought = {measure: value for measure, value in parsed.items() if value is not None}
    return _Figure(sought, _half_place(text, next(iter(sought.values())))) if sought else None


def _parsed(parse: Callable[[str], float], text: str) -> float | None:
    try:
        return parse(text)
    except QuantityError:
        return None


def _half_place(text: str, value: float) -> float:
    """Half a unit of the last place that a figure is written with, in the unit of its value; 1 % of a fraction.

    >>> _half_place("0.9", 0.9), _half_place("31 mm", 31.0), _half_place("1/4 in", 6.35)
    (0.05, 0.5, 0.0635)
    """
    number = re.search(r"[0-9]+(?:\.([0-9]+))?", text)
    if re.search("[0-9]/[0-9]", text) or number is None or float(number[0]) == 0.0:
        return _FRACTION_TOLERANCE * value
    return abs(value / float(number[0])) * 0.5 * 10.0 ** -len(number[1] or "")
