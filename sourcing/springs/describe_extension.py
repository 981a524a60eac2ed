"""All that follows from the dimensions of an extension spring; the fields are the keys of `describe --json`."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from sourcing.figures import formula
from sourcing.springs import hooks, initial_tension, pulled
from sourcing.springs.compression import INDEX_RANGE, index_is_covered
from sourcing.springs.endurance import PulledEndurance, of_pulled
from sourcing.springs.extension import LEAST_ACTIVE_COILS, active_coils_with_hooks, initial_stress_mpa
from sourcing.springs.geometry import mass_g, turn_length_mm
from sourcing.springs.initial_tension import Range, Tension
from sourcing.springs.life import Making
from sourcing.springs.model import ExtensionSpring, Hooks
from sourcing.springs.notes import counted, material_note, mm
from sourcing.springs.pulled import AtPull
from sourcing.springs.stability import natural_frequency_hz

HOOKS_TOLD = 0.03
"""The hooks' own bending is spoken of from so much of the rate."""


@dataclass(frozen=True, slots=True)
class ExtensionDescription:
    """What an extension spring is and does. The rate is worked out from the dimensions, never a seller's.

    `initial_tension_n` is the stated one, else the middle of what is usual; `initial_tension_stated` tells which.
    `hook_length_mm` is from the body to the inside of each hook. The largest safe figures are those at which the part
    that `breaks_first` comes to its static limit; None where the wire's strength is not known. What only a spring
    that is pressed has is None. `notes` are whole sentences.
    """

    kind: str
    material: str
    wire_diameter_mm: float
    mean_diameter_mm: float
    outside_diameter_mm: float
    inside_diameter_mm: float
    spring_index: float
    active_coils: float
    total_coils: float
    free_length_mm: float
    body_length_mm: float
    hooks: Hooks
    hook_length_mm: float
    torn_hooks: int
    pitch_mm: float
    rate_n_per_mm: float
    initial_tension_n: float
    initial_tension_n_low: float
    initial_tension_n_high: float
    initial_tension_stated: bool
    initial_tension_ranges: tuple[Range, ...]
    initial_stress_mpa: float
    breaks_first: str
    largest_safe_force_n: float | None
    largest_safe_extension_mm: float | None
    largest_safe_length_mm: float | None
    tensile_strength_mpa: float | None
    wire_length_mm: float
    mass_g: float
    natural_frequency_hz: float
    endurance: PulledEndurance
    at: tuple[AtPull, ...]
    notes: tuple[str, ...]
    solid_length_mm: None = None
    force_at_solid_n: None = None
    shear_stress_at_solid_mpa: None = None
    buckling_length_mm: None = None


def wire_of_hook_mm(spring: ExtensionSpring) -> float:
    """Wire in one of its hooks."""
    return hooks.hook_wire_mm(spring.hooks, spring.mean_diameter_mm, pulled.hook_length_mm(spring))


@formula(
    "l = n_t √((π D)² + d²) + 2 l_H",
    where={
        "n_t": "spring.total_coils",
        "D": "spring.mean_diameter_mm",
        "d": "spring.wire_diameter_mm",
        "l_H": wire_of_hook_mm,
    },
    source="geometry",
)
def wire_length_mm(spring: ExtensionSpring) -> float:
    """Wire in the body and both hooks, along its arc, without anything to hold by.

    >>> from sourcing.materials import find
    >>> wire = find("music-wire")
    >>> spring = ExtensionSpring(1.2, 12.0, 44.6, 20.0, 20.0, Hooks.FULL_LOOP, wire, 81500.0, 206000.0, 2150.0, 6.0)
    >>> round(wire_length_mm(spring))
    830
    """
    body_mm = spring.total_coils * turn_length_mm(spring.mean_diameter_mm, spring.wire_diameter_mm)
    return body_mm + 2.0 * wire_of_hook_mm(spring)


