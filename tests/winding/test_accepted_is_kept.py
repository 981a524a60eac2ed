"""What a sheet accepts of a diameter and what is answered when a coil came out so are one rule, for every kind."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import replace

import pytest
from hypothesis import Phase, given, settings
from hypothesis import strategies as st

from sourcing.need.model import Need, Pocket, PocketEnd, TurnedPoint, WorkingPoint
from sourcing.quantities import Wanted, show_diameter
from sourcing.quantities.kinds import MM_PER_INCH
from sourcing.springs import compression, conical, torsion
from sourcing.springs.model import ConicalSpring, Hand
from sourcing.stock.model import Bench
from sourcing.winding.model import WindingPlan, wire_of
from sourcing.winding.plan import plan_winding
from sourcing.winding.saving.coil import Coil, Saved, SenselessError
from sourcing.winding.saving.kinds import saved

from .cases import BENCH, need, spool, wanted
from .test_saving_a_cone import NEED as A_BUTTON

G, E = 81500.0, 206000.0
COLD, INCH = replace(BENCH, oven_c=None), replace(BENCH, units="inch")
BENCHES = st.sampled_from([BENCH, COLD, INCH])
TOLERANCES = st.sampled_from([0.03, 0.06, 0.1, 0.15, 0.25])
WIRES_MM = st.sampled_from([0.5, 0.8, 1.0, 1.2])
ANGLES = st.sampled_from([None, 90.0, 270.0])


def some(count: int) -> settings:
    return settings(max_examples=count, deadline=None, derandomize=True, phases=(Phase.explicit, Phase.generate))


def within(force: float, tolerance: float) -> Wanted:
    return wanted(round(force, 3), round(tolerance * force, 3))


def at(length_mm: float, force_n: float, tolerance: float) -> WorkingPoint:
    return WorkingPoint(wanted(length_mm), within(force_n, tolerance))


def pressed_points(rate: float, solid_mm: float, travel_mm: float, tolerance: float) -> tuple[WorkingPoint, ...]:
    """Two points of a spring that presses so much to solid, at about three and six tenths of it."""
    free_mm = solid_mm + travel_mm
    lengths_mm = [round(free_mm - share * travel_mm, 2) for share in (0.3, 0.6)]
    return tuple(at(mm, rate * (free_mm - mm), tolerance) for mm in lengths_mm)


def coils_of(wish: Need, wire_mm: float, bench: Bench = BENCH) -> Iterator[Coil]:
    """A coil of the need's plan, before heat and after; none where there is no plan."""
    wire = spool(wire_mm)
    plan = plan_winding(wish, wire, bench)
    for heated in (False, True):
        if isinstance(plan, WindingPlan):
            yield Coil(wish, bench, wire_of(wire), plan, heated)


def accepted(coil: Coil, figure: str = "outside_diameter_mm") -> tuple[float, float]:
    """The bounds of a diameter as the sheet shows them."""
    (row,) = [row for row in coil.plan.accept if row.figure == figure]
    assert row.low is not None
    assert row.high is not None
    assert row.low <= row.high
    return as_shown(row.low, coil.units), as_shown(row.high, coil.units)


def as_shown(diameter_mm: float, units: str) -> float:
    number, unit = show_diameter(diameter_mm, units).split()
    return float(number) * (MM_PER_INCH if unit == "in" else 1.0)


def now(coil: Coil, finished_mm: float) -> float:
    """What a coil that is to measure so in the end measures outside when it is asked about."""
    return (finished_mm - coil.wire_mm) / (1.0 + coil.change_to_come) + coil.wire_mm


def asked(coil: Coil, **finished_mm: float) -> Saved | None:
    """The answer to a coil that is to measure so in the end; None where no coil of its mandrel can."""
    try:
        answer = saved(coil, {name: now(coil, mm) for name, mm in finished_mm.items()})
    except SenselessError:
        return None
    assert answer is not None
    return answer


def is_kept(answer: Saved) -> bool:
    return answer.answer == "keep" and not any("a near fit now" in each for each in answer.said)


def agrees_from_edge_to_edge(coil: Coil, tally: Counter[str]) -> None:
    low, high = accepted(coil)
    for mm in (low, (low + high) / 2.0, high):
        if answer := asked(coil, outside=mm):
            tally[answer.answer] += 1
            assert is_kept(answer), (mm, low, high)


