"""Turns, pitch and wire: how what is laid on the mandrel becomes the spring, and what it does when it is let go.

The wire neither stretches nor shortens, so each turn keeps its arc; as the coil opens there are fewer of them.
"""

from __future__ import annotations

from math import pi

from sourcing.springs.geometry import turn_length_mm

PITCH_SHARE = 0.3
"""The share of the opening of the diameter by which the pitch opens, where the wire cannot turn about its own axis.

Assumed for this project; one that can turn would open by up to the square of the ratio. A trial coil shows it.
"""


def pitch_ratio(opening: float) -> float:
    """Pitch after release over pitch on the mandrel: 1 + 0.3 (D_f/D_m - 1). The factor 0.3 is assumed.

    >>> round(pitch_ratio(1.24), 3)
    1.072
    """
    return 1 + PITCH_SHARE * (opening - 1)


def turns_from(turns: float, length_of_turn_mm: float, length_of_new_turn_mm: float) -> float:
    """The turns that the same wire makes when each of them has another length: N_m = N_f l_f/l_m.

    >>> round(turns_from(8.0, 30.4, 24.6), 2)
    9.89
    """
    return turns * length_of_turn_mm / length_of_new_turn_mm


def turns_on_mandrel(
    active_coils: float, dead_coils: float, finished: tuple[float, float], wound: tuple[float, float], wire_mm: float
) -> float:
    """The turns to lay so that active and dead coils come out; the dead ones are laid close, at a pitch of one wire.

    `finished`, `wound`: mean diameter and pitch of the active coils after release and on the mandrel, mm.
    Source: the arc is kept, each kind of coil for itself.

    >>> round(turns_on_mandrel(6, 2, (9.6, 4.07), (7.76, 3.80), 0.8), 2)
    9.87
    """
    active = turns_from(active_coils, turn_length_mm(*finished), turn_length_mm(*wound))
    return active + turns_from(dead_coils, turn_length_mm(finished[0], wire_mm), turn_length_mm(wound[0], wire_mm))


def energy_let_go_n_mm(moment_n_mm: float, turns_back: float) -> float:
    """The energy that drives the crank back as the coil opens: half the bending moment times the angle, pi M N.

    Source: derived; the release is elastic, from the full moment to none.

    >>> round(energy_let_go_n_mm(212, 1.95) / 1000, 1)
    1.3
    """
    return pi * moment_n_mm * turns_back