def describe_extension(
    spring: ExtensionSpring, at_mm: Sequence[float] = (), making: Making = Making.UNKNOWN
) -> ExtensionDescription:
    """All figures of an extension spring, and what it does pulled to each of the lengths `at_mm`.

    >>> from sourcing.materials import find
    >>> wire = find("music-wire")
    >>> spring = ExtensionSpring(1.2, 12.0, 44.6, 20.0, 20.0, Hooks.FULL_LOOP, wire, 81500.0, 206000.0, 2150.0, 6.0)
    >>> described = describe_extension(spring, at_mm=[64.6])
    >>> round(described.rate_n_per_mm, 3), round(described.at[0].force_n, 1), described.breaks_first
    (0.611, 18.2, 'the hook, by torsion where it leaves the body')

    Source of each figure: the function that it is worked out with.
    """
    d, mean = spring.wire_diameter_mm, spring.mean_diameter_mm
    rate, tension, wire_mm = pulled.rate_n_per_mm(spring), initial_tension.tension_of(spring), wire_length_mm(spring)
    density = spring.material.density_kg_per_m3
    longest_mm = pulled.largest_safe_length_mm(spring, rate, tension.likely_n)
    figures = ExtensionDescription(
        kind=spring.kind,
        material=spring.material.name,
        wire_diameter_mm=d,
        mean_diameter_mm=mean,
        outside_diameter_mm=spring.outside_diameter_mm,
        inside_diameter_mm=spring.inside_diameter_mm,
        spring_index=spring.spring_index,
        active_coils=spring.active_coils,
        total_coils=spring.total_coils,
        free_length_mm=spring.free_length_mm,
        body_length_mm=pulled.body_length_mm(spring),
        hooks=spring.hooks,
        hook_length_mm=pulled.hook_length_mm(spring),
        torn_hooks=spring.torn_hooks,
        pitch_mm=d,
        rate_n_per_mm=rate,
        initial_tension_n=tension.likely_n,
        initial_tension_n_low=tension.low_n,
        initial_tension_n_high=tension.high_n,
        initial_tension_stated=tension.stated,
        initial_tension_ranges=tension.ranges,
        initial_stress_mpa=initial_stress_mpa(tension.likely_n, d, mean),
        breaks_first=pulled.breaks_first(spring).words,
        largest_safe_force_n=pulled.largest_safe_force_n(spring),
        largest_safe_extension_mm=None if longest_mm is None else longest_mm - spring.free_length_mm,
        largest_safe_length_mm=longest_mm,
        tensile_strength_mpa=spring.tensile_strength_mpa,
        wire_length_mm=wire_mm,
        mass_g=mass_g(d, wire_mm, density),
        natural_frequency_hz=natural_frequency_hz(d, mean, spring.active_coils, spring.shear_modulus_mpa, density),
        endurance=of_pulled(spring, at_mm, making),
        at=tuple(pulled.at_length(spring, length) for length in at_mm),
        notes=(),
    )
    return replace(figures, notes=tuple(_notes(spring, tension, figures)))


def _notes(spring: ExtensionSpring, tension: Tension, figures: ExtensionDescription) -> Iterator[str]:
    yield from _range_notes(figures)
    yield from tension_notes(tension, spring.spring_index)
    yield from _strength_notes(spring, figures)
    yield from _hook_notes(spring, figures)
    yield from material_note(spring.material)
    for at in figures.at:
        if at.length_mm <= figures.free_length_mm:
            yield f"At {mm(at.length_mm)} it is loose: it is {mm(figures.free_length_mm)} long at rest."
        elif figures.largest_safe_length_mm is not None and at.length_mm > figures.largest_safe_length_mm:
            yield (
                f"At {mm(at.length_mm)} it is past its largest safe length, {mm(figures.largest_safe_length_mm)}: "
                f"it will stay longer, or break at {figures.breaks_first}."
            )


def _range_notes(figures: ExtensionDescription) -> Iterator[str]:
    least, greatest = INDEX_RANGE
    if not index_is_covered(figures.spring_index):
        yield (
            f"The spring index {figures.spring_index:.3g} is outside the {least:g} to {greatest:g} of EN 13906-2: "
            "rate and stress are less sure."
        )
    if figures.active_coils < LEAST_ACTIVE_COILS:
        yield (
            f"{counted(figures.active_coils, 'active coil')} fewer than the {LEAST_ACTIVE_COILS:g} of EN 13906-2: "
            "rate and stress are less sure."
        )