def agrees_at_both_ends(coil: Coil, tally: Counter[str]) -> None:
    """Kept at every pair of edges and in the middle, and never called impossible."""
    large, small = (accepted(coil, f"outside_diameter_{end}_mm") for end in ("large", "small"))
    for large_mm, small_mm in [*((one, two) for one in large for two in small), (sum(large) / 2.0, sum(small) / 2.0)]:
        if answer := asked(coil, outside=large_mm, outside_small=small_mm):
            tally[answer.answer] += 1
            assert is_kept(answer), (large_mm, large, small_mm, small)
            assert not any("measure both ends again" in said or "cannot be" in said for said in answer.said)


def agrees_by_one_end(coil: Coil, tally: Counter[str]) -> None:
    """By one end alone kept where the list takes the other by the same wire too; else the other is measured first."""
    large, small = (accepted(coil, f"outside_diameter_{end}_mm") for end in ("large", "small"))
    for name, (low, high), others in (("outside", large, small), ("outside_small", small, large)):
        for mm in (low, (low + high) / 2.0, high):
            if answer := asked(coil, **{name: mm}):
                tally[f"{answer.answer} by {name}"] += 1
                listed = others[0] <= other_by_the_same_wire(coil, name, mm) <= others[1]
                assert is_kept(answer) or (answer.answer == "measure first" and not listed), (name, mm, answer.said)


def other_by_the_same_wire(coil: Coil, name: str, finished_mm: float) -> float:
    """What the other end of a cone measures in the end whose one measures so."""
    ends = coil.plan.mandrel.profile[-1].diameter_mm, coil.plan.mandrel.profile[0].diameter_mm
    this_mm, other_mm = ends if name == "outside" else reversed(ends)
    known = coil.known_then(coil.trial(this_mm, now(coil, finished_mm)))
    as_wound = replace(coil, heated=False)
    return as_wound.final_mean_mm(known.finished_mean_mm(other_mm) + coil.wire_mm) + coil.wire_mm


def test_a_compression_spring_that_the_list_accepts_is_kept_as_it_is():
    tally = Counter[str]()

    @some(10)
    @given(WIRES_MM, st.floats(5.0, 18.0), st.floats(3.5, 9.0), st.floats(0.4, 1.5), TOLERANCES, BENCHES, st.booleans())
    def each(
        wire_mm: float, index: float, coils: float, gap: float, tolerance: float, bench: Bench, bored: bool
    ) -> None:
        mean_mm = index * wire_mm
        rate = compression.rate_n_per_mm(wire_mm, mean_mm, coils, G)
        pocket = Pocket(bore_mm=wanted(round(1.06 * (mean_mm + wire_mm) + 0.3, 1))) if bored else Pocket()
        points = pressed_points(rate, (coils + 2.0) * wire_mm, gap * coils * wire_mm, tolerance)
        for coil in coils_of(Need("made up", "compression", pocket=pocket, working=points), wire_mm, bench):
            agrees_from_edge_to_edge(coil, tally)

    each()
    assert tally["keep"] >= 40


def test_a_cone_that_the_list_accepts_at_both_ends_is_kept_and_at_one_is_not_condemned():
    tally = Counter[str]()

    @some(12)
    @given(
        WIRES_MM,
        st.one_of(st.floats(8.0, 18.0), st.floats(18.0, 21.5)),
        st.floats(0.4, 0.75),
        st.floats(3.0, 7.0),
        st.floats(1.0, 2.0),
        TOLERANCES,
        BENCHES,
    )
    def each(
        wire_mm: float, index: float, narrows: float, coils: float, gap: float, tolerance: float, bench: Bench
    ) -> None:
        large_mm = index * wire_mm
        rate = conical.rate_n_per_mm(wire_mm, narrows * large_mm, large_mm, coils, G)
        pocket = Pocket(large_end=PocketEnd(bore_mm=wanted(round(1.06 * (large_mm + wire_mm) + 0.3, 1))))
        points = pressed_points(rate, (coils + 2.0) * wire_mm, gap * coils * wire_mm, tolerance)
        for coil in coils_of(Need("made up", "conical", pocket=pocket, working=points), wire_mm, bench):
            agrees_at_both_ends(coil, tally)
            agrees_by_one_end(coil, tally)

    each()
    assert tally["keep"] >= 80
    assert tally["keep by outside"] >= 40
    assert tally["keep by outside_small"] >= 40
    assert tally["measure first by outside_small"] >= 4


