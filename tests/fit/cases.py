"""A need, a bench and springs that the tests of this folder start from."""

from dataclasses import replace

from sourcing.materials import find
from sourcing.materials.strength import tensile_strength_mpa
from sourcing.need.model import Need, Pocket, PocketEnd, WorkingPoint
from sourcing.quantities import Wanted
from sourcing.springs.model import CompressionSpring, ConicalSpring, Ends, ExtensionSpring, Hooks


def make_spring(material: str = "music-wire", **changes: object) -> CompressionSpring:
    """Case 1 of the winding model (d 0.9, outside 9.6, 9.75 coils closed-ground), free length 31, changed as asked."""
    wire = find(material)
    assert wire is not None
    spring = CompressionSpring(
        wire_diameter_mm=0.9,
        mean_diameter_mm=8.7,
        free_length_mm=31.0,
        active_coils=7.75,
        total_coils=9.75,
        ends=Ends.CLOSED_GROUND,
        material=wire,
        shear_modulus_mpa=wire.shear_modulus_mpa,
        elastic_modulus_mpa=wire.elastic_modulus_mpa,
        tensile_strength_mpa=None,
    )
    spring = replace(spring, **changes)
    return replace(spring, tensile_strength_mpa=tensile_strength_mpa(wire, spring.wire_diameter_mm))


def make_need(**changes: object) -> Need:
    """The desk punch: bore 11, rod 6, 9 N at 24 mm and 22 N at 14 mm, each ± 15 %."""
    need = Need(
        job="punch-return",
        kind="compression",
        pocket=Pocket(Wanted(nominal=11.0), Wanted(nominal=6.0), Wanted(nominal=33.0)),
        working=(
            WorkingPoint(Wanted(nominal=24.0), Wanted(nominal=9.0, minus=1.35, plus=1.35)),
            WorkingPoint(Wanted(nominal=14.0), Wanted(nominal=22.0, minus=3.3, plus=3.3)),
        ),
        free_length_mm=Wanted(nominal=31.0, minus=2.0, plus=2.0),
    )
    return replace(need, **changes)


def make_cone(**changes: object) -> ConicalSpring:
    """A cone of 0.9 mm wire, mean diameters 7 and 17, 5 active coils, 14 mm long; it telescopes, changed as asked."""
    wire = find("music-wire")
    assert wire is not None
    spring = ConicalSpring(
        wire_diameter_mm=0.9,
        mean_diameter_small_mm=7.0,
        mean_diameter_large_mm=17.0,
        free_length_mm=14.0,
        active_coils=5.0,
        total_coils=7.0,
        ends=Ends.CLOSED,
        material=wire,
        shear_modulus_mpa=wire.shear_modulus_mpa,
        elastic_modulus_mpa=wire.elastic_modulus_mpa,
        tensile_strength_mpa=None,
    )
    spring = replace(spring, **changes)
    return replace(spring, tensile_strength_mpa=tensile_strength_mpa(wire, spring.wire_diameter_mm))


def make_conical_need(**changes: object) -> Need:
    """A lamp switch: 18.5 round the large end, a pin of 5.5 in the small one, 1.3 N at 12 mm and 8.4 N at 4.5 mm."""
    need = Need(
        job="lamp-switch",
        kind="conical",
        pocket=Pocket(
            large_end=PocketEnd(bore_mm=Wanted(nominal=18.5)), small_end=PocketEnd(rod_mm=Wanted(nominal=5.5))
        ),
        working=(
            WorkingPoint(Wanted(nominal=12.0), Wanted(nominal=1.3, minus=0.2, plus=0.2)),
            WorkingPoint(Wanted(nominal=4.5), Wanted(nominal=8.4, minus=1.3, plus=1.3)),
        ),
    )
    return replace(need, **changes)


def make_extension(material: str = "music-wire", **changes: object) -> ExtensionSpring:
    """Case 5 of the winding model (d 1.2, D 12, 20 coils), initial tension 5 N; full loops 9.7 mm high."""
    wire = find(material)
    assert wire is not None
    spring = ExtensionSpring(
        wire_diameter_mm=1.2,
        mean_diameter_mm=12.0,
        free_length_mm=44.6,
        active_coils=20.0,
        total_coils=20.0,
        hooks=Hooks.FULL_LOOP,
        material=wire,
        shear_modulus_mpa=wire.shear_modulus_mpa,
        elastic_modulus_mpa=wire.elastic_modulus_mpa,
        tensile_strength_mpa=None,
        initial_tension_n=5.0,
    )
    spring = replace(spring, **changes)
    return replace(spring, tensile_strength_mpa=tensile_strength_mpa(wire, spring.wire_diameter_mm))


def make_extension_need(**changes: object) -> Need:
    """A catch: a bore of 14 mm, 8.3 N at 50 mm and 17 N at 64 mm between the hooks, each ± 15 %."""
    need = Need(
        job="catch",
        kind="extension",
        pocket=Pocket(Wanted(nominal=14.0)),
        working=(
            WorkingPoint(Wanted(nominal=64.0), Wanted(nominal=17.0, minus=2.5, plus=2.5)),
            WorkingPoint(Wanted(nominal=50.0), Wanted(nominal=8.3, minus=1.3, plus=1.3)),
        ),
    )
    return replace(need, **changes)
