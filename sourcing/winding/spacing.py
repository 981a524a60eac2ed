"""The pitch without a groove: a strip or a wire beside the last turn, a coil pulled out, one coil opened by a wedge."""

from __future__ import annotations

from collections.abc import Iterator
from math import hypot, pi, sqrt

from sourcing.figures import formula
from sourcing.quantities import show_diameter, show_force, show_length
from sourcing.springs import geometry, pressed
from sourcing.springs.model import CompressionSpring, ConicalSpring, Ends, PressedSpring
from sourcing.winding.doubts import NORMAL_95
from sourcing.winding.measuring import LEAST_GAP_MM
from sourcing.winding.model import Mandrel
from sourcing.winding.pressed_task import brought_length_sd_mm

HOLDS_ON_TAPER = 0.15
"""The steepest taper, radius over length, on which pulled wire does not slide: friction of dry steel (assumed)."""

WEDGE = (
    "A coil that lies closer than the others: push a wedge of wood or plastic in beside it and move it on by a quarter "
    "turn at a time."
)


@formula("s = p² / (4 d)", source="geometry: round wires that touch each other on one cylinder, centres p/2 apart")
def spacer_wire_mm(pitch_mm: float, wire_diameter_mm: float) -> float:
    """The round wire that keeps a pitch where it is wound along beside the spring's.

    It is thicker than the gap, for it touches its neighbours above or below their middles; at p = 2 d it is as thick as
    they are.

    >>> spacer_wire_mm(2.0, 1.0), round(spacer_wire_mm(2.92, 1.0), 2)
    (1.0, 2.13)
    """
    return pitch_mm**2 / (4.0 * wire_diameter_mm)


@formula(
    "F = π d³ σ_f / (8 √(3) D)",
    where={"σ_f": "flow_stress_mpa"},
    source="derived: the twist of a round section (statics); yield in shear at 1/√3 of the flow stress (von Mises)",
)
def yields_at_n(wire_diameter_mm: float, mean_diameter_mm: float, flow_stress_mpa: float) -> float:
    """The force along the axis from which a coil stays pulled out; the wire's curvature is left out (assumed).

    >>> round(yields_at_n(1.0, 9.5, 2398.0), 1)
    57.2
    """
    return pi * wire_diameter_mm**3 * flow_stress_mpa / (8.0 * sqrt(3.0) * mean_diameter_mm)


@formula(
    "s_b = 4 s_y (1 − 1 / (4 u³)) / 3, with the u at which u s_y − s_b = s_r",
    where={"s_y": "yields_mm", "s_r": "stays_mm"},
    closed=False,
    source="derived: a round section twisted beyond yield keeps an elastic core of 1/u of its radius (statics)",
)
def goes_back_mm(stays_mm: float, yields_mm: float) -> float:
    """How much of a pull goes back where so much is to stay, and the skin of the wire yields at a pull of `yields_mm`.

    From s_y, where nothing stays yet, to 4/3 of it, where the wire has yielded right through.

    >>> goes_back_mm(0.0, 45.0), round(goes_back_mm(19.6, 44.8), 1), round(goes_back_mm(1e4, 45.0), 1)
    (45.0, 56.7, 60.0)
    """
    low, high = 1.0, stays_mm / yields_mm + 4.0 / 3.0
    for _ in range(60):
        middle = (low + high) / 2.0
        if middle - _twisted_on(middle) < stays_mm / yields_mm:
            low = middle
        else:
            high = middle
    return yields_mm * _twisted_on(low)


def _twisted_on(times: float) -> float:
    """The torque over that at first yield, at so many times the twist of first yield."""
    return 4.0 / 3.0 * (1.0 - 1.0 / (4.0 * times**3))


def ground_off_mm(spring: PressedSpring) -> float:
    """What grinding takes off the free length: a wire in all (geometry.end_length_mm); 0 where no end is ground."""
    return spring.wire_diameter_mm if spring.ends in (Ends.CLOSED_GROUND, Ends.OPEN_GROUND) else 0.0


