"""Springs that are no coil springs of round wire: known by their names, told what they are, and refused.

The nearest of the right words would be a wrong guess for them: a conical washer is no conical spring.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache

from sourcing.files.findings import quoted

COIL_SPRINGS_ONLY = (
    "a compression, conical, extension or torsion spring: this program works out coil springs of round wire"
)


@dataclass(frozen=True, slots=True)
class OtherSpring:
    """A spring of another build. `nouns` name it alone, the other words with "spring" after them.

    As a kind, all of them do. A text is plain where it ends with a noun or one of the `sure` words, or is nothing but
    one of the `whole` ones: a brake disc spring may be a coil. `loose` words say nothing in a text: the main spring of
    a lamp is its largest.
    """

    called: str
    nouns: tuple[str, ...] = ()
    sure: tuple[str, ...] = ()
    whole: tuple[str, ...] = ()
    loose: tuple[str, ...] = ()


OTHER_SPRINGS = (
    OtherSpring(
        "a spiral spring, wound flat in one plane",
        nouns=("hairspring",),
        sure=("flat spiral", "spiral torsion"),
        whole=("spiral", "hair"),
        loose=("balance",),
    ),
    OtherSpring(
        "a clock spring, flat strip coiled in a barrel",
        nouns=("mainspring",),
        sure=("clockwork",),
        whole=("clock", "watch"),
        loose=("main", "power", "motor", "wind up"),
    ),
    OtherSpring(
        "a constant-force spring, a roll of flat strip",
        sure=("constant force", "constant torque", "constant tension"),
    ),
    OtherSpring(
        "a leaf spring, flat strip that bends",
        sure=("leaf", "laminated", "semi elliptic", "semi elliptical"),
        whole=("cantilever",),
        loose=("flat",),
    ),
    OtherSpring(
        "a wave spring, a waved ring of flat wire",
        nouns=("wave washer", "wavy washer", "wave spring washer"),
        sure=("wave", "wavy", "crest to crest"),
    ),
    OtherSpring(
        "a disc spring, a coned washer",
        nouns=("belleville", "belleville washer", "conical washer", "coned washer", "coned disc"),
        sure=("belleville", "coned disc", "diaphragm"),
        whole=("disc", "disk"),
        loose=("cup",),
    ),
    OtherSpring(
        "a garter spring, a long coil joined into a ring",
        sure=("garter", "oil seal"),
    ),
    OtherSpring(
        "two cones in one wire, which lie in series: of either half this program works out what a conical spring does",
        sure=("barrel", "hourglass", "hour glass"),
    ),
    OtherSpring("a volute spring, a strip coiled into a cone", sure=("volute",)),
    OtherSpring("a gas spring, a cylinder of gas under pressure", nouns=("gas strut",), sure=("gas",), loose=("air",)),
    OtherSpring("a torsion bar, a straight rod that is twisted", nouns=("torsion bar",), sure=("torsion bar",)),
)
"""Common names of the trade."""

# A spring's place and purpose come after one of these: "a return spring under the leaf spring of a latch".
_AFTER_ITS_NAME = re.compile(
    r"\b(in|of|for|from|under|over|on|at|with|to|by|beside|behind|against|inside|that|which|next|between|round)\b|[,;:(]"
)
_MANY = re.compile(r"\b(stack|set|pack|pair) of ")
_SAY_NOTHING = frozenset(("a", "an", "the", "old", "broken", "worn", "rusty", "lost", "new", "small", "large", "two"))


@lru_cache(maxsize=64)
def other_kind(text: str) -> str | None:
    """What a kind is where it names a spring of another build; None for any other word.

    >>> other_kind("Belleville"), other_kind("conical washer")
    ('a disc spring, a coned washer', 'a disc spring, a coned washer')
    >>> other_kind("conical"), other_kind("double-torsion")
    (None, None)
    """
    name = _plain(text)
    return next((other.called for other in OTHER_SPRINGS if name in _names(other)), None)


def other_thing(text: str) -> str | None:
    """What a thing is where a text plainly calls it a spring of another build; None where it only mentions one.

    >>> other_thing("broken hairspring of a mantel clock")
    'a spiral spring, wound flat in one plane'
    >>> other_thing("return spring of a clock"), other_thing("spring behind the leaf spring of a latch")
    (None, None)
    """
    named = _MANY.sub("", text.casefold())
    if after := _AFTER_ITS_NAME.search(named):
        named = named[: after.start()]
    words = _plain(named).split()
    thing = " ".join(word for word in words if word not in _SAY_NOTHING)
    return next((other.called for other in OTHER_SPRINGS if _is_plainly(thing, other)), None)


def refused_kind(text: str) -> tuple[str, str] | None:
    """What a message says of a kind of another build: what stands there, and what was expected."""
    called = other_kind(text)
    return None if called is None else (f"{quoted(text)} is {called}", COIL_SPRINGS_ONLY)


def _names(other: OtherSpring) -> tuple[str, ...]:
    words = (*other.sure, *other.whole, *other.loose)
    return tuple(map(_plain, (*other.nouns, *words, *_with_spring(words))))


def _is_plainly(thing: str, other: OtherSpring) -> bool:
    ends = (*other.nouns, *_with_spring(other.sure))
    return thing in _with_spring(other.whole) or any(f" {thing}".endswith(f" {name}") for name in ends)


def _with_spring(words: Iterable[str]) -> tuple[str, ...]:
    return tuple(f"{word} spring" for word in words)


def _plain(text: str) -> str:
    """A name without case, hyphens and the plural."""
    words = text.casefold().replace("-", " ").replace("_", " ").split()
    return " ".join(words).removesuffix("s")
