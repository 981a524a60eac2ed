"""What a cone that came out otherwise may become: as it is, at another length, cut at an end, or both."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.springs import pressed
from sourcing.springs.model import ConicalSpring
from sourcing.winding.conical.misses import at_best_length
from sourcing.winding.conical.room import End
from sourcing.winding.saving.coil import Coil, Way
from sourcing.winding.saving.conical.cone import wanted_of
from sourcing.winding.saving.conical.cutting import as_it_stands, cut_for_rate, cut_off
from sourcing.winding.saving.conical.ends import ENDS
from sourcing.winding.saving.pressed import STEP_COILS, best_of


def best(coil: Coil, cone: ConicalSpring) -> Way[ConicalSpring]:
    """The best way of a cone that came out so."""
    rate = pressed.rate_n_per_mm(wanted_of(coil))
    cut: dict[End, ConicalSpring] = {end: each for end in ENDS if (each := cut_for_rate(cone, end, rate)) is not None}
    lengths = (at_best_length(cone, coil.need, coil.bench),)
    for_its_rate = [spring for each in cut.values() for spring in (as_it_stands(cone, each), each)]
    return best_of(coil, cone, lengths, for_its_rate, lambda: _between(coil, cone, cut))


def _between(coil: Coil, cone: ConicalSpring, cut: dict[End, ConicalSpring]) -> Iterator[ConicalSpring]:
    """With less cut off an end than its rate wants, each at its own best length."""
    for end, for_its_rate in cut.items():
        steps = int((cone.active_coils - for_its_rate.active_coils) / STEP_COILS)
        less = (cut_off(cone, end, STEP_COILS * step) for step in range(1, steps + 1))
        yield from (at_best_length(each, coil.need, coil.bench) for each in (*less, for_its_rate))
