"""What heat takes from a spring's force: its modulus falls, and above room temperature it slowly relaxes."""

from __future__ import annotations

from sourcing.figures import formula
from sourcing.materials.model import Material

ROOM_C = 20.0

RELAXATION_AT_MOST = 0.05
"""The share of its force that a spring loses in a hundred hours at its material's greatest temperature.

Handbooks set that temperature by it (from memory; no table of relaxation over hours and degrees was to be had).
"""


@formula(
    "G_t = G (1 − r (t − 20))",
    where={"G": "modulus_mpa", "r": "fall", "t": "temperature_c"},
    source="EN 13906-1:2013 clause 8; EN 13906-3:2014 clause 8.2",
    from_memory=True,
)
def modulus_at_mpa(modulus_mpa: float, fall: float, temperature_c: float) -> float:
    """A modulus at a temperature, shear or elastic, from that at 20 degC. `fall` is its share for each degree.

    >>> modulus_at_mpa(81500.0, 0.00025, 120.0)
    79462.5
    """
    return modulus_mpa * (1.0 - fall * (temperature_c - ROOM_C))


@formula(
    "x = 0.05 max(0, t − 20) / (t_g − 20)",
    where={"t": "temperature_c", "t_g": "greatest_c"},
    source="handbooks set the greatest temperature by such a loss in a hundred hours; even up to it from 20 (assumed)",
    from_memory=True,
)
def relaxed_share(temperature_c: float, greatest_c: float) -> float:
    """The greatest share of its force that a spring loses by relaxing, `greatest_c` the most that its wire serves at.

    >>> relaxed_share(60.0, 100.0)
    0.025
    """
    return RELAXATION_AT_MOST * max(0.0, temperature_c - ROOM_C) / (greatest_c - ROOM_C)


@formula(
    "b = (1 − r (t − 20)) (1 − x)",
    where={"r": "fall", "t": "temperature_c", "x": "relaxed"},
    source="derived: the force falls as the modulus does, and relaxing takes its share of what is left",
)
def share_left(fall: float, temperature_c: float, relaxed: float) -> float:
    """The share of its force at 20 degC that a spring keeps at a temperature; `relaxed` is what relaxing takes.

    >>> round(share_left(0.00025, 100.0, 0.05), 3)
    0.931
    """
    return modulus_at_mpa(1.0, fall, temperature_c) * (1.0 - relaxed)


def relaxed_at_most(material: Material, temperature_c: float) -> float | None:
    """The greatest share of its force that a spring of the material loses by relaxing, in a hundred hours.

    Nothing at 20 degC, `RELAXATION_AT_MOST` at the greatest temperature it serves at, even between them (assumed). None
    above that, and where the material's temperatures are not known. Stress relief makes it less, a set taken out too.

    >>> from sourcing.materials import find
    >>> [relaxed_at_most(find("music-wire"), c) for c in (20.0, 60.0, 100.0, 120.0)]
    [0.0, 0.025, 0.05, None]
    """
    greatest_c = material.service_high_c
    if temperature_c <= ROOM_C:
        return 0.0
    if greatest_c is None or temperature_c > greatest_c:
        return None
    return relaxed_share(temperature_c, greatest_c)


def left_of_force(material: Material, temperature_c: float) -> tuple[float, float] | None:
    """Between which shares of its force at 20 degC a spring pushes or pulls at a temperature, as rate or as torque.

    At the most the modulus falls by the least that sources have and nothing relaxes, at the least by the most and all
    of it does. None where that is not known.

    >>> from sourcing.materials import find
    >>> low, high = left_of_force(find("music-wire"), 100.0)
    >>> round(low, 3), round(high, 3)
    (0.922, 0.98)
    """
    relaxed = relaxed_at_most(material, temperature_c)
    if relaxed is None or material.modulus_fall is None:
        return None
    falls = material.modulus_fall
    least = min(share_left(fall, temperature_c, relaxed) for fall in falls)
    return least, max(share_left(fall, temperature_c, 0.0) for fall in falls)
