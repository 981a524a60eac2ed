"""How far spring wire may differ from its nominal diameter, by the standard of the wire."""

from __future__ import annotations

from functools import cache

from sourcing.springs.jis_tolerances import within
from sourcing.tables import rows

_EUROPEAN = "EN 10270-1"


def wire_diameter_tolerance_mm(standard: str, wire_diameter_mm: float) -> float | None:
    """Tolerance of the diameter of a wire, plus or minus.

    Parameters: the wire's standard, as in "EN 10270-1" or "ASTM A228"; its diameter d in mm. Returns the tolerance in
    mm; None for a standard or a diameter without a row. All parts of EN 10270 are taken by the steps of part 1.

    >>> wire_diameter_tolerance_mm("EN 10270-1", 0.9), wire_diameter_tolerance_mm("EN 12166", 0.9)
    (0.015, None)

    Source: EN 10270-1, ASTM A227, A228, A229 and A231 (sourcing/tables/wire_tolerance.csv).
    """
    named = _EUROPEAN if standard.startswith("EN 10270") else standard
    for over, to, tolerance_mm in _bands(named):
        if within(wire_diameter_mm, to) and not within(wire_diameter_mm, over):
            return tolerance_mm
    return None


@cache
def _bands(standard: str) -> tuple[tuple[float, float, float], ...]:
    return tuple(
        (float(row["wire_diameter_over_mm"]), float(row["wire_diameter_mm"]), float(row["tolerance_mm"]))
        for row in rows("wire_tolerance")
        if row["standard"] == standard
    )
