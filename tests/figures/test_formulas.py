"""A formula is said once: what is written beside a function is what the function works out."""

from __future__ import annotations

import importlib
import pkgutil
from itertools import pairwise

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

import sourcing
from sourcing.figures import Holds
from sourcing.figures.notation import evaluate, with_numbers
from sourcing.figures.record import Formula, formulas, parameters_of
from sourcing.figures.working import symbol_values, unknown_symbols, work
from sourcing.springs.compression import rate_n_per_mm
from sourcing.springs.conical import Cone
from sourcing.springs.model import Ends, Hooks

from .springs import cones, cylinders, extension_springs, torsion_springs

for _module in pkgutil.walk_packages(sourcing.__path__, "sourcing."):
    if not _module.name.endswith("__main__"):
        importlib.import_module(_module.name)


def _name(record: Formula) -> str:
    return f"{record.function.__module__.removeprefix('sourcing.')}.{record.function.__name__}"


def _between(low: float, high: float) -> st.SearchStrategy[float]:
    return st.floats(low, high, allow_nan=False)


_BY_NAME = {
    "wire_diameter_mm": _between(0.2, 6.0),
    "mean_diameter_mm": _between(3.0, 60.0),
    "free_length_mm": _between(3.0, 300.0),
    "seating": _between(0.5, 2.0),
    "elastic_modulus_mpa": _between(9e4, 2.2e5),
    "shear_modulus_mpa": _between(3e4, 8.5e4),
    "flow_strain": _between(0.002, 0.04),
    "index_on_mandrel": _between(2.0, 30.0),
    "heat_change": _between(-0.02, 0.02),
    "opening": _between(1.0, 3.0),
    "first": _between(0.0, 1.0),
    "after_a_trial": _between(0.0, 1.0),
    "helix_angle_rad": _between(0.0, 0.5),
    "spring_index": _between(1.5, 30.0),
    "thinner_mm": _between(0.1, 1.0),
    "thicker_mm": _between(1.1, 10.0),
    "grade": st.sampled_from([1, 2, 3]),
}
_BY_TYPE = {
    "float": _between(0.3, 60.0),
    "Ends": st.sampled_from(Ends),
    "tuple[float, float]": st.tuples(_between(0.3, 60.0), _between(0.3, 60.0)),
    "Cone": st.builds(Cone, *[_between(0.3, 60.0)] * 6),
    "Spring": cylinders(),
    "PressedSpring": cylinders() | cones(),
    "TorsionSpring": torsion_springs(),
    "ExtensionSpring": extension_springs(),
    "Hooks": st.sampled_from(Hooks),
}
"""Values of every kind that a formula's function takes: what a bench meets, and beyond it."""


def _arguments(record: Formula) -> st.SearchStrategy[dict[str, object]]:
    types = record.function.__annotations__
    return st.fixed_dictionaries(
        {name: _BY_NAME[name] if name in _BY_NAME else _BY_TYPE[types[name]] for name in parameters_of(record.function)}
    )


@pytest.mark.parametrize("record", [each for each in formulas() if each.closed], ids=_name)
@settings(max_examples=30, deadline=None, suppress_health_check=[HealthCheck.filter_too_much])
@given(data=st.data())
def test_what_is_written_is_what_is_worked_out(record: Formula, data: st.DataObject) -> None:
    arguments = data.draw(_arguments(record))
    try:
        worked_out = record.function(**arguments)
    except ArithmeticError:
        worked_out = None
    assume(worked_out is not None and abs(worked_out) < 1e12)
    written = evaluate(record.says, symbol_values(record, arguments))
    assert worked_out == pytest.approx(written, rel=1e-9, abs=1e-9)


@pytest.mark.parametrize("record", formulas(), ids=_name)
def test_the_docstring_is_made_from_the_record(record: Formula) -> None:
    text = record.function.__doc__ or ""
    assert record.written in text
    assert text.count("Source: ") == 1
    assert text.rstrip().endswith(f"Source: {record.cited}.")


@pytest.mark.parametrize("record", formulas(), ids=_name)
def test_every_symbol_means_something_to_its_function(record: Formula) -> None:
    assert unknown_symbols(record) == ()


@pytest.mark.parametrize("record", formulas(), ids=_name)
def test_every_formula_names_its_source(record: Formula) -> None:
    assert len(record.source) > 5


def test_workings_show_the_formula_with_its_numbers_and_where_it_holds() -> None:
    working = work(rate_n_per_mm, 1.0, 12.0, 6.0, 81500.0)
    assert working.numbers == "81500 · 1⁴ / (8 · 12³ · 6)"
    assert working.value == rate_n_per_mm(1.0, 12.0, 6.0, 81500.0)
    assert [(each.says, each.inside) for each in working.valid] == [
        ("spring index 4 to 20", True),
        ("active coils of 2 or more", True),
    ]
    assert not work(rate_n_per_mm, 1.0, 3.0, 6.0, 81500.0).valid[0].inside


def test_a_symbol_that_is_no_parameter_is_found() -> None:
    def area_mm(wire_diameter_mm: float) -> float:
        """An area."""
        return wire_diameter_mm

    record = Formula(area_mm, "A", "q d", {"d": "wire_diameter_mm"}, (Holds("u", "u"),), "nobody", False, True)
    assert unknown_symbols(record) == ("u", "q")


@pytest.mark.parametrize(
    ("written", "values", "value"),
    [
        ("2 (a + b) c", {"a": 1.0, "b": 2.0, "c": 3.0}, 18.0),
        ("a / (2 b)", {"a": 6.0, "b": 3.0}, 1.0),
        ("a⁻¹ − 2^b", {"a": 4.0, "b": 2.0}, -3.75),
        ("√(a) π / π", {"a": 9.0}, 3.0),
        ("max(a, b) − min(a, b)", {"a": 1.0, "b": 4.0}, 3.0),
        ("D / d + R_m L₀", {"D": 6.0, "d": 2.0, "R_m": 2.0, "L₀": 5.0}, 13.0),
        ("a for a ≤ b; b for a < 2 b; 0 otherwise", {"a": 3.0, "b": 2.0}, 2.0),
    ],
)
def test_the_notation_means_what_an_engineer_reads(written: str, values: dict[str, float], value: float) -> None:
    assert evaluate(written, values) == pytest.approx(value)


def test_a_negative_number_is_put_in_brackets() -> None:
    assert with_numbers("a − b c", {"a": "1", "b": "-2", "c": "3"}) == "1 − (-2) · 3"


def test_what_is_no_formula_is_refused() -> None:
    with pytest.raises(ValueError, match="part of no formula"):
        evaluate("a ? b", {"a": 1.0, "b": 1.0})


def test_units_are_the_longest_ending_that_fits() -> None:
    from sourcing.figures.symbols import UNITS

    assert all(not later.endswith(earlier) for earlier, later in pairwise(UNITS))
