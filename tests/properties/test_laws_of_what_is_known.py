"""Laws of what is known of wires and of coils: names, rows, neighbours, and figures that follow from each other."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from sourcing.materials import find, names
from sourcing.materials.facts import disagreements, facts
from sourcing.materials.governing import governing_strength
from sourcing.materials.model import Group, Material
from sourcing.materials.names import folded, words
from sourcing.materials.plating import better_plated, cracks_by_hydrogen
from sourcing.materials.strength import interpolated_strength_mpa, tensile_strength_mpa, weakest_grade
from sourcing.springs import diameters, geometry
from sourcing.springs.model import Ends
from sourcing.springs.strength import Place, permissible, permissible_at_mpa, permissible_solid_stress_mpa

from .test_compression_laws import close

known = st.sampled_from(names()).map(find).filter(lambda material: material is not None)
wires = st.floats(0.05, 20.0)
sizes = st.floats(0.1, 100.0)
coils = st.floats(0.5, 100.0)
factors = st.floats(1.01, 10.0)


class TestNames:
    @given(st.text(max_size=30))
    def test_a_folded_name_is_folded_for_good(self, name: str) -> None:
        assert folded(folded(name)) == folded(name)
        assert folded(f"  {name} ") == folded(name)

    def test_the_words_are_the_names_without_a_blank(self) -> None:
        assert set(words()) == {name for name in names() if " " not in name}


class TestRows:
    @given(known, wires)
    def test_the_row_that_governs_has_the_strength(self, material: Material, wire: float) -> None:
        row, strength = governing_strength(material, wire), tensile_strength_mpa(material, wire)
        assert (row is None) == (strength is None)
        if row is not None and strength is not None:
            assert float(row.value) == float(f"{strength:g}")
            assert row.source

    @given(known)
    def test_the_facts_of_a_wire_are_among_all_facts(self, material: Material) -> None:
        assert set(facts(material)) <= set(facts())
        assert set(disagreements(material)) <= set(disagreements())

    def test_where_sources_disagree_a_reason_stands_and_the_spread_is_in_order(self) -> None:
        for fact in disagreements():
            assert fact.reason
            if fact.low is not None and fact.high is not None:
                assert fact.low <= fact.high

    @given(known, wires)
    def test_the_weakest_that_may_pass_for_a_wire_is_no_stronger(self, material: Material, wire: float) -> None:
        weakest, strength = weakest_grade(material, wire), tensile_strength_mpa(material, wire)
        if weakest is not None and strength is not None:
            assert (tensile_strength_mpa(weakest, wire) or 0.0) <= strength

    @given(st.floats(0.1, 10.0), factors, st.floats(500.0, 3000.0), st.floats(0.5, 0.99), st.floats(0.0, 1.0))
    def test_between_two_listed_sizes_the_strength_lies_between_theirs(
        self, thin: float, wider: float, strong: float, share: float, place: float
    ) -> None:
        thick, weak = thin * wider, strong * share
        wire = thin + place * (thick - thin)
        found = interpolated_strength_mpa(wire, thin, strong, thick, weak)
        assert weak * (1 - 1e-9) <= found <= strong * (1 + 1e-9)
        assert interpolated_strength_mpa(thin, thin, strong, thick, weak) == close(strong)
        assert interpolated_strength_mpa(thick, thin, strong, thick, weak) == close(weak)


class TestPlating:
    @given(known, st.sampled_from(["indoor-dry", "damp", "wet", "salt", "food"]))
    def test_zinc_helps_only_where_the_bare_wire_does_not_serve(self, material: Material, where: str) -> None:
        if better_plated(material, where):
            assert material.corrosion.get(where, 0) < 2 <= material.zinc_plated[where]

    @given(known)
    def test_only_hard_carbon_and_low_alloy_steel_cracks_by_hydrogen(self, material: Material) -> None:
        assert cracks_by_hydrogen(material) is (material.group in {Group.DRAWN, Group.TEMPERED})


class TestPermissible:
    @given(known, st.sampled_from(Place), st.floats(200.0, 3500.0), factors)
    def test_a_stronger_wire_bears_as_much_more(
        self, material: Material, place: Place, strength: float, factor: float
    ) -> None:
        share = permissible(place, material).share
        assert 0.0 < share < 1.0
        assert permissible_at_mpa(place, material, strength) == close(share * strength)
        assert permissible_at_mpa(place, material, factor * strength) == close(factor * share * strength)
        assert permissible_solid_stress_mpa(factor * strength) == close(factor * permissible_solid_stress_mpa(strength))


class TestCoils:
    @given(sizes, sizes)
    def test_a_mean_diameter_is_found_again_from_either_side(self, mean: float, wire: float) -> None:
        outside, inside = (side(mean, wire) for side in (diameters.outside_diameter_mm, diameters.inside_diameter_mm))
        assert diameters.mean_from_outside_mm(outside, wire) == close(mean)
        assert abs(diameters.mean_from_inside_mm(inside, wire) - mean) < 1e-9 * (mean + wire)

    @given(sizes, sizes)
    def test_halfway_is_as_far_from_either_end(self, small: float, large: float) -> None:
        halfway = diameters.halfway_mean_mm(small, large)
        assert abs((halfway - small) - (large - halfway)) < 1e-9 * (small + large)

    @given(coils, st.sampled_from(Ends))
    def test_the_coils_in_all_are_those_that_act_and_the_dead_ones(self, active: float, ends: Ends) -> None:
        assert geometry.total_coils(active, ends) == close(active + geometry.dead_coils(ends))

    @given(sizes, coils, st.sampled_from(Ends))
    def test_a_spring_pressed_solid_is_its_wires_and_those_over(self, wire: float, total: float, ends: Ends) -> None:
        assert geometry.solid_length_mm(wire, total, ends) == close((total + geometry.wires_over(ends)) * wire)
