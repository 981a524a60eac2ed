"""Laws of the tolerances, whatever the spring and the grade."""

from __future__ import annotations

from hypothesis import assume, given
from hypothesis import strategies as st

from sourcing.materials import find, names
from sourcing.springs.bands import Band, Toleranced, bands_of, load_band, torque_band
from sourcing.springs.extension_tolerances import extension_force_tolerance_n, extension_free_length_tolerance_mm
from sourcing.springs.jis_tolerances import (
    jis_covers,
    jis_tolerance,
    torque_tolerance_n_mm,
    torsion_torque_tolerance_n_mm,
    within,
)
from sourcing.springs.model import ExtensionSpring, Hooks, TorsionSpring
from sourcing.springs.rates import rate_of
from sourcing.springs.tolerances import force_scatter_n, force_tolerance_n, quality
from sourcing.springs.wire_tolerances import wire_diameter_tolerance_mm
from tests.figures.springs import cones, cylinders, torsion_springs

from .test_compression_laws import close

grades = st.sampled_from([1, 2, 3])
wires = st.floats(0.1, 10.0)
indices = st.floats(4.0, 20.0)
jis_indices = st.floats(4.0, 22.0)
coils = st.floats(3.0, 60.0)
lengths = st.floats(1.0, 390.0)
forces = st.floats(0.0, 5000.0)
factors = st.floats(1.01, 20.0)
BY_INDEX = [("coil diameter", "any"), ("free length", "extension"), ("body length", "torsion")]
BY_COILS = [("rate", "compression"), ("rate", "extension"), ("initial tension", "extension")]


class TestForce:
    @given(wires, indices, coils, st.floats(1.1, 5.0))
    def test_what_coiling_scatters_grows_with_the_size_of_the_whole_spring(
        self, d: float, index: float, n: float, factor: float
    ) -> None:
        """d to the 3.3 over D to the 1.6."""
        larger = force_scatter_n(factor * d, factor * d * index, n)
        assert larger == close(factor**1.7 * force_scatter_n(d, d * index, n))

    @given(wires, indices, coils, grades)
    def test_without_a_force_it_is_the_scatter_times_the_grades_quality(
        self, d: float, index: float, n: float, grade: int
    ) -> None:
        assert force_tolerance_n(0.0, d, d * index, n, grade) == close(
            quality(grade) * force_scatter_n(d, d * index, n)
        )

    @given(forces, wires, indices, coils, grades)
    def test_each_newton_adds_one_and_a_half_per_cent_times_the_quality(
        self, force: float, d: float, index: float, n: float, grade: int
    ) -> None:
        at_force, at_nothing = (extension_force_tolerance_n(each, d, d * index, n, grade) for each in (force, 0.0))
        assert at_force is not None
        assert at_nothing is not None
        assert at_force - at_nothing <= quality(grade) * 0.015 * force * (1 + 1e-9) + 1e-9
        assert at_force == close(at_nothing + quality(grade) * 0.015 * force)

    @given(forces, wires, indices, st.floats(0.5, 2.99), grades)
    def test_an_extension_spring_of_fewer_than_3_coils_has_none(
        self, force: float, d: float, index: float, n: float, grade: int
    ) -> None:
        assert extension_force_tolerance_n(force, d, d * index, n, grade) is None


class TestExtensionLength:
    @given(lengths, indices, factors)
    def test_a_longer_spring_may_differ_by_more(self, length: float, index: float, factor: float) -> None:
        one, other = (extension_free_length_tolerance_mm(each, index, 2) for each in (length, length * factor))
        assert one is not None
        assert other is not None
        assert one <= other

    @given(lengths, st.floats(4.0, 8.0), st.floats(8.01, 20.0))
    def test_a_wider_coil_may_differ_by_more(self, length: float, narrow: float, wide: float) -> None:
        one, other = (extension_free_length_tolerance_mm(length, index, 2) for index in (narrow, wide))
        assert one is not None
        assert other is not None
        assert one < other

    @given(st.floats(400.1, 1500.0), indices, grades)
    def test_above_400_mm_it_is_a_share_of_the_length_that_grows_with_the_grade(
        self, length: float, index: float, grade: int
    ) -> None:
        share = {1: 0.01, 2: 0.015, 3: 0.02}[grade]
        assert extension_free_length_tolerance_mm(length, index, grade) == close(share * length)


