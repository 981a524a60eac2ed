"""JIS B 2704-2, cold coiled springs: what the European tables at hand lack.

It holds for an index of 4 to 22 and at least 3 active coils, of which its rows for torsion springs know fewer.
DIN 2194's tables of torsion springs were not to be had: these rows stand in, and a handbook's 10 % for the torque where
they end.
"""

from __future__ import annotations

from functools import cache

from sourcing.figures import formula
from sourcing.tables import rows

HANDBOOK_TORQUE = 0.10
"""Torque at a stated angle, plus or minus: Machinery's Handbook, 31st ed., p. 343; a spring stockist's guide."""

COILS_COUNTED = 0.25
"""Total coils of a compression spring, plus or minus, where no force is specified: JIS B 2704-2, a maker's page."""

# A diameter or an index worked out from others is on the edge of its band still, though its last digits differ.
_ALLOWANCE = 1e-6


def within(value: float, edge: float) -> bool:
    """Whether a value is no more than the edge of a band, but for its last digits.

    >>> within(8.0000001, 8.0), within(8.1, 8.0)
    (True, False)
    """
    return value <= edge * (1.0 + _ALLOWANCE)


def jis_covers(kind: str, spring_index: float, active_coils: float) -> bool:
    """Whether JIS B 2704-2 covers a spring: an index of 4 to 22, and 3 active coils but for a torsion spring.

    >>> jis_covers("compression", 9.0, 6.0), jis_covers("compression", 9.0, 2.0), jis_covers("torsion", 9.0, 2.0)
    (True, False, True)
    """
    indexed = within(4.0, spring_index) and within(spring_index, 22.0)
    return indexed and (kind == "torsion" or within(3.0, active_coils))


def jis_tolerance(figure: str, kind: str, by: float, value: float, grade: int) -> float | None:
    """Tolerance of a figure of a spring by JIS B 2704-2, plus or minus, in the figure's own unit.

    The larger of a share of the figure and of a least amount, from the band that `by` lies in.

    Parameters: the figure as the table names it ("coil diameter", "free length", "rate", "initial tension", "free
    angle", "torque angle", "body length", "leg length"), the kind of spring, what the band goes by (spring index,
    active coils or wire diameter in mm: see the table), the figure's value, grade 1, 2 or 3.
    Returns the tolerance; None outside the table, or where it has no such figure.

    >>> jis_tolerance("coil diameter", "torsion", by=9.0, value=10.0, grade=2)
    0.3
    >>> jis_tolerance("free angle", "torsion", by=12.0, value=90.0, grade=1)
    15.0
    >>> jis_tolerance("rate", "torsion", by=31.0, value=4.0, grade=2) is None
    True

    Source: JIS B 2704-2 as makers' pages print it (sourcing/tables/jis_tolerance.csv).
    """
    for over, to, share, least in _bands(figure, kind, grade):
        if within(by, to) and not (by < over and not within(over, by)):
            return max(share * value, least)
    return None


@formula(
    "A_M = (β₁ α + β₂) R",
    source="JIS B 2704-2, 2018 edition, as a maker's page prints it",
    where={
        "β₁": "share_of_angle",
        "α": "angle_deg",
        "β₂": "added_angle_deg",
        "R": "rate_n_mm_per_deg",
    },
)
def torque_tolerance_n_mm(
    share_of_angle: float, angle_deg: float, added_angle_deg: float, rate_n_mm_per_deg: float
) -> float:
    """Tolerance of the torque of a torsion spring wound up by an angle, plus or minus.

    >>> round(torque_tolerance_n_mm(0.05, 90.0, 10.0, 2.0), 3)
    29.0
    """
    return (share_of_angle * angle_deg + added_angle_deg) * rate_n_mm_per_deg


def torsion_torque_tolerance_n_mm(
    angle_deg: float, rate_n_mm_per_deg: float, active_coils: float, grade: int
) -> float | None:
    """Tolerance of the torque at an angle by the rows for its coils, plus or minus.

    Parameters: angle α wound up from free in degrees, rate R in N·mm/deg, active coils n, grade 1, 2 or 3.
    Returns the tolerance in N·mm; None with fewer than 3 coils or more than 30.

    >>> round(torsion_torque_tolerance_n_mm(90.0, 2.0, 6.0, 2), 1)
    29.0
    >>> torsion_torque_tolerance_n_mm(90.0, 2.0, 31.0, 2) is None
    True

    Source: `torque_tolerance_n_mm`.
    """
    share = jis_tolerance("rate", "torsion", active_coils, 1.0, grade)
    added_deg = jis_tolerance("torque angle", "torsion", active_coils, 1.0, grade)
    if share is None or added_deg is None:
        return None
    return torque_tolerance_n_mm(share, abs(angle_deg), added_deg, rate_n_mm_per_deg)


@cache
def _bands(figure: str, kind: str, grade: int) -> tuple[tuple[float, float, float, float], ...]:
    """Over and up to, the share of the figure, the least amount: in order, so that the first that reaches governs."""
    return tuple(
        (
            float(row["over"]),
            float(row["to"] or "inf"),
            float(row["percent"] or 0.0) / 100.0,
            float(row["least"] or 0.0),
        )
        for row in rows("jis_tolerance")
        if row["figure"] == figure and row["kind"] in (kind, "any") and int(row["grade"]) == grade
    )
