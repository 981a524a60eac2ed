"""How far a bought spring may differ from its drawing (EN 15800, cold coiled compression springs; DIN 2095 before it).

Grade 1 is the finest and 3 the coarsest; 2 applies where none is stated. Outside the standard's index of 4 to 20 and
with fewer than 2 active coils nothing is known, and the functions return None.
"""

from __future__ import annotations

from functools import cache

from sourcing.figures import formula
from sourcing.springs.compression import ACTIVE_COILS, INDEX, LEAST_ACTIVE_COILS, index_is_covered
from sourcing.springs.diameters import spring_index
from sourcing.tables import rows

_QUALITY = {1: 0.63, 2: 1.0, 3: 1.6}

# A diameter or an index worked out from others is on the edge of its band still, though its last digits differ.
_ALLOWANCE = 1e-6


@formula(
    "A_D = the standard's table: by D, over 0.63 up to 200 mm, by w, from 4 up to 20, and by grade",
    closed=False,
    source="EN 15800 and DIN 2095; grades 1 and 3 above 63 mm from memory",
)
def coil_diameter_tolerance_mm(mean_diameter_mm: float, spring_index: float, grade: int) -> float | None:
    """Tolerance of the coil diameter, plus or minus; the same for the outside, the mean and the inside diameter.

    None outside the table (sourcing/tables/coil_diameter_tolerance.csv).
    Bands reach from over their lower edge up to and including their upper one.

    >>> coil_diameter_tolerance_mm(8.7, 9.667, 2)
    0.3
    >>> coil_diameter_tolerance_mm(8.7, 3.0, 2) is None
    True
    """
    if not index_is_covered(spring_index):
        return None
    for over, to, index_to, tolerance in _coil_diameter_bands(grade):
        if _within(mean_diameter_mm, to) and not _within(mean_diameter_mm, over) and _within(spring_index, index_to):
            return tolerance
    return None


def quality(grade: int) -> float:
    """EN 15800's factor of a grade: 0.63, 1 and 1.6 for grades 1, 2 and 3 (from memory)."""
    return _QUALITY[grade]


@formula(
    "a_F = 65.92 d^3.3 / D^1.6 (−0.84 (w/10)³ + 3.781 (w/10)² − 4.244 w/10 + 2.274) (−1 / (3 n²) + 8 / (5 n) + 0.803)",
    where={"w": spring_index},
    holds=(INDEX, ACTIVE_COILS),
    source="EN 15800",
    from_memory=True,
)
def force_scatter_n(wire_diameter_mm: float, mean_diameter_mm: float, active_coils: float) -> float:
    """What the coiling of this wire to this diameter scatters the force by, at grade 2.

    >>> round(force_scatter_n(1.0, 12.0, 6.0), 3)
    1.54
    """
    x = mean_diameter_mm / wire_diameter_mm / 10.0
    by_index = -0.84 * x**3 + 3.781 * x**2 - 4.244 * x + 2.274
    by_size = 65.92 * wire_diameter_mm**3.3 / mean_diameter_mm**1.6
    by_coils = -1.0 / (3.0 * active_coils**2) + 8.0 / (5.0 * active_coils) + 0.803
    return by_size * by_index * by_coils


@formula(
    "A_F = Q (a_F + 0.015 F)",
    where={"Q": quality, "a_F": force_scatter_n},
    holds=(INDEX, ACTIVE_COILS),
    source="EN 15800",
    from_memory=True,
)
def force_tolerance_n(
    force_n: float, wire_diameter_mm: float, mean_diameter_mm: float, active_coils: float, grade: int
) -> float | None:
    """Tolerance of the force at a given length, plus or minus.

    None outside the ranges. JIS B 2704-2 allows 10 % where this gives 12 %.

    >>> round(force_tolerance_n(14.7, 1.0, 12.0, 6.0, 2), 2)
    1.76
    """
    if not _covered(wire_diameter_mm, mean_diameter_mm, active_coils):
        return None
    return quality(grade) * (force_scatter_n(wire_diameter_mm, mean_diameter_mm, active_coils) + 0.015 * force_n)


@formula(
    "A_L0 = Q a_F / R",
    where={"Q": quality, "a_F": force_scatter_n},
    holds=(INDEX, ACTIVE_COILS),
    source="EN 15800",
    from_memory=True,
)
def free_length_tolerance_mm(
    rate_n_per_mm: float, wire_diameter_mm: float, mean_diameter_mm: float, active_coils: float, grade: int
) -> float | None:
    """Tolerance of the free length where no force is specified, plus or minus.

    None outside the ranges. For this spring JIS B 2704-2 gives 0.96 and US practice 0.79 mm.

    >>> round(free_length_tolerance_mm(0.9826, 1.0, 12.0, 6.0, 2), 2)
    1.57
    """
    if not _covered(wire_diameter_mm, mean_diameter_mm, active_coils):
        return None
    return quality(grade) * force_scatter_n(wire_diameter_mm, mean_diameter_mm, active_coils) / rate_n_per_mm


@formula("e₁ = 0.05 L₀", source="JIS B 2704-2, grade 2 (2.9°); EN 15800, grade 2, the same from memory")
def out_of_square_mm(free_length_mm: float) -> float:
    """How far the top of a compression spring that stands on a plate may lie beside a square, unloaded, grade 2.

    >>> out_of_square_mm(40.0)
    2.0
    """
    return 0.05 * free_length_mm


def _covered(wire_diameter_mm: float, mean_diameter_mm: float, active_coils: float) -> bool:
    return index_is_covered(mean_diameter_mm / wire_diameter_mm) and active_coils >= LEAST_ACTIVE_COILS


def _within(value: float, edge: float) -> bool:
    return value <= edge * (1.0 + _ALLOWANCE)


@cache
def _coil_diameter_bands(grade: int) -> tuple[tuple[float, float, float, float], ...]:
    """Diameter over and up to, index up to, tolerance: in the table's order, so that the first that reaches governs."""
    return tuple(
        (
            float(row["mean_diameter_over_mm"]),
            float(row["mean_diameter_mm"]),
            float(row["index"]),
            float(row["tolerance_mm"]),
        )
        for row in rows("coil_diameter_tolerance")
        if int(row["grade"]) == grade
    )
