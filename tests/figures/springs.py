"""Springs of every kind drawn at random, from what a bench meets and somewhat beyond it."""

from __future__ import annotations

from hypothesis import strategies as st

from sourcing import materials
from sourcing.materials.strength import tensile_strength_mpa
from sourcing.springs.model import (
    CompressionSpring,
    ConicalSpring,
    Ends,
    ExtensionSpring,
    Hooks,
    Leg,
    LegShape,
    TorsionSpring,
)

WIRES = [wire for name in materials.words() if (wire := materials.find(name)) is not None]


def between(low: float, high: float) -> st.SearchStrategy[float]:
    return st.floats(low, high, allow_nan=False)


@st.composite
def cylinders(draw: st.DrawFn) -> CompressionSpring:
    wire, material = draw(between(0.25, 5.0)), draw(st.sampled_from(WIRES))
    active, dead = draw(between(1.0, 20.0)), draw(st.sampled_from([0.0, 1.0, 2.0]))
    return CompressionSpring(
        wire_diameter_mm=wire,
        mean_diameter_mm=wire * draw(between(2.5, 22.0)),
        free_length_mm=(active + 4.0) * wire * draw(between(1.0, 8.0)),
        active_coils=active,
        total_coils=active + dead,
        ends=draw(st.sampled_from(Ends)),
        material=material,
        shear_modulus_mpa=material.shear_modulus_mpa,
        elastic_modulus_mpa=material.elastic_modulus_mpa,
        tensile_strength_mpa=tensile_strength_mpa(material, wire),
    )


@st.composite
def cones(draw: st.DrawFn) -> ConicalSpring:
    of = draw(cylinders())
    return ConicalSpring(
        wire_diameter_mm=of.wire_diameter_mm,
        mean_diameter_small_mm=of.mean_diameter_mm,
        mean_diameter_large_mm=of.mean_diameter_mm * draw(between(1.0, 3.0)),
        free_length_mm=of.free_length_mm,
        active_coils=of.active_coils,
        total_coils=of.total_coils,
        ends=of.ends,
        material=of.material,
        shear_modulus_mpa=of.shear_modulus_mpa,
        elastic_modulus_mpa=of.elastic_modulus_mpa,
        tensile_strength_mpa=of.tensile_strength_mpa,
    )


@st.composite
def extension_springs(draw: st.DrawFn) -> ExtensionSpring:
    wire, material, coils = draw(between(0.25, 5.0)), draw(st.sampled_from(WIRES)), draw(between(1.0, 40.0))
    mean = wire * draw(between(2.5, 22.0))
    return ExtensionSpring(
        wire_diameter_mm=wire,
        mean_diameter_mm=mean,
        free_length_mm=(coils + 1.0) * wire + mean * draw(between(0.5, 6.0)),
        active_coils=coils + draw(st.sampled_from([0.0, 0.4])),
        total_coils=coils,
        hooks=draw(st.sampled_from(Hooks)),
        material=material,
        shear_modulus_mpa=material.shear_modulus_mpa,
        elastic_modulus_mpa=material.elastic_modulus_mpa,
        tensile_strength_mpa=tensile_strength_mpa(material, wire),
        initial_tension_n=draw(st.none() | between(0.0, 1000.0)),
        torn_hooks=draw(st.sampled_from([0, 1, 2])),
    )


@st.composite
def torsion_springs(draw: st.DrawFn) -> TorsionSpring:
    wire, material, coils = draw(between(0.25, 5.0)), draw(st.sampled_from(WIRES)), draw(between(1.5, 20.0))
    legs = st.none() | st.builds(Leg, between(1.0, 60.0), st.sampled_from(LegShape))
    bodies = draw(st.sampled_from([1, 2]))
    return TorsionSpring(
        wire_diameter_mm=wire,
        mean_diameter_mm=wire * draw(between(3.0, 22.0)),
        active_coils=coils,
        material=material,
        elastic_modulus_mpa=material.elastic_modulus_mpa,
        tensile_strength_mpa=tensile_strength_mpa(material, wire),
        leg_1=draw(legs),
        leg_2=draw(legs),
        free_angle_deg=draw(st.none() | between(0.0, 360.0)),
        bodies=bodies,
        body_length_mm=draw(st.none() | between(1.0, 3.0).map(lambda wider: wider * bodies * (coils + 1.0) * wire)),
    )