def tension_notes(tension: Tension, spring_index: float) -> Iterator[str]:
    """Where the initial tension comes from, source by source; or that it is more than such coils can hold."""
    between = "; ".join(f"{each.source}, {newtons(each.low_n)} to {newtons(each.high_n)}" for each in tension.ranges)
    if tension.stated:
        if tension.most_n is not None and tension.likely_n > tension.most_n:
            yield (
                f"Its initial tension of {newtons(tension.likely_n)} is more than a spring of index {spring_index:.3g} "
                f"can hold ({between}): measure it again, pulling until the coils just part."
            )
        return
    if not tension.ranges:
        yield (
            "Its initial tension is not stated, and no source covers such a spring: it is taken as none. Measure it: "
            "pull until the coils just part."
        )
        return
    yield (
        f"Its initial tension is not stated: {newtons(tension.likely_n)} is the middle of what is usual for such a "
        f"spring ({between}). Measure it: pull until the coils just part."
    )


def _strength_notes(spring: ExtensionSpring, figures: ExtensionDescription) -> Iterator[str]:
    if figures.largest_safe_force_n is None:
        yield (
            f"The strength of {figures.material} is not listed for a wire of {mm(figures.wire_diameter_mm)}: "
            f"how far it may be pulled is not known. What breaks first is {figures.breaks_first}."
        )
        return
    if figures.initial_tension_n >= figures.largest_safe_force_n:
        yield (
            f"Its initial tension alone is past the {newtons(figures.largest_safe_force_n)} that it bears at "
            f"{figures.breaks_first}: it cannot be pulled safely at all."
        )
    if spring.hooks is not Hooks.THREADED_PLUG:
        yield (
            f"The bend where the hook leaves the body is taken to have a radius of {hooks.BEND_RADIUS_WIRES:g} wires "
            f"(assumed). A nick or a sharper bend breaks sooner; DIN 2097 wants at least "
            f"{hooks.LEAST_BEND_RADIUS_WIRES:g} wire."
        )
    if hooks.BODY_LOAD_ARM[spring.hooks] > 1.0:
        yield (
            "Side hooks pull beside its axis: the body's stress is given as twice that of a pull on the axis (derived, "
            "the most it can be), and it gives somewhat more than its rate says."
        )


def _hook_notes(spring: ExtensionSpring, figures: ExtensionDescription) -> Iterator[str]:
    if spring.torn_hooks:
        torn = "One hook is" if spring.torn_hooks == 1 else "Both hooks are"
        yield f"{torn} torn off: the lengths are those with both whole."
    if (doubt := hook_height_doubt(spring)) is not None:
        yield doubt
    if spring.hooks is Hooks.THREADED_PLUG or spring.active_coils != spring.total_coils:
        return
    counted = active_coils_with_hooks(spring.total_coils, spring.shear_modulus_mpa, spring.elastic_modulus_mpa)
    softer = 1.0 - spring.active_coils / counted
    if softer >= HOOKS_TOLD:
        yield (
            f"US practice counts the bending of the hooks as {counted - spring.total_coils:.1f} coils more "
            f"(Shigley, eq. 10-40), which would make it {100 * softer:.0f} % softer; EN 13906-2 does not."
        )


def hook_height_doubt(spring: ExtensionSpring) -> str | None:
    """That hooks of their kind are not usually so high: a length or the coils may be wrong."""
    usual, height_mm = hooks.LOOP_HEIGHTS[spring.hooks], pulled.hook_length_mm(spring)
    if usual is None:
        return None
    low_mm, high_mm = (None if share is None else share * spring.inside_diameter_mm for share in usual)
    assert low_mm is not None
    if low_mm - 1.5 * spring.wire_diameter_mm <= height_mm and (
        high_mm is None or height_mm <= high_mm + 1.5 * spring.wire_diameter_mm
    ):
        return None
    between = f"at least {mm(low_mm)}" if high_mm is None else f"{mm(low_mm)} to {mm(high_mm)}"
    return (
        f"Free length and coils leave {mm(height_mm)} for each hook; for {spring.hooks} on such a coil {between} are "
        "usual (DIN 2097, from memory): one of the figures may be wrong."
    )


def newtons(force_n: float) -> str:
    """A force for a sentence.

    >>> newtons(4.1389), newtons(18.22)
    ('4.14 N', '18.2 N')
    """
    return f"{force_n:.3g} N"