class TestJis:
    @given(st.sampled_from(BY_INDEX), jis_indices, lengths, grades)
    def test_it_is_never_less_than_its_least_and_grows_as_the_figure_from_there(
        self, row: tuple[str, str], index: float, length: float, grade: int
    ) -> None:
        figure, kind = row
        least = jis_tolerance(figure, kind, index, 0.0, grade)
        tolerance, doubled = (jis_tolerance(figure, kind, index, each, grade) for each in (length, 2 * length))
        assert least is not None
        assert tolerance is not None
        assert doubled is not None
        assert least <= tolerance <= doubled <= 2 * tolerance

    @given(st.sampled_from(BY_INDEX), jis_indices, lengths)
    def test_a_coarser_grade_is_wider(self, row: tuple[str, str], index: float, length: float) -> None:
        one, two, three = (jis_tolerance(*row, index, length, grade) or 0.0 for grade in (1, 2, 3))
        assert 0.0 < one < two < three

    @given(st.sampled_from(BY_COILS), coils, grades, factors)
    def test_a_share_of_the_figure_scales_with_it(
        self, row: tuple[str, str], n: float, grade: int, factor: float
    ) -> None:
        one, other = (jis_tolerance(*row, n, each, grade) for each in (1.0, factor))
        assert one is not None
        assert other == close(factor * one)

    @given(st.floats(0.5, 30.0), st.floats(0.5, 30.0), grades)
    def test_the_angle_between_legs_is_surer_with_fewer_coils(self, one: float, other: float, grade: int) -> None:
        fewer, more = (jis_tolerance("free angle", "torsion", n, 90.0, grade) for n in sorted((one, other)))
        assert fewer is not None
        assert more is not None
        assert fewer <= more

    @given(st.floats(0.01, 0.1), st.floats(0.0, 1000.0), st.floats(0.0, 30.0), st.floats(0.01, 100.0), factors)
    def test_a_torques_tolerance_is_in_proportion_to_the_rate(
        self, share: float, angle: float, added: float, rate: float, factor: float
    ) -> None:
        one = torque_tolerance_n_mm(share, angle, added, rate)
        assert torque_tolerance_n_mm(share, angle, added, factor * rate) == close(factor * one)
        assert one == close(rate * share * angle + rate * added)

    @given(st.floats(0.0, 1000.0), st.floats(0.01, 100.0), st.floats(3.0, 30.0), grades)
    def test_unwound_it_is_as_unsure_as_wound_up(self, angle: float, rate: float, n: float, grade: int) -> None:
        wound, unwound = (torsion_torque_tolerance_n_mm(each, rate, n, grade) for each in (angle, -angle))
        assert wound is not None
        assert wound == unwound

    @given(st.floats(0.1, 50.0), st.floats(0.5, 60.0))
    def test_a_torsion_spring_needs_no_3_coils_and_any_other_does(self, index: float, n: float) -> None:
        by_index = within(4.0, index) and within(index, 22.0)
        assert jis_covers("torsion", index, n) is by_index
        assert jis_covers("compression", index, n) is (by_index and within(3.0, n))

    @given(st.floats(0.01, 1000.0), st.floats(0.01, 1000.0))
    def test_a_value_is_within_an_edge_that_it_does_not_pass_by_a_millionth(self, value: float, edge: float) -> None:
        assume(abs(value - edge) > 2e-6 * edge)
        assert within(value, edge) is (value < edge)
        assert within(edge * (1 + 5e-7), edge)


class TestWire:
    @given(st.sampled_from(["EN 10270-1", "ASTM A228", "ASTM A227", "ASTM A229", "ASTM A231"]), wires, factors)
    def test_a_thicker_wire_may_differ_by_more(self, standard: str, wire: float, factor: float) -> None:
        one, other = (wire_diameter_tolerance_mm(standard, each) for each in (wire, wire * factor))
        assume(one is not None and other is not None)
        assert one <= other  # type: ignore[operator]

    @given(st.sampled_from(names()), wires)
    def test_where_it_is_known_it_is_a_small_part_of_the_wire(self, name: str, wire: float) -> None:
        material = find(name)
        assert material is not None
        tolerance = wire_diameter_tolerance_mm(material.standard, wire)
        assert tolerance is None or 0.0 < tolerance < 0.06 * wire


extensions = st.builds(
    lambda of, hooks, tension: ExtensionSpring(
        of.wire_diameter_mm,
        of.mean_diameter_mm,
        of.free_length_mm,
        of.active_coils,
        of.active_coils,
        hooks,
        of.material,
        of.shear_modulus_mpa,
        of.elastic_modulus_mpa,
        of.tensile_strength_mpa,
        tension,
    ),
    cylinders(),
    st.sampled_from(Hooks),
    st.none() | st.floats(0.0, 50.0),
)
any_spring = cylinders() | cones() | torsion_springs() | extensions


def holds(band: Band) -> bool:
    if band.low is None or band.high is None:
        return band.low is band.high is None and band.source == "not known"
    return band.low <= band.nominal <= band.high


class TestBands:
    @given(any_spring, grades)
    def test_a_figure_lies_between_its_bounds_or_has_none(self, spring: Toleranced, grade: int) -> None:
        bands = bands_of(spring, rate_of(spring), grade)  # type: ignore[arg-type]
        assert all(map(holds, bands))
        assert len({band.figure for band in bands}) == len(bands)

    @given(any_spring)
    def test_no_figure_is_surer_by_a_coarser_grade(self, spring: Toleranced) -> None:
        fine, coarse = (bands_of(spring, rate_of(spring), grade) for grade in (1, 3))  # type: ignore[arg-type]
        for one, other in zip(fine, coarse, strict=True):
            assert one.figure == other.figure
            assert one.high is None or other.high is None or one.high <= other.high

    @given(cylinders() | extensions, forces, grades)
    def test_a_force_lies_between_its_bounds_and_never_below_nothing(
        self, spring: Toleranced, force: float, grade: int
    ) -> None:
        band = load_band(spring, 10.0, force, grade)
        assert band is not None
        assert holds(band)
        assert band.low is None or band.low >= 0.0

    @given(torsion_springs(), st.floats(-300.0, 300.0).filter(lambda angle: abs(angle) > 0.1), grades)
    def test_a_torque_that_unwinds_is_bounded_as_one_that_winds_up(
        self, spring: TorsionSpring, angle: float, grade: int
    ) -> None:
        torque = rate_of(spring) * angle
        one, other = (torque_band(spring, sign * angle, sign * torque, grade) for sign in (1.0, -1.0))
        assert None not in (one.low, one.high, other.low, other.high)
        assert one.high - one.nominal == close(other.high - other.nominal) or 0.0 in (one.low, other.low)  # type: ignore[operator]
