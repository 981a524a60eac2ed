"""What the list of an extension spring accepts of its tension and its length is what is answered to be kept, and the
list says nothing of what cannot be."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from sourcing.need.model import Need, Pocket
from sourcing.quantities import Wanted, show_force, show_length
from sourcing.quantities.kinds import FORCE, MM_PER_INCH
from sourcing.springs.model import Hooks
from sourcing.stock.model import Bench
from sourcing.winding.extension.tension_words import LEAN_MORE, NOT_PUT_IN, READ_AGAIN
from sourcing.winding.model import Acceptance
from sourcing.winding.saving.coil import Coil, SenselessError
from sourcing.winding.saving.extension.body import wanted_of
from sourcing.winding.saving.extension.length import pulled_to
from sourcing.winding.saving.extension.tension import came_out_tension

from .cases import BENCH, wanted
from .test_accepted_is_kept import COLD, INCH, at, coils_of, is_kept

TOLERANCES = (0.02, 0.05, 0.12, 0.3)


def a_need(tolerance: float, **more: Wanted | Hooks) -> Need:
    """The arm of a lamp: 14.5 N at 95 mm and 24 N at 120 mm."""
    points = at(120.0, 24.0, tolerance), at(95.0, 14.5, tolerance)
    return Need("arm", "extension", pocket=Pocket(bore_mm=wanted(15.0)), working=points, **more)


def finished(bench: Bench, tolerance: float, **more: Wanted | Hooks) -> Coil:
    """The finished spring, measured after all that is done to it."""
    return list(coils_of(a_need(tolerance, **more), 1.2, bench))[-1]


def row_of(coil: Coil, figure: str) -> Acceptance:
    (row,) = (row for row in coil.plan.accept if row.figure == figure)
    return row


def as_typed(shown: str) -> float:
    """A figure in N or mm as somebody reads it off the sheet."""
    number, unit = shown.split()
    return float(number) * {"N": 1.0, "mm": 1.0, "lbf": FORCE.factors["lbf"], "in": MM_PER_INCH}[unit]


def edges(coil: Coil, figure: str) -> tuple[float, float]:
    row, show = row_of(coil, figure), show_force if figure == "initial_tension_n" else show_length
    assert row.low is not None
    assert row.high is not None
    return as_typed(show(row.low, coil.units)), as_typed(show(row.high, coil.units))


def all_finished() -> Iterator[Coil]:
    for bench in (BENCH, COLD, INCH):
        for tolerance in TOLERANCES:
            yield finished(bench, tolerance)
    yield finished(BENCH, 0.3, initial_tension_n=wanted(1.5, 0.4))
    yield finished(BENCH, 0.3, free_length_mm=wanted(60.0, 0.8))
    yield finished(BENCH, 0.3, hooks=Hooks.THREADED_PLUG)


ALL = tuple(all_finished())


@pytest.mark.parametrize("coil", ALL)
def test_a_tension_that_the_list_accepts_is_kept_and_one_beyond_it_is_not(coil: Coil):
    low, high = edges(coil, "initial_tension_n")
    for tension_n in (low, (low + high) / 2.0, high):
        assert is_kept(came_out_tension(coil, tension_n)), (tension_n, low, high)
    said = row_of(coil, "initial_tension_n").if_not
    if "Too little" in said:
        assert not is_kept(came_out_tension(coil, low - 0.12))
    if "Too much" in said:
        assert not is_kept(came_out_tension(coil, high + 0.12))


@pytest.mark.parametrize("coil", ALL)
def test_the_list_says_what_to_do_about_too_little_or_too_much_only_where_a_hand_may_wind_it(coil: Coil):
    low, _ = edges(coil, "initial_tension_n")
    said = row_of(coil, "initial_tension_n").if_not
    for words in (f"Too little: {NOT_PUT_IN}", LEAN_MORE):
        assert (words in said) is (low > 0.0)
    assert (READ_AGAIN in said) is ("Too much" not in said)
    assert ("--came-out-tension" in said) is (low > 0.0 or "Too much" in said)


def test_some_lists_have_too_little_and_some_have_not_and_some_take_all_that_a_hand_winds():
    said = [row_of(coil, "initial_tension_n").if_not for coil in ALL]
    for words in ("Too little", "Too much"):
        assert 0 < sum(words in each for each in said) < len(said)


@pytest.mark.parametrize("coil", ALL)
def test_a_length_that_the_list_accepts_is_kept_once_it_is_pulled_and_one_beyond_it_is_not(coil: Coil):
    low, high = edges(coil, "free_length_mm")
    for free_mm in (low, (low + high) / 2.0, high):
        assert pulled_to(coil, free_mm).answer == "keep", (free_mm, low, high)
    off = [abs(mm / wanted_of(coil).free_length_mm - 1.0) for mm in (low, high)]
    if off[0] < 0.145:
        assert not kept_once_pulled(coil, low - 0.3)
    if off[1] < 0.145:
        assert not kept_once_pulled(coil, high + 0.3)


def kept_once_pulled(coil: Coil, free_mm: float) -> bool:
    try:
        return pulled_to(coil, free_mm).answer == "keep"
    except SenselessError:
        return False


def test_a_length_that_the_need_names_is_accepted_to_its_own_tolerance():
    assert edges(finished(BENCH, 0.3, free_length_mm=wanted(60.0, 0.8)), "free_length_mm") == (59.2, 60.8)


@pytest.mark.parametrize("off_mm", [-40.0, -8.0, -1.0, 0.1, 1.0, 4.0, 8.0])
def test_what_was_pulled_is_answered_by_its_verdict_first(off_mm: float):
    coil = finished(BENCH, 0.12)
    free_mm = wanted_of(coil).free_length_mm + off_mm
    if off_mm < -20.0:
        with pytest.raises(ValueError, match="shorter than its body"):
            pulled_to(coil, free_mm)
        return
    saved = pulled_to(coil, free_mm)
    low, high = edges(coil, "free_length_mm")
    if low <= free_mm <= high:
        assert saved.said[0].startswith("Keep it as it is")
    else:
        assert saved.said[0].startswith("Bend its hooks")
    assert ("if its coils still touch" in saved.said[0]) is (off_mm > 0.25)
    assert any(said.startswith("If its coils stand apart") for said in saved.said) is (off_mm > 0.25)


def test_a_spring_bent_back_is_judged_as_what_it_becomes():
    coil = finished(BENCH, 0.12)
    low, _ = edges(coil, "free_length_mm")
    saved = pulled_to(coil, low - 1.0)
    assert (saved.answer, saved.spring, saved.fit.fits) == ("change", wanted_of(coil), "yes")
