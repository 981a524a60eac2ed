"""The thread of a plug that an extension spring is screwed onto: what the coils, lying close, leave it by geometry."""

from __future__ import annotations

from sourcing.figures import formula


@formula(
    "D_P = D_i − (1 − √(3)/2) d",
    where={"D_i": "inside_diameter_mm"},
    source="the three wires by which a thread of 60° is measured, M = D_P − √3/2 P + 3 W, with P = W = d and "
    "M = D_i + 2 d (Machinery's Handbook)",
    from_memory=True,
)
def pitch_diameter_mm(inside_diameter_mm: float, wire_diameter_mm: float) -> float:
    """The pitch diameter of a thread of 60° in whose groove the coils lie on both flanks; its pitch is one wire.

    >>> round(pitch_diameter_mm(6.484, 1.0), 3)
    6.35
    """
    return inside_diameter_mm - (1.0 - 3.0**0.5 / 2.0) * wire_diameter_mm


@formula(
    "D_T = D_P + 3 √(3)/8 d",
    where={"D_P": pitch_diameter_mm},
    source="the profile of ISO 68-1, d − d₂ = 0.6495 P, with P = d",
    from_memory=True,
)
def over_crests_mm(inside_diameter_mm: float, wire_diameter_mm: float) -> float:
    """What that thread measures over its crests, in the usual profile.

    Wire of 1 mm that is 6.484 mm inside goes onto a thread of 7 x 1.

    >>> round(over_crests_mm(6.484, 1.0), 2)
    7.0
    """
    return pitch_diameter_mm(inside_diameter_mm, wire_diameter_mm) + 3.0 * 3.0**0.5 / 8.0 * wire_diameter_mm
