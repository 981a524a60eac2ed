"""DIN 2097, cold coiled extension springs. The coil diameter's table is that of EN 15800.

It holds for an index of 4 to 20 and at least 3 active coils (from memory). Of the free length, grades 1 and 3 were not
to be had up to 400 mm.
"""

from __future__ import annotations

from functools import cache

from sourcing.springs.compression import index_is_covered
from sourcing.springs.jis_tolerances import within
from sourcing.springs.tolerances import force_tolerance_n
from sourcing.tables import rows

LEAST_ACTIVE_COILS = 3.0


def extension_force_tolerance_n(
    force_n: float, wire_diameter_mm: float, mean_diameter_mm: float, active_coils: float, grade: int
) -> float | None:
    """Tolerance of the force at a given length, plus or minus: that of a compression spring.

    Parameters: force F in N, wire diameter d and mean coil diameter D in mm, active coils n, grade 1, 2 or 3. Returns
    the tolerance in N; None for an index outside 4 to 20 or fewer than 3 active coils.

    >>> round(extension_force_tolerance_n(14.7, 1.0, 12.0, 6.0, 2), 2)
    1.76

    Source: DIN 2097 (from memory: the form of EN 15800's).
    """
    if active_coils < LEAST_ACTIVE_COILS:
        return None
    return force_tolerance_n(force_n, wire_diameter_mm, mean_diameter_mm, active_coils, grade)


def extension_free_length_tolerance_mm(free_length_mm: float, spring_index: float, grade: int) -> float | None:
    """Tolerance of the free length between the insides of the hooks, plus or minus.

    Parameters: free length L₀ in mm, spring index w = D/d, grade 1, 2 or 3. Returns the tolerance in mm; None for an
    index outside 4 to 20, and up to 400 mm for grades 1 and 3, whose rows were not to be had.

    >>> extension_free_length_tolerance_mm(30.0, 9.0, 2), extension_free_length_tolerance_mm(500.0, 9.0, 2)
    (0.9, 7.5)
    >>> extension_free_length_tolerance_mm(30.0, 9.0, 1) is None
    True

    Source: DIN 2097, as a spring maker prints it (sourcing/tables/free_length_tolerance_extension.csv); grades 1 and 3
    above 400 mm from memory, unsure.
    """
    if not index_is_covered(spring_index):
        return None
    for over, to, index_to, tolerance_mm, share in _free_length_bands(grade):
        if within(free_length_mm, to) and not within(free_length_mm, over) and within(spring_index, index_to):
            return tolerance_mm + share * free_length_mm
    return None


@cache
def _free_length_bands(grade: int) -> tuple[tuple[float, float, float, float, float], ...]:
    """Length over and up to, index up to, tolerance in mm and as a share of the length: one of them is 0."""
    return tuple(
        (
            float(row["free_length_over_mm"]),
            float(row["free_length_mm"] or "inf"),
            float(row["index"]),
            float(row["tolerance_mm"] or 0.0),
            float(row["percent"] or 0.0) / 100.0,
        )
        for row in rows("free_length_tolerance_extension")
        if int(row["grade"]) == grade
    )
