"""How far a bought torsion spring may differ from its drawing.

DIN 2194's tables were not to be had: JIS B 2704-2 stands in for angle and torque. The coil diameter has the table of EN
15800, which DIN 2194 carries too (from memory).
"""

from __future__ import annotations

from functools import cache

from sourcing.tables import rows

_TORQUE = {1: 0.03, 2: 0.05, 3: 0.08}


def free_angle_tolerance_deg(active_coils: float, grade: int) -> float | None:
    """Tolerance of the angle between the legs at rest, plus or minus.

    Parameters: coils of the body n, grade 1, 2 or 3. Returns the tolerance in deg; None above 30 coils.

    >>> free_angle_tolerance_deg(5.0, 2), free_angle_tolerance_deg(40.0, 2)
    (15.0, None)

    Source: JIS B 2704-2 (sourcing/tables/torsion_free_angle.csv), as a spring maker and a parts maker print it.
    """
    reaching = (degrees for over, to, degrees in _bands(grade) if over < active_coils <= to)
    return next(reaching, None)


def torque_tolerance_share(grade: int) -> float:
    """Tolerance of the rate, plus or minus, as a share: what a torque may be off beside the angle between the legs.

    Parameter: grade 1, 2 or 3. Returns a bare number.

    >>> torque_tolerance_share(2)
    0.05

    Source: JIS B 2704-2, where it is a share of the planned angle, as a spring maker prints the 2018 edition.
    """
    return _TORQUE[grade]


@cache
def _bands(grade: int) -> tuple[tuple[float, float, float], ...]:
    return tuple(
        (float(row["coils_over"]), float(row["coils"]), float(row["plus_minus_deg"]))
        for row in rows("torsion_free_angle")
        if int(row["grade"]) == grade
    )
