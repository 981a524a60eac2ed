"""The values of this room: a duty that can hurt someone, and the answer that a need gets."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Pair:
    """Two lists of phrases that say little alone and enough together: a valve, and an engine.

    With `asks` they leave a doubt even together: a door, and a garage.
    """

    part: str
    whole: str
    asks: bool = False


@dataclass(frozen=True, slots=True)
class Duty:
    """A duty whose failure can hurt someone, and the words that tell it.

    The phrases are written as `sourcing.safety.words.phrases` reads them. `sure` phrases tell the duty by
    themselves; `doubtful` ones leave a question; `harmless` things have a part of that name and no danger in it
    (a trumpet has valves). `harm` ends the sentence "if it fails, ..."; `where_to_go` names maker and trade.
    """

    name: str
    harm: str
    where_to_go: str
    sure: str = ""
    pairs: tuple[Pair, ...] = ()
    doubtful: str = ""
    harmless: str = ""


@dataclass(frozen=True, slots=True)
class Guarded:
    """A need for which no make-it-yourself answer is given.

    `duty` is its plain name, `why` the reason in sentences, `where_to_go` who should do the work. With `asks`, `why`
    ends with the one question whose answer the need should carry as `duty: ordinary` or `duty: guarded`.
    """

    duty: str
    why: str
    where_to_go: str
    asks: bool = False