def test_a_torsion_spring_that_the_list_accepts_serves_with_its_legs_bent():
    tally = Counter[str]()

    @some(10)
    @given(WIRES_MM, st.floats(6.0, 14.0), st.floats(3.0, 8.0), TOLERANCES, BENCHES, ANGLES)
    def each(wire_mm: float, index: float, coils: float, tolerance: float, bench: Bench, angle: float | None) -> None:
        mean_mm = index * wire_mm
        rate = torsion.rate_n_mm_per_deg(wire_mm, mean_mm, coils, E)
        points = tuple(TurnedPoint(wanted(deg), within(rate * deg, tolerance)) for deg in (20.0, 60.0))
        pocket = Pocket(rod_mm=wanted(round(0.8 * (mean_mm - wire_mm), 1)))
        wish = Need("made up", "torsion", pocket=pocket, turned=points, hand=Hand.RIGHT)
        for coil in coils_of(replace(wish, free_angle_deg=angle and wanted(angle, 10.0)), wire_mm, bench):
            for mm in accepted(coil):
                if (answer := asked(coil, outside=mm)) is None:
                    continue
                tally[answer.answer] += 1
                assert answer.answer != "wind again", answer.said
                assert (answer.fit is None) is (angle is not None)
                assert answer.fit is None or answer.fit.fits == coil.plan.fit.fits

    each()
    assert tally.total() >= 20


@pytest.mark.parametrize("tolerance", [0.05, 0.15])
def test_an_extension_spring_that_the_list_accepts_is_kept_as_it_is(tolerance: float):
    points = at(120.0, 24.0, tolerance), at(95.0, 14.5, tolerance)
    wish, tally = Need("arm", "extension", pocket=Pocket(bore_mm=wanted(15.0)), working=points), Counter[str]()
    for coil in coils_of(wish, 1.2):
        agrees_from_edge_to_edge(coil, tally)
    assert tally == {"keep": 6}


@pytest.mark.parametrize("tolerance", [0.03, 0.15])
def test_a_diameter_that_the_list_does_not_accept_is_not_kept(tolerance: float):
    points = at(24.0, 9.0, tolerance), at(14.0, 22.0, tolerance)
    before, after = coils_of(need(working=points), 0.8)
    for coil in (before, after):
        low, high = accepted(coil)
        assert low < high
        for mm in (low - 0.03, high + 0.03):
            answer = asked(coil, outside=mm)
            assert answer is not None
            assert not is_kept(answer)


def test_a_cone_planned_at_an_index_of_20_is_accepted_and_kept_on_both_sides_of_it():
    """Its index says how well a coil can be wound: of one that is wound it says nothing against it."""
    pocket, tally = Pocket(small_end=PocketEnd(rod_mm=wanted(5.0))), Counter[str]()
    before, after = coils_of(
        Need("made up", "conical", pocket=pocket, working=(at(8.0, 0.3, 0.15), at(5.0, 0.9, 0.15))), 0.5
    )
    for coil in (before, after):
        low, high = accepted(coil, "outside_diameter_large_mm")
        assert isinstance(coil.plan.wanted, ConicalSpring)
        assert coil.plan.wanted.mean_diameter_large_mm == pytest.approx(20 * 0.5)
        assert low < 21 * 0.5 < high
        answer = asked(coil, outside=21 * 0.5 + 0.05)
        assert answer is not None
        assert is_kept(answer)
        agrees_at_both_ends(coil, tally)
        agrees_by_one_end(coil, tally)
    assert tally["keep"] == 10


def test_the_button_of_a_lamp_agrees_at_both_ends_and_at_either_alone():
    tally = Counter[str]()
    for coil in coils_of(A_BUTTON, 0.9):
        agrees_at_both_ends(coil, tally)
        agrees_by_one_end(coil, tally)
    assert tally["keep"] == 10
    assert tally["measure first by outside_small"] > 0
