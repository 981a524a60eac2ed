"""A formula is said once: what is written beside a function is what the function works out."""

from __future__ import annotations

import importlib
import pkgutil
from itertools import pairwise

import pytest

import sourcing.springs
from sourcing.figures import Formula, Holds, formula, formulas, work
from sourcing.figures.notation import evaluate, with_numbers
from sourcing.springs.compression import rate_n_per_mm

for _module in pkgutil.iter_modules(sourcing.springs.__path__, "sourcing.springs."):
    importlib.import_module(_module.name)


def _name(record: Formula) -> str:
    return record.function.__name__


# Values a bench meets, none a round multiple of another, so that no two formulas agree by chance.
_VALUES = [3.7, 11.3, 6.1, 24.9, 81.7, 1.9, 5.3, 17.3, 2.3, 9.1]


@pytest.mark.parametrize("record", [each for each in formulas() if each.expression], ids=_name)
def test_what_is_written_is_what_is_worked_out(record: Formula) -> None:
    assert record.expression is not None
    code = record.function.__code__
    given = dict(zip(code.co_varnames[: code.co_argcount], _VALUES, strict=False))
    by_symbol = {symbol: given[name] for symbol, name in record.where.items()}
    assert record.function(*given.values()) == pytest.approx(evaluate(record.expression, by_symbol), rel=1e-12)
    assert record.written in record.function.__doc__


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


def test_a_symbol_that_is_no_parameter_is_refused() -> None:
    with pytest.raises(ValueError, match="q in 'A = q d' is no parameter"):

        @formula("A = q d", source="nobody", holds=(Holds("d", "d", 1.0),))
        def area_mm(wire_diameter_mm: float) -> float:  # pyright: ignore[reportUnusedFunction]
            """An area."""
            return wire_diameter_mm


@pytest.mark.parametrize(
    ("written", "values", "value"),
    [
        ("2 (a + b) c", {"a": 1.0, "b": 2.0, "c": 3.0}, 18.0),
        ("a / (2 b)", {"a": 6.0, "b": 3.0}, 1.0),
        ("a⁻¹ − 2^b", {"a": 4.0, "b": 2.0}, -3.75),
        ("√(a) π / π", {"a": 9.0}, 3.0),
        ("max(a, b) − min(a, b)", {"a": 1.0, "b": 4.0}, 3.0),
        ("D / d + R_m L₀", {"D": 6.0, "d": 2.0, "R_m": 2.0, "L₀": 5.0}, 13.0),
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
