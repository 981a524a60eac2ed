"""What plating gives a spring wire, and what it costs."""

from __future__ import annotations

from sourcing.materials.model import Group, Material

HYDROGEN = (
    "Plated by a bath, spring wire takes up hydrogen and may crack under load hours or days later, without a sign "
    "before. Buy wire or springs that were plated and baked by somebody who does it for springs; never pickle, derust "
    "in acid or plate a hard spring at the bench."
)
"""Common practice; the standards for plating (ISO 4042, ASTM B633; from memory) have steel this hard baked at once.

Drawn and tempered spring wire is far above the 1000 to 1200 MPa from which they ask for it.
"""

THICKNESS = (
    "A coat of 5 to 10 µm (from memory) is 0.01 to 0.02 mm on the diameter: rate and clearance want the size of the "
    "bare wire. Closed coils hold the bath back and rust first."
)


def better_plated(material: Material, surroundings: str) -> bool:
    """Whether wire of the material plated with zinc suits surroundings that it does not suit bare.

    >>> from sourcing.materials import find
    >>> better_plated(find("music-wire"), "damp"), better_plated(find("music-wire"), "salt")
    (True, False)
    """
    return material.zinc_plated.get(surroundings, 0) >= 2 > material.corrosion.get(surroundings, 0)


def cracks_by_hydrogen(material: Material) -> bool:
    """Whether plating, pickling or acid may make the wire brittle: hard carbon and low-alloy steel.

    >>> from sourcing.materials import find
    >>> cracks_by_hydrogen(find("music-wire")), cracks_by_hydrogen(find("stainless-1.4310"))
    (True, False)
    """
    return material.group in (Group.DRAWN, Group.TEMPERED)