def laid_apart(pitch_mm: float, wire_diameter_mm: float, seated: bool, units: str) -> str:
    """How a pitch is kept while it is laid, in a seat or without: the end of a sentence that named the turns."""
    gap_mm = pitch_mm - wire_diameter_mm
    if gap_mm < LEAST_GAP_MM:
        return "close, wire against wire."
    if seated:
        return f"in the groove, which keeps the pitch of {show_diameter(pitch_mm, units)}."
    gap, spacer = (show_diameter(each, units) for each in (gap_mm, spacer_wire_mm(pitch_mm, wire_diameter_mm)))
    return (
        f"at a pitch of {show_diameter(pitch_mm, units)} on the mandrel, that is a gap of {gap} between the wires: a "
        f"strip of that thickness, held beside the last turn, keeps it, or a soft round wire of {spacer}, wound along "
        "between the turns."
    )


def pulled_out(
    spring: CompressionSpring, wound_coils: float, flow_stress_mpa: float, more_mm: float, units: str
) -> str:
    """The other way to a pitch: wound close, and pulled until it stays; `more_mm` of that goes at the first pressing.

    A hand is taken to pull it as near to its length as it brings any coil there (assumed).
    """
    wire_mm = spring.wire_diameter_mm
    ground_mm, off_mm = ground_off_mm(spring), NORMAL_95 * brought_length_sd_mm(spring)
    rests_mm = spring.free_length_mm + ground_mm + more_mm
    yields_mm = yields_at_n(wire_mm, spring.mean_diameter_mm, flow_stress_mpa) / pressed.rate_n_per_mm(spring)
    close_mm = geometry.solid_length_mm(wire_mm, wound_coils, Ends.OPEN)
    back_mm = goes_back_mm(max(0.0, rests_mm - close_mm), yields_mm)
    close, rests, off, first, last = (
        show_length(each, units) for each in (close_mm, rests_mm, off_mm, rests_mm + yields_mm, rests_mm + back_mm)
    )
    losses = (("the first pressing", more_mm), ("grinding", ground_mm))
    taken = [f"{what} takes {show_length(mm, units)} of that" for what, mm in losses if mm]
    of_that = f"; {' and '.join(taken)}" if taken else ""
    return (
        f"Or lay all turns close, and pull the coil out when it is off and trimmed. It is {close} long then and is to "
        f"rest at {rests}, give or take {off} (assumed){of_that}. Hold it by the last turn at "
        f"either end. Pull it to {first}, let go, measure, then a little further each time: by about {last} it should "
        "stay (assumed: yield in shear at 0.577 of the flow stress). What is too long is hard to press back."
    )


def cone_without_seat(
    spring: ConicalSpring, mandrel: Mandrel, pitch_mm: float, flow_stress_mpa: float, units: str
) -> Iterator[str]:
    """What keeps a cone's pitch where no seat is cut, on a taper that holds the wire; that it is not pulled out."""
    wire_mm, first, last = spring.wire_diameter_mm, mandrel.profile[0], mandrel.profile[-1]
    if pitch_mm - wire_mm < LEAST_GAP_MM:
        return
    taper = (last.diameter_mm - first.diameter_mm) / 2.0 / abs(last.height_mm - first.height_mm)
    small, large = (
        show_force(yields_at_n(wire_mm, mean_mm, flow_stress_mpa), units)
        for mean_mm in (spring.mean_diameter_small_mm, spring.mean_diameter_large_mm)
    )
    strip = ""
    if taper <= HOLDS_ON_TAPER:
        gap = show_diameter(hypot(pitch_mm, taper * pitch_mm) - wire_mm, units)
        strip = f"Or wind without a seat, for the taper is flat enough: a strip of {gap} beside the last turn. "
    yield (
        f"{strip}Do not wind a cone close and pull it out: its large coils stay open from {large}, its small ones only "
        f"from {small} (assumed: yield in shear at 0.577 of the flow stress)."
    )
