"""Ends ground by hand, rust kept off, and what not to do to a spring: sentences for the winding sheet."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from sourcing.materials.model import Group, Material
from sourcing.materials.plating import HYDROGEN
from sourcing.need.model import Need
from sourcing.quantities import show_diameter, show_temperature
from sourcing.springs.model import ConicalSpring, Ends, PressedSpring
from sourcing.stock.model import Bench
from sourcing.winding.model import Mandrel

GRINDING_LEAST_WIRE_MM = 0.5
"""Thinner wire isn't ground (DIN 2095)."""

GRINDING_GREATEST_INDEX = 15.0
"""Springs of a larger index stay unground (a spring maker's notes)."""

UPRIGHT_INDEX = 13.0
"""Above it unground ends stand upright within 3 deg (JIS guidance, as a spring maker's page gives it): a twentieth of
the free length, which is what the list of checks allows in mm."""

TIP_WIRES = 0.25
"""How thick the tip of a ground end is, in wires (DIN 2095, as a spring maker's page gives it)."""

COPPER_SOFTENS_C = 232.0
"""Phosphor bronze and brass soften above it (Machinery's Handbook, 31st ed., p. 346)."""

_RUSTS = (Group.DRAWN, Group.TEMPERED)


def holds_beryllium(material: Material) -> bool:
    """Whether its dust harms the lungs, so that it is cut and never ground.

    >>> from sourcing.materials import find
    >>> holds_beryllium(find("beryllium-copper")), holds_beryllium(find("phosphor-bronze"))
    (True, False)
    """
    return material.grade == "CuBe2" or "beryll" in material.name.casefold()


def can_be_ground(material: Material, wire_diameter_mm: float) -> bool:
    """Whether ends of this wire are ground at all."""
    return wire_diameter_mm >= GRINDING_LEAST_WIRE_MM and not holds_beryllium(material)


def ends_finished(spring: PressedSpring, need: Need, bench: Bench) -> Iterator[str]:
    """The grinding of the ends, or why they are left as they are; nothing where no plain end could be ground."""
    plain, assumed = 2 - len(spring.end_pieces), need.ends is None
    if not plain:
        return
    if spring.ends in (Ends.CLOSED_GROUND, Ends.OPEN_GROUND):
        yield _grind("both ends" if plain == 2 else "the plain end", spring, assumed, bench)
    elif need.ends is not Ends.OPEN and (why := _unground(spring, need, bench)):
        yield why


def _grind(which: str, spring: PressedSpring, assumed: bool, bench: Bench) -> str:
    wire_mm, units = spring.wire_diameter_mm, bench.units
    tip, off = (show_diameter(mm, units) for mm in (TIP_WIRES * wire_mm, (1.0 - TIP_WIRES) * wire_mm))
    said = " (the need does not say: closed and ground is assumed)" if assumed else ""
    spare = ""
    if not isinstance(spring, ConicalSpring) and spring.spring_index > UPRIGHT_INDEX:
        spare = (
            f" At an index of {spring.spring_index:.1f} they would stand as upright as the list wants unground too "
            "(JIS guidance)."
        )
    return (
        f"Grind {which} square{said}, over three quarters of a turn, until the tip is a quarter of the wire ({tip}) "
        f"thick, so {off} off it (DIN 2095, JIS B 2704-2). Hold the spring in a jig or pliers, never in the fingers, "
        "eye protection on, and dip it in water before it is too hot to touch: blue wire has been too hot (common "
        f"practice, no source).{spare}"
    )


def _unground(spring: PressedSpring, need: Need, bench: Bench) -> str:
    """Why closed ends stay unground, and how they stand; empty where there is nothing to say."""
    assumed = "" if need.ends else " (closed ends are assumed: the need does not say)"
    leans = ""
    if not isinstance(spring, ConicalSpring) and spring.spring_index <= UPRIGHT_INDEX:
        leans = (
            f" Up to an index of {UPRIGHT_INDEX:g} such ends may lean by more than the list allows (JIS guidance): see "
            "to that check."
        )
    if holds_beryllium(spring.material):
        why = ": the dust of beryllium copper harms the lungs."
    elif spring.wire_diameter_mm < GRINDING_LEAST_WIRE_MM:
        why = f": wire thinner than {show_diameter(GRINDING_LEAST_WIRE_MM, bench.units)} is not ground (DIN 2095)."
    elif need.ends is None and not (need.end_1 or need.end_2):
        why = f": above an index of {GRINDING_GREATEST_INDEX:g} ends are not ground (a spring maker's notes)."
    else:
        return leans.lstrip()
    return f"Leave the ends unground{assumed}{why}{leans}"


def kept_from_rust(material: Material, surroundings: Sequence[str]) -> Iterator[str]:
    """What bare wire that rusts is given at the end; nothing for stainless wire and bronze, which need nothing."""
    if material.group not in _RUSTS or "food" in surroundings:
        return
    wet = [where for where in surroundings if material.corrosion.get(where, 3) <= 1]
    again = f" Where it is {' or '.join(wet)} that does not last: look at it, and do it again." if wet else ""
    yield f"Bare {material.name} rusts: once it is clean and cold, oil, wax or paint it.{again}"


def never(material: Material, mandrel: Mandrel, heated: bool, bench: Bench) -> tuple[str, ...]:
    """What not to do to a spring of this wire; what the cautions before the work say is not said again."""
    return tuple(_never(material, mandrel, heated, bench))


def _never(material: Material, mandrel: Mandrel, heated: bool, bench: Bench) -> Iterator[str]:
    instead = "" if heated else " in place of an oven"
    yield (
        f"No flame, torch or stove plate{instead}, not for an end either: {material.name} goes soft where nobody sees "
        "how hot it is."
    )
    if material.group in _RUSTS:
        yield f"No plating at home, no acid and no rust remover. {HYDROGEN.split('. ')[0]}."
    if holds_beryllium(material):
        yield "No grinding, filing or sanding of beryllium copper, nor of its ends: the dust harms the lungs for life."
    elif material.group is Group.COPPER:
        most = show_temperature(COPPER_SOFTENS_C, bench.units)
        yield f"No heat above {most}: bronze and brass soften (Machinery's Handbook, p. 346)."
    if mandrel.kind == "printed" or "printer" in bench.tools:
        yield "Do not melt or burn a printed mandrel out of the spring: slide or screw it off, or break it."
