"""How far a bought spring may differ from its drawing (EN 15800, cold coiled compression springs; DIN 2095 before it).

Grade 1 is the finest and 3 the coarsest; 2 applies where none is stated. Outside the standard's index of 4 to 20 and
with fewer than 2 active coils nothing is known, and the functions return None.
"""

from __future__ import annotations

from functools import cache

from sourcing.springs.compression import LEAST_ACTIVE_COILS, index_is_covered
from sourcing.tables import rows

_QUALITY = {1: 0.63, 2: 1.0, 3: 1.6}

# A diameter or an index worked out from others is on the edge of its band still, though its last digits differ.
_ALLOWANCE = 1e-6


def coil_diameter_tolerance_mm(mean_diameter_mm: float, spring_index: float, grade: int) -> float | None:
    """Tolerance of the coil diameter, plus or minus; the same for the outside, the mean and the inside diameter.

    Parameters: mean coil diameter D in mm, spring index w = D/d, grade 1, 2 or 3.
    Returns the tolerance in mm; None outside the table: D over 0.63 up to 200 mm, w from 4 up to 20.
    Bands reach from over their lower edge up to and including their upper one.

    >>> coil_diameter_tolerance_mm(8.7, 9.667, 2)
    0.3
    >>> coil_diameter_tolerance_mm(8.7, 3.0, 2) is None
    True

    Source: EN 15800 and DIN 2095; grades 1 and 3 above 63 mm from memory (sourcing/tables/coil_diameter_tolerance.csv).
    """
    if not index_is_covered(spring_index):
        return None
    for over, to, index_to, tolerance in _coil_diameter_bands(grade):
        if _within(mean_diameter_mm, to) and not _within(mean_diameter_mm, over) and _within(spring_index, index_to):
            return tolerance
    return None


def force_tolerance_n(
    force_n: float, wire_diameter_mm: float, mean_diameter_mm: float, active_coils: float, grade: int
) -> float | None:
    """Tolerance of the force at a given length, plus or minus.

    A_F = Q (a_F k_F + 0.015 F)

    Parameters: force F in N, wire diameter d and mean coil diameter D in mm, active coils n, grade 1, 2 or 3
    (Q 0.63, 1, 1.6). Returns the tolerance A_F in N; None for an index outside 4 to 20 or fewer than 2 active coils.

    >>> round(force_tolerance_n(14.7, 1.0, 12.0, 6.0, 2), 2)
    1.76

    Source: EN 15800 (Q, a_F and k_F from memory). JIS B 2704-2 allows 10 % where this gives 12 %.
    """
    scatter = _force_scatter_n(wire_diameter_mm, mean_diameter_mm, active_coils)
    return None if scatter is None else _QUALITY[grade] * (scatter + 0.015 * force_n)


def free_length_tolerance_mm(
    rate_n_per_mm: float, wire_diameter_mm: float, mean_diameter_mm: float, active_coils: float, grade: int
) -> float | None:
    """Tolerance of the free length where no force is specified, plus or minus.

    A_L0 = Q a_F k_F / R

    Parameters: rate R in N/mm, wire diameter d and mean coil diameter D in mm, active coils n, grade 1, 2 or 3.
    Returns the tolerance A_L0 in mm; None for an index outside 4 to 20 or fewer than 2 active coils.

    >>> round(free_length_tolerance_mm(0.9826, 1.0, 12.0, 6.0, 2), 2)
    1.57

    Source: EN 15800 (from memory). For this spring JIS B 2704-2 gives 0.96 and US practice 0.79 mm.
    """
    scatter = _force_scatter_n(wire_diameter_mm, mean_diameter_mm, active_coils)
    return None if scatter is None else _QUALITY[grade] * scatter / rate_n_per_mm


def _force_scatter_n(wire_diameter_mm: float, mean_diameter_mm: float, active_coils: float) -> float | None:
    """a_F k_F: what the coiling of this wire to this diameter scatters the force by (EN 15800, from memory)."""
    index = mean_diameter_mm / wire_diameter_mm
    if not index_is_covered(index) or active_coils < LEAST_ACTIVE_COILS:
        return None
    x = index / 10.0
    by_index = -0.84 * x**3 + 3.781 * x**2 - 4.244 * x + 2.274
    by_size = 65.92 * wire_diameter_mm**3.3 / mean_diameter_mm**1.6
    by_coils = -1.0 / (3.0 * active_coils**2) + 8.0 / (5.0 * active_coils) + 0.803
    return by_size * by_index * by_coils


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
