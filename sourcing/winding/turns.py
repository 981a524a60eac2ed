"""Turns, pitch and wire: how what is laid on the mandrel becomes the spring, and what it does when it is let go.

The wire neither stretches nor shortens, so each turn keeps its arc; as the coil opens there are fewer of them.
"""

from __future__ import annotations

from math import pi

from sourcing.figures import formula
from sourcing.springs.geometry import turn_length_mm

SPARE_TURNS = 2.0
"""Turns wound over what the spring needs (assumed)."""

TAILS_MM = 200.0
"""Wire to anchor and to hold by (assumed; a handbook for hand tools wants at least 152 mm over)."""


@formula("P = 1 + a (O − 1)", where={"O": "opening", "a": "share"}, source="assumed, see winding_model")
def pitch_ratio(opening: float, share: float) -> float:
    """Pitch after release over pitch on the mandrel, by the opening of the diameter, D_f/D_m, and its share in it.

    >>> round(pitch_ratio(1.24, 0.3), 3)
    1.072
    """
    return 1 + share * (opening - 1)


@formula(
    "u_P = (O − 1) u_a / (1 + a (O − 1))",
    where={"O": "opening", "a": "share", "u_a": "share_sd"},
    source="derived: the slope of the ratio of the pitches over its share, relative",
)
def pitch_ratio_sd(opening: float, share: float, share_sd: float) -> float:
    """The relative standard deviation of the pitch after release.

    >>> round(pitch_ratio_sd(1.24, 0.3, 0.1), 4)
    0.0224
    """
    return (opening - 1.0) * share_sd / pitch_ratio(opening, share)


@formula(
    "p_m = max(p / P, d)",
    where={"P": pitch_ratio},
    source="assumed, see winding_model; laid close, a turn climbs no less than one wire",
)
def pitch_on_mandrel_mm(pitch_mm: float, opening: float, share: float, wire_diameter_mm: float) -> float:
    """The pitch to lay for a pitch after release, which opens by a share of what the diameter opens.

    >>> round(pitch_on_mandrel_mm(4.07, 1.24, 0.3, 0.8), 3)
    3.797
    """
    return max(pitch_mm / pitch_ratio(opening, share), wire_diameter_mm)


@formula(
    "N_m = N_f l_f / l_m",
    where={"N_f": "turns", "l_f": "length_of_turn_mm", "l_m": "length_of_new_turn_mm"},
    source="derived, see winding_model: the wire keeps its length",
)
def turns_from(turns: float, length_of_turn_mm: float, length_of_new_turn_mm: float) -> float:
    """The turns that the same wire makes when each of them has another length.

    >>> round(turns_from(8.0, 30.4, 24.6), 2)
    9.89
    """
    return turns * length_of_turn_mm / length_of_new_turn_mm


@formula(
    "N_m = n √((π D_f)² + p_f²) / √((π D_m)² + p_m²) + n_d √((π D_f)² + d²) / √((π D_m)² + d²)",
    where={
        "n_d": "dead_coils",
        "D_f": "finished.0",
        "p_f": "finished.1",
        "D_m": "wound.0",
        "p_m": "wound.1",
        "d": "wire_mm",
    },
    source="derived, see winding_model: each kind of coil keeps its length of wire",
)
def turns_on_mandrel(
    active_coils: float, dead_coils: float, finished: tuple[float, float], wound: tuple[float, float], wire_mm: float
) -> float:
    """The turns to lay so that active and dead coils come out; the dead ones are laid close, at a pitch of one wire.

    `finished` is mean diameter D_f and pitch p_f of the active coils after release, `wound` D_m and p_m on the mandrel,
    in mm.

    >>> round(turns_on_mandrel(6, 2, (9.6, 4.07), (7.76, 3.80), 0.8), 2)
    9.87
    """
    active = turns_from(active_coils, turn_length_mm(*finished), turn_length_mm(*wound))
    return active + turns_from(dead_coils, turn_length_mm(finished[0], wire_mm), turn_length_mm(wound[0], wire_mm))


@formula(
    "W = π M N",
    where={"M": "moment_n_mm", "N": "turns_back"},
    source="derived, see winding_model: the release is elastic, from the full moment to none",
)
def energy_let_go_n_mm(moment_n_mm: float, turns_back: float) -> float:
    """The energy that drives the crank back as the coil opens: half the bending moment times the angle.

    >>> round(energy_let_go_n_mm(212, 1.95) / 1000, 1)
    1.3
    """
    return pi * moment_n_mm * turns_back


@formula(
    "n' = n D / D'",
    where={"n": "coils", "D'": "new_mean_mm"},
    source="derived, see winding_model: the wire keeps its length",
)
def coils_of_same_wire(coils: float, mean_diameter_mm: float, new_mean_mm: float) -> float:
    """The coils that the same wire makes at another mean diameter.

    >>> coils_of_same_wire(6.0, 9.0, 10.0)
    5.4
    """
    return coils * mean_diameter_mm / new_mean_mm


@formula("θ = 360 (N − n)", where={"N": "turns", "n": "coils"}, source="geometry")
def opens_deg(turns: float, coils: float) -> float:
    """By how much the legs' angle falls as turns laid become so many coils.

    >>> opens_deg(6.0, 5.0)
    360.0
    """
    return 360.0 * (turns - coils)


@formula(
    "N_b = (N − n_t) (1 + 2 / N)",
    where={"N": "turns"},
    source="derived, see winding_model: turns laid, two spare ones too, less the coils that they become",
)
def turns_run_back(turns: float, total_coils: float) -> float:
    """The turns by which the crank is driven back as the turns laid become so many coils.

    >>> round(turns_run_back(9.87, 8.0), 2)
    2.25
    """
    return (turns - total_coils) * (1 + SPARE_TURNS / turns)


@formula(
    "N_b' = N_b (1 − 1/O') / (1 − 1/O)",
    where={"N_b": "turns_opened", "O": "opening", "O'": "opening_reckoned_with"},
    source="derived, see winding_model: N turns become N / O coils, so that the crank is driven back by N (1 − 1/O)",
)
def turns_run_back_by(turns_opened: float, opening: float, opening_reckoned_with: float) -> float:
    """The turns by which the crank is driven back by a wire that opens otherwise than the plan has it.

    >>> turns_run_back_by(2.0, 1.25, 1.25), round(turns_run_back_by(0.5, 1.0625, 1.25), 2)
    (2.0, 1.7)
    """
    return turns_opened * (1 - 1 / opening_reckoned_with) / (1 - 1 / opening)


@formula(
    "l_cut = l + 2 l_m + 200",
    where={"l": "coil_length_mm", "l_m": "spare_turn_mm"},
    source="two spare turns and 200 mm to hold by: assumed (a handbook for hand tools wants at least 152 mm over)",
)
def cut_length_mm(coil_length_mm: float, spare_turn_mm: float) -> float:
    """The wire to cut for a spring: what becomes the spring, spare turns, and what to anchor and to hold by.

    >>> cut_length_mm(243.0, 25.0)
    493.0
    """
    return coil_length_mm + SPARE_TURNS * spare_turn_mm + TAILS_MM
