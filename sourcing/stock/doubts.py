"""Doubts about a catalogue that is free of mistakes: what its keeper should look at once more.

That a stated rate does not fit the dimensions is told whenever a catalogue is read; here is what only `stock check`
tells.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import fields, is_dataclass, replace
from datetime import date
from typing import TypeVar

from sourcing.files.findings import Finding, Place, in_order, quoted
from sourcing.materials.model import Material
from sourcing.quantities import show_length, show_stress
from sourcing.springs.describe import Description, describe
from sourcing.springs.describe_conical import ConicalDescription
from sourcing.springs.describe_extension import hook_height_doubt
from sourcing.springs.hands import HOW_TO_SEE
from sourcing.springs.model import ExtensionSpring, TorsionSpring
from sourcing.springs.strength import permissible_solid_stress_mpa
from sourcing.stock.model import Catalogue, Spool, StockSpring
from sourcing.stock.places import place_of_inner
from sourcing.stock.trial_bounds import DATE, wire_in_trial_mm, wrong_date

T = TypeVar("T", StockSpring, Spool)

SNIP_MM = 50.0
"""Nobody keeps a spool with so little wire on it."""


def doubts(catalogue: Catalogue) -> tuple[Finding, ...]:
    """All that is doubtful in a catalogue, with what was told when it was read."""
    return in_order(
        catalogue.bench.doubts,
        catalogue.warnings,
        _doubles(catalogue.springs, "spring"),
        _doubles(catalogue.spools, "spool"),
        _no_more_than_a_snip(catalogue.spools),
        _too_much_stress(catalogue.springs),
        _no_hand(catalogue.springs),
        _hooks_of_odd_height(catalogue.springs),
        _shorter_than_their_trials(catalogue.spools),
        _trials_of_no_day(catalogue.spools, date.today()),
    )


def _doubles(items: Iterable[T], called: str) -> Iterator[Finding]:
    """Records that differ only in their names; how many there are, and what was noted, sets no springs apart."""
    first: dict[object, Place] = {}
    for item in items:
        nameless = replace(item, id="", place=Place(None))
        if isinstance(nameless, StockSpring):
            nameless = replace(nameless, on_hand=0, least=None, note=None)
        key = _hashable(nameless)
        if key in first:
            other = first[key]
            found = f"{quoted(item.id)} differs only in its name from the {called} at {other.file}:{other.line}"
            yield Finding(item.place, found, "one record for both, or what sets them apart")
        else:
            first[key] = item.place


def _hashable(value: object) -> object:
    """The values of a record in tuples, a material by its name."""
    if isinstance(value, Material):
        return value.name
    if is_dataclass(value) and not isinstance(value, type):
        return (type(value), *(_hashable(getattr(value, field.name)) for field in fields(value)))
    return value


def _too_much_stress(springs: Iterable[StockSpring]) -> Iterator[Finding]:
    """Springs that take a set where somebody presses them solid (EN 13906-1:2013 clause 10)."""
    for stock in springs:
        figures = describe(stock.spring)
        if not isinstance(figures, Description | ConicalDescription):
            continue
        stress, strength = figures.shear_stress_at_solid_mpa, figures.tensile_strength_mpa
        if strength is None or stress <= (limit := permissible_solid_stress_mpa(strength)):
            continue
        found = f"{quoted(stock.id)} pressed solid is stressed to {show_stress(stress)}"
        expected = f"at most {show_stress(limit)}: it takes a set there, or a dimension is wrong"
        yield Finding(stock.place, found, expected)


def _no_hand(springs: Iterable[StockSpring]) -> Iterator[Finding]:
    """Torsion springs whose hand nobody noted: they are matched to nothing."""
    for stock in springs:
        spring = stock.spring
        if isinstance(spring, TorsionSpring) and spring.hand is None and spring.bodies == 1:
            found = f"{quoted(stock.id)} has no hand, and so is matched to nothing"
            yield Finding(stock.place, found, f"hand: right or hand: left. {HOW_TO_SEE}")


def _hooks_of_odd_height(springs: Iterable[StockSpring]) -> Iterator[Finding]:
    """Extension springs whose length and coils leave hooks that are not so high."""
    for stock in springs:
        if isinstance(stock.spring, ExtensionSpring) and (doubt := hook_height_doubt(stock.spring)) is not None:
            yield Finding(stock.place, f"{quoted(stock.id)}: {doubt[0].lower()}{doubt[1:].rstrip('.')}", "")


def _no_more_than_a_snip(spools: Iterable[Spool]) -> Iterator[Finding]:
    """A spool with a few millimetres left: metres were meant, and no unit was written."""
    for spool in spools:
        left_mm = spool.length_left_mm
        if left_mm is not None and 0.0 < left_mm < SNIP_MM:
            found = f"{quoted(spool.id)} has {show_length(left_mm)} of wire left"
            yield Finding(spool.place, found, "a length with its unit, as in 1.2 m, if millimetres were not meant")


def _shorter_than_their_trials(spools: Iterable[Spool]) -> Iterator[Finding]:
    for spool in spools:
        used = wire_in_trials_mm(spool)
        if spool.length_left_mm is not None and spool.length_left_mm < used:
            found = f"{quoted(spool.id)} has {show_length(spool.length_left_mm)} left, less than its trials used"
            expected = f"more than the {show_length(used)} in its trial coils, or the wire measured again"
            yield Finding(spool.place, found, expected)


def wire_in_trials_mm(spool: Spool) -> float:
    """The wire in those of a spool's trial coils whose turns were counted, tails left out.

    >>> from sourcing.materials import find
    >>> from sourcing.stock.model import Trial
    >>> round(wire_in_trials_mm(Spool("W08", find("music-wire"), 0.8, trials=(Trial(6.0, 8.9, turns=4),))), 2)
    85.45
    """
    return sum(wire_in_trial_mm(each.mandrel_mm, spool.wire_diameter_mm, each.turns or 0.0) for each in spool.trials)


def _trials_of_no_day(spools: Iterable[Spool], today: date) -> Iterator[Finding]:
    """Trials whose day nobody can read, or that were not wound yet."""
    for spool in spools:
        for number, trial in enumerate(spool.trials):
            wrong = None if trial.date is None else wrong_date(trial.date, today)
            if wrong is not None:
                place = place_of_inner(spool.place, "trials", number)
                yield Finding(place, f"the day of this trial of {quoted(spool.id)}: {wrong}", DATE)
