"""One spring inside another: whether they clear each other, are of opposite hands, reach the length, and stay open.

Their force together is that of `systems.Parallel`.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from sourcing.figures import formula
from sourcing.springs.geometry import growth_at_solid_mm, pitch_mm, solid_length_mm
from sourcing.springs.model import CompressionSpring
from sourcing.springs.notes import mm
from sourcing.springs.systems import Parallel, Single


@dataclass(frozen=True, slots=True)
class Nested:
    """Two cylindrical springs, one inside the other, each with the tolerance of its coil diameter, plus or minus."""

    outer: CompressionSpring
    inner: CompressionSpring
    outer_tolerance_mm: float = 0.0
    inner_tolerance_mm: float = 0.0

    @property
    def system(self) -> Parallel:
        """Both between the same two plates: the outer one is part 0, the inner one part 1."""
        return Parallel((Single(self.outer), Single(self.inner)))


@formula(
    "c = D_i − t₁ − (D_e + ΔD + t₂)",
    source="geometry; growth as EN 13906-1:2013 clause 9",
    where={
        "D_i": "inside_diameter_mm",
        "t₁": "outer_tolerance_mm",
        "D_e": "outside_diameter_mm",
        "ΔD": "growth_mm",
        "t₂": "inner_tolerance_mm",
    },
)
def nested_clearance_mm(
    inside_diameter_mm: float,
    outside_diameter_mm: float,
    growth_mm: float,
    outer_tolerance_mm: float,
    inner_tolerance_mm: float,
) -> float:
    """Room left on the diameter between a spring and the one inside it, at the worst; below 0 they touch.

    The inner spring grows as it is pressed; that the outer one does too is not counted on, for it may be held.

    >>> round(nested_clearance_mm(10.0, 9.0, 0.15, 0.2, 0.2), 3)
    0.45
    """
    return inside_diameter_mm - outer_tolerance_mm - (outside_diameter_mm + growth_mm + inner_tolerance_mm)


@formula(
    "c = d₁ − d₂",
    source="Bhandari, Design of Machine Elements, ch. 10, concentric springs",
    from_memory=True,
    where={"d₁": "outer_wire_mm", "d₂": "inner_wire_mm"},
)
def usual_nested_clearance_mm(outer_wire_mm: float, inner_wire_mm: float) -> float:
    """Clearance on the diameter that is usual between nested springs of the same index and length.

    >>> usual_nested_clearance_mm(10.0, 8.0)
    2.0
    """
    return outer_wire_mm - inner_wire_mm


@formula(
    "w = 2 d₁ / (d₁ − d₂)",
    source="Bhandari, Design of Machine Elements, ch. 10, concentric springs",
    from_memory=True,
    where={"d₁": "outer_wire_mm", "d₂": "inner_wire_mm"},
)
def nested_index_of_equal_stress(outer_wire_mm: float, inner_wire_mm: float) -> float:
    """Spring index at which two nested springs of the same index, length and stress have the usual clearance.

    >>> nested_index_of_equal_stress(10.0, 8.0)
    10.0
    """
    return 2.0 * outer_wire_mm / (outer_wire_mm - inner_wire_mm)


def clearance_of(pair: Nested) -> float:
    """The room left between both springs of a pair, pressed until one of them is solid, in mm."""
    return nested_clearance_mm(
        pair.outer.inside_diameter_mm,
        pair.inner.outside_diameter_mm,
        growth_of(pair.inner),
        pair.outer_tolerance_mm,
        pair.inner_tolerance_mm,
    )


def growth_of(spring: CompressionSpring) -> float:
    """Growth of a spring's diameter from free to solid, in mm."""
    wire, free = spring.wire_diameter_mm, spring.free_length_mm
    pitch = pitch_mm(wire, free, spring.active_coils, spring.total_coils, spring.ends)
    return growth_at_solid_mm(wire, spring.mean_diameter_mm, pitch)


def touches(pair: Nested) -> bool:
    """Whether the two may rub on each other at the worst of their tolerances."""
    return clearance_of(pair) <= 0.0


def nested_notes(pair: Nested, longest_mm: float, shortest_mm: float, wanted_mm: float = 0.0) -> Iterator[str]:
    """All that speaks against a pair that works between two lengths, as whole sentences; none where nothing does.

    `wanted_mm` is the clearance on the diameter that is wanted beyond growth and tolerance.
    """
    yield from _clearance_note(pair, wanted_mm)
    yield from _hands_note(pair)
    for name, spring in (("outer", pair.outer), ("inner", pair.inner)):
        yield from _length_notes(name, spring, longest_mm, shortest_mm)


def _clearance_note(pair: Nested, wanted_mm: float) -> Iterator[str]:
    left_mm = clearance_of(pair)
    growth_mm, tolerance_mm = growth_of(pair.inner), pair.outer_tolerance_mm + pair.inner_tolerance_mm
    sizes = (
        f"the inner one is {mm(pair.inner.outside_diameter_mm)} outside and grows by {mm(growth_mm)} when pressed, the "
        f"outer one is {mm(pair.outer.inside_diameter_mm)} inside"
        + (f", and their tolerances take {mm(tolerance_mm)}" if tolerance_mm else "")
    )
    if left_mm <= 0.0:
        missing = f": {mm(-left_mm)} too little" if left_mm < 0.0 else ""
        yield f"The two springs touch: {sizes}{missing}. Springs that rub wear, bind and lose force: do not nest them."
    elif left_mm < wanted_mm:
        yield f"Only {mm(left_mm)} on the diameter is left between the two springs, {mm(wanted_mm)} wanted: {sizes}."


def _hands_note(pair: Nested) -> Iterator[str]:
    if pair.outer.hand is None or pair.inner.hand is None:
        unknown = " and ".join(name for name in ("outer", "inner") if getattr(pair, name).hand is None)
        yield (
            f"The hand of the {unknown} spring is not known: nested springs should be of opposite hands, or coils of "
            "one may slip between those of the other."
        )
    elif pair.outer.hand is pair.inner.hand:
        yield (
            f"Both springs are {pair.outer.hand}-hand: coils of one may slip between those of the other and jam; "
            "nested springs should be of opposite hands."
        )


def _length_notes(name: str, spring: CompressionSpring, longest_mm: float, shortest_mm: float) -> Iterator[str]:
    free = spring.free_length_mm
    solid = solid_length_mm(spring.wire_diameter_mm, spring.total_coils, spring.ends)
    if free <= shortest_mm:
        yield f"The {name} spring is never pressed, even at {mm(shortest_mm)}: it is {mm(free)} long at rest."
    elif free <= longest_mm:
        yield f"The {name} spring is loose at {mm(longest_mm)}: it is {mm(free)} long at rest."
    if solid >= shortest_mm:
        yield f"The {name} spring is solid at {mm(solid)}: the pair cannot be pressed to {mm(shortest_mm)}."
