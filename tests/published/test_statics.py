"""Springs together and springs cut shorter: the check values of the formulas that follow from statics and counting.

Worked out by another hand than ours. Bhandari's rules for concentric springs are recalled: equal index, equal stress,
and a clearance of the difference of the wires.
"""

from __future__ import annotations

import pytest

from sourcing.springs.compression import rate_n_per_mm, shear_stress_mpa
from sourcing.springs.nesting import nested_clearance_mm, nested_index_of_equal_stress, usual_nested_clearance_mm
from sourcing.springs.systems import parallel_rate_n_per_mm, series_rate_n_per_mm

from .checks import Check, Source, check
from .worked import Coil, solved

STATICS = Source("Statics", "rates of 1 and 2 N/mm", "derived")
CUT = Source("Statics", "rate 1 N/mm, 6 coils, 2 cut off", "derived")
NESTED = Source("Bhandari, Design of Machine Elements, ch. 10", "concentric springs, wires of 10 and 8 mm", "memory")


def coil(wire_mm: float) -> Coil:
    return Coil(wire_mm, 10.0 * wire_mm, 6.0)


def clearance_mm() -> float:
    outer, inner = coil(10.0).spring(1000.0), coil(8.0).spring(1000.0)
    return nested_clearance_mm(outer.inside_diameter_mm, inner.outside_diameter_mm, 0.0, 0.0, 0.0)


def force_of_500_mpa_n(wire_mm: float) -> float:
    return solved(lambda force: shear_stress_mpa(force, wire_mm, 10.0 * wire_mm), 500.0, 1.0, 1e6)


CHECKS = [
    check("in parallel", "3.00000", STATICS, lambda: parallel_rate_n_per_mm([1.0, 2.0])),
    check("in series", "0.666667", STATICS, lambda: series_rate_n_per_mm([1.0, 2.0])),
    check("rate", "1.50000", CUT, lambda: rate_n_per_mm(1.0, 12.0, 4.0, 1.0) / rate_n_per_mm(1.0, 12.0, 6.0, 1.0)),
    check("clearance", "2.00000", NESTED, lambda: usual_nested_clearance_mm(10.0, 8.0)),
    check("clearance of springs of index 10", "2.00000", NESTED, clearance_mm),
    check("index of equal stress", "10.0000", NESTED, lambda: nested_index_of_equal_stress(10.0, 8.0)),
    check("force, inner over outer", "0.640000", NESTED, lambda: force_of_500_mpa_n(8.0) / force_of_500_mpa_n(10.0)),
]


@pytest.mark.parametrize("check", CHECKS, ids=str)
def test_ours_is_the_formulas_value(check: Check) -> None:
    check.must_agree()
